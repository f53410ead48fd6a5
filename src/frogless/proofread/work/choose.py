"""Which way a pattern is read where its words leave it open."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from frogless.proofread.script.model import Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Act, Bare, Chain, Repeat
from frogless.proofread.work.acts import every
from frogless.proofread.work.bench import Bench
from frogless.proofread.work.counts import Mode
from frogless.proofread.work.course import Course, Run
from frogless.proofread.work.model import Assumption, Told
from frogless.proofread.work.row import Row, chain_keys, custom
from frogless.proofread.work.standing import Standing, rows_of
from frogless.proofread.work.steps import steps_of
from frogless.proofread.work.trade import Trade
from frogless.proofread.work.turning import chains_told
from frogless.proofread.work.ways import ChainKey, Counts, Ways

#: Steps of a pattern by which its readings are chosen; the rest of a longer one is read like them.
_ENOUGH = 600
#: Rows that are worked of a pattern, in one size and in all sizes together.
_MOST_ROWS, _MOST_ROWS_IN_ALL = 20_000, 60_000
#: Doubts in which the custom's reading is taken wherever it comes out.
_BY_CUSTOM = frozenset({"chain", "mode", "all_told"})
#: Turning chains of which a pattern has more kinds are read by custom.
_MOST_KEYS = 6
_LEAST = 1e-6


@dataclass(frozen=True, slots=True)
class Choice:
    """A pattern worked in every size, in the way of reading it that was chosen.

    Args:
        cut: more rows are asked for than are worked.
        spent: there is so much to be worked that the last rows were not.
    """

    standings: tuple[Standing, ...]
    assumptions: tuple[Assumption, ...] = ()
    cut: bool = False
    spent: bool = False


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something that may be read in several ways.

    Args:
        options: the custom's first.
        span: where it stands for the first time.
    """

    name: str
    options: tuple[object, ...]
    span: Span
    key: ChainKey = (0, "")


Picks = dict[Doubt, object]


def chosen(told: Sequence[Told], lexicon: Lexicon, sizes: int) -> Choice:
    """The pattern read in the way in which the fewest of its rows go wrong."""
    chooser = _Chooser(told, lexicon, sizes)
    return chooser.choice()


