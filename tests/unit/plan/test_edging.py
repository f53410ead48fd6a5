"""The edging on its hem."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch, table

from frogless.draft import develop
from frogless.errors import Impossible, InputError
from frogless.plan.edging import hook, multiple
from frogless.plan.layout import Multiple
from frogless.plan.make import plan
from frogless.plan.model import EdgingPlan, Plan
from frogless.rows.count import worked
from frogless.stitches.edgings import edgings

STRAIGHT = section("to the hem", to="hem")
OPEN = 'with = "chain"\ngirth = "hip_girth"\nease = "4 cm"'
DESIGNER = table(
    "gauge", stitch="double_crochet", stitches_in_10cm=18, rows_in_10cm=10, hook="3.5 mm"
)


def edged(made: Made, *tables: str, sample: str = "", **keys: object) -> Plan:
    """A straight skirt of 209 stitches, unless its edging asks for others."""
    choice = table("edging", **{"hook": "2.25 mm", **keys})
    return plan(made(STRAIGHT, start=OPEN, tables=(*tables, choice), sample=sample))


def edging_of(planned: Plan) -> EdgingPlan:
    """Its edging."""
    assert planned.main.edging is not None
    return planned.main.edging


def names(planned: Plan) -> list[str]:
    """Of its remarks."""
    return [remark.name for remark in planned.remarks]


def test_first_round_adds_what_the_repeats_need(made: Made) -> None:
    """208 stitches of 5.56 mm are 115.6 cm, 37 shells of 3.1 cm on 222."""
    planned = edged(made, pattern="shell", repeat_width="3.1 cm")
    edging = edging_of(planned)
    assert (edging.hem_count, edging.base_count, edging.correction) == (209, 222, 13)
    assert edging.repeats == 37
    first = planned.program.pieces[0].rows[edging.first_round]
    assert (first.count, worked(first.body)["single_crochet"]) == (222, 222)
    assert "edging_correction" in names(planned)


def test_first_round_takes_away_what_the_repeats_have_no_room_for(made: Made) -> None:
    """Shells of 3.7 cm: 31 on 186, 23 stitches fewer."""
    edging = edging_of(edged(made, pattern="shell", repeat_width="3.7 cm"))
    assert (edging.base_count, edging.correction) == (186, -23)


@pytest.mark.parametrize(
    ("width", "base"), [("3.4 cm", 210), ("3.3 cm", 210), ("3.5 cm", 198), ("3.2 cm", 216)]
)
def test_hem_that_has_the_multiple_is_left_alone_where_the_edging_lies_flat(
    made: Made, width: str, base: int
) -> None:
    """35 shells on 210 stitches are within one part in thirty of the hem, or another number is."""
    choice = table("edging", hook="2.25 mm", pattern="shell", repeat_width=width)
    start = 'with = "chain"\ngirth = "hip_girth"\nease = "4.7 cm"'
    edging = edging_of(plan(made(STRAIGHT, start=start, tables=(choice,))))
    assert (edging.hem_count, edging.base_count) == (210, base)


@pytest.mark.parametrize("width", ["2.9 cm", "3.3 cm", "3.9 cm"])
@pytest.mark.parametrize("rounds", ["joined and turned", "joined", "spiral"])
def test_correction_both_ways_is_proven(made: Made, width: str, rounds: str) -> None:
    """Increases and decreases, after turned rounds and others."""
    shells = table("edging", pattern="shell", hook="2 mm", repeat_width=width)
    work = f'rounds = "{rounds}"\nturning_chain = 3\nturning_chain_counts = true'
    develop(made(STRAIGHT, start=OPEN, tables=(shells,), work=work, length="30 cm"))


def test_edging_stands_on_the_hems_own_stitches_when_nothing_may_adapt(made: Made) -> None:
    """The hem has the multiple; a width that differs is told as a ruffle."""
    planned = edged(made, pattern="shell", repeat_width="3.6 cm", correction_round="never")
    edging = edging_of(planned)
    assert edging.hem_count == edging.base_count == 210
    assert edging.correction == 0
    told = next(r for r in planned.remarks if r.name == "edging_girth")
    assert told.sentence == "the edging is 8 % longer than the hem and will ruffle"


def test_edging_that_draws_in_says_so(made: Made) -> None:
    """Shells of 3.1 cm on six stitches of 5.56 mm, 3.3 cm."""
    planned = edged(made, pattern="shell", repeat_width="3.1 cm", correction_round="never")
    told = next(r for r in planned.remarks if r.name == "edging_girth")
    assert told.sentence == "the edging is 7 % shorter than the hem and will draw in"


def test_correction_beyond_one_stitch_in_three_is_impossible(made: Made) -> None:
    """Shells of 2 cm want 348."""
    with pytest.raises(Impossible, match="the edging wants 348 stitches and the hem has 209"):
        edged(made, pattern="shell", repeat_width="2 cm")


def test_edging_is_as_wide_as_its_stitches_when_no_width_is_given(made: Made) -> None:
    """And says that nobody measured it."""
    planned = edged(made, pattern="shell")
    edging = edging_of(planned)
    assert edging.base_count == edging.hem_count == 210
    assert edging.girth == edging.hem_girth
    assert "edging_width" in names(planned)


def test_width_of_a_repeat_is_scaled_with_the_makers_stitch(made: Made) -> None:
    """The designer's 3.2 cm at 18 in 10 cm are 3.6 at 16."""
    edging = edging_of(
        edged(made, DESIGNER, sample=swatch(16, 10), pattern="shell", repeat_width="3.2 cm")
    )
    assert edging.girth.value / edging.repeats == pytest.approx(36)


