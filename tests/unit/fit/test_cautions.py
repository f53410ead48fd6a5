"""Cautions."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from sample_plans import edging

from frogless.body.children import is_for_child
from frogless.body.measurements import Body
from frogless.fit.cautions import cautions
from frogless.plan.model import CordPlan, EdgingBeadsPlan, Plan, StrandPlan
from frogless.rows.nodes import Work

PlanMaker = Callable[..., Plan]
BodyMaker = Callable[..., Body]


def keys_of(plan: Plan, body: Body, *, for_children: bool = False, fibre: str = "") -> set[str]:
    """The keys of the cautions given."""
    return {c.key for c in cautions(plan, body, for_children=for_children, fibre=fibre)}


def test_only_the_hands_are_cautioned_when_a_plain_skirt_is_for_an_adult(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """Breaks are for everybody; nothing else holds."""
    assert keys_of(skirt(), body(age=30)) == {"hands"}


def test_a_cord_is_cautioned_when_the_garment_is_for_children(
    skirt: PlanMaker, body: BodyMaker, cord: Callable[..., CordPlan]
) -> None:
    """With the length of its ends, the standard, and local rules first."""
    plan = skirt(waist=cord())
    found = cautions(plan, body(), for_children=True)[0]
    assert found.key == "child_cord"
    assert "35 cm" in found.sentence
    assert "Local rules and the edition in force come first" in found.sentence
    assert "EN 14682" in found.source


def test_a_cord_is_not_cautioned_when_the_garment_is_for_an_adult(
    skirt: PlanMaker, body: BodyMaker, cord: Callable[..., CordPlan]
) -> None:
    """The standard speaks of children."""
    assert "child_cord" not in keys_of(skirt(waist=cord()), body(age=40))


@pytest.mark.parametrize(
    ("age", "present", "absent"),
    [
        (2.0, "small_parts", "small_parts_near_children"),
        (8.0, "small_parts_near_children", "small_parts"),
    ],
)
def test_beads_are_cautioned_by_age_when_the_body_is_a_child(
    skirt: PlanMaker, body: BodyMaker, strand: StrandPlan, age: float, present: str, absent: str
) -> None:
    """Under 3 they stay off; above, they stay away from smaller ones."""
    found = keys_of(skirt(strands=(strand,)), body(age=age))
    assert present in found
    assert absent not in found
    assert "child_hanging" in found


def test_a_strand_is_cautioned_when_an_adult_wears_it(
    skirt: PlanMaker, body: BodyMaker, strand: StrandPlan
) -> None:
    """It can catch."""
    assert "loose_strand" in keys_of(skirt(strands=(strand,)), body(age=30))


@pytest.mark.parametrize(("fibre", "given"), [("Cotton", True), ("wool", False)])
def test_flame_is_cautioned_when_a_child_wears_plant_fibre(
    skirt: PlanMaker, body: BodyMaker, fibre: str, *, given: bool
) -> None:
    """Cellulose burns readily, wool does not."""
    assert ("child_flame" in keys_of(skirt(), body(age=6), fibre=fibre)) is given


def test_the_stride_is_cautioned_when_the_hem_is_narrower_than_the_hip(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """With both girths."""
    plan = skirt(counts=(152, *(208,) * 40, 190))
    found = next(c for c in cautions(plan, body(age=30)) if c.key == "narrow_hem")
    assert "105.5 cm" in found.sentence
    assert "115.5 cm" in found.sentence


@pytest.mark.parametrize(
    ("rounds", "hem", "given"),
    [(40, 190, False), (40, 160, True), (60, 190, True), (60, 208, False)],
)
def test_a_stride_is_cautioned_when_the_hem_binds(
    skirt: PlanMaker, body: BodyMaker, rounds: int, hem: int, *, given: bool
) -> None:
    """Below the hip's girth at the knee, or below four fifths of it anywhere; once only."""
    plan = skirt(counts=(152, *(208,) * rounds, hem))
    found = keys_of(plan, body(age=30))
    assert ("stride" in found) is given
    assert not {"stride", "narrow_hem"} <= found


@pytest.mark.parametrize(
    ("counts", "stature", "given"), [(90, 1600.0, True), (60, 1600.0, False), (60, 1100.0, True)]
)
def test_stairs_are_cautioned_when_the_hem_comes_near_the_floor(
    skirt: PlanMaker, body: BodyMaker, counts: int, stature: float, *, given: bool
) -> None:
    """The depth of the hem against the stature."""
    plan = skirt(counts=(152,) * (counts + 1))
    assert ("long_hem" in keys_of(plan, body(age=30, stature=stature))) is given


@pytest.mark.parametrize(
    ("age", "girths", "child"),
    [
        (13.0, {}, True),
        (14.0, {}, False),
        (None, {"stature": 1250.0}, True),
        (30.0, {"stature": 1250.0}, False),
        (None, {"stature": 1600.0}, False),
        (None, {}, False),
    ],
)
def test_a_child_is_known_by_age_or_stature_when_the_design_does_not_say(
    body: BodyMaker, age: float | None, girths: dict[str, float], *, child: bool
) -> None:
    """Age decides where it is given, else a stature below any adult of the survey."""
    assert is_for_child(body(age=age, **girths)) is child


def test_a_child_is_meant_when_the_design_says_so(body: BodyMaker) -> None:
    """Whatever the body's age."""
    assert is_for_child(body(age=40), for_children=True)


def test_beads_in_an_edging_are_cautioned_as_those_of_a_strand(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """A bead is a small part wherever it is; it hangs from nothing, so nothing can catch."""
    beads = EdgingBeadsPlan(32, 4, 1, 3.0, 2.0, 0.9, (32,))
    made = skirt(edging=replace(edging(32, 8, 1420.0, 1), beads=beads))
    assert {"small_parts"} == keys_of(made, body(age=2)) - {"hands"}


def test_a_fringe_is_cautioned_when_a_child_wears_it(skirt: PlanMaker, body: BodyMaker) -> None:
    """And not when an adult does."""
    made = skirt(edging=replace(edging(32, 8, 1420.0, 1), pattern="fringe"))
    assert keys_of(made, body(age=6)) == {"hands", "child_fringe"}
    assert keys_of(made, body(age=40)) == {"hands"}


def test_beads_slid_up_in_the_rows_are_cautioned_when_no_table_counts_them(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """They are as small as those of a table."""
    made = skirt(edging=edging(32, 8, 1420.0, 1))
    assert keys_of(made, body(age=2)) == {"hands"}
    first, *others = made.program.pieces
    last = replace(first.rows[-1], body=(*first.rows[-1].body, Work("bead", 32)))
    beaded = replace(first, rows=(*first.rows[:-1], last))
    program = replace(made.program, pieces=(beaded, *others))
    assert "small_parts" in keys_of(replace(made, program=program), body(age=2))
