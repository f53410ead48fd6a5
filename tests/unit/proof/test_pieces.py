"""The proof of small pieces: short rows, rings, sleeves begun on a body; sound, and broken."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from frogless.fabric.expand import expand
from frogless.plan.model import PiecePlan
from frogless.proof.checks import edges, rows, shaping, stitches
from frogless.proof.model import Finding, Subject
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Leave,
    Node,
    Piece,
    Program,
    Row,
    Seam,
    Side,
    Skip,
    Start,
    Together,
    Work,
)

S, D, F = "single_crochet", "double_crochet", "foundation_single_crochet"
JOINED, TURN = End("first_stitch"), End(turn=True)
CHECKS: tuple[Callable[[Subject], Finding], ...] = (
    rows.check_places,
    rows.check_repeats,
    rows.check_counts,
    rows.check_planned,
    rows.check_rounds,
    rows.check_numbers,
    shaping.check_shaping_rounds,
    shaping.check_lines,
    shaping.check_markers,
    edges.check_begins,
    edges.check_seams,
    stitches.check_stitches_close,
)


def of(ring: Subject, *pieces: Piece, seams: tuple[Seam, ...] = ()) -> Subject:
    """A pattern of those pieces, planned as they are."""
    program = Program(pieces, seams)
    plans = tuple(PiecePlan(p.name, "panel", tuple(r.count for r in p.rows)) for p in pieces)
    return replace(
        ring,
        program=program,
        plan=replace(ring.plan, pieces=plans, program=program),
        fabric=expand(program, ring.stitches),
    )


def faults(subject: Subject) -> Mapping[str, str]:
    """What is wrong, by check."""
    found = (check(subject) for check in CHECKS)
    return {finding.name: "; ".join(finding.faults) for finding in found if finding.faults}


def flat(name: str, count: int, *bodies: tuple[tuple[Node, ...], int]) -> Piece:
    """A chain and turned rows, each with the count it leaves."""
    made = [Row(0, "WS", "start", (Chain(count, each=True),), count, end=TURN)]
    for number, (body, left) in enumerate(bodies, start=1):
        side: Side = "RS" if number % 2 else "WS"
        made.append(Row(number, side, "body", body, left, Start(1), TURN))
    return Piece(name, False, tuple(made))


SHORT: tuple[tuple[tuple[Node, ...], int], ...] = (
    ((Work(S, 10),), 10),
    ((Work(S, 7), Leave(3)), 7),
    ((Work(S, 7),), 7),
)


def test_short_rows_are_sound_when_all_is_worked_at_last(ring: Subject) -> None:
    """Seven of ten there and back, then all ten."""
    assert not faults(of(ring, flat("back", 10, *SHORT, ((Work(S, 10),), 10))))


@pytest.mark.parametrize(
    ("last", "check", "said"),
    [
        ((Work(S, 7),), "places", "back, row 4: place 8 of the row below is left out"),
        ((Work(S, 7), Leave(3)), "places", "3 places are left for later and never worked"),
        ((Work(S, 11),), "repeats", "asks for 1 places more"),
        ((Work(S, 5), Leave(3), Work(S, 2)), "places", "is left for later before others"),
    ],
    ids=["forgotten", "never worked", "too many", "in the middle"],
)
def test_short_rows_are_broken_when_their_places_do_not_come_out(
    ring: Subject, last: tuple[Node, ...], check: str, said: str
) -> None:
    """The check of places says which are left, and where."""
    broken = of(ring, flat("back", 10, *SHORT, (last, 7)))
    assert said in faults(broken)[check]


def test_places_left_to_the_end_are_sound_when_a_seam_takes_them(ring: Subject) -> None:
    """A stepped shoulder joined to a straight one."""
    stepped = flat("front", 10, *SHORT)
    straight = flat("back", 10, ((Work(S, 10),), 10))
    steps = (Base("front", "last_row"), Base("front", "row", row=1, count=3))
    seam = Seam("shoulder", S, steps, (Base("back", "last_row"),), 10, 10, (1,) * 10)
    assert "never worked" in faults(of(ring, stepped, straight))["places"]
    assert not faults(of(ring, stepped, straight, seams=(seam,)))


def test_a_seam_is_broken_when_its_edge_is_not_there(ring: Subject) -> None:
    """Another piece's name, or a row that is none."""
    back = flat("back", 4, ((Work(S, 4),), 4))
    seam = Seam("side", S, (Base("bakc", "left_edge"),), (Base("back", "left_edge"),), 1, 1, (1,))
    assert 'side: it is worked onto "bakc"' in faults(of(ring, back, seams=(seam,)))["seams"]


