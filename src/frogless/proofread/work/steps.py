"""What is to be done in one size, in the order of the text, before any of it is worked.

Which lines work rows, which of them only lift the work or turn it, and where a piece begins does not
hang on how the rows are read; so it is found once, and the rows are worked in every reading of them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.proofread.words.model import Act, Again, Aside, Chain, Join, Ring, Skip, Unclear
from frogless.proofread.work.acts import QUIET, again_in, every, is_slip, says, turns_last, works
from frogless.proofread.work.again import MOST_ROWS_OF_LINE, Plan, Todo
from frogless.proofread.work.bench import Bench
from frogless.proofread.work.model import Told
from frogless.proofread.work.row import Row

#: Sentences ahead among which the next row is looked for.
_LOOKED_AHEAD = 50
#: Chains under a key of `Row.told_counts`: what the pattern says of them.
ChainsTold = Sequence[tuple[tuple[int, bool], ...]]


@dataclass(frozen=True, slots=True)
class Begin:
    """A piece begins.

    Args:
        onto: it may begin on the last row of the piece before.
        rejoins: it begins on what the piece before left unworked: "sk next 14 sts, join yarn in next st".
        led: a sentence before its first row says so.
    """

    onto: bool
    rejoins: bool = False
    led: bool = False


@dataclass(frozen=True, slots=True)
class TakeIn:
    """A sentence that works nothing.

    Args:
        turn: whether the work is turned; None where nothing is said.
        ring: the chain is joined into a ring.
    """

    turn: bool | None
    ring: bool


@dataclass(frozen=True, slots=True)
class Lose:
    """A piece is worked that is told elsewhere: what is under the next row is not known.

    Args:
        skipped: so many of the stitches that were left are passed over, and the next row is worked
            into those after them; 0: nothing is said.
    """

    skipped: int = 0


@dataclass(frozen=True, slots=True)
class MakeRing:
    """A ring is made that the next row is worked into."""


@dataclass(frozen=True, slots=True)
class WorkRow:
    """A row is worked.

    Args:
        foundation: it is nothing but a chain that is begun with.
        new_yarn: the yarn was fastened off or joined since the last row.
    """

    row: Row
    todo: Todo
    foundation: bool
    new_yarn: bool


Step = Begin | TakeIn | Lose | MakeRing | WorkRow


@dataclass(slots=True)
class _Steps:
    told: Sequence[Told]
    bench: Bench
    chains: ChainsTold
    size: int
    sizes: int
    plan: Plan
    lift: Chain | None = None
    new_yarn: bool = False
    begun: bool = False
    kind: str = ""  # of the row worked last: a row or a round

    def all(self) -> Iterator[Step]:
        piece: int | None = None
        for index, told in enumerate(self.told):
            if told.begins or told.piece != piece:
                piece = told.piece
                yield self._begin(told)
            if told.only and self.size not in told.only:
                continue
            if told.label is None:
                step = self._of_remark(index)
                if step is not None:
                    yield from step
                    continue
            for todo in self.plan.rows(index, told):
                yield self._row(todo)

    def _begin(self, told: Told) -> Begin:
        onto, led = _goes_on(told), _leads(told.said.acts)
        self.plan.begin_piece()
        self.lift, self.new_yarn, self.begun = None, led, onto or led
        self.kind = self.kind if onto else ""
        return Begin(onto, rejoins=led and not onto, led=told.label is None)

    def _of_remark(self, index: int) -> tuple[Step, ...] | None:
        """What is taken in of a sentence between rows that works nothing; None: it works rows."""
        acts = self.told[index].said.acts
        kinds = {act.kind for act in acts if isinstance(act, Aside)}
        self.new_yarn = self.new_yarn or bool(kinds & {"join_yarn", "fasten_off"})
        if any(isinstance(act, Unclear) for act in every(acts)):
            return ()
        taken = TakeIn(
            turns_last(acts), any(isinstance(act, Join) and act.to == "ring" for act in acts)
        )
        if not works(acts):
            if "join_piece" in kinds:
                self.begun = True
                return taken, Lose()
            again = again_in(acts)
            if again is not None and again.name == "piece":
                self.begun = True
                return taken, Lose()
            if again is None or self._is_told_after(index, again):
                return (taken,)
            return None
        if all(isinstance(act, (*QUIET, Ring)) for act in acts):
            self.begun = True
            return (MakeRing(),)
        if all(isinstance(act, QUIET) or is_slip(act, self.bench.trade) for act in acts):
            return ()  # "Sl st in first st.": the end of a spiral
        if all(isinstance(act, (*QUIET, Skip)) for act in acts):
            self.begun = True
            return taken, Lose(self._skipped(acts))  # "Skip 2 sts for the neck, join yarn."
        chains = [act for act in acts if isinstance(act, Chain)]
        alone = all(isinstance(act, (*QUIET, Chain)) for act in acts)
        if alone and len(chains) == 1 and self.begun and not self.new_yarn:
            self.lift = chains[0]
            return (taken,)
        return None

    def _skipped(self, acts: Sequence[Act]) -> int:
        skips = [act for act in acts if isinstance(act, Skip)]
        if len(skips) != 1 or skips[0].to or skips[0].times is None or not self.new_yarn:
            return 0
        return skips[0].times.of(self.size, self.sizes) or 0

    def _is_told_after(self, index: int, again: Again) -> bool:
        """Whether "9 rows without shaping" is only said of rows that are told after it.

        If it said to work them, the next row's number would go on after them.
        """
        after = self.told[index + 1 : index + 1 + _LOOKED_AHEAD]
        label = next((t.label for t in after if t.label is not None), None)
        if again.rows is None or label is None or not label.numbers:
            return False
        return label.numbers[0] == (self.plan.last or 0) + 1

    def _row(self, todo: Todo) -> WorkRow:
        acts, lift = self.bench.parted(todo.acts, flat=todo.kind == "row")
        row = Row(
            acts,
            todo.span,
            self.size,
            self.sizes,
            self.lift,
            self.chains[todo.source],
            closed=todo.kind == "round",
            afresh=todo.kind == "round" and self.new_yarn,
            partial=todo.kind == "row" and (self.kind == "round" or self.new_yarn),
        )
        step = WorkRow(row, todo, self._is_foundation(row, todo), self.new_yarn)
        self.begun = True
        self.kind = todo.kind
        if acts or not todo.problems:
            self.lift = lift
            self.new_yarn = any(
                isinstance(a, Aside) and a.kind in ("fasten_off", "join_yarn") for a in todo.acts
            )
        return step

    def _is_foundation(self, row: Row, todo: Todo) -> bool:
        """Whether a row is nothing but a chain that is begun with, under whatever heading."""
        label = self.told[todo.told].label
        works_on = [act for act in row.acts if not isinstance(act, QUIET)]
        named = label is not None and label.name == "foundation"
        return named and len(works_on) == 1 and isinstance(works_on[0], Chain | Ring)


def _leads(acts: tuple[Act, ...]) -> bool:
    """Whether acts only lead to where a row begins: "Skip the middle 14 sts, join yarn in next st."."""
    at = next((n for n, act in enumerate(acts) if not isinstance(act, (*QUIET, Skip))), len(acts))
    skips = [act for act in acts[:at] if isinstance(act, Skip) and act.target.what == "stitch"]
    return bool(skips) and says(acts[:at], "join_yarn")


def _goes_on(told: Told) -> bool:
    """Whether a piece may begin on the last row of the one before."""
    return told.onto or (told.label is not None and told.label.name == "next")


def steps_of(
    told: Sequence[Told], bench: Bench, chains: ChainsTold, size: int, sizes: int, most: int
) -> tuple[tuple[Step, ...], bool]:
    """All that is to be done in one size, and whether more rows are asked for than `most`."""
    plan = Plan(size, sizes, most)
    of_size = tuple(_of_size(each, size, sizes) for each in told)
    return tuple(_Steps(of_size, bench, chains, size, sizes, plan).all()), plan.cut


def _of_size(told: Told, size: int, sizes: int) -> Told:
    """A line with the rows that it stands for in one size: "Rnds 3-8 (9, 10):"."""
    label = told.label
    if label is not None and len(label.rows_of_sizes) == sizes:
        return replace(told, label=replace(label, rows=label.rows_of_sizes[size]))
    if label is None or len(label.lasts) != sizes or not label.numbers:
        return told
    first = label.firsts[size] if len(label.firsts) == sizes else label.numbers[0]
    last = min(label.lasts[size], first + MOST_ROWS_OF_LINE - 1)
    return replace(told, label=replace(label, numbers=tuple(range(first, last + 1))))
