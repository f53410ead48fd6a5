"""A stitch that the whole pattern names once, where another stands in all places like it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.heights import base_of
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    finding,
    lines_of,
    named,
    speaks_otherwise,
)
from frogless.proofread.checks.rows.strays import PLAIN, mentions
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Evenly,
    Into,
    Join,
    Repeat,
    Skip,
    Turn,
)

#: "with the last sc in the 3rd ch", "sl st in the last sc".
_LAST = re.compile(
    r"\b(?:the|working|ending with) last (?P<stitch>[a-z]{2,4}) (?:in|into)\b"
    r"|\b(?:sl st|ss) (?:in|into|to) (?:the )?last (?P<into>[a-z]{2,4})\b(?! ?\d|\s?tog)",
    re.IGNORECASE,
)
#: "work even in dc for 10 rounds".
_EVEN = re.compile(r"\b(?:even|straight|plain) in (?P<stitch>[a-z]{2,4})\b", re.IGNORECASE)
#: So many other mentions in a row, of one stitch and no other, make it a row of that stitch.
ROW = 2
#: Two stitches in turn.
IN_TURN = 2


def lone(reading: Reading) -> Iterator[Finding]:
    """Stitches that nothing else in the pattern speaks of, and that break with what is beside them."""
    often = _often(reading)
    for line in lines_of(reading):
        if speaks_otherwise(reading, line):
            continue
        yield from _last_of_another(reading, line)
        yield from _even_in_another(reading, line, often)
        if line.told.label is not None:
            yield from _corners(reading, line)
            yield from _turned_out(reading, line)
            yield from _corners_only(reading, line)
            yield from _once(reading, line, often)


def _often(reading: Reading) -> Counter[str]:
    """How often each plain stitch is named: worked, worked into, counted, explained."""
    found: Counter[str] = Counter()
    for line in lines_of(reading):
        for act in all_acts(line.told.said.acts):
            for name in (getattr(act, "stitch", ""), getattr(act, "counts_as", "")):
                found[base_of(name)] += 1
            target = getattr(act, "target", None)
            if target is not None:
                found[base_of(target.stitch)] += 1
        for stated in line.told.said.stated:
            found[base_of(stated.stitch)] += 1
    for own in reading.lexicon.own.values():
        for act in all_acts(own.body):
            found[base_of(getattr(act, "stitch", ""))] += 1
        found[base_of(own.meaning)] += 1
    for gauge in reading.facts.gauges:
        found[base_of(gauge.stitch)] += 1
    keys = keys_of(reading.lexicon.terms.dialect)
    for entry in reading.lexicon.entries:
        found[base_of(keys.get(entry.word.lower(), ""))] += 1
    return found


def _told(
    reading: Reading, line: Line, span: Span, odd: str, usual: str, why: str, sure: Certainty
) -> Finding:
    one, other = named(odd, reading), named(usual, reading)
    name = line.name or "this sentence"
    texts = (f"{one} in {name}", f"{other} is likelier", f"{name[:1].upper()}{name[1:]} {why}.")
    return finding("stitch-odd", reading, line, span, texts, sure)


def _keyed(reading: Reading, word: str) -> str:
    key = base_of(keys_of(reading.lexicon.terms.dialect).get(word.lower(), ""))
    return key if key in PLAIN else ""


def _last_of_another(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "*Sc in next sp, sc in next dc; rep from * to end, with the last dc in the 3rd ch"."""
    span = line.told.span
    there = {stitch for _, stitch in mentions(line)}
    for found in _LAST.finditer(reading.script.plain, span.start, span.end):
        stitch = _keyed(reading, found["stitch"] or found["into"])
        if (
            stitch
            and len(there - {stitch}) == 1
            and stitch not in {s for s in there if s != stitch}
        ):
            made = {base_of(key) for worked in line.works for key in worked.made}
            if made and stitch not in made:
                (usual,) = there - {stitch}
                why = f"speaks of its last {named(stitch, reading)}, and works none"
                yield _told(reading, line, Span(*found.span()), stitch, usual, why, "likely")


def _even_in_another(reading: Reading, line: Line, often: Counter[str]) -> Iterator[Finding]:
    """ "Work even in hdc" in a piece of dc."""
    span = line.told.span
    for found in _EVEN.finditer(reading.script.plain, span.start, span.end):
        stitch = _keyed(reading, found["stitch"])
        before = line.works[0].stitch if line.works else ""
        usual = base_of(before)
        if stitch and not often[stitch] and usual in PLAIN and usual != stitch:
            why = (
                f"goes on in {named(stitch, reading)}, which nothing else in the pattern is worked "
                f"in; the rows before it are in {named(usual, reading)}"
            )
            yield _told(reading, line, Span(*found.span()), stitch, usual, why, "possible")


