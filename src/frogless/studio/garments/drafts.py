"""Drafts of texts, remembered by the process that made them: a page asks for the same ones again."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, replace
from typing import Literal

from frogless.draft import Draft, Texts, Worked, prove_worked, work_out_texts
from frogless.publish.drafted import Drafted
from frogless.stitches.model import Dialect
from frogless.units import Units

MOST = 32
"""Drafts that a process remembers; the largest takes some megabytes."""

Hand = Literal["right", "left"]


@dataclass(frozen=True, slots=True)
class Order:
    """What is to be drafted, and how it is shown."""

    texts: Texts
    terms: Dialect = "us"
    units: Units = "cm"
    hand: Hand = "right"


@dataclass(slots=True)
class _Made:
    worked: Worked
    questions: tuple[str, ...]
    proven: Drafted | None = None


_kept: OrderedDict[tuple[Texts, Units], _Made] = OrderedDict()


def drafted(order: Order) -> Draft:
    """The draft with its numbers; its proof only where it has run already.

    Raises:
        InputError, Impossible: as `frogless.draft.work_out`.
    """
    made = _made(order)
    return _shown(made, made.proven or _unproven(made.worked), order)


def proven(order: Order) -> Draft:
    """The draft with its proof.

    Raises:
        InputError, Impossible, ProofFailed: as `frogless.draft.draft`.
    """
    made = _made(order)
    if made.proven is None:
        made.proven = prove_worked(made.worked)
    return _shown(made, made.proven, order)


def is_proven(draft: Draft) -> bool:
    """Whether its proof has run."""
    return bool(draft.drafted.findings)


def forget() -> None:
    """Nothing is remembered any more."""
    _kept.clear()


def _made(order: Order) -> _Made:
    """What was made of these texts: no number of it depends on terms or hand."""
    key = order.texts, order.units
    found = _kept.get(key)
    if found is None:
        found = _kept[key] = _Made(*work_out_texts(order.texts, units=order.units))
        while len(_kept) > MOST:
            _kept.popitem(last=False)
    _kept.move_to_end(key)
    return found


def _shown(made: _Made, draft: Drafted, order: Order) -> Draft:
    return Draft(replace(draft, dialect=order.terms, hand=order.hand), made.questions)


def _unproven(worked: Worked) -> Drafted:
    return Drafted(
        worked.basis,
        worked.plan,
        worked.fabric,
        worked.tally,
        worked.fit,
        (),
        worked.dialect,
        worked.units,
    )
