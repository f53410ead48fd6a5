"""Why a number is what it is, in one sentence."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from frogless.because import Because, Step
from frogless.units import Units, show_length
from frogless.write.phrases import Phrases, phrases

#: Four inches are what a gauge is counted over where inches are in use; in cm.
FOUR_INCHES = 10.16

Teller = Callable[[Step, Units, Phrases], str]

#: A step that goes on from the one before it in other words: the two steps, and its phrase.
FOLLOWS: Mapping[tuple[str, str], str] = {
    ("gauge", "exact"): "because_exact_at",
    ("row_gauge", "exact"): "because_exact_at",
}


def because_sentence(because: Because, units: Units, language: str = "en") -> str:
    """The chain of steps that led to a number, first cause first.

    >>> steps = (Step("hip_girth", 1120), Step("ease", 40), Step("wanted", 1160))
    >>> because_sentence(Because(steps), "cm")
    'hip 112 cm + ease 4 cm = 116 cm wanted'
    """
    said = phrases(language)
    before = (None, *because.steps)
    told = "".join(
        _tell(step, last, units, said) for last, step in zip(before, because.steps, strict=False)
    )
    # Every phrase brings the sign that ties it to the one before; the first has none before it.
    return told.lstrip("; +=,")


def _tell(step: Step, last: Step | None, units: Units, said: Phrases) -> str:
    what = last.what if last else ""
    if (what, step.what) in FOLLOWS:
        return said.say(FOLLOWS[what, step.what], value=_number(step.value))
    if last and (what, step.what, step.value) == ("formula", "wanted", last.value):
        return said.say("because_wanted_formula")
    teller = TELLERS.get(step.what, _other)
    return teller(step, units, said) + _estimated(step, said)


def _estimated(step: Step, said: Phrases) -> str:
    if not step.estimated:
        return ""
    return said.say("because_estimated" if step.note else "because_estimated_plain", note=step.note)


def _note(step: Step, said: Phrases) -> str:
    """The note in brackets, unless it is told as the source of an estimate."""
    return said.say("because_note", note=step.note) if step.note and not step.estimated else ""


def _plain(step: Step, units: Units, said: Phrases) -> str:
    """A length, a mass or a number under the phrase of its own name."""
    value = _value(step, units)
    return said.say(f"because_{step.what}", value=value) + _note(step, said)


def _counted(step: Step, units: Units, said: Phrases) -> str:
    """A number of things, with the form that its number takes."""
    return said.count(f"because_{step.what}", round(step.value)) + _note(step, said)


def _ease(step: Step, units: Units, said: Phrases) -> str:
    name = "because_ease_less" if step.value < 0 else "because_ease"
    return said.say(name, value=show_length(abs(step.value), units)) + _note(step, said)


def _formula(step: Step, units: Units, said: Phrases) -> str:
    value = _value(step, units)
    if step.note == value:
        return said.say("because_formula_plain", value=value)
    name = "because_formula" if step.note else "because_formula_bare"
    return said.say(name, note=step.note, value=value)


def _gauge(step: Step, units: Units, said: Phrases) -> str:
    value = step.value * (FOUR_INCHES / 10 if units == "in" else 1)
    span = said.say(f"span_{units}")
    return said.say(f"because_{step.what}", value=_number(value), span=span) + _note(step, said)


def _exact(step: Step, units: Units, said: Phrases) -> str:
    return said.say("because_exact", value=_number(step.value)) + _note(step, said)


def _landed(step: Step, units: Units, said: Phrases) -> str:
    value = _number(step.value)
    if not step.note:
        return said.say("because_landed", value=value)
    name = "because_landed_on" if step.note.startswith("multiple") else "because_landed_as"
    return said.say(name, value=value, note=step.note)


def _off(step: Step, units: Units, said: Phrases) -> str:
    value = show_length(abs(step.value), units)
    if value == show_length(0, units):
        return said.say("because_off_none")
    name = "because_off_more" if step.value > 0 else "because_off_less"
    return said.say(name, value=value) + _note(step, said)


def _ratio(step: Step, units: Units, said: Phrases) -> str:
    """A ratio or a percentage, as a percentage; a growth is what is over the whole."""
    share = step.value if step.what == "percent" else step.value * 100
    value = f"{_number(round(share, 1))} %"
    return said.say(f"because_{step.what}", value=value) + _note(step, said)


def _other(step: Step, units: Units, said: Phrases) -> str:
    """A measurement by its name; anything else by its key, its value and its unit."""
    name = said.measurement(step.what)
    return said.say("because_other", name=name, value=_value(step, units)) + _note(step, said)


def _value(step: Step, units: Units) -> str:
    if step.unit == "mm":
        return show_length(step.value, units)
    return (
        f"{_number(step.value)} {step.unit}".strip()
        if step.unit != "ratio"
        else _number(step.value)
    )


def _number(value: float) -> str:
    """With one decimal at most, and none when it is whole."""
    return f"{round(value, 1):g}" if abs(value) < 100_000 else f"{value:.0f}"


TELLERS: Mapping[str, Teller] = {
    **dict.fromkeys(
        ("wanted", "girth", "length", "depth", "allowance", "lap", "cut", "sag", "span", "tails"),
        _plain,
    ),
    **dict.fromkeys(("shapings", "points", "repeats"), _counted),
    **dict.fromkeys(("gauge", "row_gauge"), _gauge),
    **dict.fromkeys(("growth", "stretch", "percent"), _ratio),
    "ease": _ease,
    "formula": _formula,
    "exact": _exact,
    "landed": _landed,
    "off": _off,
}
