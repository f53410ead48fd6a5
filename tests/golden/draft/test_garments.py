"""Every example of several pieces is drafted, proven and told in whole sentences."""

from __future__ import annotations

import json
import re
from functools import cache
from pathlib import Path

import pytest
from examples import FOLDER, GARMENTS, Example, drafted
from jsonschema import Draft202012Validator

from frogless import draft
from frogless.publish.blocks import Document, Heading, Terms
from frogless.publish.glossary import used_stitches
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain
from frogless.publish.planfile import planfile
from frogless.publish.terminal import summary
from frogless.write.pattern import write_program

BODIES = ("dancer-3", "dancer-4")
EXAMPLES = tuple(Example(design, body) for design in GARMENTS for body in BODIES)
SCHEMA = Path(draft.__file__).parent / "publish" / "schema" / "plan.schema.json"

# Left-over blanks, names of keys, doubled or stray signs.
BROKEN = re.compile(r"[{}]|\b[a-z]+_[a-z_]+\b|\.\.|(?<!\w) ,| \.(?!\d)|\bNone\b|\bnan\b")

example = pytest.mark.parametrize("example", EXAMPLES, ids=lambda e: f"{e.design}-{e.body}")


@cache
def document(example: Example) -> Document:
    """The pattern; each once in a run."""
    return pattern(drafted(example))


@example
def test_a_garment_is_proven_and_told_in_whole_sentences(example: Example) -> None:
    """No check fails; the text has no blanks, no names of keys, and speaks of its own garment."""
    found = drafted(example)
    assert {one.verdict for one in found.findings} <= {"pass", "warn"}
    text = plain(document(example))
    assert BROKEN.search(text.partition("\n\n\n")[2]) is None
    if found.basis.design.garment.kind != "skirt":
        assert "the skirt" not in text.lower() or "skirt" in found.basis.design.summary.lower()


@example
def test_every_stitch_that_is_used_is_explained(example: Example) -> None:
    """In the abbreviations, by its short name."""
    found = drafted(example)
    blocks = document(example).blocks
    explained = {term for block in blocks if isinstance(block, Terms) for term, _ in block.items}
    known = found.stitches
    used = [k for k in used_stitches(found) if known[k].kind in ("stitch", "foundation")]
    assert {found.short(key) for key in used} <= explained


@example
def test_every_piece_has_its_heading(example: Example) -> None:
    """In the order worked."""
    found = drafted(example)
    heads = [b.text for b in document(example).blocks if isinstance(b, Heading)]
    wanted = [p.name[:1].upper() + p.name[1:] for p in found.plan.program.pieces]
    assert [head for head in heads if head in wanted][: len(wanted)] == wanted


@example
def test_the_plan_file_of_a_garment_keeps_to_its_schema(example: Example) -> None:
    """And tells every piece with all its rows."""
    found = drafted(example)
    data = json.loads(json.dumps(planfile(found)))
    Draft202012Validator(json.loads(SCHEMA.read_text(encoding="utf-8"))).validate(data)
    pieces = data["sizes"][0]["pieces"]
    assert [len(p["rows"]) for p in pieces] == [len(p.rows) for p in found.plan.program.pieces]


@example
def test_the_summary_fits_its_columns(example: Example) -> None:
    """Also a narrow terminal's, but for the table."""
    lines = summary(drafted(example), (), (), 80).splitlines()
    table = len(drafted(example).plan.landmarks)
    assert all(len(line) <= 80 for line in lines if not table or "  " not in line.strip()[:30])
    assert lines


@pytest.mark.parametrize("design", GARMENTS)
def test_inches_and_uk_terms_change_what_is_shown_and_not_the_plan(design: str) -> None:
    """The same rows, and a text in the other terms that was read back."""
    here, there = drafted(Example(design)), drafted(Example(design), "in")
    assert here.plan.program == there.plan.program
    told = write_program(there.plan.program, there.stitches, "uk")
    assert told != write_program(here.plan.program, here.stitches, "us")
    assert re.search(r"\d in\b", plain(pattern(there)))


@pytest.mark.parametrize("design", GARMENTS)
def test_an_example_has_its_folder(design: str) -> None:
    """With a design file that names its garment's kind."""
    assert "kind" in (FOLDER / design / "design.toml").read_text(encoding="utf-8")
