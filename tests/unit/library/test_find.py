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
    ("text", "simple"),
    [("Demi-Bride", "demi bride"), ("maille coulée", "maille coulee"), ("a_b  C", "a b c")],
)
def test_plain_text_has_no_accents_or_hyphens(text: str, simple: str) -> None:
    """So that a keyboard without accents will do."""
    assert plain(text) == simple
