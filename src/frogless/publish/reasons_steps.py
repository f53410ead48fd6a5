"""A because as lines: each step in plain words, with what it comes to in the reader's units."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from frogless.because import Because, Step
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.reasons_model import ReasonStep
from frogless.units import as_shown, show_length, show_mass
from frogless.write.because import ENDS, WITH_UNIT
from frogless.write.formula import readable
from frogless.write.near import FOUR_INCHES, show_gauge, show_near, show_repeat

NUMBERS = ("shapings", "points")
"""Steps that are no lengths, whatever unit they carry."""

GAUGES = ("gauge", "row_gauge")
"""Steps that say at how many stitches or rows the next one is counted."""

Teller = Callable[[Drafted, Step, Step | None], ReasonStep]


def steps_of(drafted: Drafted, because: Because) -> tuple[ReasonStep, ...]:
    """The steps, first cause first; a gauge is told with what is counted at it."""
    return tuple(_steps(drafted, because.steps))


def until_count(because: Because, count: int, unit: str = "stitches") -> Because | None:
    """The because up to where it lands on a count; None when it does not."""
    for n in range(len(because.steps), 0, -1):
        step = because.steps[n - 1]
        if step.what == "landed" and step.unit == unit and round(step.value) == count:
            return Because(because.steps[:n])
    return None


def after_count(because: Because, count: int, unit: str = "stitches") -> Because:
    """What the because tells after that: the girth that it makes, and how far off it is."""
    told = until_count(because, count, unit)
    return Because(because.steps[len(told.steps) :]) if told else Because()


def line(
    drafted: Drafted, name: str, value: str, /, *, estimated: bool = False, **blanks: object
) -> ReasonStep:
    """A step of our own: the message `step_name`, and a value that is shown already."""
    return ReasonStep(say(drafted, f"step_{name}", **blanks), value, estimated)


def _steps(drafted: Drafted, steps: Sequence[Step]) -> Iterator[ReasonStep]:
    before: Step | None = None
    for n, step in enumerate(steps):
        after = steps[n + 1].what if n + 1 < len(steps) else ""
        # A gauge is told with what is counted at it, and what a formula gives is what is wanted.
        told_with_next = step.what in GAUGES and after == "exact"
        if not told_with_next and not _says_again(drafted, step, before):
            told = _told(drafted, step, before)
            if step.what == "repeat" and after == "exact":
                told = replace(
                    told, value_text=show_repeat(step.value, drafted.units, steps[n + 1].value)
                )
            last = n + 1 == len(steps) and step.unit == "mm" and step.what not in NUMBERS
            # The last number is told as the pattern shows it.
            yield (
                replace(told, value_text=show_length(abs(step.value), drafted.units))
                if last
                else told
            )
        before = step


def _says_again(drafted: Drafted, step: Step, before: Step | None) -> bool:
    """Whether it only says that what a formula gave is wanted."""
    if before is None or (before.what, step.what) != ("formula", "wanted"):
        return False
    return shown(drafted, before) == shown(drafted, step)


def _told(drafted: Drafted, step: Step, before: Step | None) -> ReasonStep:
    teller = TELLERS.get(step.what)
    if teller is not None:
        told = teller(drafted, step, before)
    elif f"step_{step.what}" in PLAIN:
        told = line(drafted, step.what, shown(drafted, step))
    else:
        told = _measured(drafted, step, before)
    return ReasonStep(told.text + _note(drafted, step), told.value_text, step.estimated)


PLAIN = frozenset(
    f"step_{what}"
    for what in (
        *("wanted", "girth", "length", "depth", "worked", "above_waist", "allowance", "lap"),
        *("ring", "tie_ends", "widest", "spare_ends", "hem", "repeat", "sag", "span"),
        *("hanging_length", "indifference", "stray", "yarn_mass", "cover", "tails", "shapings"),
        *("points", "repeats", "balls"),
    )
)
"""Steps told by the message of their name."""

#: Steps whose words take their note in, or whose note is their unit.
NOTED = frozenset({"formula", "landed", "margin", *WITH_UNIT})


def _note(drafted: Drafted, step: Step) -> str:
    """The note in brackets, where the words do not have it; an estimate always says that it is one."""
    if step.estimated and (not step.note or step.what in NOTED):
        return say(drafted, "step_estimated")
    if not step.note or step.what in NOTED:
        return ""
    if step.estimated and not step.note.startswith("estimated"):
        return say(drafted, "step_estimated_note", note=step.note)
    return say(drafted, "step_note", note=step.note)


def shown(drafted: Drafted, step: Step) -> str:
    """A step's value with its unit; what is counted without."""
    units, size = drafted.units, abs(step.value)
    if step.unit == "mm" and step.what not in NUMBERS:
        return (show_length if step.what in ENDS else show_near)(size, units)
    if step.unit == "g":
        return show_mass(size, units)
    return number(size)


