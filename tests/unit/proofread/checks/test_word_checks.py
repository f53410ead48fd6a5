"""The list of abbreviations against the rows, and terms that are mixed."""

import pytest

from frogless.proofread.run import proofread

LIST = "Abbreviations\nch = chain\nsc = single crochet\nst(s) = stitch(es)\nrep = repeat\n{more}\n\nInstructions\n"
ROWS = (
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sts)\n"
    "Row 2: Ch 1, *sc in next 2 sts; rep from * across. (20 sc)\n"
)


def _says(text: str, kind: str) -> list[str]:
    return [each.says for each in proofread(text).findings if each.kind == kind]


def test_list_that_holds_every_word_is_complete() -> None:
    """Words that stand in the list, and plain words, are not asked for."""
    text = LIST.format(more="") + ROWS
    assert _says(text, "undefined-abbreviation") == []
    assert _says(text, "unused-abbreviation") == []


@pytest.mark.parametrize(
    ("row", "word"),
    [
        ("Row 3: Ch 1, sk first st, sc in each st across.", "sk"),
        ("Row 3: Ch 2, hdc in each st across.", "hdc"),
        ("Row 3: Ch 1, sc in BLO of each st across.", "BLO"),
    ],
)
def test_word_that_the_list_lacks_is_told(row: str, word: str) -> None:
    """Stitches and other words of the trade alike."""
    assert _says(LIST.format(more="") + ROWS + row, "undefined-abbreviation") == [
        f'"{word}" is used'
    ]


def test_word_made_of_explained_words_needs_no_entry() -> None:
    """ "sc2tog" is clear where sc3tog is explained."""
    text = LIST.format(more="sc3tog = single crochet 3 together") + ROWS
    text += "Row 3: Ch 1, sc2tog, sc in next 15 sts, sc3tog.\n"
    assert _says(text, "undefined-abbreviation") == []


def test_stitch_of_the_special_stitches_needs_no_entry() -> None:
    """It is explained there, though its motions are not all understood."""
    special = "Special stitches\nPuff: yo, pull up a loop; 3 times in the same st, yo and pull through.\n\n"
    text = special + LIST.format(more="") + ROWS + "Row 3: Ch 1, sc in 19 sts, puff in last st.\n"
    assert _says(text, "undefined-abbreviation") == []


def test_without_a_list_nothing_is_asked_for() -> None:
    """A pattern that explains no word expects its makers to know them."""
    assert _says(ROWS, "undefined-abbreviation") == []
    assert _says("Stitches used: ch, sc, dc, hdc\n\n" + ROWS, "undefined-abbreviation") == []


def test_word_that_nothing_uses_is_told() -> None:
    """An entry left over from another pattern."""
    text = LIST.format(more="dtr = double treble crochet") + ROWS
    assert _says(text, "unused-abbreviation") == ['"dtr" is explained']


def test_word_within_another_is_used() -> None:
    """ "tog" is used in "sc2tog", "blo" in "BLOsc"."""
    text = LIST.format(more="tog = together\nblo = back loop only") + ROWS
    text += "Row 3: Ch 1, sc2tog, BLOsc in next 18 sts.\n"
    assert _says(text, "unused-abbreviation") == []


@pytest.mark.parametrize(
    ("declared", "row", "word"),
    [
        ("Written in UK terms.", "Row 2: Ch 1, sc in each st across.", "sc"),
        ("Written in UK terms.", "Row 2: Ch 2, hdc in each st across.", "hdc"),
        ("Written in US terms.", "Row 2: Ch 2, htr in each st across.", "htr"),
    ],
)
def test_word_of_the_other_dialect_is_told(declared: str, row: str, word: str) -> None:
    """With its place, and with the word that was meant."""
    text = (
        f"{declared}\n\nCh 21.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\n{row}\n"
    )
    assert _says(text, "mixed-terms") == [f'"{word}"']


def test_heights_of_the_other_dialect_are_told() -> None:
    """Declared UK, every dc behind three chains: that is a US dc."""
    text = (
        "Written in UK terms.\n\nCh 22.\n"
        "Row 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\n"
        "Row 2: Ch 3 (counts as dc), dc in next st and in each st across, turn. (20 dc)\n"
    )
    assert _says(text, "mixed-terms") == ["UK terms"]
    assert _says(text.replace("UK", "US"), "mixed-terms") == []


def test_entry_of_two_words_explains_what_is_read_in_it() -> None:
    """An "inv dec" in the list, and a "dec" read in the row."""
    text = """Abbreviations:
sc: single crochet
inc: 2 sc in the same stitch
inv dec: invisible decrease
st: stitch
rnd: round

Rnd 1: 6 sc in magic ring. (6)
Rnd 2: inc in each st. (12)
Rnd 3: inv dec around. (6)
"""
    assert [each.kind for each in proofread(text).findings] == []
