"""Raglan yokes: rows that expand as planned, lines that run straight, parts that arrive together."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from sample_yokes import D, YokeDesign, continued, edge, yoke_basis

from frogless.design.pieces.raglan import RaglanChoice
from frogless.draft import DIALECTS
from frogless.errors import Impossible, InputError
from frogless.fabric.expand import expand
from frogless.fabric.geometry import angles, marked_parent, shaping_points
from frogless.fabric.model import RowFabric
from frogless.fit.model import Fit
from frogless.plan.model import PiecePlan, Plan
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.raglan import plan_raglan
from frogless.plan.pieces.raglan_counts import Counts, mixed
from frogless.proof.checks import edges, rows, shaping, stitches
from frogless.proof.checks.text import check_reads_back
from frogless.proof.model import Finding, Subject
from frogless.rows.nodes import Into, Leave, Piece, Program, Row, Work
from frogless.stitches.load import dictionary
from frogless.write.pattern import write_program

MEDIUM: Mapping[str, object] = {
    "neck": "57.5 cm",
    "depth": "22 cm",
    "ease": "8 cm",
    "arm_ease": "4 cm",
    "underarm": "3.75 cm",
}
LARGE: Mapping[str, object] = {
    **MEDIUM,
    "neck": "62.5 cm",
    "sleeve_top": "8.75 cm",
    "depth": "26 cm",
    "arm_ease_allowed": ("4 cm", "7 cm"),
    "underarm": "7.5 cm",
}
JOINED = 'rounds = "joined"\nturning_chain = 3'
COUNTED = 'turning_chain = 3\nturning_chain_counts = true\nrounds = "joined and turned"'
COUNTED_UNTURNED = 'turning_chain = 3\nturning_chain_counts = true\nrounds = "joined"'
WORKS = {
    "turned": 'rounds = "joined and turned"\nturning_chain = 3',
    "joined": JOINED,
    "turned, chain counts": COUNTED,
    "joined, chain counts": COUNTED_UNTURNED,
}
CHECKS: tuple[Callable[[Subject], Finding], ...] = (
    rows.check_places,
    rows.check_repeats,
    rows.check_counts,
    rows.check_planned,
    rows.check_rounds,
    rows.check_numbers,
    shaping.check_shaping_rounds,
    shaping.check_lines,
    shaping.check_markers,
    edges.check_begins,
    edges.check_seams,
    stitches.check_stitches_close,
)
NO_FIT: Fit = None  # type: ignore[assignment]  # none of the checks looks at it


def planned(folder: Path, keys: Mapping[str, object], work: str = "", **body: str) -> Made:
    """A raglan yoke, 16 stitches and 10 rounds in 10 cm."""
    design = YokeDesign(keys=keys, work=work or WORKS["turned"])
    basis, entry = yoke_basis(folder, design, **body)
    assert isinstance(entry, RaglanChoice)
    return plan_raglan(basis, entry, "piece.1", {})


def faults(made: Made) -> dict[str, str]:
    """What the proof has against a yoke with a body and sleeves worked onto it, by check."""
    pieces = continued(made)
    others = tuple(
        PiecePlan(p.name, "panel", tuple(row.count for row in p.rows)) for p in pieces[1:]
    )
    program = Program(pieces)
    plan = Plan((*made.plans, *others), {}, (), program)
    fabric = expand(program, dictionary())
    subject = Subject(plan, program, fabric, NO_FIT, dictionary(), {})
    found = (check(subject) for check in CHECKS)
    return {each.name: "; ".join(each.faults) for each in found if each.faults}


def expanded(made: Made) -> tuple[RowFabric, ...]:
    """The yoke's rows."""
    return expand(Program(made.pieces), dictionary()).pieces["yoke"]


@pytest.mark.parametrize("depth", ["22 cm", "23 cm"], ids=["even", "odd"])
@pytest.mark.parametrize("neck", ["57.5 cm", "60 cm"])
@pytest.mark.parametrize("work", WORKS)
def test_yoke_body_and_sleeves_are_sound_when_worked(
    work: str, depth: str, neck: str, tmp_path: Path
) -> None:
    """Whatever side the last round lies on, and wherever the join is."""
    made = planned(tmp_path, {**MEDIUM, "depth": depth, "neck": neck}, WORKS[work])
    assert not faults(made)


