"""Why a section ends on its count, has its rounds, and is shaped as it is."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from frogless.fit.flare import describe_fullness
from frogless.plan.model import Option, PiecePlan, SectionPlan
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import sections, titled
from frogless.publish.reasons_steps import line, steps_of, until_count
from frogless.publish.reasons_told import why_section
from frogless.units import as_shown, show_length
from frogless.write.rhythm import rhythm_sentence


def section_entries(drafted: Drafted) -> Iterator[Entry]:
    """Of each section the count at its end and its rounds; of a shaped one also the shaping."""
    for key, piece, section in sections(drafted):
        yield key, partial(section_reason, drafted, key, piece, section)
        yield f"{key}.rounds", partial(_rounds, drafted, key, piece, section)
        if section.chosen is not None:
            yield f"{key}.points", partial(_points, drafted, key, piece, section, section.chosen)
            yield f"{key}.shaping", partial(_shaping, drafted, key, piece, section, section.chosen)
            yield f"{key}.stray", partial(_stray, drafted, key, piece, section, section.chosen)


def section_reason(drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan) -> Reason:
    """Why a section leaves its count: its length, its rounds, what it adds."""
    steps = (*steps_of(drafted, section.because), _count_after(drafted, section))
    return reasoned(
        key, titled(drafted, piece.name, say(drafted, "reason_section", name=section.name)), steps,
        why_section(drafted, section), _notes(drafted, piece, section),
    )  # fmt: skip


def _count_after(drafted: Drafted, section: SectionPlan) -> ReasonStep:
    before, after = section.count_before, section.count_after
    if section.pattern is not None:
        return line(drafted, "count_of_pattern", str(after))
    if before == after:
        return line(drafted, "count_kept", str(after))
    name = "count_grown" if after > before else "count_less"
    return line(drafted, name, str(after), before=before, change=abs(after - before))


def _notes(drafted: Drafted, piece: PiecePlan, section: SectionPlan) -> Iterator[str]:
    if section.chosen is not None:
        rhythm = rhythm_of(drafted, piece, section, section.chosen)
        yield say(drafted, "reason_rhythm", rhythm=rhythm)
    if is_closed(drafted, piece.name) and section.pattern is None:
        what = say(drafted, f"fullness_{describe_fullness(section.fullness)}")
        share = f"{section.fullness:.2f}".replace("-", "\u2212")
        yield say(drafted, "fullness", share=share, what=what)


def rhythm_of(drafted: Drafted, piece: PiecePlan, section: SectionPlan, chosen: Option) -> str:
    """On which rounds or rows it is shaped, in words."""
    closed = is_closed(drafted, piece.name)
    return rhythm_sentence(chosen.rhythm, section.first_round - 1, drafted.language, closed=closed)


def rows_in(section: SectionPlan) -> int:
    """How many rounds or rows a section has, its foundation not counted."""
    return section.last_round - max(section.first_round, 1) + 1


def _rounds(drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan) -> Reason:
    many = rows_in(section)
    because = until_count(section.because, many, "rows")
    steps = list(steps_of(drafted, because)) if because else []
    if because is None:
        first = max(section.first_round, 1)
        if section.count_before != section.count_after:
            steps.append(line(drafted, "section_begins", str(section.count_before)))
            steps.append(line(drafted, "section_ends", str(section.count_after)))
        depth = as_shown(abs(many * section.gauge.height.value), drafted.units)
        steps.append(line(drafted, "worn", show_length(depth, drafted.units)))
        steps.append(
            line(drafted, "rounds_from_to", str(many), first=first, last=section.last_round)
        )
    name = say(drafted, "reason_rounds", name=section.name)
    return reasoned(f"{key}.rounds", titled(drafted, piece.name, name), steps)


def _change(drafted: Drafted, section: SectionPlan, chosen: Option) -> Iterator[ReasonStep]:
    """What is to be added or taken away, and in how many shaping rounds it is."""
    change = section.count_after - section.count_before
    yield line(drafted, "change_more" if change >= 0 else "change_less", str(abs(change)))
    yield line(drafted, "shapings", str(len(chosen.rhythm.rounds)))


def _points(
    drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan, chosen: Option
) -> Reason:
    """What is added, over the shaping rounds and what each point adds, is the number of points."""
    more = "add" if section.count_after > section.count_before else "less"
    steps = (
        *_change(drafted, section, chosen),
        line(drafted, "points_at", str(chosen.points), add=say(drafted, f"{more}_{chosen.add}")),
    )
    name = say(drafted, "reason_points", name=section.name)
    return reasoned(f"{key}.points", titled(drafted, piece.name, name), steps)


def _shaping(
    drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan, chosen: Option
) -> Reason:
    """Of all rhythms that the tape cannot tell from the closest the one with the fewest words."""
    steps = (
        *_change(drafted, section, chosen),
        *_weighed(drafted, section),
        line(drafted, "rhythm", rhythm_of(drafted, piece, section, chosen)),
    )
    name = say(drafted, "reason_shaping", name=section.name)
    return reasoned(f"{key}.shaping", titled(drafted, piece.name, name), steps)


def _weighed(drafted: Drafted, section: SectionPlan) -> Iterator[ReasonStep]:
    """What the rhythm was weighed against."""
    found, units = section.evidence, drafted.units
    if found is not None:
        yield line(drafted, "bound", show_length(found.bound, units))
        yield line(drafted, "least", show_length(found.least, units), clauses=found.most_clauses)
        yield line(drafted, "indifference", show_length(found.indifference, units))
        yield line(drafted, "stray", show_length(found.stray, units))


def _stray(
    drafted: Drafted, key: str, piece: PiecePlan, section: SectionPlan, chosen: Option
) -> Reason:
    """How far the shaping strays from the wanted girth where it strays most."""
    units = drafted.units
    depth = show_length(chosen.stray_at, units)
    way = "stray_wider" if chosen.stray > 0 else "stray_narrower"
    if as_shown(chosen.stray, units) == 0:
        way = "stray_none"
    steps = (
        line(drafted, "rhythm", rhythm_of(drafted, piece, section, chosen)),
        line(drafted, way, show_length(abs(chosen.stray), units), depth=depth),
    )
    name = say(drafted, "reason_stray", name=section.name)
    return reasoned(f"{key}.stray", titled(drafted, piece.name, name), steps)
