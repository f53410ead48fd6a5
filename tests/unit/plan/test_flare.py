"""Circles, squares and gores: their girths, their points, their proof."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from sample_designs import CHAIN, Design, basis, body, section, swatch

from frogless.draft import develop
from frogless.errors import Impossible, InputError
from frogless.fabric.geometry import angles, shaping_points
from frogless.fabric.model import RowFabric
from frogless.plan import flare
from frogless.plan.make import plan
from frogless.plan.shaping import Round, gored, staggered
from frogless.publish.drafted import Drafted

PERSON = body(waist_girth="70 cm", hip_girth="66 cm", waist_to_hip="20 cm")
GORES = {"shape": "shaped", "gores": 8, "ease_allowed": ["-1 cm", "1 cm"]}
WORKS = {
    "turned": 'rounds = "joined and turned"\nturning_chain = 3',
    "joined": 'rounds = "joined"\nturning_chain = 3',
    "spiral": 'rounds = "spiral"\nturning_chain = 0',
    "turned, chain counts": (
        'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = true'
    ),
    "joined, chain counts": 'rounds = "joined"\nturning_chain = 3\nturning_chain_counts = true',
}


def drafted(folder: Path, *sections: str, work: str = WORKS["turned"], **more: str) -> Drafted:
    """A skirt of 20 stitches and 10 rounds in 10 cm, proven."""
    text = Design(
        sections, length=more.get("length", "45 cm"), work=work, start=more.get("start", CHAIN)
    ).text
    return develop(basis(folder, text, PERSON, more.get("gauge", swatch(20, 10))))


def off_line(row: RowFabric) -> float:
    """How far the second of 16 points lies off its line, as a share of the way to the next."""
    along = float(np.mean(angles((row,))[0][list(shaping_points(row)[1])])) * 16
    return abs(along % 1 - 0.5)


def circle(share: str, **keys: object) -> str:
    """A section that is a share of a circle."""
    return section("flare", shape="shaped", to="hem", flare=share, **keys)


@pytest.mark.parametrize("work", WORKS)
def test_full_circle_is_proven_when_its_points_are_staggered(work: str, tmp_path: Path) -> None:
    """No markers, and no round's increases above those of the one below."""
    made = drafted(tmp_path, circle("full circle", points=16), work=WORKS[work])
    (planned,) = made.plan.sections
    assert planned.lines == "staggered"
    assert not any(row.marks for row in made.plan.program.pieces[0].rows)
    rows = [r for r in made.fabric.pieces["skirt"] if r.row.number and shaping_points(r)]
    assert {len(shaping_points(row)) for row in rows} == {16}
    off = [off_line(row) for row in rows]
    assert max(off[::2]) < 0.2
    assert min(off[1::2]) > 0.3


@pytest.mark.parametrize("work", WORKS)
@pytest.mark.parametrize("start", ["70 cm", "76 cm"])
def test_gores_are_proven_and_alike(work: str, start: str, tmp_path: Path) -> None:
    """Odd or even gores, in every way of working: two points at each of eight lines."""
    begun = f'with = "chain"\ngirth = "{start}"\nease_allowed = ["-2 cm", "2 cm"]'
    gores = section("gores", to="hem", girth="108 cm", **GORES)
    made = drafted(tmp_path, gores, work=WORKS[work], start=begun)
    (planned,) = made.plan.sections
    assert planned.chosen is not None
    assert (planned.lines, planned.chosen.points) == ("gores", 16)
    assert planned.count_before % 8 == planned.count_after % 8 == 0
    assert (planned.count_after - planned.count_before) % 16 == 0


def test_gores_below_a_yoke_make_its_count_a_multiple_too(tmp_path: Path) -> None:
    """The counts above the gores are multiples of 8 as well."""
    yoke = section("yoke", shape="shaped", to="hip", ease="4 cm", ease_allowed=["2 cm", "6 cm"])
    gores = section("gores", to="hem", girth="120 cm", **GORES)
    made = plan(basis(tmp_path, Design((yoke, gores)).text, PERSON, swatch(20, 10)))
    assert all(s.count_before % 8 == 0 for s in made.sections)


def test_square_has_four_corners_that_add_what_the_gauge_asks(tmp_path: Path) -> None:
    """8 times 10 mm over 5 mm a stitch are 16 in a round: four at each corner, every round."""
    made = drafted(tmp_path, circle("square"), length="20 cm")
    (planned,) = made.plan.sections
    assert planned.chosen is not None
    assert (planned.chosen.points, planned.chosen.add) == (4, 4)
    assert len(planned.chosen.rhythm.rounds) == 20
    assert planned.count_after - planned.count_before == 320


def test_circle_keeps_its_lines_when_it_is_not_staggered(tmp_path: Path) -> None:
    """A polygon, if that is wanted: markers lead the way."""
    made = drafted(tmp_path, circle("half circle", points=8, stagger=False))
    assert made.plan.sections[0].lines == "even"
    assert any(row.marks for row in made.plan.program.pieces[0].rows)


@pytest.mark.parametrize(
    "keys", [{"girth": "2 m"}, {"ease": "1 cm"}, {"gores": 8}], ids=["girth", "ease", "gores"]
)
def test_circle_is_refused_when_another_girth_is_asked_for(
    keys: dict[str, object], tmp_path: Path
) -> None:
    """It has one already."""
    with pytest.raises(InputError, match=f'leave "{next(iter(keys))}" out'):
        drafted(tmp_path, circle("full circle", **keys))


def test_straight_section_is_refused_when_it_flares(tmp_path: Path) -> None:
    """The shape says that nothing changes."""
    with pytest.raises(InputError, match="is straight and has no use for flare"):
        drafted(tmp_path, section("flare", to="hem", flare="full circle"))


def test_full_circle_is_refused_when_eight_points_cannot_reach(tmp_path: Path) -> None:
    """565 stitches in 45 rounds are 12.6 in each."""
    with pytest.raises(Impossible):
        drafted(tmp_path, circle("full circle", points=8))


def test_lines_between_gores_stay_straight_when_gores_are_odd() -> None:
    """Gores of 15 grow to 17: line i moves on by 2 i + 1."""
    first = gored(Round(120, 16, 1))
    second = gored(Round(136, 16, 1))
    assert first.positions()[:4] == (6, 7, 21, 22)
    lines = first.positions()[1::2]
    assert second.positions()[1::2] == tuple(p + 2 * i + 1 for i, p in enumerate(lines))


def test_staggered_points_lie_between_the_lines() -> None:
    """Lines at 5, 15, …; between them 0, 10, …; a counted chain cannot be increased in."""
    one = Round(80, 8, 1)
    assert one.positions()[:2] == (5, 15)
    assert staggered(one).positions()[:2] == (0, 10)
    assert staggered(Round(80, 8, 1, chain_counts=True)).positions()[:2] == (1, 10)


def test_flares_widen_by_their_share_of_a_circle() -> None:
    """2π, π, π / 2 and 8 times the length."""
    girths = {name: round(flare.widened(name, 0, 1000)) for name in flare.RATES}
    assert girths == {
        "full circle": 6283, "half circle": 3142, "quarter circle": 1571, "square": 8000,
    }  # fmt: skip
