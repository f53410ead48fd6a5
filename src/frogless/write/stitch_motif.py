"""Motifs and edgings in words: what of a motif goes on for ever, what of an edging repeats."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from frogless.rows.nodes import End, Node, Piece, Program, Repeat, Row, Skip, Work
from frogless.stitches.edged import as_runs, edging_way
from frogless.stitches.model import Dialect, EdgeRow, Edging, Stitch
from frogless.write.body import Setting, say_body
from frogless.write.ground import Ground, edge_ground, grounds, say_place
from frogless.write.pattern import say_line, write_rows
from frogless.write.phrases import phrases
from frogless.write.stitch_pattern import say_way
from frogless.write.words import Words

#: Rounds that are worked over and over are told from these times through: late enough for every
#: number to be more than one, so that all of them are worded alike.
_TOLD_FROM = (3, 4, 5)
#: A side between two corners is told over so many repeats.
_SIDE_REPEATS = 3
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


def say_corner(
    edging: Edging, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> tuple[str, ...]:
    """What each round of an edging works into a corner and along the side after it; () without any.

    "First" is the place of the corner, "last" are those before the next.
    """
    if not edging.sides:
        return ()
    words = Words(stitches, dialect, phrases(language))
    sides = [_cornered(side) for side in edging.sides]
    rows = tuple(
        Row(number, "RS", "", body, 0, end=End("first_stitch"))
        for number, (body, _) in enumerate(sides, start=1)
    )
    places = 1 + edging.side_offset + _SIDE_REPEATS * edging.multiple
    below = grounds(Piece("", True, rows), Ground(("st",) * places), words)
    return tuple(
        ", ".join(_side_said(body, Setting(words, on, False, star=star)))
        for (body, star), on in zip(sides, below, strict=True)
    )


def _side_said(body: Sequence[Node], setting: Setting) -> tuple[str, ...]:
    """What a side ends with is skipped, not left unworked: the next corner comes after it."""
    items = say_body(body, setting).items
    match body[-1]:
        case Skip(times):
            place = say_place("st", times, setting.words)
            told = setting.words.phrases.count("skip", times, skip=setting.words.skip, place=place)
            return (*items[:-1], told)
    return items


def _cornered(side: EdgeRow) -> tuple[tuple[Node, ...], int]:
    """A corner and the side after it, and which of their nodes repeats along the side."""
    match as_runs((*side.before, Repeat(side.repeat, _SIDE_REPEATS), *side.after)):
        case (Work(stitch, times),):
            return (*side.corner, Repeat((Work(stitch),), times)), len(side.corner)
    before = (*side.corner, *side.before)
    return (*before, Repeat(side.repeat, _SIDE_REPEATS), *side.after), len(before)


def say_edging(
    edging: Edging, stitches: Mapping[str, Stitch], dialect: Dialect, *, closed: bool
) -> tuple[str, ...]:
    """An edging for any number of repeats, in rounds (`closed`) or rows: "*...; rep from * around".

    Raises:
        InputError: an edging that is worked in rounds only.
    """
    return say_way(edging_way(edging, closed=closed), stitches, dialect)
