"""Motifs and edgings in words: what of a motif goes on for ever, what of an edging repeats."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from frogless.rows.nodes import Program
from frogless.stitches.edged import edging_way
from frogless.stitches.model import Dialect, Edging, Stitch
from frogless.write.ground import edge_ground
from frogless.write.pattern import say_line, write_rows
from frogless.write.phrases import phrases
from frogless.write.stitch_pattern import say_way
from frogless.write.words import Words

#: Rounds that are worked over and over are told from these times through: late enough for every
#: number to be more than one, so that all of them are worded alike.
_TOLD_FROM = (3, 4, 5)
_NUMBER = re.compile(r"\d+")


def rounds_to_tell(own: int, period: int) -> int:
    """Rounds that a piece needs, for `say_motif` to tell how it goes on.

    Args:
        own: rounds that are told one by one.
        period: rounds that are worked over and over after them; 0 for none.
    """
    return own + period * (_TOLD_FROM[-1] + 1)


def say_motif(
    program: Program,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    language: str = "en",
    *,
    own: int | None = None,
    period: int = 0,
) -> tuple[str, ...]:
    """A motif, one line to a round; with `period` the rounds that go on for ever come last.

    Args:
        program: the motif last, of `rounds_to_tell` rounds when it goes on; before it the chain that
            it is worked round, if it is.
        own, period: rounds that are told one by one, and rounds that go on after them; without
            them all rounds are told.

    Raises:
        ValueError: what is to go on for ever does not grow by the same numbers each time.
    """
    words = Words(stitches, dialect, phrases(language))
    lines = [
        say_line(line, words)
        for piece in program.pieces
        for line in write_rows(
            piece, stitches, dialect, language, edge_ground(program, piece, words)
        )
    ]
    if own is None or not period:
        return tuple(lines)
    told = [_without_end(line) for line in lines]
    general = [
        _general([told[own + 1 + at + period * turn] for turn in _TOLD_FROM], own + 1 + at, period)
        for at in range(period)
    ]
    return (*told[: own + 1], *general)


def _without_end(line: str) -> str:
    """What goes on for ever is not fastened off."""
    return line.replace(" Fasten off.", "")


def _general(lines: Sequence[str], first: int, period: int) -> str:
    """One line for all times through, its numbers as sums over r, the number of the round, or k."""
    if len({_NUMBER.sub("#", line) for line in lines}) > 1:
        raise ValueError(f"round {first} is not worded alike each time: {lines[0]}")
    numbers = list(zip(*(map(int, _NUMBER.findall(line)) for line in lines), strict=True))
    sums = iter([_sum(each, first, period) for each in numbers])
    return _NUMBER.sub(lambda _: next(sums), lines[0])


def _sum(numbers: Sequence[int], first: int, period: int) -> str:
    """A number that is the same each time as it stands, another as a sum in braces."""
    step = numbers[1] - numbers[0]
    if any(b - a != step for a, b in pairwise(numbers)):
        raise ValueError(f"{numbers} do not grow by the same number each time")
    if not step:
        return str(numbers[0])
    name, each, at = "k", step, _TOLD_FROM[0]
    if step % period == 0:
        name, each, at = "r", step // period, first + period * _TOLD_FROM[0]
    rest = numbers[0] - each * at
    sign = "-" if rest < 0 else "+"
    times = name if each == 1 else f"{each} * {name}"
    return f"{{{times} {sign} {abs(rest)}}}" if rest else f"{{{times}}}"


def say_edging(
    edging: Edging, stitches: Mapping[str, Stitch], dialect: Dialect, *, closed: bool
) -> tuple[str, ...]:
    """An edging for any number of repeats, in rounds (`closed`) or rows: "*...; rep from * around".

    Raises:
        InputError: an edging that is worked in rounds only.
    """
    return say_way(edging_way(edging, closed=closed), stitches, dialect)
