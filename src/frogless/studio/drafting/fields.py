"""The fields of the form: what a design needs measured and read, and how it is taken."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from frogless.body.estimate import estimates
from frogless.body.measurements import known_measurements
from frogless.design.document import Design, PiecesDesign, tubes
from frogless.design.pieces.panel import PanelChoice
from frogless.draft import needed
from frogless.errors import InputError, Place
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.swatch import yarn_ranges
from frogless.swatch_file import STITCH_NAMES
from frogless.units import Units

Values = Mapping[str, str]
"""What the form holds, by name of the field."""

UNITS: Mapping[str, Mapping[Units, str]] = {
    "size": {"cm": "cm", "in": "in"},
    "fine": {"cm": "mm", "in": "mm"},
    "long": {"cm": "m", "in": "yd"},
    "mass": {"cm": "g", "in": "oz"},
    "weight": {"cm": "kg", "in": "lb"},
}
"""The unit of a bare number by kind of field and the units chosen for the page."""

BARE = re.compile(r"[-−]?\s*[\d½¼¾⅛⅜⅝⅞][\d\s.,/½¼¾⅛⅜⅝⅞-]*")

WHY = {
    "high_hip_girth": "Without it the girth between waist and hip is not checked; there skirts "
    "fail first.",
    "waist_to_high_hip": "Says where the high hip lies: the two belong together.",
    "stature": "Makes a better estimate of the lengths that were not measured.",
    "shoulder_girth": "Tells whether the skirt goes on over the head.",
}
"""Measurements worth taking for any design, and why."""

ESTIMATED = "Estimated from a survey when left empty; measured is better."


@dataclass(frozen=True, slots=True)
class Field:
    """One field.

    Args:
        kind: which unit a bare number has, a key of `UNITS`; "" when it has none.
        choices: value and label of each choice; none for a field that is written in.
    """

    name: str
    label: str
    kind: str = ""
    hint: str = ""
    needed: bool = False
    choices: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Group:
    """Fields under one title; `folded` ones are opened by whoever wants them."""

    title: str
    fields: tuple[Field, ...]
    folded: bool = False


def with_unit(text: str, kind: str, units: Units) -> str:
    """What was written, with the unit of the page when it has none of its own."""
    text = text.strip()
    return f"{text} {UNITS[kind][units]}" if kind and BARE.fullmatch(text) else text


def units_of(values: Values) -> Units:
    """The units chosen for the page."""
    return "in" if values.get("units") == "in" else "cm"


def respelled(values: Values, groups: Iterable[Group], old: Units, new: Units) -> dict[str, str]:
    """The same sizes for a page of other units: nothing is converted, units are written out."""
    changed = dict(values)
    for field in (field for group in groups for field in group.fields if field.kind):
        text = with_unit(values.get(field.name, ""), field.kind, old)
        bare = text.removesuffix(UNITS[field.kind][new]).rstrip()
        changed[field.name] = bare if BARE.fullmatch(bare) else text
    return {name: text for name, text in changed.items() if text or name in values}


def body_groups(design: Design | None, values: Values) -> tuple[Group, ...]:
    """What the design needs, what is worth measuring, and all else that a body file may hold."""
    wanted = _needed(design)
    other = [k for k in known_measurements() if k not in wanted and k not in WHY]
    return (
        Group(
            "Measurements that this design needs",
            (
                Field("body-name", "Name", hint="What the pattern and the library call this body."),
                *(_measurement(key, needed=True) for key in wanted),
            ),
        ),
        Group(
            "Worth measuring",
            tuple(_measurement(key) for key in WHY if key not in wanted),
        ),
        Group(
            "Other measurements",
            (
                Field("body-age", "Age in years", hint="For a child: other limits hold."),
                *(_measurement(key) for key in other),
            ),
            folded=True,
        ),
    )  # fmt: skip


def _needed(design: Design | None) -> tuple[str, ...]:
    try:
        return (
            needed(design, lambda key: Place(key=key)) if design else ("waist_girth", "hip_girth")
        )
    except InputError:
        # A formula that cannot be read is told where the design is; the form stands all the same.
        return ("waist_girth", "hip_girth")


def _measurement(key: str, *, needed: bool = False) -> Field:
    known = known_measurements()[key]
    estimated = needed and any(one.key == key for one in estimates())
    taken = known.how_taken[:1].upper() + known.how_taken[1:] + "."
    hint = " ".join(filter(None, (taken, WHY.get(key), ESTIMATED if estimated else "")))
    kind = "weight" if known.kind == "mass" else "size"
    return Field(f"body-{key}", _words(key), kind, hint, needed=needed and not estimated)


def swatch_groups(
    design: Design | None, values: Values, dialect: Dialect = "us"
) -> tuple[Group, ...]:
    """The swatch itself, then what is read of each stitch, then the yarn."""
    groups = [Group("The swatch", _SWATCH)]
    for stitch, is_needed in swatch_stitches(design, values).items():
        name = dictionary()[stitch].terms[dialect].name
        groups += _stitch_groups(stitch, name[:1].upper() + name[1:], is_needed)
    for token, is_needed in pattern_readings(design, values).items():
        read = _reading(token, PATTERN_READING, is_needed)
        groups.append(Group(_pattern_title(token), read, folded=not is_needed))
    return (*groups, Group("Yarn", _YARN, folded=True))


def swatch_stitches(design: Design | None, values: Values) -> dict[str, bool]:
    """Stitches to be read in a swatch, with whether the design needs them; main stitch first."""
    stitches: dict[str, bool] = {}
    if design:
        made_of = (
            design.work.stitch,
            *(s.stitch for t in tubes(design) for s in t.section if s.stitch),
        )
        stitches = {key: True for key in made_of if key in STITCH_NAMES.values()}
        trims = ("single_crochet", *(("single_crochet_back_loop",) if _has_band(design) else ()))
        stitches |= {key: False for key in trims if key not in stitches}
    for key in STITCH_NAMES.values():
        if any(values.get(f"swatch-{key}-{part}") for part in READING):
            stitches.setdefault(key, False)
    return stitches or {"double_crochet": True}


def pattern_readings(design: Design | None, values: Values) -> dict[str, bool]:
    """Stitch patterns to be read in a swatch, each with its numbers, and whether the design needs it."""
    found: dict[str, bool] = {}
    for section in _sections(design):
        grades: tuple[dict[str, int], ...] = getattr(section, "grades", ()) or ({},)
        for numbers in grades if section.pattern else ():
            found[pattern_token(section.pattern, {**section.parameters, **numbers})] = True
    for name in values:
        token = name.removeprefix("swatch-").partition("-")[0]
        if is_pattern(token) and values[name]:
            found.setdefault(token, False)
    return found


def _sections(design: Design | None) -> Iterator[Any]:
    """The sections of a design that may be in a stitch pattern."""
    if design is None:
        return
    yield from (section for tube in tubes(design) for section in tube.section)
    if isinstance(design, PiecesDesign):
        for piece in design.piece:
            if isinstance(piece, PanelChoice):
                yield from piece.section


def pattern_token(pattern: str, numbers: Mapping[str, int]) -> str:
    """A pattern with its numbers as one word of a field's name: "fan_arches(half=5)"."""
    return f"{pattern}({','.join(f'{k}={n}' for k, n in sorted(numbers.items()))})"


