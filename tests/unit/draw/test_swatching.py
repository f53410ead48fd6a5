"""The pictures of how a swatch is read."""

from __future__ import annotations

import re

import pytest
from lxml import etree

from frogless.draw.drawing import Circle, Drawing, Line, Path
from frogless.draw.layout import Box, extent
from frogless.draw.svg import svg
from frogless.draw.swatching import COUNTED_REPEATS, SCALE, SIDE, STRETCHED, TOLD, counting
from frogless.errors import InputError
from frogless.units import Units

PINNED = ("stitches", "rows", "repeats", "stretched_width", "hung_height")


def pins(drawing: Drawing) -> list[Line]:
    """The pins, without their heads."""
    return [s for s in drawing.shapes if isinstance(s, Line) and s.style == "pin"]


def apart(drawing: Drawing) -> float:
    """How far the two pins stand apart, mm on the sheet."""
    one, two = pins(drawing)
    return max(abs(one.start[0] - two.start[0]), abs(one.start[1] - two.start[1]))


def counted(drawing: Drawing) -> int:
    """The stitches that are drawn as counted: each goes down to its foot once and back."""
    paths = [s for s in drawing.shapes if isinstance(s, Path) and s.style == "stitch counted"]
    return sum(len(path.segments) for path in paths) // 4


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("task", sorted(TOLD))
def test_picture_stays_on_its_sheet_and_is_well_formed(task: str, units: Units) -> None:
    """Title and description in words without gaps, no style attribute, the same each time."""
    drawing = counting(task, units)
    assert Box(0, 0, SIDE, SIDE).holds(extent(drawing.shapes))
    assert drawing.title
    assert "{" not in drawing.title + drawing.description
    root = etree.fromstring(svg(drawing).encode())
    assert "style" not in {name for element in root.iter() for name in element.attrib}
    assert svg(drawing) == svg(counting(task, units))


@pytest.mark.parametrize(("units", "window"), [("cm", 100.0), ("in", 101.6)])
@pytest.mark.parametrize("task", ["stitches", "rows"])
def test_pins_stand_a_window_apart(task: str, units: Units, window: float) -> None:
    """10 cm, or 4 in of 25.4 mm (1959 agreement), at the picture's scale."""
    assert apart(counting(task, units)) == pytest.approx(window * SCALE)


@pytest.mark.parametrize("task", ["stitches", "rows"])
def test_words_say_how_many_are_counted(task: str) -> None:
    """An even number, the one that is drawn."""
    drawing = counting(task)
    (said,) = re.findall(rf"(\d+) {task}", drawing.description)
    assert counted(drawing) == int(said)
    assert int(said) % 2 == 0
    assert said in {text.text for text in drawing.texts}


def test_repeats_run_from_one_place_to_the_same_in_another() -> None:
    """Both pins stand in the middle of a fan, whole repeats apart."""
    drawing = counting("repeats")
    ground = extent([s for s in drawing.shapes if s.style == "swatch"])
    repeat = apart(drawing) / COUNTED_REPEATS
    left = min(pin.start[0] for pin in pins(drawing))
    assert ((left - ground.left) / repeat) % 1 == pytest.approx(0.5)
    assert f"{COUNTED_REPEATS} repeats" in drawing.description


def test_same_stitches_measure_more_when_they_are_pulled() -> None:
    """The pins have moved apart, and as many stitches stand between them as before."""
    lying, pulled = counting("stitches"), counting("stretched_width")
    assert counted(lying) == counted(pulled)
    ground = extent([s for s in pulled.shapes if s.style == "swatch"])
    lay = extent([s for s in pulled.shapes if s.style == "level"])
    widths = ground.right - ground.left, lay.right - lay.left
    assert widths[0] / widths[1] == pytest.approx(STRETCHED)


def test_hanging_swatch_is_longer_and_narrower_than_it_lay() -> None:
    """And it hangs from the same line."""
    drawing = counting("hung_height")
    hung = extent([s for s in drawing.shapes if s.style == "swatch"])
    lay = extent([s for s in drawing.shapes if s.style == "level"])
    assert hung.top == lay.top
    assert hung.bottom > lay.bottom
    assert hung.right - hung.left < lay.right - lay.left


@pytest.mark.parametrize("task", PINNED)
def test_two_pins_have_heads(task: str) -> None:
    """One at each end of what is measured."""
    drawing = counting(task)
    heads = [s for s in drawing.shapes if isinstance(s, Circle) and s.style == "pin head"]
    assert len(heads) == len(pins(drawing)) == 2


def test_unknown_task_is_refused_with_those_there_are() -> None:
    """One sentence that says what would do."""
    with pytest.raises(InputError, match=r"stitches, rows, repeats, mass"):
        counting("colour")
