"""The page of proofreading says what the program does."""

from __future__ import annotations

import json
import re
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from pages import examples, named, page, part

from frogless.cli import main
from frogless.proofread.as_markdown import with_checks
from frogless.proofread.checks.table import CHECKS
from frogless.proofread.sources import docx_file, pdf, source

PAGE = page("proofreading.md")
SCHEMA = json.loads(
    files("frogless.proofread").joinpath("schema/proofread.schema.json").read_text("utf-8")
)


def test_page_lists_the_checks_that_there_are() -> None:
    """`python docs/make_checks.py` writes them anew."""
    assert with_checks(PAGE) == PAGE
    headings = re.findall(r"^### (.+)$", part(PAGE, "## What does it look for?"), re.MULTILINE)
    assert headings == [check.name for check in CHECKS]


def test_page_is_written_anew_between_its_marks_only() -> None:
    """Whatever stood there."""
    begin, end = PAGE.index("### "), PAGE.index("<!-- to here -->")
    assert with_checks(PAGE[:begin] + "old\n" + PAGE[end:]) == PAGE


@pytest.mark.parametrize("paper", ["proofreading.md", "README.md"])
def test_example_is_told_as_the_page_shows(
    paper: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The same pattern on both pages."""
    file = tmp_path / "cap.txt"
    file.write_text(examples(PAGE, "text")[0], encoding="utf-8")
    assert main(["proofread", str(file)]) == 1
    assert capsys.readouterr().out == examples(page(paper), "console")[0]


def properties(of: dict[str, Any]) -> set[str]:
    """The keys that a part of the schema has."""
    return set(of["properties"])


@pytest.mark.parametrize(
    ("heading", "keys"),
    [
        ("| key | what it is |\n| --- | --- |\n| `format`", properties(SCHEMA)),
        ("Of a row:\n", properties(SCHEMA["$defs"]["row"])),
        ("Of a finding:\n", properties(SCHEMA["$defs"]["finding"])),
    ],
)
def test_page_names_every_key_of_the_data(heading: str, keys: set[str]) -> None:
    """And none that is not there."""
    after = PAGE[PAGE.index(heading) :].partition("\n| ")[2]
    assert set(named("| " + re.split(r"\n\n(?=[OA#])", after)[0])) == keys


@pytest.mark.parametrize("name", ["not_understood", "assumption"])
def test_page_names_the_keys_of_what_is_open(name: str) -> None:
    """In a sentence."""
    (line,) = [line for line in PAGE.splitlines() if line.startswith("Of `not_understood`")]
    assert properties(SCHEMA["$defs"][name]) <= set(re.findall(r"`(\w+)`", line))


def test_limits_are_those_that_hold() -> None:
    """As they are in the code."""
    assert f"| {source.MOST_BYTES // 1_000_000} MB | of a file |" in PAGE
    assert f"| {source.MOST_LETTERS:,} | letters" in PAGE
    assert f"| {source.MOST_PAGES} | pages of a PDF |" in PAGE
    assert f"| {pdf.MOST_STEPS:,} | drawing steps" in PAGE
    assert f"a page of more than {pdf.MOST_OF_PAGE // 1_000_000} MB" in PAGE
    assert f"| {docx_file.MOST_UNPACKED // 1_000_000} MB | of a .docx, unpacked |" in PAGE
