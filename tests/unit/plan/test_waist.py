"""Elastic, cord and band."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch, table

from frogless.design.trims import Drawcord
from frogless.draft import develop
from frogless.errors import Impossible, InputError
from frogless.plan import waist
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Plan
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Chain, Skip, Work
from frogless.rows.walk import unrolled

BAND = section("band", length="4 cm")
HIP = section("to the hip", shape="shaped", to="hip", ease="4 cm", points=8)
STRAIGHT = section("to the hem", to="hem")
ONES = {"dc": 1}


def finished(made: Made, *sections: str, **keys: object) -> Plan:
    """A skirt with that waist."""
    return plan(made(*(sections or (HIP, STRAIGHT)), tables=(table("waist", **keys),)))


def elastic_of(planned: Plan) -> ElasticPlan:
    """Its elastic."""
    assert isinstance(planned.main.waist, ElasticPlan)
    return planned.main.waist


def test_elastic_is_nine_tenths_of_the_waist_when_nothing_is_said(made: Made) -> None:
    """75.6 cm, and 2.5 of lap."""
    found = elastic_of(finished(made, kind="covered elastic", width="6 mm"))
    assert (found.finished, found.lap, found.cut) == (pytest.approx(756), 25, pytest.approx(781))
    assert [s.what for s in found.because.steps] == ["waist_girth", "percent", "ring", "lap", "cut"]
    assert "times as close as in the swatch" in found.because.steps[2].note


def test_elastic_is_shorter_by_what_the_design_says(made: Made) -> None:
    """1 1/4 in under the waist."""
    found = elastic_of(
        finished(made, kind="covered elastic", width="6 mm", reduce="1 1/4 in", lap="1 cm")
    )
    assert found.finished == pytest.approx(840 - 31.75)
    assert found.cut == pytest.approx(840 - 31.75 + 10)


def test_cover_is_worked_into_the_foundation_edge(made: Made) -> None:
    """Two in each stitch, or one."""
    for each in (1, 2, 3):
        planned = finished(made, kind="covered elastic", width="6 mm", stitches_in_each=each)
        cover = planned.program.piece("elastic cover")
        assert cover.bases
        assert (cover.bases[0].piece, cover.bases[0].edge) == ("skirt", "foundation")
        assert cover.rows[0].count == 152 * each


def test_cover_that_cannot_bunch_so_far_is_remarked_on(made: Made) -> None:
    """Three in each stitch of a ring much smaller than the skirt."""
    planned = finished(made, kind="covered elastic", width="6 mm", percent=60, stitches_in_each=3)
    assert "elastic_cover" in [r.name for r in planned.remarks]


def test_elastic_is_refused_when_it_is_given_in_two_ways_or_has_no_length(made: Made) -> None:
    """Reduce or percent; and less than the whole waist."""
    keys = {"kind": "covered elastic", "width": "6 mm"}
    with pytest.raises(InputError, match='either "reduce" or "percent", not both'):
        finished(made, **keys, reduce="3 cm", percent=90)
    with pytest.raises(InputError, match="would be a ring of -6 cm"):
        finished(made, **keys, reduce="90 cm")


def test_cord_is_as_long_as_tying_or_opening_asks(made: Made) -> None:
    """The larger of waist and two tie ends, and hips and two spare ends."""
    keys = {"kind": "drawcord", "tie_ends": "20 cm"}
    cord = finished(made, BAND, HIP, STRAIGHT, **keys).main.waist
    assert isinstance(cord, CordPlan)
    assert cord.cord == 1120 + 300


@pytest.mark.parametrize("every", range(3, 12))
@pytest.mark.parametrize("counts", [False, True])
def test_eyelet_round_keeps_its_stitches(made: Made, every: int, *, counts: bool) -> None:
    """An even number of eyelets, each a chain over a skipped stitch, whether the chain counts."""
    work = (
        'rounds = "joined and turned"\nturning_chain = 3\n'
        f"turning_chain_counts = {str(counts).lower()}"
    )
    cord = table("waist", kind="drawcord", eyelets_about_every=every)
    known = made(
        BAND,
        STRAIGHT,
        tables=(cord,),
        work=work,
        length="40 cm",
        start='with = "chain"\ngirth = "hip_girth + 2 cm"',
    )
    planned = plan(known)
    assert isinstance(planned.main.waist, CordPlan)
    row = planned.program.pieces[0].rows[planned.main.waist.eyelet_round]
    holes = [node for node in unrolled(row.body) if isinstance(node, Chain)]
    assert len(holes) == len(planned.main.waist.gaps)
    assert len(holes) % 2 == 0
    assert sum(planned.main.waist.gaps) == row.count
    develop(known)


def test_eyelets_stand_in_the_middle_of_their_gaps() -> None:
    """Gaps of 5 and 4: after two stitches in each."""
    holes = waist.eyelets((5, 4))
    assert holes == (2, 7)
    nodes = waist.eyelet_body("dc", 9, holes, chain_counts=False)
    assert nodes == (
        Work("dc", 2),
        Chain(1),
        Skip(1),
        Work("dc", 4),
        Chain(1),
        Skip(1),
        Work("dc", 1),
    )
    assert consumed(nodes, ONES) == left(nodes, ONES) == 9


def test_first_eyelet_is_never_the_counted_chain() -> None:
    """Gaps of two stitches: places 1 and 3."""
    assert waist.eyelets((2, 2), chain_counts=True) == (1, 3)
    nodes = waist.eyelet_body("dc", 4, (1, 3), chain_counts=True)
    assert consumed(nodes, ONES) == 3


def test_eyelet_moves_aside_for_a_marker() -> None:
    """One place, where its gap has room; else there is none."""
    assert waist.eyelets((6, 6), marked=frozenset({3})) == (4, 9)
    assert waist.eyelets((6, 6), marked=frozenset({3, 4})) == (2, 9)
    assert waist.eyelets((6, 6), marked=frozenset({2, 3, 4})) is None
    assert waist.eyelets((2, 2), marked=frozenset({1})) is None


def test_eyelets_move_down_when_their_round_is_shaped(made: Made) -> None:
    """Round 1 increases, so they stand in round 2, and the maker is told."""
    planned = finished(made, HIP, STRAIGHT, kind="drawcord", eyelet_round=1)
    assert isinstance(planned.main.waist, CordPlan)
    assert planned.main.waist.eyelet_round == 2
    assert [r.name for r in planned.remarks if r.name.startswith("eyelet")] == ["eyelet_round"]


def test_markers_pass_an_eyelet_round_between_two_shaping_rounds(made: Made) -> None:
    """None of them is lost in a hole."""
    for every in range(3, 9):
        cord = table("waist", kind="drawcord", eyelet_round=2, eyelets_about_every=every)
        known = made(
            section("to the hip", shape="shaped", to="hip", ease="4 cm", points=8, every=3),
            STRAIGHT,
            tables=(cord,),
            start='with = "foundation_double_crochet"\ngirth = "hip_girth / 1.1"',
        )
        develop(known)


def test_eyelets_are_refused_where_there_is_no_room(made: Made) -> None:
    """Every round is shaped; or there is no such round; or they would touch."""
    keys = {"shape": "shaped", "points": 8, "every": 1}
    busy = section("at once", length="5 cm", girth="107 cm", **keys)
    with pytest.raises(InputError, match="rounds 1 to 4 have no room beside their shaping"):
        finished(made, busy, HIP, STRAIGHT, kind="drawcord", eyelet_round=1)
    with pytest.raises(InputError, match="the skirt has 60 rounds"):
        finished(made, HIP, STRAIGHT, kind="drawcord", eyelet_round=90)


def test_rib_is_the_makers_when_she_swatched_it(made: Made) -> None:
    """14 rows in 10 cm, whatever the designer's were."""
    rib = (
        'stitch = "sc_blo"\nstate = "washed"\nstitches = 20\nwidth = "10 cm"\nrows = 14\n'
        'height = "10 cm"'
    )
    band = table("waist", kind="ribbed band", height="4 cm", rows_in_10cm=30)
    planned = plan(made(HIP, STRAIGHT, tables=(band,), sample=swatch(18, 10, readings=(rib,))))
    assert isinstance(planned.main.waist, BandPlan)
    assert planned.main.waist.rows == 106
    assert "rib_gauge" not in [r.name for r in planned.remarks]


