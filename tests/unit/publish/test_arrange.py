"""What pages share: heading levels, runs of rows, columns of figures, drawings by key."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.publish.arrange import (
    GLUE,
    Run,
    columns_of_figures,
    drawing_of,
    folded,
    glued,
    in_pieces,
    in_runs,
    note_title,
    rows_have_names,
    squared,
    steady_headings,
    terms_are_short,
)
from frogless.publish.blocks import (
    Document,
    Figure,
    Heading,
    Instruction,
    Paragraph,
    Table,
    Terms,
)


def levels(*given: int) -> list[int]:
    """The levels that headings of the given levels end up with."""
    blocks = steady_headings(tuple(Heading("x", level) for level in given))
    return [block.level for block in blocks if isinstance(block, Heading)]


@pytest.mark.parametrize(
    ("given", "steady"),
    [
        ((1, 2, 3, 2, 1), [1, 2, 3, 2, 1]),
        ((1, 3), [1, 2]),
        ((2, 2, 1), [1, 2, 1]),
        ((1, 3, 3), [1, 2, 3]),
        ((1, 2, 3, 4, 5), [1, 2, 3, 4, 4]),
        ((0, -1), [1, 1]),
    ],
)
def test_heading_levels_are_not_skipped_when_given_with_gaps(
    given: tuple[int, ...], steady: list[int]
) -> None:
    """Levels begin at 1 and never go down by more than one."""
    assert levels(*given) == steady


def test_instructions_are_gathered_when_they_follow_each_other() -> None:
    """Neighbouring rows form one run; a paragraph ends it."""
    one, two, three = (Instruction(f"Rnd {n}", "dc around", "") for n in (1, 2, 3))
    between = Paragraph("Measure.")
    assert in_runs((one, two, between, three)) == (Run((one, two)), between, Run((three,)))


@pytest.mark.parametrize(
    ("cells", "right"),
    [
        (("72 cm", "110.5 cm"), True),
        (("410–465 m", "4", ""), True),
        (("−2 cm", "+4 cm", "½ in", "28 1/4 in", "12 %"), True),
        (("100 (108, 116)",), False),
        (("3.5 mm (for the edging)",), False),
        (("2 balls",), False),
        (("", ""), False),
        (("4", "four"), False),
    ],
)
def test_column_stands_right_when_all_its_cells_are_numbers(
    cells: tuple[str, ...], right: bool
) -> None:
    """A column of numbers with short units is one of figures; empty cells do not count."""
    table = Table("", ("what", "how much"), tuple(("x", cell) for cell in cells))
    assert columns_of_figures(table) == (False, right)


def test_column_stands_right_when_a_cell_has_nothing_to_say() -> None:
    """A dash is no word."""
    assert columns_of_figures(Table("", ("at", "body"), (("hip", "101 cm"), ("hem", "–")))) == (
        False,
        True,
    )


def test_rows_of_a_table_begin_with_names_or_with_sentences() -> None:
    """Names are set strong; a column of strong sentences would shout."""
    names, sentences = (
        (("hip", "1"), ("", "2")),
        (("hip", "1"), ("Repeats fill their rounds " * 2, "")),
    )
    assert rows_have_names(Table("", ("a", "b"), names))
    assert not rows_have_names(Table("", ("a", "b"), sentences))


def test_terms_stand_beside_their_meanings_when_all_are_short() -> None:
    """One long word would push the meanings of all others off a phone."""
    assert terms_are_short(Terms((("dc", "double crochet"), ("rev dc", "reverse"))))
    assert not terms_are_short(Terms((("dc", ""), ("foundation double crochet", ""))))


@pytest.mark.parametrize(
    ("text", "held"),
    [
        ("42 1/4 in around", "42_1/4_in around"),
        ("about 630 m, 265 g", "about 630_m, 265_g"),
        ("10 % of 4 people", "10_% of 4 people"),
        ("in 33 more rounds", "in 33 more rounds"),
    ],
)
def test_numbers_are_held_to_their_units(text: str, held: str) -> None:
    """And to their fractions, so that none begins the next line."""
    assert glued(text).replace(GLUE, "_") == held


def test_rows_are_filled_up_when_shorter_than_the_header() -> None:
    """A missing cell is an empty one."""
    assert squared(Table("", ("a", "b", "c"), (("1",), ("1", "2", "3")))) == (
        ("1", "", ""),
        ("1", "2", "3"),
    )


def test_row_is_refused_when_longer_than_the_header() -> None:
    """A cell without a header could not be named by a page reader."""
    with pytest.raises(InputError, match=r'table "Yarn": a row has 2 cells and the header 1'):
        squared(Table("Yarn", ("a",), (("1", "2"),)))


def test_figure_is_refused_when_its_drawing_is_missing() -> None:
    """The sentence names the key and what there is."""
    document = Document("T", "", "en", (), (("chart", "<svg/>"),), "")
    with pytest.raises(InputError, match=r'no drawing "schematic"; .*: chart'):
        drawing_of(document, Figure("schematic", "alt", "caption"))


@pytest.mark.parametrize("title", ["", "   "])
def test_document_is_refused_when_it_has_no_title(title: str) -> None:
    """No page can be found again without a title."""
    with pytest.raises(InputError, match="title"):
        Document(title, "", "en", (), (), "")


def test_note_is_titled_by_its_kind_when_it_has_no_title() -> None:
    """A title of its own comes first."""
    assert (note_title("caution", ""), note_title("caution", "Achtung")) == ("Caution", "Achtung")


@pytest.mark.parametrize(
    ("label", "numbers"),
    [
        ("Rnds 3–5 (RS)", (3, 4, 5)),
        ("Rows 2–3 (WS, RS)", (2, 3)),
        ("Rnds 1–60 (RS)", tuple(range(1, 61))),
        ("Rnds 43–163 (RS)", ()),
        ("Rnd 5 (RS)", ()),
        ("Rnds 5–3 (RS)", ()),
        ("", ()),
    ],
)
def test_folded_rounds_are_counted_off_one_by_one(label: str, numbers: tuple[int, ...]) -> None:
    """One tick for many rounds is no help to whoever puts the work down between them."""
    assert folded(Instruction(label, "Dc in each st around.", "152 dc")) == numbers


@pytest.mark.parametrize(
    "text", ["Ch-1 sp, dc", "join with sl st to top of ch-2, turn.", "", "a-b"]
)
def test_pieces_of_a_text_are_the_text(text: str) -> None:
    """Only what holds a number by a hyphen is kept whole; no letter is lost."""
    pieces = in_pieces(text)
    assert "".join(piece for piece, _ in pieces) == text
    assert [piece.lower() for piece, whole in pieces if whole] == [
        word for word in ("ch-1", "ch-2") if word in text.lower()
    ]
