"""Girths as worn, when the hung swatch was read in width too."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch

from frogless.plan.hung import narrowing
from frogless.plan.make import plan
from frogless.plan.model import Remark

SKIRT = (
    section("to the hip", shape="shaped", to="hip", ease="4 cm", ease_allowed=("2 cm", "7 cm")),
    section("to the hem", to="hem"),
)


def hung(width: str = "") -> str:
    """A swatch of 27 stitches on 15 cm, hung: 8 % longer, and as wide as is said."""
    reading = 'state = "hung"\nrows = 15\nheight = "16.2 cm"\n'
    wide = f'stitches = 27\nwidth = "{width}"\n' if width else ""
    return swatch(27, 15, width="15 cm", height="15 cm") + f"\n[[reading]]\n{reading}{wide}"


def told(made: Made, width: str) -> list[Remark]:
    """What is said of the hung width."""
    planned = plan(made(*SKIRT, sample=hung(width)))
    return [r for r in planned.remarks if r.name == "hung_width"]


def test_hung_width_is_compared_with_the_washed_one(made: Made) -> None:
    """13.8 of 15 cm; nothing when only its rows were read."""
    assert narrowing(made(*SKIRT, sample=hung("13.8 cm"))) == pytest.approx(-0.08)
    assert narrowing(made(*SKIRT, sample=hung())) is None
    assert narrowing(made(*SKIRT)) is None


def test_girths_are_planned_with_the_washed_width(made: Made) -> None:
    """Hanging changes no count."""
    counts = [
        [m.count for m in plan(made(*SKIRT, sample=hung(w))).landmarks] for w in ("", "14 cm")
    ]
    assert counts[0] == counts[1]


def test_ease_that_hanging_takes_below_what_is_allowed_is_serious(made: Made) -> None:
    """8 % of 116 cm are more than the 4 cm of ease."""
    (remark,) = told(made, "13.8 cm")
    assert remark.serious
    assert "8 % narrower than washed" in remark.sentence
    assert "at the hip, " in remark.sentence
    assert remark.sentence.endswith("at the hip that is less ease than allowed, so allow more")


def test_ease_that_stays_allowed_is_a_hint(made: Made) -> None:
    """1 % narrower, or wider."""
    (narrower,) = told(made, "14.85 cm")
    (wider,) = told(made, "15.3 cm")
    assert not narrower.serious
    assert not wider.serious
    assert "1 % narrower" in narrower.sentence
    assert "2 % wider" in wider.sentence


def test_width_that_stays_as_it_is_is_not_told(made: Made) -> None:
    """Nothing to say."""
    assert told(made, "15 cm") == []
