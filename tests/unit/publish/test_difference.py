"""What a maker would want to know when one draft takes the place of another."""

from __future__ import annotations

from functools import cache

import pytest
from examples import FOLDER, TEXTS

from frogless.design.knobs import add, take_away, turn
from frogless.draft import Texts, draft_texts
from frogless.publish.difference import differences
from frogless.publish.drafted import Drafted
from frogless.publish.facts import RANKS, facts
from frogless.stitches.model import Dialect
from frogless.toml_text import Steps
from frogless.units import Units

SWATCH = (FOLDER / "swatches" / "light-cotton.toml").read_text(encoding="utf-8")
RING = TEXTS["ring-dance-skirt"]
PULLOVER = TEXTS["hayfield-pullover"]


@cache
def drafted(
    design: str, body: str = "dancer-3", terms: Dialect = "us", units: Units = "cm"
) -> Drafted:
    """A design for a body in the yarn that every page shows."""
    measured = (FOLDER / "bodies" / f"{body}.toml").read_text(encoding="utf-8")
    return draft_texts(Texts(design, measured, (SWATCH,)), terms, units).drafted


def turned(design: str, path: Steps, written: str) -> tuple[str, ...]:
    """What differs when one knob is turned."""
    return differences(drafted(design), drafted(turn(design, path, written)))


@pytest.mark.parametrize("name", TEXTS)
def test_nothing_is_said_of_what_is_the_same(name: str) -> None:
    """A draft made once more has the same facts, each under a key of its own."""
    once = drafted(TEXTS[name])
    body = (FOLDER / "bodies" / "dancer-3.toml").read_text(encoding="utf-8")
    again = draft_texts(Texts(TEXTS[name], body, (SWATCH,))).drafted
    assert differences(once, again) == ()
    keys = [fact.key for fact in facts(once, once)]
    assert len(set(keys)) == len(keys)
    assert {key[0] for key in keys} <= set(RANKS)


def test_other_terms_and_units_are_no_difference() -> None:
    """What is told is told in those of the draft that is shown now."""
    assert differences(drafted(RING), drafted(RING, terms="uk", units="in")) == ()


def test_counts_come_first_with_their_rounds_rhythm_and_yarn() -> None:
    """A wider hem: what it counts now, how it is shaped now, what it takes."""
    told = turned(RING, ("lengths", "hem_girth"), "1.45 * hip_girth")
    before, after = drafted(RING), drafted(turn(RING, ("lengths", "hem_girth"), "1.45 * hip_girth"))
    hems = [one.plan.main.landmarks[-1].count for one in (before, after)]
    assert f"hem: {hems[0]} → {hems[1]} stitches" in told
    assert any(line.startswith("girth at the hem: ") for line in told)
    repeats = [one.plan.main.edging.repeats for one in (before, after)]  # type: ignore[union-attr]
    edging = next(line for line in told if line.startswith("edging: "))
    assert f"{repeats[0]} repeats" in edging.partition("→")[0]
    assert f"{repeats[1]} repeats" in edging.partition("→")[2]
    places = [
        next(n for n, line in enumerate(told) if line.startswith(start))
        for start in ("hem: ", "girth at", "shaping of", "edging: ", "yarn: ")
    ]
    assert places == sorted(places)


def test_other_shaping_points_come_first_of_all() -> None:
    """They turn the whole pattern over, and the waist may be begun with other stitches for them."""
    design = turn(RING, ("section", 1, "points"), "4")
    told = differences(drafted(RING), drafted(design))
    assert told[0] == "waist to hip: four shaping points instead of eight"


@pytest.mark.parametrize("length", ["50 cm", "61 cm", "66 cm"])
def test_every_count_at_a_landmark_that_changes_is_told(length: str) -> None:
    """Of a length too, whose rhythm can ask for another number of points."""
    before, after = drafted(RING), drafted(turn(RING, ("lengths", "skirt_length"), length))
    told = differences(before, after)
    marks = zip(before.plan.main.landmarks, after.plan.main.landmarks, strict=True)
    for old, new in marks:
        said = [line for line in told if line.endswith(f"{old.count} → {new.count} stitches")]
        assert bool(said) is (old.count != new.count)
    for old_section, new_section in zip(
        before.plan.main.sections, after.plan.main.sections, strict=True
    ):
        points = [s.chosen.points for s in (old_section, new_section) if s.chosen]
        said = [line for line in told if line.startswith(f"{new_section.name}: ")]
        assert any("shaping points instead of" in line for line in said) is (len(set(points)) > 1)


