"""What could be had instead: told against what was taken, and had when the design is turned so."""

from __future__ import annotations

from functools import cache

import pytest
from examples import FOLDER, TEXTS

from frogless.design.knobs import turn
from frogless.draft import Texts, draft_texts
from frogless.publish.alternatives import Alternative, alternatives
from frogless.publish.drafted import Drafted
from frogless.units import Units

SWATCH = (FOLDER / "swatches" / "light-cotton.toml").read_text(encoding="utf-8")
WITH_CHOICES = (
    "kerchief-skirt", "midsummer-dress", "rehearsal-skirt", "ring-dance-skirt", "whirl-skirt",
    "windmill-skirt",
)  # fmt: skip


@cache
def drafted(design: str, units: Units = "cm", body: str = "dancer-3") -> Drafted:
    """A design for a body in the yarn that every page shows."""
    measured = (FOLDER / "bodies" / f"{body}.toml").read_text(encoding="utf-8")
    return draft_texts(Texts(design, measured, (SWATCH,)), units=units).drafted


def of(name: str, units: Units = "cm", body: str = "dancer-3") -> tuple[Alternative, ...]:
    """The alternatives of an example."""
    return alternatives(drafted(TEXTS[name], units, body))


@pytest.mark.parametrize("body", ["dancer-1", "dancer-3"])
@pytest.mark.parametrize("name", WITH_CHOICES)
def test_what_is_told_is_what_the_planner_takes_when_it_is_turned(name: str, body: str) -> None:
    """The section has just that rhythm at just those points, and what it strays is as it was told."""
    for told in of(name, body=body):
        text = TEXTS[name]
        for path, written in told.changes:
            text = turn(text, path, written)
        section = next(s for s in drafted(text, body=body).plan.sections if s.name == told.section)
        assert section.chosen is not None
        assert section.chosen.rhythm == told.option.rhythm
        assert section.chosen.points == told.option.points
        assert section.chosen.stray == pytest.approx(told.option.stray)


@pytest.mark.parametrize("name", WITH_CHOICES)
def test_none_is_what_is_had_already_and_none_is_told_twice(name: str) -> None:
    """Each is another rhythm, or another number of points."""
    told = of(name)
    found = drafted(TEXTS[name])
    assert told
    assert len({(one.section, one.option.points, one.option.rhythm) for one in told}) == len(told)
    for one in told:
        chosen = next(s.chosen for s in found.plan.sections if s.name == one.section)
        assert chosen is not None
        assert (chosen.points, chosen.rhythm) != (one.option.points, one.option.rhythm)


@pytest.mark.parametrize("name", WITH_CHOICES)
def test_more_clauses_are_only_told_when_a_tape_sees_the_gain(name: str) -> None:
    """A choice that costs more and gains nothing is none."""
    found = drafted(TEXTS[name])
    for one in of(name):
        chosen = next(s.chosen for s in found.plan.sections if s.name == one.section)
        assert chosen is not None
        simpler = one.option.rhythm.clause_count < chosen.rhythm.clause_count
        fewer = one.option.points < chosen.points
        assert simpler or fewer or abs(one.option.stray) < abs(chosen.stray)


def test_simpler_rhythm_that_nobody_would_wear_is_no_choice() -> None:
    """Of a full circle in one clause, almost a metre too wide."""
    wheel = next(s for s in drafted(TEXTS["sunwheel-skirt"]).plan.sections if s.evidence)
    assert wheel.evidence is not None
    assert max(one.stray for one in wheel.evidence.runners_up) > 500
    assert all(abs(one.option.stray) < 200 for one in of("sunwheel-skirt"))


def test_sentences_are_a_makers_own() -> None:
    """What it costs in lines, what it strays and where, against what is had now."""
    told = {one.sentence: one.changes for one in of("whirl-skirt")}
    assert (
        "one more line of instructions: at most 1.5 cm too wide at the hip, instead of 2 cm too "
        "narrow 7 cm below the waist"
    ) in told
    fewer = [one.sentence for one in of("kerchief-skirt") if "less" in one.sentence]
    assert fewer == [
        "one line of instructions less: at most 3.5 cm too wide at the high hip, instead of 1.5 cm "
        "too narrow 17.5 cm below the waist"
    ]
    dress = [one.sentence for one in of("midsummer-dress") if "points" in one.sentence]
    assert dress == [
        "four shaping points instead of eight, one more line of instructions: at most 1 cm too "
        "wide at the waist, instead of 2 cm too narrow 10 cm below the top edge"
    ]


def test_lengths_are_in_the_makers_units() -> None:
    """Also those that are written into the design."""
    told = of("whirl-skirt", "in")
    assert all(" cm" not in one.sentence for one in told)
    assert any('"0 in"' in repr(one.changes).replace("'", '"') for one in told)


def test_rhythm_is_told_in_the_rounds_of_the_piece() -> None:
    """As the pattern has it."""
    (closer,) = [one for one in of("whirl-skirt") if one.section == "waist to hip"]
    section = next(
        s for s in drafted(TEXTS["whirl-skirt"]).plan.sections if s.name == "waist to hip"
    )
    first = closer.option.rhythm.first + section.first_round - 1
    assert closer.rhythm.startswith(f"on round {first}")


@pytest.mark.parametrize("name", ["drum-bag", "moth-wing-shawl", "harvest-top", "millrace-skirt"])
def test_what_has_no_rhythm_to_choose_has_no_alternatives(name: str) -> None:
    """Discs, shawls, flat pieces and straight tiers."""
    assert of(name) == ()
