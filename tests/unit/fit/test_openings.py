"""Openings of garments of several pieces, and what passes them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from garments import BODY, basis, hat, measure, tube_top, two_panels

from frogless.design.document import Kind
from frogless.fit.cautions import cautions
from frogless.fit.model import GoingOn
from frogless.fit.openings import has_neck, is_strapless, nothing_to_pass, openings
from frogless.fit.staying_up import is_held, staying_up_on
from frogless.plan.basis import Basis
from frogless.plan.model import ElasticPlan, Measure, Plan


@pytest.fixture
def top(tmp_path: Path) -> Basis:
    """A top for a bust of 96, a head of 57, shoulders of 104."""
    return basis(tmp_path, "top", "front", "back")


def found(
    basis: Basis, plan: Plan, kind: Kind = "top", stretch: float | None = None
) -> dict[str, GoingOn]:
    """The openings by their name."""
    return {one.name: one for one in openings(plan, kind, basis.body, stretch, "cm")}


def with_measures(plan: Plan, *measures: Measure) -> Plan:
    """The plan whose first piece has those measures."""
    first, *others = plan.pieces
    return replace(plan, pieces=(replace(first, measures=measures), *others))


def test_the_neck_of_joined_panels_is_both_edges_together(top: Basis) -> None:
    """24 and 31 are 55, for a head of 57: 3.6 % short."""
    edges = (measure("neck edge", "edge", 240.0, 0), measure("neck edge", "edge", 310.0, 0))
    plan = two_panels(top)
    front, back = (
        replace(piece, measures=(edge,)) for piece, edge in zip(plan.pieces, edges, strict=True)
    )
    neck = found(top, replace(plan, pieces=(front, back)))["neck opening"]
    assert (neck.opening, neck.piece) == (pytest.approx(550.0), "front and back")
    assert neck.needed_stretch == pytest.approx(57 / 55 - 1)


def test_a_neck_that_no_piece_tells_is_not_checked(top: Basis) -> None:
    """And it says so; a tube has none."""
    bare = with_measures(two_panels(top))
    assert has_neck(bare)
    assert found(top, bare)["neck opening"].verdict == "uncertain"
    assert "is not checked" in found(top, bare)["neck opening"].reasons[0]
    assert "neck opening" not in found(top, tube_top(top, 130))


def test_a_fabric_that_gives_too_little_does_not_pass(top: Basis) -> None:
    """50 cm that stretch 10 % are 55: 2 short of 57, and 51.8 would do."""
    neck = found(top, two_panels(top, 500.0), stretch=0.1)["neck opening"]
    assert (neck.verdict, neck.short) == ("does not pass", pytest.approx(20.0))
    assert any("51.8" in way or "52 cm" in way for way in neck.ways_out)


@pytest.mark.parametrize(("girth", "verdict"), [(190.0, "uncertain"), (260.0, "passes")])
def test_a_cuff_is_sure_without_a_hand_only_when_it_passes_any(
    top: Basis, girth: float, verdict: str
) -> None:
    """The widest hand of surveys and tables is what it is held against."""
    plan = with_measures(two_panels(top), measure("cuff", "girth", girth, 30))
    cuff = found(top, plan, "cardigan")["cuff"]
    assert (cuff.verdict, cuff.over) == (verdict, "hand")


def test_a_hat_without_a_brim_is_not_checked(tmp_path: Path) -> None:
    """Every hat has to go on."""
    head = basis(tmp_path, "hat", "hat")
    brim = found(head, with_measures(hat(head)), "hat")["brim"]
    assert (brim.verdict, brim.piece) == ("uncertain", "")


def test_a_dress_is_narrowest_where_it_is_told_to_be(top: Basis) -> None:
    """A tube of 81 for shoulders of 104 or hips of 102: hips are nearer."""
    narrow = found(top, tube_top(top, 130), "dress", 0.3)["narrowest round"]
    assert (narrow.widest_at, narrow.over, narrow.verdict) == ("hip_girth", "feet", "passes")


@pytest.mark.parametrize("kind", ["cardigan", "shawl", "bag"])
def test_what_opens_is_wrapped_or_carried_has_nothing_to_pass(kind: Kind) -> None:
    """Each with its own reason."""
    going = nothing_to_pass(kind)
    assert going.verdict == "passes"
    assert going.reasons != nothing_to_pass("top").reasons


def test_straps_hold_a_top_up(top: Basis) -> None:
    """Cords among its pieces; without them its own tightness only."""
    tube = tube_top(top, 130)
    assert is_strapless(tube)
    assert not is_held(tube)
    assert "Only its own tightness" in staying_up_on(tube, "top")
    straps = replace(tube.main, name="strap", construction="cord", landmarks=())
    strapped = replace(tube, pieces=(tube.main, straps))
    assert is_held(strapped)
    assert staying_up_on(strapped, "top") == "Straps hold it up."


def test_an_elastic_holds_a_top_up_wherever_it_is(top: Basis) -> None:
    """Named, with its width."""
    tube = tube_top(top, 130)
    ring = ElasticPlan(
        10.0, "knitted", 800.0, 25.0, 825.0, 130, 2, 260, 1.3, 1.8, tube.landmarks[0].because
    )
    held = replace(tube, pieces=(replace(tube.main, waist=ring),))
    assert is_held(held)
    assert "covered knitted elastic 10 mm wide" in staying_up_on(held, "top")


def test_what_hangs_from_the_shoulders_needs_no_holding(top: Basis) -> None:
    """Nor a hat or a bag."""
    assert staying_up_on(two_panels(top), "top") == ""
    assert staying_up_on(hat(top), "hat") == ""


def test_ties_on_a_childs_top_are_warned_of(tmp_path: Path) -> None:
    """B11: no neck cords; published by the US commission for product safety."""
    child = basis(tmp_path, "top", "top", body={**BODY, "bust_girth": "66 cm"})
    tube = tube_top(child, 110)
    ties = replace(tube.main, name="tie", construction="cord", landmarks=())
    told = cautions(replace(tube, pieces=(tube.main, ties)), child.body, for_children=True)
    (caution,) = [one for one in told if one.key == "child_ties"]
    assert "neck of a child's garment" in caution.sentence
    assert "1996" in caution.source
