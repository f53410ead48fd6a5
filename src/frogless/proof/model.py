"""What is proven, and what a check says about it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from frogless.fabric.model import Fabric
from frogless.fit.model import Fit
from frogless.plan.model import Plan
from frogless.rows.nodes import Program
from frogless.stitches.model import Dialect, Stitch

Verdict = Literal["pass", "warn", "fail"]


@dataclass(frozen=True, slots=True)
class Subject:
    """A drafted pattern: plan, program, fabric, how it fits, and its text in each dialect.

    Args:
        bought: letters of the colours that the materials tell yarn for; "" in one colour.
    """

    plan: Plan
    program: Program
    fabric: Fabric
    fit: Fit
    stitches: Mapping[str, Stitch]
    texts: Mapping[Dialect, str]
    bought: tuple[str, ...] = ("",)


@dataclass(frozen=True, slots=True)
class Finding:
    """What one check found.

    Args:
        name: stable, for people and programs.
        looked_at: how many things were examined; shows that the check ran at all.
        faults: one sentence each.
    """

    name: str
    verdict: Verdict
    looked_at: int
    things: str
    faults: tuple[str, ...] = ()

    @property
    def detail(self) -> str:
        """One sentence: the faults, or what was looked at."""
        seen = f"{self.looked_at} {self.things} looked at"
        return f"{'; '.join(self.faults)} ({seen})" if self.faults else seen


def finding(
    name: str, faults: list[str], looked_at: int, things: str, worst: Verdict = "fail"
) -> Finding:
    """A finding that fails (or only warns) when there are faults."""
    return Finding(name, worst if faults else "pass", looked_at, things, tuple(faults))


def telling(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Those that had something to look at: what is listed, and what is counted."""
    return tuple(f for f in findings if f.looked_at or f.faults)


def passing(findings: tuple[Finding, ...]) -> str:
    """How many of the checks that are listed pass: "17 of 18 checks pass, 1 warns"."""
    told = telling(findings)
    warned = sum(f.verdict != "pass" for f in told)
    some = f", {warned} warn{'s' * (warned == 1)}" if warned else ""
    return f"{len(told) - warned} of {len(told)} checks pass{some}"
