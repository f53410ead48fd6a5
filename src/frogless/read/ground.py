"""Places that rows take and leave, counted here on purpose and not with the writer's counter.

The round trip proves little if the reader believes the same arithmetic as the writer.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import repeat
from operator import itemgetter

from frogless.errors import InputError
from frogless.rows.nodes import (
    Base,
    Chain,
    Into,
    Leave,
    Node,
    Repeat,
    Row,
    Side,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.stitches.model import Stitch

#: What a place is: "st" (also a chain that counts as one), followed by "=" and the key of the stitch
#: that made it where that is known, "end" (of a row), "ring", or "sp" and the number of its chains;
#: and the number of the row that made it, -1 for an edge begun on.
Spot = tuple[str, int]
FROM_EDGE = -1
#: More than any garment has in a row: beyond it the places of a row would fill the memory.
MOST_STITCHES = 100_000
NO_START = Start()
_KIND = itemgetter(0)


@dataclass(frozen=True, slots=True)
class Way:
    """Which way a row goes: its side, worked backwards or not, and how it begins."""

    side: Side
    backwards: bool = False
    start: Start = NO_START

    @property
    def goes_back(self) -> bool:
        """Whether it runs against the way the right side is worked."""
        return (self.side == "WS") != self.backwards


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of an edge: its places in the order it has them, and the row that made them.

    Args:
        top: the last row of the piece, when the stretch lies on it by that name.
        whole: all of it.
    """

    places: tuple[str, ...]
    top: Row | None = None
    whole: bool = True


@dataclass(frozen=True, slots=True)
class Ground:
    """What a row is offered, in the order met; None: not known.

    Args:
        below: the number of the row below, and how that one starts.
    """

    spots: tuple[Spot, ...] | None
    below: int = FROM_EDGE
    start: Start = NO_START

    @property
    def places(self) -> int | None:
        """How many places there are."""
        return None if self.spots is None else len(self.spots)

    @property
    def has_spaces(self) -> bool:
        """Whether some of them are chain spaces."""
        return any(kind.startswith("sp") for kind, _ in self.spots or ())

    def kinds(self, at: int, taken: int) -> tuple[str, ...]:
        """What some of the places are, whatever made them; those beyond the last are none."""
        return tuple(kind.partition("=")[0] for kind in self.made(at, taken))

    def made(self, at: int, taken: int) -> tuple[str, ...]:
        """The same, with the stitches that made them."""
        return tuple(map(_KIND, (self.spots or ())[at : at + taken]))

    def older(self, at: int) -> int:
        """How many of the first `at` places an earlier row than the one below made."""
        return sum(row != self.below for _, row in (self.spots or ())[:at])


def plain(places: int | None) -> tuple[Stretch, ...] | None:
    """So many stitches to begin on."""
    return None if places is None else (Stretch(("st",) * places),)


@dataclass(frozen=True, slots=True)
class Done:
    """A row that was read, with the places it made.

    Args:
        begins_inside: places lie behind it: it does not begin at the edge.
        ends_inside: places lie ahead of it still.
    """

    row: Row
    made: tuple[str, ...]
    begins_inside: bool
    ends_inside: bool


@dataclass(frozen=True, slots=True)
class Edge:
    """All places of a piece that wait, cut in two by the loop on the hook."""

    behind: tuple[Spot, ...] = ()
    ahead: tuple[Spot, ...] | None = ()


NO_PLACES = Edge()


def first_edge(begun: Sequence[Stretch] | None, way: Way) -> Edge:
    """What lies before the first row of a piece."""
    if begun is None:
        return Edge((), None)
    ahead = [place for stretch in begun for place in _met(stretch, way)]
    if way.backwards and all(stretch.top is None for stretch in begun):
        ahead.reverse()
    return Edge((), tuple((place, FROM_EDGE) for place in ahead))


def next_edge(edge: Edge, before: Row, way: Way, *, closed: bool) -> Edge:
    """What lies before a row and behind it: turned work meets from behind what it made last."""
    last = Way(before.side, before.backwards, before.start)
    behind, ahead = edge.behind, edge.ahead or ()
    if last.goes_back == way.goes_back:
        return Edge((), ahead + behind if closed else behind + ahead)
    back = _turned(behind, before, way)
    left = ahead[::-1]
    return Edge((), back + left) if closed else Edge(left, back)


def after_row(edge: Edge, row: Row, made: Sequence[str]) -> Edge:
    """What a row made lies behind it, what it left for later still ahead."""
    later = sum(_later(row.body))
    here = tuple(zip(made, repeat(row.number)))
    if edge.ahead is None:
        return Edge(edge.behind + here, (("st", FROM_EDGE),) * later)
    kept = edge.ahead[len(edge.ahead) - min(later, len(edge.ahead)) :]
    return Edge(edge.behind + here, kept)


def places_made(row: Row, stitches: Mapping[str, Stitch], *, closed: bool) -> tuple[str, ...]:
    """What a row leaves for the next, in the order made."""
    if _is_ring(row, stitches, closed=closed):
        return ("ring",)
    chain = ("st",) if row.start.counts and row.start.chains else ()
    return (*chain, *_left(row.body, stitches))


