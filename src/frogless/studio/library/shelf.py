"""Saving, renaming, deleting and bringing back documents; keeping the last form."""

from __future__ import annotations

from collections.abc import Mapping

from django.db import transaction
from django.db.models import QuerySet

from frogless.errors import InputError
from frogless.studio.library.models import Document, LastForm

KINDS = ("body", "swatch", "design")
LONGEST_NAME = 200
KEPT = 1
"""The key of the only row of `LastForm`."""


def documents(kind: str) -> QuerySet[Document]:
    """What is on the shelf, by name."""
    return Document.objects.filter(kind=kind, removed=False)


def in_bin() -> QuerySet[Document]:
    """What was deleted or replaced since the studio was started, the last one first."""
    return Document.objects.filter(removed=True).order_by("-changed")


def found(key: str) -> Document | None:
    """The document on the shelf that has a key as forms send it."""
    there = Document.objects.filter(removed=False)
    return there.filter(pk=int(key)).first() if key.isdecimal() and len(key) < 19 else None


@transaction.atomic
def save(kind: str, name: str, text: str) -> tuple[Document, bool]:
    """Puts a document on the shelf. An older one of that name goes to the bin.

    Returns:
        The document, and whether there was an older one.

    Raises:
        InputError: the name is empty or too long.
    """
    name = _checked(name)
    same = documents(kind).filter(name=name)
    if unchanged := same.filter(text=text).first():
        return unchanged, False
    replaced = _to_bin(same)
    return Document.objects.create(kind=kind, name=name, text=text), replaced


def rename(document: Document, name: str) -> None:
    """Gives a document another name.

    Raises:
        InputError: the name is empty, too long or taken.
    """
    name = _checked(name)
    if documents(document.kind).filter(name=name).exclude(pk=document.pk).exists():
        raise InputError(f'there is a {document.kind} called "{name}" already; choose another name')
    document.name = name
    document.save()


def remove(document: Document) -> None:
    """Puts a document into the bin."""
    document.removed = True
    document.save()


@transaction.atomic
def bring_back(document: Document) -> None:
    """Takes a document out of the bin; one that has its name by now goes there instead."""
    _to_bin(documents(document.kind).filter(name=document.name))
    document.removed = False
    document.save()


def empty_bin() -> None:
    """What is in the bin is gone for good."""
    in_bin().delete()


def keep(values: Mapping[str, str]) -> None:
    """Keeps the form as it is."""
    LastForm.objects.update_or_create(pk=KEPT, defaults={"values": dict(values)})


def kept() -> Mapping[str, str] | None:
    """The form as it was left, or None."""
    last = LastForm.objects.filter(pk=KEPT).first()
    return last.values if last else None


def forget() -> None:
    """Keeps no form any more."""
    LastForm.objects.all().delete()


def _to_bin(some: QuerySet[Document]) -> bool:
    documents = list(some)
    for document in documents:
        remove(document)
    return bool(documents)


def _checked(name: str) -> str:
    name = " ".join(name.split())
    if not name:
        raise InputError("a name is needed to save it under")
    if len(name) > LONGEST_NAME:
        raise InputError(f"a name has {LONGEST_NAME} letters at most, this one {len(name)}")
    return name
