"""The graph of girth against depth."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from math import inf

import pytest
from one_piece import alter
from sample_plans import build, circle, flared, long, straight

from frogless.draw.describe import describe_profile
from frogless.draw.drawing import Circle, Drawing, Line, Path
from frogless.draw.layout import Box, extent, text_box
from frogless.draw.profile import profile
from frogless.draw.styles import STYLES
from frogless.plan.model import Plan
from frogless.units import Units


def draw(plan: Plan, units: Units = "cm") -> Drawing:
    """The profile with the words as they are."""
    return profile(plan, title="Skirt", units=units, labels={})


def lines(drawing: Drawing, style: str) -> list[Line]:
    """The straight lines of one class."""
    return [s for s in drawing.shapes if isinstance(s, Line) and s.style == style]


def circles(drawing: Drawing, style: str) -> list[Circle]:
    """The dots of one class, that of the legend left out."""
    return [s for s in drawing.shapes if isinstance(s, Circle) and s.style == style][:-1]


def paths(drawing: Drawing, style: str) -> list[Path]:
    """The paths of one class."""
    return [s for s in drawing.shapes if isinstance(s, Path) and s.style == style]


@pytest.mark.parametrize("units", ["cm", "in"])
def test_labels_do_not_overlap_and_lie_on_the_sheet(any_plan: Plan, units: Units) -> None:
    """Axis, round numbers, landmarks and legend stand apart for every shape of skirt."""
    drawing = draw(any_plan, units)
    pairs = combinations(drawing.texts, 2)
    assert [(a.text, b.text) for a, b in pairs if text_box(a).overlaps(text_box(b))] == []
    sheet = Box(1, 1, drawing.width - 1, drawing.height - 1)
    assert sheet.holds(extent(drawing.shapes))


@pytest.mark.parametrize("units", ["cm", "in"])
def test_no_leader_runs_through_lettering(
    any_plan: Plan, units: Units, struck_through: Callable[[Drawing], list[str]]
) -> None:
    """Leaders keep off the axis and the labels of other landmarks."""
    assert struck_through(draw(any_plan, units)) == []


def test_lettering_can_be_read_on_a_phone(any_plan: Plan) -> None:
    """At 360 pixels across no letter size falls under 9.5 pixels."""
    drawing = draw(any_plan)
    smallest = min(STYLES[text.style].size for text in drawing.texts)
    assert smallest * 360 / drawing.width > 9.5


def test_stair_has_a_tread_for_each_round(any_plan: Plan) -> None:
    """Down within a round, across between two, from the top edge to the hem."""
    stair = paths(draw(any_plan), "worked")[0]
    rounds = any_plan.sections[-1].last_round
    assert len(stair.points) == 1 + 2 * rounds
    assert all(
        a[0] == b[0] or a[1] == b[1] for a, b in zip(stair.points, stair.points[1:], strict=False)
    )


def test_dots_stand_at_girth_and_depth() -> None:
    """Distances across go with girths, distances down with depths."""
    plan = build(flared())
    dots = circles(draw(plan), "landmark dot")
    across = [b.centre[0] - dots[0].centre[0] for b in dots[1:]]
    girths = [
        m.garment.value - plan.main.landmarks[0].garment.value for m in plan.main.landmarks[1:]
    ]
    assert [x / across[-1] for x in across] == pytest.approx([g / girths[-1] for g in girths])
    down = [b.centre[1] - dots[0].centre[1] for b in dots[1:]]
    assert [y / down[-1] for y in down] == pytest.approx([1 / 6, 2 / 6, 1])


def test_stair_ends_on_the_landmarks_dots() -> None:
    """The worked girth at a landmark is a corner of the stair."""
    drawing = draw(build(flared()))
    corners = {(round(x, 6), round(y, 6)) for x, y in paths(drawing, "worked")[0].points}
    for dot in circles(drawing, "landmark dot"):
        assert (round(dot.centre[0], 6), round(dot.centre[1], 6)) in corners


def test_whiskers_reach_what_is_allowed() -> None:
    """At the hem 3 cm either way of 142 cm: 6 cm of axis, capped at both ends."""
    plan = build(flared())
    drawing = draw(plan)
    dots = circles(drawing, "landmark dot")
    scale = (dots[-1].centre[0] - dots[0].centre[0]) / (
        plan.main.landmarks[-1].garment.value - plan.main.landmarks[0].garment.value
    )
    level = [w for w in lines(drawing, "whisker") if w.start[1] == w.end[1] == dots[-1].centre[1]]
    assert [w.end[0] - w.start[0] for w in level] == pytest.approx([60 * scale])


def test_whisker_is_left_out_where_nothing_was_said() -> None:
    """A hem without limits has no caps, and infinity does not reach the axis."""
    plan = build(straight())
    free = draw(plan)
    marks = tuple(replace(m, low=m.wanted - 10, high=inf) for m in plan.main.landmarks)
    half_free = draw(alter(plan, landmarks=marks))
    marks = tuple(replace(m, low=0.0, high=inf) for m in plan.main.landmarks)
    wholly_free = draw(alter(plan, landmarks=marks))

    def caps(drawing: Drawing) -> int:
        legend = 2
        return (
            sum(
                w.start[0] == w.end[0] and w.start[1] != w.end[1] for w in lines(drawing, "whisker")
            )
            - legend
        )

    assert caps(free) == 4
    assert caps(half_free) == 3
    assert caps(wholly_free) == 0


def test_stray_runs_from_the_wanted_to_the_worked_girth() -> None:
    """Its worked end lies on the stair."""
    plan = build(flared())
    drawing = draw(plan)
    strays = lines(drawing, "stray")[:-1]
    corners = {(round(x, 4), round(y, 4)) for x, y in paths(drawing, "worked")[0].points}
    assert len(strays) == 3
    assert all((round(s.end[0], 4), round(s.end[1], 4)) in corners for s in strays)
    told = "\n".join(text.text for text in drawing.texts if text.style == "legend")
    assert "+3\u00a0cm\u00a0in\u00a0round\u00a01" in told


def test_shaping_rounds_are_ticked_and_numbered() -> None:
    """Every shaping round has its tick; all 13 numbers find room, a circle's 35 do not."""
    for plan, rounds in ((build(flared()), 13), (build(circle()), 35)):
        drawing = draw(plan)
        ticks = lines(drawing, "tick")[:-1]
        inside = [t for t in drawing.texts if t.style == "axis" and t.anchor == "start"]
        numbers = [t.text for t in inside]
        assert len(ticks) == rounds
        assert numbers == sorted(numbers, key=int)
        assert numbers[0] == "1"
        assert len(numbers) <= rounds
    assert len(numbers) < 35


def test_axes_are_marked_in_round_numbers() -> None:
    """Centimetres in fives and tens, inches in whole ones; the girths name their unit once."""
    metric = {t.text for t in draw(build(flared())).texts if t.style == "axis"}
    assert {"0 cm", "10 cm", "60 cm", "100 cm", "120", "140"} <= metric
    inches = [
        t.text for t in draw(build(long()), "in").texts if t.style == "axis" and " in" in t.text
    ]
    assert inches
    assert not [text for text in inches if "/" in text]


def test_body_is_drawn_when_it_is_known() -> None:
    """A dashed line through the body's girths; nothing, and no key to it, without any."""
    plan = build(flared())
    assert len(paths(draw(plan), "body")) == 1
    bare = alter(plan, landmarks=tuple(replace(m, body=None) for m in plan.main.landmarks))
    drawing = draw(bare)
    assert paths(drawing, "body") == []
    assert "body" not in {text.text for text in drawing.texts}


def test_drawing_carries_its_words(any_plan: Plan) -> None:
    """The description is what `describe_profile` tells."""
    assert draw(any_plan).description == describe_profile(any_plan, "cm")
