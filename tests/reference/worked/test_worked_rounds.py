"""Rounds found on public pattern pages, expanded: the counts and the points to flag come out.

`worked_examples.json`: facts of public pages under neutral names, each with its source, recomputed;
`expect` says whether a checker should accept the page or flag it.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.plan.landing import land
from frogless.rows.nodes import Chain, Into, Node, Piece, Program, Repeat, Row, Together, Work
from frogless.stitches.load import dictionary

Case = dict[str, Any]
STITCHES = dictionary()
CASES: list[Case] = json.loads((Path(__file__).parent / "worked_examples.json").read_text())[
    "cases"
]
BY_ID = {case["id"]: case for case in CASES}
KEYS = {
    "sc": "single_crochet",
    "hdc": "half_double_crochet",
    "dc": "double_crochet",
    "tr": "treble",
    "post stitch": "double_crochet",
    "chain": "chain",
}


def listed() -> Iterator[tuple[str, list[Case]]]:
    """Every list of rounds of every case, by case and size."""
    for case in CASES:
        if "rounds" in case:
            yield case["id"], case["rounds"]
        for size in case.get("rounds_per_size", []):
            yield f"{case['id']} {size['size']}", size["rounds"]


LISTS = dict(listed())


def nodes(operation: tuple[str, int, int]) -> tuple[Node, ...]:
    """One operation of a round as nodes: what it is called, what it takes and makes."""
    label, consumed, produced = operation
    named = (key for name, key in KEYS.items() if re.search(rf"\b{name}(\d|\b)", label))
    stitch = next(named, "double_crochet")  # "corner" is one of double crochets
    if consumed == 0:  # into a ring, or on a foundation
        return (Work("foundation_single_crochet", produced),)
    if re.search(r"\dtog", label):
        return (Together(stitch, consumed),)
    each = re.search(r"in each of (\d+)", label)
    if each:
        many = int(each[1])
        return (Repeat((Into((Work(stitch, produced // many),)),), many),)
    if produced > consumed:
        return (Into((Work(stitch, produced),)),)
    return (Work(stitch, produced),)


def body(round_: Case) -> tuple[Node, ...]:
    """The nodes of a round: lead once, repeat so many times, tail once."""

    def worked(operations: list[tuple[str, int, int]]) -> tuple[Node, ...]:
        return tuple(node for each in operations for node in nodes(each))

    repeat = worked(round_["repeat"])
    middle = (Repeat(repeat, round_["times"]),) if round_["times"] else ()
    return (*worked(round_["lead"]), *middle, *worked(round_["tail"]))


def expanded(round_: Case, below: int) -> RowFabric:
    """One round on a row of so many places; without any it is a beginning of its own."""
    row = Row(1, "RS", "", body(round_), round_["stated_total"] or round_["produced"])
    foundation = Row(0, "RS", "", (Chain(below, each=True),), below)
    rows = (foundation, row) if below else (row,)
    return expand(Program((Piece("piece", True, rows),)), STITCHES).pieces["piece"][-1]


@pytest.mark.parametrize("name", LISTS)
def test_every_round_takes_and_makes_what_was_counted_by_hand(name: str) -> None:
    """All places are used once, and as many stitches are left as the operations add up to."""
    for round_ in LISTS[name]:
        row = expanded(round_, round_["consumed"])
        assert row.places == round_["produced"], round_["n"]
        assert row.overrun == 0, round_["n"]
        assert (row.used > 0).all(), round_["n"]


@pytest.mark.parametrize("name", LISTS)
def test_a_stated_count_is_found_wrong_where_it_is_wrong(name: str) -> None:
    """What the page states against what the round leaves."""
    for round_ in LISTS[name]:
        row = expanded(round_, round_["consumed"])
        agrees = row.row.count == row.places
        assert agrees == (round_["produced_equals_stated"] is not False), round_["n"]


@pytest.mark.parametrize("name", LISTS)
def test_rounds_that_cannot_follow_each_other_are_found(name: str) -> None:
    """Worked on what the round above leaves, a round that does not fit asks for more or less."""
    case = BY_ID[name.split()[0]]
    broken = case.get("round_links_broken")
    if broken is None:
        size = next(s for s in case["rounds_per_size"] if s["size"] == name.split()[1])
        broken = size.get("links_broken", [])
    found = []
    for above, round_ in pairwise(LISTS[name]):
        row = expanded(round_, above["produced"])
        if row.overrun or not (row.used > 0).all():
            found.append([above["n"], above["produced"], round_["n"], round_["consumed"]])
    assert found == broken


def test_case_is_flagged_when_a_round_states_a_wrong_count() -> None:
    """The hat whose round of 24 is missing: 18 where 36 are stated."""
    row = expanded(LISTS["WC-H11"][1], 12)
    assert (row.places, row.row.count) == (18, 36)
    assert BY_ID["WC-H11"]["expect"] == "flag"


@pytest.mark.parametrize(
    ("name", "count", "multiple", "fits"),
    [("WC-S04", 180, 4, True), ("WC-S09", 63, 5, False)],
)
def test_edging_closes_or_not_as_counted(name: str, count: int, multiple: int, fits: bool) -> None:
    """63 stitches hold no whole number of shells of 5: 60 or 65 would."""
    edging = BY_ID[name]["edging"]
    assert (edging["multiple"], edging["fits"]) == (multiple, fits)
    assert (land(count, 1.0, multiple).count == count) == fits
    if not fits:
        assert {land(count + d, 1.0, multiple).count for d in (-2, 2)} == {60, 65}


def test_first_row_into_a_chain_has_a_stitch_more_than_the_page_says() -> None:
    """102 chains worked from the 2nd make 101; the page says 100, which is from the 3rd."""
    case = BY_ID["WC-F10"]
    from_second = case["start_chain"] - STITCHES["single_crochet"].foundation_extra
    from_third = case["start_chain"] - STITCHES["half_double_crochet"].foundation_extra - 1
    assert (from_second, from_third) == (101, 100)
    assert case["stated"] == from_third
    assert case["expect"] == "flag"


@pytest.mark.parametrize("name", ["WC-D01", "WC-D02", "WC-H01", "WC-H13"])
def test_disc_grows_by_one_number_every_round(name: str) -> None:
    """What lies flat adds the same number of stitches in every round."""
    made = [
        round_["produced"] for round_ in LISTS[name] if round_["produced"] != round_["consumed"]
    ]
    assert len({b - a for a, b in pairwise(made)}) == 1
