"""Round yokes: rings on their multiples, spread evenly and staggered, never flatter than flat."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import numpy as np
import pytest
from sample_yokes import YokeDesign, continued, edge, yoke_basis

from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.errors import Impossible, InputError
from frogless.fabric.expand import expand
from frogless.fabric.geometry import shaping_points
from frogless.plan.model import PiecePlan, Plan
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.round_yoke import plan_round_yoke, ring_counts, ring_places
from frogless.proof.checks import edges, rows, shaping
from frogless.proof.model import Subject
from frogless.rows.nodes import Program
from frogless.stitches.load import dictionary

KEYS: Mapping[str, object] = {
    "neck": "57.5 cm",
    "depth": "22 cm",
    "ease": "8 cm",
    "arm_ease": "4 cm",
    "underarm": "3.75 cm",
    "multiple": 6,
}
WORKS = (
    'rounds = "joined and turned"\nturning_chain = 3',
    'rounds = "joined"\nturning_chain = 3',
    'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = true',
)
CHECKS = (
    rows.check_places,
    rows.check_repeats,
    rows.check_counts,
    rows.check_planned,
    rows.check_rounds,
    rows.check_numbers,
    shaping.check_shaping_rounds,
    shaping.check_markers,
    edges.check_begins,
)


def planned(folder: Path, work: str = WORKS[0], **keys: object) -> Made:
    """A round yoke, 16 stitches and 10 rounds in 10 cm."""
    design = YokeDesign("round yoke", {**KEYS, **keys}, work)
    basis, entry = yoke_basis(folder, design)
    assert isinstance(entry, RoundYokeChoice)
    return plan_round_yoke(basis, entry, "piece.1", {})


def faults(made: Made) -> dict[str, str]:
    """What the proof has against a yoke with a body and sleeves worked onto it, by check."""
    pieces = continued(made)
    others = tuple(
        PiecePlan(p.name, "panel", tuple(row.count for row in p.rows)) for p in pieces[1:]
    )
    program = Program(pieces)
    fabric = expand(program, dictionary())
    plan = Plan((*made.plans, *others), {}, (), program)
    subject = Subject(plan, program, fabric, None, dictionary(), {})  # type: ignore[arg-type]
    found = (check(subject) for check in CHECKS)
    return {each.name: "; ".join(each.faults) for each in found if each.faults}


@pytest.mark.parametrize("raised", ["0 cm", "2 cm"])
@pytest.mark.parametrize("rings", [3, 4, 5])
@pytest.mark.parametrize("work", WORKS)
def test_yoke_body_and_sleeves_are_sound_when_worked(
    work: str, rings: int, raised: str, tmp_path: Path
) -> None:
    """Any number of rings, the back raised or not."""
    assert not faults(planned(tmp_path, work, rings=rings, back_raise=raised))


def test_rings_lie_in_the_middle_of_their_shares_when_not_placed(tmp_path: Path) -> None:
    """22 rounds in four: 2.75, 8.25, 13.75 and 19.25."""
    steps = np.diff(planned(tmp_path).plans[0].counts)
    assert (np.flatnonzero(steps) + 1).tolist() == [2, 8, 13, 19]
    assert steps[steps > 0].tolist() == [42, 42, 36, 42]


def test_rings_lie_where_the_author_wants_them(tmp_path: Path) -> None:
    """At 5, 11 and 18 cm."""
    made = planned(tmp_path, at=("5 cm", "11 cm", "18 cm"), multiple=1)
    steps = np.diff(made.plans[0].counts)
    assert (np.flatnonzero(steps) + 1).tolist() == [5, 11, 18]


@pytest.mark.parametrize("at", [("0 cm", "5 cm"), ("8 cm", "5 cm"), ("5 cm", "40 cm")])
def test_rings_are_refused_when_they_lie_nowhere(at: tuple[str, ...], tmp_path: Path) -> None:
    """Above the yoke, before one another, below it."""
    with pytest.raises(InputError, match="each needs a round of its own"):
        planned(tmp_path, at=at)


def test_increases_are_even_and_staggered_when_ringed(tmp_path: Path) -> None:
    """Gaps differ by one at most in each ring; two rings begin at different parts of a gap."""
    made = planned(tmp_path)
    for row in expand(Program(made.pieces), dictionary()).pieces["yoke"]:
        places = sorted(int(row.first[group[0]]) for group in shaping_points(row))
        if places:
            gaps = np.diff([*places, places[0] + row.used.size])
            assert int(gaps.max() - gaps.min()) <= 1
    assert ring_places(120, 30, 0)[0] == 1
    assert ring_places(120, 30, 1)[0] == 3


def test_places_are_clear_of_the_chain_when_it_counts() -> None:
    """Its place takes one stitch only; every other may take two."""
    assert ring_places(10, 9, 0, first=1) == tuple(range(1, 10))


@pytest.mark.parametrize(
    ("neck", "last", "rings", "multiple", "counts"),
    [
        (92.0, 252, 4, 6, (90, 132, 174, 210, 252)),
        (92.0, 252, 4, 1, (92, 132, 172, 212, 252)),
        (80.0, 240, 5, 8, (80, 112, 144, 176, 208, 240)),
        (100.0, 160, 3, 10, (100, 120, 140, 160)),
    ],
)
def test_counts_are_multiples_nearest_to_the_line(
    neck: float, last: int, rings: int, multiple: int, counts: tuple[int, ...]
) -> None:
    """A straight line from the neck to where it parts."""
    assert ring_counts(neck, last, rings, multiple) == counts


def test_parts_are_multiples_together_when_a_pattern_asks(tmp_path: Path) -> None:
    """Twice front and sleeve; the girths stay within their ease."""
    made = planned(tmp_path, multiple=16)
    assert made.plans[0].counts[-1] % 16 == 0
    body, sleeve = edge(made, "body"), edge(made, "right sleeve")
    assert abs(body.length.value - 1000) <= 25.4
    assert abs(sleeve.length.value - 360) <= 25.4


def test_multiple_is_refused_when_no_ease_lets_it(tmp_path: Path) -> None:
    """160 and 58 to the stitch are 252, no multiple of 16."""
    narrow = {"ease_allowed": ("8 cm", "8 cm"), "arm_ease_allowed": ("4 cm", "4.5 cm")}
    with pytest.raises(Impossible, match="multiple of 16"):
        planned(tmp_path, multiple=16, **narrow)


def test_yoke_is_refused_when_it_would_ruffle(tmp_path: Path) -> None:
    """160 stitches in 12 rounds are 13.5 a round, 10.05 lie flat."""
    with pytest.raises(Impossible, match=r"13\.5 a round; more than 10\.1 ruffle") as caught:
        planned(tmp_path, depth="12 cm")
    assert caught.value.ways_out[0] == "17 rounds, a depth of 17 cm"


def test_yoke_is_refused_when_a_ring_has_too_few_stitches(tmp_path: Path) -> None:
    """One ring from 92 to 252."""
    with pytest.raises(Impossible, match="more than two into each"):
        planned(tmp_path, rings=1)


def test_yoke_is_refused_when_the_neck_is_too_wide(tmp_path: Path) -> None:
    """Rings only widen."""
    with pytest.raises(Impossible, match="wider than the 252"):
        planned(tmp_path, neck="170 cm")


def test_neck_is_shared_as_the_yoke_parts_when_raised(tmp_path: Path) -> None:
    """Half the back's share and the sleeve's: 13 or 14 and 18 of 90."""
    made = planned(tmp_path, back_raise="2 cm")
    there, over, back = made.pieces[0].rows[1:4]
    assert over.count == there.count + back.count
    assert 60 <= over.count <= 64
