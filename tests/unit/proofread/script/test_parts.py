"""Pieces, sizes and sentences are found in the looks that people give them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.proofread.script.cut import cut
from frogless.proofread.script.model import Heading, Prose, RowText, Script, Statement


def statements(script: Script) -> list[Statement]:
    """All of them, in order."""
    return [each for part in script.parts for each in part.statements]


def headings(text: str) -> list[tuple[str, bool, int]]:
    """Name, whether it is a piece, and how often it is made."""
    found = statements(cut(text))
    return [(each.name, each.piece, each.make) for each in found if isinstance(each, Heading)]


@pytest.mark.parametrize(
    "heading", ["SLEEVE (make 2)", "## Sleeve (make 2)", "Sleeve (make 2)\n======",
     "**Sleeve** (make 2)", "Sleeve (make 2):"]
)  # fmt: skip
def test_a_piece_is_headed_in_many_looks(heading: str) -> None:
    """Capitals, Markdown, a line below, a colon, nothing at all."""
    text = (
        f"Vest\n\nBack\n\nCh 20.\nRow 1: Sc across.\nFasten off.\n\n{heading}\n\nCh 9.\nRow 1: Sc."
    )
    name, piece, make = headings(text)[1]
    assert (name.lower(), piece, make) == ("sleeve", True, 2)


def test_a_section_goes_on_with_the_numbers() -> None:
    """Row 3 after Row 2 is the same piece under another heading."""
    text = "Hat\n\nBODY\nRnd 1: 6 sc in magic ring.\nRnd 2: Inc.\n\nBRIM\nRnd 3: Sc around."
    assert headings(text) == [("BODY", True, 1), ("BRIM", False, 1)]


def test_a_section_may_count_its_rows_anew() -> None:
    """Nothing is fastened off and nothing is begun: the work goes on."""
    text = "Hat\n\nBODY\nRnd 1: 6 sc in magic ring.\nRnd 2: Inc.\n\nBRIM\nRnd 1: Sc around."
    brim = [each for each in statements(cut(text)) if isinstance(each, Heading)][1]
    assert (brim.piece, brim.onto) == (False, True)


def test_a_piece_stands_above_its_sections() -> None:
    """The louder heading names the piece, the quieter ones below it its sections."""
    text = (
        "Top\n***\n\nBack\n====\n\nMake 2.\n\nFoundation\n----------\n\nFoundation (WS): Ch 20.\n\n"
        "Hem\n---\n\nRow 1 (RS): Sc across.\n"
    )
    assert headings(text) == [("Back", True, 2), ("Foundation", False, 1), ("Hem", False, 1)]


@pytest.mark.parametrize(
    ("line", "sizes"),
    [
        ("Sizes: S (M, L) [XL, 2XL]", ("S", "M", "L", "XL", "2XL")),
        ("Sizes: XS/S/M", ("XS", "S", "M")),
        ("Sizes: XS/S (M/L, XL/2XL)", ("XS/S", "M/L", "XL/2XL")),
        ("SIZES small (medium, large)", ("small", "medium", "large")),
        ("Sizes: child (woman, man)", ("child", "woman", "man")),
        ("Sizes: 34 (36, 38)", ("34", "36", "38")),
        ("To fit bust: 80 (90, 100) cm", ("1", "2", "3")),
        ("Sizes:\n- S: 80 cm\n- M: 90 cm\n- L: 100 cm", ("S", "M", "L")),
        ("A plain one.", ("1", "2", "3")),
        ("| Size | Bust |\n|---|---|\n| S | 90 |\n| M | 100 |\n| L | 110 |", ("S", "M", "L")),
        ("Stitch counts are given as S (M, L).", ("S", "M", "L")),
    ],
)
def test_sizes_are_named(line: str, sizes: tuple[str, ...]) -> None:
    """As the pattern names them; else as many as its brackets hold."""
    text = f"Vest\n\n{line}\n\nCh 20 (24, 28).\nRow 1: Sc in next 5 (6, 7) sts."
    assert cut(text).sizes == sizes


@pytest.mark.parametrize(
    "line",
    [
        "Size: one size",
        "Size: M",
        "Size: child 4 to 6 years",
        'size: one size, 20" x 4.5" flat',
        "To fit waist 84 cm, hip 112 cm",
    ],
)
def test_one_size_has_no_name(line: str) -> None:
    """One size, whatever it is called, needs none."""
    assert cut(f"Vest\n\n{line}\n\nCh 20.\nRow 1: Sc across.").sizes == ("",)


def test_a_remark_is_told_by_its_look() -> None:
    """A box beside the rows and a line that begins with "Note:" are no instructions."""
    text = "Rnd 1: Sc.\n\n  | Hint: Count\n  | again.\n\nNote: it curls.\n\nRnd 2: Sc."
    said = [each for each in statements(cut(text)) if isinstance(each, Prose)]
    assert [each.remark for each in said] == [True, True]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Use a 3.75 mm hook. Turn.", 2),
        ("Work approx. 4 rows.", 1),
        ("Rep. 3 times. Fasten off.", 2),
        ("Sc in next 3 sts. Turn.", 2),
        ("Work 30 sc. (30 sc)", 1),
        ("Work even (see p. 2. It helps).", 1),
    ],
)
def test_sentences_end_where_they_do(text: str, count: int) -> None:
    """Not at a decimal, not at a shortened word, not before a count."""
    found = statements(cut(f"Rnd 1: Sc around. (6)\n\n{text}"))
    assert len([each for each in found if isinstance(each, Prose)]) == count


def test_the_chain_above_the_first_row_is_kept() -> None:
    """It needs no heading and no label."""
    first = statements(cut("Worked example\n\nCh 102.\nRow 1: Hdc in 2nd ch from hook."))[0]
    assert isinstance(first, Prose)


def test_what_belongs_to_the_page_is_left_out() -> None:
    """Page numbers, running heads and owners stand between the rows of a PDF's text."""
    text = "Band hat 1\n\nRnd 1: 6 sc in MR.\n\n- 2 -\nBand hat 2\n© The band.\nRnd 2: Inc."
    assert all(isinstance(each, RowText) for each in statements(cut(text)))


