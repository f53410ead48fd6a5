"""The sections of a design as measured stretches: where each ends, how many rounds it has, what it is wanted to follow."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
import numpy.typing as npt

from frogless.because import Because, Step
from frogless.design.document import Section
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.swatch import Gauge
from frogless.units import Measured

# What is allowed about a wanted girth when the author does not say: an inch either way, and for a hem
# without a body girth one part in twenty-five (own choice: half a step of the usual multiples fits in).
DEFAULT_ALLOWED = 25.4
DEFAULT_HEM_SHARE = 0.04

# The search for a rhythm grows with the third power of the rounds: 300 take some seconds (measured).
MOST_ROUNDS = 300

# How a section's `to` reads the body: the girth it meets and the depth below the waist.
LANDMARKS = {
    "high hip": ("high_hip_girth", "waist_to_high_hip"),
    "hip": ("hip_girth", "waist_to_hip"),
}


@dataclass(frozen=True, slots=True)
class Target:
    """A wanted girth with its allowed range, mm, and the steps that led to it."""

    wanted: float
    low: float
    high: float
    because: Because
    ease: float = 0.0
    fuller: bool = True


@dataclass(frozen=True, slots=True)
class Span:
    """One section, measured.

    Args:
        key: where it stands in the design, for messages.
        start_depth, end_depth: worn depth its rounds really cover, mm; `end_wanted` the depth asked for.
        rounds: rounds in it. height: worn height of one round, mm.
        target: wanted girth at its end; None for a straight section.
        knots: (depth, girth) the wanted profile runs through inside the section, beyond its two ends.
        floors: (depth, girth) below which the garment may not fall at a landmark it passes.
    """

    section: Section
    key: str
    gauge: Gauge
    height: float
    start_depth: float
    end_depth: float
    end_wanted: float
    rounds: int
    target: Target | None
    because: Because
    knots: tuple[tuple[float, float], ...] = field(default=())
    floors: tuple[tuple[float, float], ...] = field(default=())

    @property
    def width(self) -> float:
        """Width of one stitch, mm."""
        return self.gauge.width.value

    def depths(self) -> npt.NDArray[np.float64]:
        """(R + 1,) float64: worn depth after each round, the start first, mm."""
        return self.start_depth + self.height * np.arange(self.rounds + 1)

    def outline(self, before: float) -> tuple[tuple[float, float], ...]:
        """(depth, girth) between which the wanted profile runs straight, from `before` through the knots, mm."""
        after = self.target.wanted if self.target else before
        ends = [(self.start_depth, before), (max(self.end_wanted, self.start_depth + 1e-9), after)]
        return tuple(sorted([*ends, *self.knots]))

    def profile(self, before: float) -> npt.NDArray[np.float64]:
        """(R + 1,) float64: wanted girth after each round, mm."""
        depths, girths = zip(*self.outline(before), strict=True)
        wanted: npt.NDArray[np.float64] = np.interp(self.depths(), depths, girths)
        return wanted

    def floor(self) -> npt.NDArray[np.float64] | None:
        """(R + 1,) float64: least girth after each round, mm, −inf where no landmark asks; None: none does."""
        if not self.floors:
            return None
        least = np.full(self.rounds + 1, -np.inf)
        for depth, girth in self.floors:
            least[int(abs(self.depths() - depth).argmin())] = girth
        return least


def worn_height(basis: Basis, gauge: Gauge) -> float:
    """Height of one round as worn, mm: worn = worked × (1 + growth)."""
    grown = basis.growth.value if basis.growth else 0.0
    return gauge.height.value * (1 + grown)


def target(
    basis: Basis, girth: str, ease: str, allowed: tuple[str, str] | None, key: str
) -> Target:
    """A girth formula, its ease and what is allowed about it.

    Raises:
        InputError: a formula is wrong, or the allowed ease is upside down.
    """
    base = basis.girth_wanted(girth, f"{key}.girth")
    more = basis.length(ease, f"{key}.ease")
    because = basis.because_formula(girth, f"{key}.girth")
    if more:
        because = because.then(Step("ease", more))
    low, high = base + more - DEFAULT_ALLOWED, base + more + DEFAULT_ALLOWED
    if allowed is not None:
        low, high = (base + basis.length(a, f"{key}.ease_allowed") for a in allowed)
        if low > high:
            raise InputError(
                "the first allowed ease is larger than the second; write the smaller one first",
                basis.place(f"{key}.ease_allowed"),
            )
        if not low - 1e-9 <= base + more <= high + 1e-9:
            raise InputError(
                f'the ease "{ease}" lies outside the ease allowed, "{allowed[0]}" to "{allowed[1]}"',
                basis.place(f"{key}.ease"),
            )
    return Target(base + more, low, high, because, more, more >= 0)


def start_target(basis: Basis) -> Target:
    """The wanted girth of the first round."""
    start = basis.design.start
    return target(basis, start.girth, start.ease, start.ease_allowed, "start")


def spans(basis: Basis, foundation_height: float) -> tuple[Span, ...]:
    """All sections, measured from the top edge down. The last one has to reach the hem.

    Raises:
        InputError: a section ends above its start, or the sections do not end at the hem.
    """
    sections = basis.design.section
    if sections[-1].to != "hem":
        raise InputError(
            f'the last section, "{sections[-1].name}", has to end with to = "hem"',
            basis.place(f"section.{len(sections)}.to"),
        )
    found: list[Span] = []
    depth = foundation_height
    for i, section in enumerate(sections):
        # The first section is as long as its author says with the foundation round included.
        origin = depth if i else 0.0
        span = _span(basis, section, f"section.{i + 1}", depth, origin)
        found.append(span)
        depth = span.end_depth
    return tuple(found)


def _span(basis: Basis, section: Section, key: str, start: float, origin: float) -> Span:
    gauge = basis.gauge(section.stitch or basis.design.work.stitch, f"{key}.stitch")
    height = worn_height(basis, gauge)
    end, because = _end(basis, section, key, origin)
    if end <= start:
        message = (
            f'section "{section.name}" would end {basis.show(end)} below the top edge, but it only begins '
            f"at {basis.show(start)}; make it end lower, or the sections above it shorter"
        )
        raise InputError(message, basis.place(key))
    rounds = max(round((end - start) / height), 1)
    if rounds > MOST_ROUNDS:
        message = (
            f'section "{section.name}" would take {rounds} rounds; at most {MOST_ROUNDS} are planned in one '
            "section: make it shorter, or divide it into several"
        )
        raise InputError(message, basis.place(key))
    worked = start - (0.0 if section.length is None else origin)
    because = because.then(
        *((Step("worked", worked),) if worked else ()),
        Step("row_gauge", 100 / height, "rows per 10 cm"),
        Step("exact", (end - start) / height, "rows"),
        Step("landed", rounds, "rows"),
    )
    span = Span(
        section, key, gauge, height, start, start + rounds * height, end, rounds,
        _end_target(basis, section, key), because,
    )  # fmt: skip
    return _with_high_hip(basis, span)


def _end(basis: Basis, section: Section, key: str, origin: float) -> tuple[float, Because]:
    """Depth at which a section is to end, mm, and why. `origin`: where its own length is counted from."""
    above = basis.length(basis.design.start.above_waist, "start.above_waist")
    if (section.to is None) == (section.length is None):
        raise InputError(
            f'section "{section.name}" needs either "to" or "length", and not both',
            basis.place(key),
        )
    if section.length is not None:
        long = basis.girth_wanted(section.length, f"{key}.length")
        return origin + long, basis.because_formula(section.length, f"{key}.length")
    if section.to == "hem":
        text = basis.design.garment.length
        return basis.girth_wanted(text, "garment.length"), basis.because_formula(
            text, "garment.length"
        )
    assert section.to is not None
    down = LANDMARKS[section.to][1]
    because = basis.because_formula(down, f"{key}.to")
    if above:
        because = because.then(Step("above_waist", above))
    return above + basis.length(down, f"{key}.to"), because


def foundation_height(basis: Basis) -> float:
    """Worn height of the foundation round, mm: that of its stitch; a chain has next to none."""
    made_of = basis.stitches[basis.design.start.made_of]
    if made_of.kind != "foundation":
        return 0.0
    main = basis.gauge(basis.design.work.stitch, "work.stitch")
    ratio = made_of.height.typical / basis.stitches[main.stitch].height.typical
    return worn_height(basis, main) * ratio


def _end_target(basis: Basis, section: Section, key: str) -> Target | None:
    if section.shape == "straight":
        if section.girth is not None:
            raise InputError(
                f'section "{section.name}" is straight and cannot have a girth of its own; '
                'leave "girth" out or write shape = "shaped"',
                basis.place(f"{key}.girth"),
            )
        return None
    girth = section.girth
    if girth is None and section.to in LANDMARKS:
        girth = LANDMARKS[str(section.to)][0]
    if girth is None:
        raise InputError(
            f'shaped section "{section.name}" needs a "girth" to be shaped to', basis.place(key)
        )
    aim = target(basis, girth, section.ease, section.ease_allowed, key)
    if section.to == "hem" and section.ease_allowed is None:
        give = max(DEFAULT_ALLOWED, aim.wanted * DEFAULT_HEM_SHARE)
        aim = replace(aim, low=aim.wanted - give, high=aim.wanted + give)
    return aim


def _with_high_hip(basis: Basis, span: Span) -> Span:
    """The span with the high hip in its profile, when it was measured and a section to the hip passes it.

    The garment may not be smaller there than the body, unless the design allows negative ease at the hip.
    """
    girth, down = (basis.body.get(key) for key in LANDMARKS["high hip"])
    if span.section.to != "hip" or span.target is None or not (girth and down):
        return span
    depth = basis.length(basis.design.start.above_waist, "start.above_waist") + down.value.value
    if not span.start_depth < depth < span.end_wanted:
        return span
    share = (depth - span.start_depth) / (span.end_wanted - span.start_depth)
    before = start_target(basis).ease
    ease = before + share * (span.target.ease - before)
    least = girth.value.value + least_ease(span.target)
    # The profile does not dip on its way: an opening wider than the high hip stays as it is.
    least_wanted = min(start_target(basis).wanted, span.target.wanted)
    knot = (depth, max(girth.value.value + ease, least, least_wanted))
    return replace(span, knots=(knot,), floors=((depth, least),))


def least_ease(target: Target) -> float:
    """The least ease at a landmark that is passed on the way: none, or what the design allows below none, mm."""
    return min(0.0, target.low - target.wanted + target.ease)


def girth_of(count: int, gauge: Gauge) -> Measured:
    """The girth a count makes, mm, with the gauge's uncertainty."""
    return gauge.width.times(count)
