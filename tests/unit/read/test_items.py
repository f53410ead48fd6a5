"""Items are held to the places that they say they are worked into."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.build import read_piece
from frogless.read.kinds import gathered
from frogless.rows.nodes import Chain, Into, Leave, Node, Repeat, Skip, Start, Together, Work
from frogless.stitches.load import dictionary

DC, SC = "double_crochet", "single_crochet"
BEGIN = "Foundation (WS): Work 10 fsc; turn. (10 fsc)"


def row(text: str, *before: str) -> tuple[Start, tuple[Node, ...]]:
    """How a row over ten places starts, and its body."""
    read = read_piece([BEGIN, *before, text], dictionary(), "us", name="back").rows[-1]
    return read.start, read.body


def complaint(text: str, *before: str) -> str:
    """What is said of a row over ten places that is refused."""
    with pytest.raises(InputError) as error:
        row(text, *before)
    return str(error.value)


def test_first_and_last_are_read_when_they_are_so() -> None:
    """Increases and decreases at the edges."""
    _, body = row("Row 1 (RS): 2 sc in first st, sc in next 7 sts, sc2tog over last 2 sts. (10 sc)")
    assert body == (Into((Work(SC, 2),)), Work(SC, 7), Together(SC, 2))


def test_same_shares_the_place_of_the_chain_when_it_counts() -> None:
    """An increase at the edge."""
    start, body = row(
        "Row 1 (RS): Ch 3 (counts as first dc), dc in same st, dc in next 9 sts. (11 dc)"
    )
    assert start == Start(3, counts=True, shares=True)
    assert body == (Into((Work(DC),)), Work(DC, 9))


def test_unworked_is_for_good_when_it_is_not_said_for_now() -> None:
    """An armhole, and a short row."""
    start, body = row(
        "Row 1 (RS): Sl st in each of first 2 sts (not counted), ch 1 (does not count as a st), "
        "sc in next 6 sts, leave last 2 sts unworked. (6 sc)"
    )
    assert (start, body) == (Start(1, across=2), (Work(SC, 6), Skip(2)))
    _, short = row("Row 1 (RS): Short row. Sc in next 7 sts, leave last 3 sts unworked for now.")
    assert short == (Work(SC, 7), Leave(3))


SHORT = "Row 1 (RS): Short row. Sc in next 7 sts, leave last 3 sts unworked for now; turn. (7 sc)"
BACK = "Row 2 (WS): Sc in each st across; turn. (7 sc)"


def test_what_was_left_is_worked_when_a_later_row_comes_by() -> None:
    """Seven of the row below and three that were left."""
    last = "Row 3 (RS): Sc in each st across, working also into the 3 sts left unworked. (10 sc)"
    assert row(last, SHORT, BACK)[1] == (Work(SC, 10),)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("sc in next st, 2 sc in first st, sc in next 8 sts", '"first" is place 1'),
        ("2 sc in last st, sc in next 9 sts", '"last" ends with place 10'),
        ("sc in next 5 sts, leave last 4 sts unworked", "but this ends with 9"),
        ("ch 1 (does not count as a st), 2 sc in same st, sc in next 9 sts", '"same" is for'),
        ("sc in ring, sc in next 9 sts", "not the ring"),
        ("sc in next 10 row ends", "is a stitch, not a row end"),
        ("sc in next ch-2 sp, sc in next 9 sts", "no ch-2 sp"),
    ],
)
def test_place_is_refused_when_it_is_not_what_it_is_called(text: str, told: str) -> None:
    """With the place and what it is."""
    assert told in complaint(f"Row 1 (RS): {text[0].upper()}{text[1:]}. (10 sc)")


def test_number_left_is_refused_when_it_is_another() -> None:
    """Three were left, not four."""
    last = "Row 3 (RS): Sc in each st across, working also into the 4 sts left unworked. (10 sc)"
    assert "4" in complaint(last, SHORT, BACK)


SPACES = (
    "Row 1 (RS): Ch 1 (does not count as a st), sc in next 4 sts, [ch 2, skip next st] 2 times, "
)
SPACES += "sc in next 4 sts; turn. (8 sc, 2 ch-2 sps)"
COUNTED = "Row 1 (RS): Ch 3 (counts as first dc), dc in next 9 sts; turn. (10 dc)"


@pytest.mark.parametrize(
    "last",
    [
        "to last 6 sts, sc in next ch-2 sp, sc in next ch-2 sp, sc in last 4 sts",
        "to last 2 ch-2 sps, sc in next 2 ch-2 sps, sc in each of last 4 sts",
        "to last 2 ch-2 sps and 4 sts, sc in next 2 ch-2 sps, sc in each of last 4 sts",
    ],
)
def test_repeat_ends_where_it_is_said_to_when_spaces_and_stitches_follow(last: str) -> None:
    """Counted as places, as the last spaces, or kind by kind; what is left is the repeat's."""
    last = last.replace("sc in last 4 sts", "sc in each of last 4 sts")
    _, body = row(f"Row 2 (WS): Ch 1, *sc in next st; rep from * {last}.", SPACES)
    assert body[0] == Repeat((Work(SC),), 4)


