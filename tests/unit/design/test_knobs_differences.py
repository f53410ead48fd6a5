"""What changed in the text of a design, in the words of its knobs."""

from __future__ import annotations

from pathlib import Path

import pytest

from frogless.design.knobs import add, knobs, take_away, turn
from frogless.design.knobs_differences import document_differences
from frogless.toml_text import Steps

FOLDER = Path(__file__).parents[3] / "designs"
TEXTS = {
    path.parent.name: path.read_text(encoding="utf-8")
    for path in sorted(FOLDER.glob("*/design.toml"))
}
RING = TEXTS["ring-dance-skirt"]
PULLOVER = TEXTS["hayfield-pullover"]


@pytest.mark.parametrize("name", TEXTS)
def test_nothing_is_said_of_what_is_the_same(name: str) -> None:
    """No example differs from itself."""
    assert document_differences(TEXTS[name], TEXTS[name]) == ()


@pytest.mark.parametrize(
    ("path", "written", "told"),
    [
        (("section", 1, "points"), "8", "Section waist to hip, points: auto → 8"),
        (("section", 1, "clauses"), "1", "Section waist to hip, clauses: 3 → 1"),
        (("section", 1, "ease"), "", "Section waist to hip, ease: 4 cm → 0 cm"),
        (("section", 1, "name"), "upper", "Section upper, name: waist to hip → upper"),
        (("section", 0, "length"), "4", "Section band, length: 3 cm → 4 cm"),
        (
            ("section", 2, "ease_allowed"),
            "-2 to 4",
            "Section hip to hem, ease allowed: one inch either way; at the hem 4 % → -2 cm to 4 cm",
        ),
        (("lengths", "hem_girth"), "150", "Length and fit, hem_girth: 1.35 * hip_girth → 150 cm"),
        (("edging", "pattern"), "shell", "Edging, edging: picot edging → shell edging"),
        (("waist", "kind"), "drawcord", "Waist, kind of waist: covered elastic → drawcord"),
        (("start", "with"), "chain", "Start, begun with: foundation double crochet → chain"),
        (("summary",), "", "About, summary: "),
    ],
)
def test_one_turn_is_told_in_one_line(path: Steps, written: str, told: str) -> None:
    """Group and label, what it was, what it is."""
    (line,) = document_differences(RING, turn(RING, path, written))
    assert line == told or (told.endswith(": ") and line.startswith(told))


def test_tables_that_came_and_went_are_told_by_name() -> None:
    """A section between others does not change those."""
    longer = add(RING, "section")
    assert document_differences(RING, longer) == ("Section new section: added",)
    assert document_differences(longer, RING) == ("Section new section: taken away",)
    assert document_differences(RING, take_away(RING, ("edging",))) == ("Edging: taken away",)


def test_a_piece_takes_what_is_in_it_along() -> None:
    """Its sections and its start need no lines of their own."""
    shorter = take_away(PULLOVER, ("piece", 3))
    assert document_differences(PULLOVER, shorter) == ("Piece left sleeve: taken away",)
    assert document_differences(shorter, PULLOVER) == ("Piece left sleeve: added",)


def test_stitches_are_named_in_the_makers_terms() -> None:
    """As everywhere."""
    changed = turn(RING, ("work", "stitch"), "half_double_crochet")
    assert document_differences(RING, changed, "uk") == (
        "Work, stitch: treble crochet → half treble crochet",
    )


def test_patterns_of_its_own_are_told_by_name() -> None:
    """Their rows are not."""
    text = TEXTS["barn-dance-skirt"]
    (name,) = (line.split('"')[1] for line in text.splitlines() if line.startswith('name = "wheat'))
    changed = text.replace("5 dc in next", "3 dc in next")
    assert document_differences(text, changed) == (f"Stitch pattern {name}: changed",)


def test_what_is_no_design_is_told_in_lines() -> None:
    """As are changes that change nothing."""
    broken = RING.replace("[work]", "[work")
    assert document_differences(RING, broken) == ("lines of the text: 1 came, 1 went",)
    assert document_differences(broken, RING) == ("lines of the text: 1 came, 1 went",)
    assert document_differences(RING, RING + "# a word\n") == ("lines of the text: 1 came, 0 went",)


@pytest.mark.parametrize("name", ["ring-dance-skirt", "midsummer-dress", "fiddler-cardigan"])
def test_every_number_that_is_turned_is_told(name: str) -> None:
    """By the label of its knob."""
    for group in knobs(TEXTS[name]):
        for knob in group.knobs:
            if knob.kind == "number" and knob.written and knob.value.isdecimal():
                other = str(int(knob.value) + (1 if (knob.high or 1e9) > int(knob.value) else -1))
                (line,) = document_differences(TEXTS[name], turn(TEXTS[name], knob.path, other))
                assert line.endswith(f", {knob.label}: {knob.value} → {other}")
