"""Items are held to the places that they say they are worked into."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.build import read_piece
from frogless.rows.nodes import Into, Leave, Node, Skip, Start, Together, Work
from frogless.stitches.load import dictionary

DC, SC = "double_crochet", "single_crochet"
BEGIN = "Foundation (WS): Work 10 fsc; turn. (10 fsc)"


def row(text: str, *before: str) -> tuple[Start, tuple[Node, ...]]:
    """How a row over ten places starts, and its body."""
    read = read_piece([BEGIN, *before, text], dictionary(), "us", name="back").rows[-1]
    return read.start, read.body


def complaint(text: str, *before: str) -> str:
    """What is said of a row over ten places that is refused."""
    with pytest.raises(InputError) as error:
        row(text, *before)
    return str(error.value)


def test_first_and_last_are_read_when_they_are_so() -> None:
    """Increases and decreases at the edges."""
    _, body = row("Row 1 (RS): 2 sc in first st, sc in next 7 sts, sc2tog over last 2 sts. (10 sc)")
    assert body == (Into((Work(SC, 2),)), Work(SC, 7), Together(SC, 2))


def test_same_shares_the_place_of_the_chain_when_it_counts() -> None:
    """An increase at the edge."""
    start, body = row(
        "Row 1 (RS): Ch 3 (counts as first dc), dc in same st, dc in next 9 sts. (11 dc)"
    )
    assert start == Start(3, counts=True, shares=True)
    assert body == (Into((Work(DC),)), Work(DC, 9))


def test_unworked_is_for_good_when_it_is_not_said_for_now() -> None:
    """An armhole, and a short row."""
    start, body = row(
        "Row 1 (RS): Sl st in each of first 2 sts (not counted), ch 1 (does not count as a st), "
        "sc in next 6 sts, leave last 2 sts unworked. (6 sc)"
    )
    assert (start, body) == (Start(1, across=2), (Work(SC, 6), Skip(2)))
    _, short = row("Row 1 (RS): Short row. Sc in next 7 sts, leave last 3 sts unworked for now.")
    assert short == (Work(SC, 7), Leave(3))


SHORT = "Row 1 (RS): Short row. Sc in next 7 sts, leave last 3 sts unworked for now; turn. (7 sc)"
BACK = "Row 2 (WS): Sc in each st across; turn. (7 sc)"


def test_what_was_left_is_worked_when_a_later_row_comes_by() -> None:
    """Seven of the row below and three that were left."""
    last = "Row 3 (RS): Sc in each st across, working also into the 3 sts left unworked. (10 sc)"
    assert row(last, SHORT, BACK)[1] == (Work(SC, 10),)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("sc in next st, 2 sc in first st, sc in next 8 sts", '"first" is place 1'),
        ("2 sc in last st, sc in next 9 sts", '"last" ends with place 10'),
        ("sc in next 5 sts, leave last 4 sts unworked", "but this ends with 9"),
        ("ch 1 (does not count as a st), 2 sc in same st, sc in next 9 sts", '"same" is for'),
        ("sc in ring, sc in next 9 sts", "not the ring"),
        ("sc in next 10 row ends", "is a stitch, not a row end"),
        ("sc in next ch-2 sp, sc in next 9 sts", "no ch-2 sp"),
    ],
)
def test_place_is_refused_when_it_is_not_what_it_is_called(text: str, told: str) -> None:
    """With the place and what it is."""
    assert told in complaint(f"Row 1 (RS): {text[0].upper()}{text[1:]}. (10 sc)")


def test_number_left_is_refused_when_it_is_another() -> None:
    """Three were left, not four."""
    last = "Row 3 (RS): Sc in each st across, working also into the 4 sts left unworked. (10 sc)"
    assert "4" in complaint(last, SHORT, BACK)
