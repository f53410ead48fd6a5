"""Yokes for any body at any gauge: all lines arrive on the same round, and no stitch is lost."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from sample_designs import swatch
from sample_yokes import YokeDesign, continued, edge, yoke_basis

from frogless.design.pieces.raglan import RaglanChoice
from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.errors import Impossible
from frogless.fabric.claims import left_over
from frogless.fabric.expand import expand
from frogless.fabric.geometry import marked_parent, shaping_points
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.raglan import plan_raglan
from frogless.plan.pieces.raglan_counts import Counts, choices, choose, is_flat, mixed, strays
from frogless.plan.pieces.round_yoke import plan_round_yoke, ring_places
from frogless.plan.pieces.yoke import Yoke, yoke
from frogless.rows.nodes import Program
from frogless.stitches.load import dictionary

WORKS = (
    'rounds = "joined and turned"\nturning_chain = 3',
    'rounds = "joined"\nturning_chain = 3',
    'rounds = "joined and turned"\nturning_chain = 3\nturning_chain_counts = true',
)


@dataclass(frozen=True, slots=True)
class Case:
    """A body, a gauge and a yoke: girths in mm, stitches and rows in 10 cm."""

    bust: int
    arm: int
    neck: int
    depth: int
    underarm: int
    raised: int
    stitches: int
    rows: int
    add: int
    work: str

    def keys(self) -> dict[str, object]:
        """Of the yoke."""
        lengths = {
            "neck": self.neck,
            "depth": self.depth,
            "underarm": self.underarm,
            "back_raise": self.raised,
        }
        return {key: f"{mm} mm" for key, mm in lengths.items()}

    def basis(self, construction: str, **more: object):  # noqa: ANN201
        """The basis and its entry."""
        design = YokeDesign(construction, {**self.keys(), **more}, self.work)
        sample = swatch(self.stitches, self.rows, width="20 cm", height="20 cm")
        with tempfile.TemporaryDirectory() as folder:
            return yoke_basis(
                Path(folder), design, bust=f"{self.bust} mm", arm=f"{self.arm} mm", sample=sample
            )

    def raglan(self) -> tuple[Yoke, Made]:
        """A raglan yoke, before and after it is planned."""
        basis, entry = self.basis("raglan yoke", add=self.add)
        assert isinstance(entry, RaglanChoice)
        return yoke(basis, entry, "piece.1"), plan_raglan(basis, entry, "piece.1", {})


CASES = st.builds(
    Case,
    bust=st.integers(750, 1450),
    arm=st.integers(240, 480),
    neck=st.integers(480, 700),
    depth=st.integers(170, 320),
    underarm=st.integers(0, 100),
    raised=st.sampled_from([0, 0, 20, 40]),
    stitches=st.integers(24, 48),
    rows=st.integers(14, 44),
    add=st.sampled_from([1, 2]),
    work=st.sampled_from(WORKS),
)


def conserved(made: Made) -> None:
    """Every place of the yoke is worked once, by the yoke, the body or a sleeve."""
    fabric = expand(Program(continued(made)), dictionary())
    for name, rows in fabric.pieces.items():
        for row in rows:
            assert (row.overrun, row.places) == (0, row.row.count), (name, row.row.number)
            assert ((row.used > 0) + row.left == 1).all()
        if name != "yoke":
            assert left_over(rows) == ()
    assert tuple(row.places for row in fabric.pieces["yoke"]) == made.plans[0].counts


@settings(max_examples=40)
@given(case=CASES)
def test_body_and_sleeves_arrive_on_the_same_round_when_a_raglan_is_planned(case: Case) -> None:
    """The counts add up, each line keeps its corner, the girths are within their ease."""
    try:
        shell, made = case.raglan()
    except Impossible:
        return
    conserved(made)
    yoke_rows = expand(Program(made.pieces), dictionary()).pieces["yoke"]
    assert marked_parent(yoke_rows).faults == ()
    assert {len(shaping_points(row)) for row in yoke_rows} <= {0, 4}
    body, sleeve = edge(made, "body"), edge(made, "right sleeve")
    parted = body.count + 2 * sleeve.count - 4 * shell.underarm
    assert parted == made.plans[0].counts[-1]
    assert shell.bust.allows(body.length.value)
    assert shell.arm.allows(sleeve.length.value)


@settings(max_examples=30)
@given(case=CASES)
def test_no_choice_is_better_when_all_are_tried_apart(case: Case) -> None:
    """A plain search over every pair of counts finds none with fewer kinds of rounds or nearer."""
    basis, entry = case.basis("raglan yoke", add=case.add)
    shell = yoke(basis, entry, "piece.1")
    found = choices(shell, None, case.add)
    every = list(_searched(shell, case.add))
    assert bool(found) == bool(every)
    assume(found)
    least = min(stray for stray, _ in every)
    fewest = min(kinds for stray, kinds in every if stray <= least + 1 + 1e-9)
    nearest = min(s for s, kinds in every if kinds == fewest)
    chosen = choose(found)
    assert len(chosen.mix) == fewest
    assert abs(chosen.stray - nearest) < 1e-5


def _searched(shell: Yoke, add: int):  # noqa: ANN202
    """Stray and kinds of rounds of every choice, from loops of their own."""
    width, under = shell.width, shell.underarm
    half = int(shell.neck / width / 2 + 0.5)
    fronts = [f for f in range(1, 500) if shell.bust.allows(2 * (f + under) * width)]
    sleeves = [s for s in range(1, 300) if shell.arm.allows((s + under) * width)]
    necks = [
        (n - s, s)
        for n in range(half - 2, half + 3)
        for s in range(1, n)
        if (n - s) / 8 <= s <= (n - s) / 2 and n - s >= 4
    ]
    for front, sleeve, (neck_front, neck_sleeve) in product(fronts, sleeves, necks):
        grown = front - neck_front, sleeve - neck_sleeve
        if min(grown) >= 0 and not grown[0] % 2 and not grown[1] % 2:
            needs = grown[0] // 2, grown[1] // 2
            counts = Counts(neck_front, neck_sleeve, front, sleeve)
            kinds = _kinds(*needs, shell.rounds, add)
            alone = _kinds_without_both(*needs, shell.rounds, add)
            if kinds is not None and (alone is not None or is_flat(shell, counts)):
                yield strays(shell, counts, None)[0], kinds


def _kinds(body: int, sleeve: int, rounds: int, add: int) -> int | None:
    """The fewest kinds of rounds, by trying every number of each kind."""
    more, less = max(body, sleeve), min(body, sleeve)
    for both in range(less // 2 + 1 if add == 2 else 1):
        rest, more_left = less - 2 * both, more - 2 * both
        ways = [
            (full > 0) + (double > 0) + (single > 0) + (both > 0)
            for double in range(rest + 1 if add == 2 else 1)
            if (full := rest - double) >= 0
            and (single := more_left - full - 2 * double) >= 0
            and both + full + double + single <= rounds
        ]
        if ways:
            return min(ways)
    return None


def _kinds_without_both(body: int, sleeve: int, rounds: int, add: int) -> bool | None:
    """True when the rounds do without adding two on both sides, else None."""
    more, less = max(body, sleeve), min(body, sleeve)
    doubles = min(less, more - less) if add == 2 else 0
    return True if more - doubles <= rounds else None


@given(needs=st.tuples(st.integers(0, 60), st.integers(0, 60)), rounds=st.integers(1, 60))
def test_rounds_are_mixed_in_the_fewest_kinds(needs: tuple[int, int], rounds: int) -> None:
    """For any needs, also when two stitches at once are allowed."""
    for add in (1, 2):
        found = mixed(needs, rounds, add)
        fewest = _kinds(*needs, rounds, add)
        assert (None if found is None else len(found)) == fewest
        gained = [sum(kind[s] * times for kind, times in found or ()) for s in (0, 1)]
        assert found is None or tuple(gained) == needs


@settings(max_examples=40)
@given(case=CASES, rings=st.integers(3, 6), multiple=st.integers(1, 12))
def test_rings_end_on_their_multiples_when_a_round_yoke_is_planned(
    case: Case, rings: int, multiple: int
) -> None:
    """Every band is a multiple, no yoke is flatter than flat, nothing is lost."""
    basis, entry = case.basis("round yoke", rings=rings, multiple=multiple)
    assert isinstance(entry, RoundYokeChoice)
    try:
        made = plan_round_yoke(basis, entry, "piece.1", {})
    except Impossible:
        return
    conserved(made)
    plan = made.plans[0]
    rounds = plan.counts if not case.raised else ()
    assert all(count % multiple == 0 for count in rounds)
    assert plan.counts[-1] % multiple == 0
    assert plan.sections[0].fullness <= 1 + 1e-9


@given(places=st.integers(4, 400), share=st.floats(0.05, 1.0), ring=st.integers(0, 3))
def test_places_of_a_ring_are_even_and_apart(places: int, share: float, ring: int) -> None:
    """Each takes one increase; gaps differ by one at most."""
    more = max(int(places * share), 1)
    at = ring_places(places, more, ring)
    gaps = np.diff([*at, at[0] + places])
    assert at[0] >= 0
    assert at[-1] < places
    assert gaps.min() >= 1
    assert int(gaps.max() - gaps.min()) <= 1
