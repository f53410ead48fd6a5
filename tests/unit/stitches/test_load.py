"""The dictionary and the reading words, as loaded."""

from __future__ import annotations

import re
from importlib.resources import files
from typing import Any, cast

import pytest

from frogless.errors import InputError
from frogless.rows.nodes import Chain, Repeat, Work
from frogless.stitches.load import (
    data_file,
    dictionary,
    explain,
    explain_left_handed,
    leaves,
    read_dictionary,
    stands_on,
    stitch_named,
    words,
)
from frogless.stitches.model import Dialect, Ratio, Step

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
CHAIN = ONE.replace("[knot]", "[chain]").replace('"knot", "kn"', '"chain", "ch"')


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
def test_no_two_stitches_share_a_word_when_read_in_one_dialect(dialect: Dialect) -> None:
    """A name or an abbreviation names one stitch and no reading word, or text could not be read."""
    used = [
        {term.name.casefold(), term.abbreviation.casefold()}
        for term in (stitch.terms[dialect] for stitch in dictionary().values())
    ]
    assert len(set().union(*used)) == sum(map(len, used))
    read = {w.casefold() for t in words(dialect).values() for w in (t.name, t.abbreviation)}
    assert not set().union(*used) & read


@pytest.mark.parametrize("dialect", DIALECTS)
def test_no_term_is_a_word_of_the_grammar_when_written_patterns_are_read(dialect: Dialect) -> None:
    """No terminal of written patterns takes the whole term for something else."""
    grammar = files("frogless.read").joinpath("pattern.lark").read_text(encoding="utf-8")
    found = re.findall(r"^_?[A-Z_]+: /(.+)/i$", grammar, re.MULTILINE)
    assert len(found) > 50
    for stitch in dictionary().values():
        if stitch.key == "chain":  # which is a place as well: "in next ch"
            continue
        term = stitch.terms[dialect]
        for word in (term.name, term.abbreviation):
            assert [one for one in found if re.fullmatch(one, word, re.IGNORECASE)] == []


@pytest.mark.parametrize("dialect", DIALECTS)
def test_no_abbreviation_ends_in_a_figure_when_stitches_are_worked_together(
    dialect: Dialect,
) -> None:
    """ "x42tog" could be 2 of "x4" or 42 of "x"."""
    for stitch in dictionary().values():
        assert not stitch.terms[dialect].abbreviation[-1].isdigit()


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize("key", dictionary())
def test_every_stitch_is_explained_in_one_sentence_when_filled(key: str, dialect: Dialect) -> None:
    """No placeholder is left, and the sentence begins with a capital and ends with a full stop."""
    sentence = explain(dictionary()[key], dialect)
    assert re.fullmatch(r"[A-Z][^{}.]+\.", sentence)


@pytest.mark.parametrize("key", dictionary())
def test_no_explanation_speaks_in_us_terms_when_read_in_the_uk(key: str) -> None:
    """In the UK there is no single crochet, and nothing is skipped; left-handers read the same."""
    stitch = dictionary()[key]
    assert "crochet" not in re.sub(r"\{[a-z_]+\}", "", stitch.how + stitch.left_handed)
    for told in (explain(stitch, "uk"), explain_left_handed(stitch, "uk")):
        assert not re.search(r"single crochet|half double|yarn over|\bskip\b", told, re.IGNORECASE)
        assert re.fullmatch(r"[A-Z][^{}.]+\.", told)


def test_an_explanation_uses_the_readers_words_when_dialects_differ() -> None:
    """The yarn goes over in the US and round the hook in the UK."""
    stitch = dictionary()["foundation_double_crochet"]
    assert "yarn over" in explain(stitch, "us")
    assert "yarn round hook" in explain(stitch, "uk")
    assert explain(dictionary()["crossed_treble"], "uk").startswith("Miss the next stitch")


