"""What could be written instead: of a stated count, the count that the row makes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from frogless.proofread.findings import Finding, Report
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Numbers
from frogless.proofread.work.model import Problem, Worked

NUMBER = re.compile(r"\d{1,3}(?:,\d{3})+(?!\d)|\d+|[-–—]")


@dataclass(frozen=True, slots=True)
class Amendment:
    """Other words for a place."""

    span: Span
    words: str


def amendment(report: Report, finding: Finding) -> Amendment | None:
    """The number that belongs where a finding says another one; None where that is not certain."""
    wrong = {
        worked.size: (worked, problem.works)
        for worked, problem in _miscounted(report, finding)
        if problem.works is not None
    }
    if not wrong:
        return None
    worked = next(iter(wrong.values()))[0]
    for stated in report.told[worked.told].said.stated:
        if not stated.change and _touch(stated.span, finding.span):
            made = {size: works for size, (_, works) in wrong.items()}
            return _rewritten(report, stated.count, made)
    return None


def _miscounted(report: Report, finding: Finding) -> Iterator[tuple[Worked, Problem]]:
    names = report.script.sizes
    for worked in report.reckoning.rows:
        of_size = not finding.sizes or names[worked.size] in finding.sizes
        if not of_size or finding.number not in (None, worked.number):
            continue
        for problem in worked.problems:
            if problem.kind in ("count", "count_kind") and problem.span == finding.span:
                yield worked, problem


def _rewritten(report: Report, count: Numbers, made: dict[int, int]) -> Amendment | None:
    text = report.script.text[count.span.start : count.span.end]
    found = list(NUMBER.finditer(text))
    sizes = len(report.script.sizes)
    if len(found) != len(count.values):
        return None
    if len(found) == 1:
        if len(made) != sizes or len(set(made.values())) != 1:
            return None
        new = {0: made[0]}
    elif len(found) == sizes:
        new = made
    else:
        return None
    for place in sorted(new, reverse=True):
        at = found[place]
        text = f"{text[: at.start()]}{new[place]}{text[at.end() :]}"
    return Amendment(count.span, text)


def _touch(one: Span, other: Span) -> bool:
    return one.start < other.end and other.start < one.end
