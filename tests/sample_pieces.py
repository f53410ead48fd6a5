"""One small program of each kind of piece, as sound as a garment's: what its rows say is golden."""

from __future__ import annotations

from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Leave,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Seam,
    Side,
    Skip,
    Start,
    Together,
    Work,
)

SC, DC, HDC = "single_crochet", "double_crochet", "half_double_crochet"
FSC, FDC = "foundation_single_crochet", "foundation_double_crochet"
TURN, LAST, JOIN = End(turn=True), End(fasten_off=True), End("first_stitch")
CH_1, CH_2, CH_3 = Start(1), Start(2), Start(3, counts=True)
DC2TOG, SC2TOG = Together(DC, 2), Together(SC, 2)
#: Into the place of a turning chain that counts.
ONE_DC = Into((Work(DC),))
BOTH_SC, BOTH_DC = Into((Work(SC, 2),)), Into((Work(DC, 2),))


def row(
    number: int, count: int, *body: Node, start: Start = CH_1, end: End = TURN, section: str = ""
) -> Row:
    """A row of turned work, the odd ones on the right side."""
    side: Side = "RS" if number % 2 else "WS"
    return Row(number, side, section, body, count, start, end)


def chain(n: int) -> Row:
    """A foundation chain for rows."""
    return Row(0, "WS", "", (Chain(n, each=True),), n, end=TURN)


def ring(body: Node, end: End = JOIN) -> Row:
    """A ring to begin a disc in."""
    return Row(0, "RS", "", (body,), 1, end=end)


def rnd(number: int, count: int, *body: Node, start: Start = CH_2, end: End = JOIN) -> Row:
    """A round that is joined and not turned."""
    return Row(number, "RS", "", body, count, start, end)


def flat(name: str, *rows: Row, bases: tuple[Base, ...] = ()) -> Piece:
    """A piece in rows."""
    return Piece(name, False, rows, bases)


def shaped_panel() -> Program:
    """91 double crochets are worked into 93 chains (hand arithmetic: 91 + 3 - 1)."""
    into_same = Start(3, counts=True, shares=True)
    return Program(
        (
            flat(
                "back",
                chain(91),
                row(1, 91, Work(DC, 90), start=CH_3),
                row(2, 93, ONE_DC, Work(DC, 89), BOTH_DC, start=into_same),
                row(3, 95, ONE_DC, Work(DC, 91), BOTH_DC, start=into_same),
                row(4, 93, DC2TOG, Work(DC, 90), DC2TOG, start=CH_3),
                row(5, 93, Work(DC, 92), start=CH_3, end=LAST),
            ),
        )
    )


def edges_in_single_crochet() -> Program:
    """91 single crochets are worked into 92 chains; increases and decreases at both edges."""
    return Program(
        (
            flat(
                "sleeve",
                chain(91),
                row(1, 91, Work(SC, 91)),
                row(2, 93, BOTH_SC, Work(SC, 89), BOTH_SC),
                row(3, 91, SC2TOG, Work(SC, 89), SC2TOG),
                row(4, 91, Work(SC, 91)),
                row(5, 93, Work(SC), BOTH_SC, Work(SC, 87), BOTH_SC, Work(SC)),
                row(6, 91, Work(SC), SC2TOG, Work(SC, 87), SC2TOG, Work(SC), end=LAST),
            ),
        )
    )


def armholes_and_shoulders() -> Program:
    """Five stitches are passed at each side, then the neck is left and each shoulder worked alone."""
    front = flat(
        "front",
        chain(30),
        row(1, 30, Work(SC, 30)),
        row(2, 30, Work(SC, 30)),
        row(3, 20, Work(SC, 20), Skip(5), start=Start(1, across=5)),
        row(4, 20, Work(SC, 20), end=LAST),
    )
    right = flat(
        "front, right shoulder",
        row(1, 6, Work(SC, 6)),
        row(2, 5, SC2TOG, Work(SC, 4), end=LAST),
        bases=(Base("front", "row", 4, 14, 6, reverse=True),),
    )
    left = flat(
        "front, left shoulder",
        row(1, 6, Work(SC, 6)),
        row(2, 5, Work(SC, 4), SC2TOG, end=LAST),
        bases=(Base("front", "row", 4, 0, 6, reverse=True),),
    )
    return Program((front, right, left))


def armhole_with_a_chain_that_counts() -> Program:
    """After the slip stitches the chain stands on the next stitch."""
    beyond = Start(3, counts=True, across=4)
    shared = Start(3, counts=True, shares=True, across=1)
    return Program(
        (
            flat(
                "back",
                Row(0, "WS", "", (Work(FDC, 20),), 20, end=TURN),
                row(1, 12, Work(DC, 11), Skip(4), start=beyond),
                row(2, 12, ONE_DC, Work(DC, 9), Work(DC), start=shared, end=LAST),
            ),
        )
    )


