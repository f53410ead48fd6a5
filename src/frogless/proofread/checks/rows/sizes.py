"""Numbers in brackets: as many as there are sizes, and growing from size to size."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.script.brackets import lists_in
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Numbers, Said
from frogless.proofread.work.acts import numbers_in

#: From so many sizes on one that falls out of line is seen.
FEWEST = 3
#: Smaller numbers in the middle of a piece are those of shaping, and sizes are shaped at their own
#: pace: they may well cross.
MANY = 20
#: Smaller numbers than this may leap: 1 (1, 4) buttons.
LEAST = 8
_UNIT = re.compile(r"\s?(?:cm|mm|in\b|inch|\")")


def size_brackets(reading: Reading) -> Iterator[Finding]:
    """Lists of another number of numbers than there are sizes."""
    sizes = len(reading.script.sizes)
    for line in lines_of(reading):
        for numbers in numbers_of(line.told.said):
            there = len(numbers.values)
            if there in (1, sizes):
                continue
            lack = sizes - there
            amount = (
                f"{abs(lack)} "
                f"{'is missing' if lack == 1 else 'are missing' if lack > 0 else 'too many'}"
            )
            where = line.name or "this sentence"
            texts = (
                f"{reading.script.words(numbers.span)}: {there} numbers",
                f"{sizes} sizes" if sizes > 1 else "one size",
                f"In {where} a list has {there} numbers, and the pattern has {sizes} sizes: "
                f"{amount}.",
            )
            yield finding("size-brackets", reading, line, numbers.span, texts, "certain")


def numbers_of(said: Said) -> Iterator[Numbers]:
    """Every number that a row says, in the order of the text and each once."""
    return iter({each.span: each for each in numbers_in((*said.acts, *said.stated))}.values())


def sizes_in_order(reading: Reading) -> Iterator[Finding]:
    """One size that is smaller than the size before it, where all others grow."""
    names = reading.script.sizes
    told: set[tuple[int, int]] = set()
    yield from _leaps(reading)
    for line, numbers, at in _disordered(reading):
        if (line.told.piece, at) in told:
            continue  # the rows that follow carry the same slip on
        told.add((line.told.piece, at))
        values = numbers.values
        name = names[at] or f"number {at + 1}"
        around = " and ".join(
            str(values[each]) for each in (at - 1, at + 1) if 0 <= each < len(values)
        )
        texts = (
            f"{values[at]} in size {name}",
            f"its neighbors have {around}",
            f"Every other size grows in {reading.script.words(numbers.span)}; "
            f"{values[at]} for size {name} falls out of line.",
        )
        yield finding("sizes-in-order", reading, line, numbers.span, texts, "likely", {at})


def _leaps(reading: Reading) -> Iterator[Finding]:
    """One size that is far from all others, and lengths in the rows that do not grow."""
    sizes = len(reading.script.sizes)
    for line in lines_of(reading):
        if sizes < FEWEST or not (line.told.label or line.told.said.acts):
            continue
        span = line.told.span
        for values, start, end in lists_in(reading.script.plain, span.start, span.end):
            if len(values) != sizes or min(values) < LEAST:
                continue
            length = _UNIT.match(reading.script.plain, end) is not None
            at = _leap(values) if length or sizes > FEWEST else None
            if at is None and length:
                at = out_of_order(values)
            if at is None:
                continue
            name = reading.script.sizes[at] or f"number {at + 1}"
            words = reading.script.words(Span(start, end))
            texts = (
                f"{values[at]} in size {name}",
                words,
                f"{values[at]} for size {name} is far from what the other sizes have in {words}: "
                "its digits may have changed round.",
            )
            where = Span(start, end)
            yield finding("sizes-in-order", reading, line, where, texts, "likely", {at})


def _leap(values: Sequence[int]) -> int | None:
    """The first or last value, when it lies a quarter and more away, and all others lie close."""
    steps = [abs(b - a) for a, b in pairwise(values)]
    for at, step, rest in ((0, steps[0], steps[1:]), (-1, steps[-1], steps[:-1])):
        if step * 4 >= max(values) and step >= 4 * max(1, *rest):
            return at % len(values)
    return None


def out_of_step(reading: Reading) -> Mapping[int, frozenset[int]]:
    """By row, the sizes whose arithmetic fails because two numbers of a list changed places.

    It fails in the row of the list, and where that is a foundation in the row after it.
    """
    found: dict[int, frozenset[int]] = {}
    for line, numbers, _ in _disordered(reading):
        right = sorted(numbers.values)
        wrong = frozenset(at for at, value in enumerate(numbers.values) if value != right[at])
        for index in (line.index, line.index + 1) if line.told.begins else (line.index,):
            found[index] = found.get(index, frozenset()) | wrong
    return found


def _disordered(reading: Reading) -> Iterator[tuple[Line, Numbers, int]]:
    sizes = len(reading.script.sizes)
    if sizes < FEWEST:
        return
    for line in lines_of(reading):
        for numbers in numbers_of(line.told.said):
            values = numbers.values
            shaping = not line.told.begins and (sizes <= FEWEST or min(values) < MANY)
            if len(values) != sizes or shaping or (at := out_of_order(values)) is None:
                continue
            yield line, numbers, at
            break


def out_of_order(values: Sequence[int]) -> int | None:
    """The one value without which the others grow; None when they grow, or more than one is off.

    Where it may be either of two ("85, 79"), it is the one without which they grow more evenly.
    """
    if all(a <= b for a, b in pairwise(values)):
        return None
    found: list[tuple[int, int]] = []
    for at in range(len(values)):
        steps = [b - a for a, b in pairwise([*values[:at], *values[at + 1 :]])]
        if steps and min(steps) >= 0:
            found.append((max(steps), at))
    return min(found)[1] if found else None
