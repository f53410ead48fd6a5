"""Turning chains and joins: counted and joined alike throughout, and as tall as their stitch."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    finding,
    lines_of,
    speaks_otherwise,
)
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Increase,
    Into,
    Join,
    Repeat,
    Ring,
    Skip,
    Together,
    Turn,
    Unclear,
)

#: So many rows that agree make a rule that one other row breaks.
RULE = 3
_NTH = re.compile(r"\b(?:\d{1,2}(?:st|nd|rd|th)|second|third|fourth|fifth)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True, eq=False)
class Begun:
    """A row that begins with a chain, and its first stitch.

    Args:
        chains: those that stand for a stitch; a space after them is left out.
    """

    line: Line
    act: Chain
    chains: int
    stitch: str


def turning_chain(reading: Reading) -> Iterator[Finding]:
    """A turning chain that is counted, or as long, as in no other row of that stitch."""
    begun = [each for line in lines_of(reading) if (each := begun_with(line, reading))]
    yield from _counted_otherwise(reading, begun)
    yield from _other_length(reading, begun)


def begun_with(line: Line, reading: Reading) -> Begun | None:
    """How a row begins, when it is with a chain of one length and a stitch that is known."""
    acts = [a for a in line.told.said.acts if not isinstance(a, Turn | Aside | Skip)]
    if line.told.label is None or len(acts) < 2 or not isinstance(acts[0], Chain):
        return None
    chain = acts[0]
    stitch = _first_stitch(acts[1:])
    if stitch not in reading.lexicon.stitches or len(set(chain.times.values)) > 1:
        return None
    if reading.lexicon.stitches[stitch].kind != "stitch" or stitch == "slip_stitch":
        return None
    return Begun(line, chain, chain.times.values[0] - chain.space, stitch)


def _first_stitch(acts: Sequence[object]) -> str:
    """The stitch that follows the chain at once; "" where another thing does."""
    act = acts[0]
    match act:
        case Bare(stitch=stitch) | Together(stitch=stitch) | Increase(stitch=stitch):
            return stitch
        case Into(body=body, target=target) if target.what in ("stitch", "same", "any", "chain"):
            return _first_stitch(body) if body else ""
        case Repeat(body=body):
            return _first_stitch(body) if body else ""
    return ""


def _counted_otherwise(reading: Reading, begun: Sequence[Begun]) -> Iterator[Finding]:
    said = [each for each in begun if each.act.counts is not None and not each.act.space]
    groups = Counter((b.line.told.piece, b.chains, b.stitch, b.act.counts) for b in said)
    groups.update(_skipped(reading))
    for each in said:
        key = (each.line.told.piece, each.chains, each.stitch)
        same, other = groups[*key, each.act.counts], groups[*key, not each.act.counts]
        if same == 1 and other > same:
            here = "counts" if each.act.counts else "does not count"
            there = "does not count" if each.act.counts else "counts"
            texts = (
                f"the chain of {each.chains} {here}",
                f"in {other} other rows it {there}",
                f"{each.line.name} says that its chain of {each.chains} {here} as a stitch; in "
                f"{other} other rows of that stitch it {there}. Say the same everywhere.",
            )
            yield finding("turning-chain", reading, each.line, each.act.span, texts, "likely")


def _skipped(reading: Reading) -> Iterator[tuple[int, int, str, bool | None]]:
    """What is said of the chains that a first row skips: "dc in 4th ch from hook (counts as dc)"."""
    for line in lines_of(reading):
        for act in line.told.said.acts[:2]:
            if isinstance(act, Into) and act.target.what == "from_hook" and act.body:
                stitch = _first_stitch(act.body)
                yield line.told.piece, act.target.nth - 1, stitch, act.target.counts


def _other_length(reading: Reading, begun: Sequence[Begun]) -> Iterator[Finding]:
    groups: dict[tuple[int, str], Counter[int]] = {}
    for each in begun:
        groups.setdefault((each.line.told.piece, each.stitch), Counter())[each.chains] += 1
    for each in begun:
        if speaks_otherwise(reading, each.line):
            continue
        lengths = groups[each.line.told.piece, each.stitch]
        usual, often = lengths.most_common(1)[0]
        name = (
            reading.lexicon.stitches[each.stitch].terms[reading.lexicon.terms.dialect].abbreviation
        )
        if lengths[each.chains] == 1 and often >= RULE and usual != each.chains:
            if each.act.times.values[0] == usual:
                continue
            texts = (
                f"ch {each.chains}",
                f"ch {usual} in {often} other rows",
                f"{each.line.name} begins with a chain of {each.chains} before {name}; {often} "
                f"other rows of {name} begin with {usual}.",
            )
            yield finding("turning-chain", reading, each.line, each.act.span, texts, "likely")
        elif often < RULE and _too_unlike(each, reading):
            tall = reading.lexicon.stitches[each.stitch].turning_chain
            texts = (
                f"ch {each.chains} before {name}",
                f"{name} is as tall as a chain of {tall}",
                f"A chain of {each.chains} does not suit {name}, which is as tall as {tall}: "
                "the chain or the stitch may be another.",
            )
            yield finding("turning-chain", reading, each.line, each.act.span, texts, "possible")


def _too_unlike(each: Begun, reading: Reading) -> bool:
    """Far from what suits, and the row is of nothing but that stitch: no lace, no mesh."""
    tall = reading.lexicon.stitches[each.stitch].turning_chain
    # Low chains before tall stitches are a habit of many; two before sc are nobody's.
    if not tall or abs(each.chains - tall) < (1 if each.stitch == "single_crochet" else 2):
        return False
    others = [a for a in each.line.told.said.acts if not isinstance(a, Turn | Aside | Join)]
    plain = others[1:]
    return all(
        isinstance(a, Into)
        and len(a.body) == 1
        and isinstance(a.body[0], Bare)
        and a.body[0].stitch == each.stitch
        for a in plain
    )


def joining(reading: Reading) -> Iterator[Finding]:
    """Rounds that are joined to what they do not have, or not joined where all others are."""
    lines = lines_of(reading)
    for line in lines:
        for act in line.told.said.acts:
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
    elif act.to == "first" and act.stitch in reading.lexicon.stitches and made:
        named = {act.stitch}
        if chain and chain.counts_as:
            made |= {chain.counts_as}
        known = made & reading.lexicon.stitches.keys() - {"chain", "slip_stitch"}
        if known and not named & made and not made & reading.lexicon.own.keys():
            dialect = reading.lexicon.terms.dialect
            said = reading.lexicon.stitches[act.stitch].terms[dialect].abbreviation
            texts = (
                f"joined to the first {said}",
                f"there is no {said} in the round",
                f"{line.name} has no {said} to join to: name the stitch that the round begins "
                "with.",
            )
            yield finding("joining", reading, line, act.span, texts, "likely")


def _leading(acts: Sequence[Act]) -> Iterator[Chain]:
    """The chains that a round begins with: "Ch 4, join to form a ring, ch 3, ..."."""
    for act in acts:
        if isinstance(act, Chain):
            yield act
        elif not isinstance(act, Turn | Aside | Join | Ring):
            return


def _in_nth(reading: Reading, act: Join) -> bool:
    return bool(_NTH.search(reading.script.plain, act.span.start, act.span.end))


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
