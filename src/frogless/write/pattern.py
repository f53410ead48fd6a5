"""A piece, a seam, a whole program in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric, runs_back
from frogless.fabric.stretches import stretch
from frogless.rows.colours import goes_on
from frogless.rows.nodes import Base, Chain, Change, Piece, Program, Row, Seam, Start
from frogless.rows.walk import nodes
from frogless.stitches.model import Dialect, Stitch
from frogless.write.counted import say_count
from frogless.write.edges import needs_numbers, noun_of, say_joining, say_stretches
from frogless.write.fold import Line, Told, fold, line_of
from frogless.write.ground import (
    NOTHING,
    Ground,
    Noun,
    edges_met,
    grounds,
    one_noun,
    stretch_nouns,
)
from frogless.write.markers import say_in_general
from frogless.write.phrases import phrases
from frogless.write.row import Place, Said, begun_joined, say_twice
from frogless.write.seams import say_seam
from frogless.write.words import Words

KEPT = 4096
"""Rows whose words are remembered: after an edit most of them come again, and so within a piece."""

KEPT_PIECES = 128
"""Pieces whose words are remembered: what was written to be proven is what is published."""


@dataclass(frozen=True, slots=True)
class WrittenPiece:
    """A piece in words: its heading line and its rows."""

    name: str
    heading: str
    lines: tuple[Line, ...]


def write_piece(
    piece: Piece,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    language: str = "en",
    ground: Ground | None = None,
) -> tuple[Line, ...]:
    """The rows of a piece, those that say the same folded into one line.

    Args:
        ground: what the edge offers that the piece is worked onto; without it the first row of
            such a piece is written with its numbers.

    Raises:
        InputError: a language without a catalogue.
    """
    words = Words(stitches, dialect, phrases(language))
    return fold(tell(piece, words, ground), piece.closed, words.phrases)


def write_rows(
    piece: Piece,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    language: str = "en",
    ground: Ground | None = None,
) -> tuple[Line, ...]:
    """The rows of a piece, each on a line of its own, as `write_piece` words them."""
    words = Words(stitches, dialect, phrases(language))
    told = tell(piece, words, ground)
    return tuple(line_of([each], piece.closed, words.phrases) for each in told)


def write_seam(
    seam: Seam,
    stitches: Mapping[str, Stitch],
    dialect: Dialect,
    language: str = "en",
    rounds: Collection[str] = (),
) -> Line:
    """A seam as a line.

    Args:
        rounds: names of the pieces that are worked in rounds.
    """
    return say_seam(seam, Words(stitches, dialect, phrases(language)), rounds)


def write_marker_note(piece: Piece, language: str = "en") -> str:
    """What a maker has to know of the markers before she begins; "" for a piece without markers."""
    return say_in_general(piece, phrases(language))


def write_numbering_note(program: Program, language: str = "en") -> str:
    """How stretches of edges are numbered; "" for a program without any."""
    edges = [piece.bases for piece in program.pieces]
    edges += [edge for seam in program.seams for edge in (seam.first, seam.second)]
    return phrases(language).say("numbering") if any(map(needs_numbers, edges)) else ""


def write_colour_note(program: Program, dialect: Dialect, language: str = "en") -> str:
    """How colours are changed; "" for a program that changes none."""
    rows = [row for piece in program.pieces for row in piece.rows]
    changes = [n for row in rows for n, _ in nodes(row.body) if isinstance(n, Change)]
    if not changes:
        return ""
    told = phrases(language)
    names = ["colour_note"]
    names += ["colour_note_carried"] if any(change.carried for change in changes) else []
    names += ["colour_note_cut"] if not all(change.carried for change in changes) else []
    return " ".join(told.say(name, word=told.say(f"colour_{dialect}")) for name in names)


def write_pieces(
    program: Program, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> tuple[WrittenPiece, ...]:
    """Every piece of a program, each first row worded for the edges it is worked into.

    Raises:
        InputError: a language without a catalogue, or a piece begun on an edge that is not there.
    """
    words, pieces = Words(stitches, dialect, phrases(language)), program.pieces
    return tuple(
        _written(pieces[: index + 1] if piece.bases else (piece,), words)
        for index, piece in enumerate(pieces)
    )


def write_program(
    program: Program, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> str:
    """The instructions alone, as plain text that `read` turns back into the program."""
    words = Words(stitches, dialect, phrases(language))
    blocks = [words.phrases.say(f"terms_{dialect}")]
    notes = (
        write_numbering_note(program, language),
        write_colour_note(program, dialect, language),
    )
    blocks += [words.phrases.say("note", note=note) for note in notes if note]
    written = write_pieces(program, stitches, dialect, language)
    for piece, told in zip(program.pieces, written, strict=True):
        blocks.append("\n".join([told.heading, *_with_sections(piece, told.lines, words)]))
    rounds = rounds_of(program)
    seams = [say_line(say_seam(seam, words, rounds), words) for seam in program.seams]
    return "\n\n".join([*blocks, *seams]) + "\n"


def rounds_of(program: Program) -> frozenset[str]:
    """The names of the pieces that are worked in rounds."""
    return frozenset(piece.name for piece in program.pieces if piece.closed)


def tell(piece: Piece, words: Words, ground: Ground | None = None) -> tuple[Told, ...]:
    """Every row of a piece in words, in order; what was said once is said shorter later."""
    said, told, longer = Said(), list[Told](), chains_for_first_row(piece)
    below = grounds(piece, ground or _unknown(piece), words)
    colour = piece.colour
    for index, (row, on) in enumerate(zip(piece.rows, below, strict=True)):
        rejoined = index > 0 and piece.rows[index - 1].end.fasten_off
        joined = begun_joined(piece.rows, index, closed=piece.closed)
        place = Place(piece.closed, longer if index < 2 else 0, rejoined, joined=joined)
        if index == 0:
            place = replace(place, colour=piece.colour)
        # What is said of a row does not depend on its number, but that of a foundation does.
        bare = replace(row, number=min(row.number, 1), section="")
        told.append(Told(row, *_said(bare, said, on, place, words), colour))
        said, colour = said.after(row), _colour_after(row, colour)
    return tuple(told)


def chains_for_first_row(piece: Piece) -> int:
    """Chains that a foundation chain is made longer by, when row 1 is worked into it from the hook.

    Those skipped are the turning chain; one that counts stands on a place of its own, so it needs
    one chain less than it has: 91 double crochets are worked into 93 chains, 91 single crochets
    into 92.

    Source: common practice; chain = n + skipped - (1 if the turning chain counts).
    """
    if piece.closed or piece.bases or len(piece.rows) < 2:
        return 0
    foundation, row = piece.rows[:2]
    match foundation.body:
        case (Chain(n, True),) if foundation.number == 0 and n and row.number == 1:
            pass
        case _:
            return 0
    start = row.start
    goes_on = runs_back(row) != runs_back(foundation) and not foundation.end.fasten_off
    plain = foundation.start == Start() and not start.shares and not start.across
    if not (goes_on and plain and start.chains):
        return 0
    return start.chains - int(start.counts)


def say_heading(
    piece: Piece,
    words: Words,
    rounds: Collection[str] = (),
    nouns: Sequence[Noun] = (),
    joined: str = "",
) -> str:
    """How a piece is worked, and into what: "skirt: worked in joined rounds, turned.".

    Args:
        rounds: names of the pieces that are worked in rounds.
        nouns: what the places of each of its bases are called, if that is known.
        joined: where yarn is joined for it, in words; "" when it goes on with the yarn at hand.
    """
    way = words.phrases.say(f"way_{_way(piece)}")
    if not piece.bases:
        return words.phrases.say("piece", name=piece.name, way=way)
    edge = say_stretches(piece.bases, words, rounds, nouns)
    side = piece.rows[0].side if piece.rows else "RS"
    values = {"name": piece.name, "way": way, "edge": edge, "side": side, "place": joined}
    return words.phrases.say("piece_on_base_joined" if joined else "piece_on_base", **values)


def say_line(line: Line, words: Words) -> str:
    """A line as it stands in plain text: "Rnd 1 (RS): … (160 dc)"."""
    return words.phrases.say("line", label=line.label, text=line.text, count=line.count)


def _colour_after(row: Row, colour: str) -> str:
    changes = [node.colour for node, _ in nodes(row.body) if isinstance(node, Change)]
    return changes[-1] if changes else colour


@lru_cache(maxsize=KEPT)
def _said(row: Row, said: Said, ground: Ground, place: Place, words: Words) -> tuple[str, str, str]:
    """The text of a row, its count, and its text as it would be if all had been said before."""
    count = say_count(row, words, closed=place.closed, more=0 if row.number else place.from_hook)
    text, full = say_twice(row, said, ground, place, words)
    return text, count, full


def _unknown(piece: Piece) -> Ground:
    """What a piece is worked into whose edges are not at hand."""
    return Ground(None, noun_of(piece.bases[0])) if piece.bases else NOTHING


@lru_cache(maxsize=KEPT_PIECES)
def _written(pieces: tuple[Piece, ...], words: Words) -> WrittenPiece:
    """The last of some pieces, which may be begun on the others."""
    program, piece = Program(pieces), pieces[-1]
    ground, nouns, joined = NOTHING, list[Noun](), ""
    if piece.bases:
        fabric = expand(program, words.stitches)
        ground = edges_met(program, piece, fabric, words)
        nouns = [_called(program, base, fabric, words) for base in piece.bases]
        if not goes_on(program, len(pieces) - 1):
            joined = say_joining(piece, fabric, words)
    return WrittenPiece(
        piece.name,
        say_heading(piece, words, rounds_of(program), nouns, joined),
        fold(tell(piece, words, ground), piece.closed, words.phrases),
    )


def _called(program: Program, base: Base, fabric: Fabric, words: Words) -> Noun:
    """What the places of a stretch are called: chains when all are, else as its edge has it."""
    found = stretch(base, fabric.pieces)
    return "ch" if one_noun(stretch_nouns(program, base, found, words)) == "ch" else noun_of(base)


def _way(piece: Piece) -> str:
    """How most rows follow each other; the first and the last may begin and end otherwise."""
    rows = [row for row in piece.rows if row.number] or piece.rows
    rows = rows[:-1] or rows
    joined, turned = Counter((r.end.join != "none", r.end.turn) for r in rows).most_common(1)[0][0]
    if not piece.closed:
        return "rows_turned" if turned else "rows"
    if joined:
        return "joined_turned" if turned else "joined"
    return "rounds" if turned else "spiral"


def _with_sections(piece: Piece, lines: Sequence[Line], words: Words) -> list[str]:
    """The lines, with a line that names the section before the first row of each."""
    begins = _first_rows(piece.rows)
    written = []
    for line in lines:
        if line.first_row in begins:
            written.append(words.phrases.say("section", name=begins[line.first_row]))
        written.append(say_line(line, words))
    return written


def _first_rows(rows: Sequence[Row]) -> dict[int, str]:
    """For the first row of each section its name; a piece without sections has none."""
    begins = {rows[0].number: rows[0].section} if rows and rows[0].section else {}
    changes = (row for before, row in pairwise(rows) if before.section != row.section)
    return begins | {row.number: row.section for row in changes}
