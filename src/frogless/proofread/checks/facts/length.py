"""Rows by the gauge against lengths that are stated."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator

from frogless.proofread.checks.facts import tolerance
from frogless.proofread.checks.facts.pieces import Held, Piece, held_of, parts_of
from frogless.proofread.checks.facts.told import of_size, plain, shown, sizes_told
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Gauge, Lengths, Measurement, Progress
from frogless.proofread.findings import Finding

_EDGING = 60.0
#: Share of a piece's rows that must be in the gauge's stitch for its rows to be its length.
_SAME = 0.85
_ALL = 0.97
_MEANT = re.compile(r"\b(?:length|height|long|tall|depth|size)\b")
_UNSURE = re.compile(
    r"\b(?:strap|tie|cord|fringe|handle|inseam|sleeve seam|neck depth|crown|wingspan|down|below|"
    r"above|from|sole|foot|border|edging|motif|square|block)\b"
)
_MOST_PIECES = 12


def gauge_length(reading: Reading) -> Iterator[Finding]:
    """Lengths that no rows come to, and rows beside a length that they do not come to."""
    held = held_of(reading)
    for measured in reading.facts.measurements:
        if not measured.drawn:
            yield from length_findings(held, measured, "gauge-length")
    for progress in reading.facts.progress:
        yield from _progress(held, progress)


def length_findings(held: Held, measured: Measurement, kind: str) -> Iterator[Finding]:
    """What one measurement of a length says and what the rows give, sizes together."""
    named = _MEANT.search(measured.name) and not _UNSURE.search(measured.name)
    if measured.body or measured.way != "length" or not named or measured.counted:
        return
    reading = held.reading
    gauge = _gauge(reading)
    sizes = held.sizes
    if gauge is None:
        return
    wrong: list[tuple[int, float, int]] = []
    for size in range(sizes):
        value = of_size(measured.lengths.values, size, sizes)
        rows = None if value is None else _nearest(held, measured, value, size, gauge)
        if value is not None and rows is not None:
            wrong.append((size, value, rows))
    if wrong:
        yield _finding(held, measured, kind, wrong, gauge)


def _gauge(reading: Reading) -> Gauge | None:
    """The gauge that has rows; None where there are several, which nobody can tell apart."""
    found = [gauge for gauge in reading.facts.gauges if gauge.rows]
    return found[0] if len(found) == 1 else None


def _nearest(
    held: Held, measured: Measurement, value: float, size: int, gauge: Gauge
) -> int | None:
    """The number of rows nearest to a length; None where one is near enough, or unsure."""
    pieces = held.pieces[size]
    plain_ones = all(
        piece.complete
        and _share(piece, gauge) >= _SAME
        and not piece.fans_out
        and not (piece.ring and piece.flat)
        for piece in pieces
    )
    if not held.known[size] or not pieces or not plain_ones or len(pieces) > _MOST_PIECES:
        return None
    high = gauge.height / gauge.rows
    limits = tolerance.of_height(gauge)
    slack = tolerance.of_rounding(measured.lengths) + high
    extra = 2 * _EDGING if held.edged else 0.0
    lengths = parts_of(pieces)
    if gauge.stitches:
        wide = gauge.width / gauge.stitches
        # Worked from side to side, the stitches that it begins with lie along.
        for piece in (each for each in pieces if each.flat):
            for count in {*piece.counts[:2]}:
                if abs(count * wide - value) <= 0.06 * value + slack + extra:
                    return None
    for rows in lengths:
        length = rows * high
        longest = length * (1 + held.reading.facts.grows)
        if length * (1 - limits) - slack <= value <= longest * (1 + limits) + slack + extra:
            return None
    return min(lengths, key=lambda rows: abs(rows * high - value), default=None)


def _share(piece: Piece, gauge: Gauge) -> float:
    rows = piece.worked
    same = sum(not gauge.stitch or row.stitch == gauge.stitch for row in rows)
    return same / len(rows) if rows else 1.0


def _progress(held: Held, progress: Progress) -> Iterator[Finding]:
    """ "20 cm (20 rounds)": the rows right beside the length."""
    reading = held.reading
    gauge = _gauge(reading)
    piece = _piece_at(held, progress.span.start)
    if gauge is None or piece is None or not piece.rows or piece.fans_out:
        return
    if _share(piece, gauge) < _ALL:
        return
    sizes = held.sizes
    high = gauge.height / gauge.rows
    wrong: list[tuple[int, float, int]] = []
    for size in range(sizes):
        value = progress.lengths.values
        rows = progress.rows
        length = value[size if len(value) == sizes else 0]
        count = rows[size if len(rows) == sizes else 0]
        if len(value) not in (1, sizes) or len(rows) not in (1, sizes):
            return
        limits = tolerance.of_height(gauge) * count * high + high / 2
        limits += tolerance.of_rounding(progress.lengths)
        grown = count * high * (1 + reading.facts.grows)
        if not count * high - limits <= length <= grown + limits:
            wrong.append((size, length, int(count)))
    if wrong:
        found = Measurement("length", progress.lengths, "length")
        yield _finding(held, found, "gauge-length", wrong, gauge)


def _piece_at(held: Held, offset: int) -> Piece | None:
    """The piece that is being worked at a place of the text."""
    told = held.reading.told
    at = min(bisect_right(told, offset, key=lambda each: each.span.end), len(told) - 1)
    index = held.place.get(told[at].piece) if told else None
    return None if index is None else held.pieces[0][index]


def _finding(
    held: Held,
    measured: Measurement,
    kind: str,
    wrong: list[tuple[int, float, int]],
    gauge: Gauge,
) -> Finding:
    size, value, rows = wrong[0]
    lengths: Lengths = measured.lengths
    high = gauge.height / gauge.rows
    comes = shown(rows * high, lengths)
    over = "10 cm" if abs(gauge.height - 100) < 1 else shown(gauge.height, lengths)
    name = held.reading.script.sizes[size]
    which = f" in size {name}" if name and len(wrong) < held.sizes else ""
    return Finding(
        kind,
        lengths.span,
        f"{measured.name} {shown(value, lengths)}",
        comes,
        f"{rows} rows at {plain(gauge.rows)} in {over} are {comes}{which}; the {measured.name} is "
        f"stated as {shown(value, lengths)}: {round(value / high)} rows would give that.",
        "likely" if abs(rows * high - value) > 0.1 * value else "possible",
        sizes=sizes_told(held, [each[0] for each in wrong]),
    )


LENGTH = Check(
    "gauge-length",
    "the rows by the gauge come to the length that is stated",
    "Finished length: 50 cm\nGauge: 16 hdc and 12 rows = 10 cm\n\n"
    "Ch 42.\n"
    "Row 1: Hdc in 3rd ch from hook and in each ch across, turn. (40 hdc)\n"
    "Rows 2-48: Ch 2 (does not count as a st), hdc in each st across, turn. (40 hdc)\n",
    gauge_length,
)
