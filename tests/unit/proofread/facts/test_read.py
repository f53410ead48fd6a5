"""A whole front matter: measurements, tables, multiples, lengths on the way."""

from __future__ import annotations

import pytest
from unit.proofread.facts.reading import ROWS, facts


def _told(front: str) -> list[tuple[str, str, tuple[float, ...]]]:
    return [
        (each.name, each.way, tuple(value / 10 for value in each.lengths.values))
        for each in facts(front).measurements
        if not each.body
    ]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Hip: 88 cm", ("hip", "girth", (88,))),
        ("Hip circumference: 88 cm", ("hip", "girth", (88,))),
        ("High hip: 80 cm", ("high hip", "girth", (80,))),
        ("Length from waist: 60 cm", ("length from waist", "length", (60,))),
        ("52.5 cm around", ("circumference", "girth", (52.5,))),
        ("78 cm around at the waist", ("waist", "girth", (78,))),
        ("40 cm wide", ("width", "width", (40,))),
        ("Diameter: 35 cm", ("diameter", "diameter", (35,))),
        ("93 cm at waist, 117 cm at hem", ("waist", "girth", (93,))),
    ],
)
def test_name_and_way(line: str, expected: tuple[str, str, tuple[float, ...]]) -> None:
    """What is measured, and whether around, across or along."""
    assert _told(f"Hat\n\nFinished measurements\n{line}")[:1] == [expected]


def test_length_in_brackets_on_the_next_line() -> None:
    """A sentence that is broken before its inches goes on: the word behind them names both."""
    found = _told('Cowl\n\nFinished size: 60 cm (23½") around and 25 cm\n(10") tall')
    assert found == [("circumference", "girth", (60,)), ("height", "length", (25,))]


def test_each_of_several_lengths_belongs_to_the_place_after_it() -> None:
    """ "93 cm around the bust, 33 cm to underarm": the second is no bust."""
    found = _told("Tank\n\nMeasures: 93 cm around the bust, 33 cm to underarm, 47 cm at hem.")
    assert [each[:2] for each in found] == [
        ("bust", "girth"), ("to underarm", "length"), ("hem", "girth"),
    ]  # fmt: skip


def test_actual_width_is_of_the_work() -> None:
    """Beside what it is to fit."""
    found = _told("Vest\n\nMeasurements\nTo fit bust 81 cm\nActual width of back 45.5 cm")
    assert found == [("actual width of back", "width", (45.5,))]


def test_both_ways_of_a_flat_piece() -> None:
    """ "90 x 60 cm" is a width and a length."""
    found = _told("Rug\n\nFinished size: 90 cm x 60 cm")
    assert found == [("width", "width", (90,)), ("length", "length", (60,))]


def test_body_measurements_are_known_as_such() -> None:
    """What the work is to fit is no measurement of the work."""
    sizes = "Fits 80-90 cm bust.\nSizes: S (M)\nTo fit bust: 80 (90) cm\nBust sizes 80 (90) cm"
    found = facts(f"Top\n\n{sizes}\n\nFinished bust: 84 (94) cm")
    assert [(each.name, each.body) for each in found.measurements][-1] == ("bust", False)
    assert all(each.body for each in found.measurements if each.lengths.values[0] == 800)


def test_table_with_a_column_for_each_size() -> None:
    """Values of a row of a table are those of the sizes."""
    table = "| Size | S | M | L |\n|---|---|---|---|\n| Head (cm) | 50 | 54 | 58 |\n"
    assert _told(f"# Hat\n\nSizes: S (M, L)\n\n## Finished measurements\n\n{table}") == [
        ("head", "girth", (50, 54, 58))
    ]


def test_unknown_table_is_left_alone() -> None:
    """Columns that are no sizes may be of the body, or of what was wanted."""
    table = (
        "at     body    skirt    ease\n-----  ------  -------  ------\n"
        "waist  66 cm   78 cm    +12 cm\nhip    89 cm   95.5 cm  +6.5 cm\n"
    )
    assert _told(f"Skirt\n\nFinished measurements\n\n{table}") == []


def test_count_beside_a_measurement() -> None:
    """ "84.5 cm at the high hip, 10 cm down (152 stitches)": the stitches are of the girth."""
    found = facts(
        "Skirt\n\nSchematic\nFront: 78 cm around at the waist (140 stitches), 84.5 cm at the high "
        "hip, 10 cm down (152 stitches)"
    ).measurements
    counts = [(each.name, each.count) for each in found if each.way == "girth"]
    assert counts == [("waist", 140), ("high hip", 152)]


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        ("Multiple of 8 + 1.", (8, 1, None)),
        ("Worked over a multiple of 6 sts plus 2.", (6, 2, None)),
        ("Stitch multiple is 10 + 1 (add 1 for the foundation chain).", (10, 1, 1)),
        ("Multiple: 4 + 3", (4, 3, None)),
        ("Multiple of 3 sts.", (3, 0, None)),
        ("Multiple of 6 + 2 chains.", (6, 0, 2)),
        ("Chain any multiple of 6, plus 2.", (6, 0, 2)),
        ("A multiple of 6, plus 2.", (6, 2, None)),
        ("Multiple of 8 sts + 1, plus 2 for the turning chain", (8, 1, 2)),
    ],
)
def test_multiple(sentence: str, expected: tuple[int, int, int | None]) -> None:
    """The multiple, what is over it, and what the chain has besides."""
    (found,) = facts(f"Scarf\n\nNotes\n{sentence}").multiples
    assert (found.multiple, found.over, found.chain) == expected


@pytest.mark.parametrize(
    "words", ["measures 20 cm (24 rows)", "measures 20 cm (about 24 rows)", "for 24 rows (20 cm)"]
)
def test_rows_beside_a_length(words: str) -> None:
    """A length within the instructions, with its rows."""
    (found,) = facts("Scarf", f"{ROWS}Work even until piece {words}.\n").progress
    assert (found.lengths.values, found.rows) == ((200.0,), (24.0,))


def test_gauge_in_the_middle_of_a_story() -> None:
    """Not every pattern has a heading for it."""
    (found,) = facts("My skirt\n\nI get 16 dc and 8 rounds to 10 cm, as always.").gauges
    assert (found.stitches, found.rows) == (16, 8)


@pytest.mark.parametrize(
    "words",
    ["not important, but mine is 18 dc and 9 rows = 10 cm", "18 dc = 10 cm. It isn't critical"],
)
def test_gauge_that_nobody_has_to_meet_is_none(words: str) -> None:
    """No width and no yarn is held against it."""
    assert facts(f"Shawl\n\nGauge: {words}.").gauges == ()


def test_lengths_in_two_units_are_gathered() -> None:
    """From anywhere in the text."""
    assert len(facts("Hat\n\nGauge: 16 sc = 10 cm (4 in)").both) == 1
