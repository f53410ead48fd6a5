"""The stitch dictionary against published terms, conventions and measurements."""

from __future__ import annotations

import csv
import math
import re
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from frogless.rows.count import consumed, left, worked
from frogless.stitches.edgings import edging, edgings
from frogless.stitches.load import dictionary, leaves, stands_on, words
from frogless.stitches.model import Dialect
from frogless.stitches.places import insert_place
from frogless.stitches.steps import loops_after

HERE = Path(__file__).parent
DIALECTS: tuple[Dialect, ...] = ("us", "uk")


def table(name: str) -> list[Any]:
    """The rows of a reference table as parameters, each named by its key."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return [pytest.param(row, id=row["key"]) for row in csv.DictReader(file)]


def listed(cell: str) -> list[str]:
    """The alternatives that a cell gives, without what it adds in brackets; in small letters."""
    return [part.split(" (")[0].strip().lower() for part in cell.split(";")]


@pytest.mark.parametrize(
    "name",
    [
        "terms.csv",
        "abroad.csv",
        "symbols.csv",
        "conventions.csv",
        "foundations.csv",
        "yarn.csv",
        "loops.csv",
        "places.csv",
        "edgings.csv",
    ],
)
def test_every_reference_row_has_a_source_when_read(name: str) -> None:
    """A value from outside says where it comes from and how sure it is."""
    known = {"published", "common-practice", "memory", "derived"}
    rows = [param.values[0] for param in table(name)]
    assert rows
    assert all(row["source"] and row["basis"] in known for row in rows)


@pytest.mark.parametrize("row", table("terms.csv"))
@pytest.mark.parametrize("dialect", DIALECTS)
def test_terms_are_the_listed_ones_when_compared(row: dict[str, str], dialect: Dialect) -> None:
    """Name and abbreviation are among those that the lists give for the dialect."""
    known = words(dialect) if row["kind"] == "word" else None
    term = known[row["key"]] if known else dictionary()[row["key"]].terms[dialect]
    assert term.name.lower() in listed(row[f"{dialect}_term"])
    if abbreviations := row[f"{dialect}_abbr"]:
        assert term.abbreviation.lower() in listed(abbreviations)
    else:
        assert term.abbreviation == term.name


@pytest.mark.parametrize("row", [p for p in table("terms.csv") if p.values[0]["kind"] == "stitch"])
def test_terms_are_as_sure_as_the_lists_when_compared(row: dict[str, str]) -> None:
    """The dictionary does not claim more for its terms than the lists do."""
    assert dictionary()[row["key"]].terms_basis == row["basis"]


@pytest.mark.parametrize("row", table("abroad.csv"))
def test_terms_abroad_are_the_listed_ones_when_seen(row: dict[str, str]) -> None:
    """Name and abbreviation in another language, where a page in it was seen."""
    term = dictionary()[row["key"]].abroad[row["language"]]
    assert term.name.lower() in listed(row["name"])
    if row["abbreviation"]:
        assert term.abbreviation.lower() in listed(row["abbreviation"])
    else:
        assert term.abbreviation == term.name


def test_no_term_abroad_is_claimed_when_no_page_was_seen() -> None:
    """What the dictionary has in other languages is what the table confirms, and no more."""
    claimed = {(key, language) for key, s in dictionary().items() for language in s.abroad}
    rows = [param.values[0] for param in table("abroad.csv")]
    assert claimed == {(row["key"], row["language"]) for row in rows}


@pytest.mark.parametrize("row", table("symbols.csv"))
def test_symbols_are_the_published_ones_when_put_together(row: dict[str, str]) -> None:
    """A stitch has the parts that its published form is said with, a place the mark it adds."""
    stitch = row["kind"] == "stitch"
    parts = dictionary()[row["key"]].symbol if stitch else (insert_place(row["key"]).mark,)
    assert list(parts) == row["parts"].split("; ")


#: Words of a published form, and the part that draws them.
DRAWN = {
    r"oval(?!s)": r"oval.*",
    r"ovals": r"ovals \d",
    r"dot": r"dot",
    r"cross(?!ing)|\+": r"cross",
    r"\bT\b|stems?": r"stem",
    r"\bT\b": r"top_bar",
    r"barred": r"bars 1",
    r"slanting bars?": r"bars \d",
    r"bulging": r"bulge \d",
    r"joined at the foot|from one foot": r"joined_foot \d",
    r"crossing": r"crossed 1",
    r"hook": r"foot_hook_(right|left)",
    r"tilde": r"tilde_over",
    r"circle": r"ring",
    r"long foot": r"foot_long 1",
    r"open upward": r"arc_open_up",
    r"open downward": r"arc_open_down",
    r"foot free": r"foot_open",
}
NUMBERS = ("one", "two", "three", "four", "five")


@pytest.mark.parametrize("row", table("symbols.csv"))
def test_the_parts_of_a_symbol_are_all_that_its_form_names(row: dict[str, str]) -> None:
    """What the form says in words stands among the parts, its numbers too, and nothing else does."""
    form, parts = row["form"].split(": ")[-1], row["parts"].split("; ")
    said = [drawn for words_, drawn in DRAWN.items() if re.search(words_, form)]
    if "filled dot" in form:  # a dot may be drawn as a small filled oval
        said = [drawn for drawn in said if drawn != r"oval.*"]
    for drawn in said:
        assert any(re.fullmatch(drawn, part) for part in parts), drawn
    loose = [part for part in parts if not any(re.fullmatch(drawn, part) for drawn in said)]
    assert loose in ([], ["top_bar"])  # stems end in their bar, which no form repeats
    told = {"1", *(part.split()[-1] for part in parts), *("2" for p in parts if p == "crossed 1")}
    named = {str(NUMBERS.index(n) + 1) for n in NUMBERS if re.search(rf"\b{n}\b", form)}
    assert named <= told


@pytest.mark.parametrize("row", table("loops.csv"))
def test_loops_on_the_hook_are_those_taught_when_worked(row: dict[str, str]) -> None:
    """After each motion, and how often the yarn is caught in all."""
    stitch = dictionary()[row["key"]]
    assert " ".join(map(str, loops_after(stitch.steps))) == row["loops"]
    assert stitch.catches == int(row["catches"])


@pytest.mark.parametrize("row", table("places.csv"))
def test_places_taken_and_left_follow_the_trade_when_counted(row: dict[str, str]) -> None:
    """What a stitch stands on, what it leaves to work into, and how far down it reaches."""
    stitch = dictionary()[row["key"]]
    found = (stitch.stands_on, stitch.leaves, stitch.reaches)
    assert found == (int(row["stands_on"]), int(row["leaves"]), int(row["reaches"]))


@pytest.mark.parametrize("row", table("conventions.csv"))
def test_turning_chains_follow_the_convention_when_listed(row: dict[str, str]) -> None:
    """Chains 0 to 5, whether they count, and the chains of a first row beyond the count."""
    stitch = dictionary()[row["key"]]
    assert stitch.turning_chain == int(row["turning_chain"])
    assert stitch.chain_counts == row["chain_counts"]
    assert stitch.foundation_extra == int(row["foundation_extra"])


@pytest.mark.parametrize("row", table("conventions.csv"))
def test_heights_follow_the_table_when_compared(row: dict[str, str]) -> None:
    """Height against single crochet, its range in the proportions of the range of h over w."""
    stitch = dictionary()[row["key"]]
    low, typical, high = (float(row[f"h_over_w_{end}"]) for end in ("low", "typical", "high"))
    shape = stitch.height_over_width
    assert shape is not None
    assert (shape.low, shape.typical, shape.high) == (low, typical, high)
    height = float(row["rel_height_to_sc"])
    assert stitch.height.typical == height
    if row["key"] != "single_crochet":
        assert stitch.height.low == pytest.approx(height * low / typical, abs=0.01)
        assert stitch.height.high == pytest.approx(height * high / typical, abs=0.01)


@pytest.mark.parametrize(
    "row", [p for p in table("conventions.csv") if p.values[0]["disc_inc_typical"]]
)
def test_a_flat_disc_grows_by_the_usual_number_when_computed(row: dict[str, str]) -> None:
    """2 pi h / w comes within one and a half stitches of the usual 6, 8, 12, 16 and 20."""
    shape = dictionary()[row["key"]].height_over_width
    assert shape is not None
    assert 2 * math.pi * shape.typical == pytest.approx(float(row["disc_inc_typical"]), abs=1.5)


@pytest.mark.parametrize("row", table("foundations.csv"))
def test_foundation_stitches_begin_on_their_chains_when_listed(row: dict[str, str]) -> None:
    """A foundation stitch begins on 2, 2 or 3 chains, and its sentence says so."""
    stitch = dictionary()[row["key"]]
    assert stitch.kind == "foundation"
    assert stitch.begins_on == int(row["begins_on"])
    assert f"make {row['begins_on']} chains" in stitch.how


@pytest.mark.parametrize("row", table("yarn.csv"))
def test_catches_match_the_ravelled_yarn_when_measured(row: dict[str, str]) -> None:
    """The times that yarn is caught are in proportion to the yarn measured, a chain being 1."""
    stitch = dictionary()[row["key"]]
    catches = stitch.catches
    assert catches == int(row["catches"])
    assert stitch.yarn_basis == ("measured" if row["measured"] else "derived")
    if row["measured"]:
        assert catches == pytest.approx(float(row["measured"]), abs=float(row["tolerance"]))


@pytest.mark.parametrize("row", table("edgings.csv"))
def test_edgings_use_and_work_what_practice_says_when_counted(row: dict[str, str]) -> None:
    """Places used and left by a repeat, and the stitches it works by kind, over all its rounds."""
    given = dict(part.split("=") for part in row["parameters"].split())
    found = edging(row["key"], {name: int(value) for name, value in given.items()})
    counts = sum((worked(body) for body in found.rounds), Counter[str]())
    assert found.multiple == int(row["multiple"])
    assert consumed(found.rounds[0], stands_on(dictionary())) == int(row["uses"])
    assert left(found.rounds[-1], leaves(dictionary())) == int(row["leaves"])
    keys = ("single_crochet", "double_crochet", "picot", "chain", "reverse_single_crochet")
    told = {key: int(row[key]) for key in keys}
    told |= {key: int(n) for key, n in (part.split("=") for part in row["others"].split())}
    assert +counts == +Counter(told)


def test_every_edging_is_held_to_a_count_when_listed() -> None:
    """No edging without figures of its own."""
    assert set(edgings()) == {param.values[0]["key"] for param in table("edgings.csv")}
