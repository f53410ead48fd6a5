"""The designs there are: the person's own and the examples, each with its facts and its picture."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.errors import FroglessError
from frogless.studio import refs
from frogless.studio.designs import pictures
from frogless.studio.designs.facts import Facts, facts
from frogless.studio.designs.kept import Kept, key_of
from frogless.studio.designs.pictures import Of, Picture, Worn
from frogless.studio.designs.standing import tries
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.work.pool import TooMuchWork, pool
from frogless.units import Units

_facts: Kept[Facts] = Kept(512)
_pictures: Kept[Picture] = Kept(256)


@dataclass(frozen=True, slots=True)
class Entry:
    """A design; `document` is None for an example."""

    ref: str
    name: str
    text: str
    facts: Facts
    document: Document | None = None

    @property
    def mark(self) -> str:
        """Changes with the text, so that an old picture is not shown for a new one."""
        return key_of(self.text)[:12]


def entries() -> tuple[Entry, ...]:
    """All designs, own ones first."""
    own = (
        _entry(refs.Found(d.ref, "design", d.name, d.text, d)) for d in shelf.documents("design")
    )
    shipped = (refs.resolve("design", f"example:{key}") for key in examples("design"))
    return (*own, *map(_entry, shipped))


def entry(ref: str) -> Entry:
    """One design.

    Raises:
        InputError: there is none (any more).
    """
    return _entry(refs.resolve("design", ref))


def _entry(found: refs.Found) -> Entry:
    return Entry(found.ref, found.name, found.text, facts_of(found), found.document)


def facts_of(found: refs.Found) -> Facts:
    """What is known of a design without drafting it; what cannot be read has a fault."""

    def ask() -> Facts:
        if found.document is None:
            return facts(found.text)
        try:
            return pool().ask(f"design {found.ref}", facts, found.text)
        except FroglessError as error:
            return Facts(fault=str(error))

    return _facts.made(key_of(found.text), ask)


def picture_key(one: Entry, of: Of, units: Units) -> str:
    """What a picture depends on: the same key, the same picture."""
    return key_of(one.text, tries(one.ref), of, units)


def known_picture(key: str) -> Picture | None:
    """A picture that was made before."""
    return _pictures.get(key)


def picture(one: Entry, of: Of, units: Units) -> Picture:
    """The picture of a design, made when it is not there yet."""
    worn: tuple[Worn, ...] = tries(one.ref)
    key = key_of(one.text, worn, of, units)
    known = _pictures.get(key)
    if known is not None:
        return known
    try:
        made = pool().ask(f"design {one.ref}", pictures.picture, one.text, worn, of, units)
    except TooMuchWork as error:
        # Kept as well: whoever opens the gallery again need not wait for it again.
        made = pictures.placeholder(str(error).capitalize())
    except FroglessError as error:
        # Whatever else keeps it from being drawn may be over the next time that it is asked for.
        told = str(error)
        return pictures.placeholder(told[:1].upper() + told[1:])
    return _pictures.keep(key, made)