def stretch_of(base: Base, rows: Sequence[Done]) -> Stretch:
    """The places that a stretch of an edge names, in the order met; none beyond its end.

    Raises:
        InputError: the piece has no such row.
    """
    places, top = _edge_places(base, rows), rows[-1].row if base.edge == "last_row" else None
    asked = len(places) if base.count is None else base.count
    found = places[base.first : base.first + asked]
    whole = not base.first and base.count is None
    return Stretch(found[::-1] if base.reverse and top is None else found, top, whole)


def taken_by(body: Iterable[Node], stitches: Mapping[str, Stitch]) -> int:
    """Places that nodes take, skip or leave for later."""
    total = 0
    for node in body:
        if isinstance(node, Work):
            total += node.times * stitches[node.stitch].stands_on
        elif isinstance(node, Together):
            total += node.places
        elif isinstance(node, Skip | Leave):
            total += node.times
        elif isinstance(node, Repeat):
            total += node.times * taken_by(node.body, stitches)
        else:
            total += isinstance(node, Into)
    return total


def size_of(body: Iterable[Node]) -> int:
    """Stitches that nodes make and places that they pass over, chains one by one."""
    total = 0
    for node in body:
        if isinstance(node, Into | Repeat):
            total += getattr(node, "times", 1) * size_of(node.body)
        else:
            total += getattr(node, "times", 1)
    return total


def first_made(body: Iterable[Node], stitches: Mapping[str, Stitch]) -> str | None:
    """The key of the first stitch that a body makes, chains and ornaments aside."""
    for node in body:
        if isinstance(node, Work | Together) and stitches[node.stitch].leaves:
            return node.stitch
        if isinstance(node, Into | Repeat) and (found := first_made(node.body, stitches)):
            return found
    return None


def begins_on_ring(body: Sequence[Node], stitches: Mapping[str, Stitch]) -> bool:
    """Whether a foundation is one adjustable ring: a stitch that begins on no chains."""
    match tuple(body):
        case (Work(key, 1),):
            return stitches[key].kind == "foundation" and not stitches[key].begins_on
    return False


def _met(stretch: Stretch, way: Way) -> tuple[str, ...]:
    """The places of a stretch in the order met; on a last row the sides of the rows decide."""
    if stretch.top is None:
        return stretch.places
    last = Way(stretch.top.side, stretch.top.backwards)
    if last.goes_back == way.goes_back:
        return stretch.places
    if stretch.whole and _sits_on_first(stretch.top, way):
        return stretch.places[:1] + stretch.places[:0:-1]
    return stretch.places[::-1]


def _turned(behind: tuple[Spot, ...], before: Row, way: Way) -> tuple[Spot, ...]:
    """The places made last come first; a joined round that goes on in its first place takes that."""
    if _sits_on_first(before, way):
        return behind[:1] + behind[:0:-1]
    return behind[::-1]


def _sits_on_first(before: Row, way: Way) -> bool:
    """Whether the loop sits on the first place of a joined round, and the next begins on it."""
    if before.end.join == "chain_top":
        return before.start.counts and before.start.chains > 0
    stands = way.start.counts and way.start.chains > 0
    return before.end.join == "first_stitch" and stands


def _edge_places(base: Base, rows: Sequence[Done]) -> tuple[str, ...]:
    if base.edge in ("row_ends", "right_edge", "left_edge"):
        return tuple("end" for done in rows if _has_end(base, done))
    if base.edge == "foundation":
        return rows[0].made
    if base.edge == "last_row":
        return rows[-1].made
    for done in rows:
        if done.row.number == base.row:
            return done.made
    raise InputError(f'"{base.piece}" has no row {base.row}')


def _has_end(base: Base, done: Done) -> bool:
    """Whether a row reaches an edge; a foundation chain has no end."""
    if done.row.number == 0 and all(isinstance(node, Chain) for node in done.row.body):
        return False
    if base.edge == "row_ends":
        return True
    back = Way(done.row.side, done.row.backwards).goes_back
    inside = done.begins_inside if (base.edge == "right_edge") != back else done.ends_inside
    return not inside


def _is_ring(row: Row, stitches: Mapping[str, Stitch], *, closed: bool) -> bool:
    if row.number:
        return False
    if begins_on_ring(row.body, stitches):
        return True
    one = len(row.body) == 1 and isinstance(row.body[0], Chain) and not row.body[0].each
    return one and closed and row.end.join != "none"


def _left(body: Iterable[Node], stitches: Mapping[str, Stitch]) -> list[str]:
    """Every place left, in the order made."""
    left: list[str] = []
    for node in body:
        if isinstance(node, Work):
            left += (f"st={node.stitch}",) * (node.times * stitches[node.stitch].leaves)
        elif isinstance(node, Together):
            left += (f"st={node.stitch}",) * stitches[node.stitch].leaves
        elif isinstance(node, Chain) and node.times:
            left += ("st",) * node.times if node.each else (f"sp{node.times}",)
        elif isinstance(node, Into):
            left += _left(node.body, stitches)
        elif isinstance(node, Repeat):
            left += _left(node.body, stitches) * node.times
    return left


def _later(body: Iterable[Node]) -> Iterator[int]:
    for node in body:
        if isinstance(node, Leave):
            yield node.times
        elif isinstance(node, Repeat):
            yield node.times * sum(_later(node.body))
