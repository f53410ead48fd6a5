"""Edges told in words that do not add up, or are none."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.edges import read_along, read_stretches
from frogless.rows.nodes import Base


def test_piece_keeps_its_name_when_that_has_commas() -> None:
    """Names are the designer's."""
    told = "21 sts along row 54 of front, right side (sts 1–21), from last to first"
    base = Base("front, right side", "row", row=54, count=21, reverse=True)
    assert read_stretches(told) == (base,)
    assert read_along(told) == (21, (base,))


@pytest.mark.parametrize(
    ("told", "complaint"),
    [
        ("the brim of hat", '"the brim of hat" is no edge; write for example'),
        ("the last row of hat, then the brim", '"the brim" is no edge'),
        ("8 sts along row 2 of hat (sts 1–7)", "from the first number to the last are 7 places"),
    ],
)
def test_edge_is_refused_when_it_is_none_or_miscounted(told: str, complaint: str) -> None:
    """With what is accepted."""
    with pytest.raises(InputError) as error:
        read_stretches(told)
    assert complaint in str(error.value)


def test_seam_edge_is_refused_when_it_has_no_number() -> None:
    """Both edges of a seam say how many places they have."""
    with pytest.raises(InputError, match="is no edge"):
        read_along("the last row of hat")
