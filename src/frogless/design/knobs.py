"""What a person would like to turn in a design, and the design with it turned.

The knobs follow from the format and the document itself; what they are called stands in
`data/knobs.toml`. What is written keeps its comments, its order and its blank lines.
"""

from __future__ import annotations

from frogless.design.knobs_follow import follow
from frogless.design.knobs_found import Group, Knob, found
from frogless.design.knobs_parts import Part, add, parts, take_away
from frogless.design.knobs_typed import formula_names, typed
from frogless.design.load import parse_design
from frogless.design.save import edited
from frogless.errors import InputError, near_names
from frogless.files import dotted
from frogless.stitches.model import Dialect
from frogless.toml_text import Steps
from frogless.units import Units

__all__ = [
    "Group", "Knob", "Part", "add", "knobs", "names_in_formulas", "parts", "take_away", "turn",
]  # fmt: skip


LONGEST_TYPED = 2000
"""Characters of one value (own choice): a page of notes, or four formulas."""


def knobs(text: str, terms: Dialect = "us") -> tuple[Group, ...]:
    """Everything in a design that a person may turn, by part of the garment.

    Args:
        terms: in which stitches are named.

    Raises:
        InputError: the text is no design.
    """
    return found(parse_design(text), terms)


def names_in_formulas(text: str) -> tuple[tuple[str, str], ...]:
    """Every name that a formula of this design may use, with what it is: its own lengths first.

    Raises:
        InputError: the text is no design.
    """
    return formula_names(parse_design(text).checked)


def turn(text: str, path: Steps, written: str, units: Units = "cm") -> str:
    """The design with one knob set to what a person typed.

    What no longer goes with it goes too: the numbers that another edging has not, the keys of
    another kind of waist.

    Args:
        path: of a knob of this design.
        written: "" puts it back to what holds when nothing is written.
        units: of a length that is typed without a unit.

    Raises:
        InputError: the text is no design, there is no such knob, or what was typed is not accepted:
            one sentence, with line and key.
    """
    document = parse_design(text)
    every = {knob.path: knob for group in found(document) for knob in group.knobs}
    if path not in every:
        near = near_names(dotted(path), map(dotted, every))
        raise InputError(f"there is nothing to turn{near}", document.place(path))
    knob, written = every[path], written.replace("\r\n", "\n").strip()
    if written == knob.value.strip():
        return text
    if len(written) > LONGEST_TYPED:
        told = f"{len(written):,} characters were typed; at most {LONGEST_TYPED:,} are accepted"
        raise InputError(told, document.place(path))
    if written:
        value = typed(knob, written, units, document)
        more, without = follow(document, path, value)
        changed = edited(text, {path: value, **more}, without)
    else:
        more, without = follow(document, path, None)
        changed = edited(text, more, (path, *without))
    parse_design(changed)
    return changed
