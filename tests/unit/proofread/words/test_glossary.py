"""Lists of abbreviations in the looks that people give them."""

import pytest

from frogless.proofread.script.model import Part, PartKind, Script, Span
from frogless.proofread.words.glossary import entries_of


def _script(text: str, kind: PartKind = "abbreviations") -> Script:
    return Script(text, text, (0,), (Part(kind, Span(0, 0), Span(0, len(text))),))


def _told(text: str, kind: PartKind = "abbreviations") -> dict[str, str]:
    return {entry.word: entry.meaning for entry in entries_of(_script(text, kind))}


@pytest.mark.parametrize(
    "text",
    [
        "dc = double crochet\nsl st = slip stitch",
        "dc: double crochet\nsl st: slip stitch",
        "dc - double crochet\nsl st - slip stitch",
        "dc  double crochet\nsl st   slip stitch",
        "dc\tdouble crochet\nsl st\tslip stitch",
        "dc double crochet\nsl st slip stitch",
        "double crochet (dc)\nslip stitch (sl st)",
        "dc (double crochet), sl st (slip stitch)",
        "dc = double crochet, sl st = slip stitch.",
        "dc: double crochet; sl st: slip stitch",
        "US terms: dc = double crochet, sl st = slip stitch",
        "| Abbreviation | Meaning |\n|---|---|\n| dc | double crochet |\n| sl st | slip stitch |",
        "* dc - double crochet\n* sl st - slip stitch",
        "- **dc**: double crochet\n- **sl st**: slip stitch",
        "dc   double crochet     sl st   slip stitch",
        "dc = double crochet     sl st = slip stitch",
        "dc = double crochet. sl st = slip stitch.",
        "dc = double crochet / sl st = slip stitch",
        "dc, double crochet; sl st, slip stitch",
        "dc double crochet, sl st slip stitch",
        "dc , double crochet; sl st  , slip stitch",
        "d.c. = double crochet; sl. st. = slip stitch",
        "| short | in full |\n|---|---|\n| dc | double crochet |\n| sl st | slip stitch |",
        "dc = double crochet\nsl st = slip stitch\nRound 1: 6 dc in ring. (6 dc)\nR2: dc = 12",
    ],
)
def test_list_is_read_in_every_look(text: str) -> None:
    """Signs, columns, tables, bullets and brackets between a word and its meaning are all alike."""
    assert _told(text) == {"dc": "double crochet", "sl st": "slip stitch"}


def test_comma_within_a_meaning_begins_no_entry() -> None:
    """ "double crochet, 2 together" is one meaning."""
    told = _told("dc2tog: double crochet, 2 together, ch: chain")
    assert told == {"dc2tog": "double crochet, 2 together", "ch": "chain"}


def test_brackets_within_brackets_are_read() -> None:
    """ "st(s) (stitch(es))" explains two words, and hides none before it."""
    told = _told("ch (chain), rep (repeat), st(s) (stitch(es))")
    assert told == {"ch": "chain", "rep": "repeat", "st": "stitch(es)", "sts": "stitch(es)"}


def test_a_plural_in_brackets_needs_no_sign_before_its_meaning() -> None:
    """ "sp(s) space(s)" explains two words."""
    told = _told("ch(s) chain(s)\nsp(s) space(s)\ntr treble")
    assert told == {
        "ch": "chain(s)", "chs": "chain(s)", "sp": "space(s)", "sps": "space(s)", "tr": "treble",
    }  # fmt: skip


def test_bracket_within_a_meaning_begins_no_entry() -> None:
    """What stands in brackets belongs to its group."""
    assert _told("sh = (2 dc, ch 1, 2 dc) in same st") == {"sh": "(2 dc, ch 1, 2 dc) in same st"}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("st(s): stitch(es)", {"st", "sts"}),
        ("BLO/FLO: back loop only, front loop only", {"blo", "flo"}),
        ("beg or begin: beginning", {"beg", "begin"}),
        ("Shell (sh): 5 dc in one st", {"shell", "sh"}),
        ("dc (US) = double crochet", {"dc"}),
        ("ch, dc, ea (each), inc (2 dc in same st), MR", {"ch", "dc", "ea", "inc", "mr"}),
        ("tr2tog work 2 tr together", {"tr2tog"}),
        ("ch, sl st (US)", {"ch", "sl st"}),
        ("ch, chain - dc, double crochet - sp(s), space(s)", {"ch", "dc", "sp", "sps"}),
    ],
)
def test_several_words_of_one_meaning_are_entries_each(text: str, words: set[str]) -> None:
    """A slash, an ending in brackets or a short form in brackets gives a further word."""
    assert set(_told(text)) == words


def test_meaning_goes_on_in_an_indented_line() -> None:
    """A line that is set in belongs to the entry above it."""
    told = _told("CL    yo, insert hook,\n      pull up a loop\nch    chain")
    assert told == {"cl": "yo, insert hook, pull up a loop", "ch": "chain"}


def test_sentence_in_the_list_is_no_entry() -> None:
    """Remarks among the abbreviations name nothing."""
    assert _told("These are the words used here.\nch = chain") == {"ch": "chain"}


def test_entry_stands_where_it_is_written() -> None:
    """The place of an entry is its line without bullet and full stop."""
    text = "* ch = chain.\n* dc = double crochet."
    spans = [entry.span for entry in entries_of(_script(text))]
    assert [text[s.start : s.end] for s in spans] == ["ch = chain", "dc = double crochet"]


def test_words_explained_where_they_are_used_are_entries() -> None:
    """Without a list, "magic ring (MR)" is a definition, and "red (A)" is none."""
    text = "Begin with a magic ring (MR) in red (A), then half double crochet (hdc)."
    told = _told(text, "instructions")
    assert told == {"mr": "magic ring", "hdc": "half double crochet"}


def test_long_lines_of_nothing_are_read_in_time() -> None:
    """Commas, blanks and hyphens without end do not multiply the work."""
    for text in ("," * 50_000, " \t" * 50_000, "a-" * 50_000, "=" * 50_000, "a, b = " * 20_000):
        assert len(entries_of(_script(text))) <= 500
