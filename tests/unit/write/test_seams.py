"""Seams in words."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Base, Seam
from frogless.rows.spread import even_spread
from frogless.write.seams import say_seam, say_spread
from frogless.write.words import Words


@pytest.mark.parametrize(
    ("spread", "expected"),
    [
        ((2,), "2 in next"),
        ((1, 1, 1), "1 in each of next 3"),
        ((1, 2, 1, 2), "[1 in next, 2 in next] 2 times"),
        ((1, 1, 2) * 4 + (2,), "[1 in each of next 2, 2 in next] 3 times, 1 in each of next 2, "
         "2 in each of next 2"),
        ((0, 3), "0 in next, 3 in next"),
        (
            ((1, 2) * 2 + (3,)) * 2,
            "[[1 in next, 2 in next] 2 times, 3 in next] 2 times",
        ),
    ],
)  # fmt: skip
def test_spread_is_said_in_repeats(us: Words, spread: tuple[int, ...], expected: str) -> None:
    """Repeats go into brackets, so that as little as possible is left to read."""
    assert say_spread(spread, us) == expected


def test_brackets_are_two_deep_at_most(us: Words) -> None:
    """What repeats deeper inside is written out."""
    inner = ((1, 2) * 2 + (3,)) * 2 + (4,)
    said = say_spread(inner * 2, us)
    assert "[[" in said
    assert "[[[" not in said


def test_seam_names_edges_and_stitch(us: Words, uk: Words) -> None:
    """With its spread, or evenly."""
    first, second = (Base("skirt", "foundation"),), (Base("band", "row_ends"),)
    seam = Seam("waist", "single_crochet", first, second, 3, 2, (2, 1))
    line = say_seam(seam, us)
    assert (line.label, line.count) == ("Seam waist", "3 sc")
    assert line.text == (
        "Sc through both edges: 1 in each of 3 sts along the foundation edge of skirt; "
        "2 row ends of band: 2 in next, 1 in next."
    )
    even = say_seam(Seam("waist", "slip_stitch", second, first, 1, 1), uk)
    assert even.text == (
        "Ss through both edges: 1 in each of 1 row end of band; "
        "1 st along the foundation edge of skirt, spread evenly."
    )


def test_an_even_spread_is_told_by_shares(us: Words) -> None:
    """Scenario B1: 144 stitches over 98 row ends, 46 take two and 52 take one."""
    first, second = (Base("skirt", "foundation"),), (Base("waistband", "row_ends"),)
    seam = Seam("band", "single_crochet", first, second, 144, 98, even_spread(144, 98))
    assert say_seam(seam, us).text.endswith("spread evenly (46 take 2 and 52 take 1).")


def test_edges_of_equal_length_are_joined_one_for_one(us: Words) -> None:
    """Nobody reads "1 in each of next 9" twice."""
    first, second = (Base("band", "last_row"),), (Base("band", "foundation"),)
    line = say_seam(Seam("ends", "slip_stitch", first, second, 9, 9, (1,) * 9), us)
    assert line.text.endswith("9 sts along the foundation edge of band, 1 in each.")


def test_edges_of_several_stretches_are_told_with_their_sum(us: Words) -> None:
    """An armhole and the cap that is set into it; 12 stitches over 8 places."""
    cap = (Base("sleeve", "last_row", count=6), Base("sleeve", "row_ends", count=6))
    armhole = (Base("back", "left_edge", count=4), Base("front", "right_edge", count=4))
    line = say_seam(Seam("sleeve", "slip_stitch", cap, armhole, 12, 8, (1, 2) * 4), us)
    assert line.text == (
        "Sl st through both edges: 1 in each of 12 places, made up of 6 sts along the last row of "
        "sleeve (sts 1–6), then 6 row ends of sleeve (row ends 1–6); 8 row ends, made up of 4 row "
        "ends at the left edge of back (row ends 1–4), then 4 row ends at the right edge of front "
        "(row ends 1–4), spread evenly (4 take 2 and 4 take 1)."
    )


def test_rounds_are_called_rounds_where_it_is_known_which_pieces_have_them(us: Words) -> None:
    """Without that they are rows."""
    edge = (Base("yoke", "row", 22),)
    seam = Seam("hood", "single_crochet", edge, (Base("hood", "last_row"),), 9, 9, (1,) * 9)
    assert "9 sts along rnd 22 of yoke;" in say_seam(seam, us, {"yoke"}).text
    assert "9 sts along row 22 of yoke;" in say_seam(seam, us).text
