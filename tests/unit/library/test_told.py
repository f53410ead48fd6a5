"""The library told in a terminal."""

from __future__ import annotations

import re

import pytest

from frogless.cli import main
from frogless.errors import InputError
from frogless.library.items import DIALECTS, Item, items
from frogless.library.told import in_full, told
from frogless.stitches.model import Dialect


def test_one_thing_is_told_in_full_in_the_terms_asked_for() -> None:
    """Its rows in UK terms, what it costs and how it behaves."""
    text = told("moss", "uk")
    assert "moss stitch [moss]" in text
    assert "Rows over 2 + 1" in text
    assert "dc in first st" in text
    rows = [line for line in text.splitlines() if line.startswith("Row ")]
    assert rows
    assert not any(" sc " in row for row in rows)
    assert "drape:" in text


def test_measures_are_named_in_the_terms_asked_for() -> None:
    """What yarn and height are held against is a double crochet in the UK; sources say they are US."""
    assert "times the yarn of double crochet over the same area" in told("moss", "uk")
    assert "times the yarn of single crochet over the same area" in told("moss", "us")
    assert "height against double crochet: 1.9" in told("popcorn", "uk")
    assert "common-practice (in US terms): a single, a chain" in told("moss", "uk")
    assert "common-practice: a single, a chain" in told("moss", "us")


def test_pattern_of_colors_tells_where_a_change_is_made() -> None:
    """With the last loop of the stitch before; a pattern of one color has no such line."""
    assert "as the last loop of the stitch before" in told("dots", "us")
    assert "as the last loop of the stitch before" not in told("moss", "us")


def test_pattern_is_found_by_another_name_that_it_has() -> None:
    """Named among the patterns that the words find, and told with its other names."""
    assert "[moss]" in told("granite stitch", "us")
    assert "also called: linen stitch, granite stitch" in told("moss", "us")


@pytest.mark.parametrize("item", items(), ids=lambda item: f"{item.kind} {item.key}")
def test_colors_are_spelled_as_the_reader_does(item: Item) -> None:
    """In names, rows, notes and sources alike."""
    assert "colour" not in in_full(item, "us")
    assert not re.search(r"\bcolors?\b", in_full(item, "uk"))


def test_name_in_the_terms_asked_for_is_meant_first() -> None:
    """A double crochet is a single crochet to whoever asks in UK terms."""
    assert told("double crochet", "uk").startswith("double crochet (dc) [single_crochet]")
    assert told("double crochet", "us").startswith("double crochet (dc) [double_crochet]")


@pytest.mark.parametrize("item", items(), ids=lambda item: f"{item.kind} {item.key}")
@pytest.mark.parametrize("terms", DIALECTS)
def test_everything_is_told_in_full_in_both_terms(item: Item, terms: Dialect) -> None:
    """With nothing left to fill in but the sums of a motif, and where it comes from."""
    text = in_full(item, terms)
    assert item.name(terms).name in text
    assert "{" not in (text if item.kind != "motif" else text.split("Rnd {")[0])
    assert any(basis in text for basis in ("common-practice", "published", "memory", "derived"))


def test_list_says_by_which_name_a_thing_was_found() -> None:
    """Asked for "htr" in US terms, it shows what that is in the UK."""
    text = told("htr", "us")
    assert "half double crochet (hdc)" in text
    assert "UK half treble crochet (htr)" in text


def test_everything_is_listed_without_words() -> None:
    """One line for each thing, ended by its key."""
    text = told("", "us")
    assert all(f"[{item.key}]" in text for item in items())


@pytest.mark.parametrize("places", [7, 24, 212])
def test_only_what_works_over_a_count_is_told(places: int) -> None:
    """Moss stitch works over odd counts in rows, fans and arches over eights in rounds."""
    lines = told("", "us", over=places).splitlines()
    in_rows = [line for line in lines if "[moss]" in line and "rows (2 + 1)" in line]
    assert bool(in_rows) == (places % 2 == 1)


@pytest.mark.parametrize("places", [0, -3, 10**9])
def test_count_that_is_none_is_refused(places: int) -> None:
    """Nobody works over it."""
    with pytest.raises(InputError, match="is no count of stitches; write 1 to 5000"):
        told("", "us", over=places)


def test_nothing_over_a_count_is_told_so() -> None:
    """The words and the count are both named."""
    with pytest.raises(InputError, match='called "deep shell" works over 7 stitches'):
        told("deep shell", "us", over=7)


def test_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    """Words need no quotes."""
    assert main(["stitches", "moss", "stitch"]) == 0
    assert "Row 1 (RS):" in capsys.readouterr().out
    assert main(["stitches", "nosuchthing"]) == 2
    assert "nothing in the library is called" in capsys.readouterr().err
