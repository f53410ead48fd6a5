"""The text of a design checked as it is written: faults at their lines, or what it comes to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from frogless.draft import Draft, Texts, draft_texts
from frogless.errors import Fault, FroglessError, Impossible
from frogless.plan.model import PiecePlan
from frogless.proof.model import passing
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.stitches.model import Dialect
from frogless.studio.designs.pictures import Picture, drawn_flat
from frogless.units import Units, show_length

OF = {"design": "", "body": "The body", "swatch": "The swatch"}
"""What a fault that is not the design's own is about, by the first word of its file."""


@dataclass(frozen=True, slots=True)
class Told:
    """One fault: its line in the design (None when it is not there), its key, and one sentence."""

    sentence: str
    line: int | None = None
    key: str = ""
    about: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """What it comes to: a caption, a header, and rows whose first cell names them."""

    caption: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Checked:
    """Faults with the ways out of what cannot be; or else what it comes to, proven.

    Args:
        impossible: whether the text is sound and asks for what this body and swatch cannot give.
    """

    title: str = ""
    faults: tuple[Told, ...] = ()
    ways_out: tuple[str, ...] = ()
    impossible: bool = False
    proven: str = ""
    table: Table | None = None
    remarks: tuple[str, ...] = ()
    picture: Picture | None = None


def check(
    design: str, body: str, swatches: tuple[str, ...], terms: Dialect = "us", units: Units = "cm"
) -> Checked:
    """A design's text, drafted for a body in a yarn; whatever is wrong is told, not raised."""
    try:
        made = draft_texts(Texts(design, body, swatches), terms, units)
    except FroglessError as error:
        return faulty(error)
    return _come_to(made)


def faulty(error: FroglessError) -> Checked:
    """What is told of a refusal."""
    return Checked(
        faults=tuple(_told(fault) for fault in error.faults),
        ways_out=error.ways_out if isinstance(error, Impossible) else (),
        impossible=isinstance(error, Impossible),
    )


def _told(fault: Fault) -> Told:
    place = fault.place
    sentence = fault.message[:1].upper() + fault.message[1:]
    about = OF.get(place.file.partition(".")[0].partition("-")[0], "")
    return Told(sentence, None if about else place.line, place.key, about)


def _come_to(made: Draft) -> Checked:
    drafted = made.drafted
    return Checked(
        title=drafted.basis.design.title,
        proven=f"Drafted and proven: {passing(drafted.findings)}.",
        table=counts_of(drafted),
        remarks=tuple(dict.fromkeys(_remarks(made))),
        picture=drawn_flat(drafted.basis, drafted.plan, drafted.units),
    )


def counts_of(drafted: Drafted) -> Table:
    """The stitches at the landmarks of a garment of one tube, else those of each piece."""
    return _pieces(drafted) if drafted.of_pieces else _landmarks(drafted)


def _landmarks(drafted: Drafted) -> Table:
    rows = tuple(
        (
            say(drafted, mark.key).capitalize(),
            str(mark.count),
            show_length(mark.garment.value, drafted.units),
            show_length(mark.depth, drafted.units),
        )
        for mark in drafted.plan.main.landmarks
    )
    return Table("Counts at the landmarks", ("At", "Stitches", "Girth", "Below the top"), rows)


def _pieces(drafted: Drafted) -> Table:
    rows = tuple(
        (_called(piece), str(piece.counts[0]), str(piece.counts[-1]), str(len(piece.counts)))
        for piece in drafted.plan.pieces
        if piece.counts
    )
    return Table("Counts of the pieces", ("Piece", "First row", "Last row", "Rows"), rows)


def _called(piece: PiecePlan) -> str:
    name = piece.name[:1].upper() + piece.name[1:]
    return name if piece.number_made == 1 else f"{name}, {piece.number_made} of it"


def _remarks(made: Draft) -> Iterator[str]:
    for finding in made.drafted.findings:
        yield from finding.faults
    yield from (remark.sentence for remark in made.drafted.plan.remarks if remark.serious)
    yield from made.questions
