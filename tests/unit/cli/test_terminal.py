"""The summary on a terminal: short, aligned, in both units."""

from __future__ import annotations

import unicodedata
from dataclasses import replace
from pathlib import Path

import pytest
from examples import Example, drafted
from one_piece import alter

from frogless.fit.model import Caution, LandmarkFit
from frogless.publish.drafted import Drafted
from frogless.publish.terminal import summary
from frogless.units import Units

LONG = "a section with a name that goes on for a very long while indeed, and then some"


def lines(found: Drafted, columns: int = 100) -> list[str]:
    """The summary without questions and files."""
    return summary(found, (), (), columns).splitlines()


def table(found: Drafted) -> list[str]:
    """The header and the rows of the landmarks."""
    told = lines(found)
    begin = next(i for i, line in enumerate(told) if "stitches  round" in line)
    return told[begin : begin + 1 + len(found.plan.main.landmarks)]


def cells(text: str) -> int:
    """Columns of a terminal that a text takes."""
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    return len(text) + wide - sum(bool(unicodedata.combining(letter)) for letter in text)


def named(name: str) -> Drafted:
    """The example with another name for its last section."""
    found = drafted()
    *others, last = found.plan.main.sections
    sections = (*others, replace(last, name=name))
    return replace(found, plan=alter(found.plan, sections=sections))


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("design", ["ring-dance-skirt", "whirl-skirt", "procession-skirt"])
def test_numbers_stand_under_their_headings(design: str, units: Units) -> None:
    """Each ends where its heading ends, with two blanks between columns at least."""
    header, *rows = table(drafted(Example(design), units))
    end = header.index("stitches") + len("stitches")
    for row in rows:
        assert row[:end].split()[-1].isdigit()
        assert row[end : end + 2] == "  "
        assert len(row) == len(header)


@pytest.mark.parametrize("columns", [60, 80, 100])
@pytest.mark.parametrize("name", ["hip to hem", LONG, "スカートの裾まで", "é́́́"])
def test_text_stays_in_its_column(name: str, columns: int) -> None:
    """Long names are cut off, wide letters counted, texts wrapped beside their labels."""
    told = lines(named(name), columns)
    assert max(map(cells, told[8:])) <= columns
    entries = told[told.index("", 3) + 1 :]
    labels = [line for line in entries if not line.startswith(" ")]
    assert any(label.startswith(name[:8]) for label in labels)
    margin = next(len(line) - len(line.lstrip()) for line in entries if line.startswith(" "))
    (label,) = [line for line in labels if line.startswith(name[:8])]
    assert cells(label[: label.index("  rounds")]) <= margin - 2
    assert cells(label[: label.index("rounds")]) == margin


def test_summary_is_short() -> None:
    """It fits on a page of a terminal."""
    assert len(lines(drafted())) <= 26


def test_sections_yarn_and_proof_are_told() -> None:
    """Rounds and counts, the rhythm, an interval, and how many checks pass."""
    told = " ".join(" ".join(lines(drafted())).split())
    assert "band rounds 1–2: 152 stitches" in told
    assert "waist to hip rounds 3–18: 152 to 192 stitches at 8 shaping points on round 5" in told
    assert "edging picot edging, 62 repeats on 248 stitches" in told
    assert "634 m (566 m to 701 m)" in told
    assert "of 18 checks pass, 1 warns" in told


def test_warnings_are_told_once() -> None:
    """Questions about the files first."""
    told = summary(drafted(), ("Is it so?", "Is it so?"), ()).splitlines()
    warnings = [line for line in told if line.startswith("warning")]
    assert warnings[0].endswith("  Is it so?")
    assert len(set(warnings)) == len(warnings) == 2


def test_estimates_and_verdicts_are_marked() -> None:
    """With a star and a line that explains it; with a word beside the row."""
    found = drafted()
    marks: list[LandmarkFit] = list(found.fit.landmarks)
    marks[1] = replace(marks[1], estimated=True)
    marks[2] = replace(marks[2], verdict="tight")
    odd = replace(found, fit=replace(found.fit, landmarks=tuple(marks)))
    told = lines(odd)
    assert "91 cm*" in told[4]
    assert told[5].endswith("21 cm  tight")
    assert "* estimated from a survey, not measured" in told


def test_depths_that_rest_on_an_estimate_are_marked() -> None:
    """Each with a star, and what was estimated from what below the table."""
    found = drafted()
    known = dict(found.basis.body.measurements)
    known["waist_to_hip"] = replace(
        known["waist_to_hip"], estimated=True, source="estimated from stature"
    )
    body = replace(found.basis.body, measurements=known)
    told = lines(replace(found, basis=replace(found.basis, body=body)))
    assert any(line.endswith("cm*") for line in told[3:6])
    assert "* depth estimated from stature: waist to hip" in told


@pytest.mark.parametrize(
    ("body", "garment", "ease"), [(752.0, 854.0, "+10.5 cm"), (752.0, 848.0, "+10 cm")]
)
def test_ease_is_the_difference_of_what_is_shown(body: float, garment: float, ease: str) -> None:
    """Whatever was rounded away: the columns of a row subtract."""
    found = drafted()
    first, *others = found.fit.landmarks
    marks = (replace(first, body=body, garment=garment), *others)
    told = lines(replace(found, fit=replace(found.fit, landmarks=marks)))
    assert ease in told[3]


def test_one_ball_is_one_ball() -> None:
    """And a repeat of one stitch is not told."""
    found = drafted()
    need = replace(found.tally.yarn[0], balls=1)
    assert found.plan.main.edging is not None
    edging = replace(found.plan.main.edging, multiple=1, repeats=248)
    told = lines(
        replace(
            found,
            tally=replace(found.tally, yarn=(need,)),
            plan=alter(found.plan, edging=edging),
        )
    )
    assert any("; 1 ball, 11 % to spare" in line for line in told)
    assert any(line.endswith("picot edging on 248 stitches") for line in told)


def test_cautions_of_the_garment_are_told_before_the_warnings() -> None:
    """Those of the work of making are left to the pattern."""
    found = drafted()
    hem = Caution("long_hem", "The hem is narrow.", "common practice")
    hands = Caution("hands", "Pause.", "common practice")
    told = lines(replace(found, fit=replace(found.fit, cautions=(hem, hands))))
    assert [line.split(maxsplit=1) for line in told if line.startswith("caution")] == [
        ["caution", "The hem is narrow."]
    ]
    first = next(i for i, line in enumerate(told) if line.startswith("warning"))
    assert any(line.startswith("caution") for line in told[:first])


def test_files_are_told_with_their_folder() -> None:
    """In one entry."""
    told = summary(drafted(), (), (Path("out/a.txt"), Path("out/b.txt")))
    assert told.splitlines()[-1].endswith("  a.txt, b.txt in out")
