"""Whole rows as sentences."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Chain, End, Into, Repeat, Row, Skip, Start, Work
from frogless.write.ground import NOTHING, Ground, Noun
from frogless.write.row import Place, Said, say_row
from frogless.write.words import Words

SC, DC = "single_crochet", "double_crochet"


def row(n: int, number: int = 1, **given: object) -> Row:
    """A row of n double crochets."""
    return Row(number, "RS", "", (Work(DC, n),), n, **given)  # type: ignore[arg-type]


def said(words: Words, what: Row, before: Said | None = None, *, closed: bool = True) -> str:
    """The row in words on a row of 9 places."""
    ground = NOTHING if what.number == 0 else Ground(("st",) * 9)
    return say_row(what, before or Said(), ground, Place(closed), words)


@pytest.mark.parametrize(
    ("start", "n", "expected"),
    [
        (Start(), 9, "Dc in each st around; do not join."),
        (Start(2), 9, "Ch 2 (does not count as a st), dc in each st around; do not join."),
        (
            Start(3, counts=True),
            8,
            "Ch 3 (counts as first dc), dc in each remaining st around; do not join.",
        ),
    ],
)
def test_turning_chain_says_at_first_whether_it_counts(
    us: Words, start: Start, n: int, expected: str
) -> None:
    """And the body follows from that."""
    assert said(us, row(n, start=start)) == expected


def test_turning_chain_is_short_once_it_is_said_whether_it_counts(us: Words) -> None:
    """In full again as soon as it counts otherwise."""
    before = Said().after(row(9, start=Start(2)))
    assert said(us, row(9, start=Start(2)), before).startswith("Ch 2, dc")
    assert said(us, row(8, start=Start(2, counts=True)), before).startswith("Ch 2 (counts as")
    assert said(us, row(9, start=Start(1)), before).startswith("Ch 1 (does not count")


@pytest.mark.parametrize(
    ("end", "expected"),
    [
        (End("chain_top"), "; join with sl st to top of ch-2."),
        (End("chain_top", turn=True), "; join with sl st to top of ch-2, turn."),
        (End("first_stitch"), "; join with sl st to first dc."),
        (End(turn=True), "; do not join, turn."),
        (End(fasten_off=True), "; do not join. Fasten off."),
    ],
)
def test_round_ends_as_it_is_closed(us: Words, end: End, expected: str) -> None:
    """Joined to what, turned or not, cut or not."""
    assert said(us, row(9, start=Start(2), end=end)).endswith(f"dc in each st around{expected}")


def test_flat_row_is_not_joined_and_does_not_say_so(us: Words) -> None:
    """Rows go across."""
    assert said(us, row(9, end=End(turn=True)), closed=False) == "Dc in each st across; turn."
    assert said(us, row(9), closed=False) == "Dc in each st across."


def test_foundation_ring_is_not_twisted(us: Words) -> None:
    """A chain, a foundation stitch, a spiral."""
    chain = Row(0, "RS", "", (Chain(60, each=True),), 60, end=End("first_stitch"))
    ring = Row(0, "RS", "", (Work("foundation_double_crochet", 60),), 60)
    assert said(us, chain) == (
        "Ch 60; without twisting, join with sl st to first ch to form a ring."
    )
    assert said(us, ring) == (
        "Work 60 fdc; without twisting, close the ring with the first st of the next rnd."
    )
    assert said(us, chain, closed=False).startswith("Ch 60; join")


def test_hook_is_named_first_and_when_it_changes(us: Words) -> None:
    """Not in every row."""
    first = row(9, hook=3.75)
    before = Said().after(first)
    assert said(us, first).startswith("Use 3.75 mm hook. Dc in")
    assert said(us, row(9, hook=3.75), before).startswith("Dc in")
    assert said(us, row(9, hook=2.25), before).startswith("Change to 2.25 mm hook. Dc in")


def test_row_worked_back_says_so_before_its_first_stitch(us: Words) -> None:
    """After the turning chain."""
    crab = Row(2, "RS", "", (Work("reverse_single_crochet", 9),), 9, Start(1), backwards=True)
    assert said(us, crab, Said({1: False})) == (
        "Ch 1, working back along the rnd without turning, rev sc in each st around; do not join."
    )


def test_chain_that_comes_first_is_kept_apart_from_a_turning_chain(us: Words) -> None:
    """Otherwise it would be read as one."""
    lace = Row(1, "RS", "", (Chain(2), Skip(), Work(DC, 8)), 9)
    assert said(us, lace).startswith("No turning chain, ch 2, skip next st, dc in next 8 sts")


LACE: tuple[Noun, ...] = ("st", "sp1", "st", "sp1", "st", "st", "st", "sp1", "st")


def test_chain_spaces_below_are_counted_as_stitches_in_so_many_words(us: Words) -> None:
    """A row that is all alike names them itself."""
    below = Ground(LACE)
    runs = Row(2, "RS", "", (Work(DC, 4), Into((Work(DC, 2),)), Work(DC, 4)), 10)
    told = say_row(runs, Said(), below, Place(closed=True), us)
    assert told.startswith("Count each ch-sp as a st. Dc in next 4 sts, 2 dc in next st")
    alike = say_row(row(9), Said(), below, Place(closed=True), us)
    assert alike == "Dc in each st and ch-sp around; do not join."


def test_chain_spaces_are_named_where_each_has_its_own_stitches(us: Words) -> None:
    """Nothing has to be counted then."""
    below = Ground(("st", "st", "sp2", "st", "st"))
    corner = Into((Work(DC, 2), Chain(2), Work(DC, 2)))
    told = Row(2, "RS", "", (Work(DC, 2), corner, Work(DC, 2)), 10)
    assert say_row(told, Said(), below, Place(closed=True), us) == (
        "Dc in next 2 sts, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 2 sts; do not join."
    )


def test_markers_are_placed_once_and_then_moved(us: Words) -> None:
    """The first shaping row of a piece places them."""
    body = (Repeat((Into((Work(DC, 2),)), Work(DC, 2)), 3),)
    shaped = Row(1, "RS", "", body, 12, marks=(0, 0, 0))
    assert said(us, shaped).endswith("Place markers 1–3 in the 1st st of each increase.")
    moved = said(us, shaped, Said().after(shaped))
    assert moved.endswith("Move markers 1–3 up into the 1st st of each increase.")