def number(value: float) -> str:
    """With one decimal at most, and none when it is whole."""
    return f"{round(value, 1):g}" if abs(value) < 100_000 else f"{value:.0f}"


def per_span(drafted: Drafted, per_10_cm: float) -> str:
    """How many there are over 10 cm or 4 in."""
    return number(per_10_cm * (FOUR_INCHES / 10 if drafted.units == "in" else 1))


def _measured(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    """A measurement of the body by its name; anything else by its key and unit."""
    name = drafted.phrases.measurement(step.what)
    if step.unit == "mm" and drafted.basis.body.get(step.what) is not None:
        text = name if step.estimated else say(drafted, "step_measured", name=name)
        return ReasonStep(text, shown(drafted, step))
    unit = "" if step.unit in ("mm", "g", "ratio") else step.unit
    return ReasonStep(name, f"{shown(drafted, step)} {unit}".strip())


def _ease(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    return line(drafted, "ease_less" if step.value < 0 else "ease", shown(drafted, step))


def _formula(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    value = shown(drafted, step)
    if not step.note:
        return line(drafted, "formula_bare", value)
    told = readable(step.note, drafted.units, drafted.phrases)
    if told == value:
        return line(drafted, "formula_plain", value)
    return ReasonStep(told, value)


def _gauge(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    span = say(drafted, f"span_{drafted.units}")
    told = show_gauge(step.value, drafted.units)
    return line(
        drafted, step.what, say(drafted, f"step_{step.what}_value", value=told, span=span)
    )  # fmt: skip


def _exact(drafted: Drafted, step: Step, before: Step | None) -> ReasonStep:
    value = shown(drafted, step)
    if before is not None and before.what in GAUGES:
        span = say(drafted, f"span_{drafted.units}")
        gauge = show_gauge(before.value, drafted.units, step.value)
        return line(drafted, f"exact_{before.what}", value, many=gauge, span=span)
    return line(drafted, "exact_repeats" if step.unit == "ratio" else "exact", value)


def _landed(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    value = shown(drafted, step)
    if step.unit == "ratio":
        return line(drafted, "landed_repeats", value)
    name = "landed_rows" if step.unit == "rows" else "landed"
    return line(drafted, f"{name}_on" if step.note else name, value, note=step.note)


def _off(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    if as_shown(step.value, drafted.units) == 0:
        return line(drafted, "off_none", shown(drafted, step))
    return line(drafted, "off_more" if step.value > 0 else "off_less", shown(drafted, step))


def _change(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    return line(drafted, "change_more" if step.value >= 0 else "change_less", shown(drafted, step))


def _ratio(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    share = step.value if step.what == "percent" else step.value * 100
    return line(drafted, step.what, say(drafted, "step_of_100", value=number(round(share, 1))))


def _cut(drafted: Drafted, step: Step, before: Step | None) -> ReasonStep:
    """A cord is as long as either of two ways to reckon it asks for."""
    longer = before is not None and before.what == "spare_ends"
    return line(drafted, "cut_longer" if longer else "cut", shown(drafted, step))


def _margin(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    return line(drafted, "margin", say(drafted, "step_of_100", value=number(step.value)))


def _with_unit(drafted: Drafted, step: Step, _before: Step | None) -> ReasonStep:
    """A number whose note begins with its unit: "mg, weighed on the swatch"."""
    unit, _, origin = step.note.partition(", ")
    text = say(drafted, f"step_{step.what}")
    told = say(drafted, "step_origin", text=text, origin=origin) if origin else text
    return ReasonStep(told, f"{number(step.value)} {unit}".strip())


TELLERS: Mapping[str, Teller] = {
    "ease": _ease,
    "formula": _formula,
    "gauge": _gauge,
    "row_gauge": _gauge,
    "exact": _exact,
    "landed": _landed,
    "off": _off,
    "change": _change,
    "cut": _cut,
    "growth": _ratio,
    "stretch": _ratio,
    "percent": _ratio,
    "margin": _margin,
    **dict.fromkeys(WITH_UNIT, _with_unit),
}
