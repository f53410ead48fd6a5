"""Right patterns to plant slips in, and whether a slip is found."""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

from planting import Planted, rows_of

from frogless.proofread.run import proofread

CORPUS = Path(__file__).parent / "reference" / "proofread" / "corpus"
#: Slips after which the pattern is just as right: nothing in its text tells the two apart.
JUST_AS_RIGHT = CORPUS.parent / "just_as_right.csv"


@cache
def right_patterns() -> tuple[tuple[str, str], ...]:
    """All right patterns of the corpus, with their names."""
    paths = sorted(
        path
        for path in CORPUS.rglob("*")
        if path.suffix in (".txt", ".md") and not path.stem.startswith("wrong_")
    )
    return tuple(
        (f"{path.parent.name}/{path.name}", path.read_text(encoding="utf-8")) for path in paths
    )


@cache
def _just_as_right() -> frozenset[tuple[str, str, str]]:
    with JUST_AS_RIGHT.open(encoding="utf-8", newline="") as file:
        return frozenset((r["pattern"], r["line"], r["becomes"]) for r in csv.DictReader(file))


def is_just_as_right(name: str, text: str, slip: Planted) -> bool:
    """Whether the pattern is another one after the slip, and one that nobody could blame."""
    return (name, *changed(text, slip)) in _just_as_right()


def changed(text: str, slip: Planted) -> tuple[str, str]:
    """The line that a slip changes, before and after it."""
    at = next((n for n, (a, b) in enumerate(zip(text, slip.text, strict=False)) if a != b), 0)
    return _line_at(text, at), _line_at(slip.text, at)


def _line_at(text: str, at: int) -> str:
    start = text.rfind("\n", 0, at) + 1
    end = text.find("\n", at)
    return text[start : end if end >= 0 else len(text)].strip()


def found_at_row(slip: Planted) -> bool:
    """Whether a finding stands at the row of a slip, or at the next one."""
    last = _end_of_next_row(slip)
    return any(
        slip.line <= line <= last
        for report in [proofread(slip.text)]
        for line in (report.script.line(each.span.start) for each in report.findings)
    )


def _end_of_next_row(slip: Planted) -> int:
    ends = [slip.text.count("\n", 0, row.end) + 1 for row in rows_of(slip.text)]
    return next((end for end in ends if end > slip.last + 1), slip.last + 2)
