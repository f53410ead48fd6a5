"""Finding things by what people call them."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.library.find import find, plain
from frogless.library.items import DIALECTS, KINDS, items


def keys(words: str) -> list[str]:
    """What words find, in order."""
    return [found.item.key for found in find(words)]


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("single crochet", "single_crochet"),
        ("half treble", "half_double_crochet"),
        ("SC", "single_crochet"),
        ("htr", "half_double_crochet"),
        ("moss", "moss"),
        ("crab-stitch edging", "crab"),
        ("fsc", "foundation_single_crochet"),
        ("picots", "picot"),
        ("V stitch", "v_stitch"),
        ("moss stitches", "moss"),
        ("mailles serrées", "single_crochet"),
        ("Staebchen", "double_crochet"),
        ("stabchen", "double_crochet"),
    ],
)
def test_first_found_is_what_the_trade_means(words: str, first: str) -> None:
    """A whole name or abbreviation in either dialect comes first."""
    assert keys(words)[0] == first


def test_word_of_both_dialects_finds_both_stitches() -> None:
    """ "dc" is a double crochet in US terms and a single crochet in UK terms."""
    found = {each.item.key: each.by.where for each in find("dc") if each.by}
    assert found["double_crochet"] == "us"
    assert found["single_crochet"] == "uk"


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("zig zag", "zigzag"),
        ("ripples", "ripple_soft"),
        ("tr tr", "triple_treble"),
        ("Solomons knot", "long_loop_knot"),
        ("picot border", "picot_single"),
        ("seam", "mattress"),
        ("trims", "fringe"),
        ("granny", "granny_square"),
        ("hexagons", "hexagon"),
    ],
)
def test_what_people_say_finds_it(words: str, key: str) -> None:
    """In the plural, written in one or two words, or by what it is used for."""
    assert key in keys(words)


def test_name_in_the_terms_asked_for_comes_before_the_same_in_others() -> None:
    """ "FPdc" is a double crochet in US terms, and a single crochet in UK terms."""
    assert find("fpdc", terms="us")[0].item.key == "front_post_double_crochet"
    assert find("fpdc", terms="uk")[0].item.key == "front_post_single_crochet"


def test_no_word_of_a_name_answers_two_that_are_asked_for() -> None:
    """ "dc dc" is not every name with one "dc" in it."""
    assert "double_crochet" in keys("dc")
    with pytest.raises(InputError, match="nothing in the library"):
        find("dc dc dc")


def test_every_name_of_everything_finds_it() -> None:
    """In any dialect and language, by name and by abbreviation."""
    for item in items():
        for name in item.names:
            for text in filter(None, (name.name, name.abbreviation)):
                assert item.key in keys(text)


def test_no_words_find_everything() -> None:
    """In the order of the library, every kind."""
    assert keys(" ") == [item.key for item in items()]
    assert {item.kind for item in items()} == set(KINDS)
    assert all(item.name(dialect).name for item in items() for dialect in DIALECTS)


def test_unknown_word_is_told_with_near_names() -> None:
    """A slip of the pen is answered with what was probably meant."""
    with pytest.raises(InputError, match='called "singel crochet"; did you mean "single crochet"'):
        find("singel crochet")


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("grany", '"granny"'),
        ("mille", '"maille"'),
        ("waffel", '"waffle"'),
        ("granny square triangle", '"granny triangle" or "granny square"'),
    ],
)
def test_near_names_are_told_once_each(words: str, meant: str) -> None:
    """Of the words in them, too, when a whole name is far away."""
    with pytest.raises(InputError) as caught:
        find(words)
    assert f"did you mean {meant}" in str(caught.value)


@pytest.mark.parametrize("words", ["\N{BALL OF YARN}", "!?", "a" * 1000])
def test_what_is_no_word_is_answered_shortly(words: str) -> None:
    """With nothing that could be meant, and not with a thousand letters back."""
    with pytest.raises(InputError) as caught:
        find(words)
    assert "did you mean" not in str(caught.value)
    assert len(str(caught.value)) < 200


@pytest.mark.parametrize(
    ("text", "simple"),
    [
        ("Demi-Bride", "demi bride"),
        ("maille coulée", "maille coulee"),
        ("a_b  C", "a b c"),
        ("Stitches, leaves!", "stitch leave"),
        ("crossed lace daisies", "crossed lace daisy"),
        ("BO's", "bos"),
    ],
)
def test_plain_text_has_no_accents_or_hyphens(text: str, simple: str) -> None:
    """So that a keyboard without accents will do."""
    assert plain(text) == simple
