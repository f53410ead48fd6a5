"""Rows recovered from what is said, with the row below."""

from __future__ import annotations

from dataclasses import replace

import pytest

from frogless.errors import InputError
from frogless.read.ground import Stretch
from frogless.read.parse import parse_row
from frogless.read.recover import Heard, rows_of
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import (
    Chain,
    End,
    Into,
    Leave,
    Repeat,
    Row,
    Side,
    Skip,
    Start,
    Together,
    Work,
)

SC, DC = "single_crochet", "double_crochet"


def rows(
    us: Vocabulary,
    *lines: str,
    places: int | None = 9,
    kinds: tuple[str, ...] = (),
    closed: bool = True,
) -> tuple[Row, ...]:
    """The rows of some lines, worked into so many places."""
    begun = None if places is None else (Stretch(kinds or ("st",) * places),)
    heard = Heard(begun, closed)
    for line in lines:
        _, heard = rows_of(parse_row(line, us), heard, us)
    return tuple(done.row for done in heard.done)


def test_each_is_as_many_as_there_are_places_below(us: Vocabulary) -> None:
    """Counted as it goes, not taken from the stated count."""
    first, second, third = rows(
        us,
        "Rnd 1: 2 dc in each st around. (99 dc)",
        "Rnd 2: Sc in each st around.",
        "Rnd 3: Ch 3 (counts as first dc), dc in each remaining st around.",
    )
    assert first.body == (Repeat((Into((Work(DC, 2),)),), 9),)
    assert second.body == (Work(SC, 18),)
    assert third.body == (Work(DC, 17),)
    assert (first.count, second.count, third.count) == (99, 18, 18)


def test_folded_line_gives_all_its_rows(us: Vocabulary) -> None:
    """Each counted anew, the sides in turn."""
    found = rows(us, "Rnds 1–3 (WS, RS in turn): 2 dc in each st around; turn.")
    assert [(row.number, row.side, row.count) for row in found] == [
        (1, "WS", 18),
        (2, "RS", 36),
        (3, "WS", 72),
    ]


@pytest.mark.parametrize(("turn", "sides"), [("; turn", ["RS", "WS", "RS"]), ("", ["RS"] * 3)])
def test_side_that_is_not_said_follows_from_the_turns(
    us: Vocabulary, turn: str, sides: list[Side]
) -> None:
    """The first row shows the right side."""
    found = rows(us, *(f"Rnd {i}: Dc in each st around{turn}." for i in (1, 2, 3)))
    assert [row.side for row in found] == sides


def test_turning_chain_counts_as_it_was_said_at_first(us: Vocabulary) -> None:
    """For each number of chains on its own."""
    found = rows(
        us,
        "Rnd 1: Ch 3 (counts as first dc), dc in next 8 sts.",
        "Rnd 2: Ch 1 (does not count as a st), sc in each st around.",
        "Rnd 3: Ch 3, dc in each remaining st around.",
        "Rnd 4: Ch 1, sc in each st around.",
    )
    assert [row.start for row in found] == [Start(3, True), Start(1), Start(3, True), Start(1)]


def test_chain_is_a_foundation_a_turning_chain_or_a_space(us: Vocabulary) -> None:
    """By where it stands and what is said of it."""
    bodies = [
        rows(us, line, places=0)[0].body
        for line in (
            "Foundation: Ch 60.",
            "Foundation: Ch 60 (counts as one ch-sp).",
            "Foundation: [slide up a bead, ch 20] 2 times.",
            "Row 1: No turning chain, ch 2, dc in next 2 sts.",
            "Row 1: Ch 2 (each ch counts as a st), dc in next 2 sts.",
        )
    ]
    assert bodies == [
        (Chain(60, each=True),),
        (Chain(60),),
        (Repeat((Work("bead"), Chain(20)), 2),),
        (Chain(2), Work(DC, 2)),
        (Chain(2, each=True), Work(DC, 2)),
    ]


def test_foundation_may_begin_with_a_chain_that_does_not_count(us: Vocabulary) -> None:
    """A foundation double crochet begins on 3."""
    row = rows(us, "Foundation: Ch 3 (does not count as a st), work 9 fdc.", places=0)[0]
    assert (row.start, row.body) == (Start(3), (Work("foundation_double_crochet", 9),))


