"""Written text back into pieces, seams and a whole program."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from frogless.errors import Fault, InputError, Place, near_names
from frogless.read.edges import read_along, read_stretches
from frogless.read.ground import Done, Stretch, plain, stretch_of
from frogless.read.parse import AnySaid, parse_row, parse_spread
from frogless.read.recover import Heard, rows_of
from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.rows.nodes import Base, Piece, Program, Seam
from frogless.rows.spread import even_spread
from frogless.stitches.model import Dialect, Stitch

_HEADING = re.compile(
    r"(?P<name>.+?): worked in "
    r"(?P<way>joined rounds, turned|joined rounds, not turned|a spiral|rounds|rows, turned|rows)"
    r"(?:, into (?P<edges>.+?), (?:RS|WS) facing(?:; join yarn in [\w ]+)?)?\."
)
_SECTION = re.compile(r"Section:\s*(?P<name>.*)")
_NOTE = re.compile(
    r"Note: (?:Sts are numbered in the order in which they were worked|To change colou?r,).*"
)
#: A line of its own before the first row; the row may say it as well.
BEGIN_COLOUR = re.compile(r"(?:Begin|Start) (?:with|in) colou?r (?P<letter>[A-Z])\.", re.IGNORECASE)
_TERMS = re.compile(r"Terms:\s*(?P<dialect>\w+)")
_SEAM = re.compile(
    r"Seam (?P<name>.+?): (?P<stitch>.+?) through both edges: 1 in each of (?P<first>.+?); "
    r"(?P<second>.+?)"
    r"(?:, spread evenly(?P<shares> \(\d+ takes? [^()]*\))?|(?P<each>, 1 in each)"
    r"|: (?P<spread>[^:]+))\. \((?P<stated>\d+) .+\)"
)


KEPT = 128
"""Pieces that are remembered as they were read: an edit leaves most of them alone."""


@dataclass(frozen=True, slots=True)
class _TextLine:
    """A line that is not blank, with its number in the text."""

    number: int
    text: str


@dataclass(frozen=True, slots=True)
class _Heading:
    """What the heading line of a piece says."""

    name: str
    closed: bool
    bases: tuple[Base, ...] = ()
    line: int = 0


def read_program(
    text: str, stitches: Mapping[str, Stitch], dialect: Dialect, file: str = ""
) -> Program:
    """The program that a text tells: headings, sections, rows and seams, one to a line.

    Raises:
        InputError: every line that is not understood, each with its place and a guess.
    """
    known = vocabulary(stitches, dialect, text)
    lines = _text_lines(text.splitlines())
    if lines and (terms := _TERMS.fullmatch(lines[0].text)):
        _check_terms(terms["dialect"], dialect, Place(file, lines[0].number))
        lines = lines[1:]
    while lines and _NOTE.fullmatch(lines[0].text):
        lines = lines[1:]
    seam_lines = [line for line in lines if line.text.startswith("Seam ")]
    row_lines = [line for line in lines if not line.text.startswith("Seam ")]
    pieces: dict[str, tuple[Piece, tuple[Done, ...]]] = {}
    for heading, block in _blocks(row_lines, file):
        try:
            begun = _edges(heading, {name: done for name, (_, done) in pieces.items()})
        except InputError as error:
            raise error.at(Place(file, heading.line, f"line {heading.line}")) from error
        pieces[heading.name] = _piece(heading, block, begun, known, file)
    seams = tuple(_seam(line, known, file) for line in seam_lines)
    return Program(tuple(piece for piece, _ in pieces.values()), seams)


def read_piece(
    lines: Sequence[str],
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    *,
    name: str = "",
    bases: tuple[Base, ...] = (),
    places: int | None = None,
    file: str = "",
) -> Piece:
    """A piece from its lines, "label: text (count)"; a heading line before them is read as well.

    Args:
        name: the piece, when no heading line says it.
        bases: the edges it is worked onto, when no heading line says it.
        places: how many places these have.

    Raises:
        InputError: every line that is not understood, each with its place and a guess.
    """
    known = vocabulary(stitches, dialect)
    block = _text_lines(lines)
    heading = _heading(block[0], file) if block else None
    if heading:
        block = block[1:]
    else:
        closed = any(line.text.lower().startswith(("rnd", "round")) for line in block)
        heading = _Heading(name, closed, bases)
    begun = plain(places) if heading.bases else ()
    return _piece(heading, block, begun, known, file)[0]


def _text_lines(lines: Sequence[str]) -> list[_TextLine]:
    return [_TextLine(i, line.strip()) for i, line in enumerate(lines, start=1) if line.strip()]


def _check_terms(found: str, dialect: Dialect, place: Place) -> None:
    if found.lower() != dialect:
        raise InputError(f"it declares {found} terms, but is read with {dialect.upper()}", place)


# Pieces


def _heading(line: _TextLine, file: str) -> _Heading | None:
    found = _HEADING.fullmatch(line.text)
    if found is None:
        return None
    try:
        bases = read_stretches(found["edges"]) if found["edges"] else ()
    except InputError as error:
        raise error.at(Place(file, line.number, f"line {line.number}")) from error
    return _Heading(found["name"], not found["way"].startswith("rows"), bases, line.number)


def _blocks(lines: Sequence[_TextLine], file: str) -> list[tuple[_Heading, list[_TextLine]]]:
    """Each heading with the lines below it."""
    blocks: list[tuple[_Heading, list[_TextLine]]] = []
    for line in lines:
        heading = _heading(line, file)
        if heading:
            blocks.append((heading, []))
        elif blocks:
            blocks[-1][1].append(line)
        else:
            raise InputError(
                'a piece begins with a line such as "skirt: worked in joined rounds, turned.", '
                f'not with "{line.text[:40]}"',
                _place(line, file),
            )
    return blocks


def _edges(heading: _Heading, pieces: Mapping[str, tuple[Done, ...]]) -> tuple[Stretch, ...]:
    """What the piece is worked into, nothing for a piece that begins by itself."""
    if heading.name in pieces:
        raise InputError(f'there are two pieces "{heading.name}"; call them by different names')
    for base in heading.bases:
        if base.piece not in pieces:
            near = near_names(base.piece, pieces)
            raise InputError(
                f'"{heading.name}" is worked into "{base.piece}", which is no piece before it{near}'
            )
    return tuple(stretch_of(base, pieces[base.piece]) for base in heading.bases)


def _piece(
    heading: _Heading,
    block: Sequence[_TextLine],
    begun: tuple[Stretch, ...] | None,
    known: Vocabulary,
    file: str,
) -> tuple[Piece, tuple[Done, ...]]:
    # What lines say does not depend on where they stand; what is wrong with them is told with it.
    lines = tuple(_TextLine(0, line.text) for line in block)
    try:
        return _read(replace(heading, line=0), lines, begun, known)
    except InputError:
        return _read_with_places(heading, block, begun, known, file)


@lru_cache(maxsize=KEPT)
def _read(
    heading: _Heading,
    block: tuple[_TextLine, ...],
    begun: tuple[Stretch, ...] | None,
    known: Vocabulary,
) -> tuple[Piece, tuple[Done, ...]]:
    return _read_with_places(heading, block, begun, known, "")


def _read_with_places(
    heading: _Heading,
    block: Sequence[_TextLine],
    begun: tuple[Stretch, ...] | None,
    known: Vocabulary,
    file: str,
) -> tuple[Piece, tuple[Done, ...]]:
    heard = Heard(begun, heading.closed)
    if block and (colour := BEGIN_COLOUR.fullmatch(block[0].text)):
        heard, block = replace(heard, colour=colour["letter"].upper()), block[1:]
    for line, said in _parsed(block, heading.closed, known, file):
        if isinstance(said, str):
            heard = heard.in_section(said)
            continue
        try:
            _, heard = rows_of(said, heard, known)
        except InputError as error:
            raise error.at(_place(line, file)) from error
    if not heard.done:
        place = Place(file, heading.line, f"line {heading.line}")
        raise InputError(f'"{heading.name}" has no rows', place)
    rows = tuple(done.row for done in heard.done)
    return Piece(heading.name, heading.closed, rows, heading.bases, heard.colour), heard.done


def _parsed(
    block: Sequence[_TextLine], closed: bool, known: Vocabulary, file: str
) -> list[tuple[_TextLine, AnySaid | str]]:
    """Every line parsed, a section line as its name; all faults told together."""
    parsed: list[tuple[_TextLine, AnySaid | str]] = []
    faults: list[Fault] = []
    for line in block:
        try:
            section = _SECTION.fullmatch(line.text)
            parsed.append((line, section["name"] if section else _said(line, closed, known)))
        except InputError as error:
            faults.extend(error.at(_place(line, file)).faults)
    if faults:
        raise InputError.of(faults)
    return parsed


def _said(line: _TextLine, closed: bool, known: Vocabulary) -> AnySaid:
    said = parse_row(line.text, known)
    if said.label.kind == ("row" if closed else "round"):
        way = "rounds" if closed else "rows"
        raise InputError(f'this piece is worked in {way}, but the line begins "{_label(line)}"')
    return said


def _place(line: _TextLine, file: str) -> Place:
    """Where a fault of a line lies; lines are counted in a text without a file name as well."""
    label = _label(line)
    return Place(file, line.number, label if file else f"line {line.number}, {label}")


def _label(line: _TextLine) -> str:
    return line.text.partition(":")[0].partition("(")[0].strip()[:30]


# Seams


def _seam(line: _TextLine, known: Vocabulary, file: str) -> Seam:
    place = _place(line, file)
    found = _SEAM.fullmatch(line.text)
    if found is None:
        raise InputError(
            'a seam is told as "Seam NAME: sc through both edges: 1 in each of 10 sts along the '
            'last row of A; 10 sts along the foundation edge of B, spread evenly. (10 sc)"',
            place,
        )
    try:
        spread = parse_spread(found["spread"], known) if found["spread"] else ()
        count, first = read_along(found["first"])
        over, second = read_along(found["second"])
        stitch = known.key(found["stitch"])
    except InputError as error:
        raise error.at(place) from error
    except KeyError as error:
        near = near_names(found["stitch"].lower(), known.keys)
        raise InputError(f'"{found["stitch"]}" is no stitch{near}', place) from error
    if found["each"]:
        spread = (1,) * over
    if found["shares"]:
        spread = _even(found["shares"], count, over, place)
    return Seam(found["name"], stitch, first, second, count, over, spread)


def _even(shares: str, count: int, over: int, place: Place) -> tuple[int, ...]:
    """An even spread, if it is what the text says of it: "46 take 2 and 52 take 1"."""
    spread = even_spread(count, over)
    told = {int(k): int(n) for n, k in re.findall(r"(\d+) takes? (\d+)", shares)}
    if told != dict(Counter(spread)):
        meant = " and ".join(
            f"{n} take {k}" for k, n in sorted(Counter(spread).items(), reverse=True)
        )
        raise InputError(
            f"{count} stitches spread evenly over {over} places are not{shares}; {meant}", place
        )
    return spread
