"""Trying designs out on many bodies: for how many each comes out, and why not for the others."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from frogless.body.measurements import Body
from frogless.body.size_tables import sizes
from frogless.body.survey import women
from frogless.draft import develop_for, read
from frogless.errors import FroglessError, Impossible, InputError, ProofFailed

TABLES: Mapping[str, str] = {"women": "women", "child": "children"}
"""The size tables by what they are asked for."""

FAULT = "a fault of ours"
"""What a reason begins with that is neither the body's nor the design's."""

NUMBERS = re.compile(r"[-+−]?\d[\d.,/ ]*(?:\s?(?:cm|mm|in|%))?(?!\w)")
LONGEST = 100

Progress = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why a design did not come out: in a phrase without numbers, for how many, and one of them."""

    reason: str
    bodies: int
    example: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Tried:
    """A design on the bodies of one group."""

    design: str
    title: str
    group: str
    bodies: int
    refusals: tuple[Refusal, ...]

    @property
    def drafted(self) -> int:
        """Bodies that it came out for."""
        return self.bodies - sum(one.bodies for one in self.refusals)


def groups(tables: Sequence[str], survey: int) -> tuple[tuple[str, tuple[Body, ...]], ...]:
    """The bodies by group: those of each size table, then so many surveyed women.

    Raises:
        InputError: a size table is not known, or the sample is too small.
    """
    if unknown := [name for name in tables if name not in TABLES]:
        raise InputError(f'no size table "{unknown[0]}"; known are {", ".join(TABLES)}')
    found = [(f"sizes {name}", sizes(TABLES[name])) for name in tables]
    if survey:
        found.append(("surveyed women", women(survey)))
    return tuple(found)


def tryout(
    designs: Sequence[Path],
    swatches: Sequence[Path],
    bodies: Sequence[tuple[str, tuple[Body, ...]]],
    progress: Progress = lambda told: None,
) -> tuple[Tried, ...]:
    """Every design drafted and proven for every body.

    Raises:
        InputError: a file has to be mended.
    """
    return tuple(one for design in designs for one in _try(design, swatches, bodies, progress))


def _try(
    design: Path,
    swatches: Sequence[Path],
    bodies: Sequence[tuple[str, tuple[Body, ...]]],
    progress: Progress,
) -> Iterator[Tried]:
    ready = read(design, tuple(swatches))
    for group, members in bodies:
        refused: list[tuple[str, str, str]] = []
        for number, body in enumerate(members, 1):
            progress(f"{ready.design.title}, {group}: {number} of {len(members)}")
            try:
                develop_for(ready, body)
            except Exception as error:  # A fault of ours is a result here too.
                refused.append((reason(error), body.name, _sentence(error)))
        # A design is known by its folder, as all of them are called design.toml.
        name = design.parent.name if design.stem == "design" else design.stem
        yield Tried(name, ready.design.title, group, len(members), tuple(_gathered(refused)))


def _gathered(refused: Sequence[tuple[str, str, str]]) -> Iterator[Refusal]:
    """One entry for each reason, the commonest first."""
    found: dict[str, list[tuple[str, str]]] = {}
    for why, body, sentence in refused:
        found.setdefault(why, []).append((body, sentence))
    for why, cases in sorted(found.items(), key=lambda item: -len(item[1])):
        yield Refusal(why, len(cases), *cases[0])


def reason(error: Exception) -> str:
    """The shortest honest phrase for a refusal: what is missing or cannot be, without its numbers."""
    if isinstance(error, ProofFailed):
        names = dict.fromkeys(one.partition(":")[0] for one in error.findings)
        return f"{FAULT}: not proven ({', '.join(names)})"
    if isinstance(error, Impossible):
        return _short(error.requirement)
    if isinstance(error, InputError):
        told = "; ".join(dict.fromkeys(_fault(one.place.key, one.message) for one in error.faults))
        return _short(told)
    return f"{FAULT}: {type(error).__name__}"


def _fault(key: str, message: str) -> str:
    """ "armhole_depth is needed and cannot be estimated"."""
    name = key.removeprefix("measurements.")
    return f"{name} {message}" if key.startswith("measurements.") else message


def _short(text: str) -> str:
    """The first clauses, numbers left out, as far as they stay readable."""
    plain = " ".join(NUMBERS.sub("… ", text.partition(";")[0]).split())
    return plain if len(plain) <= LONGEST else plain[:LONGEST].rsplit(" ", 1)[0] + " …"


def _sentence(error: Exception) -> str:
    if isinstance(error, Impossible):
        return error.requirement
    told = str(error) if isinstance(error, FroglessError) else f"{type(error).__name__}: {error}"
    return " ".join(told.split())


def table(tried: Sequence[Tried]) -> str:
    """What came out of it, as text: a line for each design and group, and its refusals below."""
    header = ("design", "bodies", "tried", "drafted", "refused")
    rows = [
        (one.design, one.group, str(one.bodies), str(one.drafted), str(one.bodies - one.drafted))
        for one in tried
    ]
    widths = [max(map(len, column)) for column in zip(header, *rows, strict=True)]
    lines = [_line(header, widths)]
    for one, row in zip(tried, rows, strict=True):
        lines.append(_line(row, widths))
        lines += [f"  {each.bodies} × {each.reason}" for each in one.refusals]
    return "\n".join(lines) + "\n"


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    names = [cell.ljust(width) for cell, width in zip(cells[:2], widths[:2], strict=True)]
    counts = [cell.rjust(width) for cell, width in zip(cells[2:], widths[2:], strict=True)]
    return "  ".join([*names, *counts]).rstrip()


def data(tried: Sequence[Tried]) -> list[dict[str, object]]:
    """The same as plain data."""
    return [
        {
            "design": one.design,
            "title": one.title,
            "bodies": one.group,
            "tried": one.bodies,
            "drafted": one.drafted,
            "refused": [
                {
                    "reason": each.reason,
                    "bodies": each.bodies,
                    "example": each.example,
                    "sentence": each.sentence,
                }
                for each in one.refusals
            ],
        }
        for one in tried
    ]
