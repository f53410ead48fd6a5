"""What a person typed for a knob, as the value that stands in the document."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import replace

from frogless.body.measurements import known_measurements
from frogless.design import formulas
from frogless.design.document import Design
from frogless.design.knobs_found import Knob
from frogless.design.knobs_kinds import Kind
from frogless.design.save import Value, Written
from frogless.errors import InputError, Place, near_names
from frogless.files import Document
from frogless.units import Units, parse_number

TRUTHS: Mapping[str, bool] = {
    "true": True, "yes": True, "on": True, "false": False, "no": False, "off": False,
}  # fmt: skip

STRETCH = "stretch"
"""The name in formulas for how far the maker's fabric stretches."""

_VULGAR = re.compile("[½¼¾⅛⅜⅝⅞]")
_TO = re.compile(r"\s+to\s+|\s*;\s*")


def typed(knob: Knob, written: str, units: Units, document: Document[Design]) -> Value:
    """The value that was typed, of the type that the document has it in.

    Raises:
        InputError: it is none that the knob takes.
    """
    place = document.place(knob.path)
    read = _Reader(knob, units, place, document)
    match knob.kind:
        case "pair":
            ends = _TO.split(written)
            if len(ends) != 2:
                told = f'"{written}" is not two values; write the least and the most, 2 cm to 6 cm'
                raise InputError(told, place)
            return read.several(ends)
        case "list":
            return read.several([one.strip() for one in written.split(";") if one.strip()])
        case kind:
            return read.one(written, kind)


def formula_names(design: Design) -> tuple[tuple[str, str], ...]:
    """Every name that a formula of a design may use, with what it is."""
    measured = ((m.key, m.how_taken) for m in known_measurements().values() if m.kind != "mass")
    return (
        *design.lengths.items(),
        *measured,
        (STRETCH, "how far the maker's fabric stretches, 0.2 for 20 %"),
    )


class _Reader:
    """Reads the values of one knob."""

    def __init__(self, knob: Knob, units: Units, place: Place, document: Document[Design]) -> None:
        self.knob, self.units, self.place, self.document = knob, units, place, document

    def several(self, parts: list[str]) -> list[str] | list[int]:
        kind = self.knob.items or "text"
        return [self.one(part, kind) for part in parts]  # type: ignore[return-value]

    def one(self, text: str, kind: Kind) -> Value:
        match kind:
            case "length":
                return self._formula(text)
            case "size":
                return self._with_unit(text)
            case "number":
                return self._number(text)
            case "choice":
                return self._choice(text)
            case "truth":
                return self._truth(text)
        return text

    def _formula(self, text: str) -> str:
        """A formula that gives a length; a length of the design's own may also be a number."""
        design = self.document.checked
        own = self.knob.path[0] == "lengths"
        scope = _scope(design)
        may_be_number = own and _power(self.knob.value, scope) == 0
        text = _in_figures(text) if may_be_number else self._with_unit(text)
        if own:
            others = {**design.lengths, str(self.knob.path[-1]): text}
            checked = replace(scope, formulas=others, where=lambda _: self.place)
            formulas.evaluate(text, checked, self.place)
        else:
            formulas.length(text, scope, self.place)
        return text

    def _with_unit(self, text: str) -> str:
        text = _in_figures(text)
        try:
            parse_number(text)
        except InputError:
            return text
        return f"{text} {self.knob.unit or self.units}"

    def _number(self, text: str) -> Written:
        if text in dict(self.knob.choices) and not text.isdecimal():
            return text
        try:
            number = parse_number(text)
        except InputError as error:
            others = "".join(f' or "{key}"' for key, _ in self.knob.choices)
            raise InputError(f"{error}; write a number{others}", self.place) from None
        low, high = self.knob.low, self.knob.high
        if (low is not None and number < low) or (high is not None and number > high):
            raise InputError(
                f'"{text}" is not accepted; write a number {_between(low, high)}', self.place
            )
        return int(number) if number.is_integer() else number

    def _choice(self, text: str) -> Value:
        offered = dict(self.knob.choices)
        if self.knob.low is not None and text not in offered | {"auto": ""}:
            counts = [self._number(one) for one in re.split(r"\s*[,;]\s*|\s+or\s+", text)]
            return counts if len(counts) > 1 else counts[0]  # type: ignore[return-value]
        if text not in offered:
            by_name = {name: key for key, name in offered.items()}
            if text not in by_name:
                near = near_names(text, (*offered, *by_name))
                near = near or f"; accepted are {_listed(tuple(offered))}"
                raise InputError(f'"{text}" is not accepted{near}', self.place)
            text = by_name[text]
        return self._kept(text)

    def _kept(self, text: str) -> Value:
        """Numbers to choose from are kept as numbers."""
        if text.isdecimal():
            return int(text)
        parts = text.split(", ")
        return [int(part) for part in parts] if all(p.isdecimal() for p in parts) else text

    def _truth(self, text: str) -> bool:
        if text.lower() not in TRUTHS:
            raise InputError(f'"{text}" is not accepted; write yes or no', self.place)
        return TRUTHS[text.lower()]


def _scope(design: Design) -> formulas.Scope:
    """Lengths for every name, so that it is seen which units go together; no two are alike."""
    known = [m for m in known_measurements().values() if m.kind != "mass"]
    lengths = {m.key: (m.low + m.high) / 2 + place / 7 for place, m in enumerate(known)}
    return formulas.Scope(lengths, {STRETCH: 0.2}, design.lengths)


def _power(text: str, scope: formulas.Scope) -> int:
    try:
        return formulas.evaluate(text, scope, Place()).power
    except InputError:
        return 1


def _in_figures(text: str) -> str:
    """The same with fractions in figures, as formulas have them."""

    def spelled(found: re.Match[str]) -> str:
        return f" {unicodedata.normalize('NFKC', found[0])}".replace("\u2044", "/")

    return _VULGAR.sub(spelled, text).strip()


def _between(low: float | None, high: float | None) -> str:
    if low is None:
        return f"up to {high:g}"
    return f"from {low:g}" if high is None else f"from {low:g} to {high:g}"


def _listed(values: tuple[str, ...], most: int = 12) -> str:
    shown = ", ".join(f'"{value}"' for value in values[:most])
    return f"{shown} and others" if len(values) > most else shown
