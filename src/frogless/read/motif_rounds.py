"""What a motif's rounds are held to: every place used, all corners alike, its count; how it lies."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from frogless.errors import InputError
from frogless.fabric.model import RowFabric
from frogless.read.ground import places_made
from frogless.read.vocabulary import CHAIN, Vocabulary
from frogless.rows.count import worked
from frogless.rows.nodes import Row
from frogless.stitches.model import Ratio, Stitch
from frogless.stitches.motifs import Flatness, MotifEntry, flat_growth
from frogless.stitches.sums import whole

#: Shapes without corners, whose girth grows by 2 pi times the height of a round: an oval's too.
ROUND = frozenset({"circle", "oval"})
Values = Mapping[str, int]


def misused(row: RowFabric) -> Iterator[str]:
    """What is wrong with the places of a round; what it states and what it leaves."""
    if row.overrun:
        there = row.order.size
        yield f"it asks for {there + row.overrun} places, and the round below leaves {there}"
    ways = (row.used > 0).astype(np.int32) + row.skipped + row.left
    met = ways[row.order]
    if not row.overrun and (met != 1).any():
        at = int(np.flatnonzero(met != 1)[0])
        yield f"place {at + 1} of the round below is neither worked into nor skipped"
    if row.row.count != row.places:
        yield f"it states {row.row.count} places and leaves {row.places}"


def unlike(
    entry: MotifEntry, row: RowFabric, number: int, known: Vocabulary, values: Values
) -> Iterator[str]:
    """Where a round is not the same at all of its corners, petals or points."""
    points = whole(entry.points, values)
    if points < 2 or not number:
        return
    seen = _around(row, known)
    each, over = divmod(len(seen), points)
    if over:
        yield f"it leaves {len(seen)} places, which {points} points do not share evenly"
    for at, what in enumerate(seen[:-each] if not over else ()):
        if what != seen[at + each]:
            yield f"it is not the same {points} times: place {at + 1} differs from {at + each + 1}"
            return


def _around(row: RowFabric, known: Vocabulary) -> list[tuple[str, int]]:
    """Each place that a round leaves: what it is, and how many share the place it stands on."""
    made = places_made(row.row, known.stitches, closed=True)
    # What made a stitch is left aside: a turning chain stands in for a stitch of another name.
    kinds = [kind.partition("=")[0] for kind in made]
    below = row.first[row.made_by].tolist()
    return [
        (kind, below.count(on) if on >= 0 else 0) for kind, on in zip(kinds, below, strict=True)
    ]


def check_count(entry: MotifEntry, number: int, count: int, values: Values) -> None:
    """Whether a round leaves what the formula of its motif gives.

    Raises:
        InputError: it leaves another count.
    """
    if not entry.count or number < entry.count_from:
        return
    told = whole(entry.count, {**values, "r": number})
    if told != count:
        raise InputError(
            f'count "{entry.count}" gives {told} places in rnd {number}, which leaves {count}'
        )


def corner_spaces(entry: MotifEntry, row: Row, known: Vocabulary) -> tuple[int, ...]:
    """The longest chain spaces of a round, if there are as many as corners."""
    kinds = places_made(row, known.stitches, closed=True)
    sizes = {at: int(kind[2:]) for at, kind in enumerate(kinds) if kind.startswith("sp")}
    longest = [at for at, size in sizes.items() if size == max(sizes.values())]
    return tuple(longest) if len(longest) == entry.corners else ()


# How it lies


def flatness(entry: MotifEntry, rows: Sequence[Row], known: Vocabulary) -> Flatness | None:
    """How a motif lies; None of what does not grow for ever, or is neither polygon nor circle.

    Args:
        rows: long enough that the last rounds have come before.
    """
    if not entry.grows or not (entry.corners or entry.shape in ROUND):
        return None
    growth = (_girth(rows[-1], known) - _girth(rows[-1 - entry.period], known)) / entry.period
    stitch = _most(rows[-entry.period :], known)
    shape = stitch.height_over_width
    if shape is None:
        return None
    factor = flat_growth(entry.corners)
    flat = Ratio(factor * shape.low, factor * shape.typical, factor * shape.high)
    return Flatness(stitch.key, growth, flat, entry.corners)


def _girth(row: Row, known: Vocabulary) -> float:
    """Of a round, in widths of a stitch: a chain is as wide as a stitch, a picot has no width."""
    own = 1.0 if row.start.counts and row.start.chains else 0.0
    return own + sum(
        times * known.stitches[key].width.typical for key, times in worked(row.body).items()
    )


def _most(rows: Sequence[Row], known: Vocabulary) -> Stitch:
    """The stitch that most of some rounds is made of."""
    total = sum((worked(row.body) for row in rows), start=worked(()))
    total.pop(CHAIN, None)
    return known.stitches[max(total, key=lambda key: total[key])]