def test_ends_and_ways_are_kept(us: Vocabulary) -> None:
    """Joins, turns, cutting, working back, the hook until it changes."""
    first, second = rows(
        us,
        "Rnd 1: Use 3.5 mm hook. Ch 2 (does not count), dc in each st around; "
        "join with sl st to top of ch-2, turn.",
        "Rnd 2: Working back along the rnd without turning, rev sc in each st around; "
        "join with sl st to first rev sc. Fasten off.",
    )
    assert (first.end, first.hook, first.backwards) == (End("chain_top", turn=True), 3.5, False)
    assert second.end == End("first_stitch", fasten_off=True)
    assert (second.hook, second.backwards) == (3.5, True)


@pytest.mark.parametrize(
    ("side", "back", "expected"),
    [
        ("RS", "", (0, 0, 1)),
        ("WS", "", (1, 0, 0)),
        ("RS", "Working back along the rnd without turning, ", (1, 0, 0)),
    ],
)
def test_markers_are_in_the_order_worked(
    us: Vocabulary, side: str, back: str, expected: tuple[int, ...]
) -> None:
    """They are numbered as seen with the right side facing."""
    line = (
        f"Rnd 1 ({side}): {back}Dc in next 9 sts. "
        "Place markers 1, 2 in the 1st st and marker 3 in the 2nd st of each increase."
    )
    assert rows(us, line)[0].marks == expected


def test_markers_of_another_number_have_to_be_placed_anew(us: Vocabulary) -> None:
    """Two stand: three are no two moved up."""
    first = "Rnd 1 (RS): Dc in next 9 sts. Place markers 1, 2 in the 1st st of each increase."
    again = "Rnd 2 (RS): Dc in next 9 sts."
    where = "the 1st st of each increase."
    anew = rows(us, first, f"{again} Remove the old markers. Place markers 1–3 in {where}")
    assert anew[1].marks == (0, 0, 0)
    assert rows(us, first, f"{again} Move markers 1, 2 up into {where}")[1].marks == (0, 0)
    with pytest.raises(InputError, match="3 markers are moved up, but 2 stand in the work"):
        rows(us, first, f"{again} Move markers 1–3 up into {where}")


def test_stitches_together_are_recovered(us: Vocabulary) -> None:
    """With how many, in a repeat too."""
    row = rows(us, "Rnd 1: [dc2tog, sc3tog] 2 times.")[0]
    assert row.body == (Repeat((Together(DC, 2), Together(SC, 3)), 2),)


@pytest.mark.parametrize(
    ("line", "complaint"),
    [
        ("Rnd 1: Ch 2, dc in next 9 sts.", "not said whether the turning chain of 2 counts"),
        ("Rnd 1: Dc in next st, ch 2 (does not count as a st).", "only the chain at the beginning"),
        ("Rnd 1: 2 dc, dc in next st.", '"dc" does not say where it goes; write "dc in next st"'),
        ("Rnd 1: Dc in each st around, dc in next st.", '"in each" takes all places there are'),
        ("Rnd 1: [dc in each st around] 2 times.", '"in each" is said outside brackets'),
        ("Rnd 1: Dc in next st, no turning chain.", "said before its first stitch"),
        (
            "Rnd 1: Dc in each remaining st around.",
            '"remaining" is for places after others that are taken',
        ),
        ("Rnd 1: Ch 3 (counts as first dc), dc in each st around.", '"remaining" is for places'),
        (
            "Rnd 1: Dc in next st; join with sl st to first sc.",
            'the first "sc", but began with "dc"',
        ),
        ("Rnd 1: Dc in next st; join with sl st to top of ch-2.", "2 chains, but began with 0"),
        ("Rnd 1: Dc in next st; join with sc to first dc.", 'slip stitch, not with "sc"'),
        ("Rnds 3–2: Dc in each st around.", "rows 3 to 2 run backwards"),
        (
            "Rnd 1: Dc in next st. Move markers 1, 2 up into the 1st st of each increase.",
            "2 markers are moved up, but 0 stand in the work; they have to be placed first",
        ),
        (
            "Rnd 1: Dc in next st. Remove the old markers. Place marker 1 in the 1st st of the "
            "increase.",
            "old markers are to be taken out, but none was placed before",
        ),
        (
            "Rnd 1: Dc in next st. Place markers 1, 3 in the 1st st of each increase.",
            "markers are numbered from 1, each named once",
        ),
        (
            "Rnd 1: Dc in next st. Place marker 1 in the 1st st and marker 1 in the 2nd st of the "
            "increase.",
            "each named once",
        ),
        ("Rnd 1: Sc over next 2 sts.", '"Sc" worked 1 times takes 1 stitches, not 2'),
    ],
)
def test_what_is_open_or_contradicts_itself_is_refused(
    us: Vocabulary, line: str, complaint: str
) -> None:
    """Nothing is guessed."""
    with pytest.raises(InputError) as error:
        rows(us, line)
    assert complaint in str(error.value)


