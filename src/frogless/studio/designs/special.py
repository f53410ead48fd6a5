"""What is special about a design, in a maker's words: edging, waist, beads, colours, own stitches."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.design.document import Design, tubes
from frogless.design.trims import EdgingChoice, WaistChoice
from frogless.stitches.edgings import patterns as edging_patterns
from frogless.stitches.model import Dialect
from frogless.studio.designs.facets import pieces_of

Said = tuple[tuple[str, str], ...]
"""What it is about, and what there is to say."""

WAISTS = {
    "covered elastic": "Elastic laid along the edge and covered with crochet.",
    "drawcord": "A cord drawn through a round of eyelets.",
    "ribbed band": "A ribbed band worked sideways, joined to the edge.",
}


def special(design: Design, dialect: Dialect) -> Said:
    """Everything that a maker should know of before she begins."""
    return tuple(dict.fromkeys(_told(design, dialect)))


def _told(design: Design, dialect: Dialect) -> Iterator[tuple[str, str]]:
    for piece in pieces_of(design):
        edging: EdgingChoice | None = getattr(piece, "edging", None)
        if edging is not None:
            yield "Edging", f"{_edging_name(edging.pattern, dialect)}."
            if edging.beads is not None:
                yield "Beads", f"{edging.beads.per_repeat} in each repeat of the edging."
    for tube in tubes(design):
        waist: WaistChoice | None = tube.waist
        if waist is not None:
            yield "Waist", WAISTS[waist.kind]
        for strand in tube.strand:
            yield "Beads", f"{strand.name.capitalize()}: chains and beads that hang from the waist."
    if design.colours is not None:
        yield "Colors", ", ".join(design.colours.names.values()) + "."
    for own in design.pattern.values():
        yield "Own stitch pattern", f"{own.name.capitalize()}, written in the design."
    if design.garment.for_children:
        yield "For children", "Its cautions are those for children’s clothes."


def _edging_name(key: str, dialect: Dialect) -> str:
    found = edging_patterns().get(key)
    words = found.entry[dialect][0] if found is not None else key.replace("_", " ")
    return str(words).capitalize()
