"""Stitch patterns: every one is worked, told and read again; some are held to what the trade states."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise, product
from pathlib import Path
from typing import Any

import pytest
from pattern_tables import numbers, reference_way, table

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.read.build import read_program
from frogless.read.patterns import read_way, way_of
from frogless.rows.count import worked as stitches_worked
from frogless.rows.nodes import Chain, End, Piece, Program, Row
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.pattern_rows import OTHER_SIDE, Way, multiple_of, multiples, worked
from frogless.stitches.patterns import WayText, patterns
from frogless.write.ground import NOTHING, grounds
from frogless.write.pattern import write_program
from frogless.write.phrases import phrases
from frogless.write.stitch_pattern import say_way
from frogless.write.words import Words

DIALECTS: tuple[Dialect, ...] = ("us", "uk")
#: Looked at this many repeats of the width, and of the rows.
MOST_REPEATS, ROW_REPEATS = 20, 4
#: A front post stands forward on the side that faces the maker, a back post on the other.
FORWARD = {
    "front_post_double_crochet": True,
    "back_post_double_crochet": False,
    "front_post_treble": True,
    "front_post_twist": True,
    "front_cable": True,
    "back_cable": True,
}


def ways() -> Iterator[Any]:
    """Every pattern in rows, in rounds, as parameters named by their key."""
    for key, entry in patterns().items():
        for closed, text in ((False, entry.rows), (True, entry.rounds)):
            if text is not None:
                yield pytest.param(key, closed, id=f"{key}-{'rounds' if closed else 'rows'}")


def parameters() -> Iterator[Any]:
    """Every pattern that leaves numbers open, with these at their ends."""
    for key, entry in patterns().items():
        for values in product(*((p.low, p.high) for p in entry.parameters.values())):
            if values:
                given = dict(zip(entry.parameters, values, strict=True))
                told = " ".join(f"{name}={value}" for name, value in given.items())
                yield pytest.param(key, given, id=f"{key} {told}")


def program(way: Way, repeats: int, row_repeats: int) -> Program:
    """So many repeats of a pattern on a foundation chain."""
    places = way.places(repeats)
    rows = worked(way, places, way.setup + row_repeats * way.period, dictionary())
    end = End("first_stitch") if way.closed else End(turn=True)
    side = way.side if way.closed else OTHER_SIDE[way.side]
    base = Row(0, side, "", (Chain(places, each=True),), places, end=end)
    return Program((Piece("piece", way.closed, (base, *rows), (), way.colour),))


def wrong_places(made: Fabric) -> list[tuple[int, int, list[int], int, int]]:
    """Rows that run over, leave places unused, use one twice, or do not leave what they state."""
    found = []
    for row in made.pieces["piece"][1:]:
        taken = row.used.clip(max=1) + row.skipped + row.left
        unlike = [int(place) + 1 for place in (taken != 1).nonzero()[0]]
        if row.overrun or unlike or row.row.count != row.places:
            found.append((row.row.number, row.overrun, unlike, row.row.count, row.places))
    return found


@pytest.mark.parametrize(("key", "closed"), tuple(ways()))
def test_pattern_uses_what_the_row_before_leaves_at_any_size(key: str, closed: bool) -> None:
    """1 to 20 repeats of 1 to 4 row repeats: nothing left over, nothing missing."""
    way = way_of(key, closed=closed)
    for repeats in range(way.least, MOST_REPEATS + 1):
        made = expand(program(way, repeats, ROW_REPEATS), dictionary())
        assert wrong_places(made) == [], repeats


@pytest.mark.parametrize(("key", "closed"), tuple(ways()))
def test_row_repeat_meets_the_same_places_when_worked_again(key: str, closed: bool) -> None:
    """The text names stitches and chain spaces: in the next row repeat they stand where it says.

    A first row that repeats as well is begun on stitches, and has to meet nothing else later.
    """
    way = way_of(key, closed=closed)
    piece = program(way, way.least + 1, 2).pieces[0]
    words = Words(dictionary(), "us", phrases("en"))
    met = [
        ["ch" if noun == "st" else noun for noun in ground.of(0, ground.places or 0)]
        for ground in grounds(piece, NOTHING, words)
    ]
    first = met[1 + way.setup :][: way.period]
    assert met[1 + way.setup + way.period :] == first


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(("key", "closed"), tuple(ways()))
def test_pattern_reads_back_from_its_text(key: str, closed: bool, dialect: Dialect) -> None:
    """Told for any number of repeats, it is the same pattern when read."""
    way = way_of(key, closed=closed)
    text = "\n".join(say_way(way, dictionary(), dialect))
    told = WayText(text, way.multiple, way.offset, way.setup, way.least)
    assert read_way(told, dictionary(), dialect, closed=closed, values={}) == way, text


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(("key", "closed"), tuple(ways()))
def test_rows_of_a_pattern_read_back_to_the_same_fabric(
    key: str,
    closed: bool,
    dialect: Dialect,
) -> None:
    """Written with its numbers as any other piece is, two row repeats of a few sizes."""
    way = way_of(key, closed=closed)
    for repeats in (way.least, way.least + 2) if dialect == "us" else (way.least + 1,):
        meant = program(way, repeats, 2)
        text = write_program(meant, dictionary(), dialect)
        read = read_program(text, dictionary(), dialect)
        difference = same(expand(meant, dictionary()), expand(read, dictionary()))
        assert difference is None, f"{difference}\n{text}"


@pytest.mark.parametrize(("key", "closed"), tuple(ways()))
def test_multiple_is_the_one_found_by_search(key: str, closed: bool) -> None:
    """Of all counts, those that the rows come out over are the multiples that are stated."""
    way = way_of(key, closed=closed)
    found = multiples(way, dictionary(), most=way.places(way.least + 3))
    assert multiple_of(found) == (way.multiple, way.offset, way.least)


@pytest.mark.parametrize(("key", "given"), tuple(parameters()))
def test_pattern_holds_with_its_parameters_at_their_ends(
    key: str, given: Mapping[str, int]
) -> None:
    """A graded sequence of repeats stays a pattern that uses what the row before leaves."""
    entry = patterns()[key]
    for closed in (False, True):
        if (entry.rounds if closed else entry.rows) is None:
            continue
        way = way_of(key, closed=closed, parameters=given)
        found = multiples(way, dictionary(), most=way.places(way.least + 2))
        assert multiple_of(found) == (way.multiple, way.offset, way.least)
        for repeats in (way.least, 3):
            assert wrong_places(expand(program(way, repeats, 2), dictionary())) == []
        text = "\n".join(say_way(way, dictionary(), "us"))
        told = WayText(text, way.multiple, way.offset, way.setup, way.least)
        assert read_way(told, dictionary(), "us", closed=closed, values={}) == way, text


def test_no_pattern_is_there_twice() -> None:
    """Neither the rows under another key, nor a name that another has."""
    keys: dict[Way, str] = {}
    for key, closed in (param.values for param in ways()):
        way = way_of(key, closed=closed)
        assert keys.setdefault(way, key) == key
    for dialect in DIALECTS:
        names = [entry.names[dialect] for entry in patterns().values()]
        assert len(set(names)) == len(names)


def test_three_patterns_at_least_grow_by_their_repeat() -> None:
    """A parameter that widens the repeat makes graded sequences possible."""
    growing = []
    for key, entry in patterns().items():
        for name, parameter in entry.parameters.items():
            closed = entry.rows is None
            widths = [
                way_of(key, closed=closed, parameters={name: value}).multiple
                for value in range(parameter.low, parameter.high + 1)
            ]
            if len(widths) > 1 and all(a < b for a, b in pairwise(widths)):
                growing.append(key)
    assert len(set(growing)) >= 3
    assert {"fan_arches", "shells", "trellis"} <= set(growing)


# What the trade states


TABLE = table(Path(__file__).with_name("patterns_a.csv"), "key", "parameters", "way", "row")


@pytest.mark.parametrize("row", TABLE)
def test_multiple_and_offset_are_those_that_the_trade_states(row: dict[str, str]) -> None:
    """Multiple of so many, and so many more."""
    way = reference_way(row)
    assert (way.multiple, way.offset) == (int(row["multiple"]), int(row["offset"]))


@pytest.mark.parametrize("row", TABLE)
def test_repeat_works_the_stitches_counted_by_hand(row: dict[str, str]) -> None:
    """One repeat of the row named, stitch by stitch and chain by chain."""
    repeat = reference_way(row).rows[int(row["row"]) - 1].repeat
    assert dict(stitches_worked(repeat)) == numbers(row["works"])


@pytest.mark.parametrize("row", TABLE)
def test_row_leaves_the_places_counted_by_hand_when_worked_over_three_repeats(
    row: dict[str, str],
) -> None:
    """Edges and chain spaces among them."""
    way = reference_way(row)
    places = 3 if way.multiple == 1 else way.places(3)
    made = worked(way, places, int(row["row"]), dictionary())
    assert made[-1].count == int(row["left"])


def test_reference_holds_patterns_enough_when_counted() -> None:
    """So many patterns are held to what the trade states."""
    assert len({param.values[0]["key"] for param in TABLE}) >= 25


# What a fabric of posts looks like


def relief(way: Way, repeats: int) -> list[str]:
    """Each row from the right side: + stands forward, - stands back, . does neither."""
    seen = []
    for row in expand(program(way, repeats, 2), dictionary()).pieces["piece"][1 + way.setup :]:
        keys = [row.keys[i] for i, n in zip(row.stitch, row.counted, strict=True) for _ in range(n)]
        faces = row.row.side == "RS"
        line = "".join("." if k not in FORWARD else "-+"[FORWARD[k] == faces] for k in keys)
        seen.append(line[::-1] if row.row.side == "WS" else line)
    return seen


@pytest.mark.parametrize(
    ("key", "closed", "expected"),
    [
        ("post_rib", False, [".+-+-.", ".+-+-."]),
        ("post_rib", True, ["+-+-", "+-+-"]),
        ("post_rib_two", False, [".++--++--.", ".++--++--."]),
        ("post_rib_two", True, ["++--++--", "++--++--"]),
        ("waffle", False, ["..+..+..", ".-.--.-.", "..+..+..", ".-.--.-."]),
        ("waffle", True, ["+..+..", ".--.--", "+..+..", ".--.--"]),
        ("basketweave", False, 2 * (3 * [".+++---+++---."] + 3 * [".---+++---+++."])),
        ("basketweave", True, 2 * (3 * ["+++---+++---"] + 3 * ["---+++---+++"])),
        ("post_columns", False, 4 * [".+....+....+."]),
        ("post_columns", True, 2 * ["+....+...."]),
        ("twist_columns", False, 4 * ["..++..++.."]),
        ("twist_columns", True, 4 * ["..++..++"]),
        ("cable_four", False, 8 * ["..++++..++++.."]),
        ("cable_four", True, 8 * ["..++++..++++"]),
        ("plait", False, 8 * ["..++++++..++++++.."]),
        ("plait", True, 8 * ["..++++++..++++++"]),
        ("wicker", False, 8 * [".++++++++."]),
    ],
    ids=lambda value: str(value) if isinstance(value, str | bool) else "",
)
def test_posts_stand_forward_and_back_where_the_fabric_shows_them(
    key: str,
    closed: bool,
    expected: list[str],
) -> None:
    """Turned rows and rounds that are not turned show the same relief on the right side.

    Drawn by hand from what the fabric is called for: ribs run up, blocks change places after three
    rows, a waffle has posts and between them ridges that stand back, cables stand forward all the way.
    """
    way = way_of(key, closed=closed)
    # The two edges of its rows take up one of its repeats.
    repeats = 3 if key == "post_rib" and not closed else 2
    assert relief(way, repeats) == expected
