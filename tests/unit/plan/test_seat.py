"""Short rows over the seat and over one hip: where they turn, on whose side, and their proof."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import CHAIN, Design, basis, body, section, swatch

from frogless.draft import develop
from frogless.errors import InputError
from frogless.plan.model import CordPlan
from frogless.publish.drafted import Drafted
from frogless.rows.count import left_for_later

PERSON = body(waist_girth="104 cm", hip_girth="104 cm", waist_to_hip="20 cm")
PLAIN = section("skirt", to="hem")
WORKS = {
    "turned": 'rounds = "joined and turned"\nturning_chain = 1',
    "joined": 'rounds = "joined"\nturning_chain = 1',
    "spiral": 'rounds = "spiral"\nturning_chain = 0',
    "turned, chain counts": (
        'rounds = "joined and turned"\nturning_chain = 1\nturning_chain_counts = true'
    ),
    "joined, chain counts": 'rounds = "joined"\nturning_chain = 1\nturning_chain_counts = true',
    "turned, join at the left side": (
        'rounds = "joined and turned"\nturning_chain = 1\njoin_at = "left side"'
    ),
}


def drafted(
    folder: Path,
    seat: str,
    *sections: str,
    work: str = WORKS["turned"],
    tables: tuple[str, ...] = (),
) -> Drafted:
    """A skirt of 20 single crochets and 22 rounds in 10 cm, 208 at the waist, proven."""
    design = Design(
        sections or (PLAIN,),
        length="30 cm",
        work=work,
        start=f"{CHAIN}\nseat = {{ {seat} }}",
        stitch="single_crochet",
        tables=tables,
    )
    return develop(basis(folder, design.text, PERSON, swatch(20, 22, stitch="sc")))


def counts(made: Drafted, most: int = 9) -> list[int]:
    """Stitches of the first rows."""
    return [row.count for row in made.plan.program.pieces[0].rows[1:most]]


@pytest.mark.parametrize("at", ["back", "right side", "front", "left side"])
@pytest.mark.parametrize("work", WORKS)
def test_skirt_is_proven_when_it_is_raised(work: str, at: str, tmp_path: Path) -> None:
    """In every way of working, over the join and beside it, with shaping below."""
    shaped = section("skirt", shape="shaped", to="hem", girth="130 cm", points=8)
    made = drafted(tmp_path, f'extra = "3 cm", at = "{at}"', shaped, work=WORKS[work])
    short = [r for r in made.plan.program.pieces[0].rows if left_for_later(r.body)]
    assert len(short) == 7
    assert made.plan.sections[0].last_round == made.plan.program.pieces[0].rows[-1].number
    assert len(made.plan.main.depths) == len(made.plan.program.pieces[0].rows)
    assert list(made.plan.main.depths) == sorted(made.plan.main.depths)


def test_seat_is_turned_after_78_52_and_26_when_it_is_three_pairs_high(tmp_path: Path) -> None:
    """3 cm at 22 rows in 10 cm are 6.6 rows, 3 pairs; half of 208 in four equal steps."""
    made = drafted(tmp_path, 'extra = "3 cm"')
    assert counts(made) == [39, 78, 65, 52, 39, 26, 13, 208]
    told = {r.name: r.sentence for r in made.plan.remarks}["seat"]
    assert told.startswith("3 pairs of short rows")
    assert "2.5 cm longer at the back" in told


def test_wedge_lies_on_the_wearers_right_when_the_right_hip_is_higher(tmp_path: Path) -> None:
    """1.5 cm are 2 pairs; the round passes the right side a quarter of the way, at 52 of 208."""
    made = drafted(tmp_path, 'extra = "1.5 cm", at = "right side"')
    assert counts(made, 6) == [52 + 35, 70, 35 + 17, 34, 208 - 52 + 17]
    told = {r.name: r.sentence for r in made.plan.remarks}["seat"]
    assert "on the wearer's right side" in told


def test_eyelets_lie_below_the_seat_when_there_is_a_cord(tmp_path: Path) -> None:
    """Round 2 is the ninth row now."""
    cord = (
        '[waist]\nkind = "drawcord"\neyelet_round = 2\neyelets_about_every = 8\n'
        'tie_ends = "30 cm"\nspare_over_hips = "10 cm"'
    )
    made = drafted(tmp_path, 'extra = "3 cm"', tables=(cord,))
    assert isinstance(made.plan.main.waist, CordPlan)
    assert made.plan.main.waist.eyelet_round == 9


@pytest.mark.parametrize("extra", ["0.3 cm", "60 cm"])
def test_seat_is_refused_when_no_pairs_make_it(extra: str, tmp_path: Path) -> None:
    """Less than half a pair, or more pairs than the back has steps."""
    with pytest.raises(InputError, match="pairs of short rows of 1 cm"):
        drafted(tmp_path, f'extra = "{extra}"')
