"""Readings pool into a gauge, growth, stretch and mass, each with its uncertainty."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from frogless.errors import InputError
from frogless.swatch import (
    STUDENT,
    Reading,
    State,
    Swatch,
    advice,
    comfortable_stretch,
    gauge,
    growth,
    has_gauge,
    load_swatch,
    mass_per_stitch,
    pattern_gauges,
    student,
)

Make = Callable[..., Swatch]


def dc(state: State = "washed", **read: float) -> Reading:
    """A reading of double crochet; 18 stitches and 10 rows over 10 cm unless it says otherwise."""
    usual: dict[str, float] = {"stitches": 18, "width": 100.0, "rows": 10, "height": 100.0}
    return Reading("double_crochet", state, 6.0, **(usual | read))


def rows_only(state: State, rows: float, height: float) -> Reading:
    """A reading of rows alone."""
    return Reading("double_crochet", state, 6.0, rows=rows, height=height)


def test_gauge_is_the_size_of_one_stitch(make_swatch: Make) -> None:
    """18 stitches and 10 rows in 10 cm."""
    found = gauge(make_swatch(dc()), "dc")
    assert found.width.value == pytest.approx(100 / 18)
    assert found.height.value == pytest.approx(10.0)
    assert (found.stitch, found.state, found.estimated) == ("double_crochet", "washed", False)
    assert found.source == 'swatch "main", washed'


def test_readings_pool_as_sum_over_sum(make_swatch: Make) -> None:
    """18 over 10 cm and 36 over 21 cm are 54 over 31 cm, not the mean of two gauges."""
    found = gauge(make_swatch(dc(), dc(stitches=36, width=210.0)), "dc")
    assert found.width.value == pytest.approx(310 / 54)


def test_pooling_makes_a_gauge_better_known(make_swatch: Make) -> None:
    """Four equal readings halve the uncertainty of one."""
    one = gauge(make_swatch(dc()), "dc").width.uncertainty
    four = gauge(make_swatch(*[dc()] * 4), "dc").width.uncertainty
    assert four == pytest.approx(one / 2)


def test_scatter_between_readings_counts_when_it_is_larger(make_swatch: Make) -> None:
    """Widths of 5 and 6.25 mm: s / √2 = 0.625 mm, far more than counting and tape.

    Of so few readings at least t = 4.30 is taken, where 1.96 would hold of many.
    """
    found = gauge(make_swatch(dc(stitches=20), dc(stitches=16)), "dc")
    assert found.width.uncertainty == pytest.approx(0.625 * 4.30 / 1.96)


def test_few_readings_that_scatter_are_known_by_students_t(make_swatch: Make) -> None:
    """27, 27.5 and 26.5 stitches over 15 cm, reckoned by hand after JCGM 100:2008, G.4.1 and G.3.

    Sizes 5.5556, 5.4545, 5.6604 mm: s / √3 = 0.05942. Counting and tape: 0.03235 of the mean
    5.5556. Freedom 0.05942⁴ × 2 / (0.05942² − 0.03235²)² = 4.04, and t for it 2.78.
    """
    readings = [dc(stitches=n, width=150.0) for n in (27, 27.5, 26.5)]
    found = gauge(make_swatch(*readings), "dc").width
    low, high = found.interval()
    assert (high - low) / 2 == pytest.approx(0.05942 * 2.77, rel=0.01)


def test_readings_that_agree_are_as_sure_as_their_counting(make_swatch: Make) -> None:
    """No scatter beyond it, so nothing is widened."""
    one = gauge(make_swatch(dc()), "dc").width.uncertainty
    assert gauge(make_swatch(dc(), dc()), "dc").width.uncertainty == pytest.approx(
        one / math.sqrt(2)
    )


@pytest.mark.parametrize(("freedom", "t"), [(f, t) for f, t in STUDENT if f < math.inf])
def test_students_t_holds_95_percent(freedom: float, t: float) -> None:
    """Its density (Student 1908), added up from -t to t, leaves one in twenty outside."""
    n, steps = int(freedom), 20_000
    scale = math.exp(math.lgamma((n + 1) / 2) - math.lgamma(n / 2)) / math.sqrt(n * math.pi)
    width = 2 * t / steps
    middles = (-t + (i + 0.5) * width for i in range(steps))
    held = math.fsum(scale * (1 + x * x / n) ** (-(n + 1) / 2) for x in middles) * width
    assert held == pytest.approx(0.95, abs=0.0008)
    assert student(freedom) == pytest.approx(t)


def test_half_stitches_read_are_better_than_whole_ones(make_swatch: Make) -> None:
    """17.5 was read to a half, 17 to a whole."""
    half = gauge(make_swatch(dc(stitches=17.5)), "dc").width.relative
    assert half < gauge(make_swatch(dc(stitches=18)), "dc").width.relative


@pytest.mark.parametrize(
    ("states", "chosen"),
    [
        (("as worked", "washed", "hung"), "washed"),
        (("hung", "as worked"), "as worked"),
        (("hung",), "hung"),
    ],
)
def test_washed_sizes_the_garment_before_as_worked(
    make_swatch: Make, states: tuple[State, ...], chosen: State
) -> None:
    """And the state is told."""
    assert gauge(make_swatch(*(dc(state) for state in states)), "dc").state == chosen


def test_gauge_of_a_state_can_be_asked_for(make_swatch: Make) -> None:
    """What the work should measure on the hook."""
    swatch = make_swatch(dc(), dc("as worked", rows=9))
    assert gauge(swatch, "dc", state="as worked").height.value == pytest.approx(100 / 9)


def test_stitches_and_rows_may_come_from_two_readings(make_swatch: Make) -> None:
    """Of the same state."""
    wide = Reading("double_crochet", "washed", 6.0, stitches=18, width=100.0)
    swatch = make_swatch(wide, rows_only("washed", 10, 100.0))
    assert has_gauge(swatch, "dc")
    assert not has_gauge(make_swatch(wide, rows_only("hung", 10, 108.0)), "dc")


def test_missing_gauge_is_refused_with_what_there_is_and_what_to_do(make_swatch: Make) -> None:
    """Gauge in another stitch is worth nothing, so none is made up."""
    swatch = make_swatch(dc())
    assert not has_gauge(swatch, "sc")
    with pytest.raises(InputError) as refused:
        gauge(swatch, "sc")
    assert str(refused.value) == (
        "swatch.toml: the swatch has no gauge of single crochet; it has double crochet; give "
        "it a reading of single crochet, stitches over a width and rows over a height"
    )
    with pytest.raises(InputError, match="no gauge of double crochet hung; it has double crochet"):
        gauge(swatch, "dc", state="hung")
    with pytest.raises(InputError, match="it has none"):
        gauge(make_swatch(), "dc")


def test_growth_is_hung_over_washed_less_one(make_swatch: Make) -> None:
    """108 against 100 mm: 8 %, uncertain by the tape alone, for the rows are the same."""
    found = growth(make_swatch(dc(), rows_only("hung", 10, 108.0)), "dc")
    assert found is not None
    assert found.value == pytest.approx(0.08)
    assert found.uncertainty == pytest.approx(0.0147, abs=1e-4)


def test_growth_is_less_well_known_when_other_rows_were_counted(make_swatch: Make) -> None:
    """Ten rows hung, twenty washed: the counts no longer cancel."""
    swatch = make_swatch(dc(rows=20, height=200.0), rows_only("hung", 10, 108.0))
    found = growth(swatch, "dc")
    assert found is not None
    assert found.value == pytest.approx(0.08)
    assert found.uncertainty > 0.03


def test_growth_is_against_as_worked_when_never_washed(make_swatch: Make) -> None:
    """Better than nothing; the advice asks for washing."""
    found = growth(make_swatch(dc("as worked"), rows_only("hung", 10, 105.0)), "dc")
    assert found is not None
    assert found.value == pytest.approx(0.05)


def test_growth_is_none_when_not_hung(make_swatch: Make) -> None:
    """Or when there is nothing to compare with."""
    assert growth(make_swatch(dc()), "dc") is None
    assert growth(make_swatch(rows_only("hung", 10, 108.0)), "dc") is None


def test_comfortable_stretch_is_a_ratio(make_swatch: Make) -> None:
    """100 mm that go to 120 mm stretch by 0.2; unmeasured is None, not nothing."""
    assert comfortable_stretch(make_swatch(dc(stretched_width=120.0)), "dc") == pytest.approx(0.2)
    assert comfortable_stretch(make_swatch(dc()), "dc") is None


def test_mass_per_stitch_is_of_the_whole_piece(make_swatch: Make) -> None:
    """9 g in 18 × 10 stitches are 0.05 g each; None when nothing was weighed."""
    found = mass_per_stitch(make_swatch(dc(mass=9.0)), "dc")
    assert found is not None
    assert found.value == pytest.approx(0.05)
    assert 0.03 < found.relative < 0.06
    assert mass_per_stitch(make_swatch(dc()), "dc") is None


def test_scale_with_tenths_is_better_than_one_without(make_swatch: Make) -> None:
    """9.1 g was read to 0.1 g, 9 g to 1 g."""
    fine = mass_per_stitch(make_swatch(dc(mass=9.1)), "dc")
    coarse = mass_per_stitch(make_swatch(dc(mass=9.0)), "dc")
    assert fine is not None
    assert coarse is not None
    assert fine.relative < coarse.relative


def apt(state: State = "washed", **given: float) -> Reading:
    """A reading whose stitches are 1.8 times as high as wide, as double crochet is."""
    one = dc(state, **given)
    assert one.width
    assert one.stitches
    assert one.rows
    return replace(one, height=1.8 * one.rows * one.width / one.stitches)


def test_good_swatch_needs_no_advice(make_swatch: Make) -> None:
    """Washed, wide, and what the yarn table expects of category 4 on 6 mm."""
    assert advice(make_swatch(apt(stitches=13))) == ()


def test_narrow_window_is_warned_of_with_its_interval(make_swatch: Make) -> None:
    """9 stitches over 7 cm."""
    told = advice(make_swatch(apt(stitches=9, width=70.0)))
    assert told == (
        "9 stitches of double crochet over 7 cm are known to ± 7 % (95 %); "
        "count over 10 cm or more",
    )


def test_unwashed_swatch_is_asked_to_be_washed(make_swatch: Make) -> None:
    """Rows change length most."""
    (told,) = advice(make_swatch(apt("as worked", stitches=13)))
    assert told.startswith("the swatch was not read after washing")


def test_gauge_far_from_the_yarn_table_is_warned_of(make_swatch: Make) -> None:
    """18 dc in 10 cm of a category 4 yarn; the table counts in sc, which is said."""
    (told,) = advice(make_swatch(apt()))
    assert "18.0 stitches of double crochet in 10 cm lie far outside the 11 to 14" in told
    assert "category 4 in single crochet, taken to be as wide" in told


@pytest.mark.parametrize(
    ("stitches", "warned"), [(9, True), (9.25, False), (14, False), (16.75, False), (17, True)]
)
def test_gauge_is_warned_of_when_it_is_more_than_a_fifth_outside_the_table(
    make_swatch: Make, stitches: float, *, warned: bool
) -> None:
    """Category 4 has 11 to 14: from 9.2 to 16.8 nothing is said, for the table is a guideline."""
    assert bool(advice(make_swatch(apt(stitches=stitches)))) is warned


def test_tall_stitches_are_not_held_against_the_table(make_swatch: Make) -> None:
    """Nothing says that a treble is as wide as a single crochet."""
    tall = Reading("treble", "washed", 6.0, 30, 100.0, 12, 100.0)
    assert advice(make_swatch(tall)) == ()


def test_open_category_has_no_lower_end(make_swatch: Make) -> None:
    """Category 7 is 5 stitches or fewer, on 16 mm or more."""
    told = advice(make_swatch(apt(stitches=8), category=7))
    assert "lie far outside the 5 or fewer of" in told[0]
    assert "outside the 16 or more mm usual" in told[1]
    assert advice(make_swatch(apt(stitches=3), category=7, hook=20.0)) == ()


@pytest.mark.parametrize("hook", [4.0, 8.0])
def test_hook_is_only_remarked_on_when_it_is_far_outside_the_table(
    make_swatch: Make, hook: float
) -> None:
    """Designers go down for a firm fabric and up for drape."""
    (told,) = advice(make_swatch(apt(stitches=13), hook=hook))
    assert told.startswith(f"a hook of {hook:g} mm is far outside the 5.5 to 6.5 mm usual for")
    assert "nothing is wrong" in told


@pytest.mark.parametrize("hook", [5.0, 7.5])
def test_hook_is_not_remarked_on_when_it_is_a_size_or_two_outside_the_table(
    make_swatch: Make, hook: float
) -> None:
    """4.6 mm to 7.8 mm lie within a fifth of the 5.5 to 6.5 mm of category 4."""
    assert advice(make_swatch(apt(stitches=13), hook=hook)) == ()


def test_gauge_is_of_the_garments_hook_when_a_stitch_was_read_on_two(make_swatch: Make) -> None:
    """An edging in the same stitch on a finer hook stands in the same file and is no part of it."""
    fine = replace(dc(stitches=24), hook=2.25)
    for readings in ((dc(), fine), (fine, dc())):
        found = gauge(make_swatch(*readings), "dc")
        assert found.width.value == pytest.approx(100 / 18)
        assert found.hook == 6.0


def test_gauge_is_of_the_only_hook_there_is(make_swatch: Make) -> None:
    """A stitch that was read on the edging's hook alone."""
    found = gauge(make_swatch(replace(dc(stitches=24), hook=2.25)), "dc")
    assert (found.width.value, found.hook) == (pytest.approx(100 / 24), 2.25)


