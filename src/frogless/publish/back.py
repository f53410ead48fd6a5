"""The back of a pattern: finishing, where the numbers come from, what was checked, credits."""

from __future__ import annotations

from collections.abc import Iterator

from frogless import __version__
from frogless.draw.describe import describe_profile
from frogless.proof.model import Finding, telling
from frogless.publish import colours, left_handed
from frogless.publish.blocks import Block, Bullets, Figure, Heading, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.front import depth_of, place
from frogless.publish.instructions import stretched
from frogless.publish.messages import MESSAGES, say, spelled
from frogless.publish.reasons_landmarks import landmark_reasons
from frogless.publish.reasons_names import yarns
from frogless.publish.reasons_told import why_section
from frogless.publish.reasons_trims import trim_reasons
from frogless.publish.reasons_yarn import yarn_reason
from frogless.publish.trims import gap, gap_is_told_early
from frogless.units import show_length


def finishing(drafted: Drafted) -> tuple[Block, ...]:
    """Gap, ends, blocking to stated measurements."""
    weave = say(drafted, "finish_ends_in" if drafted.units == "in" else "finish_ends")
    ends = (*colours.ends(drafted), weave)
    steps = ends if gap_is_told_early(drafted) else (*gap(drafted), *ends)
    return (
        Heading(say(drafted, "finishing")),
        Bullets((*steps, say(drafted, "finish_block"))),
        _block_table(drafted),
        *_whole(drafted),
    )


def _block_table(drafted: Drafted) -> Table:
    """Girths and depths to pin out: lying flat, before the skirt hangs."""
    units = drafted.units
    header = tuple(say(drafted, key) for key in ("at", "around", "across", "depth"))
    rows = tuple(
        (
            place(drafted, mark.key),
            show_length(mark.garment.value, units),
            show_length(mark.garment.value / 2, units),
            show_length(depth_of(drafted, mark) / stretched(drafted), units),
        )
        for mark in drafted.plan.main.landmarks
    )
    return Table(say(drafted, "block_caption"), header, rows)


def _whole(drafted: Drafted) -> Iterator[Block]:
    """The finished length with the edging."""
    plan, units = drafted.plan, drafted.units
    if plan.main.edging is None:
        return
    worn = plan.main.depths[plan.main.edging.last_round]
    flat, hung = show_length(worn / stretched(drafted), units), show_length(worn, units)
    key = "finish_length_same" if flat == hung else "finish_length"
    yield Paragraph(say(drafted, key, flat=flat, worn=hung))


def why(drafted: Drafted) -> tuple[Block, ...]:
    """Every planned number with its because, and the girth by depth as a graph."""
    items = (
        *((reason.title, reason.sentence) for _, reason in landmark_reasons(drafted)),
        *(
            (say(drafted, "why_section", name=section.name), why_section(drafted, section))
            for section in drafted.plan.main.sections
        ),
        *((reason.title, reason.sentence) for reason in trim_reasons(drafted, drafted.plan.main)),
        *why_yarns(drafted),
    )
    alt = describe_profile(drafted.plan, drafted.units)
    return (
        Heading(say(drafted, "why")),
        Paragraph(say(drafted, "why_intro")),
        Terms(tuple(items)),
        Figure("profile", spelled(drafted, alt), say(drafted, "profile_caption")),
    )


def why_yarns(drafted: Drafted) -> Iterator[tuple[str, str]]:
    """The yarn of each colour with its because."""
    for key, need in yarns(drafted):
        reason = yarn_reason(drafted, key, need)
        yield reason.title, reason.sentence


def checked(drafted: Drafted) -> tuple[Block, ...]:
    """The proof: each check that had something to look at, how much, and what it found."""
    header = tuple(say(drafted, key) for key in ("check", "looked_at", "found"))
    rows = tuple(
        (check_name(drafted, f.name), str(f.looked_at), _verdict(drafted, f))
        for f in telling(drafted.findings)
    )
    return (
        Heading(say(drafted, "checked")),
        Paragraph(say(drafted, "checked_intro")),
        Table(say(drafted, "checked_caption"), header, rows),
    )


def check_name(drafted: Drafted, name: str) -> str:
    """What a check holds a pattern to; for one that has no words, its name."""
    key = f"check_{name}"
    return say(drafted, key) if key in MESSAGES else name.replace("_", " ")


def _verdict(drafted: Drafted, found: Finding) -> str:
    if not found.faults:
        return say(drafted, "verdict_pass")
    # Why it is not sure to go on stands at the sizes; it is not told twice.
    told = say(drafted, "see_goes_on") if found.name == "goes_on" else "; ".join(found.faults)
    return say(drafted, "verdict_warn", told=told)


def about(drafted: Drafted) -> tuple[Block, ...]:
    """Version, credits, terms."""
    design = drafted.basis.design
    lines = [
        say(
            drafted, "about_version", version=design.version,
            terms=left_handed.terms(drafted), body=drafted.basis.body.name,
            swatch=drafted.basis.main_swatch.name,
        )
    ]  # fmt: skip
    if design.author:
        lines.append(say(drafted, "about_author", author=design.author))
    lines.append(say(drafted, "about_tool", version=__version__))
    return (Heading(say(drafted, "about")), *(Paragraph(line) for line in lines))
