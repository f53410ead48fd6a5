"""What hanging does to girths: a fabric that grows longer by its weight grows narrower as well."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from frogless.plan.basis import Basis
from frogless.plan.model import Landmark, Remark

SEEN = 0.005
"""Less than one part in two hundred is not told of a swatch of 10 cm by tape (derived)."""


def narrowing(basis: Basis) -> float | None:
    """Width of the main fabric hung over that which girths are planned with, less one.

    −0.08: 8 % narrower as worn. None when the hung swatch's width was not read, or is all there is.
    """
    main = basis.gauge(basis.design.work.stitch, "work.stitch")
    read = [
        (r.width, r.stitches)
        for r in basis.main_swatch.readings
        if r.stitch == main.stitch and r.state == "hung" and r.width and r.stitches
    ]
    if not read or main.state == "hung":
        return None
    return sum(w for w, _ in read) / sum(n for _, n in read) / main.width.value - 1


def hung_remarks(basis: Basis, landmarks: Sequence[Landmark]) -> Iterator[Remark]:
    """The ease that is left as worn; serious where it is less than is allowed.

    The waist does not hang: it is held where it is.
    """
    change = narrowing(basis)
    if change is None or abs(change) < SEEN:
        return
    passed = [m for m in landmarks if m.body is not None and m.key != "waist_girth"]
    tight = [m for m in passed if m.garment.value * (1 + change) < m.low - SEEN]
    told = "; ".join(_as_worn(basis, mark, change) for mark in passed)
    state = basis.gauge(basis.design.work.stitch, "work.stitch").state
    side = "narrower" if change < 0 else "wider"
    sentence = (
        f"hung, the swatch is {abs(change) * 100:.0f} % {side} than {state}, and so is the skirt as "
        f"worn, though its girths are planned with that width{': ' if told else ''}{told}"
    )
    if tight:
        names = " and ".join(_name(mark) for mark in tight)
        sentence += f"; at the {names} that is less ease than allowed, so allow more"
    yield Remark("hung_width", sentence, serious=bool(tight))


def _as_worn(basis: Basis, mark: Landmark, change: float) -> str:
    girth = mark.garment.value * (1 + change)
    ease = girth - (mark.body.value if mark.body else 0.0)
    return f"{basis.show(girth)} at the {_name(mark)}, {basis.show(ease)} of ease"


def _name(mark: Landmark) -> str:
    return mark.key.removesuffix("_girth").replace("_", " ")
