"""Yarn that is stated against what the stitches need, and a label against itself."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from frogless.proofread.checks.facts.pieces import Held, held_of
from frogless.proofread.checks.facts.told import of_size, sizes_told
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Gauge, YarnAmount
from frogless.proofread.findings import Finding
from frogless.stitches.model import Stitch
from frogless.tally.catches import catches_of
from frogless.tally.scale import YARN_PER_WORK

#: Stated yarn is short when the stitches need more than so many times as much. Solid single
#: crochet by several makers lies within a tenth of the model (tally/data/cover.csv); that light
#: hands work at two thirds of it is an assumption of ours, without a source; so 1.6 is outside.
#: Taller stitches are worked as openly as at 60 % of it (a cardigan, weighed: 1,140 m in a square
#: meter where a solid disc took 1,870), so they are given 2.
SHORT, SHORT_OPEN = 1.6, 2.0
#: And it is too much from here on; a ball of each color may be only begun.
MUCH = 2.5
#: Balls against the length or mass that they hold: rounding, and what is bought to spare.
_ROUNDED, _SPARE = 1.03, 1.35
#: Catches of single crochet.
_LOW = 2
_CHOSEN = re.compile(r"\bor\b|\balternativ|\bleftover|\bscraps?\b|\bsmall amounts?\b")
_YARN = re.compile(r"\b(?:yarn|balls?|wool|cotton)\b")
_CHAINS = re.compile(r"ch-(\d{1,2}) sp")
#: Share of stitches that are not known, from which on nothing is said.
_UNKNOWN = 0.1


def yarn_amount(reading: Reading) -> Iterator[Finding]:
    """Yarn that does not reach or is far too much, and balls that do not hold what is stated."""
    for yarn in reading.facts.yarns:
        yield from _label(yarn)
    gauge = next((g for g in reading.facts.gauges if g.stitches and g.unit == "st"), None)
    yarns = reading.facts.yarns
    if gauge is None or not yarns or _alternatives(reading):
        return
    yield from _needs(held_of(reading), gauge, yarns)


def _needs(held: Held, gauge: Gauge, yarns: tuple[YarnAmount, ...]) -> Iterator[Finding]:
    sizes = held.sizes
    whole = _whole(held)
    short: list[tuple[int, float, float]] = []
    much: list[tuple[int, float, float]] = []
    for size in range(sizes):
        stated = _stated(yarns, size, sizes)
        need, least, sure = _need(held, gauge, size)
        if stated is None or not need:
            continue
        if least > stated[0]:
            short.append((size, stated[0], need))
        elif whole and sure and stated[1] > MUCH * need:
            much.append((size, stated[0], need))
    for found, few in ((short, True), (much, False)):
        if found:
            _, stated_here, need = found[0]
            advice = (
                "Check the balls and the length of one; a maker would run out."
                if few
                else "Check the balls, or say what the rest is for."
            )
            yield Finding(
                "yarn-amount",
                yarns[0].span,
                f"{stated_here / 1000:.0f} m of yarn",
                f"about {need / 1000:.0f} m",
                f"The stitches need about {need / 1000:.0f} m, and {stated_here / 1000:.0f} m are "
                f"stated: {'too little' if few else 'far too much'}. {advice}",
                "likely" if few else "possible",
                sizes=sizes_told(held, [each[0] for each in found]),
            )


def _alternatives(reading: Reading) -> bool:
    """Yarns of which one is chosen ("or"): nobody can add them up."""
    lines = (reading.script.plain[s.start : s.end] for s in reading.facts.materials)
    return any(_CHOSEN.search(line) and _YARN.search(line) for line in lines)


def _stated(yarns: tuple[YarnAmount, ...], size: int, sizes: int) -> tuple[float, float] | None:
    """mm in all, and mm without one ball of each color; None where a part is not known."""
    total = least = 0.0
    for yarn in yarns:
        balls = yarn.balls[0] if len(yarn.balls) == 1 else of_size(yarn.balls, size, sizes)
        length = _shared(yarn.lengths, size, sizes)
        mass = _shared(yarn.masses, size, sizes)
        if balls and yarn.ball_length:
            length = balls * yarn.ball_length
            total, least = total + length, least + max(0, balls - 1) * yarn.ball_length
        elif length:
            total, least = total + length, least + length
        elif mass and yarn.ball_mass and yarn.ball_length:
            length = mass / yarn.ball_mass * yarn.ball_length
            total, least = total + length, least + max(0.0, length - yarn.ball_length)
        else:
            return None
    return (total, least) if total else None


def _shared(values: tuple[float, ...], size: int, sizes: int) -> float | None:
    return values[0] if len(values) == 1 else of_size(values, size, sizes)


def _whole(held: Held) -> bool:
    """Every row of every piece is known, so that a sum of them is the whole."""
    known = all(piece.complete for pieces in held.pieces for piece in pieces)
    clear = all(row.verdict == "ok" for row in held.reading.reckoning.rows)
    return known and clear and not held.edged


def _need(held: Held, gauge: Gauge, size: int) -> tuple[float, float, bool]:
    """mm of yarn that the rows of a size take, the least of it, and whether all is known.

    Source: work of a stitch = catches x width, yarn = 4.5 of it (tally.catches, tally.scale).
    """
    reading = held.reading
    stitches = reading.lexicon.stitches
    makes = {piece.name: piece.make for piece in held.pieces[size]}
    catches = least = 0.0
    known = unknown = 0
    for row in reading.reckoning.rows:
        if row.size != size or not row.worked:
            continue
        make = makes.get(reading.told[row.told].piece_name.lower(), 1)
        for key, count in row.made.items():
            each = _catches(key, stitches)
            if each is None:
                unknown += count
            else:
                known += count
                catches += each * count * make
                least += each * count * make / (SHORT if each == _LOW else SHORT_OPEN)
        if not row.turning[1]:
            catches += row.turning[0] * make
    if unknown > _UNKNOWN * (known + unknown):
        return 0.0, 0.0, False
    work = gauge.width / gauge.stitches * YARN_PER_WORK.value
    return catches * work, least * work, not unknown


def _catches(key: str, stitches: Mapping[str, Stitch]) -> int | None:
    chains = _CHAINS.fullmatch(key)
    if chains:
        return int(chains[1])
    if key == "chain" or key in stitches:
        return max(1, catches_of(key, stitches))
    return None


def _label(yarn: YarnAmount) -> Iterator[Finding]:
    """Balls times what is in one, against what is stated in all."""
    for values, one, unit, scale in (
        (yarn.lengths, yarn.ball_length, "m", 1000.0),
        (yarn.masses, yarn.ball_mass, "g", 1.0),
    ):
        if not (values and one and len(values) == len(yarn.balls)):
            continue
        for balls, value in zip(yarn.balls, values, strict=True):
            holds = balls * one
            if value <= holds * _ROUNDED and holds <= value * _SPARE + one:
                continue
            yield Finding(
                "yarn-amount",
                yarn.span,
                f"{balls} balls and {value / scale:.0f} {unit}",
                f"{holds / scale:.0f} {unit}",
                f"{balls} balls of {one / scale:.0f} {unit} hold {holds / scale:.0f} {unit}, and "
                f"{value / scale:.0f} {unit} are stated: {_enough(value, one)} balls would do.",
                "likely",
            )
            break


def _enough(value: float, one: float) -> int:
    return int(-(-value // one))


YARN = Check(
    "yarn-amount",
    "the yarn that is stated is enough for the stitches, and not far too much",
    "Materials\nCotton, 50 g = 85 m, 1 ball\n5 mm hook\n\nGauge\n15 sc and 17 rows = 10 cm\n\n"
    "Instructions\nCh 61.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (60 sc)\n"
    "Rows 2-68: Ch 1, sc in each st across, turn. (60 sc)\n",
    yarn_amount,
)
