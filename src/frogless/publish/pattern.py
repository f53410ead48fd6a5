"""The whole pattern as a document: its parts in the order a maker needs them."""

from __future__ import annotations

from frogless.draw.describe import describe, describe_profile
from frogless.draw.profile import profile
from frogless.draw.schematic import schematic
from frogless.draw.svg import svg
from frogless.publish import back, front
from frogless.publish.blocks import Block, Document, Figure, Heading, Paragraph
from frogless.publish.drafted import Drafted
from frogless.publish.instructions import instructions
from frogless.publish.messages import say

LANGUAGES = {"us": "en-US", "uk": "en-GB"}


def drawings(drafted: Drafted) -> tuple[tuple[str, str], ...]:
    """The pattern's drawings by key, as SVG."""
    design = drafted.basis.design
    flat = schematic(
        drafted.plan,
        title=design.title,
        units=drafted.units,
        labels={},
        join_at=design.work.join_at,
    )
    graph = profile(drafted.plan, title=design.title, units=drafted.units, labels={})
    return (("schematic", svg(flat)), ("profile", svg(graph)))


def pattern(drafted: Drafted) -> Document:
    """The document that page, screen and plain text are made from."""
    design = drafted.basis.design
    names = {"body": drafted.basis.body.name, "swatch": drafted.basis.main_swatch.name}
    language = LANGUAGES[drafted.dialect] if drafted.language == "en" else drafted.language
    terms = say(drafted, f"terms_{drafted.dialect}")
    return Document(
        title=design.title,
        subtitle=say(drafted, "subtitle", **names),
        language=language,
        blocks=_blocks(drafted),
        drawings=drawings(drafted),
        footer=say(
            drafted, "footer", title=design.title, version=design.version, terms=terms, **names
        ),
        author=design.author,
    )


def _blocks(drafted: Drafted) -> tuple[Block, ...]:
    design = drafted.basis.design
    return (
        *((Paragraph(design.summary),) if design.summary else ()),
        *front.cautions(drafted),
        *front.glance(drafted),
        *_figures(drafted),
        *front.materials(drafted),
        *front.gauge(drafted),
        *front.abbreviations(drafted),
        *front.special_stitches(drafted),
        *front.before(drafted),
        *instructions(drafted),
        *back.finishing(drafted),
        *back.why(drafted),
        *back.checked(drafted),
        *back.about(drafted),
    )


def _figures(drafted: Drafted) -> tuple[Block, ...]:
    plan, units = drafted.plan, drafted.units
    join = drafted.basis.design.work.join_at
    return (
        Heading(say(drafted, "schematic")),
        Figure("schematic", describe(plan, units, join_at=join), ""),
        Figure("profile", describe_profile(plan, units), ""),
    )
