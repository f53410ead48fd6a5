"""Fields of forms: what each is called, which unit a bare number in it has, how it is shown."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from frogless.studio.offers import Offer
from frogless.units import Units

Values = Mapping[str, str]
"""What a form holds, by name of the field."""

UNITS: Mapping[str, Mapping[Units, str]] = {
    "size": {"cm": "cm", "in": "in"},
    "fine": {"cm": "mm", "in": "mm"},
    "long": {"cm": "m", "in": "yd"},
    "mass": {"cm": "g", "in": "oz"},
    "weight": {"cm": "kg", "in": "lb"},
}
"""The unit of a bare number by kind of field and the units chosen for the page."""

VERBS = {"must", "is", "are", "has", "cannot", "needs"}
"""What the sentences of faults begin with where they leave out what they are about."""

BARE = re.compile(r"[-−]?\s*[\d½¼¾⅛⅜⅝⅞][\d\s.,/½¼¾⅛⅜⅝⅞-]*")


@dataclass(frozen=True, slots=True)
class Field:
    """One field.

    Args:
        kind: which unit a bare number has, a key of `UNITS`; "" when it has none.
        choices: value and label of each choice; none for a field that is written in.
        picture: address of a drawing that shows how it is taken; "" for none.
    """

    name: str
    label: str
    kind: str = ""
    hint: str = ""
    needed: bool = False
    choices: tuple[tuple[str, str], ...] = ()
    picture: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Fields under one title; `folded` ones are opened by whoever wants them."""

    title: str
    fields: tuple[Field, ...]
    folded: bool = False


@dataclass(frozen=True, slots=True)
class Filled:
    """A field as a page shows it: with its value, its unit, what is wrong and what is remarked.

    Args:
        question: what is asked of its value, and `offers` what could be written instead.
    """

    field: Field
    value: str = ""
    unit: str = ""
    error: str = ""
    remark: str = ""
    question: str = ""
    offers: tuple[Offer, ...] = ()


def filled(
    fields: Iterable[Field],
    values: Values,
    units: Units,
    errors: Mapping[str, str] | None = None,
    remarks: Mapping[str, str] | None = None,
) -> tuple[Filled, ...]:
    """The fields for the template `studio/_field.html`."""
    wrong, said = errors or {}, remarks or {}
    return tuple(
        Filled(
            one,
            values.get(one.name, ""),
            UNITS[one.kind][units] if one.kind else "",
            wrong.get(one.name, ""),
            said.get(one.name, ""),
        )
        for one in fields
    )


def with_unit(text: str, kind: str, units: Units) -> str:
    """What was written, with the unit of the page when it has none of its own."""
    text = text.strip()
    return f"{text} {UNITS[kind][units]}" if kind and BARE.fullmatch(text) else text


def with_noun(sentence: str, noun: str) -> str:
    """A sentence that begins with its verb, "must be more than 0", with what it is about."""
    verb = sentence.split(" ", 1)[0].lower()
    return f"{noun} {sentence[:1].lower()}{sentence[1:]}" if verb in VERBS else sentence


def respelled(values: Values, fields: Iterable[Field], old: Units, new: Units) -> dict[str, str]:
    """The same sizes for a page of other units: nothing is converted, units are written out."""
    changed = dict(values)
    for field in fields:
        if not field.kind:
            continue
        text = with_unit(values.get(field.name, ""), field.kind, old)
        bare = text.removesuffix(UNITS[field.kind][new]).rstrip()
        changed[field.name] = bare if BARE.fullmatch(bare) else text
    return {name: text for name, text in changed.items() if text or name in values}
