"""A draft of texts that are in no file: the same as of files, its faults told by name."""

from __future__ import annotations

from dataclasses import replace

import pytest
from examples import Example

from frogless import draft
from frogless.draft import Request, Texts, Worked, draft_texts, outputs
from frogless.errors import InputError

RING = Example()
WRONG = 'format = "frogless-swatch/1"\n'


def texts_of(example: Example) -> Texts:
    """The texts of an example's files."""
    design, body, swatch = (path.read_text(encoding="utf-8") for path in example.files)
    return Texts(design, body, (swatch,))


def test_texts_give_what_files_give() -> None:
    """The same pattern, byte for byte, and the same questions."""
    design, body, swatch = RING.files
    of_files = draft.draft(Request(design, body, (swatch,), "uk", "in"))
    of_texts = draft_texts(texts_of(RING), "uk", "in")
    assert outputs(of_texts.drafted) == outputs(of_files.drafted)
    assert of_texts.questions == of_files.questions


@pytest.mark.parametrize("file", ["design.toml", "body.toml", "swatch.toml"])
def test_faults_of_texts_name_the_file_that_they_would_stand_in(file: str) -> None:
    """Again when the same faulty text comes again."""
    texts = texts_of(RING)
    faulty = {
        "design.toml": replace(texts, design="no toml"),
        "body.toml": replace(texts, body="no toml"),
        "swatch.toml": replace(texts, swatches=("no toml",)),
    }
    for _ in range(2):
        with pytest.raises(InputError) as error:
            draft_texts(faulty[file])
        assert {fault.place.file for fault in error.value.faults} == {file}


def test_further_swatches_are_told_apart() -> None:
    """By their number."""
    texts = texts_of(RING)
    with pytest.raises(InputError) as error:
        draft_texts(replace(texts, swatches=(*texts.swatches, WRONG)))
    assert {fault.place.file for fault in error.value.faults} == {"swatch-2.toml"}


def test_faults_of_a_text_keep_their_lines() -> None:
    """A design that is read and asks for what is not there is told of at its line."""
    texts = texts_of(RING)
    line = next(n for n, told in enumerate(texts.design.splitlines(), 1) if "girth" in told)
    lines = texts.design.splitlines()
    lines[line - 1] = lines[line - 1].partition("=")[0] + '= "no_such_girth"'
    with pytest.raises(InputError) as error:
        draft_texts(replace(texts, design="\n".join(lines) + "\n"))
    place = error.value.faults[0].place
    assert (place.file, place.line) == ("design.toml", line)


def test_what_is_worked_out_is_what_is_proven() -> None:
    """Numbers may be shown before their proof; only the proof makes a pattern of them."""
    basis, _ = draft.load_texts(texts_of(RING))
    worked = draft.work_out(basis)
    assert isinstance(worked, Worked)
    drafted = draft.prove_worked(worked)
    assert (drafted.plan, drafted.tally, drafted.fit) == (worked.plan, worked.tally, worked.fit)
    assert outputs(drafted) == outputs(draft.develop(basis))


def test_numbers_of_texts_are_there_before_their_proof() -> None:
    """And are the ones that are proven, in whatever terms."""
    worked, questions = draft.work_out_texts(texts_of(RING), "uk", "in")
    made = draft_texts(texts_of(RING), "us", "in")
    assert (worked.dialect, worked.units, questions) == ("uk", "in", made.questions)
    assert (worked.plan, worked.fit) == (made.drafted.plan, made.drafted.fit)


def test_other_terms_are_what_they_are_from_the_start() -> None:
    """One proof is of both, so that neither waits for the other."""
    us, uk = (draft_texts(texts_of(RING), terms).drafted for terms in draft.DIALECTS)
    design, body, swatch = RING.files
    assert outputs(uk) == outputs(draft.draft(Request(design, body, (swatch,), "uk")).drafted)
    assert outputs(us) != outputs(uk)


def test_a_process_made_ready_drafts_the_same() -> None:
    """Only sooner."""
    before = outputs(draft_texts(texts_of(RING), "uk").drafted)
    draft.get_ready()
    texts = texts_of(RING)
    spaced = replace(texts, design=texts.design + "\n")  # the same once more, not remembered
    assert outputs(draft_texts(spaced, "uk").drafted) == before
