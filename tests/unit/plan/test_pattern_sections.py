"""Sections of a tube in stitch patterns: rows, repeats, and what is refused."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
from sample_designs import Design, basis, body, section, swatch

from frogless import draft
from frogless.errors import FroglessError, Impossible, InputError
from frogless.plan.make import plan
from frogless.plan.model import Plan, SectionPlan
from frogless.publish.drafted import Drafted
from frogless.rows.nodes import Row
from frogless.rows.walk import stitch_keys

BODY = body(waist_girth="64 cm", hip_girth="71 cm", waist_to_hip="20 cm")
START = 'with = "foundation_double_crochet"\ngirth = "80 cm"'


def reading(pattern: str, stitches: int, more: str = "") -> str:
    """Ten repeats, 5 mm for each of their stitches; rows of 8 mm."""
    return (
        f'pattern = "{pattern}"\nstate = "washed"\nrepeats = 10\nwidth = "{stitches * 5} cm"\n'
        f'rows = 10\nheight = "8 cm"\n{more}'
    )


READINGS = (
    'stitch = "sc"\nstate = "washed"\nstitches = 20\nwidth = "10 cm"\nrows = 20\nheight = "10 cm"',
    reading("fan_arches", 10),
    reading("fan_arches", 12, "parameters = { half = 5 }"),
    reading("fan_arches", 12, 'hook = "4 mm"'),
    reading("single_mesh", 2),
    reading("square_mesh", 2),
    reading("moss", 2),
    reading("stripes_single", 1),
    reading("ripple_soft", 14),
    reading("seed", 2).replace("10 cm", "8 cm"),
)


class Made:
    """Makes plans and drafts of sections, each from files."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def plan(self, *sections: str, **design: object) -> Plan:
        """The plan alone."""
        text = Design(sections, **{"start": START, **design}).text  # type: ignore[arg-type]
        sample = swatch(20, 10, readings=READINGS)
        return plan(basis(self.folder, text, BODY, sample))

    def draft(self, *sections: str, **design: object) -> Drafted:
        """Planned, worked and proven."""
        text = Design(sections, **{"start": START, **design}).text  # type: ignore[arg-type]
        return draft.develop(basis(self.folder, text, BODY, swatch(20, 10, readings=READINGS)))


@pytest.fixture
def make(tmp_path: Path) -> Made:
    """What makes plans."""
    return Made(tmp_path)


TOP = section("top", length="21 cm")
LACE = section("lace", pattern="fan_arches", length="20 cm")
HEM = section("below", to="hem")


def rows_of(planned: Plan, one: SectionPlan) -> list[Row]:
    """The rounds of a section."""
    rows = planned.program.pieces[0].rows
    return [row for row in rows if one.first_round <= row.number <= one.last_round]


def test_no_base_round_where_the_count_fits_and_the_girth_stays(make: Made) -> None:
    """160 stitches are 80 cm, and 16 repeats of 10 at the same width."""
    found = make.draft(TOP, LACE, HEM).plan
    lace = found.sections[1]
    assert lace.pattern is not None
    assert (lace.based, lace.count_before, lace.pattern.based) == ("", 160, ())
    assert lace.first_round == lace.pattern.bands[0].first_round


def test_what_follows_a_pattern_begins_with_a_base_round(make: Made) -> None:
    """Told as such, and counted among its rounds and its height."""
    found = make.draft(TOP, LACE, HEM).plan
    below = found.sections[2]
    assert below.based == "single_crochet"
    first = rows_of(found, below)[0]
    assert stitch_keys(first.body) == {"single_crochet"}
    depths = found.main.depths
    at = below.first_round
    assert depths[at] - depths[at - 1] == pytest.approx(5.0)
    assert depths[at + 1] - depths[at] == pytest.approx(10.0)


def test_right_side_of_a_pattern_comes_up_whatever_was_before(make: Made) -> None:
    """Turned plain rounds end so that the first round of the pattern is on its own side."""
    for length in ("21 cm", "22 cm"):
        found = make.draft(section("top", length=length), LACE, HEM).plan
        rows = found.program.pieces[0].rows
        first = found.sections[1].first_round
        assert rows[first].side == "RS"
        for a, b in pairwise(rows):
            assert (a.side != b.side) == a.end.turn


def test_pattern_is_as_long_as_whole_rows_come_nearest(make: Made) -> None:
    """20 cm in rows of 8 mm: a row that comes once, and 6 times the four; or one that may end."""
    lace = make.plan(TOP, LACE, HEM).sections[1]
    assert lace.last_round - lace.first_round + 1 == 25


