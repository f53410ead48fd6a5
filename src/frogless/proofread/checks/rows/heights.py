"""The chains that rows begin with: counted, and as long, as in the other rows of that stitch.

Heights are those of the dictionary of stitches (sc 1, hdc 2, dc 3, tr 4 chains; published in every
table of turning chains). Many makers take one less before a tall stitch; what a pattern does twice
is its habit and is right.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.begun import no_chain
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    finding,
    lines_of,
    named,
    speaks_otherwise,
)
from frogless.proofread.checks.rows.tops import named_tops
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Evenly,
    Increase,
    Into,
    Join,
    Met,
    Repeat,
    Ring,
    Skip,
    Together,
    Turn,
)

#: So many other rows that agree make a habit of the pattern.
HABIT = 2
#: Chains of a double crochet, as tall as three.
TALL = 3
#: Longer chains are the bars of a lace.
LONGEST = 8
#: "ch 3 (= 2 dc)", "ch 3 (counts as 2 sts)".
_SEVERAL = re.compile(
    r"(?:\bch(?:ain)? ?\d{1,2}|\b\d{1,2} ?ch) ?[(,] ?(?:=|equals|counts? as|count(?:ed)? as) ?(?P<count>[2-9]) "
    r"(?:sts?|sc|hdc|htr|dc|tr)\b",
    re.IGNORECASE,
)
_LOOPS = ("_back_loop", "_front_loop", "_third_loop", "_between")


@dataclass(frozen=True, slots=True, eq=False)
class Begun:
    """A row that begins with a chain, and its first stitch.

    Args:
        chains: those that stand for a stitch; a space after them is left out.
        counts: whether they are counted as a stitch, as it was worked out.
        tall: chains that suit the stitch.
    """

    line: Line
    act: Chain
    chains: int
    stitch: str
    counts: bool
    tall: int


def turning_chain(reading: Reading) -> Iterator[Finding]:
    """A turning chain that is counted, or as long, as in no other row of that stitch."""
    yield from _counted_otherwise(reading, begun_rows(reading))
    yield from other_lengths(reading)
    yield from named_tops(reading)
    yield from no_chain(reading)
    yield from _stands_for_several(reading)


def _stands_for_several(reading: Reading) -> Iterator[Finding]:
    """ "Ch 3 (= 2 dc)": a chain stands for one stitch."""
    for line in lines_of(reading):
        span = line.told.span
        for found in _SEVERAL.finditer(reading.script.plain, span.start, span.end):
            words = reading.script.words(Span(*found.span()))
            texts = (
                words,
                "one stitch",
                f"{line.name or 'This'} says that its chain stands for {found['count']} stitches; a "
                "chain stands for one.",
            )
            yield finding("turning-chain", reading, line, Span(*found.span()), texts, "likely")


def _counted_otherwise(reading: Reading, begun: Sequence[Begun]) -> Iterator[Finding]:
    said = [each for each in begun if each.act.counts is not None and not each.act.space]
    groups = Counter((b.line.told.piece, b.chains, b.stitch, b.act.counts) for b in said)
    groups.update(_skipped(reading))
    unsaid = Counter((b.line.told.piece, b.stitch) for b in begun if _is_uncounted_one(b))
    general = reading.lexicon.chain_counts
    for each in said:
        if general.get(each.chains, each.act.counts) != each.act.counts:
            yield _against_notes(reading, each)
            continue
        key = (each.line.told.piece, each.chains, each.stitch)
        same, other = groups[*key, each.act.counts], groups[*key, not each.act.counts]
        if each.chains == 1 and each.act.counts:
            other += unsaid[each.line.told.piece, each.stitch]
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


def _is_uncounted_one(begun: Begun) -> bool:
    """A single chain of which nothing is said, and that was worked as no stitch."""
    return begun.chains == 1 and begun.act.counts is None and not begun.counts


def _against_notes(reading: Reading, each: Begun) -> Finding:
    here = "counts" if each.act.counts else "does not count"
    there = "it does not" if each.act.counts else "it counts"
    texts = (
        f"the chain of {each.chains} {here}",
        f"{there}, as is said for the whole pattern",
        f"{each.line.name} says that its chain of {each.chains} {here} as a stitch, and the pattern "
        f"says that {there} throughout: the number may be wrong, or say it anew.",
    )
    return finding("turning-chain", reading, each.line, each.act.span, texts, "possible")


def _skipped(reading: Reading) -> Iterator[tuple[int, int, str, bool | None]]:
    """What is said of the chains that a first row skips: "dc in 4th ch from hook (counts as dc)"."""
    for line in lines_of(reading):
        for act in line.told.said.acts[:2]:
            if isinstance(act, Into) and act.target.what == "from_hook" and act.body:
                stitch = base_of(_first_stitch(act.body, reading))
                yield line.told.piece, act.target.nth - 1, stitch, act.target.counts


def begun_rows(reading: Reading) -> tuple[Begun, ...]:
    """Every row that begins with a chain of one length and a stitch that is known."""
    return tuple(each for line in lines_of(reading) if (each := begun_with(line, reading)))


def begun_with(line: Line, reading: Reading) -> Begun | None:
    """How a row begins, when it is with a chain of one length and a stitch that is known."""
    if line.told.label is None:
        return None
    acts = [a for a in line.told.said.acts if not isinstance(a, Turn | Aside | Skip | Join | Ring)]
    while acts and _slips(acts[0]):
        acts = acts[1:]
    if len(acts) < 2 or not isinstance(acts[0], Chain) or _is_foundation(line, acts):
        return None
    chain = acts[0]
    if chain.times.values[0] == 1 and isinstance(acts[1], Repeat) and _begins_with_skip(acts[1]):
        return None  # it only leads up: the first place is passed over
    length = chain.times.values[0]
    stitch = base_of(chain.counts_as or _first_stitch(acts[1:], reading))
    if not stitch and isinstance(acts[1], Evenly | Increase) and line.works:
        stitch = base_of(
            line.works[0].stitch
        )  # "inc 42 sts evenly": in the stitch of the rows before
    known = reading.lexicon.stitches.get(stitch)
    if known is None or known.kind != "stitch" or not known.turning_chain:
        return None
    if len(set(chain.times.values)) > 1 or length > LONGEST:
        return None
    counts = chain.counts
    if counts is None:
        counts = bool(line.works) and line.works[0].turning[1]
    lofty = length > known.turning_chain and chain.counts is not False
    space = chain.space or (_space(acts[1:], length - known.turning_chain) if lofty else 0)
    return Begun(line, chain, length - space, stitch, counts, known.turning_chain)


def _begins_with_skip(repeat: Repeat) -> bool:
    return bool(repeat.body) and isinstance(repeat.body[0], Skip)


def _is_foundation(line: Line, acts: Sequence[Act]) -> bool:
    """A chain that the row is worked into, "ch 4, 11 dc in 4th ch from hook", or a ring of it."""
    after = acts[1]
    if isinstance(after, Into) and after.target.what == "from_hook":
        return True
    whole = line.told.said.acts
    place = whole.index(acts[0])
    return any(isinstance(a, Join) and a.to == "ring" for a in whole[place + 1 : place + 2])


@lru_cache(maxsize=1024)
def base_of(stitch: str) -> str:
    """The stitch itself, whichever loop it is worked into."""
    for end in _LOOPS:
        stitch = stitch.removesuffix(end)
    return stitch


def _slips(act: Act) -> bool:
    """Slip stitches that bring the yarn to where the row begins."""
    if isinstance(act, Bare):
        return act.stitch == "slip_stitch"
    return isinstance(act, Into) and bool(act.body) and all(_slips(each) for each in act.body)


def _first_stitch(acts: Sequence[Act], reading: Reading) -> str:
    """The stitch that follows the chain; "" where another chain does."""
    for act in acts:
        match act:
            case Bare(stitch=stitch) if stitch in reading.lexicon.own:
                return _first_stitch(reading.lexicon.own[stitch].body, reading)
            case Bare() | Together() | Increase() | Evenly():
                return act.stitch
            case Into(body=body) | Repeat(body=body):
                return _first_stitch(body, reading)
            case Met(parts=parts):
                return _first_stitch(parts[0].body, reading)
            case Skip() | Aside():
                continue
            case _:
                return ""
    return ""


def _space(acts: Sequence[Act], over: int) -> int:
    """The chains between the stitches of the row, where they are all alike, or where some are as
    many as there are over what the stitch is tall."""
    lengths = {a.times.values[0] for a in all_acts(acts) if isinstance(a, Chain)}
    if over in lengths:
        return over
    return lengths.pop() if len(lengths) == 1 else 0


def other_lengths(reading: Reading) -> Iterator[Finding]:
    """Chains of a length that the other rows of the stitch do not have, or that suit no such stitch."""
    begun = begun_rows(reading)
    habits = _habits(reading, begun)
    for each in begun:
        if speaks_otherwise(reading, each.line) or _is_bar(each) or _is_before_decrease(each):
            continue
        others = _others(each, habits)
        if others[each.chains]:
            yield from _only_as_skipped(reading, each, habits)
            continue
        usual, often = others.most_common(1)[0] if others else (0, 0)
        general = reading.lexicon.chain_counts
        if each.chains in general and usual not in general and _suits(each):
            continue  # the notes speak of chains of this length: the others are odd
        if often and (each.act.space or each.act.times.values[0] != usual):
            surer = often >= HABIT and often * 2 > sum(others.values())
            farther = abs(each.chains - each.tall) > abs(usual - each.tall)
            other = farther or _only_unlike(each, habits)
            # The chains that a first row skips may be more than those of other rows.
            skipped_only = _suits(each) and habits.rows[each.stitch] == 1
            if surer or (other and not skipped_only):
                yield _unlike(reading, each, usual, often, "likely" if surer else "possible")
                continue
        if not often and not (_suits(each) and not _is_low(reading, each)):
            yield _unsuited(reading, each)


@dataclass(frozen=True, slots=True, eq=False)
class _Habits:
    """How rows begin, counted once.

    Args:
        lengths: by stitch, how often a chain of a length begins a row, and whether it counts; those
            that a first row skips among them, which are in `skipped` as well.
        rows: by stitch, how many rows begin with a chain.
        pieces: by piece and stitch, and whether the chain counts, how many rows.
    """

    lengths: Mapping[str, Counter[tuple[int, bool]]]
    skipped: Mapping[str, Counter[tuple[int, bool]]]
    rows: Counter[str]
    pieces: Counter[tuple[int, str, bool]]


def _habits(reading: Reading, begun: Sequence[Begun]) -> _Habits:
    lengths: dict[str, Counter[tuple[int, bool]]] = {}
    for each in begun:
        if not _is_bar(each):
            lengths.setdefault(each.stitch, Counter())[each.chains, each.counts] += 1
    skipped: dict[str, Counter[tuple[int, bool]]] = {}
    for stitch, length, counts in _skipped_at_foundation(reading):
        lengths.setdefault(stitch, Counter())[length, counts] += 1
        skipped.setdefault(stitch, Counter())[length, counts] += 1
    rows = Counter(each.stitch for each in begun)
    pieces = Counter((each.line.told.piece, each.stitch, each.counts) for each in begun)
    return _Habits(lengths, skipped, rows, pieces)


def _is_bar(each: Begun) -> bool:
    """A long chain that nobody says to count, before a low stitch: a bar of the lace."""
    return each.act.counts is None and each.chains > each.tall + 1


def _is_before_decrease(each: Begun) -> bool:
    """A chain that counts as no stitch, and two closed together after it: often a lower one."""
    acts = [a for a in each.line.told.said.acts if not isinstance(a, Turn | Aside | Skip | Join)]
    after = acts[acts.index(each.act) + 1 :] if each.act in acts else []
    return each.act.counts is False and bool(after) and isinstance(after[0], Together)


def _only_as_skipped(reading: Reading, each: Begun, habits: _Habits) -> Iterator[Finding]:
    """A chain as long as those that a first row skips, where all other rows begin with another.

    What a first row skips suits its foundation; it makes no second habit.
    """
    others = _others(each, habits, skipped=False)
    if not others or others[each.chains] or len(others) > 1:
        return
    ((usual, often),) = others.items()
    if often >= HABIT or usual in reading.lexicon.chain_counts:
        yield _unlike(reading, each, usual, often, "possible")


def _others(each: Begun, habits: _Habits, *, skipped: bool = True) -> Counter[int]:
    """The lengths in other rows of that stitch; of those that count alike, where there are any.

    Args:
        skipped: those that a first row skips are among them.
    """
    there = Counter(habits.lengths[each.stitch])
    there[each.chains, each.counts] -= 1
    if not skipped:
        there -= habits.skipped.get(each.stitch, Counter())
    alike, all_lengths = Counter[int](), Counter[int]()
    for (length, counts), often in (+there).items():
        all_lengths[length] += often
        if counts == each.counts:
            alike[length] += often
    return alike or all_lengths


def _only_unlike(each: Begun, habits: _Habits) -> bool:
    """Two rows of the stitch in a piece that begin unlike, and no third one."""
    piece = each.line.told.piece
    alike = habits.pieces[piece, each.stitch, each.counts]
    return alike == 2 and not habits.pieces[piece, each.stitch, not each.counts]


def _skipped_at_foundation(reading: Reading) -> Iterator[tuple[str, int, bool]]:
    """Stitch and chains of first rows that skip some: "dc in 4th ch from hook"."""
    for line in lines_of(reading):
        for act in line.told.said.acts[:2]:
            if isinstance(act, Into) and act.target.what == "from_hook" and act.target.nth > 1:
                counted = line.works[0].turning[1] if line.works else False
                stitch, skipped = base_of(_first_stitch(act.body, reading)), act.target.nth - 1
                known = reading.lexicon.stitches.get(stitch)
                if known is not None and skipped <= known.turning_chain + 1:
                    yield stitch, skipped, counted


def _suits(each: Begun) -> bool:
    if each.counts and each.act.counts:
        return each.chains == each.tall
    lowest = 1 if each.tall < 4 else each.tall - 1
    # Around a post a stitch stands lower than it is tall: the chain of either is right.
    post = int(each.stitch.startswith(("front_post_", "back_post_")))
    return lowest <= each.chains <= each.tall + post


def _is_low(reading: Reading, each: Begun) -> bool:
    """One chain before a double crochet or taller, of which the pattern says nothing."""
    low = each.chains == 1 and each.tall >= TALL and each.act.counts is None
    return low and "cluster" not in each.stitch  # a cluster hides the low chain before it


def _unlike(reading: Reading, each: Begun, usual: int, often: int, certainty: Certainty) -> Finding:
    name = named(each.stitch, reading)
    rows = "another row" if often == 1 else f"{often} other rows"
    texts = (
        f"ch {each.chains}",
        f"ch {usual} in {rows}",
        f"{each.line.name} begins with a chain of {each.chains} before {name}; {rows} of {name} "
        f"begin{'s' if often == 1 else ''} with {usual}.",
    )
    return finding("turning-chain", reading, each.line, each.act.span, texts, certainty)


def _unsuited(reading: Reading, each: Begun) -> Finding:
    name = named(each.stitch, reading)
    texts = (
        f"ch {each.chains} before {name}",
        f"{name} is as tall as a chain of {each.tall}",
        f"A chain of {each.chains} does not suit {name}, which is as tall as {each.tall}: "
        "the chain or the stitch may be another.",
    )
    return finding("turning-chain", reading, each.line, each.act.span, texts, "possible")
