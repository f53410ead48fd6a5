"""Chains of the row below that are named by their length: "top of ch-3", "3rd ch of the ch-4"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Again, Bare, Chain, Into, Join

#: "top of ch-3", "3rd ch of beg ch-4", "top of 2 ch", "third of the chain-5".
_NAMED = re.compile(
    r"\b(?:top|\d{1,2}(?:st|nd|rd|th)|second|third|fourth|fifth)(?: (?:ch|chain))? of (?:the )?"
    r"(?:(?:turning|beginning|beg|t|first|starting|last|skipped|prev(?:ious)?) ){0,2}"
    r"(?:(?P<after>\d{1,2})[ -](?:ch|chain)s?\b|(?:ch|chain)[ -](?P<before>\d{1,2})\b)",
    re.IGNORECASE,
)


def named_tops(reading: Reading) -> Iterator[Finding]:
    """Tops of chains of a length that neither the row below nor this one begins with."""
    before: Line | None = None
    met: set[int] = set()
    for line in lines_of(reading):
        if line.told.begins:
            before, met = None, set()
        if line.told.label is None or not line.told.said.acts:
            continue
        yield from _beyond(reading, line)
        yield from _picots(reading, line)
        if before is not None and not _unknown(line):
            # After "Rows 3-10: as row 2" any earlier row of the piece may lie below.
            again = _unknown(before)
            there, name = (met, "an earlier row") if again else (_begins(before), before.name)
            yield from _not_there(reading, line, name, there)
        met |= _begins(line)
        before = line


def _beyond(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Ch 3, 11 dc in 4th ch from hook": the chain that the row begins with has no 4th."""
    first, *rest = line.told.said.acts
    act = rest[0] if rest else None
    if not isinstance(first, Chain) or not isinstance(act, Into):
        return
    length, nth = min(first.times.values), act.target.nth
    if act.target.what == "from_hook" and nth > length:
        texts = (
            f"chain {nth} from the hook",
            f"the chain is {length} long",
            f"{line.name} is worked into chain {nth} of a chain of {length}: one of the numbers "
            "is wrong.",
        )
        yield finding("place-missing", reading, line, act.span, texts, "certain")


def _picots(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Ch 2, sl st in 3rd ch from hook": the picot has no 3rd chain."""
    acts = list(all_acts(line.told.said.acts))
    for chain, act in pairwise(acts):
        if not isinstance(chain, Chain) or not isinstance(act, Into):
            continue
        length, nth = min(chain.times.values), act.target.nth
        slip = all(isinstance(a, Bare) and a.stitch == "slip_stitch" for a in act.body)
        if slip and act.target.what == "from_hook" and nth > length and chain is not acts[0]:
            texts = (
                f"chain {nth} from the hook",
                f"{length} chains are made",
                f"{line.name} closes a loop of {length} chains into chain {nth} from the hook: one "
                "of the numbers is wrong.",
            )
            yield finding("place-missing", reading, line, act.span, texts, "likely")


def _not_there(reading: Reading, line: Line, before: str, begins: set[int]) -> Iterator[Finding]:
    acts = line.told.said.acts
    span, known = line.told.span, begins | _begins(line) | _within(line)
    defined = {
        length
        for own in reading.lexicon.own.values()
        for each in all_acts(own.body)
        if isinstance(each, Chain)
        for length in each.times.values
    }
    for found in _NAMED.finditer(reading.script.plain, span.start, span.end):
        length = int(found["after"] or found["before"])
        if length in known or length in defined or not begins:
            continue
        if any(isinstance(a, Join) and a.span.start <= found.start() < a.span.end for a in acts):
            continue  # a round is joined to its own beginning
        there = " or ".join(map(str, sorted(begins)))
        texts = (
            reading.script.words(Span(*found.span())),
            f"{before} begins with a chain of {there}",
            f"{line.name} is worked into a chain of {length}, and {before} begins with one "
            f"of {there}: one of the numbers is wrong.",
        )
        yield finding("turning-chain", reading, line, Span(*found.span()), texts, "likely")


def _unknown(line: Line) -> bool:
    return any(isinstance(act, Again) for act in line.told.said.acts)


def _begins(line: Line) -> set[int]:
    """The lengths of the chains that a row begins with, or skips at the foundation."""
    found: set[int] = set()
    for act in line.told.said.acts[:4]:
        if isinstance(act, Chain):
            found |= set(act.times.values)
        elif isinstance(act, Into) and act.target.what == "from_hook":
            found.add(act.target.nth - 1)
    # A chain at the end of a row lifts the work to the next one.
    found |= {n for a in line.told.said.acts[-3:] if isinstance(a, Chain) for n in a.times.values}
    return found


def _within(line: Line) -> set[int]:
    """Chains of the row itself: a round is joined to its own."""
    joined = any(isinstance(a, Join) for a in line.told.said.acts)
    if not joined:
        return set()
    return {
        n for a in all_acts(line.told.said.acts) if isinstance(a, Chain) for n in a.times.values
    }