def test_girth_of_every_round_is_told_though_rounds_leave_other_places(make: Made) -> None:
    """All of them 80 cm, in the plan and in its file."""
    found = make.draft(TOP, LACE, HEM)
    assert {round(g) for g in found.plan.main.girths} == {800}
    counts = {row.count for row in rows_of(found.plan, found.plan.sections[1])}
    assert len(counts) > 1


def test_whole_repeats_are_added_between_row_repeats(make: Made) -> None:
    """The same number at every border, and never a part of one."""
    found = make.draft(
        TOP, section("lace", pattern="fan_arches", to="hem", shape="shaped", girth="100 cm"),
    ).plan  # fmt: skip
    lace = found.sections[1].pattern
    assert lace is not None
    repeats = [band.repeats for band in lace.bands]
    assert (repeats[0], repeats[-1]) == (16, 20)
    assert len({b - a for a, b in pairwise(repeats)}) == 1
    assert all(band.base == 10 * band.repeats for band in lace.bands)
    assert len(lace.based) == len(repeats) - 1


def test_whole_repeats_are_taken_away_too(make: Made) -> None:
    """Downwards to a narrow hem."""
    lace = section(
        "lace", pattern="fan_arches", to="hem", shape="shaped", girth="70 cm",
        ease_allowed=("-3 cm", "3 cm"),
    )  # fmt: skip
    found = make.draft(section("top", length="25 cm"), lace).plan
    assert found.sections[1].count_after == 140


def test_columns_widen_as_gores_do(make: Made) -> None:
    """Panels keep their repeats; eight columns grow to the girth asked for."""
    lace = section(
        "lace", pattern="moss", to="hem", shape="shaped", shape_by="columns", columns=8,
        girth="100 cm",
    )  # fmt: skip
    found = make.draft(TOP, lace)
    one = found.plan.sections[1]
    assert one.pattern is not None
    assert one.chosen is not None
    assert (one.pattern.columns, one.chosen.points) == (8, 8)
    assert one.girth_after.value == pytest.approx(1000, abs=40)
    assert (one.count_after - one.count_before) % 8 == 0
    hem = found.plan.landmarks[-1]
    told = {step.what: step.value for step in hem.because.steps}
    assert told["girth"] == pytest.approx(hem.garment.value)
    assert "gauge" not in told  # columns and panels have one each
    assert {band.repeats for band in one.pattern.bands} == {one.pattern.bands[0].repeats}


def test_columns_of_an_unturned_pattern_come_out_too(make: Made) -> None:
    """In rounds that are all on the right side, two stitches more at a time."""
    lace = section(
        "mesh", pattern="single_mesh", to="hem", shape="shaped", shape_by="columns", columns=4,
        girth="100 cm", add=2,
    )  # fmt: skip
    assert make.draft(TOP, lace).plan.sections[1].girth_after.value > 960


def test_pattern_may_begin_on_the_foundation_and_end_in_an_edging(make: Made) -> None:
    """A base round closes it for the edging."""
    lace = section("lace", pattern="fan_arches", to="hem")
    edging = '[edging]\npattern = "shell"\nhook = "3 mm"'
    found = make.draft(lace, tables=(edging,)).plan
    one = found.sections[0].pattern
    assert one is not None
    assert one.based == (found.sections[0].last_round,)
    assert one.left == 160


@pytest.mark.parametrize(("edging", "count"), [("crab", 160), ("shell", 162)])
def test_base_round_under_an_edging_keeps_the_girth_of_a_pattern_that_draws_in(
    make: Made, edging: str, count: int
) -> None:
    """80 cm are 200 stitches of 4 mm in the pattern, and 160 of 5 mm under it; shells take sixes."""
    lace = section("lace", pattern="seed", to="hem")
    drafted = make.draft(lace, tables=(f'[edging]\npattern = "{edging}"\nhook = "3 mm"',))
    found = drafted.plan
    assert found.sections[0].count_after == 200
    assert found.main.counts[found.sections[0].last_round] == count
    assert found.landmarks[-1].garment.value == pytest.approx(800)
    assert found.main.edging is not None
    assert (found.main.edging.hem_count, found.main.edging.correction) == (count, 0)
    assert {one.verdict for one in drafted.findings} <= {"pass", "warn"}


def test_colours_of_a_pattern_end_with_it(make: Made) -> None:
    """The last change is not made where no round follows in it."""
    stripes = section("stripes", pattern="stripes_single", length="16 cm")
    found = make.draft(TOP, stripes, HEM).plan
    assert found.program.pieces[0].colour == "A"


