"""A piece, a seam, a whole program in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from frogless.rows.nodes import Piece, Program, Row, Seam
from frogless.stitches.model import Dialect, Stitch
from frogless.write.counted import say_count
from frogless.write.fold import Line, Told, fold, line_of
from frogless.write.ground import EDGE_NOUNS, NOTHING, Ground, base_ground, ground_above
from frogless.write.markers import say_in_general
from frogless.write.phrases import phrases
from frogless.write.row import Said, say_row
from frogless.write.seams import say_edge, say_seam
from frogless.write.words import Words


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
    seam: Seam, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> Line:
    """A seam as a line."""
    return say_seam(seam, Words(stitches, dialect, phrases(language)))


def write_marker_note(piece: Piece, language: str = "en") -> str:
    """What a maker has to know of the markers before she begins; "" for a piece without markers."""
    return say_in_general(piece, phrases(language))


def write_pieces(
    program: Program, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> tuple[WrittenPiece, ...]:
    """Every piece of a program, each first row worded for the edge it is worked into."""
    words = Words(stitches, dialect, phrases(language))
    return tuple(
        WrittenPiece(
            piece.name,
            say_heading(piece, words),
            fold(tell(piece, words, _edge(program, piece, words)), piece.closed, words.phrases),
        )
        for piece in program.pieces
    )


def write_program(
    program: Program, stitches: Mapping[str, Stitch], dialect: Dialect, language: str = "en"
) -> str:
    """The instructions alone, as plain text that `read` turns back into the program."""
    words = Words(stitches, dialect, phrases(language))
    blocks = [words.phrases.say(f"terms_{dialect}")]
    written = write_pieces(program, stitches, dialect, language)
    for piece, told in zip(program.pieces, written, strict=True):
        blocks.append("\n".join([told.heading, *_with_sections(piece, told.lines, words)]))
    seams = [say_line(say_seam(seam, words), words) for seam in program.seams]
    return "\n\n".join([*blocks, *seams]) + "\n"


def tell(piece: Piece, words: Words, ground: Ground | None = None) -> tuple[Told, ...]:
    """Every row of a piece in words, in order; what was said once is said shorter later."""
    said, told = Said(), []
    for row, below in zip(piece.rows, _grounds(piece, words, ground), strict=True):
        told.append(
            Told(row, say_row(row, said, below, piece.closed, words), say_count(row, words))
        )
        said = said.after(row)
    return tuple(told)


def say_heading(piece: Piece, words: Words) -> str:
    """How a piece is worked, and into what: "skirt: worked in joined rounds, turned."."""
    way = words.phrases.say(f"way_{_way(piece)}")
    if not piece.bases:
        return words.phrases.say("piece", name=piece.name, way=way)
    edge = say_edge(piece.bases[0], words)
    side = piece.rows[0].side if piece.rows else "RS"
    return words.phrases.say("piece_on_base", name=piece.name, way=way, edge=edge, side=side)


def say_line(line: Line, words: Words) -> str:
    """A line as it stands in plain text: "Rnd 1 (RS): … (160 dc)"."""
    return words.phrases.say("line", label=line.label, text=line.text, count=line.count)


def _grounds(piece: Piece, words: Words, ground: Ground | None) -> list[Ground]:
    """What each row is worked into."""
    if ground is None:
        ground = Ground(None, EDGE_NOUNS[piece.bases[0].edge]) if piece.bases else NOTHING
    above = [ground_above(row, words) for row in piece.rows]
    return [ground, *above][: len(piece.rows)]


def _edge(program: Program, piece: Piece, words: Words) -> Ground | None:
    return base_ground(program, piece.bases[0], words) if piece.bases else None


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