def sloped_shoulder() -> Program:
    """Twenty stitches in steps of 7, 7 and 6, closed by a row over all of them."""
    return Program(
        (
            flat(
                "shoulder",
                chain(20),
                row(1, 13, Work(SC, 13), Leave(7)),
                row(2, 13, Work(SC, 13)),
                row(3, 6, Work(SC, 6), Leave(14)),
                row(4, 6, Work(SC, 6)),
                row(5, 20, Work(SC, 20), end=LAST),
            ),
        )
    )


def dart() -> Program:
    """Each row turns one stitch earlier; the last works over the steps."""
    return Program(
        (
            flat(
                "front",
                Row(0, "WS", "", (Work(FSC, 10),), 10, end=TURN),
                row(1, 10, Work(SC, 10)),
                row(2, 8, Work(SC, 8), Leave(2)),
                row(3, 8, Work(SC, 8)),
                row(4, 6, Work(SC, 6), Leave(4)),
                row(5, 6, Work(SC, 6)),
                row(6, 12, Work(SC, 5), Repeat((BOTH_SC,), 2), Work(SC, 3), end=LAST),
            ),
        )
    )


def full_seat() -> Program:
    """Short rows at centre back of a skirt worked in rounds, over the join."""
    turns = [(3, 13), (6, 10), (5, 11), (4, 12)]
    rows = [Row(0, "RS", "", (Work(FSC, 16),), 16, end=JOIN)]
    for number, (work, rest) in enumerate(turns, start=1):
        side: Side = "RS" if number % 2 else "WS"
        body = (Work(SC, work), Leave(rest))
        rows.append(Row(number, side, "", body, work, CH_1, TURN))
    rows.append(Row(5, "RS", "", (Work(SC, 2), Leave(14)), 2, CH_1))
    rows.append(Row(6, "RS", "", (Work(SC, 16),), 16, Start(), LAST))
    return Program((Piece("skirt", True, tuple(rows)),))


def disc() -> Program:
    """Twelve in the ring, then twelve more in every round; the chain that counts shares its place."""
    counted, lifted = Start(3, counts=True, shares=True), End("chain_top")
    doubled = Repeat((BOTH_DC,), 11)
    grown = Repeat((BOTH_DC, Work(DC)), 11)
    return Program(
        (
            Piece(
                "crown",
                True,
                (
                    ring(Work("adjustable_ring")),
                    rnd(1, 12, Into((Work(DC, 11),)), start=counted, end=lifted),
                    rnd(2, 24, ONE_DC, doubled, start=counted, end=lifted),
                    rnd(3, 36, ONE_DC, Work(DC), grown, start=counted, end=lifted),
                    rnd(4, 36, Work(DC, 35), start=CH_3, end=End("chain_top", fasten_off=True)),
                ),
            ),
        )
    )


def spiral_disc() -> Program:
    """From a ring of four chains, in a spiral."""
    return Program(
        (
            Piece(
                "bag",
                True,
                (
                    ring(Chain(4)),
                    rnd(1, 6, Into((Work(SC, 6),)), start=Start(), end=End()),
                    rnd(2, 12, Repeat((BOTH_SC,), 6), start=Start(), end=End()),
                    rnd(3, 18, Repeat((Work(SC), BOTH_SC), 6), start=Start(), end=LAST),
                ),
            ),
        )
    )


def yoke() -> Program:
    """A yoke of 24 is parted: the body bridges each sleeve, which goes on from what was passed."""
    corner = Into((Work(DC), Chain(1), Work(DC)))
    sides = (Work(DC, 3), corner, Work(DC, 2), corner)
    passed = (Work(DC), Skip(4), Chain(2, each=True), Work(DC))
    first = rnd(1, 22, *sides * 2)
    parted = rnd(2, 18, Work(DC, 4), *passed, Work(DC, 5), *passed, Work(DC))
    body = rnd(3, 18, Work(DC, 18), end=End("first_stitch", fasten_off=True))
    foundation = Row(0, "RS", "", (Work(FDC, 14),), 14, end=JOIN)
    top = Piece("yoke", True, (foundation, first, parted, body))

    def arm(name: str, at: int, under: int) -> Piece:
        bases = (Base("yoke", "row", 1, at, 4), Base("yoke", "underside", 2, under, 2))
        rows = (
            rnd(1, 6, Work(DC, 6)),
            rnd(2, 4, Repeat((DC2TOG, Work(DC)), 2), end=End("first_stitch", fasten_off=True)),
        )
        return Piece(name, True, rows, bases)

    return Program((top, arm("left sleeve", 5, 5), arm("right sleeve", 16, 14)))


