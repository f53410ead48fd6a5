"""Garments of several pieces, planned by hand, so that what follows the plan is tested apart."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import sample_designs

from frogless.because import Because, Step
from frogless.plan.basis import Basis
from frogless.plan.model import JoinPlan, Landmark, Measure, PiecePlan, Plan, Remark, Shape
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Piece,
    Program,
    Repeat,
    Row,
    Seam,
    Side,
    Start,
    Work,
)
from frogless.swatch import Gauge
from frogless.units import Measured

D = "double_crochet"
BODY = {
    "bust_girth": "96 cm", "waist_girth": "78 cm", "hip_girth": "102 cm", "head_girth": "57 cm",
    "shoulder_girth": "104 cm", "upper_arm_girth": "32 cm", "wrist_girth": "16 cm",
    "stature": "168 cm",
}  # fmt: skip


def design(kind: str, *pieces: str, joins: str = "") -> str:
    """A design of pieces of which only the names matter: they are planned by hand."""
    entries = [
        f'[[piece]]\nconstruction = "shawl"\nname = "{name}"\ndepth = "10 cm"' for name in pieces
    ]
    return "\n".join(
        [
            'format = "frogless-design/1"\ntitle = "Sample"\nsummary = "Made by hand."',
            f'[garment]\nkind = "{kind}"',
            f'[work]\nstitch = "{D}"\nturning_chain = 2',
            *entries,
            joins,
        ]
    )


def basis(
    folder: Path, kind: str, *pieces: str, body: dict[str, str] | None = None, swatch: str = ""
) -> Basis:
    """The basis of a garment of that kind: 16 stitches and 9 rows in 10 cm."""
    return sample_designs.basis(
        folder,
        design(kind, *pieces),
        sample_designs.body(**(BODY if body is None else body)),
        swatch or sample_designs.swatch(16, 9),
    )


def gauge(basis: Basis) -> Gauge:
    """Of the main stitch."""
    return basis.gauge(D, "work.stitch")


def measure(
    name: str, kind: str, got: float, count: int, wanted: float | None = None, **more: object
) -> Measure:
    """A measure with a because of one step or two."""
    steps = (Step("wanted", wanted or got), Step("landed", count, "stitches"))
    return Measure(name, kind, Measured(got, got / 100), wanted, count, Because(steps), **more)  # type: ignore[arg-type]


def panel(name: str, stitches: int, rows: int) -> Piece:
    """Plain rows on a chain."""
    made = [
        Row(0, "WS", name, (Chain(stitches, each=True),), stitches, end=End(turn=True), hook=3.5)
    ]
    for number in range(1, rows + 1):
        side: Side = "RS" if number % 2 else "WS"
        end = End(turn=number < rows, fasten_off=number == rows)
        made.append(
            Row(number, side, name, (Work(D, stitches),), stitches, Start(2), end, hook=3.5)
        )
    return Piece(name, False, tuple(made))


def panel_plan(basis: Basis, piece: Piece, **more: object) -> PiecePlan:
    """What a panel says of itself."""
    own = gauge(basis)
    counts = tuple(row.count for row in piece.rows)
    wide, high = counts[0] * own.width.value, (len(counts) - 1) * own.height.value
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    return PiecePlan(
        name=piece.name,
        construction="panel",
        counts=counts,
        depths=tuple(n * own.height.value for n in range(len(counts))),
        measures=(
            measure("width at the bust", "width", wide, counts[0], 530.0),
            measure("length", "length", high, len(counts) - 1, line=((wide, 0.0), (wide, high))),
            *more.pop("measures", ()),  # type: ignore[misc]
        ),
        shape=Shape((corners,)),
        **more,  # type: ignore[arg-type]
    )


def bust(basis: Basis, count: int, wanted: float) -> Landmark:
    """A tube around the bust."""
    body = basis.body.measurements["bust_girth"].value
    garment = gauge(basis).width.times(count)
    steps = (
        Step("bust_girth", body.value),
        Step("ease", wanted - body.value),
        Step("wanted", wanted),
    )
    return Landmark(
        "bust_girth", 200.0, body, False, wanted, wanted - 20, wanted + 20, 20, count, garment,
        Because(steps),
    )  # fmt: skip


def two_panels(basis: Basis, neck: float = 600.0, number_made: int = 1) -> Plan:
    """C1's front and back, joined at one side: 85 stitches each, 106.3 around a bust of 96 + 10."""
    front, back = panel("front", 85, 40), panel("back", 85, 40)
    opening = measure("neck opening", "girth", neck, 96)
    plans = (
        panel_plan(
            basis, front, measures=(opening,), number_made=number_made,
        ),
        panel_plan(basis, back),
    )  # fmt: skip
    long = gauge(basis).height.times(40)
    steps = (Step("length", long.value, note="front left side"), Step("length", long.value - 5.0))
    join = JoinPlan(
        "left side", "front left side", "back right side", long,
        Measured(long.value - 5.0, long.uncertainty), 15.0, Because(steps),
    )  # fmt: skip
    seam = Seam(
        "left side", "slip_stitch", (Base("front", "row_ends"),), (Base("back", "row_ends"),),
        40, 40, (1,) * 40,
    )  # fmt: skip
    return Plan(
        plans,
        {"front": gauge(basis), "back": gauge(basis)},
        (Remark("eased_in", "left side: ease the front in", serious=False),),
        Program((front, back), (seam,)),
        (join,),
    )


