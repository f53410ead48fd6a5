"""Rows recovered from what is said, with the row below."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.ground import Stretch
from frogless.read.parse import parse_row
from frogless.read.recover import Heard, rows_of
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import Chain, End, Into, Repeat, Row, Side, Start, Together, Work

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