@pytest.mark.parametrize(
    ("last", "told"),
    [
        ("to last 5 sts", "it repeats to the last 5 places, but what follows it takes 6"),
        ("to last ch-2 sp", "it repeats to the last 1 places, but what follows it takes 6"),
        ("to last 4 sts and 3 ch-2 sps", "to the last 7 places, but what follows it takes 6"),
        ("to last 3 sts and 3 ch-2 sps", "to the last 6 places, but what follows it takes 6"),
        ("across", 'but what follows takes 6; write "to last 6 sts" where it stops'),
    ],
)
def test_repeat_is_refused_when_something_else_is_left(last: str, told: str) -> None:
    """The number that is said is held to what follows."""
    after = "sc in next 2 ch-2 sps, sc in each of last 4 sts"
    assert told in complaint(
        f"Row 2 (WS): Ch 1, *sc in next st; rep from * {last}, {after}.", SPACES
    )


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("*sc in next 3 sts; rep from * across", "3 times, and 1 left over from place 10 on"),
        ("*sc in next 30 sts; rep from * across", "from place 1 on; 20 more would fit"),
        ("*ch 1; rep from * across", "repeats what takes no places"),
        (
            "*[sc in next st, *dc in next st; rep from * around] twice; rep from * across",
            "brackets",
        ),
        ("*sc in next st, *dc in next st; rep from * around; rep from * across", "within another"),
        (
            "*sc in next st; rep from * to last 2 sts, *dc in next st; rep from * across",
            "comes another that repeats to the end",
        ),
        (
            "sc in each st across, dc in next st",
            "takes all places there are, but what follows takes 1",
        ),
        (
            "sc in next 10 sts, dc in each remaining st across",
            'no place for "in each" from place 11',
        ),
    ],
)
def test_repeat_is_refused_when_it_has_no_end(text: str, told: str) -> None:
    """It has to fill its places, alone."""
    assert told in complaint(f"Row 1 (RS): Ch 1 (does not count as a st), {text}.")


def test_each_stops_when_it_is_told_to() -> None:
    """Up to the last two; "remaining" may be left out."""
    _, body = row(
        "Row 1 (RS): Sc in first st, dc in each st to last 2 sts, sc in next 2 sts. (10 sc)"
    )
    assert body == (Work(SC), Work(DC, 7), Work(SC, 2))


def test_turning_chain_is_worked_into_when_it_is_named() -> None:
    """Its top is the last place of the row back."""
    line = "Row 2 (WS): Ch 3, dc in next 8 sts, dc in {}."
    for top in ("top of ch-3", "top of turning ch", "tch"):
        assert row(line.format(top), COUNTED)[1] == (Work(DC, 8), Work(DC))
    assert "is ch 3" in complaint(line.format("top of ch-4"), COUNTED)
    early = "Row 2 (WS): Ch 3, dc in tch, dc in next 8 sts."
    assert "place 2 of the row below is no turning chain" in complaint(early, COUNTED)


