"""Numbers for each size are read in any grouping."""

import pytest

from frogless.proofread.script.brackets import TOO_MANY, decimal_list, lists_in, number_list


@pytest.mark.parametrize(
    ("text", "sizes", "values"),
    [
        ("100 (108, 116) [124, 132] {140} sts", 1, (100, 108, 116, 124, 132, 140)),
        ("100(108,116)", 1, (100, 108, 116)),
        ("48 (52) (56)", 1, (48, 52, 56)),
        ("100/108/116", 1, (100, 108, 116)),
        ("100 (108,\n 116)", 1, (100, 108, 116)),
        ("10 (-, 12)", 1, (10, 0, 12)),
        ("5 (6: 7: 8)", 1, (5, 6, 7, 8)),
        ("5 (6)", 2, (5, 6)),
        ("5 (6)", 1, (5,)),
        ("1/2", 1, (1,)),
        ("1/2", 2, (1, 2)),
        ("2 (3 dc, ch 1)", 2, (2,)),
        ("- (2, 3)", 3, (0, 2, 3)),
        ("42 sts", 3, (42,)),
    ],
)
def test_a_list_is_read(text: str, sizes: int, values: tuple[int, ...]) -> None:
    """What is a list is decided by its form, of two numbers by the sizes."""
    read = number_list(text, 0, sizes)
    assert read is not None
    assert read[0] == values


def test_no_number_begins_there() -> None:
    """A decimal is no whole number, a dash alone is none."""
    assert number_list("3.75 mm", 0) is None
    assert number_list("- sc", 0) is None


def test_numbers_between_commas_are_a_list_in_a_bracket() -> None:
    """As many as there are sizes, in whatever order."""
    assert number_list("(96, 112, 104 sts)", 1, 3) == ((96, 112, 104), 13)


@pytest.mark.parametrize(
    ("text", "sizes", "values"),
    [("ch 85, 93, 99 sts", 3, (85, 93, 99)), ("ch 85, 93, 99 sts", 1, (85,)),
     ("ch 85, 99, 93 sts", 3, (85,)), ("row 3, 5, 7", 3, (3,)), ("ch 3, 4 sts", 2, (3,))],
)  # fmt: skip
def test_numbers_between_commas_are_a_list_where_they_rise(
    text: str, sizes: int, values: tuple[int, ...]
) -> None:
    """As many as there are sizes, three or more, smallest first; numbers of rows are none."""
    read = number_list(text, text.index(" ") + 1, sizes)
    assert read is not None
    assert read[0] == values


def test_a_huge_number_is_cut() -> None:
    """No text makes a number that is too large to count to."""
    assert number_list("9" * 20, 0) == ((TOO_MANY,), 20)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("80.5 cm (90 cm, 100½ cm)", (80.5, 90.0, 100.5)),
        ("31 1/2 (35, 39½)", (31.5, 35.0, 39.5)),
        ("½ in", (0.5,)),
    ],
)
def test_lengths_have_fractions(text: str, values: tuple[float, ...]) -> None:
    """Decimals, fractions and units are read."""
    read = decimal_list(text, 0)
    assert read is not None
    assert read[0] == values


def test_lists_are_found_in_a_text() -> None:
    """Each with its place; single numbers are left out."""
    text = "ch 10 (12, 14), 5/6/7 and 3 (4)"
    assert list(lists_in(text, 0, len(text))) == [((10, 12, 14), 3, 14), ((5, 6, 7), 16, 21)]


@pytest.mark.parametrize("words", ["1   ", "1 1/2 ", "1 1/2 cm, ", "1, (1) "])
def test_a_long_list_that_never_closes_is_read_at_once(words: str) -> None:
    """There is one way only to read what parts its numbers."""
    text = "1 (" + 35 * words + "sc"
    assert number_list(text, 0, 3) == ((1,), 1)
    assert decimal_list(text, 0, 3) is not None
