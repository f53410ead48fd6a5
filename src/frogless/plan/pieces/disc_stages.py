"""A disc and what goes on from it, decided: its stages, each with the counts of its rounds."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise

import numpy as np

from frogless.because import Because, Step
from frogless.design.pieces.disc import DiscChoice, DiscSection
from frogless.design.work import Work
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.edging import EDGING
from frogless.plan.landing import because_landed, land
from frogless.plan.pieces.disc_rate import MOST_IN_ONE, Growth, flat_rate, to_count, to_radius
from frogless.plan.pieces.rounds import Manner
from frogless.plan.rhythm.engine import Task, solve
from frogless.plan.sections import DEFAULT_ALLOWED, MOST_ROUNDS
from frogless.swatch import Gauge

DENSE = 0.75
"""Shaped on more than three rounds in four, a section is shaped on all of them (own choice: it
reads better than a rhythm of gaps of one and two)."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """The girth a disc is worked up to, and what is allowed of it, mm."""

    girth: float
    low: float
    high: float
    because: Because


@dataclass(frozen=True, slots=True)
class Stage:
    """A stretch of rounds in one stitch.

    Args:
        chains: of the turning chain.
        before: stitches that it begins on; 0 in the ring.
        counts: after each round.
    """

    name: str
    gauge: Gauge
    chains: int
    before: int
    counts: tuple[int, ...]
    because: Because

    @property
    def last(self) -> int:
        """Stitches that it ends with."""
        return self.counts[-1]

    @property
    def length(self) -> float:
        """Along the work, mm."""
        return len(self.counts) * self.gauge.height.value

    @property
    def girth(self) -> float:
        """Where it ends, mm."""
        return self.last * self.gauge.width.value


@dataclass(frozen=True, slots=True)
class Disc:
    """A disc as far as it is decided; `key` is that of its entry in the design."""

    basis: Basis
    choice: DiscChoice
    key: str
    manner: Manner
    growth: Growth
    wanted: Wanted | None
    stages: tuple[Stage, ...]

    @property
    def crown(self) -> Stage:
        """The disc itself."""
        return self.stages[0]

    @property
    def rounds(self) -> int:
        """Of all stages."""
        return sum(len(stage.counts) for stage in self.stages)

    @property
    def counts(self) -> tuple[int, ...]:
        """After each round of all stages."""
        return tuple(count for stage in self.stages for count in stage.counts)

    def depths(self) -> tuple[float, ...]:
        """From the middle along the work after each round, mm."""
        return tuple(accumulate(s.gauge.height.value for s in self.stages for _ in s.counts))


def decide(basis: Basis, choice: DiscChoice, key: str) -> Disc:
    """The disc and its sections.

    Raises:
        InputError: a length is missing, given twice or out of reach.
    """
    check_names(basis, (choice.name, *(s.name for s in choice.section)), f"{key}.section")
    work, prefix = work_of(basis, choice.work, key)
    gauge = basis.gauge(work.stitch, f"{prefix}.stitch")
    wanted = _wanted(basis, choice, key)
    growth, because = _growth(basis, choice, key, gauge, wanted)
    crown = Stage(choice.name, gauge, work.turning_chain, 0, growth.counts, because)
    stages = [crown]
    for i, section in enumerate(choice.section, 1):
        stages.append(
            _section(basis, section, f"{key}.section.{i}", work, tuple(stages), growth.per_round)
        )
    return Disc(basis, choice, key, manner_of(basis, work, prefix), growth, wanted, tuple(stages))


def check_names(basis: Basis, names: Sequence[str], key: str) -> None:
    """Stretches of one name cannot be told apart; the first name is the piece's own.

    Raises:
        InputError: a name comes twice, or is that of the edging.
    """
    for i, name in enumerate(names):
        if name in names[:i] or name == EDGING:
            message = f'"{name}" is what another part is called; choose another name'
            raise InputError(message, basis.place(f"{key}.{i}.name"))


def work_of(basis: Basis, own: Work | None, key: str) -> tuple[Work, str]:
    """The work of a piece, and the key where it stands."""
    return (basis.design.work, "work") if own is None else (own, f"{key}.work")


def manner_of(basis: Basis, work: Work, prefix: str) -> Manner:
    """How rounds are worked.

    Raises:
        InputError: a turning chain of none is to count.
    """
    if work.turning_chain_counts and not work.turning_chain:
        raise InputError(
            "a turning chain of 0 cannot count as a stitch; give it chains, or write "
            "turning_chain_counts = false",
            basis.place(f"{prefix}.turning_chain_counts"),
        )
    spiral = work.rounds == "spiral"
    counts = work.turning_chain_counts and not spiral
    return Manner(
        turned=work.rounds == "joined and turned",
        spiral=spiral,
        chain_counts=counts,
        on_chain=counts or work.join_into == "top of chain",
    )


def chains_of(basis: Basis, work: Work, stitch: str | None, turning_chain: int | None) -> int:
    """Chains of a section's turning chain: its own, else its stitch's, else the work's."""
    if turning_chain is not None:
        return turning_chain
    if stitch is not None and stitch != work.stitch:
        return basis.stitches[stitch].turning_chain
    return work.turning_chain


