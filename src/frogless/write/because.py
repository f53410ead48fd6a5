"""Why a number is what it is, in one sentence."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from frogless.because import Because, Step
from frogless.units import Units, show_length, show_mass
from frogless.write.formula import readable
from frogless.write.near import show_gauge, show_near, show_repeat
from frogless.write.phrases import Phrases, phrases

#: Lengths that nothing is reckoned from: they are shown as the pattern shows them, as the last step is.
ENDS = ("girth", "off", "depth", "indifference", "stray", "cut", "tails")


#: Steps whose note begins with their unit.
WITH_UNIT = ("one_stitch", "tex", "yarn_diameter")

Teller = Callable[[Step, Units, Phrases], str]

#: A step that goes on from the one before it in other words: the two steps, and its phrase.
FOLLOWS: Mapping[tuple[str, str], str] = {
    ("gauge", "exact"): "because_exact_at",
    ("row_gauge", "exact"): "because_exact_at",
    ("repeat", "exact"): "because_exact_of",
    ("lap", "cut"): "because_cut_sum",
    ("spare_ends", "cut"): "because_cut_longer",
}


def because_sentence(because: Because, units: Units, language: str = "en") -> str:
    """The chain of steps that led to a number, first cause first.

    >>> steps = (Step("hip_girth", 1120), Step("ease", 40), Step("wanted", 1160))
    >>> because_sentence(Because(steps), "cm")
    'hip 112 cm + ease 4 cm = 116 cm wanted'
    """
    said = phrases(language)
    steps = because.steps
    told = "".join(
        _tell(step, steps[n - 1] if n else None, steps[n + 1] if n + 1 < len(steps) else None,
              units, said)
        for n, step in enumerate(steps)
    )  # fmt: skip
    # Every phrase brings the sign that ties it to the one before; the first has none before it.
    return told.lstrip("; +=,:\u00d7")


def _tell(step: Step, last: Step | None, after: Step | None, units: Units, said: Phrases) -> str:
    what = last.what if last else ""
    if after and (step.what, after.what) in RECKONED:
        return _reckoned(step, after, units, said) + _estimated(step, said)
    if (what, step.what) in FOLLOWS:
        return said.say(FOLLOWS[what, step.what], value=_shown(step, units))
    if last and (what, step.what) == ("formula", "wanted") and _same(step, last, units):
        # "142 cm as asked" says already that it is wanted.
        asked = last.note and readable(last.note, units, said) == _shown(last, units)
        return "" if asked else said.say("because_wanted_formula")
    if last and (what, step.what) == ("exact", "landed") and _same(step, last, units):
        return _note(step, said)
    if last and step.what == "wanted" and _is_measured(last) and _same(step, last, units):
        return said.say("because_wanted_measured")
    if last and (what, step.what) == ("girth", "off") and _is_unseen(step, last, units):
        return said.say("because_off_unseen")
    teller = TELLERS.get(step.what, _other)
    return teller(step, units, said) + _estimated(step, said)


#: A number that the next one is reckoned with, by multiplying or dividing.
RECKONED = frozenset({("gauge", "exact"), ("row_gauge", "exact"), ("repeat", "exact")})


def _reckoned(step: Step, after: Step, units: Units, said: Phrases) -> str:
    """A gauge or a repeat with as many digits as it takes to reckon the next step again."""
    if step.what == "repeat":
        value = show_repeat(step.value, units, after.value)
        return said.say("because_repeat", value=value) + _note(step, said)
    span = said.say(f"span_{units}")
    value = show_gauge(step.value, units, after.value)
    return said.say(f"because_{step.what}", value=value, span=span) + _note(step, said)


def _same(step: Step, last: Step, units: Units) -> bool:
    """Whether two steps show the same: one number is not said twice in one breath."""
    return _shown(step, units) == _shown(last, units)


def _is_measured(step: Step) -> bool:
    """Whether it is a measurement of the body; those have no teller of their own."""
    return step.unit == "mm" and step.what not in TELLERS


def _is_unseen(off: Step, girth: Step, units: Units) -> bool:
    """Whether two girths differ as shown, and yet by nothing that would be shown."""
    wanted = show_near(girth.value - off.value, units)
    unseen = show_length(abs(off.value), units) == show_length(0, units)
    return unseen and wanted != show_near(girth.value, units)


def _estimated(step: Step, said: Phrases) -> str:
    if not step.estimated:
        return ""
    if step.what in WITH_UNIT:
        return said.say("because_estimated_plain")
    if step.note.startswith("estimated"):
        return said.say("because_note", note=step.note)
    return said.say("because_estimated" if step.note else "because_estimated_plain", note=step.note)


def _note(step: Step, said: Phrases) -> str:
    """The note in brackets, unless it is told as the source of an estimate."""
    return said.say("because_note", note=step.note) if step.note and not step.estimated else ""


def _plain(step: Step, units: Units, said: Phrases) -> str:
    """A length, a mass or a number under the phrase of its own name."""
    return said.say(f"because_{step.what}", value=_shown(step, units)) + _note(step, said)


def _counted(step: Step, units: Units, said: Phrases) -> str:
    """A number of things, with the form that its number takes."""
    return said.count(f"because_{step.what}", round(step.value)) + _note(step, said)


def _ease(step: Step, units: Units, said: Phrases) -> str:
    name = "because_ease_less" if step.value < 0 else "because_ease"
    return said.say(name, value=show_near(abs(step.value), units)) + _note(step, said)


def _formula(step: Step, units: Units, said: Phrases) -> str:
    value = _shown(step, units)
    if not step.note:
        return said.say("because_formula_bare", value=value)
    formula = readable(step.note, units, said)
    if formula == value:
        return said.say("because_formula_plain", value=value)
    return said.say("because_formula", note=formula, value=value)


def _change(step: Step, _units: Units, said: Phrases) -> str:
    name = "because_change_more" if step.value >= 0 else "because_change_less"
    return said.count(name, round(abs(step.value)))


def _margin(step: Step, _units: Units, said: Phrases) -> str:
    """What is bought over the need, in percent."""
    return said.say("because_margin", value=_number(step.value))


def _with_unit(step: Step, _units: Units, said: Phrases) -> str:
    """A number whose note begins with its unit: "mg, weighed on the swatch"."""
    unit, _, origin = step.note.partition(", ")
    value = said.say("because_unit", value=_number(step.value), unit=unit).strip()
    told = said.say("because_origin", origin=origin) if origin else ""
    return said.say(f"because_{step.what}", value=value, origin=told)


def _gauge(step: Step, units: Units, said: Phrases) -> str:
    span = said.say(f"span_{units}")
    value = show_gauge(step.value, units)
    return said.say(f"because_{step.what}", value=value, span=span) + _note(step, said)


def _stray(step: Step, units: Units, said: Phrases) -> str:
    """A stray has a sign; how far it is does not."""
    return said.say("because_stray", value=show_length(abs(step.value), units))


def _off(step: Step, units: Units, said: Phrases) -> str:
    value = show_length(abs(step.value), units)
    if value == show_length(0, units):
        return said.say("because_off_none")
    name = "because_off_more" if step.value > 0 else "because_off_less"
    return said.say(name, value=value) + _note(step, said)


def _depth(step: Step, units: Units, said: Phrases) -> str:
    """How far below the waist edge; at the edge itself it is not said."""
    return "" if _shown(step, units) == show_length(0, units) else _plain(step, units, said)


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
    """With its unit, also where that is a word."""
    if step.unit in ("mm", "g", "ratio"):
        return _shown(step, units)
    return f"{_number(step.value)} {step.unit}".strip()


def _shown(step: Step, units: Units) -> str:
    """A length or a mass in the reader's units, any other number alone."""
    if step.unit == "mm":
        return (show_length if step.what in ENDS else show_near)(step.value, units)
    return show_mass(step.value, units) if step.unit == "g" else _number(step.value)


def _number(value: float) -> str:
    """With one decimal at most, and none when it is whole."""
    return f"{round(value, 1):g}" if abs(value) < 100_000 else f"{value:.0f}"


TELLERS: Mapping[str, Teller] = {
    **dict.fromkeys(
        (
            *("wanted", "girth", "length", "above_waist", "worked", "exact", "landed"),
            *("allowance", "ring", "lap", "cut", "tie_ends", "widest", "spare_ends"),
            *("hem", "repeat", "span", "sag", "hanging_length", "tails"),
            *("indifference", "yarn_mass", "cover"),
        ),
        _plain,
    ),
    **dict.fromkeys(("shapings", "points", "repeats", "balls"), _counted),
    **dict.fromkeys(("gauge", "row_gauge"), _gauge),
    **dict.fromkeys(("growth", "stretch", "percent"), _ratio),
    **dict.fromkeys(WITH_UNIT, _with_unit),
    "depth": _depth,
    "margin": _margin,
    "stray": _stray,
    "ease": _ease,
    "formula": _formula,
    "change": _change,
    "off": _off,
}
