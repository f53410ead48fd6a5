"""Beads in an edging: where they sit, what each ball is good for, and what is told."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch, table

from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.model import EdgingBeadsPlan, Plan

STRAIGHT = section("to the hem", to="hem")
OPEN = 'with = "chain"\ngirth = "hip_girth"\nease = "4.7 cm"'
EDGING = {"pattern": "shell", "hook": "2.25 mm"}
USUAL = {"bead_diameter": "3 mm", "bead_hole": "2 mm"}


def beaded(made: Made, edging: dict[str, object] | None = None, **keys: object) -> Plan:
    """A straight skirt of 210 stitches, 35 shells at its hem, unless another edging is given."""
    tables = (table("edging", **(edging or EDGING)), table("edging.beads", **{**USUAL, **keys}))
    return plan(made(STRAIGHT, start=OPEN, tables=tables))


def beads_of(planned: Plan) -> EdgingBeadsPlan:
    """Those of its edging."""
    assert planned.main.edging is not None
    assert planned.main.edging.beads is not None
    return planned.main.edging.beads


def told(planned: Plan, name: str) -> str:
    """The remark of that name, "" when there is none."""
    return next((r.sentence for r in planned.remarks if r.name == name), "")


@pytest.mark.parametrize(
    ("keys", "strung"),
    [
        ({}, 39),
        ({"spare_percent": 0}, 35),
        ({"spare_percent": 20}, 42),
        ({"per_repeat": 2}, 77),
    ],
)
def test_spare_beads_are_whole_and_never_too_few(
    made: Made, keys: dict[str, object], strung: int
) -> None:
    """35 and 10 % are 38.5, so 39."""
    assert beads_of(beaded(made, **keys)).strung == strung


def test_beads_stay_on_one_ball_when_nobody_measured_a_repeat(made: Made) -> None:
    """Nothing is known of where a ball ends, and nothing said."""
    planned = beaded(made)
    assert beads_of(planned).balls == (35,)
    assert told(planned, "edging_beads_split") == ""


def test_balls_after_the_first_are_as_long_as_the_label_says(made: Made) -> None:
    """9.5 m make nine repeats of a metre; those of 120 m take the rest."""
    planned = beaded(made, yarn_per_repeat="1 m", first_ball="9.5 m")
    assert beads_of(planned).balls == (9, 26)
    assert "9 repeats of the edging and 1 more is needed" in told(planned, "edging_beads_split")


def test_full_ball_that_is_enough_is_not_split(made: Made) -> None:
    """120 m on the label for 35 repeats."""
    assert beads_of(beaded(made, yarn_per_repeat="1 m")).balls == (35,)


def test_repeat_that_no_ball_holds_is_refused(made: Made) -> None:
    """With both lengths."""
    with pytest.raises(InputError, match=r"a repeat takes 90 cm of yarn and a ball has 50 cm"):
        beaded(made, yarn_per_repeat="0.9 m", first_ball="50 cm")


@pytest.mark.parametrize(
    ("picots", "where"),
    [
        (3, "one in the middle picot of each repeat"),
        (2, "one in each repeat"),
        (1, "one in the picot of each repeat"),
    ],
)
def test_single_bead_sits_in_the_middle_picot_where_there_is_one(
    made: Made, picots: int, where: str
) -> None:
    """Of two picots none is the middle."""
    edging = {
        "pattern": "picot_group",
        "hook": "2.25 mm",
        "parameters": {"singles": 6, "picots": picots},
    }
    assert where in told(beaded(made, edging), "edging_beads")


def test_several_beads_are_only_counted(made: Made) -> None:
    """Where they go is the author's to say."""
    assert "2 in each repeat" in told(beaded(made, per_repeat=2), "edging_beads")


def test_hole_is_not_judged_when_the_label_says_no_length(made: Made) -> None:
    """The yarn's thickness is not known then."""
    unknown = swatch(18, 10).replace('ball_mass = "50 g"\nball_length = "120 m"\n', "")
    tables = (table("edging", **EDGING), table("edging.beads", **{**USUAL, "bead_hole": "0.5 mm"}))
    planned = plan(made(STRAIGHT, start=OPEN, tables=tables, sample=unknown))
    assert beads_of(planned).yarn_diameter is None
    assert told(planned, "edging_bead_hole") == ""


def test_beads_of_the_edging_itself_have_to_be_as_many_as_the_table_says(made: Made) -> None:
    """A beaded picot slides up one bead; two in each repeat are refused."""
    edging = {"pattern": "picot_bead", "hook": "2.25 mm", "parameters": {"singles": 6}}
    assert beads_of(beaded(made, edging)).beads == 35
    with pytest.raises(InputError, match=r'each repeat of "picot_bead" slides up 1, not 2'):
        beaded(made, edging, per_repeat=2)


def test_hole_that_is_wider_than_its_bead_is_refused(made: Made) -> None:
    """The two were written in each other's place."""
    with pytest.raises(InputError, match="a hole of 3 mm does not go into a bead of 2 mm"):
        beaded(made, bead_diameter="2 mm", bead_hole="3 mm")
