"""Shawls in rows: triangles and crescents from the middle, asymmetric ones, rectangles."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import accumulate

from frogless.because import Because, Step
from frogless.design.pieces.shawl import ShawlBand, ShawlChoice
from frogless.design.work import Work as WorkChoice
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.plan.edging import EdgingWork, in_piece, plan_edging
from frogless.plan.landing import land
from frogless.plan.model import PiecePlan, SectionPlan
from frogless.plan.pieces import shawl_told
from frogless.plan.pieces.disc_rate import flat_rate
from frogless.plan.pieces.disc_stages import chains_of, check_names, rounds_in, work_of
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.plan.pieces.shawl_rows import (
    Gains,
    Rates,
    asymmetric,
    crescent,
    gains,
    spread_of,
    triangle,
    worked_row,
)
from frogless.plan.pieces.shawl_told import Band, Shawl
from frogless.plan.row_gauges import by_section, height_of
from frogless.rows.nodes import Base, Chain, End, Into, Node, Piece, Row, Side, Start, Work
from frogless.swatch import Gauge

RING = "adjustable_ring"
RIGHT_ANGLE, POINT = 90.0, 45.0
"""Degrees, where the design does not say: at the lower point of a triangle, and where an
asymmetric shawl begins."""

TIP = 3
"""Stitches that an asymmetric shawl begins with: fewer cannot be turned neatly (common practice)."""

FROM_THE_MIDDLE = frozenset({"triangle", "crescent"})


def plan_shawl(basis: Basis, choice: ShawlChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A shawl, planned.

    Raises:
        InputError: a length is missing or too much, or a size is out of reach.
        Impossible: the edging cannot be fitted to its last row.
    """
    del made
    shawl = _decide(basis, choice, key)
    edging = _edging(shawl)
    rows = (*_rows(shawl), *(edging.rows if edging else ()))
    last = replace(rows[-1], end=End(fasten_off=True))
    piece = Piece(choice.name, False, (*rows[:-1], last))
    return Made(
        pieces=(piece,),
        plans=(_plan(shawl, piece, edging),),
        edges=_edges(shawl, piece),
        remarks=(*shawl_told.remarks(shawl), *(edging.remarks if edging else ())),
        gauges=by_section(basis, {b.name: b.gauge for b in shawl.bands}, piece.rows),
    )


def _decide(basis: Basis, choice: ShawlChoice, key: str) -> Shawl:
    work, prefix = work_of(basis, choice.work, key)
    if work.turning_chain_counts and not work.turning_chain:
        raise InputError(
            "a turning chain of 0 cannot count as a stitch", basis.place(f"{prefix}.turning_chain")
        )
    _refuse_unused(basis, choice, key)
    depth, wingspan, angle = _size(basis, choice, key)
    rates = _rates(choice, depth, wingspan, angle)
    along = depth * math.sin(angle / 2) if choice.shape == "triangle" else depth
    gauge = basis.gauge(work.stitch, f"{prefix}.stitch")
    bands = tuple(_bands(basis, choice, key, work, along))
    ratios = [b.gauge.height.value / b.gauge.width.value for b in bands for _ in range(b.rows)]
    first, because = _first(basis, choice, key, bands[0].gauge, wingspan)
    seen = bands[0].gauge.height.over(bands[0].gauge.width).relative
    grown = gains(rates, ratios, seen)
    counts = tuple(accumulate((g.total for g in grown), initial=first))
    return Shawl(
        basis=basis,
        choice=choice,
        key=key,
        work=work,
        gauge=gauge,
        bands=bands,
        rates=rates,
        gains=grown,
        counts=counts,
        angle=angle,
        depth=depth,
        wingspan=wingspan,
        because=because,
    )


def _refuse_unused(basis: Basis, choice: ShawlChoice, key: str) -> None:
    """Keys that the shape has no use for would be passed over in silence."""
    unused = {
        "angle_deg": choice.angle_deg is not None and choice.shape in ("crescent", "rectangle"),
        "multiple": choice.multiple > 1 and choice.shape != "rectangle",
        "offset": choice.offset > 0 and choice.shape != "rectangle",
    }
    for name in (name for name, is_unused in unused.items() if is_unused):
        message = f'"{name}" means nothing for a {choice.shape} shawl; leave it out'
        raise InputError(message, basis.place(f"{key}.{name}"))


