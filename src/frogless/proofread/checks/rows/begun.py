"""Rows that begin without a chain, where all others have one."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Into,
    Join,
    Ring,
    Skip,
    Turn,
    Unclear,
)

#: So many others that have one make a rule.
RULE = 3


def no_chain(reading: Reading) -> Iterator[Finding]:
    """The only row of a piece that does not begin with a chain."""
    by_piece: dict[tuple[int, str], list[Line]] = {}
    for line in lines_of(reading):
        label = line.told.label
        if label is None or not line.told.said.acts:
            continue
        if any(isinstance(a, Again | Unclear) for a in all_acts(line.told.said.acts)):
            continue
        by_piece.setdefault((line.told.piece, label.kind), []).append(line)
    for lines in by_piece.values():
        without = [line for line in lines if not _has_chain(line)]
        if len(without) != 1 or len(lines) <= RULE or any(_lifts(line) for line in lines):
            continue
        line = without[0]
        if _needs_none(line, lines):
            continue
        texts = (
            "no chain",
            f"the other {len(lines) - 1} begin with one",
            f"{line.name} begins without a chain, and all others of the piece begin with one: "
            "it may have been forgotten.",
        )
        yield finding("turning-chain", reading, line, line.told.span, texts, "possible")


def _first(line: Line) -> list[Act]:
    skipped = Turn | Aside | Skip | Join | Ring
    return [a for a in line.told.said.acts if not isinstance(a, skipped)]


def _has_chain(line: Line) -> bool:
    acts = _first(line)
    while acts and _slips(acts[0]):
        acts = acts[1:]
    return bool(acts) and isinstance(acts[0], Chain)


def _slips(act: Act) -> bool:
    if isinstance(act, Bare):
        return act.stitch == "slip_stitch"
    return isinstance(act, Into) and bool(act.body) and all(_slips(each) for each in act.body)


def _lifts(line: Line) -> bool:
    """Whether a row ends with the chain of the next one."""
    return any(isinstance(a, Chain) for a in line.told.said.acts[-3:]) and len(_first(line)) > 2


def _needs_none(line: Line, lines: list[Line]) -> bool:
    """The first row of a piece, one of slip stitches, one that is begun with new yarn."""
    acts = line.told.said.acts
    if any(isinstance(a, Aside) and a.kind in ("join_yarn", "colour") for a in acts):
        return True
    if line is lines[0]:
        return True
    first = next(iter(_first(line)), None)
    if isinstance(first, Into) and first.target.what in ("from_hook", "ring"):
        return True
    return first is None or _slips(first)
