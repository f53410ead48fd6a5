"""What is kept goes out as a bundle, and a bundle comes in: all of it, or nothing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Literal

from django.db import transaction
from django.utils.dateparse import parse_datetime

from frogless.errors import InputError
from frogless.studio.library import shelf
from frogless.studio.library.bundle import (
    GONE,
    OWN_FILE,
    Bundle,
    KeptDocument,
    KeptGarment,
    KeptVersion,
)
from frogless.studio.library.models import Document, Garment, Step, Version

News = Literal["new", "same", "second"]

KIND_NAMES = {"body": "body", "swatch": "swatch", "design": "design", "garment": "garment"}


@dataclass(frozen=True, slots=True)
class Coming:
    """One thing that would come in.

    Args:
        news: "new", "same" as what is there, or "second" of a name that is taken.
        versions: named versions that come with it.
    """

    kind: str
    name: str
    news: News
    versions: int = 0


@dataclass(frozen=True, slots=True)
class Brought:
    """How many things came in, and how many were there already."""

    new: int = 0
    second: int = 0
    same: int = 0


def kept() -> Bundle:
    """The whole library, without what is in the bin."""
    documents = tuple(
        KeptDocument(one.ref, one.kind, one.name, one.text, _versions(one))
        for one in Document.objects.filter(removed=False).order_by("kind", "name", "pk")
    )
    garments = tuple(
        KeptGarment(
            one.name,
            one.design,
            one.body,
            tuple(one.swatches),
            one.terms,
            one.units,
            one.hand,
        )
        for one in Garment.objects.filter(removed=False).order_by("name", "pk")
    )
    return Bundle(documents, garments)


def _versions(document: Document) -> tuple[KeptVersion, ...]:
    return tuple(
        KeptVersion(one.name, one.text, one.made.isoformat())
        for one in document.versions.order_by("made", "pk")
    )


Here = dict[tuple[str, str], Document]
"""What is on the shelves, by kind and name: no two of a kind have one name."""


def coming(bundle: Bundle) -> tuple[Coming, ...]:
    """What would come in, and how it stands to what is there."""
    here = _here()
    likes = {one.key: _like(one, here) for one in bundle.documents}
    refs = {key: like.ref for key, like in likes.items() if like is not None}
    return (
        *(_coming(one, here) for one in bundle.documents),
        *(_garment_coming(one, refs) for one in bundle.garments),
    )


def _here() -> Here:
    shelved = Document.objects.filter(removed=False).prefetch_related("versions")
    return {(one.kind, one.name): one for one in shelved}


def _like(one: KeptDocument, here: Here) -> Document | None:
    """The document of one's own that is the same: kind, name and text."""
    other = here.get((one.kind, one.name))
    return other if other is not None and other.text == one.text else None


def _coming(one: KeptDocument, here: Here) -> Coming:
    like = _like(one, here)
    if like is not None:
        more = [version for version in one.versions if not _has_version(like, version)]
        return Coming(one.kind, one.name, "same", len(more))
    news: News = "second" if (one.kind, one.name) in here else "new"
    return Coming(one.kind, one.name, news, len(one.versions))


def _has_version(document: Document, version: KeptVersion) -> bool:
    return any((v.name, v.text) == (version.name, version.text) for v in document.versions.all())


def _garment_coming(garment: KeptGarment, refs: Mapping[str, str]) -> Coming:
    """Whether there is such a garment already, made of the same documents."""
    named = _renamed(garment, refs)
    same = named is not None and _found(named)
    return Coming("garment", garment.name, "same" if same else "new")


def _renamed(garment: KeptGarment, refs: Mapping[str, str]) -> KeptGarment | None:
    """The garment with its documents named as they are here; None when one is not here."""

    def named(ref: str) -> str | None:
        return refs.get(ref) if ref.startswith((OWN_FILE, "own:")) else ref

    design, body = named(garment.design), named(garment.body)
    swatches = tuple(named(ref) for ref in garment.swatches)
    if design is None or body is None or None in swatches:
        return None
    known = tuple(ref for ref in swatches if ref is not None)
    return replace(garment, design=design, body=body, swatches=known)


def _found(one: KeptGarment) -> bool:
    alike = Garment.objects.filter(
        removed=False,
        name=one.name,
        design=one.design,
        body=one.body,
        terms=one.terms,
        units=one.units,
        hand=one.hand,
    )
    return any(tuple(garment.swatches) == one.swatches for garment in alike)


@transaction.atomic
def bring_in(bundle: Bundle) -> Brought:
    """Puts a bundle on the shelves; nothing that is there is changed.

    Raises:
        InputError: something of it cannot be kept; then nothing is.
    """
    count: dict[News, int] = {"new": 0, "second": 0, "same": 0}
    refs: dict[str, str] = {}
    here = _here()
    for one in bundle.documents:
        count[_coming(one, here).news] += 1
        like = _like(one, here)
        document = like or _created(one)
        here[one.kind, document.name] = document
        refs[one.key] = document.ref
        for version in one.versions:
            if like is None or not _has_version(like, version):
                _keep_version(document, version)
    for garment in bundle.garments:
        named = _renamed(garment, refs)
        if named is None:
            raise InputError(f'the garment "{garment.name}" is made of what is not here')
        there = _found(named)
        count["same" if there else "new"] += 1
        if not there:
            _create_garment(named)
    return Brought(count["new"], count["second"], count["same"])


def _created(one: KeptDocument) -> Document:
    if len(one.text) > shelf.LONGEST_TEXT:
        raise InputError(f'"{one.name}" is longer than is kept')
    taken = shelf.documents(one.kind).filter(name=one.name).exists()
    if taken or one.name != " ".join(one.name.split()):
        return shelf.create(one.kind, one.text, one.name)
    # A name that is free is kept to the letter, however long it is.
    document = Document.objects.create(kind=one.kind, name=one.name, text=one.text)
    Step.objects.create(document=document, number=1, text=one.text)
    return document


def _keep_version(document: Document, version: KeptVersion) -> None:
    row = Version.objects.create(document=document, name=version.name, text=version.text)
    made = _time(version.made)
    if made is not None:
        Version.objects.filter(pk=row.pk).update(made=made)


def _time(text: str) -> datetime | None:
    try:
        found = parse_datetime(text)
    except ValueError:
        return None
    return found if found is not None and found.tzinfo is not None else None


def _create_garment(one: KeptGarment) -> None:
    Garment.objects.create(
        name=one.name,
        design=one.design or GONE,
        body=one.body or GONE,
        swatches=list(one.swatches),
        terms=one.terms,
        units=one.units,
        hand=one.hand,
    )
