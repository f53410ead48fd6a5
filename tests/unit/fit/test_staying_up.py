"""What holds it up."""

from __future__ import annotations

from collections.abc import Callable

from one_piece import alter

from frogless.fit.staying_up import staying_up
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan


def test_the_elastic_is_named_when_there_is_one(
    skirt: Callable[..., Plan], elastic: Callable[..., ElasticPlan]
) -> None:
    """With its ring and its share of the waist."""
    told = staying_up(skirt(waist=elastic()))
    assert "75.5 cm, 90 % of the waist" in told


def test_the_cord_is_named_when_there_is_one(
    skirt: Callable[..., Plan], cord: Callable[..., CordPlan]
) -> None:
    """With its length and eyelets."""
    assert "154 cm through 20 eyelets" in staying_up(skirt(waist=cord()))


def test_the_band_is_named_when_there_is_one(
    skirt: Callable[..., Plan], band: Callable[..., BandPlan]
) -> None:
    """With its girth, and inches when asked for."""
    assert "27 1/2 in, 83 % of the waist" in staying_up(skirt(waist=band()), "in")


def test_a_warning_is_given_when_nothing_holds_it(skirt: Callable[..., Plan]) -> None:
    """A waist no smaller than the body slips."""
    assert staying_up(skirt()).startswith("Nothing holds it up")


def test_a_warning_is_given_when_only_tightness_holds_it(skirt: Callable[..., Plan]) -> None:
    """Negative ease at the waist slackens in wear."""
    assert staying_up(skirt(waist_girth=880.0)).startswith("Only its own tightness")


def test_a_warning_is_given_when_no_waist_is_known(skirt: Callable[..., Plan]) -> None:
    """Without a waist landmark the warning stands alone."""
    plan = alter(skirt(), landmarks=())
    assert staying_up(plan).startswith("Nothing holds it up at the waist")
