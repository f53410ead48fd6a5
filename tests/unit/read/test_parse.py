"""Lines of text and what they say."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.parse import parse_row, parse_spread
from frogless.read.spoken import (
    NOTHING,
    Across,
    Backwards,
    Bare,
    Changed,
    Counted,
    Each,
    Ending,
    FromHook,
    Group,
    InKind,
    Item,
    Label,
    Made,
    Marked,
    NoTurningChain,
    Older,
    Over,
    Placed,
    Said,
    SaidAgain,
    SaidChain,
    SameStart,
    Skipped,
    Starred,
    Tog,
    Unworked,
)
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import Chain, Change, Into, Repeat, Skip, Work

SC, DC, BETWEEN = "single_crochet", "double_crochet", "double_crochet_between"
V = Into((Work(DC), Chain(1), Work(DC)))


def parsed(text: str, words: Vocabulary) -> Said:
    """A line that tells of rows in full."""
    said = parse_row(text, words)
    assert isinstance(said, Said)
    return said


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("dc in next st", Placed(Work(DC))),
        ("dc in next 9 sts", Placed(Work(DC, 9))),
        ("DC in  the next 9 STS", Placed(Work(DC, 9))),
        ("double crochet in next 9 sts", Placed(Work(DC, 9))),
        ("dc in next 9 chs", Placed(Work(DC, 9), "next", "ch")),
        ("dc in next 2 row ends", Placed(Work(DC, 2), "next", "end")),
        ("dc in next ch-2 sp", Placed(Work(DC), "next", "sp2")),
        ("dc in next 3 ch-2 sps", Placed(Work(DC, 3), "next", "sp2")),
        ("dc in next 3 ch-sps", Placed(Work(DC, 3), "next", "sp")),
        ("dc in next 3 places", Placed(Work(DC, 3), "next", "place")),
        ("dc in first st", Placed(Work(DC), "first")),
        ("2 dc in last st", Placed(Into((Work(DC, 2),)), "last")),
        ("dc in same st", Placed(Work(DC), "same")),
        ("(dc, ch 1, dc) in same st", Placed(Into((Work(DC), Chain(1), Work(DC))), "same")),
        ("11 dc in ring", Placed(Into((Work(DC, 11),)), "ring", "ring")),
        ("dc in the ring", Placed(Work(DC), "ring", "ring")),
        ("sc blo in next 2 sts", Placed(Work("single_crochet_back_loop", 2))),
        ("2 dc in next st", Placed(Into((Work(DC, 2),)))),
        (
            "(sc, picot, 2 picots, p, ch 3) in next st",
            Placed(Into((Work(SC), Work("picot"), Work("picot", 2), Work("picot"), Chain(3)))),
        ),
        (
            "([sc, picot] 9 times) in next st",
            Placed(Into((Repeat((Work(SC), Work("picot")), 9),))),
        ),
        ("(slide up a bead, sc) in next st", Placed(Into((Work("bead"), Work(SC))))),
        ("skip next st", Skipped(1)),
        ("sk next 2 sts", Skipped(2)),
        ("leave last 5 sts unworked", Unworked(5, for_now=False)),
        ("leave the last st unworked for now", Unworked(1, for_now=True)),
        ("sl st in first st (not counted)", Across("sl st", 1)),
        ("sl st in each of first 5 chs (not counted)", Across("sl st", 5, "ch")),
        ("beginning in same st", SameStart()),
        ("working also into the 3 sts left unworked", Older(3)),
        ("working also into the st left unworked", Older(1)),
        ("work nothing", NOTHING),
        ("[ch 1, skip next st] 3 times", Group((SaidChain(1), Skipped(1)), 3)),
        ("[skip next st, dc in next st] 3 times", Group((Skipped(1), Placed(Work(DC))), 3)),
        ("slide up a bead", Made(Work("bead"))),
        ("slide up 3 beads", Made(Work("bead", 3))),
        ("work 80 fdc", Made(Work("foundation_double_crochet", 80))),
        ("make an adjustable ring", Made(Work("adjustable_ring"))),
        ("dc2tog", Tog("dc2tog")),
        ("dc2tog over next 2 sts", Over("dc2tog", 1, 2)),
        ("dc2tog over first 2 sts", Over("dc2tog", 1, 2, "first")),
        ("dc2tog over last 2 row ends", Over("dc2tog", 1, 2, "last", "end")),
        ("dc", Bare("dc")),
        ("2 picots", Bare("picots", 2)),
        ("ch 2", SaidChain(2)),
        ("ch 2 (does not count as a st)", SaidChain(2, "not_counted")),
        ("ch 2 (does not count)", SaidChain(2, "not_counted")),
        ("ch 3 (counts as first dc)", SaidChain(3, "counted")),
        ("ch 3 (counts as dc in next st)", SaidChain(3, "counted_next")),
        (
            "beginning in 4th ch from hook (3 skipped chs count as first dc)",
            FromHook(4, 3, counts=True),
        ),
        (
            "beginning in 2nd ch from hook (skipped ch does not count as a st)",
            FromHook(2, 1, counts=False),
        ),
        ("ch 3 (each ch counts as a st)", SaidChain(3, "each_counted")),
        ("ch 3 (counts as one ch-sp)", SaidChain(3, "one_space")),
        ("no turning chain", NoTurningChain()),
        ("working back along the rnd without turning", Backwards()),
        ("dc in each st around", Each(DC, None, remaining=False)),
        ("dc in each remaining st across", Each(DC, None, remaining=True)),
        ("dc in each st and ch-sp around", Each(DC, None, False, ("st", "sp"))),
        ("dc in each ch-2 sp around", Each(DC, None, False, ("sp2",))),
        ("dc in each st and row end around", Each(DC, None, False, ("st", "end"))),
        ("2 sc in each st around", Each("", Into((Work(SC, 2),)), remaining=False)),
        (
            "(sc, ch 1) in each remaining st and ch-sp around",
            Each("", Into((Work(SC), Chain(1))), True, ("st", "sp")),
        ),
        ("sc in each of next 3 sts", Placed(Work(SC, 3))),
        ("sc in each of last 3 sts", Placed(Work(SC, 3), "last")),
        ("sc in last 3 sts", Placed(Work(SC, 3), "last")),
        ("sc in first 2 sts", Placed(Work(SC, 2), "first")),
        ("2 dc in each of next 3 sts", Placed(Repeat((Into((Work(DC, 2),)),), 3))),
        ("(dc, ch 1, dc) in each of next 3 sts", Placed(Repeat((V,), 3))),
        ("V-st in next st", Placed(V)),
        ("V-st in each of next 2 sts", Placed(Repeat((V,), 2))),
        ("V-st in each ch-2 sp around", Each("", V, False, ("sp2",))),
        ("skip 2 sts", Skipped(2)),
        ("sk next ch-1 sp", Skipped(1, "sp1")),
        ("dc in sp before next st", Placed(Work(BETWEEN))),
        ("dc in sp before each of next 2 sts", Placed(Work(BETWEEN, 2))),
        ("3 dc in sp before last st", Placed(Into((Work(BETWEEN, 3),)), "last")),
        (
            "(dc, ch 1, dc) in the space before next st",
            Placed(Into((Work(BETWEEN), Chain(1), Work(BETWEEN)))),
        ),
        ("dc in sp before each st around", Each(BETWEEN, None, False)),
        ("2 dc in sp before each st around", Each("", Into((Work(BETWEEN, 2),)), False)),
        ("FPdc around next st", Placed(Work("front_post_double_crochet"))),
        ("BPdc around the post of next 2 sts", Placed(Work("back_post_double_crochet", 2))),
        ("dc around back post of next st", Placed(Work("back_post_double_crochet"))),
        ("sc in back loop only of next st", Placed(Work("single_crochet_back_loop"))),
        ("sc in blo of each st around", Each("single_crochet_back_loop", None, False)),
        ("sc blo of next st", Placed(Work("single_crochet_back_loop"))),
        ("sc in front loop of each of next 3 sts", Placed(Work("single_crochet_front_loop", 3))),
        ("hdc in third loop of next st", Placed(Work("half_double_crochet_third_loop"))),
        ("(sc in next st, dc in next st) 3 times", Group((Placed(Work(SC)), Placed(Work(DC))), 3)),
        ("[sc in next st, dc in next st] twice", Group((Placed(Work(SC)), Placed(Work(DC))), 2)),
        (
            "*sc in next st, ch 1; rep from * 5 more times",
            Group((Placed(Work(SC)), SaidChain(1)), 6),
        ),
        ("*sc in next st, ch 1, rep from * once more", Group((Placed(Work(SC)), SaidChain(1)), 2)),
        ("*sc in next st; rep from * twice more", Group((Placed(Work(SC)),), 3)),
        ("*sc in next st, ch 1, rep from * around", Starred((Placed(Work(SC)), SaidChain(1)))),
        (
            "*sc in next st; repeat from * to last ch-2 sp",
            Starred((Placed(Work(SC)),), (Counted(1, "sp2"),)),
        ),
        (
            "*sc in next st; rep from * to last 2 sts and ch-1 sp",
            Starred((Placed(Work(SC)),), (Counted(2), Counted(1, "sp1"))),
        ),
        ("sc in each st to last 2 sts", Each(SC, None, False, last=(Counted(2),))),
        ("sc in each st across to last st", Each(SC, None, False, last=(Counted(1),))),
        ("dc in next st, ch 1, dc in same st", Placed(V)),
        ("sc in each sc and ch-1 sp across", Each(SC, None, False, ("=single_crochet", "sp1"))),
        ("sc in next 3 dc", Placed(Work(SC, 3), "next", "=double_crochet")),
        ("sc in next dc2tog", Placed(Work(SC), "next", "=double_crochet")),
        (
            "sc in each st and 3 sc in each ch-3 sp and ch-2 sp around",
            Each(SC, None, False, more=(InKind(Into((Work(SC, 3),)), ("sp3", "sp2")),)),
        ),
        (
            "V-st in each ch-1 sp to last st, skip all others",
            Each("", V, False, ("sp1",), (Counted(1),), (InKind(Skip(), ()),)),
        ),
        ("dc in top of ch-3", Placed(Work(DC), "top", chains=3)),
        ("2 dc in top of the turning ch", Placed(Into((Work(DC, 2),)), "top")),
        ("dc in tch", Placed(Work(DC), "top")),
        ("ch 4 (counts as first dc and ch-1 sp)", SaidChain(4, "counted", 1)),
        ("ch 5 (counts as dc, ch 2)", SaidChain(5, "counted", 2)),
        ("ch 3 (counts as dc)", SaidChain(3, "counted")),
        ("ch 1 (counts as a st)", SaidChain(1, "counted")),
        ("dc in next 2-ch sp", Placed(Work(DC), "next", "sp2")),
        ("dc in next ch 2 sp", Placed(Work(DC), "next", "sp2")),
        ("change to color B", Changed("B", carried=True)),
        ("change to colour C and cut the colour before", Changed("C", carried=False)),
        (
            "(dc, change to color B, dc) in next st",
            Placed(Into((Work(DC), Change("B"), Work(DC)))),
        ),
    ],
)
def test_item_is_understood(us: Vocabulary, text: str, expected: Item) -> None:
    """One item of a row at a time; letters may be large or small."""
    assert parsed(f"Rnd 1: {text}.", us).items == (expected,)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "sc in 2nd ch from hook",
            (FromHook(2, 1, None, SC), Placed(Work(SC), "next", "ch")),
        ),
        (
            "2 dc in 4th ch from hook (3 skipped chs count as first dc)",
            (FromHook(4, 3, True, DC), Placed(Into((Work(DC, 2),)), "next", "ch")),
        ),
        (
            "dc in next 3 sts, 2 dc in same st as last dc",
            (Placed(Work(DC, 2)), Placed(Into((Work(DC, 3),)))),
        ),
        (
            "2 dc in each of next 3 sts, ch 1, dc in same st",
            (
                Placed(Repeat((Into((Work(DC, 2),)),), 2)),
                Placed(Into((Work(DC, 2), Chain(1), Work(DC)))),
            ),
        ),
        ("ch 3, dc in same st", (SaidChain(3), Placed(Work(DC), "same"))),
        ("sc in next 0 sts, dc in next st, skip next 0 sts, ch 0", (Placed(Work(DC)),)),
        ("[sc in next st] 0 times, [sc in next 0 sts] 5 times, dc in next st", (Placed(Work(DC)),)),
        ("sc in next 0 sts", (NOTHING,)),
    ],
)
def test_words_become_other_items_when_they_are_taken_together(
    us: Vocabulary, text: str, expected: tuple[Item, ...]
) -> None:
    """Same places are one place, what is worked 0 times is nothing, a chain is skipped first."""
    assert parsed(f"Row 1: {text}.", us).items == expected


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        (
            "picot in blo of next st, tr in third loop of next st",
            '"tr" is no stitch worked "in third',
        ),
        ("(dc in next st, ch 1) in next st", "list what is worked into that one place"),
        ("dc around next st", '"dc" worked "around" may be "FPdc" or "BPdc"; write which'),
        ("sc around the post of next st", 'worked "around the post of" may be "FPsc" or "BPsc"'),
        ("0 dc in next st", "write that it is skipped"),
        ("sc in next st, skip all others", 'follows what is worked "in each" of some places'),
        ("ch 3 (counts as dc and ch-3 sp)", "of 3 chains, 3 cannot be a space"),
        ("sc in next 1000000000 sts", "1000000000 is more than 99999"),
        ("W-st in next st", '"W-st" is not understood; did you mean "y-st" or "v-st"'),
        ("*sc in next st", '"*" begins what repeats along the row; end it with'),
    ],
)
def test_what_means_nothing_is_refused(us: Vocabulary, text: str, complaint: str) -> None:
    """A place that no entry has, a list that is none, a number that is none."""
    with pytest.raises(InputError) as error:
        parsed(f"Row 1: {text}.", us)
    assert complaint in str(error.value)


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        ("Foundation", Label("foundation", 0, 0, ())),
        ("Foundation (RS)", Label("foundation", 0, 0, ("RS",))),
        ("Rnd 5 (RS)", Label("round", 5, 5, ("RS",))),
        ("Round 5", Label("round", 5, 5, ())),
        ("Row 7 (ws)", Label("row", 7, 7, ("WS",))),
        ("Rnds 2–3 (WS, RS)", Label("round", 2, 3, ("WS", "RS"))),
        ("Rnds 2-9 (WS, RS in turn)", Label("round", 2, 9, ("WS", "RS"))),
        ("Rows 2 to 9 (RS)", Label("row", 2, 9, ("RS",))),
    ],
)
def test_label_says_which_rows(us: Vocabulary, label: str, expected: Label) -> None:
    """One or several, and their sides."""
    assert parsed(f"{label}: Dc in next st.", us).label == expected


@pytest.mark.parametrize(
    ("end", "expected"),
    [
        ("", ()),
        ("; turn", (Ending("turn"),)),
        ("; do not join", (Ending("no_join"),)),
        ("; close the ring with the first st of the next rnd", (Ending("no_join"),)),
        ("; join with sl st to form a ring", (Ending("join_ring", "sl st"),)),
        ("; join with sl st to first sc", (Ending("join_first", "sl st", "sc"),)),
        ("; join with sl st to first ch", (Ending("join_first", "sl st", "ch"),)),
        (
            "; without twisting, join with sl st to first fdc to form a ring",
            (Ending("untwisted"), Ending("join_first", "sl st", "fdc")),
        ),
        ("; join with sl st in first sc", (Ending("join_first", "sl st", "sc"),)),
        ("; join with sl st to top of beg ch-3", (Ending("join_top", "sl st", chains=3),)),
        ("; join with sl st in 3rd ch of beg ch-4", (Ending("join_top", "sl st", chains=3),)),
        (", join with sl st, turn", (Ending("join", "sl st"), Ending("turn"))),
        (", join", (Ending("join"),)),
        ("; do not turn", (Ending("no_turn"),)),
        (
            "; join with sl st to top of ch-2, turn",
            (Ending("join_top", "sl st", "", 2), Ending("turn")),
        ),
    ],
)
def test_ending_is_understood(us: Vocabulary, end: str, expected: tuple[Ending, ...]) -> None:
    """What it is joined to, and whether the work is turned."""
    assert parsed(f"Rnd 1: Dc in next st{end}.", us).endings == expected


@pytest.mark.parametrize(
    ("count", "expected"),
    [
        ("", None),
        ("(160 dc)", 160),
        ("(160 sts)", 160),
        ("(1 st)", 1),
        ("(30 ch)", 30),
        ("(1 ring)", 1),
        ("(192 sc, 96 picots, 32 ch-1 sps)", 224),
        ("(12 beads, 12 ch-20 sps)", 12),
    ],
)
def test_stated_count_is_that_of_the_places(
    us: Vocabulary, count: str, expected: int | None
) -> None:
    """Ornaments and trims leave none."""
    assert parsed(f"Rnd 1: Dc in next st. {count}", us).stated == expected


def test_sentences_around_the_row_are_understood(us: Vocabulary) -> None:
    """Yarn joined, hook, chain spaces, short rows, markers, cutting the yarn."""
    said = parsed(
        "Rnd 1 (RS): Join yarn at the start of the rnd. Change to 2.25 mm hook. Count each ch-sp "
        "as a st. Short row. Dc in next st; turn. Move "
        "markers 1–3, 5 up into the 1st st and marker 4 up into the 22nd st of each increase. "
        "Fasten off. (1 dc)",
        us,
    )
    assert (said.hook, said.noted, said.fasten_off) == (2.25, True, True)
    assert (said.rejoined, said.short) == (True, True)
    assert said.marked == (Marked((1, 2, 3, 5), 1), Marked((4,), 22))


def test_placed_markers_are_read_like_moved_ones(us: Vocabulary) -> None:
    """Both say where they are after the row."""
    said = parsed("Rnd 1: Dc in next st. Place marker 1 in the 2nd st of the decrease.", us)
    assert (said.handling, said.marked) == ("placed", (Marked((1,), 2),))


def test_markers_placed_anew_are_told_from_moved_ones(us: Vocabulary) -> None:
    """The old ones are taken out first."""
    place = "lace marker 1 in the 2nd st of the decrease."
    anew = parsed(f"Rnd 1: Dc in next st. Remove the old markers. P{place}", us)
    assert (anew.handling, anew.marked) == ("replaced", (Marked((1,), 2),))
    moved = parsed("Rnd 1: Dc in next st. Move marker 1 up into the 2nd st of the decrease.", us)
    assert (moved.handling, moved.marked) == ("moved", (Marked((1,), 2),))


def test_same_words_are_other_stitches_in_uk_terms(uk: Vocabulary) -> None:
    """UK dc is US sc."""
    said = parsed("Rnd 1: Tr in next st, dc in next st, miss next 2 sts.", uk)
    assert said.items == (Placed(Work(DC)), Placed(Work(SC)), Skipped(2))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Rep rows 2 and 3 another 6 times. (9 dc)", (2, 3, 6, 9)),
        ("Rep rnds 2–5 another 2 times.", (2, 5, 2, None)),
        ("Rep row 3 another 1 time.", (3, 3, 1, None)),
    ],
)
def test_rows_that_come_again_are_named_by_number(
    us: Vocabulary, text: str, expected: tuple[int, int, int, int | None]
) -> None:
    """From which to which, how often more, and the count at the end."""
    said = parse_row(f"Rows 4–15 (RS, WS in turn): {text}", us)
    assert isinstance(said, SaidAgain)
    assert (said.first, said.last, said.times, said.stated) == expected
    assert said.label == Label("row", 4, 15, ("RS", "WS"))


def test_spread_is_written_out(us: Vocabulary) -> None:
    """Repeats and runs."""
    assert parse_spread("[2 in next, 1 in each of next 3] 2 times, 0 in next", us) == (
        *(2, 1, 1, 1, 2, 1, 1, 1),
        0,
    )


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("Rnd 1: Dcc in next st.", 'column 8: "Dcc" is not understood; did you mean "dc"'),
        ("Rnd 1: Dc in nekst st.", 'column 14: "nekst" is not understood; did you mean "next"?'),
        (
            "Rnd 1: Dc in eech st around.",
            'column 14: "eech" is not understood; did you mean "each"',
        ),
        ("Rnd 1: Dc in next st around.", 'column 22: "around" does not fit here'),
        ("Rnd 1: Dc in next st; jion with sl st to first dc.", 'did you mean "join"'),
        ("Rnd 1: Dc in next st", "the line ends too early"),
        ("Rnd 1: Dc in next st. (1 dcs)", '"dcs" is not understood; did you mean "dc"'),
        ("Rnd one: Dc in next st.", 'column 5: "one" does not fit here'),
        ("Rnd 1: Dc in next 2 sts, %", 'column 26: "%" does not fit here'),
        ("Rnd 1: Zzzz in next st.", 'column 8: "Zzzz" is not understood\n'),
        (
            "Rnd 1: Miss next st.",
            '"miss" is a UK term, but US terms are declared, in which it is "skip"',
        ),
        ("Rnd 1: *Htr in next st; rep from * around.", 'column 9: "htr" is a UK term'),
        ("Rnd 2 *dc in next st; rep from * around.", "begins with its number and a colon"),
        ("Rnd 1: " + "[" * 900 + "dc in next st" + "] 2 times" * 900, "more than 12 deep"),
        (
            "Rnd 1: Htr in next st.",
            '"htr" is a UK term, but US terms are declared, in which it is "hdc"',
        ),
    ],
)
def test_word_that_is_not_understood_is_shown_with_a_guess(
    us: Vocabulary, text: str, complaint: str
) -> None:
    """Its column, and what was probably meant."""
    with pytest.raises(InputError) as error:
        parse_row(text, us)
    assert complaint in str(error.value)


def test_caret_stands_under_the_word(us: Vocabulary) -> None:
    """In a long line, only what is around it is shown."""
    text = f"Rnd 1: {'dc in next 9 sts, ' * 6}dcc in next st{', dc in next st' * 9}."
    with pytest.raises(InputError) as error:
        parse_row(text, us)
    line, caret = str(error.value).splitlines()[1:]
    assert line[caret.index("^") :].startswith("dcc in next st")
    assert line.startswith("  …")
    assert line.endswith("…")
