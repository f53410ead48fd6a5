"""Patterns of ripples, bricks, clusters, lattices, spikes and colours: counts and shapes."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import pytest
from pattern_tables import numbers, reference_way, table

from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.read.patterns import way_of
from frogless.rows.count import CHAIN
from frogless.rows.count import worked as stitches_worked
from frogless.rows.nodes import Chain, End, Piece, Program, Row
from frogless.stitches.load import dictionary
from frogless.stitches.pattern_rows import OTHER_SIDE, Way, worked
from frogless.stitches.patterns import patterns

TABLE = table(Path(__file__).with_name("patterns_b.csv"), "key", "parameters", "way")


def one_repeat(way: Way) -> Counter[str]:
    """What one repeat more adds to the rows that repeat."""
    few, many = (
        sum(
            (
                stitches_worked(row.body)
                for row in worked(way, way.places(n), len(way.rows), dictionary())[way.setup :]
            ),
            Counter[str](),
        )
        for n in (2, 3)
    )
    return many - few


def laid(key: str, *, closed: bool, repeats: int = 3, turns: int = 2) -> tuple[RowFabric, ...]:
    """The rows of a pattern on a foundation chain, which comes first; `turns` of its row repeat."""
    way = way_of(key, closed=closed)
    places = way.places(repeats)
    rows = worked(way, places, way.setup + turns * way.period, dictionary())
    end = End("first_stitch") if closed else End(turn=True)
    side = way.side if closed else OTHER_SIDE[way.side]
    base = Row(0, side, "", (Chain(places, each=True),), places, end=end)
    piece = Piece("piece", closed, (base, *rows), (), way.colour)
    return expand(Program((piece,)), dictionary()).pieces["piece"]


def kinds(row: RowFabric) -> list[str]:
    """The stitch that made each place of a row, in the order made."""
    return [row.keys[row.stitch[maker]] for maker in row.made_by]


def standing(row: RowFabric) -> list[tuple[str, int]]:
    """Each stitch that stands on something, with the number of its place in the row below."""
    return [
        (row.keys[stitch], int(place))
        for stitch, place in zip(row.stitch, row.first, strict=True)
        if place >= 0
    ]


def runs(places: list[int]) -> list[tuple[int, int]]:
    """First and last of every run of numbers that follow one another."""
    found: list[tuple[int, int]] = []
    for place in sorted(places):
        if found and place == found[-1][1] + 1:
            found[-1] = (found[-1][0], place)
        else:
            found.append((place, place))
    return found


@pytest.mark.parametrize("row", TABLE)
def test_multiple_and_offset_are_those_stated_outside(row: dict[str, str]) -> None:
    """As the trade gives them, or added up by hand."""
    way = reference_way(row)
    assert (way.multiple, way.offset) == (int(row["multiple"]), int(row["offset"]))
    assert row["source"]
    assert row["basis"] in {"published", "common-practice", "memory", "derived"}


@pytest.mark.parametrize("row", TABLE)
def test_repeat_works_the_stitches_counted_by_hand(row: dict[str, str]) -> None:
    """One repeat through all rows that repeat; stitches closed together are one."""
    assert dict(one_repeat(reference_way(row))) == numbers(row["works"])


def test_reference_holds_patterns_enough() -> None:
    """So many patterns are held to counts from outside."""
    assert len({param.values[0]["key"] for param in TABLE}) >= 22


def test_no_pattern_is_written_twice() -> None:
    """A key in two files would silently hide the first."""
    folder = files("frogless.stitches").joinpath("data", "patterns")
    keys = Counter(
        key
        for file in folder.iterdir()
        if file.name.endswith(".toml")
        for key in tomllib.loads(file.read_text(encoding="utf-8"))
    )
    assert [key for key, times in keys.items() if times > 1] == []
    assert set(keys) == set(patterns())


# Chevrons

ZIGZAGS = [
    ("chevron_single", False), ("chevron_single", True), ("chevron_ridged", False),
    ("chevron_double", False), ("ripple_soft", False), ("ripple_soft", True),
    ("ripple_open", False), ("ripple_open", True), ("ripple_two", False), ("ripple_two", True),
]  # fmt: skip


def inside(found: list[tuple[int, int]], places: int) -> list[tuple[int, int]]:
    """Without what lies at an edge, behind its one stitch, or at the join: that is half of one."""
    return [(low, high) for low, high in found if low > 1 and high < places - 2]


def peaks(row: RowFabric) -> list[tuple[int, int]]:
    """Runs of places of the row below that take more than one stitch."""
    several = [place for place, times in enumerate(row.used) if times > 1]
    return inside(runs(several), row.used.size)


def valleys(row: RowFabric) -> list[tuple[int, int]]:
    """Runs of places of the row below that are skipped or closed together with others."""
    fewer = {place for place, skipped in enumerate(row.skipped) if skipped}
    at = {int(place): index for index, place in enumerate(row.order)}
    for first, taken in zip(row.first, row.taken, strict=True):
        if taken > 1:
            fewer |= {int(row.order[at[int(first)] + n]) for n in range(taken)}
    return inside(runs(list(fewer)), row.used.size)


def made_in(row: RowFabric, low: int, high: int) -> list[int]:
    """Numbers of the places made by stitches that stand on places `low` to `high`."""
    return [
        number for number, maker in enumerate(row.made_by) if low <= int(row.first[maker]) <= high
    ]


@pytest.mark.parametrize(("key", "closed"), ZIGZAGS)
def test_peaks_stand_over_peaks(key: str, closed: bool) -> None:
    """The middle of what is worked into a peak is where the next row has its peak."""
    rows = laid(key, closed=closed)[1:]
    for below, row in pairwise(rows):
        assert len(peaks(below)) >= 2
        tops = [made_in(below, low, high) for low, high in peaks(below)]
        middles = sorted((min(top) + max(top)) / 2 for top in tops)
        assert [(low + high) / 2 for low, high in peaks(row)] == middles


@pytest.mark.parametrize(("key", "closed"), ZIGZAGS)
def test_valleys_stand_over_valleys(key: str, closed: bool) -> None:
    """Halfway between the stitches on both sides of a valley lies the next row's valley."""
    rows = laid(key, closed=closed)[1:]
    for below, row in pairwise(rows):
        assert len(valleys(below)) >= 2
        middles = []
        for low, high in valleys(below):
            sides = [made_in(below, low - 1, low - 1), made_in(below, high + 1, high + 1)]
            # Turned rows number the places of the row below the other way round.
            before, after = sorted(sides, key=min)
            middles.append((max(before) + min(after)) / 2)
        assert [(low + high) / 2 for low, high in valleys(row)] == sorted(middles)


