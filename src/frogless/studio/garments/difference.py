"""What a change did to a garment, in one line."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.shown import about

MOST = 4
"""Differences that one line tells; more are counted."""


def told(before: Drafted, after: Drafted) -> str:
    """ "hem: 212 → 220 stitches; yarn about 640 → 655 m"; "" when nothing that shows is different."""
    found = [*_counts(before, after), *_rounds(before, after)]
    yarn = list(_yarn(before, after))
    shown = found[: MOST - len(yarn)]
    more = len(found) - len(shown)
    others = [f"{more} more {'change' if more == 1 else 'changes'}"] if more else []
    return "; ".join([*shown, *others, *yarn])


def _counts(before: Drafted, after: Drafted) -> Iterator[str]:
    """Landmarks of one tube, measured widths of pieces, by name."""
    if not after.of_pieces:
        old = {mark.key: mark.count for mark in before.plan.landmarks}
        for mark in after.plan.landmarks:
            if mark.key in old and old[mark.key] != mark.count:
                yield f"{say(after, mark.key)}: {old[mark.key]} → {mark.count} stitches"
        return
    was = {(p.name, m.name): m.count for p in before.plan.pieces for m in p.measures}
    for piece in after.plan.pieces:
        for one in piece.measures:
            count = was.get((piece.name, one.name), one.count)
            if one.count and count != one.count:
                unit = "rows" if one.kind == "length" else "stitches"
                yield f"{piece.name}, {one.name}: {count} → {one.count} {unit}"


def _rounds(before: Drafted, after: Drafted) -> Iterator[str]:
    if after.of_pieces or before.of_pieces:
        return
    was, now = (max((m.rounds for m in one.plan.landmarks), default=0) for one in (before, after))
    if was != now:
        yield f"{was} → {now} rounds"


def _yarn(before: Drafted, after: Drafted) -> Iterator[str]:
    was, now = (
        about(sum(need.length.value for need in one.tally.yarn), one.units)
        for one in (before, after)
    )
    if was != now:
        number, _, unit = was.partition(" ")
        same = now.endswith(f" {unit}")
        yield f"yarn about {number if same else was} → {now}"
