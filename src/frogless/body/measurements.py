"""A body: named measurements in ISO 8559-1 terms, each with its uncertainty and where it comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement, mm. `source` is "" when taken with a tape, else how it was estimated."""

    key: str
    value: Measured
    estimated: bool = False
    source: str = ""


@dataclass(frozen=True, slots=True)
class Body:
    """A body by name; `age` in years and `child` matter for cautions only."""

    name: str
    measurements: Mapping[str, Measurement]
    file: str = ""
    age: float | None = None

    def get(self, key: str) -> Measurement | None:
        """The measurement, or None."""
        return self.measurements.get(key)
