"""A border picked up along edges of earlier pieces: how many stitches, and over which places."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import reduce
from itertools import accumulate

from frogless.because import Because, Step
from frogless.design.pieces.border import BorderChoice
from frogless.errors import Impossible
from frogless.plan.basis import Basis
from frogless.plan.edging import RUFFLES, EdgingWork, in_piece, plan_edging
from frogless.plan.edging import multiple as edging_multiple
from frogless.plan.landing import because_landed, land, multiple_note
from frogless.plan.model import EdgingPlan, Measure, PiecePlan, Remark, Shape
from frogless.plan.pieces.made import Made, OfferedEdge, edge_named
from frogless.plan.row_gauges import by_section, height_of
from frogless.rows.nodes import ROW_ENDS, Base, Chain, End, Node, Piece, Row, Side, Start, Work
from frogless.rows.spread import apportioned, even_spread, worked_over
from frogless.swatch import Gauge
from frogless.units import Measured

OUTER, RIGHT_END, LEFT_END = "outer edge", "right end", "left end"


@dataclass(frozen=True, slots=True)
class Run:
    """One stretch of the edges that a border is picked up along.

    Args:
        length: along it, mm. bridge: chains worked after it, over a gap.
    """

    base: Base
    places: int
    length: float
    bridge: int = 0


@dataclass(frozen=True, slots=True)
class Border:
    """A border as far as it is decided.

    Args:
        key: of its entry in the design.
        length: of the edges together, mm.
        count: stitches picked up.
        worked: rows of its own stitch.
    """

    basis: Basis
    choice: BorderChoice
    key: str
    gauge: Gauge
    runs: tuple[Run, ...]
    length: Measured
    count: int
    worked: int
    because: Because


def plan_border(basis: Basis, choice: BorderChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A border, planned.

    Raises:
        InputError: an edge is not known, or there is no such edging.
        Impossible: the edges are too short for a single repeat.
    """
    border = _decide(basis, choice, key, made)
    edging = _edging(border)
    rows = (*_rows(border), *(edging.rows if edging else ()))
    piece = Piece(choice.name, choice.closed, rows, tuple(run.base for run in border.runs))
    return Made(
        pieces=(piece,),
        plans=(_plan(border, piece, edging.plan if edging else None),),
        edges=_offered(border, piece),
        remarks=(*_remarks(border), *(edging.remarks if edging else ())),
        gauges=by_section(border.basis, {piece.name: border.gauge}, piece.rows, border.gauge),
    )


def _decide(basis: Basis, choice: BorderChoice, key: str, made: Mapping[str, Made]) -> Border:
    place = basis.place(f"{key}.on")
    edges = [edge_named(name, made, place) for name in choice.on]
    gauge = basis.trim_gauge(choice.stitch)
    length = reduce(Measured.plus, (edge.length for edge in edges))
    runs = tuple(run for edge in edges for run in runs_along(edge))
    count, because = _count(in_piece(basis, key), choice, gauge, runs, length)
    least = sum(run.bridge for run in runs) + 1
    if count < least:
        raise Impossible(
            f"the edge is {basis.show(length.value)} long, too short for a border of {count} "
            "stitches",
            place,
            short_stitches=least - count,
            ways_out=("a finer stitch", "a smaller multiple"),
        )
    worked = _rows_worked(basis, choice, key, gauge)
    return Border(basis, choice, key, gauge, runs, length, count, worked, because)


def runs_along(edge: OfferedEdge) -> Iterator[Run]:
    """The stretches of an edge, each with its share of the edge's length.

    A row end is as long as a row is high, any other place as a stitch is wide; on a slope all are
    longer alike.
    """
    high, wide = edge.gauge.height.value, edge.gauge.width.value
    flat = [
        places * (high if base.edge in ROW_ENDS else wide)
        for base, places in zip(edge.bases, edge.places, strict=True)
    ]
    bridges = edge.bridges or (0,) * len(edge.bases)
    slope = edge.length.value / (sum(flat) + sum(bridges) * wide)
    for base, places, along, bridge in zip(edge.bases, edge.places, flat, bridges, strict=True):
        yield Run(base, places, along * slope, bridge)


def picked_up(stitch: str, runs: Sequence[Run], count: int) -> tuple[Node, ...]:
    """The body that picks up `count` stitches, the chains over gaps among them.

    Each stretch gets as many as its length asks for, spread evenly over its places.
    """
    on_places = count - sum(run.bridge for run in runs)
    shares = apportioned(on_places, [run.length for run in runs])
    nodes: list[Node] = []
    for many, run in zip(shares, runs, strict=True):
        nodes += worked_over(stitch, even_spread(many, run.places))
        nodes += [Chain(run.bridge, each=True)] if run.bridge else []
    return tuple(nodes)


def _count(
    basis: Basis,
    choice: BorderChoice,
    gauge: Gauge,
    runs: Sequence[Run],
    length: Measured,
) -> tuple[int, Because]:
    """Stitches picked up: edge length × gauge, or so many to so many rows, on the multiple.

    Source: edge length × gauge, common practice: 80 cm at 18 stitches in 10 cm are 144.
    """
    multiple, offset = _multiple(basis, choice)
    width = gauge.width.value
    if choice.per_rows is None:
        landed = land(length.value, width, multiple, offset)
        return landed.count, landed.because
    count = land(_exact_by_rate(choice.per_rows, runs), 1.0, multiple, offset).count
    rate = "{} stitches to {} row ends".format(*choice.per_rows)
    note = ", ".join(filter(None, (rate, multiple_note(multiple, offset))))
    return count, Because(because_landed(length.value, width, count, note))


