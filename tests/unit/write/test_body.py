"""Nodes in words."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Start, Together, Work
from frogless.write.body import NO_START, Setting, say_body
from frogless.write.ground import Ground, Noun
from frogless.write.words import Words

SC, DC = "single_crochet", "double_crochet"


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
    return ", ".join(say_body(body, Setting(words, Ground(known, noun), closed, start)))


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
        (Repeat((Chain(1), Skip()), 7), "[ch 1, skip next st] 7 times"),
        (Repeat((Chain(1), Skip()), 1), "[ch 1, skip next st] 1 time"),
        (Work("foundation_double_crochet", 80), "work 80 fdc"),
        (Work("picot", 2), "2 picots"),
        (Work("bead", 3), "slide up 3 beads"),
    ],
)
def test_node_is_said_as_the_trade_says_it(us: Words, node: Node, expected: str) -> None:
    """The number before the stitch is for one place, after it for as many places."""
    assert said(us, node) == expected


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
