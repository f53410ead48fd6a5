"""A designer's own rows: read, their multiple found, and what is said of those that do not come out."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.read.patterns import find_way, read_way, way_of
from frogless.rows.nodes import Chain, End, Into, Skip, Start, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.pattern_rows import PatternRow, Way
from frogless.stitches.patterns import WayText, patterns

SC, DC = "single_crochet", "double_crochet"
TURNED = End(turn=True)
CH_1 = Start(1)
PLAIN = "Row 1: Ch 1 (does not count as a st), sc in each st across."
EYELETS = (
    "Row 1: Ch 1 (does not count as a st), *sc in next st, ch 1, skip next st; rep from * to last "
    "st, sc in last st."
)
AS_PLACES = [
    (key, closed)
    for key, entry in patterns().items()
    for closed in (False, True)
    if (way := entry.rounds if closed else entry.rows) and "{" not in way.text
]


def found(*lines: str, closed: bool = False, dialect: Dialect = "us", setup: int = 0) -> Way:
    """A pattern whose multiple nobody said."""
    return find_way("\n".join(lines), dictionary(), dialect, closed=closed, setup=setup)


def read(*lines: str, multiple: int | str, offset: int = 0, setup: int = 0) -> Way:
    """A pattern in rows whose multiple was said."""
    told = WayText("\n".join(lines), multiple, offset, setup)
    return read_way(told, dictionary(), "us", closed=False, values={"n": 2})


def test_row_from_the_hook_is_the_first_of_a_pattern() -> None:
    """As most patterns begin: the chain that is skipped is the turning chain, and no place."""
    way = found(
        "Row 1: Sc in 2nd ch from hook, sc in each remaining ch across.",
        "Row 2: Ch 1, sc in each st across.",
        setup=1,
    )
    assert (way.multiple, way.offset, way.setup) == (1, 0, 1)
    assert way.rows[0] == PatternRow(CH_1, (Work(SC),), (Work(SC),), (), TURNED)
    assert way.rows[1] == PatternRow(CH_1, (), (Work(SC),), (), TURNED)


def test_mesh_is_found_when_it_is_told_as_makers_tell_it() -> None:
    """A chain that is a stitch and a space, stitches by name, the top of the turning chain."""
    way = found(
        "Row 1: Ch 4 (counts as first dc and ch-1 sp), sk next st, dc in next st, *ch 1, sk next st, "
        "dc in next st; rep from * across.",
        "Row 2: Ch 4, sk next ch-1 sp, *dc in next dc, ch 1, sk next ch-1 sp; rep from * to last st, "
        "dc in top of turning ch.",
        setup=1,
    )
    assert (way.multiple, way.offset, way.least) == (2, 1, 1)
    counted = Start(3, counts=True)
    before = (Chain(1), Skip(1))
    assert way.rows == (
        PatternRow(counted, (*before, Work(DC)), (Chain(1), Skip(1), Work(DC)), (), TURNED),
        PatternRow(counted, before, (Work(DC), Chain(1), Skip(1)), (Work(DC),), TURNED),
    )


def test_uk_rows_are_found_as_the_same_pattern() -> None:
    """The same moss in both."""
    us = found(
        "Rnd 1: *Sc in next st, ch 1, skip next st; rep from * around; join, turn.",
        "Rnd 2: *Sc in next ch-1 sp, ch 1, skip next st; rep from * around; join, turn.",
        closed=True,
        setup=1,
    )
    uk = found(
        "Rnd 1: *Dc in next st, ch 1, miss next st; rep from * around; join, turn.",
        "Rnd 2: *Dc in next ch-1 sp, ch 1, miss 1 st; rep from * around; join, turn.",
        closed=True,
        dialect="uk",
        setup=1,
    )
    assert us == uk
    assert (us.multiple, us.offset) == (2, 0)


def test_places_are_told_by_kind_when_they_are_of_several() -> None:
    """As for an edging: one in each stitch, three in each space; or a shell in each space alone."""
    arches = "Rnd 1: Ch 1 (does not count as a st), *sc in next 2 sts, ch 3, skip next 2 sts; rep from * around."
    filled = found(
        arches, "Rnd 2: Ch 1, sc in each sc and 2 sc in each ch-3 sp around.", closed=True
    )
    assert (filled.multiple, filled.offset) == (4, 0)
    assert filled.rows[1].repeat == (Work(SC, 2), Into((Work(SC, 2),)))
    shells = found(
        arches, "Rnd 2: Ch 1, (2 dc, ch 1, 2 dc) in each ch-3 sp around, skip all others.",
        "Rnd 3: Ch 1, sc in each dc around, skip all others.", closed=True,
    )  # fmt: skip
    assert shells.rows[1].repeat == (Skip(2), Into((Work(DC, 2), Chain(1), Work(DC, 2))))
    assert shells.rows[2].repeat == (Work(SC, 2), Skip(), Work(SC, 2))


def test_repeat_of_a_stated_number_does_not_grow() -> None:
    """ "Two more times" is three, however wide the work is."""
    way = read(
        "Row 1: Ch 1 (does not count as a st), *sc in next st, 2 dc in each of next 2 sts, skip next "
        "2 sts; rep from * 2 more times, sc in each st to last st, dc in last st.",
        multiple=1,
        offset=16,
    )
    assert way.rows[0].repeat == (Work(SC),)
    assert way.rows[0].after == (Work(DC),)
    assert way.rows[0].before[0].times == 3  # type: ignore[union-attr]


def test_pattern_begins_with_a_color_when_it_says_so() -> None:
    """On a line of its own, or in its first row."""
    line = "Row 1: Ch 1 (does not count as a st), sc in each st across, change to color B."
    row = line.replace("Row 1: ", "Row 1: Begin with color A. ")
    assert found("Begin with color A.", line) == found(row)
    assert found(row).colour == "A"


def test_last_line_may_say_which_rows_come_again() -> None:
    """As makers are told it; a row may be worked as an earlier one."""
    rows = (
        EYELETS,
        "Row 2: Ch 1, sc in each st and ch-sp across.",
        "Row 3: Rep row 1.",
    )
    way = found(*rows, "Row 4: Same as row 2.", "Rep rows 2–4 for pattern.")
    assert (way.setup, way.period) == (1, 3)
    assert way.rows[2] == way.rows[0]
    assert way.rows[3] == way.rows[1]
    assert read(*rows, "Row 4: As row 2.", "Repeat rows 2 to 4.", multiple=2, offset=1) == way
    with pytest.raises(InputError, match="come once, but the rows from Row 2 on are said to come"):
        read(*rows, "Row 4: As row 2.", "Rep rows 2 to 4.", multiple=2, offset=1, setup=2)


def test_sums_of_parameters_are_filled_in() -> None:
    """What they make 0 times of is left out."""
    way = read(
        "Row 1: Ch 1 (does not count as a st), *sc in next {n} sts, skip next {n-2} sts, "
        "{2*n} dc in next st; rep from * across.",
        "Row 2: Ch 1, *sc in next 2 sts, skip next 3 sts, sc in next st; rep from * across.",
        multiple="n+1",
    )
    assert way.rows[0].repeat == (Work(SC, 2), Into((Work(DC, 4),)))


@pytest.mark.parametrize(("key", "closed"), AS_PLACES)
def test_multiple_of_every_pattern_is_found(key: str, closed: bool) -> None:
    """Without being told: the same rows, multiple, offset and fewest repeats as are stated."""
    entry = patterns()[key]
    told = entry.rounds if closed else entry.rows
    assert told is not None
    way = find_way(told.text, dictionary(), "us", closed=closed, setup=told.setup)
    assert way == way_of(key, closed=closed)


BROKEN: dict[str, tuple[tuple[str, ...], str]] = {
    "no row": (("",), 'it has no rows; write each on a line of its own, "Row 1: ..."'),
    "a row that is not understood": (
        ("Row 1: Bobbel in next st.",),
        'line 1: column 8: "Bobbel" is not understood; did you mean "bobble"',
    ),
    "all faults of the lines": (
        (PLAIN, "Row 2: Sc in nxt st.", "Row 3: Sc inn next st."),
        'line 3: column 11: "inn" is not understood',
    ),
    "a UK term": (
        ("Row 1: Htr in each st across.",),
        '"htr" is a UK term, but US terms are declared, in which it is "hdc"',
    ),
    "a UK word": (("Row 1: Miss next st, dc in next st.",), 'in which it is "skip"'),
    "a group without a name": (("Row 1: W-st in next st.",), 'did you mean "y-st" or "v-st"'),
    "a round": (("Rnd 1: Sc in each st around.",), 'worked in rows, but the line begins "Rnd 1"'),
    "a foundation": (("Foundation: Ch 20.", PLAIN), "leave the foundation out"),
    "rows again": ((PLAIN, "Row 2: Rep row 1 and 1 another 2 times."), "write the rows once"),
    "rows again that are not the last": (
        (PLAIN, "Rep rows 1 to 5."), "the rows that come again are the last ones, up to row 1",
    ),
    "rows again that are none": (("Rep row 1.",), "and stand before this line"),
    "as a row that is not there": ((PLAIN, "Row 2: Rep row 7."), "no row 7 before it to work as"),
    "a count": ((PLAIN + " (9 sc)",), "say nothing of counts"),
    "a hook": (("Row 1: Use 4 mm hook. Sc in each st across.",), "say nothing of hooks"),
    "cut yarn": ((PLAIN + " Fasten off.",), "say nothing of cutting and joining yarn"),
    "a number left out": ((PLAIN, PLAIN.replace("Row 1", "Row 3")), "row 2 was expected"),
    "a star without an end": (
        ("Row 1: *Sc in next st, ch 1, skip next st.",),
        '"*" begins what repeats along the row; end it with "; rep from * across"',
    ),
    "a star in a star": (
        ("Row 1: *Sc in next st, *dc in next st; rep from * across; rep from * across.",),
        "Row 1: a repeat to the end within another never comes to its end",
    ),
    "two stars": (
        ("Row 1: *Sc in next st; rep from * to last 2 sts, *dc in next st; rep from * across.",),
        'after "rep from *" comes another that repeats to the end',
    ),
    "no place taken": (("Row 1: *Ch 3; rep from * across.",), "takes no places"),
    "a turning chain that nobody explained": (
        ("Row 1: Ch 2, hdc in each st across.",),
        "it is not said whether the turning chain of 2 counts",
    ),
    "a space called a stitch": (
        (EYELETS, "Row 2: Ch 1, sc in each st across."),
        "Row 2: place 2 of the row below is a ch-1 sp",
    ),
    "a space of another size": (
        (EYELETS, "Row 2: Ch 1, *sc in next st, sc in next ch-2 sp; rep from * to last st, sc in last st."),
        "line 2: over no number of sts from 1 to 120 do the rows come out; over 3, which gets furthest: "
        "Row 2: place 2 of the row below is a ch-1 sp, no ch-2 sp (Row 1 leaves 3)",
    ),
    "another stitch by name": (
        (PLAIN, "Row 2: Ch 1, sc in each dc across."),
        'place 1 of the row below is "sc", not "dc"',
    ),
    "the next row too wide": (
        (PLAIN, "Row 2: Ch 1, sc in next 150 sts."),
        "Row 2 uses 150 places, but Row 1 leaves 11: from place 12 on there is nothing to work into",
    ),
    "the next row too narrow": (
        ("Row 1: Ch 1 (does not count as a st), sc in next 7 sts.", "Row 2: Ch 1, sc in next 5 sts."),
        "line 2: over no number of sts from 1 to 120 do the rows come out; over 7, which gets furthest: "
        "Row 2 uses 5 places, but Row 1 leaves 7: from place 6 on they are neither worked into nor "
        "skipped",
    ),
    "no repeat": (
        ("Row 1: Ch 1 (does not count as a st), sc in next 7 sts.",),
        'come out over 7 sts, which is no multiple; mark what repeats along the row, "*',
    ),
    "more and more": (
        ("Row 1: Ch 1 (does not count as a st), *sc in next 3 sts, 2 sc in next st; rep from * across.",),
        "the rows that come again leave 20 sts where they began on 16",
    ),
    "a number too large": (("Row 1: Sc in next 1000000000 sts.",), "is more than 99999"),
    "a repeat too large": (
        ("Row 1: *[[ch 1] 9999 times] 9999 times, sc in next st; rep from * across.",),
        "a row of 99980002 stitches; 100000 are the most that are read",
    ),
    "too many lines": (("",) * 250, "it is longer than 200 lines"),
    "too long a line": (("Row 1: " + "sc in next st, " * 3000 + "turn.",), "or 40000 letters"),
    "a short row": (
        ("Row 1: Sc in each st to last 2 sts, leave last 2 sts unworked for now.",),
        "say nothing of short rows",
    ),
    "evenly": (
        ("Row 1: Work 3 sc evenly over next 2 sts (1 takes 2 and 1 takes 1).",),
        "say nothing of what is spread evenly",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", BROKEN)
def test_broken_pattern_is_refused_with_line_row_and_place(name: str) -> None:
    """One sentence: where it stands, what is there, and what would fit."""
    lines, complaint = BROKEN[name]
    with pytest.raises(InputError) as error:
        found(*lines)
    assert complaint in str(error.value)


@pytest.mark.parametrize("setup", [1, 2, -1])
def test_pattern_is_refused_when_no_row_repeats(setup: int) -> None:
    """One row at least comes again."""
    with pytest.raises(InputError, match=f"{setup} of its 1 rows come once"):
        found(PLAIN, setup=setup)


@pytest.mark.parametrize(
    ("multiple", "offset", "complaint"),
    [
        (4, 0, "Row 1: the repeat takes 2 places, and there are 7 for it: 3 times, and 1 left over "
               "from place 7 on; 1 fewer or 1 more would fit (there are 8 to begin on); the rows come "
               "out over a multiple of 2 and 1"),
        (0, 1, "a multiple of 0 and 1; write 1 to 10000"),
        (10**9, 0, "a multiple of 1000000000 and 0; write 1 to 10000"),
        (2, 10**9, "write 1 to 10000"),
    ],
)  # fmt: skip
def test_stated_multiple_is_refused_when_the_rows_have_another(
    multiple: int, offset: int, complaint: str
) -> None:
    """And the one that they have is told."""
    with pytest.raises(InputError) as error:
        read(EYELETS, PLAIN.replace("Row 1", "Row 2").replace("each st", "each st and ch-sp"),
             multiple=multiple, offset=offset)  # fmt: skip
    assert complaint in str(error.value)


def test_rows_are_refused_when_they_do_not_come_again() -> None:
    """The same row is too wide for what the last row leaves; with 4 sts more they would go on."""
    rows = (
        "Row 1: Ch 1 (does not count as a st), sc in next 6 sts, *sc in next 4 sts; rep from * across.",
        "Row 2: Ch 1, 2 sc in first st, sc in each st to last st, sc in last st.",
    )
    told = "line 1: over 6 sts, when Row 1 comes again it takes 6 places and 4 in each repeat and so fits"
    with pytest.raises(InputError, match=told):
        read(*rows, multiple=4, offset=2)
    with pytest.raises(InputError, match="when Row 1 comes again it takes 6 places"):
        found(*rows)


def test_rows_are_refused_when_they_meet_other_places_the_second_time() -> None:
    """The count is right, but where the stitches were are spaces now: the next round has to swap."""
    first = "Rnd 1: *Sc in next st, ch 1, skip next st; rep from * around."
    swapped = "Rnd 2: No turning chain, *ch 1, skip next st, sc in next ch-1 sp; rep from * around."
    back = "Rnd 3: *Sc in next ch-1 sp, ch 1, skip next st; rep from * around."
    told = "line 2: when Rnd 2 comes again, place 1 of the row below is a ch-1 sp"
    with pytest.raises(InputError, match=told):
        found(first, swapped, closed=True, setup=1)
    way = found(first, swapped, back, closed=True, setup=1)
    assert (way.multiple, way.period) == (2, 2)


def test_rows_are_refused_when_they_leave_more_than_they_met() -> None:
    """They may even come out twice, and yet they are no pattern."""
    grows = "Row 1: Ch 1 (does not count as a st), *sc in next 3 sts, 2 sc in next st; rep from * across."
    with pytest.raises(InputError, match="leave 20 sts where they began on 16"):
        read(grows, multiple=16)
