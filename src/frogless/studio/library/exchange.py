"""What is kept goes out as a bundle, and a bundle comes in: all of it, or nothing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
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
    longest,
)
from frogless.studio.library.models import Document, Garment, Step, Version

News = Literal["new", "same", "second", "mended"]

KIND_NAMES = {"body": "body", "swatch": "swatch", "design": "design", "garment": "garment"}


@dataclass(frozen=True, slots=True)
class Coming:
    """One thing that would come in.

    Args:
        news: "new", "same" as what is there, "second" of a name that is taken, or "mended": a
            garment that is there gets back what it was made of.
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
    bundle, here = _named(bundle), _here()
    likes = {one.key: _like(one, here) for one in bundle.documents}
    refs = {key: like.ref for key, like in likes.items() if like is not None}
    return (
        *(_coming(one, here) for one in bundle.documents),
        *(_garment_coming(one, refs) for one in bundle.garments),
    )


def _named(bundle: Bundle) -> Bundle:
    """The bundle with names as they are kept: without what nobody sees, and never nothing."""
    documents = tuple(
        replace(
            one,
            name=shelf.clean_name(one.name) or f"My {one.kind}",
            versions=tuple(
                replace(version, name=shelf.clean_name(version.name) or "Version")
                for version in one.versions
            ),
        )
        for one in bundle.documents
    )
    garments = tuple(
        replace(one, name=shelf.clean_name(one.name) or "Garment") for one in bundle.garments
    )
    return Bundle(documents, garments)


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
    if named is not None and _found(named):
        return Coming("garment", garment.name, "same")
    return Coming("garment", garment.name, "mended" if _bereft(garment, refs) else "new")


def _bereft(garment: KeptGarment, refs: Mapping[str, str]) -> Garment | None:
    """The garment that is the same but for documents that are not here any more.

    Args:
        refs: of the documents of the bundle that are here already.
    """

    def fits(here: str, coming: str) -> bool:
        own = coming.startswith((OWN_FILE, "own:"))
        return _is_gone(here) or here == (refs.get(coming) if own else coming)

    alike = Garment.objects.filter(
        removed=False,
        name=garment.name,
        terms=garment.terms,
        units=garment.units,
        hand=garment.hand,
    )
    coming = (garment.design or GONE, garment.body or GONE, *garment.swatches)
    for one in alike:
        here = (one.design, one.body, *one.swatches)
        lacks = any(_is_gone(ref) and not _is_gone(new) for ref, new in _pairs(here, coming))
        if len(here) == len(coming) and lacks and all(fits(*pair) for pair in _pairs(here, coming)):
            return one
    return None


def _pairs(here: Sequence[str], coming: Sequence[str]) -> tuple[tuple[str, str], ...]:
    return tuple(zip(here, coming, strict=False))


def _is_gone(ref: str) -> bool:
    """Whether a ref stands for nothing that is kept; what is in the bin is not."""
    if ref == GONE:
        return True
    where, _, key = ref.partition(":")
    if where != "own":
        return False
    known = key.isdecimal() and len(key) < 19
    return not (known and Document.objects.filter(pk=int(key), removed=False).exists())


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
    """Puts a bundle on the shelves; what is there stays, a garment that lost documents gets them.

    Raises:
        InputError: something of it cannot be kept; then nothing is.
    """
    count: dict[News, int] = {"new": 0, "second": 0, "same": 0}
    refs: dict[str, str] = {}
    bundle, here = _named(bundle), _here()
    for one in bundle.documents:
        count[_coming(one, here).news] += 1
        like = _like(one, here)
        document = like or _created(one)
        here[one.kind, document.name] = document
        refs[one.key] = document.ref
        for version in one.versions:
            if like is None or not _has_version(like, version):
                _keep_version(document, version)
    before = set(Garment.objects.values_list("pk", flat=True))
    for garment in bundle.garments:
        named = _renamed(garment, refs)
        if named is None:
            raise InputError(f'the garment "{garment.name}" is made of what is not here')
        there = _found(named)
        count["same" if there else "new"] += 1
        if there:
            continue
        bereft = _bereft(named, {ref: ref for ref in refs.values()})
        # What has just come in is whole as it is; each that was there gets its own back once.
        if bereft is None or bereft.pk not in before:
            _create_garment(named)
        else:
            _reconnect(bereft, named)
            before.remove(bereft.pk)
    return Brought(count["new"], count["second"], count["same"])


def _created(one: KeptDocument) -> Document:
    if len(one.text) > longest(one.kind):
        raise InputError(f'"{one.name}" is longer than is kept')
    if shelf.documents(one.kind).filter(name=one.name).exists():
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
        return found.astimezone(UTC) if found is not None and found.tzinfo is not None else None
    except (ValueError, OverflowError):
        return None


def _reconnect(garment: Garment, one: KeptGarment) -> None:
    """Gives a garment what it was made of and lost."""
    garment.design, garment.body = one.design or GONE, one.body or GONE
    garment.swatches = list(one.swatches)
    garment.save(update_fields=["design", "body", "swatches"])


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
