"""Tries every design of designs/ on every body, and writes docs/refusals.md.

Usage: python docs/make_refusals.py [SURVEYED]

SURVEYED women of the sample (200) are taken besides the size tables. It takes some minutes.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path

from frogless.body.survey import SAMPLE
from frogless.tryout import TABLES, Tried, groups, tryout

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "refusals.md"
SWATCH = ROOT / "designs" / "swatches" / "light-cotton.toml"

HEAD = """\
# For whom do the designs come out?

Each design of the project, tried in light cotton on every body of the size tables for women and for
children and on {number} women of a survey, taken evenly by stature. Made by
`python docs/make_refusals.py`; `frogless tryout` does the same for a design of your own
([what to type](command-line.md)).

What a table or the survey does not give is estimated for grown-ups and asked for where it cannot be:
a child's head or the depth of its hip has to be measured. A refusal is no fault; it says what would
make the garment possible.

| design | bodies | tried | drafted | refused | |
| --- | --- | --- | --- | --- | --- |
"""


def main(surveyed: int = SAMPLE) -> None:
    """Writes the page."""
    designs = sorted((ROOT / "designs").glob("*/design.toml"))
    with ProcessPoolExecutor(2) as pool:
        tried = list(pool.map(partial(_tried, surveyed=surveyed), designs))
    rows = "".join(_row(one) for of_design in tried for one in of_design)
    refused = "".join(_refusals(tried))
    PAGE.write_text(HEAD.format(number=surveyed) + rows + refused, encoding="utf-8")


def _tried(design: Path, surveyed: int) -> tuple[Tried, ...]:
    return tryout([design], [SWATCH], groups(tuple(TABLES), surveyed))


def _row(one: Tried) -> str:
    refused = one.bodies - one.drafted
    share = f"{100 * refused / one.bodies:.0f} %" if refused else ""
    cells = (one.title, one.group, one.bodies, one.drafted, refused, share)
    return f"| {' | '.join(map(str, cells))} |\n"


def _refusals(tried: Sequence[tuple[Tried, ...]]) -> Iterator[str]:
    yield "\n## Why not\n\nOne body stands for all that were refused for the same reason.\n"
    for of_design in tried:
        told = [(one, refusal) for one in of_design for refusal in one.refusals]
        if told:
            yield f"\n### {of_design[0].title}\n\n"
        for one, refusal in told:
            yield (
                f"* {one.group}, {refusal.bodies} of {one.bodies}: {refusal.sentence} "
                f"({refusal.example})\n"
            )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
