"""How well does proofreading find what was planted? Precision and recall for each kind of error.

The corpus under `tests/reference/proofread` holds right patterns in many styles, one-line errors for
them with the row at which each shows, and a few patterns that are wrong as they stand. Recall: the
share of planted errors that an accepted check finds at their place. Precision: the share of
findings in these texts that stand at the place of what was planted, or at rows that follow from it.

    python benchmarks/proofread_recall.py            a table by kind
    python benchmarks/proofread_recall.py --missed   and what was missed, with what was found instead
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))

from reference.proofread.planted import (
    STYLES,
    Planted,
    elsewhere,
    finds,
    planted,
    planted_in,
    read,
    right,
    told,
)

from frogless.proofread.findings import Report
from frogless.proofread.run import proofread


def main() -> None:
    """Prints the right patterns, the table, and what was missed when it is asked for."""
    false = {pattern: told(read(pattern)) for pattern in right()}
    alarms = [pattern for pattern, found in false.items() if found]
    print(
        f"{len(right())} right patterns in {len(STYLES)} styles; {len(alarms)} with a false alarm"
    )
    errors = [(error, proofread(planted_in(error))) for error in planted()]
    found = {error.name for error, report in errors if finds(error, report)}
    print(f"{'kind':<24}{'planted':>8}{'found':>8}{'recall':>9}{'precision':>11}")
    for kind in sorted({error.kind for error, _ in errors}):
        print(_line(kind, [each for each in errors if each[0].kind == kind], found))
    print(_line("all", errors, found))
    if "--missed" in sys.argv:
        for pattern in alarms:
            print(f"false alarm in {pattern}", *false[pattern], sep="\n    ")
        for error, report in errors:
            if error.name not in found:
                print(
                    f"missed {error.name}: {error.old!r} -> {error.new!r}",
                    *told(report),
                    sep="\n    ",
                )


def _line(kind: str, errors: list[tuple[Planted, Report]], found: set[str]) -> str:
    hits = sum(error.name in found for error, _ in errors)
    findings: Counter[bool] = Counter()
    for error, report in errors:
        stray = len(elsewhere(error, report))
        findings[False] += stray
        findings[True] += len(report.findings) - stray
    precision = findings[True] / findings.total() if findings.total() else 0.0
    return f"{kind:<24}{len(errors):>8}{hits:>8}{hits / len(errors):>9.1%}{precision:>11.1%}"


if __name__ == "__main__":
    main()
