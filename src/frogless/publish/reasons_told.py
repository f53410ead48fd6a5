"""Why a number is what it is in one sentence, as the back of the pattern tells it."""

from __future__ import annotations

from dataclasses import replace

from frogless.because import Because
from frogless.body.children import is_for_child
from frogless.fit.flare import describe_fullness
from frogless.fit.survey import share_reached
from frogless.plan.model import EdgingPlan, Evidence, SectionPlan, StrandPlan
from frogless.plan.strand import YARN_PER_CHAIN_LENGTH
from frogless.publish.drafted import Drafted, is_closed, piece_of
from frogless.publish.messages import say
from frogless.tally.model import YarnNeed
from frogless.units import show_length
from frogless.write.because import because_sentence
from frogless.write.rhythm import rhythm_sentence

#: Shares of the surveyed women that are worth telling.
TOLD_SHARES = (0.05, 0.995)


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


def why_yarn(drafted: Drafted, need: YarnNeed) -> str:
    """Its because, naming the stitch that was weighed."""
    return told_because(drafted, yarn_because(drafted, need))


def yarn_because(drafted: Drafted, need: YarnNeed) -> Because:
    """Its because with the stitch that was weighed."""
    stitch = drafted.short(need.swatch.stitch)
    return Because(
        tuple(
            replace(
                step,
                note=say(drafted, "why_weighed", unit=step.note.split(",")[0], stitch=stitch),
            )
            if step.what == "one_stitch"
            else step
            for step in need.because.steps
        )
    )


def told_because(drafted: Drafted, because: Because) -> str:
    """A because in one sentence."""
    return because_sentence(because, drafted.units, drafted.language)
