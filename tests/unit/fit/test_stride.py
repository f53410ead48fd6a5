"""Whether the hem leaves a stride."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from examples import Example, changed_draft

from frogless.body.measurements import Body
from frogless.fit.stride import has_hem, stride
from frogless.plan.model import Plan
from frogless.publish.drafted import Drafted

PlanMaker = Callable[..., Plan]
BodyMaker = Callable[..., Body]


@pytest.mark.parametrize(
    ("rounds", "hem", "told"),
    [(40, 190, False), (40, 160, True), (60, 190, True), (60, 208, False)],
)
def test_a_hem_is_warned_of_when_it_binds(
    skirt: PlanMaker, body: BodyMaker, rounds: int, hem: int, *, told: bool
) -> None:
    """At the knee below the hip's girth, elsewhere below four fifths of it: common practice."""
    plan = skirt(counts=(152, *(208,) * rounds, hem))
    assert bool(stride(plan, body(hip_girth=1120.0))) is told


def test_a_warning_says_what_it_should_be_when_the_hem_is_at_the_knee(
    skirt: PlanMaker, body: BodyMaker
) -> None:
    """208 stitches of 5.56 mm are 115.5 cm, 120 are 66.5."""
    told = stride(skirt(counts=(152, *(208,) * 60, 120)), body(hip_girth=1120.0))
    assert "hem of 66.5 cm" in told
    assert "no narrower than the hip, 115.5 cm" in told
    assert "does not pass the hips (112 cm)" in told


def test_hips_that_pass_the_hem_are_not_spoken_of(skirt: PlanMaker, body: BodyMaker) -> None:
    """Narrower than the skirt, wider than the body."""
    told = stride(skirt(counts=(152, *(208,) * 60, 204)), body(hip_girth=1120.0))
    assert "leaves no full stride" in told
    assert "hips" not in told


def narrow() -> Drafted:
    """The ring dance skirt with a hem of 60 cm, for dancer 3."""
    return changed_draft(Example(), ('hem_girth = "1.35 * hip_girth"', 'hem_girth = "60 cm"'))


def test_a_pattern_is_not_proven_without_a_word_when_its_hem_leaves_no_stride() -> None:
    """The proof warns, in the words of the fit."""
    drafted = narrow()
    (found,) = (f for f in drafted.findings if f.name == "stride")
    assert (found.verdict, found.looked_at) == ("warn", 1)
    assert found.faults == (drafted.fit.stride,)
    assert has_hem(drafted.plan)
