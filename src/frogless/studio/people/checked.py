"""What there is to say of a body while it is filled in: faults, questions, estimates, by field."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

import tomlkit

from frogless.body.estimate import complete, estimates
from frogless.body.load import parse_body
from frogless.body.measurements import Body, Measurement, known_measurements
from frogless.body.plausible import question
from frogless.errors import Fault, InputError
from frogless.studio.fields import with_noun
from frogless.studio.needs import measurement_name
from frogless.studio.people.body_text import FILE
from frogless.units import Units, show_length

SPREAD = 1.96
"""Standard deviations on either side that hold 19 of 20."""

ROUNDS = 4
"""Faults show one after the other: what is no length first, then what no body has, then pairs."""

_KEYS = re.compile(rf"\b({'|'.join(known_measurements())})\b")


@dataclass(frozen=True, slots=True)
class Checked:
    """What was found.

    Args:
        body: what the text says; None when something in it is refused.
        errors: one sentence for each field that is refused; of "" what belongs to no field.
        questions: for each field that is implausible.
        estimates: for each measurement that was not taken: its estimate, or why there is none.
    """

    body: Body | None
    errors: Mapping[str, str] = field(default_factory=dict)
    questions: Mapping[str, str] = field(default_factory=dict)
    estimates: Mapping[str, str] = field(default_factory=dict)


def checked(text: str, units: Units) -> Checked:
    """What a body file comes to; questions and estimates are those of what is good in it."""
    faults: list[tuple[str, str]] = []
    body = _read(text, faults)
    told = _joined(faults)
    if body is None:
        return Checked(None, told)
    return Checked(None if told else body, told, _questions(body), estimated(body, units))


def _read(text: str, faults: list[tuple[str, str]]) -> Body | None:
    """The body without the fields that are refused, as far as there is one; adds their faults."""
    rest = text
    for _ in range(ROUNDS):
        try:
            return parse_body(rest, FILE)
        except InputError as error:
            found = [(field_of(fault), _told(fault)) for fault in error.faults]
        faults += found
        try:
            rest = _without(rest, {name for name, _ in found})
        except (ValueError, KeyError, AttributeError, TypeError):
            break
    return None


def field_of(fault: Fault) -> str:
    """The field that a fault of a body file belongs to; "" for none."""
    key = fault.place.key.removeprefix("measurements.")
    return key if key in (*known_measurements(), "name", "age") else ""


def _told(fault: Fault) -> str:
    """The sentence of a fault, with what it is about."""
    name = field_of(fault)
    return with_noun(in_words(fault.message), f"the {name.replace('_', ' ')}" if name else "this")


def _without(text: str, names: set[str]) -> str:
    data: dict[str, Any] = tomlkit.parse(text).unwrap()
    sizes = {key: size for key, size in data["measurements"].items() if key not in names}
    kept: dict[str, Any] = {
        key: data[key] for key in ("format", "name", "age") if key in data and key not in names
    }
    return tomlkit.dumps({"name": "A body", **kept, "measurements": sizes})


def _questions(body: Body) -> dict[str, str]:
    """Questions by the field that they begin with."""
    return _joined((one.partition(" ")[0], in_words(one)) for one in question(body))


def _joined(told: Iterable[tuple[str, str]]) -> dict[str, str]:
    """Sentences by field, those of one field after each other."""
    found: dict[str, list[str]] = {}
    for name, words in told:
        sentence = words[:1].upper() + words[1:]
        found.setdefault(name, []).append(sentence.removesuffix("."))
    return {name: _sentences(parts) for name, parts in found.items()}


def _sentences(parts: Iterable[str]) -> str:
    """Each closed with a stop, unless it asks."""
    return " ".join(part if part.endswith("?") else f"{part}." for part in parts)


def estimated(body: Body, units: Units) -> dict[str, str]:
    """By measurement that was not taken: "about 19 cm, ± 3.5 cm, from stature", or why not."""
    keys = [key for key in known_measurements() if body.get(key) is None]
    whole = complete(body, (), optional=keys)
    return {
        key: estimate_words(one, units) if (one := whole.get(key)) else _no_estimate(body, key)
        for key in keys
    }


def estimate_words(one: Measurement, units: Units) -> str:
    """An estimate with how far off it may be, and what it is made from."""
    about = show_length(one.value.value, units)
    off = show_length(SPREAD * one.value.uncertainty, units)
    source = one.source.removeprefix("estimated ")
    return f"Estimated: about {about}, ± {off}, {source}."


def _no_estimate(body: Body, key: str) -> str:
    able = [one for one in estimates() if one.key == key]
    if not able:
        return ""
    if body.may_be_child:
        return "Not estimated for a child: measure it where a design needs it."
    sources = [one.from_key for one in able if one.from_key and body.get(one.from_key) is None]
    if sources:
        named = " or ".join(measurement_name(source).lower() for source in sources)
        return f"Can be estimated once {named} is filled in."
    return "Not estimated: the survey met nobody of this size. Measure it where a design needs it."


def can_be_estimated(key: str) -> bool:
    """Whether any survey tells it."""
    return any(one.key == key for one in estimates())


def in_words(sentence: str) -> str:
    """A sentence with measurements called as forms call them, not as files do."""
    return _KEYS.sub(lambda key: key[0].replace("_", " "), sentence)
