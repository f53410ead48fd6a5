"""What the proof holds of stitch patterns, seen to fail: whole repeats, columns in their rhythm, counts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from examples import Example, drafted, subject

from frogless.fabric.expand import expand
from frogless.plan.model import PatternPlan
from frogless.proof.checks.edges import check_multiples
from frogless.proof.checks.rows import check_planned
from frogless.proof.checks.shaping import check_shaping_rounds
from frogless.proof.model import Finding, Subject
from frogless.rows.nodes import Row, Work

Check = Callable[[Subject], Finding]


@pytest.fixture(scope="module")
def columns() -> Subject:
    """Panels between plain columns that widen."""
    return subject(drafted(Example("hop-garden-skirt")))


@pytest.fixture(scope="module")
def sheaves() -> Subject:
    """A pattern that widens by whole repeats."""
    return subject(drafted(Example("barn-dance-skirt")))


def pattern_of(found: Subject) -> PatternPlan:
    """The one pattern of a skirt."""
    (one,) = (s.pattern for s in found.plan.sections if s.pattern)
    return one


def planned_otherwise(found: Subject, change: Callable[[PatternPlan], PatternPlan]) -> Subject:
    """The subject with another pattern planned than was worked."""
    main = found.plan.main
    sections = tuple(
        replace(s, pattern=change(s.pattern)) if s.pattern else s for s in main.sections
    )
    pieces = (replace(main, sections=sections), *found.plan.pieces[1:])
    return replace(found, plan=replace(found.plan, pieces=pieces))


def worked_otherwise(found: Subject, number: int, change: Callable[[Row], Row]) -> Subject:
    """The subject with one round of the skirt worked otherwise."""
    first, *others = found.program.pieces
    rows = tuple(change(row) if row.number == number else row for row in first.rows)
    program = replace(found.program, pieces=(replace(first, rows=rows), *others))
    return replace(found, program=program, fabric=expand(program, found.stitches))


def a_stitch_more(row: Row) -> Row:
    """The round with two stitches worked after its last."""
    return replace(row, body=(*row.body, Work("single_crochet", 2)), count=row.count + 2)


@pytest.mark.parametrize("check", [check_multiples, check_planned, check_shaping_rounds])
def test_sound_patterns_pass(check: Check, columns: Subject, sheaves: Subject) -> None:
    """And were looked at."""
    for found in (columns, sheaves):
        assert check(found).verdict == "pass"
    assert check_multiples(sheaves).looked_at == len(pattern_of(sheaves).bands)


def test_repeats_that_do_not_fill_their_base_are_found(sheaves: Subject) -> None:
    """A repeat more than the stitches hold."""
    broken = planned_otherwise(
        sheaves,
        lambda p: replace(p, bands=tuple(replace(b, repeats=b.repeats + 1) for b in p.bands)),
    )
    assert check_multiples(broken).verdict == "fail"


def test_base_that_is_not_there_is_found(sheaves: Subject) -> None:
    """The round under a stretch leaves other stitches than planned."""
    base = pattern_of(sheaves).based[0]
    broken = worked_otherwise(sheaves, base, a_stitch_more)
    assert "stands on" in check_multiples(broken).detail
    assert "no whole repeats" in check_shaping_rounds(broken).detail
    assert check_planned(broken).verdict == "fail"


def test_column_that_grows_out_of_its_rhythm_is_found(columns: Subject) -> None:
    """In a round that is not planned to grow."""
    number = pattern_of(columns).bands[0].first_round + 1
    broken = worked_otherwise(columns, number, a_stitch_more)
    assert f"row {number}: " in check_shaping_rounds(broken).detail


def test_places_that_a_pattern_leaves_at_its_end_are_held(sheaves: Subject) -> None:
    """As planned."""
    broken = planned_otherwise(sheaves, lambda p: replace(p, left=p.left + 1))
    assert "end of sheaves" in check_planned(broken).detail
