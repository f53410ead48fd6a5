"""The dialect of a pattern: asked for, declared, or guessed from what it says."""

import pytest

from frogless.proofread.script.model import Label, Part, RowText, Script, Span
from frogless.proofread.words.dialect import terms_of
from frogless.proofread.words.model import Entry, Terms
from frogless.stitches.model import Dialect


def _terms(text: str, entries: tuple[Entry, ...] = (), asked: Dialect | None = None) -> Terms:
    part = Part("instructions", Span(0, 0), Span(0, len(text)))
    return terms_of(Script(text, text, (0,), (part,)), entries, asked)


@pytest.mark.parametrize(
    ("text", "dialect"),
    [
        ("This pattern is written in US terms.", "us"),
        ("UK terminology", "uk"),
        ("Written in British crochet terms.", "uk"),
        ("Abbreviations (US terms)", "us"),
        ("Terms: UK", "uk"),
        ("Abbreviations used are UK.", "uk"),
        ("Written in US terms. UK equivalents are given in brackets.", "us"),
        ("I use UK terms (US terms in brackets).", "uk"),
        ("US terms. Checked: UK terms. For you; US terms.", "us"),
        ("A US version is available; this one is in UK terms.", "uk"),
        ("(UK terms – US readers: dc = sc, tr = dc)", "uk"),
    ],
)
def test_declared_dialect_is_believed(text: str, dialect: str) -> None:
    """What a pattern says of itself decides, in whatever wording."""
    terms = _terms(text)
    assert (terms.dialect, terms.declared, terms.guessed) == (dialect, dialect, False)


def test_asked_dialect_goes_before_the_declared_one() -> None:
    """The user knows best; what the pattern declares is kept."""
    terms = _terms("UK terms. Rnd 1: 6 dc.", asked="us")
    assert (terms.dialect, terms.declared, terms.guessed) == ("us", "uk", False)


@pytest.mark.parametrize(
    ("text", "dialect"),
    [
        ("Rnd 1: sc in each st around.", "us"),
        ("Row 2: hdc in each st.", "us"),
        ("Row 2: sc2tog, skip next st", "us"),
        ("Row 2: htr in each st.", "uk"),
        ("Miss 2 sts, dc in next st. Check your tension.", "uk"),
        ("Rnd 2: ch 1, dc in each st around.", "uk"),
        ("Rnd 2: ch 3 (counts as tr), tr in each st around.", "uk"),
        ("Rnd 2: ch 3 (counts as dc), dc in each st around.", "us"),
        ("Rnd 2: ch 4, tr in each st around.", "us"),
    ],
)
def test_dialect_is_guessed_from_words_and_heights(text: str, dialect: str) -> None:
    """Stitches that one dialect alone has, and chains as tall as one of its stitches, tell."""
    terms = _terms(text)
    assert (terms.dialect, terms.guessed) == (dialect, True)


@pytest.mark.parametrize(
    ("word", "meaning", "dialect"),
    [
        ("dc", "insert hook in st, yrh, pull up a loop, yrh and pull through both", "uk"),
        ("dc", "yo, insert hook in st, pull up a loop, (yo, pull through 2) twice", "us"),
        ("tr", "yo, insert hook, pull up a loop, (yo, pull through 2 loops) twice", "uk"),
        ("tr", "yo twice, insert hook, pull up a loop, (yo, pull through 2) 3 times", "us"),
    ],
)
def test_steps_of_a_stitch_tell_its_dialect(word: str, meaning: str, dialect: str) -> None:
    """How often the yarn goes over the hook before it goes in is the stitch's height."""
    assert _terms("Rnd 1: 6 ch.", (Entry(word, meaning, Span(0, 5)),)).dialect == dialect


def test_name_alone_tells_nothing() -> None:
    """ "dc = double crochet" is said in both dialects: US, and guessed."""
    terms = _terms("Row 1: 8 dc.", (Entry("dc", "double crochet", Span(0, 5)),))
    assert (terms.dialect, terms.guessed, terms.evidence) == ("us", True, ())


def test_evidence_says_where_it_stands() -> None:
    """Each piece of evidence has its words."""
    text = "Row 1: 8 dc. Row 2: htr in each st."
    (evidence,) = _terms(text).evidence
    assert text[evidence.span.start : evidence.span.end] == "htr"


def test_more_evidence_outweighs_one_word() -> None:
    """A UK pattern that skips once is still a UK pattern."""
    assert _terms("Skip 1 st, htr in next st. Tension: 18 tr to 10 cm.").dialect == "uk"


def test_a_translation_tells_nothing() -> None:
    """What a word is called elsewhere is no evidence of the words that are used."""
    assert not any("single" in one.why for one in _terms("US readers: dc = sc.").evidence)


@pytest.mark.parametrize(
    ("row", "told"),
    [("Ch 1, dc in each st.", True), ("Ch 4, V-st in next sp, ch 1, dc in 3rd ch of ch-4.", False),
     ("Dc in each st. Turn. Ch 3, dc in next st.", True), ("1 ch, 1 dc in next tr.", True)],
)  # fmt: skip
def test_only_a_chain_that_begins_a_row_tells_its_height(row: str, told: bool) -> None:
    """A chain between two stitches is a space, however tall the next stitch is."""
    body = Span(0, len(row))
    part = Part("instructions", Span(0, 0), body, (RowText(Label(Span(0, 0)), body),))
    terms = terms_of(Script(row, row, (0,), (part,)), (), None)
    assert any("as tall as" in one.why for one in terms.evidence) == told
