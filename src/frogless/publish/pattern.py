"""The whole pattern as a document: its parts in the order a maker needs them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, replace
from typing import Any, Literal, get_args

from frogless.draw.describe import describe
from frogless.draw.mirror import plan_for
from frogless.draw.pieces import describe_pieces, pieces_drawing
from frogless.draw.profile import profile
from frogless.draw.schematic import schematic
from frogless.draw.svg import svg
from frogless.draw.words import WORDS
from frogless.publish import (
    back,
    colours,
    front,
    garment_pages,
    glossary,
    left_handed,
    materials,
)
from frogless.publish.arrange import glued
from frogless.publish.authored import authored
from frogless.publish.blocks import Block, Document, Figure, Heading, Instruction, Paragraph
from frogless.publish.drafted import Drafted
from frogless.publish.garment import garment_instructions
from frogless.publish.instructions import instructions
from frogless.publish.messages import say, spelled

Room = Literal["shape", "pattern", "materials", "fit"]
"""A page that shows one side of the pattern."""

ROOMS: tuple[Room, ...] = get_args(Room)

Part = tuple[Room, tuple[Block, ...]]

Drawings = tuple[tuple[str, str], ...]
"""Drawings by key, as SVG."""

LANGUAGES = {"us": "en-US", "uk": "en-GB"}


def drawings(drafted: Drafted) -> Drawings:
    """The pattern's drawings by key, as SVG."""
    design, labels = drafted.basis.design, _labels(drafted)
    if drafted.of_pieces:
        pieces = pieces_drawing(
            plan_for(drafted.plan, drafted.hand),
            title=design.title,
            units=drafted.units,
            labels=labels,
        )
        return (("schematic", svg(pieces)),) if pieces else ()
    flat = schematic(
        drafted.plan,
        title=design.title,
        units=drafted.units,
        labels=labels,
        join_at=design.work.join_at,
        hand=drafted.hand,
    )
    graph = profile(drafted.plan, title=design.title, units=drafted.units, labels=labels)
    return (("schematic", svg(flat)), ("profile", svg(graph)))


def _labels(drafted: Drafted) -> dict[str, str]:
    """The words of the drawings as the dialect spells them."""
    return {name: spelled(drafted, text) for name, text in WORDS.items()}


def pattern(drafted: Drafted) -> Document:
    """The document that page, screen and plain text are made from."""
    design = drafted.basis.design
    names = {"body": drafted.basis.body.name, "swatch": drafted.basis.main_swatch.name}
    language = LANGUAGES[drafted.dialect] if drafted.language == "en" else drafted.language
    terms = left_handed.terms(drafted)
    drawn = drawings(drafted)
    return Document(
        title=design.title,
        subtitle=say(drafted, "subtitle", **names),
        language=language,
        blocks=tuple(_glued(block) for block in _blocks(drafted, drawn)),
        drawings=drawn,
        footer=say(
            drafted, "footer", title=design.title, version=design.version, terms=terms, **names
        ),
        author=design.author,
    )


def rooms(drafted: Drafted) -> Mapping[Room, tuple[Block, ...]]:
    """The blocks of the pattern parted for four pages, in order; each block is on one of them."""
    found: dict[Room, tuple[Block, ...]] = dict.fromkeys(ROOMS, ())
    for room, blocks in _parts(drafted, drawings(drafted)):
        found[room] += tuple(_glued(block) for block in blocks)
    return found


def _blocks(drafted: Drafted, drawn: Drawings) -> Iterator[Block]:
    """What could hurt, what it will be, what to have and know, how to do it, why it is so."""
    for _, blocks in _parts(drafted, drawn):
        yield from blocks


def _parts(drafted: Drafted, drawn: Drawings) -> tuple[Part, ...]:
    """The parts of the pattern in their order, each with the page it is shown on."""
    if drafted.of_pieces:
        return _garment_parts(drafted, drawn)
    rows = instructions(drafted)
    return (
        ("shape", _summary(drafted)),
        ("fit", front.cautions(drafted)),
        ("shape", _schematic(drafted)),
        ("shape", front.glance(drafted)),
        ("fit", front.wearing(drafted)),
        *_to_have(drafted),
        *_to_know(drafted, rows),
        ("pattern", front.before(drafted)),
        ("pattern", rows),
        ("pattern", back.finishing(drafted)),
        ("fit", back.why(drafted)),
        ("pattern", back.checked(drafted)),
        ("pattern", back.about(drafted)),
    )


def _garment_parts(drafted: Drafted, drawn: Drawings) -> tuple[Part, ...]:
    """The same order for a garment of several pieces."""
    rows = garment_instructions(drafted)
    return (
        ("shape", _summary(drafted)),
        ("fit", front.cautions(drafted)),
        ("shape", _pieces_schematic(drafted, drawn)),
        ("shape", garment_pages.glance(drafted)),
        ("fit", front.wearing(drafted)),
        *_to_have(drafted),
        *_to_know(drafted, rows),
        ("pattern", garment_pages.before(drafted)),
        ("pattern", rows),
        ("pattern", garment_pages.finishing(drafted)),
        ("fit", garment_pages.why(drafted)),
        ("pattern", back.checked(drafted)),
        ("pattern", back.about(drafted)),
    )


def _to_have(drafted: Drafted) -> tuple[Part, ...]:
    """What to buy, and the gauge; how the fabric hangs is a question of how it fits."""
    return (
        ("materials", materials.materials(drafted)),
        ("materials", colours.colours(drafted)),
        ("materials", materials.counted(drafted)),
        ("fit", materials.hanging(drafted)),
        ("materials", materials.swatching(drafted)),
    )


def _to_know(drafted: Drafted, rows: tuple[Block, ...]) -> tuple[Part, ...]:
    """The words of the rows."""
    return (
        ("pattern", glossary.abbreviations(drafted, rows)),
        ("pattern", glossary.special_stitches(drafted)),
    )


def _summary(drafted: Drafted) -> tuple[Block, ...]:
    summary = authored(drafted, drafted.basis.design.summary)
    return (Paragraph(summary),) if summary else ()


def _pieces_schematic(drafted: Drafted, drawn: Drawings) -> tuple[Block, ...]:
    """The pieces lying flat; nothing when none of them has an outline."""
    if not drawn:
        return ()
    alt = describe_pieces(drafted.plan, drafted.units, _labels(drafted))
    return (
        Heading(say(drafted, "schematic")),
        Figure("schematic", alt, left_handed.caption(drafted)),
    )


def _glued(block: Block) -> Block:
    """The block with its numbers held to their units; rows stay as they were proven."""
    if isinstance(block, Instruction):
        return block
    held: dict[str, Any] = {f.name: _held(getattr(block, f.name)) for f in fields(block)}
    return replace(block, **held)


def _held(value: object) -> object:
    if isinstance(value, str):
        return glued(value)
    return tuple(map(_held, value)) if isinstance(value, tuple) else value


def _schematic(drafted: Drafted) -> tuple[Block, ...]:
    alt = describe(drafted.plan, drafted.units, join_at=drafted.join_at)
    return (
        Heading(say(drafted, "schematic")),
        Figure("schematic", spelled(drafted, alt), left_handed.caption(drafted)),
    )
