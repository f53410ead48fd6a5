"""Names of any kind come through to every output as they were written, or are refused in a sentence."""

from __future__ import annotations

import html
import json
import re
from pathlib import Path
from xml.etree import ElementTree

import pikepdf
import pytest
from examples import Example, write_files

from frogless import cli

LETTERS = "Šárčin kolový Юбка ñandú ωραία"
MARKUP = "<b>#let x = *1*_ $ @a `c` [x] & ~ {title} %s // /*y*/ <!-- -- ]]>"
LONG = "The skirt that " + "went round and " * 30 + "round"
WORDS = "Rnd 5 (RS): dc in next 3 (160 dc)"
EMOJI = "Whirl 🧶 スカート"


def drafted(
    folder: Path, *, title: str = "", section: str = "", body: str = "", swatch: str = ""
) -> tuple[int, Path]:
    """The example with other names; the exit code and the folder of its pattern."""
    texts = Example().texts()
    for file, old, new in (
        ("design.toml", "Ring dance skirt", title),
        ("design.toml", "hip to hem", section),
        ("body.toml", "Dancer 3", body),
        ("swatch.toml", "light cotton, washed", swatch),
    ):
        if new:
            quoted = json.dumps(new, ensure_ascii=False)[1:-1]
            texts[file] = texts[file].replace(old, quoted)
    out = folder / "out"
    return cli.main([*write_files(folder, texts), "-o", str(out)]), out


def words_of(path: Path) -> str:
    """What a reader of an output reads, without its line breaks."""
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".svg":
        text = " ".join(ElementTree.fromstring(text).itertext())  # noqa: S314 — our own file
    elif path.suffix == ".html":
        text = html.unescape(re.sub(r"<(style|script).*?</\1>|<[^>]*>", " ", text, flags=re.DOTALL))
    elif path.suffix == ".json":
        text = json.dumps(json.loads(text), ensure_ascii=False)
    return " ".join(text.split())


@pytest.mark.parametrize("title", [LETTERS, MARKUP, LONG, WORDS, 'a "quoted" one', "back\\slash"])
def test_title_comes_through_as_written(
    title: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In page, text, plan file, drawing and the properties of the PDF; on the terminal too."""
    code, out = drafted(tmp_path, title=title)
    assert code == 0
    shown = capsys.readouterr().out
    assert title in " ".join(shown.split()) or title == LONG
    assert json.loads((out / "plan.json").read_text(encoding="utf-8"))["title"] == title
    for name in ("pattern.html", "pattern.txt", "schematic.svg"):
        assert title in words_of(out / name)
    with pikepdf.open(out / "pattern.pdf") as pdf:
        assert str(pdf.docinfo["/Title"]) == title


@pytest.mark.parametrize("name", [LETTERS, MARKUP, WORDS, "US terms", "5", "-", "a: b; c. d,"])
def test_names_of_section_body_and_swatch_come_through(name: str, tmp_path: Path) -> None:
    """Whatever they look like, they are not taken for instructions."""
    code, out = drafted(tmp_path, section=name, body=name, swatch=name)
    assert code == 0
    (size,) = json.loads((out / "plan.json").read_text(encoding="utf-8"))["sizes"]
    assert size["size"] == name
    assert size["pieces"][0]["sections"][-1]["name"] == name
    for file in ("pattern.html", "pattern.txt"):
        assert f"for {name}, in {name}" in words_of(out / file)


def test_letters_without_a_font_cost_no_pattern(tmp_path: Path) -> None:
    """The PDF has boxes for them where this machine has no font; page and text have the letters."""
    code, out = drafted(tmp_path, title=EMOJI)
    assert code == 0
    for name in ("pattern.html", "pattern.txt", "schematic.svg"):
        assert EMOJI in words_of(out / name)
    assert (out / "pattern.pdf").stat().st_size > 0


def test_summary_and_plan_need_no_font(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Without a folder no page is set."""
    texts = Example().texts()
    texts["design.toml"] = texts["design.toml"].replace("Ring dance skirt", EMOJI)
    arguments = write_files(tmp_path, texts)
    assert cli.main(arguments) == 0
    assert capsys.readouterr().out.startswith(EMOJI)
    assert cli.main([*arguments, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["title"] == EMOJI
