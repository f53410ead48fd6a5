"""Whole rows as sentences."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.rows.nodes import (
    Chain,
    End,
    Into,
    Leave,
    Node,
    Piece,
    Repeat,
    Row,
    Skip,
    Start,
    Work,
)
from frogless.write.ground import NOTHING, Ground, Noun
from frogless.write.pattern import chains_for_first_row, tell
from frogless.write.row import Place, Said, say_row
from frogless.write.words import Words

SC, DC = "single_crochet", "double_crochet"


def row(n: int, number: int = 1, **given: object) -> Row:
    """A row of n double crochets."""
    return Row(number, "RS", "", (Work(DC, n),), n, **given)  # type: ignore[arg-type]


CHAIN = Row(0, "WS", "", (Chain(9, each=True),), 9, end=End(turn=True))


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


@pytest.mark.parametrize(
    ("chains", "body", "expected"),
    [
        (3, (Work(SC), Work(DC)), "dc"),
        (3, (Work(DC), Work(SC)), "dc"),
        (2, (Work("front_post_double_crochet"), Work("half_double_crochet")), "hdc"),
        (2, (Work(SC), Work(DC)), "sc"),
        (3, (Work(DC), Work("popcorn")), "dc"),
        (2, (Work(SC), Work("front_post_half_double_crochet")), "FPhdc"),
        (3, (Work("star"), Work("half_double_crochet")), "hdc"),
        (4, (Work("crossed_treble"),), "ctr"),
    ],
    ids=[
        "ends with it",
        "begins with it",
        "ends with the like",
        "none is as high",
        "ends with a popcorn",
        "no plain one",
        "beside stars",
        "crosses alone",
    ],
)
def test_turning_chain_is_named_for_a_stitch_as_high(
    us: Words, chains: int, body: tuple[Node, ...], expected: str
) -> None:
    """Trellises and shells begin with a single; a chain of 3 at their edge is none of these."""
    start = Start(chains, counts=True)
    text = said(us, replace(row(0, start=start), body=body), closed=False)
    assert f"Ch {chains} (counts as first {expected})," in text


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
    assert said(us, crab, Said(((1, False),))) == (
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


FLAT = Place(closed=False)


def flat(words: Words, what: Row, *, places: int = 9, place: Place = FLAT) -> str:
    """A row of an open piece in words."""
    return say_row(what, Said(), Ground(("st",) * places), place, words)


@pytest.mark.parametrize(
    ("start", "n", "longer", "chains", "expected"),
    [
        (Start(3, counts=True), 90, 2, 93,
         "Beginning in 4th ch from hook (3 skipped chs count as first dc), dc in each remaining ch"),
        (Start(1), 91, 1, 92,
         "Beginning in 2nd ch from hook (skipped ch does not count as a st), dc in each ch"),
        (Start(2), 91, 2, 93,
         "Beginning in 3rd ch from hook (2 skipped chs do not count as sts), dc in each ch"),
    ],
)  # fmt: skip
def test_foundation_chain_is_longer_by_what_the_first_row_skips(
    us: Words, start: Start, n: int, longer: int, chains: int, expected: str
) -> None:
    """91 stitches: 91 + 3 - 1 = 93 with three chains that count, 91 + 1 = 92 with one that does not
    (needs of the trade, derived: n + skipped - 1 if it counts)."""
    foundation = Row(0, "WS", "", (Chain(91, each=True),), 91, end=End(turn=True))
    first = row(n, start=start)
    piece = Piece("back", False, (foundation, first))
    assert chains_for_first_row(piece) == longer
    told = tell(piece, us)
    assert told[0].text == f"Ch {chains}; turn."
    assert told[0].count == f"{chains} ch"
    assert told[1].text == f"{expected} across."


@pytest.mark.parametrize(
    "piece",
    [
        Piece("back", True, (CHAIN, row(9, start=Start(1)))),
        Piece("back", False, (CHAIN, row(9))),
        Piece("back", False, (CHAIN, row(9, start=Start(1, across=2)))),
        Piece("back", False, (CHAIN, row(9, start=Start(3, counts=True, shares=True)))),
        Piece("back", False, (replace(CHAIN, side="RS", end=End()), row(9, start=Start(1)))),
        Piece("back", False, (replace(CHAIN, end=End(turn=True, fasten_off=True)), row(9))),
        Piece("back", False, (CHAIN,)),
        Piece("back", False, (row(9), row(9, 2))),
    ],
    ids=["round", "no chain", "across", "shared", "far end", "cut", "alone", "stitches"],
)
def test_foundation_chain_is_as_long_as_its_count_when_nothing_is_skipped(piece: Piece) -> None:
    """Rings, rows without a turning chain, and rows that do not begin where the chain ended."""
    assert chains_for_first_row(piece) == 0


def test_slip_stitches_across_are_not_counted_and_say_so(us: Words) -> None:
    """A chain that counts after them stands on the next stitch."""
    beyond = Start(3, counts=True, across=4)
    assert flat(us, row(4, start=beyond)) == (
        "Sl st in each of first 4 sts (not counted), ch 3 (counts as dc in next st), "
        "dc in each remaining st across."
    )
    assert flat(us, row(8, start=Start(1, across=1))).startswith(
        "Sl st in first st (not counted), ch 1 (does not count as a st), dc in each remaining st"
    )
    bare = Row(1, "RS", "", (Chain(1), Work(DC, 7)), 8, Start(across=2))
    assert flat(us, bare).startswith("Sl st in each of first 2 sts (not counted), no turning chain")


def test_slip_stitches_of_a_joined_round_lead_into_the_place_of_the_chain(us: Words) -> None:
    """Its loop sits on the first stitch already: two of three slip stitches go over stitches."""
    first = Row(
        1, "RS", "", (Work(SC, 3), Chain(2), Work(SC, 1)), 5, Start(1), end=End("first_stitch")
    )
    start = Start(3, counts=True, shares=True, across=3)
    second = Row(2, "RS", "", (Into((Work(DC, 1),)), Skip(1)), 2, start, End("chain_top"))
    shorter = replace(second, body=(Skip(2),), start=Start(3, counts=True, across=2))

    def says(row: Row) -> str:
        return tell(Piece("", True, (first, row)), us)[1].text

    assert says(second).startswith(
        "Sl st in next 2 sts and in next ch-2 sp, ch 3 (counts as first dc), dc in same ch-2 sp, "
    )
    assert "Sl st in next 2 sts, ch 3 (counts as first ch), skip next 2 sts" in says(shorter)


def test_short_row_is_called_so_and_says_what_it_leaves(us: Words) -> None:
    """In rounds it is turned, not joined."""
    short = Row(1, "RS", "", (Work(DC, 6), Leave(3)), 6, end=End(turn=True))
    assert flat(us, short) == (
        "Short row. Dc in next 6 sts, leave last 3 sts unworked for now; turn."
    )
    assert said(us, short).endswith("unworked for now; do not join, turn.")


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ((Work(DC, 9),), "Dc in each st across, working also into the 4 sts left unworked."),
        ((Work(DC, 8), Leave(1)), "Short row. Dc in next 8 sts, working also into 3 of the sts "
         "left unworked, leave last st unworked for now."),
        ((Work(DC, 5), Leave(4)), "Short row. Dc in next 5 sts, leave last 4 sts unworked for "
         "now."),
    ],
)  # fmt: skip
def test_row_says_when_it_comes_to_what_was_left(
    us: Words, body: tuple[Node, ...], expected: str
) -> None:
    """Not when it leaves them again."""
    ground = Ground(("st",) * 9, older=frozenset({5, 6, 7, 8}))
    assert say_row(Row(3, "RS", "", body, 9), Said(), ground, FLAT, us) == expected


def test_yarn_that_was_cut_is_joined_again(us: Words) -> None:
    """Before anything else is done."""
    rejoined = Place(closed=False, rejoined=True)
    told = flat(us, row(9, hook=3.5), place=rejoined)
    assert told.startswith("Join yarn at the start of the row. Use 3.5 mm hook. Dc in each st")


def test_rings_are_made_and_not_joined_to_a_stitch(us: Words) -> None:
    """One is pulled shut, the other closed; an open piece may begin in one as well."""
    ring = Row(0, "RS", "", (Work("adjustable_ring"),), 1, end=End("first_stitch"))
    chains = replace(ring, body=(Chain(4),))
    assert said(us, ring) == "Make an adjustable ring."
    assert said(us, chains) == "Ch 4; join with sl st to form a ring."
    open_ring = replace(ring, end=End(turn=True))
    assert flat(us, open_ring) == "Make an adjustable ring; turn."
    loose = replace(chains, end=End())
    assert flat(us, loose) == "Ch 4 (counts as one ch-sp)."


def test_row_without_any_work_says_so(us: Words) -> None:
    """A planner that divides may leave nothing over."""
    assert flat(us, Row(1, "RS", "", (Work(DC, 0),), 0)) == "Work nothing."
