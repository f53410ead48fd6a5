"""Stitches by the gauge against widths and girths that are stated."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from frogless.proofread.checks.facts import tolerance
from frogless.proofread.checks.facts.pieces import Held, Piece, Row, held_of, landings, parts_of
from frogless.proofread.checks.facts.told import of_size, plain, shown, sizes_told
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Gauge, Lengths, Measurement
from frogless.proofread.facts.ways import GIRTHS
from frogless.proofread.findings import Certainty, Finding

#: What an edging may add on either side, mm; wider ones are rare.
_EDGING = 60.0
#: A row in another stitch than the gauge's may be so much wider or narrower. Source: widths of
#: stitches in the dictionary, against single crochet.
_OTHER_STITCH = 0.15
#: Landmarks that may lie on a slope, where no row keeps their count.
_ON_THE_WAY = {"high hip", "hip", "upper arm", "bust", "underbust", "thigh"}
#: Landmarks that a piece begins or ends at, or is narrowest at.
_ENDS = {"waist", "neck", "cuff"}
_UNSURE = re.compile(
    r"\b(?:elastic|gathered|relaxed|stretched|unstretched|drawn|neck width|folded|wingspan|"
    r"sides?|strap|tie|border|edging|motif|square|block)\b"
)
#: Girths of the body, and pieces that go nowhere around it.
_OF_BODY = {"high hip", "hip", "bust", "underbust", "waist"}
_NOT_OF_BODY = re.compile(r"\b(?:sleeves?|cuffs?|collars?|hoods?|pockets?|straps?|ties?|cords?)\b")
#: Stitches that come so near to a length lie along it.
_ACROSS = 0.03
_MOST_PIECES = 8


@dataclass(frozen=True, slots=True)
class Candidate:
    """A width that some row gives, mm, with the limits of it.

    Args:
        flat: its piece is no tube, so that an edging may make it wider.
        foundation: it is a chain, of which some may be turning chains.
    """

    width: float
    limits: float
    count: int
    times: int = 1
    flat: bool = False
    foundation: bool = False


def gauge_width(reading: Reading) -> Iterator[Finding]:
    """Widths and girths that no row comes to."""
    held = held_of(reading)
    for measured in reading.facts.measurements:
        if not measured.drawn:
            yield from width_findings(held, measured, "gauge-width")


def width_findings(held: Held, measured: Measurement, kind: str) -> Iterator[Finding]:
    """What one measurement of a width says and what its rows give, sizes together."""
    if measured.body or measured.way not in ("girth", "width") or _UNSURE.search(measured.name):
        return
    gathered = {"elastic", "cord"} & {each.name for each in held.reading.facts.notions}
    if measured.name == "waist" and gathered:
        return
    if measured.counted == "sts":
        return  # told beside its count: the check of the schematic's
    wrong: list[tuple[int, float, Candidate, Gauge]] = []
    sizes = held.sizes
    for size in range(sizes):
        value = of_size(_middle(measured.lengths), size, sizes)
        found = None if value is None else _nearest(held, measured, value, size)
        if value is not None and found is not None:
            wrong.append((size, value, *found))
    if wrong:
        yield _finding(held, measured, kind, wrong)


def _middle(lengths: Lengths) -> tuple[float, ...]:
    values = lengths.values
    return (sum(values) / 2,) if lengths.ranged else values


def _nearest(
    held: Held, measured: Measurement, value: float, size: int
) -> tuple[Candidate, Gauge] | None:
    """The width nearest to what is stated; None where one is near enough, or nothing is sure."""
    if not held.known[size]:
        return None
    pieces = [piece for piece in held.pieces[size] if _is_measured(piece)]
    if measured.name in _OF_BODY:
        pieces = [piece for piece in pieces if not _NOT_OF_BODY.search(piece.name)]
    slack = tolerance.of_rounding(measured.lengths)
    if measured.lengths.ranged:
        slack += abs(measured.lengths.values[1] - measured.lengths.values[0]) / 2
    extra = 2 * _EDGING if held.edged else 0.0
    best: tuple[tuple[bool, float], Candidate, Gauge] | None = None
    for gauge in held.reading.facts.gauges:
        if not gauge.stitches or gauge.unit == "repeat":
            continue
        if not any(_fits(row, gauge) for piece in pieces for row in piece.rows):
            continue
        for near in _candidates(pieces, gauge, measured):
            off = value - near.width
            allowed = near.limits * near.width + slack
            if -allowed <= off <= allowed + (extra if near.flat else 0):
                return None
            if best is None or (near.foundation, abs(off)) < best[0]:
                best = (near.foundation, abs(off)), near, gauge
    if best is None or _lies_across(held, pieces, measured, value, best[2], size):
        return None
    return best[1:]


def _lies_across(
    held: Held,
    pieces: list[Piece],
    measured: Measurement,
    value: float,
    gauge: Gauge,
    size: int,
) -> bool:
    """Flat work may be worked from side to side: its rows are its width, its stitches its length."""
    flat = tuple(piece for piece in pieces if piece.flat)
    slack = tolerance.of_rounding(measured.lengths)
    if gauge.rows:
        high = gauge.height / gauge.rows
        limits = tolerance.of_height(gauge)
        for rows in parts_of(flat):
            for times in (1, 2) if measured.way == "girth" else (1,):
                long = rows * times * high
                if abs(long - value) <= limits * long + slack + high:
                    return True
    if all(piece.complete for piece in flat):
        return False
    wide = gauge.width / gauge.stitches
    counts = {count for piece in flat for count in piece.counts}
    for other in held.reading.facts.measurements:
        length = of_size(other.lengths.values, size, held.sizes)
        if other.way == "length" and length and not other.body:
            near = (abs(count * wide - length) <= _ACROSS * length for count in counts)
            if any(near) and not any(
                abs(count * wide - value) <= _ACROSS * value for count in counts
            ):
                return True
    return False


def _is_measured(piece: Piece) -> bool:
    """A disc that only grows has no width that its counts would give."""
    if not piece.rows:
        return False
    counts = piece.counts
    flat_disc = piece.ring and counts[-1] == max(counts) and counts.count(counts[-1]) < 3
    return not flat_disc and not piece.fans_out and piece.make <= 2


def _fits(row: Row, gauge: Gauge) -> bool:
    if gauge.unit != "st":
        return bool(gauge.stitch)
    return not row.spaced and (not gauge.stitch or row.stitch == gauge.stitch)


def _is_close(row: Row, gauge: Gauge) -> bool:
    """A foundation is as wide as the row on it."""
    return row.foundation or _fits(row, gauge)


def _candidates(pieces: list[Piece], gauge: Gauge, measured: Measurement) -> Iterator[Candidate]:
    """Every width that rows give which the measurement may be taken at."""
    wide = gauge.width / gauge.stitches
    limits = tolerance.of_width(gauge)
    flat: list[int] = []
    for piece in pieces:
        for row in _rows_meant(piece, measured):
            close = limits if _is_close(row, gauge) else limits + _OTHER_STITCH
            for times in _times(piece, measured):
                count = row.count * times
                many = int(times) or 1
                chains = row.foundation and len(piece.worked) > 0
                yield Candidate(count * wide, close, row.count, many, piece.flat, chains)
        if piece.flat and measured.way == "girth" and len(flat) < _MOST_PIECES:
            flat.append(max(piece.counts))
    for one, other in combinations(flat, 2):
        for count in (one + other, one + 2 * other, 2 * one + other):
            yield Candidate(count * wide, limits, count, flat=True)


def _times(piece: Piece, measured: Measurement) -> tuple[float, ...]:
    """How often a row goes into the measurement: a back goes twice into a bust."""
    if measured.way == "girth":
        return (1, 2) if piece.flat else (1,)
    return (1,) if piece.flat else (1, 0.5)


def _rows_meant(piece: Piece, measured: Measurement) -> Iterator[Row]:
    places = landings(piece)
    if measured.name in _ENDS and not piece.flat:
        ends = {0, 1, len(piece.rows) - 1}
        fewest = min(piece.counts)
        places = frozenset(p for p in places if p in ends or piece.rows[p].count == fewest)
    named = _named(piece, measured)
    slope = measured.name in _ON_THE_WAY and not named
    for at, row in enumerate(piece.rows):
        if slope or at in places or at in named:
            yield row


def _named(piece: Piece, measured: Measurement) -> frozenset[int]:
    """Rows whose section or own words name the landmark."""
    words = GIRTHS.get(measured.name)
    if words is None or measured.name == "circumference":
        return frozenset()
    found: set[int] = set()
    for at, row in enumerate(piece.rows):
        if words.search(row.text):
            found.add(at)
        elif words.search(row.section):
            to = re.search(r"\bto\b", row.section)
            ends = at + 1 == len(piece.rows) or piece.rows[at + 1].section != row.section
            begins = at == 0 or piece.rows[at - 1].section != row.section
            before = words.search(row.section.split(" to ")[0])
            if not to or (ends and not before) or (begins and before):
                found.add(at)
                if begins and at and before:
                    found.add(at - 1)
    return frozenset(found)


def _finding(
    held: Held,
    measured: Measurement,
    kind: str,
    wrong: list[tuple[int, float, Candidate, Gauge]],
) -> Finding:
    _, value, near, gauge = wrong[0]
    each = f"{near.count} stitches" if near.times == 1 else f"{near.times} x {near.count} stitches"
    over = "10 cm" if abs(gauge.width - 100) < 1 else shown(gauge.width, measured.lengths)
    wide = gauge.width / gauge.stitches
    wanted = round(value / wide / near.times)
    first = held.reading.script.sizes[wrong[0][0]]
    which = f" in size {first}" if first and len(wrong) < held.sizes else ""
    comes = shown(near.width, measured.lengths)
    certainty: Certainty = "likely" if abs(value - near.width) > 0.08 * near.width else "possible"
    return Finding(
        kind,
        measured.lengths.span,
        f"{measured.name} {shown(value, measured.lengths)}",
        comes,
        f"{each} at {plain(gauge.stitches)} in {over} are {comes}{which}; the {measured.name} is "
        f"stated as {shown(value, measured.lengths)}: {wanted} stitches would give that.",
        certainty,
        sizes=sizes_told(held, [size for size, *_ in wrong]),
    )


WIDTH = Check(
    "gauge-width",
    "the stitches by the gauge come to the width or girth that is stated",
    "Finished hip: 106 cm\nGauge: 18 dc and 10 rnds = 10 cm\n\n"
    "Ch 208, join with sl st to first ch.\n"
    "Rnd 1: Ch 3 (counts as dc), dc in next ch and in each ch around, join. (208 dc)\n"
    "Rnds 2-10: Ch 3, dc in each st around, join. (208 dc)\n",
    gauge_width,
)
