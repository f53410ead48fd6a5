"""The corpus of written patterns, and what was planted in it."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from frogless.proofread.findings import Finding, Report
from frogless.proofread.run import proofread

HERE = Path(__file__).parent
CORPUS = HERE / "corpus"
STYLES = tuple(sorted(folder.name for folder in CORPUS.iterdir()))

#: Errors that are planted at once in one text, at most.
MOST = 4
#: Kinds that hide nothing elsewhere in their pattern.
APART = frozenset(
    {
        "count-stated",
        "increase-dropped",
        "repeat-number",
        "stitch-number",
        "stitch of another kind",
        "count-by-kind",
        "place missing",
        "join",
        "unused-abbreviation",
        "undefined-abbreviation",
        "multiple",
        "gauge vs width",
        "measure units",
        "schematic",
        "length",
        "material unused",
        "hook",
        "measurements not in order",
    }
)


@dataclass(frozen=True, slots=True)
class Planted:
    """An error in a pattern of which the place is known.

    Args:
        line: of the pattern, from 1. `rows`: numbers of the rows that show it; empty outside rows.
        old, new: words of that line before and after; both empty where the whole file is wrong.
        checks: any of these may find it.
        shows: another line where it may be shown; 0.
        gone: the words are gone, so that no line is left to point at.
    """

    pattern: str
    line: int
    old: str
    new: str
    kind: str
    checks: frozenset[str]
    rows: frozenset[int]
    size: str
    shows: int
    gone: bool

    @property
    def name(self) -> str:
        """What it is called in a list of tests."""
        return f"{self.pattern}:{self.line} {self.kind}"


def right() -> tuple[str, ...]:
    """The patterns that are right."""
    return tuple(name for name in _names() if "/wrong_" not in name)


def wrong() -> tuple[str, ...]:
    """The patterns that are wrong as they stand."""
    return tuple(name for name in _names() if "/wrong_" in name)


def text_of(pattern: str) -> str:
    """A pattern as it stands in the corpus."""
    return (CORPUS / pattern).read_text(encoding="utf-8")


def planted_in(*errors: Planted) -> str:
    """A pattern with errors in it, each in a line of its own."""
    lines = text_of(errors[0].pattern).split("\n")
    for error in errors:
        at = error.line - 1
        assert lines[at].count(error.old) == 1 or not error.old, error.name
        if error.old:
            lines[at] = lines[at].replace(error.old, error.new)
    return "\n".join(lines)


def batches() -> tuple[tuple[Planted, ...], ...]:
    """All errors, as few texts as can be: what one hides from the other stands in two of them.

    Rows next to each other hide each other, since a wrong count may lie at either; so do sizes,
    numbers of rows and dialects that are wrong.
    """
    found: list[list[Planted]] = []
    for error in planted():
        fits = (batch for batch in found if _goes_with(error, batch))
        batch = next(fits, None)
        if batch is None:
            found.append([error])
        else:
            batch.append(error)
    return tuple(tuple(batch) for batch in found)


def _goes_with(error: Planted, batch: list[Planted]) -> bool:
    return len(batch) < MOST and all(
        error.pattern == other.pattern
        and {error.kind, other.kind} <= APART
        and error.line != other.line
        and "\n" not in error.new + other.new
        and all(abs(a - b) > 1 for a in error.rows for b in other.rows)
        and not error.checks & other.checks & {"gauge-width", "gauge-length"}
        for other in batch
    )


@cache
def planted() -> tuple[Planted, ...]:
    """All errors: those planted in right patterns, and those of patterns that are wrong."""
    return (*_read(HERE / "planted.csv"), *_read(HERE / "wrong.csv"))


@cache
def read(pattern: str) -> Report:
    """A pattern of the corpus, proofread."""
    return proofread(text_of(pattern))


def finds(error: Planted, report: Report) -> bool:
    """Whether an accepted check found it where it is."""
    return any(_is_it(error, finding, report) for finding in report.findings)


def told(report: Report) -> tuple[str, ...]:
    """What was found, for a test that fails."""
    return tuple(
        f"{report.script.line(f.span.start)} {f.row} {f.kind} {f.sizes or ''}: "
        f"says {f.says!r}, works out to {f.works_out_to!r}"
        for f in report.findings
    )


def elsewhere(error: Planted, report: Report) -> tuple[Finding, ...]:
    """What else was found, which nobody planted."""
    return tuple(f for f in report.findings if not _at(error, f, report))


def _is_it(error: Planted, finding: Finding, report: Report) -> bool:
    sized = not (error.size and finding.sizes and error.size not in finding.sizes)
    return finding.kind in error.checks and sized and _at(error, finding, report)


def _at(error: Planted, finding: Finding, report: Report) -> bool:
    """In a row that shows it, or in its line; words that are gone outside rows have no place."""
    first, last = (report.script.line(o) for o in (finding.span.start, finding.span.end))
    added = error.new.count("\n")
    return (
        _number(finding, report) in error.rows
        or (first <= error.line + added and error.line <= last)
        or first == error.shows
        or (error.gone and not error.rows and finding.kind in error.checks)
    )


def _number(finding: Finding, report: Report) -> int | None:
    """The number of the row that a finding is in, whether it says so or not."""
    if finding.number is not None:
        return finding.number
    at = finding.span.start
    rows = (each for each in report.told if each.label and each.span.start <= at < each.span.end)
    return next((n for row in rows if row.label for n in row.label.numbers), None)


def _names() -> tuple[str, ...]:
    return tuple(
        f"{file.parent.name}/{file.name}" for file in sorted(CORPUS.glob("*/*")) if file.is_file()
    )


def _read(file: Path) -> Iterator[Planted]:
    with file.open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            old, new = row.get("old", ""), row.get("new", "").replace("\\n", "\n")
            yield Planted(
                row["pattern"],
                int(row["line"]),
                old,
                new,
                row["kind"],
                frozenset(row["checks"].split()),
                frozenset(int(each) for each in row["row"].split() if each.isdigit()),
                row["size"],
                int(row.get("shows") or 0),
                gone=bool(old)
                and row["kind"] in {"material missing", "row-missing", "undefined-abbreviation"},
            )