def _exact_by_rate(per_rows: tuple[int, int], runs: Sequence[Run]) -> float:
    """So many stitches to so many row ends, one to each stitch, and the chains over gaps."""
    stitches, rows = per_rows
    rate = {True: stitches / rows, False: 1.0}
    return sum(run.places * rate[run.base.edge in ROW_ENDS] + run.bridge for run in runs)


def _multiple(basis: Basis, choice: BorderChoice) -> tuple[int, int]:
    """The border's own multiple, or that of its edging."""
    if choice.edging is None or choice.multiple > 1:
        return choice.multiple, choice.offset
    found = edging_multiple(basis, choice.edging, closed=choice.closed)
    return found.of, found.offset


def _rows_worked(basis: Basis, choice: BorderChoice, key: str, gauge: Gauge) -> int:
    """Rows of the border's stitch, one at the least: the edging stands on them."""
    if choice.height is None:
        return 1
    height = basis.girth_wanted(choice.height, f"{key}.height")
    return max(round(height / gauge.height.value), 1)


def _rows(border: Border) -> Iterator[Row]:
    """The rows of its own stitch: the first picks up, the others go on in plain rows."""
    choice = border.choice
    chains = border.basis.stitches[choice.stitch].turning_chain
    for number in range(1, border.worked + 1):
        is_last, is_first = number == border.worked, number == 1
        side: Side = "RS" if choice.closed or number % 2 else "WS"
        plain = (Work(choice.stitch, border.count),)
        yield Row(
            number=number,
            side=side,
            section=choice.name,
            body=picked_up(choice.stitch, border.runs, border.count) if is_first else plain,
            count=border.count,
            start=Start(chains),
            end=End(
                join="first_stitch" if choice.closed else "none",
                turn=not choice.closed and (not is_last or choice.edging is not None),
                fasten_off=is_last and choice.edging is None,
            ),
            hook=choice.hook or border.basis.hook,
        )


def _edging(border: Border) -> EdgingWork | None:
    choice = border.choice
    if choice.edging is None:
        return None
    side: Side = "WS" if border.worked % 2 else "RS"
    return plan_edging(
        in_piece(border.basis, border.key),
        choice.edging,
        border.gauge,
        border.count,
        border.worked + 1,
        in_rows=None if choice.closed else side,
    )


def _plan(border: Border, piece: Piece, edging: EdgingPlan | None) -> PiecePlan:
    depths = tuple(accumulate(height_of(border.basis, row, border.gauge) for row in piece.rows))
    around = Measure(
        name="along the edge",
        kind="girth" if piece.closed else "edge",
        got=border.gauge.width.times(border.count),
        wanted=border.length.value,
        count=border.count,
        because=border.because,
    )
    wide = around.got.value / (2 if piece.closed else 1)
    corners = ((0.0, 0.0), (wide, 0.0), (wide, depths[-1]), (0.0, depths[-1]))
    return PiecePlan(
        name=piece.name,
        construction="border",
        counts=tuple(row.count for row in piece.rows),
        depths=depths,
        edging=edging,
        measures=(around, _high(border, depths)),
        shape=Shape((corners,)),
    )


def _high(border: Border, depths: Sequence[float]) -> Measure:
    height, rows = border.gauge.height, len(depths)
    steps = (
        Step("row_gauge", 100 / height.value, "rows per 10 cm"),
        Step("landed", rows, "rows"),
        Step("girth", depths[-1]),
    )
    got = Measured(depths[-1], height.uncertainty * rows)
    return Measure("height", "length", got, None, rows, Because(steps))


def _offered(border: Border, piece: Piece) -> tuple[OfferedEdge, ...]:
    """Its outer edge; the ends of its rows too when it is worked in rows."""
    gauge, worked, name = border.gauge, border.worked, piece.name
    outer = OfferedEdge(
        name=OUTER,
        bases=(Base(name, "last_row"),),
        places=(piece.rows[-1].count,),
        length=gauge.width.times(border.count),
        gauge=gauge,
        closed=piece.closed,
    )
    if piece.closed:
        return (outer,)
    high = gauge.height.times(worked)
    return (
        outer,
        OfferedEdge(RIGHT_END, (Base(name, "right_edge"),), (worked,), high, gauge),
        OfferedEdge(LEFT_END, (Base(name, "left_edge"),), (worked,), high, gauge),
    )


def _remarks(border: Border) -> Iterator[Remark]:
    name, gauge, basis = border.choice.name, border.gauge, border.basis
    if gauge.estimated:
        yield Remark(
            "border_gauge",
            f"{name}: its stitch was not swatched, so its gauge is estimated; pick up along "
            f"{basis.show(100)} first and see that it lies flat",
            serious=False,
        )
    off = border.count * gauge.width.value / border.length.value - 1
    if abs(off) > RUFFLES:
        longer, doing = ("longer", "ruffle") if off > 0 else ("shorter", "draw in")
        yield Remark(
            "border_length",
            f"{name}: its {border.count} stitches are {abs(off) * 100:.0f} % {longer} than the "
            f"edge of {basis.show(border.length.value)} and will {doing}",
        )
