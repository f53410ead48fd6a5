"""What a stitch pattern costs in yarn, against single crochet over the same area.

Everything is derived from the motions of its stitches: yarn is in proportion to the times that a
stitch catches it, a row is as high as its stitches on the mean or as its highest arch of chains, and
every place is one stitch wide. A swatch knows better.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import sqrt

from frogless.fabric.expand import expand
from frogless.rows.count import CHAIN
from frogless.rows.count import worked as counted
from frogless.rows.nodes import Chain, End, Node, Piece, Program, Row, Skip, Work
from frogless.rows.walk import unrolled
from frogless.stitches.model import Stitch
from frogless.stitches.pattern_rows import OTHER_SIDE, Way, worked

SINGLE = "single_crochet"
_REPEATS = 3


@dataclass(frozen=True, slots=True)
class Cost:
    """What one repeat of a pattern takes.

    Args:
        yarn: times the yarn of single crochet over the same area.
        height: of the rows that repeat, against as many rows of single crochet.
        stitches: worked in one repeat of the rows that repeat, by key.
    """

    yarn: float
    height: float
    stitches: Mapping[str, int]


def cost(way: Way, stitches: Mapping[str, Stitch]) -> Cost:
    """The yarn, height and stitches of the rows that repeat; ends of rows do not count."""
    few, many = (_period(way, way.least + n, stitches) for n in (0, _REPEATS))
    made = Counter({key: n // _REPEATS for key, n in (many - few).items()})
    heights = sum(
        row_height(row.body, stitches) for row in _rows(way, way.least + _REPEATS, stitches)
    )
    caught = sum(stitches[key].catches * n for key, n in made.items())
    single = stitches[SINGLE]
    plain = single.catches * way.multiple * heights / single.height.typical
    return Cost(caught / plain, heights / way.period, dict(+made))


def row_height(body: Iterable[Node], stitches: Mapping[str, Stitch]) -> float:
    """Height of a row against single crochet: the mean of its stitches, or its highest arch.

    Where tall and short stitches share a row, they change places in other rows (waves, checks) or
    lean on each other (shells); chains beside stitches are stretched to them.
    """
    inner = tuple(body)
    made = {key: n for key, n in counted(inner).items() if key != CHAIN and stitches[key].leaves}
    high_sum = sum(stitches[key].height.typical * n for key, n in made.items())
    mean = high_sum / sum(made.values()) if made else 0.0
    single = stitches[SINGLE].height_over_width
    high = max((arch(*each) for each in _arches(inner)), default=0.0)
    return max(mean, high / (single.typical if single else 1.0), 0.01)


def arch(chains: int, span: int) -> float:
    """How high a run of chains reaches over so many places, in stitch widths.

    Pulled up in the middle: two legs of half the chains over half the span. A chain is as long as a
    stitch is wide.

    Source: yarn ravelled from rows of one length, chain 1 : single crochet 2.08 at one chain to a
    stitch (one measurement); the legs are derived.
    """
    return sqrt(max(chains**2 - span**2, 0)) / 2


def _arches(body: tuple[Node, ...]) -> Iterator[tuple[int, int]]:
    """Each run of chains, and the places that are skipped beside it and one."""
    flat = (Skip(0), *unrolled(body), Skip(0))
    for before, node, after in zip(flat, flat[1:], flat[2:], strict=False):
        if isinstance(node, Chain) and not node.each:
            skipped = sum(each.times for each in (before, after) if isinstance(each, Skip))
            yield node.times, 1 + skipped


def _rows(way: Way, repeats: int, stitches: Mapping[str, Stitch]) -> tuple[Row, ...]:
    rows = worked(way, way.places(repeats), len(way.rows), stitches)
    return rows[way.setup :]


def _period(way: Way, repeats: int, stitches: Mapping[str, Stitch]) -> Counter[str]:
    """Stitches of the rows that repeat over so many repeats, chains one by one."""
    places = way.places(repeats)
    rows = worked(way, places, len(way.rows), stitches)
    side = way.side if way.closed else OTHER_SIDE[way.side]
    begin = Row(0, side, "", (Work(SINGLE, 0), Chain(places, each=True)), places, end=End())
    fabric = expand(Program((Piece("", way.closed, (begin, *rows)),)), stitches)
    found = Counter[str]()
    for row in fabric.pieces[""][1 + way.setup :]:
        found.update(row.keys[i] for i in row.stitch.tolist())
    return found
