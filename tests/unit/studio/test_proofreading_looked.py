"""What a page tells of a report: places as a browser counts them, tables, pictures, amendments."""

from __future__ import annotations

import pickle
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st
from proofread_made import report

from frogless.proofread.script.model import Script, Span
from frogless.studio.proofreading import example
from frogless.studio.proofreading.looked import MOST_FOUND, Looked, looked
from frogless.studio.proofreading.marked import marked
from frogless.studio.proofreading.places import MOST_WORDS, Places, put
from frogless.studio.proofreading.reading import look
from frogless.studio.proofreading.table import MOST_ROWS

SIZES = ("S", "M", "L")
THREE = (
    "Rnd 1: sc around. (12 (14, 16) sts)\n"
    "Rnd 2: sc around. (24 (29, 33) sts)\n"
    "Rnd 3: sc around. (24 (28, 32) sts)\n"
)


def three(size: str = "", silenced: tuple[str, ...] = ()) -> Looked:
    """A pattern of three sizes, whose second round is wrong in two of them."""
    return looked(report(THREE, {2: (24, 28, 32)}, SIZES), size, silenced)


def units(text: str) -> list[str]:
    """The letters of a text as a browser counts them."""
    data = text.encode("utf-16-le")
    return [data[n : n + 2].decode("utf-16-le", "replace") for n in range(0, len(data), 2)]


@given(st.text("ab🧶\n ", max_size=40), st.data())
def test_places_are_counted_as_a_browser_counts(text: str, draw: st.DataObject) -> None:
    """What a browser finds there is what stands there, also behind an emoji."""
    start = draw.draw(st.integers(0, len(text)))
    end = draw.draw(st.integers(start, len(text)))
    place = Places(Script(text, text, (0,))).of(Span(start, end))
    assert len(units(text[:start])) <= place.start <= place.end <= len(units(text[:end]))
    assert put(text, place.start, place.end, "x").replace("x", text[start:end].strip()) == text


def test_long_words_are_shortened() -> None:
    """A whole paragraph is not said again in the list."""
    text = "word " * 500
    place = Places(Script(text, text, (0,))).of(Span(0, len(text)))
    assert len(place.words) <= MOST_WORDS
    assert place.words.endswith(" …")
    assert place.end == len(text.rstrip())


def test_finding_says_where_and_for_which_sizes() -> None:
    """And offers the whole list, only the wrong numbers of it changed."""
    (found,) = three().found
    assert (found.place.line, found.where, found.sizes) == (2, "Rnd 2", "sizes M and L")
    assert found.put is not None
    assert found.put.words == "24 (28, 32)"
    assert put(THREE, found.put.start, found.put.end, found.put.words) == THREE.replace(
        "24 (29, 33)", "24 (28, 32)"
    )


def test_one_number_for_all_sizes_is_replaced_only_when_all_agree() -> None:
    """No list is made up."""
    text = "Rnd 1: sc around. (12 sts)\n"
    assert looked(report(text, {1: (14, 14, 14)}, SIZES)).found[0].put.words == "14"  # type: ignore[union-attr]
    assert looked(report(text, {1: (14, 15, 16)}, SIZES)).found[0].put is None
    assert looked(report(text, {1: (12, 15, 15)}, SIZES)).found[0].put is None


def test_size_and_kinds_are_left_out() -> None:
    """What is left out is counted; a size that is not there means all."""
    assert three("S").number == 0
    assert three("M").told == "1 finding for size M."
    assert three("XXL").number == 1
    silent = three("", ("row-count",))
    assert (silent.number, silent.left_out) == (0, 1)
    assert [(kind.name, kind.number, kind.silenced) for kind in silent.kinds] == [
        ("row-count", 1, True)
    ]


