"""Which of the person's bodies and swatches a design can be drafted for."""

from __future__ import annotations

import time
from dataclasses import dataclass

from frogless.errors import FroglessError
from frogless.studio.designs.entries import Entry
from frogless.studio.designs.kept import Kept, key_of
from frogless.studio.designs.standing import Pair, worn
from frogless.studio.designs.trial import Trial, trial
from frogless.studio.library import shelf
from frogless.studio.work.pool import pool

MOST_TRIED = 12
SECONDS = 20.0
"""Whoever has many swatches sees the first ones; the others can be tried one by one."""

_trials: Kept[Trial] = Kept(512)


@dataclass(frozen=True, slots=True)
class Suit:
    """One body or swatch: whether it does, and if not, why."""

    kind: str
    ref: str
    name: str
    key: int
    good: bool
    why: str


@dataclass(frozen=True, slots=True)
class Suits:
    """What was tried; `more` were not."""

    bodies: tuple[Suit, ...]
    swatches: tuple[Suit, ...]
    more: int


def suits(one: Entry) -> Suits:
    """Each own body with a standing swatch, each own swatch with a standing body."""
    until = time.monotonic() + SECONDS
    found = {"body": list[Suit](), "swatch": list[Suit]()}
    more = 0
    for kind, tried in found.items():
        for document in shelf.documents(kind):
            if len(tried) >= MOST_TRIED or time.monotonic() > until:
                more += 1
                continue
            ref = document.ref
            pair = Pair(body=ref) if kind == "body" else Pair(swatches=(ref,))
            made = _tried(one, pair)
            tried.append(Suit(kind, ref, document.name, document.pk, not made.why, made.why))
    return Suits(tuple(found["body"]), tuple(found["swatch"]), more)


def _tried(one: Entry, pair: Pair) -> Trial:
    body, swatches = worn(pair)

    def ask() -> Trial:
        try:
            return pool().ask(f"design {one.ref}", trial, one.text, body, swatches)
        except FroglessError as error:
            return Trial(str(error))

    return _trials.made(key_of(one.text, body, swatches), ask)
