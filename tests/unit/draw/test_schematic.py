"""The flat front view."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from one_piece import alter
from sample_plans import build, circle, flared, long, skirt, straight, tiny

from frogless.design.work import JoinAt
from frogless.draw.describe import describe
from frogless.draw.drawing import Drawing, Path, Text
from frogless.draw.layout import Box, extent, text_box
from frogless.draw.schematic import schematic
from frogless.draw.styles import STYLES
from frogless.plan.model import Plan
from frogless.units import Units

PHONE = 360


def draw(plan: Plan, units: Units = "cm", join_at: JoinAt = "centre back") -> Drawing:
    """The schematic with the words as they are."""
    return schematic(plan, title="Skirt", units=units, labels={}, join_at=join_at)


def of(drawing: Drawing, style: str) -> list[Path]:
    """The paths of one class."""
    return [s for s in drawing.shapes if s.style == style and isinstance(s, Path)]


def overlapping(drawing: Drawing) -> list[tuple[str, str]]:
    """Pairs of lettering that get into each other's way."""
    pairs = combinations(drawing.texts, 2)
    return [(a.text, b.text) for a, b in pairs if text_box(a).overlaps(text_box(b))]


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("join_at", ["centre back", "left side"])
def test_labels_do_not_overlap(any_plan: Plan, units: Units, join_at: JoinAt) -> None:
    """Tiny, long, straight, pegged and wide as a circle: all lettering stands apart."""
    assert overlapping(draw(any_plan, units, join_at)) == []


@settings(max_examples=40, deadline=None)
@given(
    waist=st.integers(20, 300),
    growth=st.tuples(st.integers(-10, 200), st.integers(-10, 200), st.integers(-10, 500)),
    rounds=st.tuples(st.integers(1, 15), st.integers(1, 15), st.integers(1, 120)),
    size=st.tuples(st.floats(2, 15), st.floats(2, 20)),
)
def test_any_skirt_fits_its_sheet_without_overlap(
    waist: int,
    growth: tuple[int, int, int],
    rounds: tuple[int, int, int],
    size: tuple[float, float],
) -> None:
    """Whatever the counts and the gauge, labels stand apart and everything lies on the sheet."""
    counts = [waist]
    for more in growth:
        counts.append(max(8, counts[-1] + more))
    drawing = draw(skirt((counts[0], counts[1], counts[2], counts[3]), rounds, *size))
    assert overlapping(drawing) == []
    assert Box(0, 0, drawing.width, drawing.height).holds(extent(drawing.shapes))


def test_everything_lies_on_the_sheet(any_plan: Plan) -> None:
    """No label or stroke is cut off, and none touches the rim."""
    for units in ("cm", "in"):
        drawing = draw(any_plan, units)
        sheet = Box(1, 1, drawing.width - 1, drawing.height - 1)
        assert sheet.holds(extent(drawing.shapes))


@pytest.mark.parametrize("units", ["cm", "in"])
def test_no_line_runs_through_lettering(
    any_plan: Plan, units: Units, struck_through: Callable[[Drawing], list[str]]
) -> None:
    """Dimension lines and leaders keep off all labels."""
    assert struck_through(draw(any_plan, units)) == []


def test_lettering_on_the_cloth_has_a_patch_to_itself(any_plan: Plan) -> None:
    """Nothing is drawn through it: what lies under it is covered, and nothing hangs over it."""
    drawing = draw(any_plan)
    (cloth,) = of(drawing, "cloth")
    patches = [extent([patch]) for patch in of(drawing, "patch")]
    inside = [t for t in drawing.texts if text_box(t).overlaps(extent([cloth]))]
    assert all(any(patch.holds(text_box(t)) for patch in patches) for t in inside)
    hung = [extent([s]) for s in drawing.shapes if s.style in ("strand", "bead", "cord", "eyelet")]
    assert not any(patch.overlaps(box) for patch in patches for box in hung)


def test_labels_stand_beside_the_skirt_when_there_is_no_room_on_it() -> None:
    """A circle is so flat that its hips lie too close together: its labels are led to their spots.

    Where there is room the skirt is as wide as the sheet lets it be.
    """
    beside, on_it = draw(build(circle())), draw(build(straight()))
    assert of(beside, "patch") == []
    assert of(on_it, "patch")
    (cloth,) = of(on_it, "cloth")
    assert extent([cloth]).right > on_it.width - 5


