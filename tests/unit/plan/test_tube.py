"""Tubes among several pieces: on a foundation, on from an edge, downwards and upwards."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from pieces_designs import SOMEONE, Garment, body, garment, pieces_basis

from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.rows.nodes import Chain, Repeat

FOUNDATION = 'with = "chain", girth = "34 cm"'
WORKS = {
    "turned": 'rounds = "joined and turned"\nturning_chain = 3',
    "joined": 'rounds = "joined"\nturning_chain = 3',
    "spiral": 'rounds = "spiral"\nturning_chain = 0',
    "turned, chain counts": (
        'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = true'
    ),
    "joined, chain counts": 'rounds = "joined"\nturning_chain = 3\nturning_chain_counts = true',
}
YOKE = (
    '[[piece]]\nconstruction = "raglan yoke"\nname = "yoke"\nneck = "57.5 cm"\ndepth = "22 cm"\n'
    'ease = "8 cm"\narm_ease = "4 cm"\nunderarm = "5 cm"\n'
)


def tube(name: str, start: str, *sections: str, more: str = "") -> str:
    """A tube; sections are the lines of inline tables."""
    listed = ", ".join(
        f"{{ {one} }}" for one in sections or (f'name = "{name}", length = "10 cm"',)
    )
    return (
        f'[[piece]]\nconstruction = "tube"\nname = "{name}"\n{more}\n'
        f"start = {{ {start} }}\nsection = [{listed}]"
    )


SLEEVE = (
    'name = "cuff", length = "6 cm"',
    'name = "arm", shape = "shaped", length = "34 cm", girth = "upper_arm_girth", ease = "4 cm", '
    'body = "upper_arm_girth"',
)


@pytest.mark.parametrize("work", WORKS)
@pytest.mark.parametrize("direction", ["down", "up"])
def test_tube_is_sound_when_it_is_begun_on_a_foundation(
    direction: str, work: str, tmp_path: Path
) -> None:
    """22 cm of chain at 18 in 10 cm are 40 stitches; an arm of 34 + 4 cm has about 68."""
    piece = tube(
        "sleeve", 'with = "chain", girth = "22 cm"', *SLEEVE, more=f'direction = "{direction}"'
    )
    made = garment(tmp_path, piece, work=WORKS[work])
    assert not made.faults()
    counts = made.piece("sleeve").counts
    assert counts[0] == 40
    assert abs(counts[-1] - 68) <= 2
    (arm,) = made.piece("sleeve").landmarks
    assert (arm.key, arm.count) == ("upper_arm_girth", counts[-1])


def test_depths_are_counted_from_the_upper_end_when_it_is_worked_upwards(tmp_path: Path) -> None:
    """40 rounds of 1 cm: the foundation lies lowest, and the upper arm at the top."""
    made = garment(
        tmp_path,
        tube("sleeve", 'with = "chain", girth = "22 cm"', *SLEEVE, more='direction = "up"'),
    )
    planned = made.piece("sleeve")
    assert planned.depths[0] == pytest.approx(400)
    assert list(planned.depths) == sorted(planned.depths, reverse=True)
    assert planned.landmarks[0].depth == pytest.approx(0)


@pytest.mark.parametrize("work", ["turned", "joined"])
def test_body_and_sleeves_go_on_from_a_yoke(work: str, tmp_path: Path) -> None:
    """The body chains the underarms in its first round; the sleeves take them up from below."""
    made = garment(
        tmp_path,
        YOKE,
        tube("body", 'on = ["yoke.body"]'),
        tube("right sleeve", 'on = ["yoke.right sleeve"]'),
        tube("left sleeve", 'on = ["yoke.left sleeve"]'),
        work=WORKS[work],
    )
    assert not made.faults()
    (first, *_) = made.plan.program.piece("body").rows
    chains = [n.times for n in first.body if isinstance(n, Chain)]
    assert chains == [chains[0], chains[0]]
    assert first.number == 1
    keys = [m.key for p in made.plan.pieces for m in p.landmarks]
    assert "bust_girth" in keys
    assert keys.count("upper_arm_girth") == 2


def test_edge_is_worked_on_stitch_by_stitch_when_it_is_not_gathered(tmp_path: Path) -> None:
    """61 stitches of the piece above, 61 of the piece below, and both edges offered."""
    made = garment(tmp_path, tube("upper", FOUNDATION), tube("lower", 'on = ["upper.hem"]'))
    assert not made.faults()
    assert set(made.piece("lower").counts) == {made.piece("upper").counts[-1]}


@pytest.mark.parametrize("work", ["turned", "joined", "spiral"])
@pytest.mark.parametrize("gather", ["0.5", "1.3", "1.5", "2", "3"])
def test_tube_is_sound_when_it_is_gathered(gather: str, work: str, tmp_path: Path) -> None:
    """Drawn in, or wider: evenly all round."""
    made = garment(
        tmp_path,
        tube("upper", FOUNDATION),
        tube("lower", f'on = ["upper.hem"], gather = {gather}'),
        work=WORKS[work],
    )
    assert not made.faults()
    wanted = made.piece("upper").counts[-1] * float(gather)
    assert abs(made.piece("lower").counts[0] - wanted) <= 0.5


def test_gathered_round_is_told_in_repeats(tmp_path: Path) -> None:
    """Two in the next, one in the next."""
    made = garment(
        tmp_path,
        tube("upper", 'with = "chain", girth = "40 cm"'),
        tube("lower", 'on = ["upper.hem"], gather = 1.5'),
    )
    (node,) = made.plan.program.piece("lower").rows[0].body
    assert isinstance(node, Repeat)
    assert node.times == 36


def test_measures_and_outline_are_those_of_the_counts(tmp_path: Path) -> None:
    """61 stitches of 5.56 mm round, folded to half."""
    made: Garment = garment(tmp_path, tube("upper", FOUNDATION))
    planned = made.piece("upper")
    girth = made.measure("upper", "girth at the start")
    assert girth.got.value == pytest.approx(planned.counts[0] * 100 / 18)
    assert planned.shape is not None
    across = [x for ring in planned.shape.outlines for x, _ in ring]
    assert max(across) - min(across) == pytest.approx(girth.got.value / 2)
    assert made.measure("upper", "length").got.value == pytest.approx(100)


def test_sections_of_two_tubes_keep_their_gauges_apart(tmp_path: Path) -> None:
    """Both call theirs "plain", and neither has the other's."""
    plain = 'name = "plain", length = "5 cm"'
    made = garment(
        tmp_path, tube("upper", FOUNDATION, plain), tube("lower", 'on = ["upper.hem"]', plain)
    )
    assert set(made.plan.gauges) == {"upper plain", "lower plain"}


