"""Stitches that stand where all around them another is worked, and that nothing else speaks of."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from functools import lru_cache
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.heights import base_of, begun_rows, begun_with
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    counted,
    finding,
    lines_of,
    named,
    speaks_otherwise,
)
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.model import (
    Act,
    Again,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Join,
    Leave,
    Repeat,
    Skip,
    Target,
    Together,
)

#: So many other rows of another stitch make a piece of that stitch.
RULE = 2
#: So many rows at the end of a piece are an edging.
EDGING = 2
#: Rows whose stitches are remembered, since each is asked for them with each of its neighbors.
KEPT = 4_096
#: Such a part of the other rows is of that stitch.
MOST = 0.7
PLAIN = frozenset(
    {"single_crochet", "half_double_crochet", "double_crochet", "treble", "double_treble"}
)
#: Low stitches, that go into the 2nd chain from the hook, and the height of those that do not.
LOW = ("single_crochet",)
TALL = 3
_UNSEEN = frozenset(
    {"span", "stitch", "times", "counts", "counts_as", "makes", "written_after", "more", "doubtful"}
)


def strays(reading: Reading) -> Iterator[Finding]:
    """Rows, or parts of rows, in a stitch that the rest of the pattern gives no reason for."""
    rows = [line for line in lines_of(reading) if line.told.label and mentions(line)]
    witnesses = _witnesses(reading)
    mixes = Counter(frozenset(_stitches(line)) for line in rows)
    told: set[int] = set()
    for line in rows:
        if speaks_otherwise(reading, line):
            continue
        for act, odd, usual, why, certainty in (
            *_first_otherwise(line),
            *_chain_for_another(line),
            *_from_too_near(line, reading),
            *_in_one_row(line, rows, witnesses, reading),
        ):
            if line.index in told:
                continue
            told.add(line.index)
            yield _told(reading, line, act, odd, usual, why, certainty)
    for before, line in pairwise(rows):
        for one, other in ((before, line), (line, before)):
            if one.index not in told and (found := _unlike_its_sister(one, other, mixes)):
                told.add(one.index)
                yield _told(reading, one, *found)


_Stray = tuple[Act, str, str, str, Certainty]


def _told(
    reading: Reading, line: Line, act: Act, odd: str, usual: str, why: str, certainty: Certainty
) -> Finding:
    one, other = named(odd, reading), named(usual, reading)
    texts = (
        f"{one} in {line.name}",
        f"{other} is likelier",
        f"{line.name} works {one} where {other} would be expected: {why}.",
    )
    return finding("stitch-odd", reading, line, act.span, texts, certainty)


@lru_cache(maxsize=KEPT)
def mentions(line: Line) -> tuple[tuple[Act, str], ...]:
    """The plain stitches that a row names, whichever loop they go into."""
    found = []
    for each in all_acts(line.told.said.acts):
        stitch = each.stitch if isinstance(each, Bare | Increase | Together | Evenly) else ""
        if (plain := _plain(stitch)) in PLAIN:
            found.append((each, plain))
    return tuple(found)


def _plain(stitch: str) -> str:
    """The stitch itself, whichever loop or post it is worked into."""
    return base_of(stitch.removeprefix("front_post_").removeprefix("back_post_"))


def _of_one(line: Line) -> str:
    """The stitch of a row that has no other; ""."""
    stitches = {stitch for _, stitch in mentions(line)}
    return stitches.pop() if len(stitches) == 1 else ""


# -- a row against itself


def _first_otherwise(line: Line) -> Iterator[_Stray]:
    """ "Sc in 2nd ch from hook, dc in each ch across": the first stitch is another."""
    acts = [a for a in line.told.said.acts if isinstance(a, Into)]
    if len(acts) != 2 or not _is_first(acts[0]) or acts[1].extent.kind != "end":
        return
    found = mentions(line)
    if len(found) == 2 and found[0][1] != found[1][1]:
        why = "the first stitch of the row is another than all others"
        yield acts[1], found[1][1], found[0][1], why, "likely"


def _is_first(act: Into) -> bool:
    """A single stitch before all others: "dc in next st, tr in each st to end"."""
    if act.target.what == "from_hook":
        return True
    times = act.extent.times if act.extent.kind == "times" else None
    plain = act.target.what == "stitch" and act.target.which in ("next", "first")
    return times is not None and times.values == (1,) and plain and _is_single(act)


def _chain_for_another(line: Line) -> Iterator[_Stray]:
    """ "Ch 3 (counts as dc), tr in each st": the chain stands for a stitch that is not worked."""
    chain = next((a for a in line.told.said.acts[:3] if isinstance(a, Chain)), None)
    if chain is None or base_of(chain.counts_as) not in PLAIN:
        return
    stands, stitch = base_of(chain.counts_as), _of_one(line)
    if stitch and stitch != stands and not _lacy(line):
        why = "the chain that it begins with counts as another stitch than all that follow"
        yield mentions(line)[0][0], stitch, stands, why, "likely"


def _from_too_near(line: Line, reading: Reading) -> Iterator[_Stray]:
    """ "Dc in 2nd ch from hook": the chain that is left is too low for the stitch."""
    stitch = _of_one(line)
    skips = 0
    for act in line.told.said.acts[:3]:
        if isinstance(act, Skip) and act.target.what == "chain" and act.target.which == "first":
            skips = (
                act.times.values[0] if act.times else 1
            )  # "skip the first chain, dc in the other"
            continue
        hooked = isinstance(act, Into) and act.target.what == "from_hook"
        if not isinstance(act, Into) or not stitch or not (hooked or skips):
            continue
        skipped = act.target.nth - 1 if hooked else skips
        tall = reading.lexicon.stitches[stitch].turning_chain
        low = next((key for key in LOW if skipped == 1 and tall >= TALL), "")
        if low:
            why = f"{counted(skipped, 'chain')} before the first one is too low for it"
            yield act, stitch, low, why, "possible"


# -- a row against the whole pattern


def _witnesses(reading: Reading) -> Mapping[str, set[object]]:
    """By stitch, where it is spoken of: the rows that work it, and all other places."""
    found: dict[str, set[object]] = {}

    def add(stitch: str, where: object) -> None:
        found.setdefault(_plain(stitch), set()).add(where)

    for line in lines_of(reading):
        for each in all_acts(line.told.said.acts):
            stitch = getattr(each, "stitch", "")
            if isinstance(each, Join):
                add(stitch, f"join {line.index}")
            elif stitch:
                add(stitch, line.index)
            for target in _targets(each):
                add(target.stitch, f"place {line.index}")
            if isinstance(each, Chain) and each.counts_as:
                add(each.counts_as, f"chain {line.index}")
        for stated in line.told.said.stated:
            add(stated.stitch, f"count {line.index}")
    for own in reading.lexicon.own.values():
        for each in all_acts(own.body):
            add(getattr(each, "stitch", ""), f"own {own.key}")
    for gauge in reading.facts.gauges:
        add(gauge.stitch, "gauge")
    keys = keys_of(reading.lexicon.terms.dialect)
    for entry in reading.lexicon.entries:  # it is explained, and so it is used somewhere
        add(keys.get(entry.word, ""), "list")
    return found


def _targets(act: Act) -> Iterator[Target]:
    if isinstance(act, Into | Skip | Increase | Together):
        yield act.target
        yield from act.target.others


def _in_one_row(
    line: Line, rows: Sequence[Line], witnesses: Mapping[str, set[object]], reading: Reading
) -> Iterator[_Stray]:
    """A stitch that only this row names, in a pattern of another."""
    found = mentions(line)
    for odd in {stitch for _, stitch in found}:
        if len(witnesses.get(odd, ())) != 1:
            continue
        usual = _usual(line, rows, odd, witnesses)
        if (
            not usual
            or (_is_edging(line, rows, usual) and not _goes_on(line, reading))
            or _is_texture(line)
            or _chain_agrees(line, odd, usual, reading)
        ):
            continue
        act = next(act for act, stitch in found if stitch == odd)
        yield act, odd, usual, f"no other row, count or gauge has {named(odd, reading)}", "possible"
        return


def _usual(line: Line, rows: Sequence[Line], odd: str, witnesses: Mapping[str, set[object]]) -> str:
    """The stitch that most other rows are of, when there are enough, or that the gauge is; ""."""
    others = [other for other in rows if other is not line]
    stitches = Counter(stitch for other in others for stitch in set(_stitches(other)))
    here = {stitch for _, stitch in mentions(line)} - {odd}
    if not stitches or len(here) > 1:
        return ""
    usual, often = stitches.most_common(1)[0]
    if here and here != {usual}:
        return ""
    if not here and stitches[beside := _beside(line, rows)] >= RULE:
        return beside
    gauge = "gauge" in witnesses.get(usual, ())
    enough = often >= (1 if gauge else RULE)
    return usual if enough and often >= MOST * len(others) else ""


def _beside(line: Line, rows: Sequence[Line]) -> str:
    """The stitch of the row before or after, when that goes the same way."""
    at = rows.index(line)
    for other in (*rows[max(at - 1, 0) : at], *rows[at + 1 : at + 2]):
        alike = outline(other.told.said.acts) == outline(line.told.said.acts)
        if alike and other.told.piece == line.told.piece:
            return _of_one(other)
    return ""


def _is_edging(line: Line, rows: Sequence[Line], usual: str) -> bool:
    """A whole row of another stitch after which the first stitch does not come again."""
    if _of_one(line) == "" or _rows(line) > EDGING or _shapes(line) or _is_part(line):
        return False
    after = rows[rows.index(line) + 1 :]
    return not any(usual in _stitches(o) for o in after if o.told.piece == line.told.piece)


def _is_part(line: Line) -> bool:
    """A row that leaves stitches for another one."""
    return any(isinstance(act, Leave) for act in line.told.said.acts)


def _goes_on(line: Line, reading: Reading) -> bool:
    """Whether more rows are worked like it: "Work 20 rows straight"."""
    after = lines_of(reading)[line.index + 1 : line.index + 2]
    return any(isinstance(a, Again) for each in after for a in each.told.said.acts)


def _rows(line: Line) -> int:
    return len({worked.number for worked in line.works})


def _shapes(line: Line) -> bool:
    return any(isinstance(a, Increase | Together) for a in all_acts(line.told.said.acts))


def _chain_agrees(line: Line, odd: str, usual: str, reading: Reading) -> bool:
    """The row begins with a chain that suits its stitch, and no other: it is meant."""
    begun = begun_with(line, reading)
    if begun is None or _of_one(line) != odd:
        return False
    those = {each.chains for each in begun_rows(reading) if each.stitch == usual}
    return begun.chains == reading.lexicon.stitches[odd].turning_chain and begun.chains not in those


def _is_texture(line: Line) -> bool:
    """Two stitches in turn, or a lace: several stitches on purpose."""
    if _lacy(line):
        return True
    for act in line.told.said.acts:
        if isinstance(act, Repeat):
            singles = [a for a in act.body if _is_single(a)]
            if len(singles) == len(act.body) > 1:
                return True
    return False


def _is_single(act: Act) -> bool:
    if isinstance(act, Bare):
        return act.times is None or max(act.times.values) == 1
    return isinstance(act, Into) and len(act.body) == 1 and _is_single(act.body[0])


def _lacy(line: Line) -> bool:
    for at, act in enumerate(line.told.said.acts):
        for each in all_acts((act,)):
            if isinstance(each, Skip) or (isinstance(each, Chain) and at > 1):
                return True
            if isinstance(each, Into) and len(each.body) > 1:
                return True
    return False


# -- a row against the next


def _unlike_its_sister(line: Line, sister: Line, mixes: Counter[frozenset[str]]) -> _Stray | None:
    """A row that goes like the one beside it, all of one stitch, and has another once."""
    usual = _of_one(sister)
    found = mentions(line)
    odd = [(act, stitch) for act, stitch in found if stitch != usual]
    if not usual or len(odd) != 1 or len(found) < 2 or _lacy(line):
        return None
    if outline(line.told.said.acts) != outline(sister.told.said.acts):
        return None
    if mixes[frozenset(_stitches(line))] > 1:
        return None
    why = f"{sister.name} goes the same way, and is all of one stitch"
    return odd[0][0], odd[0][1], usual, why, "possible"


def _stitches(line: Line) -> list[str]:
    return [stitch for _, stitch in mentions(line)]


def outline(value: object) -> object:
    """What acts say without their stitches and numbers."""
    if isinstance(value, Extent):
        return value.kind
    if isinstance(value, Target):
        return value.what
    if isinstance(value, tuple):
        return tuple(outline(each) for each in value)
    if not is_dataclass(value) or isinstance(value, type):
        return value
    kept = (f.name for f in fields(value) if f.name not in _UNSEEN)
    return (type(value).__name__, *(outline(getattr(value, name)) for name in kept))
