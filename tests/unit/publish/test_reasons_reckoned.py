"""Whoever reckons a because again from the numbers that are shown comes to what is shown."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest
from examples import TEXTS, Example, drafted

from frogless.publish.reasons import keys, reason
from frogless.publish.reasons_model import ReasonStep
from frogless.units import Units

NUMBER = r"-?\d+(?: \d+/\d+|/\d+|\.\d+)?"
VALUE = re.compile(rf"[+\u2212]?(?P<number>{NUMBER})(?: (?P<unit>cm|in))?")
GAUGE = re.compile(rf"at (?P<many>{NUMBER}) \w+ in (?P<span>\d+) (?:cm|in)(?P<makes> they make)?")
SUMS = ("wanted", "a ring of", "which leaves", "to cut")
PRODUCT = re.compile(r"in whole stitches, (\d+) × (\d+)(?: \+ (\d+))?")


def read(text: str) -> Fraction:
    """ "33 1/4" as a number."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def last_digit(text: str) -> Fraction:
    """What one more in the last place is worth: 0.1 of "151.5", 1/4 of "33 1/4", 1/2 of "33.5 cm"."""
    found = VALUE.fullmatch(text)
    assert found is not None, text
    number, unit = found["number"], found["unit"]
    if unit == "in" and "." not in number:
        return Fraction(1, 4)
    digits = len(number.partition(".")[2])
    # Where nothing is reckoned from it a length is shown to half a centimeter.
    return Fraction(1, 2) if unit == "cm" and digits < 2 else Fraction(1, 10**digits)


def reckoned(steps: tuple[ReasonStep, ...]) -> Iterator[tuple[str, Fraction, str]]:
    """Of each step that is reckoned from those before it: its words, what it comes to, what is shown."""
    total: Fraction | None = None
    repeat: Fraction | None = None
    summed = False
    for step in steps:
        added, summed = summed, False
        text = step.text.partition(" (estimated")[0]
        found = VALUE.fullmatch(step.value_text)
        value = read(found["number"]) if found else None
        gauge, product = GAUGE.fullmatch(text), PRODUCT.fullmatch(text)
        if value is None:
            total = None
        elif gauge is not None and total is not None:
            each = read(gauge["many"]) / int(gauge["span"])
            result = total / each if gauge["makes"] else total * each
            yield text, result, step.value_text
            total = value
        elif product is not None:
            many, multiple, besides = (int(n or 0) for n in product.groups())
            yield text, Fraction(many * multiple + besides), step.value_text
            total = value
        elif text == "a repeat":
            repeat = value
        elif text == "divided, in repeats" and total is not None and repeat is not None:
            yield text, total / repeat, step.value_text
            total = value
        elif text.startswith("+ ") and total is not None:
            total, summed = total + value, True
        elif text.startswith("\u2212 ") and total is not None:
            total, summed = total - value, True
        elif text in SUMS and added and total is not None:
            yield text, total, step.value_text
            total = value
        else:
            total = value


@pytest.mark.parametrize("units", ["cm", "in"])
@pytest.mark.parametrize("design", TEXTS)
def test_steps_are_reckoned_again_from_what_is_shown(design: str, units: Units) -> None:
    """Every product, quotient and sum of every because, to the last digit that is shown."""
    shown = drafted(Example(design), units)
    looked_at, wrong = 0, []
    for key in keys(shown):
        for words, result, told in reckoned(reason(shown, key).steps):
            found = VALUE.fullmatch(told)
            assert found is not None
            looked_at += 1
            if abs(abs(result) - read(found["number"])) > last_digit(told):
                wrong.append(f"{key}: {words}: {told}, and by hand {float(result):.3f}")
    assert looked_at
    assert wrong == []


def test_a_step_that_is_off_is_seen() -> None:
    """40 in at 15.7 in 4 in are 157, not 157.8."""
    steps = (ReasonStep("wanted", "40 in"), ReasonStep("at 15.7 stitches in 4 in", "157.8"))
    ((_, result, told),) = reckoned(steps)
    assert (result, told) == (157, "157.8")
    assert abs(result - read(told)) > last_digit(told)
    right = replace(steps[1], value_text="157")
    assert next(reckoned((steps[0], right)))[1] == 157
