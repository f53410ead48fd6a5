"""The dictionary and the reading words, as loaded."""

from __future__ import annotations

import re
from typing import Any, cast

import pytest

from frogless.errors import InputError
from frogless.stitches.load import (
    data_file,
    dictionary,
    explain,
    leaves,
    read_dictionary,
    stands_on,
    stitch_named,
    words,
)
from frogless.stitches.model import Dialect

DIALECTS: tuple[Dialect, ...] = ("us", "uk")
ONE = """
[knot]
kind = "stitch"
us = ["knot", "kn"]
uk = ["knot", "kn"]
stands_on = 1
leaves = 1
turning_chain = 1
height = [1, 1, 1]
width = [1, 1, 1]
steps = ["insert in back_loop", "pull_up", "pull_through 2"]
how = "Work it."
source = "a test"
basis = "memory"
"""


def refusal(text: str) -> str:
    """What is said of a dictionary file that is refused."""
    with pytest.raises(InputError) as caught:
        read_dictionary(text, "mine.toml")
    return str(caught.value)


def test_the_dictionary_holds_the_stitches_of_a_skirt_when_loaded() -> None:
    """The stitches that the first garments need are there under their full US names."""
    needed = {"chain", "slip_stitch", "single_crochet", "double_crochet", "picot", "bead"}
    needed |= {"foundation_double_crochet", "reverse_single_crochet", "single_crochet_back_loop"}
    assert needed <= dictionary().keys()
    assert all(stitch.key == key for key, stitch in dictionary().items())


def test_the_dictionary_is_read_once_and_cannot_be_changed_when_shared() -> None:
    """Everyone gets the same mapping, and nobody can write into it."""
    assert dictionary() is dictionary()
    with pytest.raises(TypeError):
        cast("dict[str, Any]", dictionary())["chain"] = None


def test_ornaments_and_foundations_stand_on_nothing_when_asked() -> None:
    """A picot and a bead take and leave no place; a foundation stitch leaves one."""
    taken, left = stands_on(dictionary()), leaves(dictionary())
    assert [(taken[key], left[key]) for key in ("picot", "bead")] == [(0, 0), (0, 0)]
    assert (taken["foundation_double_crochet"], left["foundation_double_crochet"]) == (0, 1)
    assert (taken["double_crochet"], left["double_crochet"]) == (1, 1)


@pytest.mark.parametrize("dialect", DIALECTS)
def test_no_two_stitches_share_an_abbreviation_when_read_in_one_dialect(dialect: Dialect) -> None:
    """An abbreviation names one stitch, or text could not be read back."""
    used = [stitch.terms[dialect].abbreviation for stitch in dictionary().values()]
    assert len(set(used)) == len(used)


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize("key", dictionary())
def test_every_stitch_is_explained_in_one_sentence_when_filled(key: str, dialect: Dialect) -> None:
    """No placeholder is left, and the sentence begins with a capital and ends with a full stop."""
    sentence = explain(dictionary()[key], dialect)
    assert re.fullmatch(r"[A-Z][^{}.]+\.", sentence)


def test_an_explanation_uses_the_readers_words_when_dialects_differ() -> None:
    """The yarn goes over in the US and round the hook in the UK; no stitch is named in US terms."""
    stitch = dictionary()["foundation_double_crochet"]
    assert "yarn over" in explain(stitch, "us")
    assert "yarn round hook" in explain(stitch, "uk")
    assert all(
        "crochet" not in re.sub(r"\{[a-z_]+\}", "", each.how) for each in dictionary().values()
    )


def test_reading_words_differ_by_dialect_when_the_trade_does() -> None:
    """Skip and gauge are miss and tension in the UK; the rest of the keys are the same."""
    us, uk = words("us"), words("uk")
    assert us.keys() == uk.keys()
    assert (us["skip"].name, us["gauge"].name) == ("skip", "gauge")
    assert (uk["skip"].name, uk["gauge"].name) == ("miss", "tension")


def test_a_stitch_is_read_when_its_entry_is_whole() -> None:
    """Steps are read with their loops and places."""
    knot = read_dictionary(ONE, "mine.toml")["knot"]
    assert [(s.motion, s.loops, s.where) for s in knot.steps] == [
        ("insert", 1, "back_loop"),
        ("pull_up", 1, ""),
        ("pull_through", 2, ""),
    ]
    assert (knot.catches, knot.height_over_width, knot.begins_on) == (2, None, 0)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('"pull_through 2"', '"pull_through 1"', "1, 2, 2 loops"),
        ('"pull_up"', '"pull up"', '"pull up" is not a step'),
        ("leaves = 1\n", "", "leaves missing"),
        ("leaves = 1", "leaves = 1\nturning_chian = 1", '"turning_chain"'),
        ("height = [1, 1, 1]", "height = [2, 1, 1]", "low, typical and high"),
        ('us = ["knot", "kn"]', 'us = ["knot"]', "a name and an abbreviation"),
    ],
)
def test_an_entry_is_refused_with_its_place_when_wrong(old: str, new: str, said: str) -> None:
    """The fault names the file, the stitch and what would be right."""
    message = refusal(ONE.replace(old, new))
    assert message.startswith("mine.toml knot: ")
    assert said in message


def test_all_faults_are_told_together_when_several_entries_are_wrong() -> None:
    """Each faulty entry has its own line."""
    bad = ONE.replace('"pull_through 2"', '"pull_through 1"')
    message = refusal(bad + bad.replace("[knot]", "[bow]"))
    assert [line.split(":")[0] for line in message.splitlines()] == [
        "mine.toml knot",
        "mine.toml bow",
    ]


def test_a_near_name_is_offered_when_a_stitch_is_unknown() -> None:
    """A slip of the pen is answered with the stitch that was meant."""
    assert stitch_named("picot").key == "picot"
    with pytest.raises(InputError, match='did you mean "double_crochet"'):
        stitch_named("double_crotchet")


def test_every_entry_says_where_it_comes_from_when_read() -> None:
    """Ratios and terms each have a basis from the list of bases."""
    known = {"published", "common-practice", "memory"}
    assert "low, typical, high" in data_file("stitches.toml")
    for stitch in dictionary().values():
        assert stitch.source
        assert {stitch.basis, stitch.terms_basis} <= known