def test_sides_have_no_notches() -> None:
    """A few stitches more in one round are drawn as a slope from the rounds above to those below."""
    (outline,) = of(draw(build(flared())), "outline")
    right = outline.points[len(outline.points) // 2 :]
    slopes = [abs(b[0] - a[0]) / max(abs(b[1] - a[1]), 1e-9) for a, b in pairwise(right)]
    assert max(slopes) < 1


def test_widths_and_heights_share_one_scale(any_plan: Plan) -> None:
    """The outline is half of the greatest girth wide and as high as the skirt is long."""
    box = extent(of(draw(any_plan), "outline"))
    hem = any_plan.main.depths[any_plan.sections[-1].last_round]
    gauge = any_plan.sections[0].gauge.width.value
    rows = any_plan.program.pieces[0].rows
    widest = max(row.count for row in rows) * gauge / 2
    assert (box.right - box.left) / (box.bottom - box.top) == pytest.approx(widest / hem)


def test_lettering_can_be_read_on_a_phone(any_plan: Plan) -> None:
    """At 360 pixels across no letter size falls under 9.5 pixels."""
    drawing = draw(any_plan)
    smallest = min(STYLES[text.style].size for text in drawing.texts)
    assert smallest * PHONE / drawing.width > 9.5


def test_each_landmark_tells_count_and_girth() -> None:
    """Name, count, girth; lengths between and the whole; what is estimated says so."""
    texts = [text.text for text in draw(build(flared())).texts]
    for label in ("waist", "high hip", "hip", "hem", "152 sts, 84.5 cm", "208 sts, 115.5 cm"):
        assert label in texts
    assert texts.count("body estimated") == 1
    assert [t for t in texts if t in {"10 cm", "40 cm", "1 cm", "61 cm"}][:5] == [
        "10 cm", "10 cm", "40 cm", "1 cm", "61 cm",
    ]  # fmt: skip


def test_lengths_are_told_in_inches_when_asked() -> None:
    """No centimetre is left over."""
    texts = [text.text for text in draw(build(straight()), "in").texts]
    assert "184 sts, 39 3/4 in" in texts
    assert not [text for text in texts if " cm" in text]


def test_band_counts_into_the_whole_length() -> None:
    """6 cm of band above 104.4 cm of skirt, its waist 5 cm below the top edge."""
    texts = [text.text for text in draw(build(long())).texts]
    assert {"6 cm", "5 cm", "110.5 cm", "98 rows, 70 cm"} <= set(texts)


def test_join_is_marked_at_its_side_only() -> None:
    """Three arrow heads at the wearer's left, which is right on the sheet; none for centre back."""
    plan = build(straight())
    right = extent(of(draw(plan), "outline")).right
    sides = {at: of(draw(plan, join_at=at), "join") for at in ("left side", "right side")}
    assert of(draw(plan), "join") == []
    assert sum(abs(mark.start[0] - right) < 2 for mark in sides["left side"]) == 3
    assert not [mark for mark in sides["right side"] if abs(mark.start[0] - right) < 2]
    assert "joined at centre back (behind)" in draw(plan).texts[0].text


def test_shaping_points_of_the_front_are_drawn() -> None:
    """Eight points, four of them in front, in three sections; a tick at each of the 13 rounds."""
    drawing = draw(build(flared()))
    ticks = [s for s in drawing.shapes if s.style == "shaping tick"]
    legend = 2
    assert len(of(drawing, "shaping")) == 4 * 3
    assert len(ticks) == 4 * 13 + legend


def test_ticks_stay_short_when_rounds_lie_close() -> None:
    """In a circle no tick is longer than the gap between two rounds."""
    drawing = draw(build(circle()))
    ticks = [s for s in drawing.shapes if s.style == "shaping tick"][:-2]
    assert max(extent([t]).right - extent([t]).left for t in ticks) <= 0.9


def test_wanted_profile_is_dotted_on_both_sides() -> None:
    """From waist to hem through every landmark, mirrored."""
    left, right = of(draw(build(flared())), "wanted")
    middle = (left.start[0] + right.start[0]) / 2
    assert len(left.points) == 4
    assert [x - middle for x, _ in right.points] == pytest.approx(
        [middle - x for x, _ in left.points]
    )


def test_labels_are_replaced_when_others_are_handed_in() -> None:
    """Words come from outside by name; the rest stay, and unknown landmarks are spelled out."""
    labels = {"hem": "Saum", "count": "{count} M, {girth}"}
    plan = build(tiny())
    marks = (replace(plan.main.landmarks[0], key="low_hip_girth"), *plan.main.landmarks[1:])
    drawing = schematic(alter(plan, landmarks=marks), title="T", units="cm", labels=labels)
    texts = {text.text for text in drawing.texts}
    assert {"Saum", "60 M, 24 cm", "low hip", "hip"} <= texts


def test_drawing_carries_its_words(any_plan: Plan) -> None:
    """Title as given, description as `describe` tells it."""
    drawing = draw(any_plan)
    assert drawing.title == "Skirt"
    assert drawing.description == describe(any_plan, "cm")


def test_scale_bar_is_as_long_as_it_says() -> None:
    """The bar against the length of the skirt, which is 60 cm."""
    drawing = draw(build(flared()))
    box = extent(of(drawing, "outline"))
    bars = [s for s in drawing.shapes if s.style == "scale"]
    text = next(t for t in drawing.texts if t.style == "legend")
    assert isinstance(text, Text)
    bar = float(text.text.removesuffix(" cm"))
    assert extent(bars).right - extent(bars).left == pytest.approx(
        (box.bottom - box.top) * bar / 60
    )
