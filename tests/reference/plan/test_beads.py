"""Beads in the picots of a hem, worked by hand: how many to string, and on which ball."""

from __future__ import annotations

import csv
from functools import partial
from pathlib import Path

from sample_designs import Design, basis, body, section, swatch, table

from frogless.plan.make import plan
from frogless.plan.model import Plan
from frogless.tally.notions import notions

HERE = Path(__file__).parent
HAND = {
    row["fact"]: float(row["expected"])
    for row in csv.DictReader((HERE / "beads.csv").read_text("utf-8").splitlines())
}
SKIRT = (
    section("waist to hip", shape="shaped", to="hip", ease="4 cm", points=8),
    section("hip to hem", shape="shaped", to="hem", girth="142 cm", points=8),
)
PICOTS = table(
    "edging",
    pattern="picot_group",
    hook="2.25 mm",
    parameters={"singles": 8, "picots": 3, "between": 0},
)
BEADS = partial(
    table, "edging.beads", bead_diameter="3 mm", yarn_per_repeat="0.9 m", first_ball="25 m"
)


def beaded(folder: Path, hole: str) -> Plan:
    """The flared skirt of 256 stitches at the hem, a bead in the middle picot of each group."""
    person = body(waist_girth="84 cm", hip_girth="112 cm", waist_to_hip="20 cm")
    design = Design(SKIRT, tables=(PICOTS, BEADS(bead_hole=hole)))
    return plan(basis(folder, design.text, person, swatch(18, 10)))


def told(planned: Plan) -> dict[str, str]:
    """What is said of the edging, by name."""
    return {r.name: r.sentence for r in planned.remarks if r.name.startswith("edging")}


def test_beads_are_strung_with_a_tenth_to_spare_and_split_where_the_ball_ends(
    tmp_path: Path,
) -> None:
    """36 beads, 27 groups on the first ball and five on the next."""
    edging = beaded(tmp_path, "2 mm").main.edging
    assert edging is not None
    assert edging.beads is not None
    first, following = edging.beads.balls
    assert {
        "repeats": edging.repeats,
        "beads": edging.beads.beads,
        "to string": edging.beads.strung,
        "yarn m": round(edging.repeats * 0.9, 6),
        "on the first ball": first,
        "on the next ball": following,
    } == HAND


def test_beads_are_told_before_the_edging_is_begun(tmp_path: Path) -> None:
    """How many, where they go, that the last strung comes first, and where the ball ends."""
    planned = beaded(tmp_path, "2 mm")
    sentences = told(planned)
    assert "string 36 beads on the yarn before" in sentences["edging_beads"]
    assert "one in the middle picot of each repeat" in sentences["edging_beads"]
    assert "strung last comes first" in sentences["edging_beads"]
    assert "27 on the first ball and 5 on the next" in sentences["edging_beads_split"]
    (bead,) = (one for one in notions(planned) if one.key == "bead")
    assert bead.pieces == HAND["to string"]
    assert "edging: 4 spare among them" in bead.detail


def test_hole_has_to_pass_the_yarn_doubled(tmp_path: Path) -> None:
    """50 g in 120 m are 417 tex, 0.84 mm thick and 1.68 mm doubled at the needle."""
    assert "edging_bead_hole" not in told(beaded(tmp_path, "1.7 mm"))
    assert "doubled at the needle, 1.7 mm" in told(beaded(tmp_path, "1.6 mm"))["edging_bead_hole"]
