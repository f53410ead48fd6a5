"""Why the counts, girths, rounds and depths at the landmarks are what they are."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import isclose, isfinite

from frogless.because import Because
from frogless.plan.model import Landmark, PiecePlan
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.front import depth_of
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import landmark_name, landmarks, titled
from frogless.publish.reasons_steps import (
    after_count,
    line,
    number,
    steps_of,
    until_count,
)
from frogless.publish.reasons_told import told_because
from frogless.units import show_length
from frogless.write.near import show_gauge


def landmark_entries(drafted: Drafted) -> Iterator[Entry]:
    """At each landmark its count; then its girth, and in a skirt its round and its depth."""
    for key, piece, mark in landmarks(drafted):
        yield key, partial(count_at, drafted, key, piece, mark)
        yield f"{key}.wanted", partial(_wanted, drafted, key, piece, mark)
        yield f"{key}.girth", partial(_girth, drafted, key, piece, mark)
        if not drafted.of_pieces:
            yield f"{key}.round", partial(_round, drafted, key, piece, mark)
            yield f"{key}.depth", partial(_depth, drafted, key, piece, mark)


def landmark_reasons(drafted: Drafted) -> Iterator[tuple[PiecePlan, Reason]]:
    """The reason of the count at every landmark, with whose landmark it is."""
    for key, piece, mark in landmarks(drafted):
        yield piece, count_at(drafted, key, piece, mark)


def _above(drafted: Drafted, piece: PiecePlan, mark: Landmark) -> str:
    """What the landmark above is called in a skirt of one tube; "" when there is none."""
    at = piece.landmarks.index(mark)
    return landmark_name(drafted, piece.landmarks[at - 1]) if at and not drafted.of_pieces else ""


def count_at(drafted: Drafted, key: str, piece: PiecePlan, mark: Landmark) -> Reason:
    """Why a landmark has its count."""
    above = _above(drafted, piece, mark)
    because = until_count(mark.because, mark.count)
    steps = list(steps_of(drafted, because or mark.because))
    told = told_because(drafted, mark.because)
    if above and mark.because.steps and mark.because.steps[0].what == "wanted":
        # A straight section has no cause of its own: it keeps the girth above it.
        told = say(drafted, "why_as_above", at=above, told=told)
        steps[0] = line(drafted, "wanted_as_above", steps[0].value_text, at=above)
    if because is None:
        steps.append(line(drafted, "count_here", str(mark.count)))
    name = landmark_name(drafted, mark)
    return reasoned(
        key,
        titled(drafted, piece.name, name),
        steps,
        told,
        (_makes(drafted, piece, mark), *_allowed(drafted, mark)),
    )


def _makes(drafted: Drafted, piece: PiecePlan, mark: Landmark) -> str:
    """The girth that the count gives, with its interval, and how far off the wanted one it is."""
    units, alone = drafted.units, is_alone(drafted, piece)
    low, high = (show_length(end, units) for end in mark.garment.interval())
    made = say(
        drafted, "reason_makes" if alone else "reason_makes_together", count=mark.count,
        girth=show_length(mark.garment.value, units), low=low, high=high,
    )  # fmt: skip
    off = told_because(drafted, after_count(mark.because, mark.count)).partition(", ")[2]
    told = say(drafted, "reason_makes_off", made=made, off=off) if off else f"{made}."
    return told[:1].upper() + told[1:]


def is_alone(drafted: Drafted, piece: PiecePlan) -> bool:
    """Whether a landmark's girth is that of its own stitches, and not of several flat pieces."""
    return not drafted.of_pieces or is_closed(drafted, piece.name)


def _allowed(drafted: Drafted, mark: Landmark) -> Iterator[str]:
    """The girths between which the design wants it, where it says so."""
    units = drafted.units
    low, high = (show_length(end, units) if isfinite(end) else "" for end in (mark.low, mark.high))
    if low and high:
        yield say(drafted, "reason_allowed", low=low, high=high)
    elif low or high:
        yield say(drafted, "reason_at_least" if low else "reason_at_most", limit=low or high)


