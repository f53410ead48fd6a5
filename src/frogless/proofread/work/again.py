"""Which rows are worked, one after the other: ranges, rows worked again, rows that stand for others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from frogless.proofread.script.model import MOST_NUMBERS, Label, Span
from frogless.proofread.words.model import (
    Act,
    Again,
    Bare,
    Extent,
    Increase,
    Into,
    Skip,
    Stated,
    Target,
    Together,
    Turn,
)
from frogless.proofread.work.acts import QUIET, again_in, every, works
from frogless.proofread.work.model import Problem, Told

#: Rows that one line may stand for.
MOST_ROWS_OF_LINE = MOST_NUMBERS


#: Rows back in which the last increase is looked for.
_LOOKED_BACK = 200


@dataclass(frozen=True, slots=True)
class Todo:
    """One row to be worked.

    Args:
        source: index of the `Told` whose acts they are; `told` is that which says to work them.
        number: None for a row that has none.
        kind: "row" or "round", "" where nothing says.
        repeated: it comes from a line that says to work rows again.
        problems: what is wrong with the line itself.
        unknown_times: the last of a block of rows that is worked nobody says how often.
        block_begins: the first of such a block.
        grows: it adds or takes away as many stitches as the row it repeats, between more or fewer.
        steady: of several rows that one line says, what it states, when they do not change it.
    """

    told: int
    source: int
    number: int | None
    acts: tuple[Act, ...]
    span: Span
    stated: tuple[Stated, ...] = ()
    kind: str = ""
    repeated: bool = False
    steady: tuple[Stated, ...] = ()
    problems: tuple[Problem, ...] = ()
    unknown_times: bool = False
    grows: bool = False
    block_begins: bool = False


@dataclass(slots=True)
class Plan:
    """The rows of a piece as far as they are told, in one size."""

    size: int
    sizes: int
    most: int
    numbered: dict[int, Todo] = field(default_factory=dict)
    named: dict[str, Todo] = field(default_factory=dict)
    known: dict[str, Todo] = field(default_factory=dict)  # those of other pieces as well
    done: list[Todo] = field(default_factory=list)
    onward: list[tuple[str, Todo]] = field(default_factory=list)
    count: int = 0
    last: int | None = None  # the last number of a row
    cut: bool = False  # rows are asked for that are not worked
    full: bool = False

    def begin_piece(self) -> None:
        """Rows of another piece are not meant by their numbers."""
        self.numbered, self.named, self.done, self.onward = {}, {}, [], []
        self.last = None

    def rows(self, index: int, told: Told) -> Iterator[Todo]:
        """The rows that a line stands for."""
        for todo in self._rows(index, told):
            if self.count >= self.most:
                yield from self._last_of_all(todo)
                return
            self.count += 1
            self._keep(todo, told.label)
            yield todo

    def _last_of_all(self, todo: Todo) -> Iterator[Todo]:
        """The first row of those that are not worked."""
        if not self.full:
            self.cut = self.full = True
            yield replace(todo, acts=(), stated=(), problems=(Problem("too_long", todo.span),))

    def _keep(self, todo: Todo, label: Label | None) -> None:
        self.done.append(todo)
        if todo.number is not None:
            self.numbered[todo.number] = todo
            self.last = todo.number
        if label is not None and label.name and not todo.repeated:
            self.named[label.name] = self.known[label.name] = todo

    def _rows(self, index: int, told: Told) -> Iterator[Todo]:
        label, said = told.label, told.said
        numbers = label.numbers if label else ()
        kind = label.kind if label else ""
        yield from self._between(index, label)
        again = again_in(said.acts)
        if again is None:
            yield from self._plain(index, told, numbers, kind)
            return
        if label is None and (several := _several(said.acts)):
            for act in several:
                stated = said.stated if act is several[-1] else ()
                part = replace(told, said=replace(said, stated=stated))
                yield from self._again(index, part, act, (), kind, 0)
            return
        before = tuple(a for a in said.acts[: said.acts.index(again)] if not isinstance(a, Again))
        own = 0
        if works(before) and any(not isinstance(a, QUIET) and _takes(a) for a in before):
            own = 1
            number = numbers[0] if numbers else None
            stated = () if again.name == "same" else _before(said.stated, again.span)
            yield Todo(index, index, number, before, told.span, stated, kind, steady=said.stated)
        yield from self._again(index, told, again, numbers[own:], kind, own)

    def _plain(self, index: int, told: Told, numbers: tuple[int, ...], kind: str) -> Iterator[Todo]:
        label, said = told.label, told.said
        todo = Todo(index, index, None, said.acts, told.span, said.stated, kind)
        if label is not None and label.onward:
            first = replace(todo, number=numbers[0] if numbers else None)
            self.onward.append((label.onward, first))
            yield from (first,) if numbers or label.name else ()
            return
        if label is not None and not numbers and label.rows > 1:
            cut = self._cut(label.rows, told.span)
            for place in range(min(label.rows, MOST_ROWS_OF_LINE)):
                stated = _stated_of(said.stated, place, label.rows)
                steady = () if stated else said.stated
                yield replace(todo, stated=stated, steady=steady, problems=() if place else cut)
            return
        if len(numbers) < 2:
            yield replace(todo, number=numbers[0] if numbers else None)
            return
        cut = self._cut(numbers[-1] - numbers[0] + 1, told.span)
        for place, number in enumerate(numbers):
            stated = _stated_of(said.stated, place, len(numbers))
            steady = () if stated else said.stated
            problems = () if place else cut
            yield replace(todo, number=number, stated=stated, steady=steady, problems=problems)

    def _between(self, index: int, label: Label | None) -> Iterator[Todo]:
        """Rows that "Row 2 and all even rows" stands for, between the last and this one."""
        if label is None or not label.numbers or not self.onward or not self.done:
            return
        if self.last is None or label.numbers[0] - self.last > MOST_ROWS_OF_LINE:
            return
        for number in range(self.last + 1, label.numbers[0]):
            for which, todo in self.onward:
                if which == "all" or (number % 2 == 0) == (which == "even"):
                    yield replace(todo, number=number, repeated=True)
                    break

    def _cut(self, rows: int, span: Span) -> tuple[Problem, ...]:
        """What is wrong with a line that stands for more rows than are worked of one."""
        if rows <= MOST_ROWS_OF_LINE:
            return ()
        self.cut = True
        return (Problem("too_long", span, says=rows),)

    # -- rows worked again

    def _again(
        self,
        index: int,
        told: Told,
        again: Again,
        numbers: tuple[int, ...],
        kind: str,
        own: int,
    ) -> Iterator[Todo]:
        block = self._block(index, again, kind)
        if not block:
            problem = Problem("again", again.span, says=again.first or None, what=again.name)
            number = numbers[0] if numbers else None
            yield Todo(
                index, index, number, (), told.span, told.said.stated, kind, problems=(problem,)
            )
            return
        total, known = self._how_many(again, len(block), numbers)
        if own and again.name == "same" and again.rows is not None:
            total -= own  # "sc in each st around for 6 rnds": six in all
        elif told.label is not None and told.label.rows and not numbers:
            total, known = told.label.rows, True
        problems = self._range_problem(again, len(block), numbers, told.span)
        if len(numbers) > 1 and problems:
            total = len(numbers)
        most = min(total, MOST_ROWS_OF_LINE)
        problems += self._cut(total, again.span)
        start = numbers[0] if numbers else None
        for place in range(most):
            row = block[place % len(block)]
            last = place == most - 1
            yield replace(
                row,
                told=index,
                number=None if start is None else start + place,
                span=again.span,
                stated=_after(told.said.stated, again.span, own) if last else (),
                steady=(),
                grows=again.name in _MORE_OR_FEWER,
                repeated=True,
                kind=kind or row.kind,
                problems=problems if not place else (),
                unknown_times=last and not known,
                block_begins=not place,
            )

    def _block(self, index: int, again: Again, kind: str) -> list[Todo]:
        rows = self._named_rows(index, again, kind)
        if again.every > 1 and rows:
            plain = self._even(index, again.span, kind)
            return [plain] * (again.every - 1) + rows[-1:]
        return rows

    def _named_rows(self, index: int, again: Again, kind: str) -> list[Todo]:
        if again.first:
            last = max(again.last, again.first)
            if last - again.first > MOST_ROWS_OF_LINE:
                return []
            found = [self.numbered.get(n) for n in range(again.first, last + 1)]
            return [row for row in found if row is not None] if all(found) else []
        if again.name == "last":
            return self.done[-max(again.last, 1) :]
        if again.name in ("previous", "same", "pattern"):
            return self.done[-1:]
        if again.name in ("even", ""):
            return [self._even(index, again.span, kind)]
        meant = [
            todo for name, todo in self.named.items() if again.name in name or name in again.name
        ]
        elsewhere = [todo for name, todo in self.known.items() if again.name in name.split()]
        return meant[-1:] or self._shaping(again.name) or elsewhere[-1:]

    def _shaping(self, name: str) -> list[Todo]:
        """The last row that makes more stitches, or fewer, where none has the name."""
        shapes = _MORE_OR_FEWER.get(name)
        if shapes is None:
            return []
        recent = reversed(self.done[-_LOOKED_BACK:])
        return [t for t in recent if any(map(shapes, every(t.acts)))][:1]

    def _even(self, index: int, span: Span, kind: str) -> Todo:
        """A row of one stitch in each, as it is meant by "work even"."""
        plain = Into(span, (Bare(span, ""),), Target(), Extent("end"))
        turn = () if kind != "row" else (Turn(span),)
        return Todo(index, index, None, (plain, *turn), span, (), kind)

    def _how_many(self, again: Again, block: int, numbers: tuple[int, ...]) -> tuple[int, bool]:
        """Rows in all, and whether that is known."""
        if again.times is not None:
            return (again.times.of(self.size, self.sizes) or 0) * block, True
        if again.rows is not None:
            return again.rows.of(self.size, self.sizes) or 0, True
        if again.until_rows:
            start = numbers[0] if numbers else (self.last or 0) + 1
            return max(again.until_rows - start + 1, 0), True
        if len(numbers) > 1:
            return len(numbers), True
        return block, not (again.until or again.length)

    def _range_problem(
        self, again: Again, block: int, numbers: tuple[int, ...], span: Span
    ) -> tuple[Problem, ...]:
        """ "Rnds 8-15: rep Rnds 6 and 7 three more times" names eight rows and works six."""
        if len(numbers) < 2 or (again.times is None and again.rows is None):
            return ()
        works_out, _ = self._how_many(again, block, numbers)
        if works_out == len(numbers):
            return ()
        return (Problem("range", again.span, says=len(numbers), works=works_out, each=block),)


def _several(acts: Sequence[Act]) -> list[Again]:
    """ "Rep Rows 2-5 once more, then Row 2 once": one after the other, where nothing else is said."""
    found = [act for act in acts if isinstance(act, Again)]
    alone = all(isinstance(act, (Again, *QUIET)) for act in acts)
    told = all(act.first for act in found)
    return found if alone and told and len(found) > 1 else []


def _makes_more(act: Act) -> bool:
    if isinstance(act, Increase):
        return True
    if not isinstance(act, Into) or act.target.what == "ring":
        return False
    return sum(_times(a) for a in act.body if isinstance(a, Bare)) > 1


def _times(bare: Bare) -> int:
    return max(bare.times.values, default=1) if bare.times else 1


def _makes_fewer(act: Act) -> bool:
    return isinstance(act, Together | Skip)


_MORE_OR_FEWER = {"increase": _makes_more, "decrease": _makes_fewer}


def _before(stated: tuple[Stated, ...], span: Span) -> tuple[Stated, ...]:
    return tuple(each for each in stated if each.span < span) if len(stated) > 1 else stated


def _after(stated: tuple[Stated, ...], span: Span, own: int) -> tuple[Stated, ...]:
    if own and len(stated) > 1:
        return tuple(each for each in stated if each.span > span)
    return stated


def _takes(act: Act) -> bool:
    return any(not isinstance(a, QUIET) for a in every((act,))) and not _is_chain(act)


def _is_chain(act: Act) -> bool:
    return type(act).__name__ == "Chain"


def _stated_of(stated: Sequence[Stated], place: int, rows: int) -> tuple[Stated, ...]:
    """What a line of several rows states of one of them.

    As many counts as there are rows are counts one by one: "Rnds 2-4: … (12, 18, 24)"; else what is
    stated holds for the last.
    """
    totals = [each for each in stated if each.what == "stitch" and not each.change]
    alike = len({each.stitch for each in totals}) == 1
    if len(totals) == rows == len(stated) and alike:
        return (totals[place],)
    return tuple(stated) if place == rows - 1 else ()
