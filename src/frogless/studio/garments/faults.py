"""What went wrong in a draft, told in a maker's words: where it is mended, and the ways out."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

from frogless.body.measurements import known_measurements
from frogless.errors import Fault, FroglessError, Impossible, ProofFailed
from frogless.studio.garments.sheet import Refusal, Told, Way

Kind = Literal["design", "body", "swatch"]
Path = tuple[str | int, ...]

FILE = re.compile(r"(design|body|swatch)(?:-(\d+))?\.toml")
STEP = re.compile(r"[^.\[\]]+")
SETS = re.compile(r'(\w+) = ("[^"]*"|[\w.]+)(?=:|$)')
QUOTE = '"'
POINTS = re.compile(r"(\d+) shaping points")


def refusal(error: FroglessError) -> Refusal:
    """Why there is no result."""
    if isinstance(error, ProofFailed):
        return Refusal("proof", tuple(Told(one, "design") for one in error.findings))
    told = tuple(map(_told, error.faults))
    if isinstance(error, Impossible):
        return Refusal("impossible", told, tuple(_ways(error, told[0].path)))
    return Refusal("input", told)


def too_much(error: FroglessError) -> Refusal:
    """The draft was ended because it took too long."""
    return Refusal("work", (Told(error.faults[0].message, "design"),))


def in_words(sentence: str) -> str:
    """A sentence with the names of measurements as people say them, not as the files do."""
    return _KEYS.sub(lambda key: key[0].replace("_", " "), sentence)


_KEYS = re.compile(rf"\b({'|'.join(known_measurements())})\b")


def path_of(key: str) -> Path:
    """The way to a key that is told as "section[2].ease"; people count from 1.

    >>> path_of("section[2].ease")
    ('section', 1, 'ease')
    """
    return tuple(int(step) - 1 if step.isdigit() else step for step in STEP.findall(key))


def _told(fault: Fault) -> Told:
    found = FILE.fullmatch(fault.place.file)
    kind: Kind = found[1] if found else "design"  # type: ignore[assignment]
    nth = int(found[2]) - 1 if found and found[2] else 0
    path = path_of(fault.place.key)
    sentence = fault.message
    if kind == "body" and path[:1] == ("measurements",) and len(path) == 2:
        sentence = f"{str(path[1]).replace('_', ' ')} {sentence}"
    elif kind == "swatch" and fault.place.key:
        sentence = f"{fault.place.key}: {sentence}"
    line = fault.place.line
    told = in_words(sentence)
    ended = told if told.endswith((".", "!", "?")) else f"{told}."
    return Told(ended, kind, line, path if kind == "design" else (), nth)


def _ways(error: Impossible, path: Path) -> Iterator[Way]:
    """The ways out; one that says what a key should be can be taken at once."""
    for way in error.ways_out:
        found = SETS.match(way)
        said = way
        if found:
            key = found[1].replace("_", " ")
            said = f"{key} {found[2].strip(QUOTE)}{way[found.end() :]}"
        yield Way(_sentence(said), tuple(_changes(way, path)))


def _changes(way: str, path: Path) -> Iterator[tuple[str, str]]:
    table = path[:-1]
    if not table:
        return
    if found := SETS.match(way):
        yield knob_name((*table, found[1])), found[2].strip(QUOTE)
    elif (found := POINTS.fullmatch(way)) and table[0] == "section":
        yield knob_name((*table, "points")), found[1]


def knob_name(path: Path) -> str:
    """What a knob is called in a form.

    >>> knob_name(("section", 1, "ease"))
    'section/1/ease'
    """
    return "/".join(str(step).replace("%", "%25").replace("/", "%2F") for step in path)


def path_named(name: str) -> Path:
    """The path of a knob by its name in a form.

    >>> path_named("section/1/ease")
    ('section', 1, 'ease')
    """
    steps = (step.replace("%2F", "/").replace("%25", "%") for step in name.split("/"))
    return tuple(int(step) if step.isdecimal() else step for step in steps if step)


def _sentence(text: str) -> str:
    told = in_words(text)
    return told[:1].upper() + told[1:] + ("" if told.endswith((".", "!", "?")) else ".")
