"""Flat pieces in rows: what each part of the design does to the rows, and what is offered."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import numpy as np
import pytest
from pieces_designs import Garment, garment, panel

from frogless.errors import Impossible, InputError
from frogless.fabric.claims import spots
from frogless.fabric.stretches import stretch
from frogless.plan.pieces.made import OfferedEdge
from frogless.plan.pieces.panel_edges import spread_run
from frogless.rows.nodes import ROW_ENDS, Base, Into, Skip, Together

HOLE = {"depth": "20 cm", "width": "36 cm"}
NECK = {"width": "20 cm", "depth": "9 cm"}
COUNTED = "turning_chain = 3\nturning_chain_counts = true"
KINDS: dict[str, dict[str, object]] = {
    "plain": {},
    "foundation stitch": {"with": "foundation_double_crochet"},
    "drop shoulder": {"armhole": {"depth": "20 cm"}, "neck": NECK},
    "set in": {"armhole": HOLE, "neck": NECK, "shoulder": {"drop": "3 cm"}},
    "neck shallower than the slope": {
        "armhole": HOLE,
        "neck": {**NECK, "depth": "2 cm"},
        "shoulder": {"drop": "4 cm"},
    },
    "neck from a wrong-side row": {"armhole": HOLE, "neck": {**NECK, "depth": "10 cm"}},
    "deep V": {"armhole": HOLE, "neck": {**NECK, "depth": "26 cm", "shape": "V"}},
    "square": {"armhole": HOLE, "neck": {**NECK, "shape": "square"}},
    "placket": {"armhole": HOLE, "neck": NECK, "placket": "12 cm"},
    "odd placket": {
        "width": "47.5 cm",
        "neck": {"width": "19.5 cm", "depth": "8 cm"},
        "placket": "6 cm",
    },
    "slit": {"slit": "8 cm", "armhole": HOLE, "neck": NECK},
    "bust": {"full_bust": {"extra": "4 cm", "above": "24 cm"}, "armhole": HOLE, "neck": NECK},
    "bust close below a placket": {
        "length": "30 cm",
        "full_bust": {"extra": "4 cm", "above": "7 cm"},
        "neck": {**NECK, "depth": "3 cm"},
        "placket": "19 cm",
    },
    "left half": {
        "width": "24 cm",
        "armhole": {**HOLE, "width": "18 cm", "edges": "right"},
        "neck": {"width": "9 cm", "depth": "12 cm", "at": "left"},
        "shoulder": {"drop": "3 cm"},
    },
    "right half": {
        "width": "24 cm",
        "armhole": {**HOLE, "width": "18 cm", "edges": "left"},
        "neck": {"width": "9 cm", "depth": "20 cm", "at": "right", "shape": "V"},
        "shoulder": {"drop": "3 cm"},
    },
    "waisted": {
        "section": [
            {"name": "to the waist", "length": "18 cm", "width": "42 cm"},
            {"name": "to the bust", "length": "17 cm", "width": "48 cm"},
        ],
        "armhole": HOLE,
        "neck": NECK,
    },
    "princess lines": {
        "section": [
            {
                "name": "to the waist",
                "length": "18 cm",
                "width": "42 cm",
                "edges": "inside",
                "lines": ["8 cm"],
            },
            {
                "name": "to the bust",
                "length": "17 cm",
                "width": "48 cm",
                "edges": "inside",
                "lines": ["8 cm", "0 cm"],
            },
        ],
    },
    "everything": {
        "slit": "5 cm",
        "full_bust": {"extra": "4 cm", "above": "24 cm"},
        "armhole": HOLE,
        "neck": {**NECK, "depth": "12 cm"},
        "placket": "5 cm",
        "shoulder": {"drop": "4 cm"},
    },
}


def made(folder: Path, kind: str, work: str = "turning_chain = 3", **more: object) -> Garment:
    """A panel of a kind, 48 cm wide and 55 cm long."""
    keys = {"width": "48 cm", "length": "55 cm", **KINDS[kind], **more}
    return garment(folder, panel(**keys), work=work)


def edge(made: Garment, name: str) -> OfferedEdge:
    """An edge of the front."""
    (found,) = [each for each in made.edges("front") if each.name == name]
    return found


@pytest.mark.parametrize("work", ["turning_chain = 3", COUNTED], ids=["loose", "counted"])
@pytest.mark.parametrize("kind", KINDS)
def test_panel_passes_the_proof_in_every_kind(tmp_path: Path, kind: str, work: str) -> None:
    """Every place is taken once, every count is as stated, planned and written."""
    assert made(tmp_path, kind, work).faults() == {}


@pytest.mark.parametrize("kind", KINDS)
def test_edges_are_there_and_offered_once_in_every_kind(tmp_path: Path, kind: str) -> None:
    """No edge is longer than what it names, and no place belongs to two."""
    garment_ = made(tmp_path, kind)
    seen: Counter[object] = Counter()
    for each in garment_.edges("front"):
        for base, places in zip(each.bases, each.places, strict=True):
            found = stretch(base, garment_.fabric.pieces)
            assert (found.size, found.missing) == (places, 0), each.name
            seen.update(spots(found))
    assert max(seen.values()) == 1


@pytest.mark.parametrize("kind", KINDS)
def test_every_row_end_is_offered_unless_it_is_a_step_of_a_shoulder(
    tmp_path: Path, kind: str
) -> None:
    """Sides, armholes, necks, slits and plackets leave nothing out."""
    garment_ = made(tmp_path, kind)
    ends = {
        spot
        for each in garment_.edges("front")
        for base in each.bases
        if base.edge in ROW_ENDS
        for spot in spots(stretch(base, garment_.fabric.pieces))
    }
    extra = [m.count for m in garment_.piece("front").measures if m.name.startswith("extra length")]
    short = 2 * sum(extra)
    every = sum(
        2 * sum(1 for row in rows if row.row.number or row.row.body[0].__class__.__name__ == "Work")
        for rows in garment_.fabric.pieces.values()
    )
    steps = len(
        [e for e in garment_.edges("front") if e.name.endswith("shoulder") for _ in e.bases[1:]]
    )
    assert len(ends) == every - short - steps


def test_a_neck_parts_the_rows_when_it_begins(tmp_path: Path) -> None:
    """The main piece goes on with one side; the other is begun on what it passed."""
    garment_ = made(tmp_path, "set in")
    main, other = garment_.plan.program.pieces
    first = other.rows[0]
    assert (other.name, first.number, first.side) == ("front, left side", 47, "RS")
    assert other.bases == (Base("front", "row", row=46, first=0, count=23, reverse=True),)
    assert main.rows[47].body[-1] == Skip(43)
    assert [p.counts[-1] for p in garment_.plan.pieces] == [4, 4]


def test_decreases_stand_one_stitch_in_from_the_edge(tmp_path: Path) -> None:
    """The edge stays a plain stitch that can be sewn through."""
    garment_ = made(tmp_path, "set in", armhole={**HOLE, "rows": "any"})
    row = garment_.rows("front")[37].row
    assert [type(node).__name__ for node in row.body] == [
        "Work",
        "Together",
        "Work",
        "Together",
        "Work",
    ]
    assert row.body[0].times == row.body[-1].times == 1  # type: ignore[union-attr]


def test_edges_are_shaped_on_the_right_side_when_there_are_rows_enough(tmp_path: Path) -> None:
    """Six stitches have ten right-side rows."""
    rows = made(tmp_path, "set in").rows("front")
    shaped = [r.row for r in rows if any(isinstance(n, Together) for n in r.row.body)]
    assert {row.side for row in shaped[:6]} == {"RS"}


def test_princess_lines_stay_where_they_are_when_the_sides_narrow(tmp_path: Path) -> None:
    """As many stitches lie between the two lines in every shaping row."""
    garment_ = made(tmp_path, "princess lines")
    between = set()
    for row in garment_.rows("front")[:19]:
        at = np.flatnonzero(row.taken > 1)
        if at.size:
            between.add(int(at[1] - at[0] - 1))
    assert len(between) == 1


def test_short_rows_lengthen_the_middle_only(tmp_path: Path) -> None:
    """Four rows more than the sides have."""
    plain, full = made(tmp_path, "set in"), made(tmp_path, "bust")
    assert len(full.rows("front")) == len(plain.rows("front")) + 4
    assert edge(full, "left side").places == edge(full, "right side").places == (35,)


def test_a_neck_is_met_from_the_right_shoulder_to_the_left(tmp_path: Path) -> None:
    """Down one side, along the stitches in the middle, up the other."""
    neck = edge(made(tmp_path, "drop shoulder"), "neck")
    assert [base.edge for base in neck.bases] == ["left_edge", "row", "right_edge"]
    assert [base.reverse for base in neck.bases][0::2] == [True, False]
    assert neck.places[0] == neck.places[2] == 9


def test_both_shoulders_are_alike_in_every_kind_with_a_neck(tmp_path: Path) -> None:
    """In stitches and length."""
    for kind in ("drop shoulder", "set in", "deep V", "placket", "everything"):
        left, right = (edge(made(tmp_path, kind), f"{hand} shoulder") for hand in ("left", "right"))
        assert (left.count, left.length) == (right.count, right.length), kind


def test_an_outline_is_as_wide_and_long_as_measured(tmp_path: Path) -> None:
    """Width at the hem, and from top to bottom."""
    garment_ = made(tmp_path, "everything")
    shape = garment_.piece("front").shape
    assert shape is not None
    xs, ys = zip(*shape.outlines[0], strict=True)
    assert max(xs) - min(xs) == pytest.approx(garment_.measure("front", "width").got.value)
    assert (min(ys), max(ys)) == (0.0, pytest.approx(550.0))
    assert len(shape.lines) == 2


def test_an_outline_is_the_same_on_both_sides_when_both_edges_are_shaped(tmp_path: Path) -> None:
    """Mirrored about the middle."""
    shape = made(tmp_path, "set in").piece("front").shape
    assert shape is not None
    middle = 86 * 100 / 18
    right = sorted((y, x) for x, y in shape.outlines[0] if x > middle / 2)
    left = sorted((y, middle - x) for x, y in shape.outlines[0] if x < middle / 2)
    assert np.allclose(left, right)


def test_a_panel_is_held_against_the_body_when_it_names_a_girth(tmp_path: Path) -> None:
    """Two panels of 86 stitches go round a bust of 96 cm: 95.6 cm."""
    garment_ = made(tmp_path, "set in", body="bust_girth", ease_allowed=["-2 cm", "4 cm"])
    (mark,) = garment_.plan.landmarks
    assert mark.key == "bust_girth"
    assert mark.body is not None
    assert (mark.body.value, mark.wanted, mark.low, mark.high) == (960.0, 960.0, 940.0, 1000.0)
    assert mark.garment.value == pytest.approx(2 * 86 * 100 / 18)
    assert (mark.rounds, mark.count, mark.depth) == (35, 86, 200.0)


def test_a_cap_is_as_long_as_the_armhole_it_is_sewn_into(tmp_path: Path) -> None:
    """The join tells both lengths."""
    body = panel(width="48 cm", length="55 cm", armhole=HOLE)
    sleeve = panel(
        "sleeve",
        make=2,
        width="34 cm",
        length="40 cm",
        cap={"into": ["front.left armhole", "front.right armhole"], "ease": "1 cm"},
    )
    join = '[[join]]\nname = "cap"\nfirst = ["sleeve.cap"]\nsecond = ["front.left armhole", "front.right armhole"]'
    garment_ = garment(tmp_path, body, sleeve, join)
    (plan,) = garment_.plan.joins
    cap = garment_.measure("sleeve", "cap edge")
    assert cap.got == plan.first_length
    assert cap.wanted == pytest.approx(plan.second_length.value + 10)
    assert cap.wanted is not None
    assert -10 <= cap.got.value - cap.wanted <= 15
    assert garment_.piece("sleeve").number_made == 2
    assert garment_.faults() == {}


def test_borders_are_picked_up_along_necks_and_armholes(tmp_path: Path) -> None:
    """Over the slip stitches of an armhole too."""
    bands = "\n".join(
        f'[[piece]]\nconstruction = "border"\nname = "{name} band"\non = ["front.{name}"]\n'
        'stitch = "single_crochet"\nclosed = false'
        for name in ("neck", "left armhole", "right armhole", "hem")
    )
    front = panel(width="48 cm", length="55 cm", **KINDS["set in"])
    assert garment(tmp_path, front, bands).faults() == {}


def test_increases_widen_a_sleeve_when_it_is_worked_upwards(tmp_path: Path) -> None:
    """One stitch in from each edge."""
    taper = [{"name": "taper", "length": "30 cm", "width": "34 cm"}]
    garment_ = garment(tmp_path, panel(width="22 cm", length="40 cm", section=taper))
    rows = [r.row for r in garment_.rows("front")]
    gained = sum(isinstance(n, Into) for row in rows for n in row.body)
    assert garment_.piece("front").counts[-1] - garment_.piece("front").counts[0] == gained
    assert garment_.faults() == {}


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"cap": {"into": ["a.b"]}, "armhole": HOLE}, "leave out armhole and neck"),
        ({"shoulder": {"drop": "3 cm"}}, "write both"),
        ({"placket": "5 cm"}, "opens below a neck"),
        ({"worked": "downwards", "neck": NECK}, "worked upwards"),
        ({"armhole": {"depth": "60 cm"}}, "as deep as the piece is long"),
        ({"armhole": {"depth": "20 cm", "width": "60 cm"}}, "less than"),
        ({"section": [{"name": "all", "length": "70 cm"}]}, "sections of front are 70 cm long"),
        ({"section": [{"name": "a", "length": "9 cm", "edges": "inside"}]}, "needs lines"),
        ({"slit": "54.5 cm"}, "has to end below"),
        ({"body": "bust_girht"}, "no measurement of the body"),
        (
            {"section": [{"name": "a", "length": "50 cm"}], "armhole": HOLE},
            "before its sections end",
        ),
    ],
)
def test_parts_that_do_not_go_together_are_refused(
    tmp_path: Path, keys: dict[str, object], said: str
) -> None:
    """Each with its key."""
    with pytest.raises(InputError, match=said) as caught:
        garment(tmp_path, panel(width="48 cm", length="55 cm", **keys))
    assert str(caught.value).startswith("piece.1.")


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({"neck": {"width": "48 cm", "depth": "9 cm"}}, "nothing is left"),
        ({"neck": {**NECK, "depth": "2 cm", "at_once_percent": 0}}, "deeper neck"),
        ({"section": [{"name": "a", "length": "3 cm", "width": "20 cm"}]}, "stitches more than"),
        ({"armhole": {"depth": "3 cm", "width": "20 cm", "at_once": "0 cm"}}, "deeper armhole"),
    ],
)
def test_what_no_rows_can_do_is_impossible_with_ways_out(
    tmp_path: Path, keys: dict[str, object], said: str
) -> None:
    """By how many stitches, and what would help."""
    with pytest.raises(Impossible, match=said) as caught:
        garment(tmp_path, panel(width="48 cm", length="55 cm", **keys))
    assert caught.value.short_stitches > 0
    assert caught.value.ways_out


def test_two_go_in_a_row_when_there_are_more_stitches_than_rows() -> None:
    """17 in 11 rows: six rows with two."""
    run = spread_run(1, 11, -17, "even", "any")
    assert Counter(run.amounts.values()) == {-2: 6, -1: 5}
    assert spread_run(1, 5, 11, "even", "any").short == 1


def test_a_steep_edge_is_done_as_soon_as_can_be() -> None:
    """In the first right-side rows, or in every row when those are too few."""
    assert list(spread_run(4, 20, -3, "steep", "auto").amounts) == [5, 7, 9]
    assert list(spread_run(4, 9, -5, "steep", "auto").amounts) == [4, 5, 6, 7, 8]