def _size(basis: Basis, choice: ShawlChoice, key: str) -> tuple[float, float, float]:
    """Depth, wingspan, and the angle it is made with, mm and radians."""
    depth = basis.girth_wanted(choice.depth, f"{key}.depth") if choice.depth else 0.0
    wide = basis.girth_wanted(choice.wingspan, f"{key}.wingspan") if choice.wingspan else 0.0
    angle = math.radians(choice.angle_deg or (RIGHT_ANGLE if choice.shape == "triangle" else POINT))
    match choice.shape:
        case "triangle":
            if bool(depth) == bool(wide):
                raise _missing(basis, key, "a triangle is worked to a depth or to a wingspan")
            slope = math.tan(angle / 2)
            return (depth, 2 * depth * slope, angle) if depth else (wide / 2 / slope, wide, angle)
        case "asymmetric":
            if not depth or (wide and choice.angle_deg):
                what = "an asymmetric shawl needs a depth, and a wingspan or an angle"
                raise _missing(basis, key, what)
            if wide:
                return depth, wide, math.atan(wide / depth)
            _sharp(basis, choice, key)
            return depth, depth * math.tan(angle), angle
        case _:
            if not depth or not wide:
                raise _missing(basis, key, f"a {choice.shape} needs a depth and a wingspan")
    if choice.shape == "crescent" and wide < 2 * depth - 1e-6:
        raise InputError(
            f"a crescent {basis.show(depth)} deep is at least twice as wide, and its wingspan is "
            f"{basis.show(wide)}",
            basis.place(f"{key}.wingspan"),
        )
    return depth, wide, angle


def _sharp(basis: Basis, choice: ShawlChoice, key: str) -> None:
    if (choice.angle_deg or POINT) > 75:
        raise InputError(
            f"an angle of {choice.angle_deg:g} degrees leaves no straight edge to work along; "
            "write 75 or less",
            basis.place(f"{key}.angle_deg"),
        )


def _missing(basis: Basis, key: str, what: str) -> InputError:
    return InputError(what, basis.place(key))


def _rates(choice: ShawlChoice, depth: float, wingspan: float, angle: float) -> Rates:
    match choice.shape:
        case "triangle":
            return triangle(angle)
        case "crescent":
            return crescent(wingspan, depth)
        case "asymmetric":
            return asymmetric(angle)
        case _:
            return Rates()


def _bands(
    basis: Basis, choice: ShawlChoice, key: str, work: WorkChoice, along: float
) -> Iterator[Band]:
    """The bands with their rows; the last one takes what is left of the length along the work."""
    listed = choice.band or (ShawlBand(name=choice.name),)
    check_names(basis, ("", *(band.name for band in listed)), f"{key}.band")
    left = along
    for i, band in enumerate(listed, 1):
        at = f"{key}.band.{i}" if choice.band else key
        stitch = band.stitch or work.stitch
        if stitch not in basis.stitches:
            raise InputError(f'unknown stitch "{stitch}"', basis.place(f"{at}.stitch"))
        gauge = basis.gauge(stitch, f"{at}.stitch")
        length = left
        if band.length is not None:
            length = basis.girth_wanted(band.length, f"{at}.length")
        elif i < len(listed):
            raise InputError(
                f'band "{band.name}" needs a length; only the last one takes what is left',
                basis.place(at),
            )
        if length > left + gauge.height.value or left <= 0:
            raise InputError(
                f'band "{band.name}" ends beyond the shawl, which has {basis.show(max(left, 0))} '
                "left along its rows",
                basis.place(at),
            )
        rows = rounds_in(basis, length, gauge, at)
        left -= rows * gauge.height.value
        yield Band(band.name, gauge, chains_of(basis, work, band.stitch, band.turning_chain), rows)


def _first(
    basis: Basis, choice: ShawlChoice, key: str, gauge: Gauge, wingspan: float
) -> tuple[int, Because]:
    """Stitches before the first row has grown."""
    width = gauge.width.value
    if choice.shape == "rectangle":
        landed = land(wingspan, width, choice.multiple, choice.offset)
        because = basis.because_formula(choice.wingspan or "", f"{key}.wingspan")
        return landed.count, because.then(*landed.because.steps)
    if choice.depth:
        because = basis.because_formula(choice.depth, f"{key}.depth")
    else:
        because = basis.because_formula(choice.wingspan or "", f"{key}.wingspan")
    return 1 if choice.shape in FROM_THE_MIDDLE else TIP, because


def _rows(shawl: Shawl) -> Iterator[Row]:
    """The beginning, and every row; the last one comes to its multiple."""
    yield _begun(shawl)
    number, turn = 0, 0
    for band in shawl.bands:
        for _ in range(band.rows):
            gain, before = shawl.gains[number], shawl.counts[number]
            number += 1
            yield _row(shawl, band, number, before, gain, turn)
            turn += int(gain.inside > 0)


