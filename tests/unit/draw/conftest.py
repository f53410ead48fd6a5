"""The sample skirts, one after the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

import pytest
from sample_plans import SAMPLES, build

from frogless.draw.drawing import Drawing, Line, Path, Point
from frogless.draw.layout import text_box
from frogless.plan.model import Plan


@pytest.fixture(params=sorted(SAMPLES))
def any_plan(request: pytest.FixtureRequest) -> Plan:
    """Each of the sample skirts in turn."""
    return build(SAMPLES[request.param]())


def _strokes(drawing: Drawing) -> Iterator[tuple[Point, Point]]:
    """The straight pieces of all dimension lines and leaders."""
    for shape in drawing.shapes:
        if shape.style == "dimension" and isinstance(shape, Path):
            yield from pairwise(shape.points)
        if shape.style == "dimension" and isinstance(shape, Line):
            yield shape.start, shape.end


@pytest.fixture(scope="session")
def struck_through() -> Callable[[Drawing], list[str]]:
    """Finds the lettering that a dimension line or a leader runs through."""

    def find(drawing: Drawing) -> list[str]:
        strokes = list(_strokes(drawing))
        return [t.text for t in drawing.texts if any(text_box(t).crossed_by(*s) for s in strokes)]

    return find
