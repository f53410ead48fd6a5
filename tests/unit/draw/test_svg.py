"""The SVG that drawings become."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path as FilePath

import pikepdf
import pytest
import typst
from lxml import etree
from sample_plans import build, flared

from frogless.draw.drawing import Circle, Drawing, Line, Path, Text
from frogless.draw.profile import profile
from frogless.draw.schematic import schematic
from frogless.draw.styles import STYLES
from frogless.draw.svg import svg
from frogless.plan.model import Plan

SPACE = "{http://www.w3.org/2000/svg}"


def drawing(*shapes: Line | Path | Circle | Text, title: str = "t", words: str = "d") -> Drawing:
    """A sheet of 50 × 40 mm."""
    return Drawing(50.0, 40.0, title, words, shapes)


def test_sheet_states_its_size_and_its_words() -> None:
    """Width, height and viewBox agree; title and description are what the image is labelled by."""
    root = etree.fromstring(svg(drawing(title="A skirt", words="Front view.")).encode())
    assert (root.get("width"), root.get("height")) == ("50mm", "40mm")
    assert root.get("viewBox") == "0 0 50 40"
    assert (root.get("role"), root.get("version")) == ("img", "1.1")
    labels = [root.find(f".//*[@id='{name}']") for name in root.get("aria-labelledby").split()]
    assert [label.tag for label in labels] == [SPACE + "title", SPACE + "desc"]
    assert [label.text for label in labels] == ["A skirt", "Front view."]


def test_words_come_back_as_written_when_they_hold_markup() -> None:
    """Signs of the markup are escaped in title, description and lettering; control signs go."""
    wild = "<b> & \"x\" 'y' ]]> 3 < 4\x00\x1f"
    root = etree.fromstring(
        svg(drawing(Text((1, 2), wild, "name"), title=wild, words=wild)).encode()
    )
    tame = wild.replace("\x00\x1f", "")
    found = [root.find(f".//{SPACE}{tag}").text for tag in ("title", "desc", "text")]
    assert found == [tame] * 3


def test_each_shape_becomes_its_element() -> None:
    """Line, circle, path with straight and curved segments, and turned lettering."""
    path = Path(
        (0, 0), (((1, 0),), ((2, 1), (3, 0)), ((4, 1), (5, 1), (6, 0))), "outline", closed=True
    )
    text = svg(
        drawing(
            Line((1, 2), (3, 4.5), "tick"),
            Circle((5, 6), 0.75, "bead"),
            path,
            Text((7, 8), "61 cm", "length", "middle", -90),
        )
    )
    assert '<line x1="1" y1="2" x2="3" y2="4.5"/>' in text
    assert '<circle cx="5" cy="6" r="0.75"/>' in text
    assert '<path d="M0 0L1 0Q2 1 3 0C4 1 5 1 6 0Z"/>' in text
    assert '<text x="7" y="8" text-anchor="middle" transform="rotate(-90 7 8)">61 cm</text>' in text


def test_numbers_stay_short_when_values_are_not() -> None:
    """Two decimals at most, no trailing zeros, no minus before nothing."""
    text = svg(drawing(Line((-0.001, 1 / 3), (10.0, 2.10), "tick")))
    assert '<line x1="0" y1="0.33" x2="10" y2="2.1"/>' in text


def test_neighbours_of_one_class_share_a_group() -> None:
    """The paint is written once for a run of shapes."""
    lines = [Line((i, 0), (i, 1), "shaping tick") for i in range(5)]
    text = svg(drawing(*lines, Circle((1, 1), 1, "bead"), lines[0]))
    assert re.findall(r'<g class="([^"]+)"', text) == ["shaping-tick", "bead", "shaping-tick"]


@pytest.mark.parametrize("name", sorted(STYLES))
def test_style_is_painted_with_plain_attributes(name: str) -> None:
    """Every class has a fill and a stroke of its own, and none leans on a style sheet."""
    shape = Text((1, 1), "x", name) if STYLES[name].size else Circle((1, 1), 1, name)
    root = etree.fromstring(svg(drawing(shape)).encode())
    group = root.find(f"{SPACE}g")
    assert group.get("fill")
    assert group.get("stroke")
    assert (group.get("font-size") is not None) == bool(STYLES[name].size)
    assert "style" not in {key for element in root.iter() for key in element.attrib}


def test_same_drawing_gives_the_same_text() -> None:
    """Two separate runs from the plan on agree to the last sign."""
    texts = {svg(schematic(build(flared()), title="T", units="cm", labels={})) for _ in range(2)}
    assert len(texts) == 1


def test_ids_differ_when_drawings_share_a_page() -> None:
    """The schematic and the profile of one plan do not claim the same ids."""
    plan = build(flared())
    drawings = [draw(plan, title="T", units="cm", labels={}) for draw in (schematic, profile)]
    ids = [set(re.findall(r'id="([^"]+)"', svg(made))) for made in drawings]
    assert ids[0].isdisjoint(ids[1])


def test_browser_text_holds_no_script_style_or_variable(any_plan: Plan) -> None:
    """Nothing that a page renderer without style sheets would leave out, or a browser fetch."""
    text = svg(schematic(any_plan, title="T", units="cm", labels={}))
    tags = {etree.QName(element).localname for element in etree.fromstring(text.encode()).iter()}
    assert tags <= {"svg", "title", "desc", "rect", "g", "line", "path", "circle", "text"}
    assert "var(" not in text
    assert "href" not in text


def test_page_renderer_sets_it_with_its_lettering(tmp_path: FilePath) -> None:
    """Typst takes the drawing as an image of its true width and embeds its serif."""
    made = schematic(build(flared()), title="T", units="cm", labels={})
    (tmp_path / "s.svg").write_text(svg(made), encoding="utf-8")
    page = '#set page(width: auto, height: auto, margin: 0pt)\n#image("s.svg", alt: "front view")'
    (tmp_path / "page.typ").write_text(page, encoding="utf-8")
    with pikepdf.open(BytesIO(typst.compile(str(tmp_path / "page.typ")))) as pdf:
        fonts = {str(o.FontName) for o in pdf.objects if "/FontName" in _keys(o)}
        width = float(pdf.pages[0].mediabox[2])
    assert width == pytest.approx(made.width / 25.4 * 72, abs=0.5)
    assert any("Libertinus" in font for font in fonts)


def _keys(item: pikepdf.Object) -> set[str]:
    return set(item.keys()) if isinstance(item, pikepdf.Dictionary) else set()
