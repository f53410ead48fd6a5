"""What a design may ask of the shaping rounds of a section, and what is told of the rhythm taken."""

from __future__ import annotations

from itertools import pairwise

import pytest
from sample_designs import Made, body, section, swatch

from frogless.draft import develop
from frogless.errors import Impossible, InputError
from frogless.plan.make import plan
from frogless.plan.model import Evidence, SectionPlan

HEM = section("to the hem", to="hem")
TURNED = 'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = false'
JOINED = TURNED.replace("joined and turned", "joined")


def hip(**keys: object) -> str:
    """From 84 to 116 cm in 20 rounds."""
    return section("to the hip", shape="shaped", to="hip", ease="4 cm", **keys)


# Nothing is known of where the hip lies, so no rhythm has to keep clear of the body on its way.
NOBODY = body(waist_girth="84 cm", hip_girth="112 cm")


def flare(**keys: object) -> str:
    """From 84 to 116 cm in 20 rounds, at eight points, past no landmark."""
    return section("flare", shape="shaped", length="20 cm", girth="116 cm", points=8, **keys)


def planned(made: Made, *sections: str, **design: object) -> SectionPlan:
    """The plan of the first shaped section."""
    return next(s for s in plan(made(*sections, **design)).sections if s.chosen)


def shaped_on(found: SectionPlan) -> list[int]:
    """The rounds of the piece that are shaped."""
    assert found.chosen is not None
    return [found.first_round - 1 + r for r in found.chosen.rhythm.rounds]


def evidence(found: SectionPlan) -> Evidence:
    """How good the rhythm is."""
    assert found.evidence is not None
    return found.evidence


def test_right_side_rounds_are_the_odd_ones_of_the_piece(made: Made) -> None:
    """Also when an odd number of rounds lies above the section."""
    assert all(r % 2 for r in shaped_on(planned(made, hip(shape_on="right side"), HEM)))
    band = section("band", length="3 cm")
    below = planned(made, band, hip(shape_on="right side"), HEM)
    assert below.first_round == 4
    assert all(r % 2 for r in shaped_on(below))
    wide = 'with = "chain"\ngirth = "114 cm"'
    hem = section("to the hem", shape="shaped", to="hem", girth="150 cm", shape_on="right side")
    develop(made(band, hem, start=wide))


def test_unturned_rounds_are_all_on_the_right_side(made: Made) -> None:
    """Nothing is asked of them."""
    free = planned(made, hip(), HEM, work=JOINED)
    held = planned(made, hip(shape_on="right side"), HEM, work=JOINED)
    assert shaped_on(held) == shaped_on(free)


def test_plain_stretch_is_left_unshaped(made: Made) -> None:
    """A placket of 8 cm from the top: rounds 1 to 8; half of round 9 lies in 8.5 cm."""
    eight = planned(made, hip(plain=[{"from": '"0 cm"', "to": '"8 cm"'}]), HEM)
    assert shaped_on(eight)[0] == 9
    nine = planned(made, hip(plain=[{"from": '"0 cm"', "to": '"8.5 cm"'}]), HEM)
    assert shaped_on(nine)[0] == 10
    assert "forbidden" in evidence(nine).binding


def test_plain_stretch_that_ends_above_its_start_is_refused(made: Made) -> None:
    """By its place."""
    with pytest.raises(InputError, match="ends above its start") as refused:
        plan(made(hip(plain=[{"from": '"9 cm"', "to": '"8 cm"'}]), HEM))
    assert refused.value.faults[0].place.key == "section[1].plain[1]"


def test_least_gap_is_kept(made: Made) -> None:
    """Three rounds at least between seven shapings."""
    rounds = shaped_on(planned(made, hip(points=8, least_gap=3, indifference="0 cm"), HEM))
    assert min(b - a for a, b in pairwise(rounds)) == 3


def test_more_clauses_are_taken_only_when_they_are_allowed(made: Made) -> None:
    """The closest of one, of two, of three."""
    strays = []
    for clauses in (1, 2, 3):
        found = planned(made, flare(clauses=clauses, indifference="0 cm"), HEM, person=NOBODY)
        assert found.chosen is not None
        assert found.chosen.rhythm.clause_count == clauses
        strays.append(round(abs(found.chosen.stray)))
    assert strays == [33, 28, 22]


