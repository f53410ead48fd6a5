"""Skirts that widen by their repeats, and by the hook, as worked by hand."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from sample_designs import Design, basis, body, section, swatch

from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.write.pattern import write_program

HERE = Path(__file__).parent
BODY = body(waist_girth="84 cm", hip_girth="100 cm", waist_to_hip="20 cm")
HOOKS = ("3.5 mm", "4 mm", "4.5 mm")
REPEATS = ("29 cm", "32 cm", "35 cm")
"""Ten repeats of 8 stitches on each hook."""


def expected(case: str) -> dict[str, float]:
    """The facts of a case."""
    with (HERE / "repeats.csv").open(encoding="utf-8", newline="") as lines:
        return {r["fact"]: float(r["expected"]) for r in csv.DictReader(lines) if r["case"] == case}


def test_repeats_widen_all_alike_and_none_is_broken(tmp_path: Path) -> None:
    """Sixteen shaping points, one in each repeat: 10, 12 and 14 stitches of it."""
    known = basis(
        tmp_path,
        Design(
            (
                section("to hip", shape="shaped", length="20 cm", girth="106.7 cm", points=16),
                section("to hem", shape="shaped", to="hem", girth="124.4 cm", points=16),
            ),
            start='with = "foundation_double_crochet"\ngirth = "88.9 cm"\nease_allowed = ["-0.3 cm", "0.3 cm"]',
        ).text,
        BODY,
        swatch(),
    )
    planned = plan(known)
    to_hip, to_hem = planned.sections
    facts = expected("by the repeat")
    found = (to_hip.count_before, to_hip.count_after, to_hem.count_after)
    assert found == (facts["waist"], facts["hip"], facts["hem"])
    assert all(row.count % 16 == 0 for row in planned.program.pieces[0].rows)


def test_hook_widens_where_the_count_stays_and_its_round_is_named(tmp_path: Path) -> None:
    """32 repeats of 8 on three hooks; the text says in which round the hook changes."""
    known = basis(
        tmp_path,
        Design(
            tuple(
                section(f"on {hook}", hook=hook, **end)
                for hook, end in zip(
                    HOOKS, ({"length": "15 cm"}, {"length": "15 cm"}, {"to": "hem"}), strict=True
                )
            ),
            start='with = "foundation_double_crochet"\ngirth = "92.8 cm"\nease_allowed = ["-0.1 cm", "0.1 cm"]',
        ).text,
        BODY,
        *(swatch(80, width=w, hook=h) for w, h in zip(REPEATS, HOOKS, strict=True)),
    )
    planned = plan(known)
    assert {row.count for row in planned.program.pieces[0].rows} == {256}
    girths = [s.count_after * s.gauge.width.value for s in planned.sections]
    assert girths == pytest.approx(list(expected("by the hook").values()), abs=0.5)
    lines = write_program(planned.program, known.stitches, "us").splitlines()
    for planned_section, hook in zip(planned.sections[1:], HOOKS[1:], strict=True):
        line = next(x for x in lines if x.startswith(f"Rnd {planned_section.first_round} "))
        assert f"Change to {hook} hook" in line


def test_hook_without_a_swatch_is_refused_with_those_there_are(tmp_path: Path) -> None:
    """A gauge on another hook is another gauge."""
    sections = (section("on 5 mm", hook="5 mm", to="hem"),)
    known = basis(tmp_path, Design(sections).text, BODY, swatch())
    with pytest.raises(InputError, match=r"5 mm hook .*3\.5 mm"):
        plan(known)
