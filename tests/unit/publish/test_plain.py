"""The plain text of a pattern."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.publish.blocks import (
    Block,
    Bullets,
    Document,
    Figure,
    Heading,
    Instruction,
    Note,
    Paragraph,
    Table,
    Terms,
    Words,
)
from frogless.publish.plain import plain, width_of, wrapped

LONG = "dc in each of next 40 sts, 2 dc in next st, " * 4


def body(*blocks: Block, words: Words | None = None) -> str:
    """The text of some blocks, without title and blank ends."""
    document = Document("T", "", "en", blocks, (("d", "<svg/>"),), "", words=words or Words())
    return plain(document).removeprefix("T\n*").strip("\n")


def test_no_line_is_wider_than_78_when_a_whole_pattern_is_set(document: Document) -> None:
    """Every line fits a narrow window and a letter."""
    assert max(width_of(line) for line in plain(document).splitlines()) <= 78


def test_nothing_is_lost_when_a_whole_pattern_is_set(document: Document) -> None:
    """Labels, counts, captions, terms, title and footer all stand in the text."""
    text = " ".join(plain(document).split())
    wanted = [document.title, document.subtitle, document.footer]
    for block in document.blocks:
        match block:
            case Instruction(label, instruction, count):
                wanted.append(f"{label}: {instruction} ({count})")
            case Heading(words) | Paragraph(words) | Note(text=words):
                wanted.append(words)
            case Terms(items):
                wanted += [f"{term} {meaning}" for term, meaning in items]
            case Figure(alt=alt, caption=caption):
                wanted.append(f"[Picture: {alt}] {caption}")
            case Bullets(items):
                wanted += items
            case Table(caption, header, _):
                wanted.append(caption + " " + " ".join(header))
    flat = text.replace(" | ", " ")
    assert [part for part in wanted if " ".join(part.split()) not in flat] == []


def test_instruction_hangs_when_it_is_longer_than_a_line() -> None:
    """The label stands out at the margin."""
    lines = body(Instruction("Rnd 5 (RS)", LONG.strip(), "160 dc")).splitlines()
    assert lines[0].startswith("Rnd 5 (RS): dc in")
    assert all(line.startswith("    ") and line[4] != " " for line in lines[1:])
    assert lines[-1].endswith("(160 dc)")


def test_count_stays_together_when_the_line_breaks_near_it() -> None:
    """A short count is never torn apart, wherever the line ends."""
    for length in range(40, 90):
        text = body(Instruction("Rnd 1", "x" * 30 + " " + "y" * (length - 30), "160 dc"))
        assert "(160 dc)" in text


@pytest.mark.parametrize(
    ("row", "text"),
    [
        (Instruction("", "Fasten off.", ""), "Fasten off."),
        (Instruction("Rnd 1", "Fasten off.", ""), "Rnd 1: Fasten off."),
        (Instruction("Rnd 1", "dc", "2 (4, 6) dc"), "Rnd 1: dc (2 (4, 6) dc)"),
    ],
)
def test_instruction_has_no_empty_brackets_when_parts_are_missing(
    row: Instruction, text: str
) -> None:
    """Only what is there is written."""
    assert body(row) == text


def test_headings_are_underlined_as_long_as_they_are() -> None:
    """Level 1 with =, level 2 with -, deeper ones bare."""
    text = body(Heading("Skirt"), Heading("Waist", 2), Heading("Rib", 3))
    assert text == "Skirt\n=====\n\nWaist\n-----\n\nRib"


def test_table_is_aligned_when_columns_hold_figures() -> None:
    """Numbers stand under each other at their last digit."""
    table = Table("Girths", ("At", "Skirt"), (("Hip", "92.5 cm"), ("High hip", "110 cm")))
    assert body(table).splitlines() == [
        "Girths",
        "At          Skirt",
        "--------  -------",
        "Hip       92.5 cm",
        "High hip   110 cm",
    ]


def test_table_keeps_to_the_page_when_its_cells_are_long() -> None:
    """The widest column is broken into lines; the others stay whole."""
    lines = body(Table("", ("What", "n"), ((LONG.strip(), "4 balls"),))).splitlines()
    assert max(map(len, lines)) <= 78
    assert lines[2].endswith("  4 balls")
    assert " ".join(line.removesuffix("4 balls").strip() for line in lines[2:]) == LONG.strip()


def test_terms_are_set_in_two_columns_when_short_and_below_when_long() -> None:
    """A long term has its meaning on the next line."""
    assert body(Terms((("ch", "chain"), ("sl st", "slip stitch")))) == (
        "ch     chain\nsl st  slip stitch"
    )
    assert body(Terms((("front post double crochet", "around"),))) == (
        "front post double crochet\n    around"
    )


def test_picture_is_told_in_the_words_of_the_language() -> None:
    """The alt text stands for the drawing."""
    text = body(Figure("d", "ein Rock", "flach"), words=Words(picture="Bild"))
    assert text == "[Bild: ein Rock]\nflach"


def test_note_stands_apart() -> None:
    """Each line of a note carries a bar."""
    lines = body(Note("hint", LONG)).splitlines()
    assert lines[0].startswith("  | Hint: ")
    assert all(line.startswith("  | ") for line in lines)


@pytest.mark.parametrize(
    ("text", "columns"), [("dc", 2), ("½ × 3–4", 7), ("編み図", 6), ("e\u0301", 1), ("", 0)]
)
def test_width_counts_columns_when_characters_are_wide_or_combine(text: str, columns: int) -> None:
    """Ideographs take two columns, combining marks none."""
    assert width_of(text) == columns


def test_lines_break_between_ideographs_when_there_are_no_spaces() -> None:
    """Japanese text keeps to the line, too."""
    lines = wrapped("編" * 60, width=20).splitlines()
    assert [width_of(line) for line in lines] == [20] * 6


def test_number_keeps_its_unit_when_a_line_ends_there() -> None:
    """A no-break space is one."""
    assert wrapped("a hip of 88\u00a0cm", width=11) == "a hip of\n88\u00a0cm"


def test_no_odd_space_is_left_in_the_text() -> None:
    """What held a number to its unit is a plain space to whoever searches."""
    told = plain(Document("T", "", "en", (Paragraph("a hip of 88\u00a0cm"),), (), ""))
    assert "a hip of 88 cm" in told


def test_long_word_has_a_line_to_itself_when_it_cannot_fit() -> None:
    """Words are never cut."""
    assert wrapped("a " + "b" * 30 + " c", width=10) == "a\n" + "b" * 30 + "\nc"


def test_text_ends_with_one_line_end(document: Document) -> None:
    """With a footer and without one."""
    for sample in (document, replace(document, footer="")):
        assert plain(sample).endswith("\n")
        assert not plain(sample).endswith("\n\n")