def test_rounds_of_a_longer_section_are_told_from_first_to_last() -> None:
    """And the length that they make."""
    told = turned(RING, ("garment", "length"), "62")
    section = drafted(RING).plan.sections[-1]
    after = drafted(turn(RING, ("garment", "length"), "62")).plan.sections[-1]
    assert (
        f"hip to hem: rounds {section.first_round} to {section.last_round} → "
        f"{after.first_round} to {after.last_round}"
    ) in told
    assert "length: 56.5 cm → 62 cm" in told


def test_rhythm_that_only_begins_later_is_not_told_again() -> None:
    """A chain in place of a foundation row moves every round by one."""
    told = turned(RING, ("start", "with"), "chain")
    assert any(line.startswith("waist to hip: rounds") for line in told)
    assert not any(line.startswith("shaping of") for line in told)
    assert "begins with: foundation double crochet → chain" in told
    assert "a stitch that is no longer used: foundation double crochet (fdc)" in told


def test_waist_says_what_is_to_be_cut() -> None:
    """Elastic against cord, and whether it goes on."""
    told = turned(RING, ("waist", "kind"), "drawcord")
    waist = next(line for line in told if line.startswith("what holds the waist: "))
    assert "knitted elastic, 71.5 cm to cut" in waist
    assert "→ cord of" in waist
    assert told[0] == "goes on: perhaps → surely"


def test_sections_and_edgings_that_came_and_went() -> None:
    """One line for each, not one for each of their facts."""
    told = differences(drafted(RING), drafted(add(take_away(RING, ("edging",)), "section")))
    assert len([line for line in told if line.startswith("new section: ")]) == 1
    assert any(line.startswith("new section: new, rounds ") for line in told)
    assert any(line.startswith("edging: left out, picot edging") for line in told)
    assert not any(line.startswith(("shaping of new", "stitch of new")) for line in told)
    assert any(
        line.startswith("hooks: 3.75 mm, 2.25 mm, 0.6 mm → 3.75 mm, 0.6 mm") for line in told
    )


def test_section_with_another_name_is_the_same_section() -> None:
    """Nothing else has changed."""
    assert turned(RING, ("section", 1, "name"), "upper") == ("waist to hip is called upper",)


def test_way_of_working_is_told_when_no_count_changes() -> None:
    """A tape sees no difference, a maker does."""
    assert turned(RING, ("work", "rounds"), "joined") == ("rounds: joined and turned → joined",)


def test_pieces_are_told_by_their_measures() -> None:
    """With the rows or stitches that give them."""
    told = turned(PULLOVER, ("piece", 2, "length"), "arm_length")
    assert "right sleeve, length: 21.5 cm (20 rows) → 43.5 cm (40 rows)" in told
    assert not any("left sleeve" in line for line in told)


def test_piece_that_is_gone_is_gone_with_all_it_had() -> None:
    """And comes back as new."""
    shorter = take_away(PULLOVER, ("piece", 4))
    told = differences(drafted(PULLOVER), drafted(shorter))
    assert told[0] == "neckband: left out"
    assert len([line for line in told if "neckband" in line]) == 1
    back = differences(drafted(shorter), drafted(PULLOVER))
    assert back[0] == "neckband: new, 1 made"


def test_another_body_is_named() -> None:
    """With the counts that it has instead."""
    told = differences(drafted(RING), drafted(RING, "dancer-1"))
    assert "body: Dancer 3 → Dancer 1" in told
    points = [line for line in told if line.endswith("six shaping points instead of eight")]
    assert points == list(told[: len(points)])
    assert told[len(points)].startswith("waist: ")


@pytest.mark.parametrize("name", ["whirl-skirt", "midsummer-dress", "lantern-cap", "rosin-bag"])
def test_no_sentence_has_a_blank_left_open(name: str) -> None:
    """From one design to quite another, both ways."""
    for one, two in ((RING, TEXTS[name]), (TEXTS[name], RING)):
        told = differences(drafted(one), drafted(two))
        assert told
        assert not any("{" in line or "None" in line for line in told)
