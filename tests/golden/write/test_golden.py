"""Programs and the exact text they are written as, in both dialects, named after the rule shown.

After a change of wording: look at the difference that the failing test prints, and when it is
meant, write the printed text into the case's file.
"""

from __future__ import annotations

from difflib import unified_diff
from pathlib import Path

import pytest
from sample_pieces import SAMPLES

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_program
from frogless.rows.nodes import (
    Base,
    Chain,
    Change,
    End,
    Into,
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
from frogless.stitches.load import dictionary
from frogless.write.pattern import write_program

CASES = Path(__file__).with_name("cases")
STITCHES = dictionary()
SC, DC, FDC = "single_crochet", "double_crochet", "foundation_double_crochet"
RIB, CRAB = "single_crochet_back_loop", "reverse_single_crochet"
TURNED = End("chain_top", turn=True)
TO_FIRST = End("first_stitch")
CH_2, CH_3 = Start(2), Start(3, counts=True)


def tube(*rows: Row) -> Program:
    """One piece in rounds."""
    return Program((Piece("skirt", True, rows),))


def foundation(n: int, end: End = TO_FIRST, hook: float = 0.0) -> Row:
    """A ring of foundation double crochet."""
    return Row(0, "RS", "", (Work(FDC, n),), n, end=end, hook=hook)


def plain(number: int, side: Side, n: int, start: Start = CH_2, end: End = TURNED) -> Row:
    """A round of double crochet."""
    return Row(number, side, "", (Work(DC, n - start.counts),), n, start, end)


def increases(before: int, points: int, add: int = 1) -> tuple[Node, ...]:
    """Increases at even distances, half a gap at either end."""
    gap = before // points
    half = gap // 2
    group = Into((Work(DC, 1 + add),))
    last = (group, Work(DC, gap - 1 - half))
    if points == 1:
        return (Work(DC, half), *last)
    return (Work(DC, half), Repeat((group, Work(DC, gap - 1)), points - 1), *last)


def shaped(number: int, side: Side, before: int, marks: tuple[int, ...], add: int = 1) -> Row:
    """A round with an increase for each mark."""
    points = len(marks)
    body = increases(before, points, add)
    return Row(number, side, "", body, before + points * add, Start(2), TURNED, marks)


def band_with_seams() -> Program:
    """A rib worked sideways and joined to the foundation edge of a ring."""
    side: tuple[Side, Side] = ("WS", "RS")
    rows = [Row(0, "WS", "waistband", (Chain(8, each=True),), 8, end=End(turn=True), hook=3.0)]
    for r in range(1, 13):
        end = End(turn=r < 12, fasten_off=r == 12)
        stitch = SC if r == 1 else RIB
        rows.append(
            Row(r, side[r % 2], "waistband", (Work(stitch, 8),), 8, Start(1), end, hook=3.0)
        )
    band = Piece("waistband", False, tuple(rows))
    ring = Piece("skirt", True, (foundation(18), plain(1, "RS", 18)))
    ends = Seam(
        "band ends",
        "slip_stitch",
        (Base("waistband", "last_row"),),
        (Base("waistband", "foundation"),),
        8,
        8,
        (1,) * 8,
    )
    waist = Seam(
        "band to waist",
        SC,
        (Base("skirt", "foundation"),),
        (Base("waistband", "row_ends"),),
        18,
        12,
        (1, 2, 1, 2) * 3,
    )
    return Program((ring, band), (ends, waist))


def cover() -> Program:
    """Single crochet over elastic, two in each stitch of the foundation edge."""
    ring = Piece("skirt", True, (foundation(40), plain(1, "RS", 40)))
    body = (Repeat((Into((Work(SC, 2),)),), 40),)
    end = End("first_stitch", fasten_off=True)
    row = Row(1, "RS", "elastic cover", body, 80, Start(1), end, hook=3.5)
    return Program((ring, Piece("elastic cover", True, (row,), (Base("skirt", "foundation"),))))


def edging_round(number: int, body: tuple[Node, ...], count: int, *, crab: bool = False) -> Row:
    """A round of edging on its own hook."""
    return Row(number, "RS", "edging", body, count, Start(1), TO_FIRST, backwards=crab, hook=2.25)


PICOTS = Into((Work(SC), Work("picot")) * 3)


def striped() -> Program:
    """Two rounds of each color, four times: carried but for the last, which is cut."""
    rounds = []
    for i in range(1, 17):
        change: tuple[Node, ...] = ()
        if i % 2 == 0 and i < 16:
            change = (Change("B" if i % 4 == 2 else "A", carried=i < 14),)
        body = (Work(SC, 12), *change)
        rounds.append(Row(i, "RS", "", body, 12, Start(1), TO_FIRST))
    ring = Row(0, "RS", "", (Chain(12, each=True),), 12, end=TO_FIRST)
    return Program((Piece("band", True, (ring, *rounds), colour="A"),))


def checks() -> Program:
    """Three stitches of each color in turn."""
    block = (Work(SC, 3), Change("B"), Work(SC, 3), Change("A"))
    turned = End(turn=True)
    foundation_row = Row(0, "WS", "", (Chain(24, each=True),), 24, end=turned)
    rows = [
        Row(i, "RS" if i % 2 else "WS", "", (Repeat(block, 4),), 24, Start(1), turned)
        for i in range(1, 5)
    ]
    group = Into((Work(DC, 2), Change("B"), Work(DC, 2)))
    last = Row(5, "RS", "", (group, Work(SC, 22), group), 30, Start(3))
    return Program((Piece("panel", False, (foundation_row, *rows, last), colour="A"),))


def gathered() -> Program:
    """Three in the space before every third stitch; then one before each; then loops and posts."""
    between = "double_crochet_between"
    three = Repeat((Into((Work(between, 3),)), Skip(2)), 4)
    pair = Into((Work(between), Chain(1), Work(between)))

    def post(times: int) -> Work:
        return Work("front_post_double_crochet", times)

    return tube(
        Row(0, "RS", "", (Chain(12, each=True),), 12, end=TO_FIRST),
        Row(1, "RS", "", (three,), 12, Start(2), TO_FIRST),
        Row(2, "RS", "", (Work(between, 12),), 12, Start(2), TO_FIRST),
        Row(3, "RS", "", (Work(between, 4), pair, Work(SC, 7)), 14, Start(2), TO_FIRST),
        Row(4, "RS", "", (Work(RIB, 3), post(2), Skip(), post(8)), 13, CH_2, TO_FIRST),
    )


PROGRAMS: dict[str, Program] = {
    "plain_rounds_fold": tube(
        foundation(80),
        *(plain(i, "RS" if i % 2 else "WS", 80) for i in range(1, 7)),
    ),
    "two_plain_rounds_name_both_sides": tube(
        foundation(40),
        plain(1, "RS", 40),
        shaped(2, "WS", 40, (1,) * 4),
        plain(3, "RS", 44),
        plain(4, "WS", 44),
    ),
    "sections_are_named_and_never_folded_over": tube(
        foundation(9),
        *(
            Row(i, "RS", "top" if i < 3 else "hip", (Work(DC, 9),), 9, Start(2), End("chain_top"))
            for i in range(1, 6)
        ),
    ),
    "markers_move_up_and_keep_their_numbers": tube(
        foundation(152),
        shaped(1, "RS", 152, (0,) * 8),
        shaped(2, "WS", 160, (1,) * 8),
        shaped(3, "RS", 168, (0, 1, 0, 1, 0, 1, 0, 0), add=2),
        shaped(4, "WS", 184, (0, 0, 0, 0, 0, 0, 0, 1)),
    ),
    "one_point_has_one_marker": tube(foundation(12), shaped(1, "RS", 12, (1,), add=2)),
    "decreases_are_worked_together": tube(
        foundation(24),
        Row(
            1,
            "RS",
            "",
            (Repeat((Together(DC, 2), Work(DC, 4)), 4),),
            20,
            Start(2),
            TURNED,
            (0,) * 4,
        ),
    ),
    "turning_chain_that_counts_stands_on_the_first_stitch": tube(
        foundation(30),
        plain(1, "RS", 30, CH_3),
        plain(2, "WS", 30, CH_3),
    ),
    "rounds_that_are_not_turned": tube(
        Row(0, "RS", "", (Chain(60, each=True),), 60, end=TO_FIRST),
        *(plain(i, "RS", 60, end=End("chain_top")) for i in range(1, 5)),
    ),
    "spiral_is_not_joined": tube(
        foundation(48, End()),
        *(plain(i, "RS", 48, Start(), End()) for i in range(1, 4)),
    ),
    "eyelets_count_as_stitches": tube(
        foundation(40),
        Row(
            1,
            "RS",
            "",
            (
                Work(DC, 3),
                Repeat((Chain(1), Skip(), Work(DC, 7)), 4),
                Chain(1),
                Skip(),
                Work(DC, 4),
            ),
            40,
            Start(2),
            TURNED,
        ),
        plain(2, "WS", 40),
        Row(3, "RS", "", (Repeat((Chain(2), Skip(2)), 20),), 20, Start(2), TURNED),
        Row(4, "WS", "", (Work(DC, 4), Into((Work(DC, 2),)), Work(DC, 15)), 21, Start(2), TURNED),
    ),
    "edging_changes_the_hook": tube(
        foundation(24, hook=3.75),
        edging_round(1, (Repeat((Work(SC, 3), PICOTS, Chain(1)), 6),), 42),
    ),
    "shells_skip_and_gather": tube(
        foundation(24),
        edging_round(1, (Repeat((Work(SC), Skip(2), Into((Work(DC, 5),)), Skip(2)), 4),), 24),
    ),
    "crab_stitch_goes_back": tube(
        foundation(24),
        edging_round(1, (Work(SC, 24),), 24),
        edging_round(2, (Work(CRAB, 24),), 24, crab=True),
    ),
    "cover_is_worked_into_the_foundation_edge": cover(),
    "band_is_worked_in_rows_and_joined": band_with_seams(),
    "strand_slides_up_beads": Program(
        (
            Piece(
                "strand",
                False,
                (
                    Row(
                        1,
                        "RS",
                        "strand",
                        (Repeat((Work("bead"), Chain(20)), 12),),
                        12,
                        end=End(fasten_off=True),
                        hook=0.6,
                    ),
                ),
            ),
        )
    ),
    "count_that_is_wrong_is_written_as_stated": tube(
        foundation(24),
        Row(1, "RS", "", (Work(DC, 24),), 25, Start(2), TURNED),
    ),
    **SAMPLES,
    "stripes_change_in_the_last_stitch_and_fold": striped(),
    "colors_change_within_a_row": checks(),
    "groups_stand_in_the_spaces_before_stitches": gathered(),
}


def written(program: Program) -> str:
    """Both dialects, as a case's file has them."""
    texts = (write_program(program, STITCHES, dialect) for dialect in ("us", "uk"))
    return "\n".join(texts)


@pytest.mark.parametrize("name", PROGRAMS)
def test_program_is_written_as_expected(name: str) -> None:
    """The text is the golden one, letter by letter."""
    expected = (CASES / f"{name}.txt").read_text(encoding="utf-8")
    actual = written(PROGRAMS[name])
    lines = unified_diff(expected.splitlines(), actual.splitlines(), "expected", "written", "", "")
    assert expected == actual, "\n".join(lines)


@pytest.mark.parametrize("name", PROGRAMS)
def test_both_dialects_read_back_as_the_program(name: str) -> None:
    """US and UK text of a program are the same rows."""
    program = PROGRAMS[name]
    us, uk = (
        read_program(write_program(program, STITCHES, dialect), STITCHES, dialect)
        for dialect in ("us", "uk")
    )
    assert us == uk == program
    assert same(expand(program, STITCHES), expand(us, STITCHES)) is None


def test_every_golden_file_has_its_program() -> None:
    """No file is left over from a case that is gone."""
    assert {path.stem for path in CASES.glob("*.txt")} == set(PROGRAMS)
