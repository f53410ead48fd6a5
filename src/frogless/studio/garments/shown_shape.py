"""The shape: the drawings, the landmarks with what they measure, the sections with their shaping."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.plan.model import PiecePlan, SectionPlan
from frogless.publish import front, garment_pages, patterned
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.instructions import section_sentences
from frogless.publish.pattern import drawings
from frogless.publish.reasons import landmark_table, piece_tables
from frogless.publish.reasons_names import sections
from frogless.studio.garments.sheet import (
    Cell,
    DrawingsBlock,
    Part,
    SectionLine,
    SectionsBlock,
    TitleBlock,
)
from frogless.studio.garments.shown_blocks import asked, drawing, keyed

CAPTIONS = {"schematic": "", "profile": "Girth by depth: wanted and worked"}


def shape_parts(drafted: Drafted) -> tuple[Part, ...]:
    """All of the room."""
    return (*drawn(drafted), *_girths(drafted), *_sections(drafted), *_measures(drafted))


def drawn(drafted: Drafted) -> Iterator[DrawingsBlock]:
    """The drawings, side by side; nothing where there is nothing to draw."""
    found = tuple(drawing(svg, CAPTIONS.get(key, ""), key) for key, svg in drawings(drafted))
    if found:
        yield DrawingsBlock(found)


def _girths(drafted: Drafted) -> Iterator[Part]:
    """The landmarks, and what else is to be seen at a glance."""
    pages = garment_pages if drafted.of_pieces else front
    lines = tuple(line for line in pages.figures(drafted) if line.key != "time")
    table = landmark_table(drafted)
    yield TitleBlock("Girths" if table.rows else "At a glance", 2, "girths")
    if table.rows:
        yield keyed(table, "girths-table")
    if lines:
        yield asked(lines)


def _measures(drafted: Drafted) -> Iterator[Part]:
    """Of each piece its finished measurements."""
    for n, found in enumerate(piece_tables(drafted), start=1):
        if n == 1:
            yield TitleBlock("Finished measurements", 2, "measurements")
        yield keyed(found, f"measurements-{n}")


def _sections(drafted: Drafted) -> Iterator[Part]:
    found = tuple(_section(drafted, *one) for one in sections(drafted))
    if found:
        yield TitleBlock("Sections", 2, "sections")
        yield SectionsBlock(found)


def _section(drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan) -> SectionLine:
    unit = "round" if is_closed(drafted, piece.name) else "row"
    first, last = max(section.first_round, 1), section.last_round
    many = f"{unit} {last}" if first >= last else f"{unit}s {first} to {last}"
    before, after = section.count_before, section.count_after
    count = patterned.check_count(drafted, section)
    named = drafted.of_pieces and not section.name.startswith(piece.name)
    return SectionLine(
        name=section.name[:1].upper() + section.name[1:],
        piece=piece.name if named else "",
        rounds=Cell(many, f"{key}.rounds"),
        counts=Cell(f"{before} to {after} stitches" if before != after else count, key),
        told=" ".join(section_sentences(drafted, piece.name, section)),
    )
