"""Whether a body can be as it was written: refused when nobody is so, questioned when few are.

Large, small and unusual bodies exist and the surveys have few of them, so a value outside a survey
is only questioned. What is refused is what a slip of the unit or of the tape gives.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from frogless.body.measurements import (
    Body,
    Known,
    Measurement,
    known_measurements,
    read_table,
)
from frogless.body.size_tables import sizes
from frogless.errors import Fault, Place
from frogless.units import INCH, LENGTH_UNITS, MASS_UNITS, POUND

# Children of one age differ by a tenth or two; more than this over the size table is a slip of the
# age or an adult's measurements (own choice).
_OUTGROWN = 1.3
_SLIPS_OF_LENGTH = {"cm": 10.0, "in": INCH, "mm": 1.0}
_FOR_A_CHILD = "; for a child give its age"
_MEASURE_AGAIN = "; measure again, and keep it if the tape says so"
_SLIPS_OF_MASS = {"kg": 1000.0, "lb": POUND}


@dataclass(frozen=True, slots=True)
class Proportion:
    """`part` over `whole`: refused outside least and most, questioned outside low and high."""

    part: str
    whole: str
    least: float
    low: float
    high: float
    most: float
    source: str


def refusals(body: Body) -> tuple[Fault, ...]:
    """One fault for each measurement or pair of them that no body has; the place has its key.

    A waist of 33 cm is asked about as 33 in when that would be plausible.
    """
    alone = tuple(_refused_alone(body))
    return alone or tuple(_refused_together(body))


def question(body: Body) -> tuple[str, ...]:
    """One sentence for each value that surveys and size tables do not have, or odd proportion."""
    return (*_questioned_alone(body), *_questioned_together(body), *_questioned_age(body))


def _refused_alone(body: Body) -> Iterator[Fault]:
    for key, measured in body.measurements.items():
        known = known_measurements()[key]
        least = known.least_child if body.may_be_child else known.least
        value = measured.value.value
        if least <= value <= known.most:
            continue
        child = known.least_child <= value < least and body.age is None
        sentence = (
            f"{_shown(measured)} is no {key.replace('_', ' ')} that a body has; "
            f"{_size(least, known)} to {_size(known.most, known)} is accepted"
            f"{_FOR_A_CHILD if child else ''}{_meant(measured, known, body)}"
        )
        yield Fault(sentence, Place(body.file, None, key))


def _questioned_alone(body: Body) -> Iterator[str]:
    for key, measured in body.measurements.items():
        known = known_measurements()[key]
        low = known.low_child if body.may_be_child else known.low
        value = measured.value.value
        if measured.estimated or low <= value <= known.high:
            continue
        child = known.low_child <= value < low and body.age is None
        yield (
            f"{key} {_shown(measured)} lies outside surveys and size tables "
            f"({_size(low, known)} to {_size(known.high, known)})"
            f"{_FOR_A_CHILD if child else ''}{_meant(measured, known, body) or _MEASURE_AGAIN}"
        )


def _questioned_age(body: Body) -> Iterator[str]:
    """A child's age with a size that the table gives to nobody near it: the rules go by the age.

    Source: children's and youths' sizes of the Craft Yarn Council, by age.
    """
    if body.age is None:
        return
    usual = next((one for one in sizes("children") if one.age and one.age >= body.age), None)
    pairs = [
        (one, known)
        for one in body.measurements.values()
        if usual and (known := usual.get(one.key)) and not one.estimated
    ]
    far = [pair for pair in pairs if pair[0].value.value > _OUTGROWN * pair[1].value.value]
    if far and usual:
        told = " and ".join(
            f"{one.key} {_shown(one)} (a child of {usual.age:g}: about {_shown(known)})"
            for one, known in far
        )
        yield (
            f"age {body.age:g} does not go with {told}: is the age right? The rules for children's "
            "clothes go by it"
        )


def _refused_together(body: Body) -> Iterator[Fault]:
    for rule, part, whole, ratio in _proportions(body):
        if not rule.least <= ratio < rule.most:
            slips = _meant(part, known_measurements()[rule.part], body) or _meant(
                whole, known_measurements()[rule.whole], body
            )
            yield Fault(
                f"{_pair(rule, part, whole, ratio)} cannot be: {rule.least:g} to {rule.most:g} "
                f"is accepted{slips or '; measure both again'}",
                Place(body.file, None, rule.part),
            )


def _questioned_together(body: Body) -> Iterator[str]:
    for rule, part, whole, ratio in _proportions(body):
        if not rule.low <= ratio <= rule.high and not (part.estimated or whole.estimated):
            yield (
                f"{_pair(rule, part, whole, ratio)} lies outside what is usual "
                f"({rule.low:.2f} to {rule.high:.2f}){_MEASURE_AGAIN}"
            )


def _pair(rule: Proportion, part: Measurement, whole: Measurement, ratio: float) -> str:
    return f"{rule.part} {_shown(part)} is {ratio:.2f} times {rule.whole} {_shown(whole)}, which"


def _proportions(body: Body) -> Iterator[tuple[Proportion, Measurement, Measurement, float]]:
    for rule in proportions():
        part, whole = body.get(rule.part), body.get(rule.whole)
        if part and whole:
            yield rule, part, whole, part.value.value / whole.value.value


@cache
def proportions() -> tuple[Proportion, ...]:
    """The rules of `data/ratios.csv`."""
    return tuple(
        Proportion(
            row["part"],
            row["whole"],
            least=float(row["least"]),
            low=float(row["low"]),
            high=float(row["high"]),
            most=float(row["most"]),
            source=row["source"],
        )
        for row in read_table("ratios.csv")
    )


def _meant(measured: Measurement, known: Known, body: Body) -> str:
    """`; did you mean 33 in (83.8 cm)?`: the same number in other units, where plausible."""
    number, written_in = _number(measured, known)
    units = _SLIPS_OF_MASS if known.kind == "mass" else _SLIPS_OF_LENGTH
    low = known.low_child if body.may_be_child else known.low
    meant = [
        f"{number:g} {unit}"
        + ("" if unit in {"cm", "kg"} else f" ({_size(number * factor, known)})")
        for unit, factor in units.items()
        if factor != written_in and low <= number * factor <= known.high
    ]
    return f"; did you mean {' or '.join(meant)}?" if meant else ""


def _number(measured: Measurement, known: Known) -> tuple[float, float]:
    """The number as it was written, and mm or g of its unit; cm or kg when no text is known."""
    units = MASS_UNITS if known.kind == "mass" else LENGTH_UNITS
    unit = measured.written.lstrip("+0123456789.,/ -½¼¾⅛⅜⅝⅞").lower()
    factor = units.get(unit, 1000.0 if known.kind == "mass" else 10.0)
    return round(measured.value.value / factor, 6), factor


def _shown(measured: Measurement) -> str:
    return measured.written or _size(measured.value.value, known_measurements()[measured.key])


def _size(value: float, known: Known) -> str:
    return f"{value / 1000:.4g} kg" if known.kind == "mass" else f"{round(value / 10, 1):g} cm"
