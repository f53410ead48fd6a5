"""How the time to proofread a pattern grows with its length, from 1 kB to 1 MB.

The peer is Python-Markdown making a page of the same text in the same run: it too reads line by
line, in Python, and it is spared all understanding. The text is one piece after the other, each with
its rounds numbered from 1, so that every row of it is worked and proven.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from itertools import pairwise

import markdown
from timing import Timed, once, ratio

from frogless.proofread.run import proofread

SIZES = (1_000, 10_000, 100_000, 1_000_000)
#: A megabyte takes its time; less is measured more often.
RUNS = {1_000: 7, 10_000: 7, 100_000: 3, 1_000_000: 1}


def main() -> None:
    """Prints the times, the peer's, and how each grows when the text grows tenfold."""
    print(f"Proofreading: medians of {', '.join(map(str, RUNS.values()))} runs")
    ours = [_compared(size) for size in SIZES]
    for before, after in pairwise(ours):
        print(ratio(f"ten times the text, {after.name.split(',')[0]}", after, before))


def _compared(size: int) -> Timed:
    text = pattern_of(size)
    report = proofread(text)
    assert not report.findings, report.findings[0]
    rows = len(report.reckoning.rows)
    ours = _timed(f"{size // 1000} kB, {rows} rows: proofread", size, lambda: proofread(text))
    peer = _timed(f"{size // 1000} kB: Python-Markdown", size, lambda: markdown.markdown(text))
    print(ours.line(), peer.line(), ratio("ours over the peer's", ours, peer), sep="\n")
    return ours


def pattern_of(size: int) -> str:
    """A right pattern of about so many letters: pieces of forty rounds that widen and run even."""
    pieces, letters, number = [], 0, 0
    while letters < size:
        number += 1
        pieces.append(_piece(number, min(40, max(4, (size - letters) // 70))))
        letters += len(pieces[-1])
    return "".join(pieces)


def _piece(number: int, rounds: int) -> str:
    begins = 60 + 6 * (number % 20)
    lines = [
        f"PIECE {number}",
        "",
        f"Foundation: Ch {begins}; join with sl st to first ch to form a ring. ({begins} sts)",
        "",
    ]
    count = begins
    for r in range(1, rounds + 1):
        start = "Ch 1 (does not count as a st), " if r == 1 else "Ch 1, "
        if r % 4 == 0:
            body = f"[sc in next {count // 6 - 1} sts, 2 sc in next st] 6 times"
            count += 6
        else:
            body = "sc in each st around"
        lines.append(f"Rnd {r}: {start}{body}; join with sl st to first sc. ({count} sc)")
        lines.append("")
    return "\n".join((*lines, "Fasten off.", "", ""))


def _timed(name: str, size: int, work: Callable[[], object]) -> Timed:
    return Timed(name, tuple(once(work) for _ in range(RUNS[size])))


if __name__ == "__main__":
    sys.exit(main())
