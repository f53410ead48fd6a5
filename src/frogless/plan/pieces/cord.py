"""Cords, ties and straps: a chain, with rows of a stitch worked back along it or none."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from frogless.because import Because, Step
from frogless.design.pieces.cord import CordChoice
from frogless.plan.basis import Basis
from frogless.plan.landing import land
from frogless.plan.model import Measure, PiecePlan, Remark, Shape
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.rows.nodes import Base, Chain, End, Piece, Row, Start, Work
from frogless.swatch import Gauge
from frogless.units import Measured

CHAIN = "chain"


def plan_cord(basis: Basis, choice: CordChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A cord, planned: as many chains as its length asks for at the gauge of what it is made of.

    Raises:
        InputError: the length is not above zero.
    """
    del made
    gauge = basis.trim_gauge(choice.stitch if choice.rows else CHAIN)
    wanted = basis.girth_wanted(choice.length, f"{key}.length")
    landed = land(wanted, gauge.width.value)
    piece = Piece(choice.name, False, tuple(_rows(basis, choice, landed.count)))
    length = gauge.width.times(landed.count)
    because = basis.because_formula(choice.length, f"{key}.length").then(*landed.because.steps)
    plan = PiecePlan(
        name=choice.name,
        construction="cord",
        counts=tuple(row.count for row in piece.rows),
        depths=tuple(gauge.height.value * i for i in range(len(piece.rows))),
        number_made=choice.make,
        measures=tuple(_measures(choice, gauge, landed.count, wanted, because)),
        shape=_shape(length.value, gauge, choice.rows),
    )
    gauges = {choice.name: gauge}
    edges = tuple(_edges(choice, gauge, landed.count))
    return Made((piece,), (plan,), edges, remarks=tuple(_remarks(choice, gauge)), gauges=gauges)


def _rows(basis: Basis, choice: CordChoice, count: int) -> Iterator[Row]:
    hook = choice.hook or basis.hook
    body = (Chain(count, each=True),)
    end = End(turn=choice.rows > 0, fasten_off=not choice.rows)
    yield Row(0, "WS", choice.name, body, count, end=end, hook=hook)
    chains = basis.stitches[choice.stitch].turning_chain
    for number in range(1, choice.rows + 1):
        is_last = number == choice.rows
        yield Row(
            number=number,
            side="RS" if number % 2 else "WS",
            section=choice.name,
            body=(Work(choice.stitch, count),),
            count=count,
            start=Start(chains),
            end=End(turn=not is_last, fasten_off=is_last),
            hook=hook,
        )


def _measures(
    choice: CordChoice, gauge: Gauge, count: int, wanted: float, because: Because
) -> Iterator[Measure]:
    length = gauge.width.times(count)
    line = (0.0, 0.0), (length.value, 0.0)
    yield Measure("length", "width", length, wanted, count, because, line)
    if choice.rows:
        wide = gauge.height.times(choice.rows)
        steps = (
            Step("row_gauge", 100 / gauge.height.value, "rows per 10 cm"),
            Step("landed", choice.rows, "rows"),
            Step("girth", wide.value),
        )
        yield Measure("width", "length", wide, None, choice.rows, Because(steps))


def _shape(length: float, gauge: Gauge, rows: int) -> Shape:
    """Lying across: a chain is drawn as thick as a row."""
    wide = gauge.height.value * max(rows, 1)
    corners = ((0.0, 0.0), (length, 0.0), (length, wide), (0.0, wide))
    return Shape((corners,), way=(0.0, -1.0) if rows else (1.0, 0.0))


def _edges(choice: CordChoice, gauge: Gauge, count: int) -> Iterator[OfferedEdge]:
    """Its two long sides, and its ends when it has rows."""
    name, long = choice.name, gauge.width.times(count)
    yield OfferedEdge("first side", (Base(name, "foundation"),), (count,), long, gauge)
    if not choice.rows:
        return
    yield OfferedEdge("last side", (Base(name, "last_row"),), (count,), long, gauge)
    wide: Measured = gauge.height.times(choice.rows)
    for hand, base in (
        ("right end", Base(name, "right_edge")),
        ("left end", Base(name, "left_edge", reverse=True)),
    ):
        yield OfferedEdge(hand, (base,), (choice.rows,), wide, gauge)


def _remarks(choice: CordChoice, gauge: Gauge) -> Iterator[Remark]:
    if gauge.estimated:
        yield Remark(
            "cord_gauge",
            f"{choice.name}: its stitch was not swatched, so its gauge is estimated; work on until "
            "it has its length, and note the count",
            serious=False,
        )
