"""Multiples that are claimed against the stitches that are there."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.checks.facts.pieces import Held, Row, held_of
from frogless.proofread.checks.facts.told import sizes_told
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Multiple
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Increase,
    Into,
    Numbers,
    Repeat,
    Skip,
    Together,
)

#: Words of a claim that name no part of the work.
_COMMON = {
    "multiple", "multiples", "stitch", "stitches", "pattern", "needs", "over", "plus", "worked",
    "chain", "foundation", "turning", "each", "with", "this", "that", "stitch.", "the",
}  # fmt: skip


#: More stitches than these into one place are a fan, not an increase.
_PLAIN = 3


def multiple_claimed(reading: Reading) -> Iterator[Finding]:
    """Claims of a multiple that no count of any size meets."""
    held = held_of(reading)
    for claim in reading.facts.multiples:
        yield from _claim(held, claim)


def _claim(held: Held, claim: Multiple) -> Iterator[Finding]:
    other = _repeat(held, claim)
    if other:
        yield other
        return
    wrong: list[int] = []
    nearest: tuple[int, int] | None = None
    for size, pieces in enumerate(held.pieces[: held.sizes]):
        rows = [row for piece in pieces for row in piece.rows]
        meant = _meant(rows, claim) or rows
        counts = [row.count for row in meant if not row.spaced]
        chains = [row.count for row in meant if row.foundation]
        if not counts or not held.known[size]:
            continue
        first = next((row for row in meant if not row.foundation), meant[0])
        if first.spaced:
            continue  # it stands on the chain, of which nobody says how much is for turning
        base = first.count
        # Work that keeps its width stands on its first row; shaped work may meet it on the way.
        tried = (base,) if counts[-1] == base and len(pieces) == 1 else counts
        if any(_meets(count, claim) for count in tried):
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
            sizes=sizes_told(held, wrong),
        )


def _repeat(held: Held, claim: Multiple) -> Finding | None:
    """The rows repeat a group over another number of stitches than the multiple."""
    found: dict[int, int] = {}
    reading = held.reading
    for worked in reading.reckoning.rows:
        told = reading.told[worked.told]
        for act in told.said.acts:
            if isinstance(act, Repeat) and act.extent.kind in ("end", "but_last", "unsaid"):
                places = places_of(act)
                if places > 1 and _is_pattern(act):
                    found.setdefault(places, worked.told)
    if not found or any(n % claim.multiple == 0 or claim.multiple % n == 0 for n in found):
        return None
    places, at = next(iter(found.items()))
    label = reading.told[at].label
    row = reading.script.words(label.span).rstrip(":") if label else ""
    return Finding(
        "multiple-claimed",
        claim.span,
        f"multiple of {claim.multiple}",
        f"repeats over {places} sts",
        f"{row or 'A row'} repeats a group over {places} stitches, so the multiple would be "
        f"{places}, not {claim.multiple}.",
        "likely",
    )


def _is_pattern(repeat: Repeat) -> bool:
    """It skips, or works several into one place: no shaping of plain work."""
    return any(
        isinstance(act, Skip)
        or (isinstance(act, Into) and len(act.body) + _stitches(act) > _PLAIN and _once(act))
        for act in repeat.body
    )


def _stitches(into: Into) -> int:
    return sum(act.times.values[0] - 1 for act in into.body if isinstance(act, Bare) and act.times)


def _once(into: Into) -> bool:
    return into.extent.kind == "times" and (
        into.extent.times is None or into.extent.times.values == (1,)
    )


def places_of(repeat: Repeat) -> int:
    """Places of the row below that one repeat uses; 0 where that is not plain."""
    whole = 0
    for act in repeat.body:
        places = _places(act)
        if places is None:
            return 0
        whole += places
    return whole


def _places(act: Act) -> int | None:
    match act:
        case Bare():
            return _number(act.times)
        case Skip():
            return _number(act.times) if act.target.what in ("stitch", "any", "chain") else None
        case Into() if act.extent.kind == "times" and act.target.what in ("stitch", "any"):
            return _number(act.extent.times)
        case Together() if act.extent.kind == "times":
            each = _number(act.extent.times)
            return None if each is None else each * act.places
        case Increase() if act.extent.kind == "times":
            return _number(act.extent.times)
        case Chain() | Aside():
            return 0
        case _:
            return None


def _number(numbers: Numbers | None) -> int | None:
    if numbers is None:
        return 1
    return numbers.values[0] if len(numbers.values) == 1 else None


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
    "the stitches are a multiple of what is claimed",
    "Notes\nWorked over a multiple of 8 + 1 sts.\n\nInstructions\nCh 24.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (23 sc)\n"
    "Row 2: Ch 1, sc in each st across, turn. (23 sc)\n",
    multiple_claimed,
)
