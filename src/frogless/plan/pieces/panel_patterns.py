"""A stretch of a flat piece in a stitch pattern: as wide as the piece, in whole repeats.

A base row makes of the piece's stitches those that the pattern stands on, at the same width, and one
after the pattern makes them again what they were, so that all above and below it stays as it is.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.design.pieces.panel import PanelSection
from frogless.errors import InputError
from frogless.plan.basis import Basis
from frogless.plan.landing import because_landed, land, multiple_note
from frogless.plan.model import PatternBand, PatternPlan
from frogless.plan.pattern_rounds import base_body, weights
from frogless.plan.patterns import Pattern
from frogless.plan.pieces.panel_edges import side_of
from frogless.rows.nodes import End, Row, Start
from frogless.stitches.pattern_rows import worked
from frogless.swatch import Gauge

SHAPING = ("width", "edges", "lines", "at_once", "rate", "rows", "multiple", "offset", "stitch")
"""Keys of a section that shape it, or give it a stitch; a pattern has whole repeats of its own."""


@dataclass(frozen=True, slots=True)
class Patterned:
    """Rows of a panel in a stitch pattern, those of base stitches before and after them included.

    Args:
        rows: numbered as the panel's.
        gauges: of each row.
        base: stitches that the pattern stands on.
        into: base rows before the pattern; one follows it.
    """

    pattern: Pattern
    gauge: Gauge
    rows: tuple[Row, ...]
    gauges: tuple[Gauge, ...]
    base: int
    into: int
    base_stitch: str
    because: Because

    @property
    def first(self) -> int:
        """The first row of the pattern itself."""
        return self.rows[self.into].number

    @property
    def last(self) -> int:
        """Its last row."""
        return self.rows[-2].number

    def width_of(self, row: int, own: float) -> float:
        """What a row measures, mm; `own` is what the panel measures."""
        return self.base * self.gauge.width.value if self.first <= row <= self.last else own


def patterned(
    basis: Basis,
    section: PanelSection,
    key: str,
    name: str,
    count: int,
    first: int,
    own: Gauge,
    hook: float | None = None,
) -> Patterned:
    """A section in a stitch pattern on so many stitches, its first row numbered `first`.

    Raises:
        InputError: it is to be shaped besides, its rows are not turned one by one, or nobody
            swatched it.
    """
    for one in SHAPING:
        if one in section.model_fields_set:
            raise InputError(
                f'section "{section.name}" is worked in a stitch pattern, as wide as the piece; '
                f'leave "{one}" out, and shape plain rows below or above it',
                basis.place(f"{key}.{one}"),
            )
    pattern = basis.pattern(str(section.pattern), section.parameters, key, closed=False)
    gauge, way = basis.pattern_gauge(pattern, key, hook), pattern.way
    if not all(row.end.turn for row in way.rows):
        raise InputError(
            f'"{pattern.key}" is not turned after every row, and a flat piece is; take a pattern '
            "that is, or work this piece in rounds",
            basis.place(f"{key}.pattern"),
        )
    width = count * own.width.value
    landed = land(width, gauge.width.value, way.multiple, way.offset)
    base = max(landed.count, way.places(way.least))
    made: list[Row] = []
    size = gauge.hook or basis.hook
    # The pattern's first row has to come up on its own side.
    into = int(base != count)
    into += int(side_of(first + into) != way.side)
    below = (1,) * count
    for _ in range(into):
        made.append(_base_row(basis, section, name, below, base, first + len(made), size))
        below = (1,) * base
    height = basis.trim_gauge(section.base_stitch).height.value
    length = basis.girth_wanted(section.length, f"{key}.length") - (into + 1) * height
    times = max(int((length / gauge.height.value - way.setup) / way.period + 0.5 + 1e-9), 1)
    number = first + len(made)
    rows = worked(
        way, base, way.setup + way.period * times, basis.stitches,
        number=number, section=name, hook=size,
    )  # fmt: skip
    made += rows
    back = weights(rows[-1], basis.stitches)[::-1]
    made.append(_base_row(basis, section, name, back, count, first + len(made), size))
    high = basis.trim_gauge(section.base_stitch)
    plain = replace(own, height=high.height)
    gauges = (*(plain,) * into, *(gauge,) * len(rows), plain)
    because = Because(
        (
            Step("repeat", way.multiple * gauge.width.value),
            Step("repeats", (base - way.offset) // way.multiple, ""),
            *because_landed(
                width, gauge.width.value, base, multiple_note(way.multiple, way.offset)
            ),
        )
    )
    return Patterned(pattern, gauge, tuple(made), gauges, base, into, section.base_stitch, because)


def _base_row(
    basis: Basis,
    section: PanelSection,
    name: str,
    below: tuple[int, ...],
    count: int,
    number: int,
    hook: float,
) -> Row:
    stitch = section.base_stitch
    return Row(
        number=number,
        side=side_of(number),
        section=name,
        body=base_body(stitch, below, count),
        count=count,
        start=Start(basis.stitches[stitch].turning_chain),
        end=End(turn=True),
        hook=hook,
    )


def told(found: Patterned, count: int, number: int, own: float) -> PatternPlan:
    """The pattern as it is told and proven.

    Args:
        count: stitches of the piece before and after it. number: of its first row as worked.
        own: width of the piece there, mm.
    """
    pattern, way = found.pattern, found.pattern.way
    first = number + found.into
    width = found.gauge.width.times(found.base)
    return PatternPlan(
        key=pattern.key,
        names=tuple(pattern.names.items()),
        parameters=tuple(sorted(pattern.parameters.items())),
        multiple=way.multiple,
        offset=way.offset,
        row_repeat=way.period,
        setup=way.setup,
        shape_by="",
        base_stitch=found.base_stitch,
        based=(*range(number, first), number + len(found.rows) - 1),
        bands=(
            PatternBand(
                under=first - 1,
                first_round=first,
                last_round=number + len(found.rows) - 2,
                base=found.base,
                repeats=(found.base - way.offset) // way.multiple,
            ),
        ),
        left=count,
        girth_before=replace(width, value=own),
        girth_after=width,
    )
