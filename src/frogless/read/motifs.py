"""Motifs from their text: a piece of so many rounds, every one of them proven."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from types import MappingProxyType

from frogless.errors import InputError, Place
from frogless.fabric.expand import expand
from frogless.read.ground import Stretch, places_made
from frogless.read.motif_rounds import Values, check_count, corner_spaces, flatness, misused, unlike
from frogless.read.parse import parse_row
from frogless.read.recover import Heard, rows_of
from frogless.read.spoken import SaidAgain
from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.rows.nodes import Base, Node, Piece, Program, Repeat, Row
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.motifs import Flatness, MotifEntry, motif_named
from frogless.stitches.parameters import filled_in
from frogless.stitches.sums import whole

#: A motif larger than this is a blanket; more rounds are worked as the last of them.
MOST_ROUNDS = 60
#: What is worked fewer times than this is told without brackets.
LEAST_REPEATED = 2
_SUM = re.compile(r"\{([^{}]*)\}")
_NO_VALUES: Values = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Motif:
    """A motif of so many rounds.

    Args:
        counts: places that each round leaves, the first round first.
        flatness: how it lies; None of what does not grow for ever, or is neither a polygon nor a
            circle.
        chain: what it is worked round; None of what begins with a ring.
        corners: numbers of the places of its last round that are corner spaces; empty when its
            corners are stitches.
    """

    entry: MotifEntry
    piece: Piece
    counts: tuple[int, ...]
    flatness: Flatness | None
    corners: tuple[int, ...] = ()
    chain: Piece | None = None

    @property
    def program(self) -> Program:
        """The motif by itself."""
        return Program((self.piece,) if self.chain is None else (self.chain, self.piece))

    def side(self, number: int) -> tuple[int, tuple[Base, ...]]:
        """The places of a side of its last round, from corner space to corner space, and how many.

        Args:
            number: of the side, 1 first: that which begins at the first corner of the round.

        Raises:
            InputError: its corners are no chain spaces, or it has no such side.
        """
        if not 1 <= number <= len(self.corners):
            raise InputError(
                f'"{self.entry.key}" has {len(self.corners)} sides between corner spaces; '
                f"there is no side {number}"
            )
        first, last = self.corners[number - 1], self.corners[number % len(self.corners)]
        there = self.counts[-1]
        count = (last - first) % there + 1
        before_join = min(count, there - first)
        runs = [(first, before_join), (0, count - before_join)]
        name = self.piece.name
        return count, tuple(Base(name, "last_row", first=at, count=n) for at, n in runs if n)


@dataclass(frozen=True, slots=True)
class _Told:
    """A line with the number of its round filled in.

    Args:
        line: its number in the text, 1 first.
        round: 0 for the foundation.
    """

    line: int
    round: int
    text: str


def motif(key: str, rounds: int | None = None, parameters: Values = _NO_VALUES) -> Motif:
    """A motif of the library, of so many rounds; without a number those that are told one by one.

    Raises:
        InputError: no such motif, a parameter or a number of rounds out of range, or a round that
            does not consume what the round before leaves; names the line, the round, the place.
    """
    entry = motif_named(key)
    values = filled_in(entry.key, entry.parameters, parameters)
    try:
        return _library_motif(entry.key, rounds, tuple(sorted(values.items())))
    except InputError as error:
        raise error.at(Place(key=key)) from error


@cache
def _library_motif(key: str, rounds: int | None, values: tuple[tuple[str, int], ...]) -> Motif:
    return read_motif(motif_named(key), dictionary(), "us", rounds=rounds, values=dict(values))


def read_motif(
    entry: MotifEntry,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    *,
    rounds: int | None = None,
    values: Values = _NO_VALUES,
) -> Motif:
    """A motif from its text, its rounds proven.

    Raises:
        InputError: as `motif`.
    """
    known = vocabulary(stitches, dialect)
    asked = _asked(entry, rounds)
    told = _told(entry, asked, values)
    chain, piece = _pieces(entry, told, known)
    made = Motif(entry, piece, (), None, chain=chain)
    fabric = expand(made.program, stitches).pieces[piece.name]
    for line, row in zip(told[-len(fabric) :], fabric, strict=True):
        for fault in (*misused(row), *unlike(entry, row, line.round, known, values)):
            raise InputError(fault, _place(line))
    counts = tuple(row.count for row in piece.rows if row.number)
    for number, count in enumerate(counts, start=1):
        check_count(entry, number, count, values)
    long = _told(entry, entry.own_rounds + 2 * entry.period, values)
    return replace(
        made,
        counts=counts,
        corners=corner_spaces(entry, piece.rows[-1], known),
        flatness=flatness(entry, _pieces(entry, long, known)[1].rows, known),
    )


def named(made: Motif, name: str) -> Motif:
    """The same motif as a piece of another name."""
    return replace(made, piece=replace(made.piece, name=name))


def _asked(entry: MotifEntry, rounds: int | None) -> int:
    own = entry.own_rounds
    if rounds is None:
        return own
    most = MOST_ROUNDS if entry.grows else own
    if not 1 <= rounds <= most:
        raise InputError(f"{rounds} rounds are not accepted; write a number from 1 to {most}")
    return rounds


# The text


def _told(entry: MotifEntry, rounds: int, values: Values) -> tuple[_Told, ...]:
    """The foundation and so many rounds, their sums filled in."""
    return tuple(_lines(entry, rounds, values))


def _lines(entry: MotifEntry, rounds: int, values: Values) -> Iterator[_Told]:
    own = entry.own_rounds
    for number in range(rounds + 1):
        turn, at = divmod(number - own - 1, entry.period) if number > own else (0, 0)
        line = own + 1 + at if number > own else number
        known = {**values, "r": number, "k": turn} if number > own else values
        yield _Told(line + 1, number, _filled(entry.lines[line], known, line + 1))


def _filled(text: str, values: Values, line: int) -> str:
    try:
        return _SUM.sub(lambda found: str(whole(found[1], values)), text)
    except InputError as error:
        raise error.at(Place(key=f"line {line}")) from error


def _pieces(
    entry: MotifEntry, told: Sequence[_Told], known: Vocabulary
) -> tuple[Piece | None, Piece]:
    """The chain that it is worked round, if it is one, and the motif."""
    if not entry.around:
        rows = _rows(told, Heard((), closed=True), known)
        return None, Piece(entry.key, True, _fastened(rows))
    chain = Piece(f"{entry.key} chain", False, _rows(told[:1], Heard((), closed=False), known))
    places = places_made(chain.rows[0], known.stitches, closed=False)
    begun = (Stretch(places), Stretch(places[::-1]))
    bases = (Base(chain.name, "row"), Base(chain.name, "underside", reverse=True))
    rows = _rows(told[1:], Heard(begun, closed=True), known)
    return chain, Piece(entry.key, True, _fastened(rows), bases)


def _rows(told: Sequence[_Told], heard: Heard, known: Vocabulary) -> tuple[Row, ...]:
    for line in told:
        try:
            said = parse_row(line.text, known)
            if isinstance(said, SaidAgain):
                raise InputError("write the round once, without repeating it")
            _, heard = rows_of(said, heard, known)
        except InputError as error:
            raise error.at(_place(line)) from error
    return tuple(replace(done.row, body=_once(done.row.body)) for done in heard.done)


def _once(body: Sequence[Node]) -> tuple[Node, ...]:
    """A body without brackets about what is worked once only."""
    plain: list[Node] = []
    for node in body:
        if isinstance(node, Repeat):
            inner = _once(node.body)
            plain += (
                inner * node.times if node.times < LEAST_REPEATED else [Repeat(inner, node.times)]
            )
        else:
            plain.append(node)
    return tuple(plain)


def _fastened(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    *others, last = rows
    return (*others, replace(last, end=replace(last.end, fasten_off=True)))


def _place(line: _Told) -> Place:
    where = f"rnd {line.round}" if line.round else "foundation"
    return Place(key=f"line {line.line}, {where}")
