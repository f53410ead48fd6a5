"""An edging laid along an edge: in joined rounds, in rows that turn, or round the corners of a piece."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from frogless.errors import InputError
from frogless.rows.count import row_left
from frogless.rows.nodes import End, Into, Node, Repeat, Row, Start, Work
from frogless.rows.walk import flatten
from frogless.stitches.load import leaves
from frogless.stitches.model import EdgeRow, Edging, Stitch
from frogless.stitches.pattern_rows import PatternRow, Way, worked

_JOINED = End("first_stitch")
#: A chain two shorter than a stitch pulls it down (common practice).
_TALLER = 2


def edging_way(edging: Edging, *, closed: bool) -> Way:
    """An edging as a pattern that comes once, in joined rounds or in rows along an edge.

    Raises:
        InputError: an edging that is worked in rounds only.
    """
    if not closed and not edging.rows:
        raise InputError(f'"{edging.key}" is worked in rounds; it does not say how a row ends')
    rows = tuple(EdgeRow((), body, ()) for body in edging.rounds) if closed else edging.rows
    told = tuple(
        PatternRow(
            Start(edging.turning_chains[i]),
            row.before,
            row.repeat,
            row.after,
            _end(edging, i, closed=closed),
            edging.backwards[i],
        )
        for i, row in enumerate(_evened(rows))
    )
    offset = edging.offset if closed else edging.row_offset
    return Way(closed, edging.multiple, offset, told, setup=len(told) - 1)


def _evened(rows: Sequence[EdgeRow]) -> Sequence[EdgeRow]:
    """Rows of one stitch throughout repeat it stitch by stitch, however long the repeat is.

    Not where all rows are so: one of them has to show what repeats, as where a fringe is knotted.
    """
    found = [_plain(row) or row for row in rows]
    return rows if all(map(_plain, rows)) else found


def _plain(row: EdgeRow) -> EdgeRow | None:
    match as_runs((*row.before, *row.repeat, *row.after)):
        case (Work(stitch, _),):
            return EdgeRow((), (Work(stitch),), ())
    return None


def in_rounds(edging: Edging, places: int, stitches: Mapping[str, Stitch]) -> tuple[Row, ...]:
    """The rounds of an edging over so many places.

    Raises:
        InputError: they are no multiple of it, with the counts that are.
    """
    return _whole(edging_way(edging, closed=True), places, edging, stitches)


def in_rows(edging: Edging, places: int, stitches: Mapping[str, Stitch]) -> tuple[Row, ...]:
    """The rows of an edging along an edge of so many places, the first with the right side facing.

    Raises:
        InputError: they are no multiple of it and what it begins and ends with, or it is worked in
            rounds only.
    """
    return _whole(edging_way(edging, closed=False), places, edging, stitches)


def round_corners(
    edging: Edging, sides: Sequence[int], stitches: Mapping[str, Stitch]
) -> tuple[Row, ...]:
    """The rounds of an edging about a piece with corners, begun in the first of them.

    Args:
        sides: places of each side, in the order met; before each of them comes one place that is
            its corner.

    Raises:
        InputError: an edging that goes round no corners, or a side that is no multiple of it.
    """
    if not edging.sides:
        raise InputError(f'"{edging.key}" goes round no corners')
    times = [_times(edging, count, number) for number, count in enumerate(sides, start=1)]
    rows: list[Row] = []
    for i, side in enumerate(edging.sides):
        back = edging.backwards[i]
        body = tuple(
            node for n in (times[::-1] if back else times) for node in _side(side, n, back)
        )
        start, body = _begun(as_runs(body), edging.turning_chains[i], stitches)
        end = replace(_JOINED, fasten_off=i + 1 == len(edging.sides))
        if start.counts:
            end = replace(end, join="chain_top")
        row = Row(i + 1, "RS", "", body, 0, start, end, backwards=back)
        rows.append(replace(row, count=row_left(row, leaves(stitches))))
    return tuple(rows)


def places_with_corners(sides: Sequence[int]) -> int:
    """Places about a piece: those of its sides, and one for each corner."""
    return sum(sides) + len(sides)


def _side(side: EdgeRow, times: int, back: bool) -> Iterator[Node]:
    """A corner and the side after it; where the round runs back the side is met first."""
    repeated = (Repeat(side.repeat, times),) if times > 1 else side.repeat * times
    along = (*side.before, *repeated, *side.after)
    yield from (*along, *side.corner) if back else (*side.corner, *along)


def _begun(
    body: tuple[Node, ...], chains: int, stitches: Mapping[str, Stitch]
) -> tuple[Start, tuple[Node, ...]]:
    """How a round begins, and what is left to work of its body.

    A corner that begins with a stitch much taller than the chains begins with a chain as tall as
    that stitch; it stands in for a stitch with one post, and only lifts the work to others.
    """
    match body:
        case (Into(inner), *rest):
            pass
        case _:
            return Start(chains), body
    first, *others = flatten(inner)
    if not isinstance(first, Work) or stitches[first.stitch].turning_chain - chains < _TALLER:
        return Start(chains), body
    stitch = stitches[first.stitch]
    if stitch.chain_counts != "yes" or sum(step.motion == "insert" for step in stitch.steps) > 1:
        return Start(stitch.turning_chain), body
    fewer = flatten((Work(first.stitch, first.times - 1), *others))
    return Start(stitch.turning_chain, counts=True, shares=True), (Into(fewer), *rest)


def _times(edging: Edging, count: int, number: int) -> int:
    times, over = divmod(count - edging.side_offset, edging.multiple)
    if over or times < 0:
        near = edging.side_offset + edging.multiple * max(times, 0)
        fits = ", ".join(str(near + edging.multiple * more) for more in range(3))
        raise InputError(
            f'side {number} has {count} places; "{edging.key}" takes {edging.side_offset} and '
            f"{edging.multiple} in each repeat between two corners, and so fits {fits}"
        )
    return times


def _end(edging: Edging, index: int, *, closed: bool) -> End:
    """How a row ends: joined, or turned unless the next goes back along it; the last is cut."""
    after = index + 1
    last = after == len(edging.rounds)
    if closed:
        return replace(_JOINED, fasten_off=last)
    return End(turn=not last and not edging.backwards[after], fasten_off=last)


def _whole(
    way: Way, places: int, edging: Edging, stitches: Mapping[str, Stitch]
) -> tuple[Row, ...]:
    if not way.fits(places):
        offset = f" + {way.offset}" if way.offset else ""
        near = way.places(max((places - way.offset) // way.multiple, 1))
        raise InputError(
            f'"{edging.key}" is worked over a multiple of {way.multiple}{offset}, not over {places}; '
            f"{near} and {near + way.multiple} fit"
        )
    rows = worked(way, places, len(way.rows), stitches)
    return tuple(replace(row, body=as_runs(row.body)) for row in rows)


def as_runs(body: Sequence[Node]) -> tuple[Node, ...]:
    """A body in which what repeats one stitch is simply more of it, and so are its neighbours."""
    runs: list[Node] = []
    for node in body:
        match node:
            case Repeat((Work(stitch, each),), times):
                node = Work(stitch, each * times)
        match (runs[-1:], node):
            case ([Work(before, more)], Work(stitch, times)) if before == stitch:
                runs[-1] = Work(stitch, more + times)
            case _:
                runs.append(node)
    return tuple(runs)
