"""Rounds found on public pattern pages can be said: written in US and UK and read back, stitch by stitch.

Each round stands on a chain ring of as many places as it takes, or, where it takes none, in a ring.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from reference.worked.test_worked_rounds import KEYS, LISTS, Case, body

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_program
from frogless.rows.count import row_left
from frogless.rows.nodes import Chain, End, Into, Node, Piece, Program, Repeat, Row, Work
from frogless.stitches.load import dictionary, leaves
from frogless.stitches.model import Dialect
from frogless.write.pattern import write_program

STITCHES = dictionary()
DIALECTS: tuple[Dialect, ...] = ("us", "uk")
JOINED = End("first_stitch")


def in_ring(round_: Case) -> tuple[Node, ...]:
    """A first round, which is told without a foundation, as it is worked: all of it into a ring."""
    label = next(operation[0] for operation in (*round_["lead"], *round_["repeat"]))
    stitch = next(key for name, key in KEYS.items() if re.search(rf"\b{name}\b", label))
    return (Into((Work(stitch, round_["produced"]),)),)


def said(name: str) -> Program:
    """The rounds of a list, one on the other; where they do not follow, another piece begins."""
    runs: list[list[Case]] = []
    for round_ in LISTS[name]:
        follows = bool(runs) and runs[-1][-1]["produced"] == round_["consumed"] > 0
        if follows:
            runs[-1].append(round_)
        else:
            runs.append([round_])
    return Program(tuple(piece(f"part {n}", run) for n, run in enumerate(runs, start=1)))


def piece(name: str, rounds: list[Case]) -> Piece:
    """Rounds that follow each other, on a ring of chains that has the places of the first."""
    places = rounds[0]["consumed"]
    rows = [Row(0, "RS", "", (Chain(places or 4, each=places > 0),), places or 1, end=JOINED)]
    for number, round_ in enumerate(rounds, start=1):
        worked = body(round_) if round_["consumed"] else in_ring(round_)
        row = Row(number, "RS", "", worked, 0, end=JOINED)
        rows.append(replace(row, count=row_left(row, leaves(STITCHES))))
    return Piece(name, True, tuple(rows))


@pytest.mark.parametrize("name", LISTS)
def test_every_round_comes_back_when_it_is_written_and_read(name: str) -> None:
    """In both dialects: the same fabric, and the count that was counted by hand."""
    program = said(name)
    fabric = expand(program, STITCHES)
    for dialect in DIALECTS:
        text = write_program(program, STITCHES, dialect)
        read = read_program(text, STITCHES, dialect)
        assert same(fabric, expand(read, STITCHES)) is None, text
        counts = [row.count for piece_ in read.pieces for row in piece_.rows[1:]]
        assert counts == [round_["produced"] for round_ in LISTS[name]], text


def test_rounds_are_said_in_both_dialects_with_their_own_words() -> None:
    """Groups six times over, the slip stitch and the double crochet of each dialect."""
    us, uk = (write_program(said("WC-D01"), STITCHES, dialect) for dialect in DIALECTS)
    assert "6 times; join with sl st" in us
    assert "6 times; join with ss" in uk


def test_what_stands_on_nothing_is_told_as_worked_into_a_ring() -> None:
    """Every list that begins with a ring has it in words."""
    begun = [name for name, rounds in LISTS.items() if rounds and rounds[0]["consumed"] == 0]
    assert len(begun) > 1
    for name in begun:
        text = write_program(said(name), STITCHES, "us")
        assert re.search(r"Rnd 1 \(RS\): \d+ \w+ in ring; join", text), text


def test_repeats_that_were_read_are_those_that_were_written() -> None:
    """Brackets come back as a repeat, not written out."""
    found = [
        node
        for name in LISTS
        for piece_ in read_program(write_program(said(name), STITCHES, "us"), STITCHES, "us").pieces
        for row in piece_.rows
        for node in row.body
    ]
    assert any(isinstance(node, Repeat) and node.times > 5 for node in found)
