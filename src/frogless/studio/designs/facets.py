"""What a design is like, seen from its document: kind, way of working, shape, stitch, details.

Nothing is listed by design: whatever is written is found again by the same rules.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from frogless.design.document import Design, PieceChoice, PiecesDesign, TubeDesign, tubes
from frogless.design.pieces.border import BorderChoice
from frogless.design.pieces.cord import CordChoice
from frogless.design.pieces.disc import DiscChoice
from frogless.design.pieces.panel import PanelChoice
from frogless.design.pieces.shawl import ShawlChoice
from frogless.design.pieces.tube import Section, TubeChoice
from frogless.design.pieces.yoke import YokeChoice
from frogless.design.work import Work

PATTERN = "stitch_pattern"
"""Stands among the stitches for every stitch pattern."""


@dataclass(frozen=True, slots=True)
class Facet:
    """One thing to choose designs by.

    Args:
        every: whether a design must have all that is chosen; else one of them is enough.
        labels: what each value is called, in the order shown; stitches are called by the dictionary.
    """

    key: str
    title: str
    labels: Mapping[str, str]
    every: bool = False


FACETS = (
    Facet(
        "kind",
        "What it is",
        {
            "skirt": "Skirt",
            "top": "Top",
            "dress": "Dress",
            "cardigan": "Cardigan",
            "hat": "Hat",
            "shawl": "Shawl",
            "bag": "Bag",
        },
    ),
    Facet(
        "worked",
        "How it is worked",
        {
            "joined": "In joined rounds",
            "spiral": "In a spiral",
            "rows": "In rows",
            "neck": "From the neck down",
            "middle": "From the middle out",
            "seams": "In pieces, with seams",
        },
    ),
    Facet(
        "shape",
        "Shape",
        {
            "straight": "Straight",
            "fitted": "Fitted",
            "flared": "Flared",
            "circle": "Circle",
            "square": "Square",
            "gores": "Gores",
            "tiers": "Tiers",
            "triangle": "Triangle",
            "crescent": "Crescent",
        },
    ),
    Facet("stitch", "Stitch", {}),
    Facet(
        "details",
        "Details",
        {
            "edging": "Edging",
            "elastic": "Elastic",
            "band": "Ribbed band",
            "cord": "Cord or straps",
            "sleeves": "Sleeves",
            "beads": "Beads",
            "stripes": "Stripes",
        },
        every=True,
    ),
)

Values = tuple[str, ...]
Facets = tuple[tuple[str, Values], ...]
"""Key of each facet with what a design has of it; a plain tuple, that it can be sent about."""


def facets(design: Design) -> Facets:
    """What a design has of each facet.

    >>> from frogless.design.load import parse_design
    >>> from frogless.studio.examples import examples
    >>> dict(facets(parse_design(examples("design")["haymaker-hat"].text).checked))["worked"]
    ('spiral', 'middle')
    """
    found: dict[str, set[str]] = {
        "kind": {design.garment.kind},
        "worked": set(_worked(design)),
        "shape": set(_shape(design)),
        "stitch": set(_stitches(design)),
        "details": set(_details(design)),
    }
    if "tiers" in found["shape"]:
        found["shape"].discard("straight")  # each tier is, and the whole is not
    return tuple((facet.key, _in_order(facet, found[facet.key])) for facet in FACETS)


def _in_order(facet: Facet, values: set[str]) -> Values:
    known = tuple(value for value in facet.labels if value in values)
    return known + tuple(sorted(values - set(known)))


def pieces_of(design: Design) -> tuple[PieceChoice, ...]:
    """The pieces, of a design of one tube that tube."""
    if isinstance(design, TubeDesign):
        return (design.tube,)
    return design.piece if isinstance(design, PiecesDesign) else ()


def work_of(design: Design, piece: PieceChoice) -> Work:
    """How a piece is worked: as it says itself, or as the design does."""
    return getattr(piece, "work", None) or design.work


def _worked(design: Design) -> Iterator[str]:
    for piece in pieces_of(design):
        rounds = "spiral" if work_of(design, piece).rounds == "spiral" else "joined"
        match piece:
            case TubeChoice():
                yield rounds
            case DiscChoice():
                yield from (rounds, "middle")
            case YokeChoice():
                yield from (rounds, "neck")
            case ShawlChoice():
                yield "rows"
                if piece.shape in ("triangle", "crescent"):
                    yield "middle"
            case PanelChoice():
                yield "rows"
    if isinstance(design, PiecesDesign) and design.join:
        yield "seams"


def _shape(design: Design) -> Iterator[str]:
    for piece in pieces_of(design):
        match piece:
            case TubeChoice() if not is_sleeve(piece):
                yield from _shape_of_tube(piece)
            case DiscChoice():
                yield "circle" if piece.sides is None else "square"
                spread = [s for s in piece.section if s.lie is not None or s.girth is not None]
                yield from ("flared" for _ in spread)
            case ShawlChoice():
                shapes = {"crescent": "crescent", "rectangle": "straight"}
                yield shapes.get(piece.shape, "triangle")
            case PanelChoice() if not is_sleeve(piece):
                shaped = any(section.width or section.lines for section in piece.section)
                yield "fitted" if shaped or piece.full_bust else "straight"


def _shape_of_tube(piece: TubeChoice) -> Iterator[str]:
    if piece.start.gather > 1:
        yield "tiers"
    for section in piece.section:
        yield from _shape_of_section(section)
    last = piece.section[-1]
    if last.shape == "straight" and last.pattern is None:
        yield "straight"


def _shape_of_section(section: Section) -> Iterator[str]:
    if section.flare is not None:
        yield "square" if section.flare == "square" else "circle"
        return
    if section.gores is not None:
        yield "gores"
    if section.shape != "shaped" and section.pattern is None:
        return
    if section.to in ("hip", "high hip") or "waist_girth" in (section.girth or ""):
        yield "fitted"
    elif section.to == "hem":
        yield "flared"


def is_sleeve(piece: PieceChoice) -> bool:
    """Whether it goes round an arm: it has a cap, stands on a yoke's sleeve, or is called so."""
    on: tuple[str, ...] = piece.start.on if isinstance(piece, TubeChoice) else ()
    capped = isinstance(piece, PanelChoice) and piece.cap is not None
    return capped or "sleeve" in piece.name or any("sleeve" in edge for edge in on)


def _stitches(design: Design) -> Iterator[str]:
    for piece in pieces_of(design):
        if isinstance(piece, BorderChoice | CordChoice):
            continue
        yield work_of(design, piece).stitch
        for section in (*getattr(piece, "section", ()), *getattr(piece, "band", ())):
            if getattr(section, "pattern", None) is not None:
                yield PATTERN
            elif section.stitch is not None:
                yield section.stitch


def _details(design: Design) -> Iterator[str]:
    for piece in pieces_of(design):
        edging = getattr(piece, "edging", None)
        if edging is not None:
            yield "edging"
            yield from ("beads" for _ in [edging.beads] if edging.beads)
        if isinstance(piece, CordChoice):
            yield "cord"
        if isinstance(piece, YokeChoice) or is_sleeve(piece):
            yield "sleeves"
    for tube in tubes(design):
        kinds = {"covered elastic": "elastic", "ribbed band": "band", "drawcord": "cord"}
        yield from (kinds[tube.waist.kind] for _ in [tube.waist] if tube.waist)
        yield from ("beads" for _ in tube.strand)
    if design.colours is not None and design.colours.stripes:
        yield "stripes"
