"""What the command line prints of counts that fit a stitch multiple, with the round in words."""

from __future__ import annotations

import textwrap
from collections import Counter
from collections.abc import Iterator

from frogless.errors import InputError
from frogless.plan.counts import CountThatWorks, correction, counts_that_work
from frogless.plan.landing import multiple_note
from frogless.rows.nodes import End, Piece, Row, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.swatch import Gauge
from frogless.units import Units
from frogless.write.near import show_small
from frogless.write.pattern import write_rows

COLUMNS = 100
LONGEST = 4


def counts_text(
    count: int,
    multiple: int,
    offset: int,
    *,
    closed: bool,
    gauge: Gauge | None = None,
    terms: Dialect = "us",
    units: Units = "cm",
) -> str:
    """Every count that works, how many repeats and what girth it gives, and the round to it.

    Args:
        offset: stitches over; in rounds (`closed`) they are left off, since a round has no edges
            to balance.
        gauge: of the stitches counted; without it girths are left out.

    Raises:
        InputError: a number is too small.
        Impossible: no count is near enough.
    """
    over = 0 if closed else offset
    width = gauge.width.value if gauge else None
    found = counts_that_work(count, multiple, over, width)
    head = f"{count} stitches in {'rounds' if closed else 'rows'}, {_note(multiple, over)}"
    told = (_entry(one, count, gauge, terms, units, closed=closed) for one in found)
    return "\n".join((f"{head}:", *(line for entry in told for line in entry))) + "\n"


def ask_which(count: int, multiple: int, offset: int | None) -> None:
    """Asks for rows or rounds, with what either gives.

    Raises:
        InputError: always, unless nothing is over either way (an offset of 0 was given).
    """
    if offset == 0:
        return
    rounds = _short(counts_that_work(count, multiple))
    if offset is None:
        rows = "in rows a pattern has mostly stitches over: write them as --offset"
    else:
        rows = (
            f"in rows ({multiple} + {offset}) {_short(counts_that_work(count, multiple, offset))}"
        )
    raise InputError(
        f"are the {count} stitches worked in rounds or in rows? In rounds {rounds}; {rows}. "
        "Write --rounds or --rows"
    )


def _short(found: tuple[CountThatWorks, ...]) -> str:
    return " or ".join(
        f"{one.count} with {_change(one)}"
        if one.change
        else f"{one.count} is ready ({_repeats(one)})"
        for one in found
    )


def _note(multiple: int, offset: int) -> str:
    return multiple_note(multiple, offset) or "any number of stitches"


def _repeats(one: CountThatWorks) -> str:
    return f"{one.repeats} repeat{'' if one.repeats == 1 else 's'}"


def _change(one: CountThatWorks) -> str:
    many, what = abs(one.change), "increase" if one.change > 0 else "decrease"
    return f"{many} {what}{'' if many == 1 else 's'}"


def _entry(
    one: CountThatWorks,
    count: int,
    gauge: Gauge | None,
    terms: Dialect,
    units: Units,
    *,
    closed: bool,
) -> Iterator[str]:
    girth = _girth(one, gauge, units)
    if not one.change:
        yield f"* {one.count} is ready: {_repeats(one)}{girth}"
        return
    yield f"* {one.count}: {_change(one)}, {_repeats(one)}{girth}"
    told = _worked(one, count, terms, closed=closed)
    yield from textwrap.wrap(told, COLUMNS, initial_indent="  ", subsequent_indent="  ")
    if closed and (spacing := _spacing(one)):
        yield f"  {spacing}"
    if one.shows:
        yield "  More than one stitch in fifty: it may show as a faint ruffle or gathering."


def _girth(one: CountThatWorks, gauge: Gauge | None, units: Units) -> str:
    if gauge is None or one.off is None:
        return ""
    off = f" ({'+' if one.off > 0 else '−'}{show_small(abs(one.off), units)})" if one.off else ""
    return f", {show_small(one.count * gauge.width.value, units)}{off}"


def _worked(one: CountThatWorks, count: int, terms: Dialect, *, closed: bool) -> str:
    """The round or row of single crochet that adapts the count."""
    below = Row(0, "RS", "hem", (Work("single_crochet", count),), count, end=End("first_stitch"))
    row = correction(count, one.change, closed=closed)
    line = write_rows(Piece("hem", closed, (below, row)), dictionary(), terms)[1]
    return f"{'Round' if closed else 'Row'}: {line.text} ({line.count})"


def _spacing(one: CountThatWorks) -> str:
    """From each change to the next: one by one when they are few, else how often each gap comes."""
    if len(one.gaps) < 2:
        return ""
    if len(one.gaps) <= LONGEST:
        return f"From one to the next: {', '.join(map(str, one.gaps))} stitches."
    often = sorted(Counter(one.gaps).items())
    told = " and ".join(f"{gap} stitches {times} times" for gap, times in often)
    return f"From one to the next: {told}."
