"""Yarn that is carried along: up an edge, and under stitches."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from frogless.fabric.model import Fabric
from frogless.plan.model import Plan
from frogless.rows.nodes import Change, Row, Work
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Swatch, Yarn
from frogless.tally.carried import carried_length
from frogless.tally.catches import PartWork, main_gauge, works
from frogless.tally.model import YarnNeed
from frogless.tally.yarn import TAIL, yarn

Rows = Callable[..., tuple[Row, ...]]
DC = "double_crochet"
HIGH, WIDE = 10.0, 100 / 18


def striped(rows: tuple[Row, ...], word: str, carried: bool) -> tuple[Row, ...]:
    """The rounds with a change at the end of each that is followed by another colour."""
    changed = [
        replace(row, body=(*row.body, Change(after, carried))) if after != before else row
        for row, before, after in zip(rows, word, word[1:], strict=False)
    ]
    return (*changed, rows[-1])


@pytest.fixture
def garment(rows: Rows, plan: Callable[..., Plan]) -> Callable[..., Plan]:
    """Makes rounds of 100 doubles in the colours of a word."""

    def make(word: str, *, carried: bool = True) -> Plan:
        made = plan(striped(rows(number=len(word)), word, carried))
        (piece,) = made.program.pieces
        return replace(
            made, program=replace(made.program, pieces=(replace(piece, colour=word[0]),))
        )

    return make


@pytest.fixture
def needs(
    swatch: Callable[..., Swatch], stitches: Mapping[str, Stitch], fabric: Callable[[Plan], Fabric]
) -> Callable[[Plan], dict[str, YarnNeed]]:
    """The yarn of a plan by colour."""
    return lambda made: {need.colour: need for need in yarn(fabric(made), made, swatch(), stitches)}


def length(letter: str, made: Plan, fabric: Callable[[Plan], Fabric], gauge: Gauge) -> float:
    """mm of a colour that are carried."""
    return carried_length(letter, fabric(made), made, gauge)


@pytest.fixture
def gauge(plan: Callable[..., Plan], rows: Rows, swatch: Callable[..., Swatch]) -> Gauge:
    """18 by 10 doubles in 10 cm."""
    return main_gauge(plan(rows()), swatch())


def test_carried_yarn_is_as_long_as_the_rows_it_passes_are_high(
    garment: Callable[..., Plan], fabric: Callable[[Plan], Fabric], gauge: Gauge
) -> None:
    """AABBAAB: A passes rounds 3 and 4, B rounds 5 and 6, each 1 cm high."""
    made = garment("AABBAAB")
    assert length("A", made, fabric, gauge) == pytest.approx(2 * HIGH)
    assert length("B", made, fabric, gauge) == pytest.approx(2 * HIGH)


def test_nothing_is_carried_when_every_colour_is_cut(
    garment: Callable[..., Plan], fabric: Callable[[Plan], Fabric], gauge: Gauge
) -> None:
    """It costs tails instead."""
    assert length("A", garment("AABBAAB", carried=False), fabric, gauge) == 0


def test_yarn_under_stitches_is_as_long_as_they_are_wide(
    plan: Callable[..., Plan], fabric: Callable[[Plan], Fabric], gauge: Gauge
) -> None:
    """A under ten stitches of B; then from there to the next round, under 75 + 20."""
    first = (Work(DC, 5), Change("B"), Work(DC, 10), Change("A"), Work(DC, 10), Change("B"))
    one = Row(1, "RS", "body", (*first, Work(DC, 75)), 100)
    two = Row(2, "RS", "body", (Work(DC, 20), Change("A"), Work(DC, 80)), 100)
    made = plan((one, two))
    (piece,) = made.program.pieces
    program = replace(made.program, pieces=(replace(piece, colour="A"),))
    made = replace(made, program=program)
    assert length("A", made, fabric, gauge) == pytest.approx((10 + 75 + 20) * WIDE)
    assert length("B", made, fabric, gauge) == pytest.approx(10 * WIDE)


def test_colours_add_up_to_one_colour_when_tails_and_carried_yarn_are_left_out(
    garment: Callable[..., Plan],
    needs: Callable[[Plan], dict[str, YarnNeed]],
    plan: Callable[..., Plan],
    rows: Rows,
) -> None:
    """Four rounds of seven are A, three are B."""
    (one,) = needs(plan(rows(number=7))).values()
    found = needs(garment("AABBAAB"))
    worked = {letter: dict(need.by_part)["piece 1: body"] for letter, need in found.items()}
    whole = dict(one.by_part)["piece 1: body"]
    assert worked["A"] == pytest.approx(whole * 4 / 7)
    assert sum(worked.values()) == pytest.approx(whole)


@pytest.mark.parametrize(("carried", "ends"), [(True, (2, 2)), (False, (4, 4))])
def test_whole_is_one_colour_with_its_ends_and_what_is_carried(
    carried: bool,
    ends: tuple[int, int],
    garment: Callable[..., Plan],
    needs: Callable[[Plan], dict[str, YarnNeed]],
    plan: Callable[..., Plan],
    rows: Rows,
) -> None:
    """Two ends of 15 cm in one colour; carried two of each colour, cut four, and 4 cm carried."""
    (one,) = needs(plan(rows(number=7))).values()
    found = needs(garment("AABBAAB", carried=carried))
    assert (found["A"].ends, found["B"].ends) == ends
    more = (sum(ends) - 2) * TAIL + (4 * HIGH if carried else 0)
    total = sum(need.length.value for need in found.values())
    assert total == pytest.approx(one.length.value + more)
    for need in found.values():
        assert sum(grams for _, grams in need.by_part) == pytest.approx(need.mass.value)


def test_each_colour_is_bought_in_whole_balls(
    garment: Callable[..., Plan], needs: Callable[[Plan], dict[str, YarnNeed]]
) -> None:
    """However little of it there is."""
    found = needs(garment("AAAAAAB"))
    assert [found[letter].balls for letter in "AB"] == [1, 1]
    assert found["A"].mass.value > 5 * found["B"].mass.value


def test_colour_is_told_in_the_yarn_of_its_own_swatch(
    garment: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    label: Yarn,
) -> None:
    """Twice as heavy a swatch, in balls of 100 g: B takes twice the grams it would, A as before."""
    made = garment("AABBAAB")
    other = replace(label, name="other yarn", ball_mass=100.0)
    heavy = replace(swatch(mass=18.0, yarn=other), colour="B")
    plain = {n.colour: n for n in yarn(fabric(made), made, swatch(), stitches)}
    found = {n.colour: n for n in yarn(fabric(made), made, swatch(), stitches, (heavy,))}
    assert found["A"] == plain["A"]
    assert found["B"].name == "other yarn"
    assert found["B"].swatch == heavy
    part = "piece 1: body"
    assert dict(found["B"].by_part)[part] == pytest.approx(2 * dict(plain["B"].by_part)[part])
    assert found["B"].length.value == pytest.approx(plain["B"].length.value)


def test_section_in_two_colours_is_a_part_of_each(
    garment: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
    stitches: Mapping[str, Stitch],
    gauge: Gauge,
) -> None:
    """100 doubles of each round, four catches each; in one colour they are one part."""
    made = garment("AB")
    found = works(fabric(made), made, stitches, gauge)
    work = 400 * gauge.width.value
    assert [(part.name, part.colour) for part in found] == [
        ("piece 1: body", "A"),
        ("piece 1: body", "B"),
    ]
    assert [part.work for part in found] == pytest.approx([work, work])
    assert isinstance(found[0], PartWork)
