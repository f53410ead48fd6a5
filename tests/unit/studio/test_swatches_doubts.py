"""Counts that are asked about: exchanged, over another unit, or of no likely width."""

from __future__ import annotations

import pytest

from frogless.studio.examples import examples
from frogless.studio.swatches.doubts import doubts, mark, usual_across
from frogless.studio.swatches.form import values_of

DC = {"units": "cm", "stitch": "double_crochet", "hook": "4", "readings": "1", "r1-of": ""}
GOOD = {"r1-count": "17", "r1-width": "10", "r1-rows": "9", "r1-height": "10"}


@pytest.mark.parametrize("key", examples("swatch"))
def test_good_swatches_are_not_asked_about(key: str) -> None:
    """All examples, in several stitches, yarns and states."""
    assert not doubts(values_of(examples("swatch")[key].text, "cm"), "cm", "us")


def test_stitches_and_rows_exchanged_are_offered_the_other_way_round() -> None:
    """9 stitches and 17 rows of double crochet are 17 and 9."""
    assert not doubts({**DC, **GOOD}, "cm", "us")
    (doubt,) = doubts({**DC, **GOOD, "r1-count": "9", "r1-rows": "17"}, "cm", "us")
    assert doubt.field == "r1-count"
    assert doubt.sentence.endswith("Did you mean 17 stitches and 9 rows?")
    assert doubt.offers[0].writes == (("r1-count", "17"), ("r1-rows", "9"))


def test_counted_over_fifteen_inches_was_meant_in_centimeters() -> None:
    """7.2 stitches in 4 in on a 4 mm hook are none of it; 15 cm fits."""
    values = {**DC, **GOOD, "r1-count": "27", "r1-width": "15", "r1-rows": "14", "r1-height": "15"}
    assert not doubts(values, "cm", "us")
    (doubt,) = doubts(values, "in", "us")
    assert doubt.sentence.endswith("Did you mean 15 cm?")
    assert dict(doubt.offers[0].writes) == {"r1-width": "15 cm", "r1-height": "15 cm"}


def test_what_no_slip_explains_is_asked_all_the_same() -> None:
    """Stitches thrice as wide as the hook; in the reader's terms."""
    (doubt,) = doubts({**DC, "r1-count": "8", "r1-width": "10 cm"}, "cm", "uk")
    assert "treble" in doubt.sentence
    assert not doubt.offers
    assert "Count again" in doubt.sentence


def test_odd_proportions_are_asked_about_at_the_rows() -> None:
    """Rows of double crochet as low as those of single crochet."""
    (doubt,) = doubts({**DC, **GOOD, "r1-rows": "18"}, "cm", "us")
    assert doubt.field == "r1-rows"


def test_yarn_table_gives_the_usual_width() -> None:
    """Medium yarn: 11 to 14 stitches in 4 in on 6.5 to 5.5 mm are 1.32 to 1.42 hooks wide."""
    low, high = usual_across()
    assert low < 1.32 < 1.42 < high
    assert 2 < high < 2.5


def test_yes_to_one_question_is_none_to_another() -> None:
    """And no question needs none."""
    one = doubts({**DC, **GOOD, "r1-count": "9", "r1-rows": "17"}, "cm", "us")
    other = doubts({**DC, **GOOD, "r1-rows": "18"}, "cm", "us")
    assert len({mark(one), mark(other), mark(())}) == 3
    assert mark(()) == ""