def raglan(bridge: int = 4, *, sleeve_first: int = 10, twice: bool = False) -> tuple[Piece, ...]:
    """A body parted from its sleeves, and a sleeve begun on the stitches passed and the underarm."""
    under = Chain(bridge, each=True)
    passed: Node = Work(S, 7) if twice else Skip(7)
    parting = (Work(S, 10), under, passed, Work(S, 10), under, Skip(7))
    count = 20 + 2 * bridge + 7 * twice
    body = Piece(
        "body",
        True,
        (
            Row(0, "RS", "yoke", (Work(F, 34),), 34, end=JOINED),
            Row(1, "RS", "body", parting, count, Start(1), JOINED),
            Row(2, "RS", "body", (Work(S, count),), count, Start(1), JOINED),
        ),
    )
    return body, sleeve("left sleeve", sleeve_first)


def sleeve(name: str, first: int, count: int = 11) -> Piece:
    """A sleeve of seven stitches of the yoke and four of the underarm."""
    bases = (
        Base("body", "row", row=0, first=first, count=7),
        Base("body", "underside", row=1, first=10, count=4, reverse=True),
    )
    return Piece(
        name, True, (Row(1, "RS", "sleeve", (Work(S, count),), count, Start(1), JOINED),), bases
    )


def test_a_sleeve_is_sound_when_it_takes_what_the_body_passed(ring: Subject) -> None:
    """Each place of the yoke is worked once, by the body or by a sleeve."""
    assert not faults(of(ring, *raglan()))


@pytest.mark.parametrize(
    ("pieces", "said"),
    [
        (raglan(twice=True), "left sleeve: place 11 of the 1st row of body is worked into by body"),
        (raglan(sleeve_first=9), "left sleeve: place 10 of the 1st row of body is worked into by"),
        (
            (*raglan(), sleeve("right sleeve", 27)),
            "right sleeve: place 14 of the 2nd row of body is worked into by left sleeve too",
        ),
        (raglan(sleeve_first=30), "left sleeve: its base asks for 3 places more than body has"),
    ],
    ids=["by the body too", "one too early", "one underarm twice", "beyond the end"],
)
def test_a_sleeve_is_broken_when_its_places_are_not_its_own(
    ring: Subject, pieces: tuple[Piece, ...], said: str
) -> None:
    """Who else works there is named."""
    assert said in faults(of(ring, *pieces))["begins"]


def test_a_sleeve_is_broken_when_it_leaves_a_place_of_its_base(ring: Subject) -> None:
    """An underarm stitch that no round picks up is a hole."""
    body, _ = raglan()
    short = of(ring, body, sleeve("left sleeve", 10, 10))
    assert "left sleeve, row 1: place 11 of the row below is left out" in faults(short)["places"]


def hat(ring_of: tuple[Node, ...], end: End, first: int = 12) -> Piece:
    """A ring and a round of double crochets in it."""
    return Piece(
        "hat",
        True,
        (
            Row(0, "RS", "crown", ring_of, 1, end=end),
            Row(1, "RS", "crown", (Into((Work(D, first - 1),)),), 12, Start(3, True, True), JOINED),
        ),
    )


def test_a_ring_is_sound_when_its_round_stands_in_it(ring: Subject) -> None:
    """Adjustable, or of chains that are joined."""
    assert not faults(of(ring, hat((Work("adjustable_ring"),), End())))
    assert not faults(of(ring, hat((Chain(4),), JOINED)))


