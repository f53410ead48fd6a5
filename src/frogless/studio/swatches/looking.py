"""A form looked at while it is filled in: what can be read of it is told, the rest is said."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from frogless.draw.svg import svg
from frogless.errors import InputError
from frogless.publish.drawings import inlined
from frogless.stitches.model import Dialect
from frogless.studio.fields import Values
from frogless.studio.swatches.face import face
from frogless.studio.swatches.form import READINGS, WAS, YARN, is_empty, numbers_of, was_of
from frogless.studio.swatches.gauges import Told, headline, told
from frogless.studio.swatches.in_terms import in_terms
from frogless.studio.swatches.surer import Next, measure_next
from frogless.studio.swatches.written import checked, order_of
from frogless.swatch import Swatch, parse_swatch
from frogless.units import Units

ACROSS, UPWARD = ("count", "width", "stretched_width", "mass"), ("rows", "height", "mass")
GOES_WITH: Mapping[str, tuple[str, ...]] = {
    "count": ACROSS,
    "width": ACROSS,
    "rows": UPWARD,
    "height": UPWARD,
    "mass": ("mass",),
    "stretched_width": ("stretched_width",),
    "load": ("load",),
}
"""What cannot be read of a reading when one of its parts has a fault."""

WHOLE_READING = {"of", "state", "key", "numbers", "hook"}
"""Parts without which nothing can be read of a reading."""


@dataclass(frozen=True, slots=True)
class Looked:
    """What a form tells, as far as it can be read.

    Args:
        headline: the main gauge in a line; "" when there is none yet.
        face: a square of the fabric, drawn.
        left_out: places of the readings that have a fault, from 1; they are read without it.
    """

    headline: str = ""
    told: Told | None = None
    next: tuple[Next, ...] = ()
    left_out: tuple[int, ...] = ()
    face: str = ""


def looked(values: Values, errors: Mapping[str, str], units: Units, terms: Dialect) -> Looked:
    """What the form tells; what has a fault is left out.

    Args:
        errors: what is wrong with it, by name of the field.
    """
    numbers = numbers_of(values)
    places = {number: place for place, number in enumerate(numbers, 1)}
    left_out = tuple(places[n] for n in numbers if not is_empty(values, n) and _faulty(errors, n))
    part = _without_faults(values, errors)
    kept = [n for n in numbers if not is_empty(part, n) and not _faulty(errors, n) & WHOLE_READING]
    if not kept:
        return Looked(left_out=left_out)
    part[READINGS] = " ".join(map(str, kept))
    part["name"] = part.get("name") or "swatch"
    made = checked(part)
    if made.errors:
        return Looked(left_out=left_out)
    order = tuple(places[number] for number in order_of(part))
    return replace(_of(parse_swatch(made.text), order, units, terms), left_out=left_out)


def _faulty(errors: Mapping[str, str], number: int) -> set[str]:
    """The parts of a reading that have a fault."""
    start = f"r{number}-"
    return {name.removeprefix(start) for name in errors if name.startswith(start)}


def _without_faults(values: Values, errors: Mapping[str, str]) -> dict[str, str]:
    """The form without what has a fault, and without what means nothing then."""
    part = dict(values)
    for name in errors:
        if name in {field.name for field in YARN} or name == "colour":
            part[name] = ""
    for number in numbers_of(values):
        for fault in _faulty(errors, number):
            for gone in GOES_WITH.get(fault, ()):
                part[f"r{number}-{gone}"] = ""
    return part


def looked_at(text: str, units: Units, terms: Dialect) -> Looked:
    """What a swatch file tells; nothing when it has a fault."""
    try:
        swatch = parse_swatch(text)
    except InputError:
        return Looked()
    return _of(swatch, tuple(range(1, len(swatch.readings) + 1)), units, terms)


def _of(swatch: Swatch, order: tuple[int, ...], units: Units, terms: Dialect) -> Looked:
    found = told(swatch, units, terms)
    gauges = tuple(replace(one, readings=_placed(one.readings, order)) for one in found.gauges)
    said = tuple(
        replace(
            one,
            sentence=in_terms(one.sentence, units, terms).removesuffix("."),
            readings=_placed(one.readings, order),
        )
        for one in found.said
    )
    more = tuple(
        replace(one, reading=order[one.reading - 1] if one.reading else None)
        for one in measure_next(swatch, units, terms)
    )
    line = headline(swatch, units)
    drawn = inlined("swatch", svg(face(swatch, units)), line, "face")
    return Looked(line, replace(found, gauges=gauges, said=said), more, face=drawn)


def _placed(readings: tuple[int, ...], order: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(sorted(order[reading - 1] for reading in readings))


def what_changed(values: Values, old: Values) -> str:
    """What a form changed in a swatch, in words, for undo."""
    numbers = numbers_of(values)
    was = was_of(values)
    added = [n for n in numbers if n not in was and not is_empty(values, n)]
    removed = set(numbers_of(old)) - set(was.values())
    if len(added) + len(removed) == 1:
        return "a reading added" if added else "a reading removed"
    if added or removed:
        return "readings added and removed"
    changed = [place for place, n in enumerate(numbers, 1) if _differs(values, n, old, was.get(n))]
    heads = [k for k in old if not k.startswith("r") and values.get(k, "") != old[k]]
    heads += [k for k in values if k not in old and not k.startswith("r") and values[k]]
    if len(changed) == 1 and not heads:
        return f"reading {changed[0]} changed"
    if not changed and heads:
        return (
            "yarn changed" if all(k.startswith("yarn") for k in heads) else "name or hook changed"
        )
    return "swatch changed"


def _differs(values: Values, number: int, old: Values, place: int | None) -> bool:
    """Whether a reading says something else than the one that had its place before."""
    start = f"r{number}-"
    parts = {name.removeprefix(start): v for name, v in values.items() if name.startswith(start)}
    return place is not None and any(
        text != old.get(f"r{place}-{part}", "") for part, text in parts.items() if part != WAS
    )
