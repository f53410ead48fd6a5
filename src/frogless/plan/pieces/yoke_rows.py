"""The rows of a yoke: its foundation, short rows that raise the back, and its rounds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from frogless.design.document import PiecesDesign
from frogless.plan.pieces.yoke import CHAIN, Yoke
from frogless.rows.nodes import Chain, End, Leave, Node, Row, Start, Work


@dataclass(frozen=True, slots=True)
class Parts:
    """The stitches of a round as it meets them with the right side facing.

    Half of the back, a sleeve, the front, the other sleeve, and the other half of the back.
    """

    first: int
    sleeve: int
    front: int
    last: int

    @property
    def back(self) -> int:
        """Both halves."""
        return self.first + self.last

    @property
    def count(self) -> int:
        """All stitches."""
        return self.back + self.front + 2 * self.sleeve

    def grown(self, body: int, sleeve: int) -> Parts:
        """With stitches added on the body's and on the sleeve's side of each of four lines."""
        return Parts(
            self.first + body, self.sleeve + 2 * sleeve, self.front + 2 * body, self.last + body
        )

    def as_met(self, *, on_join: bool) -> Parts:
        """As a round met the other way round meets them.

        A counted chain stands on the join and is the first stitch either way.
        """
        extra = int(on_join)
        return replace(self, first=self.last + extra, last=self.first - extra)


def halved(front: int, sleeve: int, *, on_join: bool) -> Parts:
    """Parts whose back is as wide as the front; an odd stitch stands on or after the join."""
    last = (front - int(on_join)) // 2
    return Parts(front - last, sleeve, front, last)


@dataclass(frozen=True, slots=True)
class Worked:
    """What a round works: its nodes, the stitches it leaves, and its markers."""

    body: tuple[Node, ...]
    count: int
    marks: tuple[int, ...] = ()


def short_rows(yoke: Yoke) -> int:
    """How many short rows raise the back: the last one only comes back to the join."""
    return 2 * yoke.raised + 1 if yoke.raised else 0


def yoke_rows(yoke: Yoke, neck: Parts, rounds: tuple[Worked, ...]) -> tuple[Row, ...]:
    """Foundation, short rows and rounds; the last is cut off if no piece goes on from it."""
    above = short_rows(yoke)
    made = [_foundation(yoke, neck.count), *_short_rows(yoke, neck)]
    for r, worked in enumerate(rounds, 1):
        end = yoke.manner.end(r, yoke.chains, last=r == len(rounds))
        made.append(_row(yoke, above + r, r, worked, end))
    if not is_continued(yoke):
        made[-1] = replace(made[-1], end=replace(made[-1].end, turn=False, fasten_off=True))
    return tuple(made)


def plain(yoke: Yoke, count: int) -> Worked:
    """A round without shaping."""
    return Worked((Work(yoke.gauge.stitch, count - int(yoke.manner.chain_counts)),), count)


def is_continued(yoke: Yoke) -> bool:
    """Whether a later piece is begun on the yoke's body, with the same yarn."""
    design = yoke.basis.design
    edge = f"{yoke.name}.body"
    if not isinstance(design, PiecesDesign):
        return False
    return any(edge in on for piece in design.piece for on in _begun_on(piece))


def _begun_on(piece: object) -> Iterator[tuple[str, ...]]:
    for table in (piece, getattr(piece, "start", None)):
        yield tuple(getattr(table, "on", None) or ())


def _foundation(yoke: Yoke, count: int) -> Row:
    stitch = yoke.choice.made_of
    node: Node = Chain(count, each=True) if stitch == CHAIN else Work(stitch, count)
    return Row(0, "RS", yoke.name, (node,), count, end=End("first_stitch"), hook=yoke.hook)


def _short_rows(yoke: Yoke, neck: Parts) -> Iterator[Row]:
    """There and back over the back and less and less of the sleeves; then on to the join.

    In equal steps from the front of the sleeves to the back (derived: so the slope is even).
    """
    steps = range(yoke.raised, 0, -1)
    over = [round(neck.sleeve * step / yoke.raised) for step in steps]
    ahead, behind = [neck.first + n for n in over], [neck.last + n for n in over]
    met, returning = [], 0
    for there, back in zip(ahead, behind, strict=True):
        met += [returning + there, there + back]
        returning = back
    for number, places in enumerate([*met, returning] if met else [], 1):
        worked = plain(yoke, places)
        rest = neck.count - places
        end = End(turn=number <= len(met))
        yield _row(yoke, number, number, replace(worked, body=(*worked.body, Leave(rest))), end)


def _row(yoke: Yoke, number: int, sided: int, worked: Worked, end: End) -> Row:
    """A row; short rows lie on either side by turns in any case."""
    is_short = any(isinstance(node, Leave) for node in worked.body)
    side = ("WS" if sided % 2 == 0 else "RS") if is_short else yoke.manner.side(sided)
    return Row(
        number=number,
        side=side,
        section=yoke.name,
        body=worked.body,
        count=worked.count,
        start=Start(yoke.chains, yoke.manner.chain_counts),
        end=end,
        marks=worked.marks,
        hook=yoke.hook,
    )
