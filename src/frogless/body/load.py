"""A body file, read: `frogless-body/1`."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, create_model

from frogless.body.measurements import Body, Kind, Measurement, known_measurements
from frogless.body.plausible import refusals
from frogless.errors import InputError
from frogless.files import Name, parse_document, read_text
from frogless.units import Length, Mass, Measured

UNCERTAINTY: dict[Kind, float] = {"girth": 5.0, "length": 5.0, "mass": 500.0}
"""Standard uncertainty of one careful measurement, mm and g. From memory: two people with one tape
differ by about a centimetre on a girth; no source was found for home measuring."""

WHAT = "body file"
KEPT = 64
"""Texts that are remembered: whoever edits one thing drafts with the others as they were."""


class _Strict(BaseModel):
    model_config = ConfigDict(
        extra="forbid", frozen=True, str_strip_whitespace=True, allow_inf_nan=False
    )


_FIELDS: dict[str, Any] = {
    key: ((Mass if known.kind == "mass" else Length) | None, None)
    for key, known in known_measurements().items()
}
Measurements = create_model("Measurements", __base__=_Strict, **_FIELDS)
"""The table `[measurements]`: one optional field for each row of `data/measurements.csv`."""


class BodyFile(_Strict):
    """The document `frogless-body/1`."""

    format: Literal["frogless-body/1"]
    name: Name
    age: Annotated[float, Field(ge=0, le=130)] | None = None
    measurements: Measurements  # type: ignore[valid-type]


def load_body(path: Path | str) -> Body:
    """The body of a TOML file of the format `frogless-body/1`.

    Raises:
        InputError: the file's faults, or measurements that no body has (`plausible.refusals`).
    """
    path = Path(path)
    return parse_body(read_text(path, what=WHAT), path.name)


@lru_cache(maxsize=KEPT)
def parse_body(text: str, name: str = "") -> Body:
    """A body from its text; `name` is what its faults are told of.

    Raises:
        InputError: as `load_body`.
    """
    document = parse_document(text, name, BodyFile, what=WHAT)
    given = document.checked.measurements.model_dump(exclude_none=True)  # type: ignore[attr-defined]
    written = document.data["measurements"]
    body = Body(
        name=document.checked.name,
        measurements={key: _measurement(key, given[key], written[key]) for key in given},
        file=document.file,
        age=document.checked.age,
    )
    if faults := refusals(body):
        raise InputError.of(
            [replace(f, place=document.place(("measurements", f.place.key))) for f in faults]
        )
    return body


def _measurement(key: str, size: float, written: str) -> Measurement:
    uncertainty = UNCERTAINTY[known_measurements()[key].kind]
    return Measurement(key, Measured(size, uncertainty), written=written.strip())
