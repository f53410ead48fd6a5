"""What a hook can be inserted into."""

from __future__ import annotations

import re

import pytest

from frogless.errors import InputError
from frogless.stitches.load import dictionary, words
from frogless.stitches.model import SYMBOL_PARTS, Ratio
from frogless.stitches.places import insert_place, insert_places, worked_into


def test_every_place_is_used_when_stitches_are_worked() -> None:
    """No place is kept that no step goes into."""
    used = {step.where for stitch in dictionary().values() for step in stitch.steps}
    assert used - {""} == set(insert_places())


@pytest.mark.parametrize("key", insert_places())
def test_a_place_says_where_it_is_when_read(key: str) -> None:
    """In words that follow on "insert the hook"; with a source, and a mark that can be drawn."""
    place = insert_place(key)
    assert re.match(r"(under|into|around|through|from|behind|one|two) ", place.how)
    assert set(re.findall(r"\{([a-z_]+)\}", place.how)) <= dictionary().keys() | words("us").keys()
    assert not place.how.endswith(".")
    assert place.source
    assert place.basis in {"common-practice", "memory"}
    name, _, number = place.mark.partition(" ")
    assert not place.mark or SYMBOL_PARTS[name] == bool(number)


def test_every_stitch_of_a_family_keeps_its_places_when_the_hook_goes_elsewhere() -> None:
    """Front and back, loop and post: as many motions, as much yarn, the same places taken."""
    families = [stitch for stitch in dictionary().values() if stitch.into]
    assert len(families) > 30
    for stitch in families:
        base = dictionary()[stitch.like]
        assert [s.motion for s in stitch.steps] == [s.motion for s in base.steps]
        assert (stitch.catches, stitch.stands_on, stitch.leaves) == (base.catches, 1, 1)
        assert {s.where for s in stitch.steps if s.motion == "insert"} == {stitch.into}
        assert {s.where for s in stitch.steps if s.motion != "insert"} == {""}
        assert stitch.reaches == insert_place(stitch.into).reaches
        assert stitch.symbol[:-1] == base.symbol


def test_a_height_is_scaled_at_both_ends_when_a_place_takes_some_of_it() -> None:
    """Front post treble crochet: 2.37, 2.8, 3.12 times 0.7, 0.85, 1."""
    post = insert_place("front_post")
    assert post.height == Ratio(0.7, 0.85, 1.0)
    assert post.scaled(Ratio(2.37, 2.8, 3.12)) == Ratio(1.66, 2.38, 3.12)


def test_front_and_back_are_opposite_when_marked() -> None:
    """A reader of a chart tells them by the mark."""
    treble = dictionary()["treble"]
    for one, other in (("front_post", "back_post"), ("front_loop", "back_loop")):
        marks = {worked_into(treble, insert_place(key))["symbol"] for key in (one, other)}
        assert len(marks) == 2


def test_a_near_name_is_offered_when_a_place_is_unknown() -> None:
    """A slip of the pen is answered with what was meant."""
    with pytest.raises(InputError, match=r'"front_pots" is no place.*did you mean "front_post"'):
        insert_place("front_pots")
