"""Every group of readings is pooled, sentences know their readings, and readings may disagree."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from frogless.swatch import (
    Reading,
    State,
    Swatch,
    advice,
    advice_by_reading,
    disagreements,
    gauge,
    pooled,
)

Make = Callable[..., Swatch]


def dc(state: State = "washed", hook: float = 6.0, **read: float) -> Reading:
    """A reading of double crochet; 18 stitches and 10 rows over 10 cm unless it says otherwise."""
    usual: dict[str, float] = {"stitches": 18, "width": 100.0, "rows": 10, "height": 100.0}
    return Reading("double_crochet", state, hook, **(usual | read))


def test_pooled_agrees_with_gauge(make_swatch: Make) -> None:
    """The group that sizes a garment has the width and height of its gauge."""
    swatch = make_swatch(dc(), dc(stitches=37, width=200.0), dc("as worked", stitches=19))
    first, second = pooled(swatch)
    assert (first.width, first.height) == (
        gauge(swatch, "dc").width,
        gauge(swatch, "dc").height,
    )
    assert (first.readings, second.readings) == ((0, 1), (2,))


def test_pooled_keeps_hooks_and_halves_apart(make_swatch: Make) -> None:
    """Another hook is another group; what was not read is None."""
    rows = Reading("double_crochet", "washed", 5.0, rows=9, height=90.0)
    found = pooled(make_swatch(dc(), rows))
    assert [(one.hook, one.width is None) for one in found] == [(6.0, False), (5.0, True)]


def test_readings_within_counting_do_not_disagree(make_swatch: Make) -> None:
    """18 and 18 1/2 over 10 cm are the same to who counts whole stitches."""
    assert disagreements(make_swatch(dc(), dc(stitches=18.5))) == ()


def test_readings_further_apart_disagree(make_swatch: Make) -> None:
    """18 and 21 over 10 cm: 16.7 % by hand, 100/18 over 100/21; counting explains 3."""
    (told,) = disagreements(make_swatch(dc(), dc("hung"), dc(stitches=21)))
    assert told.readings == (0, 2)
    assert "differ by 17 % in their stitches" in told.sentence


@pytest.mark.parametrize("state", ["washed", "hung"])
def test_states_are_not_held_against_each_other(make_swatch: Make, state: State) -> None:
    """What was washed or hung may be of another size; only the same state disagrees."""
    found = disagreements(make_swatch(dc("as worked"), dc(state, stitches=22)))
    assert found == ()


def test_advice_names_the_reading(make_swatch: Make) -> None:
    """A short window is the second reading's fault, and the sentence says so."""
    swatch = make_swatch(dc(), dc("as worked", stitches=11, width=60.0))
    told = advice_by_reading(swatch)
    assert [one.readings for one in told if "over 6 cm" in one.sentence] == [(1,)]
    assert tuple(one.sentence for one in told) == advice(swatch)


def test_advice_about_the_label_is_of_no_reading(make_swatch: Make) -> None:
    """A ball of 10 m in 100 g is the label's matter."""
    swatch = make_swatch(dc())
    yarn = replace(swatch.yarn, category=3, ball_mass=100.0, ball_length=10_000.0)
    told = advice_by_reading(replace(swatch, yarn=yarn))
    assert [one.readings for one in told if "ball makes" in one.sentence] == [()]
