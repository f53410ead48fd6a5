"""A small picture of a planned garment, without numbers, for a card in a gallery."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Literal

from frogless.draw.drawing import Drawing, Shape
from frogless.draw.layout import extent
from frogless.draw.silhouette_others import bag, hat, pieces, shawl
from frogless.draw.silhouette_panels import fronts, panel_top
from frogless.draw.silhouette_skirts import skirt
from frogless.draw.silhouette_yokes import YOKES, yoke_top
from frogless.draw.sketch import fitted
from frogless.plan.model import Plan

Kind = Literal["skirt", "top", "cardigan", "hat", "bag", "shawl", "pieces"]

#: All cards are of one size; what the garment keeps free of its edge, mm.
SIDE, MARGIN = 60.0, 4.5


def silhouette(plan: Plan, *, title: str = "") -> Drawing:
    """The garment as it is worn or lies, centred in a square, as large as the square lets it.

    Args:
        title: of the design; "" for the kind of garment.
    """
    kind = kind_of(plan)
    draw = DRAWN[kind]
    room = SIDE - 2 * MARGIN
    # Trims are as large on every card, so they are drawn again once the scale is known.
    unit = 10.0
    for _ in range(4):
        box = extent(tuple(draw(plan, unit)))
        unit = max(box.right - box.left, box.bottom - box.top) / room
    shapes = tuple(draw(plan, unit))
    box = extent(shapes)
    scale = room / max(box.right - box.left, box.bottom - box.top)
    dx = SIDE / 2 - (box.left + box.right) / 2 * scale
    dy = SIDE / 2 - (box.top + box.bottom) / 2 * scale
    return Drawing(SIDE, SIDE, title or TOLD[kind], _told(kind), fitted(shapes, scale, dx, dy))


def kind_of(plan: Plan) -> Kind:
    """What a plan makes, as far as its pieces tell."""
    made = {piece.construction for piece in plan.pieces}
    cords = [piece for piece in plan.pieces if piece.construction == "cord"]
    if made & YOKES:
        return "top"
    found = fronts(plan)
    if found:
        return "cardigan" if len(found) == 2 else "top"
    if plan.main.construction == "tube" and plan.main.shape is None:
        return "skirt"
    if plan.main.construction == "shawl":
        return "shawl"
    if cords and plan.main.construction in {"disc", "panel"}:
        return "bag"
    return "hat" if plan.main.construction == "disc" else "pieces"


def _top(plan: Plan, unit: float) -> Iterator[Shape]:
    has_yoke = any(piece.construction in YOKES for piece in plan.pieces)
    return yoke_top(plan, unit) if has_yoke else panel_top(plan, unit)


def _told(kind: Kind) -> str:
    return f"A small picture: {TOLD[kind][0].lower()}{TOLD[kind][1:]}, seen from the front."


TOLD: Mapping[Kind, str] = {
    "skirt": "A skirt",
    "top": "A top",
    "cardigan": "A cardigan",
    "hat": "A hat",
    "bag": "A bag",
    "shawl": "A shawl",
    "pieces": "The pieces side by side",
}
DRAWN: Mapping[Kind, Callable[[Plan, float], Iterator[Shape]]] = {
    "skirt": skirt,
    "top": _top,
    "cardigan": panel_top,
    "hat": hat,
    "bag": bag,
    "shawl": shawl,
    "pieces": pieces,
}
