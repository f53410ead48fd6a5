"""Multiples that are claimed against the stitches that are there."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.checks.facts.pieces import Held, Row, held_of
from frogless.proofread.checks.facts.told import sizes_told
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Multiple
from frogless.proofread.findings import Finding

#: Words of a claim that name no part of the work.
_COMMON = {
    "multiple", "multiples", "stitch", "stitches", "pattern", "needs", "over", "plus", "worked",
    "chain", "foundation", "turning", "each", "with", "this", "that", "stitch.", "the",
}  # fmt: skip


def multiple_claimed(reading: Reading) -> Iterator[Finding]:
    """Claims of a multiple that no count of any size meets."""
    held = held_of(reading)
    for claim in reading.facts.multiples:
        yield from _claim(held, claim)


def _claim(held: Held, claim: Multiple) -> Iterator[Finding]:
    wrong: list[int] = []
    nearest: tuple[int, int] | None = None
    for size, pieces in enumerate(held.pieces):
        rows = [row for piece in pieces for row in piece.rows]
        meant = _meant(rows, claim) or rows
        counts = [row.count for row in meant if not row.spaced]
        chains = [row.count for row in meant if row.foundation]
        if not counts or any(_meets(count, claim) for count in counts):
            continue
        if any((count - (claim.chain or 0)) % claim.multiple == claim.over for count in chains):
            continue
        wrong.append(size)
        # What the pattern is worked on: the row after the chain, where there is one.
        base = next(
            (row.count for row in meant if not row.foundation and not row.spaced), counts[0]
        )
        nearest = nearest or (base, _near(base, claim))
    if wrong and nearest:
        count, near = nearest
        told = f"{claim.multiple} + {claim.over}" if claim.over else str(claim.multiple)
        left = (count - claim.over) % claim.multiple
        yield Finding(
            "multiple-claimed",
            claim.span,
            f"multiple of {told}",
            f"{count} sts",
            f"{count} stitches are no multiple of {told}: {left} are left over. {near} would be "
            "one; or the multiple is another.",
            "likely",
            sizes=sizes_told(held.reading, wrong),
        )


def _meets(count: int, claim: Multiple) -> bool:
    return count % claim.multiple == claim.over


def _near(count: int, claim: Multiple) -> int:
    down = count - (count - claim.over) % claim.multiple
    up = down + claim.multiple
    return down if count - down <= up - count and down > 0 else up


def _meant(rows: list[Row], claim: Multiple) -> list[Row]:
    """The rows of the part that the claim names, "the edging", and the row that they stand on."""
    words = {word for word in re.findall(r"[a-z]{4,}", claim.words) if word not in _COMMON}
    found: list[Row] = []
    for at, row in enumerate(rows):
        if words & set(re.findall(r"[a-z]{4,}", row.section)):
            found += rows[at - 1 : at] if not found else []
            found.append(row)
    return found


MULTIPLE = Check(
    "multiple-claimed",
    "the stitches are no multiple of what is claimed",
    "Notes\nWorked over a multiple of 8 + 1 sts.\n\nInstructions\nCh 24.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (23 sc)\n"
    "Row 2: Ch 1, sc in each st across, turn. (23 sc)\n",
    multiple_claimed,
)