def triangle_shawl() -> Program:
    """From the middle of its long edge: four more in each row, two at the ends, two at the spine."""
    first = Into((Work(DC, 2), Chain(2), Work(DC, 3)))
    spine = Into((Work(DC), Chain(2), Work(DC)))
    counted = Start(3, counts=True, shares=True)
    return Program(
        (
            flat(
                "shawl",
                Row(0, "WS", "", (Work("adjustable_ring"),), 1, end=TURN),
                row(1, 7, first, start=counted),
                row(2, 11, ONE_DC, Work(DC, 2), spine, Work(DC, 2), BOTH_DC, start=counted),
                row(
                    3,
                    15,
                    ONE_DC,
                    Work(DC, 4),
                    spine,
                    Work(DC, 4),
                    BOTH_DC,
                    start=counted,
                    end=LAST,
                ),
            ),
        )
    )


def stripes() -> Program:
    """Two rows that take turns are told once and worked again."""
    rows = [chain(9), row(1, 9, Work(SC, 9))]
    for number in range(2, 14, 2):
        rows.append(row(number, 9, Work(DC, 8), start=CH_3))
        rows.append(row(number + 1, 9, Work(SC, 9)))
    rows.append(row(14, 9, Work(SC, 9), end=LAST))
    return Program((flat("scarf", *rows),))


def border() -> Program:
    """Along an edge of row ends, across the top, down the other edge; then sewn to a strap."""
    panel = flat(
        "front",
        Row(0, "WS", "", (Work(FDC, 8),), 8, end=TURN),
        *(row(i, 8, Work(DC, 7), start=CH_3) for i in range(1, 5)),
        row(5, 8, Work(DC, 7), start=CH_3, end=LAST),
    )
    picked = (
        Repeat((BOTH_SC, Work(SC)), 3),
        Into((Work(SC, 3),)),
        Work(SC, 6),
        Into((Work(SC, 3),)),
        Repeat((Work(SC), BOTH_SC), 3),
    )
    bases = (
        Base("front", "right_edge"),
        Base("front", "last_row"),
        Base("front", "left_edge", reverse=True),
    )
    around = flat(
        "border",
        row(1, 30, *picked),
        row(2, 30, Work(SC, 30), end=LAST),
        bases=bases,
    )
    below = flat("hem band", row(1, 8, Work(SC, 8), end=LAST), bases=(Base("front", "foundation"),))
    strap = flat("strap", chain(24), row(1, 24, Work(SC, 24), end=LAST))
    ends = Seam(
        "strap to border",
        SC,
        (Base("strap", "last_row", count=12),),
        (Base("border", "last_row", first=4, count=6), Base("border", "left_edge")),
        12,
        8,
        (1, 2, 1, 2, 1, 2, 1, 2),
    )
    fold = Seam(
        "strap",
        "slip_stitch",
        (Base("strap", "foundation", first=12),),
        (Base("strap", "last_row", first=12, count=12, reverse=True),),
        12,
        12,
        (1,) * 12,
    )
    return Program((panel, around, below, strap), (ends, fold))


def cut_and_joined() -> Program:
    """Every row on the right side, the yarn cut after each."""
    return Program(
        (
            flat(
                "mosaic",
                Row(0, "RS", "", (Work(FSC, 9),), 9, end=LAST),
                Row(1, "RS", "", (Work(SC, 9),), 9, CH_1, LAST),
                Row(2, "RS", "", (Work(SC, 9),), 9, CH_1, LAST),
            ),
        )
    )


SAMPLES: dict[str, Program] = {
    "panel_is_shaped_at_both_edges": shaped_panel(),
    "edges_are_called_first_and_last": edges_in_single_crochet(),
    "armholes_are_passed_and_shoulders_go_on_alone": armholes_and_shoulders(),
    "chain_that_counts_stands_beyond_slip_stitches": armhole_with_a_chain_that_counts(),
    "shoulder_is_sloped_by_short_rows": sloped_shoulder(),
    "dart_is_worked_in_short_rows": dart(),
    "seat_is_worked_in_short_rows_over_the_join": full_seat(),
    "disc_begins_in_an_adjustable_ring": disc(),
    "disc_begins_in_a_ring_of_chains": spiral_disc(),
    "yoke_is_parted_and_sleeves_are_begun": yoke(),
    "shawl_grows_at_a_chain_space": triangle_shawl(),
    "rows_in_turn_are_told_once": stripes(),
    "border_is_picked_up_and_sewn": border(),
    "yarn_is_joined_where_it_was_cut": cut_and_joined(),
}