def test_evidence_weighs_the_rhythm_against_its_runners_up(made: Made) -> None:
    """One clause at 3.3 cm; two would gain half a centimetre, three one, and nothing more."""
    found = evidence(planned(made, flare(), HEM, person=NOBODY))
    assert (found.clauses, found.most_clauses) == (1, 3)
    assert found.stray == pytest.approx(32.9, abs=0.05)
    assert found.least == found.bound == pytest.approx(22.2, abs=0.05)
    assert [r.clauses for r in found.runners_up] == [2, 3]
    assert [round(r.cost, 1) for r in found.runners_up] == [-5.3, -10.7]
    assert all(
        abs(r.stray) == pytest.approx(found.stray + r.cost, abs=1e-3) for r in found.runners_up
    )
    assert found.binding == ("indifference",)


def test_evidence_tells_what_one_clause_fewer_costs(made: Made) -> None:
    """At 0 cm of indifference three clauses are taken; two cost half a centimetre."""
    found = evidence(planned(made, flare(indifference="0 cm"), HEM, person=NOBODY))
    fewer = next(r for r in found.runners_up if r.clauses == 2)
    assert fewer.cost == pytest.approx(5.3, abs=0.05)
    assert 0 <= fewer.stray_at <= 200


def test_evidence_names_the_body_as_what_binds(made: Made) -> None:
    """Between waist and hip the closest rhythms would lie on the body."""
    assert evidence(planned(made, hip(points=8), HEM)).binding == ("floor",)


def test_straight_section_has_no_evidence_and_no_use_for_the_keys(made: Made) -> None:
    """It is refused by the key."""
    assert plan(made(hip(), HEM)).sections[1].evidence is None
    for key, value in {"clauses": 2, "shape_on": "any", "least_gap": 2}.items():
        with pytest.raises(InputError, match=f"has no use for {key}"):
            plan(made(hip(), section("to the hem", to="hem", **{key: value})))


SLIM = body(waist_girth="66 cm", hip_girth="98 cm", waist_to_hip="20 cm")
SAMPLE = swatch(34, 18, width="20 cm", height="20 cm")


def refusal(made: Made, *sections: str) -> Impossible:
    """66 to 100 cm in 18 rounds."""
    with pytest.raises(Impossible) as refused:
        plan(made(*sections, HEM, person=SLIM, sample=SAMPLE))
    return refused.value


def test_two_points_every_second_round_are_refused_with_what_they_lack(made: Made) -> None:
    """Hand-worked: 40 stitches and 23.5 cm short; eight places are enough."""
    told = refusal(made, hip(points=2, every=2).replace('"4 cm"', '"2 cm"'))
    assert (told.short_stitches, round(told.short)) == (40, 235)
    assert told.ways_out[0].startswith("points = 8")
    assert told.requirements == ("points", "add", "every", "rounds", "girth")


def test_right_side_only_is_told_and_freed(made: Made) -> None:
    """Nine right-side rounds of six are 54 stitches; 58 and more are wanted."""
    told = refusal(made, hip(points=4, shape_on="right side"))
    assert "every right-side round give 9 shaping rounds in 18" in str(told)
    assert any(way.startswith('shape_on = "any"') for way in told.ways_out)
    assert "shape_on" in told.requirements


def test_gap_is_told_and_freed_by_a_smaller_one(made: Made) -> None:
    """Five shaping rounds of eight are 40."""
    told = refusal(made, hip(points=8, least_gap=4))
    assert "every 4th round give 5 shaping rounds in 18" in str(told)
    assert any(way.startswith("least_gap = 2") for way in told.ways_out)


def test_plain_stretch_that_leaves_too_few_rounds_is_told(made: Made) -> None:
    """Six rounds are left of eighteen."""
    told = refusal(made, hip(points=8, plain=[{"from": '"0 cm"', "to": '"13 cm"'}]))
    assert "outside the plain stretches give 6 shaping rounds in 18" in str(told)
    assert "no plain stretches, or shorter ones" in told.ways_out


def test_rhythm_that_would_take_more_clauses_is_refused_by_them(made: Made) -> None:
    """Shaping on both sides of two plain stretches cannot be told in one clause."""
    plain = [{"from": '"3 cm"', "to": '"5 cm"'}, {"from": '"12 cm"', "to": '"13 cm"'}]
    told = refusal(made, hip(points=8, clauses=1, plain=plain))
    assert "cannot be had in 1 clause and outside the plain stretches" in str(told)
    assert any(way.startswith("clauses = ") for way in told.ways_out)
    assert {"clauses", "plain"} <= set(told.requirements)
