"""What a stitch pattern costs in yarn, against single crochet over the same area.

Everything is derived from the motions of its stitches: yarn is in proportion to the times that a
stitch catches it, a row is as high as its stitches on the mean or as its highest arch of chains, and
what stands over one repeat of the foundation is as wide as it. A swatch knows better.
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
from frogless.rows.walk import flatten
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
        row_height(row.body, stitches, width) for row, width in _rows_and_widths(way, stitches)
    )
    caught = sum(_catches(stitches[key]) * n for key, n in made.items())
    single = stitches[SINGLE]
    plain = single.catches * way.multiple * heights / single.height.typical
    return Cost(caught / plain, heights / way.period, dict(+made))


def row_height(body: Iterable[Node], stitches: Mapping[str, Stitch], place: float = 1.0) -> float:
    """Height of a row against single crochet: the mean of its stitches, or its highest arch.

    Where tall and short stitches share a row, they change places in other rows (waves, checks) or
    lean on each other (shells); chains beside stitches are stretched to them.

    Args:
        place: how wide a place of the row below is, in stitch widths: the arches of a net are few
            places, each as wide as the stitches that the first of them were laid over.
    """
    inner = flatten(body)
    made = {key: n for key, n in counted(inner).items() if _stands(stitches[key])}
    high_sum = sum(stitches[key].height.typical * n for key, n in made.items())
    mean = high_sum / sum(made.values()) if made else 0.0
    single = stitches[SINGLE].height_over_width
    arches = Counter(_arches(inner, stitches))
    # What comes once belongs to an edge.
    repeated = [each for each, n in arches.items() if n > 1] or list(arches)
    high = max((arch(length, places * place) for length, places in repeated), default=0.0)
    return max(mean, high / (single.typical if single else 1.0), 0.01)


def _stands(stitch: Stitch) -> bool:
    return stitch.key != CHAIN and bool(stitch.leaves and stitch.stands_on)


def _hangs(stitch: Stitch) -> bool:
    """Whether it is made like a chain: on nothing, and to be worked into."""
    return bool(stitch.leaves) and not stitch.stands_on


def _catches(stitch: Stitch) -> float:
    """Times it catches the yarn; what is drawn out long takes as many chains as it is long."""
    return stitch.catches + (stitch.width.typical - 1 if _hangs(stitch) else 0)


def arch(chains: float, span: float) -> float:
    """How high a run of chains reaches over so many places, in stitch widths.

    Pulled up in the middle: two legs of half the chains over half the span. Laid flatter than at a
    slant of 45 degrees a net draws in until it encloses most, and is counted as high as that area
    makes over the whole span. A chain is as long as a stitch is wide.

    Source: yarn ravelled from rows of one length, chain 1 : single crochet 2.08 at one chain to a
    stitch (one measurement); the legs, and the slant of most area, are derived.
    """
    steep = chains**2 >= 2 * span**2
    return sqrt(chains**2 - span**2) / 2 if steep else chains**2 / (4 * span)


def _arches(body: tuple[Node, ...], stitches: Mapping[str, Stitch]) -> Iterator[tuple[float, int]]:
    """The length of each run of chains in chains, and the places skipped beside it and one."""
    flat = (Skip(0), *body, Skip(0))
    for before, node, after in zip(flat, flat[1:], flat[2:], strict=False):
        if length := _hanging(node, stitches):
            skipped = sum(each.times for each in (before, after) if isinstance(each, Skip))
            yield length, 1 + skipped


def _hanging(node: Node, stitches: Mapping[str, Stitch]) -> float:
    if isinstance(node, Chain):
        return 0 if node.each else node.times
    if isinstance(node, Work) and _hangs(stitches[node.stitch]):
        return node.times * stitches[node.stitch].width.typical
    return 0


def _rows_and_widths(way: Way, stitches: Mapping[str, Stitch]) -> Iterator[tuple[Row, float]]:
    """The rows that repeat, each with the width of a place of the row below it."""
    last = len(way.rows) + way.period
    few, many = (worked(way, way.places(way.least + n), last, stitches) for n in (0, _REPEATS))
    for below, row, narrow in zip(
        many[-way.period - 1 :], many[-way.period :], few[-way.period - 1 :], strict=False
    ):
        yield row, _REPEATS * way.multiple / (below.count - narrow.count)


def _period(way: Way, repeats: int, stitches: Mapping[str, Stitch]) -> Counter[str]:
    """Stitches of the rows that repeat over so many repeats, chains one by one."""
    places = way.places(repeats)
    rows = worked(way, places, len(way.rows), stitches)
    side = way.side if way.closed else OTHER_SIDE[way.side]
    begin = Row(0, side, "", (Chain(places, each=True),), places, end=End())
    fabric = expand(Program((Piece("", way.closed, (begin, *rows)),)), stitches)
    found = Counter[str]()
    for row in fabric.pieces[""][1 + way.setup :]:
        found.update(row.keys[i] for i in row.stitch.tolist())
    return found
