"""Edges of pieces joined: stitch on stitch, eased in, or refused."""

from __future__ import annotations

import pytest
from sample_designs import Made as MadeBasis

from frogless.design.document import JoinChoice
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.joins import Joined, plan_joins, seam_along
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.rows.nodes import Base, Edge
from frogless.units import Measured


@pytest.fixture
def basis(made: MadeBasis) -> Basis:
    """Any design: joins take their lengths from the edges."""
    return made('[[section]]\nname = "all"\ngirth = "waist_girth"\nlength = "60 cm"')


def edge(
    basis: Basis,
    name: str,
    kind: Edge,
    places: int,
    length: float,
    *,
    bridges: tuple[int, ...] = (),
) -> OfferedEdge:
    """An edge of one stretch of the piece "front"."""
    base = Base("front", kind)
    gauge = basis.trim_gauge("double_crochet")
    return OfferedEdge(name, (base,), (places,), Measured(length, 2.0), gauge, bridges=bridges)


def joined(
    basis: Basis,
    *edges: OfferedEdge,
    first: str = "front.one",
    second: str = "front.two",
    **more: str,
) -> Joined:
    """One join of edges of one piece."""
    made = {"front": Made((), (), edges)}
    choice = JoinChoice(name="side seam", first=(first,), second=(second,), **more)  # type: ignore[arg-type]
    return plan_joins(basis, (choice,), made)


def test_edges_of_equal_counts_are_joined_one_to_one(basis: Basis) -> None:
    """41 row ends to 41 row ends."""
    found = joined(
        basis,
        edge(basis, "one", "right_edge", 41, 410.0),
        edge(basis, "two", "left_edge", 41, 410.0),
    )
    (seam,), (plan,) = found.seams, found.plans
    assert (seam.count, seam.over, seam.spread) == (41, 41, (1,) * 41)
    assert (plan.first, plan.second) == ("front one", "front two")
    assert (plan.first_length.value, plan.second_length.value, plan.limit) == (410.0, 410.0, 15.0)
    assert found.remarks == ()


def test_edges_of_unequal_counts_are_spread_evenly_over_the_coarser(basis: Basis) -> None:
    """62 stitches of a cap to 45 row ends of an armhole: 17 take two, 28 take one."""
    found = joined(
        basis,
        edge(basis, "one", "left_edge", 45, 453.0),
        edge(basis, "two", "last_row", 62, 446.0),
    )
    (seam,) = found.seams
    assert (seam.count, seam.over) == (62, 45)
    assert seam.first[0].edge == "last_row"
    assert (seam.spread.count(2), seam.spread.count(1)) == (17, 28)


def test_a_longer_edge_is_told_of_when_it_is_eased_in(basis: Basis) -> None:
    """4 % is more than passes unseen."""
    found = joined(
        basis,
        edge(basis, "one", "left_edge", 30, 312.0),
        edge(basis, "two", "right_edge", 30, 300.0),
    )
    (remark,) = found.remarks
    assert remark.name == "eased_in"
    assert "front one (31 cm) is longer" in remark.sentence


def test_a_side_of_several_edges_is_as_long_as_all_of_them(basis: Basis) -> None:
    """Two shoulders and a neck against one hem."""
    edges = (
        edge(basis, "left", "last_row", 10, 100.0),
        edge(basis, "right", "last_row", 12, 120.0),
        edge(basis, "two", "foundation", 22, 220.0),
    )
    choice = JoinChoice(name="top", first=("front.left", "front.right"), second=("front.two",))
    found = plan_joins(basis, (choice,), {"front": Made((), (), edges)})
    (plan,), (seam,) = found.plans, found.seams
    assert plan.first == "front left and front right"
    assert plan.first_length == Measured(220.0, 2.0 * 2**0.5)
    assert (len(seam.first), seam.spread) == (2, (1,) * 22)


def test_edges_that_differ_too_much_are_refused_with_ways_out(basis: Basis) -> None:
    """43 rows of 10 mm to 39: 4 cm apart, 1.5 allowed, so three rows have to go or to come."""
    with pytest.raises(Impossible) as refused:
        joined(
            basis,
            edge(basis, "one", "right_edge", 43, 430.0),
            edge(basis, "two", "left_edge", 39, 390.0),
        )
    told = str(refused.value)
    assert "front one (43 cm, 43 row ends) is to be joined to front two (39 cm, 39" in told
    assert "differ by 4 cm, and 1.5 cm is allowed" in told
    assert refused.value.short == pytest.approx(25.0)
    assert refused.value.ways_out[:2] == (
        "3 row ends fewer along front one",
        "3 row ends more along front two",
    )


def test_an_allowed_difference_is_taken_when_the_design_says_so(basis: Basis) -> None:
    """The same edges with a limit of 4 cm."""
    found = joined(
        basis,
        edge(basis, "one", "right_edge", 43, 430.0),
        edge(basis, "two", "left_edge", 39, 390.0),
        limit="4 cm",
    )
    assert found.seams[0].spread.count(2) == 4


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"first": "back.one"}, '"back.one" names no piece before this one'),
        ({"first": "front.three"}, 'its edges are "front.one", "front.two"'),
        ({"stitch": "slip_stich"}, 'unknown stitch "slip_stich"; did you mean "slip_stitch"'),
        ({"stitch": "picot"}, '"picot" joins nothing'),
    ],
)
def test_a_wrong_name_is_refused_with_what_there_is(
    basis: Basis, more: dict[str, str], said: str
) -> None:
    """Piece, edge and stitch."""
    edges = [edge(basis, name, "last_row", 9, 90.0) for name in ("one", "two")]
    with pytest.raises(InputError, match=said):
        joined(basis, *edges, **more)


def test_an_edge_with_gaps_is_not_joined(basis: Basis) -> None:
    """Its underarm is bridged by whoever goes on from it."""
    edges = (
        edge(basis, "one", "row", 9, 90.0, bridges=(4,)),
        edge(basis, "two", "row", 13, 90.0),
    )
    with pytest.raises(InputError, match="bridged with chains"):
        joined(basis, *edges)


def test_the_finer_edge_leads_when_a_seam_is_laid() -> None:
    """Each of its stitches takes one of the seam, whichever side it is named on."""
    one, two = (Base("a", "row_ends"),), (Base("b", "last_row"),)
    assert seam_along("s", "slip_stitch", one, two, (98, 144)).first == two
    assert seam_along("s", "slip_stitch", two, one, (144, 98)).spread.count(2) == 46
