"""The schema of the plan file accepts what the contract promises and nothing else."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError

Plan = dict[str, Any]


@pytest.fixture(scope="module")
def schema() -> Draft202012Validator:
    """The schema that ships with the package, itself checked."""
    text = files("frogless.publish").joinpath("schema/plan.schema.json").read_text("utf-8")
    Draft202012Validator.check_schema(json.loads(text))
    return Draft202012Validator(json.loads(text))


def plan() -> Plan:
    """A plan that uses every part of the contract once."""
    because = [
        {"what": "hip_girth", "value": 885.0, "unit": "mm"},
        {"what": "ease", "value": 40.0, "unit": "mm", "note": "design"},
        {"what": "exact", "value": 161.9, "unit": "stitches", "estimated": False},
        {"what": "landed", "value": 162, "unit": "stitches", "note": "nearest whole stitch"},
    ]
    rows = [
        {"number": 1, "side": "RS", "count": 126, "girth_mm": 720.0, "depth_mm": 10.5},
        {
            "number": 2,
            "section": "hip",
            "side": "WS",
            "count": 130,
            "added": 4,
            "removed": 0,
            "girth_mm": 742.9,
            "depth_mm": 21.0,
            "text": "Ch 2, …",
            "because": because,
        },
    ]
    size = {
        "size": "Dancer 3",
        "body": {"waist_girth": 720.0, "hip_girth": 885, "waist_to_hip": 200},
        "estimated": ["waist_to_hip"],
        "pieces": [
            {
                "name": "skirt",
                "sections": [
                    {
                        "name": "hip",
                        "stitch": "double_crochet",
                        "first_row": 2,
                        "last_row": 19,
                        "count_before": 126,
                        "count_after": 162,
                        "shape": "cone",
                        "fullness": 0.17,
                        "points": 4,
                        "add": 1,
                        "shaping_rows": [3, 5],
                        "stray_mm": -11.2,
                        "stray_depth_mm": 94.0,
                        "because": because,
                    }
                ],
                "rows": rows,
            },
            {"name": "band", "rows": [{"number": 1, "side": "RS", "count": 9, "width_mm": 45}]},
        ],
        "fit": [
            {
                "at": "hip_girth",
                "depth_mm": 200,
                "body_mm": 885,
                "garment_mm": 925.7,
                "low_mm": 907.0,
                "high_mm": 944.4,
                "verdict": "ok",
                "because": because,
            },
            {
                "at": "hem",
                "depth_mm": 430,
                "body_mm": None,
                "garment_mm": 937.1,
                "low_mm": 918,
                "high_mm": 956,
                "verdict": "ok",
            },
        ],
        "going_on": {
            "verdict": "passes",
            "opening_mm": 720,
            "widest_at": "hip_girth",
            "widest_mm": 885,
        },
        "materials": {
            "yarn": [
                {
                    "name": "main",
                    "metres": 436.0,
                    "metres_low": 410.0,
                    "metres_high": 465.0,
                    "grams": 182.0,
                    "balls": 4,
                }
            ],
            "notions": [{"name": "elastic", "pieces": 1, "length_mm": 660.0}],
        },
        "remarks": [{"name": "estimated", "sentence": "Waist to hip is estimated."}],
        "cautions": [{"name": "cord", "sentence": "No long cords.", "source": "EN 14682"}],
        "checks": [{"name": "counts", "verdict": "pass", "detail": "41 rows"}],
    }
    return {"format": "frogless-plan/1", "title": "Sunday skirt", "terms": "us", "sizes": [size]}


def test_plan_is_valid_when_it_keeps_the_contract(schema: Draft202012Validator) -> None:
    """A plan with every part of the contract passes."""
    assert list(schema.iter_errors(plan())) == []


def _row(sample: Plan) -> Plan:
    row: Plan = sample["sizes"][0]["pieces"][0]["rows"][1]
    return row


FAULTS: dict[str, Callable[[Plan], object]] = {
    "another format": lambda p: p.update(format="frogless-plan/2"),
    "no title": lambda p: p.pop("title"),
    "unknown terms": lambda p: p.update(terms="de"),
    "unknown key at the top": lambda p: p.update(colour="green"),
    "no size": lambda p: p.update(sizes=[]),
    "measurement below zero": lambda p: p["sizes"][0]["body"].update(waist_girth=-1),
    "measurement as text": lambda p: p["sizes"][0]["body"].update(waist_girth="72 cm"),
    "measurement with a capital": lambda p: p["sizes"][0]["body"].update(Waist=720),
    "piece without rows": lambda p: p["sizes"][0]["pieces"][0].update(rows=[]),
    "half a stitch": lambda p: _row(p).update(count=130.5),
    "stitches below zero": lambda p: _row(p).update(added=-4),
    "third side": lambda p: _row(p).update(side="LS"),
    "girth and width in one row": lambda p: _row(p).update(width_mm=742.9),
    "row without its number": lambda p: _row(p).pop("number"),
    "unknown key in a row": lambda p: _row(p).update(stitches=130),
    "empty because": lambda p: _row(p).update(because=[]),
    "because in another unit": lambda p: _row(p)["because"][0].update(unit="cm"),
    "because without a value": lambda p: _row(p)["because"][0].pop("value"),
    "unknown verdict of the fit": lambda p: p["sizes"][0]["fit"][0].update(verdict="good"),
    "fit without its interval": lambda p: p["sizes"][0]["fit"][0].pop("low_mm"),
    "half a ball": lambda p: p["sizes"][0]["materials"]["yarn"][0].update(balls=3.5),
    "no materials": lambda p: p["sizes"][0].pop("materials"),
    "unknown verdict of a check": lambda p: p["sizes"][0]["checks"][0].update(verdict="ok"),
    "unknown shape": lambda p: p["sizes"][0]["pieces"][0]["sections"][0].update(shape="bell"),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_plan_is_refused_when_it_breaks_the_contract(
    schema: Draft202012Validator, fault: str
) -> None:
    """Each way of breaking the contract is noticed."""
    broken = copy.deepcopy(plan())
    FAULTS[fault](broken)
    with pytest.raises(ValidationError):
        schema.validate(broken)