def test_gauge_of_another_stitch_is_compared_with_that_stitch(made: Made) -> None:
    """The designer tells her single crochet; the maker's is estimated from the double crochet."""
    other = DESIGNER.replace("double_crochet", "single_crochet")
    edging = edging_of(edged(made, other, pattern="shell", repeat_width="3.2 cm"))
    assert 30 < edging.girth.value / edging.repeats < 34


def test_hook_of_the_edging_is_scaled_with_the_makers(made: Made) -> None:
    """Hers was 2.25 to 3.5; the maker's main hook is 5 mm."""
    planned = edged(
        made, DESIGNER, sample=swatch(27, 15, width="15 cm", hook="5 mm"), pattern="crab"
    )
    assert 3.0 <= edging_of(planned).hook <= 3.5
    assert "edging_hook" in names(planned)


def test_hook_of_the_edging_is_the_designers_when_the_main_hook_is(made: Made) -> None:
    """Or when she does not say what hers was."""
    for tables in ((DESIGNER,), ()):
        choice = table("edging", pattern="crab", hook="2.25 mm")
        known = made(STRAIGHT, start=OPEN, tables=(*tables, choice))
        assert known.tube.edging is not None
        assert hook(known, known.tube.edging) == (2.25, False)


def test_last_round_is_cut_off(made: Made) -> None:
    """The edging's when there is one, else the skirt's."""
    rows = edged(made, pattern="plain", parameters={"rounds": 3}).program.pieces[0].rows
    assert [row.end.fasten_off for row in rows[-3:]] == [False, False, True]
    bare = plan(made(STRAIGHT, start=OPEN)).program.pieces[0].rows
    assert (bare[-1].end.fasten_off, bare[-1].end.turn) == (True, False)


def test_multiple_is_asked_of_the_hem_only_when_it_has_to_be(made: Made) -> None:
    """Not when the repeat has a width of its own and a round adapts the count."""
    for keys, wanted in (
        ({}, Multiple(6)),
        ({"repeat_width": "3.2 cm"}, Multiple()),
        ({"repeat_width": "3.2 cm", "correction_round": "never"}, Multiple(6)),
    ):
        choice = table("edging", pattern="shell", hook="2 mm", **keys)
        known = made(STRAIGHT, start=OPEN, tables=(choice,))
        assert multiple(known, known.tube.edging) == wanted
    assert multiple(known, None) == Multiple()


@pytest.mark.parametrize(
    ("keys", "key"),
    [
        ({"pattern": "shells"}, "edging.pattern"),
        ({"pattern": "shell", "parameters": {"size": 3}}, "edging.parameters"),
        ({"pattern": "shell", "parameters": {"stitches_in_shell": 99}}, "edging.parameters"),
    ],
)
def test_unknown_edging_is_refused_where_it_stands(
    made: Made, keys: dict[str, object], key: str
) -> None:
    """With what is accepted."""
    with pytest.raises(InputError) as refused:
        edged(made, **keys)
    assert refused.value.faults[0].place.key == key


def test_right_side_faces_when_the_edging_begins(made: Made) -> None:
    """The work is turned after a wrong-side round, and not after a right-side one."""
    for length, turned in (("30 cm", True), ("31 cm", False)):
        choice = table("edging", pattern="crab", hook="2 mm")
        rows = (
            plan(made(STRAIGHT, start=OPEN, tables=(choice,), length=length)).program.pieces[0].rows
        )
        last = rows[30 if turned else 31]
        assert (last.side, last.end.turn) == (("WS", True) if turned else ("RS", False))
        assert rows[last.number + 1].side == "RS"


def test_strands_of_a_fringe_are_told_by_hand_arithmetic(made: Made) -> None:
    """209 stitches come to 210: 70 knots of 2 strands, each 2 x 8 cm and 2.5 cm: 25.9 m in all."""
    planned = edged(
        made,
        pattern="fringe",
        parameters={"every": 3, "strands": 2, "length_cm": 8},
    )
    told = next(r for r in planned.remarks if r.name == "edging_fringe")
    assert "cut 140 strands of 18.5 cm, 2 for each of 70 knots" in told.sentence
    assert "70 knots: 26 m of yarn, counted under the materials" in told.sentence
    assert edging_of(planned).fringe_yarn == 140 * 185.0
    assert "small child" in next(r.sentence for r in planned.remarks if r.name == "edging_note")


def test_beads_slid_up_in_the_edging_are_told_when_no_table_counts_them(made: Made) -> None:
    """One in each of 52 repeats of four stitches."""
    planned = edged(made, pattern="picot_bead")
    told = next(r for r in planned.remarks if r.name == "edging_beads")
    assert "slide up 52 beads, 1 in each repeat" in told.sentence
    assert edging_of(planned).repeats == 52


def test_an_edging_without_a_note_says_nothing_of_it(made: Made) -> None:
    """Shells ask for no care."""
    assert not {"edging_note", "edging_fringe", "edging_beads"} & set(
        names(edged(made, pattern="shell"))
    )


@pytest.mark.parametrize("key", edgings())
def test_every_edging_of_the_library_is_proven_on_a_hem(made: Made, key: str) -> None:
    """Planned, tallied, written in both dialects and read back, with no check that fails."""
    choice = table("edging", hook="2.25 mm", pattern=key)
    drafted = develop(made(STRAIGHT, start=OPEN, tables=(choice,), length="30 cm"))
    last = drafted.plan.main.edging
    assert last is not None
    assert last.base_count == last.repeats * last.multiple + last.offset
    verdicts = {finding.name: finding.verdict for finding in drafted.findings}
    assert verdicts["reads_back"] == verdicts["places"] == verdicts["multiples"] == "pass"
