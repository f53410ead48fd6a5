"""Sections in a stitch pattern, measured and landed: whole repeats, whole repeats of rows.

From the fabric above to the pattern the girth stays as it is, whatever the two gauges are; a base
round makes up the count. Within the pattern a section keeps its repeats, or is shaped by whole
repeats, by plain columns between panels of repeats, by repeats that grow from stretch to stretch, or
by hooks.
"""

from __future__ import annotations

from collections.abc import Iterator

from frogless.because import Because, Step
from frogless.design.pieces.tube import PieceSection, Section
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.landing import because_landed, multiple_note
from frogless.plan.pattern_asked import Asked, Fabric, other_ways
from frogless.plan.patterned import BASE, Patterned, PatternRound
from frogless.plan.patterns import Pattern
from frogless.plan.sections import MOST_ROUNDS, Span, Target
from frogless.stitches.pattern_rows import worked


def kept(basis: Basis, ask: Asked) -> tuple[Span, ...]:
    """A section that keeps its repeats, in one stretch or in several of its grades or hooks."""
    n = repeats_through(basis, ask)
    found: list[Span] = []
    depth = ask.at.depth
    for i, fabric in enumerate(ask.fabrics):
        last = i == len(ask.fabrics) - 1
        end = ask.at.depth + ask.length * (i + 1) / len(ask.fabrics)
        before = found[-1] if found else ask.below.section
        based, begin = _goes_on(ask, fabric, before, n, first=not found)
        rows = _rows(basis, fabric, n, end - depth - ask.base * based, begin, free=last)
        rounds = [PatternRound(BASE, n)] * based
        rounds += [PatternRound(begin + row, n) for row in range(rows)]
        section = Patterned(
            fabric.pattern, ask.section.base_stitch, PatternRound(BASE, n), tuple(rounds),
            shape_by=ask.shape_by,
        )  # fmt: skip
        above = ask.at.rounds + sum(span.rounds for span in found)
        part = _named(ask.section, i, len(ask.fabrics))
        found.append(span_of(ask, fabric, section, part, depth, end, above, last=last))
        depth = found[-1].end_depth
    return tuple(found)


def _named(section: Section, i: int, of: int) -> Section:
    """A stretch of a section under a name of its own; only the last ends where the section does."""
    if of == 1:
        return section
    changes: dict[str, object] = {"name": f"{section.name} ({i + 1})"}
    if i < of - 1:
        changes |= {"to": None} | ({"body": None} if isinstance(section, PieceSection) else {})
    return section.model_copy(update=changes)


def _goes_on(
    ask: Asked, fabric: Fabric, before: Span | None, n: int, *, first: bool
) -> tuple[int, int]:
    """Whether a base round is needed (1 or 0), and the row of the pattern to begin with."""
    if before is not None and before.worked is not None:
        same = before.worked.pattern == fabric.pattern and not before.worked.columns
        if same and before.worked.rounds[-1].repeats == n:
            return 0, before.worked.next_row
        return 1, 0
    if ask.below.begun:
        return int(first), 0
    if ask.below.is_first:
        return 0, 0
    return int(ask.below.count != fabric.pattern.way.places(n)), 0


def span_of(
    ask: Asked,
    fabric: Fabric,
    section: Patterned,
    part: Section,
    depth: float,
    end: float,
    above: int,
    *,
    last: bool,
) -> Span:
    """A stretch of a section as a measured span."""
    heights = tuple(ask.base if r.row == BASE else fabric.height for r in section.rounds)
    return Span(
        section=part,
        key=ask.key,
        gauge=fabric.gauge,
        height=fabric.height,
        start_depth=depth,
        end_wanted=end,
        rounds_above=above,
        rounds=len(section.rounds),
        target=ask.target if last and ask.target else _as_made(ask, fabric, section),
        because=_because(ask, fabric, section, depth, end),
        heights=heights,
        worked=section,
    )


def _as_made(ask: Asked, fabric: Fabric, section: Patterned) -> Target | None:
    """What a grade or a hook makes of the repeats, where nobody asks for a girth of its own."""
    if len(ask.fabrics) < 2:
        return None
    girth = fabric.girth(section.rounds[-1].repeats)
    why = Because((Step("repeats", section.rounds[-1].repeats, ""),))
    return Target(girth, float("-inf"), float("inf"), why)


def _lengths(ask: Asked, depth: float, end: float) -> Iterator[Step]:
    """What is left of the length that is asked for, and the share of it that one stretch has."""
    worked = depth - (0.0 if ask.section.length is None else ask.at.depth)
    if worked > 1e-6:
        yield Step("worked", worked)
    if len(ask.fabrics) > 1:
        yield Step("length", end - depth)


