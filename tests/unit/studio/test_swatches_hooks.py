"""Hooks by their US letter (Craft Yarn Council, 2018)."""

from __future__ import annotations

import pytest

from frogless.studio.swatches.hooks import hook_offers, hook_words
from frogless.studio.swatches.written import checked


@pytest.mark.parametrize("text", ["H", "h", "H-8", "H8", "US H/8", "h 8"])
def test_letter_is_told_in_millimeters(text: str) -> None:
    """However it is written."""
    assert hook_words(text) == "H-8 is 5 mm; write 5"


def test_letter_of_two_hooks_is_told_as_both() -> None:
    """G is two sizes; with its number it is one."""
    assert hook_words("G") == "G-6 is 4 mm and G is 4.25 mm; write 4 or 4.25"
    assert hook_words("G-6") == "G-6 is 4 mm; write 4"
    assert [one.label for one in hook_offers("hook", "G")] == ["Write 4 mm", "Write 4.25 mm"]


def test_half_is_read_as_printed() -> None:
    """K-10 1/2 is 6.5 mm."""
    assert hook_words("K 10½") == hook_words("K-10 1/2") == "K-10 1/2 is 6.5 mm; write 6.5"


@pytest.mark.parametrize("text", ["", "5", "five", "H-9", "🪝"])
def test_what_is_no_letter_of_a_hook_is_not_told(text: str) -> None:
    """Nothing is guessed."""
    assert hook_words(text) == ""


def test_form_says_so_beside_the_hook() -> None:
    """Instead of only refusing it, and in one spelling."""
    values = {"units": "cm", "stitch": "double_crochet", "readings": "1", "name": "A"}
    assert checked({**values, "hook": "H"}).errors["hook"] == "H-8 is 5 mm; write 5"
    assert "millimeters" in checked({**values, "hook": "many"}).errors["hook"]
    assert "millimeters" in checked(values).errors["hook"]


@pytest.mark.parametrize(
    ("field", "written", "told"),
    [
        ("r1-count", "0", "the number of stitches must be more than 0, not 0"),
        ("r1-rows", "many", 'the number of rows must be a number, not "many"'),
        ("r1-count", "", "the number of stitches is missing: width is given, "),
        ("r1-width", "", "the width is missing: stitches are given, "),
        ("hook", "1000 mm", "the hook must be a hook of "),
    ],
)
def test_sentence_says_what_it_is_about(field: str, written: str, told: str) -> None:
    """A noun in each, so that it can be read alone."""
    values = {"units": "cm", "stitch": "double_crochet", "readings": "1", "name": "A", "hook": "4"}
    values |= {"r1-count": "17", "r1-width": "10", "r1-rows": "9", "r1-height": "10"}
    values |= {"r1-of": "", "r1-state": "washed"}
    assert checked({**values, field: written}).errors[field].startswith(told)
