"""Numbers in brackets: as many as there are sizes, and growing from size to size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import Numbers, Said

#: From so many sizes on one that falls out of line is seen.
FEWEST = 3


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
    seen: set[tuple[int, int]] = set()
    for each in sorted(_within(said.acts + said.stated, 0), key=lambda n: n.span):
        place = (each.span.start, each.span.end)
        if place not in seen:
            seen.add(place)
            yield each


def _within(value: object, depth: int) -> Iterator[Numbers]:
    if isinstance(value, Numbers):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from _within(each, depth)
    elif is_dataclass(value) and depth < 40:
        for field in fields(value):
            yield from _within(getattr(value, field.name), depth + 1)


def sizes_in_order(reading: Reading) -> Iterator[Finding]:
    """One size that is smaller than the size before it, where all others grow.

    Only numbers that a piece begins with are looked at, and counts that no arithmetic confirms: in
    the middle of a piece sizes are shaped at their own pace and may well cross.
    """
    sizes = len(reading.script.sizes)
    if sizes < FEWEST:
        return
    for line in lines_of(reading):
        for numbers in _looked_at(line):
            values = numbers.values
            if len(values) != sizes or (at := out_of_order(values)) is None:
                continue
            names = reading.script.sizes
            name = names[at] or f"number {at + 1}"
            around = [values[each] for each in (at - 1, at + 1) if 0 <= each < sizes]
            between = " and ".join(map(str, around))
            texts = (
                f"{values[at]} in size {name}",
                f"between {between}" if len(around) == 2 else f"beside {between}",
                f"Every other size grows in {reading.script.words(numbers.span)}; {values[at]} "
                f"for size {name} falls out of line.",
            )
            yield finding("sizes-in-order", reading, line, numbers.span, texts, "likely", {at})


def _looked_at(line: Line) -> Iterator[Numbers]:
    told = line.told
    if told.begins:
        yield from numbers_of(Said(told.said.acts))
    if told.begins or all(worked.worked is None for worked in line.works):
        yield from (stated.count for stated in told.said.stated)


def out_of_order(values: Sequence[int]) -> int | None:
    """The one value without which the others grow; None when they grow, or more than one is off.

    Where two may be the one ("100, 90, 110": the first or the second), the later is named.
    """
    if all(a <= b for a, b in pairwise(values)):
        return None
    for at in range(len(values) - 1, -1, -1):
        rest = [*values[:at], *values[at + 1 :]]
        if len(rest) > 1 and all(a < b for a, b in pairwise(rest)):
            return at
    return None
