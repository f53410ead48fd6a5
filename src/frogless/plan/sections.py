"""The sections of a design as measured stretches: where each ends, how many rounds it has.

And what each is wanted to follow: a target at its end, and landmarks that it passes on its way.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

import numpy as np
import numpy.typing as npt

from frogless.because import Because, Step
from frogless.design.pieces.tube import Section
from frogless.errors import InputError
from frogless.plan import flare, through
from frogless.plan.basis import Basis
from frogless.plan.patterned import Patterned
from frogless.plan.rhythm.engine import on_right_side
from frogless.swatch import Gauge

# What is allowed about a wanted girth when the author does not say: an inch either way, and for a
# hem without a body girth one part in twenty-five (own choice: half a step of the usual multiples
# fits in).
DEFAULT_ALLOWED = 25.4
DEFAULT_HEM_SHARE = 0.04

# A girth that is given is met to the last bit of a float, mm.
GIVEN = 1e-3

# More is a slip of the pen, or a section that is better told in two (own choice).
MOST_ROUNDS = 400

# How a section's `to` reads the body: the girth it meets and the depth below the waist.
LANDMARKS = {
    "high hip": ("high_hip_girth", "waist_to_high_hip"),
    "hip": ("hip_girth", "waist_to_hip"),
}


@dataclass(frozen=True, slots=True)
class Target:
    """A wanted girth with its allowed range, mm, and the steps that led to it.

    Args:
        ease: what was added to the girth that the formula gives, mm.
        least_ease: the least ease the author allows on the way to it, mm, never above zero.
        asked_ease: the least ease the author asks for, mm; above zero where the garment may not
            lie on the body.
        fuller: of two counts equally near, the larger.
        multiple: what the count has to be a multiple of, for the sake of gores.
    """

    wanted: float
    low: float
    high: float
    because: Because
    ease: float = 0.0
    least_ease: float = 0.0
    asked_ease: float = 0.0
    fuller: bool = True
    multiple: int = 1


@dataclass(frozen=True, slots=True)
class Floor:
    """The least girth, mm, that there has to be after a round of a section, for a body's sake.

    Args:
        key: of the body's girth. round: counted from the section's start, 0 before its first round.
        depth: of the landmark below the top edge, mm.
        asked: the girth with the least ease that the author asks for; `least` may be less when
            no rhythm keeps it.
    """

    key: str
    round: int
    least: float
    depth: float
    asked: float = -math.inf


@dataclass(frozen=True, slots=True)
class Span:
    """One section, measured.

    Args:
        key: where it stands in the design, for messages.
        start_depth: worn depth where it begins, mm; `end_wanted` the depth asked for its end.
        rounds_above: rounds of the piece before it. rounds: rounds in it.
        height: worn height of one round, mm.
        target: wanted girth at its end; None for a straight section.
        knots: (depth, girth) the wanted profile runs through on the way, beyond its two ends.
        floors: what it may not fall below.
        body: (depth, girth) of the body from the waist to the hip, with the ease it may lie close
            by; a rhythm stays above the straight lines between them where it can.
        plain: rounds of the section that may not be shaped.
        turned: whether every other round is worked on the wrong side.
        base_stitch: what its first round is worked in when that only corrects the count, after a
            stitch pattern; "" when it has no such round.
        heights: of its rounds, when they are not alike, mm.
        worked: its rounds, when it is worked in a stitch pattern.
    """

    section: Section
    key: str
    gauge: Gauge
    height: float
    start_depth: float
    end_wanted: float
    rounds_above: int
    rounds: int
    target: Target | None
    because: Because
    knots: tuple[tuple[float, float], ...] = field(default=())
    floors: tuple[Floor, ...] = field(default=())
    body: tuple[tuple[float, float], ...] = field(default=())
    plain: tuple[int, ...] = ()
    turned: bool = False
    base_stitch: str = ""
    heights: tuple[float, ...] = ()
    worked: Patterned | None = None

    @property
    def width(self) -> float:
        """Width of one stitch, mm."""
        return self.gauge.width.value

    @property
    def end_depth(self) -> float:
        """Worn depth that its rounds really reach, mm."""
        return float(self.depths()[-1])

    @property
    def every(self) -> int:
        """At most every so many rounds is shaped: 1 when the planner is free."""
        return self.section.every if isinstance(self.section.every, int) else 1

    @property
    def on_right_side(self) -> bool:
        """Whether wrong-side rounds may not be shaped; where none are, nothing is asked."""
        return self.turned and self.section.shape_on == "right side"

    @property
    def may_shape(self) -> npt.NDArray[np.bool_]:
        """(R + 1,) bool: rounds that may be shaped. The foundation round is on the right side."""
        may = np.ones(self.rounds + 1, np.bool_)
        if self.on_right_side:
            may = on_right_side(self.rounds, 1 + self.rounds_above % 2)
        may[[0, *self.plain]] = False
        return may

    def depths(self) -> npt.NDArray[np.float64]:
        """(R + 1,) float64: worn depth after each round, the start first, mm."""
        if self.heights:
            return self.start_depth + np.cumsum((0.0, *self.heights), dtype=np.float64)
        depths: npt.NDArray[np.float64] = self.start_depth + self.height * np.arange(
            self.rounds + 1, dtype=np.float64
        )
        return depths

    def outline(self, before: float) -> tuple[tuple[float, float], ...]:
        """(depth, girth) between which the wanted profile runs straight, from `before` on, mm."""
        after = self.target.wanted if self.target else before
        ends = [(self.start_depth, before), (max(self.end_wanted, self.start_depth + 1e-9), after)]
        return tuple(sorted([*ends, *self.knots]))

    def profile(self, before: float) -> npt.NDArray[np.float64]:
        """(R + 1,) float64: wanted girth after each round, mm."""
        depths, girths = zip(*self.outline(before), strict=True)
        wanted: npt.NDArray[np.float64] = np.interp(self.depths(), depths, girths)
        return wanted

    def floor(self) -> npt.NDArray[np.float64] | None:
        """(R + 1,) float64: least girth after each round, mm, −inf where nothing is asked."""
        if not self.floors:
            return None
        least = np.full(self.rounds + 1, -np.inf)
        for floor in self.floors:
            least[floor.round] = max(least[floor.round], floor.least)
        return least

    def body_floor(self) -> npt.NDArray[np.float64] | None:
        """(R + 1,) float64: the floor, and the body between its landmarks, mm; None without body.

        Both ends are girths that were landed on, and bind nobody.
        """
        if len(self.body) < 2:
            return None
        depths, girths = zip(*self.body, strict=True)
        line: npt.NDArray[np.float64] = np.interp(
            self.depths(), depths, girths, left=-np.inf, right=-np.inf
        )
        line[[0, -1]] = -np.inf
        points = self.floor()
        return line if points is None else np.maximum(line, points)


def worn_height(basis: Basis, gauge: Gauge) -> float:
    """Height of one round as worn, mm: worn = worked × (1 + growth)."""
    grown = basis.growth.value if basis.growth else 0.0
    return gauge.height.value * (1 + grown)


def above_waist(basis: Basis) -> float:
    """How far the top edge lies above the waist, mm.

    Raises:
        InputError: it would lie below.
    """
    above = basis.length(basis.tube.start.above_waist, "start.above_waist")
    if above < 0:
        raise InputError(
            f"the top edge would lie {basis.show(-above)} below the waist; "
            "it has to lie at the waist (0 cm) or above it",
            basis.place("start.above_waist"),
        )
    return above


def target(
    basis: Basis, girth: str, ease: str, allowed: tuple[str, str] | None, key: str
) -> Target:
    """A girth formula, its ease and what is allowed about it.

    Raises:
        InputError: a formula is wrong, the girth is not above zero, or the ease is not allowed.
    """
    base = basis.girth_wanted(girth, f"{key}.girth")
    more = basis.length(ease, f"{key}.ease")
    if base + more <= 0:
        raise InputError(
            f"the ease of {basis.show(more)} leaves nothing of {basis.show(base)}",
            basis.place(f"{key}.ease"),
        )
    because = basis.because_formula(girth, f"{key}.girth")
    if more:
        because = because.then(Step("ease", more))
    if allowed is None:
        least, most = more - DEFAULT_ALLOWED, more + DEFAULT_ALLOWED
        asked_ease = min(0.0, more)
    else:
        least, most = _allowed(basis, more, allowed, key)
        asked_ease = least
    return Target(
        wanted=base + more,
        low=base + least,
        high=base + most,
        because=because,
        ease=more,
        least_ease=min(0.0, asked_ease),
        asked_ease=asked_ease,
        fuller=more >= 0,
    )


def _allowed(basis: Basis, ease: float, allowed: tuple[str, str], key: str) -> tuple[float, float]:
    least, most = (basis.length(text, f"{key}.ease_allowed") for text in allowed)
    if least > most:
        raise InputError(
            "the first allowed ease is larger than the second; write the smaller one first",
            basis.place(f"{key}.ease_allowed"),
        )
    if not least - 1e-9 <= ease <= most + 1e-9:
        raise InputError(
            f"the ease of {basis.show(ease)} lies outside what is allowed, "
            f'"{allowed[0]}" to "{allowed[1]}"',
            basis.place(f"{key}.ease"),
        )
    return least, most


def start_target(basis: Basis) -> Target:
    """The wanted girth of the first round; of a tube begun on edges just what it has."""
    start = basis.tube.start
    if basis.begun_with:
        girth = basis.begun_with * first_gauge(basis).width.value
        because = Because((Step("landed", basis.begun_with, "stitches"),))
        return Target(girth, girth - GIVEN, girth + GIVEN, because)
    if start.girth is None:
        raise InputError(
            'a tube that is not begun "on" an edge needs a girth', basis.place("start.girth")
        )
    found = target(basis, start.girth, start.ease, start.ease_allowed, "start")
    alike = math.lcm(flare.multiple(basis.tube.section), start.multiple)
    return replace(found, multiple=alike)


def first_gauge(basis: Basis) -> Gauge:
    """The gauge of the first round: of the stitch or the stitch pattern that it is worked in."""
    first = basis.tube.section[0]
    if first.pattern is not None:
        return section_gauge(basis, first, "section.1")
    return basis.gauge(first.stitch or basis.work.stitch, "section.1.stitch")


def section_gauge(basis: Basis, section: Section, key: str) -> Gauge:
    """The gauge that a section begins with: of its stitch, or of its stitch pattern."""
    if section.pattern is None:
        return basis.gauge(section.stitch or basis.work.stitch, f"{key}.stitch", section.hook)
    parameters = {**section.parameters, **(section.grades[0] if section.grades else {})}
    found = basis.pattern(section.pattern, parameters, key, closed=True)
    return basis.pattern_gauge(found, key, section.hooks[0] if section.hooks else section.hook)


def foundation_height(basis: Basis) -> float:
    """Worn height of the foundation round, mm: that of its stitch; a chain has next to none."""
    if basis.tube.start.made_of is None:
        return 0.0
    made_of = basis.stitches[basis.tube.start.made_of]
    if made_of.kind != "foundation":
        return 0.0
    main = basis.gauge(basis.work.stitch, "work.stitch")
    ratio = made_of.height.typical / basis.stitches[main.stitch].height.typical
    return worn_height(basis, main) * ratio


def spans(basis: Basis) -> tuple[Span, ...]:
    """All sections, measured from the top edge down. The last one has to reach the hem.

    Raises:
        InputError: a section ends above its start, or the sections do not end at the hem.
    """
    check_hem(basis)
    return spans_of(basis, range(len(basis.tube.section)), begun(basis))


def check_hem(basis: Basis) -> None:
    """The sections of a skirt reach its hem.

    Raises:
        InputError: they do not.
    """
    sections = basis.tube.section
    if basis.chosen is None and sections[-1].to != "hem":
        raise InputError(
            f'the last section, "{sections[-1].name}", has to end with to = "hem"',
            basis.place(f"section.{len(sections)}.to"),
        )


@dataclass(frozen=True, slots=True)
class Reached:
    """Where a piece stands when a section begins.

    Args:
        depth: mm. rounds: above it. wanted: girth, mm.
        based: whether the section has to begin with a round that corrects the count, because what
            lies below it is a stitch pattern.
    """

    depth: float
    rounds: int
    wanted: float
    based: bool = False


def begun(basis: Basis) -> Reached:
    """Where a piece stands when its first section begins."""
    return Reached(foundation_height(basis), 0, start_target(basis).wanted)


def spans_of(basis: Basis, numbers: Iterable[int], at: Reached) -> tuple[Span, ...]:
    """Sections that follow each other, by their index, measured from where the first begins."""
    found: list[Span] = []
    depth, rounds, wanted = at.depth, at.rounds, at.wanted
    for i in numbers:
        section = basis.tube.section[i]
        # The first section is as long as its author says with the foundation round included.
        origin = depth if i else 0.0
        for part in _parts(basis, section, f"section.{i + 1}", wanted, origin):
            based = at.based and not found
            below = origin + part.below
            span = _span(basis, part.section, part.key, depth, below, wanted, based=based)
            knots = tuple((origin + at, girth) for at, girth in part.points)
            found.append(replace(span, rounds_above=rounds, knots=knots))
            depth, rounds = span.end_depth, rounds + span.rounds
            wanted = span.target.wanted if span.target else wanted
    return tuple(found)


def _parts(
    basis: Basis, section: Section, key: str, wanted: float, origin: float
) -> tuple[through.Part, ...]:
    """A section in plain stitches, or the parts of one that turns on its way.

    Raises:
        InputError: it has a key of stitch patterns, but no pattern.
    """
    for name in OF_PATTERNS:
        if name in section.model_fields_set:
            raise InputError(
                f'section "{section.name}" is worked in plain stitches and has no use for {name}; '
                f'leave "{name}" out or write a pattern',
                basis.place(f"{key}.{name}"),
            )
    aim = end_target(basis, section, key, wanted, 0.0) if section.through else None
    if aim is None:
        return (through.Part(section, key),)
    length = section_end(basis, section, key, origin)[0] - origin
    return through.parts(basis, section, key, (wanted, aim.wanted), length)


def _span(
    basis: Basis,
    section: Section,
    key: str,
    start: float,
    origin: float,
    wanted: float,
    *,
    based: bool = False,
) -> Span:
    gauge = section_gauge(basis, section, key)
    height = worn_height(basis, gauge)
    section = flare.worked_out(section, gauge.width.value, gauge.height.value)
    end, because = section_end(basis, section, key, origin)
    if end <= start + 1e-6:
        raise nothing_left(basis, section, key, start, end)
    base = base_height(basis, section.base_stitch) if based else 0.0
    # Of two numbers equally near the larger: a skirt half a round too long is no fault.
    rounds = max(math.floor((end - start - base) / height + 0.5 + 1e-9), 1) + int(based)
    if rounds > MOST_ROUNDS:
        message = (
            f'section "{section.name}" would take {rounds} rounds; at most {MOST_ROUNDS} are '
            "planned in one section: make it shorter, or divide it into several"
        )
        raise InputError(message, basis.place(key))
    worked = start - (0.0 if section.length is None else origin)
    because = because.then(
        *((Step("worked", worked),) if worked else ()),
        Step("row_gauge", 100 / height, "rows per 10 cm"),
        Step("exact", (end - start) / height, "rows"),
        Step("landed", rounds, "rows", "one of them corrects the count" if based else ""),
    )
    plain = _plain(basis, section, key, rounds, height)
    return Span(
        section=section,
        key=key,
        gauge=gauge,
        height=height,
        start_depth=start,
        end_wanted=end,
        rounds_above=0,
        rounds=rounds,
        target=end_target(basis, section, key, wanted, end - start),
        because=because,
        plain=tuple(sorted({1, *plain})) if based else plain,
        turned=basis.work.rounds == "joined and turned",
        base_stitch=section.base_stitch if based else "",
        heights=(base, *(height,) * (rounds - 1)) if based else (),
    )


def base_height(basis: Basis, stitch: str) -> float:
    """Height of a round of base stitches as worn, mm."""
    return worn_height(basis, basis.trim_gauge(stitch))


def _plain(basis: Basis, section: Section, key: str, rounds: int, height: float) -> tuple[int, ...]:
    """Rounds of which any part lies in a stretch that is left unshaped.

    Raises:
        InputError: a stretch ends above its start.
    """
    found: list[int] = []
    for i, plain in enumerate(section.plain, 1):
        ends = ("from", plain.from_depth), ("to", plain.to_depth)
        top, low = (basis.length(text, f"{key}.plain.{i}.{name}") for name, text in ends)
        if top > low:
            raise InputError(
                f"a plain stretch from {basis.show(top)} to {basis.show(low)} ends above its "
                "start; write the smaller depth first",
                basis.place(f"{key}.plain.{i}"),
            )
        edges = (
            (r - 1) * height < low - 1e-6 and r * height > top + 1e-6 for r in range(1, rounds + 1)
        )
        found += [r for r, inside in enumerate(edges, 1) if inside]
    return tuple(sorted(set(found)))


def nothing_left(basis: Basis, section: Section, key: str, start: float, end: float) -> InputError:
    """The refusal of a section that has no room, in the words of what stands in its way."""
    if section.to == "hem":
        return InputError(
            f'the skirt is {basis.show(end)} long, and its last section "{section.name}" only '
            f"begins {basis.show(start)} below the top edge; make the skirt longer, or the "
            "sections above shorter",
            basis.place("garment.length"),
        )
    if section.length is not None:
        return InputError(
            f'section "{section.name}" would end {basis.show(end)} below the top edge, and the '
            f"foundation round alone is {basis.show(start)} high; make the section longer, or "
            'begin with = "chain"',
            basis.place(f"{key}.length"),
        )
    return InputError(
        f'section "{section.name}" would end {basis.show(end)} below the top edge, but it only '
        f"begins at {basis.show(start)}; make the sections above it shorter",
        basis.place(f"{key}.to"),
    )


def section_end(basis: Basis, section: Section, key: str, origin: float) -> tuple[float, Because]:
    """Depth at which a section is to end, mm, and why.

    Args:
        origin: where its own length is counted from.
    """
    above = above_waist(basis)
    if (section.to is None) == (section.length is None):
        raise InputError(
            f'section "{section.name}" needs either "to" or "length", and not both',
            basis.place(key),
        )
    if section.length is not None:
        long = basis.girth_wanted(section.length, f"{key}.length")
        return origin + long, basis.because_formula(section.length, f"{key}.length")
    if section.to in LANDMARKS:
        down = LANDMARKS[str(section.to)][1]
        because = basis.because_formula(down, f"{key}.to")
        if above:
            because = because.then(Step("above_waist", above))
        return above + basis.length(down, f"{key}.to"), because
    text = basis.tube.length
    if text is None:
        raise InputError(
            f'section "{section.name}" ends at the hem, so its piece needs a length',
            basis.place("garment.length"),
        )
    long = basis.girth_wanted(text, "garment.length")
    return long, basis.because_formula(text, "garment.length")


def end_target(
    basis: Basis, section: Section, key: str, before: float, length: float
) -> Target | None:
    """The girth a section is shaped to, from the girth and over the length that it has, mm."""
    if section.shape == "straight":
        _refuse_unused(basis, section, key)
        return None
    found = (
        _flared(basis, section, key, before, length)
        if section.flare is not None
        else _shaped_to(basis, section, key)
    )
    return replace(found, multiple=flare.multiple(basis.tube.section))


def _flared(basis: Basis, section: Section, key: str, before: float, length: float) -> Target:
    """The girth that a share of a circle gives.

    Raises:
        InputError: a girth or an ease is asked for besides, or a profile is drawn.
    """
    for name in ("girth", "ease", "ease_allowed", "through", "gores"):
        if name in section.model_fields_set:
            raise InputError(
                f'section "{section.name}" is a {section.flare}, which has a girth and lines of '
                f'its own; leave "{name}" out, or leave "flare" out',
                basis.place(f"{key}.{name}"),
            )
    wanted = flare.widened(str(section.flare), before, length)
    give = max(DEFAULT_ALLOWED, wanted * DEFAULT_HEM_SHARE)
    because = Because((Step("formula", wanted, "mm", _circle(basis, section, before, length)),))
    return Target(wanted, wanted - give, wanted + give, because)


def _circle(basis: Basis, section: Section, before: float, length: float) -> str:
    """A flare in figures: "70 cm + 2π × 45 cm, a full circle"."""
    times = {"full circle": "2π", "half circle": "π", "quarter circle": "π / 2"}
    rate = times.get(str(section.flare), "8")
    return f"{basis.show(before)} + {rate} × {basis.show(length)}, a {section.flare}"


def _shaped_to(basis: Basis, section: Section, key: str) -> Target:
    girth = section.girth
    if girth is None and section.to in LANDMARKS:
        girth = LANDMARKS[str(section.to)][0]
    if girth is None:
        raise InputError(
            f'shaped section "{section.name}" needs a "girth" to be shaped to', basis.place(key)
        )
    aim = target(basis, girth, section.ease, section.ease_allowed, key)
    if section.ease_allowed is not None:
        return aim
    if section.to == "hem":
        give = max(DEFAULT_ALLOWED, aim.wanted * DEFAULT_HEM_SHARE)
        return replace(aim, low=aim.wanted - give, high=aim.wanted + give)
    if section.girth is None and aim.ease >= 0:
        # An inch either way does not turn ease on a body into tightness.
        return replace(aim, low=max(aim.low, aim.wanted - aim.ease))
    return aim


OF_PATTERNS = ("parameters", "shape_by", "columns", "column_stitch", "grades", "hooks")
SHAPING_ONLY = (
    *("girth", "ease", "ease_allowed", "points", "add", "every", "indifference"),
    *("clauses", "shape_on", "least_gap", "plain", "through"),
    *("flare", "gores", "stagger"),
)


def _refuse_unused(basis: Basis, section: Section, key: str) -> None:
    """A straight section has nothing to be shaped by: what says otherwise is a slip."""
    for name in SHAPING_ONLY:
        if name in section.model_fields_set:
            raise InputError(
                f'section "{section.name}" is straight and has no use for {name}; '
                f'leave "{name}" out or write shape = "shaped"',
                basis.place(f"{key}.{name}"),
            )