def rounds_in(basis: Basis, length: float, gauge: Gauge, key: str) -> int:
    """Whole rounds, of two numbers equally near the larger; one at the least."""
    rounds = max(math.floor(length / gauge.height.value + 0.5 + 1e-9), 1)
    if rounds > MOST_ROUNDS:
        raise InputError(
            f"{basis.show(length)} would take {rounds} rounds; at most {MOST_ROUNDS} are planned",
            basis.place(key),
        )
    return rounds


def _wanted(basis: Basis, choice: DiscChoice, key: str) -> Wanted | None:
    if (choice.radius is None) == (choice.girth is None):
        raise InputError(
            "a disc is worked to a radius or to a girth; write one of them", basis.place(key)
        )
    if choice.girth is None:
        return None
    on_body = basis.girth_wanted(choice.girth, f"{key}.girth")
    more = basis.length(choice.ease, f"{key}.ease")
    least, most = more - DEFAULT_ALLOWED, more + DEFAULT_ALLOWED
    if choice.ease_allowed is not None:
        least, most = (basis.length(t, f"{key}.ease_allowed") for t in choice.ease_allowed)
    if not least - 1e-9 <= more <= most + 1e-9:
        raise InputError(
            f"the ease of {basis.show(more)} lies outside what is allowed, {basis.show(least)} to "
            f"{basis.show(most)}",
            basis.place(f"{key}.ease"),
        )
    if on_body + more <= 0:
        raise InputError("girth and ease leave nothing", basis.place(f"{key}.ease"))
    because = basis.because_formula(choice.girth, f"{key}.girth").then(Step("ease", more))
    return Wanted(on_body + more, on_body + least, on_body + most, because)


def _growth(
    basis: Basis, choice: DiscChoice, key: str, gauge: Gauge, wanted: Wanted | None
) -> tuple[Growth, Because]:
    flat, step, width = flat_rate(gauge, choice.sides), choice.per_round, gauge.width.value
    if choice.sides is not None:
        step = choice.sides * max(round((step or flat.value * choice.lie) / choice.sides), 1)
    if wanted is None:
        text = choice.radius or ""
        radius = basis.girth_wanted(text, f"{key}.radius")
        rounds = rounds_in(basis, radius, gauge, f"{key}.radius")
        growth = to_radius(flat, choice.lie, rounds, step, choice.first)
        because = basis.because_formula(text, f"{key}.radius").then(
            Step("row_gauge", 100 / gauge.height.value, "rows per 10 cm"),
            Step("exact", radius / gauge.height.value, "rows"),
            Step("landed", rounds, "rows"),
        )
    else:
        seen = max(width, gauge.width.relative * wanted.girth)
        seen = min(seen, wanted.girth - wanted.low, wanted.high - wanted.girth) / width
        exact = wanted.girth / width
        growth = to_count(flat, choice.lie, exact, seen, step, choice.first)
        _check_allowed(basis, key, wanted, growth.counts[-1], width)
        note = f"{growth.per_round} a round" if growth.even else ""
        because = wanted.because.then(*because_landed(wanted.girth, width, growth.counts[-1], note))
    return growth, because


def _check_allowed(basis: Basis, key: str, wanted: Wanted, count: int, width: float) -> None:
    """Where no whole stitch lies within the ease that is allowed, nothing can be worked."""
    girth = count * width
    if wanted.low - 1e-6 <= girth <= wanted.high + 1e-6:
        return
    off = max(wanted.low - girth, girth - wanted.high)
    raise Impossible(
        f"the nearest count of {count} stitches makes {basis.show(girth)}, and "
        f"{basis.show(wanted.low)} to {basis.show(wanted.high)} is allowed",
        basis.place(f"{key}.ease_allowed"),
        short_stitches=1,
        short=off,
        ways_out=(f"an ease_allowed at least one stitch ({basis.show(width)}) wide",),
    )


def _section(
    basis: Basis,
    section: DiscSection,
    key: str,
    work: Work,
    above: tuple[Stage, ...],
    per_round: int,
) -> Stage:
    stitch = section.stitch or work.stitch
    if stitch not in basis.stitches:
        raise InputError(f'unknown stitch "{stitch}"', basis.place(f"{key}.stitch"))
    gauge = basis.gauge(stitch, f"{key}.stitch")
    length, because = _length(basis, section, key, sum(stage.length for stage in above))
    rounds = rounds_in(basis, length, gauge, key)
    before = above[-1].last
    because = because.then(
        Step("row_gauge", 100 / gauge.height.value, "rows per 10 cm"),
        Step("landed", rounds, "rows"),
    )
    stage = Stage(
        section.name,
        gauge,
        chains_of(basis, work, section.stitch, section.turning_chain),
        before,
        (before,) * rounds,
        because,
    )
    target = _target(basis, section, key, gauge, before, rounds)
    # How far a brim spreads is no girth to be met; it takes no round of what is left over.
    seen = max(1.0, gauge.width.relative * target) if section.lie is None else per_round / 2
    counts = shaped(before, target, rounds, per_round, seen)
    if not _narrows_well(before, counts):
        # Alike in proportion, so that the last rounds are no steeper than the first.
        ratio = target / before
        counts = tuple(round(before * ratio ** (r / rounds)) for r in range(1, rounds + 1))
    if not _narrows_well(before, counts):
        raise _too_steep(basis, section, key, stage, target)
    return replace(stage, counts=counts)


