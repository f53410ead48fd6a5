"""The count that a row states, held against what it makes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Literal, NamedTuple

from frogless.proofread.words.model import Stated
from frogless.proofread.work.model import Problem
from frogless.proofread.work.opening import opening_groups
from frogless.proofread.work.row import Outcome
from frogless.proofread.work.trade import Trade
from frogless.proofread.work.worker import BUNCH

#: What a pattern counts when it says "sts": stitches alone, chain spaces as well, each of their
#: chains as well, or groups as one each.
Mode = Literal["stitches", "spaces", "chains", "groups"]


class Verdict(NamedTuple):
    """The numbers of a row and what is wrong with them.

    Args:
        total: the stitches that the row should leave by what it states; None.
    """

    stated: int | None
    worked: int | None
    total: int | None
    problems: tuple[Problem, ...] = ()


def judge(
    outcome: Outcome,
    stated: Sequence[Stated],
    below: int | None,
    trade: Trade,
    size: int,
    sizes: int,
    mode: Mode = "stitches",
) -> Verdict:
    """What the row states beside what it makes.

    Args:
        below: stitches of the row below, counted the same way; None when not known.
    """
    made = _made(outcome, mode)
    read: list[tuple[Stated, int]] = []
    broken: list[Problem] = []
    for each in stated:
        number = each.count.of(size, sizes)
        if number is None:
            broken.append(
                Problem("brackets", each.count.span, says=len(each.count.values), works=sizes)
            )
        else:
            read.append((each, number))
    counts = [(each, number) for each, number in read if not each.change]
    found = _counts(outcome, counts, made, trade)
    changes = [(each, number) for each, number in read if each.change]
    wrong = _changes(changes, made, below, found)
    return found._replace(problems=(*broken, *found.problems, *wrong))


def _made(outcome: Outcome, mode: Mode) -> int | None:
    if outcome.stitches is None or outcome.laid:
        return outcome.stitches
    match mode:
        case "spaces":
            return outcome.stitches + outcome.spaces
        case "chains":
            return outcome.stitches + outcome.chains
        case "groups":
            return outcome.groups or outcome.stitches
        case _:
            return outcome.stitches


def _counts(
    outcome: Outcome, counts: list[tuple[Stated, int]], made: int | None, trade: Trade
) -> Verdict:
    totals = [(e, n) for e, n in counts if e.what in ("stitch", "any") and not e.stitch]
    kinds = [(e, n) for e, n in counts if e.stitch or e.what not in ("stitch", "any")]
    named = [(e, n) for e, n in kinds if e.what == "stitch" and not trade.is_group(e.stitch)]
    if not counts:
        return Verdict(None, made, None)
    if totals:
        return _of_total(outcome, totals, kinds, made, trade)
    groups = [(e, n) for e, n in kinds if e.what == "group" or trade.is_group(e.stitch)]
    groups = [(e, n) for e, n in groups if not e.stitch or trade.is_group(e.stitch)]
    if groups:
        return _of_groups(outcome, named, groups, kinds, trade)
    if named:
        return _of_kinds(outcome, named, kinds, made, trade)
    first, number = kinds[0]
    works = _kind_made(outcome, first, trade)
    return Verdict(
        number, works, number if outcome.laid else None, _wrong_kinds(outcome, kinds, trade)
    )


def _of_total(
    outcome: Outcome,
    totals: list[tuple[Stated, int]],
    kinds: list[tuple[Stated, int]],
    made: int | None,
    trade: Trade,
) -> Verdict:
    stated, number = totals[0]
    if stated.what == "any" and outcome.stitches is not None:
        made = outcome.stitches + outcome.chains
    for each, other in totals:
        if made is not None and other in (made, _without_slips(outcome, made)):
            stated, number, made = each, other, other
            break
    total = number if stated.what == "stitch" else None
    if made is None:
        return Verdict(number, None, total)
    if made != number:
        wrong = Problem("count", stated.span, says=number, works=made)
        return Verdict(number, made, total, (wrong,))
    return Verdict(number, made, total, _wrong_kinds(outcome, kinds, trade))


def _of_groups(
    outcome: Outcome,
    named: list[tuple[Stated, int]],
    groups: list[tuple[Stated, int]],
    kinds: list[tuple[Stated, int]],
    trade: Trade,
) -> Verdict:
    """ "30 V-sts, 2 dc": the double crochets of the V-stitches are not counted again."""
    says = sum(number for _, number in (*named, *groups))
    if outcome.stitches is None:
        return Verdict(says, None, None)
    apart = replace(outcome, made={**outcome.made, **_zeroed(outcome.made, trade), **outcome.apart})
    whole = [(e, n) for e, n in named if _of_base(outcome.made, e.stitch, trade) == n]
    rest = [(e, n) for e, n in kinds if (e, n) not in whole]
    wrong = _wrong_kinds(apart, rest, trade)
    works = says + sum((p.works or 0) - (p.says or 0) for p in wrong if _is_counted(p, trade))
    return Verdict(says, works, None, wrong)


def _zeroed(made: Mapping[str, int], trade: Trade) -> dict[str, int]:
    return dict.fromkeys((key for key in made if _is_post(key, trade)), 0)


def _is_counted(problem: Problem, trade: Trade) -> bool:
    return not problem.what.startswith("ch") and bool(trade.leaves(problem.what))


def _without_slips(outcome: Outcome, made: int) -> int:
    """A slip stitch that ends a row or lies between groups is often not counted."""
    rest = made - outcome.slipped
    return rest if rest > 0 else made


def _of_kinds(
    outcome: Outcome,
    named: list[tuple[Stated, int]],
    kinds: list[tuple[Stated, int]],
    made: int | None,
    trade: Trade,
) -> Verdict:
    says = sum(number for _, number in named)
    if outcome.stitches is None or made is None:
        # beads and picots are counted with the rest, and nothing is worked into them
        places = sum(number for stated, number in named if _is_post(stated.stitch, trade))
        return Verdict(says, None, places)
    wrong = _wrong_kinds(outcome, kinds, trade)
    apart = _apart(kinds, trade)
    each = [_kind_made(outcome, stated, trade, apart) for stated, _ in named]
    works = sum(number for number in each if number is not None)
    bases = {trade.base(stated.stitch) for stated, _ in named}
    others = sum(
        n
        for key, n in outcome.made.items()
        if _is_post(key, trade) and trade.base(key) not in bases
    )
    whole = works + (0 if works == says else _unnamed(others, outcome, trade))
    total = says + (others if works == says else 0)
    wrong_named = [p for p in wrong if any(p.span == stated.span for stated, _ in named)]
    if not wrong_named or whole == says:
        return Verdict(says, says if whole == says else works, total, wrong)
    first = wrong_named[0]
    if len(named) == 1:
        first = Problem("count", first.span, says=says, works=whole if others else works)
        return Verdict(
            says, first.works, total, (first, *(p for p in wrong if p not in wrong_named))
        )
    return Verdict(
        says, works, total, (Problem("count", first.span, says=says, works=works), *wrong)
    )


def _unnamed(others: int, outcome: Outcome, trade: Trade) -> int:
    """Stitches of kinds that are not stated, slip stitches apart."""
    slips = sum(n for key, n in outcome.made.items() if key in trade.slips)
    return others - slips


def _is_post(key: str, trade: Trade) -> bool:
    if key.startswith("ch-") or key in ("chain", BUNCH) or trade.is_group(key):
        return False
    return bool(trade.leaves(key))


def _wrong_kinds(
    outcome: Outcome, kinds: list[tuple[Stated, int]], trade: Trade
) -> tuple[Problem, ...]:
    wrong = []
    apart = _apart(kinds, trade)
    for stated, number in kinds:
        works = _kind_made(outcome, stated, trade, apart)
        if works is not None and works != number:
            what = _called(stated)
            wrong.append(Problem("count_kind", stated.span, says=number, works=works, what=what))
    more = sorted((each.works or 0) - (each.says or 0) for each in wrong)
    posts = all(_is_post(each.what, trade) for each in wrong)
    if outcome.turning[1] and not outcome.stands_for and more == [-1, 1] and posts:
        return ()  # the turning chain stands for the other of the two stitches
    return tuple(wrong)


def _called(stated: Stated) -> str:
    if stated.what == "space":
        return f"ch-{stated.chains} sp" if stated.chains else "ch sp"
    return stated.stitch or stated.what


def _apart(kinds: Sequence[tuple[Stated, int]], trade: Trade) -> frozenset[str]:
    """Stitches that are told apart though they are one but for their place: "6 dc, 6 dc blo"."""
    told = {each.stitch for each, _ in kinds if each.stitch}
    bases = Counter(trade.base(key) for key in told)
    return frozenset(key for key in told if bases[trade.base(key)] > 1)


def _kind_made(
    outcome: Outcome, stated: Stated, trade: Trade, apart: frozenset[str] = frozenset()
) -> int | None:
    """How many of a kind the row makes; None when that is not known.

    Args:
        apart: those that others of the count are like, each counted by its own name.
    """
    if outcome.stitches is None:
        return None
    made = outcome.made
    match stated.what:
        case "space":
            if not stated.chains:
                return outcome.spaces or made.get("picot", 0)
            return made.get(f"ch-{stated.chains} sp", 0)
        case "chain":
            return outcome.stitches if outcome.laid else outcome.chains
        case _ if stated.stitch and not _is_post(stated.stitch, trade):
            # A group that the row does not call by its name: as many as it makes of any.
            named = made.get(stated.stitch)
            if named is not None:
                return named + opening_groups(outcome, stated.stitch, trade)
            return (made.get(BUNCH, outcome.groups) or 0) - int(outcome.halved)
        case _ if stated.stitch in apart and stated.stitch != trade.base(stated.stitch):
            return made.get(stated.stitch, 0)
        case _ if stated.stitch in apart:
            # the plain one is all that no other word of the count names
            alike = (k for k in apart if trade.base(k) == stated.stitch != k)
            return _of_base(made, stated.stitch, trade) - sum(made.get(k, 0) for k in alike)
        case _ if stated.stitch:
            return _of_base(made, stated.stitch, trade)
        case "group":
            return outcome.groups or made.get(BUNCH)
        case _:
            return outcome.stitches


def _of_base(made: Mapping[str, int], stitch: str, trade: Trade) -> int:
    base = trade.base(stitch)
    return sum(n for key, n in made.items() if _is_post(key, trade) and trade.base(key) == base)


def _changes(
    changes: list[tuple[Stated, int]], made: int | None, below: int | None, found: Verdict
) -> tuple[Problem, ...]:
    if made is None or below is None or found.problems:
        return ()
    wrong = []
    for stated, number in changes:
        works = made - below
        if works != number and abs(works) != number:
            wrong.append(Problem("change", stated.span, says=number, works=works))
    return tuple(wrong)
