"""What is told of one number: its steps, a line each; and cells of tables that can be asked for it."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ReasonStep:
    """One step in plain words, and what it comes to in the reader's units.

    Args:
        estimated: it was not measured.
    """

    text: str
    value_text: str
    estimated: bool = False


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a number is what it is.

    Args:
        key: by which it was asked for.
        title: what the number is, in words.
        number: as the pattern shows it; the value of the last step.
        steps: first cause first.
        sentence: all of it in one, as the pattern tells it.
        notes: what else is worth knowing, a sentence each.
    """

    key: str
    title: str
    number: str
    steps: tuple[ReasonStep, ...]
    sentence: str
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Asked:
    """A text with the key of its reason; "" when it has none."""

    text: str
    key: str = ""


@dataclass(frozen=True, slots=True)
class KeyedTable:
    """A table whose cells can be asked; the first cell of each row names it."""

    caption: str
    header: tuple[str, ...]
    rows: tuple[tuple[Asked, ...], ...]


Entry = tuple[str, Callable[[], Reason]]
"""A key, and what gives its reason when it is asked for."""


def reasoned(
    key: str,
    title: str,
    steps: Sequence[ReasonStep],
    sentence: str | None = None,
    notes: Iterable[str] = (),
) -> Reason:
    """A reason whose number is the value of its last step; without a sentence its steps make one."""
    if sentence is None:
        sentence = "; ".join(f"{step.text}: {step.value_text}" for step in steps)
    told = tuple(note for note in notes if note)
    return Reason(key, title, steps[-1].value_text, tuple(steps), sentence, told)


def slugs(names: Iterable[str], other: str = "part") -> tuple[str, ...]:
    """For each name letters a to z, digits, underscores and hyphens; no two alike.

    Args:
        other: what a name without any such letter is called, with its place in the list.

    >>> slugs(("back, left side", "Ärmel", "back left side"))
    ('back-left-side', 'armel', 'back-left-side-2')
    """
    return tuple(_apart(_slug(name) or f"{other}-{n}" for n, name in enumerate(names, 1)))


def _slug(name: str) -> str:
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9_]+", "-", plain).strip("-")


def _apart(found: Iterable[str]) -> Iterator[str]:
    """Each with a number behind it where it was there before."""
    taken: set[str] = set()
    for name in found:
        own, n = name, 1
        while own in taken:
            n += 1
            own = f"{name}-{n}"
        taken.add(own)
        yield own
