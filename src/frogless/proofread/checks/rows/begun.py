"""Rows that begin without a chain, where all others have one."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of, named
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
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
#: Chains of a double crochet: a row of it, or of a taller stitch, is lifted.
TALL = 3


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
    every = [line for lines in by_piece.values() for line in lines]
    if not any(_lifts(line) for line in every):
        yield from _tall_without(reading, every)
    for lines in by_piece.values():
        yield from _moved(reading, lines)
    for lines in by_piece.values():
        without = [line for line in lines[1:] if not _has_chain(line)]
        if len(without) != 1 or len(lines) <= RULE or any(_lifts(line) for line in lines):
            continue
        line, those = without[0], [each for each in lines if _has_chain(each)]
        if _needs_none(line, lines):
            continue
        texts = (
            "no chain",
            f"{len(those)} others begin with one",
            f"{line.name} begins without a chain, and {len(those)} others of the piece begin with "
            "one: it may have been forgotten.",
        )
        yield finding("turning-chain", reading, line, line.told.span, texts, "possible")


def _tall_without(reading: Reading, lines: list[Line]) -> Iterator[Finding]:
    """The only row of a tall stitch that does not begin with a chain."""
    beginners: dict[str, list[Line]] = {}
    others: set[str] = set()
    for line in lines:
        named_first = (a.stitch for a in all_acts(line.told.said.acts) if isinstance(a, Bare))
        stitch = (line.works[0].stitch if line.works else "") or next(named_first, "")
        known = reading.lexicon.stitches.get(stitch)
        if known is None or known.turning_chain < TALL:
            continue
        if _has_chain(line):
            others.add(stitch)
        elif not _needs_none(line, [lines[0]]):
            beginners.setdefault(stitch, []).append(line)
    for stitch, those in beginners.items():
        if len(those) == 1 and stitch in others:
            line = those[0]
            name = named(stitch, reading)
            texts = (
                "no chain",
                f"another row of {name} begins with one",
                f"{line.name} is of {name} and begins without a chain: it may have been forgotten, or "
                "another stitch is meant.",
            )
            yield finding("turning-chain", reading, line, line.told.span, texts, "possible")


def _moved(reading: Reading, lines: list[Line]) -> Iterator[Finding]:
    """Slip stitches to where a row begins, and no chain after them, where other rows have one."""
    if not any(_has_chain(line) for line in lines):
        return
    for line in lines:
        acts = _first(line)
        slips = [act for act in acts[:1] if _slips(act) and isinstance(act, Into)]
        if not slips or len(acts) < 2 or isinstance(acts[1], Chain | Bare) or _slips(acts[1]):
            continue
        after = acts[1]
        if isinstance(after, Into) and all(_is_of_dictionary(a, reading) for a in after.body):
            texts = (
                reading.script.words(Span(slips[0].span.start, after.span.end))[:60],
                "no chain between them",
                f"{line.name} is moved by slip stitches and goes on without a chain; other rows of "
                "the piece begin with one: it may have been forgotten.",
            )
            yield finding("turning-chain", reading, line, line.told.span, texts, "possible")


def _is_of_dictionary(act: Act, reading: Reading) -> bool:
    """A plain stitch; a group that the pattern defines may begin with its own chain."""
    stitch = reading.lexicon.stitches.get(act.stitch) if isinstance(act, Bare) else None
    return stitch is not None and stitch.kind == "stitch"


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
    acts = [act for act in line.told.said.acts if not isinstance(act, Turn | Aside | Join)]
    return len(acts) > 1 and isinstance(acts[-1], Chain)


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
