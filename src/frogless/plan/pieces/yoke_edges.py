"""Where a yoke parts: the edges it offers, what it measures, and how it lies flat."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from frogless.because import Because, Step
from frogless.plan.landing import because_landed
from frogless.plan.model import Landmark, Measure, Remark, Shape
from frogless.plan.pieces.made import OfferedEdge
from frogless.plan.pieces.yoke import Wanted, Yoke
from frogless.plan.pieces.yoke_rows import Parts
from frogless.rows.nodes import Base, Row
from frogless.units import Measured

BODY, NECK = "body", "neck"
SLEEVES = ("right sleeve", "left sleeve")
"""In the order in which a round meets them."""


def edges(yoke: Yoke, neck: Parts, parts: Parts, last: Row) -> tuple[OfferedEdge, ...]:
    """Body, sleeves and neck of a yoke whose last row is `last`."""
    return (
        _body(yoke, parts, last),
        *(_sleeve(yoke, parts, last, which) for which in (0, 1)),
        OfferedEdge(
            name=NECK,
            bases=(Base(yoke.name, "foundation", reverse=True),),
            places=(neck.count,),
            length=yoke.gauge.width.times(neck.count),
            gauge=yoke.gauge,
            closed=True,
        ),
    )


def _body(yoke: Yoke, parts: Parts, last: Row) -> OfferedEdge:
    """Half of the back, the front, the other half; chains bridge each underarm between them."""
    halves = (
        _stretch(yoke, last, 0, parts.first),
        _stretch(yoke, last, parts.first + parts.sleeve, parts.front),
        _stretch(yoke, last, parts.count - parts.last, parts.last),
    )
    bridged = [_bridged(runs, under) for runs, under in zip(halves, _unders(yoke), strict=True)]
    bases = tuple(chain.from_iterable(halves))
    count = body_count(yoke, parts)
    return OfferedEdge(
        name=BODY,
        bases=bases,
        places=tuple(base.count or 0 for base in bases),
        length=yoke.gauge.width.times(count),
        gauge=yoke.gauge,
        closed=True,
        bridges=tuple(chain.from_iterable(bridged)),
        landmark=_landmark(yoke, yoke.bust, count),
    )


def _unders(yoke: Yoke) -> tuple[int, int, int]:
    return yoke.underarm, yoke.underarm, 0


def _bridged(runs: tuple[Base, ...], under: int) -> tuple[int, ...]:
    return (*(0 for _ in runs[1:]), under)


def _sleeve(yoke: Yoke, parts: Parts, last: Row, which: int) -> OfferedEdge:
    """From the middle of the underarm round the sleeve, and back to the middle.

    Its chains are met from underneath, against the way in which the body made them.
    """
    start = parts.first + which * (parts.sleeve + parts.front)
    # In the body's first round the chains follow its half of the back, or its front.
    under = parts.first + which * (yoke.underarm + parts.front)
    half = yoke.underarm // 2
    bases = (
        _underside(yoke, under, half),
        *_stretch(yoke, last, start, parts.sleeve),
        _underside(yoke, under + half, yoke.underarm - half),
    )
    bases = tuple(base for base in bases if base.count)
    count = sleeve_count(yoke, parts)
    return OfferedEdge(
        name=SLEEVES[which],
        bases=bases,
        places=tuple(base.count or 0 for base in bases),
        length=yoke.gauge.width.times(count),
        gauge=yoke.gauge,
        closed=True,
        landmark=_landmark(yoke, yoke.arm, count),
    )


def _underside(yoke: Yoke, first: int, count: int) -> Base:
    return Base(yoke.choice.body, "underside", 1, first, count, reverse=True)


def _stretch(yoke: Yoke, last: Row, first: int, count: int) -> tuple[Base, ...]:
    """Stitches of the last row, counted from the join as the right side meets them.

    A wrong-side row made them the other way round; its counted chain is the first in either way.
    """
    name, number = yoke.name, last.number
    if last.side == "RS":
        return (Base(name, "row", number, first, count),)
    if not last.start.counts:
        return (Base(name, "row", number, last.count - first - count, count, reverse=True),)
    if first:
        return (Base(name, "row", number, last.count + 1 - first - count, count, reverse=True),)
    rest = Base(name, "row", number, last.count + 1 - count, count - 1, reverse=True)
    return tuple(base for base in (Base(name, "row", number, 0, 1), rest) if base.count)


def body_count(yoke: Yoke, parts: Parts) -> int:
    """Stitches of the body's first round."""
    return parts.back + parts.front + 2 * yoke.underarm


def sleeve_count(yoke: Yoke, parts: Parts) -> int:
    """Stitches of a sleeve's first round."""
    return parts.sleeve + yoke.underarm


def _landmark(yoke: Yoke, wanted: Wanted, count: int) -> Landmark:
    measured = yoke.basis.body.get(wanted.key)
    return Landmark(
        key=wanted.key,
        depth=yoke.depth_at(yoke.rounds),
        body=measured.value if measured else None,
        estimated=bool(measured and measured.estimated),
        wanted=wanted.wanted,
        low=wanted.low,
        high=wanted.high,
        rounds=1,
        count=count,
        garment=yoke.gauge.width.times(count),
        because=_because(yoke, wanted, count),
    )


def _because(yoke: Yoke, wanted: Wanted, count: int) -> Because:
    note = f"with {yoke.underarm} chains at each underarm"
    return wanted.because.then(*because_landed(wanted.wanted, yoke.width, count, note))