def most_rows(sizes: int) -> int:
    """Rows that are worked in each size."""
    return min(_MOST_ROWS, _MOST_ROWS_IN_ALL // max(sizes, 1))


class _Chooser:
    def __init__(self, told: Sequence[Told], lexicon: Lexicon, sizes: int) -> None:
        self.told = told
        self.trade = Trade(lexicon)
        self.sizes = sizes
        self.bench = Bench(self.trade, len(told))
        self.chains = chains_told(told, lexicon.chain_counts)
        self.cut = False
        self.courses = [self._course(size) for size in range(sizes)]

    def _course(self, size: int) -> Course:
        most = most_rows(self.sizes)
        steps, cut = steps_of(self.told, self.bench, self.chains, size, self.sizes, most)
        self.cut = self.cut or cut
        return Course(steps, self.bench, size, self.sizes)

    def choice(self) -> Choice:
        """Each doubt tried both ways, the others as they are."""
        doubts = self._doubts()
        picks = {doubt: doubt.options[0] for doubt in doubts}
        runs = self._runs(picks)
        settled: dict[Doubt, float] = {}
        for doubt in doubts:
            cost = _cost(runs)
            if self.bench.is_tired or (cost < 1 and doubt.name in _BY_CUSTOM):
                continue  # nothing goes wrong by the custom's reading
            costs = {picks[doubt]: cost}
            for option in doubt.options[1:]:
                most = min(costs.values())
                costs[option] = self._otherwise(runs, {**picks, doubt: option}, most + _LEAST)
            best = min(costs, key=lambda option: round(costs[option], 6))
            if best != picks[doubt]:
                picks[doubt] = best
                runs = self._runs(picks)
            settled[doubt] = min(cost for option, cost in costs.items() if option != best)
        standings = self._ends(runs, picks)
        cost = _cost(runs)
        said = tuple(self._said(doubt, picks[doubt], cost, settled, standings) for doubt in doubts)
        assumptions = [each for each in said if each is not None]
        if self.bench.is_spent:
            assumptions.append(Assumption(_SPENT))
        elif self.bench.is_tired:
            assumptions.append(Assumption(_TIRED))
        return Choice(standings, tuple(assumptions), self.cut, self.bench.is_spent)

    def _runs(self, picks: Picks) -> dict[int, Run]:
        """The first rows of the pattern, in the sizes by which its readings are chosen."""
        ways, mode = _ways(picks)
        some = {0, self.sizes // 2, self.sizes - 1}
        return {size: self._run(self.courses[size], ways, mode) for size in sorted(some)}

    def _run(self, course: Course, ways: Ways, mode: Mode) -> Run:
        return course.run(ways, mode, min(len(course.steps), _ENOUGH))

    def _otherwise(self, runs: dict[int, Run], picks: Picks, bound: float) -> float:
        """What is wrong in another reading, or that it is more than `bound`."""
        ways, mode = _ways(picks)
        cost = 0.0
        for size, run in runs.items():
            cost += self.courses[size].otherwise(run, ways, mode, bound - cost)
            if cost > bound:
                break
        return cost

    def _ends(self, runs: dict[int, Run], picks: Picks) -> tuple[Standing, ...]:
        ways, mode = _ways(picks)
        return tuple(
            course.end(runs.get(size) or self._run(course, ways, mode))
            for size, course in enumerate(self.courses)
        )

    # -- what is doubtful

    def _doubts(self) -> list[Doubt]:
        found: dict[tuple[str, ChainKey], Doubt] = {}
        for index, told in enumerate(self.told):
            for doubt in self._of_row(index, told):
                found.setdefault((doubt.name, doubt.key), doubt)
        chains = [d for d in found.values() if d.name == "chain"][:_MOST_KEYS]
        return [*chains, *(d for d in found.values() if d.name != "chain")]

    def _of_row(self, index: int, told: Told) -> list[Doubt]:
        acts = told.said.acts
        found = self._of_chains(index, told)
        for act in every(acts):
            if isinstance(act, Repeat) and act.doubtful:
                found.append(Doubt("all_told", (False, True), act.span))
            if isinstance(act, Repeat) and act.in_place:
                found.append(Doubt("in_one", (False, True), act.span))
        found += [Doubt("one", (False, True), act.span) for act in _bare_many(acts, self.trade)]
        stated = [each for each in told.said.stated if each.what == "stitch" and not each.stitch]
        if stated and any(isinstance(act, Chain) for act in every(acts)):
            options: tuple[Mode, ...] = ("stitches", "spaces", "chains", "groups")
            found.append(Doubt("mode", options, stated[0].span))
        return found

    def _of_chains(self, index: int, told: Told) -> list[Doubt]:
        if told.label is None:
            return []
        known = dict(self.chains[index])
        row = Row(told.said.acts, told.span, 0, self.sizes)
        found = []
        for key in chain_keys(row, self.trade):
            chains, stitch = key
            if not stitch or chains < 2 or chains in known or 0 in known:
                continue
            first = custom(key, self.trade)
            tall = self.trade.turning_chain(stitch)
            others: tuple[Counts, ...] = (
                ("no", "yes", "space") if chains > tall > 0 else ("no", "yes")
            )
            options = (first, *(o for o in others if o != first))
            found.append(Doubt("chain", options, told.span, key))
        return found

    # -- what is told of it

    def _said(
        self,
        doubt: Doubt,
        pick: object,
        cost: float,
        settled: dict[Doubt, float],
        standings: Sequence[Standing],
    ) -> Assumption | None:
        agree = doubt in settled and settled[doubt] > cost + _LEAST
        match doubt.name:
            case "chain":
                return self._of_chain(doubt, pick, agree or doubt not in settled, standings)
            case "all_told":
                how = "in all" if pick else "more, after the first time"
                words = f'"rep … times" is taken as so many times {how}'
            case "in_one":
                how = (
                    "all in one place each time"
                    if pick
                    else "one after the other, each in a place of its own"
                )
                words = f"a group in round brackets is taken as worked {how}"
                if not agree:
                    words += "; it may be meant the other way, and no count here tells"
                    return Assumption(words, doubt.span)
            case "one":
                if agree and not pick:
                    return None  # "4 sc" is what everybody takes it for, and the counts prove it
                how = "so many in one place" if pick else "one in each of so many places"
                words = f"a number before a stitch is taken as {how}"
            case _:
                if pick == "stitches":
                    return None
                words = {
                    "spaces": "counts of stitches are taken to hold chain spaces as well",
                    "chains": "counts of stitches are taken to hold every chain as well",
                    "groups": "counts of stitches are taken to be counts of groups",
                }[str(pick)]
        return Assumption(words + (_WHY if agree else _CUSTOM), doubt.span)

    def _of_chain(
        self, doubt: Doubt, pick: object, agree: bool, standings: Sequence[Standing]
    ) -> Assumption | None:
        chains, stitch = doubt.key
        rows = [
            row
            for row in rows_of(standings[0])
            if row.turning[0] == chains and row.stated is not None and row.verdict == "ok"
        ]
        met = any(row.turning[0] == chains for row in rows_of(standings[0]))
        if not met:
            return None
        how = {
            "yes": "a stitch",
            "no": "no stitch",
            "space": f"a stitch and {max(chains - self.trade.turning_chain(stitch), 1)} more chains",
        }[str(pick)]
        words = f"the turning chain of {chains} is taken as {how}: "
        if agree and rows:
            many = (
                f"the counts of {len(rows)} rows agree"
                if len(rows) > 1
                else "the count of a row agrees"
            )
            return Assumption(f"{words}{many} with that", doubt.span)
        return Assumption(f"{words}the custom with {self.trade.called(stitch)}", doubt.span)


def _bare_many(acts: Sequence[Act], trade: Trade) -> Iterator[Bare]:
    """Numbers before a stitch that no place is named for."""
    for act in acts:
        if isinstance(act, Repeat):
            yield from _bare_many(act.body, trade)
        elif isinstance(act, Bare) and not act.written_after and act.times is not None:
            yield from (
                (act,) if max(act.times.values, default=0) > 1 and trade.takes(act.stitch) else ()
            )


def _cost(runs: dict[int, Run]) -> float:
    return sum(run.cost for run in runs.values())


_TIRED = (
    "there is so much to be worked that rows which may be read in several ways were read so only in "
    "the first part of the pattern; proofread it piece by piece for the rest"
)
_SPENT = (
    "there is so much to be worked that the last rows were not worked; proofread the pattern piece by "
    "piece"
)
_WHY = ": the counts agree with that"
_CUSTOM = ", as is the custom"


def _ways(picks: Picks) -> tuple[Ways, Mode]:
    counts: list[tuple[ChainKey, Counts]] = []
    said: dict[str, bool] = {}
    mode: Mode = "stitches"
    for doubt, pick in picks.items():
        if doubt.name == "chain":
            counts.append((doubt.key, pick))  # type: ignore[arg-type]
        elif doubt.name == "mode":
            mode = pick  # type: ignore[assignment]
        else:
            said[doubt.name] = bool(pick)
    return Ways(tuple(counts), **said), mode
