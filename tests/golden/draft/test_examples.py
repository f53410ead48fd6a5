"""Every example of designs/ for every body and swatch: drafted as the table says, or refused."""

from __future__ import annotations

import csv
import importlib.util
import json
from importlib.resources import files
from itertools import pairwise
from pathlib import Path
from types import ModuleType
from typing import Any

import pikepdf
import pytest
from examples import Example, drafted, every_example
from jsonschema import Draft202012Validator

from frogless import draft
from frogless.draft import DIALECTS, outputs
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.publish.drafted import Drafted
from frogless.publish.planfile import dump, planfile
from frogless.read.build import read_program
from frogless.write.pattern import write_pieces, write_program

HERE = Path(__file__).parent
Json = dict[str, Any]


def regenerate() -> ModuleType:
    """The script beside this file."""
    spec = importlib.util.spec_from_file_location("regenerate", HERE / "regenerate.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


SCRIPT = regenerate()


def drafts() -> list[Example]:
    """The examples that can be drafted, as the table says."""
    lines = SCRIPT.TABLE.read_text(encoding="utf-8").splitlines()[1:]
    return [Example(*line.split(",")[:3]) for line in lines if line.split(",")[3] == "drafted"]


@pytest.fixture(scope="module")
def schema() -> Draft202012Validator:
    """The schema that ships with the package."""
    text = files("frogless.publish").joinpath("schema/plan.schema.json").read_text("utf-8")
    return Draft202012Validator(json.loads(text))


@pytest.mark.parametrize("design", dict.fromkeys(e.design for e in every_example()))
def test_examples_come_out_as_the_table_says(design: str) -> None:
    """Counts and rounds at every landmark, or the refusal; regenerate.py writes the table anew."""
    head, *lines = SCRIPT.TABLE.read_text(encoding="utf-8").splitlines(keepends=True)
    told = head + "".join(line for line in lines if line.startswith(f"{design},"))
    assert not SCRIPT.difference(told, SCRIPT.table(design))


def test_table_tells_of_no_other_designs() -> None:
    """What was taken away is taken out of the table."""
    with SCRIPT.TABLE.open(encoding="utf-8", newline="") as file:
        told = {line["design"] for line in csv.DictReader(file)}
    assert told == {example.design for example in every_example()}


def test_table_has_every_example_of_the_issue() -> None:
    """Three designs at least, five bodies, three swatches; most can be drafted."""
    everything = list(every_example())
    assert len({e.design for e in everything}) >= 3
    assert (len({e.body for e in everything}), len({e.swatch for e in everything})) == (5, 3)
    assert len(drafts()) >= 0.8 * len(everything)


@pytest.mark.parametrize("example", drafts(), ids=lambda e: f"{e.design}-{e.body}-{e.swatch}")
def test_draft_is_consistent_in_every_form(example: Example, schema: Draft202012Validator) -> None:
    """The plan file is valid and adds up; US and UK text read back to the same fabric."""
    found = drafted(example)
    plan = json.loads(dump(planfile(found)))
    schema.validate(plan)
    assert_adds_up(plan)
    for dialect in DIALECTS:
        text = write_program(found.plan.program, found.stitches, dialect)
        again = expand(read_program(text, found.stitches, dialect), found.stitches)
        assert same(found.fabric, again) is None


def assert_adds_up(plan: Json) -> None:
    """Each count is the one before with what is added and removed."""
    for piece in plan["sizes"][0]["pieces"]:
        rows = piece["rows"]
        for before, row in pairwise(rows):
            assert row["count"] == before["count"] + row["added"] - row["removed"]
            assert row["number"] == before["number"] + 1


@pytest.mark.parametrize("design", sorted({e.design for e in drafts()}))
def test_plain_text_has_the_lines_that_were_proven(design: str) -> None:
    """Every line that `write` gives stands in pattern.txt, word for word, once it is unwrapped."""
    found = drafted(Example(design))
    text = " ".join(outputs(found)["pattern.txt"].decode().split())
    pieces = write_pieces(found.plan.program, found.stitches, found.dialect)
    lines = [line for piece in pieces for line in piece.lines]
    assert lines
    for line in lines:
        assert f"{line.label}: {line.text} ({line.count})" in text


@pytest.fixture(scope="module", params=["ring-dance-skirt", "procession-skirt"])
def published(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of a published pattern."""
    folder = tmp_path_factory.mktemp("out")
    draft.publish(drafted(Example(request.param)), folder)
    return folder


def test_published_folder_holds_the_five_files(published: Path) -> None:
    """And nothing else: no trace of how they were written."""
    assert sorted(path.name for path in published.iterdir()) == [
        "pattern.html",
        "pattern.pdf",
        "pattern.txt",
        "plan.json",
        "schematic.svg",
    ]


def test_published_pdf_is_tagged(published: Path) -> None:
    """With title and language, and each picture told in words."""
    with pikepdf.open(published / "pattern.pdf") as pdf:
        assert pdf.Root.MarkInfo.Marked
        assert str(pdf.Root.Lang) == "en-US"
        assert "skirt" in str(pdf.docinfo["/Title"])


def landed(found: Drafted) -> bool:
    """Whether the edging's repeats fill its base."""
    edging = found.plan.main.edging
    return edging is None or (edging.base_count - edging.offset) % edging.multiple == 0


def test_edging_repeats_are_met_in_every_draft() -> None:
    """Whether the hem lands on the multiple or a first round makes up for it."""
    assert all(landed(drafted(example)) for example in drafts())
