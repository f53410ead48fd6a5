"""The example of the README, done as it says."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pages import ROOT, examples, page

from frogless.cli import main


@pytest.mark.parametrize("name", ["README.md", "start.md"])
def test_skirt_for_your_own_body_is_drafted(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Both files copied, one command: all files of a pattern, and nothing that fails."""
    body, swatch = examples(page(name), "toml")
    (tmp_path / "me.toml").write_text(body, encoding="utf-8")
    (tmp_path / "yarn.toml").write_text(swatch, encoding="utf-8")
    design = ROOT / "designs" / "ring-dance-skirt" / "design.toml"
    given = [
        str(design),
        "--body",
        str(tmp_path / "me.toml"),
        "--swatch",
        str(tmp_path / "yarn.toml"),
    ]
    assert main(["draft", *given, "-o", str(tmp_path / "out")]) == 0
    assert "for Me" in capsys.readouterr().out
    made = {file.name for file in (tmp_path / "out").iterdir()}
    assert {f"`{file}`" for file in made} <= set(page("README.md").replace(",", " ").split())
    plan = json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    assert plan["sizes"][0]["going_on"]["measured"]
