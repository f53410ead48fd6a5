"""The ruler and the counting window, which must be true."""

from __future__ import annotations

import pytest
from lxml import etree

from frogless.draw.drawing import Line, Path
from frogless.draw.layout import Box, extent
from frogless.draw.ruler import CARD_HEIGHT, CARD_WIDTH, ruler, swatch_window
from frogless.draw.svg import svg
from frogless.units import Units

#: A4 is 210 × 297 mm (ISO 216), US letter 8 1/2 × 11 in; what both hold inside 15 mm margins.
ROOM = Box(0, 0, 210 - 30, 279.4 - 30)


def marks(units: Units, style: str) -> list[Line]:
    """The marks of one scale from left to right."""
    found = [s for s in ruler(units).shapes if isinstance(s, Line) and s.style == style]
    return sorted(found, key=lambda line: line.start[0])


@pytest.mark.parametrize("units", ["cm", "in"])
def test_centimeters_stand_where_they_should(units: Units) -> None:
    """151 marks a millimeter apart, so that 15 cm are 150 mm."""
    places = [line.start[0] for line in marks(units, "cm mark")]
    assert places == pytest.approx([places[0] + i for i in range(151)])


@pytest.mark.parametrize("units", ["cm", "in"])
def test_inches_stand_where_they_should(units: Units) -> None:
    """Eight marks an inch of 25.4 mm (1959 agreement), the inch marks the longest."""
    found = marks(units, "in mark")
    places = [line.start[0] for line in found]
    assert places == pytest.approx([places[0] + i * 25.4 / 8 for i in range(49)])
    lengths = [abs(line.end[1] - line.start[1]) for line in found]
    assert [i for i, length in enumerate(lengths) if length == max(lengths)] == list(
        range(0, 49, 8)
    )


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("draw", [ruler, swatch_window])
def test_sheet_prints_true_on_both_papers(draw: type, units: Units) -> None:
    """It fits A4 and letter, and a unit of the drawing is a millimeter of paper."""
    drawing = draw(units)
    assert ROOM.holds(Box(0, 0, drawing.width, drawing.height))
    assert Box(0, 0, drawing.width, drawing.height).holds(extent(drawing.shapes))
    root = etree.fromstring(svg(drawing).encode())
    size = (root.get("width"), root.get("height"))
    assert root.get("viewBox").split()[2:] == [length.removesuffix("mm") for length in size]
    assert "style" not in {name for element in root.iter() for name in element.attrib}


def test_card_is_a_bank_card() -> None:
    """85.60 by 53.98 mm: ISO/IEC 7810, format ID-1, from memory."""
    assert (CARD_WIDTH, CARD_HEIGHT) == (85.60, 53.98)
    sizes = [
        (box.right - box.left, box.bottom - box.top)
        for box in (extent([s]) for s in ruler().shapes if isinstance(s, Path))
    ]
    assert any(size == pytest.approx((53.98, 85.60)) for size in sizes)
    assert any(size == pytest.approx((100.0, 100.0)) for size in sizes)


@pytest.mark.parametrize(("units", "side"), [("cm", 100.0), ("in", 101.6)])
def test_window_is_as_wide_as_it_says(units: Units, side: float) -> None:
    """10 cm, or 4 in of 25.4 mm."""
    hole = extent([s for s in swatch_window(units).shapes if s.style == "hole"])
    assert (hole.right - hole.left, hole.bottom - hole.top) == pytest.approx((side, side))


@pytest.mark.parametrize(("units", "step"), [("cm", 1.0), ("in", 6.35)])
def test_marks_stand_round_the_window(units: Units, step: float) -> None:
    """Every millimeter or quarter inch along its upper edge, from corner to corner."""
    drawing = swatch_window(units)
    hole = extent([s for s in drawing.shapes if s.style == "hole"])
    upper = sorted(
        s.start[0]
        for s in drawing.shapes
        if isinstance(s, Line) and s.start[1] == hole.top and s.end[1] < hole.top
    )
    number = round((hole.right - hole.left) / step)
    assert upper == pytest.approx([hole.left + i * step for i in range(number + 1)])