def hat(basis: Basis, rounds: int = 4, brim: float = 560.0) -> Plan:
    """A crown from a ring of 12, 12 more in each round, then as many rounds straight."""
    own = gauge(basis)
    rows = [Row(0, "RS", "crown", (Chain(4),), 1, end=End("first_stitch"), hook=3.5)]
    rows.append(
        Row(1, "RS", "crown", (Into((Work(D, 12),)),), 12, Start(2), End("first_stitch"), hook=3.5)
    )
    for n in range(2, 2 * rounds + 1):
        count = 12 * min(n, rounds)
        grown = (
            Repeat((Work(D, n - 2), Into((Work(D, 2),))) if n > 2 else (Into((Work(D, 2),)),), 12),
        )
        body = grown if n <= rounds else (Work(D, count),)
        last = End("first_stitch", fasten_off=n == 2 * rounds)
        rows.append(Row(n, "RS", "crown", body, count, Start(2), last, hook=3.5))
    piece = Piece("hat", True, tuple(rows))
    plan = PiecePlan(
        name="hat",
        construction="disc",
        counts=tuple(row.count for row in rows),
        depths=tuple(n * own.height.value for n in range(len(rows))),
        measures=(measure("brim", "girth", brim, 12 * rounds),),
    )
    return Plan((plan,), {"crown": own}, (), Program((piece,)))


def chain_neck(basis: Basis, girth: float) -> Plan:
    """A neck of that girth which begins with a chain joined into a ring."""
    plan = two_panels(basis, girth)
    yoke = replace(plan.pieces[0], construction="raglan yoke")
    return replace(plan, pieces=(yoke, plan.pieces[1]))


def tube_top(basis: Basis, count: int) -> Plan:
    """C8: rounds on a chain, ten below the bust."""
    own, joined = gauge(basis), End("first_stitch")
    rows = [Row(0, "RS", "top", (Chain(count, each=True),), count, end=joined, hook=3.5)]
    rows += [
        Row(n, "RS", "top", (Work(D, count),), count, Start(2), joined, hook=3.5)
        for n in range(1, 31)
    ]
    piece = Piece("top", True, tuple(rows))
    plan = PiecePlan(
        name="top",
        construction="tube",
        counts=tuple(row.count for row in rows),
        depths=tuple(n * own.height.value for n in range(len(rows))),
        landmarks=(bust(basis, count, 810.0),),
    )
    return Plan((plan,), {"top": own}, (), Program((piece,)))
