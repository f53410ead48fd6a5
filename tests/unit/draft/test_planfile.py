"""The plan file: the names that programs rely on, and numbers that are those of the plan."""

from __future__ import annotations

import json
from typing import Any

import pytest
from examples import DESIGNS, Example, drafted

from frogless.publish.planfile import because_data, dump, planfile
from frogless.write.pattern import write_pieces

Json = dict[str, Any]

# The contract of the plan file; more names may stand beside these, none of these may go.
TOP = {"format", "title", "terms", "sizes"}
SIZE = {"size", "body", "pieces", "fit", "materials", "checks"}
ROW = {"number", "section", "side", "count", "added", "removed", "depth_mm", "text"}
FIT = {"at", "depth_mm", "body_mm", "garment_mm", "low_mm", "high_mm", "verdict"}
YARN = {"name", "metres", "metres_low", "metres_high", "grams", "balls"}
CHECK = {"name", "verdict", "detail"}


def plan(design: str = "ring-dance-skirt", body: str = "dancer-3") -> Json:
    """The plan file of an example, as a program reads it."""
    data: Json = json.loads(dump(planfile(drafted(Example(design, body)))))
    return data


@pytest.mark.parametrize("design", DESIGNS)
def test_names_are_those_of_the_contract(design: str) -> None:
    """For the file, its size, its rows and what is known of them."""
    data = plan(design)
    assert set(data) >= TOP
    assert data["format"] == "frogless-plan/1"
    (size,) = data["sizes"]
    assert set(size) >= SIZE
    main = size["pieces"][0]
    assert all(set(row) >= ROW | {"girth_mm"} for row in main["rows"])
    assert all(set(fit) >= FIT for fit in size["fit"])
    assert all(set(yarn) >= YARN for yarn in size["materials"]["yarn"])
    assert size["materials"]["notions"]
    assert all(set(check) >= CHECK for check in size["checks"])


def test_pieces_worked_in_rows_have_a_width() -> None:
    """A waistband is flat; a skirt is round."""
    pieces = {piece["name"]: piece for piece in plan("procession-skirt")["sizes"][0]["pieces"]}
    assert all("width_mm" in row for row in pieces["waistband"]["rows"])
    assert not any("width_mm" in row for row in pieces["skirt"]["rows"])


def test_numbers_are_those_of_the_plan() -> None:
    """Counts, depths and girths, landmark by landmark."""
    found = drafted()
    (size,) = plan()["sizes"]
    rows = {row["number"]: row for row in size["pieces"][0]["rows"]}
    for mark, fit in zip(found.plan.main.landmarks, size["fit"], strict=True):
        row = rows[mark.rounds]
        assert (fit["at"], row["count"]) == (mark.key, mark.count)
        assert row["girth_mm"] == pytest.approx(fit["garment_mm"])
        assert fit["because"][-1]["what"] in {"off", "depth"}
    assert [row["depth_mm"] for row in rows.values()] == pytest.approx(
        found.plan.main.depths, abs=0.01
    )


def test_measurements_are_in_mm_with_the_estimated_ones_named() -> None:
    """Dancer 4 has two lengths estimated."""
    (size,) = plan(body="dancer-4")["sizes"]
    assert size["body"]["waist_girth"] == 1080.0
    assert set(size["estimated"]) == {"waist_to_hip", "waist_to_knee"}
    assert set(size["estimated"]) < set(size["body"])


def test_foundation_adds_nothing_and_shaping_rounds_add_their_points() -> None:
    """ "added" and "removed" are changes against the row before."""
    (size,) = plan()["sizes"]
    main = size["pieces"][0]
    added = {row["number"]: row["added"] for row in main["rows"] if row["added"]}
    shaped = [n for section in main["sections"] for n in section.get("shaping_rows", ())]
    assert main["rows"][0]["added"] == main["rows"][0]["removed"] == 0
    assert [n for n in added if n <= main["sections"][-1]["last_row"]] == shaped


@pytest.mark.parametrize("design", DESIGNS)
def test_rows_are_told_in_the_words_of_the_pattern(design: str) -> None:
    """Also the first row of a piece that is worked into an edge of another one."""
    found = drafted(Example(design))
    (size,) = planfile(found)["sizes"]
    written = write_pieces(found.plan.program, found.stitches, found.dialect)
    for piece, told in zip(size["pieces"], written, strict=True):
        texts = {row["number"]: row["text"] for row in piece["rows"]}
        for line in told.lines:
            if line.first_row == line.last_row:
                assert texts[line.first_row] == f"{line.label}: {line.text} ({line.count})"


def test_because_is_data_with_units() -> None:
    """Rounded so far that no false digit is left that a reader could compute with."""
    steps = because_data(drafted().plan.main.landmarks[0].because)
    assert {"what", "value", "unit", "note", "estimated"} == set(steps[0])
    assert any(step["unit"] == "stitches per 10 cm" for step in steps)


def test_file_is_text_with_its_letters_as_they_are() -> None:
    """Ends with a line break; no letter is written as a code."""
    text = dump({"title": "Röck 🧶"})
    assert text == '{\n "title": "Röck 🧶"\n}\n'
