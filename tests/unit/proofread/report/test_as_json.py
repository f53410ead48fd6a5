"""The report as data."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError
from proofread_reports import PROVEN, REPORT

from frogless.proofread.as_json import data
from frogless.proofread.run import proofread


@pytest.fixture(scope="module")
def schema() -> Draft202012Validator:
    """The schema that ships with the package, itself checked."""
    text = files("frogless.proofread").joinpath("schema/proofread.schema.json").read_text("utf-8")
    Draft202012Validator.check_schema(json.loads(text))
    return Draft202012Validator(json.loads(text))


def test_report_is_what_the_contract_promises(schema: Draft202012Validator) -> None:
    """As it is printed."""
    for report in (REPORT, PROVEN):
        found = data(report, remarks=["Read as it stands."])
        schema.validate(json.loads(json.dumps(found)))
        assert found["remarks"] == ["Read as it stands."]


@pytest.mark.parametrize(
    ("key", "value"),
    [("format", "frogless-proofread/2"), ("terms", "fr"), ("rows", [{}]), ("colour", "red")],
)
def test_schema_refuses_what_is_not_promised(
    schema: Draft202012Validator, key: str, value: object
) -> None:
    """It has been seen to fail."""
    with pytest.raises(ValidationError):
        schema.validate(data(REPORT) | {key: value})


def test_row_has_the_numbers_of_each_size() -> None:
    """One entry for each row and size, in their order."""
    rows = data(REPORT)["rows"]
    assert [(row["number"], row["size"]) for row in rows[:3]] == [(1, "S"), (1, "M"), (2, "S")]
    assert rows[4] == {
        "number": 3,
        "name": "Rnd 3",
        "piece": "CROWN",
        "line": 7,
        "size": "S",
        "stated": 20,
        "worked": 18,
        "consumed": 12,
        "available": 12,
        "verdict": "wrong",
    }


def test_sentence_that_explains_a_stitch_is_no_row() -> None:
    """No row is wrong of which nothing is found."""
    text = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
    text += "Picot: ch 3, sl st in 3rd ch from hook.\n"
    assert {row["verdict"] for row in data(proofread(text))["rows"]} == {"ok"}


def test_finding_of_all_sizes_has_no_size() -> None:
    """And one of a size has its name."""
    first, second = data(REPORT)["findings"]
    assert first == {
        "line": 7,
        "row": 3,
        "name": "Rnd 3",
        "piece": "CROWN",
        "size": None,
        "kind": "count",
        "words": "20 sc",
        "says": "20 sc",
        "works_out_to": "18 sc",
        "hint": "The repeat is worked 6 times and makes 3 each time. Two stitches too many are stated.",
        "certainty": "certain",
    }
    assert (second["row"], second["size"]) == (4, "S")


def test_size_that_is_asked_for_is_alone() -> None:
    """Its rows, and the findings that hold for it."""
    found = data(REPORT, "M")
    assert {row["size"] for row in found["rows"]} == {"M"}
    assert [one["row"] for one in found["findings"]] == [3]


def test_what_is_open_stands_with_its_place() -> None:
    """Words that were not understood, and assumptions."""
    found: dict[str, Any] = data(REPORT)
    assert found["understood"] == 0.8765
    assert found["not_understood"] == [
        {"line": 8, "row": "Rnd 4", "words": "as you hear the drum", "guess": "a remark"}
    ]
    assert [one["line"] for one in found["assumptions"]] == [5, None]
    assert (found["terms_from"], found["proven"], found["silenced"]) == (
        "guessed",
        False,
        ["gauge"],
    )
