"""Stitch patterns in words, for any number of repeats."""

from __future__ import annotations

import pytest

from frogless.read.patterns import find_way, way_of
from frogless.rows.nodes import Chain, Change, End, Into, Node, Skip, Start, Work
from frogless.stitches.load import dictionary
from frogless.stitches.pattern_rows import PatternRow, Way, room
from frogless.stitches.patterns import patterns
from frogless.write.stitch_pattern import say_way

SC, DC, BETWEEN = "single_crochet", "double_crochet", "double_crochet_between"
TURNED, CH_1, CH_3 = End(turn=True), Start(1), Start(3, counts=True)
Nodes = tuple[Node, ...]


@pytest.mark.parametrize(
    ("start", "before", "repeat", "after", "expected"),
    [
        (CH_1, (), (Work(SC),), (), "sc in each st across"),
        (CH_3, (), (Work(DC),), (), "dc in each remaining st across"),
        (CH_1, (Work(SC),), (Work(DC),), (), "sc in first st, dc in each remaining st across"),
        (CH_1, (), (Work(DC),), (Work(SC),), "dc in each st to last st, sc in last st"),
        (
            CH_1,
            (Work(SC),),
            (Into((Work(DC, 2),)),),
            (Work(SC, 2),),
            "sc in first st, 2 dc in each st to last 2 sts, sc in next 2 sts",
        ),
        (CH_1, (), (Work(BETWEEN),), (Work(SC),), "dc in sp before each st to last st, sc in last st"),
        (CH_1, (), (Work(SC),), (Change("B"),), "sc in each st across, change to color B"),
        (CH_1, (), (Work(SC, 2),), (), "*sc in next 2 sts; rep from * across"),
        (CH_1, (), (Work(SC, 0), Work(DC), Skip(0), Skip()), (), "*dc in next st, skip next st; rep from * across"),
        (
            CH_1,
            (Work(SC), Change("B")),
            (Work(SC, 2), Change("A"), Work(SC), Change("B")),
            (Work(SC),),
            "sc in first st, change to color B, *sc in next 2 sts, change to color A, sc in next st, "
            "change to color B; rep from * to last st, sc in last st",
        ),
    ],
)  # fmt: skip
def test_row_is_said_as_a_maker_would(
    start: Start, before: Nodes, repeat: Nodes, after: Nodes, expected: str
) -> None:
    """What is the same in each place is said so; the rest repeats from its star."""
    row = PatternRow(start, before, repeat, after, TURNED)
    offset, multiple = room(row, dictionary())
    line = say_way(Way(False, multiple, offset, (row,)), dictionary(), "us")[0]
    assert line.partition(": ")[2].partition(", ")[2] == expected + "; turn."


@pytest.mark.parametrize(
    ("after", "expected"),
    [
        ((Skip(2), Work(SC)), "Count each ch-sp as a st. ... to last 3 sts, skip next 2 sts"),
        ((Skip(), Work(SC, 2)), "to last ch-1 sp and 2 sts, skip next ch-1 sp"),
    ],
)
def test_spaces_are_told_from_stitches_where_a_repeat_ends(after: Nodes, expected: str) -> None:
    """Kind by kind, in the order met; all are stitches where spaces are counted as such."""
    eyelets = PatternRow(
        CH_1,
        (Work(SC),),
        (Work(SC), Chain(1), Skip()),
        (Work(SC), Chain(1), Skip(), Work(SC)),
        TURNED,
    )
    row = PatternRow(CH_1, (Work(SC),), (Skip(), Work(SC)), after, TURNED)
    way = Way(False, 2, 4, (eyelets, row), 1)
    told = say_way(way, dictionary(), "us")[-1]
    assert all(part in told for part in expected.split(" ... ")), told


def test_rows_that_are_not_turned_say_so() -> None:
    """Nothing said would mean that they are turned."""
    way = Way(False, 1, 0, (PatternRow(CH_1, (), (Work(SC),), (), End()),))
    lines = say_way(way, dictionary(), "us")
    assert lines[0].endswith("sc in each st across; do not turn.")
    assert find_way("\n".join(lines), dictionary(), "us", closed=False) == way


def test_colors_are_spelled_as_the_dialect_has_them() -> None:
    """Color in US, colour in UK; the pattern is the same."""
    row = PatternRow(CH_1, (), (Work(SC),), (Change("B", carried=False),), TURNED)
    back = PatternRow(CH_1, (), (Work(SC),), (Change("A"),), TURNED)
    way = Way(False, 1, 0, (row, back), colour="A")
    us, uk = (say_way(way, dictionary(), dialect) for dialect in ("us", "uk"))
    assert us[0] == "Begin with color A."
    assert uk[0] == "Begin with colour A."
    assert us[1].endswith("change to color B and cut the color before; turn.")
    assert uk[1].endswith("change to colour B and cut the colour before; turn.")
    assert find_way("\n".join(uk), dictionary(), "uk", closed=False) == way


@pytest.mark.parametrize("key", [key for key, entry in patterns().items() if entry.rows])
def test_no_pattern_says_places_where_kinds_can_be_named(key: str) -> None:
    """ "Places" is a word for the program; a maker counts stitches and spaces."""
    assert "place" not in " ".join(say_way(way_of(key, closed=False), dictionary(), "us"))
