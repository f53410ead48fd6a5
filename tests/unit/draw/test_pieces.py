"""The pieces of a garment lying flat, with their measurements lettered."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.because import Because
from frogless.draw.drawing import Circle, Drawing, Line, Path
from frogless.draw.layout import extent
from frogless.draw.pieces import describe_pieces, pieces_drawing
from frogless.draw.svg import svg
from frogless.plan.model import Measure, PiecePlan, Plan, Shape
from frogless.rows.nodes import Program
from frogless.units import Measured

WHY = Because()
PANEL = Shape((((0, 0), (530, 0), (530, 580), (0, 580)),), (((265, 0), (265, 580)),), (0, -1))
RING = Shape((((0, 0), (90, 0), (90, 90), (0, 90)), ((30, 30), (60, 30), (60, 60))), way=None)


def measure(
    name: str, got: float, count: int = 0, *, kind: str = "width", lined: bool = True
) -> Measure:
    """A measurement along the top of its piece."""
    line = ((0.0, 40.0), (min(got, 530.0), 40.0)) if lined else None
    return Measure(name, kind, Measured(got), None, count, WHY, line)  # type: ignore[arg-type]


FRONT = PiecePlan(
    "front",
    "panel",
    measures=(
        measure("width at the bust", 530, 85),
        measure("length", 580, 52, kind="length"),
        measure("armhole edge", 453, 20, kind="edge", lined=False),
    ),
    shape=PANEL,
)


def plan(*pieces: PiecePlan) -> Plan:
    """A plan of nothing but pieces."""
    return Plan(pieces, {}, (), Program(()))


def draw(*pieces: PiecePlan) -> Drawing:
    """The drawing of pieces that have shapes."""
    drawing = pieces_drawing(plan(*pieces), title="T", units="cm")
    assert drawing is not None
    return drawing


def test_nothing_is_drawn_without_shapes() -> None:
    """A plan of tubes has its own silhouette."""
    assert pieces_drawing(plan(PiecePlan("cord", "cord")), title="T", units="cm") is None


def test_every_lined_measure_has_its_letter_on_the_piece_and_in_the_legend() -> None:
    """What has no line is told in words only."""
    texts = [text.text for text in draw(FRONT).texts]
    assert texts.count("a") == texts.count("b") == 2
    assert "c" not in texts
    assert "front, width at the bust: 53 cm" in texts
    assert "front, length: 58 cm" in texts
    assert not any("armhole" in text for text in texts)


def test_letters_go_on_from_piece_to_piece() -> None:
    """No letter stands for two measurements."""
    back = replace(FRONT, name="back")
    discs = [text.text for text in draw(FRONT, back).texts if len(text.text) == 1]
    assert sorted(set(discs)) == ["a", "b", "c", "d"]
    assert len(discs) == 8


def test_letters_go_on_after_z() -> None:
    """A garment of many measurements."""
    many = replace(FRONT, measures=tuple(measure(f"m{i}", 100) for i in range(28)))
    texts = [text.text for text in draw(many).texts]
    assert texts.count("aa") == texts.count("ab") == 2


def test_pieces_share_one_scale() -> None:
    """A sleeve half as wide is drawn half as wide."""
    half = Shape((((0, 0), (265, 0), (265, 290), (0, 290)),))
    drawing = draw(FRONT, PiecePlan("sleeve", "panel", number_made=2, shape=half))
    cloth = [s for s in drawing.shapes if isinstance(s, Path) and s.style == "cloth"]
    widths = [extent([each]).right - extent([each]).left for each in cloth]
    assert widths[0] == pytest.approx(2 * widths[1])
    assert any(text.text == "sleeve (make 2)" for text in drawing.texts)


@pytest.mark.parametrize("number", [1, 2, 5])
def test_all_lies_on_the_sheet(number: int) -> None:
    """However many pieces there are."""
    drawing = draw(*(replace(FRONT, name=f"piece {i}") for i in range(number)))
    box = extent(drawing.shapes)
    assert box.left >= 0
    assert box.top >= 0
    assert box.right <= drawing.width
    assert box.bottom <= drawing.height


def test_pieces_do_not_lie_on_each_other() -> None:
    """Shelves keep them apart."""
    drawing = draw(FRONT, replace(FRONT, name="back"), replace(FRONT, name="other"))
    cloth = [extent([s]) for s in drawing.shapes if isinstance(s, Path) and s.style == "cloth"]
    assert len(cloth) == 3
    assert not any(a.overlaps(b) for i, a in enumerate(cloth) for b in cloth[:i])


def test_hole_is_paper_and_what_grows_from_its_middle_has_no_arrow() -> None:
    """A disc has no one direction of work: its only arrow stands in the legend."""
    drawing = draw(PiecePlan("crown", "disc", shape=RING))
    assert sum(isinstance(s, Path) and s.style == "edging" for s in drawing.shapes) == 1
    arrows = [s for s in drawing.shapes if isinstance(s, Path) and s.style == "scale"]
    assert len(arrows) == 1


def test_dimension_has_a_bar_at_both_ends_across_it() -> None:
    """Also when it runs aslant."""
    aslant = replace(measure("edge", 100), line=((0.0, 0.0), (300.0, 400.0)))
    drawing = draw(replace(FRONT, measures=(aslant,)))
    bars = [s for s in drawing.shapes if isinstance(s, Line) and s.style == "tick"]
    (line,) = (s for s in drawing.shapes if isinstance(s, Line) and s.style == "dimension")
    along = (line.end[0] - line.start[0], line.end[1] - line.start[1])
    assert len(bars) == 2
    for bar in bars:
        across = (bar.end[0] - bar.start[0], bar.end[1] - bar.start[1])
        assert along[0] * across[0] + along[1] * across[1] == pytest.approx(0, abs=1e-9)


def test_letters_on_one_line_make_way_for_each_other() -> None:
    """Two widths of one edge."""
    one, two = measure("width", 500), measure("neck width", 500)
    drawing = draw(replace(FRONT, measures=(one, two)))
    discs = [s.centre for s in drawing.shapes if isinstance(s, Circle)][:2]
    assert discs[0][0] != discs[1][0]
    assert abs(discs[0][0] - discs[1][0]) >= 4


def test_piece_too_small_for_an_arrow_has_none() -> None:
    """A band is all edge."""
    band = PiecePlan("band", "panel", shape=Shape((((0, 0), (530, 0), (530, 20), (0, 20)),)))
    heads = [s for s in draw(band).shapes if isinstance(s, Path) and s.style == "scale"]
    assert len(heads) == 1


def test_description_tells_every_measure_lined_or_not() -> None:
    """For those who do not see the drawing."""
    told = describe_pieces(plan(FRONT), "in")
    assert told.startswith("front: width at the bust: 20 3/4 in (85 sts); length: ")
    assert "armhole edge: 17 3/4 in" in told


def test_drawing_is_svg() -> None:
    """With letters in their discs."""
    text = svg(draw(FRONT))
    assert text.startswith("<svg ")
    assert ">a</text>" in text
    assert any(isinstance(s, Circle) for s in draw(FRONT).shapes)
