"""Why it sits, goes on and stays up as it does; how long it is, and how long it takes."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from frogless.body.measurements import Measurement
from frogless.fit.model import GoingOn, LandmarkFit
from frogless.plan.model import Landmark, PiecePlan
from frogless.publish.drafted import Drafted
from frogless.publish.front import depth_of, hours, openings
from frogless.publish.landmark_cells import body_cell, ease_cell
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import landmark_name, landmarks, titled
from frogless.publish.reasons_steps import line, number, steps_of
from frogless.tally.pace import FAST, SLOW
from frogless.units import show_length, show_signed


def fit_key(landmark: str) -> str:
    """The key of the ease at a landmark, by the landmark's own."""
    return landmark.replace("landmark.", "fit.", 1)


def fits(drafted: Drafted) -> Iterator[tuple[str, PiecePlan, Landmark, LandmarkFit]]:
    """Every landmark with its key, its plan and how it sits there."""
    for (key, piece, mark), fit in zip(landmarks(drafted), drafted.fit.landmarks, strict=True):
        yield key, piece, mark, fit


def fit_entries(drafted: Drafted) -> Iterator[Entry]:
    """The ease at every landmark where the body was measured; openings; what holds it up."""
    for key, piece, mark, fit in fits(drafted):
        if fit.body is not None:
            own = fit_key(key)
            yield own, partial(ease_reason, drafted, own, piece, mark, fit)
    found = dict(openings(drafted))
    for key, one in {**found, "going_on": drafted.fit.going_on}.items():
        yield key, partial(going_on_reason, drafted, key, one)
    if drafted.fit.staying_up:
        yield "staying_up", partial(_staying_up, drafted)


def ease_reason(
    drafted: Drafted, key: str, piece: PiecePlan, mark: Landmark, fit: LandmarkFit
) -> Reason:
    """The garment less the body, as both are shown."""
    units, name = drafted.units, landmark_name(drafted, mark)
    steps = (
        line(drafted, "garment", show_length(fit.garment, units)),
        line(drafted, "less_body", body_cell(drafted, fit), estimated=fit.estimated),
        line(drafted, "leaves_ease", ease_cell(drafted, fit)),
    )
    low, high = show_length(fit.low, units), show_length(fit.high, units)
    notes = [say(drafted, "reason_garment_interval", low=low, high=high)]
    if fit.wanted_ease is not None:
        wanted = show_signed(fit.wanted_ease, units)
        notes.append(say(drafted, "reason_wanted_ease", ease=wanted))
    title = titled(drafted, piece.name, say(drafted, "reason_ease", name=name))
    return reasoned(key, title, steps, None, notes)


def going_on_reason(drafted: Drafted, key: str, one: GoingOn) -> Reason:
    """The opening, stretched, against what has to pass it."""
    title = one.name or say(drafted, "reason_going_on")
    steps = (
        *_passing(drafted, one),
        line(drafted, "verdict", say(drafted, f"going_on_{one.verdict}")),
    )
    notes = (*one.reasons, *one.ways_out)
    return reasoned(key, title, steps, " ".join(one.reasons), notes)


def _passing(drafted: Drafted, one: GoingOn) -> Iterator[ReasonStep]:
    units = drafted.units
    if not one.opening:
        return
    yield line(drafted, "opening", show_length(one.opening, units))
    if one.stretch:
        percent = say(drafted, "step_of_100", value=number(round(100 * one.stretch, 1)))
        yield line(drafted, "opening_stretch", percent, estimated=False)
    yield line(drafted, "opening_reach", show_length(one.reach, units))
    if one.widest:
        name = drafted.phrases.measurement(one.widest_at)
        yield line(drafted, "has_to_pass", show_length(one.widest, units), name=name)


def _staying_up(drafted: Drafted) -> Reason:
    steps = (line(drafted, "staying_up", drafted.fit.staying_up),)
    return reasoned("staying_up", say(drafted, "reason_staying_up"), steps, drafted.fit.staying_up)


def body_entries(drafted: Drafted) -> Iterator[Entry]:
    """Every measurement of the body."""
    for one in drafted.basis.body.measurements.values():
        if one.key != "body_mass":
            yield f"body.{one.key}", partial(_body, drafted, one)


def _body(drafted: Drafted, one: Measurement) -> Reason:
    name = drafted.phrases.measurement(one.key)
    shown = show_length(one.value.value, drafted.units)
    if one.estimated:
        shown = say(drafted, "estimated_mark", value=shown)
        text = say(drafted, "step_body_estimated", name=name, source=one.source)
    else:
        key = "step_body_from" if one.source else "step_measured"
        text = say(drafted, key, name=name, source=one.source)
    used = ", ".join(_used(drafted, one.key))
    notes = (say(drafted, "reason_used", names=used),) if used else ()
    return reasoned(f"body.{one.key}", name, (ReasonStep(text, shown, one.estimated),), None, notes)


def _used(drafted: Drafted, key: str) -> Iterator[str]:
    """What rests on a measurement: landmarks and sections."""
    for piece in drafted.plan.pieces:
        for mark in piece.landmarks:
            if any(step.what == key for step in mark.because.steps):
                yield titled(drafted, piece.name, landmark_name(drafted, mark))
        for section in piece.sections:
            if any(step.what == key for step in section.because.steps):
                yield titled(drafted, piece.name, section.name)


def whole_entries(drafted: Drafted) -> Iterator[Entry]:
    """The length of a skirt of one tube, and how long anything takes."""
    if not drafted.of_pieces:
        yield "length", partial(_length, drafted)
    yield "time", partial(_time, drafted)


def _length(drafted: Drafted) -> Reason:
    """From the length that the design asks for to that of its rounds."""
    basis, hem = drafted.basis, drafted.plan.main.landmarks[-1]
    asked = basis.because_formula(basis.design.garment.length, "garment.length")
    steps = (
        *steps_of(drafted, asked),
        line(drafted, "rounds_above", str(hem.rounds)),
        line(drafted, "worn_length", show_length(depth_of(drafted, hem), drafted.units)),
    )
    return reasoned("length", say(drafted, "reason_whole_length"), steps)


def _time(drafted: Drafted) -> Reason:
    low, high = hours(drafted)
    steps = (
        line(drafted, "stitches_in_all", str(drafted.tally.stitches)),
        line(
            drafted, "pace", say(drafted, "step_pace_value", low=low, high=high),
            fast=f"{FAST:g}", slow=f"{SLOW:g}", stitch=drafted.name("single_crochet"),
        ),
    )  # fmt: skip
    return reasoned("time", say(drafted, "reason_time"), steps)
