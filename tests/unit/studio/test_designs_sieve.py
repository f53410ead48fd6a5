"""Filters that combine, say how many they leave, and what to let go of."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from frogless.studio.designs.facets import FACETS
from frogless.studio.designs.facts import Facts, facts
from frogless.studio.designs.sieve import Wanted, fits, found, loosened, options, wanted
from frogless.studio.examples import examples


@dataclass(frozen=True)
class One:
    """A design by name."""

    name: str
    facts: Facts


ALL = tuple(One(one.title, facts(one.text)) for one in examples("design").values())


def names(looked_for: Wanted) -> set[str]:
    """What is found."""
    return {one.name for one in ALL if fits(one, looked_for, "us")}


def test_values_of_a_facet_widen() -> None:
    """A hat or a bag."""
    both = names(wanted({"kind": ["hat", "bag"]}))
    assert both == names(wanted({"kind": ["hat"]})) | names(wanted({"kind": ["bag"]}))


def test_facets_narrow_each_other() -> None:
    """A skirt, and in a spiral."""
    assert names(wanted({"kind": ["skirt"], "worked": ["spiral"]})) == {"Procession skirt"}


def test_details_are_all_wanted() -> None:
    """Beads and elastic means both."""
    assert names(wanted({"details": ["beads", "elastic"]})) == {"Ring dance skirt"}


@pytest.mark.parametrize("words", ["picot", "PICOT shawl", "crescent picots", "spiral hat"])
def test_all_words_have_to_occur(words: str) -> None:
    """In title, summary or what the design is like, in any order and case."""
    both = set.intersection(*(names(wanted({}, word)) for word in words.split()))
    assert names(wanted({}, words)) == both
    assert both


def test_commas_stand_between_words() -> None:
    """As people write lists."""
    assert names(wanted({}, "shawl, picot,")) == names(wanted({}, "shawl picot")) != set()


def test_word_that_occurs_nowhere_finds_nothing() -> None:
    """Not even a part of it does."""
    assert names(wanted({}, "spiral xylophone")) == set()


def test_body_needs_every_measurement() -> None:
    """Who measured waist and hip only can make what needs no more."""
    looked_for = Wanted(body="own:1", measured=frozenset({"waist_girth", "hip_girth"}))
    found_names = names(looked_for)
    assert "Sunwheel skirt" in found_names
    assert "Moth wing shawl" in found_names
    assert "Ring dance skirt" not in found_names


def test_unknown_values_and_facets_find_nothing_or_are_passed_over() -> None:
    """An address that somebody wrote by hand does no harm."""
    assert wanted({"colour": ["red"]}).number == 0
    assert names(wanted({"kind": ["tent"]})) == set()


def test_counts_of_options_are_what_choosing_them_finds() -> None:
    """For every value of every facet, beside another filter."""
    looked_for = wanted({"details": ["elastic"]})
    for facet in FACETS:
        for option in options(ALL, facet, looked_for, "us"):
            chosen = {"details": ["elastic"]}
            chosen[facet.key] = [*chosen.get(facet.key, []), option.value]
            assert option.count == found(ALL, wanted(chosen), "us")


def test_loosening_says_what_would_be_found() -> None:
    """Each filter with the number that is there without it, the best first."""
    looked_for = wanted({"kind": ["hat"], "details": ["beads"]}, "spiral")
    told = loosened(ALL, looked_for, "us")
    assert [one.label for one in told] == ["Beads"]
    assert [one.count for one in told] == [found(ALL, one.wanted, "us") for one in told]
