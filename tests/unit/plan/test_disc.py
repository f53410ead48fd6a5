"""Discs, polygons, hats and bags from a ring: their counts, their increases, and their proof."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
from sample_designs import basis as basis_of
from sample_designs import body, section, swatch, table

from frogless.design.pieces.disc import DiscChoice
from frogless.errors import Impossible, InputError
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.plan.basis import Basis
from frogless.plan.make import plan
from frogless.plan.model import Measure, Plan
from frogless.rows.nodes import Into, Repeat, Work
from frogless.stitches.load import dictionary

Drawn = Callable[..., Plan]
TURNED = {"rounds": "joined and turned", "turning_chain": 2}
JOINED = {"rounds": "joined", "turning_chain": 3, "turning_chain_counts": True}
SPIRAL = {"rounds": "spiral", "turning_chain": 0}
WAYS = [TURNED, JOINED, SPIRAL, {**JOINED, "rounds": "joined and turned"}]
IDS = ["turned", "counted chain", "spiral", "turned, counted chain"]


def based(
    folder: Path,
    *tables: str,
    sample: str = "",
    work: dict[str, Any] | None = None,
    kind: str = "hat",
    stitch: str = "double_crochet",
    **disc: Any,  # noqa: ANN401 — any key of the disc
) -> Basis:
    """A design of one disc for a head of 56 cm, at 16 double crochets and 9 rows in 10 cm."""
    text = "\n".join(
        [
            'format = "frogless-design/1"\ntitle = "Sample"',
            table("garment", kind=kind),
            table("work", stitch=stitch, **(work or TURNED)),
            table("[piece]", construction="disc", name="crown", **disc),
            *tables,
        ]
    )
    return basis_of(folder, text, body(head_girth="56 cm"), sample or swatch(16, 9))


@pytest.fixture
def drawn(tmp_path: Path) -> Drawn:
    """Plans such a design."""
    return lambda *tables, **more: plan(based(tmp_path, *tables, **more))


def part(**keys: object) -> str:
    """A section of the disc."""
    return section("x", **keys).replace(
        '[[section]]\nname = "x"', '[[piece.section]]\nname = "side"'
    )


def fabric(made: Plan) -> tuple[RowFabric, ...]:
    """Every stitch of it."""
    return expand(made.program, dictionary()).pieces[made.main.name]


def sound(made: Plan) -> None:
    """Every place is used, no round asks for more, and the counts are those planned."""
    for below, row in pairwise(fabric(made)):
        assert row.overrun == 0, row.row.number
        assert row.used.size == below.places
        assert (row.used > 0).all(), row.row.number
    assert tuple(row.places for row in fabric(made)) == made.main.counts


def standing_on(row: RowFabric) -> npt.NDArray[np.int64]:
    """For each stitch of a round that counts, in the order made, the place it stands on."""
    return np.repeat(row.first, row.counted)


def measure(made: Plan, name: str) -> Measure:
    """A measure by its name."""
    return next(each for each in made.main.measures if each.name == name)


def test_a_hat_is_worked_as_by_hand_when_twelve_a_round_come_out(drawn: Drawn) -> None:
    """D1: 53.2 cm are 85.1, so 84: seven rounds of 12; 21 high leave 12 rounds."""
    made = drawn(part(to="21 cm"), girth="head_girth", ease="head_girth * -0.05")
    assert made.main.counts == (1, *range(12, 85, 12), *[84] * 12)
    assert [(s.first_round, s.last_round) for s in made.main.sections] == [(1, 7), (8, 19)]
    (head,) = made.landmarks
    assert (head.key, head.count, head.wanted) == ("head_girth", 84, pytest.approx(532))
    assert head.garment.value == pytest.approx(525)
    assert measure(made, "radius of the disc").got.value == pytest.approx(77.8, abs=0.05)
    (told,) = [r for r in made.remarks if r.name == "disc_slight_frill"]
    assert "7 % more" in told.sentence
    sound(made)


def test_the_last_round_takes_what_is_left_when_the_count_is_no_multiple(drawn: Drawn) -> None:
    """D2: 78 are six rounds of 12, then 6 in the seventh: every 12th."""
    made = drawn(girth="48.75 cm", per_round=12, work=SPIRAL)
    assert made.main.counts == (1, 12, 24, 36, 48, 60, 72, 78)
    (repeat,) = [n for n in made.program.pieces[0].rows[-1].body if isinstance(n, Repeat)]
    assert sum(n.times for n in repeat.body if isinstance(n, Work)) == 11
    assert any(isinstance(n, Into) for n in repeat.body)
    assert [r.name for r in made.remarks if r.name == "disc_last_round"]
    sound(made)


def test_another_step_is_taken_when_its_rounds_come_out_and_lie_flat(drawn: Drawn) -> None:
    """Left to the planner 78 are 77: seven rounds of 11, flatter and all alike."""
    assert drawn(girth="48.75 cm").main.counts == (1, *range(11, 78, 11))


@pytest.mark.parametrize("work", WAYS, ids=IDS)
@pytest.mark.parametrize(
    "disc",
    [
        {"radius": "14 cm"},
        {"radius": "14 cm", "lie": 0.7},
        {"radius": "14 cm", "lie": 1.9},
        {"radius": "14 cm", "sides": 6},
        {"radius": "14 cm", "sides": 4},
        {"radius": "14 cm", "staggered": False},
        {"girth": "49 cm"},
    ],
    ids=lambda keys: " ".join(map(str, keys.values())),
)
def test_a_disc_is_sound_in_every_way_of_working(
    drawn: Drawn, disc: dict[str, Any], work: dict[str, Any]
) -> None:
    """Its places are all used and its counts are those planned."""
    sound(drawn(part(length="4 cm"), work=work, **disc))


@pytest.mark.parametrize("work", WAYS, ids=IDS)
def test_increases_are_never_stacked_when_staggered(drawn: Drawn, work: dict[str, Any]) -> None:
    """From the fourth round on no increase is worked into a stitch of an increase."""
    rows = fabric(drawn(radius="20 cm", work=work))
    for below, row in list(pairwise(rows))[3:]:
        first = standing_on(below)
        shares = [(first == place).sum() > 1 for place in first]
        into = [place for place, many in enumerate(row.used) if many > 1]
        assert into
        assert not any(shares[place] for place in into), row.row.number


@pytest.mark.parametrize("work", WAYS[:3], ids=IDS[:3])
def test_increases_lie_above_each_other_when_it_is_a_polygon(
    drawn: Drawn, work: dict[str, Any]
) -> None:
    """Each corner is worked into a stitch of the corner below."""
    rows = fabric(drawn(radius="20 cm", sides=6, work=work))
    for below, row in list(pairwise(rows))[2:]:
        first = standing_on(below)
        into = [place for place, many in enumerate(row.used) if many > 1]
        assert len(into) == 6
        assert all((first == first[place]).sum() > 1 for place in into)


def test_a_disc_of_single_crochet_grows_by_six_when_its_gauge_is_the_usual_one(
    drawn: Drawn,
) -> None:
    """2π × 19 / 20 are 5.97."""
    sample = swatch(19, 20, stitch="sc", width="4 in", height="4 in")
    made = drawn(
        radius="2.25 in / 2", sample=sample, work={**SPIRAL}, kind="bag", stitch="single_crochet"
    )
    assert made.main.counts == (1, *range(6, 37, 6))
    assert not [r for r in made.remarks if r.name.startswith("disc_")]


def test_a_disc_is_measured_and_drawn_round(drawn: Drawn) -> None:
    """14 rounds of 9 in 10 cm are 31.1 cm across; its outline is a circle."""
    made = drawn(radius="15.5 cm", kind="bag")
    diameter = measure(made, "diameter")
    assert (diameter.got.value, diameter.count) == (pytest.approx(311.1, abs=0.1), 28)
    assert diameter.wanted == 310
    shape = made.main.shape
    assert shape is not None
    (ring,) = shape.outlines
    assert len(ring) == 72
    middle = diameter.got.value / 2
    far = {round(((x - middle) ** 2 + (y - middle) ** 2) ** 0.5, 3) for x, y in ring}
    assert far == {round(middle, 3)}


def test_a_polygon_has_as_many_corners_as_sides(drawn: Drawn) -> None:
    """A hexagon, as far from side to side as it was asked for."""
    made = drawn(radius="15.5 cm", sides=6, kind="bag")
    shape = made.main.shape
    assert shape is not None
    assert len(shape.outlines[0]) == 6
    assert {n % 6 for n in made.main.counts[1:]} == {0}


def test_a_hat_is_drawn_as_a_dome_with_its_sides(drawn: Drawn) -> None:
    """As high as it is long along the work, as wide as half its girth."""
    made = drawn(part(to="21 cm"), girth="head_girth", ease="head_girth * -0.05")
    shape = made.main.shape
    assert shape is not None
    (outline,) = shape.outlines
    assert max(x for x, _ in outline) == pytest.approx(525 / 2)
    assert max(y for _, y in outline) == pytest.approx(measure(made, "height").got.value)
    assert shape.way == (0.0, 1.0)
    assert measure(made, "head opening").line is not None


def test_a_bag_stands_on_its_base(drawn: Drawn) -> None:
    """Its height is that of its sides, and it grows upwards."""
    made = drawn(part(length="20 cm"), radius="14 cm", kind="bag")
    shape = made.main.shape
    assert shape is not None
    assert shape.way == (0.0, -1.0)
    assert measure(made, "height").count == 18
    assert max(y for _, y in shape.outlines[0]) == pytest.approx(200)
    opening = measure(made, "opening").line
    assert opening is not None
    assert opening[0][1] == pytest.approx(0)


def test_a_brim_spreads_when_a_section_lies_nearly_flat(drawn: Drawn) -> None:
    """0.9 of what lies flat: about ten a round."""
    made = drawn(
        part(to="20 cm"),
        part(length="6 cm", lie=0.9).replace('"side"', '"brim"'),
        girth="head_girth",
    )
    before, *brim = made.main.counts[-6:]
    assert brim[-1] - before == round(0.9 * 2 * 3.14159 * 16 / 9 * 5)
    assert made.main.sections[-1].fullness == pytest.approx(0.9, abs=0.02)
    sound(made)


@pytest.mark.parametrize("work", WAYS, ids=IDS)
def test_a_section_narrows_when_its_girth_is_less(drawn: Drawn, work: dict[str, Any]) -> None:
    """A bag drawn in to 40 cm: 64 stitches."""
    made = drawn(part(length="10 cm", girth="40 cm"), girth="60 cm", kind="bag", work=work)
    assert made.main.counts[-1] == pytest.approx(64, abs=2)
    sound(made)


def test_an_edging_stands_on_the_edge_when_one_is_asked_for(drawn: Drawn) -> None:
    """Shells over six all round."""
    edging = table("piece.edging", pattern="shell", hook="3.5 mm")
    made = drawn(part(to="20 cm"), edging, girth="head_girth")
    assert made.main.edging is not None
    assert made.main.edging.base_count % 6 == 0
    assert len(made.main.depths) == len(made.main.counts)
    assert made.program.pieces[0].rows[-1].end.fasten_off
    sound_until = fabric(made)
    assert all(row.overrun == 0 for row in sound_until)


def test_a_swatch_far_from_the_usual_is_questioned(drawn: Drawn) -> None:
    """Rows as high as three stitches are wide: 18.8 a round where 10 to 12 are usual."""
    made = drawn(radius="15 cm", sample=swatch(24, 8))
    (told,) = [r for r in made.remarks if r.name == "disc_gauge"]
    assert "18.8 stitches a round lie flat, where 10 to 12 are usual" in told.sentence
    assert told.serious


def test_ruffles_are_told_when_they_are_asked_for(drawn: Drawn) -> None:
    """Twice what lies flat."""
    (told,) = [r for r in drawn(radius="15 cm", lie=2.0).remarks if r.name == "disc_ruffled"]
    assert "2 times what lies flat" in told.sentence


def test_numbers_alternate_when_one_number_would_not_lie_as_asked(drawn: Drawn) -> None:
    """Half of 11.2 is 5.6: after 18 rounds 6 a round would be 7 stitches too many."""
    counts = drawn(
        radius="20 cm", lie=0.5, sample=swatch(64, 36, width="40 cm", height="40 cm")
    ).main.counts
    steps = {b - a for a, b in pairwise(counts[1:])}
    assert steps == {5, 6}
    assert counts[-1] == round(0.5 * 2 * 3.14159 * 16 / 9 * 18)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({}, "to a radius or to a girth"),
        ({"radius": "5 cm", "girth": "20 cm"}, "to a radius or to a girth"),
        ({"radius": "0 cm"}, "above zero"),
        ({"radius": "20 m"}, "no more than"),
        ({"girth": "50 cm", "ease": "5 cm", "ease_allowed": ("0 cm", "2 cm")}, "outside"),
    ],
    ids=["neither", "both", "none", "too far", "ease"],
)
def test_a_disc_is_refused_when_its_size_is_no_size(
    drawn: Drawn, keys: dict[str, Any], said: str
) -> None:
    """With what is accepted."""
    with pytest.raises(InputError, match=said):
        drawn(**keys)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({}, "a length or a depth"),
        ({"to": "1 cm"}, "it begins at"),
        ({"length": "5 cm", "lie": 1.0, "girth": "60 cm"}, "a girth and a lie"),
        ({"length": "5 cm", "stitch": "treble_crochet"}, "unknown stitch"),
    ],
    ids=["endless", "before it begins", "twice", "unknown"],
)
def test_a_section_is_refused_when_it_ends_nowhere(
    drawn: Drawn, keys: dict[str, Any], said: str
) -> None:
    """With what is missing."""
    with pytest.raises(InputError, match=said):
        drawn(part(**keys), girth="50 cm")


def test_a_crown_is_refused_when_no_stitch_lies_within_its_ease(drawn: Drawn) -> None:
    """56 cm are 89.6 stitches; 90 are 56.25, and a millimetre is allowed."""
    with pytest.raises(Impossible, match="the nearest count of 90 stitches"):
        drawn(girth="head_girth", ease_allowed=("0 cm", "0.1 cm"))


def test_a_section_is_refused_when_it_narrows_too_fast(drawn: Drawn) -> None:
    """From 96 stitches to 32 in two rounds: a third less in each are 64 and 43."""
    with pytest.raises(Impossible, match=r"narrows from 96 stitches to 32 in 2 rounds") as refused:
        drawn(part(length="2.2 cm", girth="20 cm"), girth="60 cm", per_round=12)
    assert "it comes to 43" in str(refused.value)
    assert any("3 rounds" in way for way in refused.value.ways_out)


@pytest.mark.parametrize("name", ["crown", "edging"])
def test_a_section_is_refused_when_its_name_is_taken(drawn: Drawn, name: str) -> None:
    """By the disc itself, or by its edging."""
    with pytest.raises(InputError, match="choose another name"):
        drawn(part(length="5 cm").replace('"side"', f'"{name}"'), girth="50 cm")


def test_a_counted_chain_is_refused_when_there_is_none(drawn: Drawn) -> None:
    """A chain of nothing cannot stand for a stitch."""
    work = {"rounds": "joined", "turning_chain": 0, "turning_chain_counts": True}
    with pytest.raises(InputError, match="cannot count as a stitch"):
        drawn(radius="10 cm", work=work)


def test_an_edging_is_refused_when_the_edge_is_too_short(drawn: Drawn) -> None:
    """Nine stitches hold no wave of forty."""
    edging = table("piece.edging", pattern="shell", hook="3.5 mm", repeat_width="60 cm")
    with pytest.raises(Impossible, match="the edging wants"):
        drawn(edging, radius="2 cm")


def test_the_model_knows_its_own_keys() -> None:
    """A choice of a radius alone is complete."""
    choice = DiscChoice.model_validate({"construction": "disc", "name": "mat", "radius": "9 cm"})
    assert (choice.lie, choice.staggered, choice.section) == (1.0, True, ())
