"""What a pattern defines itself, and what it says of its turning chains."""

import pytest

from frogless.proofread.script.model import Label, Part, PartKind, Prose, RowText, Script, Span
from frogless.proofread.words.glossary import entries_of
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Bare, Chain, OwnStitch, Terms
from frogless.proofread.words.own import lexicon_of


def _script(text: str, kind: PartKind) -> Script:
    whole = Span(0, len(text))
    rows = (RowText(Label(Span(0, 0)), whole),) if kind == "instructions" else ()
    return Script(text, text, (0,), (Part(kind, Span(0, 0), whole, rows),))


def _lexicon(text: str, kind: PartKind = "special", dialect: str = "us") -> Lexicon:
    script = _script(text, kind)
    return lexicon_of(script, entries_of(script), Terms("uk" if dialect == "uk" else "us"))


def _own(text: str, kind: PartKind = "special") -> OwnStitch:
    (only,) = _lexicon(text, kind).own.values()
    return only


@pytest.mark.parametrize(
    ("word", "us", "uk"),
    [
        ("dc", "double_crochet", "single_crochet"),
        ("tr", "treble", "double_crochet"),
        ("trebles", "treble", "double_crochet"),
        ("sl.st", "slip_stitch", "slip_stitch"),
        ("sl-st", "slip_stitch", "slip_stitch"),
        ("ss", "slip_stitch", "slip_stitch"),
        ("fpdc", "front_post_double_crochet", "front_post_single_crochet"),
        ("blo dc", "double_crochet_back_loop", "single_crochet_back_loop"),
        ("dc's", "double_crochet", "single_crochet"),
        ("v-sts", "v_stitch", "v_stitch"),
        ("sc", "single_crochet", "single_crochet"),
        ("htr", "half_double_crochet", "half_double_crochet"),
    ],
)
def test_words_mean_what_their_dialect_says(word: str, us: str, uk: str) -> None:
    """Common forms are found, and words that only the other dialect has keep their one meaning."""
    found = [_lexicon("Ch 1.", "about", d).keys[word] for d in ("us", "uk")]
    assert found == [us, uk]


def test_increase_is_no_stitch() -> None:
    """ "inc" and "dec" and their invisible kin name no stitch of the dictionary."""
    keys = _lexicon("Ch 1.", "about").keys
    assert not {"inc", "dec", "invdec", "inv dec", "inv-dec"} & keys.keys()


@pytest.mark.parametrize(
    ("text", "key", "takes", "leaves", "meaning"),
    [
        ("inc = 2 sc in same st", "inc", 1, 2, "single_crochet"),
        ("inc: increase (3 dc in next st)", "inc", 1, 3, "double_crochet"),
        ("dec = sc2tog", "dec", 2, 1, "single_crochet"),
        ("dec: decrease - hdc 2 together", "dec", 2, 1, "half_double_crochet"),
        ("dec: insert hook in next st, pull up a loop, insert hook in next st", "dec", 2, 1, ""),
        ("x = single crochet", "x", 1, 1, "single_crochet"),
        ("ps: picot", "ps", 1, 1, "picot"),
        ("Cl = dc3tog over next 3 sts", "cl", 3, 1, "double_crochet"),
    ],
)
def test_abbreviation_is_given_its_meaning(
    text: str, key: str, takes: int, leaves: int, meaning: str
) -> None:
    """Shapings and short words of the pattern's own say how many places and which stitch."""
    own = _own(text, "abbreviations")
    assert (own.key, own.takes, own.leaves, own.meaning) == (key, takes, leaves, meaning)


def test_plain_meaning_of_a_plain_word_is_nothing_new() -> None:
    """What the dictionary says already is not said again."""
    assert not _lexicon("dc = double crochet\nsl st: slip stitch(es)", "abbreviations").own


def test_group_has_what_is_worked_into_its_place() -> None:
    """A shell's body is its stitches, without brackets and place."""
    own = _own("Shell (sh): (2 dc, ch 1, 2 dc) in same st.")
    assert own.words[:2] == ("shell", "shells")
    assert "sh" in own.words
    assert [type(act) for act in own.body] == [Bare, Chain, Bare]
    assert (own.takes, own.leaves) == (1, 4)


def test_group_over_several_places_takes_them_all() -> None:
    """ "sk 2 sts, 5 dc in next st, sk 2 sts" goes over five places."""
    own = _own("Wave: skip next 2 sts, 5 dc in next st, skip next 2 sts.")
    assert (own.takes, own.leaves) == (5, 5)


def test_stitch_told_in_motions_closes_into_one() -> None:
    """A cluster over the next stitches takes each of them and leaves one."""
    own = _own("Leaf: [yo, insert hook in next st, pull up a loop] 4 times, yo, pull through all.")
    assert (own.takes, own.leaves, own.body) == (4, 1, ())


@pytest.mark.parametrize(
    "text",
    [
        "Crown picot: ch 3, sl st in 3rd ch from hook",
        "Crown picot: ch 4, ss in base of ch",
        "Crown picot - ch 3, sl st in top of last dc",
    ],
)
def test_picot_takes_and_leaves_nothing(text: str) -> None:
    """A picot closed on itself stands on no place."""
    own = _own(text)
    assert (own.takes, own.leaves) == (0, 0)


def test_definition_may_follow_its_name_on_the_next_line() -> None:
    """A name alone on a line is a heading of what follows."""
    own = _own("Corner fan (cf)\nWork (3 dc, ch 2, 3 dc) in the next st.")
    assert own.words[0] == "corner fan"
    assert own.leaves == 6


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("The turning chain of 3 does not count as a stitch, in text or counts.", {3: False}),
        ("Ch 3 counts as a dc throughout.", {3: True}),
        ("The turning ch does not count as a st.", {0: False}),
        ("Turning chains are not counted as stitches.", {0: False}),
        ("Stitch counts do not include the beginning ch 2.", {2: False}),
        ("The ch 3 at start of each rnd counts as dc, ch 1 does not count.", {3: True, 1: False}),
        ("Count your stitches after each row.", {}),
        ("The chains you begin on do not count as a stitch.", {}),
    ],
)
def test_notes_say_whether_chains_count(text: str, counts: dict[int, bool]) -> None:
    """General remarks are kept by the number of chains, 0 for all of them."""
    assert _lexicon(text, "notes").chain_counts == counts


def test_row_speaks_for_those_after_it_when_it_says_throughout() -> None:
    """ "here and throughout" in a row is a general remark; without it, it is the row's alone."""
    row = "Ch 3 (counts as dc{}), dc in each st around."
    assert _lexicon(row.format(" here and throughout"), "instructions").chain_counts == {3: True}
    assert not _lexicon(row.format(""), "instructions").chain_counts


def test_sentence_between_rows_is_a_general_remark() -> None:
    """A note among the instructions counts as one in front of them."""
    text = "Note: beginning ch-2 does not count as a st."
    whole = Span(0, len(text))
    script = Script(text, text, (0,), (Part("instructions", whole, whole, (Prose(whole),)),))
    assert lexicon_of(script, (), Terms("us")).chain_counts == {2: False}


@pytest.mark.parametrize("kind", ["special", "notes", "about", "abbreviations"])
def test_part_without_a_line_defines_nothing(kind: PartKind) -> None:
    """An empty part is no fault."""
    assert not _lexicon("", kind).own
