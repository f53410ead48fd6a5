"""A skirt is refused only when there is none: against every pair of counts, tried one by one."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass
from pathlib import Path

from hypothesis import event, given, settings
from hypothesis import strategies as st
from sample_designs import Design, basis, body, section, swatch, table

from frogless.errors import Impossible
from frogless.plan.make import plan

WIDTH = 100 / 18
SLACK = 1e-6
TAKEN = (2, 4, 6, 8, 10, 12, 16, 24)


@dataclass(frozen=True, slots=True)
class Skirt:
    """A waist and a hip, what is allowed at both (mm), how it is shaped, what it ends in."""

    waist: int
    hip: int
    rounds: int
    start: tuple[int, int]
    end: tuple[int, int]
    points: int | str
    add: int
    every: int
    multiple: int

    @property
    def body(self) -> str:
        """The body file; a round is a centimetre high."""
        return body(
            waist_girth=f"{self.waist} mm",
            hip_girth=f"{self.hip} mm",
            waist_to_hip=f"{self.rounds} cm",
        )

    @property
    def design(self) -> str:
        """The design file: shaped to the hip, straight to a hem that has to suit its edging."""
        hip = section(
            "to the hip",
            shape="shaped",
            to="hip",
            ease=f"{self.end[0]} mm",
            ease_allowed=tuple(f"{mm} mm" for mm in self.end),
            points=self.points,
            add=self.add,
            every=self.every,
        )
        edging = table(
            "edging",
            pattern="picot_group",
            hook="2 mm",
            parameters={"singles": self.multiple},
            correction_round="never",
        )
        low, high = self.start
        allowed = f'ease_allowed = ["{low} mm", "{high} mm"]'
        start = f'with = "chain"\ngirth = "waist_girth"\n{allowed}'
        return Design((hip, section("to the hem", to="hem")), start=start, tables=(edging,)).text

    def can_be(self, points: int, add: int, before: int, after: int) -> bool:
        """Whether counts are allowed, reached by the shaping, and what the edging needs."""
        shapings = len(range(1, self.rounds + 1, self.every))
        return (
            self.waist + self.start[0] - SLACK <= before * WIDTH
            and before * WIDTH <= self.waist + self.start[1] + SLACK
            and self.hip + self.end[0] - SLACK <= after * WIDTH
            and after * WIDTH <= self.hip + self.end[1] + SLACK
            and (after - before) % (points * add) == 0
            and abs(after - before) // (points * add) <= shapings
            and 3 * points <= min(before, after)
            and after % self.multiple == 0
        )

    def can_be_at_all(self) -> bool:
        """Whether any number of points leads from any count at the waist to any at the hip."""
        return any(
            self.can_be(points, self.add, before, after)
            for points in (TAKEN if isinstance(self.points, str) else (self.points,))
            for before in range(90, 200)
            for after in range(130, 240)
        )


@st.composite
def skirts(draw: st.DrawFn) -> Skirt:
    """Some of them can be, most cannot."""
    return Skirt(
        waist=draw(st.integers(600, 1000)),
        hip=draw(st.integers(800, 1200)),
        rounds=draw(st.integers(12, 26)),
        start=(draw(st.integers(-20, 0)), draw(st.integers(0, 20))),
        end=(draw(st.integers(0, 10)), draw(st.integers(20, 60))),
        points=draw(st.sampled_from([1, 2, 3, 4, 5, 8, 12, 24, 40, "auto"])),
        add=draw(st.sampled_from([1, 2])),
        every=draw(st.sampled_from([1, 1, 2, 3])),
        multiple=draw(st.sampled_from([1, 1, 1, 1, 5, 7, 12])),
    )


@settings(max_examples=80, deadline=None)
@given(skirts())
def test_skirt_is_refused_only_when_there_is_none(skirt: Skirt) -> None:
    """And planned only inside what is allowed."""
    sample = swatch(27, 15, width="15 cm", height="15 cm")
    with tempfile.TemporaryDirectory() as folder:
        known = basis(Path(folder), skirt.design, skirt.body, sample)
        try:
            planned = plan(known)
        except Impossible:
            event("refused")
            assert not skirt.can_be_at_all()
            return
    event("planned")
    first, *_ = planned.sections
    points, add = (first.chosen.points, first.chosen.add) if first.chosen else (1, 1)
    assert skirt.can_be(points, add, first.count_before, first.count_after)
