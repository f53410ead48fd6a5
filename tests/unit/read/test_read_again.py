"""What was read once is known again by what it says, in whatever text it stands."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.build import read_program
from frogless.read.grammar import make_ready, parser
from frogless.read.parse import parse_row
from frogless.read.vocabulary import every_word, vocabulary
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect

HEAD = "skirt: worked in joined rounds, not turned."
FOUNDATION = (
    "Foundation (RS): Work 8 fsc; without twisting, join with sl st to first fsc to form a ring. "
    "(8 fsc)"
)
ROUND = "Rnd 1 (RS): Sc in each st around; join with sl st to first sc. (8 sc)"
TERMS: tuple[Dialect, Dialect] = ("us", "uk")


def text(*lines: str) -> str:
    """A text with one piece."""
    return "\n".join(("Terms: US", "", HEAD, *lines)) + "\n"


def test_a_line_reads_alike_with_few_words_and_with_all() -> None:
    """No terminals are made for words that a text has not: the others find the same."""
    few, everything = vocabulary(dictionary(), "us", ROUND), vocabulary(dictionary(), "us")
    assert few == everything
    parse_row.cache_clear()
    first = parse_row(ROUND, few)
    parse_row.cache_clear()
    assert parse_row(ROUND, everything) == first


def test_the_same_words_of_another_dialect_are_another_vocabulary() -> None:
    """ "Dc" is another stitch there."""
    line = "Rnd 1 (RS): Dc in next 2 sts; do not join. (2 dc)"
    us, uk = (parse_row(line, vocabulary(dictionary(), terms)) for terms in TERMS)
    assert us != uk


def test_a_fault_is_told_with_its_own_line_each_time() -> None:
    """The faulty piece is the same; it stands elsewhere."""
    wrong = ROUND.replace("each st", "each ch-2 sp")
    with pytest.raises(InputError) as high:
        read_program(text(FOUNDATION, wrong), dictionary(), "us", "a.txt")
    with pytest.raises(InputError) as low:
        read_program(text("", "", FOUNDATION, wrong), dictionary(), "us", "a.txt")
    lines = [error.value.faults[0].place.line for error in (high, low)]
    assert lines == [5, 7]


@pytest.mark.parametrize("where", ["first", "last"])
def test_every_turn_of_a_repeat_is_looked_at_where_its_place_matters(where: str) -> None:
    """ "First" and "last" are true of one turn at most, though all stand on the same stitches."""
    repeat = f"(Sc in {where} st, sc in next st) 4 times"
    line = (
        f"Rnd 1 (RS): Ch 1 (does not count as a st), {repeat}; join with sl st in first sc. (8 sc)"
    )
    with pytest.raises(InputError, match=where):
        read_program(text(FOUNDATION, line), dictionary(), "us")


def test_whoever_knows_every_word_needs_no_other_parser() -> None:
    """Whatever words come next; what they say is the same as before."""
    line = "Rnd 1 (RS): Dtr in next 2 sts; do not join. (2 dtr)"
    before = vocabulary(dictionary(), "us", ROUND)
    assert every_word("us") == before
    make_ready(every_word("us").terminals)
    made = parser.cache_info().misses
    for text_ in (ROUND, line):
        assert vocabulary(dictionary(), "us", text_).terminals == every_word("us").terminals
        parse_row(text_, vocabulary(dictionary(), "us", text_))
    assert parser.cache_info().misses == made
