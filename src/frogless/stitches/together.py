"""Stitches worked together: a decrease is the same stitch left unfinished, several times over.

Each is worked up to its last step; then one loop is drawn through all that are on the hook. So
"sc2tog" and "dc3tog" need no entries of their own, for any stitch and any number.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from frogless.errors import InputError
from frogless.stitches.model import Dialect, Step, Stitch, Term
from frogless.stitches.steps import loops_after


@dataclass(frozen=True, slots=True)
class Decrease:
    """One stitch worked over several places: "sc2tog" as a line of the dictionary would say it."""

    stitch: Stitch
    places: int
    terms: Mapping[Dialect, Term]
    steps: tuple[Step, ...]


def decreases(
    stitches: Mapping[str, Stitch], places: Collection[int] = (2, 3)
) -> tuple[Decrease, ...]:
    """The plain decreases of the basic stitches: those that a fabric can begin with.

    Args:
        places: over how many places.

    >>> from frogless.stitches.load import dictionary
    >>> [one.terms["us"].abbreviation for one in decreases(dictionary(), [3])][:3]
    ['sc3tog', 'hdc3tog', 'dc3tog']
    """
    return tuple(
        _decrease(stitch, number)
        for stitch in stitches.values()
        if _is_basic(stitch) and can_close_together(stitch)
        for number in places
    )


def together_steps(stitch: Stitch, places: int) -> tuple[Step, ...]:
    """The motions of `stitch` over `places` places, closed together into one.

    Raises:
        InputError: a stitch that no last draw closes, or fewer than two places.

    >>> from frogless.stitches.load import dictionary
    >>> [step.motion for step in together_steps(dictionary()["single_crochet"], 2)]
    ['insert', 'pull_up', 'insert', 'pull_up', 'pull_through']
    """
    if places < 2:
        raise InputError(f"{places} stitches worked together; together takes 2 or more")
    if not can_close_together(stitch):
        raise InputError(f'"{stitch.key}" cannot be worked together: its last step closes nothing')
    open_ = stitch.steps[:-1] * places
    return (*open_, Step("pull_through", loops_after(open_)[-1]))


def can_close_together(stitch: Stitch) -> bool:
    """Whether a stitch stands on a place and is closed by drawing through several loops."""
    last = stitch.steps[-1]
    closes_one = stitch.stands_on == stitch.leaves == 1
    return closes_one and last.motion == "pull_through" and last.loops > 1


def together_term(stitch: Stitch, places: int, dialect: Dialect) -> Term:
    """Its name and abbreviation: "2 single crochet together", "sc2tog".

    Source: how stitches worked together are written on the published lists of US and UK terms.
    """
    term = stitch.terms[dialect]
    return Term(f"{places} {term.name} together", f"{term.abbreviation}{places}tog")


def _decrease(stitch: Stitch, places: int) -> Decrease:
    dialects: tuple[Dialect, ...] = ("us", "uk")
    terms = {dialect: together_term(stitch, places, dialect) for dialect in dialects}
    return Decrease(stitch, places, MappingProxyType(terms), together_steps(stitch, places))


def _is_basic(stitch: Stitch) -> bool:
    """A stitch of its own, which a first row can be made of."""
    return stitch.kind == "stitch" and not stitch.like and stitch.foundation_extra > 0