def test_unknown_category_is_compared_with_nothing(make_swatch: Make) -> None:
    """A ball without its label."""
    assert advice(make_swatch(apt(), category=None)) == ()


def test_double_crochet_in_uk_terms_is_asked_about(make_swatch: Make) -> None:
    """27 stitches and 30 rows in 15 cm are those of single crochet."""
    (told,) = advice(
        make_swatch(dc(stitches=27, width=150.0, rows=30, height=150.0), category=None)
    )
    assert "0.90 times as high" in told
    assert (
        "those of single crochet (UK double crochet): is the stitch of the swatch written" in told
    )
    assert "No length can be trusted" in told


@pytest.mark.parametrize(
    ("rows", "says"),
    [(13.0, "those of half double crochet"), (9.5, ""), (4.0, "count stitches and rows again")],
)
def test_proportions_that_a_stitch_does_not_have_are_asked_about(
    make_swatch: Make, rows: float, says: str
) -> None:
    """18 double crochets in 10 cm have 9 to 11 rows."""
    told = advice(make_swatch(dc(stitches=18, rows=rows), category=None))
    assert bool(told) is bool(says)
    assert says in "".join(told)


def test_mass_far_from_what_the_label_gives_is_asked_about(make_swatch: Make) -> None:
    """Both numbers are named: a figure in kg, or of the whole ball."""
    usual = apt(stitches=18, mass=5.0)
    assert advice(make_swatch(usual, category=None)) == ()
    (told,) = advice(make_swatch(replace(usual, mass=50.0), category=None))
    assert "weighs 278 mg by the swatch's mass, and about 39 mg" in told