def test_table_has_a_row_with_each_size() -> None:
    """Two numbers where they differ; one size alone has what each row uses."""
    table = three().rows
    assert table is not None
    assert [row.name for row in table.rows] == ["Rnd 1", "Rnd 2", "Rnd 3"]
    assert [cell.differs for cell in table.rows[1].cells] == [False, True, True]
    assert [row.wrong for row in table.rows] == [False, True, False]
    alone = three("M").rows
    assert alone is not None
    assert [row.cells[0].uses for row in alone.rows] == ["0 of 0", "14 of 14", "28 of 28"]
    assert len(alone.rows[0].cells) == 1


def test_strip_is_a_picture_with_words() -> None:
    """A step for each row and size, wrong rows marked and named."""
    drawn = three().strip
    assert drawn is not None
    assert "Marked as wrong: Rnd 2." in drawn.alt
    tree = ET.fromstring(drawn.svg)  # noqa: S314 - our own
    kinds = {element.tag.rpartition("}")[2] for element in tree.iter()}
    assert {"title", "desc", "path", "circle"} <= kinds
    assert looked(report("Rnd 1: sc. (6 sts)\n", {})).strip is None


def test_what_is_not_understood_is_told_with_its_share() -> None:
    """Never a whole hundred."""
    found = looked(report("Rnd 2: frobnicate all\nRnd 3: sc. (6 sts)\n", {}))
    ((place, guess, row),) = found.unclear
    assert (place.line, place.words, guess, row) == (1, "frobnicate all", "sc in next st", "2")
    assert found.understood == 97


@pytest.mark.parametrize("text", ["", "nothing of a pattern"])
def test_text_without_rows_has_neither_table_nor_strip(text: str) -> None:
    """And is no error."""
    found = looked(report(text, {}))
    assert (found.rows, found.strip, found.number) == (None, None, 0)


def test_many_findings_and_rows_are_cut_off_and_counted() -> None:
    """A page stays a page, and what goes between processes small."""
    text = "".join(f"Rnd {n}: sc. (6 sts)\n" for n in range(1, 1001))
    found = looked(report(text, dict.fromkeys(range(1, 1001), (7,))))
    assert (len(found.found), found.number) == (MOST_FOUND, 1000)
    assert found.rows is not None
    assert (len(found.rows.rows), found.rows.more) == (MOST_ROWS, 1000 - MOST_ROWS)
    assert len(pickle.dumps(found)) < 500_000


def test_marked_lines_are_the_text() -> None:
    """Nothing added, nothing lost, each mark on its words."""
    text = "🧶🧶 yes\n" + THREE
    lines = marked(text, looked(report(text, {2: (24, 28, 32)}, SIZES)))
    assert "\n".join("".join(bit.text for bit in line.bits) for line in lines) == text
    assert [
        (line.number, bit.text, bit.mark) for line in lines for bit in line.bits if bit.mark
    ] == [(3, "24 (29, 33)", 1)]


def test_example_has_its_three_errors_and_no_other() -> None:
    """Each at its row; put right, nothing is found, and everything was understood."""
    found = look(example.TEXT)
    assert [(one.where, one.kind) for one in found.found] == [
        ("Rnd 4", "row-count"),
        ("Rnd 12", "row-numbers"),
        ("Rnd 15", "repeat-comes-out"),
    ]
    assert found.found[0].put is not None
    mended = example.TEXT.replace("(25 sts)", "(24 sts)").replace("Rnd 12: *Sc", "Rnd 11: *Sc")
    for number in (13, 14, 15):
        mended = mended.replace(f"Rnd {number}:", f"Rnd {number - 1}:")
    mended = mended.replace("Sc in next 5 sts, sc2tog", "Sc in next 6 sts, sc2tog")
    right = look(mended)
    assert (right.told, right.understood) == ("Nothing found.", 100)


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_terms_are_as_they_are_chosen(terms: str) -> None:
    """And it is said that the pattern says otherwise."""
    spoken = look(example.TEXT, terms).spoken
    assert spoken is not None
    assert spoken.dialect == terms
    assert ("It says of itself that it is in US terms" in spoken.sentence) == (terms == "uk")


def test_text_that_cannot_be_read_is_told_not_raised() -> None:
    """In one sentence."""
    assert look(" \n ").fault.startswith("There is no text in it")
