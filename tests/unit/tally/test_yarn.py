"""Yarn needed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest
from sample_plans import edging

from frogless.fabric.model import Fabric
from frogless.plan.model import CordPlan, ElasticPlan, Plan, StrandPlan
from frogless.rows.nodes import Row
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Reading, Swatch, Yarn
from frogless.tally.model import YarnNeed
from frogless.tally.yarn import balls_to_buy, margin_of, yarn
from frogless.units import Measured

Need = Callable[..., YarnNeed]


@pytest.fixture
def need(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
) -> Need:
    """The yarn of 10 rounds of 1,000 doubles, or of the plan that is given."""

    def make(given: Plan | None = None, **swatch_is: object) -> YarnNeed:
        made = given or plan(rows(count=1000))
        (found,) = yarn(fabric(made), made, swatch(**swatch_is), stitches)
        return found

    return make


def part(found: YarnNeed, name: str) -> float:
    """g of one part."""
    return dict(found.by_part)[name]


def test_grams_are_the_weighed_stitch_times_the_stitches_when_the_swatch_was_weighed(
    need: Need,
) -> None:
    """10,000 doubles at 9 g for 405."""
    found = need()
    assert found.calibrated
    assert part(found, "piece 1: body") == pytest.approx(10_000 * 9 / 405)


def test_parts_add_up_to_the_whole_when_everything_is_counted(
    need: Need,
    plan: Callable[..., Plan],
    rows: Callable[..., tuple[Row, ...]],
    elastic: ElasticPlan,
    strand: Callable[..., StrandPlan],
) -> None:
    """Nothing is in the whole that is in no part."""
    found = need(plan(rows(), rows(), waist=elastic, strands=(strand(),)))
    assert sum(grams for _, grams in found.by_part) == pytest.approx(found.mass.value)


def test_length_is_grams_over_tex_when_the_label_gives_both(need: Need) -> None:
    """50 g are 120 m."""
    found = need()
    assert found.length.value == pytest.approx(found.mass.value / 50 * 120_000)
    assert found.length_low < found.length.value < found.length_high


def test_hand_alone_makes_the_interval_when_the_scale_is_exact(need: Need) -> None:
    """The 5 % of the hand is the least there is; weighing to 0.1 g or to 1 g adds to it."""
    assert 0.05 < need(mass=9.1).mass.relative < 0.055 < need(mass=9.0).mass.relative


@pytest.mark.parametrize(
    ("label", "least"),
    [
        ({}, 0.10),
        ({"ball_mass": None}, 0.10),
        ({"ball_mass": None, "ball_length": None, "category": None}, 0.30),
    ],
)
def test_the_interval_widens_when_less_is_known(
    need: Need, label: dict[str, None], least: float
) -> None:
    """Label, category, and nothing but the size of a stitch."""
    known = Yarn("main yarn", 3, "cotton", 50.0, 120_000.0)
    found = need(mass=None, yarn=replace(known, **label))
    assert not found.calibrated
    assert found.mass.relative > least
    assert found.mass.relative > need().mass.relative
    assert found.length_low >= 0


def test_no_balls_are_counted_when_the_label_says_nothing_of_them(need: Need, label: Yarn) -> None:
    """Metres and grams only."""
    found = need(yarn=replace(label, ball_mass=None, ball_length=None))
    assert found.balls is None
    assert all(step.what != "balls" for step in found.because.steps)


def test_metres_are_unsure_although_weighed_when_the_label_lacks_them(
    need: Need, label: Yarn
) -> None:
    """Grams are weighed; how long they are is then a matter of the category."""
    found = need(yarn=replace(label, ball_length=None))
    assert found.calibrated
    assert found.length.relative > found.mass.relative
    assert any(step.what == "tex" and step.estimated for step in found.because.steps)


def test_the_models_agree_with_the_weighed_swatch_when_it_was_solid(need: Need) -> None:
    """A swatch of usual cover, 16 g on 15 by 15 cm, lies within the intervals of both models."""
    weighed = need(mass=16.0).mass.value
    low, high = need(mass=None).mass.interval()
    assert low < weighed < high
    nothing = Yarn("", None, "cotton", None, None)
    low, high = need(mass=None, yarn=nothing).mass.interval()
    assert low < weighed < high


def test_tails_are_two_for_each_ball_change_when_several_balls_are_needed(need: Need) -> None:
    """222 g are 5 balls: 2 ends and 8 at the changes, 15 cm each, are 1.5 m."""
    assert part(need(), "tails") == pytest.approx(1500 / 120_000 * 50)


def test_the_cord_is_counted_when_there_is_one(
    need: Need, plan: Callable[..., Plan], rows: Callable[..., tuple[Row, ...]], cord: CordPlan
) -> None:
    """154 cm take 7.7 m."""
    found = need(plan(rows(), waist=cord))
    assert part(found, "cord") == pytest.approx(1540 * 10.2 / 120_000 * 50)


def test_the_cover_of_an_elastic_takes_more_when_the_elastic_is_wide(
    need: Need,
    plan: Callable[..., Plan],
    rows: Callable[..., tuple[Row, ...]],
    elastic: ElasticPlan,
) -> None:
    """Three legs of each of 304 stitches; none when a stitch is as high as the elastic."""
    wide = need(plan(rows(), waist=elastic))
    thin = need(plan(rows(), waist=replace(elastic, width=2.0)))
    legs = 304 * 3 * (20 - 10 / 1.9)
    assert part(wide, "round the elastic") == pytest.approx(legs / 120_000 * 50, rel=0.1)
    assert "round the elastic" not in dict(thin.by_part)


def test_the_strand_is_counted_when_there_is_one(
    need: Need,
    plan: Callable[..., Plan],
    rows: Callable[..., tuple[Row, ...]],
    strand: Callable[..., StrandPlan],
) -> None:
    """As the plan cuts it."""
    found = need(plan(rows(), strands=(strand(),)))
    assert part(found, "strand") == pytest.approx(1400 / 120_000 * 50)


def test_the_strands_of_a_fringe_are_counted_when_they_are_cut(
    need: Need, plan: Callable[..., Plan], rows: Callable[..., tuple[Row, ...]]
) -> None:
    """140 strands of 18.5 cm are 25.9 m, a fifth of a ball of 120 m."""
    made = plan(rows())
    fringed = replace(edging(70, 3, 1420.0, 1), fringe_yarn=25_900.0)
    found = need(replace(made, pieces=(replace(made.main, edging=fringed),)))
    assert part(found, "fringe") == pytest.approx(25_900 / 120_000 * 50)


def test_another_gauge_adds_its_own_doubt_when_its_width_is_unsure(
    need: Need, plan: Callable[..., Plan], rows: Callable[..., tuple[Row, ...]]
) -> None:
    """A section that was not weighed depends on its width."""

    def with_edge(uncertainty: float) -> YarnNeed:
        main = plan().gauges["body"]
        edge = Gauge("single_crochet", Measured(4.0, uncertainty), Measured(4.0), "washed")
        made = plan(rows(), rows(section="edge", stitch="single_crochet", count=400),
                    gauges={"body": main, "edge": edge})  # fmt: skip
        return need(made)

    assert with_edge(0.8).mass.uncertainty > 1.2 * with_edge(0.04).mass.uncertainty


@pytest.mark.parametrize(
    ("mass", "ball_mass", "ball_length", "expected"),
    [
        (288.0, 50.0, 120_000.0, 7),
        (45.0, 50.0, None, 1),
        (100 / 1.1, 50.0, None, 2),
        (46.0, 50.0, None, 2),
        (100.0, None, 120_000.0, 3),
        (100.0, None, None, None),
    ],
)
def test_whole_balls_hold_the_need_and_its_margin_when_bought(
    mass: float, ball_mass: float | None, ball_length: float | None, expected: int | None
) -> None:
    """Rounded up; exactly full balls are enough; by length where the label gives no grams."""
    ball = Yarn("", None, "", ball_mass, ball_length)
    assert balls_to_buy(ball, mass, mass / 50 * 120_000, 10.0) == expected


def test_the_because_ends_with_the_balls_when_they_are_known(need: Need) -> None:
    """The last step is the number itself."""
    found = need()
    assert found.because.steps[-1].what == "balls"
    assert found.because.steps[-1].value == found.balls


@pytest.mark.parametrize(
    ("uncertainty", "expected"), [(2.0, 10), (5.1, 10), (10.0, 20), (30.0, 59)]
)
def test_margin_reaches_the_end_of_the_interval(uncertainty: float, expected: float) -> None:
    """A tenth at least; what the need itself may come to, in whole percent."""
    mass, length = Measured(100.0, 3.0), Measured(100.0, uncertainty)
    assert margin_of(mass, length) == expected


def test_balls_hold_what_the_yarn_may_come_to(need: Need) -> None:
    """And the because says what decided."""
    found = need()
    assert found.balls is not None
    assert found.balls * 50 >= found.mass.interval()[1]
    assert found.balls * 120_000 >= found.length_high
    assert "upper end" in found.because.steps[-1].note


def test_the_swatch_names_the_yarn_when_the_label_does_not(need: Need, label: Yarn) -> None:
    """A need has a name."""
    assert need(yarn=replace(label, name="")).name == "swatch"


def singles(*, mass: float | None, yarn_is: Yarn) -> Swatch:
    """A second swatch, 20 by 20 single crochets on 10 by 10 cm."""
    reading = Reading("single_crochet", "washed", 4.0, 20, 100.0, 20, 100.0, mass=mass)
    return Swatch("band", "single_crochet", 4.0, yarn_is, readings=(reading,))


@pytest.mark.parametrize(
    ("mass", "same", "by_own"), [(6.0, True, True), (6.0, False, False), (None, True, False)]
)
def test_section_in_a_stitch_that_was_weighed_goes_by_its_own_grams(
    stitches: Mapping[str, Stitch],
    swatch: Callable[..., Swatch],
    rows: Callable[..., tuple[Row, ...]],
    plan: Callable[..., Plan],
    fabric: Callable[[Plan], Fabric],
    label: Yarn,
    mass: float | None,
    same: bool,
    by_own: bool,
) -> None:
    """Also of another swatch, if that was made of the same yarn."""
    other = singles(mass=mass, yarn_is=label if same else replace(label, name="other"))
    single = Gauge("single_crochet", Measured(5.0), Measured(5.0), "washed")
    made = plan(rows(count=1000, stitch="single_crochet"), gauges={"body": single})
    (found,) = yarn(fabric(made), made, swatch(), stitches, (other,))
    assert (part(found, "piece 1: body") == pytest.approx(10_000 * 6 / 400)) is by_own
    assert found.mass.uncertainty > 0
