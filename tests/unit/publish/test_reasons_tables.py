"""Tables and lists whose numbers can be asked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import pytest
from examples import DESIGNS, GARMENTS, Example
from published import published, rows, shown

from frogless.publish.blocks import Bullets, Table
from frogless.publish.drafted import Drafted
from frogless.publish.reasons import (
    Asked,
    KeyedTable,
    fit_table,
    glance_lines,
    keys,
    landmark_table,
    materials_lines,
    materials_table,
    piece_tables,
    reason,
    row_keys,
    section_table,
)
from frogless.units import Units

EVERY = (*DESIGNS, *GARMENTS)


def tables(drafted: Drafted) -> tuple[KeyedTable, ...]:
    """All of them."""
    return (
        landmark_table(drafted), section_table(drafted), *piece_tables(drafted),
        materials_table(drafted), fit_table(drafted),
    )  # fmt: skip


def cells(drafted: Drafted) -> Iterator[Asked]:
    """Every cell that can be asked."""
    for table in tables(drafted):
        for row in table.rows:
            assert len(row) == len(table.header)
            yield from (cell for cell in row if cell.key)


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("design", EVERY)
def test_reason_of_a_cell_ends_with_what_the_cell_shows(design: str, units: Units) -> None:
    """So nobody is told of another number than the one that was asked for."""
    drafted = shown(Example(design), units=units)
    asked = list(cells(drafted))
    assert asked
    for cell in asked:
        assert reason(drafted, cell.key).number == cell.text, cell.key


@pytest.mark.parametrize("design", EVERY)
def test_tables_are_those_of_the_pattern(design: str) -> None:
    """The same cells in the same order, and so no count is made twice."""
    drafted = shown(Example(design))
    printed = {
        tuple(cell.replace("\u00a0", " ") for cell in row)
        for block in published(Example(design)).blocks
        if isinstance(block, Table)
        for row in block.rows
    }
    marks = landmark_table(drafted)
    assert len(marks.rows) == len(drafted.fit.landmarks)
    assert {tuple(cell.text for cell in row) for row in marks.rows} <= printed
    for table in piece_tables(drafted):
        name = table.caption.removeprefix("Finished measurements: ")
        for row in table.rows:
            assert (name, *(cell.text for cell in row)) in printed


@pytest.mark.parametrize("design", EVERY)
def test_lines_are_those_of_the_pattern_and_can_be_asked(design: str) -> None:
    """At a glance and in the list of materials; what has no number has no key."""
    drafted = shown(Example(design))
    printed = {
        item.replace("\u00a0", " ")
        for block in published(Example(design)).blocks
        if isinstance(block, Bullets)
        for item in block.items
    }
    known = set(keys(drafted))
    for told in (*glance_lines(drafted), *materials_lines(drafted)):
        assert told.text in printed
        assert told.key in known or not any(letter.isdigit() for letter in told.text)


@pytest.mark.parametrize("design", EVERY)
def test_every_row_is_told_by_one_instruction(design: str) -> None:
    """Folded rows share one; seams have the key of their join, or none."""
    drafted = shown(Example(design))
    told = rows(published(Example(design)).blocks)
    found = row_keys(drafted)
    assert tuple(found) == tuple(range(len(told)))
    named = Counter(key for of in found.values() for key in of if key.startswith("row."))
    assert named == Counter(key for key in keys(drafted) if key.startswith("row."))
    joins = {key for of in found.values() for key in of if key.startswith("join.")}
    assert len(joins) == len(drafted.plan.joins)


def test_instruction_leads_to_the_count_that_it_states() -> None:
    """The last of its rows leaves what the line says, or says how the line counts it."""
    drafted = shown(Example())
    told = rows(published(Example()).blocks)
    for n, of in row_keys(drafted).items():
        if of and "strand" not in of[-1]:
            found, count = reason(drafted, of[-1]), told[n].count
            written = f"The pattern counts what it works: {count}." in found.notes
            assert written or found.number == count.split()[0]


def test_sections_are_listed_with_their_rounds_and_counts() -> None:
    """Straight ones have no shaping to ask for."""
    table = section_table(shown(Example()))
    band, hip, _ = table.rows
    assert [cell.text for cell in band] == ["band", "1–2", "2", "152", "152", "–", "–"]
    assert [cell.key for cell in band[2:5]] == [
        "section.skirt.1.rounds", "row.skirt.0", "section.skirt.1",
    ]  # fmt: skip
    assert hip[5].text.startswith("on round 5, then every 3rd round")
