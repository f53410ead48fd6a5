"""The mirror image that a left-hander makes of the same rows."""

from __future__ import annotations

import pytest
from one_piece import alter
from sample_plans import Sample, Stretch, build, flared, pegged, strand

from frogless.design.work import JoinAt
from frogless.draw.drawing import Circle, Drawing, Line, Path, Point
from frogless.draw.mirror import Hand, join_for, lines_for, plan_for
from frogless.draw.outline import shaping_lines
from frogless.draw.pieces import pieces_drawing
from frogless.draw.schematic import schematic
from frogless.draw.svg import svg
from frogless.plan.model import PiecePlan, Plan, Shape
from frogless.rows.nodes import Program

HANDS: tuple[Hand, Hand] = ("right", "left")
SLOPED = Shape((((0, 0), (40, 0), (60, 90), (0, 90)),), (((0, 10), (30, 10)),), (1, 0))


def both(plan: Plan, join_at: JoinAt = "centre back") -> tuple[Drawing, Drawing]:
    """The schematic for the right and for the left hand."""
    first, second = (
        schematic(plan, title="T", units="cm", labels={}, join_at=join_at, hand=hand)
        for hand in HANDS
    )
    return first, second


def texts(drawing: Drawing) -> list[str]:
    """All lettering."""
    return sorted(text.text for text in drawing.texts)


def spots(drawing: Drawing, *styles: str) -> list[Point]:
    """The points of all shapes of some styles, from left to right."""
    found: list[Point] = []
    for shape in drawing.shapes:
        if shape.style not in styles:
            continue
        match shape:
            case Line(start, end):
                found += [start, end]
            case Path():
                found += shape.points
            case Circle(centre):
                found.append(centre)
    return sorted((round(x, 3), round(y, 3)) for x, y in found)


def on_cloth(drawing: Drawing, *styles: str) -> list[Point]:
    """The spots on the skirt itself, and not in the key below it."""
    lowest = max(y for _, y in spots(drawing, "outline"))
    return [spot for spot in spots(drawing, *styles) if spot[1] <= lowest]


def mirrored(points: list[Point], drawing: Drawing) -> list[Point]:
    """The same about the middle of the cloth."""
    xs = [x for x, _ in spots(drawing, "outline")]
    return sorted((round(min(xs) + max(xs) - x, 3), y) for x, y in points)


@pytest.mark.parametrize("join_at", ["centre back", "left side", "right side"])
def test_what_is_worked_is_mirrored_and_every_word_stays(join_at: JoinAt) -> None:
    """Shaping points and eyelets change sides; the lettering reads as before, where it stood."""
    sample = Sample(110, 10.0, 20.0, (Stretch("hip_girth", 9, 140, 6, (1, 2, 5, 6, 9), 1400.0),))
    for plan in (build(pegged()), build(sample)):
        right, left = both(plan, join_at)
        for styles in (("shaping", "shaping tick"), ("eyelet",), ("outline",)):
            found = on_cloth(left, *styles)
            for spot in mirrored(on_cloth(right, *styles), right):
                assert any(spot == pytest.approx(other, abs=0.01) for other in found)
                found.remove(next(o for o in found if spot == pytest.approx(o, abs=0.01)))
            assert found == []
    assert spots(left, "shaping tick") != spots(right, "shaping tick")


def test_lettering_is_the_same_and_not_turned_round() -> None:
    """The same words at the same places, but for the side where the rounds are joined."""
    right, left = both(build(flared()))
    assert [(t.text, t.at, t.anchor) for t in left.texts] == [
        (t.text, t.at, t.anchor) for t in right.texts
    ]
    assert "scale(-1" not in svg(left)
    assert left.description == right.description
    right, left = both(build(flared()), "left side")
    changed = [b for a, b in zip(texts(right), texts(left), strict=True) if a != b]
    assert changed == ["front, folded flat; joined at the wearer’s right side"]
    assert "right side" in left.description


def test_what_is_sewn_on_stays_on_its_side_of_the_wearer() -> None:
    """A strand hangs where the design has it, whichever hand it was made with."""
    hung = alter(build(flared()), strands=(strand(0, 30, 160, 60),))
    right, left = both(hung)
    assert spots(left, "strand", "bead") == spots(right, "strand", "bead")


def test_join_changes_sides_with_the_hand() -> None:
    """A join behind stays behind."""
    assert [join_for(at, "left") for at in ("centre back", "left side", "right side")] == [
        "centre back", "right side", "left side",
    ]  # fmt: skip
    assert join_for("left side", "right") == "left side"


def test_mirror_of_the_mirror_is_the_line_itself() -> None:
    """And a right-hander's lines are as they were."""
    lines = shaping_lines(build(pegged()))
    assert lines_for(lines, "right") == lines
    twice = lines_for(lines_for(lines, "left"), "left")
    for line, other in zip(twice, lines, strict=True):
        for (depth, turns), (other_depth, other_turns) in zip(
            line.stands, other.stands, strict=True
        ):
            assert (depth, turns) == pytest.approx((other_depth, other_turns))


def test_pieces_lie_as_the_left_hand_makes_them() -> None:
    """Outline, lines and the way of the work are mirrored; names and letters are not."""
    plan = Plan((PiecePlan("left front", "panel", shape=SLOPED),), {}, (), Program(()))
    (piece,) = plan_for(plan, "left").pieces
    assert piece.shape == Shape(
        (((0, 0), (-40, 0), (-60, 90), (0, 90)),), (((0, 10), (-30, 10)),), (-1, 0)
    )
    assert plan_for(plan, "right") is plan
    drawings = [pieces_drawing(plan_for(plan, hand), title="T", units="cm") for hand in HANDS]
    right, left = (drawing for drawing in drawings if drawing is not None)
    assert texts(left) == texts(right)
    assert spots(left, "outline") == mirrored(spots(right, "outline"), right)
    assert spots(left, "outline") != spots(right, "outline")


def test_piece_without_a_shape_stays_as_it_is() -> None:
    """A tube has nothing to mirror but its rows."""
    tube = PiecePlan("body", "tube")
    assert plan_for(Plan((tube,), {}, (), Program(())), "left").pieces == (tube,)
