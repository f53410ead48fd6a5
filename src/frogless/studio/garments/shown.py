"""What a page shows of a garment: drafted here, where no page is known.

Everything that is asked and answered can be handed from one process to another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from frogless.draft import Draft, plan_text
from frogless.errors import FroglessError, InputError, ProofFailed
from frogless.proof.model import passing
from frogless.publish.alternatives import alternatives
from frogless.publish.authored import authored
from frogless.publish.drafted import Drafted
from frogless.publish.front import estimated
from frogless.publish.materials import listed
from frogless.publish.messages import say
from frogless.publish.pattern import drawings, pattern
from frogless.publish.pdf import pdf
from frogless.publish.plain import plain
from frogless.publish.reasons import Reason, reason
from frogless.publish.remarks import caution_note
from frogless.publish.webpage import webpage
from frogless.studio.garments import faults
from frogless.studio.garments.drafts import Order, drafted, is_proven, proven
from frogless.studio.garments.sheet import DrawingBlock, Part, Shown, Way
from frogless.studio.garments.shown_blocks import note
from frogless.studio.garments.shown_pattern import contents, pattern_parts
from frogless.studio.garments.shown_shape import drawn, shape_parts
from frogless.studio.garments.shown_tables import fit_parts, materials_parts

ROOMS: Mapping[str, Callable[[Drafted], tuple[Part, ...]]] = {
    "shape": shape_parts,
    "pattern": pattern_parts,
    "materials": materials_parts,
    "fit": fit_parts,
}
"""What each room shows. A room of its own for charts or sizes is a line here and one in the page."""


def show(order: Order, room: str, *, prove: bool = True) -> Shown:
    """What a room shows; why there is nothing to show, where that is so.

    Args:
        prove: False leaves out the proof unless it has run; nothing but numbers is to be shown then.
    """
    try:
        return told(proven(order) if prove else drafted(order), room)
    except FroglessError as error:
        return refused(error)


def refused(error: FroglessError) -> Shown:
    """What is shown when there is no draft."""
    sentence = "Not drafted."
    if isinstance(error, ProofFailed):
        sentence = "Drafted, but it did not pass its own proof. Nothing of it is shown."
    return Shown("", "refused", sentence, refusal=faults.refusal(error))


def told(made: Draft, room: str) -> Shown:
    """What a room shows of a draft."""
    garment = made.drafted
    parts = ROOMS[room](garment)
    return replace(
        _summary(made),
        summary=authored(garment, garment.basis.design.summary),
        gauge=gauge_line(garment),
        parts=parts,
        contents=contents(parts) if room == "pattern" else (),
    )


def drawings_of(order: Order) -> tuple[DrawingBlock, ...]:
    """The drawings of the shape; none where there is no draft."""
    try:
        blocks = tuple(drawn(drafted(order).drafted))
    except FroglessError:
        return ()
    return blocks[0].drawings if blocks else ()


def proof(order: Order) -> Shown:
    """The proof alone: its sentence and what it warns of, or why it failed."""
    try:
        return _summary(proven(order))
    except FroglessError as error:
        return refused(error)


def _summary(made: Draft) -> Shown:
    """What stands above every room."""
    garment = made.drafted
    return Shown(
        title=garment.basis.design.title,
        state="proven" if is_proven(made) else "pending",
        sentence=proof_sentence(made),
        warnings=tuple(dict.fromkeys(map(faults.in_words, _warnings(made)))),
        cautions=tuple(note(caution_note(garment, one)) for one in garment.fit.cautions),
    )


def ways(order: Order) -> tuple[Way, ...]:
    """Other rhythms that the sections could have; none where there is no draft."""
    try:
        found = alternatives(drafted(order).drafted)
    except FroglessError:
        return ()
    return tuple(
        Way(
            _capital(one.sentence),
            tuple((faults.knob_name(path), written) for path, written in one.changes),
            _capital(one.section),
            _capital(one.rhythm),
        )
        for one in found
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def why(order: Order, key: str) -> Reason:
    """Why a number is what it is.

    Raises:
        InputError: no number has that key.
        FroglessError: there is no draft.
    """
    return reason(drafted(order).drafted, key)


def proof_sentence(made: Draft) -> str:
    """What was drafted, and how many checks it passed."""
    garment = made.drafted
    counts = _pieces(garment) if garment.of_pieces else _landmarks(garment)
    if not is_proven(made):
        return f"Drafted: {counts}. The proof is under way."
    return f"Drafted and proven: {counts}; {passing(garment.findings)}."


def _landmarks(garment: Drafted) -> str:
    first, *others = garment.plan.main.landmarks
    counts = f"{first.count} stitches at the {say(garment, first.key)}"
    return counts + "".join(f", {mark.count} at the {say(garment, mark.key)}" for mark in others)


def _pieces(garment: Drafted) -> str:
    """ "front, back and 2 of sleeve"."""
    names = [
        piece.name if piece.number_made == 1 else f"{piece.number_made} of {piece.name}"
        for piece in garment.plan.pieces
    ]
    return listed(garment, names)


def _warnings(made: Draft) -> Iterator[str]:
    yield from made.questions
    for found in made.drafted.findings:
        yield from found.faults
    yield from (remark.sentence for remark in made.drafted.plan.remarks if remark.serious)
    yield from (one.text for one in estimated(made.drafted))


def gauge_line(garment: Drafted) -> str:
    """The gauge in a line, for the head of a printed page."""
    basis = garment.basis
    main = basis.gauge(basis.design.work.stitch, "work.stitch")
    span = 101.6 if garment.units == "in" else 100.0
    stitches, rows = (
        f"{span / one.value:.1f}".removesuffix(".0") for one in (main.width, main.height)
    )
    return (
        f"{stitches} {garment.short(main.stitch)} and {rows} rows in {say(garment, f'span_{garment.units}')}, "
        f"{say(garment, f'state_{main.state}')}"
    )


def _pdf(garment: Drafted) -> bytes:
    return pdf(pattern(garment), "us-letter" if garment.units == "in" else "a4")


OUTPUTS: Mapping[str, tuple[str, Callable[[Drafted], bytes]]] = {
    "pattern.pdf": ("application/pdf", _pdf),
    "pattern.html": ("text/html; charset=utf-8", lambda d: webpage(pattern(d)).encode()),
    "pattern.txt": ("text/plain; charset=utf-8", lambda d: plain(pattern(d)).encode()),
    "plan.json": ("application/json", lambda d: plan_text(d).encode()),
    "schematic.svg": ("image/svg+xml", lambda d: dict(drawings(d)).get("schematic", "").encode()),
}
"""The files of a pattern: what kind each is, and how it is made."""


def output(order: Order, name: str) -> bytes:
    """A file of the pattern. Nothing is published that did not pass its proof.

    Raises:
        FroglessError: there is no draft, or no such file of it.
    """
    made = OUTPUTS[name][1](proven(order).drafted)
    if not made:
        raise InputError("none of these pieces has an outline to draw")
    return made
