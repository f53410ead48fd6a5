"""The back of a pattern: finishing, where the numbers come from, what was checked, credits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from frogless import __version__
from frogless.because import Because
from frogless.body.children import is_for_child
from frogless.draw.describe import describe_profile
from frogless.fit.flare import describe_fullness
from frogless.fit.survey import share_reached
from frogless.plan.model import (
    BandPlan,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    Evidence,
    SectionPlan,
    StrandPlan,
)
from frogless.plan.strand import YARN_PER_CHAIN_LENGTH
from frogless.proof.model import Finding
from frogless.publish import colours
from frogless.publish.blocks import Block, Bullets, Figure, Heading, Paragraph, Table, Terms
from frogless.publish.drafted import Drafted, is_closed, piece_of
from frogless.publish.front import depth_of, place
from frogless.publish.instructions import stretched
from frogless.publish.messages import MESSAGES, say, spelled
from frogless.publish.trims import gap, gap_is_told_early
from frogless.tally.model import YarnNeed
from frogless.units import show_length
from frogless.write.because import because_sentence
from frogless.write.rhythm import rhythm_sentence

#: Shares of the surveyed women that are worth telling.
TOLD_SHARES = (0.05, 0.995)


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
        *_why_landmarks(drafted),
        *(
            (say(drafted, "why_section", name=section.name), why_section(drafted, section))
            for section in drafted.plan.main.sections
        ),
        *_why_trims(drafted),
        *why_yarns(drafted),
    )
    alt = describe_profile(drafted.plan, drafted.units)
    return (
        Heading(say(drafted, "why")),
        Paragraph(say(drafted, "why_intro")),
        Terms(tuple(items)),
        Figure("profile", spelled(drafted, alt), say(drafted, "profile_caption")),
    )


def _why_landmarks(drafted: Drafted) -> Iterator[tuple[str, str]]:
    above = ""
    for mark in drafted.plan.main.landmarks:
        told = told_because(drafted, mark.because)
        if above and mark.because.steps and mark.because.steps[0].what == "wanted":
            # A straight section has no cause of its own: it keeps the girth above it.
            told = say(drafted, "why_as_above", at=above, told=told)
        yield say(drafted, mark.key), told
        above = say(drafted, mark.key)


def why_section(drafted: Drafted, section: SectionPlan) -> str:
    """Its because, how many bodies it suits, and the rhythm that came next."""
    told = told_because(drafted, section.because)
    if _widens_to_the_hip(drafted, section):
        share = 100 * share_reached(section.fullness)
        told = say(
            drafted, "why_share", told=told, share=f"{section.fullness:.2f}", percent=f"{share:.0f}"
        )
    if section.chosen is None and section.pattern is None and not drafted.of_pieces:
        told = say(drafted, "why_tube", told=told)
    if drafted.of_pieces and section.evidence is not None:
        return _with_runner_up(drafted, section, section.evidence, told)
    for other in section.others[:1]:
        rhythm = rhythm_sentence(other.rhythm, section.first_round - 1, drafted.language)
        stray = show_length(abs(other.stray), drafted.units)
        way = say(drafted, "other", points=other.points, rhythm=rhythm, stray=stray)
        told = say(drafted, "why_other", told=told, other=way)
    return told


def _with_runner_up(drafted: Drafted, section: SectionPlan, evidence: Evidence, told: str) -> str:
    """What the simplest rhythm of another number of clauses costs or saves."""
    other = next(iter(evidence.runners_up), None)
    if other is None:
        return told
    units = drafted.units
    dearer = show_length(abs(other.cost), units)
    return say(
        drafted, "why_runner_dearer" if other.cost >= 0 else "why_runner_closer", told=told,
        rhythm=rhythm_sentence(
            other.rhythm, section.first_round - 1, drafted.language,
            closed=is_closed(drafted, piece_of(drafted, section).name),
        ),
        stray=show_length(abs(other.stray), units), by=dearer,
    )  # fmt: skip


def _widens_to_the_hip(drafted: Drafted, section: SectionPlan) -> bool:
    """Whether the survey can say whom the section suits: a grown-up's cone from waist to hip.

    A share of nearly none or nearly all says nothing of use.
    """
    hip = next((m for m in drafted.plan.main.landmarks if m.key == "hip_girth"), None)
    if drafted.of_pieces or hip is None or hip.body is None or is_for_child(drafted.basis.body):
        return False
    start = section.girth_before.value
    reaches = section.first_round <= 1 and section.last_round == hip.rounds
    is_cone = section.fullness > 0 and describe_fullness(section.fullness) == "cone"
    told = TOLD_SHARES[0] < share_reached(section.fullness) < TOLD_SHARES[1]
    return reaches and section.chosen is not None and is_cone and start < hip.body.value and told


def _why_trims(drafted: Drafted) -> Iterator[tuple[str, str]]:
    plan = drafted.plan
    if plan.main.edging is not None:
        yield say(drafted, "why_edging"), told_because(drafted, edging_because(plan.main.edging))
    names = {ElasticPlan: "why_elastic", CordPlan: "why_cord", BandPlan: "why_band"}
    if plan.main.waist is not None:
        yield (
            say(drafted, names[type(plan.main.waist)]),
            told_because(drafted, plan.main.waist.because),
        )
    for strand in plan.main.strands:
        yield strand.name, why_strand(drafted, strand)


def edging_because(plan: EdgingPlan) -> Because:
    """Its because; in an edging without repeats a repeat of one stitch is not worth a word."""
    if plan.multiple > 1:
        return plan.because
    return Because(tuple(s for s in plan.because.steps if s.what not in ("repeat", "repeats")))


def why_strand(drafted: Drafted, strand: StrandPlan) -> str:
    """Its because, and what to cut of the yarn."""
    units = drafted.units
    return say(
        drafted, "why_strand_yarn", told=told_because(drafted, strand.because),
        times=f"{YARN_PER_CHAIN_LENGTH:g}", tail=show_length(strand.tails, units),
        cut=show_length(strand.cut_yarn, units),
    )  # fmt: skip


def why_yarns(drafted: Drafted) -> Iterator[tuple[str, str]]:
    """The yarn of each colour with its because."""
    for need in drafted.tally.yarn:
        key = "why_yarn_of" if need.colour else "why_yarn"
        yield say(drafted, key, letter=need.colour), why_yarn(drafted, need)


def why_yarn(drafted: Drafted, need: YarnNeed) -> str:
    """Its because, naming the stitch that was weighed."""
    stitch = drafted.short(need.swatch.stitch)
    steps = tuple(
        replace(step, note=say(drafted, "why_weighed", unit=step.note.split(",")[0], stitch=stitch))
        if step.what == "one_stitch"
        else step
        for step in need.because.steps
    )
    return told_because(drafted, Because(steps))


def told_because(drafted: Drafted, because: Because) -> str:
    """A because in one sentence."""
    return because_sentence(because, drafted.units, drafted.language)


def checked(drafted: Drafted) -> tuple[Block, ...]:
    """The proof: each check that had something to look at, how much, and what it found."""
    header = tuple(say(drafted, key) for key in ("check", "looked_at", "found"))
    rows = tuple(
        (check_name(drafted, f.name), str(f.looked_at), _verdict(drafted, f))
        for f in drafted.findings
        if f.looked_at or f.faults
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
            terms=say(drafted, f"terms_{drafted.dialect}"), body=drafted.basis.body.name,
            swatch=drafted.basis.main_swatch.name,
        )
    ]  # fmt: skip
    if design.author:
        lines.append(say(drafted, "about_author", author=design.author))
    lines.append(say(drafted, "about_tool", version=__version__))
    return (Heading(say(drafted, "about")), *(Paragraph(line) for line in lines))