@pytest.mark.parametrize("key", dictionary())
def test_a_left_hander_reads_other_words_only_where_sides_are_named(key: str) -> None:
    """Right and left change places, and nothing else; where no side is named nothing changes."""
    stitch = dictionary()[key]
    told, left_handed = explain(stitch, "us"), explain_left_handed(stitch, "us")
    swap = {"right": "left", "left": "right"}
    assert left_handed == re.sub(r"\b(right|left)\b", lambda side: swap[side[0]], told)


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
        ('us = ["knot", "kn"]', 'us = ["knot", 3]', "us is 3; write text"),
        ('us = ["knot", "kn"]', 'us = ["knot", "st"]', '"st" already stands for the word stitch'),
        ('"pull_through 2"', '"pull_through"', "pull_through takes a number"),
        ('"pull_up"', '"pull_up 2"', "pull_up takes no number"),
        ('"pull_up"', '[0, "pull_up"]', "a list within the steps begins with how many times"),
        ("insert in back_loop", "insert in bakc_loop", 'did you mean "back_loop"'),
        ('kind = "stitch"', 'kind = "stich"', "accepted: stitch, foundation"),
        ("leaves = 1", "leaves = -1", "leaves is -1; write a whole number, 0 or more"),
        ("leaves = 1", "leaves = true", "leaves is True; write a whole number"),
        ("leaves = 1", 'leaves = 1\nchain_counts = "maybe"', "accepted: yes, no, varies"),
        ("leaves = 1", 'leaves = 1\ninto = "ring"', "like missing"),
        ("leaves = 1", 'leaves = 1\nsymbol = ["stalk"]', '"stalk" is no part of a symbol'),
        ("leaves = 1", 'leaves = 1\nsymbol = ["bars"]', "this part of a symbol takes a number"),
        ("leaves = 1", 'leaves = 1\nalso = "bow"', "also is 'bow'; write a list of texts"),
        ("leaves = 1", 'leaves = 1\nabroad = "Knoten"', "a table of names by language"),
        ("leaves = 1", "leaves = 1\nabroad.de = []", "abroad.de is []"),
        ("leaves = 1", 'leaves = 1\nlike = "bow"', 'unknown stitch "bow"'),
        ("leaves = 1", 'leaves = 1\nlike = ["bow"]', "like is ['bow']; write text"),
        ('how = "Work it."', 'how = "Work {it}."', '"{it}" is neither a stitch nor a reading word'),
    ],
)
def test_an_entry_is_refused_with_its_place_when_wrong(old: str, new: str, said: str) -> None:
    """The fault names the file, the stitch and what would be right."""
    message = refusal(ONE.replace(old, new))
    assert message.startswith("mine.toml knot: ")
    assert said in message


LIKE = """
[bow]
like = "knot"
into = "front_post"
us = ["bow", "bw"]
uk = ["bow", "bw"]
"""
GROUP = """
[tuft]
kind = "group"
us = ["tuft", "tf"]
uk = ["tuft", "tf"]
works = [{ work = "knot", times = 2 }, { chain = 3 }, { repeat = [{ work = "knot" }], times = 2 }]
how = "Work them."
source = "a test"
basis = "memory"
"""


def test_what_an_entry_leaves_out_is_taken_over_when_it_is_like_another() -> None:
    """Every insert goes to the place named, and the place says what else changes."""
    knot, bow = read_dictionary(ONE + LIKE, "mine.toml").values()
    assert [step.where for step in bow.steps] == ["front_post", "", ""]
    assert (bow.turning_chain, bow.stands_on, bow.width) == (1, 1, knot.width)
    assert bow.height == Ratio(0.7, 0.85, 1.0)
    assert (bow.like, bow.into, bow.symbol) == ("knot", "front_post", ("foot_hook_right",))
    assert bow.how.startswith("Work {knot}, but insert the hook around the post")


def test_a_sentence_of_its_own_is_not_left_to_another_when_hands_differ() -> None:
    """A stitch that says how it is worked says so for left-handers too, or is worked alike."""
    own = (
        LIKE.replace("[bow]", "[own]").replace('"bow", "bw"', '"own", "ow"').replace("knot", "bow")
    )
    own += 'how = "Work it the other way."\n'
    found = read_dictionary(ONE + LIKE + own, "mine.toml")
    assert found["bow"].left_handed
    assert found["own"].left_handed == ""


