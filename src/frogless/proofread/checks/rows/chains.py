"""Joins: to what a round has, and all alike."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.heights import base_of
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    finding,
    lines_of,
    named,
)
from frogless.proofread.checks.rows.strays import mentions
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Into,
    Join,
    Repeat,
    Ring,
    Turn,
    Unclear,
)

#: So many rows that agree make a rule that one other row breaks.
RULE = 3
_BEFORE = (Chain, Turn, Aside, Ring)
_NTH_CHAIN = re.compile(r"\b(\d{1,2})(?:st|nd|rd|th) ch(?:ain)?\b", re.IGNORECASE)
_NTH = re.compile(r"\b(?:\d{1,2}(?:st|nd|rd|th)|second|third|fourth|fifth)\b", re.IGNORECASE)


def joining(reading: Reading) -> Iterator[Finding]:
    """Rounds that are joined to what they do not have, or not joined where all others are."""
    lines = lines_of(reading)
    for line in lines:
        for act in line.told.said.acts[1:]:  # a slip stitch that comes first leads on
            if isinstance(act, Join):
                yield from _joined_to(reading, line, act)
    yield from _not_joined(reading, lines)


def _joined_to(reading: Reading, line: Line, act: Join) -> Iterator[Finding]:
    acts = line.told.said.acts
    if any(isinstance(each, Again | Unclear) for each in all_acts(acts)) or line.told.label is None:
        return
    chains = list(_leading(acts))
    chain = chains[-1] if chains else None
    made = {key for worked in line.first() for key in worked.made}
    made |= {base_of(key.removeprefix("front_post_").removeprefix("back_post_")) for key in made}
    if (nth := _nth_chain(reading, act)) and chain and chain.counts and _top(chain) != nth:
        texts = (
            f"joined to chain {nth}",
            f"chain {_top(chain)} is the top of the stitch",
            f"{line.name} begins with a chain whose top is its chain {_top(chain)}, and is joined to "
            f"chain {nth}: one of the numbers is wrong.",
        )
        yield finding("joining", reading, line, act.span, texts, "likely")
        return
    if act.to == "top" and act.chains and chain and len(set(chain.times.values)) == 1:
        there = chain.times.values[0]
        # "to 2nd ch of ch-4" joins lower down, where the space begins.
        lengths = {length for each in chains for length in each.times.values}
        if act.chains in lengths:
            return
        if act.chains > there or (act.chains < there - chain.space and not _in_nth(reading, act)):
            texts = (
                f"joined to the top of ch-{act.chains}",
                f"the round begins with ch {there}",
                f"{line.name} begins with a chain of {there} and is joined to the top of a "
                f"chain of {act.chains}: one of the numbers is wrong.",
            )
            yield finding("joining", reading, line, act.span, texts, "certain")
    elif act.to == "first" and _begins_with_another(line, act, chain):
        said, first = named(act.stitch, reading), named(mentions(line)[0][1], reading)
        texts = (
            f"joined to the first {said}",
            f"the round begins with {first}",
            f"{line.name} begins with {first} and is joined to the first {said}: one of the two is "
            "wrong.",
        )
        yield finding("joining", reading, line, act.span, texts, "likely")
    elif act.to == "first" and act.stitch in reading.lexicon.stitches and made:
        joined = {act.stitch}
        if chain and chain.counts_as:
            made |= {chain.counts_as}
        known = made & reading.lexicon.stitches.keys() - {"chain", "slip_stitch"}
        if known and not joined & made and not made & reading.lexicon.own.keys():
            dialect = reading.lexicon.terms.dialect
            said = reading.lexicon.stitches[act.stitch].terms[dialect].abbreviation
            texts = (
                f"joined to the first {said}",
                f"there is no {said} in the round",
                f"{line.name} has no {said} to join to: name the stitch that the round begins "
                "with.",
            )
            yield finding("joining", reading, line, act.span, texts, "likely")


def _begins_with_another(line: Line, act: Join, chain: Chain | None) -> bool:
    """Whether the first stitch is another than the first that the round is joined to.

    Where the chain that it begins with counts, the round may be joined to what follows it.
    """
    counts = chain is not None and (
        chain.counts or not line.works or any(worked.turning[1] for worked in line.works)
    )
    found = mentions(line)
    stitches = {stitch for _, stitch in found}
    if counts or not found or act.stitch not in stitches or act.stitch == found[0][1]:
        return False
    first = next((a for a in line.told.said.acts if not isinstance(a, _BEFORE)), None)
    return isinstance(first, Bare | Into | Repeat)


def _leading(acts: Sequence[Act]) -> Iterator[Chain]:
    """The chains that a round begins with: "Ch 4, join to form a ring, ch 3, ..."."""
    for act in acts:
        if isinstance(act, Chain):
            yield act
        elif not isinstance(act, Turn | Aside | Join | Ring) and not _slips(act):
            return


def _slips(act: Act) -> bool:
    """Slip stitches that bring the yarn to where the round begins."""
    if isinstance(act, Into):
        return bool(act.body) and all(_slips(each) for each in act.body)
    return isinstance(act, Bare) and act.stitch == "slip_stitch"


def _in_nth(reading: Reading, act: Join) -> bool:
    return bool(_NTH.search(reading.script.plain, act.span.start, act.span.end))


def _nth_chain(reading: Reading, act: Join) -> int:
    """ "Join to 3rd ch": 3."""
    found = _NTH_CHAIN.search(reading.script.plain, act.span.start, act.span.end)
    return int(found[1]) if found else 0


def _top(chain: Chain) -> int:
    """The chain that is the top of the stitch that it stands for: those of a space come after."""
    return max(chain.times.values) - chain.space


def _not_joined(reading: Reading, lines: Sequence[Line]) -> Iterator[Finding]:
    by_piece: dict[int, list[Line]] = {}
    closed_after: set[int] = set()
    for line in lines:
        there = by_piece.setdefault(line.told.piece, [])
        if line.told.label and line.told.label.kind == "round" and line.told.said.acts:
            there.append(line)
        elif there and _closes(line):
            closed_after.add(there[-1].index)
    for rounds in by_piece.values():
        without = [line for line in rounds if not _closes(line)]
        if len(without) == 1 and len(rounds) > RULE and without[0] not in (rounds[0], rounds[-1]):
            line = without[0]
            if line.index in closed_after:
                continue
            texts = (
                "no join",
                f"the other {len(rounds) - 1} rounds are joined",
                f"{line.name} is not joined, and every other round is: the join may have been "
                "forgotten.",
            )
            yield finding("joining", reading, line, line.told.span, texts, "possible")


def _closes(line: Line) -> bool:
    """Joined, or said not to be, or nothing that is worked by itself."""
    return any(
        isinstance(act, Join | Again | Unclear)
        or (isinstance(act, Aside) and act.kind == "fasten_off")
        for act in line.told.said.acts
    )
