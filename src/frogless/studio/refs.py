"""What a garment is made of, by ref: `own:12`, `example:light-cotton`, `size:women:M`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from frogless.body.size_tables import TABLES, sizes
from frogless.errors import InputError
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.bundle import MOST_SWATCHES
from frogless.studio.library.models import Document
from frogless.studio.shipped import ANYBODY, size_name, with_us


@dataclass(frozen=True, slots=True)
class Found:
    """A design, body or swatch that a ref stands for. `document` is None for what ships with us."""

    ref: str
    kind: str
    name: str
    text: str
    document: Document | None = None


Choices = tuple[tuple[str, tuple[tuple[str, str], ...]], ...]
"""Groups for a list to choose from: title of the group, then ref and name of each."""


def resolve(kind: str, ref: str) -> Found:
    """What a ref stands for.

    Args:
        kind: "design", "body" or "swatch".

    Raises:
        InputError: it stands for nothing of that kind, or for nothing any more.
    """
    where, _, key = ref.partition(":")
    if where == "own" and key.isdecimal() and len(key) < 19:
        document = shelf.found(kind, int(key))
        return Found(ref, kind, document.name, document.text, document)
    shipped = with_us(kind, ref)
    if shipped is not None:
        return Found(ref, kind, shipped.title, shipped.text)
    raise InputError(f"this {kind} is not there any more; choose another")


def swatches(chosen: Sequence[str]) -> tuple[Found, ...]:
    """What the swatches of one garment stand for.

    Raises:
        InputError: there are too many, or one stands for nothing (any more).
    """
    if len(chosen) > MOST_SWATCHES:
        raise InputError(
            f"a garment is made of {MOST_SWATCHES} swatches at most, these are {len(chosen):,}"
        )
    return tuple(resolve("swatch", ref) for ref in chosen)


def choices(kind: str) -> Choices:
    """Everything of a kind that can be chosen, own things first; groups with nothing in them left out."""
    own = tuple((document.ref, document.name) for document in shelf.documents(kind))
    shipped = tuple((f"example:{key}", one.title) for key, one in examples(kind).items())
    groups = [("Yours", own), ("Examples", shipped)]
    if kind == "body":
        groups += [*_size_choices(), ("Nobody measured", ((ANYBODY, "Anybody, estimated"),))]
    return tuple((title, found) for title, found in groups if found)


def _size_choices() -> Iterator[tuple[str, tuple[tuple[str, str], ...]]]:
    for table in TABLES:
        found = tuple((f"size:{table}:{one.name}", size_name(table, one)) for one in sizes(table))
        yield f"Size table, {table}", found
