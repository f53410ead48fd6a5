"""The form as documents, and documents as the form: what the form cannot hold stays text."""

from __future__ import annotations

import re
import tempfile
import tomllib
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import tomlkit

from frogless.body.load import BodyFile, load_body
from frogless.body.measurements import Body
from frogless.errors import InputError
from frogless.files import read_document
from frogless.studio.drafting.fields import (
    PATTERN_READING,
    Group,
    Values,
    body_groups,
    is_pattern,
    pattern_of,
    pattern_token,
    respelled,
    swatch_groups,
    units_of,
    with_unit,
)
from frogless.swatch import Swatch, load_swatch
from frogless.swatch_file import SwatchFile, stitch_key
from frogless.toml_text import in_plain_words
from frogless.units import Units, parse_number

PLAIN = ("stitches", "width", "rows", "height", "mass", "stretched_width")
HUNG = {
    "width": ("stitches", "hung_width"),
    "height": ("rows", "hung_height"),
    "load": ("", "load"),
}
"""A hung reading's sizes: the count that each belongs to, and the field it is written in."""

YARN = "yarn_"

Reading = dict[str, tuple[object, str]]
"""A reading's keys with their values and the fields that these are written in."""


@dataclass(frozen=True, slots=True)
class Written:
    """A document as text, and the field that each of its keys comes from."""

    text: str
    fields: Mapping[str, str]


def body_document(values: Values, groups: Iterable[Group]) -> Written:
    """The body of the form as a file, or the text that stands in for the form."""
    if text := values.get("body_text"):
        return Written(text, {})
    filled = _filled(values, groups, "body-")
    table: dict[str, Any] = {"format": "frogless-body/1", "name": filled.pop("name", "")}
    if age := filled.pop("age", ""):
        table["age"] = _number(age)
    table["measurements"] = filled
    fields = {f"measurements.{key}": f"body-{key}" for key in _names(groups, "body-")}
    return Written(tomlkit.dumps(table), {"name": "body-name", "age": "body-age", **fields})


def swatch_document(values: Values, groups: Iterable[Group]) -> Written:
    """The swatch of the form as a file, or the text that stands in for the form."""
    if text := values.get("swatch_text"):
        return Written(text, {})
    groups = tuple(groups)
    names = _names(groups, "swatch-")
    filled = _filled(values, groups, "swatch-")
    stitches = dict.fromkeys(name.partition("-")[0] for name in names if "-" in name)
    readings = [reading for stitch in stitches for reading in _readings(stitch, filled)]
    plain = [stitch for stitch in stitches if not is_pattern(stitch)]
    weighed = (stitch for stitch in stitches if f"{stitch}-mass" in filled)
    table: dict[str, Any] = {
        "format": "frogless-swatch/1",
        "name": filled.get("name", ""),
        "stitch": values.get("swatch-main") or next(weighed, plain[0]),
        "hook": filled.get("hook", ""),
        "yarn": _yarn(filled),
        "reading": [{k: value for k, (value, _) in r.items() if value != ""} for r in readings],
    }
    fields = {
        f"reading[{n}].{key}": name
        for n, reading in enumerate(readings, 1)
        for key, (_, name) in reading.items()
    }
    fields |= {_key(name): f"swatch-{name}" for name in names}
    return Written(tomlkit.dumps(table), fields)


def _key(name: str) -> str:
    return name.replace(YARN, "yarn.", 1) if name.startswith(YARN) else name


def _yarn(filled: Mapping[str, str]) -> dict[str, object]:
    given = {k.removeprefix(YARN): v for k, v in filled.items() if k.startswith(YARN)}
    return {k: _number(v) if k in ("category", "plies") else v for k, v in given.items()}


def _readings(stitch: str, filled: Mapping[str, str]) -> Iterator[Reading]:
    """The reading of a stitch, and the one of it hung; none of a stitch that was left empty."""

    def one(part: str) -> tuple[object, str]:
        name = f"{stitch}-{part}"
        return _number(filled.get(name, "")), f"swatch-{name}"

    if is_pattern(stitch):
        yield from _in_pattern(stitch, {part: one(part) for part in PATTERN_READING}, filled)
        return
    plain = {part: one(part) for part in PLAIN}
    if any(value != "" for value, _ in plain.values()):
        state = (filled.get("state", ""), "swatch-state")
        yield {"state": state, "stitch": (stitch, f"swatch-{stitch}-stitches"), **plain}
    hung = {key: one(part) for key, (_, part) in HUNG.items() if one(part)[0] != ""}
    if hung:
        hung |= {count: one(count) for key, (count, _) in HUNG.items() if key in hung and count}
        place = f"swatch-{stitch}-hung_height"
        yield {"state": ("hung", place), "stitch": (stitch, place), **hung}