def test_row_that_is_missing_is_noticed(us: Vocabulary) -> None:
    """Numbers follow each other."""
    with pytest.raises(InputError, match="row 3 follows row 1; row 2 was expected"):
        rows(us, "Rnd 1: Dc in each st around.", "Rnd 3: Dc in each st around.")


LACE = ("st", "sp1") * 4 + ("st",)


def test_chain_spaces_below_have_to_be_named(us: Vocabulary) -> None:
    """ "Each st" could leave them out."""
    for line, complaint in (
        ("Rnd 1: Dc in each st around.", 'write "in each st and ch-sp"'),
        ("Rnd 1: Dc in next 9 sts.", 'write "Count each ch-sp as a st."'),
    ):
        with pytest.raises(InputError, match="the row below leaves chain spaces") as error:
            rows(us, line, kinds=LACE)
        assert complaint in str(error.value)
    named = rows(us, "Rnd 1: Dc in each st and ch-sp around.", kinds=LACE)
    noted = rows(us, "Rnd 1: Count each ch-sp as a st. Dc in next 9 sts.", kinds=LACE)
    assert named[0].body == noted[0].body == (Work(DC, 9),)


def test_each_needs_to_know_the_edge(us: Vocabulary) -> None:
    """An edge that is not at hand has no number."""
    with pytest.raises(InputError, match="needs an edge whose stitches are known"):
        rows(us, "Rnd 1: Dc in each st around.", places=None)


CHAIN = "Foundation (WS): Ch 93; turn. (93 ch)"


def test_foundation_is_as_long_as_the_first_row_makes_it(us: Vocabulary) -> None:
    """93 chains, three of them skipped that count: 91 stitches (93 - 3 + 1); uncounted: 90."""
    line = "Row 1 (RS): Beginning in 4th ch from hook (3 skipped chs {}), dc in each {}ch across."
    counted = rows(us, CHAIN, line.format("count as first dc", "remaining "), closed=False)
    assert counted[0].body == (Chain(91, each=True),)
    assert (counted[0].count, counted[1].count) == (91, 91)
    assert (counted[1].start, counted[1].body) == (Start(3, counts=True), (Work(DC, 90),))
    loose = rows(us, CHAIN, line.format("do not count as sts", ""), closed=False)
    assert (loose[0].count, loose[1].start, loose[1].body) == (90, Start(3), (Work(DC, 90),))


def test_row_begins_in_the_place_of_its_chain_when_it_says_so(us: Vocabulary) -> None:
    """ "In same st", in a ring, or beginning there."""
    chain = "Row 1: Ch 3 (counts as first dc), "
    same, begun = (
        rows(us, f"{chain}{rest}", closed=False)[0]
        for rest in (
            "dc in same st, dc in next 7 sts, 2 dc in last st.",
            "beginning in same st, dc in each st across.",
        )
    )
    assert same.start == begun.start == Start(3, counts=True, shares=True)
    assert (same.count, begun.count) == (11, 10)
    ring = rows(us, f"{chain}11 dc in ring.", kinds=("ring",))[0]
    assert (ring.start, ring.count) == (Start(3, counts=True, shares=True), 12)


def test_slip_stitches_lead_over_places(us: Vocabulary) -> None:
    """The chain stands beyond them."""
    row = rows(
        us,
        "Row 1: Sl st in each of first 3 sts (not counted), ch 3 (counts as dc in next st), dc in "
        "next 3 sts, leave last 2 sts unworked.",
        closed=False,
    )[0]
    assert row.start == Start(3, counts=True, across=3)
    assert row.body == (Work(DC, 3), Skip(2))


