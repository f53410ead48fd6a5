"""What the terminal answers to words."""

from __future__ import annotations

import re

import pytest

from frogless.cli import main
from frogless.errors import InputError
from frogless.library.answer import told
from frogless.library.items import DIALECTS, Item, items
from frogless.library.told import in_full
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


def test_own_abbreviation_is_told_in_full_and_others_beside_it() -> None:
    """ "dc" is a double crochet to whoever asks in US terms; that it is another in the UK comes next."""
    text = told("dc", "us")
    assert text.startswith("double crochet (dc) [double_crochet]")
    assert "single crochet (sc) = UK double crochet (dc)" in text.partition("See also")[2]


def test_stitch_and_pattern_of_one_name_are_both_told() -> None:
    """Neither could be seen in full without the other."""
    text = told("V-stitch", "us")
    assert "Work double crochet, 1 chain and double crochet into one place." in text
    assert "Rows over 3 + 2" in text


def test_word_that_is_a_key_by_chance_is_searched_for() -> None:
    """ "single" is the key of a join, but not what is meant; as a key it is."""
    assert told("single", "us").startswith("Stitches\n  single crochet (sc)")
    assert told("[single]", "us").startswith("single crochet join [single]")
    assert told("picot_group", "us").startswith("picot edging [picot_group]")


def test_stitches_worked_together_are_told_in_the_terms_asked_for() -> None:
    """A UK reader draws a loop through with the yarn round the hook."""
    assert "then yarn round hook and draw through all 3 loops" in told("dc2tog", "uk").replace(
        "\n  ", " "
    )
    assert "then yarn over and draw through all 3 loops" in told("sc2tog", "us").replace(
        "\n  ", " "
    )


@pytest.mark.parametrize("words", ["dc2tog", "2 dc tog", "2 double crochet together", "DC2TOG"])
def test_stitches_worked_together_are_told_by_their_stitch(words: str) -> None:
    """Three loops are left of two unfinished double crochets."""
    text = told(words, "us")
    assert text.startswith("dc2tog (2 double crochet together)")
    assert "all 3 loops" in " ".join(text.split())
    assert "double crochet (dc) [double_crochet]" in text


def test_long_list_is_cut_and_says_so() -> None:
    """Nobody reads all that has "st" in it."""
    text = told("st", "us")
    assert len([line for line in text.splitlines() if "[" in line]) <= 40 + 12
    assert " more" in text


def test_lists_fit_a_narrow_terminal() -> None:
    """A line goes on under what it tells; a key alone may be longer."""
    for text in (told("granny", "us", columns=40), told("", "us", over=212, columns=40)):
        assert all(len(line) <= 40 for line in text.splitlines() if " " in line.strip())


def test_what_fits_as_it_stands_comes_before_what_has_to_be_changed() -> None:
    """And what works over any count last of its kind: it is no news."""
    text = told("shell", "us", over=13)
    assert text.startswith("Works over 13 stitches: ")
    everything = told("edging", "us", over=212).splitlines()
    told_ = [line for line in everything if line.startswith("  ")]
    changed = [i for i, line in enumerate(told_) if 0 < line.count("(") == line.count("; with")]
    any_count = [i for i, line in enumerate(told_) if "any count" in line]
    assert changed
    assert any_count
    assert max(changed) < min(any_count)


def test_motif_says_what_its_letters_mean() -> None:
    """Those whose rounds take turns have a second one; one that is finished has none."""
    assert "k how often they were all worked" in " ".join(told("single_circle", "us").split())
    assert "In the last line r is the number of the round." in told("granny_square", "us")
    assert "small leaf [leaf]: leaf, 1 round\n" in told("[leaf]", "us")


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
