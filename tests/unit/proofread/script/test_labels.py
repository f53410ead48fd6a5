"""What rows call themselves is known in every way that people write it."""

import pytest

from frogless.proofread.script.cut import cut
from frogless.proofread.script.labels import label_at, numbers_of, refers
from frogless.proofread.script.model import MOST_NUMBERS, Label, RowText
from frogless.proofread.script.normal import plain_of


def label(text: str) -> Label | None:
    """The label that a line begins with."""
    plain = plain_of(text)
    found = label_at(plain, len(plain) - len(plain.lstrip()), len(plain))
    return found.label if found else None


@pytest.mark.parametrize(
    ("text", "kind", "numbers"),
    [
        ("Rnd 5: sc around", "round", (5,)),
        ("Round 5. Ch 1", "round", (5,)),
        ("R5: 6 sc", "", (5,)),
        ("R5 - 6 sc", "", (5,)),
        ("R5 6 sc", "", (5,)),
        ("1st row: dc", "row", (1,)),
        ("2nd and 4th rows: dc", "row", (2, 4)),
        ("Third row: dc", "row", (3,)),
        ("Rnd 5 (RS) – sc", "round", (5,)),
        ("Rnds 8-11: sc", "round", (8, 9, 10, 11)),
        ("R3 to R6: same as R2", "", (3, 4, 5, 6)),
        ("Rnds 8 through 11: sc", "round", (8, 9, 10, 11)),
        ("Rnds 2, 4 and 6: sc", "round", (2, 4, 6)),
        ("Rnds 6–9 Ch 1, sc around", "round", (6, 7, 8, 9)),
        ("**Rnd 5:** sc", "round", (5,)),
        ("ROW 5: SC", "row", (5,)),
        ("Rnd 5 sc in each st", "round", (5,)),
        ("Rnd 5—sc in each st", "round", (5,)),
        ("Rnd 10 - 12: sc", "round", (10, 11, 12)),
        ("Rnd 5", "round", (5,)),
    ],
)
def test_a_row_is_known_by_its_number(text: str, kind: str, numbers: tuple[int, ...]) -> None:
    """Kind and numbers are read, whatever stands between."""
    found = label(text)
    assert found is not None
    assert (found.kind, found.numbers) == (kind, numbers)


@pytest.mark.parametrize(
    ("text", "name", "numbers"),
    [
        ("Next row: sc", "next", ()),
        ("Foundation (RS): Ch 3", "foundation", ()),
        ("Foundation chain: Ch 24", "foundation", ()),
        ("Set-up rnd: sc", "setup", ()),
        ("Inc rnd: sc", "increase", ()),
        ("Dec row: sc", "decrease", ()),
        ("Last rnd: sc", "last", ()),
        ("Edging rnd 1: sc", "edging", (1,)),
        ("Rnd 3 (inc rnd): sc", "increase", (3,)),
        ("Row 1 (WS) (set-up row): sc", "setup", (1,)),
    ],
)
def test_a_row_is_known_by_its_name(text: str, name: str, numbers: tuple[int, ...]) -> None:
    """A name stands alone or beside a number."""
    found = label(text)
    assert found is not None
    assert (found.name, found.numbers) == (name, numbers)


@pytest.mark.parametrize(
    "text",
    [
        "Rows 3 and 4 form the pattern.",
        "Rnd 5 completes the yoke.",
        "Row 2 is the right side.",
        "Rep Row 2: sc",
        "Repeat last row: sc",
        "Rnd 1.5 cm",
        "Rnd 1 = 10 cm",
        "Work 4 rows",
    ],
)
def test_a_sentence_about_a_row_is_no_label(text: str) -> None:
    """What is told of a row does not begin one."""
    assert label(text) is None


@pytest.mark.parametrize(
    ("text", "onward"),
    [
        ("Row 2 and all even rows: sc", "even"),
        ("Row 3 and every odd row: sc", "odd"),
        ("Row 3 and every other row: sc", "odd"),
        ("2nd row and every alt row: dc", "even"),
        ("Row 2 and all following rows: sc", "all"),
    ],
)
def test_rows_further_on_are_told(text: str, onward: str) -> None:
    """Every other row from an odd one is odd."""
    found = label(text)
    assert found is not None
    assert found.onward == onward


def test_sides_stand_in_their_order() -> None:
    """Two rows, two sides."""
    found = label("Rnds 2–3 (WS, RS): Ch 3")
    assert found is not None
    assert found.sides == ("WS", "RS")


def test_a_label_may_say_how_many_rows_it_is() -> None:
    """In brackets, or before the word."""
    four, six = label("Rows 3–6 (4 rows): sc"), label("Next 6 rnds: sc")
    assert four is not None
    assert six is not None
    assert (four.rows, six.rows, six.name) == (4, 6, "next")


def test_the_last_row_may_differ_from_size_to_size() -> None:
    """The numbers are the first size's, the last ones are all there."""
    found = label("Rows 2-4 (6, 8): sc")
    assert found is not None
    assert (found.numbers, found.lasts) == ((2, 3, 4), (4, 6, 8))


def test_a_range_without_end_is_cut() -> None:
    """Its first numbers and its last one are kept."""
    numbers = numbers_of("1-1000000000")
    assert (len(numbers), numbers[0], numbers[-1]) == (MOST_NUMBERS, 1, 99_999)


@pytest.mark.parametrize("before", ["rep ", "as ", "ending with a\n", "Rows 3 and ", "(see "])
def test_a_row_that_is_referred_to_is_no_label(before: str) -> None:
    """The word before tells."""
    assert refers(before, len(before))


def test_number_that_no_row_has_is_still_the_number_of_a_row() -> None:
    """So that the row is not taken for words of the one before."""
    script = cut("Rnd 1: 6 sc in magic ring. (6)\nRnd 99999999999999999999: sc in each st. (6)\n")
    rows = [each for part in script.parts for each in part.statements]
    assert [each.label.numbers for each in rows if isinstance(each, RowText)] == [(1,), (99_999,)]