REFUSED: Mapping[str, tuple[tuple[str, ...], str]] = {
    "both ways to begin": (
        (tube("a", FOUNDATION), tube("b", f'{FOUNDATION}, on = ["a.hem"]')),
        'either "with" a foundation or "on" edges',
    ),
    "neither": ((tube("a", 'girth = "34 cm"'),), 'either "with" a foundation or "on" edges'),
    "no girth": ((tube("a", 'with = "chain"'),), "needs a girth"),
    "girth on an edge": (
        (tube("a", FOUNDATION), tube("b", 'on = ["a.hem"], girth = "40 cm"')),
        'leave "girth" out',
    ),
    "no such edge": ((tube("a", FOUNDATION), tube("b", 'on = ["a.side"]')), "is no edge of"),
    "seat without a waist": (
        (tube("a", f'{FOUNDATION}, seat = {{ extra = "3 cm" }}'),),
        "has no seat",
    ),
    "measurement that is none": (
        (tube("a", f'{FOUNDATION}, body = "wirst_girth"'),),
        '"wirst_girth" is no measurement of the body',
    ),
    "measurement not taken": (
        (tube("a", f'{FOUNDATION}, body = "wrist_girth"'),),
        "is needed here and was not measured",
    ),
    "skirt worked upwards": (
        (
            tube(
                "a",
                FOUNDATION,
                more='direction = "up"\nwaist = { kind = "covered elastic", width = "6 mm" }',
            ),
        ),
        "is worked downwards",
    ),
    "hem without a length": (
        (tube("a", FOUNDATION, 'name = "a", to = "hem"'),),
        "needs a length",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_tube_is_refused_when_it_cannot_begin_or_end(case: str, tmp_path: Path) -> None:
    """In one sentence, at a key of its piece."""
    tables, told = REFUSED[case]
    with pytest.raises(InputError, match=told) as refused:
        plan(pieces_basis(tmp_path, *tables, person=body(**SOMEONE)))
    assert refused.value.faults[0].place.key.startswith("piece.")