@pytest.mark.parametrize(
    ("key", "closed"), [*ZIGZAGS, ("feather_fan", False), ("feather_fan", True)]
)
def test_increases_and_decreases_are_as_many(key: str, closed: bool) -> None:
    """A ripple neither widens nor narrows: what the peaks add, the valleys take."""
    for row in laid(key, closed=closed)[1:]:
        assert row.places == row.used.size


@pytest.mark.parametrize("closed", [False, True])
def test_tall_stitches_of_a_wave_stand_over_short_ones(closed: bool) -> None:
    """Crest and hollow change places, so that two rows together are straight."""
    over = {
        "single_crochet": "double_crochet",
        "half_double_crochet": "half_double_crochet",
        "double_crochet": "single_crochet",
    }
    rows = laid("small_wave", closed=closed)[1:]
    for below, row in pairwise(rows):
        made = kinds(below)
        made = [("double_crochet" if key == CHAIN else key) for key in made]
        for key, place in standing(row):
            assert made[place] == over["double_crochet" if key == CHAIN else key]


# Bricks, clusters, leaves


@pytest.mark.parametrize("closed", [False, True])
def test_holes_of_bricks_lie_over_the_middle_of_the_bricks_below(closed: bool) -> None:
    """Halfway between two holes the next row passes a stitch over."""
    rows = laid("brick_eyelet", closed=closed, repeats=4)[1:]
    for below, row in pairwise(rows):
        holes = [number for number, key in enumerate(kinds(below)) if key == CHAIN]
        holes = [hole for hole in holes if hole > 0]  # the turning chain is no hole
        middles = {(low + high) // 2 for low, high in pairwise(holes)}
        passed = {place for place, skipped in enumerate(row.skipped) if skipped}
        assert len(middles) >= 2
        assert middles <= passed


@pytest.mark.parametrize(
    ("key", "stitch"),
    [
        ("clusters_in_spaces", "cluster"),
        ("cluster_vees", "cluster_of_two"),
        ("puff_lattice", "puff"),
        ("beans", "bean"),
        ("linen_three", "single_crochet"),
    ],
)
def test_stitches_stand_in_the_chain_spaces_below(key: str, stitch: str) -> None:
    """From the second round on, each is worked round a chain."""
    for below, row in pairwise(laid(key, closed=True)[1:]):
        made = kinds(below)
        on = [made[place] for name, place in standing(row) if name == stitch]
        assert on
        assert set(on) == {CHAIN}


@pytest.mark.parametrize(
    ("key", "closed", "stitch", "side"),
    [
        ("bobble_rows", False, "bobble", "WS"),
        ("bobble_rows", True, "bobble", "WS"),
        ("popcorn_rows", False, "popcorn", "RS"),
        ("popcorn_rows", True, "popcorn", "RS"),
    ],
)
def test_raised_stitches_come_on_the_side_that_turns_them_out(
    key: str, closed: bool, stitch: str, side: str
) -> None:
    """Bobbles bulge away from the maker, popcorns towards her; the next row's stand between."""
    raised = [row for row in laid(key, closed=closed) if stitch in kinds(row)]
    assert {row.row.side for row in raised} == {side}
    columns = [{n % 4 for n, made in enumerate(kinds(row)) if made == stitch} for row in raised]
    assert all(len(each) == 1 for each in columns)
    for (before,), (after,) in pairwise(columns):
        assert (before - after) % 4 == 2


def test_leaf_closes_the_stitches_that_opened_from_one() -> None:
    """All that are closed together stand in one place, and the next leaf on the point."""
    rows = laid("leaves", closed=False)[1:]
    for below, row in pairwise(rows):
        for first, taken in zip(row.first, row.taken, strict=True):
            if taken > 1:
                leaf = range(int(first) - taken + 1, int(first) + 1)
                assert len({int(below.first[below.made_by[place]]) for place in leaf}) == 1
    closing, opening = rows[1], rows[2]
    points = {n for n, maker in enumerate(closing.made_by) if closing.taken[maker] > 1}
    opened = {place for place, times in enumerate(opening.used) if times > 1}
    assert opened == points != set()


# Spikes


@pytest.mark.parametrize(
    ("key", "closed"),
    [("spike_rows", False), ("spike_rows", True), ("spike_points", False), ("spike_points", True)],
)
def test_long_spikes_reach_over_all_rows_of_the_other_colour(key: str, closed: bool) -> None:
    """Through both rows of the other stripe, into the last row of their own colour before it."""
    rows = laid(key, closed=closed)
    colours = row_colours(rows, way_of(key, closed=closed).colour)
    spiked = [n for n, row in enumerate(rows) if "long_spike" in kinds(row)]
    assert len(spiked) == 4
    foot = 1 + dictionary()["long_spike"].reaches
    for number in spiked:
        own = colours[number]
        assert own not in colours[number - foot + 1 : number]
        # The first spikes stand on the foundation, which has the colour that it was begun with.
        assert number - foot == 0 or colours[number - foot] == own


@pytest.mark.parametrize(
    ("key", "closed", "stitch", "apart"),
    [
        ("spike_rows", False, "long_spike", 4),
        ("spike_rows", True, "long_spike", 4),
        ("spike_points", False, "long_spike", 4),
        ("spike_points", True, "long_spike", 4),
        ("spike_alternate", False, "spike", 2),
        ("spike_alternate", True, "spike", 2),
        ("overlay_bars", True, "spike_double_crochet", 4),
    ],
)
def test_spikes_stand_between_those_of_the_row_before(
    key: str, closed: bool, stitch: str, apart: int
) -> None:
    """Set off by half of what they are apart."""
    places = []
    for row in laid(key, closed=closed, turns=3):
        seen = kinds(row)[:: -1 if row.row.side == "WS" else 1]
        if stitch in seen:
            places.append({n % apart for n, made in enumerate(seen) if made == stitch})
    assert len(places) >= 3
    for (before,), (after,) in pairwise(places):
        assert (before - after) % apart == apart // 2


def test_overlaid_bars_join_rounds_of_their_own_colour() -> None:
    """The long stitch passes over one round, which is of the other colour."""
    rows = laid("overlay_bars", closed=True)
    colours = row_colours(rows, "A")
    foot = 1 + dictionary()["spike_double_crochet"].reaches
    for number, row in enumerate(rows):
        if "spike_double_crochet" in kinds(row):
            assert colours[number - foot] == colours[number] != colours[number - 1]


# Colours


def stitch_colours(rows: tuple[RowFabric, ...], colour: str) -> Iterator[list[str]]:
    """The colour of each place that each row makes, in the order made; `colour` is begun with."""
    for row in rows:
        changes = dict(row.changes)
        colours = []
        for made in range(row.stitch.size):
            # The stitch before a change draws the colour through; those after it are worked in it.
            colour = changes[made].colour if made in changes else colour
            colours.append(colour)
        yield [colours[maker] for maker in row.made_by]
        colour = changes[row.stitch.size].colour if row.stitch.size in changes else colour


def row_colours(rows: tuple[RowFabric, ...], colour: str) -> list[str]:
    """The colours of each row, as one string."""
    return ["".join(sorted(set(row))) for row in stitch_colours(rows, colour)]


@pytest.mark.parametrize("row", [p for p in TABLE if p.values[0]["colours"]])
def test_rows_have_the_colours_stated_and_go_on_with_them(row: dict[str, str]) -> None:
    """As written down by hand; the rows that repeat come back to the colour they began with."""
    closed = row["way"] == "rounds"
    way = reference_way(row)
    written = list(row["colours"])
    expected = [*written, *written[way.setup :]]
    assert row_colours(laid(row["key"], closed=closed), way.colour)[1:] == expected


@pytest.mark.parametrize(
    ("key", "closed", "picture"),
    [
        ("checks", False, 2 * (4 * ["BBBBAAAABBBBAAAA"] + 4 * ["AAAABBBBAAAABBBB"])),
        ("checks", True, 2 * (4 * ["BBBBAAAABBBBAAAA"] + 4 * ["AAAABBBBAAAABBBB"])),
        ("dots", False, 2 * ["AAABAAABAAA", "A" * 11, "ABAAABAAABA", "A" * 11]),
        ("dots", True, 2 * ["BAAABAAA", "AAAAAAAA", "AABAAABA", "AAAAAAAA"]),
    ],
)
def test_colours_make_the_picture_drawn_by_hand(key: str, closed: bool, picture: list[str]) -> None:
    """From the right side, first row first; right side rows run from right to left."""
    rows = laid(key, closed=closed, repeats=2)
    colours = list(stitch_colours(rows, "A"))
    seen = [
        "".join(made[::-1] if row.row.side == "RS" else made)
        for row, made in zip(rows, colours, strict=True)
    ]
    assert seen[1:] == picture


@pytest.mark.parametrize("closed", [False, True])
def test_houndstooth_works_short_stitches_over_tall_ones(closed: bool) -> None:
    """And tall ones over short ones, in every row."""
    for below, row in pairwise(laid("houndstooth", closed=closed)[1:]):
        made = kinds(below)
        assert {(key, made[place]) for key, place in standing(row)} == {
            ("single_crochet", "double_crochet"),
            ("double_crochet", "single_crochet"),
        }


# Cables and long loops


@pytest.mark.parametrize(
    ("key", "closed"),
    [
        ("twist_columns", False), ("twist_columns", True), ("cable_four", False),
        ("cable_four", True), ("plait", False), ("plait", True), ("wicker", False),
    ],
)  # fmt: skip
def test_cables_stand_forward_in_columns(key: str, closed: bool) -> None:
    """Front posts with the right side facing, back posts on the wrong side, post over post."""
    rows = laid(key, closed=closed)[2:]  # without the foundation and the plain row
    for row in rows:
        posts = {"RS": "front_post", "WS": "back_post"}[row.row.side]
        places = {place for made in standing(row) for place in hook_places(made[0])}
        assert {place for place in places if place.endswith("post")} == {posts}
    for below, row in pairwise(rows):
        made = kinds(below)
        on = [made[place] for key, place in standing(row) if hook_places(key)]
        assert on
        assert all(hook_places(key) for key in on)


def hook_places(key: str) -> set[str]:
    """The posts that a stitch is worked around."""
    return {s.where for s in dictionary()[key].steps if s.where in ("front_post", "back_post")}


def test_long_loops_are_laid_backwards_and_taken_five_by_five() -> None:
    """As many loops as stitches, pulled up from left to right; every bundle takes five."""
    rows = laid("long_loop_bundles", closed=False)[1:]
    for below, row in pairwise(rows):
        if "loop_group" in kinds(row):
            assert below.row.backwards
            assert set(kinds(below)) == {"long_loop"}
            assert below.places == 15
            assert [int(n) for n in row.taken] == [5, 5, 5]
