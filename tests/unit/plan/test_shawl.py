"""Shawls in rows: their rates, their rows, their sizes."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from sample_designs import basis as basis_of
from sample_designs import body, swatch, table

from frogless.errors import InputError
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.plan.make import plan
from frogless.plan.model import Measure, Plan
from frogless.plan.pieces.shawl_rows import asymmetric, crescent, gains, triangle
from frogless.stitches.edgings import edgings
from frogless.stitches.load import dictionary

Drawn = Callable[..., Plan]
PLAIN = {"turning_chain": 2}
COUNTED = {"turning_chain": 3, "turning_chain_counts": True}
BOTH = ["chain does not count", "chain counts"]


@pytest.fixture
def drawn(tmp_path: Path) -> Drawn:
    """Plans a design of one shawl, at 18 double crochets and 10 rows, 18 × 20 single ones."""

    def draw(*tables: str, work: dict[str, Any] | None = None, **shawl: Any) -> Plan:  # noqa: ANN401
        text = "\n".join(
            [
                'format = "frogless-design/1"\ntitle = "Sample"',
                table("garment", kind="shawl"),
                table("work", stitch="double_crochet", **(work or PLAIN)),
                table("[piece]", construction="shawl", name="shawl", **shawl),
                *tables,
            ]
        )
        single = 'stitch = "sc"\nstate = "washed"\nstitches = 18\nwidth = "10 cm"\nrows = 20\nheight = "10 cm"'
        return plan(basis_of(tmp_path, text, body(stature="168 cm"), swatch(readings=[single])))

    return draw


def fabric(made: Plan) -> tuple[RowFabric, ...]:
    """Every stitch of it."""
    return expand(made.program, dictionary()).pieces["shawl"]


def sound(made: Plan) -> None:
    """Every place is used, no row asks for more, and the counts are those planned."""
    for _, row in pairwise(fabric(made)):
        assert row.overrun == 0, row.row.number
        assert ((row.used > 0) | (row.skipped > 0)).all(), row.row.number
    assert tuple(row.places for row in fabric(made)) == made.main.counts
    for below, above in pairwise(made.program.pieces[0].rows):
        assert (below.side != above.side) == below.end.turn


def measure(made: Plan, name: str) -> Measure:
    """A measure by its name."""
    return next(each for each in made.main.measures if each.name == name)


SHAPES: list[dict[str, Any]] = [
    {"depth": "40 cm"},
    {"wingspan": "120 cm", "angle_deg": 120.0},
    {"shape": "crescent", "depth": "35 cm", "wingspan": "140 cm"},
    {"shape": "asymmetric", "depth": "60 cm", "angle_deg": 40.0},
    {"shape": "asymmetric", "depth": "60 cm", "wingspan": "90 cm"},
    {"shape": "rectangle", "depth": "50 cm", "wingspan": "160 cm"},
]


@pytest.mark.parametrize("work", [PLAIN, COUNTED], ids=BOTH)
@pytest.mark.parametrize("keys", SHAPES, ids=lambda keys: " ".join(map(str, keys.values())))
def test_a_shawl_is_sound_in_every_shape(
    drawn: Drawn, keys: dict[str, Any], work: dict[str, Any]
) -> None:
    """Its places are all used and its counts are those planned."""
    sound(drawn(work=work, **keys))


def test_a_right_triangle_gains_as_much_at_its_edges_as_at_its_spine(drawn: Drawn) -> None:
    """Height over width is 1.8: 1.8 at each edge and on each side of the spine, 7.2 a row."""
    made = drawn(depth="45 cm")
    counts = made.main.counts
    rows = len(counts) - 1
    assert rows == round(450 * math.sin(math.pi / 4) / 10) == 32
    assert counts[-1] == 1 + 4 * round(1.8 * rows)
    assert counts[1] == 9
    assert {b - a for a, b in pairwise(counts)} == {4, 8}


def test_a_triangle_is_as_wide_and_deep_as_its_rows_make_it(drawn: Drawn) -> None:
    """32 rows of 10 mm: 45.3 deep, 90.5 wide, its last row as long as its two short sides."""
    made = drawn(depth="45 cm")
    assert measure(made, "depth").got.value == pytest.approx(452.5, abs=0.1)
    assert measure(made, "wingspan").got.value == pytest.approx(905.1, abs=0.1)
    assert measure(made, "last row").got.value == pytest.approx(2 * 640, rel=0.02)
    assert made.main.shape is not None
    assert len(made.main.shape.outlines[0]) == 3


def test_a_triangle_grows_in_the_middle_stitch_of_its_spine(drawn: Drawn) -> None:
    """The place with most stitches is the middle one, in every row that grows there."""
    rows = fabric(drawn(depth="30 cm"))
    for row in rows[2:]:
        used = row.used.tolist()
        assert used == used[::-1]
        assert max(used) == used[len(used) // 2]


def test_a_crescent_is_a_half_disc_when_it_is_twice_as_wide_as_deep() -> None:
    """A half circle gains π·h/w inside and nothing at its ends."""
    rates = crescent(800, 400)
    assert rates.inside == pytest.approx(math.pi)
    assert (rates.left, rates.right) == pytest.approx((0, 0), abs=1e-9)


def test_a_crescent_gains_more_at_its_ends_when_it_is_shallow() -> None:
    """Four times as wide as deep: the arc is 92.7 for a depth of 20 and a chord of 80."""
    rates = crescent(800, 200)
    length = (rates.left + rates.right + rates.inside) * 200
    assert length == pytest.approx(4 * math.atan(0.5) * 500)
    assert rates.left > 1


def test_an_asymmetric_shawl_keeps_one_edge_straight(drawn: Drawn) -> None:
    """All increases lie at its left, seen from the right side."""
    rows = fabric(drawn(shape="asymmetric", depth="40 cm", angle_deg=45.0))
    for row in rows[1:]:
        used = row.used.tolist()
        met = [used[i] for i in row.order]
        from_right = met if row.row.side == "RS" else met[::-1]
        assert set(from_right[:-1]) == {1}
    assert rows[-1].places == 3 + round(1.8 * 40)


def test_a_rectangle_lands_on_its_multiple(drawn: Drawn) -> None:
    """160 cm are 288; in steps of 7 and one more 288 lies nearest to 288 = 41 × 7 + 1."""
    made = drawn(shape="rectangle", depth="50 cm", wingspan="160 cm", multiple=7, offset=1)
    assert made.main.counts == (288,) * 51


def test_bands_have_their_own_stitch_and_gauge(drawn: Drawn) -> None:
    """20 cm along the rows in double crochet, the rest of 31.8 in single: 20 and 24 rows."""
    made = drawn(
        table("[piece.band]", name="middle", length="20 cm"),
        table("[piece.band]", name="rim", stitch="single_crochet"),
        depth="45 cm",
    )
    assert [(s.name, s.first_round, s.last_round) for s in made.main.sections] == [
        ("middle", 1, 20),
        ("rim", 21, 44),
    ]
    assert made.gauges["rim"].stitch == "single_crochet"
    assert {row.start.chains for row in made.program.pieces[0].rows[21:]} == {1}
    sound(made)


@pytest.mark.parametrize("pattern", edgings())
def test_an_edging_is_worked_in_rows_when_one_is_asked_for(drawn: Drawn, pattern: str) -> None:
    """On its multiple; turned, but for crab stitch."""
    edging = table("piece.edging", pattern=pattern, hook="3.5 mm")
    made = drawn(edging, depth="30 cm")
    assert made.main.edging is not None
    assert len(made.main.depths) == len(made.main.counts)
    rows = made.program.pieces[0].rows
    assert {row.end.join for row in rows} == {"none"}
    assert rows[-1].end.fasten_off
    sound(made)


def test_steep_edges_are_told(drawn: Drawn) -> None:
    """A crescent six times as wide as deep gains more at its ends than lies well."""
    made = drawn(shape="crescent", depth="25 cm", wingspan="170 cm")
    assert [r.name for r in made.remarks] == ["shawl_steep_edge"]


@pytest.mark.parametrize("height", [0.7, 1.0, 1.8, 2.6])
def test_rows_gain_what_their_rates_ask_for_when_they_are_added_up(height: float) -> None:
    """Within half a stitch at every edge and row."""
    for rates in (triangle(math.pi / 2), triangle(2.0), crescent(1500, 400), asymmetric(0.7)):
        made = gains(rates, [height] * 60)
        for rows in range(1, 61):
            got = sum(gain.right for gain in made[:rows])
            assert abs(got - rates.right * height * rows) <= 0.5 + 1e-6
            assert all(gain.total >= 0 for gain in made)


def test_every_row_gains_alike_when_no_one_could_see_the_difference() -> None:
    """2.05 in each row are 2 to a tape that is good to 3 %, and 2 or 3 to one that is perfect."""
    rates = asymmetric(math.atan(2.05))
    assert {gain.left for gain in gains(rates, [1.0] * 60, seen=0.03)} == {2}
    assert {gain.left for gain in gains(rates, [1.0] * 60)} == {2, 3}


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ({}, "to a depth or to a wingspan"),
        ({"depth": "40 cm", "wingspan": "120 cm"}, "to a depth or to a wingspan"),
        ({"shape": "crescent", "depth": "40 cm"}, "needs a depth and a wingspan"),
        ({"shape": "crescent", "depth": "80 cm", "wingspan": "120 cm"}, "at least twice as wide"),
        ({"shape": "asymmetric", "wingspan": "60 cm"}, "needs a depth"),
        ({"shape": "asymmetric", "depth": "60 cm", "angle_deg": 100.0}, "75 or less"),
        ({"shape": "rectangle", "depth": "60 cm"}, "needs a depth and a wingspan"),
        ({"depth": "40 cm", "multiple": 4}, "means nothing"),
    ],
    ids=lambda value: str(value)[:40],
)
def test_a_shawl_is_refused_when_its_size_is_no_size(
    drawn: Drawn, keys: dict[str, Any], said: str
) -> None:
    """With what is needed."""
    with pytest.raises(InputError, match=said):
        drawn(**keys)


@pytest.mark.parametrize(
    ("bands", "said"),
    [
        ([{"name": "a"}, {"name": "b"}], "needs a length"),
        ([{"name": "a", "length": "9 cm"}, {"name": "a"}], "choose another name"),
        ([{"name": "a", "length": "90 cm"}], "ends beyond the shawl"),
        ([{"name": "a", "stitch": "purl"}], "unknown stitch"),
    ],
    ids=["no length", "twice", "too long", "unknown"],
)
def test_bands_are_refused_when_they_do_not_fit(
    drawn: Drawn, bands: list[dict[str, Any]], said: str
) -> None:
    """With what is left."""
    with pytest.raises(InputError, match=said):
        drawn(*(table("[piece.band]", **band) for band in bands), depth="40 cm")


def test_a_counted_chain_is_refused_when_there_is_none(drawn: Drawn) -> None:
    """A chain of nothing cannot stand for a stitch."""
    with pytest.raises(InputError, match="cannot count as a stitch"):
        drawn(depth="40 cm", work={"turning_chain": 0, "turning_chain_counts": True})