@pytest.mark.parametrize(
    ("joined", "across"), [("; join with sl st to first sc", 3), ("; do not join", 2)]
)
def test_slip_stitches_lead_into_the_place_of_the_chain(
    us: Vocabulary, joined: str, across: int
) -> None:
    """The loop of a joined round sits on its first stitch already; else it is the first to slip into."""
    before = "Rnd 1: Sc in next 2 sts, ch 2, sc in next 7 sts"
    if across == 3:
        before = "Rnd 1: Sc in next 3 sts, ch 2, sc in next 6 sts"
    row = rows(
        us,
        f"{before}{joined}.",
        "Rnd 2: Sl st in next 2 sts and in next ch-2 sp, ch 3 (counts as first dc), 2 dc in same "
        "ch-2 sp, dc in each remaining st around; join with sl st to top of ch-3.",
    )[1]
    assert row.start == Start(3, counts=True, shares=True, across=across)
    assert row.body[0] == Into((Work(DC, 2),))


def test_slip_stitches_lead_only_to_what_is_there(us: Vocabulary) -> None:
    """The place that the chain stands in is held to what it is called."""
    with pytest.raises(InputError, match="place 4 of the row below is a stitch"):
        rows(
            us,
            "Rnd 1: Sc in each st around; join with sl st to first sc.",
            "Rnd 2: Sl st in next 2 sts and in next ch-2 sp, ch 3 (counts as first dc), dc in next "
            "5 sts; join with sl st to top of ch-3.",
        )


def test_short_rows_leave_places_that_are_met_later(us: Vocabulary) -> None:
    """The row back begins where it was turned; the last works over all."""
    found = rows(
        us,
        "Row 1 (RS): Short row. Sc in next 6 sts, leave last 3 sts unworked for now; turn.",
        "Row 2 (WS): Sc in each st across; turn.",
        "Row 3 (RS): Sc in each st across, working also into the 3 sts left unworked.",
        closed=False,
    )
    assert [row.body for row in found] == [
        (Work(SC, 6), Leave(3)),
        (Work(SC, 6),),
        (Work(SC, 9),),
    ]


def test_rows_worked_again_are_worked_as_they_were(us: Vocabulary) -> None:
    """On what is there now; the hook and the sense of a chain are those of the first time."""
    found = rows(
        us,
        "Row 1 (RS): Use 4 mm hook. Ch 1 (does not count as a st), sc in each st across; turn.",
        "Row 2 (WS): Ch 3 (counts as first dc), dc in each remaining st across; turn.",
        "Rows 3–6 (RS, WS in turn): Rep rows 1 and 2 another 2 times. (9 dc)",
        "Row 7 (RS): Ch 1, sc in each st across.",
        closed=False,
    )
    assert [(row.number, row.side) for row in found[2:6]] == [
        (3, "RS"),
        (4, "WS"),
        (5, "RS"),
        (6, "WS"),
    ]
    assert found[4] == replace(found[0], number=5)
    assert found[5] == replace(found[1], number=6)
    assert found[6].start == Start(1)


def test_an_adjustable_ring_is_closed_though_nobody_says_so(us: Vocabulary) -> None:
    """In rounds; a ring of chains says that it is joined."""
    ring = "Foundation (RS): Make an adjustable ring{}. (1 ring)"
    assert rows(us, ring.format(""))[0].end == End("first_stitch")
    assert rows(us, ring.format("; turn"), closed=False)[0].end == End(turn=True)
    chains = rows(us, "Foundation (RS): Ch 4; join with sl st to form a ring. (1 ring)")[0]
    assert (chains.body, chains.end) == ((Chain(4),), End("first_stitch"))


SHORT = "Row 1 (RS): Short row. Sc in next 6 sts, leave last 3 sts unworked for now; turn."
AGAIN = ("Row 1 (RS): Sc in next 9 sts; turn.", "Row 2 (WS): Dc in next 9 sts; turn.")


