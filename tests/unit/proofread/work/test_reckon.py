"""Rows worked over the row below, and what does not add up."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rows_said import (
    DC,
    END,
    HERE,
    ONCE,
    SC,
    TURN,
    bare,
    chain,
    chain_of,
    into_each,
    into_next,
    numbers,
    problems,
    reckoned,
    ring_of,
    row,
    rows,
    sts,
    times,
)

from frogless.proofread.words.model import (
    Again,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Leave,
    Met,
    Repeat,
    Skip,
    Target,
    Together,
    Unclear,
)
from frogless.proofread.work.model import Told
from frogless.rows.count import consumed, left
from frogless.rows.nodes import Into as IntoNode
from frogless.rows.nodes import Node, Work
from frogless.rows.nodes import Repeat as RepeatNode
from frogless.rows.nodes import Skip as SkipNode
from frogless.stitches.load import dictionary, leaves, stands_on

_G1 = Repeat(HERE, (into_next(DC, 3), into_next(DC, 1, 2)), END)
_G2 = Repeat(HERE, (bare(SC, 2), bare(DC, 4)), times(4), in_place=True)


def test_plain_round_uses_each_place_once() -> None:
    """As many stitches as the round below."""
    (worked,) = rows([ring_of(96), row(1, into_each(SC), count=96)])
    assert (worked.worked, worked.consumed, worked.available) == (96, 96, 96)
    assert worked.verdict == "ok"
    assert worked.made == {SC: 96}


def test_wrong_count_is_told_with_both_numbers() -> None:
    """96 stated, 98 worked; the row below should have 94."""
    two = Repeat(HERE, (into_next(SC, 47), into_next(SC, 1, 2)), times(2))
    (worked,) = rows([ring_of(96), row(1, two, count=96)])
    (problem,) = worked.problems
    assert (problem.kind, problem.says, problem.works) == ("count", 96, 98)


def test_only_the_row_with_the_slip_is_wrong() -> None:
    """The rounds above it are worked over what it states."""
    two = Repeat(HERE, (into_next(SC, 47), into_next(SC, 1, 2)), times(2))
    plain = [row(i, into_each(SC), count=96) for i in (2, 3, 4)]
    assert problems([ring_of(96), row(1, two, count=96), *plain]) == [(1, "count")]


def test_rounds_above_go_on_from_what_is_made_where_that_comes_out() -> None:
    """The number stated was the slip: 98 are there, and the next round needs 98."""
    two = Repeat(HERE, (into_next(SC, 47), into_next(SC, 1, 2)), times(2))
    fits = Repeat(HERE, (into_next(SC, 48), into_next(SC, 1, 2)), times(2))
    told = [ring_of(96), row(1, two, count=96), row(2, fits, count=100)]
    assert problems(told) == [(1, "count")]


def test_g1_repeat_that_does_not_fill() -> None:
    """78 / 4 = 19.5; from 80 it gives 100."""
    (worked,) = rows([ring_of(78), row(1, _G1, count=100)])
    (problem,) = worked.problems
    assert (problem.kind, problem.each, problem.has, problem.need) == ("repeat", 4, 78, 80)


def test_g2_one_after_the_other_on_24() -> None:
    """Plain: it uses 24 places and makes 24."""
    worked = rows([ring_of(24), row(1, _G2)])[-1]
    assert (worked.worked, worked.consumed, worked.verdict) == (24, 24, "ok")


def test_g2_several_in_one_on_8() -> None:
    """2 sc in one stitch, 4 dc in the next: it uses 8 places and makes 24."""
    reckoning = reckoned([ring_of(8), row(1, _G2)])
    worked = reckoning.rows[-1]
    assert (worked.worked, worked.consumed, worked.verdict) == (24, 8, "ok")
    assert any("in one place" in each.sentence for each in reckoning.assumptions)


def test_e4_row_that_loses_a_stitch_is_told_each_time() -> None:
    """91, 90, 89, 88: worked over what each states, each states one less than it works."""
    first = [
        Into(HERE, (bare(DC),), Target("from_hook", nth=4), ONCE),
        into_each(DC, target=Target("chain", which="each")),
    ]
    told = [chain_of(93), row(1, *first, TURN, count=91, kind="row")]
    told += [row(i, chain(3), into_each(DC), TURN, count=92 - i, kind="row") for i in (2, 3, 4)]
    worked = rows(told)
    assert [each.worked for each in worked] == [91, 91, 90, 89]
    assert [each.verdict for each in worked] == ["ok", "wrong", "wrong", "wrong"]


def test_turning_chain_counts_by_what_the_row_says() -> None:
    """One that counts stands on the first stitch, one that does not adds none."""
    for counts, works in ((True, 20), (False, 20)):
        told = [ring_of(20), row(1, chain(3, counts=counts), into_each(DC), count=20)]
        worked = rows(told)[-1]
        assert (worked.worked, worked.turning) == (works, (3, counts))


def test_turning_chain_is_read_as_the_counts_say() -> None:
    """ "Ch 3, 19 dc" over 20 is 20 only when the chain is a stitch."""
    told = [ring_of(20), row(1, into_each(SC), count=20)]
    told += [row(2, chain(2), into_next(DC, 19), count=20)]
    reckoning = reckoned(told)
    assert reckoning.rows[-1].verdict == "ok"
    assert "turning chain of 2 is taken as a stitch" in reckoning.assumptions[0].sentence


def test_skipping_the_first_stitch_skips_the_one_under_the_chain() -> None:
    """ "Ch 3 (counts), skip first st, dc in each st across" keeps the count."""
    skip = Skip(HERE, Target(which="first"))
    told = [ring_of(20), row(1, chain(3, counts=True), skip, into_each(DC), count=20)]
    assert problems(told) == []


def test_stitch_in_the_place_at_the_foot_of_the_chain_is_an_increase() -> None:
    """ "Ch 3 (counts), dc in same st, 2 dc in each st around" doubles."""
    same = Into(HERE, (bare(DC),), Target("same", which="same"), ONCE)
    told = [ring_of(12), row(1, chain(3, counts=True), same, into_each(DC, 2), count=24)]
    assert problems(told) == []


def test_too_many_and_too_few_places() -> None:
    """A row asks for more places than there are, or leaves some."""
    assert problems([ring_of(20), row(1, into_next(SC, 22))]) == [(1, "too_many")]
    assert problems([ring_of(20), row(1, into_next(SC, 17))]) == [(1, "too_few")]


def test_places_left_on_purpose_are_not_missed() -> None:
    """ "Leave last 3 sts unworked"."""
    told = [chain_of(20), row(1, into_next(SC, 17), Leave(HERE, numbers(3)), kind="row")]
    assert problems(told) == []


def test_named_place_that_is_not_there() -> None:
    """ "In next ch-2 sp" over a row without any."""
    space = Into(HERE, (bare(SC),), Target("space", chains=numbers(2)), ONCE)
    assert problems([ring_of(20), row(1, Repeat(HERE, (space,), END))]) == [(1, "no_place")]


def test_lace_passes_over_what_it_does_not_name() -> None:
    """A shell in each space leaves the stitches between them."""
    mesh = Repeat(HERE, (into_next(DC), chain(2), Skip(HERE, Target())), END)
    shell = into_each(DC, 5, Target("space", chains=numbers(2)))
    told = [ring_of(20), row(1, mesh), row(2, shell, count=50)]
    assert problems(told) == []


def test_spaces_are_read_as_the_count_says() -> None:
    """ "Sc in each st" over 10 dc and 10 ch-2 sps: 10, 20 or 30."""
    mesh = Repeat(HERE, (into_next(DC), chain(2), Skip(HERE, Target())), END)
    for count in (10, 20, 30):
        told = [ring_of(20), row(1, mesh), row(2, into_each(SC), count=count)]
        assert problems(told) == [], count


def test_stitches_and_spaces_are_met_as_they_come() -> None:
    """ "Sc in each dc and 3 sc in each space around"."""
    mesh = Repeat(HERE, (into_next(DC), chain(2), Skip(HERE, Target())), END)
    met = Met(HERE, (into_each(SC, 1, Target(stitch=DC)), into_each(SC, 3, Target("space"))), END)
    assert problems([ring_of(20), row(1, mesh), row(2, met, count=40)]) == []


def test_increases_decreases_and_evenly() -> None:
    """Two in one, two together, eight spread over a round."""
    more = Repeat(HERE, (into_next(SC, 4), Increase(HERE, "", 2, ONCE)), END)
    fewer = Repeat(HERE, (into_next(SC, 4), Together(HERE, SC, 2, ONCE)), END)
    told = [
        ring_of(20),
        row(1, more, count=24),
        row(2, fewer, count=20),
        row(3, Evenly(HERE, SC, numbers(8)), count=28),
    ]
    assert problems(told) == []


def test_repeat_to_the_last_stitches() -> None:
    """ "…; rep from * to last 3 sts, sc in last 3 sts"."""
    most = Extent("but_last", numbers(3), Target())
    body = Repeat(HERE, (into_next(SC, 3), into_next(SC, 1, 2)), most)
    last = Into(HERE, (bare(SC),), Target(which="last"), times(3))
    assert problems([ring_of(23), row(1, body, last, count=28)]) == []
    assert problems([ring_of(24), row(1, body, last)]) == [(1, "repeat")]


def test_counts_of_kinds() -> None:
    """64 dc stated and 60 made: the total may hold, the kind does not."""
    told = [ring_of(64), row(1, into_next(DC, 60), into_next(SC, 4), count=sts(64, stitch=DC))]
    assert problems(told) == [(1, "count_kind")]


def test_range_of_rows_is_worked_row_by_row() -> None:
    """ "Rnds 2-5: inc" makes more each time, and states what the last makes."""
    double = row((1, 2, 3), into_each(SC, 2), count=48)
    worked = rows([ring_of(6), double])
    assert [each.worked for each in worked] == [12, 24, 48]
    assert all(each.verdict == "ok" for each in worked)


def test_range_that_is_not_as_long_as_what_it_repeats() -> None:
    """ "Rnds 3-10: rep Rnds 1 and 2 three times" names eight and works six."""
    plain = [row(i, into_each(SC), count=20) for i in (1, 2)]
    again = row(tuple(range(3, 11)), Again(HERE, first=1, last=2, times=numbers(3)))
    found = rows([ring_of(20), *plain, again])
    (problem,) = [p for each in found for p in each.problems]
    assert (problem.kind, problem.says, problem.works) == ("range", 8, 6)


def test_rows_to_be_repeated_that_are_not_there() -> None:
    """ "Rep Row 7" before there is one."""
    assert problems([ring_of(20), row(1, Again(HERE, first=7, last=7))]) == [(1, "again")]


def test_shaping_row_repeated_every_third_row_goes_on_by_as_many() -> None:
    """ "Rep inc rnd every 3rd rnd 2 more times": two plain rounds between, eight more each time."""
    inc = Repeat(HERE, (into_next(SC, 9), into_next(SC, 1, 2)), times(8))
    more = Again(HERE, name="increase", times=numbers(2), every=3)
    told = [ring_of(80), row(0, inc, count=88, name="increase"), row(0, more, count=104)]
    worked = rows(told)
    assert [each.worked for each in worked] == [88, 88, 88, 96, 96, 96, 104]


def test_row_2_and_all_even_rows() -> None:
    """The rows between are worked though they are not written."""
    label = row(2, into_each(SC)).label
    assert label is not None
    even = Told(row(2, into_each(SC)).said, HERE, type(label)(HERE, "round", (2,), onward="even"))
    told = [ring_of(20), row(1, into_each(SC)), even, row(3, into_each(SC)), row(5, into_each(SC))]
    assert [each.number for each in rows(told)] == [1, 2, 3, 4, 5]


def test_each_size_has_its_numbers() -> None:
    """A row is worked over the row below of its own size."""
    told = [
        row(0, Chain(HERE, numbers(20, 24, 28)), begins=True, kind="row"),
        row(1, into_each(SC), count=sts(20, 24, 30), kind="row"),
    ]
    found = rows(told, 3)
    assert [each.worked for each in found] == [20, 24, 28]
    assert [each.verdict for each in found] == ["ok", "ok", "wrong"]


def test_list_with_too_few_numbers() -> None:
    """Two numbers for three sizes: no size can be read."""
    told = [ring_of(20), row(1, into_next(SC, 20)), row(2, Evenly(HERE, SC, numbers(8, 9)))]
    assert problems(told, 3) == [(2, "brackets")] * 3


def test_row_with_words_that_are_not_clear_is_not_ok() -> None:
    """What stands between two acts may be a part of the work."""
    told = [ring_of(20), row(1, into_next(SC, 10), Unclear(HERE), into_next(SC, 10), count=20)]
    assert rows(told)[-1].verdict == "unclear"


def test_unclear_remark_after_the_work_leaves_a_row_that_comes_out() -> None:
    """It changes no stitch: all else comes to what is stated."""
    told = [ring_of(20), row(1, into_each(SC), Unclear(HERE), count=20)]
    assert rows(told)[-1].verdict == "ok"


def test_repeat_of_a_thousand_million_times_ends_at_once() -> None:
    """More stitches than any garment has are not worked."""
    told = [ring_of(20), row(1, Repeat(HERE, (into_each(SC), chain(1)), times(10**9)))]
    assert problems(told) == [(1, "too_long")]


def test_rows_without_end_are_cut_with_a_word() -> None:
    """2,000 rows of a line are worked, and it is told that there are more."""
    told = [ring_of(20), row(1, into_each(SC)), row(2, Again(HERE, first=1, times=numbers(10**9)))]
    reckoning = reckoned(told)
    assert len(reckoning.rows) == 2_002
    assert [p.kind for row in reckoning.rows for p in row.problems] == ["too_long"]
    assert any("2,000" in each.sentence for each in reckoning.assumptions)


_UNITS = st.one_of(
    st.builds(lambda n: (into_next(SC, n), Work(SC, n)), st.integers(1, 5)),
    st.builds(lambda n: (into_next(DC, 1, n), IntoNode((Work(DC, n),))), st.integers(2, 4)),
    st.builds(
        lambda n: (Skip(HERE, Target(), numbers(n)), SkipNode(n)),
        st.integers(1, 2),
    ),
)


@given(st.lists(_UNITS, min_size=1, max_size=5), st.integers(1, 6))
def test_counts_are_those_of_our_own_rows(
    units: list[tuple[Into | Skip, Node]], often: int
) -> None:
    """What a repeated group uses and makes is what the row program says it does."""
    body = (RepeatNode(tuple(node for _, node in units), often),)
    takes = consumed(body, stands_on(dictionary()))
    makes = left(body, leaves(dictionary()))
    act = Repeat(HERE, tuple(act for act, _ in units), times(often))
    (worked,) = rows([ring_of(takes), row(1, act)])
    assert (worked.consumed, worked.worked or 0) == (takes, makes)
    assert worked.verdict == "ok"