def _narrows_well(before: int, counts: Sequence[int]) -> bool:
    """One decrease in three stitches is the most that lies well (common practice)."""
    return all(a - b <= math.ceil(a * MOST_IN_ONE) for a, b in pairwise((before, *counts)))


def _too_steep(
    basis: Basis, section: DiscSection, key: str, stage: Stage, target: int
) -> Impossible:
    before, rounds = stage.before, len(stage.counts)
    width, height = stage.gauge.width.value, stage.gauge.height.value
    reached = math.ceil(before * (1 - MOST_IN_ONE) ** rounds)
    needed = math.ceil(math.log(target / before) / math.log(1 - MOST_IN_ONE))
    return Impossible(
        f'section "{section.name}" narrows from {before} stitches to {target} in {rounds} rounds; '
        "with one decrease in three stitches, the most that lies well, it comes to "
        f"{reached} ({basis.show(reached * width)})",
        basis.place(f"{key}.girth"),
        short_stitches=reached - target,
        short=(reached - target) * width,
        ways_out=(
            f"a longer section: {needed} rounds ({basis.show(needed * height)})",
            f"a girth of {basis.show(reached * width)} where it ends",
        ),
    )


def _length(basis: Basis, section: DiscSection, key: str, reached: float) -> tuple[float, Because]:
    """How long a section is, mm."""
    if (section.length is None) == (section.to is None):
        raise InputError(
            f'section "{section.name}" needs a length or a depth to go to; write one of them',
            basis.place(key),
        )
    if section.length is not None:
        at = f"{key}.length"
        return basis.girth_wanted(section.length, at), basis.because_formula(section.length, at)
    text, at = section.to or "", f"{key}.to"
    end = basis.girth_wanted(text, at)
    if end <= reached:
        raise InputError(
            f'section "{section.name}" is to end {basis.show(end)} from the middle, and it begins '
            f"at {basis.show(reached)}",
            basis.place(at),
        )
    return end - reached, basis.because_formula(text, at)


def _target(
    basis: Basis, section: DiscSection, key: str, gauge: Gauge, before: int, rounds: int
) -> int:
    if section.girth is not None and section.lie is not None:
        raise InputError(
            f'section "{section.name}" has a girth and a lie; write one of them', basis.place(key)
        )
    if section.girth is not None:
        girth = basis.girth_wanted(section.girth, f"{key}.girth")
        return max(land(girth, gauge.width.value).count, 3)
    if section.lie is not None:
        return before + round(section.lie * flat_rate(gauge).value * rounds)
    return before


def shaped(before: int, target: int, rounds: int, step: int, seen: float) -> tuple[int, ...]:
    """Counts after each round of a section that leads from one count to another.

    So many stitches at a time as the disc's rounds add, on rounds spread by the planner; the last
    of them takes what is left over, when that can be seen. What needs nearly every round changes on
    all of them, as evenly as can be.

    Args:
        seen: stitches that the tape cannot see.
    """
    change = abs(target - before)
    sign = 1 if target > before else -1
    if change == 0:
        return (before,) * rounds
    if change > DENSE * step * rounds:
        amounts = [change * r // rounds - change * (r - 1) // rounds for r in range(1, rounds + 1)]
        return tuple(accumulate((sign * n for n in amounts), initial=before))[1:]
    times = max(math.floor(change / step + 0.5), 0)
    parts = [step] * times
    if abs(change - step * times) > seen or not parts:
        whole = change // step
        parts = [step] * whole + ([change % step] if change % step else [])
    each = sign * sum(parts) / len(parts)
    wanted = np.linspace(before, before + sign * sum(parts), rounds + 1)
    found = solve(Task(wanted, before, each, len(parts), indifference=abs(each)))
    at = found.rhythm.rounds if found else tuple(range(1, len(parts) + 1))
    by_round = dict(zip(at, parts, strict=True))
    amounts = [sign * by_round.get(r, 0) for r in range(1, rounds + 1)]
    return tuple(accumulate(amounts, initial=before))[1:]


def straights(disc: Disc) -> Iterator[tuple[int, Stage]]:
    """Stages that neither widen nor narrow, with their number."""
    for i, stage in enumerate(disc.stages):
        if stage.before == stage.last:
            yield i, stage