@pytest.mark.parametrize("work", WORKS)
@pytest.mark.parametrize("high", ["2 cm", "4 cm", "5.9 cm"])
def test_yoke_is_sound_when_its_back_is_raised(high: str, work: str, tmp_path: Path) -> None:
    """One, two, three pairs of short rows."""
    made = planned(tmp_path, {**MEDIUM, "back_raise": high}, WORKS[work])
    assert not faults(made)


def test_back_is_raised_by_two_rows_a_pair_when_asked(tmp_path: Path) -> None:
    """2 cm: half the back and a sleeve, the whole and both sleeves, and back to the join."""
    made = planned(tmp_path, {**MEDIUM, "back_raise": "2 cm"})
    _, there, over, back, first, *_ = made.pieces[0].rows
    half, sleeve = 17, 12
    assert [row.count for row in (there, over, back)] == [
        half + sleeve,
        2 * (half + sleeve),
        half + sleeve,
    ]
    assert there.body == (Work(D, 29), Leave(63))
    assert [(row.side, row.end.turn) for row in (there, over, back)] == [
        ("RS", True),
        ("WS", True),
        ("RS", False),
    ]
    assert (first.number, first.side) == (4, "RS")
    (raised,) = [m for m in made.plans[0].measures if m.name == "back of the neck raised"]
    assert (raised.got.value, raised.wanted, raised.count) == (20.0, 20.0, 2)


def test_short_rows_narrow_over_the_sleeves_when_there_are_three_pairs(tmp_path: Path) -> None:
    """Over 12, 8 and 4 stitches of each sleeve: there and back, each shorter by four."""
    made = planned(tmp_path, {**MEDIUM, "back_raise": "6 cm"})
    worked = [row.count for row in made.pieces[0].rows[1:8]]
    assert worked == [29, 58, 29 + 25, 50, 25 + 21, 42, 21]


def corners(row: RowFabric) -> list[float]:
    """Where the four corners of an increase round stand, as fractions of the round."""
    (at,) = angles([row])
    groups = shaping_points(row)
    marks = row.row.marks
    found = [at[group[mark]] for group, mark in zip(groups, marks, strict=True)]
    return sorted(float(each) for each in found)


@pytest.mark.parametrize("work", WORKS)
def test_lines_part_front_and_sleeves_as_planned_in_every_round(work: str, tmp_path: Path) -> None:
    """Between two corners lie a sleeve, the front, a sleeve: each grows by two in each round."""
    made = planned(tmp_path, MEDIUM, WORKS[work])
    front, sleeve = 34, 12
    for row in expanded(made):
        if not row.row.marks:
            continue
        front, sleeve = front + 2, sleeve + 2
        gaps = np.diff(corners(row)) * row.places
        assert gaps == pytest.approx([sleeve + 1, front - 1, sleeve + 1])
    assert (front, sleeve) == (74, 52)


@pytest.mark.parametrize("work", WORKS)
def test_every_increase_stands_in_its_marker_when_sides_grow_apart(
    work: str, tmp_path: Path
) -> None:
    """Doubles at the body: four stitches into a corner, the third from the body the next corner."""
    made = planned(tmp_path, {**LARGE, "add": 2}, WORKS[work], bust="132 cm", arm="44 cm")
    followed = marked_parent(expanded(made))
    assert (followed.looked_at, followed.faults) == (4 * 25, ())
    assert not faults(made)
    doubles = [row for row in made.pieces[0].rows if Into((Work(D, 4),)) in row.body]
    assert [row.marks for row in doubles] == [(2, 1, 2, 1)] * 6


def test_doubles_are_spread_when_only_some_rounds_have_them(tmp_path: Path) -> None:
    """Six among 26: four or five rounds from one to the next."""
    made = planned(tmp_path, {**LARGE, "add": 2}, bust="132 cm", arm="44 cm")
    steps = np.diff(made.plans[0].counts)
    assert sorted(set(steps.tolist())) == [8, 12]
    gaps = np.diff(np.flatnonzero(steps == 12))
    assert set(gaps.tolist()) <= {4, 5}


