"""What no garment asks for: slips of the pen that are refused before anything is planned with them.

The limits are own choices, far beyond what is worn: they keep a slip from being worked at for
minutes, or from being published.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from frogless.design import formulas
from frogless.design.document import PiecesDesign, named_formulas
from frogless.errors import Fault, InputError, Place
from frogless.plan.basis import Basis
from frogless.plan.edging import EDGING
from frogless.plan.waist import BAND, COVER
from frogless.rows.nodes import Piece

LONGEST = 30_000.0
"""mm. The hem of a floor-length skirt of four full circles is 28 m."""

MOST_STITCHES = 3000
"""In one round. That hem in a fine yarn."""

MOST_IN_ALL = 1_000_000
"""In a garment: a year's work of eight hours a day at twenty stitches a minute is three times that."""

NOT_NEGATIVE = frozenset({"indifference", "lap", "reduce", "spare_over_hips", "tails", "tie_ends"})
ABOVE_ZERO = frozenset({"height", "repeat_width", "sample_length"})

OWN = "lengths"
"""The table of a design's own lengths."""

TAKEN_BY_SECTIONS = (EDGING, COVER, BAND)
TAKEN_BY_PIECES = (COVER, BAND)
"""Names of parts that the program adds itself: two parts of one name cannot be told apart."""


def check(basis: Basis) -> None:
    """Sizes that can be worked, and names that tell the parts apart.

    Raises:
        InputError: every fault found, each with its key.
    """
    sizes = tuple(_sizes(basis))
    # A length of the design's own that is wrong makes every formula wrong that it is used in.
    own = tuple(fault for fault in sizes if f"{OWN}." in fault.place.key)
    parts = _pieces if isinstance(basis.design, PiecesDesign) else _tube
    if faults := [*(own or sizes), *parts(basis)]:
        raise InputError.of(faults)


def check_amount(pieces: Iterable[Piece], place: Place) -> None:
    """Holds the pieces planned so far to what is worked at all, before each stitch is expanded.

    Args:
        place: of the piece that was planned last.

    Raises:
        InputError: there are more stitches.
    """
    stitches = sum(row.count for piece in pieces for row in piece.rows)
    if stitches > MOST_IN_ALL:
        raise InputError(
            f"this comes to {stitches:,} stitches; no more than {MOST_IN_ALL:,} are planned; "
            "ask for fewer or smaller pieces",
            place,
        )


def _sizes(basis: Basis) -> Iterator[Fault]:
    """Every formula of the design, as far as it gives a length."""
    width = basis.gauge(basis.design.work.stitch, "work.stitch").width.value
    for key, text in named_formulas(basis.design):
        value = formulas.evaluate(text, basis.scope, basis.place(key))
        if told := _wrong(basis, key.rpartition(".")[2], value, width):
            yield Fault(f'"{_cut(text)}" {told}', basis.place(key))


def _wrong(basis: Basis, name: str, value: formulas.Value, width: float) -> str:
    """What is wrong with the value of a key, if anything."""
    longest = min(LONGEST, MOST_STITCHES * width)
    if not math.isfinite(value.value):
        return "gives no number at all"
    if value.power == 1 and abs(value.value) > longest:
        return (
            f"gives {basis.show(value.value)}; no more than {basis.show(longest)} is planned, "
            f"{longest / width:.0f} stitches of this swatch"
        )
    if name in NOT_NEGATIVE and value.value < 0:
        return f"gives {basis.show(value.value)}; it has to be zero or more"
    if name in ABOVE_ZERO and value.value <= 0:
        return f"gives {basis.show(value.value)}; it has to be above zero"
    return ""


def _tube(basis: Basis) -> Iterator[Fault]:
    yield from _strands(basis)
    yield from _names(basis)


def _pieces(basis: Basis) -> Iterator[Fault]:
    """Names of pieces and of joins are what other entries and people know them by."""
    if isinstance(basis.design, PiecesDesign):
        yield from _twice(basis, "piece", [p.name for p in basis.design.piece], TAKEN_BY_PIECES)
        yield from _twice(basis, "join", [j.name for j in basis.design.join], ())


def _strands(basis: Basis) -> Iterator[Fault]:
    """Points of the waist edge, half way round at most."""
    half = basis.length("waist_girth", "strand") / 2
    for i, strand in enumerate(basis.tube.strand, 1):
        for name, text in (("from", strand.from_side), ("to", strand.to_side)):
            at = basis.length(text, f"strand.{i}.{name}")
            if abs(at) > half:
                told = (
                    f'"{_cut(text)}" gives {basis.show(at)}, and centre back is {basis.show(half)} '
                    "from centre front"
                )
                yield Fault(told, basis.place(f"strand.{i}.{name}"))


def _names(basis: Basis) -> Iterator[Fault]:
    design = basis.tube
    yield from _twice(basis, "section", [s.name for s in design.section], TAKEN_BY_SECTIONS)
    yield from _twice(
        basis, "strand", [s.name for s in design.strand], (design.name, *TAKEN_BY_PIECES)
    )


def _twice(basis: Basis, table: str, names: list[str], taken: tuple[str, ...]) -> Iterator[Fault]:
    for i, name in enumerate(names, 1):
        if name in taken:
            told = f'"{name}" is what another part of the pattern is called; choose another name'
        elif name in names[: i - 1]:
            told = f'"{name}" is the name of {table} {names.index(name) + 1} too; choose another'
        else:
            continue
        yield Fault(told, basis.place(f"{table}.{i}.name"))


def _cut(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "…"
