"""Yarn, hooks and notions, and the gauge."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from examples import Example
from published import part, published, shown, text_of

from frogless.publish.blocks import Bullets
from frogless.publish.drafted import Drafted
from frogless.publish.materials import gauge, hook_size, listed, materials
from frogless.tally.model import Notion
from frogless.units import Units


def told_of(drafted: Drafted) -> tuple[str, ...]:
    """The list of materials."""
    (bullets,) = (b for b in materials(drafted) if isinstance(b, Bullets))
    return bullets.items


def with_yarn(**changes: object) -> Drafted:
    """The example with its need of yarn changed."""
    drafted = shown(Example())
    need = replace(drafted.tally.yarn[0], **changes)  # type: ignore[arg-type]
    return replace(drafted, tally=replace(drafted.tally, yarn=(need,)))


def test_yarn_is_told_no_finer_than_it_is_known() -> None:
    """About, with its interval, in fives; what to buy with the margin, of one dye lot."""
    yarn, parts = told_of(shown(Example()))[:2]
    assert re.fullmatch(
        r"light cotton \(category 3, cotton\): about 63[05] m \(565 m to 70[05] m\), 265 g\. "
        r"With 11 % to spare 6 balls of 50 g / 120 m, of one dye lot",
        yarn,
    )
    assert parts == (
        "Of this: band 12 g, waist to hip 66 g, hip to hem 170 g, edging 9 g, elastic cover 4 g, "
        "front strand and tails 2 g"
    )


def test_parts_of_the_yarn_are_named_as_their_headings() -> None:
    """A section without its piece; the way round the elastic is part of its cover."""
    for design in ("ring-dance-skirt", "procession-skirt", "whirl-skirt"):
        document = published(Example(design))
        titles = {b.text.lower() for b in document.blocks if hasattr(b, "level")}
        told = next(t for t in told_of(shown(Example(design))) if t.startswith("Of this"))
        names = [p.rsplit(" ", 2)[0] for p in told.removeprefix("Of this: ").split(", ")]
        assert set(names[:-1]) <= titles | {"cord", "edging"}


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"balls": 1}, "With 11 % to spare 1 ball of 50 g / 120 m"),
        ({"balls": None}, "265 g"),
    ],
)
def test_balls_are_told_when_the_label_allows(changes: dict[str, object], told: str) -> None:
    """One ball is no balls, and has no dye lot to match."""
    assert told_of(with_yarn(**changes))[0].endswith(told)


def test_unweighed_swatch_is_told() -> None:
    """The amount is then an estimate."""
    told = told_of(with_yarn(calibrated=False))
    assert [t for t in told if t.startswith("The swatch was not weighed")]


def test_hooks_carry_their_us_letter_where_it_is_known() -> None:
    """Steel ones have numbers of their own; what the standard does not list stays in mm."""
    drafted = shown(Example())
    sizes = {3.75: "3.75 mm (US F-5)", 0.75: "0.75 mm (US steel 14)", 3.0: "3 mm"}
    assert {size: hook_size(drafted, size) for size in sizes} == sizes


def test_hooks_are_told_once_with_what_they_are_for() -> None:
    """A piece by its name; a section of it where another hook is taken."""
    hooks = [t for t in told_of(shown(Example())) if t.startswith("Hook")]
    assert hooks == [
        "Hook 3.75 mm (US F-5): skirt and elastic cover",
        "Hook 2.25 mm (US B-1): edging",
        "Hook 0.6 mm: front strand",
    ]


@pytest.mark.parametrize(
    ("design", "told"),
    [
        ("ring-dance-skirt", "Elastic, knitted, 6 mm wide: 71.5 cm, of which 2.5 cm is the lap."),
        ("ring-dance-skirt", "10 beads for the front strand: 2 spare among them"),
        ("ring-dance-skirt", "Beading needle"),
        ("whirl-skirt", "Cord: 142 cm, thin enough"),
        ("procession-skirt", "5 stitch markers"),
        ("rehearsal-skirt", "Sewing needle"),
        ("rehearsal-skirt", "4 pins or clips"),
        ("whirl-skirt", "Bodkin or safety pin"),
        ("ring-dance-skirt", "A little glue or wax"),
        ("whirl-skirt", "Scissors"),
    ],
)
def test_every_trim_brings_what_it_needs(design: str, told: str) -> None:
    """Cut lengths and counts stand with what to buy."""
    assert [t for t in told_of(shown(Example(design))) if t.startswith(told)]


def test_notions_have_words_whatever_they_are() -> None:
    """One marker is one; a notion that is new is told by its key."""
    drafted = shown(Example())
    found = (Notion("marker", 1, None, "for the join"), Notion("button_thread", 1, None, "strong"))
    told = told_of(replace(drafted, tally=replace(drafted.tally, notions=found)))
    assert {"1 stitch marker, for the join", "button thread: strong"} <= set(told)


@pytest.mark.parametrize(
    ("units", "told"),
    [
        ("cm", "18 sts and 9.5 rounds in dc to 10 cm, washed and dried, on a 3.75 mm (US F-5)"),
        ("in", "18.3 sts and 9.6 rounds in dc to 4 in"),
    ],
)
def test_gauge_is_told_as_it_is_counted(units: Units, told: str) -> None:
    """Over 10 cm or 4 in, with its state, its hook and how sure it is, 19 times in 20.

    27 stitches, whole, over 150 mm: 1.96 × √((0.289 / 27)² + (1 / 150)²) = 2.5 % (JCGM 100:2008).
    """
    said = text_of(gauge(shown(Example(), units=units)))
    assert told in said
    assert "within 2.5 % (95 %)" in said


def test_growth_is_told_or_how_to_test_it() -> None:
    """Hung swatches say how much; the others learn what to hang on them."""
    assert "grows 3.2 % in length" in text_of(gauge(shown(Example())))
    unhung = text_of(part(published(Example("procession-skirt")), "Gauge"))
    assert "To test it, hang a swatch" in unhung


def test_estimated_gauges_are_told_by_stitch() -> None:
    """One sentence for all sections that share a stitch nobody swatched."""
    drafted = shown(Example("rehearsal-skirt", "dancer-5", "bulky-blend"))
    assert "sc (edging and elastic cover) was not swatched" in text_of(gauge(drafted))


def test_names_are_listed_as_in_a_sentence() -> None:
    """Commas, and one and."""
    drafted = shown(Example())
    assert [listed(drafted, list(names)) for names in ("a", "ab", "abc")] == [
        "a", "a and b", "a, b and c",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("design", "told"),
    [
        ("ring-dance-skirt", "dc in rows turned as the rounds are, at least 15 cm wide"),
        ("procession-skirt", "sc with the right side always facing, as the rounds are"),
    ],
)
def test_swatch_is_worked_as_the_rounds_are(design: str, told: str) -> None:
    """Turned stitches are not as high as those that always face."""
    assert told in text_of(gauge(shown(Example(design))))