def test_one_side_grows_alone_when_the_other_has_arrived(tmp_path: Path) -> None:
    """A deep yoke of the large size: 32 rounds for the body, 26 of them for the sleeves too."""
    made = planned(tmp_path, {**LARGE, "depth": "34 cm"}, bust="132 cm", arm="44 cm")
    steps = np.diff(made.plans[0].counts).tolist()
    assert (steps.count(8), steps.count(4), steps.count(0)) == (26, 6, 2)
    alone = [row for row in made.pieces[0].rows if Into((Work(D, 2),)) in row.body]
    assert {row.marks for row in alone} == {(1, 0, 1, 0)}
    assert not faults(made)


@pytest.mark.parametrize(
    ("needs", "rounds", "add", "mix"),
    [
        ((20, 20), 22, 1, {(1, 1): 20}),
        ((32, 26), 32, 1, {(1, 1): 26, (1, 0): 6}),
        ((26, 32), 32, 1, {(1, 1): 26, (0, 1): 6}),
        ((26, 32), 26, 2, {(1, 1): 20, (1, 2): 6}),
        ((20, 10), 10, 2, {(2, 1): 10}),
        ((20, 6), 16, 2, {(2, 1): 6, (1, 0): 8}),
        ((24, 22), 20, 2, {(1, 1): 16, (2, 1): 2, (2, 2): 2}),
        ((30, 30), 20, 2, {(1, 1): 10, (2, 2): 10}),
        ((0, 0), 4, 1, {}),
    ],
)
def test_rounds_are_mixed_so_that_both_sides_arrive(
    needs: tuple[int, int], rounds: int, add: int, mix: dict[tuple[int, int], int]
) -> None:
    """Fewest kinds; what each side gains is what it needs."""
    found = mixed(needs, rounds, add)
    assert found is not None
    assert dict(found) == mix
    gained = [sum(kind[side] * times for kind, times in found) for side in (0, 1)]
    assert tuple(gained) == needs


def test_nothing_is_mixed_when_there_are_too_few_rounds() -> None:
    """Not even two at a time."""
    assert mixed((32, 26), 26, 1) is None
    assert mixed((60, 26), 26, 2) is None


def test_needs_are_halves_of_what_each_part_grows() -> None:
    """Two corners to a part."""
    assert Counts(34, 12, 74, 52).needs == (20, 20)


def test_edges_are_met_from_the_join_when_offered(tmp_path: Path) -> None:
    """Half of the back, the front, half of the back; sleeves from the middle of their underarm."""
    made = planned(tmp_path, MEDIUM)
    body, right = edge(made, "body"), edge(made, "right sleeve")
    assert (body.places, body.bridges, body.count) == ((37, 74, 37), (6, 6, 0), 160)
    assert (right.places, right.count) == ((3, 52, 3), 58)
    assert body.landmark is not None
    assert body.landmark.body is not None
    assert (body.landmark.key, body.landmark.body.value) == ("bust_girth", 920.0)
    assert (body.landmark.wanted, body.landmark.count) == (1000.0, 160)
    assert edge(made, "neck").count == 92


def test_sleeve_has_no_underarm_when_none_is_asked(tmp_path: Path) -> None:
    """A join at the front or back edge of the sleeve then."""
    made = planned(tmp_path, {**MEDIUM, "underarm": "0 cm"})
    assert len(edge(made, "left sleeve").bases) == 1
    assert not faults(made)


def test_yarn_is_cut_when_nothing_goes_on_from_a_yoke(tmp_path: Path) -> None:
    """A cape ends where it parts."""
    made = planned(tmp_path, MEDIUM)
    assert made.pieces[0].rows[-1].end.fasten_off


def test_schematic_is_as_wide_as_half_the_girths_when_lying_flat(tmp_path: Path) -> None:
    """126 stitches below and 46 above, 22 cm between."""
    shape = planned(tmp_path, MEDIUM).plans[0].shape
    assert shape is not None
    (outline,) = shape.outlines
    assert np.asarray(outline) == pytest.approx(
        np.asarray([(250.0, 0.0), (0.0, 220.0), (787.5, 220.0), (537.5, 0.0)])
    )