def measures(yoke: Yoke, neck: Parts, parts: Parts) -> tuple[Measure, ...]:
    """Neck, depth along the rounds, the vertical depth, body and sleeve at the underarm."""
    width, deep = yoke.gauge.width, yoke.depth_at(yoke.rounds)
    (left, top), _, _, (right, _) = corners(yoke, neck, parts)
    wide = ((0.0, deep), (_flat(parts) * yoke.width, deep))
    # Beside the middle, where the arrow of the work stands.
    beside = (left + right) / 2 + neck.front * yoke.width / 4
    body, sleeve = body_count(yoke, parts), sleeve_count(yoke, parts)
    because = Because(because_landed(yoke.neck, yoke.width, neck.count, ""))
    found = [
        Measure(
            "neck opening", "girth", width.times(neck.count), yoke.neck, neck.count, because,
            ((left, top), (right, top)),
        ),
        Measure(
            "yoke depth", "length", _high(yoke, deep), yoke.depth, yoke.rounds,
            Because((*_rows_told(yoke), Step("length", deep))),
            ((beside, 0.0), (beside, deep)),
        ),
        Measure(
            "vertical armhole depth", "length", _vertical(yoke, neck), None, yoke.rounds,
            _because_vertical(yoke, neck),
        ),
        Measure(
            "all round where it parts", "girth", width.times(parts.count), None, parts.count,
            Because((Step("landed", parts.count, "stitches"),)), wide,
        ),
        Measure(
            "body at the underarm", "girth", width.times(body), yoke.bust.wanted, body,
            _because(yoke, yoke.bust, body),
        ),
        Measure(
            "sleeve at the underarm", "girth", width.times(sleeve), yoke.arm.wanted, sleeve,
            _because(yoke, yoke.arm, sleeve),
        ),
        Measure(
            "underarm", "width", width.times(yoke.underarm), None, yoke.underarm,
            Because((Step("landed", yoke.underarm, "stitches"),)),
        ),
    ]  # fmt: skip
    if yoke.raised:
        found.append(_raised(yoke))
    return tuple(found)


def _raised(yoke: Yoke) -> Measure:
    rows = 2 * yoke.raised
    wanted = yoke.basis.length(yoke.choice.back_raise, f"{yoke.key}.back_raise")
    high = rows * yoke.height
    because = Because((*_rows_told(yoke), Step("length", high)))
    return Measure("back of the neck raised", "length", _high(yoke, high), wanted, rows, because)


def _rows_told(yoke: Yoke) -> tuple[Step, ...]:
    return (Step("row_gauge", 100 / yoke.gauge.height.value, "rows per 10 cm"),)


def _high(yoke: Yoke, length: float) -> Measured:
    return Measured(length, length * yoke.gauge.height.relative)


def _vertical(yoke: Yoke, neck: Parts) -> Measured:
    """Rounds × height, and half of what a sleeve is wide at the neck: it lies over the shoulder.

    Source: practice, seen once: 22 cm of rounds and 12 stitches of 6.25 mm are 22 + 3.75 cm.
    """
    shoulder = yoke.gauge.width.times(neck.sleeve / 2)
    return _high(yoke, yoke.depth_at(yoke.rounds)).plus(shoulder)


def _because_vertical(yoke: Yoke, neck: Parts) -> Because:
    deep = yoke.depth_at(yoke.rounds)
    shoulder = neck.sleeve * yoke.width / 2
    return Because(
        (
            Step("length", deep, note="along the rounds"),
            Step("length", shoulder, note="half of a sleeve's width at the neck"),
            Step("length", deep + shoulder, note="together"),
        )
    )


def corners(yoke: Yoke, neck: Parts, parts: Parts) -> tuple[tuple[float, float], ...]:
    """The outline lying flat, mm: front in the middle, half of a sleeve folded on either side."""
    wide, narrow = _flat(parts) * yoke.width, _flat(neck) * yoke.width
    inset, deep = (wide - narrow) / 2, yoke.depth_at(yoke.rounds)
    return ((inset, 0.0), (0.0, deep), (wide, deep), (wide - inset, 0.0))


def _flat(parts: Parts) -> float:
    return parts.front + parts.sleeve


def shape(yoke: Yoke, neck: Parts, parts: Parts) -> Shape:
    """Trapezoids side by side: a half sleeve, the front, a half sleeve, with the lines between."""
    (left, _), _, _, _ = outline = corners(yoke, neck, parts)
    deep = yoke.depth_at(yoke.rounds)
    lines = tuple(
        (
            (left + (neck.sleeve / 2 + side * neck.front) * yoke.width, 0.0),
            ((parts.sleeve / 2 + side * parts.front) * yoke.width, deep),
        )
        for side in (0, 1)
    )
    return Shape((outline,), lines)


def remarks(yoke: Yoke, neck: Parts) -> Iterator[Remark]:
    """What is easily taken for something else: the depth along the rounds is not the armhole's."""
    show = yoke.basis.show
    yield Remark(
        "vertical_depth",
        f"{yoke.name}: {yoke.rounds} rounds are {show(yoke.depth_at(yoke.rounds))} along the work; "
        f"with half of a sleeve's {show(neck.sleeve * yoke.width)} at the neck the armhole is "
        f"{show(_vertical(yoke, neck).value)} deep from the shoulder",
        serious=False,
    )