def is_pattern(token: str) -> bool:
    """Whether a word of a field's name is a stitch pattern, and not a stitch."""
    return token.endswith(")") and "(" in token


def pattern_of(token: str) -> tuple[str, dict[str, int]]:
    """The key of a pattern and its numbers.

    Raises:
        InputError: what stands for a number is none.
    """
    key, _, inside = token.removesuffix(")").partition("(")
    numbers = (part.partition("=") for part in inside.split(",") if part)
    try:
        return key, {name: int(number) for name, _, number in numbers}
    except ValueError:
        raise InputError(f'"{token}" is no stitch pattern with its numbers') from None


def _pattern_title(token: str) -> str:
    key, _, inside = token.removesuffix(")").partition("(")
    name = patterns()[key].names["us"] if key in patterns() else key.replace("_", " ")
    told = f"{name[:1].upper()}{name[1:]}"
    return f"{told}, {inside.replace('=', ' ').replace(',', ', ')}" if inside else told


def _has_band(design: Design) -> bool:
    return any(t.waist is not None and t.waist.kind == "ribbed band" for t in tubes(design))


def _stitch_groups(stitch: str, title: str, needed: bool) -> Iterator[Group]:
    read = _reading(stitch, FIRST, needed)
    others = [part for part in READING if part not in (*FIRST, "repeats")]
    more = _reading(stitch, others)
    if needed:
        yield Group(title, read)
        yield Group(f"{title}: weighed, stretched, hung", more, folded=True)
    else:
        yield Group(f"{title}, for trims or another design", (*read, *more), folded=True)


