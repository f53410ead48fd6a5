"""Size tables as bodies."""

from __future__ import annotations

from itertools import pairwise

import pytest

from frogless.body.plausible import question, refusals
from frogless.body.size_tables import TABLES, sizes
from frogless.errors import InputError


def test_women_run_from_xs_to_5x() -> None:
    """In the order of the table."""
    names = [body.name for body in sizes("women")]
    assert names == ["XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X"]


def test_measurement_is_the_middle_of_its_range() -> None:
    """The hip of a woman's M is 96.5 to 101.5 cm: 99 ± 1.4 cm, and says where it stands."""
    hip = sizes("women")[2].measurements["hip_girth"]
    assert hip.value.value == 990.0
    assert hip.value.uncertainty == pytest.approx(25 / 3**0.5)
    assert hip.source == "CYC woman, size M"
    assert not hip.estimated


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize("key", ["waist_girth", "hip_girth", "bust_girth"])
def test_girths_grow_with_the_size(table: str, key: str) -> None:
    """Or the columns are mixed up."""
    girths = [body.measurements[key].value.value for body in sizes(table)]
    assert all(small < large for small, large in pairwise(girths))


@pytest.mark.parametrize("table", TABLES)
def test_no_printed_size_is_refused_or_questioned(table: str) -> None:
    """The limits of what is usual take in the trade's own tables, children by their age."""
    assert [(b.name, question(b)) for b in sizes(table) if question(b) or refusals(b)] == []


def test_children_have_their_age() -> None:
    """Size 6 is six years old."""
    assert [body.age for body in sizes("children")][:3] == [2.0, 4.0, 6.0]


def test_unknown_table_is_refused_with_those_there_are() -> None:
    """And the one that was meant."""
    with pytest.raises(InputError, match='did you mean "women"\\?; known are women, children'):
        sizes("woman")
