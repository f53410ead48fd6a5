"""Lengths in the ways that patterns write them."""

from __future__ import annotations

import pytest

from frogless.proofread.facts.lengths import lengths_in
from frogless.proofread.facts.model import Lengths


def _read(text: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """cm and inches of the first length."""
    found = next(lengths_in(text))
    return tuple(v / 10 for v in found.metric), tuple(v / 25.4 for v in found.inches)


@pytest.mark.parametrize(
    ("text", "metric", "inches"),
    [
        ("84 (94, 104) cm / 33 (37, 41) in", (84, 94, 104), (33, 37, 41)),
        ('33" (37", 41")', (), (33, 37, 41)),
        ("33in/84cm (37in/94cm, 41in/104cm)", (84, 94, 104), (33, 37, 41)),
        ("84 [94: 104: 114] cm", (84, 94, 104, 114), ()),
        ("84/94/104 cm", (84, 94, 104), ()),
        ("9 cm (3 in)", (9,), (3,)),
        ('3½" (9 cm)', (9,), (3.5,)),
        ("25 1/2 in", (), (25.5,)),
        ("2-1/4 inches", (), (2.25,)),
        ("63,5 cm", (63.5,), ()),
        ("4in (10cm) square", (10,), (4,)),
        ("10 centimetres", (10,), ()),
        ("45 mm", (4.5,), ()),
    ],
)
def test_numbers_and_units(text: str, metric: tuple[float, ...], inches: tuple[float, ...]) -> None:
    """Lists, fractions and both units are one length with a value for each size."""
    assert _read(text) == (pytest.approx(metric), pytest.approx(inches))


@pytest.mark.parametrize("text", ["90 cm x 60 cm", "90 x 60 cm", "90cm wide x 60cm long"])
def test_width_and_length(text: str) -> None:
    """Two numbers with a cross between them are a width and a length."""
    found = next(lengths_in(text))
    assert (found.crossed, found.metric) == (True, (900.0, 600.0))


def test_range_has_two_ends() -> None:
    """ "54-57 cm" is one length between two ends."""
    found = next(lengths_in("54-57 cm"))
    assert (found.ranged, found.metric) == (True, (540.0, 570.0))


@pytest.mark.parametrize(
    "text", ["work 6 in the ring", "sc in next 5 sts", "20 rounds", "84-94-104 cm", "sizes 2, 4, 6"]
)
def test_what_is_no_length(text: str) -> None:
    """Counts, and lists of ranges that nobody can read, are no lengths."""
    assert list(lengths_in(text)) == []


def test_columns_stay_apart() -> None:
    """Numbers that stand apart by blanks alone are two lengths."""
    assert [each.metric for each in lengths_in("66 cm    78 cm")] == [(660.0,), (780.0,)]


@pytest.mark.parametrize("text", ["6.5 mm; 1 1/4 in. button", "6.5 mm, 1 1/4 in. button"])
def test_what_no_bracket_joins_is_not_one_length(text: str) -> None:
    """A hook and a button in one line are two."""
    assert [bool(each.metric) for each in lengths_in(text)] == [True, False]


def test_rows_beside_a_length_are_not_of_it() -> None:
    """ "20 cm (20 rounds)" is one length; the 20 belongs to the rounds."""
    assert [each.metric for each in lengths_in("20 cm (20 rounds)")] == [(200.0,)]


def test_place_is_that_of_the_text() -> None:
    """The span holds the whole of it, bracket included."""
    found = next(lengths_in("Hip: 9 cm (3 in).", 100))
    assert (found.span.start, found.span.end) == (105, 116)


def test_unit_of_a_label_is_used() -> None:
    """ "Bust (cm): 84, 94": the unit stands elsewhere."""
    assert next(lengths_in("84, 94", unit="cm")).metric == (840.0, 940.0)


def test_finer_of_two_is_taken() -> None:
    """Of whole inches and half centimeters the latter say more."""
    found = next(lengths_in("86.5 cm (34 in)"))
    assert isinstance(found, Lengths)
    assert found.values == (865.0,)
    assert found.rounding == pytest.approx(2.5)


def test_long_text_is_read_in_time() -> None:
    """A line of nothing but numbers and brackets is read once, not again and again."""
    assert len(list(lengths_in("12 (" * 20_000))) == 0
