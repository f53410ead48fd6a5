"""Right patterns to plant slips in, and whether a slip is found."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from planting import Planted, rows_of

from frogless.proofread.run import proofread

CORPUS = Path(__file__).parent / "reference" / "proofread" / "corpus"


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
