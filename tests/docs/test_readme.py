"""The example of the README, done as it says."""

from __future__ import annotations

import ast
import json
import re
from collections import Counter
from pathlib import Path

import pytest
from pages import ROOT, examples, page, part, rows

from frogless.cli import main
from frogless.library.items import items


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


def said() -> str:
    """Every piece of text that the program can say, blanks left out."""
    trees = [ast.parse(f.read_text(encoding="utf-8")) for f in (ROOT / "src").rglob("*.py")]
    nodes = (node for tree in trees for node in ast.walk(tree))
    return "\n".join(
        n.value for n in nodes if isinstance(n, ast.Constant) and isinstance(n.value, str)
    )


def test_warnings_are_quoted_as_they_are_said() -> None:
    """Whoever looks up a warning finds its words; figures differ."""
    quoted = [
        fragment
        for cells in rows(part(page("README.md"), "## What the warnings mean"))
        for phrase in re.findall(r"\*([^*]{8,})\*", cells[0].replace("\\*", ""))
        for fragment in re.split(r"[\d.]+( %)?", phrase)
        if fragment and len(fragment) > 8
    ]
    assert len(quoted) > 8
    known = said()
    assert [fragment for fragment in quoted if fragment not in known] == []


def test_things_of_the_library_are_counted_right() -> None:
    """So many stitches, patterns, edgings, motifs and joins as there are."""
    told = " ".join(page("README.md").split())
    counts = Counter(item.kind for item in items())
    sentence = (
        f"{counts['stitch']} stitches, {counts['pattern']} stitch patterns, "
        f"{counts['edging']} edgings, {counts['motif']} motifs and {counts['join']} joins"
    )
    assert sentence in told
