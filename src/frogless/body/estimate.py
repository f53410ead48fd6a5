"""What was not measured, estimated from a survey with its uncertainty, or asked for."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache

from frogless.body.measurements import Body, Measurement, known_measurements, read_table
from frogless.errors import Fault, InputError, Place, near_names
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class Estimate:
    """`key` = slope · from_key + intercept ± uncertainty (one standard deviation), mm.

    Args:
        from_key: "" for a mean that needs nothing.
        reach: the values of from_key that the survey has; outside them nothing is estimated.
    """

    key: str
    from_key: str
    slope: float
    intercept: float
    uncertainty: float
    reach: tuple[float, float]
    note: str
    source: str
    basis: str


@cache
def estimates() -> tuple[Estimate, ...]:
    """The rows of `data/estimates.csv`; for one key the better one stands first."""
    return tuple(
        Estimate(
            row["key"],
            row["from_key"],
            slope=float(row["slope"]),
            intercept=float(row["intercept"]),
            uncertainty=float(row["uncertainty"]),
            reach=(float(row["from_low"] or "-inf"), float(row["from_high"] or "inf")),
            note=row["note"],
            source=row["source"],
            basis=row["basis"],
        )
        for row in read_table("estimates.csv")
    )


def complete(body: Body, keys: Iterable[str], *, optional: Iterable[str] = ()) -> Body:
    """The body with every one of `keys`, and those of `optional` that can be estimated.

    The survey is of women of 17 to 58 (ANSUR II, NATICK/TR-15/007, 2014), so nothing is estimated
    for a child. The hip is never estimated: from the waist it is known to ± 9 cm only (95 %), which
    is more than the ease of any skirt.

    Raises:
        InputError: a key is neither measured nor to be estimated; all such keys are told together.
    """
    wanted = [key for key in dict.fromkeys(keys) if key not in body.measurements]
    found = {key: _estimated(body, key) for key in dict.fromkeys((*wanted, *optional))}
    if missing := [key for key in wanted if found[key] is None]:
        raise InputError.of([_asked_for(body, key) for key in missing])
    added = {key: one for key, one in found.items() if one and key not in body.measurements}
    return replace(body, measurements={**body.measurements, **added})


def _estimated(body: Body, key: str) -> Measurement | None:
    if body.may_be_child:
        return None
    for one in estimates():
        given = body.get(one.from_key)
        if one.key != key or (one.from_key and given is None):
            continue
        start = given.value if given else Measured(0.0)
        if given and not one.reach[0] <= start.value <= one.reach[1]:
            # The mean would be no better for a body that the survey did not meet.
            return None
        value = one.slope * start.value + one.intercept
        uncertainty = math.hypot(one.uncertainty, one.slope * start.uncertainty)
        return Measurement(key, Measured(value, uncertainty), estimated=True, source=one.note)
    return None


def _asked_for(body: Body, key: str) -> Fault:
    known = known_measurements()
    place = Place(body.file, None, f"measurements.{key}")
    if key not in known:
        return Fault(f'no body file has "{key}"{near_names(key, known)}', place)
    return Fault(f"is needed and cannot be estimated; measure it {known[key].how_taken}", place)
