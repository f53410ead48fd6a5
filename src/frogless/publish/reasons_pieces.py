"""Why the pieces of a garment measure what they do, and why their edges meet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from frogless.because import Because, Step
from frogless.plan.model import JoinPlan, Measure, PiecePlan
from frogless.publish.drafted import Drafted
from frogless.publish.garment import counted, joined
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned, slugs
from frogless.publish.reasons_names import piece_keys, titled
from frogless.publish.reasons_steps import line, steps_of, until_count
from frogless.publish.reasons_told import told_because
from frogless.units import as_shown, show_length


def measures(drafted: Drafted) -> Iterator[tuple[str, PiecePlan, Measure]]:
    """Every finished measurement with its key: `piece.back.armhole-depth`."""
    pieces = piece_keys(drafted)
    for piece in drafted.plan.pieces:
        names = slugs((measure.name for measure in piece.measures), "measure")
        for measure, name in zip(piece.measures, names, strict=True):
            yield f"piece.{pieces[piece.name]}.{name}", piece, measure


def piece_entries(drafted: Drafted) -> Iterator[Entry]:
    """Of each measurement what it is, what was wanted, and the stitches or rows that give it."""
    for key, piece, measure in measures(drafted):
        yield key, partial(measure_reason, drafted, key, piece, measure)
        if has_origin(measure) and measure.wanted is not None:
            yield f"{key}.wanted", partial(_wanted, drafted, key, piece, measure, measure.wanted)
        if counted(drafted, measure):
            yield f"{key}.worked", partial(_worked, drafted, key, piece, measure)


def has_origin(measure: Measure) -> bool:
    """Whether its because tells more of what was wanted than that it was."""
    asked = [n for n, s in enumerate(measure.because.steps) if s.what in ("wanted", "formula")]
    return bool(asked) and (asked[-1] > 0 or measure.because.steps[0].what == "formula")


def join_entries(drafted: Drafted) -> Iterator[Entry]:
    """Every join: how far its edges differ."""
    for n, join in enumerate(drafted.plan.joins, start=1):
        yield f"join.{n}", partial(join_reason, drafted, f"join.{n}", join)


def measure_reason(drafted: Drafted, key: str, piece: PiecePlan, measure: Measure) -> Reason:
    """Why a piece measures what it does there."""
    because = with_wanted(measure)
    got = show_length(measure.got.value, drafted.units)
    steps = list(_until(steps_of(drafted, because), got))
    if steps[-1:] == [] or steps[-1].value_text != got:
        if many := counted(drafted, measure):
            steps = [*_until_count(drafted, because, measure), line(drafted, "worked_in", many)]
        steps.append(line(drafted, "finished", got))
    low, high = (show_length(end, drafted.units) for end in measure.got.interval())
    note = say(drafted, "reason_interval", girth=got, low=low, high=high)
    return reasoned(
        key, titled(drafted, piece.name, measure.name), steps, told_because(drafted, because),
        (note,) if low != high else (),
    )  # fmt: skip


def _until(steps: Sequence[ReasonStep], value: str) -> Sequence[ReasonStep]:
    """The steps up to the last one that comes to a value; all of them when none does."""
    last = max((n for n, step in enumerate(steps) if step.value_text == value), default=None)
    # What was wanted is often the same length, and is not what the stitches came to.
    counted_before = last is not None and last >= len(steps) - 2
    return steps[: last + 1] if last is not None and counted_before else steps


def _until_count(drafted: Drafted, because: Because, measure: Measure) -> tuple[ReasonStep, ...]:
    """The steps that lead to its stitches or rows, without the count itself."""
    unit = "rows" if measure.kind == "length" else "stitches"
    landed = until_count(because, measure.count, unit)
    return steps_of(drafted, landed)[:-1] if landed else steps_of(drafted, because)


def _wanted(
    drafted: Drafted, key: str, piece: PiecePlan, measure: Measure, wanted: float
) -> Reason:
    because = with_wanted(measure)
    last = max(
        (n for n, s in enumerate(because.steps) if s.what in ("wanted", "formula")), default=-1
    )
    steps = list(steps_of(drafted, Because(because.steps[: last + 1])))
    shown = show_length(wanted, drafted.units)
    if not steps or steps[-1].value_text != shown:
        steps.append(line(drafted, "wanted", shown))
    title = say(drafted, "reason_wanted", name=measure.name)
    return reasoned(f"{key}.wanted", titled(drafted, piece.name, title), steps)


def _worked(drafted: Drafted, key: str, piece: PiecePlan, measure: Measure) -> Reason:
    steps = (
        *_until_count(drafted, with_wanted(measure), measure),
        line(drafted, "worked_in", counted(drafted, measure)),
    )
    title = say(drafted, "reason_worked", name=measure.name)
    return reasoned(f"{key}.worked", titled(drafted, piece.name, title), steps)


def with_wanted(measure: Measure) -> Because:
    """Its because, begun with what was wanted where it does not say."""
    steps = measure.because.steps
    if measure.wanted is None or any(step.what in ("wanted", "formula") for step in steps):
        return measure.because
    return Because((Step("wanted", measure.wanted), *steps))


def join_reason(drafted: Drafted, key: str, join: JoinPlan) -> Reason:
    """How long both edges of a join are, and by how much one is eased in."""
    units, lengths = drafted.units, (join.first_length.value, join.second_length.value)
    first, second = (show_length(length, units) for length in lengths)
    # The difference is that of the lengths as they are shown.
    off = show_length(abs(as_shown(lengths[0], units) - as_shown(lengths[1], units)), units)
    steps = (
        line(drafted, "edge", first, name=join.first),
        line(drafted, "edge", second, name=join.second),
        line(drafted, "differ", off),
    )
    limit = say(drafted, "reason_limit", limit=show_length(join.limit, units))
    return reasoned(key, join.name, steps, joined(drafted, join), (limit,))
