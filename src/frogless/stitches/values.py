"""The values of a dictionary entry, each key with what reads it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import get_args

from frogless.errors import InputError, near_names
from frogless.stitches.model import COUNTED, SYMBOL_PARTS, Kind, Motion, Ratio, Step, Term
from frogless.stitches.places import insert_place

_STEP = re.compile(r"(?P<motion>[a-z_]+)(?: (?P<loops>[1-9]\d*))?(?: in (?P<where>[a-z_]+))?")
_PART = re.compile(r"(?P<name>[a-z_]+)(?: (?P<number>[1-9]\d*))?")


def read_values(entry: Mapping[str, object]) -> dict[str, object]:
    """The values of an entry by key.

    Raises:
        InputError: a value that is not understood, with what is accepted.
    """
    return {name: READERS[name](name, entry[name]) for name in entry if name in READERS}


def _kind(name: str, value: object) -> Kind:
    for kind in get_args(Kind):
        if value == kind:
            return kind  # type: ignore[no-any-return]
    raise InputError(f'{name} is "{value}"; accepted: {", ".join(get_args(Kind))}')


def _one_of(*accepted: str) -> Callable[[str, object], str]:
    def read(name: str, value: object) -> str:
        if value not in accepted:
            raise InputError(f'{name} is "{value}"; accepted: {", ".join(accepted)}')
        return str(value)

    return read


def _text(name: str, value: object) -> str:
    if not isinstance(value, str) or not value.strip():
        raise InputError(f"{name} is {value!r}; write text")
    return value


def _texts(name: str, value: object) -> tuple[str, ...]:
    if not isinstance(value, list):
        raise InputError(f"{name} is {value!r}; write a list of texts")
    return tuple(_text(name, one) for one in value)


def _number(name: str, value: object) -> int:
    if type(value) is not int or value < 0:
        raise InputError(f"{name} is {value!r}; write a whole number, 0 or more")
    return value


def _term(name: str, value: object) -> Term:
    if not isinstance(value, list) or len(value) < 2:
        raise InputError(f"{name} is {value}; write a name and an abbreviation")
    term, abbreviation, *others = (_text(name, each) for each in value)
    return Term(term, abbreviation, tuple(others))


def _abroad(name: str, value: object) -> Mapping[str, Term]:
    """By language; a name without an abbreviation stands for itself, as in `words`."""
    if not isinstance(value, Mapping):
        raise InputError(f"{name} is {value!r}; write a table of names by language")
    return MappingProxyType(
        {one: _term(f"{name}.{one}", [*terms, *terms][:2]) for one, terms in value.items()}
    )


def _ratio(name: str, value: object) -> Ratio:
    numbers = [n for n in value if type(n) in (int, float)] if isinstance(value, list) else []
    if len(numbers) != 3 or sorted(numbers) != value:
        raise InputError(f"{name} is {value}; write low, typical and high, smallest first")
    return Ratio(*numbers)


def _symbol(name: str, value: object) -> tuple[str, ...]:
    parts = _texts(name, value)
    for part in parts:
        found = _PART.fullmatch(part)
        if not found or found["name"] not in SYMBOL_PARTS:
            raise InputError(
                f'"{part}" is no part of a symbol; accepted: {", ".join(SYMBOL_PARTS)}'
                f"{near_names(part, SYMBOL_PARTS)}"
            )
        if bool(found["number"]) != SYMBOL_PARTS[found["name"]]:
            wanted = "a number" if SYMBOL_PARTS[found["name"]] else "no number"
            raise InputError(f'"{part}": this part of a symbol takes {wanted}')
    return parts


def _steps(name: str, value: object) -> tuple[Step, ...]:
    """A list of steps; a list within it is a number of times and the steps made so often."""
    if not isinstance(value, list):
        raise InputError(f"{name} is {value!r}; write a list of steps")
    made: list[Step] = []
    for one in value:
        if isinstance(one, list):
            made += _steps(name, one[1:]) * _times(one)
        else:
            made.append(_step(_text(name, one)))
    return tuple(made)


def _times(steps: list[object]) -> int:
    times = steps[0] if steps else None
    if type(times) is not int or times < 1:
        raise InputError(f"{steps}: a list within the steps begins with how many times")
    return times


def _step(text: str) -> Step:
    motions: tuple[Motion, ...] = get_args(Motion)
    found = _STEP.fullmatch(text)
    for motion in motions:
        if not found or found["motion"] != motion:
            continue
        if bool(found["loops"]) != (motion in COUNTED):
            wanted = "a number" if motion in COUNTED else "no number"
            raise InputError(f'"{text}": {motion} takes {wanted}')
        where = insert_place(found["where"]).key if found["where"] else ""
        return Step(motion, int(found["loops"] or 1), where)
    raise InputError(
        f'"{text}" is not a step; write a motion ({", ".join(motions)}), such as "pull_through 2"'
    )


#: What reads each key: from its name, for the refusal, and what is written.
READERS: Mapping[str, Callable[[str, object], object]] = {
    "kind": _kind,
    "us": _term,
    "uk": _term,
    "also": _texts,
    "terms_basis": _text,
    "abroad": _abroad,
    "like": _text,
    "into": _text,
    "reaches": _number,
    "stands_on": _number,
    "leaves": _number,
    "turning_chain": _number,
    "chain_counts": _one_of("yes", "no", "varies", ""),
    "begins_on": _number,
    "foundation_extra": _number,
    "height": _ratio,
    "width": _ratio,
    "height_over_width": _ratio,
    "symbol": _symbol,
    "steps": _steps,
    "yarn_basis": _one_of("measured", "derived"),
    "how": _text,
    "left_handed": _text,
    "source": _text,
    "basis": _text,
}
