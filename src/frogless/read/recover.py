"""From what a line says to the rows it tells of, with the help of the row below."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from frogless.errors import InputError
from frogless.read.ground import Ground, first_made, ground_of
from frogless.read.spoken import (
    Backwards,
    Bare,
    Each,
    Ending,
    Group,
    Item,
    NoTurningChain,
    Over,
    Said,
    SaidChain,
    Tog,
)
from frogless.read.vocabulary import CHAIN, SLIP_STITCH, Vocabulary
from frogless.rows.nodes import (
    Chain,
    End,
    Into,
    Join,
    Node,
    Repeat,
    Row,
    Side,
    Skip,
    Start,
    Together,
    Work,
)

_TOG = re.compile(r"(?P<stitch>.+?)(?P<places>\d+)tog", re.IGNORECASE)
_OTHER_SIDE: Mapping[str, Side] = {"RS": "WS", "WS": "RS"}


@dataclass(frozen=True, slots=True)
class Heard:
    """What the lines before have said and the next may leave out.

    Args:
        below: what the next row is worked into.
        chains: for a turning chain of so many chains, whether it counts.
        hook: mm; 0 when none was named.
        row: the row before; None before the first.
        section: the section the rows belong to.
        markers: how many markers stand in the work.
    """

    below: Ground
    section: str = ""
    chains: Mapping[int, bool] = field(default_factory=dict)
    hook: float = 0.0
    row: Row | None = None
    markers: int = 0

    def in_section(self, section: str) -> Heard:
        """The same, in another section."""
        return replace(self, section=section)

    def after(self, row: Row, vocabulary: Vocabulary) -> Heard:
        """The same, after one more row."""
        start = row.start
        chains = {**self.chains, start.chains: start.counts} if start.chains else self.chains
        below = ground_of(row, vocabulary.stitches)
        markers = len(row.marks) or self.markers
        return replace(self, below=below, chains=chains, hook=row.hook, row=row, markers=markers)


def rows_of(said: Said, heard: Heard, vocabulary: Vocabulary) -> tuple[tuple[Row, ...], Heard]:
    """The rows of a line, a folded line giving several, and what is known after them.

    Raises:
        InputError: something is left open or contradicts what was said before.
    """
    _check_numbers(said, heard)
    rows: list[Row] = []
    for number in range(said.label.first, said.label.last + 1):
        row = _row(said, number, heard, vocabulary)
        rows.append(row)
        heard = heard.after(row, vocabulary)
    return tuple(rows), heard


def _row(said: Said, number: int, heard: Heard, vocabulary: Vocabulary) -> Row:
    start, items = _start(said.items, number, heard)
    _check_handling(said, heard)
    backwards = any(isinstance(item, Backwards) for item in items)
    items = tuple(item for item in items if not isinstance(item, Backwards))
    taken = start.counts and start.chains > 0
    body = _body(items, _Open(number, heard.below, said.noted, taken, vocabulary))
    end = replace(_end(said.endings, start, body, vocabulary), fasten_off=said.fasten_off)
    side = _side(said, number, heard)
    row = Row(
        number=number,
        side=side,
        section=heard.section,
        body=body,
        count=0,
        start=start,
        end=end,
        marks=_marks(said, reverse=(side == "WS") != backwards),
        backwards=backwards,
        hook=heard.hook if said.hook is None else said.hook,
    )
    worked = ground_of(row, vocabulary.stitches).places or 0
    return replace(row, count=worked if said.stated is None else said.stated)


def _check_numbers(said: Said, heard: Heard) -> None:
    first, last = said.label.first, said.label.last
    if last < first:
        raise InputError(f"rows {first} to {last} run backwards")
    expected = heard.row.number + 1 if heard.row else first
    if first != expected:
        raise InputError(f"row {first} follows row {expected - 1}; row {expected} was expected")


def _side(said: Said, number: int, heard: Heard) -> Side:
    """As said; a folded line's sides take turns; unsaid, the work's turns decide."""
    sides = said.label.sides
    if sides:
        return "WS" if sides[(number - said.label.first) % len(sides)] == "WS" else "RS"
    if heard.row is None:
        return "RS"
    return _OTHER_SIDE[heard.row.side] if heard.row.end.turn else heard.row.side


# How a row starts


def _start(items: tuple[Item, ...], number: int, heard: Heard) -> tuple[Start, tuple[Item, ...]]:
    """The turning chain and the rest. In a foundation, only a chain said to count or not is one."""
    first, rest = items[0], items[1:]
    if isinstance(first, NoTurningChain):
        return Start(), rest
    if not isinstance(first, SaidChain) or first.sense in ("each_counted", "one_space"):
        return Start(), items
    if first.sense:
        return Start(first.times, first.sense == "counted"), rest
    if number == 0:
        return Start(), items
    if first.times not in heard.chains:
        raise InputError(
            f"it is not said whether the turning chain of {first.times} counts; "
            'write "(does not count as a st)" or "(counts as first …)" after it'
        )
    return Start(first.times, heard.chains[first.times]), rest


# What is worked


@dataclass(frozen=True, slots=True)
class _Open:
    """What settles the items that a row leaves open."""

    number: int
    below: Ground
    noted: bool
    taken: bool
    vocabulary: Vocabulary


def _body(items: tuple[Item, ...], context: _Open) -> tuple[Node, ...]:
    if len(items) == 1 and isinstance(items[0], Each):
        return (_each(items[0], context),)
    _check_spaces(items, context)
    if context.number == 0 and len(items) == 1 and isinstance(items[0], SaidChain):
        return (Chain(items[0].times, each=items[0].sense != "one_space"),)
    return tuple(_node(item, context) for item in items)


def _check_spaces(items: tuple[Item, ...], context: _Open) -> None:
    """Counted runs over chain spaces are settled only when it is said that these count."""
    runs = any(not isinstance(item, SaidChain) for item in items)
    if context.below.spaces and not context.noted and runs:
        raise InputError(
            "the row below leaves chain spaces, and it is not said whether they are worked into; "
            'write "Count each ch-sp as a st." first'
        )


def _node(item: Item, context: _Open) -> Node:
    match item:
        case Work() | Into() | Skip() | Repeat():
            return item
        case Group(items, times):
            return Repeat(tuple(_node(each, context) for each in items), times)
        case SaidChain():
            return _chain(item)
        case Bare():
            return _bare(item, context.vocabulary)
        case Over(word, times, places):
            return _over(word, times, places, context.vocabulary)
        case Tog(word):
            return _together(word, context.vocabulary)
        case Each():
            raise InputError('"in each" is the whole row; with other stitches, write their numbers')
        case Backwards() | NoTurningChain():
            raise InputError("how a row starts is said before its first stitch, outside brackets")


def _chain(said: SaidChain) -> Chain:
    if said.sense in ("counted", "not_counted"):
        raise InputError("only the chain at the beginning of a row is a turning chain")
    return Chain(said.times, each=said.sense == "each_counted")


def _bare(said: Bare, vocabulary: Vocabulary) -> Node:
    stitch = vocabulary.stitches[vocabulary.key(said.word)]
    if stitch.stands_on:
        raise InputError(
            f'"{said.word}" does not say where it goes; write "{said.word} in next st" for one, '
            f'"{said.word} in next 2 sts" for one in each, '
            f'"2 {said.word} in next st" for both in one'
        )
    return Work(stitch.key, said.times)


def _over(word: str, times: int, places: int, vocabulary: Vocabulary) -> Work:
    key = vocabulary.key(word)
    takes = vocabulary.stitches[key].stands_on * times
    if takes != places:
        raise InputError(f'"{word}" worked {times} times takes {takes} stitches, not {places}')
    return Work(key, times)


def _together(word: str, vocabulary: Vocabulary) -> Together:
    found = _TOG.fullmatch(word)
    if found is None:
        raise TypeError(f"{word!r} is not stitches worked together")
    return Together(vocabulary.key(found["stitch"]), int(found["places"]))


def _each(said: Each, context: _Open) -> Node:
    places = context.below.places
    if places is None:
        raise InputError('"in each" needs an edge whose stitches are known; write the number')
    if context.below.spaces and not said.spaces:
        raise InputError(
            "the row below leaves chain spaces, and it is not said whether they are worked into; "
            'write "in each st and ch-sp"'
        )
    if said.remaining != context.taken:
        raise InputError(
            '"remaining" is for a turning chain that counts: it stands on the first stitch; '
            "with one that does not count, every stitch is worked into"
        )
    times = places - context.taken
    return Repeat((said.into,), times) if said.into else Work(said.stitch, times)


# How a row ends


def _end(
    endings: tuple[Ending, ...], start: Start, body: tuple[Node, ...], vocabulary: Vocabulary
) -> End:
    join: Join = "none"
    for ending in endings:
        if ending.slip and vocabulary.key(ending.slip) != SLIP_STITCH:
            raise InputError(f'a row is joined with a slip stitch, not with "{ending.slip}"')
        if ending.kind == "join_top":
            join = _join_top(ending, start)
        elif ending.kind == "join_first":
            join = _join_first(ending, body, vocabulary)
    return End(join, turn=any(ending.kind == "turn" for ending in endings))


def _join_top(ending: Ending, start: Start) -> Join:
    if ending.chains != start.chains:
        raise InputError(
            f"it is joined to the top of {ending.chains} chains, but began with {start.chains}"
        )
    return "chain_top"


def _join_first(ending: Ending, body: tuple[Node, ...], vocabulary: Vocabulary) -> Join:
    first = first_made(body) or CHAIN
    if vocabulary.key(ending.word) != first:
        began = vocabulary.stitches[first].terms[vocabulary.dialect].abbreviation
        raise InputError(f'it is joined to the first "{ending.word}", but began with "{began}"')
    return "first_stitch"


# Markers


def _check_handling(said: Said, heard: Heard) -> None:
    """Markers can be moved up, or taken out, only where they stand."""
    told, standing = sum(len(marked.numbers) for marked in said.marked), heard.markers
    if said.handling == "moved" and told != standing:
        raise InputError(
            f"{told} markers are moved up, but {standing} stand in the work; they have to be "
            f"{'taken out and placed anew' if standing else 'placed first'}"
        )
    if said.handling == "replaced" and not standing:
        raise InputError("old markers are to be taken out, but none was placed before")


def _marks(said: Said, *, reverse: bool) -> tuple[int, ...]:
    """For each point in the order worked, which stitch of its group (0 first).

    Markers are numbered as seen with the right side facing, so a row that goes the other way meets
    the last one first.
    """
    places = {number: marked.nth - 1 for marked in said.marked for number in marked.numbers}
    told = sum(len(marked.numbers) for marked in said.marked)
    if sorted(places) != list(range(1, told + 1)):
        raise InputError("markers are numbered from 1, each named once")
    by_number = tuple(places[number] for number in sorted(places))
    return by_number[::-1] if reverse else by_number
