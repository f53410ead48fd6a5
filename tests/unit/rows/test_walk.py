"""Ways through the tree of a row."""

from __future__ import annotations

import pytest

from frogless.rows.nodes import Chain, Into, Leave, Node, Repeat, Skip, Together, Work
from frogless.rows.walk import flatten, nodes, stitch_keys, unrolled

D, S = "double_crochet", "single_crochet"


def test_every_node_is_met_with_its_multiplicity_when_repeats_nest() -> None:
    """What stands in a repeat in a repeat is met as often as both say."""
    inner = Repeat((Work(S),), 3)
    met = dict(nodes((Repeat((inner, Into((Work(D, 2),))), 4), Skip())))
    assert met[Work(S)] == 12
    assert met[inner] == met[Work(D, 2)] == 4
    assert met[Skip()] == 1


def test_repeats_are_written_out_when_unrolled() -> None:
    """The inside of an `Into` stays, the repeat goes."""
    group = Into((Repeat((Work(S),), 2),))
    assert list(unrolled((Repeat((group, Chain()), 2),))) == [group, Chain(), group, Chain()]


@pytest.mark.parametrize(
    ("body", "flat"),
    [
        ((Work(D, 2), Work(D, 3)), (Work(D, 5),)),
        ((Work(D), Work(S)), (Work(D), Work(S))),
        ((Skip(), Skip(2)), (Skip(3),)),
        ((Chain(2), Chain(2)), (Chain(2), Chain(2))),
        ((Chain(2, each=True), Chain(3, each=True)), (Chain(5, each=True),)),
        ((Repeat((Work(D), Work(D, 2)), 3),), (Work(D, 9),)),
        ((Repeat((Work(D), Skip()), 2),), (Work(D), Skip(), Work(D), Skip())),
        ((Work(D, 0), Skip(0), Chain(0), Repeat((Work(D),), 0)), ()),
        ((Work(D), Work(S, 0), Work(D)), (Work(D, 2),)),
        ((Into((Repeat((Work(D),), 2),)),), (Into((Work(D, 2),)),)),
        ((Together(D, 2), Together(D, 2)), (Together(D, 2), Together(D, 2))),
    ],
)
def test_neighbours_of_one_kind_are_one_run_when_flattened(
    body: tuple[Node, ...], flat: tuple[Node, ...]
) -> None:
    """Runs grow together, but two runs of chains are two places."""
    assert flatten(body) == flat


def test_all_stitches_are_named_when_a_body_holds_groups() -> None:
    """Inside repeats, groups and closed-together stitches too; a chain has a node of its own."""
    body = (Repeat((Into((Work(S), Work("picot"))), Chain()), 2), Together(D, 2))
    assert stitch_keys(body) == {S, D, "picot"}


def test_places_left_are_one_run_when_flattened() -> None:
    """Two runs left next to each other are one, and none is nothing."""
    assert flatten((Leave(2), Leave(3), Leave(0))) == (Leave(5),)
