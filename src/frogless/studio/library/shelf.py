"""Documents with their history: made, changed, undone, named, put into the bin, deleted for good."""

from __future__ import annotations

import unicodedata

from django.db import connection, transaction
from django.db.models import QuerySet

from frogless.errors import InputError
from frogless.studio.library.bundle import longest
from frogless.studio.library.models import Document, Garment, Step, Version
from frogless.toml_text import LONGEST, table

KINDS = ("body", "swatch", "design", "pattern")
LONGEST_NAME = 200
LONGEST_TEXT = LONGEST
"""Letters: what is kept can be read."""

MOST_STEPS = 200
"""Older ones than so many are forgotten; what has a name stays."""


class Conflict(InputError):
    """The document was changed from another page since this one was opened."""

    def __init__(self, document: Document) -> None:
        self.document = document
        super().__init__(
            f'"{document.name}" was changed on another page since you opened this one; '
            "nothing was overwritten"
        )


def documents(kind: str) -> QuerySet[Document]:
    """What is on the shelf, by name."""
    return Document.objects.filter(kind=kind, removed=False)


def in_bin() -> QuerySet[Document]:
    """What was deleted, the last one first."""
    return Document.objects.filter(removed=True).order_by("-changed")


def found(kind: str, key: int) -> Document:
    """The document on the shelf that has a key.

    Raises:
        InputError: there is none of that kind.
    """
    document = documents(kind).filter(pk=key).first()
    if document is None:
        raise InputError(f"this {kind} is not there any more; choose another")
    return document


@transaction.atomic
def create(kind: str, text: str, name: str = "") -> Document:
    """Puts a new document on the shelf, under a name that is free.

    Raises:
        InputError: the text is too long.
    """
    _check_text(kind, text)
    free = free_name(kind, name or own_name(text) or f"My {kind}")
    document = Document.objects.create(kind=kind, name=free, text=text)
    Step.objects.create(document=document, number=1, text=text)
    return document


@transaction.atomic
def change(key: int, base: int, text: str, told: str = "") -> Document:
    """Another text for a document. What was undone before is forgotten.

    Args:
        base: the revision that the change was made from.
        told: what changed, in words, for undo.

    Raises:
        Conflict: the document has another revision by now.
        InputError: it is not there any more, or the text is too long.
    """
    document = _at(key, base)
    _check_text(document.kind, text)
    if text == document.text:
        return document
    document.steps.filter(number__gt=document.step).delete()
    number = document.step + 1
    Step.objects.create(document=document, number=number, text=text, told=told[:LONGEST_NAME])
    document.steps.filter(number__lte=number - MOST_STEPS).delete()
    was, now = own_name(document.text), own_name(text)
    if now and now != was:
        document.name = free_name(document.kind, now, but=document)
    return _moved(document, number, text)


@transaction.atomic
def undo(key: int, base: int) -> Document:
    """One step back; the first step stays.

    Raises:
        Conflict, InputError: as `change`.
    """
    return _walk(key, base, -1)


@transaction.atomic
def redo(key: int, base: int) -> Document:
    """One step forward again; the last step stays.

    Raises:
        Conflict, InputError: as `change`.
    """
    return _walk(key, base, +1)


def can_undo(document: Document) -> str | None:
    """What undo would take back, in words ("" when nobody said); None when there is nothing."""
    if not document.steps.filter(number=document.step - 1).exists():
        return None
    return document.steps.get(number=document.step).told


def can_redo(document: Document) -> str | None:
    """As `can_undo`, forward."""
    step = document.steps.filter(number=document.step + 1).first()
    return None if step is None else step.told


def name_version(document: Document, name: str) -> Version:
    """Keeps the text as it is under a name.

    Raises:
        InputError: the name is empty or too long.
    """
    return Version.objects.create(document=document, name=checked_name(name), text=document.text)


@transaction.atomic
def rename(document: Document, name: str) -> None:
    """Gives a document another name.

    Raises:
        InputError: the name is empty, too long or taken.
    """
    name = checked_name(name)
    if documents(document.kind).filter(name=name).exclude(pk=document.pk).exists():
        raise InputError(f'there is a {document.kind} called "{name}" already; choose another name')
    document.name = name
    document.save(update_fields=["name", "changed"])


def remove(document: Document) -> None:
    """Puts a document into the bin."""
    document.removed = True
    document.save(update_fields=["removed", "changed"])


@transaction.atomic
def bring_back(document: Document) -> None:
    """Takes a document out of the bin, under a name that is free."""
    document.name = free_name(document.kind, document.name)
    document.removed = False
    document.save(update_fields=["name", "removed", "changed"])


def delete_for_good(document: Document) -> bool:
    """The document and all its history are overwritten; whether they are already, as `forget_traces`."""
    document.delete()
    return forget_traces()


def empty_bin() -> bool:
    """What is in the bin is gone for good; whether it is already, as `forget_traces`."""
    in_bin().delete()
    Garment.objects.filter(removed=True).delete()
    return forget_traces()


def forget_traces() -> bool:
    """Deleted rows are overwritten at once; this clears them out of the write-ahead log too.

    Returns:
        Whether it could: not while another program reads the library.
    """
    with connection.cursor() as cursor:
        busy, *_ = cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    return not busy


def own_name(text: str) -> str:
    """What a document calls itself; "" when it cannot say."""
    data = table(text)
    name = data.get("title") or data.get("name") or ""
    return clean_name(name)[:LONGEST_NAME] if isinstance(name, str) else ""


def free_name(kind: str, name: str, but: Document | None = None) -> str:
    """The name, or where it is taken the name with the first number that is free."""
    name = clean_name(name)[: LONGEST_NAME - 6] or f"My {kind}"
    others = documents(kind).exclude(pk=but.pk) if but else documents(kind)
    taken = set(others.filter(name__startswith=name).values_list("name", flat=True))
    names = (name, *(f"{name} {number}" for number in range(2, len(taken) + 3)))
    return next(one for one in names if one not in taken)


def checked_name(name: str) -> str:
    """A name as it is kept: blanks folded.

    Raises:
        InputError: it is empty or too long.
    """
    name = clean_name(name)
    if not name:
        raise InputError("a name is needed to save it under")
    if len(name) > LONGEST_NAME:
        raise InputError(f"a name has {LONGEST_NAME} letters at most, this one {len(name)}")
    return name


def clean_name(name: str) -> str:
    """A name without what nobody sees: control and format characters out, blanks folded."""
    seen = "".join(" " if unicodedata.category(c) in ("Cc", "Cf", "Cs") else c for c in name)
    return " ".join(seen.split())


def _check_text(kind: str, text: str) -> None:
    if len(text) > longest(kind):
        raise InputError(f"this text has {len(text):,} letters; {longest(kind):,} are accepted")


def _at(key: int, base: int) -> Document:
    document = Document.objects.filter(pk=key, removed=False).first()
    if document is None:
        raise InputError("this document is not there any more")
    if document.revision != base:
        raise Conflict(document)
    return document


def _walk(key: int, base: int, way: int) -> Document:
    document = _at(key, base)
    step = document.steps.filter(number=document.step + way).first()
    return _moved(document, step.number, step.text) if step else document


def _moved(document: Document, number: int, text: str) -> Document:
    document.step, document.text = number, text
    document.revision += 1
    document.save()
    return document
