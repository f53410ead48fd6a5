"""The back of a pattern: finishing, why the numbers are what they are, what was checked, credits."""

from __future__ import annotations

from collections.abc import Iterator

from frogless import __version__
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan
from frogless.publish.blocks import Block, Bullets, Heading, Instruction, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.units import show_length
from frogless.write.because import because_sentence
from frogless.write.pattern import write_seam


def finishing(drafted: Drafted) -> tuple[Block, ...]:
    """Joins, ends, blocking to stated measurements."""
    ends = "finish_ends_in" if drafted.units == "in" else "finish_ends"
    return (
        Heading(say(drafted, "finishing")),
        *_seams(drafted),
        Bullets((say(drafted, "finish_gap"), say(drafted, ends), say(drafted, "finish_dry"))),
        Paragraph(say(drafted, "finish_block")),
        Bullets(tuple(_targets(drafted))),
    )


def _seams(drafted: Drafted) -> Iterator[Block]:
    seams = drafted.plan.program.seams
    if seams:
        yield Heading(say(drafted, "finish_seams"), 2)
    for seam in seams:
        line = write_seam(seam, drafted.stitches, drafted.dialect, drafted.language)
        yield Instruction(line.label, line.text, line.count)


def _targets(drafted: Drafted) -> Iterator[str]:
    """Girths and depths to pin out: as blocked, before the skirt hangs."""
    grown = drafted.basis.growth
    shrink = 1 + (grown.value if grown else 0.0)
    units = drafted.units
    for mark in drafted.plan.landmarks:
        yield say(
            drafted, "finish_block_item", at=say(drafted, mark.key),
            girth=show_length(mark.garment.value, units), flat=show_length(mark.garment.value / 2, units),
            depth=show_length(mark.depth / shrink, units),
        )  # fmt: skip
    hem = drafted.plan.landmarks[-1]
    yield say(drafted, "finish_block_length", depth=show_length(hem.depth / shrink, units))


def why(drafted: Drafted) -> tuple[Block, ...]:
    """Every planned number with its because."""
    items = [
        (say(drafted, mark.key), because_sentence(mark.because, drafted.units, drafted.language))
        for mark in drafted.plan.landmarks
    ]
    items += [
        (
            say(drafted, "why_section", name=section.name),
            because_sentence(section.because, drafted.units, drafted.language),
        )
        for section in drafted.plan.sections
    ]
    items += _why_trims(drafted)
    return (
        Heading(say(drafted, "why")),
        Paragraph(say(drafted, "why_intro")),
        Terms(tuple(items)),
    )


def _why_trims(drafted: Drafted) -> Iterator[tuple[str, str]]:
    plan = drafted.plan
    if plan.edging is not None:
        yield say(drafted, "why_edging"), _sentence(drafted, plan.edging.because)
    names = {ElasticPlan: "why_elastic", CordPlan: "why_cord", BandPlan: "why_band"}
    if plan.waist is not None:
        yield say(drafted, names[type(plan.waist)]), _sentence(drafted, plan.waist.because)
    for strand in plan.strands:
        yield strand.name, _sentence(drafted, strand.because)


def _sentence(drafted: Drafted, because: object) -> str:
    return because_sentence(because, drafted.units, drafted.language)  # type: ignore[arg-type]


def checked(drafted: Drafted) -> tuple[Block, ...]:
    """The proof: each check, its verdict, how much it looked at."""
    rows = tuple(
        (f.name.replace("_", " "), say(drafted, f"verdict_{f.verdict}"), f.detail)
        for f in drafted.findings
    )
    header = (say(drafted, "check"), say(drafted, "found"), say(drafted, "detail"))
    return (
        Heading(say(drafted, "checked")),
        Paragraph(say(drafted, "checked_intro")),
        Table(say(drafted, "checked_caption"), header, rows),
    )


def about(drafted: Drafted) -> tuple[Block, ...]:
    """Version, credits, terms."""
    design = drafted.basis.design
    lines = [
        say(
            drafted, "about_version", version=design.version, terms=say(drafted, f"terms_{drafted.dialect}"),
            body=drafted.basis.body.name, swatch=drafted.basis.main_swatch.name,
        )
    ]  # fmt: skip
    if design.author:
        lines.append(say(drafted, "about_author", author=design.author))
    lines.append(say(drafted, "about_tool", version=__version__))
    return (Heading(say(drafted, "about")), *(Paragraph(line) for line in lines))