def test_rib_is_the_designers_scaled_when_nobody_swatched_it(made: Made) -> None:
    """Rows in proportion to the main stitch; the remark says that it is an estimate."""
    gauge = table(
        "gauge", stitch="double_crochet", stitches_in_10cm=18, rows_in_10cm=10, hook="3.5 mm"
    )
    band = table("waist", kind="ribbed band", height="4 cm", rows_in_10cm=14)
    planned = plan(made(HIP, STRAIGHT, tables=(gauge, band), sample=swatch(18, 10)))
    assert isinstance(planned.main.waist, BandPlan)
    assert planned.main.waist.rows == 106
    assert "rib_gauge" in [r.name for r in planned.remarks]


def test_band_is_joined_to_itself_and_to_the_waist(made: Made) -> None:
    """Its last row to its foundation, its row ends to the foundation of the skirt."""
    planned = finished(made, kind="ribbed band", height="4 cm")
    ends, edge = planned.program.seams
    assert isinstance(planned.main.waist, BandPlan)
    assert ends.count == ends.over == planned.main.waist.row_stitches
    assert (edge.count, edge.over) == (152, planned.main.waist.rows)
    assert sum(edge.spread) == 152
    assert planned.main.waist.rows % 2 == 0


CHILD = """format = "frogless-body/1"
name = "child"
age = 8
[measurements]
waist_girth = "58 cm"
hip_girth = "66 cm"
waist_to_hip = "14 cm"
"""
FOR_CORD = section("to the hip", shape="shaped", to="hip", ease="6 cm", points=4)


def child_basis(made: Made) -> Basis:
    """A skirt with a drawcord for a child of eight."""
    cord = table("waist", kind="drawcord", eyelet_round=1)
    start = 'with = "chain"\ngirth = "62 cm"'
    return made(FOR_CORD, STRAIGHT, person=CHILD, start=start, length="35 cm", tables=(cord,))


def test_cord_of_a_child_leaves_no_more_than_the_standard_allows(made: Made) -> None:
    """14 cm at each end of the opening laid flat, whatever the design's tie ends."""
    planned = plan(child_basis(made))
    assert isinstance(planned.main.waist, CordPlan)
    opening = planned.landmarks[0].garment.value
    assert planned.main.waist.cord == pytest.approx(opening + 280, abs=5)
    assert planned.main.waist.cord <= opening + 280
    assert planned.main.waist.cord >= 660
    (remark,) = [r for r in planned.remarks if r.name == "child_cord"]
    assert "at most 14 cm at each end" in remark.sentence
    assert "local rules" in remark.sentence


def test_cord_that_cannot_suit_a_child_is_refused(made: Made) -> None:
    """It would not open over the hips: an elastic has no ends."""
    found = child_basis(made)
    assert isinstance(found.tube.waist, Drawcord)
    with pytest.raises(Impossible, match="too long on a child's garment") as refused:
        waist.drawcord(found, found.tube.waist, 60, 1, 340.0)
    assert any("covered elastic" in way for way in refused.value.ways_out)
