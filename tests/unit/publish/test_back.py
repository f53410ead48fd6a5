"""Finishing, where the numbers come from, what was checked, credits."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example
from one_piece import alter
from published import part, published, shown, text_of

from frogless.because import Because, Step
from frogless.proof.model import Finding, passing
from frogless.publish.back import about, check_name, checked, finishing, why
from frogless.publish.blocks import Bullets, Figure, Table, Terms
from frogless.units import Measured, show_length


def test_blocking_measurements_are_those_lying_flat() -> None:
    """Girths as planned, half of them across, depths before the skirt hangs."""
    (table,) = (b for b in finishing(shown(Example())) if isinstance(b, Table))
    assert table.rows[0] == ("waist, ungathered", "84.5 cm", "42 cm", "0 cm")
    assert table.rows[-1] == ("hem", "138 cm", "69 cm", "55 cm")
    told = text_of(finishing(shown(Example())))
    assert "Lying flat it is 55.5 cm long with the edging; worn, 57 cm." in told


def test_gap_is_closed_in_the_end_when_nothing_is_worked_onto_it() -> None:
    """With elastic or a band it was closed before."""
    gaps = {
        design: "close the gap" in text_of(part(published(Example(design)), "Finishing"))
        for design in ("ring-dance-skirt", "procession-skirt", "whirl-skirt")
    }
    assert gaps == {
        "ring-dance-skirt": False, "procession-skirt": False, "whirl-skirt": True,
    }  # fmt: skip


def test_length_is_told_once_when_it_does_not_grow() -> None:
    """And not at all beyond the table when there is no edging."""
    drafted = shown(Example("procession-skirt"))
    assert "With the edging it is 74 cm long." in text_of(finishing(drafted))
    bare = replace(drafted, plan=alter(drafted.plan, edging=None))
    assert "With the edging" not in text_of(finishing(bare))


def test_ends_are_woven_in_over_a_length_in_the_readers_units() -> None:
    """5 cm or 2 in."""
    (metric,) = (b for b in finishing(shown(Example())) if isinstance(b, Bullets))
    (inches,) = (b for b in finishing(shown(Example(), units="in")) if isinstance(b, Bullets))
    assert "over 5 cm" in metric.items[0]
    assert "over 2 in" in inches.items[0]


def test_as_many_checks_are_listed_as_are_counted() -> None:
    """Those that had nothing to look at are neither."""
    drafted = shown(Example())
    (table,) = (b for b in checked(drafted) if isinstance(b, Table))
    assert len(table.rows) < len(drafted.findings)
    warned = [row for row in table.rows if row[-1].startswith("warning")]
    assert len(warned) == 1
    assert (
        passing(drafted.findings)
        == f"{len(table.rows) - 1} of {len(table.rows)} checks pass, 1 warns"
    )


def items_of(blocks: tuple[object, ...]) -> dict[str, str]:
    """Numbers and their because."""
    (terms,) = (b for b in blocks if isinstance(b, Terms))
    return dict(terms.items)


def test_why_tells_every_number_in_words() -> None:
    """Body, ease, gauge, what was rounded; formulas as a maker reads them."""
    told = items_of(why(shown(Example())))
    assert "opening: the larger of waist + 2 cm and hip ÷ 1.2 = 84.17 cm wanted" in told["waist"]
    assert "hem girth: 1.35 × hip" in told["hem"]
    assert "as close as in the swatch) + lap 2.5 cm = 71.5 cm to cut" in told["elastic"]
    assert "195 cm to cut" in told["front strand"]
    assert "6 balls" in told["yarn"]
    assert (
        "Closer to the body, but longer to read: 4 shaping points" in (told["waist to hip: rounds"])
    )


def test_yarn_says_which_stitch_was_weighed() -> None:
    """A skirt in single crochet may come from a swatch that was weighed in another stitch."""
    told = items_of(why(shown(Example("procession-skirt"))))["yarn"]
    assert "mg, weighed on the swatch in dc; stitches not weighed take" in told


def test_depths_are_those_of_the_rounds() -> None:
    """The check after a round and the table to block to name the same depth."""
    drafted = shown(Example("procession-skirt"))
    mark = drafted.plan.main.landmarks[1]
    depths = list(drafted.plan.main.depths)
    depths[mark.rounds] += 20.0
    moved = replace(drafted, plan=alter(drafted.plan, depths=tuple(depths)))
    (table,) = (b for b in finishing(moved) if isinstance(b, Table))
    assert table.rows[1][-1] == show_length(depths[mark.rounds], "cm")


def test_straight_section_takes_its_girth_from_above() -> None:
    """A hem without a cause of its own is as wide as the hip."""
    told = items_of(why(shown(Example("rehearsal-skirt"))))
    assert told["hem"].startswith("as at the hip: ")
    assert "exactly 192" in told["edging"]
    assert "repeat" not in told["edging"]


def test_nothing_is_said_of_the_survey_where_it_cannot_be_asked() -> None:
    """Neither of a section that begins below the waist or as wide as the hip, nor of one that
    ends at the hem or narrows."""
    assert "surveyed" not in text_of(why(shown(Example())))
    drafted = shown(Example("rehearsal-skirt"))
    told = items_of(why(drafted))
    assert "reaches the hip in time on about" in told["waist to hip: rounds"]
    assert "surveyed" not in told["hip to hem: rounds"]
    assert "a tube (fullness λ = 0)" in told["hip to hem: rounds"]
    marks = tuple(
        replace(m, body=Measured(1.0)) if m.key == "hip_girth" else m
        for m in drafted.plan.main.landmarks
    )
    as_wide = replace(drafted, plan=alter(drafted.plan, landmarks=marks))
    assert "surveyed" not in text_of(why(as_wide))
    sections = tuple(replace(s, fullness=-0.1) for s in drafted.plan.main.sections)
    narrow = replace(drafted, plan=alter(drafted.plan, sections=sections))
    assert "surveyed" not in text_of(why(narrow))


def test_because_without_steps_is_told_as_nothing() -> None:
    """An empty chain is no cause to fall over."""
    drafted = shown(Example())
    marks = tuple(replace(m, because=Because()) for m in drafted.plan.main.landmarks)
    told = items_of(why(replace(drafted, plan=alter(drafted.plan, landmarks=marks))))
    assert told["hip"] == ""
    wanted = Because((Step("wanted", 1000.0),))
    marks = tuple(replace(m, because=wanted) for m in drafted.plan.main.landmarks)
    told = items_of(why(replace(drafted, plan=alter(drafted.plan, landmarks=marks))))
    assert (told["waist"], told["high hip"]) == ("100 cm wanted", "as at the waist: 100 cm wanted")


def test_graph_stands_with_the_reasons() -> None:
    """It shows how closely the rounds follow what was wanted."""
    assert [b.key for b in why(shown(Example())) if isinstance(b, Figure)] == ["profile"]


def test_checks_say_what_they_hold_the_pattern_to() -> None:
    """How much they looked at; what looked at nothing is left out, what warns says why."""
    drafted = shown(Example())
    findings = (
        Finding("places", "pass", 10552, "places"),
        Finding("seams", "pass", 0, "seams"),
        Finding("ease", "warn", 4, "landmarks", ("hip: tight", "hem: loose")),
        Finding("goes_on", "warn", 1, "openings", ("a long story",)),
        Finding("brand_new", "pass", 1, "things"),
    )
    (table,) = (b for b in checked(replace(drafted, findings=findings)) if isinstance(b, Table))
    assert [row[1:] for row in table.rows] == [
        ("10552", "passed"),
        ("4", "warning: hip: tight; hem: loose"),
        ("1", "warning: see “Going on” at a glance"),
        ("1", "passed"),
    ]
    assert table.rows[-1][0] == "brand new"


@pytest.mark.parametrize("design", ["ring-dance-skirt", "procession-skirt"])
def test_every_check_of_the_proof_has_words(design: str) -> None:
    """A new check should not be told by its name alone."""
    drafted = shown(Example(design))
    for found in drafted.findings:
        assert check_name(drafted, found.name) != found.name.replace("_", " ")


def test_pattern_says_whose_it_is() -> None:
    """Version, terms, body, swatch, designer, program; no designer, no line."""
    drafted = shown(Example())
    told = text_of(about(drafted))
    assert "Version 1. US terms. For Dancer 3, in light cotton, washed." in told
    assert "Design: The folk-dance group." in told
    assert "Design:" not in text_of(about(shown(Example("whirl-skirt"))))
