"""The shape: the drawings, the landmarks with what they measure, the sections with their shaping."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from frogless.fit.model import LandmarkFit
from frogless.plan.model import Landmark, PiecePlan, SectionPlan
from frogless.publish import patterned
from frogless.publish.blocks import Table
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.front import depth_of, place
from frogless.publish.garment import measures_table
from frogless.publish.instructions import section_sentences
from frogless.publish.messages import say
from frogless.publish.pattern import drawings
from frogless.publish.reasons_names import landmarks, sections
from frogless.studio.garments.sheet import (
    Cell,
    DrawingsBlock,
    Part,
    SectionLine,
    SectionsBlock,
    TableBlock,
    TitleBlock,
)
from frogless.studio.garments.shown_blocks import drawing, table
from frogless.units import as_shown, show_length, show_signed

CAPTIONS = {"schematic": "", "profile": "Girth by depth: wanted and worked"}


def shape_parts(drafted: Drafted) -> tuple[Part, ...]:
    """All of the room."""
    return (*_drawn(drafted), *_landmarks(drafted), *_measures(drafted), *_sections(drafted))


def _drawn(drafted: Drafted) -> Iterator[Part]:
    found = tuple(drawing(svg, CAPTIONS.get(key, ""), key) for key, svg in drawings(drafted))
    if found:
        yield DrawingsBlock(found)


def _landmarks(drafted: Drafted) -> Iterator[Part]:
    keys = {id(mark): key for key, _, mark in landmarks(drafted)}
    pairs = tuple(zip(drafted.fit.landmarks, drafted.plan.landmarks, strict=True))
    if not pairs:
        return
    pieces = drafted.of_pieces
    names = ["at", *(["piece"] if pieces else []), "body", "garment", "ease", "stitches"]
    names += [] if pieces else ["round", "depth"]
    header = tuple(Cell(say(drafted, n), figure=n not in ("at", "piece")) for n in names)
    rows = tuple(_landmark(drafted, fit, mark, keys[id(mark)]) for fit, mark in pairs)
    yield TitleBlock("Girths", 2, "girths")
    yield TableBlock("", header, rows, "girths-table")


def _landmark(drafted: Drafted, fit: LandmarkFit, mark: Landmark, key: str) -> tuple[Cell, ...]:
    units, none = drafted.units, say(drafted, "none")
    body, ease = none, none
    if fit.body is not None:
        body = show_length(fit.body, units)
        # The columns subtract as they are shown.
        ease = show_signed(as_shown(fit.garment, units) - as_shown(fit.body, units), units)
    if fit.estimated:
        body = say(drafted, "estimated_mark", value=body)
    if fit.verdict != "ok":
        ease = say(drafted, f"verdict_{fit.verdict}", value=ease)
    named = drafted.phrases.measurement(fit.at) if drafted.of_pieces else place(drafted, fit.at)
    cells = [
        Cell(body, figure=True),
        Cell(show_length(fit.garment, units), f"{key}.girth", figure=True),
        Cell(ease, figure=True),
        Cell(str(mark.count), key, figure=True),
    ]
    if drafted.of_pieces:
        return Cell(_capital(named)), Cell(fit.piece), *cells
    return (
        Cell(_capital(named)),
        *cells,
        Cell(str(mark.rounds), f"{key}.round", figure=True),
        Cell(show_length(depth_of(drafted, mark), units), f"{key}.depth", figure=True),
    )


def _measures(drafted: Drafted) -> Iterator[Part]:
    for block in measures_table(drafted):
        if isinstance(block, Table):
            yield TitleBlock(block.caption, 2, "measurements")
            yield table(replace(block, caption=""), "measurements-table")


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
    return SectionLine(
        name=_capital(section.name),
        piece=piece.name if drafted.of_pieces else "",
        rounds=Cell(many, f"{key}.rounds"),
        counts=Cell(f"{before} to {after} stitches" if before != after else f"{count}", key),
        told=" ".join(section_sentences(drafted, piece.name, section)),
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
