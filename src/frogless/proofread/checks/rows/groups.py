"""Groups in one place: alike on both sides, and of as many stitches as the count says."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of, named
from frogless.proofread.checks.rows.strays import PLAIN
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.model import Act, Aside, Bare, Chain, Into, Join, Turn

#: "(20 groups of 5 tr, 21 dc)", "8 shells of 7 dc".
_SIZED = re.compile(
    r"\b\d{1,4} (?:group|shell|fan|cluster|scallop|petal)s? of (?P<count>\d{1,2})\b(?: (?P<stitch>[a-z]{2,4})\b)?",
    re.IGNORECASE,
)
#: A petal rises and falls again over so many steps.
STEPS = 4
KINDS = 3
#: Stitch, chain, stitch.
ENDS = 3
PETAL = PLAIN | {"slip_stitch", "chain"}


def group_shape(reading: Reading) -> Iterator[Finding]:
    """Groups of another size than is said, and petals that are not alike on both sides."""
    for line in lines_of(reading):
        yield from _sized(reading, line)
        yield from _one_sided(reading, line)
        yield from _unlike_ends(reading, line)


def _sized(reading: Reading, line: Line) -> Iterator[Finding]:
    span = line.told.span
    found = _SIZED.search(reading.script.plain, span.start, span.end)
    if found is None:
        return
    yield from _of_another(reading, line, found)
    sizes = {size for group in _groups(line) if (size := _size(group.body)) > 1}
    says = int(found["count"])
    if sizes and says not in sizes:
        made = " or ".join(map(str, sorted(sizes)))
        texts = (
            f"groups of {says}",
            f"groups of {made}",
            f"{line.name} works groups of {made} stitches, and its count speaks of groups of "
            f"{says}: one of the numbers is wrong.",
        )
        yield finding("group-shape", reading, line, Span(*found.span()), texts, "likely")


def _of_another(reading: Reading, line: Line, found: re.Match[str]) -> Iterator[Finding]:
    """ "9 hdc in next st" where the count speaks of fans of 9 dc."""
    says = keys_of(reading.lexicon.terms.dialect).get((found["stitch"] or "").lower(), "")
    made = {
        each.stitch
        for group in _groups(line)
        if _size(group.body) == int(found["count"])
        for each in group.body
        if isinstance(each, Bare)
    }
    if says in PLAIN and made and made <= PLAIN and says not in made:
        name = named(says, reading)
        works = named(next(iter(made)), reading)
        texts = (
            f"groups of {name}",
            f"groups of {works}",
            f"{line.name} works groups of {works}, and its count speaks of {name}: one of the two is "
            "wrong.",
        )
        yield finding("group-shape", reading, line, Span(*found.span()), texts, "likely")


def _groups(line: Line) -> Iterator[Into]:
    return (a for a in all_acts(line.told.said.acts) if isinstance(a, Into))


def _size(body: Sequence[Act]) -> int:
    return sum((a.times.values[0] if a.times else 1) for a in body if isinstance(a, Bare))


def _one_sided(reading: Reading, line: Line) -> Iterator[Finding]:
    for group in _groups(line):
        steps = [_step(act) for act in group.body]
        if any(step and step[0] not in PETAL for step in steps):
            continue  # a picot sits on one stitch of several
        if len(steps) < STEPS or None in steps or len({step and step[0] for step in steps}) < KINDS:
            continue
        if steps == steps[::-1] or not _nearly(steps):
            continue
        shown = ", ".join(named(step[0], reading) for step in steps if step)
        texts = (
            shown,
            "the same on both sides",
            f"{line.name} works a group that rises and falls, and its sides are not alike: "
            "a stitch may be missing, doubled or another.",
        )
        yield finding("group-shape", reading, line, group.span, texts, "possible")
        return


def _unlike_ends(reading: Reading, line: Line) -> Iterator[Finding]:
    """ "Ch 4 (counts as dc and ch 1), dc in same st, …, (dc, ch 1, dc) in last st": both ends alike."""
    acts = [a for a in line.told.said.acts if not isinstance(a, Aside | Turn | Join)]
    chain = next((act for act in acts[:2] if isinstance(act, Chain)), None)
    last = acts[-1] if acts else None
    if (
        chain is None
        or not chain.space
        or not isinstance(last, Into)
        or last.target.which != "last"
    ):
        return
    end = [_step(act) for act in last.body]
    if len(end) != ENDS or end[1] != ("chain", chain.space):
        return
    at = acts.index(chain) + 1
    begin = acts[at] if at < len(acts) else None
    same = isinstance(begin, Into) and begin.target.what == "same"
    inner = _step(begin.body[0]) if isinstance(begin, Into) and same else None
    stands = (chain.counts_as, 1)
    if (end[0], end[2]) != (inner, stands):
        texts = (
            reading.script.words(last.span),
            "as it begins",
            f"{line.name} begins with a chain and ends with a group in one place, and the two are "
            "not alike: a stitch may be missing, or another.",
        )
        yield finding("group-shape", reading, line, last.span, texts, "possible")


def _step(act: Act) -> tuple[str, int] | None:
    if isinstance(act, Bare):
        return act.stitch, act.times.values[0] if act.times else 1
    if isinstance(act, Chain):
        return "chain", act.times.values[0]
    return None


def _nearly(steps: Sequence[object]) -> bool:
    """Alike on both sides but for one step that is missing, too many, or another."""
    unlike = sum(a != b for a, b in zip(steps, reversed(steps), strict=True))
    if unlike == 2:
        return True
    shorter = ([*steps[:at], *steps[at + 1 :]] for at in range(len(steps)))
    return any(each == each[::-1] for each in shorter)