def _wanted(drafted: Drafted, key: str, piece: PiecePlan, mark: Landmark) -> Reason:
    """From the body to the girth that is wanted there."""
    shown = show_length(mark.wanted, drafted.units)
    told = mark.because.steps
    last = max((n for n, s in enumerate(told) if s.what in ("wanted", "formula")), default=-1)
    steps = list(steps_of(drafted, Because(told[: last + 1])))
    if not steps or steps[-1].value_text != shown:
        steps.append(line(drafted, "wanted", shown))
    at = piece.landmarks.index(mark)
    if at and len(steps) == 1 and told and told[0].what == "wanted":
        # A straight section has no cause of its own: it keeps the girth above it.
        above = landmark_name(drafted, piece.landmarks[at - 1])
        steps = [line(drafted, "wanted_as_above", shown, at=above)]
    name = titled(drafted, piece.name, landmark_name(drafted, mark))
    return reasoned(f"{key}.wanted", say(drafted, "reason_wanted", name=name), steps)


def _girth(drafted: Drafted, key: str, piece: PiecePlan, mark: Landmark) -> Reason:
    girth = show_length(mark.garment.value, drafted.units)
    low, high = (show_length(end, drafted.units) for end in mark.garment.interval())
    name = titled(drafted, piece.name, landmark_name(drafted, mark))
    return reasoned(
        f"{key}.girth", say(drafted, "reason_girth", name=name),
        girth_steps(drafted, piece, mark), None,
        (say(drafted, "reason_interval", girth=girth, low=low, high=high),),
    )  # fmt: skip


def girth_steps(drafted: Drafted, piece: PiecePlan, mark: Landmark) -> tuple[ReasonStep, ...]:
    """From the count of a landmark to the girth there, at the gauge that it was planned with."""
    shown = show_length(mark.garment.value, drafted.units)
    counted = line(drafted, "count_here", str(mark.count))
    if not is_alone(drafted, piece):
        return counted, line(drafted, "girth_together", shown)
    widths = (section.gauge.width.value for section in piece.sections)
    width = next((w for w in widths if isclose(mark.count * w, mark.garment.value)), None)
    if width is None:
        return counted, line(drafted, "girth_makes", shown)
    span, many = (
        say(drafted, f"span_{drafted.units}"),
        show_gauge(100 / width, drafted.units, mark.count),
    )
    return counted, line(drafted, "girth_at", shown, many=many, span=span)


def _round(drafted: Drafted, key: str, piece: PiecePlan, mark: Landmark) -> Reason:
    """The round at whose end the landmark lies: where the sections down to it end."""
    name = landmark_name(drafted, mark)
    steps = [line(drafted, "landmark_depth", show_length(mark.depth, drafted.units))]
    steps += [
        line(
            drafted, "section_rounds", number(section.last_round - max(section.first_round, 1) + 1),
            name=section.name,
        )
        for section in piece.sections
        if section.last_round <= mark.rounds
    ]  # fmt: skip
    met = next((s for s in piece.sections if s.first_round <= mark.rounds < s.last_round), None)
    if met is not None:
        within = number(mark.rounds - max(met.first_round, 1) + 1)
        steps.append(line(drafted, "section_reached", within, name=met.name))
    steps.append(line(drafted, "rounds_above", str(mark.rounds)))
    return reasoned(f"{key}.round", say(drafted, "reason_round", name=name), steps)


def _depth(drafted: Drafted, key: str, _piece: PiecePlan, mark: Landmark) -> Reason:
    """From the rounds above a landmark to how far down it hangs."""
    units, growth = drafted.units, drafted.basis.growth
    worn = depth_of(drafted, mark)
    steps = [line(drafted, "rounds_above", str(mark.rounds))]
    if growth and growth.value:
        flat = show_length(worn / (1 + growth.value), units)
        percent = number(round(100 * growth.value, 1))
        steps.append(line(drafted, "lying_flat", flat))
        steps.append(line(drafted, "worn_grown", show_length(worn, units), percent=percent))
    else:
        steps.append(line(drafted, "worn", show_length(worn, units)))
    name = landmark_name(drafted, mark)
    wanted = say(drafted, "reason_landmark_depth", depth=show_length(mark.depth, units))
    return reasoned(f"{key}.depth", say(drafted, "reason_depth", name=name), steps, None, (wanted,))