READING = {
    "stitches": ("Stitches", "", "Counted over the width below; halves may be counted: 27 1/2."),
    "width": ("Width of these stitches", "size", "10 cm (4 in) or more."),
    "repeats": ("Repeats", "", "Of the stitch pattern, whole ones, counted over the width below."),
    "rows": ("Rows", "", "Counted over the height below."),
    "height": ("Height of these rows", "size", "10 cm (4 in) or more."),
    "mass": ("Mass", "mass", "Of just these stitches and rows; tells how much yarn you use."),
    "stretched_width": ("Stretched width", "size", "The same stitches, as wide as is comfortable."),
    "hung_width": ("Width when hung", "size", "The same stitches, after hanging for a day."),
    "hung_height": ("Height when hung", "size", "The same rows; tells how much it grows."),
    "load": ("Load when hung", "mass", "What hung on it."),
}  # fmt: skip
"""What is read of one stitch in a swatch: label, unit, how."""

PATTERN_READING = ("repeats", "width", "rows", "height")
FIRST = ("stitches", "width", "rows", "height")


def _reading(stitch: str, parts: Iterable[str], needed: bool = False) -> tuple[Field, ...]:
    return tuple(Field(f"swatch-{stitch}-{part}", *READING[part], needed=needed) for part in parts)


_SWATCH = (
    Field("swatch-name", "Name", hint="What the pattern and the library call this swatch."),
    Field("swatch-hook", "Hook", "fine", needed=True),
    Field(
        "swatch-state", "Measured", hint="A swatch that was washed tells what the garment will be.",
        choices=(("washed", "after washing and drying"), ("as worked", "as it came off the hook")),
    ),
)  # fmt: skip
_YARN = (
    Field("swatch-yarn_name", "Yarn", hint="Name on the label, or your own."),
    Field(
        "swatch-yarn_category", "Weight category",
        choices=(
            ("", "not known"),
            *((str(n), f"{n}, {yarn.name.lower()}") for n, yarn in yarn_ranges().items()),
        ),
    ),
    Field("swatch-yarn_fibre", "Fibre"),
    Field("swatch-yarn_plies", "Plies"),
    Field("swatch-yarn_ball_mass", "Mass of a ball", "mass"),
    Field("swatch-yarn_ball_length", "Length in a ball", "long"),
)  # fmt: skip


def in_words(sentence: str) -> str:
    """A sentence with the names of measurements as the form has them, not as the files do."""
    return _KEYS.sub(lambda key: key[0].replace("_", " "), sentence)


_KEYS = re.compile(rf"\b({'|'.join(known_measurements())})\b")


def _words(key: str) -> str:
    words = key.replace("_", " ")
    return words[:1].upper() + words[1:]
