"""One length in two units, and lists with too few numbers."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.facts.told import names_of
from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Lengths
from frogless.proofread.findings import Finding
from frogless.units import INCH, show_length

#: The trade takes 10 cm for 4 in.
_USUAL = 0.02
_HAIR = 0.2


def measure_units(reading: Reading) -> Iterator[Finding]:
    """Lengths whose centimeters and inches are not the same length."""
    sizes = len(reading.script.sizes)
    for lengths in reading.facts.both:
        pairs = list(zip(lengths.metric, lengths.inches, strict=False))
        if len(lengths.metric) != len(lengths.inches):
            continue
        wrong = [at for at, (cm, inch) in enumerate(pairs) if not _agree(cm, inch, lengths)]
        if wrong:
            at = wrong[0]
            cm, inch = pairs[at]
            named = names_of(reading, wrong) if len(wrong) < len(pairs) == sizes else ()
            yield Finding(
                "measure-units",
                lengths.span,
                f"{_cm(cm)} and {_in(inch)}",
                f"{_cm(cm)} are {show_length(cm, 'in')}; {_in(inch)} are {show_length(inch, 'cm')}",
                f"{_cm(cm)} are {show_length(cm, 'in')}, and {_in(inch)} are "
                f"{show_length(inch, 'cm')}: one of the two numbers is wrong.",
                "certain" if abs(cm / inch - 1) > 2 * _USUAL else "likely",
                sizes=named,
            )


def _agree(cm: float, inch: float, lengths: Lengths) -> bool:
    """Either number is the other, rounded to the step that it is written in."""
    # Half a centimeter and a quarter inch are the trade's steps even where a number is whole.
    step = max(5.0, min(lengths.metric_step, 5.0))
    to_inch = lengths.inch_step / 2
    off = abs(cm - inch)
    return off <= max(step, to_inch, _USUAL * inch) + _HAIR


def _cm(length: float) -> str:
    return f"{length / 10:g} cm"


def _in(length: float) -> str:
    return f"{round(length / INCH, 3):g} in"


UNITS = Check(
    "measure-units",
    "a length in centimeters and in inches is the same length",
    "Finished length: 9 cm / 3 in\n\nCh 20.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (19 sc)\n",
    measure_units,
)
