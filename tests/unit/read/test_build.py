"""Pieces, seams and programs from whole texts."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.build import read_piece, read_program
from frogless.read.vocabulary import vocabulary
from frogless.rows.nodes import Base, Program, Repeat, Seam, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect

STITCHES = dictionary()
RING = "Foundation (RS): Work 9 fdc; without twisting, join with sl st to first fdc to form a ring."
SKIRT = f"""skirt: worked in joined rounds, not turned.
Section: hip
{RING} (9 fdc)
Rnds 1–2 (RS): Dc in each st around; join with sl st to first dc. (9 dc)
Section: hem
Rnd 3 (RS): Sc in each st around; join with sl st to first sc. (9 sc)
"""
COVER = """
cover: worked in a spiral, into the foundation edge of skirt, RS facing.
Rnd 1 (RS): 2 sc in each st around; do not join. (18 sc)
"""
SEAM = (
    "Seam side: Sc through both edges: 1 in each of 9 sts along the last row of skirt; "
    "3 row ends of cover: 2 in next, 3 in next, 4 in next. (9 sc)"
)


def read(text: str, dialect: Dialect = "us", file: str = "") -> Program:
    """A program from its text."""
    return read_program(text, STITCHES, dialect, file)


def complaint(text: str, dialect: Dialect = "us", file: str = "a.txt") -> str:
    """What is said of a text that is refused."""
    with pytest.raises(InputError) as error:
        read(text, dialect, file)
    return str(error.value)


def test_program_has_pieces_sections_bases_and_seams() -> None:
    """Headings, section lines, rows and seams."""
    program = read(f"Terms: US\n\n{SKIRT}{COVER}\n{SEAM}\n")
    skirt, cover = program.pieces
    assert [row.section for row in skirt.rows] == ["hip", "hip", "hip", "hem"]
    assert (skirt.closed, skirt.bases) == (True, ())
    assert cover.bases == (Base("skirt", "foundation"),)
    assert isinstance(cover.rows[0].body[0], Repeat)
    assert cover.rows[0].body[0].times == 9
    assert program.seams == (
        Seam(
            "side",
            "single_crochet",
            (Base("skirt", "last_row"),),
            (Base("cover", "row_ends"),),
            9,
            3,
            (2, 3, 4),
        ),
    )


def test_piece_is_read_from_its_lines_alone() -> None:
    """Closed when its lines say rounds; named by whoever asks."""
    lines = SKIRT.splitlines()[2:]
    piece = read_piece(lines, STITCHES, "us", name="skirt")
    assert (piece.name, piece.closed, len(piece.rows)) == ("skirt", True, 4)
    flat = read_piece(["Row 1: Dc in next 9 sts."], STITCHES, "us", name="band")
    assert not flat.closed


def test_piece_on_an_edge_is_told_its_places() -> None:
    """Or reads the heading and is told the places."""
    line = "Rnd 1 (RS): Sc in each st around; do not join."
    bases = (Base("skirt", "foundation"),)
    piece = read_piece([line], STITCHES, "us", name="cover", bases=bases, places=9)
    assert piece.bases == bases
    assert piece.rows[0].body == (Work("single_crochet", 9),)
    headed = read_piece(COVER.splitlines(), STITCHES, "us", places=9)
    assert (headed.name, headed.bases) == ("cover", bases)


def test_stated_count_is_kept_though_it_is_wrong() -> None:
    """The proof compares; the reader reports what stands there."""
    program = read(SKIRT.replace("(9 sc)", "(10 sc)"))
    assert program.pieces[0].rows[-1].count == 10


def test_fault_is_placed_by_file_line_and_row() -> None:
    """As an editor needs it; without a file, the line alone."""
    text = SKIRT.replace("Sc in each", "Scc in each")
    assert complaint(text).startswith('a.txt:6 Rnd 3: column 13: "Scc" is not understood')
    assert complaint(text, file="").startswith('line 6, Rnd 3: column 13: "Scc"')


def test_all_lines_that_are_not_understood_are_told_together() -> None:
    """One run, all faults."""
    text = SKIRT.replace("Sc in each", "Scc in each").replace("Dc in", "Dcc in")
    told = complaint(text)
    assert "a.txt:4 Rnds 1–2" in told
    assert "a.txt:6 Rnd 3" in told


def test_fault_of_a_row_that_is_understood_is_placed_too() -> None:
    """What contradicts the rows before."""
    text = SKIRT.replace("Rnd 3", "Rnd 4")
    assert complaint(text) == "a.txt:6 Rnd 4: row 4 follows row 2; row 3 was expected"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Hello.\n" + SKIRT, 'a piece begins with a line such as "skirt: worked in joined'),
        (SKIRT + "And so to bed.", '"so" is not understood'),
        (SKIRT + "Row 4 (RS): Dc in next st.", 'worked in rounds, but the line begins "Row 4"'),
        (SKIRT + SKIRT, 'a.txt:7 line 7: there are two pieces "skirt"'),
        (COVER, 'worked into "skirt", which is no piece before it'),
        (SKIRT + COVER.replace("of skirt", "of skrit"), 'did you mean "skirt"?'),
        ("skirt: worked in rows.\n", '"skirt" has no rows'),
        (SKIRT + "Seam side: sew.", "a seam is told as"),
        (
            SKIRT + SEAM.replace("Sc through", "Scc through"),
            '"Scc" is no stitch; did you mean "sc"',
        ),
        (SKIRT + SEAM.replace("2 in next,", "2 in nxet,"), 'column 6: "nxet" is not understood'),
        ("Terms: UK\n" + SKIRT, "it declares UK terms, but is read with US"),
    ],
)
def test_text_that_is_no_pattern_is_refused_with_its_place(text: str, told: str) -> None:
    """Nothing is skipped."""
    assert told in complaint(text)


def test_slip_stitch_is_read_by_both_of_its_uk_abbreviations() -> None:
    """Published UK lists have "ss" and "sl st"; they mean the same stitch."""
    words = vocabulary(dictionary(), "uk")
    assert words.key("sl st") == words.key("ss") == "slip_stitch"


def test_term_of_the_other_dialect_is_named_as_such() -> None:
    """A pattern is in one dialect."""
    told = complaint(SKIRT.replace("fdc", "ftr"), "uk")
    assert '"sc" is a US term, but UK terms are declared, in which it is "dc"' in told


SPREAD = (
    "Terms: US\n\nSeam waist: Sc through both edges: 1 in each of 18 sts along the foundation "
    "edge of skirt; 12 row ends of band, spread evenly (6 take 2 and 6 take 1). (18 sc)\n"
)


def test_even_spread_is_read_from_its_shares() -> None:
    """Twelve row ends take eighteen stitches, every other one two."""
    (seam,) = read_program(SPREAD, STITCHES, "us").seams
    assert seam.spread == (1, 2) * 6


def test_shares_that_do_not_come_out_are_refused() -> None:
    """18 over 12 is six twos and six ones, whatever the text says."""
    text = SPREAD.replace("6 take 2 and 6 take 1", "7 take 2 and 4 take 1")
    with pytest.raises(InputError, match="18 stitches spread evenly over 12 places are not"):
        read_program(text, STITCHES, "us")