def _begun(shawl: Shawl) -> Row:
    """A ring, or a chain."""
    first = shawl.counts[0]
    body: tuple[Node, ...] = (Chain(first, each=True),)
    if shawl.choice.shape in FROM_THE_MIDDLE:
        body = (Work(RING),)
    band = shawl.bands[0]
    hook = band.gauge.hook or shawl.basis.hook
    return Row(0, "WS", band.name, body, first, end=End(turn=True), hook=hook)


def _row(shawl: Shawl, band: Band, number: int, before: int, gain: Gains, turn: int) -> Row:
    side: Side = "RS" if number % 2 else "WS"
    counts = shawl.work.turning_chain_counts and band.chains > 0
    if before == 1:
        start, body = _in_ring(band, gain.total + 1, counts=counts)
    else:
        spread = spread_of(before, gain, turn)
        met = spread if side == "RS" else tuple(reversed(spread))
        start, body = worked_row(band.gauge.stitch, met, band.chains, counts=counts)
    return Row(
        number=number,
        side=side,
        section=band.name,
        body=body,
        count=shawl.counts[number],
        start=start,
        end=End(turn=True),
        hook=band.gauge.hook or shawl.basis.hook,
    )


def _in_ring(band: Band, count: int, *, counts: bool) -> tuple[Start, tuple[Node, ...]]:
    inside = Into((Work(band.gauge.stitch, count - int(counts)),))
    return Start(band.chains, counts=counts, shares=counts), (inside,)


def _edging(shawl: Shawl) -> EdgingWork | None:
    choice = shawl.choice.edging
    if choice is None:
        return None
    last = shawl.bands[-1].gauge
    side: Side = "RS" if len(shawl.counts) % 2 else "WS"
    basis = in_piece(shawl.basis, shawl.key)
    return plan_edging(basis, choice, last, shawl.counts[-1], len(shawl.counts), in_rows=side)


def _plan(shawl: Shawl, piece: Piece, edging: EdgingWork | None) -> PiecePlan:
    depths = [0.0, *accumulate(b.gauge.height.value for b in shawl.bands for _ in range(b.rows))]
    for row in edging.rows if edging else ():
        depths.append(depths[-1] + height_of(shawl.basis, row))
    return PiecePlan(
        name=piece.name,
        construction="shawl",
        counts=tuple(row.count for row in piece.rows),
        depths=tuple(depths),
        sections=tuple(_sections(shawl)),
        edging=edging.plan if edging else None,
        measures=shawl_told.measures(shawl),
        shape=shawl_told.shape(shawl),
    )


def _sections(shawl: Shawl) -> Iterator[SectionPlan]:
    end = 0
    for band in shawl.bands:
        begin, end = end, end + band.rows
        before, after = shawl.counts[begin], shawl.counts[end]
        yield SectionPlan(
            name=band.name,
            stitch=band.gauge.stitch,
            hook=band.gauge.hook or shawl.basis.hook,
            gauge=band.gauge,
            first_round=begin + 1,
            last_round=end,
            count_before=before,
            count_after=after,
            chosen=None,
            others=(),
            fullness=(after - before) / band.rows / flat_rate(band.gauge).value,
            because=shawl.because.then(
                Step("row_gauge", 100 / band.gauge.height.value, "rows per 10 cm"),
                Step("landed", band.rows, "rows"),
            ),
        )


def _edges(shawl: Shawl, piece: Piece) -> tuple[OfferedEdge, ...]:
    """The last row, the two sides of row ends, and of a chain its other side."""
    gauge, name, rows = shawl.bands[-1].gauge, piece.name, sum(b.rows for b in shawl.bands)
    left, right = shawl_told.side_lengths(shawl)
    last = OfferedEdge(
        "last row",
        (Base(name, "last_row"),),
        (piece.rows[-1].count,),
        gauge.width.times(shawl.counts[-1]),
        gauge,
    )
    sides = (
        OfferedEdge("right side", (Base(name, "right_edge"),), (rows,), right, gauge),
        OfferedEdge("left side", (Base(name, "left_edge"),), (rows,), left, gauge),
    )
    if shawl.choice.shape in FROM_THE_MIDDLE or len(piece.rows) != rows + 1:
        return (last, *sides) if len(piece.rows) == rows + 1 else (last,)
    start = OfferedEdge(
        "first row",
        (Base(name, "foundation"),),
        (shawl.counts[0],),
        gauge.width.times(shawl.counts[0]),
        shawl.bands[0].gauge,
    )
    return (last, *sides, start)
