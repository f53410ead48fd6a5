"""Colours of a program: which there are, what is worked from one end of yarn, the ends."""

from __future__ import annotations

import pytest

from frogless.rows.colours import (
    begun_in,
    changes,
    colours_of,
    ends_of,
    goes_on,
    has_changes,
    threads,
)
from frogless.rows.nodes import Base, Change, End, Into, Node, Piece, Program, Repeat, Row, Work

SC = "single_crochet"
CUT = End(fasten_off=True)


def piece(*bodies: tuple[Node, ...], name: str = "hat", end: End = CUT, base: str = "") -> Piece:
    """Rounds of ten stitches, begun in A."""
    ends = [*(End("first_stitch") for _ in bodies[1:]), end]
    rows = tuple(
        Row(n, "RS", name, body, 10, end=each)
        for n, (body, each) in enumerate(zip(bodies, ends, strict=True), 1)
    )
    return Piece(name, True, rows, (Base(base, "last_row"),) if base else (), "A")


PLAIN: tuple[Node, ...] = (Work(SC, 10),)


def to(letter: str, *, carried: bool = True) -> tuple[Node, ...]:
    """A round that ends in another colour."""
    return (*PLAIN, Change(letter, carried))


def test_changes_are_met_as_often_as_their_repeat_when_they_stand_in_one() -> None:
    """Also those in one place with others."""
    body = (Repeat((Work(SC), Into((Work(SC), Change("B")))), 2), Change("A", carried=False))
    assert [c.colour for c in changes(body)] == ["B", "B", "A"]
    assert has_changes(piece(body))
    assert not has_changes(piece(PLAIN))


def test_colours_are_those_begun_and_changed_to() -> None:
    """In order, each once; a program in one colour has none."""
    assert colours_of(Program((piece(to("C"), to("B"), PLAIN),))) == ("A", "B", "C")
    one = piece(PLAIN)
    assert colours_of(Program((Piece(one.name, True, one.rows),))) == ()


def test_row_begins_in_the_colour_that_the_one_below_ends_in() -> None:
    """Whatever it changes to on its way."""
    inside = (Work(SC, 5), Change("B"), Work(SC, 3), Change("C"), Work(SC, 2))
    assert begun_in(piece(PLAIN, inside, to("A"), PLAIN)) == ("A", "A", "C", "A")


@pytest.mark.parametrize(
    ("bodies", "ends"),
    [
        pytest.param((PLAIN,), {"A": 2}, id="one colour: beginning and end"),
        pytest.param((to("B", carried=False), PLAIN), {"A": 2, "B": 2}, id="cut once: two each"),
        pytest.param(
            (to("B"), to("A"), to("B"), PLAIN), {"A": 2, "B": 2}, id="carried all the way"
        ),
        pytest.param(
            (to("B", carried=False), to("A", carried=False), PLAIN),
            {"A": 4, "B": 2},
            id="A cut and begun again, B cut",
        ),
        pytest.param(
            (to("B"), to("C", carried=False), to("A", carried=False), PLAIN),
            {"A": 2, "B": 2, "C": 2},
            id="A carried over B and C",
        ),
    ],
)
def test_ends_are_two_for_each_time_a_colour_is_taken_up_new(
    bodies: tuple[tuple[Node, ...], ...], ends: dict[str, int]
) -> None:
    """Counted by hand: one where it is begun, one where it is cut."""
    assert dict(ends_of((piece(*bodies),))) == ends


def test_ends_are_saved_when_the_next_piece_goes_on_with_the_yarn() -> None:
    """A yoke and a body from one end of yarn have the ends of one piece."""
    yoke, body = piece(PLAIN, name="yoke", end=End()), piece(PLAIN, name="body", base="yoke")
    program = Program((yoke, body))
    assert goes_on(program, 1)
    assert threads(program) == ((yoke, body),)
    assert dict(ends_of((yoke, body))) == {"A": 2}


def test_pieces_are_apart_when_the_yarn_is_cut_between_them() -> None:
    """However one stands on the other."""
    yoke, body = piece(PLAIN, name="yoke"), piece(PLAIN, name="body", base="yoke")
    assert threads(Program((yoke, body))) == ((yoke,), (body,))
    assert threads(Program((yoke, piece(PLAIN)))) == ((yoke,), (piece(PLAIN),))
