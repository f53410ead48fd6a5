"""Measurements in a table: a column for each size, or a row for each."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from frogless.proofread.facts.lengths import lengths_in
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Lengths, Measurement
from frogless.proofread.facts.ways import name_of, way_of
from frogless.proofread.script.model import Span

_RULE = re.compile(r"[\s|:+=-]{3,}")
_UNIT = re.compile(r"\b(cm|in|inches|mm)\b", re.IGNORECASE)
_BODY = re.compile(r"\bto fit|\bbody\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Cell:
    text: str
    start: int


def tables_in(
    lines: tuple[Line, ...], sizes: tuple[str, ...]
) -> tuple[tuple[Measurement, ...], frozenset[int]]:
    """The measurements of all tables, and the places of the lines that they stand on.

    A table whose columns are not the pattern's sizes says nothing that is sure: it is left out.
    """
    found: list[Measurement] = []
    used: set[int] = set()
    block: list[Line] = []
    for line in (*lines, Line("", -1)):
        ruled = any(_is_rule(each.written) for each in block)
        wrapped = ruled and line.written[:2] == "  " and bool(line.text.strip())
        if _cells(line, ruled=bool(block)) or wrapped:
            block.append(line)
            continue
        if len(block) > 1 and any(_is_rule(each.written) or "|" in each.written for each in block):
            found += _measurements(block, sizes)
            used |= {each.start for each in block}
        block = []
    return tuple(found), frozenset(used)


def _is_rule(text: str) -> bool:
    return bool(text.strip()) and bool(_RULE.fullmatch(text)) and "-" in text


def _cells(line: Line, ruled: bool) -> list[_Cell]:
    """The cells of a line of a table; none when it is no such line."""
    written = line.written
    if _is_rule(written):
        return [_Cell("", line.start)] if ruled else []
    if written.count("|") >= 2:
        pieces = re.finditer(r"[^|]+", written)
    elif re.search(r"\S\s{2,}\S", written):
        pieces = re.finditer(r"\S+(?: \S+)*", written)
    else:
        return []
    cells = ((p.start(), line.text[p.start() : p.end()]) for p in pieces)
    return [_Cell(t.strip(), line.start + at + _blanks(t)) for at, t in cells if t.strip()]


def _blanks(text: str) -> int:
    return len(text) - len(text.lstrip())


def _measurements(block: list[Line], sizes: tuple[str, ...]) -> Iterator[Measurement]:
    rows = [_cells(line, ruled=True) for line in block if not _is_rule(line.written)]
    if not all(rows):
        return
    head, body = rows[0], rows[1:]
    names = [cell.text.lower() for cell in head]
    wanted = [size.lower() for size in sizes]
    if all(len(row) == 2 for row in rows):
        for name, value in rows:
            yield from _joined(name.text, [_one(value, _unit(name.text))])
    elif len(sizes) > 1 and names[-len(sizes) :] == wanted:
        for cells in body:
            yield from _across(cells, len(sizes), head[0].text)
    elif [row[0].text.lower() for row in body] == wanted:
        yield from _down(head, body)


def _across(cells: list[_Cell], sizes: int, corner: str) -> Iterator[Measurement]:
    if len(cells) != sizes + 1:
        return
    label = cells[0].text
    values = [_one(cell, _unit(label) or _unit(corner)) for cell in cells[1:]]
    yield from _joined(label, values)


def _down(head: list[_Cell], body: list[list[_Cell]]) -> Iterator[Measurement]:
    for column in range(1, len(head)):
        if all(len(row) == len(head) for row in body):
            label = head[column].text
            yield from _joined(label, [_one(row[column], _unit(label)) for row in body])


def _unit(text: str) -> str:
    found = _UNIT.search(text)
    return "" if not found else "in" if found[1].lower().startswith("in") else found[1].lower()


def _one(cell: _Cell, unit: str) -> Lengths | None:
    found = list(lengths_in(cell.text, cell.start, unit))
    return found[0] if len(found) == 1 and not found[0].ranged and not found[0].crossed else None


def _joined(label: str, values: list[Lengths | None]) -> Iterator[Measurement]:
    found = [each for each in values if each]
    way = way_of(label)
    if len(found) != len(values) or not way:
        return
    lengths = Lengths(
        Span(found[0].span.start, found[-1].span.end),
        tuple(v for each in found for v in each.metric),
        tuple(v for each in found for v in each.inches),
        min((each.metric_step for each in found if each.metric), default=0.0),
        min((each.inch_step for each in found if each.inches), default=0.0),
    )
    yield Measurement(name_of(label, way), lengths, way, body=bool(_BODY.search(label)))
