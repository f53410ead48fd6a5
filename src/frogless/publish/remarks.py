"""Remarks of the planner and cautions, each told once, at the place where it matters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from string import Formatter

from frogless.design.document import Design, PiecesDesign, TubeDesign
from frogless.design.trims import EdgingChoice
from frogless.fit.model import Caution
from frogless.plan.model import Remark, StrandPlan
from frogless.publish.blocks import Note
from frogless.publish.drafted import Drafted
from frogless.publish.messages import MESSAGES, say, spelled
from frogless.units import show_fine

#: Where a remark is told, by the beginning of its name; others are told before the start.
REMARKS_AT: Mapping[str, str] = {
    "high_hip": "glance",
    "hang_test": "gauge",
    "hung": "gauge",
    "ease": "glance",
    "edging": "edging",
    "elastic": "elastic",
    "rib": "band",
    "eyelet": "cord",
    "bead": "strand",
    "plies": "strand",
    "strand": "strand",
    "stripe": "colours",
    "colour": "colours",
}

#: Where a caution is told; what is not listed comes first of all, before anything is bought.
CAUTIONS_AT: Mapping[str, str] = {
    "hands": "before",
    "flame": "materials",
    "long_hem": "glance",
    "narrow_hem": "glance",
    "loose_strand": "strand",
}

#: Sources that are none that a reader could look up.
UNPUBLISHED = frozenset({"", "from memory"})

#: The gauge tells of the hang test in the words of the fit, which knows the loads; the key of the
#: colours and the finishing tell of their ends.
TOLD_ELSEWHERE = frozenset({"hang_test", "stripe_ends"})


def notes_at(drafted: Drafted, place: str) -> tuple[Note, ...]:
    """Cautions, then remarks, that belong to a place of the pattern."""
    cautions = [c for c in drafted.fit.cautions if _caution_at(drafted, c) == place]
    remarks = [r for r in drafted.plan.remarks if _remark_at(drafted, r) == place]
    return (
        *(caution_note(drafted, caution) for caution in cautions),
        *(remark_note(drafted, r) for r in remarks if r.name not in TOLD_ELSEWHERE),
    )


#: The places that a pattern of several pieces has, whatever it is made of.
OF_EVERY_PATTERN = frozenset({"first", "glance", "gauge", "materials", "before", "colours"})


def _caution_at(drafted: Drafted, caution: Caution) -> str:
    place = CAUTIONS_AT.get(caution.key, "first")
    return place if place in OF_EVERY_PATTERN or not drafted.of_pieces else "first"


def _remark_at(drafted: Drafted, remark: Remark) -> str:
    place = place_of(remark)
    return place if place in OF_EVERY_PATTERN or not drafted.of_pieces else "before"


def strand_notes(drafted: Drafted, strand: StrandPlan) -> tuple[Note, ...]:
    """The cautions for strands, and the remarks on this one."""
    mine = f"{strand.name}: "
    return tuple(_strand_notes(drafted, mine))


def _strand_notes(drafted: Drafted, mine: str) -> Iterator[Note]:
    for caution in drafted.fit.cautions:
        if CAUTIONS_AT.get(caution.key) == "strand":
            yield caution_note(drafted, caution)
    for remark in drafted.plan.remarks:
        if place_of(remark) == "strand" and remark.sentence.startswith(mine):
            yield remark_note(drafted, remark, mine)


def place_of(remark: Remark) -> str:
    """Where a remark is told."""
    for beginning, place in REMARKS_AT.items():
        if remark.name.startswith(beginning):
            return place
    return "before"


def caution_note(drafted: Drafted, caution: Caution) -> Note:
    """A caution with its source."""
    key = "unsourced" if caution.source in UNPUBLISHED else "sourced"
    text = say(drafted, key, sentence=caution.sentence, source=caution.source)
    return Note("caution", spelled(drafted, text), say(drafted, "note_caution"))


def remark_note(drafted: Drafted, remark: Remark, less: str = "") -> Note:
    """A remark in a maker's words, or else in the planner's.

    Args:
        less: what the sentence begins with and the place already says.
    """
    own, text = f"remark_{remark.name}", sentence(remark.sentence.removeprefix(less))
    if own in MESSAGES and _blanks(MESSAGES[own]) <= (figures := _figures(drafted)).keys():
        text = say(drafted, own, **figures)
    kind = "remark" if remark.serious else "hint"
    return Note(kind, spelled(drafted, text), say(drafted, f"note_{kind}"))


def _blanks(message: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(message) if name}


def _figures(drafted: Drafted) -> dict[str, str]:
    """What a remark in a maker's words may name; of several edgings none, as any could be meant."""
    made = [piece.edging for piece in drafted.plan.pieces if piece.edging is not None]
    asked = _asked(drafted.basis.design)
    if len(made) != 1 or len(asked) != 1:
        return {}
    hooks = {"edging_hook": made[0].hook, "theirs": asked[0].hook}
    return {name: show_fine(size, drafted.units) for name, size in hooks.items()}


def _asked(design: Design) -> tuple[EdgingChoice, ...]:
    """The edgings that a design asks for."""
    if isinstance(design, TubeDesign):
        return (design.edging,) if design.edging else ()
    pieces = design.piece if isinstance(design, PiecesDesign) else ()
    edgings = (getattr(piece, "edging", None) for piece in pieces)
    return tuple(edging for edging in edgings if edging is not None)


def sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")
