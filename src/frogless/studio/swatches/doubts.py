"""Counts that no swatch is likely to have: asked about beside their fields. Knows no Django."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from frogless.errors import InputError
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.studio.fields import Values, with_unit
from frogless.studio.offers import Offer
from frogless.studio.swatches.form import numbers_of
from frogless.swatch import SAME_WIDTH, shapes, yarn_ranges
from frogless.units import INCH, Units, parse_length, parse_number, show_fine

WIDER = 1.4
"""So far outside the yarn table's own stitches and hooks nobody is asked: lace on a large hook,
a tight hand (from memory)."""

ODDER = 1.2
"""So far outside the proportions that a stitch usually has nobody is asked (own choice)."""

OTHER_UNIT: Mapping[str, str] = {"in": "cm", "cm": "in"}
AGAIN = "Count again, and keep it if it is so."


@dataclass(frozen=True, slots=True)
class Doubt:
    """A question at a field, and what it offers to write instead."""

    field: str
    sentence: str
    offers: tuple[Offer, ...] = ()


@dataclass(frozen=True, slots=True)
class Counted:
    """One reading of a stitch as a form has it; lengths in mm, 0 for what is not written."""

    number: int
    stitch: str
    hook: float
    count: float
    width: float
    rows: float
    height: float

    @property
    def across(self) -> float:
        """The width of a stitch over the hook; 0 when not known."""
        return self.width / self.count / self.hook if self.count and self.hook else 0

    @property
    def shape(self) -> float:
        """The height of a row over the width of a stitch; 0 when not known."""
        if not (self.count and self.rows and self.width):
            return 0
        return self.height / self.rows / (self.width / self.count)


@cache
def usual_across() -> tuple[float, float]:
    """Least and most width of a stitch, in diameters of its hook.

    From the yarn table (Craft Yarn Council, 2018): the fewest stitches go with the largest hook
    of a category and the most with the smallest, which gives 1.1 to 1.7; then `WIDER`.
    """
    found = []
    for one in yarn_ranges().values():
        for count, hook in zip(one.gauge, reversed(one.hook), strict=True):
            if 0 < count < 100 and 0 < hook < 100:
                found.append(4 * INCH / count / hook)
    return min(found) / WIDER, max(found) * WIDER


def doubts(values: Values, units: Units, terms: Dialect) -> tuple[Doubt, ...]:
    """What is to be asked of a form: at most one question for each reading."""
    found = []
    for number in numbers_of(values):
        one = _counted(values, number, units)
        if one is not None and (doubt := _doubt(one, values, units, terms)):
            found.append(doubt)
    return tuple(found)


def mark(found: Iterable[Doubt]) -> str:
    """Stands for just these questions, so that a yes to them is no yes to others; "" for none."""
    told = "\n".join(one.sentence for one in found)
    return hashlib.sha256(told.encode()).hexdigest()[:16] if told else ""


def _counted(values: Values, number: int, units: Units) -> Counted | None:
    """A reading of a stitch; None where there is nothing that could be doubted."""
    start = f"r{number}-"
    of = values.get(f"{start}of", "") or f"stitch:{values.get('stitch', '')}"
    kind, _, stitch = of.partition(":")
    if kind != "stitch" or stitch not in dictionary() or values.get(f"{start}state") == "hung":
        return None
    hook = values.get(f"{start}hook", "") or values.get("hook", "")

    def number_of(part: str) -> float:
        return _read(values.get(start + part, ""))

    def length_of(part: str) -> float:
        return _read(with_unit(values.get(start + part, ""), "size", units), length=True)

    return Counted(
        number,
        stitch,
        _read(with_unit(hook, "fine", units), length=True),
        number_of("count"),
        length_of("width"),
        number_of("rows"),
        length_of("height"),
    )


def _read(text: str, *, length: bool = False) -> float:
    try:
        return max(0.0, parse_length(text) if length else parse_number(text))
    except InputError:
        return 0


def _doubt(one: Counted, values: Values, units: Units, terms: Dialect) -> Doubt | None:
    if not _is_odd_across(one) and not _is_odd_shape(one):
        return None
    name = dictionary()[one.stitch].terms[terms].name
    offers = tuple(_offers(one, values, units))
    asked = f" Did you mean {offers[0].label.removeprefix('Write ')}?" if offers else f" {AGAIN}"
    if _is_odd_across(one):
        low, high = usual_across()
        return Doubt(
            f"r{one.number}-count",
            f"Stitches of {name} {show_fine(round(one.width / one.count, 1), units)} wide are "
            f"{one.across:.1f} times as wide as the hook is thick; {low:.1f} to {high:.1f} times "
            f"is usual.{asked}",
            offers,
        )
    usual = shapes()[one.stitch]
    return Doubt(
        f"r{one.number}-rows",
        f"Rows of {name} would be {one.shape:.1f} times as high as its stitches are wide; "
        f"{usual.low:g} to {usual.high:g} times is usual.{asked}",
        offers,
    )


def _is_odd_across(one: Counted) -> bool:
    low, high = usual_across()
    return bool(one.across) and one.stitch in SAME_WIDTH and not low <= one.across <= high


def _is_odd_shape(one: Counted) -> bool:
    usual = shapes().get(one.stitch)
    if usual is None or not one.shape:
        return False
    return not usual.low / ODDER <= one.shape <= usual.high * ODDER


def _is_usual(one: Counted) -> bool:
    return not _is_odd_across(one) and not _is_odd_shape(one)


def _offers(one: Counted, values: Values, units: Units) -> Iterator[Offer]:
    """Slips that would explain it: stitches and rows exchanged, or the unit of the window."""
    start = f"r{one.number}-"
    count, rows = values.get(f"{start}count", ""), values.get(f"{start}rows", "")
    if one.shape and _is_usual(replace(one, count=one.rows, rows=one.count)):
        words = f"Write {rows} stitches and {count} rows"
        yield Offer(words, ((f"{start}count", rows), (f"{start}rows", count)))
        return
    windows = {part: _other(values.get(start + part, ""), units) for part in ("width", "height")}
    for parts in (("width", "height"), ("width",), ("height",)):
        changed = {part: windows[part] for part in parts if windows[part]}
        lengths: dict[str, Any] = {part: _read(text, length=True) for part, text in changed.items()}
        if len(changed) == len(parts) and _is_usual(replace(one, **lengths)):
            told = " and ".join(dict.fromkeys(changed.values()))
            yield Offer(f"Write {told}", tuple((start + p, t) for p, t in changed.items()))
            return


def _other(written: str, units: Units) -> str:
    """The same number in the other unit, "15 cm" for "15 in"; "" where there is none."""
    whole = with_unit(written, "size", units)
    number, _, unit = whole.rpartition(" ")
    return f"{number} {OTHER_UNIT[unit]}" if number and unit in OTHER_UNIT else ""
