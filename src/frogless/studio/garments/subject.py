"""What a page is about: a garment of the person's own, or an example that is looked at."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, cast
from urllib.parse import urlencode

from django.http import QueryDict
from django.shortcuts import get_object_or_404
from django.urls import reverse

from frogless.draft import Texts
from frogless.errors import InputError
from frogless.stitches.model import Dialect
from frogless.studio import refs
from frogless.studio.garments.drafts import Hand, Order
from frogless.studio.library.models import Garment
from frogless.studio.library.preferences import Preferred
from frogless.studio.refs import Found
from frogless.toml_text import table
from frogless.units import Units

LOOK_BODY = "example:dancer-3"
LOOK_SWATCH = "example:light-cotton"

SHOWN = {"terms": ("us", "uk"), "units": ("cm", "in"), "hand": ("right", "left")}


@dataclass(frozen=True, slots=True)
class Subject:
    """What it is made of, by ref, and how it is shown.

    Args:
        key: of the example that is looked at; "" for a garment.
    """

    name: str
    design: str
    body: str
    swatches: tuple[str, ...]
    terms: Dialect
    units: Units
    hand: Hand
    garment: Garment | None = None
    key: str = ""

    @property
    def affinity(self) -> str:
        """Which worker knows its drafts."""
        return f"garment-{self.garment.pk}" if self.garment else f"look-{self.key}"

    @property
    def query(self) -> str:
        """What addresses of an example carry, with its question mark; "" for a garment."""
        if self.garment:
            return ""
        chosen = [("body", self.body), *(("swatch", ref) for ref in self.swatches)]
        shown = [(name, str(getattr(self, name))) for name in SHOWN]
        return "?" + urlencode([*chosen, *shown])

    def address(self, room: str) -> str:
        """Of one of its rooms."""
        if self.garment:
            return reverse("garments:room", args=[self.garment.pk, room])
        return reverse("garments:look", args=[self.key, room]) + self.query

    def why(self) -> str:
        """The beginning of the addresses of its becauses."""
        if self.garment:
            return reverse("garments:why", args=[self.garment.pk, "-"]).removesuffix("-/")
        return reverse("garments:look_why", args=[self.key, "-"]).removesuffix("-/")


@dataclass(frozen=True, slots=True)
class Made:
    """What the refs of a subject stand for, as far as that is there; else in a sentence why not."""

    design: Found | None
    body: Found | None
    swatches: tuple[Found, ...]
    gone: tuple[tuple[str, str], ...] = ()

    def order(self, subject: Subject) -> Order | None:
        """What is to be drafted; None when something is gone."""
        if self.gone or self.design is None or self.body is None or not self.swatches:
            return None
        letters = ("", *colours(self.design.text)[1:])
        letters += ("",) * len(self.swatches)
        swatches = tuple(
            of_colour(one.text, letter) for one, letter in zip(self.swatches, letters, strict=False)
        )
        texts = Texts(self.design.text, self.body.text, swatches)
        return Order(texts, subject.terms, subject.units, subject.hand)


def garment_of(pk: int) -> Garment:
    """The garment of a key; 404 when there is none."""
    return get_object_or_404(Garment, pk=pk, removed=False)


def of_garment(garment: Garment) -> Subject:
    """The subject that a garment is."""
    return Subject(
        garment.name,
        garment.design,
        garment.body,
        tuple(garment.swatches),
        cast("Dialect", garment.terms),
        cast("Units", garment.units),
        cast("Hand", garment.hand),
        garment,
    )


def of_example(key: str, query: QueryDict, likes: Preferred) -> Subject:
    """The subject that an example is, with what was chosen in the address.

    Raises:
        InputError: there is no such example.
    """
    design = refs.resolve("design", f"example:{key}")
    subject = Subject(
        design.name,
        design.ref,
        query.get("body") or LOOK_BODY,
        tuple(ref for ref in query.getlist("swatch") if ref) or (LOOK_SWATCH,),
        likes.terms,
        likes.units,
        likes.hand,
        key=key,
    )
    return shown_as(subject, query)


def shown_as(subject: Subject, given: Mapping[str, Any]) -> Subject:
    """The subject in the terms and units and for the hand that were chosen."""
    good = {name: given[name] for name, known in SHOWN.items() if given.get(name) in known}
    return replace(subject, **good)


def made_of(subject: Subject) -> Made:
    """What its refs stand for."""
    gone: list[tuple[str, str]] = []

    def find(kind: str, ref: str) -> Found | None:
        try:
            return refs.resolve(kind, ref)
        except InputError as error:
            gone.append((kind, str(error)))
            return None

    design, body = find("design", subject.design), find("body", subject.body)
    swatches = [find("swatch", ref) for ref in subject.swatches]
    if not swatches:
        gone.append(("swatch", "no swatch is chosen; choose one"))
    return Made(design, body, tuple(one for one in swatches if one), tuple(gone))


def colours(design_text: str) -> tuple[str, ...]:
    """The letters of the colours that a design asks for, the main one first; none for one colour."""
    asked = table(design_text).get("colours")
    names = asked.get("names") if isinstance(asked, dict) else None
    return tuple(sorted(names)) if isinstance(names, dict) else ()


def of_colour(swatch_text: str, letter: str) -> str:
    """A swatch as that of a colour; one that says its own colour is left as it is."""
    told = table(swatch_text)
    plain = letter and told and not told.get("colour")
    return swatch_text if not plain else f'colour = "{letter}"\n{swatch_text}'