@pytest.mark.parametrize(
    ("lines", "complaint"),
    [
        (["Row 1: Sc in next st, sc in first st."], '"first" is place 1 of the row below, but'),
        (["Row 1: Sc in next 7 sts, sc in last st."], '"last" ends with place 9 of the row below'),
        (["Row 1: Sc in next 7 sts, leave last st unworked."], "but this ends with 8"),
        (["Row 1: Sc in same st."], '"same" is for the place of a turning chain that counts'),
        (["Row 1: Sc in next ch-2 sp."], "place 1 of the row below is a stitch, no ch-2 sp"),
        (["Row 1: Sc in next row end."], "place 1 of the row below is a stitch, not a row end"),
        (["Row 1: 9 sc in ring."], "place 1 of the row below is a stitch, not the ring"),
        (["Row 1: Sc in each row end across."], "place 1 of the row below is a stitch"),
        (["Row 1: Dc in each of first 2 sts (not counted), dc in next 7 sts."],
         'only slip stitches lead over places without counting, not "Dc"'),
        (["Row 1: Short row. Sc in next 9 sts."], "a short row leaves places for later"),
        ([SHORT, "Row 2 (WS): Sc in next 6 sts, working also into the 3 sts left unworked."],
         "3 places left unworked are said to be worked into, but the row comes to 0"),
        (["Row 1: Join yarn at the start of the row. Sc in next 9 sts."], "yarn is joined, but"),
        (["Row 1: Beginning in 2nd ch from hook (skipped ch does not count as a st), sc in next "
          "st."], "only the first row into a foundation chain begins from the hook"),
        ([CHAIN, "Row 1: Beginning in 4th ch from hook (2 skipped chs do not count as sts), sc in "
          "next st."], "3 chains are skipped before chain 4 from the hook, not 2"),
        ([*AGAIN, "Rows 3–6 (RS, WS in turn): Rep rows 1 and 2 another 3 times."],
         "rows 1 to 2 worked 3 times more are 6 rows, not 4"),
        ([*AGAIN, "Rows 3–4 (RS): Rep row 1 another 2 times."], "the rows to work again are those"),
        ([*AGAIN, "Row 3 (RS): Rep row 2 another 1 time."], "row 3 cannot be worked as row 2"),
        (["Row 1: Sc in next 9 sts, ch 3 (counts as dc in next st)."], "only the chain at the"),
        (["Row 1: Sc2tog over next 3 sts."], '"sc2tog" takes 2 stitches, not 3'),
    ],
)  # fmt: skip
def test_what_is_said_of_places_has_to_be_true(
    us: Vocabulary, lines: list[str], complaint: str
) -> None:
    """The reader counts for itself."""
    with pytest.raises(InputError) as error:
        rows(us, *lines, closed=False)
    assert complaint.lower() in str(error.value).lower()


def test_chain_spaces_are_read_by_name(us: Vocabulary) -> None:
    """Where they are, and how long."""
    kinds = ("st", "sp2", "st", "sp2")
    row = rows(us, "Rnd 1: [dc in next st, 2 dc in next ch-2 sp] 2 times.", kinds=kinds)[0]
    assert row.body == (Repeat((Work(DC), Into((Work(DC, 2),))), 2),)
    for line, complaint in (
        ("Rnd 1: [dc in next st, 2 dc in next ch-3 sp] 2 times.", "is a ch-2 sp, no ch-3 sp"),
        ("Rnd 1: [2 dc in next ch-2 sp, dc in next st] 2 times.", "is a stitch, no ch-2 sp"),
        ("Rnd 1: [dc in next st] 4 times.", "the row below leaves chain spaces"),
    ):
        with pytest.raises(InputError, match=complaint):
            rows(us, line, kinds=kinds)


def test_row_is_worked_as_an_earlier_one_when_it_says_so(us: Vocabulary) -> None:
    """On the other side, over what it meets then; its count is its own."""
    found = rows(
        us,
        "Row 1 (RS): Ch 3 (counts as first dc), 2 dc in each remaining st across; turn.",
        "Row 2 (WS): Ch 1 (does not count as a st), sc in each st across; turn.",
        "Row 3: Rep row 2. (9 sc)",
        "Row 4 (WS): As row 1.",
        closed=False,
    )
    assert found[2].body == found[1].body
    assert (found[2].side, found[2].count) == ("RS", 9)
    assert found[3].start == Start(3, counts=True)
    with pytest.raises(InputError, match="there is no row 9 before it to work as"):
        rows(us, "Row 1: Sc in next st.", "Row 2: Rep row 9.", closed=False)
