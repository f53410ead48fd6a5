"""What the command line prints of a draft: a short summary."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from frogless.fit.flare import describe_fullness
from frogless.plan.model import SectionPlan
from frogless.publish.drafted import Drafted
from frogless.publish.front import edging_name, signed
from frogless.publish.messages import say
from frogless.units import show_length, show_long, show_mass
from frogless.write.rhythm import rhythm_sentence


def summary(drafted: Drafted, questions: Sequence[str], written: Sequence[Path]) -> str:
    """Rounds, counts at the landmarks with ease, yarn with its interval, warnings, files."""
    names = {"body": drafted.basis.body.name, "swatch": drafted.basis.main_swatch.name}
    lines = [
        f"{drafted.basis.design.title}, {say(drafted, 'subtitle', **names)}",
        "",
        *_landmarks(drafted),
        "",
        *(_section(drafted, section) for section in drafted.plan.sections),
        *_edging(drafted),
        *_yarn(drafted),
        *_warnings(drafted, questions),
        *(f"wrote    {path}" for path in written),
    ]
    return "\n".join(lines)


def _landmarks(drafted: Drafted) -> Iterator[str]:
    units = drafted.units
    yield f"{'':10}{'body':>10}{'skirt':>10}{'ease':>10}{'stitches':>10}{'round':>7}{'depth':>10}"
    for fit, mark in zip(drafted.fit.landmarks, drafted.plan.landmarks, strict=True):
        body = "-" if fit.body is None else show_length(fit.body, units) + "*" * fit.estimated
        ease = "-" if fit.ease is None else signed(drafted, fit.ease)
        note = "" if fit.verdict == "ok" else f"  {fit.verdict}"
        yield (
            f"{say(drafted, fit.at):10}{body:>10}{show_length(fit.garment, units):>10}{ease:>10}"
            f"{mark.count:>10}{mark.rounds:>7}{show_length(fit.depth, units):>10}{note}"
        )
    if any(fit.estimated for fit in drafted.fit.landmarks):
        yield "* estimated from a survey, not measured"


def _section(drafted: Drafted, section: SectionPlan) -> str:
    rounds = f"rounds {section.first_round}-{section.last_round}"
    told = f"{section.name}: {rounds}, {section.count_before} to {section.count_after} stitches"
    if section.chosen is None:
        return told
    rhythm = rhythm_sentence(section.chosen.rhythm, section.first_round - 1, drafted.language)
    stray = show_length(abs(section.chosen.stray), drafted.units)
    return (
        f"{told}; {section.chosen.points} shaping points {rhythm}; strays {stray} at most; "
        f"{describe_fullness(section.fullness)} ({section.fullness:.2f})"
    )


def _edging(drafted: Drafted) -> Iterator[str]:
    plan = drafted.plan.edging
    if plan is not None:
        yield f"edging: {edging_name(drafted)}, {plan.repeats} repeats on {plan.base_count} stitches"


def _yarn(drafted: Drafted) -> Iterator[str]:
    units = drafted.units
    for need in drafted.tally.yarn:
        low, high = show_long(need.length_low, units), show_long(need.length_high, units)
        balls = (
            f", {need.balls} balls with {need.margin_percent:g} % to spare" if need.balls else ""
        )
        yield (
            f"yarn: {show_long(need.length.value, units)} ({low} to {high}), "
            f"{show_mass(need.mass.value, units)}{balls}"
        )


def _warnings(drafted: Drafted, questions: Sequence[str]) -> Iterator[str]:
    checked = len(drafted.findings)
    warned = [f for f in drafted.findings if f.verdict == "warn"]
    yield f"proof: {checked - len(warned)} of {checked} checks pass, {len(warned)} warn"
    told = [*questions, *(" ".join(f.faults) for f in warned)]
    told += [remark.sentence for remark in drafted.plan.remarks if remark.serious]
    yield from (f"warning  {text}" for text in dict.fromkeys(told))
