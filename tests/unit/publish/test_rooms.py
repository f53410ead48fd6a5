"""The pattern parted for four pages."""

from __future__ import annotations

from collections import Counter
from itertools import chain

import pytest
from examples import DESIGNS, GARMENTS, Example
from published import published, shown, text_of

from frogless.publish.blocks import Heading, Instruction
from frogless.publish.pattern import ROOMS, rooms


@pytest.mark.parametrize("design", [*DESIGNS, *GARMENTS])
def test_every_block_of_the_pattern_is_in_one_room(design: str) -> None:
    """So the pages and the printed pattern never disagree, and nothing is said twice."""
    found = rooms(shown(Example(design)))
    assert tuple(found) == ROOMS
    assert all(found.values())
    printed = published(Example(design)).blocks
    assert Counter(chain.from_iterable(found.values())) == Counter(printed)


@pytest.mark.parametrize("design", ["ring-dance-skirt", "harvest-top"])
def test_rooms_keep_the_order_of_the_pattern(design: str) -> None:
    """What follows on paper follows on the page."""
    printed = published(Example(design)).blocks
    for blocks in rooms(shown(Example(design))).values():
        rest = iter(printed)
        assert all(block in rest for block in blocks)


def test_each_room_has_what_it_is_for() -> None:
    """Rows with the pattern; yarn and gauge with the materials; what is worn with the fit."""
    found = rooms(shown(Example()))
    heads = {
        room: [block.text for block in blocks if isinstance(block, Heading) and block.level == 1]
        for room, blocks in found.items()
    }
    assert heads["shape"] == ["Schematic", "At a glance"]
    assert heads["materials"] == ["Materials", "Gauge"]
    assert heads["fit"] == ["Why these numbers"]
    assert "Before you start" in heads["pattern"]
    rows = {room for room, blocks in found.items() for b in blocks if isinstance(b, Instruction)}
    assert rows == {"pattern"}
    fit = text_of(found["fit"])
    assert "Going on:" in fit
    assert "Staying up:" in fit
    assert "Worn, the fabric grows" in fit