def _corners(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Sc evenly around, working 3 hdc in each corner"."""
    acts = list(all_acts(line.told.said.acts))
    along = {base_of(act.stitch) for act in acts if isinstance(act, Evenly)}
    for act in acts:
        if isinstance(act, Into) and act.target.what == "corner" and len(act.body) == 1:
            (only,) = act.body
            stitch = base_of(only.stitch) if isinstance(only, Bare) else ""
            if along and {stitch, *along} <= PLAIN and stitch not in along:
                usual = next(iter(along))
                why = (
                    f"works {named(stitch, reading)} in the corners and {named(usual, reading)} "
                    "between them: one of the two may be a slip"
                )
                yield _told(reading, line, act.span, stitch, usual, why, "possible")


def _corners_only(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Ch 1, working 3 sc in each corner. Join.": nothing is said of the sides."""
    acts = [act for act in line.told.said.acts if not isinstance(act, Chain | Join | Aside | Turn)]
    only = acts[0] if len(acts) == 1 else None
    corner = isinstance(only, Into) and only.target.what == "corner" and only.target.which == "each"
    if corner and line.works and line.works[0].available is None:
        texts = (
            reading.script.words(only.span) if only else "",
            "only the corners are worked",
            f"{line.name} works into the corners, and says nothing of the sides between them.",
        )
        yield finding("unclear", reading, line, line.told.span, texts, "possible")


def _once(reading: Reading, line: Line, often: Counter[str]) -> Iterator[Finding]:
    """A stitch that is named once, in a row that works another at all its other places."""
    found = mentions(line)
    inner = {id(each) for act in line.told.said.acts for each in _within(act)}
    for act, stitch in found:
        others = [(each, s) for each, s in found if each is not act]
        others += [
            (a, base_of(a.counts_as))
            for a in line.told.said.acts[:2]
            if isinstance(a, Chain) and a.counts_as
        ]
        kinds = {s for _, s in others}
        if often[stitch] != 1 or len(kinds) != 1 or id(act) in inner:
            continue
        alike = len(others) >= ROW or _times(act) == _times(others[0][0]) != (1,)
        if alike and often[usual := kinds.pop()] > ROW:
            why = (
                f"works {named(stitch, reading)} once among {named(usual, reading)}, and nothing "
                "else in the pattern speaks of it"
            )
            yield _told(reading, line, act.span, stitch, usual, why, "possible")


def _turned_out(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "*Sc, dc* 12 times, hdc in last st": two stitches in turn, and a third at the end."""
    acts = [act for act in line.told.said.acts if not isinstance(act, Turn | Aside | Join)]
    for repeat, after in pairwise(acts):
        if not isinstance(repeat, Repeat) or after is not acts[-1] or len(repeat.body) != IN_TURN:
            continue
        turns = [_single(act) for act in repeat.body]
        last = _single(after)
        if last and all(turns) and len({*turns}) == IN_TURN and last not in turns:
            shown = " and ".join(named(stitch, reading) for stitch in turns)
            why = f"works {shown} in turn, and ends with {named(last, reading)}"
            yield _told(reading, line, after.span, last, turns[0], why, "possible")


def _single(act: Act) -> str:
    """The plain stitch that an act works into one place; ""."""
    if isinstance(act, Into) and len(act.body) == 1:
        times = act.extent.times
        return _single(act.body[0]) if times is None or times.values == (1,) else ""
    if not isinstance(act, Bare) or (act.times is not None and act.times.values != (1,)):
        return ""
    return base_of(act.stitch) if base_of(act.stitch) in PLAIN else ""


def _within(act: Act) -> Sequence[Act]:
    """What is repeated, or worked into one place with others: it may be another on purpose."""
    if isinstance(act, Into) and len(act.body) == 1 and act.target.what not in ("space", "corner"):
        return ()
    if isinstance(act, Repeat) and all(
        isinstance(a, Chain | Skip) or _is_plain(a) for a in act.body
    ):
        return ()  # a mesh: its bars are of the stitch of its edges
    return tuple(each for each in all_acts((act,)) if each is not act)


def _is_plain(act: Act) -> bool:
    """One stitch in each place; several in one are a fan."""
    if not isinstance(act, Into) or len(act.body) != 1 or act.target.what != "stitch":
        return False
    return isinstance(act.body[0], Bare) and act.body[0].times is None


def _times(act: Act) -> tuple[int, ...]:
    times = getattr(act, "times", None)
    return times.values if times else (1,)
