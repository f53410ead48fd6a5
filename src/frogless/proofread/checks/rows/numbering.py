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
from frogless.proofread.checks.rows.numbers_of_sizes import missing_in_a_size
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Label, Span
from frogless.proofread.words.model import Again
from frogless.proofread.work.model import Told

_ROWS_SAID = re.compile(
    r"\((?P<count>\d{1,4}) (?:rnds|rounds|rows)(?: in all| total| in total)?\)", re.I
)
_OF_SIZES = re.compile(r"\bsizes?\b", re.IGNORECASE)


#: Numbers between the first and the last of a label that are looked at.
MOST_BETWEEN = 1000
_NONE: frozenset[int] = frozenset()


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
    gap: _Gap | None = None
    for line in lines_of(reading):
        told, label = line.told, line.told.label
        start = label.span.start if label else told.span.start
        broken = told.begins
        while at < len(breaks) and breaks[at].start < start:
            broken, at = True, at + 1
        if broken:
            yield from _left_out(reading, gap)
            gap = None
            count = _Count(loose=True) if told.begins else replace(count, loose=True, onward=_NONE)
            before = "" if told.begins else before
        if told.only and 0 not in told.only:
            count = replace(count, loose=True)  # the numbers are those of the first size
            continue
        if label is None or not label.numbers:
            count = _after(count, told)
            continue
        first, last = label.numbers[0], label.numbers[-1]
        if gap and first in gap.numbers:  # "Rows 2 and 4: ... Rows 3 and 5: ..."
            given = gap.given | frozenset(label.numbers)
            gap = _Gap(gap.line, (gap.numbers | _between(label)) - given, given)
            count = replace(count, last=max(count.last, last), kind=label.kind)
            continue
        yield from _left_out(reading, gap)
        fresh = broken or (label.kind != count.kind and first <= 2) or _of_sizes(reading, told)
        name = row_name(label, first)
        texts = None if fresh or not before else _texts(count, first, name, before)
        slipped = count.last + count.said + len(label.numbers) if texts else 0
        if texts:
            yield finding("row-numbers", reading, line, label.span, texts, "likely", number=first)
        onward = count.onward | ({first % 2} if label.onward else _NONE)
        if label.onward == "all":
            onward = frozenset({0, 1})
        passed = frozenset(n for n in _between(label) if n % 2 not in onward)
        gap = _Gap(line, passed, frozenset(label.numbers))
        told_so_far = _Count(last, 0, slipped, False, onward, label.kind)
        count = _after(told_so_far, told, labelled=len(label.numbers))
        before = row_name(label, last)
    yield from _left_out(reading, gap)
    yield from missing_in_a_size(reading)


@dataclass(frozen=True, slots=True)
class _Gap:
    """Numbers that a label passes over, "Rnds 21 + 23", and that rows after it may still have."""

    line: Line
    numbers: frozenset[int]
    given: frozenset[int]


def _between(label: Label) -> frozenset[int]:
    first, last = label.numbers[0], label.numbers[-1]
    return frozenset(range(first, min(last, first + MOST_BETWEEN))) - frozenset(label.numbers)


def _left_out(reading: Reading, gap: _Gap | None) -> Iterator[Finding]:
    label = gap.line.told.label if gap else None
    if gap is None or label is None or not gap.numbers:
        return
    missing = min(gap.numbers)
    name = row_name(label, missing)
    texts = (
        reading.script.words(label.span),
        f"{name} is nowhere",
        f"The label passes over {name}, and no row after it has that number: "
        "it is missing, or a range was meant.",
    )
    yield finding(
        "row-numbers", reading, gap.line, label.span, texts, "likely", number=label.numbers[0]
    )


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
