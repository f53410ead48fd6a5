"""The rows of a pattern in a table: in each size what a row says, makes, and uses of what there is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from frogless.proofread.findings import Report
from frogless.proofread.script.model import Span
from frogless.proofread.work.model import Worked
from frogless.studio.proofreading.places import Place, Places

MOST_ROWS = 400
"""Rows that one page shows."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A row in one size."""

    size: str
    stated: int | None
    worked: int | None
    consumed: int | None
    available: int | None
    verdict: str

    @property
    def uses(self) -> str:
        """ "24 of 24"; "" where nothing is known."""
        if self.consumed is None:
            return ""
        return f"{self.consumed} of {'?' if self.available is None else self.available}"

    @property
    def differs(self) -> bool:
        """Whether it states another number than it makes."""
        return None not in (self.stated, self.worked) and self.stated != self.worked


@dataclass(frozen=True, slots=True)
class Row:
    """A row in all sizes that are shown."""

    name: str
    piece: str
    place: Place
    cells: tuple[Cell, ...]

    @property
    def wrong(self) -> bool:
        """Whether it is wrong in any of them."""
        return any(cell.verdict == "wrong" for cell in self.cells)


@dataclass(frozen=True, slots=True)
class RowTable:
    """The rows of a pattern; `more` are not shown."""

    sizes: tuple[str, ...]
    rows: tuple[Row, ...]
    more: int = 0


def row_table(report: Report, places: Places, size: str = "") -> RowTable | None:
    """The table of a report for one size or all; None when there is no row."""
    names = report.script.sizes
    chosen = [name for name in names if size in ("", name)]
    found = list(_grouped(report))
    if not found:
        return None
    rows = tuple(_row(report, places, of_row, size) for of_row in found[:MOST_ROWS])
    return RowTable(tuple(chosen), rows, max(0, len(found) - MOST_ROWS))


def name_of(report: Report, worked: Worked) -> str:
    """What a row is called: "Rnd 7", "Foundation"; a sentence by its first words."""
    told = report.told[worked.told]
    if told.label is None:
        words = report.script.words(told.span)
        return words if len(words) < 24 else words[:22].rstrip() + " …"
    if worked.number is None:
        return told.label.name.capitalize() or "Row"
    return f"{'Rnd' if told.label.kind == 'round' else 'Row'} {worked.number}"


def _grouped(report: Report) -> Iterator[tuple[Worked, ...]]:
    """The same row in each of its sizes; a row that is worked again is another row."""
    for _, together in groupby(report.reckoning.rows, key=lambda one: (one.told, one.number)):
        several = tuple(together)
        start = 0
        for at in range(1, len(several)):
            if several[at].size <= several[at - 1].size:
                yield several[start:at]
                start = at
        yield several[start:]


def _row(report: Report, places: Places, of_row: tuple[Worked, ...], size: str) -> Row:
    names, told = report.script.sizes, report.told[of_row[0].told]
    start = told.label.span.start if told.label is not None else told.span.start
    return Row(
        name_of(report, of_row[0]),
        told.piece_name,
        places.of(Span(start, told.span.end)),
        tuple(
            Cell(
                names[one.size],
                one.stated,
                one.worked,
                one.consumed,
                one.available,
                one.verdict,
            )
            for one in of_row
            if size in ("", names[one.size])
        ),
    )