REFUSED: tuple[tuple[Callable[[Made], object], str], ...] = (
    (
        lambda m: m.plan(TOP, section("lace", pattern="fan_arch", to="hem")),
        r'pattern: unknown stitch pattern "fan_arch"; did you mean "fan_arches"',
    ),
    (
        lambda m: m.plan(TOP, section("lace", pattern="shells", to="hem")),
        r"no swatch was worked in shells.*work 4 repeats of 6 stitches.*give the swatch a reading",
    ),
    (
        lambda m: m.plan(
            TOP, section("lace", pattern="fan_arches", parameters={"half": 6}, to="hem")
        ),
        r"no swatch was worked in fan arches half 6.*parameters = \{ half = 6 \}",
    ),
    (
        lambda m: m.plan(TOP, section("lace", pattern="fan_arches", hook="5 mm", to="hem")),
        r"on a 5 mm hook \(there is one on 3\.5 mm, 4 mm\)",
    ),
    (
        lambda m: m.plan(
            TOP, section("lace", pattern="fan_arches", parameters={"half": 9}, to="hem")
        ),
        r'parameters: "9" is not accepted for half',
    ),
    (
        lambda m: m.plan(TOP, section("lace", pattern="fan_arches", to="hem", points=8)),
        r'points: section "lace" is worked in a stitch pattern.*leave "points" out',
    ),
    (
        lambda m: m.plan(TOP, section("lace", pattern="fan_arches", to="hem", columns=8)),
        r'section "lace" is shaped by columns, so it needs shape = "shaped"',
    ),
    (
        lambda m: m.plan(
            TOP, section("lace", pattern="fan_arches", to="hem", shape_by="grades", columns=8)
        ),
        r'"columns" belongs to shape_by = "columns"',
    ),
    (
        lambda m: m.plan(TOP, section("lace", pattern="fan_arches", to="hem", shape_by="hook")),
        r'shape_by = "hook" needs "hooks"',
    ),
    (
        lambda m: m.plan(
            TOP, section("lace", pattern="moss", to="hem"),
            work='rounds = "spiral"\nturning_chain = 0',
        ),
        r'the rounds of a stitch pattern are joined; write rounds = "joined"',
    ),
    (
        lambda m: m.plan(
            TOP,
            section(
                "lace", pattern="fan_arches", to="hem", shape="shaped", girth="100 cm",
                shape_by="columns", columns=8,
            ),
        ),
        r"cannot stand beside plain columns.*These can: .*moss",
    ),
)  # fmt: skip


@pytest.mark.parametrize(("asked", "told"), REFUSED, ids=[str(i) for i in range(len(REFUSED))])
def test_what_cannot_be_is_refused_in_one_sentence(
    make: Made, asked: Callable[[Made], object], told: str
) -> None:
    """With its key, and what is accepted."""
    with pytest.raises(InputError, match=told):
        asked(make)


def test_girth_that_no_repeats_make_is_refused_with_the_nearest_and_other_ways(make: Made) -> None:
    """Repeats of 7 cm cannot be 76 cm, within a centimetre."""
    lace = section("waves", pattern="ripple_soft", to="hem")
    start = f'{START.replace("80", "73.5")}\nease_allowed = ["-1 cm", "1 cm"]'
    with pytest.raises(Impossible) as refused:
        make.plan(lace, start=start)
    assert "10 repeats are 70 cm and 11 repeats are 77 cm" in str(refused.value)
    assert any("columns" in way for way in refused.value.ways_out)


def test_too_much_growth_by_repeats_is_refused_with_what_can_be_reached(make: Made) -> None:
    """Ten centimetres hold three row repeats, and two borders."""
    lace = section("lace", pattern="fan_arches", to="hem", shape="shaped", girth="200 cm")
    with pytest.raises(Impossible, match="can be reached") as refused:
        make.plan(section("top", length="50 cm"), lace)
    assert {"columns", "grades", "hook"} <= {
        way
        for way in ("columns", "grades", "hook")
        for told in refused.value.ways_out
        if way in told
    }


def test_pattern_that_passes_the_hip_too_narrow_is_refused(make: Made) -> None:
    """The body comes before the repeats."""
    start = START.replace("80", "66")
    with pytest.raises(FroglessError, match="passes the hip, which needs 71 cm"):
        make.plan(
            section("top", length="5 cm"), section("lace", pattern="moss", to="hem"), start=start
        )


def test_columns_of_another_height_than_the_pattern_are_spoken_of(make: Made) -> None:
    """Double crochet of 10 mm beside rows of 8 mm; single crochet of 5 mm draws in."""
    keys = {
        "pattern": "moss", "to": "hem", "shape": "shaped", "columns": 8, "girth": "100 cm",
    }  # fmt: skip
    for stitch, told in (("double_crochet", "25 % higher"), ("single_crochet", "38 % lower")):
        found = make.plan(TOP, section("lace", column_stitch=stitch, **keys))
        (remark,) = (r for r in found.remarks if r.name == "columns_uneven")
        assert told in remark.sentence


