"""Where nodes stand, and what their places are called."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Into, Node, Repeat, Skip, Together, Work
from frogless.stitches.load import dictionary, stands_on
from frogless.write.ground import Ground, Noun, one_noun
from frogless.write.spots import needs_note, spots

SC = "single_crochet"
STANDS_ON = stands_on(dictionary())
LACE: tuple[Noun, ...] = ("st", "sp1", "st", "sp1", "st", "sp2")


def test_each_node_has_the_places_it_takes() -> None:
    """One after the other; what is worked 0 times has none."""
    body = (Work(SC, 2), Work(SC, 0), Skip(1), Together(SC, 2))
    found = spots(body, 1, Ground(LACE), STANDS_ON)
    assert [(spot.at, spot.takes, spot.nouns) for spot in found] == [
        (1, 2, ("sp1", "st")),
        (3, 1, ("sp1",)),
        (4, 2, ("st", "sp2")),
    ]


def test_a_repeat_has_the_places_of_all_its_turns() -> None:
    """In words it is said once, so it has to be true of every turn."""
    (found,) = spots((Repeat((Work(SC), Skip()), 3),), 0, Ground(LACE), STANDS_ON)
    assert [spot.nouns for spot in found.inner] == [("st",), ("sp1", "sp2")]
    assert not needs_note((found,))


@pytest.mark.parametrize(
    ("body", "expected"),
    [
        ((Work(SC, 6),), True),
        ((Work(SC, 3), Work(SC, 3)), False),
        ((Repeat((Work(SC, 2),), 3),), True),
        ((Work(SC), Together(SC, 2), Into((Work(SC),)), Work(SC, 2)), True),
        ((Repeat((Work(SC), Work(SC)), 3),), False),
    ],
)
def test_spaces_are_counted_as_stitches_where_they_cannot_be_named(
    body: tuple[Node, ...], expected: bool
) -> None:
    """A run over no more than three stretches is cut; others would be a list to get lost in."""
    assert needs_note(spots(body, 0, Ground(LACE), STANDS_ON)) == expected


@pytest.mark.parametrize(
    ("nouns", "expected"),
    [
        ((), "st"),
        (("end", "end"), "end"),
        (("sp1", "sp2"), "sp"),
        (("st", "ch"), "st"),
        (("st", "end"), "place"),
        (("st", "sp1"), "place"),
    ],
)
def test_several_places_have_one_name(nouns: tuple[Noun, ...], expected: Noun) -> None:
    """Their own, or as much as they have in common."""
    assert one_noun(nouns) == expected
