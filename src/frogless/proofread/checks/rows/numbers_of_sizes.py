"""Rows that have another number in each size: none missing in one of them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, finding, lines_of, row_name
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Label
from frogless.proofread.words.model import Again


def missing_in_a_size(reading: Reading) -> Iterator[Finding]:
    """ "Rows 2-4 (6):" and then "Row 5 (8):": Row 7 of the second size is nowhere."""
    sizes = len(reading.script.sizes)
    for one, other in pairwise(_labeled(lines_of(reading))):
        before, label = one.told.label, other.told.label
        if before is None or label is None or not (before.lasts or label.firsts):
            continue
        between = reading.told[one.index + 1 : other.index]
        worked = any(isinstance(act, Again) for each in between for act in each.said.acts)
        if worked or any(each.begins or each.only for each in (*between, one.told, other.told)):
            continue
        ends, begins = _ends(before, sizes), _begins(label, sizes)
        if not ends or not begins or begins[0] != ends[0] + 1:
            continue
        for size in range(1, sizes):
            if begins[size] != ends[size] + 1:
                yield _told(reading, other, size, ends[size])


def _labeled(lines: Sequence[Line]) -> list[Line]:
    return [each for each in lines if each.told.label and each.told.label.numbers]


def _begins(label: Label, sizes: int) -> tuple[int, ...]:
    begins = label.firsts or (label.numbers[0],) * sizes
    return begins if len(begins) == sizes else ()


def _ends(label: Label, sizes: int) -> tuple[int, ...]:
    """The last row of each size; of one that skips the line, the row before it."""
    ends = label.lasts or (label.numbers[-1],) * sizes
    begins = _begins(label, sizes)
    if len(ends) != sizes or not begins:
        return ()
    return tuple(max(end, begin - 1) for end, begin in zip(ends, begins, strict=True))


def _told(reading: Reading, line: Line, size: int, last: int) -> Finding:
    label = line.told.label
    assert label is not None  # noqa: S101 - only lines with a label are compared
    begins = _begins(label, len(reading.script.sizes))[size]
    name, expected = row_name(label, begins), row_name(label, last + 1)
    texts = (
        name,
        f"{expected} would follow",
        f"In size {reading.script.sizes[size]} {row_name(label, last)} is the last row before "
        f"{name}: look at the numbers of both.",
    )
    return finding("row-numbers", reading, line, label.span, texts, "likely", [size], begins)