def test_repeats_that_come_no_nearer_to_the_girth_above_are_spoken_of(make: Made) -> None:
    """80 cm in repeats of 7 cm are 77."""
    found = make.plan(TOP, section("waves", pattern="ripple_soft", to="hem"))
    (remark,) = (r for r in found.remarks if r.name == "pattern_girth")
    assert "begins 3 cm narrower" in remark.sentence


def test_grades_that_widen_at_once_are_spoken_of_as_such(make: Made) -> None:
    """A repeat of 10 becomes one of 12: nothing smaller would help."""
    lace = section("lace", pattern="fan_arches", to="hem", grades=[{"half": 4}, {"half": 5}])
    found = make.plan(TOP, lace)
    told = [r.sentence for r in found.remarks if r.name == "pattern_girth"]
    assert "as its repeats are larger" in told[-1]


def test_rounds_of_a_grade_are_told_from_what_is_left_of_the_length(make: Made) -> None:
    """60 cm, less the 21 of the top; each of two grades has a half of 39 cm, about."""
    lace = section("lace", pattern="fan_arches", to="hem", grades=[{"half": 4}, {"half": 5}])
    found = make.plan(TOP, lace, length="60 cm")
    steps = reversed(found.sections[1].because.steps)  # the first of a name is kept
    told = {step.what: step.value for step in steps}
    assert told["worked"] == pytest.approx(210, abs=10)
    assert told["length"] == pytest.approx(195, abs=10)
    assert told["exact"] == pytest.approx(told["length"] * told["row_gauge"] / 100)


@pytest.mark.parametrize(
    ("key", "value"),
    [("columns", 6), ("grades", [{"half": 4}]), ("hooks", ["4 mm"]), ("parameters", {"half": 4})],
)
def test_keys_of_patterns_are_refused_in_plain_stitches(
    make: Made, key: str, value: object
) -> None:
    """They would do nothing there."""
    with pytest.raises(InputError, match=f"plain stitches and has no use for {key}"):
        make.plan(TOP, section("below", to="hem", **{key: value}))


def test_landmark_is_met_at_the_end_of_the_last_grade(make: Made) -> None:
    """Stretches on the way end at no landmark."""
    lace = section("lace", pattern="fan_arches", to="hip", grades=[{"half": 4}, {"half": 5}])
    found = make.draft(section("top", length="4 cm"), lace, HEM).plan
    (hip,) = (m for m in found.landmarks if m.key == "hip_girth")
    assert hip.rounds == found.sections[2].last_round


def test_columns_hide_the_join_of_rounds_that_are_not_turned(make: Made) -> None:
    """Square mesh begins with a chain that stands for a stitch; between columns it does not."""
    lace = section(
        "mesh", pattern="square_mesh", to="hem", shape="shaped", columns=6, girth="100 cm",
    )  # fmt: skip
    found = make.draft(TOP, lace).plan
    mesh = found.sections[1]
    assert mesh.pattern is not None
    first = rows_of(found, mesh)[1]
    assert (first.start.counts, first.end.join) == (False, "first_stitch")
    assert mesh.girth_after.value == pytest.approx(1000, abs=40)


def test_hook_of_a_section_of_its_own_keeps_the_repeats_above_it(make: Made) -> None:
    """What goes on in the same pattern goes on in its rows too, on the other hook."""
    sections = (
        section("first", pattern="fan_arches", length="20 cm"),
        section("second", pattern="fan_arches", hook="4 mm", to="hem"),
    )
    found = make.draft(*sections).plan
    first, second = (s.pattern for s in found.sections)
    assert first is not None
    assert second is not None
    assert second.bands[0].goes_on
    assert (first.bands[0].repeats, second.bands[0].repeats) == (16, 16)
    assert found.sections[1].girth_after.value == pytest.approx(960)


def test_refusal_tells_what_another_way_would_make(make: Made) -> None:
    """Repeats of 7 cm miss 88 cm, within a centimetre; columns of single stitches do not."""
    lace = {
        "pattern": "ripple_soft", "length": "16 cm", "shape": "shaped", "girth": "88 cm",
        "ease_allowed": ("-1 cm", "1 cm"),
    }  # fmt: skip
    with pytest.raises(Impossible) as refused:
        make.plan(TOP, section("waves", **lace), HEM)
    (told,) = (way for way in refused.value.ways_out if "columns" in way)
    assert told.startswith('shape_by = "columns", columns = ')
    girth = float(told.rpartition("comes to ")[2].removesuffix(" cm"))
    assert 87 <= girth <= 89
