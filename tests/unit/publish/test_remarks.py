"""Remarks and cautions: where they stand and what they say."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example
from published import notes, part, published, shown

from frogless.fit.model import Caution
from frogless.plan.model import Remark
from frogless.publish.drafted import Drafted
from frogless.publish.front import cautions
from frogless.publish.pattern import pattern
from frogless.publish.remarks import caution_note, notes_at, place_of, remark_note, sentence


def with_remark(name: str, text: str, *, serious: bool = True) -> Drafted:
    """The example with one remark more."""
    drafted = shown(Example())
    remarks = (*drafted.plan.remarks, Remark(name, text, serious))
    return replace(drafted, plan=replace(drafted.plan, remarks=remarks))


@pytest.mark.parametrize(
    ("name", "place"),
    [
        ("edging_girth", "edging"),
        ("elastic_cover", "elastic"),
        ("bead_hole", "strand"),
        ("plies", "strand"),
        ("high_hip", "glance"),
        ("rib_gauge", "band"),
        ("eyelet_round", "cord"),
        ("hang_test", "gauge"),
        ("hung_width", "gauge"),
        ("ease_on_the_way", "glance"),
        ("something_new", "before"),
    ],
)
def test_remark_is_told_where_it_matters(name: str, place: str) -> None:
    """What nobody has placed yet is told before the start, never lost."""
    assert place_of(Remark(name, "")) == place


def test_remark_without_words_of_ours_is_told_in_the_planners() -> None:
    """As a sentence; serious ones ask to be noted, others are hints."""
    drafted = with_remark("side_join_points", "its two shaping points lie at centre front and back")
    (told,) = [n for n in notes_at(drafted, "before") if n.kind != "caution"]
    assert told.text == "Its two shaping points lie at center front and back."
    assert (told.kind, told.title) == ("remark", "Please note")
    mild = remark_note(drafted, Remark("something", "it is so", serious=False))
    assert (mild.kind, mild.title, mild.text) == ("hint", "Hint", "It is so.")


def test_remark_on_a_strand_stands_at_that_strand_alone() -> None:
    """Its sentence begins with the strand's name, which the heading already says."""
    drafted = with_remark("strand_taut", "front strand: it would hang taut")
    told = [n.text for n in notes(part(pattern(drafted), "Front strand"))]
    assert "It would hang taut." in told
    other = with_remark("strand_taut", "back strand: it would hang taut")
    assert not [n for n in notes(pattern(other).blocks) if "taut" in n.text]


def test_planners_words_for_the_designer_do_not_reach_the_maker() -> None:
    """No key of a design or swatch file is named; the maker has neither."""
    for design, body in (("ring-dance-skirt", "dancer-4"), ("procession-skirt", "dancer-1")):
        for note in notes(published(Example(design, body)).blocks):
            assert "write " not in note.text
            assert "_" not in note.text


def test_missing_high_hip_is_asked_for_at_the_sizes() -> None:
    """Dancer 4 was not measured there."""
    told = notes(part(published(Example(body="dancer-4")), "At a glance"))
    assert [n.text for n in told if "high hip was not measured" in n.text]
    assert not notes(part(published(Example()), "At a glance"))


def test_caution_names_its_source() -> None:
    """Or says that none was published."""
    drafted = shown(Example())
    sourced = caution_note(drafted, Caution("hands", "Rest.", "a guide"))
    assert sourced.text == "Rest. (Source: a guide.)"
    assert sourced.kind == "caution"
    assert caution_note(drafted, Caution("hands", "Rest.", "from memory")).text == (
        "Rest. (No published source.)"
    )


def test_caution_for_children_stands_first_of_all() -> None:
    """Before anything is bought; without such a caution there is no such part."""
    drafted = shown(Example())
    assert cautions(drafted) == ()
    beads = Caution("small_parts", "Beads are small parts.", "rules")
    fit = replace(drafted.fit, cautions=(beads, *drafted.fit.cautions))
    blocks = pattern(replace(drafted, fit=fit)).blocks
    assert next(n.text for n in notes(blocks)).startswith("Beads are small parts.")


def test_sentence_begins_and_ends_as_one() -> None:
    """A capital, and one full stop."""
    assert sentence("it is so") == "It is so."
    assert sentence("Is it so?") == "Is it so?"
