"""Garments in stitch patterns, held to arithmetic worked by hand: repeats, hooks, equal girth."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from sample_designs import Design, basis, body, section, swatch

from frogless import draft
from frogless.plan.model import Plan
from frogless.publish.drafted import Drafted
from frogless.rows.nodes import Together
from frogless.rows.walk import nodes
from frogless.write.pattern import write_program

HERE = Path(__file__).parent
BODY = body(waist_girth="64 cm", hip_girth="71 cm", waist_to_hip="20 cm")
SINGLE = (
    'stitch = "sc"\nstate = "washed"\nstitches = 20\nwidth = "10 cm"\nrows = 20\nheight = "10 cm"'
)
LATTICE = """[pattern.lattice]
name = "lattice"
rounds = \"\"\"
Rnd 1: Ch 1 (does not count as a st), *sc in next st, ch 3, skip next 3 sts; rep from * around.
Rnd 2: Ch 1, *sc in next st, 3 sc in next ch-3 sp; rep from * around.
\"\"\"
"""
"""Four stitches to a repeat, and as many after both its rounds."""


def facts(file: str, case: str) -> dict[str, float]:
    """The facts of a case."""
    with (HERE / file).open(encoding="utf-8", newline="") as lines:
        return {r["fact"]: float(r["expected"]) for r in csv.DictReader(lines) if r["case"] == case}


def reading(pattern: str, repeat: float, more: str = "") -> str:
    """Ten repeats of so many mm each; ten rows are 10 cm high."""
    return (
        f'pattern = "{pattern}"\nstate = "washed"\nrepeats = 10\nwidth = "{repeat:.6g} cm"\n'
        f'rows = 10\nheight = "10 cm"\n{more}'
    )


def drafted(
    folder: Path, *sections: str, girth: str, readings: tuple[str, ...], stitches: float = 20,
    tables: tuple[str, ...] = (),
) -> Drafted:  # fmt: skip
    """A skirt in patterns, proven; its swatch has the patterns beside double and single crochet."""
    text = Design(
        sections,
        start=f'with = "foundation_double_crochet"\ngirth = "{girth}"\nease_allowed = ["-0.3 cm", "0.3 cm"]',
        tables=tables,
    ).text
    sample = swatch(stitches, 10, readings=(*readings, SINGLE))
    return draft.develop(basis(folder, text, BODY, sample))


def repeats(plan: Plan) -> list[int]:
    """Of each section in a pattern."""
    return [s.pattern.bands[-1].repeats for s in plan.sections if s.pattern]


def test_graded_repeats_are_those_worked_by_hand(tmp_path: Path) -> None:
    """16 repeats of 10, 12 and 14 stitches at 18 in 10 cm: no repeat is broken."""
    grades = [{"half": half} for half in (4, 5, 6)]
    readings = tuple(
        reading("fan_arches", count / 0.18, f"parameters = {{ half = {half} }}")
        for half, count in ((4, 10), (5, 12), (6, 14))
    )
    found = drafted(
        tmp_path, section("lace", pattern="fan_arches", to="hem", grades=grades),
        girth="88.9 cm", readings=readings, stitches=18,
    ).plan  # fmt: skip
    wanted = facts("repeats.csv", "by the repeat")
    assert [s.count_after for s in found.sections] == list(wanted.values())
    assert repeats(found) == [16, 16, 16]
    girths = [s.girth_after.value for s in found.sections]
    assert girths == pytest.approx([count / 0.18 for count in wanted.values()])
    assert [round(girth) for girth in girths] == [889, 1067, 1244]


def test_hooks_widen_the_same_repeats_and_are_named(tmp_path: Path) -> None:
    """32 repeats of 2.9, 3.2 and 3.5 cm; the text names the round in which the hook changes."""
    hooks = ("3.5 mm", "4 mm", "4.5 mm")
    readings = tuple(
        reading("small_shells", width, f'hook = "{hook}"')
        for width, hook in zip((29, 32, 35), hooks, strict=True)
    )
    found = drafted(
        tmp_path, section("lace", pattern="small_shells", to="hem", hooks=list(hooks)),
        girth="92.8 cm", readings=readings,
    )  # fmt: skip
    girths = [s.girth_after.value for s in found.plan.sections]
    assert girths == pytest.approx(list(facts("repeats.csv", "by the hook").values()))
    assert repeats(found.plan) == [32, 32, 32]
    lines = write_program(found.plan.program, found.stitches, "us").splitlines()
    for one, hook in zip(found.plan.sections[1:], hooks[1:], strict=True):
        line = next(x for x in lines if x.startswith(f"Rnd {one.first_round} "))
        assert f"Change to {hook} hook" in line


def test_girth_stays_from_plain_stitches_to_a_pattern_and_back(tmp_path: Path) -> None:
    """Two gauges: the count changes in base rounds, by as much as the girth asks for."""
    found = drafted(
        tmp_path,
        section("top", length="10 cm"),
        section("lace", pattern="fan_arches", length="20 cm"),
        section("below", to="hem"),
        girth="72 cm",
        readings=(reading("fan_arches", 60),),
    ).plan
    wanted = facts("transitions.csv", "plain to pattern")
    top, lace, below = found.sections
    assert top.count_after == wanted["plain count"]
    assert lace.count_before == wanted["base count"]
    assert lace.girth_before.value == pytest.approx(wanted["girth mm"])
    assert below.count_before == wanted["count after"]
    (base,) = (r for r in found.program.pieces[0].rows if r.number == lace.first_round)
    together = sum(times for node, times in nodes(base.body) if isinstance(node, Together))
    assert together == wanted["decreases"]
    assert found.main.girths[lace.first_round] == pytest.approx(720)


def test_girth_stays_from_one_pattern_to_the_next(tmp_path: Path) -> None:
    """Repeats of 4 cm and of 3.2 cm."""
    found = drafted(
        tmp_path,
        section("lattice", pattern="lattice", length="20 cm"),
        section("shells", pattern="small_shells", to="hem"),
        girth="80 cm",
        readings=(reading("lattice", 40), reading("small_shells", 32)),
        tables=(LATTICE,),
    ).plan
    wanted = facts("transitions.csv", "pattern to pattern")
    assert repeats(found) == [wanted["first repeats"], wanted["second repeats"]]
    assert [s.girth_after.value for s in found.sections] == pytest.approx([wanted["girth mm"]] * 2)


def test_repeats_that_do_not_come_out_even_are_the_nearest(tmp_path: Path) -> None:
    """And the girth that they make is told."""
    found = drafted(
        tmp_path,
        section("top", length="10 cm"),
        section("lace", pattern="fan_arches", to="hem"),
        girth="80 cm",
        readings=(reading("fan_arches", 60),),
    ).plan
    wanted = facts("transitions.csv", "not even")
    assert repeats(found) == [wanted["repeats"]]
    assert found.landmarks[-1].garment.value == pytest.approx(wanted["girth mm"])
