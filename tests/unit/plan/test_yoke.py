"""Yokes in whole designs: through the planner's door, with a border at the neck."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import table
from sample_yokes import YokeDesign, edge, yoke_basis

from frogless.design.pieces.raglan import RaglanChoice
from frogless.errors import InputError
from frogless.fabric.expand import expand
from frogless.plan.make import plan
from frogless.plan.pieces.made import edge_named
from frogless.plan.pieces.raglan import plan_raglan
from frogless.plan.pieces.yoke import near
from frogless.plan.pieces.yoke_rows import Parts, halved
from frogless.stitches.load import dictionary

KEYS: dict[str, object] = {
    "neck": "57.5 cm",
    "depth": "22 cm",
    "ease": "8 cm",
    "arm_ease": "4 cm",
    "underarm": "3.75 cm",
}
BAND = table(
    "[piece]",
    construction="border",
    name="neckband",
    on=("yoke.neck",),
    stitch="double_crochet",
    height="2 cm",
)


@pytest.mark.parametrize(
    ("construction", "more"),
    [("raglan yoke", {}), ("round yoke", {"at": ("4 cm", "9 cm", "15 cm")})],
)
def test_yoke_is_planned_by_its_name_when_a_design_has_one(
    construction: str, more: dict[str, object], tmp_path: Path
) -> None:
    """With a neckband on the other side of the foundation."""
    basis, _ = yoke_basis(tmp_path, YokeDesign(construction, {**KEYS, **more}, tables=(BAND,)))
    made = plan(basis)
    yoke, band = made.pieces
    assert (yoke.construction, made.main.name) == (construction, "yoke")
    fabric = expand(made.program, dictionary())
    first = fabric.pieces["neckband"][0]
    assert (first.used.tolist(), first.overrun) == ([1] * yoke.counts[0], 0)
    assert band.counts[0] == yoke.counts[0]
    assert made.gauges["yoke"].stitch == "double_crochet"


def test_yarn_is_not_cut_when_the_body_goes_on_from_a_yoke(tmp_path: Path) -> None:
    """A piece on yoke.body is worked on with the same yarn."""
    hem = table(
        "[piece]", construction="border", name="hem", on=("yoke.body",), stitch="double_crochet"
    )
    basis, entry = yoke_basis(tmp_path, YokeDesign(keys=KEYS, tables=(hem,)))
    assert isinstance(entry, RaglanChoice)
    last = plan_raglan(basis, entry, "piece.1", {}).pieces[0].rows[-1]
    assert (last.side, last.end.turn, last.end.fasten_off) == ("WS", True, False)
    fabric = expand(plan(basis).program, dictionary())
    assert fabric.pieces["hem"][0].places == 160


def test_foundation_takes_its_height_when_it_is_of_stitches(tmp_path: Path) -> None:
    """A round of 1 cm is the first of 22."""
    keys = {**KEYS, "with": "foundation_double_crochet"}
    basis, entry = yoke_basis(tmp_path, YokeDesign(keys=keys))
    assert isinstance(entry, RaglanChoice)
    (planned,) = plan_raglan(basis, entry, "piece.1", {}).plans
    assert (planned.depths[0], planned.depths[-1]) == (10.0, 220.0)
    assert len(planned.counts) == 22


def test_edge_of_a_yoke_is_refused_when_it_has_none_of_that_name(tmp_path: Path) -> None:
    """Those it has are listed."""
    basis, entry = yoke_basis(tmp_path, YokeDesign(keys=KEYS))
    assert isinstance(entry, RaglanChoice)
    made = plan_raglan(basis, entry, "piece.1", {})
    with pytest.raises(InputError, match=r'"yoke.right sleeve", "yoke.left sleeve", "yoke.neck"'):
        edge_named("yoke.sleeve", {"yoke": made}, basis.place("piece.2.start.on"))
    assert edge(made, "right sleeve").landmark is not None


def test_an_odd_stitch_stands_by_the_join_when_the_back_is_halved() -> None:
    """After it, or on it when the chain counts; the other way round it is met there too."""
    odd, even = halved(35, 12, on_join=False), halved(34, 12, on_join=True)
    assert (odd.first, odd.last) == (18, 17)
    assert (even.first, even.last) == (18, 16)
    assert even.as_met(on_join=True) == Parts(17, 12, 34, 17)
    assert odd.as_met(on_join=False).as_met(on_join=False) == odd


def test_parts_grow_on_both_sides_of_each_line() -> None:
    """Eight in all when each side gains one."""
    parts = Parts(17, 12, 34, 17)
    assert parts.grown(1, 1) == Parts(18, 14, 36, 18)
    assert parts.grown(1, 1).count - parts.count == 8
    assert parts.grown(2, 1).count - parts.count == 12


def test_near_counts_are_above_zero() -> None:
    """No part has no stitches."""
    assert list(near(1.4, 3)) == [1, 2, 3, 4]
