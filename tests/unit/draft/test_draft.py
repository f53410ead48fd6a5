"""The pipeline from three files to a proven pattern."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from examples import Example, drafted, write_files

from frogless import draft
from frogless.body.load import load_body
from frogless.design.load import read_design
from frogless.draft import Request
from frogless.errors import Impossible, InputError, Place
from frogless.swatch import load_swatch

RING = Example()


def request_for(folder: Path, example: Example = RING, **changes: tuple[str, str]) -> Request:
    """The request for a changed copy of an example: `design=(old, new)`."""
    texts = example.texts()
    for file, (old, new) in changes.items():
        assert old in texts[f"{file}.toml"]
        texts[f"{file}.toml"] = texts[f"{file}.toml"].replace(old, new)
    paths = [Path(a) for a in write_files(folder, texts) if a.endswith(".toml")]
    return Request(paths[0], paths[1], (paths[2],))


def asked(example: Example) -> Request:
    """The request for an example as it is."""
    design, body, swatch = example.files
    return Request(design, body, (swatch,))


def test_draft_is_proven_and_says_what_to_ask() -> None:
    """No check fails; the example's files raise no question."""
    made = draft.draft(asked(RING))
    assert made.drafted.findings
    assert all(finding.verdict != "fail" for finding in made.drafted.findings)
    assert made.questions == ()


def test_odd_files_are_asked_about(tmp_path: Path) -> None:
    """Of the body and of the swatch, each in a sentence."""
    made = draft.draft(
        request_for(
            tmp_path,
            body=('waist_to_knee = "58 cm"', 'waist_to_knee = "58 cm"\nstature = "215 cm"'),
            swatch=('state = "washed"', 'state = "as worked"'),
        )
    )
    assert any("stature 215 cm lies outside" in question for question in made.questions)
    assert any("was not read after washing" in question for question in made.questions)


def test_request_decides_terms_and_units() -> None:
    """As they are shown; the plan itself stays as it is."""
    inches = draft.draft(replace(asked(RING), terms="uk", units="in")).drafted
    assert (inches.dialect, inches.units) == ("uk", "in")
    assert inches.plan.program == drafted(RING).plan.program


def test_needed_measurements_are_those_of_landmarks_and_formulas() -> None:
    """Each once; a design's own lengths are no measurements."""
    design = read_design(RING.files[0]).checked
    assert draft.needed(design, lambda key: Place(key=key)) == (
        "waist_girth",
        "hip_girth",
        "waist_to_hip",
        "waist_to_knee",
    )


def test_missing_lengths_are_estimated_and_marked() -> None:
    """Dancer 4 was not measured from waist to knee."""
    basis, _ = draft.load(asked(RING))
    assert not basis.body.measurements["waist_to_knee"].estimated
    basis, _ = draft.load(asked(Example(body="dancer-4")))
    assert basis.body.measurements["waist_to_knee"].estimated


def test_faults_of_formulas_are_placed_in_the_file(tmp_path: Path) -> None:
    """Sections are counted from 1, as people count."""
    wrong = request_for(tmp_path, design=('ease = "4 cm"', 'ease = "4 cm + waits_girth"'))
    with pytest.raises(InputError) as refused:
        draft.draft(wrong)
    assert refused.value.faults[0].place == Place("design.toml", 49, "section[2].ease")


def test_garment_that_does_not_go_on_is_refused_with_ways_out(tmp_path: Path) -> None:
    """A waist as wide as the waist cannot pass the hips in a fabric that does not stretch so far."""
    tight = request_for(
        tmp_path,
        design=("max(waist_girth + 2 cm, hip_girth / 1.2)", "waist_girth"),
        swatch=('stretched_width = "18.6 cm"', 'stretched_width = "15.5 cm"'),
    )
    with pytest.raises(Impossible, match=r"start\.girth: it does not go on: ") as refused:
        draft.draft(tight)
    assert refused.value.short > 0
    assert refused.value.ways_out


def test_develop_needs_no_files() -> None:
    """The studio hands in a basis that it has put together itself."""
    basis, _ = draft.load(asked(RING))
    nowhere = replace(basis, scope=replace(basis.scope, where=lambda key: Place(key=key)))
    assert draft.develop(nowhere).plan.program == drafted(RING).plan.program


def test_body_and_swatch_of_a_draft_are_those_of_the_files() -> None:
    """Nothing is taken from anywhere else."""
    found = drafted(RING)
    assert found.basis.body.name == load_body(RING.files[1]).name
    assert found.basis.main_swatch == load_swatch(RING.files[2])


def test_same_files_give_the_same_bytes() -> None:
    """So that a pattern can be compared with the one before."""
    found = drafted(RING)
    assert draft.outputs(found) == draft.outputs(found)


def test_paper_changes_the_pdf_alone() -> None:
    """Inches do not mean another pattern."""
    found = drafted(RING)
    a4, letter = draft.outputs(found), draft.outputs(found, "us-letter")
    assert [name for name in a4 if a4[name] != letter[name]] == ["pattern.pdf"]


def test_published_files_are_those_that_are_announced(tmp_path: Path) -> None:
    """The summary names them before they are written."""
    found = drafted(RING)
    assert tuple(draft.outputs(found)) == draft.FILES
    assert draft.publish(found, tmp_path) == tuple(tmp_path / name for name in draft.FILES)


def test_publishing_again_replaces_the_pattern_and_keeps_other_files(tmp_path: Path) -> None:
    """A maker's own notes may lie beside it."""
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    first = draft.publish(drafted(RING), tmp_path)
    again = draft.publish(drafted(Example("whirl-skirt")), tmp_path)
    assert first == again
    assert "Whirl skirt" in (tmp_path / "pattern.txt").read_text(encoding="utf-8")
    assert (tmp_path / "notes.txt").read_text(encoding="utf-8") == "mine"
    assert len(list(tmp_path.iterdir())) == len(again) + 1