def test_stretch_beyond_comfort_is_asked_about(make_swatch: Make) -> None:
    """Four times its width is another piece, or a slip."""
    assert advice(make_swatch(apt(stitches=18, stretched_width=130.0), category=None)) == ()
    (told,) = advice(make_swatch(apt(stitches=18, stretched_width=400.0), category=None))
    assert "from 10 cm to 40 cm, 4.0 times" in told


def test_label_far_from_its_category_is_asked_about(make_swatch: Make) -> None:
    """240 m in 100 g are no category 7, and no lace."""
    swatch = make_swatch(apt(stitches=3), category=7, hook=20.0)
    odd = replace(swatch, yarn=replace(swatch.yarn, ball_length=120_000.0))
    (told,) = advice(odd)
    assert "240 m in 100 g, where 40 or fewer m are usual for category 7" in told


PATTERN_READINGS = (
    'pattern = "fans"\nstate = "washed"\nrepeats = 5\nwidth = "22 cm"\nrows = 12\nheight = "15 cm"',
    'pattern = "fans"\nstate = "washed"\nrepeats = 4\nwidth = "17.6 cm"\nrows = 12\nheight = "15 cm"',
    'pattern = "fans"\nparameters = { fan = 9 }\nhook = "4 mm"\nstate = "washed"\nrepeats = 5\n'
    'width = "30 cm"\nrows = 10\nheight = "15 cm"',
)


