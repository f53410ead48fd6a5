"""Measurements as forms show them: grouped, with how each is taken and which designs need it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cache

from frogless.body.measurements import known_measurements
from frogless.studio.fields import Field
from frogless.studio.needs import measurement_name, needs

GROUPS: Mapping[str, tuple[str, ...]] = {
    "Around the body": (
        "waist_girth", "high_hip_girth", "hip_girth", "bust_girth", "shoulder_girth", "thigh_girth",
    ),
    "Down the body": (
        "waist_to_high_hip", "waist_to_hip", "waist_to_knee", "waist_to_floor",
        "back_waist_length", "stature",
    ),
    "Shoulders and arms": (
        "cross_back", "armhole_depth", "upper_arm_girth", "arm_length", "neck_to_wrist",
        "wrist_girth", "hand_girth",
    ),
    "Head and neck": ("head_girth", "neck_girth", "neck_base_girth"),
    "Weight": ("body_mass",),
}  # fmt: skip
"""What belongs together when somebody stands there with the tape."""

OTHERS = "Other"
PICTURES = "/people/measuring/"
SHORTLY_NAMED = 2
"""So many designs are named in a line; of the others there is the number."""


@cache
def grouped() -> Mapping[str, tuple[str, ...]]:
    """Every known measurement in its group, those of no group last."""
    placed = {key for keys in GROUPS.values() for key in keys}
    rest = tuple(key for key in known_measurements() if key not in placed)
    return {**GROUPS, **({OTHERS: rest} if rest else {})}


@cache
def ordered() -> tuple[str, ...]:
    """Every known measurement, group by group."""
    return tuple(key for keys in grouped().values() for key in keys)


def kind_of(key: str) -> str:
    """Which unit a bare number has: a key of `fields.UNITS`."""
    return "weight" if known_measurements()[key].kind == "mass" else "size"


def field(key: str, hint: str = "") -> Field:
    """The field of a measurement, with how it is taken, in words and as a picture."""
    taken = how_taken(key)
    told = f"{taken} {hint}" if hint else taken
    return Field(key, measurement_name(key), kind_of(key), told, picture=f"{PICTURES}{key}.svg")


@cache
def fields() -> tuple[Field, ...]:
    """A field for every known measurement."""
    return tuple(field(key) for key in ordered())


def how_taken(key: str) -> str:
    """ "Level, where the seat is fullest.": one sentence."""
    taken = known_measurements()[key].how_taken
    return f"{taken[:1].upper()}{taken[1:]}."


def needed_by(designs: Iterable[str]) -> dict[str, tuple[str, ...]]:
    """By measurement the titles of the designs that use it.

    Args:
        designs: their texts; of one that cannot be read nothing is known.
    """
    found: dict[str, list[str]] = {}
    for need in map(needs, designs):
        for key in (*need.measurements, *need.estimated):
            found.setdefault(key, []).append(need.title)
    return {key: tuple(dict.fromkeys(titles)) for key, titles in found.items()}


def never_estimated(designs: Iterable[str]) -> tuple[str, ...]:
    """What some of these designs cannot do without: it comes first wherever measurements are asked."""
    asked = {key for need in map(needs, designs) for key in need.measurements}
    return tuple(key for key in known_measurements() if key in asked)


def needed_words(titles: tuple[str, ...]) -> str:
    """ "Needed by Ring dance skirt, Whirl skirt and 8 more."; "" for none."""
    return f"Needed by {_listed(tuple(_shortly(titles)))}." if titles else ""


def _shortly(titles: tuple[str, ...]) -> Iterator[str]:
    if len(titles) <= SHORTLY_NAMED + 1:
        yield from titles
        return
    yield from titles[:SHORTLY_NAMED]
    yield f"{len(titles) - SHORTLY_NAMED} more"


def _listed(parts: tuple[str, ...]) -> str:
    return " and ".join(filter(None, (", ".join(parts[:-1]), parts[-1])))
