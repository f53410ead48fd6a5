"""The drawings in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from one_piece import alter
from sample_plans import build, circle, flared, long, pegged, straight

from frogless.draw.describe import describe, describe_profile
from frogless.draw.words import WORDS
from frogless.plan.model import Plan
from frogless.rows.nodes import End
from frogless.units import show_signed


def test_schematic_is_told_from_waist_to_hem() -> None:
    """Every girth with its depth, the length, the shaping, the trims and the join."""
    assert describe(build(flared()), "cm") == (
        "Front view of a skirt, folded flat: 84.5 cm around at the waist (152 stitches), "
        "102 cm at the high hip, 10 cm down (184 stitches), "
        "115.5 cm at the hip, 20 cm down (208 stitches), "
        "142 cm at the hem, 60 cm down (256 stitches). "
        "It is 60 cm long from the waist edge to the hem. "
        "Rounds 1 to 10 widen it (shaping points: 8, shaping rounds: 4). "
        "Rounds 11 to 20 widen it (shaping points: 8, shaping rounds: 3). "
        "Rounds 21 to 60 widen it (shaping points: 8, shaping rounds: 6). "
        "At the waist a covered elastic, a ring of 75.5 cm. "
        "Along the hem an edging of 32 repeats. "
        "From the waist hangs a beaded strand of 12 beads, 5 cm deep. "
        "From the waist hangs a beaded strand of 12 beads, 6 cm deep. "
        "The rounds are joined at centre back (behind)."
    )


def test_trims_are_told_by_what_they_are() -> None:
    """Cord, band and plain edging have sentences of their own; narrowing is called so."""
    assert "a drawcord through 22 eyelets" in describe(build(straight()), "cm")
    assert "an edging of 184 stitches" in describe(build(straight()), "cm")
    assert "a ribbed band 6 cm high" in describe(build(long()), "cm")
    assert "Rounds 23 to 66 narrow it" in describe(build(pegged()), "cm")


def test_nothing_is_told_of_what_is_not_there() -> None:
    """No waist treatment, no edging, no strand: no words about them."""
    plan = alter(build(circle()), waist=None, edging=None)
    told = describe(plan, "cm")
    assert not [word for word in ("elastic", "edging", "strand") if word in told]


def test_join_at_a_side_is_told() -> None:
    """The side is the wearer's."""
    assert describe(build(straight()), "cm", join_at="left side").endswith(
        "joined at the wearer’s left side."
    )


def test_other_words_are_used_when_handed_in() -> None:
    """Sentences are labels like all others."""
    told = describe(build(straight()), "in", {"tell_length": "Länge {length}", "hem": "Saum"})
    assert "Länge 22 3/4 in." in told
    assert "Saum" in told


def test_profile_is_told_with_its_strays() -> None:
    """Wanted and worked at each landmark, then how far each section strays and where."""
    told = describe_profile(build(flared()), "cm")
    assert told.startswith("Graph of girth against depth. At the waist, 0 cm down, wanted 84 cm")
    assert "At the hip, 20 cm down, wanted 116 cm, worked 115.5 cm." in told
    assert "Rounds 1 to 10 are farthest from the wanted girth 1 cm down, by +3 cm." in told


def test_profile_tells_no_stray_when_nothing_is_shaped() -> None:
    """A straight section strays from nothing."""
    plan = build(straight())
    told = describe_profile(alter(plan, sections=plan.main.sections[1:]), "cm")
    assert "farthest" not in told


@pytest.mark.parametrize(
    ("length", "shown"), [(25.0, "+2.5 cm"), (-25.0, "−2.5 cm"), (1.0, "0 cm"), (-1.0, "0 cm")]
)
def test_sign_goes_when_nothing_is_left_after_rounding(length: float, shown: str) -> None:
    """There is no plus or minus nothing."""
    assert show_signed(length, "cm") == shown


def test_description_leaves_no_bracket_unfilled(any_plan: Plan) -> None:
    """Every name in every sentence finds its value."""
    told = describe(any_plan, "cm") + describe_profile(any_plan, "in")
    assert "{" not in told
    assert all(text == text.strip() and text for text in WORDS.values())


def test_spiral_is_begun_and_not_joined() -> None:
    """Only its foundation is joined."""
    plan = build(straight())
    piece = plan.program.pieces[0]
    open_rows = tuple(replace(row, end=End()) for row in piece.rows)
    program = replace(plan.program, pieces=(replace(piece, rows=open_rows),))
    told = describe(replace(plan, program=program), "cm")
    assert "begun at centre back" in told
    assert "joined" not in told