def test_stitches_of_the_row_below_are_called_by_name_when_they_are_so() -> None:
    """ "Sc in next 3 dc": what made each place is looked at; a chain that counts is like its stitch."""
    before = "Row 1 (RS): Sc in next 5 sts, dc in next 5 sts; turn."
    _, body = row("Row 2 (WS): Sc in next 5 dc, sc in next 5 sc.", before)
    assert body == (Work(SC, 5), Work(SC, 5))
    assert 'place 5 of the row below is "dc", not "sc"' in complaint(
        "Row 2 (WS): Sc in next 4 dc, sc in next 6 sc.", before
    )
    _, body = row("Row 2 (WS): Ch 1 (does not count as a st), sc in each dc across.", COUNTED)
    assert body == (Work(SC, 10),)
    assert 'is "dc", not "sc"' in complaint(
        "Row 2 (WS): Ch 1 (does not count as a st), dc in each sc across.", COUNTED
    )
    _, body = row(
        "Row 2 (WS): Ch 1 (does not count as a st), 2 sc in each sc and dc across.", before
    )
    assert body == (Repeat((Into((Work(SC, 2),)),), 10),)


def test_chain_is_a_stitch_and_a_space_when_it_is_said_so() -> None:
    """Said once, it is so for every chain of that length."""
    first = (
        "Row 1 (RS): Ch 4 (counts as first dc and ch-1 sp), skip next st, dc in next 8 sts; turn."
    )
    start, body = row("Row 2 (WS): Ch 4, dc in next 7 sts, sk next ch-1 sp, dc in last st.", first)
    assert start == Start(3, counts=True)
    assert body == (Chain(1), Work(DC, 7), Skip(1), Work(DC))


def test_chain_that_is_skipped_counts_when_it_usually_does() -> None:
    """Three before a double crochet do, one before a single does not, two before a half: say it."""
    begin = "Foundation (WS): Ch 20; turn. (20 ch)"

    def read(text: str) -> Start:
        lines = [begin, f"Row 1 (RS): {text} in each remaining ch across."]
        return read_piece(lines, dictionary(), "us", name="back").rows[-1].start

    assert read("Sc in 2nd ch from hook, sc") == Start(1)
    assert read("Dc in 4th ch from hook, dc") == Start(3, counts=True)
    with pytest.raises(
        InputError, match="not said whether the 2 chains before it count as a stitch"
    ):
        read("Hdc in 3rd ch from hook, hdc")
    with pytest.raises(
        InputError, match="3 chains are skipped before chain 4 from the hook, not 2"
    ):
        read("Dc in 4th ch from hook (2 skipped chs count as first dc), dc")


@pytest.mark.parametrize(
    "text",
    [
        "[[sc in next st] 9999 times] 9999 times",
        "*[[ch 1] 9999 times] 9999 times, sc in next st; rep from * across",
        "([[dc] 9999 times] 9999 times) in next st",
    ],
)
def test_row_is_refused_when_it_is_longer_than_any(text: str) -> None:
    """At once: what it makes is counted and not written out."""
    assert "are the most that are read" in complaint(f"Row 1 (RS): {text}.")


def test_places_of_several_kinds_are_worked_when_each_is_named() -> None:
    """One in each stitch, two in each space; or the spaces alone. What repeats is found."""
    eyelets = "Row 1 (RS): Sc in first st, [ch 2, skip next st, sc in next 2 sts] 3 times; turn."
    two = Into((Work(SC, 2),))
    _, body = row("Row 2 (WS): Sc in each sc and 2 sc in each ch-2 sp across. (13 sc)", eyelets)
    assert body == (Repeat((Work(SC, 2), two), 3), Work(SC))
    _, body = row("Row 2 (WS): 2 sc in each ch-2 sp across, skip all others.", eyelets)
    assert body == (Repeat((Skip(2), two), 3), Skip())
    assert "place 3 of the row below is a ch-2 sp" in complaint(
        "Row 2 (WS): Sc in each sc and 2 sc in each ch-3 sp across.", eyelets
    )


def test_what_repeats_is_found_where_least_is_left_to_read() -> None:
    """The longest run of the shortest part; what stands around it stays."""
    a, b, c = Work(SC), Work(DC), Skip()
    assert gathered((a, b, c, b, c, b, c, a)) == (a, Repeat((b, c), 3), a)
    assert gathered((a, b, c)) == (a, b, c)
    assert gathered((a, a, a, b)) == (Repeat((a,), 3), b)
    assert gathered((a, b, b, a, b, b)) == (Repeat((a, Work(DC, 2)), 2),)
