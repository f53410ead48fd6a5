"""What a swatch tells: gauge with its interval, the label beside it, and what to measure next."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest

from frogless.studio.examples import examples
from frogless.studio.swatches.face import face
from frogless.studio.swatches.gauges import headline, told, two_figures
from frogless.studio.swatches.in_terms import in_terms
from frogless.studio.swatches.looking import looked_at
from frogless.studio.swatches.surer import Next, measure_next
from frogless.swatch import Reading, Swatch, Yarn, gauge, mass_per_stitch, parse_swatch


def dc(**read: object) -> Reading:
    """A washed reading of double crochet: 18 and 9 over 10 cm unless it says otherwise."""
    usual: dict[str, object] = {"stitches": 18, "width": 100.0, "rows": 9, "height": 100.0}
    return Reading("double_crochet", **{"state": "washed", "hook": 4.0} | usual | read)  # type: ignore[arg-type]


def swatch_of(*readings: Reading, fibre: str = "cotton", category: int | None = 3) -> Swatch:
    """A swatch of double crochet."""
    return Swatch(
        "blue", "double_crochet", 4.0, Yarn("blue", category, fibre, None, None), "", readings
    )


def nexts(swatch: Swatch) -> dict[str, Next]:
    """What to measure next, by the first word of what to do; of counting by what is counted."""
    return {
        (" ".join(one.do.split()[:2]) if one.do.startswith("Count") else one.do.split()[0]): one
        for one in measure_next(swatch, "cm", "us")
    }


def test_headline_tells_gauge_and_its_interval() -> None:
    """18 in 10 cm to the whole stitch: tape 1 mm and count 0.29 make 1.9 %, doubled 3.7 %.

    By hand: hypot(1/100, 0.2887/18) = 1.89 %; times 1.96 = 3.7 %.
    """
    assert headline(swatch_of(dc()), "cm") == "18.0 stitches and 9.0 rows in 10 cm, ± 3.7 %"
    assert headline(swatch_of(dc()), "in") == "18.3 stitches and 9.1 rows in 4 in, ± 3.7 %"


def test_interval_is_told_on_a_hip_and_a_length() -> None:
    """3.7 % of 100 cm; rows by hand hypot(1/100, 0.2887/9) · 1.96 = 6.6 % of 60 cm, 4.0 cm."""
    (one,) = told(swatch_of(dc()), "cm", "us").gauges
    assert one.girth == "± 3.7 cm at a hip of 100 cm"
    assert one.length == "± 4.0 cm over a length of 60 cm"


def test_each_state_and_hook_has_a_gauge() -> None:
    """Only the washed one on the main hook sizes a garment; another hook is another fabric."""
    swatch = swatch_of(dc(), dc(state="as worked"), dc(hook=5.0), dc(state="hung"))
    gauges = told(swatch, "cm", "us").gauges
    assert [(one.state, one.sizes) for one in gauges] == [
        ("washed, 4 mm hook", True),
        ("as worked, 4 mm hook", False),
        ("washed, 5 mm hook", True),
        ("hung, 4 mm hook", False),
    ]


@pytest.mark.parametrize(
    ("stitches", "verdict"), [(11, "fewer"), (12, "within it"), (16, "within it"), (18, "more")]
)
def test_gauge_beside_the_category(stitches: int, verdict: str) -> None:
    """Category 3: 12 to 17 in 4 in, so 11.8 to 16.7 in 10 cm (Standard Yarn Weight System)."""
    first = told(swatch_of(dc(stitches=stitches)), "cm", "us").compared[0]
    assert (first.what, first.verdict) == ("Stitches in 10 cm", verdict)
    assert first.usual.startswith("11.8 to 16.7, single crochet")


def test_hook_and_length_beside_the_category() -> None:
    """Category 3: hooks 4.5 to 5.5 mm; 200 to 250 m in 100 g (shops)."""
    swatch = swatch_of(dc())
    swatch = replace(swatch, yarn=replace(swatch.yarn, ball_mass=50.0, ball_length=60_000.0))
    _, hook, length = told(swatch, "cm", "us").compared
    assert (hook.here, hook.usual, hook.verdict) == ("4 mm", "4.5 to 5.5 mm", "smaller")
    assert (length.here, length.usual, length.verdict) == ("120 m", "200 to 250 m", "thicker")
    assert told(swatch, "in", "us").compared[2].usual == "219 to 273 yd"


def test_nothing_is_compared_without_a_category() -> None:
    """A label that says nothing is held against nothing."""
    assert told(swatch_of(dc(), category=None), "cm", "us").compared == ()


def test_wear_is_told() -> None:
    """Light cotton: 16.3 against 15.8 cm hung is 3.2 %; 18.6 against 15 cm is 24 %."""
    found = told(parse_swatch(examples("swatch")["light-cotton"].text), "cm", "us").found
    assert [one.value.split()[0] for one in found] == ["3.2", "24", "23.7"]
    assert found[0].meaning == "1.9 cm on a length of 60 cm"
    assert found[1].meaning == "an opening of 60 cm passes 74.4 cm"


def test_wider_count_gains_what_the_library_says() -> None:
    """Promised: what the swatch has once it is read like that, by `gauge` itself."""
    swatch = swatch_of(dc(stitches=13, width=80.0))
    promised = nexts(swatch)["Count stitches"]
    assert promised.do == "Count stitches over 15 cm instead of 8 cm, to the half"
    then = swatch_of(dc(stitches=24.5, width=24.5 * 80 / 13))
    was, will = (100 * 1.96 * gauge(s, "dc").width.relative for s in (swatch, then))
    assert promised.gain.startswith(f"± {two_figures(was)} % → {two_figures(will)} %:")
    assert promised.reading == 1


def test_second_count_gains_what_the_library_says() -> None:
    """A swatch that is wide enough and counted to the half is counted again elsewhere."""
    one = dc(stitches=27.5, width=152.8, rows=14.5, height=152.6)
    promised = nexts(swatch_of(one))["Count stitches"]
    assert promised.do == "Count stitches a second time, in another place"
    will = 100 * 1.96 * gauge(swatch_of(one, one), "dc").width.relative
    assert f"→ {two_figures(will)} %" in promised.gain


def test_whole_counts_are_counted_to_the_half() -> None:
    """The same window, read finer, when that gains more than a second one."""
    promised = nexts(swatch_of(dc(stitches=16, width=165.0, rows=9, height=176.0)))
    assert promised["Count the"].do.startswith("Count the same")


def test_documentation_promises_what_is_promised() -> None:
    """Every gain that the page about swatching tells is one that is worked out."""
    page = (Path(__file__).parents[3] / "docs" / "swatching.md").read_text(encoding="utf-8")
    written = re.findall(r"± ([\d.]+ %) becomes ± ([\d.]+ %)", page)
    short = swatch_of(dc(stitches=13, width=80.0, rows=8, height=90.0))
    wide = swatch_of(dc(stitches=27.5, width=153.0, rows=16, height=160.0), fibre="wool")
    gains = [one.gain for swatch in (short, wide) for one in measure_next(swatch, "cm", "us")]
    assert len(written) == 4
    for was, will in written:
        assert any(
            gain.startswith(f"± {was} → {will}:")
            or (f"± {was} without" in gain and f"± {will} with" in gain)
            for gain in gains
        )


def test_what_is_sure_enough_is_not_asked_again() -> None:
    """Everything read, over more than any swatch has: nothing is left that gains a tenth."""
    wide = dc(stitches=80.25, width=445.8, rows=40.25, height=447.2)
    many = [wide] * 8
    weighed = replace(wide, mass=100.1, stretched_width=500.0)
    hung = replace(wide, state="hung", load=40.0)
    assert measure_next(swatch_of(weighed, *many, hung), "cm", "us") == ()


def test_missing_rows_come_before_everything() -> None:
    """Without them there is no length at all; then comes washing."""
    found = measure_next(swatch_of(dc(state="as worked", rows=None, height=None)), "cm", "us")
    assert [one.do.split(",")[0].split(" as ")[0] for one in found[:2]] == [
        "Count rows over a height too",
        "Wash and dry it",
    ]


def test_surest_gain_on_the_garment_comes_first() -> None:
    """What settles more centimetres stands before what settles fewer."""
    found = measure_next(swatch_of(dc(), fibre=""), "cm", "us")
    weights = [one.weight for one in found]
    assert weights == sorted(weights, reverse=True)
    assert {one.do.split()[0] for one in found} == {"Count", "Hang", "Weigh", "Stretch"}


def test_yarn_is_promised_as_the_tally_reckons_it() -> None:
    """With the mass it is surer than without, and both are told."""
    told_ = nexts(swatch_of(dc()))["Weigh"].gain
    without, with_ = (float(n) for n in re.findall(r"± ([\d.]+) %", told_))
    assert without > 2 * with_
    assert mass_per_stitch(swatch_of(dc(mass=3.5)), "dc") is not None


def test_hanging_tells_what_the_fibre_is_said_to_do() -> None:
    """Wool from memory 0 to 3 %: 0 to 1.8 cm on 60 cm; an unknown fiber promises no number."""
    assert "0 to 1.8 cm on 60 cm" in nexts(swatch_of(dc(), fibre="wool"))["Hang"].gain
    assert "is not known" in nexts(swatch_of(dc(), fibre="moss"))["Hang"].gain


@pytest.mark.parametrize("done", ["Weigh", "Stretch", "Hang"])
def test_what_was_read_is_not_asked_for(done: str) -> None:
    """A swatch that has it asks for the others only."""
    reads = {"Weigh": dc(mass=3.5), "Stretch": dc(stretched_width=120.0), "Hang": dc()}
    extra = [dc(state="hung", height=104.0)] if done == "Hang" else []
    assert done not in nexts(swatch_of(reads[done], *extra))


def test_pattern_swatch_is_counted_in_repeats() -> None:
    """Of a stitch pattern only its size is read."""
    fans = Reading(
        "fan_arches",
        "washed",
        4.0,
        stitches=2,
        width=110.0,
        rows=8,
        height=90.0,
        pattern="fan_arches",
    )
    found = measure_next(swatch_of(fans), "cm", "us")
    assert {one.do.split()[0] for one in found} == {"Count"}
    assert "repeats" in headline(swatch_of(fans), "cm")


def test_swatch_without_readings_tells_nothing() -> None:
    """Nothing to measure next to, and no headline."""
    assert measure_next(swatch_of(), "cm", "us") == ()
    assert headline(swatch_of(), "cm") == ""


@pytest.mark.parametrize("key", sorted(examples("swatch")))
@pytest.mark.parametrize("units", ["cm", "in"])
def test_examples_are_told_in_the_units_of_the_page(key: str, units: str) -> None:
    """No centimetre on a page in inches, but for the 10 cm of the trade; and no file's keys."""
    found = looked_at(examples("swatch")[key].text, units, "us")  # type: ignore[arg-type]
    assert found.told is not None
    every = repr(found)
    if units == "in":
        assert [n for n in re.findall(r"([\d.]+) cm", every) if n != "10"] == []
    assert "`" not in every