def _in_pattern(token: str, read: Reading, filled: Mapping[str, str]) -> Iterator[Reading]:
    """The reading of a stitch pattern; none of one that was left empty."""
    if all(value == "" for value, _ in read.values()):
        return
    key, numbers = pattern_of(token)
    place = f"swatch-{token}-repeats"
    state = (filled.get("state", ""), "swatch-state")
    yield {"state": state, "pattern": (key, place), "parameters": (numbers or "", place), **read}


def body_values(text: str, units: Units) -> Values | None:
    """A body file as what the form would hold; None when the form cannot hold all of it."""
    with as_file(text, "body.toml") as path:
        body = load_body(path)
        document = read_document(path, BodyFile, what="body file")
    written = document.data["measurements"]
    values = {f"body-{key}": size.strip() for key, size in written.items()}
    values |= {"body-name": body.name, "units": units}
    if body.age is not None:
        values["body-age"] = f"{body.age:g}"
    groups = body_groups(None, values)
    values = respelled(values, groups, units, units)
    composed = body_document(values, groups)
    with as_file(composed.text, "body.toml") as path:
        return values if _same_body(load_body(path), body) else None


def _same_body(one: Body, other: Body) -> bool:
    def bare(body: Body) -> Body:
        sizes = {key: replace(m, written="") for key, m in body.measurements.items()}
        return replace(body, measurements=sizes)

    return bare(one) == bare(other)


def swatch_values(text: str, units: Units) -> Values | None:
    """A swatch file as what the form would hold; None when the form cannot hold all of it."""
    with as_file(text, "swatch.toml") as path:
        swatch = load_swatch(path)
        data = read_document(path, SwatchFile, what="swatch file").data
    values = {"swatch-name": swatch.name, "swatch-main": swatch.stitch, "units": units}
    values["swatch-hook"] = data["hook"].strip()
    values |= {f"swatch-yarn_{key}": str(value) for key, value in data.get("yarn", {}).items()}
    for reading in data["reading"]:
        values |= _reading_values(dict(reading), swatch.stitch)
    groups = swatch_groups(None, values)
    values = respelled(values, groups, units, units)
    composed = swatch_document(values, groups)
    try:
        with as_file(composed.text, "swatch.toml") as path:
            return values if _same_swatch(load_swatch(path), swatch) else None
    except InputError:
        return None


def _reading_values(reading: dict[str, Any], main: str) -> dict[str, str]:
    state = reading.pop("state")
    if "pattern" in reading:
        token = pattern_token(reading.pop("pattern"), reading.pop("parameters", {}))
        values = {f"swatch-{token}-{key}": str(value) for key, value in reading.items()}
        return values | {"swatch-state": state}
    stitch = stitch_key(reading.pop("stitch", main))
    names = {key: part for key, (_, part) in HUNG.items()} if state == "hung" else {}
    values = {
        f"swatch-{stitch}-{names.get(key, key)}": str(value) for key, value in reading.items()
    }
    return values if state == "hung" else values | {"swatch-state": state}


def _same_swatch(one: Swatch, other: Swatch) -> bool:
    def ordered(swatch: Swatch) -> Swatch:
        return replace(swatch, readings=tuple(sorted(swatch.readings, key=repr)))

    return ordered(one) == ordered(other)


@contextmanager
def as_file(text: str, name: str) -> Iterator[Path]:
    """A text as a file, for as long as it is read."""
    with tempfile.TemporaryDirectory(prefix="frogless-") as folder:
        path = Path(folder) / name
        path.write_text(text, encoding="utf-8", newline="")
        yield path


def _names(groups: Iterable[Group], prefix: str) -> tuple[str, ...]:
    fields = (field for group in groups for field in group.fields)
    return tuple(field.name.removeprefix(prefix) for field in fields)


def _filled(values: Values, groups: Iterable[Group], prefix: str) -> dict[str, str]:
    """What is filled in, by key, each size with its unit."""
    fields = [field for group in groups for field in group.fields]
    written = {f.name: with_unit(values.get(f.name, ""), f.kind, units_of(values)) for f in fields}
    return {name.removeprefix(prefix): text for name, text in written.items() if text}


def _number(text: str) -> int | float | str:
    """A number where it is one; the library says what is wrong with anything else."""
    try:
        number = parse_number(text)
    except InputError:
        return text
    return int(number) if number.is_integer() else number


def name_in(text: str) -> str:
    """What a document calls itself.

    Raises:
        InputError: it is not TOML, so it cannot say.
    """
    try:
        data = tomllib.loads(text)
    except ValueError as error:
        reason, line = in_plain_words(str(error), text, None), ""
        if found := re.search(r"\(at line (\d+), column \d+\)", str(error)):
            reason = in_plain_words(str(error).replace(found[0], "").strip(), text, int(found[1]))
            line = f"line {found[1]}: "
        raise InputError(
            f"it is not valid TOML, so it has no name to be saved under: {line}{reason}"
        ) from None
    return str(data.get("title") or data.get("name") or "")
