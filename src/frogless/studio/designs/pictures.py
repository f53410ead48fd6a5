"""Pictures of designs, drawn from a plan; of one that cannot be planned, a plain one that says why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from textwrap import wrap
from typing import Literal

from frogless.design.document import PiecesDesign
from frogless.draft import Texts, load_texts
from frogless.draw.describe import describe
from frogless.draw.pieces import describe_pieces, pieces_drawing
from frogless.draw.schematic import schematic
from frogless.draw.silhouette import silhouette
from frogless.draw.svg import svg
from frogless.errors import FroglessError, InputError
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.plan.model import Plan
from frogless.studio.designs.facts import in_line
from frogless.units import Units

Of = Literal["outline", "flat"]
"""An outline for a card, or the whole drawing with its measurements."""

Worn = tuple[str, tuple[str, ...]]
"""The text of a body, and those of swatches."""

NO_OUTLINE = "None of its pieces has an outline to draw."
LETTERS, MOST_LINES = 30, 6


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing as SVG, what it shows in words, and why there is none."""

    svg: str
    alt: str
    fault: str = ""


def picture(design: str, tries: Sequence[Worn], of: Of = "outline", units: Units = "cm") -> Picture:
    """The picture of a design's text for the first of some bodies and swatches that will do.

    Args:
        tries: bodies with swatches, the ones wanted most first; at least one.
    """
    fault: FroglessError | None = None
    for body, swatches in tries:
        try:
            return _picture(Texts(design, body, swatches), of, units)
        except FroglessError as error:
            fault = error
    return placeholder(_why(fault))


def placeholder(why: str) -> Picture:
    """A sheet of paper with a dashed garment, and the reason under it."""
    lines = wrap(why, LETTERS, max_lines=MOST_LINES, placeholder=" …")
    return Picture("\n".join(_placeholder(lines)), f"Not drawn. {why}", why)


def _why(fault: FroglessError | None) -> str:
    if isinstance(fault, InputError):
        sentence = in_line(fault)
    else:
        sentence = fault.faults[0].message if fault else "there is nothing to draw it for"
    return sentence[:1].upper() + sentence[1:]


def _picture(texts: Texts, of: Of, units: Units) -> Picture:
    basis, _ = load_texts(texts, units)
    made = plan(basis)
    if of == "outline":
        drawn = silhouette(made, title=basis.design.title)
        return Picture(svg(drawn), drawn.description)
    return drawn_flat(basis, made, units)


def drawn_flat(basis: Basis, made: Plan, units: Units) -> Picture:
    """The whole drawing of a plan, with its measurements."""
    design = basis.design
    if isinstance(design, PiecesDesign):
        drawing = pieces_drawing(made, title=design.title, units=units)
        if drawing is None:
            return placeholder(NO_OUTLINE)
        return Picture(svg(drawing), describe_pieces(made, units))
    join = design.work.join_at
    drawn = schematic(made, title=design.title, units=units, labels={}, join_at=join)
    return Picture(svg(drawn), describe(made, units, join_at=join))


def _placeholder(lines: Sequence[str]) -> Iterator[str]:
    yield (
        '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"'
        ' role="img"><title>Not drawn</title><rect width="100" height="100" fill="#ffffff"/>'
    )
    yield (
        '<path d="M38 12h24l3 7 13 35q-28 7-56 0l13-35z" fill="none" stroke="#7a736a"'
        ' stroke-width=".7" stroke-dasharray="2 1.6" stroke-linejoin="round"/>'
    )
    yield (
        '<g font-family="\'Libertinus Serif\', serif" font-size="5" fill="#55504a" text-anchor="middle">'
    )
    for number, line in enumerate(lines):
        yield f'<text x="50" y="{67 + 6 * number}">{escape(line, quote=False)}</text>'
    yield "</g></svg>"
