"""The reader's own count of places, held against the one that rows have."""

from __future__ import annotations

from frogless.read.ground import Ground, edge_of, first_made, ground_of
from frogless.rows.count import row_left
from frogless.rows.nodes import Chain, Into, Piece, Repeat, Row, Skip, Start, Together, Work
from frogless.stitches.load import dictionary, leaves

STITCHES = dictionary()
SC, DC = "single_crochet", "double_crochet"
LACE = Row(
    1,
    "RS",
    "",
    (
        Repeat((Into((Work(SC, 2), Work("picot"), Chain(3))), Skip(2), Chain(1)), 4),
        Together(DC, 3),
        Chain(5, each=True),
        Work(DC, 2),
    ),
    0,
    Start(3, counts=True),
)


def test_two_counters_agree() -> None:
    """Two hands, one number."""
    assert ground_of(LACE, STITCHES) == Ground(25, spaces=True)
    assert row_left(LACE, leaves(STITCHES)) == 25


def test_edges_offer_their_places() -> None:
    """A foundation chain has no row end; a foundation stitch has."""
    chain = Row(0, "RS", "", (Chain(7, each=True),), 7)
    stitches = Row(0, "RS", "", (Work("foundation_double_crochet", 7),), 7)
    on_chain = Piece("a", False, (chain, LACE))
    on_stitches = Piece("a", False, (stitches, LACE))
    assert edge_of(on_chain, "row_ends", STITCHES) == Ground(1)
    assert edge_of(on_stitches, "row_ends", STITCHES) == Ground(2)
    assert edge_of(on_chain, "foundation", STITCHES) == Ground(7)
    assert edge_of(on_chain, "last_row", STITCHES) == Ground(25, spaces=True)


def test_first_stitch_made_is_found_inside() -> None:
    """Chains and skips are passed over."""
    assert first_made((Chain(1), Repeat((Skip(), Into((Work(DC),))), 2))) == DC
    assert first_made((Chain(1),)) is None
