"""The row program: what is worked, row by row, as a small tree of frozen values.

A program is pieces, a piece is rows, a row is how it starts, a body of nodes, and how it ends.
Stitches are named by their dictionary key and by nothing else. The tree is run-length by nature: a
row of 300 stitches is a handful of nodes. `row` also means a round; `Piece.closed` says which.

A *place* is what the row below leaves to work into. A body takes the places in the order in which
the work meets them: in the order they were made when the row goes the same way as the row below, in
reverse when the work was turned (or when the row is worked `backwards`).

The places that wait to be worked into are an edge, cut in two by the loop on the hook: those ahead
and those behind. A row takes from those ahead and lays its own behind; what it leaves unworked for
later (`Leave`) stays ahead. Turning swaps the two. So a short row leaves places, the row back begins
where it turned, and the row after that meets its own places first and then those that were left. In
a piece that is closed the two ends of the edge are one: what was left is met from its far end.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

Side = Literal["RS", "WS"]
Join = Literal["none", "first_stitch", "chain_top"]
Edge = Literal["foundation", "last_row", "row", "underside", "row_ends", "right_edge", "left_edge"]

#: The edges whose places are ends of rows; those of the others are stitches.
ROW_ENDS: frozenset[Edge] = frozenset({"row_ends", "right_edge", "left_edge"})


@dataclass(frozen=True, slots=True)
class Work:
    """`stitch` worked `times` times, each into the next place.

    It takes several places, or none, where the dictionary says so.
    """

    stitch: str
    times: int = 1


@dataclass(frozen=True, slots=True)
class Into:
    """All of `body` worked into one and the same next place."""

    body: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class Together:
    """`stitch` worked over the next `places` places and closed together into one stitch."""

    stitch: str
    places: int


@dataclass(frozen=True, slots=True)
class Skip:
    """`times` places passed over on purpose."""

    times: int = 1


@dataclass(frozen=True, slots=True)
class Leave:
    """The last `times` places left unworked for now: a later row of the piece works them.

    They are all that still lie ahead, those among them that earlier rows left already.
    """

    times: int = 1


@dataclass(frozen=True, slots=True)
class Chain:
    """`times` chains in a run.

    A run is one place (a chain space) for the next row; with `each` (a foundation chain) every
    chain is one.
    """

    times: int = 1
    each: bool = False


@dataclass(frozen=True, slots=True)
class Repeat:
    """`body` worked `times` times in all."""

    body: tuple[Node, ...]
    times: int


@dataclass(frozen=True, slots=True)
class Change:
    """From here on another colour: the stitch before draws it through as its last loop.

    Args:
        colour: its letter.
        carried: the colour before goes on with the work; otherwise it is cut.
    """

    colour: str
    carried: bool = True


Node = Work | Into | Together | Skip | Leave | Chain | Repeat | Change


@dataclass(frozen=True, slots=True)
class Start:
    """How a row begins: a turning chain of `chains` (0: none), counted as its first stitch or not.

    A chain that counts stands on the first place; one that does not leaves it to the body.

    Args:
        shares: the chain counts, and the body's first node is worked into that place too ("ch 3, dc
            in same st", "ch 3, 11 dc in ring").
        across: places passed with slip stitches before the chain (an armhole's first step); neither
            they nor the slip stitches are worked into again.
    """

    chains: int = 0
    counts: bool = False
    shares: bool = False
    across: int = 0


@dataclass(frozen=True, slots=True)
class End:
    """How a row ends: joined where, turned or not, yarn cut or not."""

    join: Join = "none"
    turn: bool = False
    fasten_off: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One row or round.

    Args:
        number: 0 for the foundation, then 1, 2, …
        count: places it leaves for the next row, as stated in the text; what it leaves unworked for
            later is not counted.
        marks: for each shaping point in the order worked, which stitch of its group (0 first) the
            marker moves up into; empty in a row without shaping.
        backwards: worked back along the row below without turning (crab stitch).
        hook: mm.
    """

    number: int
    side: Side
    section: str
    body: tuple[Node, ...]
    count: int
    start: Start = Start()
    end: End = End()
    marks: tuple[int, ...] = ()
    backwards: bool = False
    hook: float = 0.0


@dataclass(frozen=True, slots=True)
class Base:
    """A stretch of an edge of another piece, which a piece is worked onto or joined by.

    `foundation` is the underside of the foundation row; `row` the top of row `row`, also places that
    the rows above it left out; `underside` the other side of what row `row` made (bridging chains);
    `right_edge` and `left_edge` are row ends as seen from the right side, first row first: the right
    edge is where right side rows begin. `row_ends` is either, where it does not matter.

    Args:
        row: number of the row that `row` and `underside` name.
        first, count: the stretch, in places as that row left them or in row ends; None: to the end.
        reverse: met from the last to the first; of `last_row` the sides of the rows decide instead.
    """

    piece: str
    edge: Edge
    row: int = 0
    first: int = 0
    count: int | None = None
    reverse: bool = False


@dataclass(frozen=True, slots=True)
class Piece:
    """Rows worked in one go; without `bases` the first row is the foundation and stands on nothing.

    Args:
        bases: the stretches of edges it is begun on, one after the other.
        colour: the letter of the colour it is begun with; "" when there is one colour only.
    """

    name: str
    closed: bool
    rows: tuple[Row, ...]
    bases: tuple[Base, ...] = ()
    colour: str = ""


@dataclass(frozen=True, slots=True)
class Seam:
    """Two edges worked together.

    `stitch` in each of `count` places of one, spread over `over` places of the other.

    Args:
        first, second: the stretches that make up each edge, one after the other.
        spread: for each place of the second edge, how many stitches of the seam it takes.
    """

    name: str
    stitch: str
    first: tuple[Base, ...]
    second: tuple[Base, ...]
    count: int
    over: int
    spread: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Program:
    """The whole pattern: pieces in the order worked, then the seams that join them."""

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...] = field(default=())

    def piece(self, name: str) -> Piece:
        """The piece of that name.

        Raises:
            KeyError: no such piece.
        """
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(name)
