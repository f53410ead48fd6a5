"""The table of elastics."""

from __future__ import annotations

import csv
from importlib import resources
from typing import get_args

import pytest

from frogless.design.trims import CoveredElastic
from frogless.plan.elastic import elastics, stretch

BASES = {"published", "common-practice", "memory", "derived"}


def test_each_kind_stretches_further_for_a_moment_than_in_wear() -> None:
    """Comfortable at most the longest, the longest below what it is pulled to over the hips."""
    for one in elastics():
        assert 1 < one.comfortable <= one.longest < one.pulled_on


def test_elastics_are_those_that_a_design_may_name() -> None:
    """A kind without figures, or figures without a kind, would be found by a maker."""
    named = set(get_args(CoveredElastic.model_fields["elastic"].annotation))
    assert {one.kind for one in elastics()} == named


def test_row_of_the_table_says_where_it_comes_from() -> None:
    """As every figure that ships."""
    text = (
        resources.files("frogless.plan").joinpath("data", "elastic_stretch.csv").read_text("utf-8")
    )
    rows = list(csv.DictReader(text.splitlines()))
    assert rows
    assert all(row["source"] and row["basis"] in BASES for row in rows)


def test_knitted_elastic_is_as_the_trade_has_it() -> None:
    """Comfortable to 1.4, wearable to 1.5 times its length (common practice)."""
    assert (stretch("knitted").comfortable, stretch("knitted").longest) == (1.4, 1.5)


def test_unknown_kind_is_no_elastic() -> None:
    """The document refuses it before; here it is a slip of ours."""
    with pytest.raises(KeyError):
        stretch("rubber")
