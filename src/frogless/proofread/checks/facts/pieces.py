"""The rows of each piece in one size, with where they stand: what measurements are held against."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.script.model import Heading, Script
from frogless.proofread.words.model import Act, Again, Bare, Chain, Into, Join, Ring
from frogless.proofread.work.model import Told, Worked

#: A plateau: rows of one count, this many, are a place where a tape is laid.
PLATEAU = 2
#: A piece that grows to so many times its first row.
_FANS = 4
#: A sentence that makes no more than these stitches is no row.
_FEW = 3
_LIKE = re.compile(r"\bas (?:for |the ){0,2}(?:back|front|first|left|right|other)\b", re.IGNORECASE)
#: A change of so many stitches at once ends a part of a piece: armhole, neck, shoulder.
_STEP = 3
#: A longer chain is no turning chain.
_TURNING = 6
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
        spaced: it has chain spaces, or groups that are counted as one, so that its count alone is
            no width.
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
    def fans_out(self) -> bool:
        """It grows from a point, as shawls do: its rows are no straight measure of it."""
        worked = [row.count for row in self.worked]
        if not self.flat or not worked or max(worked) <= _FANS * min(worked[0], worked[-1]):
            return False
        steps = (abs(b - a) for a, b in pairwise(worked))
        # A neck or an armhole takes many stitches at once; a shawl goes step by step.
        return max(steps, default=0) <= max(worked) / _FANS

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
        known: for each size, every row makes a number that is known.
        edged: something is worked on to the pieces that makes the work larger.
        place: for each piece of `Told` which of `pieces[0]` it is.
        sizes: how many; 1 where the rows of all are the same, whatever sizes are named.
    """

    reading: Reading
    pieces: tuple[tuple[Piece, ...], ...]
    sections: tuple[str, ...]
    known: tuple[bool, ...]
    edged: bool
    sizes: int
    place: Mapping[int, int]


def held_of(reading: Reading) -> Held:
    """The pieces of a pattern in all sizes."""
    sections = sections_of(reading)
    makes = _makes(reading.script)
    told: dict[int, list[Told]] = {}
    begun = _begun(reading)
    for each in reading.told:
        told.setdefault(begun.get(each.piece, each.piece), []).append(each)
    rows: dict[tuple[int, int], list[Worked]] = {}
    for worked in reading.reckoning.rows:
        piece = reading.told[worked.told].piece
        rows.setdefault((worked.size, begun.get(piece, piece)), []).append(worked)
    found: list[list[Piece]] = [[] for _ in reading.script.sizes]
    for (size, piece), worked_rows in sorted(rows.items()):
        found[size].append(_piece(worked_rows, told[piece], reading, sections, makes))
    known = tuple(_is_known(reading, size) for size in range(len(found)))
    edged = has_edging(reading, sections)
    alike = all(pieces == found[0] for pieces in found[1:])
    sizes = 1 if alike else len(found)
    order = sorted({piece for size, piece in rows if not size})
    place = {piece: at for at, piece in enumerate(order)}
    place |= {piece: place[first] for piece, first in begun.items() if first in place}
    return Held(reading, tuple(map(tuple, found)), sections, known, edged, sizes, place)


def _begun(reading: Reading) -> dict[int, int]:
    """For a piece that goes on where the one before ended: the piece that it belongs to."""
    found: dict[int, int] = {}
    seen: set[int] = set()
    last = None
    for worked in reading.reckoning.rows:
        piece = reading.told[worked.told].piece
        if worked.size:
            continue
        if piece not in seen and last is not None and worked.available:
            found[piece] = found.get(last, last)
        seen.add(piece)
        last = piece
    return found


def _is_known(reading: Reading, size: int) -> bool:
    """Every row that has a label makes a known number, and every piece begins from something."""
    labelled = {at for at, told in enumerate(reading.told) if told.label}
    begun: set[int] = set()
    for worked in reading.reckoning.rows:
        if worked.size != size:
            continue
        labelled.discard(worked.told)
        piece = reading.told[worked.told].piece
        edging = _EDGING.search(reading.told[worked.told].piece_name)
        grounded = piece in begun or edging or _is_grounded(worked, reading)
        if worked.worked is None or not grounded:
            return False
        begun.add(piece)
    return not labelled


def _is_grounded(worked: Worked, reading: Reading) -> bool:
    """A first row that stands on something which the text makes: a chain, a ring."""
    if worked.available is not None:
        return True
    return any(_is_ground(act) for act in reading.told[worked.told].said.acts)


def _is_ground(act: Act) -> bool:
    match act:
        case Ring():
            return True
        case Chain():
            return max(act.times.values) > _TURNING
        case Into():
            return act.target.what in ("ring", "from_hook")
        case Bare():
            return act.stitch.startswith("foundation")
        case _:
            return False


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


def parts_of(pieces: tuple[Piece, ...]) -> set[int]:
    """Numbers of rows that some part comes to: between two ends of each piece, and pieces added."""
    found: set[int] = set()
    totals: list[int] = []
    for piece in pieces:
        ends = _ends(piece)
        found |= {b - a for a in ends for b in ends if b > a}
        totals.append(len(piece.worked))
    for first in range(len(totals)):
        for last in range(first + 1, len(totals) + 1):
            found.add(sum(totals[first:last]))
    found.discard(0)
    return found


def _ends(piece: Piece) -> list[int]:
    """Rows that a part of the piece may begin or end at."""
    rows = piece.worked
    found = {0, len(rows)}
    for at in range(1, len(rows)):
        step = rows[at].count - rows[at - 1].count
        before = rows[at - 1].count - rows[at - 2].count if at > 1 else step
        turns = (step == 0) != (before == 0)
        if (
            abs(step) > _STEP
            or rows[at].section != rows[at - 1].section
            or (turns and len(found) < 40)
        ):
            found.add(at)
    return sorted(found)


def _piece(
    rows: list[Worked],
    told: list[Told],
    reading: Reading,
    sections: tuple[str, ...],
    makes: dict[str, int],
) -> Piece:
    first = told[0]
    known = tuple(
        _row(each, reading, sections) for each in rows if each.worked and _is_row(each, reading)
    )
    complete = all(each.worked is not None for each in rows) and not any(
        _is_open(each, reading) for each in told
    )
    return Piece(
        first.piece_name.lower(),
        known,
        complete,
        any(isinstance(act, Ring) for each in told[:2] for act in each.said.acts),
        makes.get(first.piece_name, 1),
    )


def _is_row(worked: Worked, reading: Reading) -> bool:
    """ "Sl st in first st." after the last round is none."""
    told = reading.told[worked.told]
    named = told.label is not None or worked.repeated or worked.stated is not None
    return named or told.begins or (worked.worked or 0) > _FEW


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
        any(" sp" in key and number for key, number in worked.made.items())
        or any(each.what == "group" for each in told.said.stated),
        not (rounds or joined),
        unnumbered and not worked.repeated and (chains or worked.stitch in ("chain", "")),
    )


def _is_open(told: Told, reading: Reading) -> bool:
    """It is worked until a length is reached: how many rows that takes, nobody says."""
    opened = any(_open(act) for act in told.said.acts)
    # "Work as back" is another piece.
    return opened and not _LIKE.search(reading.script.words(told.span))


def _open(act: Act) -> bool:
    return isinstance(act, Again) and not (act.rows or act.times or act.until_rows)


def _makes(script: Script) -> dict[str, int]:
    return {
        statement.name: statement.make
        for part in script.of("instructions")
        for statement in part.statements
        if isinstance(statement, Heading) and statement.piece
    }
