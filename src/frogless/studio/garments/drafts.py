"""Drafts of texts, remembered by the process that made them: a page asks for the same ones again."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, fields
from typing import Any, Literal

from frogless.draft import Draft, Texts, Worked, load_texts, prove_worked, work_out
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


_kept: OrderedDict[Order, _Made] = OrderedDict()


def drafted(order: Order) -> Draft:
    """The draft with its numbers; its proof only where it has run already.

    Raises:
        InputError, Impossible: as `frogless.draft.work_out`.
    """
    made = _made(order)
    return Draft(made.proven or _unproven(made.worked, order), made.questions)


def proven(order: Order) -> Draft:
    """The draft with its proof.

    Raises:
        InputError, Impossible, ProofFailed: as `frogless.draft.draft`.
    """
    made = _made(order)
    if made.proven is None:
        made.proven = _for_hand(prove_worked(made.worked), order.hand)
    return Draft(made.proven, made.questions)


def is_proven(draft: Draft) -> bool:
    """Whether its proof has run."""
    return bool(draft.drafted.findings)


def forget() -> None:
    """Nothing is remembered any more."""
    _kept.clear()


def _made(order: Order) -> _Made:
    found = _kept.get(order)
    if found is None:
        basis, questions = load_texts(order.texts, order.units)
        found = _kept[order] = _Made(work_out(basis, order.terms, order.units), questions)
        while len(_kept) > MOST:
            _kept.popitem(last=False)
    _kept.move_to_end(order)
    return found


def _unproven(worked: Worked, order: Order) -> Drafted:
    made = Drafted(
        worked.basis,
        worked.plan,
        worked.fabric,
        worked.tally,
        worked.fit,
        (),
        worked.dialect,
        worked.units,
    )
    return _for_hand(made, order.hand)


_HANDED = any(field.name == "hand" for field in fields(Drafted))


def _for_hand(made: Drafted, hand: Hand) -> Drafted:
    if not _HANDED:
        return made
    from dataclasses import replace

    changed: dict[str, Any] = {"hand": hand}
    return replace(made, **changed)
