"""Nodes in words."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import (
    Chain,
    Change,
    Into,
    Leave,
    Node,
    Repeat,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.write.body import NO_START, Setting, say_body
from frogless.write.ground import Ground, Noun
from frogless.write.words import Words

SC, DC, BETWEEN = "single_crochet", "double_crochet", "double_crochet_between"


def said(
    words: Words,
    *body: Node,
    places: int | None = 99,
    noun: Noun = "st",
    nouns: tuple[Noun, ...] = (),
    start: Start = NO_START,
    closed: bool = True,
) -> str:
    """A body in words, in rounds unless it says otherwise."""
    known = nouns or (None if places is None else (noun,) * places)
    return ", ".join(say_body(body, Setting(words, Ground(known, noun), closed, start)).items)


@pytest.mark.parametrize(
    ("node", "expected"),
    [
        (Work(DC), "dc in next st"),
        (Work(DC, 9), "dc in next 9 sts"),
        (Into((Work(DC, 2),)), "2 dc in next st"),
        (Into((Work(SC), Work("picot"), Work(SC))), "(sc, picot, sc) in next st"),
        (Into((Work(SC), Chain(3), Work(SC))), "(sc, ch 3, sc) in next st"),
        (Into((Work(SC), Work("picot", 3))), "(sc, 3 picots) in next st"),
        (Into((Work("bead"), Work(SC))), "(slide up a bead, sc) in next st"),
        (Into((Work(DC),)), "(dc) in next st"),
        (Together(DC, 3), "dc3tog"),
        (Skip(), "skip next st"),
        (Skip(2), "skip next 2 sts"),
        (Chain(5), "ch 5"),
        (Chain(5, each=True), "ch 5 (each ch counts as a st)"),
        (Repeat((Into((Work(DC, 2),)),), 3), "2 dc in each of next 3 sts"),
        (Repeat((Into((Work(BETWEEN, 2),)),), 3), "2 dc in sp before each of next 3 sts"),
        (Repeat((Chain(1), Skip()), 7), "[ch 1, skip next st] 7 times"),
        (Repeat((Chain(1), Skip()), 1), "[ch 1, skip next st] 1 time"),
        (Work("foundation_double_crochet", 80), "work 80 fdc"),
        (Work("picot", 2), "2 picots"),
        (Work("bead", 3), "slide up 3 beads"),
        (Work(BETWEEN), "dc in sp before next st"),
        (Work(BETWEEN, 3), "dc in sp before each of next 3 sts"),
        (Into((Work(BETWEEN, 3),)), "3 dc in sp before next st"),
        (Into((Work(BETWEEN), Chain(1), Work(BETWEEN))), "(dc, ch 1, dc) in sp before next st"),
        (Into((Work(BETWEEN), Work(DC))), "(dc bet, dc) in next st"),
        (Work("front_post_double_crochet"), "FPdc in next st"),
        (Work("single_crochet_back_loop", 2), "sc blo in next 2 sts"),
        (Change("B"), "change to color B"),
        (Change("C", carried=False), "change to color C and cut the color before"),
        (Into((Work(DC), Change("B"), Work(DC))), "(dc, change to color B, dc) in next st"),
    ],
)
def test_node_is_said_as_the_trade_says_it(us: Words, node: Node, expected: str) -> None:
    """The number before the stitch is for one place, after it for as many places."""
    assert said(us, node) == expected


def test_row_that_is_all_alike_is_said_so_when_it_ends_with_another_color(us: Words) -> None:
    """The change takes no place; it follows what is worked in each."""
    told = said(us, Work(DC, 9), Change("B"), places=9)
    assert told == "dc in each st around, change to color B"
    told = said(us, Repeat((Work(DC),), 9), Change("B", carried=False), places=9)
    assert told == "dc in each st around, change to color B and cut the color before"
    told = said(us, Change("B"), Work(DC, 9), Change("A"), places=9)
    assert told == "change to color B, dc in each st around, change to color A"


def test_color_changes_where_it_does_within_a_repeat(us: Words) -> None:
    """After the stitch that draws the new one through."""
    block = Repeat((Work(DC, 2), Change("B"), Work(DC), Change("A")), 3)
    told = said(us, block, places=9)
    assert told == "[dc in next 2 sts, change to color B, dc in next st, change to color A] 3 times"


def test_space_before_each_stitch_is_named(us: Words) -> None:
    """All around, or in those that remain; into a ring there is no other way."""
    assert said(us, Work(BETWEEN, 9), places=9) == "dc in sp before each st around"
    counted = Start(3, counts=True)
    told = said(us, Work(BETWEEN, 8), places=9, start=counted, closed=False)
    assert told == "dc in sp before each remaining st across"
    shared = Start(3, counts=True, shares=True)
    told = said(us, Into((Work(BETWEEN),)), Work(DC, 8), places=9, start=shared)
    assert told == "dc in sp before same st, dc in each remaining st around"
    assert said(us, Into((Work(BETWEEN, 9),)), nouns=("ring",)) == "9 dc bet in ring"


def test_uk_words_differ_where_the_terms_do(uk: Words) -> None:
    """Stitches and the word for passing over."""
    assert said(uk, Work(DC, 2), Skip(), Work(SC)) == (
        "tr in next 2 sts, miss next st, dc in next st"
    )


def test_row_of_one_kind_is_said_at_once(us: Words) -> None:
    """Every place taken alike."""
    assert said(us, Work(DC, 99)) == "dc in each st around"
    assert said(us, Repeat((Into((Work(SC, 2),)),), 99)) == "2 sc in each st around"


def test_row_that_does_not_fill_the_one_below_is_said_in_numbers(us: Words) -> None:
    """ "Each" would hide that a place is missing or too many."""
    assert said(us, Work(DC, 98)) == "dc in next 98 sts"
    assert said(us, Work(DC, 98), places=None) == "dc in next 98 sts"


def test_places_are_called_what_they_are(us: Words) -> None:
    """Foundation chains, row ends and chain spaces."""
    assert said(us, Work(SC, 9), places=9, noun="ch") == "sc in each ch around"
    assert said(us, Work(SC, 9), places=10, noun="end") == "sc in next 9 row ends"
    assert said(us, Work(SC, 9), places=None, noun="end") == "sc in next 9 row ends"
    counted, spaces = Start(3, counts=True), ("st", "sp1", *("st",) * 7)
    told = said(us, Work(SC, 8), nouns=spaces, start=counted, closed=False)
    assert told == "sc in each remaining st and ch-sp across"


def test_what_is_worked_0_times_is_not_said(us: Words) -> None:
    """A planner that divides may leave nothing over."""
    assert (
        said(us, Work(DC, 0), Repeat((Work(DC), Skip(0)), 2), Chain(0)) == "[dc in next st] 2 times"
    )


def test_what_is_there_three_times_is_put_in_brackets(us: Words) -> None:
    """However the planner laid it out; twice is written out."""
    eyelet = (Chain(1), Skip(), Work(DC, 6))
    wide = (Chain(1), Skip(), Work(DC, 7))
    assert said(us, *eyelet * 3, *wide * 2, Work(SC)) == (
        "[ch 1, skip next st, dc in next 6 sts] 3 times, ch 1, skip next st, dc in next 7 sts, "
        "ch 1, skip next st, dc in next 7 sts, sc in next st"
    )


def test_long_repeat_in_one_place_keeps_its_brackets(us: Words) -> None:
    """A short one is written out."""
    pair = (Work(SC), Work("picot"))
    assert said(us, Into((Repeat(pair, 2),))) == "(sc, picot, sc, picot) in next st"
    assert said(us, Into((Repeat(pair, 9),))) == "([sc, picot] 9 times) in next st"


def test_node_that_takes_places_cannot_stand_in_one(us: Words) -> None:
    """There is no wording for a skip inside a stitch."""
    with pytest.raises(ValueError, match="Skip takes places of its own"):
        said(us, Into((Work(SC), Skip())))


COUNTED, SHARED = Start(3, counts=True), Start(3, counts=True, shares=True)
BOTH = Into((Work(DC, 2),))


@pytest.mark.parametrize(
    ("body", "start", "expected"),
    [
        ((BOTH, Work(DC, 7), BOTH), NO_START, "2 dc in first st, dc in next 7 sts, 2 dc in last st"),
        ((Work(DC), Work(SC, 7), Work(DC)), NO_START,
         "dc in first st, sc in next 7 sts, dc in last st"),
        ((Together(DC, 2), Work(DC, 5), Together(DC, 2)), NO_START,
         "dc2tog over first 2 sts, dc in next 5 sts, dc2tog over last 2 sts"),
        ((BOTH, Work(DC, 6), BOTH), COUNTED, "2 dc in next st, dc in next 6 sts, 2 dc in last st"),
        ((Work(DC, 4), Skip(5)), NO_START, "dc in next 4 sts, leave last 5 sts unworked"),
        ((Work(DC, 8), Skip()), NO_START, "dc in next 8 sts, leave last st unworked"),
        ((Work(DC, 4), Leave(5)), NO_START, "dc in next 4 sts, leave last 5 sts unworked for now"),
        ((Into((Work(DC),)), Work(DC, 7), BOTH), SHARED,
         "dc in same st, dc in next 7 sts, 2 dc in last st"),
        ((BOTH, Repeat((BOTH,), 8)), SHARED, "2 dc in same st, 2 dc in each remaining st across"),
        ((Together(DC, 2), Work(DC, 7)), SHARED,
         "beginning in same st, dc2tog, dc in next 7 sts"),
        ((Work(DC, 9),), SHARED, "beginning in same st, dc in each st across"),
        ((Repeat((BOTH, Work(DC)), 4), Work(DC)), NO_START,
         "[2 dc in next st, dc in next st] 4 times, dc in last st"),
        ((BOTH, Work(DC)) * 4 + (Work(SC),), NO_START,
         "[2 dc in next st, dc in next st] 4 times, sc in last st"),
    ],
)  # fmt: skip
def test_ends_of_a_row_are_called_so(
    us: Words, body: tuple[Node, ...], start: Start, expected: str
) -> None:
    """The first place, the last, the one that the turning chain stands on; never inside brackets."""
    assert said(us, *body, places=9, start=start, closed=False) == expected


def test_rounds_have_no_first_and_last_stitch(us: Words) -> None:
    """They go on into each other."""
    assert said(us, BOTH, Work(DC, 7), BOTH, places=9) == (
        "2 dc in next st, dc in next 7 sts, 2 dc in next st"
    )
    assert said(us, Work(DC, 4), Skip(5), places=9).endswith("skip next 5 sts")


def test_a_ring_is_neither_next_nor_last(us: Words) -> None:
    """There is only one."""
    assert said(us, Into((Work(DC, 12),)), places=1, noun="ring") == "12 dc in ring"
    assert said(us, Work(SC), places=1, noun="ring", closed=False) == "sc in ring"
    assert said(us, BOTH, places=1, noun="ring", start=SHARED) == "2 dc in ring"


def test_a_run_over_unlike_places_is_told_for_each(us: Words) -> None:
    """Stitches passed by a yoke, then the chains underneath, then the ends of rows."""
    nouns = (*("st",) * 5, *("ch",) * 3, "end", "end")
    assert said(us, Work(SC, 9), nouns=nouns) == (
        "sc in next 5 sts, sc in next 3 chs, sc in next row end"
    )
    assert said(us, Work(SC, 10), nouns=nouns) == "sc in each st and ch and row end around"
    assert said(us, Repeat((Work(SC), BOTH), 4), nouns=nouns) == (
        "[sc in next st, 2 dc in next st] 4 times"
    )
    assert said(us, Work(SC), Repeat((Work(SC, 2),), 4), nouns=nouns) == (
        "sc in next st, [sc in next 2 places] 4 times"
    )


def test_stitches_together_over_chain_spaces_say_so(us: Words) -> None:
    """Their name tells how many places they take, not which."""
    assert said(us, Together(DC, 2), Work(SC), nouns=("sp2", "sp2", "st")) == (
        "dc2tog over next 2 ch-2 sps, sc in next st"
    )
