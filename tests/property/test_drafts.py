"""Any body, any gauge, any example: a sound pattern, or a refusal that says what to change."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from examples import DESIGNS, Example, write_files
from hypothesis import event, given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from frogless import draft
from frogless.errors import FroglessError, Impossible, InputError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.publish.drafted import Drafted
from frogless.publish.planfile import dump, planfile
from frogless.read.build import read_program
from frogless.stitches.model import Dialect
from frogless.units import Units
from frogless.write.pattern import write_program

Json = dict[str, Any]

# Row height over stitch width, from flat to tall (common practice), and the fabrics the examples need.
SHAPES = {"sc": (0.8, 1.1), "hdc": (1.1, 1.6), "dc": (1.6, 2.3), "sc_blo": (0.8, 1.2)}


@st.composite
def bodies(draw: st.DrawFn) -> str:
    """A body file: girths from slim to very large, lengths from short to tall, some not measured."""
    waist = draw(st.integers(560, 1500))
    hip = max(int(waist * draw(st.floats(0.98, 1.5))), 760)
    lengths = {"waist_girth": waist, "hip_girth": min(hip, 1800)}
    down = draw(st.integers(160, 270))
    if draw(st.booleans()):
        lengths["waist_to_hip"] = down
        if draw(st.booleans()):
            lengths["waist_to_high_hip"] = int(down * draw(st.floats(0.4, 0.6)))
            share = draw(st.floats(0.4, 0.9))
            lengths["high_hip_girth"] = int(waist + (lengths["hip_girth"] - waist) * share)
    if draw(st.booleans()):
        lengths["waist_to_knee"] = draw(st.integers(500, 700))
    told = "\n".join(f'{key} = "{value} mm"' for key, value in lengths.items())
    return f'format = "frogless-body/1"\nname = "Anybody"\n[measurements]\n{told}\n'


@st.composite
def swatches(draw: st.DrawFn) -> str:
    """A swatch file: from fine to bulky, in every stitch, perhaps hung, weighed and stretched."""
    width = draw(st.floats(3.0, 10.0))
    readings = [
        reading(draw, stitch, width * draw(st.floats(0.95, 1.05)), shape)
        for stitch, shape in SHAPES.items()
    ]
    head = 'format = "frogless-swatch/1"\nname = "any yarn"\nstitch = "dc"\nhook = "4 mm"\n[yarn]\n'
    return head + "plies = 4\nball_mass = '50 g'\n" + "".join(readings)


def reading(draw: st.DrawFn, stitch: str, width: float, shape: tuple[float, float]) -> str:
    """One reading over 15 cm or a little more."""
    height = width * draw(st.floats(*shape))
    stitches, rows = int(150 / width) + 1, int(150 / height) + 1
    wide, high = stitches * width, rows * height
    told = (
        f'[[reading]]\nstitch = "{stitch}"\nstate = "washed"\nstitches = {stitches}\n'
        f'width = "{wide:.1f} mm"\nrows = {rows}\nheight = "{high:.1f} mm"\n'
    )
    if draw(st.booleans()):
        told += f'stretched_width = "{wide * draw(st.floats(1.05, 1.4)):.1f} mm"\n'
    if draw(st.booleans()):
        told += f'mass = "{draw(st.integers(5, 40))} g"\n'
    return told


@cache
def schema() -> Draft202012Validator:
    """The schema that ships with the package."""
    text = files("frogless.publish").joinpath("schema/plan.schema.json").read_text("utf-8")
    return Draft202012Validator(json.loads(text))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """For the files of one draft after the other."""
    return tmp_path_factory.mktemp("any")


def tried(folder: Path, texts: Mapping[str, str], units: Units) -> Drafted | FroglessError:
    """The draft or its refusal."""
    paths = [Path(a) for a in write_files(folder, texts) if a.endswith(".toml")]
    try:
        return draft.draft(draft.Request(paths[0], paths[1], (paths[2],), units=units)).drafted
    except (InputError, Impossible) as error:
        return error


@given(
    design=st.sampled_from(DESIGNS),
    body=bodies(),
    swatch=swatches(),
    dialect=st.sampled_from(draft.DIALECTS),
    units=st.sampled_from(("cm", "in")),
)
@settings(max_examples=30, deadline=None)
def test_any_draft_is_sound(
    folder: Path, design: str, body: str, swatch: str, dialect: Dialect, units: Units
) -> None:
    """The plan file is valid and adds up, multiples are met, landmarks fit, the text reads back."""
    texts = {**Example(design).texts(), "body.toml": body, "swatch.toml": swatch}
    found = tried(folder, texts, units)
    if isinstance(found, FroglessError):
        assert_helps(found)
        return
    event("drafted")
    plan: Json = json.loads(dump(planfile(found)))
    schema().validate(plan)
    assert_adds_up(plan)
    assert_lands(found)
    text = write_program(found.plan.program, found.stitches, dialect)
    again = expand(read_program(text, found.stitches, dialect), found.stitches)
    assert same(found.fabric, again) is None


def assert_helps(refusal: FroglessError) -> None:
    """It says where and what; of the impossible, what would make it possible."""
    event(f"{type(refusal).__name__} {refusal.faults[0].place.key}")
    assert all(str(fault.place) and fault.message for fault in refusal.faults)
    assert not isinstance(refusal, Impossible) or refusal.ways_out


def assert_adds_up(plan: Json) -> None:
    """From row to row, from section to section, and from the rows to the landmarks."""
    (size,) = plan["sizes"]
    for piece in size["pieces"]:
        for before, row in pairwise(piece["rows"]):
            assert row["count"] == before["count"] + row["added"] - row["removed"]
    main = size["pieces"][0]
    counts = {row["number"]: row["count"] for row in main["rows"]}
    for section in main["sections"]:
        assert section["count_before"] == counts[section["first_row"] - 1]
        assert section["count_after"] == counts[section["last_row"]]
    for mark in size["fit"]:
        assert mark["low_mm"] <= mark["garment_mm"] <= mark["high_mm"]
        assert mark["verdict"] == "ok"


def assert_lands(found: Drafted) -> None:
    """The edging's repeats fill its base; every shaped section changes by whole steps."""
    edging = found.plan.main.edging
    assert edging is None or (edging.base_count - edging.offset) % edging.multiple == 0
    for section in found.plan.main.sections:
        if section.chosen is not None:
            change = abs(section.count_after - section.count_before)
            step = section.chosen.points * section.chosen.add
            assert change == step * len(section.chosen.rhythm.rounds)