def _because(ask: Asked, fabric: Fabric, section: Patterned, depth: float, end: float) -> Because:
    """Why so many rounds, and why so many repeats."""
    way, rounds = fabric.pattern.way, section.rounds
    based = sum(r.row == BASE for r in rounds)
    rows, period = len(rounds) - based, way.period
    setups = sum(way.setup for r in rounds if r.row == 0)
    whole, over = divmod(rows - setups, period)
    note = f"{whole} times the {period} rows of the pattern" if whole and period > 1 else ""
    note += f" and {over + setups} more" if note and over + setups else ""
    base = f"{based} of them base rounds" if based > 1 else "one of them a base round" * based
    first, begin = section.after(0), ask.below.girth
    count, width = way.places(first.repeats), fabric.gauge.width.value
    landed = because_landed(begin.wanted, width, count, multiple_note(way.multiple, way.offset))
    if section.columns:
        landed = ()
    elif fabric is not ask.fabrics[0]:
        landed = (Step("landed", count, "stitches"), Step("girth", count * width))
    return ask.why.then(
        *_lengths(ask, depth, end),
        Step("row_gauge", 100 / fabric.height, "rows per 10 cm"),
        Step("exact", (end - depth) / fabric.height, "rows"),
        Step("landed", len(rounds), "rows", ", ".join(filter(None, (note, base)))),
        Step("repeat", fabric.repeat),
        Step("repeats", first.repeats, ""),
        *landed,
    )


def repeats_through(basis: Basis, ask: Asked) -> int:
    """The repeats of a section that keeps them, nearest to the girths where it begins and ends.

    Raises:
        Impossible: no whole number of repeats is as wide as is asked for.
    """
    first, last = ask.fabrics[0], ask.fabrics[-1]
    if ask.below.begun:
        return repeats_of(first.pattern, ask.below.begun)
    above = ask.below.section.worked if ask.below.section else None
    if above and above.pattern == first.pattern and not above.columns and not ask.target:
        return above.rounds[-1].repeats  # what goes on in the same pattern is shaped by its hook
    least = max(fabric.pattern.way.least for fabric in ask.fabrics)
    begin, end = ask.below.girth, ask.target
    most = int(max(begin.wanted, end.wanted if end else 0.0) / min(first.repeat, last.repeat)) + 2
    fits = [
        n
        for n in range(least, max(most, least) + 1)
        if _inside(first.girth(n), begin) and (end is None or _inside(last.girth(n), end))
    ]
    if not fits:
        raise too_coarse(basis, ask)
    return min(
        fits,
        key=lambda n: (
            round(
                abs(first.girth(n) - begin.wanted)
                + (abs(last.girth(n) - end.wanted) if end else 0.0),
                4,
            ),
            -n,
        ),
    )


def repeats_of(pattern: Pattern, count: int) -> int:
    """Repeats over a count that they fill."""
    return (count - pattern.way.offset) // pattern.way.multiple


def _inside(girth: float, aim: Target) -> bool:
    return aim.low - 1e-6 <= girth <= aim.high + 1e-6


def too_coarse(basis: Basis, ask: Asked) -> Impossible:
    """Whole repeats miss a girth: the two that lie about it, and what else there is."""
    first, last = ask.fabrics[0], ask.fabrics[-1]
    aim, fabric = ask.below.girth, first
    n = max(int(aim.wanted / fabric.repeat), 1)
    if ask.target is not None and (
        not ask.below.is_first or any(_inside(first.girth(k), aim) for k in (n, n + 1))
    ):
        aim, fabric = ask.target, last
        n = max(int(aim.wanted / fabric.repeat), 1)
        if ask.shape_by in ("grades", "hook"):  # the repeats are those it begins with
            n = max(round(ask.below.girth.wanted / first.repeat), 1)
    near = " and ".join(f"{k} repeats are {basis.show(fabric.girth(k))}" for k in (n, n + 1))
    where = "start" if aim is ask.below.girth else ask.key
    short = min(abs(fabric.girth(k) - aim.wanted) for k in (n, n + 1))
    return Impossible(
        f'section "{ask.section.name}": {basis.show(aim.low)} to {basis.show(aim.high)} are wanted, '
        f"and a pattern cannot break a repeat: {near}",
        basis.place(f"{where}.girth"),
        short_stitches=fabric.pattern.way.multiple,
        short=short,
        ways_out=(
            f"a girth or an allowed ease that takes in one of them (a repeat is "
            f"{basis.show(fabric.repeat)})",
            "a pattern with smaller repeats, or other numbers of this one",
            *other_ways(ask),
        ),
        requirements=("multiple", "ease_allowed"),
    )


def _rows(basis: Basis, fabric: Fabric, n: int, length: float, begin: int, *, free: bool) -> int:
    """Rows that come nearest to a length: whole row repeats, or to a row that may end.

    A row may end the pattern where it leaves just as many places as the pattern stands on.
    """
    way = fabric.pattern.way
    most = int(max(length, 0.0) / fabric.height) + way.setup + 2 * way.period
    _check_rounds(basis, most)
    rows = worked(way, way.places(n), begin + most, basis.stitches)
    ends = [
        row
        for row in range(1, most + 1)
        if _is_whole(begin + row, way.setup, way.period)
        or (free and rows[begin + row - 1].count == way.places(n))
    ]
    return min(ends, key=lambda row: (round(abs(row * fabric.height - length), 4), -row))


def _check_rounds(basis: Basis, rounds: int) -> None:
    if rounds > 2 * MOST_ROUNDS:
        raise InputError(
            f"a section in a pattern would take {rounds} rounds; at most {MOST_ROUNDS} are planned "
            "in one section: make it shorter, or divide it into several"
        )


def _is_whole(rows: int, setup: int, period: int) -> bool:
    return rows >= setup + period and (rows - setup) % period == 0