def test_a_ring_is_broken_when_it_is_not_joined_or_miscounted(ring: Subject) -> None:
    """Four chains in a line are no ring; eleven are not twelve."""
    opened = faults(of(ring, hat((Chain(4),), End())))
    assert opened == {"rounds": "hat, round 0: is a chain that is not joined into a ring"}
    short = faults(of(ring, hat((Work("adjustable_ring"),), End(), first=11)))
    assert short["counts"] == "hat, row 1: states 12 and leaves 11"


def test_rows_are_broken_when_the_yarn_is_at_the_other_end(ring: Subject) -> None:
    """Neither turned nor cut."""
    back = flat("back", 4, ((Work(S, 4),), 4), ((Work(S, 4),), 4))
    first, second, third = back.rows
    on = replace(back, rows=(first, replace(second, end=End()), replace(third, side="RS")))
    cut = replace(on, rows=(first, replace(second, end=End(fasten_off=True)), on.rows[2]))
    assert "neither turned nor cut" in faults(of(ring, on))["rounds"]
    assert not faults(of(ring, cut))


def test_rows_are_broken_when_they_are_joined_as_rounds(ring: Subject) -> None:
    """A flat piece has no first stitch to join to."""
    back = flat("back", 4, ((Work(S, 4),), 4))
    joined = replace(back, rows=(back.rows[0], replace(back.rows[1], end=JOINED)))
    assert "back, row 1: is joined" in faults(of(ring, joined))["rounds"]


def test_a_short_row_of_a_tube_is_sound_when_it_is_turned_before_the_join(ring: Subject) -> None:
    """It begins with a chain and cannot be joined."""
    tube = Piece(
        "skirt",
        True,
        (
            Row(0, "RS", "start", (Work(F, 8),), 8, end=End("first_stitch", turn=True)),
            Row(1, "WS", "seat", (Work(S, 2), Leave(6)), 2, Start(1), TURN),
            Row(2, "RS", "seat", (Work(S, 4), Leave(4)), 4, Start(1), TURN),
            Row(3, "WS", "body", (Work(S, 8),), 8, Start(1), JOINED),
        ),
    )
    assert not faults(of(ring, tube))


def test_a_piece_is_broken_when_its_rows_are_not_as_planned(ring: Subject) -> None:
    """Every piece is held to its plan, not only the first."""
    front, back = (flat(name, 4, ((Work(S, 4),), 4)) for name in ("front", "back"))
    subject = of(ring, front, back)
    first, second = subject.plan.pieces
    other = replace(subject.plan, pieces=(first, replace(second, counts=(4, 5))))
    found = faults(replace(subject, plan=other))
    assert found == {"planned": "back, row 1: planned 5, row 1 leaves 4"}
    lost = replace(subject.plan, pieces=(first, replace(second, name="bakc")))
    assert "bakc: 2 rows planned, 0 worked" in faults(replace(subject, plan=lost))["planned"]


def test_a_decrease_is_broken_when_its_stitch_cannot_close(ring: Subject) -> None:
    """Slip stitches have no loops to close together, and one stitch is no decrease."""
    for node, said in ((Together("slip_stitch", 2), "2 of them"), (Together(S, 1), "1 of them")):
        body = (node, Work(S, 4 - node.places))
        broken = of(ring, flat("back", 4, (body, 5 - node.places)))
        assert said in faults(broken)["stitches_close"]


def test_marks_of_a_yoke_need_not_stand_evenly(ring: Subject) -> None:
    """Only a tube's lines are held to even spacing; any marker has to lead to its increase."""
    inc = Into((Work(S, 3),))
    yoke = (
        Row(0, "RS", "yoke", (Work(F, 12),), 12, end=JOINED),
        Row(1, "RS", "yoke", (inc, Work(S, 1), inc, Work(S, 9)), 16, Start(1), JOINED, (1, 1)),
        Row(
            2,
            "RS",
            "yoke",
            (Work(S), inc, Work(S, 3), inc, Work(S, 10)),
            20,
            Start(1),
            JOINED,
            (1, 1),
        ),
    )
    sound = of(ring, Piece("body", True, yoke))
    assert not faults(sound)
    astray = (*yoke[:2], replace(yoke[2], body=(inc, Work(S, 4), inc, Work(S, 10))))
    assert "shaping point 1" in faults(of(ring, Piece("body", True, astray)))["markers"]
