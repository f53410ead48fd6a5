"""Acts and rows as a reader of patterns makes them, for tests that need no text."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from frogless.proofread.script.model import Label, Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Extent,
    Into,
    Join,
    Numbers,
    Said,
    Stated,
    Target,
    Terms,
    Turn,
)
from frogless.proofread.work.model import Reckoning, Told, Worked
from frogless.proofread.work.reckon import reckon
from frogless.stitches.load import dictionary

HERE = Span(0, 1)
END = Extent("end")
ONCE = Extent("times")
SC, HDC, DC = "single_crochet", "half_double_crochet", "double_crochet"
TURN = Turn(HERE)
_EACH = Target(which="each")
PLAIN = Lexicon(Terms("us"), dictionary(), {})


def numbers(*values: int) -> Numbers:
    """A number, or one for each size."""
    return Numbers(values, HERE)


def times(*values: int) -> Extent:
    """So many times."""
    return Extent("times", numbers(*values))


def bare(stitch: str, count: int = 1) -> Bare:
    """ "5 sc"."""
    return Bare(HERE, stitch, numbers(count))


def chain(*count: int, counts: bool | None = None) -> Chain:
    """ "Ch 3"."""
    return Chain(HERE, numbers(*count), counts=counts)


def into_next(stitch: str, places: int = 1, makes: int = 1) -> Into:
    """ "2 dc in each of next 3 sts"."""
    return Into(HERE, (bare(stitch, makes),), Target(), times(places))


def into_each(stitch: str, makes: int = 1, target: Target = _EACH) -> Into:
    """ "2 dc in each st around"."""
    return Into(HERE, (bare(stitch, makes),), target, END)


def sts(*count: int, stitch: str = "") -> Stated:
    """ "(96 sts)"."""
    return Stated(HERE, numbers(*count), stitch=stitch)


def row(
    number: int | tuple[int, ...],
    *acts: Act,
    count: int | Stated | None = None,
    kind: Literal["row", "round", ""] = "round",
    name: str = "",
    begins: bool = False,
) -> Told:
    """A row of a pattern."""
    stated = () if count is None else (count if isinstance(count, Stated) else sts(count),)
    many = number if isinstance(number, tuple) else (number,) if number else ()
    label = Label(HERE, kind, many, name)
    return Told(Said(tuple(acts), stated), HERE, label, begins=begins)


def ring_of(count: int) -> Told:
    """A foundation chain that is joined to be worked in rounds."""
    return row(0, chain(count), Join(HERE, "first"), name="foundation", begins=True)


def chain_of(count: int) -> Told:
    """A foundation chain that is worked in rows."""
    return row(0, chain(count), kind="row", name="foundation", begins=True)


def reckoned(told: Sequence[Told], sizes: int = 1, lexicon: Lexicon = PLAIN) -> Reckoning:
    """All rows worked."""
    return reckon(told, lexicon, sizes)


def rows(told: Sequence[Told], sizes: int = 1) -> tuple[Worked, ...]:
    """All rows worked, without the foundation."""
    return tuple(each for each in reckoned(told, sizes).rows if each.told)


def problems(told: Sequence[Told], sizes: int = 1) -> list[tuple[int | None, str]]:
    """Number of the row and kind, of all that is wrong."""
    found = reckoned(told, sizes).rows
    return [(each.number, problem.kind) for each in found for problem in each.problems]
