"""The numbers of the rows: none missing, none twice, none backwards."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import (
    Line,
    counted,
    finding,
    headings,
    lines_of,
    row_name,
)
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Again
from frogless.proofread.work.model import Told

_ROWS_SAID = re.compile(
    r"\((?P<count>\d{1,4}) (?:rnds|rounds|rows)(?: in all| total| in total)?\)", re.I
)
_OF_SIZES = re.compile(r"\bsizes?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Count:
    """How far the numbers have come.

    Args:
        last: the last number that was given or worked.
        said: rows that a sentence between rows told of: worked there, or a summary of those below.
        slipped: what the number would have been where the last one was wrong.
        loose: rows were worked since that nobody numbered: any number further on is right.
        onward: numbers that a label said beforehand ("Row 2 and all even rows"), by remainder.
        kind: "row" or "round".
    """

    last: int = 0
    said: int = 0
    slipped: int = 0
    loose: bool = False
    onward: frozenset[int] = field(default=frozenset())
    kind: str = ""


def row_numbers(reading: Reading) -> Iterator[Finding]:
    """Rows that are missing, numbered twice, or go backwards."""
    breaks = headings(reading)
    at, count, before = 0, _Count(loose=True), ""
    for line in lines_of(reading):
        told = line.told
        start = told.label.span.start if told.label else told.span.start
        broken = told.begins
        while at < len(breaks) and breaks[at].start < start:
            broken, at = True, at + 1
        if broken:
            count = (
                replace(count, loose=True, onward=frozenset())
                if not told.begins
                else _Count(loose=True)
            )
            before = "" if told.begins else before
        label = told.label
        if label is None or not label.numbers:
            count = _after(count, told)
            continue
        first, last = label.numbers[0], label.numbers[-1]
        fresh = broken or (label.kind != count.kind and first <= 2) or _of_sizes(reading, told)
        texts = (
            None if fresh or not before else _texts(count, first, row_name(label, first), before)
        )
        slipped = count.last + count.said + len(label.numbers) if texts else 0
        if texts:
            yield finding("row-numbers", reading, line, label.span, texts, "likely", number=first)
        onward = count.onward | ({first % 2} if label.onward else frozenset())
        if label.onward == "all":
            onward = frozenset({0, 1})
        count = _after(
            _Count(last, 0, slipped, False, onward, label.kind), told, labelled=len(label.numbers)
        )
        before = row_name(label, last)


def _of_sizes(reading: Reading, told: Told) -> bool:
    """Rows that only some sizes work may be given a number again."""
    text = reading.script.plain
    start = told.label.span.start if told.label else told.span.start
    return bool(_OF_SIZES.search(text, max(0, start - 60), min(told.span.end, start + 120)))


def _texts(count: _Count, first: int, name: str, before: str) -> tuple[str, str, str] | None:
    expected = count.last + count.said + 1
    if first in (expected, count.last + 1, count.slipped + 1) or (
        count.loose and first >= expected
    ):
        return None
    if first == count.last:
        return (
            name,
            f"{name} was there already",
            f"{name} follows {before}: one of the two needs another number, or it stands here "
            "twice.",
        )
    if first < expected:
        kind = name.rsplit(" ", 1)[0]
        return (
            name,
            f"{kind} {expected} would follow",
            _backwards(count, name, f"{kind} {expected - 1}"),
        )
    skipped = [
        number
        for number in range(expected, min(first, expected + 50))
        if number % 2 not in count.onward
    ]
    if not skipped:
        return None
    kind = name.rsplit(" ", 1)[0]
    missing = f"{kind} {skipped[0]}" + (f" to {skipped[-1]}" if len(skipped) > 1 else "")
    verb = "are" if len(skipped) > 1 else "is"
    return (
        name,
        f"{kind} {expected} would follow",
        f"{name} follows {before}: {missing} {verb} missing, or the numbers slipped.",
    )


def _backwards(count: _Count, name: str, before: str) -> str:
    if count.said and int(name.rsplit(" ", 1)[1]) > count.last:
        rows = counted(count.said, "row")
        return f"{rows} are worked before it without a number, so {before} is done: count again."
    return f"{name} follows {before}: the numbers go backwards; count the rows worked before it."


def _after(count: _Count, told: Told, labelled: int = 0) -> _Count:
    """The numbers after a row or sentence: what it says to repeat moves them on.

    Args:
        labelled: rows that its label stands for; what it repeats is among them.
    """
    agains = [act for act in told.said.acts if isinstance(act, Again)]
    if labelled > 1:
        return count
    for act in agains:
        rows = _rows_of(act)
        if act.until_rows:
            count = replace(count, last=max(count.last, act.until_rows), loose=False)
        elif rows is None or act.until or act.length:
            count = replace(count, loose=True)
        elif not labelled:
            count = replace(count, said=count.said + rows)
        elif act is told.said.acts[0]:
            count = replace(count, loose=count.loose or rows > 1)
        else:  # a sentence behind the row: "Row 3: …, turn. Work 6 rows even."
            count = replace(count, said=count.said + rows)
    if told.label is not None and not labelled:
        return replace(count, last=count.last + 1, loose=True)
    return count


def _rows_of(act: Again) -> int | None:
    """How many rows an act of repeating works; None where it is not said, or differs by size."""
    if act.rows:
        return act.rows.values[0] if len(set(act.rows.values)) == 1 else None
    if act.times and act.first:
        if len(set(act.times.values)) > 1:
            return None
        return act.times.values[0] * (abs(act.last - act.first) + 1 if act.last else 1)
    return None


def stated_rows(reading: Reading) -> Iterator[tuple[Line, Span, int, int]]:
    """Ranges that say how many rows they are, "Rnds 8-15 (6 rnds)", and are another number."""
    for line in lines_of(reading):
        label = line.told.label
        if label is None or len(label.numbers) < 2:
            continue
        found = _ROWS_SAID.search(reading.script.plain, label.span.start, line.told.span.end)
        if found and int(found["count"]) != len(label.numbers):
            yield line, Span(*found.span()), int(found["count"]), len(label.numbers)
