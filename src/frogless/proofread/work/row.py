"""One row worked over one edge: what it uses, what it leaves, and what is wrong with that."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Increase,
    Into,
    Join,
    Repeat,
    Ring,
    Skip,
    Together,
    Unclear,
)
from frogless.proofread.work.acts import (
    QUIET,
    begins_with_slips,
    every,
    first_stitch,
    is_strand,
    says,
    targets,
)
from frogless.proofread.work.at_work import finish, work
from frogless.proofread.work.edge import (
    MOST_RUNS,
    NOTHING,
    RING,
    UNKNOWN,
    Edge,
    Place,
    Run,
    has_spaces,
    main_stitch,
    merged,
)
from frogless.proofread.work.foot import LONGEST_TURN, begin
from frogless.proofread.work.hand import TooLongError
from frogless.proofread.work.model import Problem
from frogless.proofread.work.trade import TALL, Trade
from frogless.proofread.work.ways import ChainKey, Counts, RowWay, Ways
from frogless.proofread.work.worker import Worker, hand_over

_AS_IT_STANDS = RowWay()
#: So many places are not left over by a slip (own choice).
_MUCH_LEFT = 4
#: A row over a quarter of the stitches and less is a strap or a tab.
_STRAP = 3


@dataclass(frozen=True, slots=True)
class Row:
    """A row as it is to be worked in one size.

    Args:
        lift: the chain at the end of the row below that lifts the work to this row.
        told_counts: what the pattern says of its turning chains, by number of chains; 0: of all.
        closed: it is a round.
        afresh: a round for which the yarn was joined anew, in any place of it.
        partial: it may be worked over a part of the row below: a strap in rows upon rounds.
    """

    acts: tuple[Act, ...]
    span: Span
    size: int
    sizes: int
    lift: Chain | None = None
    told_counts: tuple[tuple[int, bool], ...] = ()
    closed: bool = False
    partial: bool = False
    afresh: bool = False


@dataclass(frozen=True, slots=True)
class Outcome:
    """What a row comes to over an edge.

    Args:
        edge: what it leaves; not known where that depends on an edge that is not known.
        rest: places of the row below that it leaves for later.
        stitches: made, all together, with a turning chain that counts.
        apart: stitches by key that are no part of a group.
        laid: chains of a foundation, when the row is nothing else.
        stands_for: the stitch that the turning chain is said to count as; "".
        halved: a group in one place is begun with the row's first chain and finished at its end.
        effort: acts that were worked, and places that were looked at.
    """

    edge: Edge
    rest: tuple[Run, ...] = ()
    uses: int | None = None
    has: int | None = None
    stitches: int | None = None
    spaces: int = 0
    chains: int = 0
    groups: int = 0
    apart: Mapping[str, int] = field(default_factory=dict)
    slipped: int = 0
    made: Mapping[str, int] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    turning: tuple[int, bool] = (0, False)
    stands_for: str = ""
    stitch: str = ""
    unclear: bool = False
    outside: bool = False
    laid: bool = False
    halved: bool = False
    way: RowWay = _AS_IT_STANDS
    effort: int = 1


def asked_counts(row: Row, trade: Trade, ways: Ways) -> tuple[tuple[ChainKey, Counts], ...]:
    """How the turning chains are read that the row may begin with."""
    said = dict(row.told_counts)
    found: list[tuple[ChainKey, Counts]] = []
    for key in chain_keys(row, trade):
        chains, stitch = key
        told = said.get(chains, said.get(0) if chains > 1 else None)
        tall = trade.turning_chain(stitch)
        if told is None:
            found.append((key, dict(ways.counts).get(key, custom(key, trade))))
        elif told and tall and chains > tall:
            # Nobody lifts a double crochet with 4 chains for itself; 3 before a half double are usual.
            usual: Counts = "space" if tall >= TALL else "yes"
            found.append((key, dict(ways.counts).get(key, usual)))
        else:
            found.append((key, "yes" if told else "no"))
    return tuple(found)


def custom(key: ChainKey, trade: Trade) -> Counts:
    """What a turning chain is by the custom of the trade."""
    chains, stitch = key
    if not trade.usually_counts(chains, stitch):
        return "no"
    return "space" if chains > trade.turning_chain(stitch) > 0 else "yes"


def chain_keys(row: Row, trade: Trade) -> tuple[ChainKey, ...]:
    """The turning chains that a row may begin with, each with the stitch it stands before."""
    stitch = first_stitch(row.acts, trade)
    lengths: list[int] = []
    begins = [act for act in row.acts if isinstance(act, Chain)][:2]
    for chain in ([row.lift] if row.lift else []) + begins:
        lengths.append(chain.times.of(row.size, row.sizes) or 0)
    for target in targets(row.acts):
        if target.what == "from_hook" and target.nth > 1:
            lengths.append(target.nth - 1)
    return tuple(dict.fromkeys((n, stitch) for n in lengths if n))


def first_way(row: Row, trade: Trade, ways: Ways) -> RowWay:
    """The way in which a row is read before anything speaks for another one."""
    way = RowWay(asked_counts(row, trade, ways))
    if any(isinstance(a, Bare) and a.times and not a.written_after for a in row.acts) or any(
        isinstance(a, Repeat) for a in row.acts
    ):
        way = way._replace(one=ways.one)
    if any(isinstance(a, Repeat) for a in every(row.acts)):
        way = way._replace(all_told=ways.all_told, in_one=ways.in_one)
    return way._replace(spaces="space") if says(row.acts, "spaces") else way


def other_ways(row: Row, edge: Edge, trade: Trade, way: RowWay) -> Iterator[RowWay]:
    """Other ways to read the row by itself."""
    named = spaces_named(row)
    if has_spaces(edge):
        if _takes_chains(row) or _is_net(row, trade):
            return
        if _takes_plain(row):
            yield way._replace(spaces="space")
            if not named:
                yield way._replace(spaces="each")
    if begins_with_slips(row.acts, trade):
        yield way._replace(next_foot=True)
        yield way._replace(led=False)


def _takes_chains(row: Row) -> bool:
    """Whether the row works into the chains of spaces one by one."""
    named = {target.what for target in targets(row.acts)}
    return "any" in named or ("chain" in named and not named & {"space", "corner"})


def _is_net(row: Row, trade: Trade) -> bool:
    """Whether the row is told in squares of a net, each over so many stitches or chains."""
    owns = (trade.body(act.stitch) for act in row.acts if isinstance(act, Bare))
    return any(own.takes > 1 and any(isinstance(a, Chain) for a in own.body) for own in owns if own)


def _takes_plain(row: Row) -> bool:
    for act in every(row.acts):
        if isinstance(act, Bare):
            return True
        target = getattr(act, "target", None)
        if target is not None and target.what in ("stitch", "chain") and not target.stitch:
            return True
        if isinstance(act, Increase | Together) and not act.target.stitch:
            return True
    return False


def spaces_named(row: Row) -> bool:
    """Whether the row works into spaces by name."""
    return any(target.what in ("space", "corner") for target in targets(row.acts))


def work_row(row: Row, edge: Edge, trade: Trade, way: RowWay) -> Outcome:
    """What the row comes to over the edge, read in one way."""
    if (
        has_spaces(edge)
        and (_takes_chains(row) or _is_net(row, trade))
        and not says(row.acts, "spaces")
    ):
        way = way._replace(spaces="each")
    if edge.begun == "nothing":
        edge = _first_edge(row, trade)
    chained = (t.what for t in targets(row.acts) if t.what == "from_hook" or t.which == "each")
    if (
        not edge.known
        and edge.begun != "piece"
        and any(what in ("from_hook", "chain") for what in chained)
    ):
        # It is worked into a chain, and nobody was understood to make one.
        return replace(_worked(row, edge, trade, way), unclear=True, outside=False)
    return _worked(row, edge, trade, way)


def _worked(row: Row, edge: Edge, trade: Trade, way: RowWay) -> Outcome:
    hand = hand_over(edge, trade, way, spaces_named=spaces_named(row))
    stitch = first_stitch(row.acts, trade) or main_stitch(edge)
    worker = Worker(trade, way, row.size, row.sizes, hand, work, row_stitch=stitch)
    try:
        begun = begin(worker, row.acts, row.lift)
        worker.work(row.acts[begun:])
        finish(worker)
        if len(out := merged(worker.out)) > MOST_RUNS:
            raise TooLongError
    except TooLongError:
        problem = Problem("too_long", row.span)
        return Outcome(UNKNOWN, problems=(problem,), unclear=True, effort=worker.steps)
    return _outcome(row, worker, way, out)


def _first_edge(row: Row, trade: Trade) -> Edge:
    """What a row that nothing lies under is worked into.

    Its own chain, a ring, nothing (foundation stitches), or else an edge that the text does not
    count: "Ch 3, dc in each st across" as the first row of a piece.
    """
    working = [act for act in row.acts if not isinstance(act, QUIET)]
    if len(working) <= 1 and all(isinstance(act, Chain) for act in working):
        return NOTHING
    if is_strand(row.acts, trade):
        return NOTHING
    if any(isinstance(act, Ring) for act in working):
        return NOTHING if isinstance(working[0], Ring) else RING
    named = {target.what for target in targets(row.acts)}
    if not isinstance(working[0], Chain):
        return _without_chain(row, named, trade)
    joined = next((i for i, act in enumerate(row.acts) if isinstance(act, Join)), len(row.acts))
    if "from_hook" in named or joined < row.acts.index(working[1]):
        return NOTHING
    if "ring" in named:
        return RING
    long = (working[0].times.of(row.size, row.sizes) or 0) > LONGEST_TURN
    return NOTHING if "chain" in named and long else UNKNOWN


def _without_chain(row: Row, named: Collection[str], trade: Trade) -> Edge:
    if "ring" in named:
        return RING
    takes = any(
        not (isinstance(act, Bare) and not trade.takes(act.stitch)) and not isinstance(act, QUIET)
        for act in every(row.acts)
    )
    return UNKNOWN if takes else NOTHING


def _outcome(row: Row, worker: Worker, way: RowWay, out: tuple[Run, ...]) -> Outcome:
    hand = worker.hand
    laid = not out and not worker.begun and hand.edge.begun in ("chain", "ring")
    laid = laid and (worker.laid > 0 or hand.edge.begun == "ring")
    runs = hand.runs if laid else out
    posts = sum(n for p, n in runs if p.kind == "stitch")
    known = hand.known and not worker.vague and not worker.into_ring and not laid
    problems, rest = _filled(row, worker, known)
    problems += _unlike_groups(row, worker) if known and not problems else ()
    unclear = any(isinstance(act, Unclear) for act in every(row.acts)) or worker.lost
    return Outcome(
        edge=hand.edge if laid else Edge(out, known=not worker.open),
        rest=rest,
        uses=hand.used + hand.over if known else None,
        has=hand.has() if known else None,
        stitches=None if worker.open else worker.laid if laid else posts,
        spaces=sum(n for p, n in runs if p.kind == "space"),
        chains=sum(n * p.chains for p, n in runs if p.kind == "space"),
        groups=sum(n for p, n in runs if p.ends & 1),
        slipped=sum(n for p, n in runs if p.stitch in worker.trade.slips),
        made=_made(runs, worker),
        apart=_apart(runs),
        problems=problems,
        turning=worker.turning,
        stands_for=worker.stands_for,
        stitch=_mostly(runs),
        unclear=unclear,
        outside=unclear and not worker.lost and _is_outside(row.acts),
        laid=laid,
        halved=worker.turning[1] and _is_halved(row.acts),
        way=way,
        effort=1 + worker.steps + (len(hand.runs) + len(worker.out)) // 2,
    )


def _mostly(runs: tuple[Run, ...]) -> str:
    return main_stitch(Edge(runs))


def _made(runs: tuple[Run, ...], worker: Worker) -> dict[str, int]:
    counts: Counter[str] = Counter()
    for place, count in runs:
        if place.kind == "stitch":
            counts[place.stitch] += count
        elif place.kind == "space":
            counts[f"ch-{place.chains} sp"] += count
        elif place.kind == "chain":
            counts["chain"] += count
    for key, count in worker.extras:
        counts[key] += count
    return dict(counts)


def _apart(runs: tuple[Run, ...]) -> dict[str, int]:
    counts: Counter[str] = Counter()
    for place, count in runs:
        if place.kind == "stitch" and not place.of:
            counts[place.stitch] += count
    return dict(counts)


def _filled(row: Row, worker: Worker, known: bool) -> tuple[tuple[Problem, ...], tuple[Run, ...]]:
    """What is wrong with how the row fills the row below; the places that it leaves for later."""
    hand = worker.hand
    problems = tuple(worker.problems)
    if not known or worker.into_ring or worker.lost:
        # how many lie under the row is not known, but how many of them it leaves is told
        return problems, ((Place("stitch"), worker.leave),) if worker.leave else ()
    if hand.edge.begun == "ring" or (not hand.runs and not hand.over):
        return problems, ()
    left = hand.has(hand.at)
    rest = hand.runs_from(hand.at)
    leave = left if worker.leave_rest else worker.leave
    if worker.leave_rest:
        return (*problems, *_over(row, worker)), rest
    told = {problem.kind for problem in problems}
    if hand.over or (leave and left < leave):
        short = _over(row, worker, leave - left if leave else 0)
        return (*problems, *(() if "no_place" in told else short)), rest
    made = sum(n for p, n in worker.out if p.kind == "stitch")
    strap = row.partial or left >= _STRAP * made > 0
    if leave == 0 and not told and strap and left >= _MUCH_LEFT and _is_counted(row.acts):
        return problems, rest
    if left > leave and not told and not (leave == 0 and _spans(row, worker, left)):
        remaining = {p for p, _ in rest if hand.weight(p)}
        if leave or not remaining <= hand.passed:
            uses = hand.used + leave
            return (Problem("too_few", row.span, uses=uses, has=hand.has()),), rest
    return problems, rest if leave else ()


def _is_counted(acts: Sequence[Act]) -> bool:
    """Whether acts say of all places how many they are: "ch 1, sc in next 6 sts, turn"."""
    extents = (getattr(act, "extent", None) for act in every(acts))
    return all(extent is None or extent.kind == "times" for extent in extents)


def _spans(row: Row, worker: Worker, left: int) -> bool:
    """Whether the last chain loop of a round reaches over the last places to the join.

    As many are passed over there as under the other loops, and nobody says it of the last.
    """
    joined = any(isinstance(act, Join) and act.to != "none" for act in row.acts)
    if not joined or not worker.out or worker.out[-1][0].kind != "space":
        return False
    if any(isinstance(act, Skip) for act in _last_worked(row.acts)):
        return False  # "ch 6, sk 52": what the last loop reaches over is said
    skips = (act.times for act in every(row.acts) if isinstance(act, Skip))
    return left in {worker.number(times) for times in skips}


def _unlike_groups(row: Row, worker: Worker) -> tuple[Problem, ...]:
    """Groups that are worked into once each, one of them at another place than the others."""
    places = [entered[0] for entered in worker.entered.values() if len(entered) == 1]
    if len(places) < len(worker.entered) or len(set(places)) != 2:
        return ()
    one, other = places[0], next(place for place in places if place != places[0])
    return (Problem("passed", row.span, says=one, works=other),)


def _last_worked(acts: Sequence[Act]) -> list[Act]:
    """The act that a row works last, on every level of its repeats."""
    last = next((act for act in reversed(acts) if not isinstance(act, QUIET)), None)
    if last is None:
        return []
    return [last, *(_last_worked(last.body) if isinstance(last, Repeat) else [])]


def _over(row: Row, worker: Worker, lacks: int = 0) -> tuple[Problem, ...]:
    hand = worker.hand
    over = hand.over + max(lacks, 0)
    passed = worker.travelled
    if row.afresh and hand.edge.runs and hand.edge.runs[0][0].kind == "stitch":
        passed += hand.edge.runs[0][1]  # begun in any space, it ends with the stitches before it
    if row.closed and over <= passed:
        return ()  # a round ends with the places that its slip stitches passed
    if not over:
        return ()
    hooked = any(target.what == "from_hook" for target in targets(row.acts))
    if (
        hooked
        and (row.closed or _goes_around(row))
        and hand.edge.begun == "chain"
        and over <= hand.has()
    ):
        return ()  # worked on along the other side of the foundation chain
    return (Problem("too_many", row.span, uses=hand.used + over, has=hand.has()),)


def _goes_around(row: Row) -> bool:
    """Whether more is worked after the last chain: along the other side."""
    lasts = [
        index
        for index, act in enumerate(row.acts)
        if isinstance(act, Into) and act.target.what == "chain" and act.target.which == "last"
    ]
    return bool(lasts) and any(
        isinstance(act, Into | Bare | Increase | Repeat) for act in row.acts[lasts[0] + 1 :]
    )


def _is_halved(acts: Sequence[Act]) -> bool:
    """ "Ch 3, 3 dc in same st, …, 3 dc in same st as beginning ch-3"."""
    works = [act for act in acts if not isinstance(act, (*QUIET, Chain))]
    ends = (works[0], works[-1]) if len(works) > 2 else ()
    return len(ends) == 2 and all(
        isinstance(act, Into) and act.target.what == "same" for act in ends
    )


def _is_outside(acts: tuple[Act, ...]) -> bool:
    """Whether all that is unclear stands before the first or after the last act that works.

    A remark that was not understood leaves the row as it is when all else in it comes out; between
    two acts it may be a part of the work.
    """
    clear = [not isinstance(act, Unclear) for act in acts]
    inner = any(
        isinstance(a, Unclear)
        for act in acts
        if not isinstance(act, Unclear)
        for a in every((act,))
    )
    works = [i for i, act in enumerate(acts) if not isinstance(act, QUIET)]
    if inner or not works:
        return False
    return all(clear[works[0] : works[-1] + 1])
