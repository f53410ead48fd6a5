"""Stretches of edges from their words."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.edges import read_along, read_stretches
from frogless.rows.nodes import Base


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("the foundation edge of skirt", Base("skirt", "foundation")),
        ("the last row of front, left shoulder", Base("front, left shoulder", "last_row")),
        ("the row ends of band", Base("band", "row_ends")),
        ("the row ends at the right edge of back", Base("back", "right_edge")),
        ("the row ends at the left edge of back, from last to first",
         Base("back", "left_edge", reverse=True)),
        ("rnd 22 of yoke", Base("yoke", "row", 22)),
        ("round 22 of yoke", Base("yoke", "row", 22)),
        ("row 40 of back from st 3 on", Base("back", "row", 40, 2)),
        ("the top of the foundation of back", Base("back", "row")),
        ("the underside of the foundation of back", Base("back", "underside")),
        ("6 chs along the underside of rnd 23 of yoke (sts 75–80)",
         Base("yoke", "underside", 23, 74, 6)),
        ("52 sts along rnd 22 of yoke (sts 38-89)", Base("yoke", "row", 22, 37, 52)),
        ("1 st along rnd 22 of yoke (st 38)", Base("yoke", "row", 22, 37, 1)),
        ("0 sts along rnd 22 of yoke (from st 38)", Base("yoke", "row", 22, 37, 0)),
        ("12 row ends of band (row ends 3–14)", Base("band", "row_ends", 0, 2, 12)),
        ("12 row ends at the left edge of back (row ends 3–14), from last to first",
         Base("back", "left_edge", 0, 2, 12, reverse=True)),
    ],
)  # fmt: skip
def test_stretch_is_read_from_its_words(text: str, expected: Base) -> None:
    """Numbers from one become places from 0."""
    assert read_stretches(text) == (expected,)


def test_several_stretches_are_read_in_their_order() -> None:
    """One after the other, as they are met."""
    bases = read_stretches("rnd 22 of yoke, then the row ends of band, from last to first")
    assert bases == (Base("yoke", "row", 22), Base("band", "row_ends", reverse=True))


def test_edge_of_a_seam_has_its_number() -> None:
    """Of all its stretches together."""
    assert read_along("9 sts along the last row of band") == (9, (Base("band", "last_row"),))
    told = "9 places, made up of row 3 of band, then 5 row ends of band (row ends 1–5)"
    assert read_along(told) == (
        9,
        (Base("band", "row", 3), Base("band", "row_ends", count=5)),
    )


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("the hem of skirt", '"the hem of skirt" is no edge; write for example'),
        ("51 sts along rnd 22 of yoke (sts 38–89)", "from the first number to the last are 52"),
        ("rnd of yoke", "is no edge"),
    ],
)
def test_stretch_that_is_not_understood_is_shown(text: str, complaint: str) -> None:
    """With an example of each way to tell one."""
    with pytest.raises(InputError) as error:
        read_stretches(text)
    assert complaint in str(error.value)
    with pytest.raises(InputError, match="is no edge"):
        read_along("nine sts along the hem")
