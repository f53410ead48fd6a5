"""The drawings in words, for alternative text: what the picture shows and what its numbers are."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from frogless.design.work import JoinAt
from frogless.draw.outline import meeting, shaping_rounds
from frogless.draw.words import landmark_name, with_defaults
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Landmark, Plan, SectionPlan
from frogless.units import Units, show_length, show_signed

NO_LABELS: Mapping[str, str] = MappingProxyType({})
Words = Mapping[str, str]


def describe(
    plan: Plan,
    units: Units,
    labels: Mapping[str, str] = NO_LABELS,
    join_at: JoinAt = "centre back",
) -> str:
    """The schematic in words: girths with depths, length, shaping, waist, edging, strands, join."""
    words = with_defaults(labels)
    hem = plan.main.depths[plan.main.sections[-1].last_round]
    first, *others = plan.main.landmarks
    girths = [_girth("tell_first", first, units, words)]
    girths += [_girth("tell_girth", mark, units, words) for mark in others]
    return _sentences(
        ", ".join(girths),
        words["tell_length"].format(length=show_length(hem, units)),
        *(_shaping(section, words) for section in plan.main.sections if section.chosen),
        *_waist(plan, units, words),
        *_hangings(plan, units, words),
        words["tell_join"].format(join=words[meeting(plan, join_at)]),
    )


def describe_profile(plan: Plan, units: Units, labels: Mapping[str, str] = NO_LABELS) -> str:
    """The profile in words: wanted and worked girth at each landmark, and the greatest strays."""
    words = with_defaults(labels)
    return _sentences(
        words["tell_graph"],
        *(_girth("tell_landmark", mark, units, words) for mark in plan.main.landmarks),
        *_strays(plan, units, words),
    )


def _sentences(*sentences: str) -> str:
    return " ".join(f"{sentence}." for sentence in sentences)


def _girth(phrase: str, mark: Landmark, units: Units, words: Words) -> str:
    return words[phrase].format(
        girth=show_length(mark.garment.value, units),
        wanted=show_length(mark.wanted, units),
        at=landmark_name(mark.key, words),
        depth=show_length(mark.depth, units),
        count=mark.count,
    )


def _shaping(section: SectionPlan, words: Words) -> str:
    widens = section.count_after > section.count_before
    return words["tell_widens" if widens else "tell_narrows"].format(
        first=section.first_round,
        last=section.last_round,
        points=section.chosen.points if section.chosen else 0,
        rounds=len(shaping_rounds(section)),
    )


def _waist(plan: Plan, units: Units, words: Words) -> Iterator[str]:
    match plan.main.waist:
        case ElasticPlan() as elastic:
            yield words["tell_elastic"].format(girth=show_length(elastic.finished, units))
        case CordPlan() as cord:
            yield words["tell_cord"].format(eyelets=len(cord.gaps))
        case BandPlan() as band:
            yield words["tell_band"].format(height=show_length(band.height, units))


def _hangings(plan: Plan, units: Units, words: Words) -> Iterator[str]:
    edging = plan.main.edging
    if edging:
        phrase = "tell_edging" if edging.multiple > 1 else "tell_edging_plain"
        yield words[phrase].format(repeats=edging.repeats, count=edging.base_count)
    for strand in plan.main.strands:
        sag = show_length(strand.actual_sag, units)
        yield words["tell_strand"].format(name=strand.name, beads=strand.beads, sag=sag)


def _strays(plan: Plan, units: Units, words: Words) -> Iterator[str]:
    for section in plan.main.sections:
        if section.chosen:
            yield words["tell_stray"].format(
                first=section.first_round,
                last=section.last_round,
                depth=show_length(section.chosen.stray_at, units),
                stray=show_signed(section.chosen.stray, units),
            )
