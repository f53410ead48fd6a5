"""Edgings laid along edges: in rounds, in rows, round corners; expanded, and read back."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

import pytest

from frogless.errors import InputError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.read.build import read_piece, read_program
from frogless.read.motif_joins import bordered
from frogless.read.motifs import motif
from frogless.rows.count import row_worked
from frogless.rows.nodes import Chain, End, Into, Piece, Program, Row, Start, Work
from frogless.stitches.edged import (
    edging_way,
    in_rounds,
    in_rows,
    places_with_corners,
    round_corners,
)
from frogless.stitches.edgings import build, edging, edgings, patterns
from frogless.stitches.fringe import cut_fringe
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Edging
from frogless.stitches.pattern_rows import Way, worked
from frogless.write.pattern import write_program, write_rows
from frogless.write.stitch_motif import say_edging

DIALECTS: tuple[Dialect, ...] = ("us", "uk")
WITH_CORNERS = [key for key in edgings() if edging(key).sides]
IN_ROWS = [key for key in edgings() if edging(key).rows]
REPEATS = range(1, 21)


def ends(key: str) -> Iterator[Edging]:
    """An edging with its parameters at their ends and as usual, in every combination."""
    pattern = patterns()[key]
    each = [[(n, v) for v in {p.low, p.default, p.high}] for n, p in pattern.parameters.items()]
    return (build(pattern, dict(values)) for values in product(*each))


def on_chains(rows: tuple[Row, ...], places: int, *, closed: bool) -> Piece:
    """An edging by itself, on a chain of so many."""
    end = End("first_stitch") if closed else End(turn=True)
    chain = Row(0, "RS" if closed else "WS", "", (Chain(places, each=True),), places, end=end)
    return Piece("edging", closed, (chain, *rows))


def laid(found: Edging, way: str, repeats: int) -> Piece:
    """An edging laid in one of its ways; round corners as a rectangle, two sides a repeat longer."""
    if way == "rounds":
        places = found.multiple * repeats + found.offset
        return on_chains(in_rounds(found, places, dictionary()), places, closed=True)
    if way == "rows":
        places = found.multiple * repeats + found.row_offset
        return on_chains(in_rows(found, places, dictionary()), places, closed=False)
    sides = [found.side_offset + found.multiple * (repeats + more) for more in (0, 1, 0, 1)]
    rows = round_corners(found, sides, dictionary())
    return on_chains(rows, places_with_corners(sides), closed=True)


def cloth(piece: Piece) -> Fabric:
    """A piece, stitch by stitch."""
    return expand(Program((piece,)), dictionary())


def check_sound(fabric: Fabric, name: str = "edging") -> None:
    """Every place is worked into or passed over on purpose, none asked for that is not there."""
    for row in fabric.pieces[name][1:]:
        assert not row.overrun
        assert ((row.used > 0).astype(int) + row.skipped == 1).all()
        assert row.row.count == row.places


WAYS = [
    *[pytest.param(key, "rounds", id=f"{key}-rounds") for key in edgings()],
    *[pytest.param(key, "rows", id=f"{key}-rows") for key in IN_ROWS],
    *[pytest.param(key, "corners", id=f"{key}-corners") for key in WITH_CORNERS],
]


@pytest.mark.parametrize(("key", "way"), WAYS)
def test_nothing_is_left_over_when_an_edging_has_1_to_20_repeats(key: str, way: str) -> None:
    """With its usual parameters over any number of repeats; at their ends over a few."""
    for repeats in REPEATS:
        check_sound(cloth(laid(edging(key), way, repeats)))
    for found in ends(key):
        for repeats in (1, 2, 20):
            check_sound(cloth(laid(found, way, repeats)))


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(("key", "way"), WAYS)
def test_an_edging_reads_back_to_the_same_fabric_when_said(
    key: str, way: str, dialect: Dialect
) -> None:
    """In US and UK terms, with its parameters at their ends and as usual."""
    for found in ends(key):
        for repeats in (2, 5):
            piece = laid(found, way, repeats)
            lines = [
                f"{line.label}: {line.text} ({line.count})"
                for line in write_rows(piece, dictionary(), dialect)
            ]
            again = read_piece(lines, dictionary(), dialect, name="edging")
            assert same(cloth(again), cloth(piece)) is None


def test_six_edgings_at_least_go_round_corners_when_listed() -> None:
    """Plain, crab, shells, scallops, picots, lace arches; and most are worked in rows as well."""
    asked = {"plain", "crab", "shell", "scallop", "picot_group", "picot_single", "lace_arches"}
    assert asked <= set(WITH_CORNERS)
    assert len(IN_ROWS) >= 18


def test_rows_turn_but_not_before_one_that_goes_back_when_laid() -> None:
    """Arches are turned twice; crab stitch goes back along the right side."""
    arches = in_rows(edging("lace_arches"), 11, dictionary())
    assert [(row.side, row.end.turn) for row in arches] == [
        ("RS", True),
        ("WS", True),
        ("RS", False),
    ]
    crab = in_rows(edging("crab"), 9, dictionary())
    assert [(row.side, row.end.turn, row.backwards) for row in crab] == [
        ("RS", False, False),
        ("RS", False, True),
    ]


def test_the_yarn_is_cut_after_the_last_round_when_laid() -> None:
    """And not before it."""
    rounds = in_rounds(edging("scallop"), 12, dictionary())
    assert [row.end.fasten_off for row in rounds] == [False, True]


def test_a_plain_border_gains_eight_a_round_when_it_has_four_corners() -> None:
    """Three in each corner: 2 more at each of 4 corners in each round, by hand."""
    plain = edging("plain", {"rounds": 3})
    rows = round_corners(plain, (10, 6, 10, 6), dictionary())
    assert [row.count for row in rows] == [36 + 8, 36 + 16, 36 + 24]


def test_a_corner_of_shells_holds_two_more_when_laid() -> None:
    """By hand: sides of 5 + 6 x 2 and 5 + 6: 6 + 4 shells of 5, 4 corners of 7, 10 + 4 singles.

    A side of m repeats holds m shells between m + 1 singles.
    """
    (row,) = round_corners(edging("shell"), (17, 11, 17, 11), dictionary())
    worked = row_worked(row)
    assert worked["double_crochet"] + 1 == 6 * 5 + 4 * 7
    assert worked["single_crochet"] == 2 * 3 + 2 * 2
    assert (row.start, row.end.join) == (Start(3, counts=True, shares=True), "chain_top")


def test_the_chain_is_as_tall_as_a_cluster_when_a_corner_begins_with_one() -> None:
    """Three chains stand for a double crochet, but not for three closed together."""
    (row,) = round_corners(edging("cluster"), (7, 7, 7, 7), dictionary())
    assert row.start == Start(3)


def test_a_border_stands_on_a_square_when_its_sides_are_counted() -> None:
    """Seven rounds of single crochet: sides of 14 and a chain space at each corner.

    On each side two repeats of five singles and four more, so that the corner picots are as far from
    the picots on either side of them; in each corner three: 56 + 12, with 4 x 2 + 4 picots.
    """
    square = motif("single_square", 7)
    program = bordered(square, edging("picot_single", {"singles": 5}), dictionary())
    (row,) = expand(program, dictionary()).pieces["picot_single border"]
    assert not row.overrun
    assert (row.used > 0).all()
    assert row_worked(row.row)["single_crochet"] == 56 + 4 * 3
    assert row_worked(row.row)["picot"] == 4 * 2 + 4
    # What three are worked into are the corner spaces.
    bases = program.pieces[-1].bases
    below = expand(square.program, dictionary()).pieces["single_square"][-1]
    corners = [i for i, times in enumerate(row.used) if times == 3]
    at = [bases[-1 - row.from_row[i]].first + row.from_place[i] for i in corners]
    made = [below.keys[below.stitch[below.made_by[place]]] for place in at]
    assert made == ["chain"] * 4


@pytest.mark.parametrize("key", ["picot_single", "picot_bead", "picot_trefoil", "picot_group"])
def test_corner_picots_are_as_far_from_those_on_either_side(key: str) -> None:
    """As many singles after the last picots of a side as before the first."""
    side = edging(key).sides[0]
    first, after = side.repeat[0], side.after[0]
    assert isinstance(first, Work)
    assert isinstance(after, Work)
    # Picots outside of a group stand on the last of the singles before them.
    stands_on = 0 if any(isinstance(node, Into) for node in side.repeat) else 1
    assert after.times == first.times - stands_on


def test_loops_of_chain_add_nothing_to_an_edge() -> None:
    """A single in each stitch, and the loops between them: the edge lies flat."""
    loops = edging("loops", {"singles": 3})
    worked_ = row_worked(in_rounds(loops, 30, dictionary())[0])
    assert (worked_["single_crochet"], worked_["chain"]) == (30, 10 * 12 + 1)


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize("shape", ["solid_square", "single_square", "hexagon"])
@pytest.mark.parametrize("key", WITH_CORNERS)
def test_a_border_on_a_motif_is_sound_and_reads_back_when_it_fits(
    key: str, shape: str, dialect: Dialect
) -> None:
    """Of 1 to 12 rounds it fits those that arithmetic says, by the stitches of a side in round r."""
    found = edging(key)
    fitting = [n for n in range(1, 13) if _fits_round(found, shape, n)]
    beyond = [(n, _side_of(shape, n) - found.side_offset) for n in range(1, 13)]
    assert fitting == [n for n, over in beyond if over >= 0 and over % found.multiple == 0]
    if not fitting:
        return
    program = bordered(motif(shape, fitting[0]), edging(key), dictionary())
    fabric = expand(program, dictionary())
    for row in fabric.pieces[f"{key} border"]:
        assert not row.overrun
        assert ((row.used > 0).astype(int) + row.skipped == 1).all()
    again = read_program(write_program(program, dictionary(), dialect), dictionary(), dialect)
    assert same(expand(again, dictionary()), fabric) is None


def _side_of(shape: str, rounds: int) -> int:
    """Stitches between two corners: 3 and 4 more in each round, or 2 and 2 more; by hand."""
    return 4 * rounds - 1 if shape == "solid_square" else 2 * rounds


def _fits_round(found: Edging, shape: str, rounds: int) -> bool:
    try:
        bordered(motif(shape, rounds), found, dictionary())
    except InputError:
        return False
    return True


@pytest.mark.parametrize(
    ("key", "places", "said"),
    [
        ("shell", 20, '"shell" is worked over a multiple of 6, not over 20; 18 and 24 fit'),
        ("shell", 4, "6 and 12 fit"),
    ],
)
def test_rounds_are_refused_with_what_fits_when_they_are_no_multiple(
    key: str, places: int, said: str
) -> None:
    """The nearest counts are named."""
    with pytest.raises(InputError) as caught:
        in_rounds(edging(key), places, dictionary())
    assert said in str(caught.value)


def test_rows_are_refused_with_their_offset_when_they_are_no_multiple() -> None:
    """6 + 1: 19 and 25."""
    with pytest.raises(InputError, match=r"a multiple of 6 \+ 1, not over 20; 19 and 25 fit"):
        in_rows(edging("shell"), 20, dictionary())


def test_corners_are_refused_with_the_side_when_it_does_not_fit() -> None:
    """A side of shells takes 5 and 6 in each repeat."""
    with pytest.raises(InputError, match=r"side 2 has 12 places; .* so fits 11, 17, 23"):
        round_corners(edging("shell"), (17, 12, 17, 11), dictionary())


def test_what_has_no_corners_is_refused_when_laid_round_them() -> None:
    """Its data says nothing of corners."""
    with pytest.raises(InputError, match='"ribbed" goes round no corners'):
        round_corners(edging("ribbed"), (8, 8, 8, 8), dictionary())


def test_what_has_no_rows_is_refused_when_laid_in_rows() -> None:
    """An edging that does not say how a row ends."""
    found = edging("shell")
    with pytest.raises(InputError, match="is worked in rounds; it does not say how a row ends"):
        in_rows(_without_rows(found), 13, dictionary())


def _without_rows(found: Edging) -> Edging:
    return Edging(
        found.key, found.terms, found.multiple, found.offset, found.rounds, found.backwards,
        found.turning_chains, found.stitches, found.source, found.basis,
    )  # fmt: skip


def test_beads_are_counted_from_the_round_when_they_are_slid_up_in_it() -> None:
    """One in each repeat: 12 beads over 48 stitches."""
    (row,) = in_rounds(edging("picot_bead"), 48, dictionary())
    assert row_worked(row)["bead"] == row_worked(row)["picot"] == 12


def test_every_column_of_a_rib_goes_on_when_worked_in_rows() -> None:
    """What is a front post on the right side is a back post on the wrong side, in the same column."""
    rows = cloth(laid(edging("ribbed", {"rounds": 2}), "rows", 3)).pieces["edging"]
    keys = [row.keys[s] for row in rows[2:3] for s in row.stitch if "post" in row.keys[s]]
    assert keys == ["front_post_double_crochet", "back_post_double_crochet"] * 3
    third = rows[3]
    over = third.first[[i for i, s in enumerate(third.stitch) if "post" in third.keys[s]]]
    # Turned work meets the last column first: front over back, back over front.
    assert over.tolist() == [5, 4, 3, 2, 1, 0]


def test_a_fringe_is_cut_by_hand_arithmetic_when_planned() -> None:
    """60 stitches, a knot in every 2nd: 30 knots of 3 strands, each 2 x 10 cm and 2.5 cm: 20.25 m."""
    cut = cut_fringe(edging("fringe"), 60)
    assert (cut.knots, cut.strands, cut.cut, cut.yarn) == (30, 90, 225.0, 20250.0)
    assert "small child" in edging("fringe").note
    assert "Local rules" in edging("fringe").note


def test_a_fringe_is_refused_when_there_is_none_or_it_does_not_fit() -> None:
    """Other edgings have none; an odd count leaves a stitch over."""
    with pytest.raises(InputError, match='"plain" has no fringe'):
        cut_fringe(edging("plain"), 60)
    with pytest.raises(InputError, match='"fringe" takes a multiple of 2, not 61'):
        cut_fringe(edging("fringe"), 61)


def test_one_stitch_repeated_is_a_run_when_laid() -> None:
    """Not a group of one, many times."""
    (row,) = in_rounds(edging("plain"), 30, dictionary())
    assert row.body == (Work("single_crochet", 30),)


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(
    ("key", "closed"),
    [(key, closed) for key in edgings() for closed in (True, False) if closed or edging(key).rows],
)
def test_an_edging_for_any_number_of_repeats_reads_back_when_said(
    key: str, closed: bool, dialect: Dialect
) -> None:
    """With a star for what repeats, laid over seven repeats."""
    found = edging(key)
    piece = laid(found, "rounds" if closed else "rows", 7)
    lines = say_edging(found, dictionary(), dialect, closed=closed)
    assert len(lines) == len(found.rounds)
    foundation = f"Foundation: Ch {piece.rows[0].count}; join with {_slip(dialect)} to first ch to form a ring."
    if not closed:
        foundation = f"Foundation (WS): Ch {piece.rows[0].count}; turn."
    again = read_piece([foundation, *lines], dictionary(), dialect, name="edging")
    assert same(cloth(again), cloth(piece)) is None


def _slip(dialect: Dialect) -> str:
    return dictionary()["slip_stitch"].terms[dialect].abbreviation


def test_what_repeats_is_told_with_a_star_when_said_for_any_number() -> None:
    """Shells in rows: the single at the end stands apart."""
    assert say_edging(edging("shell"), dictionary(), "us", closed=False) == (
        "Row 1 (RS): Ch 1 (does not count as a st), *sc in next st, skip next 2 sts, 5 dc in next st, "
        "skip next 2 sts; rep from * to last st, sc in last st. Fasten off.",
    )


@pytest.mark.parametrize("closed", [True, False])
@pytest.mark.parametrize("key", edgings())
def test_the_multiple_stated_is_the_one_found_when_searched_for(key: str, closed: bool) -> None:
    """Every count up to four repeats is tried, whatever the data says that it works over."""
    for found in ends(key):
        way = edging_way(found, closed=closed)
        offset = found.offset if closed else found.row_offset
        most = 4 * found.multiple + offset
        fits = [n for n in range(1, most + 1) if _comes_out(way, n)]
        stated = [found.multiple * m + offset for m in range(5)]
        assert [n for n in fits if n > offset] == [n for n in stated if n > offset]


def _comes_out(way: Way, places: int) -> bool:
    try:
        worked(way, places, len(way.rows), dictionary())
    except InputError:
        return False
    return True