def test_a_group_is_counted_from_what_it_works_when_read() -> None:
    """Four knots and a chain space: their motions, their places, their widths together."""
    found = read_dictionary(CHAIN + ONE + GROUP, "mine.toml")
    knot, tuft = found["knot"], found["tuft"]
    assert tuft.works == (Work("knot", 2), Chain(3), Repeat((Work("knot"),), 2))
    assert tuft.steps == (*knot.steps, *knot.steps, Step("chain", 3), *knot.steps, *knot.steps)
    assert (tuft.stands_on, tuft.leaves, tuft.turning_chain) == (1, 5, 1)
    assert (tuft.catches, tuft.height, tuft.width) == (11, Ratio(1, 1, 1), Ratio(7, 7, 7))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('like = "knot"', 'like = "knott"', 'unknown stitch "knott"; did you mean "knot"?'),
        ('into = "front_post"', 'into = "front_posts"', '"front_posts" is no place to insert'),
        ('into = "front_post"\n', "", "basis, how, source missing"),
        ('"bow", "bw"', '"bow", "kn"', 'us: "kn" already stands for knot'),
        ('like = "knot"', 'like = "tuft"', '"tuft", which is a group'),
    ],
)
def test_an_entry_like_another_is_refused_with_its_place_when_wrong(
    old: str, new: str, said: str
) -> None:
    """An unknown stitch, an unknown place, a word that is taken."""
    message = refusal(CHAIN + ONE + GROUP + LIKE.replace(old, new))
    assert message.startswith("mine.toml bow: ")
    assert said in message


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('work = "knot", times = 2', 'work = "knott"', 'unknown stitch "knott"'),
        ("{ chain = 3 }", "{ skip = 1 }", "is not worked into one place"),
        ("{ chain = 3 }", '{ together = "knot", places = 2 }', "is not worked into one place"),
        ("{ chain = 3 }", '{ worked = "knot" }', "is not a node"),
        ("{ chain = 3 }", "7", "7 is not a node"),
        ("{ chain = 3 }", "{ work = 7 }", "7 is no stitch"),
        ("{ chain = 3 }", "{ repeat = [] }", "says no times"),
        ("{ chain = 3 }", "{ repeat = 3, times = 2 }", "3 is no list of nodes"),
        ('how = "Work them."', 'how = "Work them."\nleaves = 5', "follows from what it works"),
        ("works =", "leaves =", "works missing"),
        ("[{ work =", "[] # [{ work =", "a group works at least one stitch"),
        ('kind = "group"', 'kind = "stitch"', 'kind is "stitch"; what has works is a group'),
    ],
)
def test_a_group_is_refused_with_its_place_when_wrong(old: str, new: str, said: str) -> None:
    """Unknown stitches, what takes places of its own, and what is counted anyway."""
    message = refusal(CHAIN + ONE + GROUP.replace(old, new))
    assert message.startswith("mine.toml tuft: ")
    assert said in message


def test_an_entry_may_be_like_a_known_stitch_when_that_is_handed_in() -> None:
    """A designer's own stitches build on the dictionary, and may not take its words."""
    text = LIKE.replace("knot", "treble")
    (bow,) = read_dictionary(text, "mine.toml", dictionary()).values()
    assert bow.turning_chain == 4
    assert explain(bow, "uk", {**dictionary(), "bow": bow}).startswith("Work double treble crochet")
    taken = text.replace('uk = ["bow", "bw"]', 'uk = ["bow", "tr"]')
    with pytest.raises(InputError, match='bow: uk: "tr" already stands for double_crochet'):
        read_dictionary(taken, "mine.toml", dictionary())


def test_a_known_stitch_is_not_replaced_when_an_entry_has_its_key() -> None:
    """What the dictionary calls a picot stays one in every pattern."""
    with pytest.raises(InputError, match="picot: there is a stitch of that key already"):
        read_dictionary(ONE.replace("[knot]", "[picot]"), "mine.toml", dictionary())


def test_a_file_that_is_no_data_is_refused_when_read() -> None:
    """With its line, and no traceback."""
    assert refusal("[knot\n").startswith("mine.toml: it is not understood as TOML")
    assert refusal("knot = 3\n") == "mine.toml knot: 3 is no stitch; write a table [knot]"


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
    known = {"published", "common-practice", "memory", "derived"}
    assert "low, typical, high" in data_file("stitches.toml")
    for stitch in dictionary().values():
        assert stitch.source
        assert {stitch.basis, stitch.terms_basis} <= known


def test_every_stitch_has_a_symbol_of_its_own_when_charted() -> None:
    """No two are drawn alike; a group without one is drawn as what it works."""
    symbols = [s.symbol for s in dictionary().values() if s.symbol or s.kind != "group"]
    assert all(symbols)
    assert [one for one in symbols if symbols.count(one) > 1] == []


def test_taller_stitches_have_no_shorter_chain_when_basic() -> None:
    """Sorted by height, the turning chains of the stitches a fabric begins with never fall."""
    basic = [s for s in dictionary().values() if s.foundation_extra and not s.like]
    chains = [s.turning_chain for s in sorted(basic, key=lambda s: s.height.typical)]
    assert len(chains) == 12
    assert chains == sorted(chains)


def test_every_turning_chain_says_whether_it_counts_when_there_is_one() -> None:
    """Yes, no or it varies: a maker has to know where the next row ends."""
    for stitch in dictionary().values():
        if stitch.kind in ("stitch", "group") and stitch.turning_chain:
            assert stitch.chain_counts in ("yes", "no", "varies")
