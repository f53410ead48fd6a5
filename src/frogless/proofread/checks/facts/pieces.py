"""The rows of each piece in one size, with where they stand: what measurements are held against."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from frogless.proofread.checks.model import Reading
from frogless.proofread.script.model import Heading, Script
from frogless.proofread.words.model import Act, Again, Join, Ring
from frogless.proofread.work.model import Told, Worked

#: A plateau: rows of one count, this many, are a place where a tape is laid.
PLATEAU = 2
_EDGING = re.compile(
    r"\b(?:edging|border|band|trim|ruffle|frill|flounce|fringe|collar|cuff|ribbing)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Row:
    """A row that makes a known number of stitches.

    Args:
        section: heading that it stands under, in lower case; "".
        text: its words and its label, in lower case.
        spaced: it has chain spaces, so that its count alone is no width.
        flat: neither a round nor joined.
    """

    count: int
    stitch: str
    told: int
    section: str
    text: str
    spaced: bool
    flat: bool
    foundation: bool


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece in one size.

    Args:
        complete: every row is known, and how many there are.
        ring: it begins in a ring.
        make: how often it is made.
    """

    name: str
    rows: tuple[Row, ...]
    complete: bool
    ring: bool
    make: int = 1

    @property
    def flat(self) -> bool:
        """Most of its rows are neither rounds nor joined."""
        return 2 * sum(row.flat for row in self.rows) > len(self.rows)

    @property
    def counts(self) -> tuple[int, ...]:
        """Of all rows, in order."""
        return tuple(row.count for row in self.rows)

    @property
    def worked(self) -> tuple[Row, ...]:
        """Its rows without a foundation chain."""
        return tuple(row for row in self.rows if not row.foundation)


@dataclass(frozen=True, slots=True)
class Held:
    """What the facts of a pattern are held against.

    Args:
        pieces: for each size every piece that has rows, in the order of the text.
        sections: for each `Told` the heading that it stands under, in lower case.
        edged: something is worked on to the pieces that makes the work larger.
    """

    reading: Reading
    pieces: tuple[tuple[Piece, ...], ...]
    sections: tuple[str, ...]
    edged: bool


def held_of(reading: Reading) -> Held:
    """The pieces of a pattern in all sizes."""
    sections = sections_of(reading)
    makes = _makes(reading.script)
    told: dict[int, list[Told]] = {}
    for each in reading.told:
        told.setdefault(each.piece, []).append(each)
    rows: dict[tuple[int, int], list[Worked]] = {}
    for worked in reading.reckoning.rows:
        rows.setdefault((worked.size, reading.told[worked.told].piece), []).append(worked)
    found: list[list[Piece]] = [[] for _ in reading.script.sizes]
    for (size, piece), worked_rows in sorted(rows.items()):
        found[size].append(_piece(worked_rows, told[piece], reading, sections, makes))
    return Held(reading, tuple(map(tuple, found)), sections, has_edging(reading, sections))


def sections_of(reading: Reading) -> tuple[str, ...]:
    """For each `Told` the heading that it stands under, in lower case."""
    headings = sorted(
        (statement.span.start, statement.name.lower())
        for part in (*reading.script.of("instructions"), *reading.script.of("finishing"))
        for statement in part.statements
        if isinstance(statement, Heading)
    )
    found, at, name = [], 0, ""
    for told in reading.told:
        while at < len(headings) and headings[at][0] < told.span.start:
            name = headings[at][1]
            at += 1
        found.append(name)
    return tuple(found)


def has_edging(reading: Reading, sections: tuple[str, ...]) -> bool:
    """Whether something is worked on to the pieces that makes the work larger."""
    names = {*sections, *(told.piece_name for told in reading.told)}
    named = any(_EDGING.search(name) for name in names)
    labels = (told.label.name for told in reading.told if told.label)
    return named or any(_EDGING.search(name) for name in labels)


def runs_of(counts: tuple[int, ...]) -> Iterator[tuple[int, int]]:
    """Runs of equal counts: each count and how many rows it holds."""
    last, length = None, 0
    for count in counts:
        if count == last:
            length += 1
            continue
        if last is not None:
            yield last, length
        last, length = count, 1
    if last is not None:
        yield last, length


def landings(piece: Piece) -> frozenset[int]:
    """Rows that a measurement is likely taken at: first, last, widest, narrowest, and plateaus."""
    counts = piece.counts
    found = {0, min(1, len(counts) - 1), len(counts) - 1}
    found |= {counts.index(max(counts)), counts.index(min(counts))}
    at = 0
    for _, length in runs_of(counts):
        if length >= PLATEAU:
            found.add(at)
        at += length
    return frozenset(found)


def _piece(
    rows: list[Worked],
    told: list[Told],
    reading: Reading,
    sections: tuple[str, ...],
    makes: dict[str, int],
) -> Piece:
    first = told[0]
    known = tuple(_row(each, reading, sections) for each in rows if each.worked)
    complete = all(each.worked is not None for each in rows) and not any(
        _is_open(each) for each in told
    )
    return Piece(
        first.piece_name.lower(),
        known,
        complete,
        any(isinstance(act, Ring) for each in told[:2] for act in each.said.acts),
        makes.get(first.piece_name, 1),
    )


def _row(worked: Worked, reading: Reading, sections: tuple[str, ...]) -> Row:
    told = reading.told[worked.told]
    label = told.label
    rounds = label is not None and label.kind == "round"
    joined = any(isinstance(act, Join) and act.to != "none" for act in told.said.acts)
    name = label.name if label else ""
    text = f"{name} {reading.script.words(told.span).lower()}"
    chains = not any(key for key in worked.made if key not in ("chain", "") and worked.made[key])
    unnumbered = worked.number is None and (label is None or name == "foundation")
    return Row(
        worked.worked or 0,
        worked.stitch,
        worked.told,
        sections[worked.told],
        text,
        any(" sp" in key and number for key, number in worked.made.items()),
        not (rounds or joined),
        unnumbered and not worked.repeated and (chains or worked.stitch in ("chain", "")),
    )


def _is_open(told: Told) -> bool:
    """It is worked until a length is reached: how many rows that takes, nobody says."""
    return any(_open(act) for act in told.said.acts)


def _open(act: Act) -> bool:
    return isinstance(act, Again) and not (act.rows or act.times or act.until_rows)


def _makes(script: Script) -> dict[str, int]:
    return {
        statement.name: statement.make
        for part in script.of("instructions")
        for statement in part.statements
        if isinstance(statement, Heading) and statement.piece
    }
