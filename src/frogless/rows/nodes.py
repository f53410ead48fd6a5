"""The row program: what is worked, row by row, as a small tree of frozen values.

A program is pieces, a piece is rows, a row is how it starts, a body of nodes, and how it ends.
Stitches are named by their dictionary key and by nothing else. The tree is run-length by nature: a
row of 300 stitches is a handful of nodes. `row` also means a round; `Piece.closed` says which.

A *place* is what the row below leaves to work into. A body takes the places in the order in which
the work meets them: in the order they were made when the row goes the same way as the row below, in
reverse when the work was turned (or when the row is worked `backwards`).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

Side = Literal["RS", "WS"]
Join = Literal["none", "first_stitch", "chain_top"]
Edge = Literal["foundation", "last_row", "row_ends"]


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


Node = Work | Into | Together | Skip | Chain | Repeat


@dataclass(frozen=True, slots=True)
class Start:
    """How a row begins: a turning chain of `chains` (0: none), counted as its first stitch or not.

    A chain that counts stands on the first place; one that does not leaves it to the body.
    """

    chains: int = 0
    counts: bool = False


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
        count: places it leaves for the next row, as stated in the text.
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
    """The edge of another piece that a piece is worked onto."""

    piece: str
    edge: Edge


@dataclass(frozen=True, slots=True)
class Piece:
    """Rows worked in one go. Without a `base` the first is the foundation and stands on nothing."""

    name: str
    closed: bool
    rows: tuple[Row, ...]
    base: Base | None = None


@dataclass(frozen=True, slots=True)
class Seam:
    """Two edges worked together.

    `stitch` in each of `count` places of one, spread over `over` places of the other.

    Args:
        spread: for each place of the second edge, how many stitches of the seam it takes.
    """

    name: str
    stitch: str
    first: Base
    second: Base
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
