"""Edgings in words, round corners."""

from __future__ import annotations

import pytest

from frogless.rows.count import consumed
from frogless.stitches.edgings import edging, edgings
from frogless.stitches.load import dictionary, stands_on
from frogless.write.stitch_motif import say_corner


@pytest.mark.parametrize(
    ("key", "rounds"),
    [
        ("crab", ("3 sc in first st, sc in each remaining st across",
                  "rev sc in next 3 sts, rev sc in each remaining st across")),
        ("shell", ("7 dc in first st, skip next 2 sts, *sc in next st, skip next 2 sts, 5 dc in next "
                   "st, skip next 2 sts; rep from * to last 3 sts, sc in next st, skip next 2 sts",)),
        ("scallop", ("(sc, ch 4, sc) in first st, ch 4, skip next 3 sts, *sc in next st, ch 4, skip "
                     "next 3 sts; rep from * across",
                     "sl st in first st, (sc, hdc, 5 dc, hdc, sc) in next ch-4 sp, sl st in next st, "
                     "(sc, hdc, 3 dc, hdc, sc) in next ch-4 sp, *sl st in next st, (sc, hdc, 3 dc, "
                     "hdc, sc) in next ch-4 sp; rep from * across")),
        ("ribbed", ()),
    ],
)  # fmt: skip
def test_corner_and_side_are_told_round_by_round(key: str, rounds: tuple[str, ...]) -> None:
    """The corner is the first place; an edging that turns none says nothing."""
    assert say_corner(edging(key), dictionary(), "us") == rounds


@pytest.mark.parametrize("key", edgings())
def test_each_round_of_a_corner_is_told(key: str) -> None:
    """With the corner first, which is one place to begin with."""
    made = edging(key)
    assert len(say_corner(made, dictionary(), "uk")) == len(made.sides)
    assert all(consumed(side.corner, stands_on(dictionary())) == 1 for side in made.sides[:1])
