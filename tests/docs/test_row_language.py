"""The page on the language of rows: every example on it is read, and every refusal is given."""

from __future__ import annotations

import re
from functools import cache

import pytest
from pages import page, part, rows

from frogless.errors import InputError
from frogless.read.parse import parse_row
from frogless.read.patterns import find_way, read_way
from frogless.read.spoken import Said
from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.stitches.load import dictionary
from frogless.stitches.patterns import WayText

NAME = "row-language.md"
PATTERN = re.compile(
    r"^```(?P<way>rows|rounds)\n(?P<text>.*?)^```\n\nIt works over a multiple of (?P<multiple>\d+) "
    r"and (?P<offset>\d+), and (?P<setup>\d+) row comes once\.$",
    re.MULTILINE | re.DOTALL,
)
REFUSED = re.compile(r"`(?P<text>[^`]+)` \(over (?P<over>\d+)\)")
SAME = re.compile(r"the same as `([^`]+)`|^the same(?:;.*)?$")


@cache
def words() -> Vocabulary:
    """US terms, in which the page is written."""
    return vocabulary(dictionary(), "us")


def told(text: str) -> Said:
    """What a line of such items says."""
    said = parse_row(f"Row 1: {text}.", words())
    assert isinstance(said, Said)
    return said


def written() -> list[list[str]]:
    """The rows of the tables of what may be written."""
    before = page(NAME).partition("## What is refused")[0]
    return [row for row in rows(before) if row[0].startswith("`")]


def test_page_has_examples_of_everything() -> None:
    """So many that none of its tables was overlooked."""
    assert len(written()) > 50
    assert len(PATTERN.findall(page(NAME))) == page(NAME).count("```") // 2 == 3


@pytest.mark.parametrize("text", [row[0].strip("`") for row in written()])
def test_every_example_is_read(text: str) -> None:
    """As a row; it says something."""
    assert told(text).items


@pytest.mark.parametrize("text", re.findall(r"(?<=also )`([^`]+)`|, `(in tch)`", page(NAME)))
def test_other_ways_to_say_it_are_read(text: tuple[str, str]) -> None:
    """What stands beside an example, put in its place."""
    other = text[0] or text[1]
    lines = {
        "sk": f"{other}",
        "in top": f"dc {other}",
        "in tch": f"dc {other}",
        "in blo": f"sc {other} next st",
        "twice": f"[sc in next st] {other}",
        "to top": f"sc in next st; join with sl st {other}",
    }
    line = next(line for begin, line in lines.items() if other.startswith(begin))
    assert told(line).items


def test_examples_that_are_said_to_be_the_same_are_so() -> None:
    """Said of the row above, or of another text."""
    looked, above = 0, ""
    for text, meaning, *_ in written():
        if found := SAME.search(meaning):
            other = found[1] or above
            assert told(text.strip("`")).items == told(other.strip("`")).items, text
            looked += 1
        else:
            above = text
    assert looked > 5


@pytest.mark.parametrize(
    "found", list(PATTERN.finditer(page(NAME))), ids=lambda found: found["way"]
)
def test_every_pattern_has_the_multiple_that_is_told(found: re.Match[str]) -> None:
    """It is found by the program."""
    closed, setup = found["way"] == "rounds", int(found["setup"])
    way = find_way(found["text"], dictionary(), "us", closed=closed, setup=setup)
    assert (way.multiple, way.offset) == (int(found["multiple"]), int(found["offset"]))


@pytest.mark.parametrize("row", list(rows(part(page(NAME), "## What is refused")))[1:])
def test_every_refusal_is_given(row: list[str]) -> None:
    """In those words."""
    found = REFUSED.fullmatch(row[0])
    assert found
    text = f"Row 1: Ch 1 (does not count as a st), {found['text']}."
    # Read over two repeats first.
    stated = WayText(text, multiple=1, offset=int(found["over"]) - 2)
    with pytest.raises(InputError) as error:
        read_way(stated, dictionary(), "us", closed=False, values={})
    assert row[1] in str(error.value)
