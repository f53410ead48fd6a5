"""What a section in a stitch pattern asks for, checked: its pattern, its gauges, how it is shaped."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from frogless.because import Because
from frogless.design.pieces.tube import Section
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.plan.patterns import Pattern
from frogless.plan.sections import (
    Reached,
    Span,
    Target,
    base_height,
    end_target,
    nothing_left,
    section_end,
    worn_height,
)
from frogless.swatch import Gauge

#: Keys of a section that shape plain stitches, and that repeats have no use for.
OF_PLAIN_STITCHES = (
    *("stitch", "turning_chain", "points", "every", "shape_on", "least_gap", "plain", "through"),
    *("flare", "gores", "stagger"),
)
WAYS = {
    "columns": ("columns", "column_stitch"),
    "grades": ("grades",),
    "hook": ("hooks",),
}
"""What each way of shaping asks for."""


@dataclass(frozen=True, slots=True)
class Below:
    """What a section in a pattern begins on.

    Args:
        girth: wanted where it begins; its range is hard where the piece begins, and wide open after
            another fabric.
        count: stitches there; 0 when they are no stitches to go on with.
        section: the section above, when it is in a pattern too.
        begun: stitches that a round worked onto edges makes; 0 when it begins on no edge.
        is_first: whether the piece begins here.
    """

    girth: Target
    count: int = 0
    section: Span | None = None
    begun: int = 0
    is_first: bool = False


@dataclass(frozen=True, slots=True)
class Fabric:
    """A pattern with its gauge, as one stretch of a section is worked."""

    pattern: Pattern
    gauge: Gauge
    height: float

    @property
    def repeat(self) -> float:
        """Width of a repeat, mm."""
        return self.gauge.width.value * self.pattern.way.multiple

    def girth(self, repeats: int) -> float:
        """Of so many repeats, mm."""
        return self.gauge.width.value * self.pattern.way.places(repeats)


@dataclass(frozen=True, slots=True)
class Asked:
    """A section in a pattern, as its design asks for it.

    Args:
        fabrics: of its stretches, one after the other; one for most.
        base: height of a base round, mm.
        end: depth where it is to end, mm; why: how that was found.
    """

    section: Section
    key: str
    at: Reached
    below: Below
    fabrics: tuple[Fabric, ...]
    target: Target | None
    base: float
    end: float
    why: Because

    @property
    def length(self) -> float:
        """mm."""
        return self.end - self.at.depth

    @property
    def shape_by(self) -> str:
        """How it is shaped; "" when it is not."""
        return way_of_shaping(self.section)


def way_of_shaping(section: Section) -> str:
    """How a section in a pattern is shaped: as it says, else by what it gives, else by repeats."""
    if section.shape_by is not None:
        return section.shape_by
    for way, (key, *_) in WAYS.items():
        if getattr(section, key):
            return way
    return "repeats" if section.shape == "shaped" else ""


def asked(basis: Basis, section: Section, key: str, at: Reached, below: Below) -> Asked:
    """What a section asks for, checked.

    Raises:
        InputError: keys that do not go together, no such pattern, or nobody swatched it.
    """
    check(basis, section, key)
    fabrics = tuple(_fabrics(basis, section, key))
    origin = 0.0 if below.is_first else at.depth
    end, why = section_end(basis, section, key, origin)
    if end <= at.depth + 1e-6:
        raise nothing_left(basis, section, key, at.depth, end)
    target = end_target(basis, section, key, at.wanted, end - at.depth)
    base = base_height(basis, section.base_stitch)
    return Asked(section, key, at, below, fabrics, target, base, end, why)


def check(basis: Basis, section: Section, key: str) -> None:
    """Keys that go together.

    Raises:
        InputError: some that do not.
    """
    for name in OF_PLAIN_STITCHES:
        if name in section.model_fields_set:
            raise InputError(
                f'section "{section.name}" is worked in a stitch pattern, which is shaped by '
                f'repeats, columns, grades or hooks; leave "{name}" out',
                basis.place(f"{key}.{name}"),
            )
    if basis.work.rounds == "spiral":
        raise InputError(
            f'the rounds of a stitch pattern are joined; write rounds = "joined" in [work], or '
            f'give section "{section.name}" a stitch in place of the pattern',
            basis.place(f"{key}.pattern"),
        )
    way = way_of_shaping(section)
    for other, keys in WAYS.items():
        for name in keys:
            if other != way and name in section.model_fields_set:
                raise InputError(
                    f'"{name}" belongs to shape_by = "{other}", and section "{section.name}" is '
                    f"{f'shaped by {way}' if way else 'straight'}",
                    basis.place(f"{key}.{name}"),
                )
    needed = WAYS.get(way, ("",))[0]
    if needed and not getattr(section, needed):
        raise InputError(
            f'shape_by = "{way}" needs "{needed}"; {_NEEDED[way]}', basis.place(f"{key}.shape_by")
        )
    if way in ("repeats", "columns") and section.shape == "straight":
        raise InputError(
            f'section "{section.name}" is shaped by {way}, so it needs shape = "shaped" and a girth',
            basis.place(f"{key}.shape_by"),
        )


_NEEDED = {
    "columns": "write how many there are, such as columns = 8",
    "grades": "write the numbers of each stretch, such as grades = [{ fan = 5 }, { fan = 7 }]",
    "hook": 'write the hook of each stretch, such as hooks = ["3.5 mm", "4 mm"]',
}


def _fabrics(basis: Basis, section: Section, key: str) -> Iterator[Fabric]:
    for numbers in section.grades or ({},):
        found = basis.pattern(
            str(section.pattern), {**section.parameters, **numbers}, key, closed=True
        )
        for hook in section.hooks or (section.hook,):
            gauge = basis.pattern_gauge(found, key, hook)
            yield Fabric(found, gauge, worn_height(basis, gauge))


def other_ways(ask: Asked) -> Iterator[str]:
    """The other ways of shaping in a pattern, each in a few words."""
    told = {
        "repeats": 'shape_by = "repeats": base rounds between row repeats add whole repeats',
        "columns": 'shape_by = "columns", columns = 8: plain columns between the repeats take up '
        "what whole repeats do not",
        "grades": 'shape_by = "grades": the same repeats, larger from stretch to stretch',
        "hook": 'shape_by = "hook": the same repeats on larger hooks, each swatched',
    }
    return (words for way, words in told.items() if way != ask.shape_by)