def test_sentences_are_in_the_readers_terms() -> None:
    """US double crochet is UK treble crochet; a sentence about both terms stays as it is."""
    us = "13 stitches of double crochet over 8 cm are known to ± 5 % (95 %); count over 10 cm or more"
    assert in_terms(us, "cm", "us") == us
    assert in_terms(us, "in", "uk").startswith("13 stitches of treble crochet over 3.15 in are")
    assert in_terms(us, "in", "uk").endswith("count over 10 cm or more")
    both = "rows of double crochet are those of single crochet (UK double crochet)"
    assert in_terms(both, "cm", "uk") == both


def test_face_has_whole_stitches_and_rows() -> None:
    """18 and 9 in 10 cm: nine rows of stitches on a square of 106 mm with its margin."""
    drawing = face(swatch_of(dc()), "cm")
    assert (drawing.width, drawing.height) == (106.0, 106.0)
    assert len([one for one in drawing.shapes if one.style == "stitch"]) == 9
    assert drawing.description == headline(swatch_of(dc()), "cm")


@pytest.mark.parametrize(
    ("number", "shown"), [(14.4, "14"), (3.72, "3.7"), (0.434, "0.43"), (99.6, "100"), (0, "0")]
)
def test_two_figures(number: float, shown: str) -> None:
    """As many as an uncertainty is worth (JCGM 100:2008, 7.2.6)."""
    assert two_figures(number) == shown