def in_patterns(tmp_path: Path) -> Swatch:
    """A swatch that was read in fans too."""
    file = tmp_path / "swatch.toml"
    readings = "\n".join(f"[[reading]]\n{one}" for one in PATTERN_READINGS)
    file.write_text(
        'format = "frogless-swatch/1"\nname = "fans"\nstitch = "dc"\nhook = "3.5 mm"\n' + readings,
        encoding="utf-8",
    )
    return load_swatch(file)


def test_gauge_in_a_pattern_is_by_the_repeat(tmp_path: Path) -> None:
    """Nine repeats over 39.6 cm; one with other numbers is another gauge, on its own hook."""
    found = in_patterns(tmp_path)
    (usual,) = pattern_gauges((found,), "fans", {"fan": 7}, {"fan": 7})
    assert (usual.width.value, usual.height.value, usual.hook) == pytest.approx((44.0, 12.5, 3.5))
    (wide,) = pattern_gauges((found,), "fans", {"fan": 9}, {"fan": 7})
    assert (wide.width.value, wide.hook) == pytest.approx((60.0, 4.0))
    assert pattern_gauges((found,), "fans", {"fan": 5}, {"fan": 7}) == ()


def test_reading_in_a_pattern_gives_no_gauge_in_a_stitch(tmp_path: Path) -> None:
    """Neither of the main stitch nor in weight; advice speaks of repeats."""
    found = in_patterns(tmp_path)
    assert not has_gauge(found, "dc")
    assert mass_per_stitch(found, "fans") is None
    assert not any("stitches of fans" in told for told in advice(found))


def test_repeat_is_as_sure_as_the_tape_when_taken_from_place_to_place(tmp_path: Path) -> None:
    """Four repeats of fans over 26 cm: one mm of 260, not half a repeat of four (derived)."""
    text = (
        'format = "frogless-swatch/1"\nname = "fans"\nstitch = "dc"\nhook = "4 mm"\n'
        '[[reading]]\npattern = "fans"\nstate = "washed"\nrepeats = 4\nwidth = "26 cm"\n'
        'rows = 12\nheight = "14 cm"\n'
    )
    path = tmp_path / "fans.toml"
    path.write_text(text, encoding="utf-8")
    (found,) = pattern_gauges((load_swatch(path),), "fans", {}, {})
    assert found.width.value == pytest.approx(65)
    assert found.width.relative == pytest.approx(1 / 260)