def test_vertical_depth_is_told_when_planned(tmp_path: Path) -> None:
    """22 rounds are not 22 cm of armhole."""
    (told,) = planned(tmp_path, MEDIUM).remarks
    assert "22 cm along the work" in told.sentence
    assert "26 cm deep from the shoulder" in told.sentence


@pytest.mark.parametrize(
    ("keys", "work", "said"),
    [
        ({}, 'rounds = "spiral"\nturning_chain = 0', "rounds that are joined"),
        ({}, JOINED + '\njoin_at = "left side"', 'write join_at = "centre back"'),
        ({}, "turning_chain = 0\nturning_chain_counts = true", "cannot count as a stitch"),
        ({"with": "double_crochet"}, "", "is nothing to begin with; accepted are "),
        ({"underarm": "-2 cm"}, "", "it has to be zero or more"),
        ({"back_raise": "-2 cm"}, "", "it has to be zero or more"),
        ({"ease_allowed": ("9 cm", "12 cm")}, "", "lies outside what is allowed"),
        ({"depth": "90 m"}, "", "at most 400 are planned"),
    ],
)
def test_yoke_is_refused_when_it_cannot_be_worked_so(
    keys: Mapping[str, object], work: str, said: str, tmp_path: Path
) -> None:
    """The key and what is accepted are named."""
    with pytest.raises(InputError, match=said):
        planned(tmp_path, {**MEDIUM, **keys}, work)


def test_ease_is_refused_when_no_count_lies_in_it(tmp_path: Path) -> None:
    """A front and a back grow by a stitch each: 1.25 cm apart."""
    with pytest.raises(Impossible, match="no whole number of stitches lies between") as caught:
        planned(tmp_path, {**MEDIUM, "ease": "8.4 cm", "ease_allowed": ("8.2 cm", "8.8 cm")})
    assert caught.value.ways_out == ("allow 1.5 cm from the least to the most",)


def test_neck_is_refused_when_it_is_wider_than_the_yoke(tmp_path: Path) -> None:
    """Nothing to increase."""
    with pytest.raises(Impossible, match="leaves nothing to increase"):
        planned(tmp_path, {**MEDIUM, "neck": "2 m"})


def test_two_at_once_are_not_offered_when_they_are_allowed_already(tmp_path: Path) -> None:
    """An underarm or rounds only."""
    keys = {**LARGE, "depth": "12 cm", "add": 2}
    with pytest.raises(Impossible) as caught:
        planned(tmp_path, keys, bust="132 cm", arm="44 cm")
    assert not any("add" in way for way in caught.value.ways_out)


def test_rows_are_broken_when_a_corner_is_missed(tmp_path: Path) -> None:
    """The check of markers sees a line that leaves its column."""
    made = planned(tmp_path, MEDIUM)
    piece = made.pieces[0]
    astray = [_shifted(row) if row.number == 9 else row for row in piece.rows]
    broken = replace(made, pieces=(Piece(piece.name, True, tuple(astray)),))
    assert "shaping point 1" in faults(broken)["markers"]


def _shifted(row: Row) -> Row:
    """The first corner one stitch early."""
    first, corner, second, *others = row.body
    assert isinstance(first, Work)
    assert isinstance(second, Work)
    moved = (Work(D, first.times - 1), corner, Work(D, second.times + 1))
    return replace(row, body=(*moved, *others))


@pytest.mark.parametrize("work", WORKS)
@pytest.mark.parametrize("raised", ["0 cm", "2 cm"])
def test_text_of_yoke_body_and_sleeves_reads_back(raised: str, work: str, tmp_path: Path) -> None:
    """Bridging chains are told as chains, one by one, in the count of their round."""
    made = planned(tmp_path, {**MEDIUM, "back_raise": raised}, WORKS[work])
    program, words = Program(continued(made)), dictionary()
    texts = {dialect: write_program(program, words, dialect) for dialect in DIALECTS}
    plan = Plan(made.plans, {}, (), program)
    subject = Subject(plan, program, expand(program, words), NO_FIT, words, texts)
    assert check_reads_back(subject).faults == ()
    assert "(148 dc, 12 ch)" in texts["us"]
