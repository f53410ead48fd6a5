"""The schematic's numbers against the counts, and against the other measurements."""

from __future__ import annotations

import math
from collections.abc import Iterator

from frogless.proofread.checks.facts import tolerance
from frogless.proofread.checks.facts.length import length_findings
from frogless.proofread.checks.facts.pieces import Held, held_of
from frogless.proofread.checks.facts.told import plain, shown
from frogless.proofread.checks.facts.width import width_findings
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Measurement
from frogless.proofread.findings import Finding

#: How far two numbers of one measurement may lie apart: what the trade rounds to.
_APART = 0.015


def schematic(reading: Reading) -> Iterator[Finding]:
    """Numbers of the schematic that no row gives, and measurements that are stated twice."""
    held = held_of(reading)
    for measured in reading.facts.measurements:
        if measured.counted == "sts":
            yield from _beside(held, measured)
        elif measured.drawn:
            yield from width_findings(held, measured, "schematic")
            yield from length_findings(held, measured, "schematic")
    yield from _twice(reading)
    yield from _diameter(reading)


def _beside(held: Held, measured: Measurement) -> Iterator[Finding]:
    """ "115.5 cm (208 sts)": the count must be there, and be that wide by the gauge."""
    if len(measured.lengths.values) != 1 or len(held.pieces) != 1:
        return
    rows = [row for piece in held.pieces[0] for row in piece.rows if row.count == measured.count]
    widths = [
        (gauge, measured.count * gauge.width / gauge.stitches)
        for gauge in held.reading.facts.gauges
        if gauge.stitches and gauge.unit == "st" and gauge.stitch
        if rows and all(row.stitch == gauge.stitch and not row.spaced for row in rows)
    ]
    value = measured.lengths.values[0]
    if len(widths) != 1:
        return
    gauge, wide = widths[0]
    if abs(wide - value) > tolerance.of_width(gauge) * wide + tolerance.of_rounding(
        measured.lengths
    ):
        comes = shown(wide, measured.lengths)
        yield Finding(
            "schematic", measured.lengths.span,
            f"{shown(value, measured.lengths)} ({measured.count} sts)", comes,
            f"{measured.count} stitches at {plain(gauge.stitches)} in "
            f"{shown(gauge.width, measured.lengths)} are {comes}, not "
            f"{shown(value, measured.lengths)}.",
            "likely",
        )  # fmt: skip


def _twice(reading: Reading) -> Iterator[Finding]:
    """One girth, or one length with a name of its own, stated as two numbers."""
    first: dict[tuple[str, str, str], Measurement] = {}
    for measured in reading.facts.measurements:
        own = measured.way == "girth" and measured.name not in ("circumference", "cuff", "neck")
        if measured.body or not own or measured.lengths.ranged:
            continue
        known = first.setdefault((measured.name, measured.way, measured.piece), measured)
        one, other = known.lengths, measured.lengths
        if known is measured or len(one.values) != len(other.values):
            continue
        pairs = zip(one.values, other.values, strict=True)
        slack = tolerance.of_rounding(one) + tolerance.of_rounding(other)
        # A front's width is half of the girth.
        if all(
            min(abs(a - b), abs(a - 2 * b), abs(2 * a - b)) <= slack + _APART * a for a, b in pairs
        ):
            continue
        a, b = next(
            (a, b) for a, b in zip(one.values, other.values, strict=True) if abs(a - b) > slack
        )
        yield Finding(
            "schematic", other.span, f"{measured.name} {shown(b, other)}", shown(a, one),
            f"The {measured.name} is {shown(b, other)} here and {shown(a, one)} in line "
            f"{reading.script.line(one.span.start)}.",
            "likely",
        )  # fmt: skip


def _diameter(reading: Reading) -> Iterator[Finding]:
    """A diameter beside a circumference: they differ by 3.14; by 2 it is a width laid flat."""
    sizes = len(reading.script.sizes)
    rounds = [m for m in reading.facts.measurements if m.name in ("circumference", "head")]
    across = [m for m in reading.facts.measurements if m.way == "diameter"]
    if len(rounds) != 1 or len(across) != 1 or sizes != 1:
        return
    girth, wide = rounds[0].lengths.values[0], across[0].lengths.values[0]
    if abs(girth / wide / math.pi - 1) <= 0.1:
        return
    lengths = across[0].lengths
    flat = " It is the width laid flat." if abs(girth / wide - 2) < 0.1 else ""
    yield Finding(
        "schematic", lengths.span, f"diameter {shown(wide, lengths)}", shown(girth / math.pi, lengths),
        f"A ring of {shown(girth, lengths)} has a diameter of {shown(girth / math.pi, lengths)}, "
        f"not {shown(wide, lengths)}.{flat}",
        "likely",
    )  # fmt: skip


SCHEMATIC = Check(
    "schematic",
    "the numbers of the schematic are what the rows and the other measurements give",
    "Gauge: 16 sc and 18 rows = 10 cm\n\nSchematic\nWidth of back: 41.5 cm\n\nInstructions\n"
    "Ch 77.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (76 sc)\n"
    "Rows 2-40: Ch 1, sc in each st across, turn. (76 sc)\n",
    schematic,
)
