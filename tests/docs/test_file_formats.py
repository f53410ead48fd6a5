"""The pages of the body, swatch and plan file name every key, and no key that is not there."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from pages import examples, named, page, papers, part, rows

from frogless.body.estimate import estimates
from frogless.body.load import BodyFile, load_body
from frogless.body.measurements import Known, known_measurements
from frogless.swatch import load_swatch
from frogless.swatch_file import STITCH_NAMES, ReadingTable, SwatchFile, YarnTable

BODY = page("body-format.md")
SWATCH = page("swatch-format.md")
PLAN = page("plan-file.md")
SCHEMA = json.loads(
    files("frogless.publish").joinpath("schema/plan.schema.json").read_text(encoding="utf-8")
)


def bare(names: list[str]) -> set[str]:
    """Keys without the brackets of their tables."""
    return {name.strip("[]") for name in names}


def test_body_page_names_every_key_of_the_file() -> None:
    """The keys beside the measurements."""
    before = BODY[: BODY.index("## Measurements")]
    assert bare(named(before)) == set(BodyFile.model_fields)


def test_body_page_names_every_measurement_with_its_limits() -> None:
    """What is usual and what is accepted are those of the data file."""
    told = list(rows(part(BODY, "## Measurements")))[1:]
    assert [cells[0].strip("`") for cells in told] == list(known_measurements())
    assert [cells[1:] for cells in told] == [_told(k) for k in known_measurements().values()]


def _told(known: Known) -> list[str]:
    unit, factor = ("kg", 1000) if known.kind == "mass" else ("cm", 10)
    usual, accepted = (known.low, known.high), (known.least, known.most)
    spans = [f"{a / factor:g} to {b / factor:g} {unit}" for a, b in (usual, accepted)]
    return [known.how_taken, *spans]


def test_body_page_names_every_estimate() -> None:
    """From what, and how sure."""
    told = list(rows(part(BODY, "## What is estimated?")))[1:]
    assert [(cells[0].strip("`"), cells[2]) for cells in told] == [
        (one.key, f"{one.uncertainty / 10:g} cm") for one in estimates()
    ]


@pytest.mark.parametrize(
    ("heading", "model"),
    [("## The file", SwatchFile), ("## `[yarn]`", YarnTable), ("## `[[reading]]`", ReadingTable)],
)
def test_swatch_page_names_every_key(heading: str, model: type[SwatchFile]) -> None:
    """Each table of the file has a table on the page."""
    assert bare(named(part(SWATCH, heading))) == set(model.model_fields)


def test_swatch_page_names_every_stitch() -> None:
    """The abbreviations that a swatch file may use."""
    told = {cells[0].strip("`"): cells[1] for cells in rows(part(SWATCH, "## Stitches"))}
    told.pop("write")
    assert told == {short: key.replace("_", " ") for short, key in STITCH_NAMES.items()}


def properties(schema: Mapping[str, Any]) -> Iterator[str]:
    """Every key that a plan file may have, at any depth."""
    for key, inner in schema.items():
        if key == "properties":
            yield from inner
        if isinstance(inner, dict):
            yield from properties(inner)


def test_plan_page_names_every_key() -> None:
    """Each key of the schema stands on the page, in code."""
    assert [key for key in properties(SCHEMA) if f"`{key}`" not in PLAN] == []


def test_plan_page_names_no_key_that_is_gone() -> None:
    """What its tables name is in the schema."""
    assert set(named(PLAN)) - set(properties(SCHEMA)) - {"going_on"} == set()


def test_plan_page_shows_a_plan_that_holds() -> None:
    """The example is a plan file."""
    (example,) = examples(PLAN, "json")
    Draft202012Validator(SCHEMA).validate(json.loads(example))


EXAMPLES = [
    pytest.param(text, id=f"{paper.name}-{number}")
    for paper in papers()
    for number, text in enumerate(examples(paper.read_text(encoding="utf-8"), "toml"))
    if text.startswith('format = "frogless-')
]


@pytest.mark.parametrize("text", EXAMPLES)
def test_example_file_is_accepted(text: str, tmp_path: Path) -> None:
    """What the papers show can be copied."""
    file = tmp_path / "example.toml"
    file.write_text(text, encoding="utf-8")
    kind = text.split("-")[1].split("/")[0]
    loaded = {"body": load_body, "swatch": load_swatch}
    if kind in loaded:
        assert loaded[kind](file).name
    else:
        assert kind == "design"
