"""A strip for those who would rather look: the stitches row by row as steps, wrong rows marked."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from frogless.draw.drawing import Circle, Drawing, Line, Path, Point, Shape, Text, polyline
from frogless.draw.svg import svg
from frogless.proofread.findings import Report
from frogless.proofread.work.model import Worked
from frogless.studio.proofreading.table import name_of

WIDTH, HEIGHT = 96.0, 38.0
LEFT, RIGHT, TOP, BOTTOM = 11.0, 2.5, 5.0, 7.5
"""Paper around the steps, mm: room for the numbers at the left and below."""

MOST_STEPS = 2_000
MOST_NAMED = 6
"""Wrong rows that are named in words; the list beside it names them all."""

At = Callable[[float, float], Point]
"""Where so many stitches stand at a row."""


@dataclass(frozen=True, slots=True)
class Strip:
    """The drawing as SVG, and what it shows in words."""

    svg: str
    alt: str


def strip(report: Report, size: str = "") -> Strip | None:
    """The stitches of all rows as steps; None when fewer than two rows are known.

    Args:
        size: the name of the one that is drawn; "": every size has its line.
    """
    lines = _lines(report, size)
    if not lines or not lines[0]:
        return None
    steps = sum(len(line) for line in lines)
    known = [one.worked for line in lines for one in line if one.worked is not None]
    if len(known) < 2 or steps > MOST_STEPS:
        return None
    alt = _words(report, lines, size)
    shapes = tuple(_shapes(report, lines, max(known) or 1))
    return Strip(svg(Drawing(WIDTH, HEIGHT, "Stitches row by row", alt, shapes)), alt)


def _lines(report: Report, size: str) -> list[list[Worked]]:
    """The rows of each size that is drawn."""
    names = report.script.sizes
    chosen = [n for n, name in enumerate(names) if size in ("", name)]
    return [[one for one in report.reckoning.rows if one.size == n] for n in chosen]


def _shapes(report: Report, lines: list[list[Worked]], most: int) -> Iterator[Shape]:
    count = max(len(line) for line in lines)
    across, floor = (WIDTH - LEFT - RIGHT) / count, HEIGHT - BOTTOM

    def at(row: float, stitches: float) -> Point:
        return LEFT + row * across, floor - stitches / most * (floor - TOP)

    for height in (most, most / 2):
        yield Line(at(0, height), at(count, height), "grid")
    yield Text((LEFT - 1.5, at(0, most)[1] + 1.2), str(most), "axis", "end")
    yield Text((LEFT - 1.5, floor + 1.2), "0", "axis", "end")
    yield from _pieces(report, lines[0], at)
    for line in lines:
        yield from _steps(line, at)
    yield Line(at(0, 0), at(count, 0), "frame")
    yield from _ends(report, lines[0])
    for line in lines:
        for row, one in enumerate(line):
            if one.verdict == "wrong":
                yield from _mark(at(row + 0.5, one.worked or 0))


def _ends(report: Report, line: Sequence[Worked]) -> Iterator[Text]:
    """The first and the last row, named below."""
    below = HEIGHT - 2.5
    yield Text((LEFT, below), name_of(report, line[0]), "axis")
    yield Text((WIDTH - RIGHT, below), name_of(report, line[-1]), "axis", "end")


def _pieces(report: Report, line: Sequence[Worked], at: At) -> Iterator[Line]:
    """An upright line where a piece begins."""
    for row in range(1, len(line)):
        if report.told[line[row].told].piece != report.told[line[row - 1].told].piece:
            foot = at(row, 0)
            yield Line(foot, (foot[0], TOP), "shaping")


def _steps(line: Sequence[Worked], at: At) -> Iterator[Path]:
    run: list[Point] = []
    for row, one in enumerate(line):
        if one.worked is None:
            if run:
                yield polyline(run, "worked")
            run = []
            continue
        run += [at(row, one.worked), at(row + 1, one.worked)]
    if run:
        yield polyline(run, "worked")


def _mark(centre: Point) -> Iterator[Shape]:
    """A ring with a cross in it: seen without its color."""
    x, y = centre
    yield Circle(centre, 2.0, "scales")
    yield Line((x - 0.9, y - 0.9), (x + 0.9, y + 0.9), "stray")
    yield Line((x - 0.9, y + 0.9), (x + 0.9, y - 0.9), "stray")


def _words(report: Report, lines: list[list[Worked]], size: str) -> str:
    line = lines[0]
    known = [one.worked for one in line if one.worked is not None]
    wrong = list(
        dict.fromkeys(
            name_of(report, one) for each in lines for one in each if one.verdict == "wrong"
        )
    )
    of_size = f" in size {size}" if size else f" in {len(lines)} sizes" if len(lines) > 1 else ""
    first = ", of the first size" if len(lines) > 1 else ""
    named = ", ".join(wrong[:MOST_NAMED]) + (" and others" if len(wrong) > MOST_NAMED else "")
    told = f"Marked as wrong: {named}." if wrong else "No row is marked as wrong."
    return (
        f"The stitches of {len(line)} rows{of_size} as steps{first}: "
        f"{known[0] if known else '?'} to begin with, {max(known, default=0)} at most, "
        f"{known[-1] if known else '?'} at the end. {told}"
    )