@pytest.mark.parametrize(
    "line",
    ["fo", "sl st, fo, leave tail", "leave a 15\" tail", "fold in half and sew the sides", "Row 3: ch 1",
     "r3-r9: as r2"],
)  # fmt: skip
def test_a_line_below_a_row_stands_alone(line: str) -> None:
    """What ends the work, and a row whatever the words above it end with."""
    above = "Row 1: ch 1, sc in each st across, turn, change to col B, pull up a loop"
    text = f"Band hat\n\n{above}\nRow 2: as row 1, change to col A\n{line}"
    assert len(statements(cut(text))) == 3


def test_a_heading_of_rows_is_no_row() -> None:
    """ "Increase rows" above "Row 1:" heads those below; "nut: beige" above "1)" a piece."""
    text = "Acorn\n\nIncrease rows\nRow 1: ch 1, sc in each st.\nRow 2: ch 1, sc in each st."
    assert [each.label.numbers for each in statements(cut(text)) if isinstance(each, RowText)] == [
        (1,),
        (2,),
    ]
    text = "Acorn\n\ncap: brown\n1) 6 sc in mr\n2) inc x 6 (12)\n\nnut: beige\n1) 6 sc in mr\n2) inc x 6 (12)"
    assert [each[:2] for each in headings(text)] == [("cap: brown", True), ("nut: beige", True)]


LABELS = [
    "Rnd {};",
    "Rnd {}:",
    "Round {}.",
    "R{}:",
    "**Row {}:**",
    "- Row {} (RS):",
    "Row {} –",
    "ROW {}:",
]
BODIES = [
    "sc in each st around. (12)",
    "ch 1, *sc in next 2 sts, inc; rep from * around",
    "Rep Row 1.",
]


@settings(max_examples=60)
@given(
    st.sampled_from(LABELS),
    st.lists(st.sampled_from(BODIES), min_size=1, max_size=8),
    st.booleans(),
)
def test_every_row_is_found(label: str, bodies: list[str], spaced: bool) -> None:
    """Whatever the label's look, with blank lines between or without."""
    rows = [f"{label.format(number)} {body}" for number, body in enumerate(bodies, start=1)]
    text = "Band hat\n\n" + ("\n\n" if spaced else "\n").join(rows)
    found = [each for each in statements(cut(text)) if isinstance(each, RowText)]
    assert [each.label.numbers for each in found] == [(n,) for n in range(1, len(bodies) + 1)]
