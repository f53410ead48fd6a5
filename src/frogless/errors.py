"""What went wrong, where, and what would be accepted.

FroglessError
 ├─ InputError    the input has to be mended (exit 2)
 ├─ Impossible    the design asks for what this body and gauge cannot give: by how much, and the ways out
 └─ ProofFailed   a count or a text of ours did not hold: nothing is published
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches


@dataclass(frozen=True, slots=True)
class Place:
    """Where a fault lies: file, line and key, as far as each is known."""

    file: str = ""
    line: int | None = None
    key: str = ""

    def __str__(self) -> str:
        where = f"{self.file}:{self.line}" if self.line and self.file else self.file
        return " ".join(part for part in (where, self.key) if part)


NOWHERE = Place()


@dataclass(frozen=True, slots=True)
class Fault:
    """One sentence about one fault, with its place."""

    message: str
    place: Place = NOWHERE

    def __str__(self) -> str:
        return f"{self.place}: {self.message}" if str(self.place) else self.message


class FroglessError(Exception):
    """Anything that the person at the keyboard can act on."""

    def __init__(self, message: str, place: Place = NOWHERE) -> None:
        self.faults: tuple[Fault, ...] = (Fault(message, place),)
        super().__init__(str(self.faults[0]))

    def __str__(self) -> str:
        return "\n".join(str(fault) for fault in self.faults)


class InputError(FroglessError):
    """The input has to be mended."""

    @classmethod
    def of(cls, faults: Sequence[Fault]) -> InputError:
        """Several faults told together."""
        error = cls(faults[0].message, faults[0].place)
        error.faults = tuple(faults)
        return error

    def at(self, place: Place) -> InputError:
        """The same faults, placed where they had no place of their own."""
        return InputError.of(
            [replace(f, place=place) if f.place == NOWHERE else f for f in self.faults]
        )


class Impossible(FroglessError):
    """A requirement that cannot be met, by how much it falls short, and what would make it possible.

    Args:
        requirement: one sentence: what was asked for and what can be had.
        short_stitches: stitches missing (0 when the shortfall is no count).
        short: the shortfall, mm.
        ways_out: changes that would make it possible, each one sentence.
        requirements: names of those that cannot hold together, of which none can be left out.
    """

    def __init__(
        self,
        requirement: str,
        place: Place = NOWHERE,
        *,
        short_stitches: int = 0,
        short: float = 0.0,
        ways_out: Sequence[str] = (),
        requirements: Sequence[str] = (),
    ) -> None:
        self.requirement = requirement
        self.short_stitches = short_stitches
        self.short = short
        self.ways_out = tuple(ways_out)
        self.requirements = tuple(requirements)
        super().__init__(requirement, place)

    def __str__(self) -> str:
        ways = "".join(f"\n  - {way}" for way in self.ways_out)
        return super().__str__() + (f"\nWhat would make it possible:{ways}" if ways else "")


class ProofFailed(FroglessError):
    """Checks that failed; `findings` holds one sentence each."""

    def __init__(self, findings: Iterable[str]) -> None:
        self.findings = tuple(findings)
        super().__init__("the pattern did not pass its own proof: " + "; ".join(self.findings))


def near_names(name: str, known: Iterable[str]) -> str:
    """`; did you mean "hip_girth"?` for at most three known names like `name`, or nothing."""
    near = get_close_matches(name, list(known), n=3, cutoff=0.6)
    return "; did you mean " + " or ".join(f'"{n}"' for n in near) + "?" if near else ""
