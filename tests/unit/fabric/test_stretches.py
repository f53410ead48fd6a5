"""Stretches of edges, and pieces begun on several of them."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.fabric.claims import left_over, spots, worked_of_base, worked_within
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.fabric.stretches import stretch
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Leave,
    Piece,
    Program,
    Repeat,
    Row,
    Side,
    Skip,
    Start,
    Work,
)
from frogless.stitches.load import dictionary

S, F = "single_crochet", "foundation_single_crochet"
JOINED, TURN = End("first_stitch"), End(turn=True)


def flat(
    name: str, count: int, rows: int, bases: tuple[Base, ...] = (), *, of_chain: bool = True
) -> Piece:
    """A flat piece of turned rows on a chain, its first row on the right side."""
    body = (Chain(count, each=True),) if of_chain else (Work(F, count),)
    made = [] if bases else [Row(0, "WS", "start", body, count, end=TURN)]
    for number in range(1, rows + 1):
        side: Side = "RS" if number % 2 else "WS"
        made.append(Row(number, side, "body", (Work(S, count),), count, end=TURN))
    return Piece(name, False, tuple(made), bases)


def rows_of(*pieces: Piece) -> dict[str, tuple[RowFabric, ...]]:
    """The pieces expanded."""
    return dict(expand(Program(pieces), dictionary()).pieces)


def body_and_sleeve(sleeve: Piece | None = None) -> dict[str, tuple[RowFabric, ...]]:
    """A small raglan: 34 places part into back 10, sleeve 7, front 10, sleeve 7.

    The round that parts them works back and front and bridges each underarm with 4 chains.
    """
    under = Chain(4, each=True)
    parting = (Work(S, 10), under, Skip(7), Work(S, 10), under, Skip(7))
    body = Piece(
        "body",
        True,
        (
            Row(0, "RS", "yoke", (Work(F, 34),), 34, end=JOINED),
            Row(1, "RS", "body", parting, 28, end=JOINED),
            Row(2, "RS", "body", (Work(S, 28),), 28, end=JOINED),
        ),
    )
    made = sleeve or Piece("sleeve", True, (sleeve_round(11),), SLEEVE)
    return rows_of(body, made)


#: The stitches that the parting round passed, then the other side of its bridging chains.
SLEEVE = (
    Base("body", "row", row=0, first=10, count=7),
    Base("body", "underside", row=1, first=10, count=4, reverse=True),
)


def sleeve_round(count: int) -> Row:
    """A joined round."""
    return Row(1, "RS", "sleeve", (Work(S, count),), count, end=JOINED)


def test_a_sleeve_takes_the_passed_places_and_the_underarm_when_begun() -> None:
    """Seven stitches that the parting round skipped, then four chains from underneath."""
    made = body_and_sleeve()
    sleeve = made["sleeve"][0]
    assert sleeve.from_row.tolist() == [-1] * 7 + [-2] * 4
    assert sleeve.from_place.tolist() == [0, 1, 2, 3, 4, 5, 6, 0, 1, 2, 3]
    assert (sleeve.used.tolist(), sleeve.overrun) == ([1] * 11, 0)
    assert spots(stretch(SLEEVE[0], made)) == tuple(("body", "top", 0, p) for p in range(10, 17))
    assert spots(stretch(SLEEVE[1], made)) == tuple(
        ("body", "underside", 1, p) for p in (13, 12, 11, 10)
    )


def test_places_are_claimed_once_when_the_body_passed_them() -> None:
    """The body works into none that the sleeve takes; it works on top of its own chains."""
    made = body_and_sleeve()
    yoke, parting, last = worked_within(made["body"])
    assert yoke.tolist() == [True] * 10 + [False] * 7 + [True] * 10 + [False] * 7
    assert (parting.all(), last.any()) == (True, False)
    assert worked_of_base(made["sleeve"], 1, 4).tolist() == [True] * 4


def test_a_base_expands_as_far_as_it_goes_when_it_asks_too_much() -> None:
    """What is missing is counted, and the row overruns."""
    far = Base("body", "row", row=0, first=30, count=9)
    made = body_and_sleeve(Piece("sleeve", True, (sleeve_round(9),), (far,)))
    assert (stretch(far, made).size, stretch(far, made).missing) == (4, 5)
    assert made["sleeve"][0].overrun == 5


def test_a_stretch_begins_beyond_the_edge_when_first_is_too_far() -> None:
    """Nothing is found, and all asked for is missing."""
    made = body_and_sleeve()
    beyond = stretch(Base("body", "row", row=0, first=40), made)
    assert (beyond.size, beyond.missing) == (0, 6)


@pytest.mark.parametrize("edge", ["row", "underside"])
def test_a_row_that_is_not_there_is_refused_when_begun_on(edge: str) -> None:
    """The sentence names piece, row and the rows there are."""
    lost = Base("body", edge, row=7)  # type: ignore[arg-type]
    with pytest.raises(InputError, match=r'row 7 of "body", which has rows 0 to 2'):
        body_and_sleeve(Piece("sleeve", True, (sleeve_round(3),), (lost,)))


def test_both_sides_of_a_foundation_are_worked_when_a_bag_begins() -> None:
    """Along the top of the chain, and back along its underside: 2 × 10 places, each once."""
    strip = flat("base", 10, 1)
    sides = flat("sides", 10, 2, (Base("base", "foundation", reverse=True),))
    made = rows_of(strip, sides)
    assert made["base"][1].used.tolist() == [1] * 10
    assert made["sides"][0].order.tolist() == list(range(10))
    found = spots(stretch(sides.bases[0], made))
    assert found[0] == ("base", "underside", 0, 9)
    assert len(set(found)) == 10


def test_three_stitches_are_picked_up_over_two_row_ends_when_asked() -> None:
    """Twelve rows, one place to each: one in the first, two in the second, six times: 18."""
    body = (Repeat((Work(S), Into((Work(S, 2),))), 6),)
    band = Piece("band", False, (Row(1, "RS", "band", body, 18),), (Base("front", "left_edge"),))
    made = rows_of(flat("front", 5, 12), band)["band"][0]
    assert (made.used.tolist(), made.places, made.overrun) == ([1, 2] * 6, 18, 0)


def test_edges_follow_one_another_when_a_neckband_goes_round() -> None:
    """Down the left front's rows, over four stitches of the back, up the right front's rows."""
    bases = (
        Base("left", "right_edge", reverse=True),
        Base("back", "last_row", first=3, count=4),
        Base("right", "left_edge"),
    )
    band = Piece("band", False, (Row(1, "WS", "band", (Work(S, 14),), 14),), bases)
    made = rows_of(flat("left", 3, 5), flat("back", 10, 6), flat("right", 3, 5), band)
    row = made["band"][0]
    assert row.from_row.tolist() == [-1] * 5 + [-2] * 4 + [-3] * 5
    assert spots(stretch(bases[0], made))[0] == ("left", "right_end", 5, 0)
    assert spots(stretch(bases[1], made)) == tuple(("back", "top", 6, p) for p in (3, 4, 5, 6))
    assert row.used.tolist() == [1] * 14


def test_the_sides_decide_when_part_of_a_last_row_is_taken() -> None:
    """Turned, the stretch is met from its far end; not turned, as it was made."""
    part = Base("back", "last_row", first=2, count=3)
    for side, order in (("RS", [2, 1, 0]), ("WS", [0, 1, 2])):
        row = Row(1, side, "tab", (Work(S, 3),), 3)  # type: ignore[arg-type]
        made = rows_of(flat("back", 8, 2), Piece("tab", False, (row,), (part,)))
        assert made["tab"][0].order.tolist() == order


def short_rowed() -> dict[str, tuple[RowFabric, ...]]:
    """Six rows of ten; row 3 (RS) turns after seven and row 4 goes back from there."""
    rows = [Row(0, "WS", "start", (Chain(10, each=True),), 10, end=TURN)]
    for number in range(1, 7):
        side: Side = "RS" if number % 2 else "WS"
        body = {3: (Work(S, 7), Leave(3)), 4: (Work(S, 7),)}.get(number, (Work(S, 10),))
        rows.append(Row(number, side, "body", body, 10, end=TURN))
    return rows_of(Piece("back", False, tuple(rows)))


def test_short_rows_end_at_one_edge_only_when_they_turn_before_the_other() -> None:
    """Rows 3 and 4 have ends at the right edge; at the left edge four rows of six are met."""
    made = short_rowed()
    assert stretch(Base("back", "right_edge"), made).rows.tolist() == [1, 2, 3, 4, 5, 6]
    assert stretch(Base("back", "left_edge"), made).rows.tolist() == [1, 2, 5, 6]
    assert stretch(Base("back", "row_ends"), made).size == 6
    assert stretch(Base("back", "left_edge", first=1, count=2), made).rows.tolist() == [2, 5]


def test_nothing_is_left_over_when_a_later_row_comes_by() -> None:
    """The three left in row 3 are worked in row 5; without it they stay, whoever left them."""
    rows = short_rowed()["back"]
    assert left_over(rows) == ()
    assert left_over(rows[:5]) == ((2, 0), (2, 1), (2, 2))


def test_a_place_of_a_base_is_left_over_when_its_piece_never_returns() -> None:
    """It goes by its base."""
    row = Row(1, "WS", "tab", (Work(S, 6), Leave(2)), 6, Start(1))
    made = rows_of(flat("back", 8, 2), Piece("tab", False, (row,), (Base("back", "last_row"),)))
    assert left_over(made["tab"]) == ((-1, 6), (-1, 7))
