"""The check of colours, over small programs that are broken in one way each."""

from __future__ import annotations

import pytest
from pieces_designs import NO_FIT

from frogless.fabric.expand import expand
from frogless.plan.model import Plan
from frogless.proof.checks.colours import check_colours
from frogless.proof.model import Finding, Subject
from frogless.rows.colours import colours_of
from frogless.rows.nodes import Base, Change, End, Node, Piece, Program, Row, Work
from frogless.stitches.load import dictionary

FOUR = Work("single_crochet", 4)
TO_B, TO_A = Change("B"), Change("A")
PLAIN: tuple[Node, ...] = (FOUR,)
STRIPE: tuple[Node, ...] = (FOUR, TO_B)


def piece(
    *bodies: tuple[Node, ...],
    colour: str = "A",
    name: str = "yoke",
    base: str = "",
    cut: bool = True,
) -> Piece:
    """Rounds of four stitches, on a foundation of their own or on another piece."""
    below = () if base else ((Work("foundation_single_crochet", 4),),)
    rows = tuple(
        Row(n, "RS", name, body, 4, end=End("first_stitch"))
        for n, body in enumerate((*below, *bodies), int(bool(base)))
    )
    last = Row(
        len(rows) + int(bool(base)), "RS", name, PLAIN, 4, end=End("first_stitch", fasten_off=cut)
    )
    return Piece(name, True, (*rows, last), (Base(base, "last_row"),) if base else (), colour)


def found(*pieces: Piece, bought: tuple[str, ...] = ("A", "B")) -> Finding:
    """What the check says."""
    program = Program(pieces)
    plan = Plan((), {}, (), program)
    fabric = expand(program, dictionary())
    return check_colours(Subject(plan, program, fabric, NO_FIT, dictionary(), {}, bought))


def test_stripes_pass_and_every_change_and_colour_is_looked_at() -> None:
    """Two changes and two colours."""
    sound = found(piece(STRIPE, (FOUR, TO_A)))
    assert (sound.verdict, sound.looked_at) == ("pass", 4)


def test_nothing_is_looked_at_in_one_colour() -> None:
    """It passes, and the page leaves it out."""
    assert found(piece(PLAIN, colour=""), bought=("",)).looked_at == 0


def test_body_goes_on_in_the_colour_that_the_yoke_ends_in() -> None:
    """From one end of yarn."""
    yoke = piece(STRIPE, cut=False)
    assert found(yoke, piece(PLAIN, name="body", base="yoke", colour="B")).verdict == "pass"


@pytest.mark.parametrize(
    ("pieces", "told"),
    [
        pytest.param(
            (piece(STRIPE, colour=""),), "does not say which colour it begins with", id="no letter"
        ),
        pytest.param(
            (piece(STRIPE, (FOUR, TO_B)),), "yoke, row 2: changes to colour B, which is in use",
            id="to the same",
        ),
        pytest.param(
            (piece((Work("single_crochet", 2), TO_B, Work("single_crochet", 2)), STRIPE),),
            "yoke, row 2: changes to colour B, which is in use",
            id="a row that does not return to its first colour",
        ),
        pytest.param(
            (Piece("cap", True, (Row(1, "RS", "", (TO_B, *PLAIN), 4),), (), "A"),),
            "cap, row 1: changes colour before anything is worked",
            id="before the first stitch",
        ),
        pytest.param(
            (piece(STRIPE, cut=False), piece(PLAIN, name="body", base="yoke")),
            "body: begins with colour A while B is on the hook",
            id="another colour on the hook",
        ),
    ],
)  # fmt: skip
def test_fault_is_told_when_a_colour_is_not_as_it_has_to_be(
    pieces: tuple[Piece, ...], told: str
) -> None:
    """One sentence, with its place; the only one."""
    (fault,) = found(*pieces, bought=colours_of(Program(pieces))).faults
    assert told in fault


@pytest.mark.parametrize(
    ("bought", "told"),
    [(("A",), "no yarn is told for colour B"), (("A", "B", "C"), "colour C, which is not used")],
)
def test_materials_have_the_colours_that_are_used(bought: tuple[str, ...], told: str) -> None:
    """Each of them, and no other."""
    (fault,) = found(piece(STRIPE), bought=bought).faults
    assert told in fault
