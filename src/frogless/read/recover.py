"""From what a line says to the rows it tells of, with the help of the row below."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from frogless.errors import InputError
from frogless.read.ground import (
    MOST_STITCHES,
    NO_PLACES,
    Done,
    Edge,
    Ground,
    Stretch,
    Way,
    after_row,
    begins_on_ring,
    first_edge,
    first_made,
    next_edge,
    places_made,
    size_of,
)
from frogless.read.items import Context, nodes_of
from frogless.read.spoken import (
    NOTHING,
    Across,
    Backwards,
    Ending,
    FromHook,
    Item,
    Label,
    NoTurningChain,
    Older,
    Placed,
    Said,
    SaidAgain,
    SaidChain,
    SaidSame,
    SameStart,
)
from frogless.read.vocabulary import CHAIN, SLIP_STITCH, Vocabulary
from frogless.rows.nodes import Chain, End, Join, Leave, Node, Row, Side, Start

_OTHER_SIDE: Mapping[str, Side] = {"RS": "WS", "WS": "RS"}


@dataclass(frozen=True, slots=True)
class Once:
    """A row as it was said, and what had been said before it: enough to work it again."""

    said: Said
    side: Side
    chains: Mapping[int, SaidChain]
    hook: float


@dataclass(frozen=True, slots=True)
class Heard:
    """What the lines before have said and the next may leave out.

    Args:
        begun: what the first row is worked into; None: not known.
        closed: whether the piece is worked in rounds.
        chains: for a turning chain of so many chains, what was said of it.
        hook: mm; 0 when none was named.
        edge: the places that wait.
        done: the rows before.
        once: how each of them was said, by its number.
        section: the section the rows belong to.
        markers: how many markers stand in the work.
        colour: what the piece was said to begin with.
    """

    begun: tuple[Stretch, ...] | None = ()
    closed: bool = True
    section: str = ""
    chains: Mapping[int, SaidChain] = field(default_factory=dict)
    hook: float = 0.0
    edge: Edge = NO_PLACES
    done: tuple[Done, ...] = ()
    once: Mapping[int, Once] = field(default_factory=dict)
    markers: int = 0
    colour: str = ""

    @property
    def row(self) -> Row | None:
        """The row before; None before the first."""
        return self.done[-1].row if self.done else None

    def in_section(self, section: str) -> Heard:
        """The same, in another section."""
        return replace(self, section=section)

    def met(self, way: Way) -> Edge:
        """What lies before a row that goes that way."""
        if self.row is None:
            return first_edge(self.begun, way)
        return next_edge(self.edge, self.row, way, closed=self.closed)

    def after(self, row: Row, met: Edge, made: tuple[str, ...]) -> Heard:
        """The same, after one more row that made such places."""
        edge = after_row(met, row, made)
        return replace(
            self,
            edge=edge,
            done=(*self.done, Done(row, made, bool(met.behind), bool(edge.ahead))),
            hook=row.hook,
            markers=len(row.marks) or self.markers,
        )

    def shortened(self, chains: int, vocabulary: Vocabulary) -> Heard:
        """The same, the foundation chain shorter by the chains that are the first row's own."""
        row = self.row
        if row is not None and not row.number and not self.closed:
            match row.body:
                case (Chain(times, True),) if times > chains:
                    body = (Chain(times - chains, each=True),)
                    shorter = replace(row, body=body, count=row.count - chains)
                    made = places_made(shorter, vocabulary.stitches, closed=False)
                    return replace(self, done=()).after(shorter, NO_PLACES, made)
        raise InputError("only the first row into a foundation chain begins from the hook")


def rows_of(
    said: Said | SaidAgain | SaidSame, heard: Heard, vocabulary: Vocabulary
) -> tuple[tuple[Row, ...], Heard]:
    """The rows of a line, a folded line giving several, and what is known after them.

    A row that begins from the hook tells how long the foundation was: `Heard.done` has it mended.

    Raises:
        InputError: something is left open or contradicts what was said before.
    """
    _check_numbers(said.label, heard)
    if isinstance(said, SaidSame):
        said = as_earlier(said, {number: once.said for number, once in heard.once.items()})
    before = len(heard.done)
    for number in range(said.label.first, said.label.last + 1):
        if isinstance(said, SaidAgain):
            heard = _again(said, number, heard, vocabulary)
        else:
            heard = _once(said, number, heard, vocabulary)
    return tuple(done.row for done in heard.done[before:]), heard


def as_earlier(said: SaidSame, rows: Mapping[int, Said]) -> Said:
    """What a line says that tells to work as an earlier row.

    Raises:
        InputError: there is no such row before it.
    """
    if said.source not in rows:
        raise InputError(f"there is no row {said.source} before it to work as")
    return replace(rows[said.source], label=said.label, stated=said.stated, colour="")


def _once(said: Said, number: int, heard: Heard, vocabulary: Vocabulary) -> Heard:
    once = Once(said, _side(said.label, number, heard), heard.chains, heard.hook)
    if said.items and isinstance(said.items[0], FromHook):
        heard = heard.shortened(_own_chains(said.items[0], vocabulary), vocabulary)
    _check_colour(said, heard)
    row, met, made = _row(once, number, heard, vocabulary)
    return replace(
        heard.after(row, met, made),
        once={**heard.once, number: once},
        chains={**heard.chains, **_told_of_chains(row.start, said)},
        colour=said.colour or heard.colour,
    )


def _told_of_chains(start: Start, said: Said) -> Mapping[int, SaidChain]:
    """What a turning chain of so many chains counts as from here on."""
    if not start.chains:
        return {}
    spaces = (item.space for item in said.items if isinstance(item, SaidChain))
    space = next(spaces, 0)
    times = start.chains + space
    return {times: SaidChain(times, "counted" if start.counts else "not_counted", space)}


def _again(said: SaidAgain, number: int, heard: Heard, vocabulary: Vocabulary) -> Heard:
    """One row of those that are worked again, as it was worked the first time."""
    period = said.last - said.first + 1
    told = said.label.last - said.label.first + 1
    if period < 1 or told != period * said.times:
        raise InputError(
            f"rows {said.first} to {said.last} worked {said.times} times more are "
            f"{max(period, 0) * said.times} rows, not {told}"
        )
    source = said.first + (number - said.label.first) % period
    if source not in heard.once or said.last != said.label.first - 1:
        raise InputError(
            f"the rows to work again are those just before, up to row {said.label.first - 1}"
        )
    once = heard.once[source]
    side = _side(said.label, number, heard)
    if side != once.side:
        raise InputError(f"row {number} cannot be worked as row {source}: it is on the other side")
    before = replace(heard, chains=once.chains, hook=once.hook)
    row, met, made = _row(once, number, before, vocabulary)
    if number == said.label.last and said.stated is not None:
        row = replace(row, count=said.stated)
    return replace(heard.after(row, met, made), once={**heard.once, number: once})


def _own_chains(said: FromHook, vocabulary: Vocabulary) -> int:
    """Chains of a foundation that are the first row's turning chain and stand on none of it."""
    check_skipped(said)
    return said.skipped - skipped_count(said, vocabulary)


def check_skipped(said: FromHook) -> None:
    """Whether as many chains are skipped as there are before the one that is begun in.

    Raises:
        InputError: another number was said.
    """
    if said.skipped != said.nth - 1:
        raise InputError(
            f"{said.nth - 1} chains are skipped before chain {said.nth} from the hook, "
            f"not {said.skipped}"
        )


def skipped_count(said: FromHook, vocabulary: Vocabulary) -> bool:
    """Whether the chains skipped before a row stand for its first stitch.

    Raises:
        InputError: nobody said, and it is not usual for the stitch one way or the other.
    """
    if said.counts is not None:
        return said.counts
    stitch = vocabulary.stitches.get(said.stitch)
    usual = stitch.chain_counts if stitch and stitch.turning_chain == said.skipped else ""
    if usual in ("yes", "no"):
        return usual == "yes"
    chains = f"{said.skipped} skipped chs count" if said.skipped > 1 else "skipped ch counts"
    word = stitch.terms[vocabulary.dialect].abbreviation if stitch else "st"
    raise InputError(
        f"it is not said whether the {said.skipped} chains before it count as a stitch; write "
        f'"({chains} as first {word})" after "from hook", or that they do not count as a st'
    )


def _row(
    once: Once, number: int, heard: Heard, vocabulary: Vocabulary
) -> tuple[Row, Edge, tuple[str, ...]]:
    """The row, what it met, and the places that it made."""
    said = once.said
    start, items = _start(said.items, number, heard, vocabulary, _begun(said, heard))
    _check_handling(said, heard)
    _check_yarn(said, heard)
    way = Way(once.side, any(isinstance(item, Backwards) for item in items), start)
    met = heard.met(way)
    body = _body(items, _ground(met, heard), said, start, vocabulary, number)
    end = replace(_end(said.endings, start, body, vocabulary), fasten_off=said.fasten_off)
    if number == 0 and heard.closed and begins_on_ring(body, vocabulary.stitches):
        # A ring that is pulled shut is closed, though nobody says so.
        end = replace(end, join="first_stitch")
    row = Row(
        number=number,
        side=once.side,
        section=heard.section,
        body=body,
        count=0,
        start=start,
        end=end,
        marks=_marks(said, reverse=way.goes_back),
        backwards=way.backwards,
        hook=heard.hook if said.hook is None else said.hook,
    )
    made = places_made(row, vocabulary.stitches, closed=heard.closed)
    return replace(row, count=len(made) if said.stated is None else said.stated), met, made


def _ground(met: Edge, heard: Heard) -> Ground:
    return Ground(met.ahead, heard.row.number, heard.row.start) if heard.row else Ground(met.ahead)


def _check_colour(said: Said, heard: Heard) -> None:
    if said.colour and heard.row:
        raise InputError(
            f'a piece begins with a color before its first row; here write "change to color '
            f'{said.colour}" where it changes'
        )


def _check_numbers(label: Label, heard: Heard) -> None:
    first, last = label.first, label.last
    if last < first:
        raise InputError(f"rows {first} to {last} run backwards")
    expected = heard.row.number + 1 if heard.row else first
    if first != expected:
        raise InputError(f"row {first} follows row {expected - 1}; row {expected} was expected")


def _check_yarn(said: Said, heard: Heard) -> None:
    if said.rejoined and (heard.row is None or not heard.row.end.fasten_off):
        raise InputError("yarn is joined, but the row before did not end with cutting it")


def _side(label: Label, number: int, heard: Heard) -> Side:
    """As said; a folded line's sides take turns; unsaid, the work's turns decide."""
    if label.sides:
        return "WS" if label.sides[(number - label.first) % len(label.sides)] == "WS" else "RS"
    if heard.row is None:
        return "RS"
    return _OTHER_SIDE[heard.row.side] if heard.row.end.turn else heard.row.side


# How a row starts


def _start(
    items: tuple[Item, ...], number: int, heard: Heard, vocabulary: Vocabulary, begun: int
) -> tuple[Start, tuple[Item, ...]]:
    """Slip stitches across, the turning chain, and the rest."""
    across = 0
    if isinstance(items[0], Across):
        across = _across(items[0], begun, vocabulary)
        items = items[1:]
    start, rest = _chain(items, number, heard, vocabulary) if items else (Start(), items)
    start = replace(start, across=across)
    following = [item for item in rest if not isinstance(item, Backwards)]
    if not (start.counts and following):
        return start, rest
    if isinstance(following[0], SameStart):
        return replace(start, shares=True), tuple(i for i in rest if i is not following[0])
    shares = isinstance(following[0], Placed) and following[0].where in ("same", "ring")
    return replace(start, shares=shares), rest


def _chain(
    items: tuple[Item, ...], number: int, heard: Heard, vocabulary: Vocabulary
) -> tuple[Start, tuple[Item, ...]]:
    """The turning chain. In a foundation, only a chain said to count or not is one."""
    first, rest = items[0], items[1:]
    if isinstance(first, NoTurningChain):
        return Start(), rest
    if isinstance(first, FromHook):
        return Start(first.skipped, skipped_count(first, vocabulary)), rest
    if not isinstance(first, SaidChain) or first.sense in ("each_counted", "one_space"):
        return Start(), items
    if number == 0 and not first.sense:
        return Start(), items
    told = first if first.sense else heard.chains.get(first.times)
    if told is None:
        raise InputError(
            f"it is not said whether the turning chain of {first.times} counts; "
            'write "(does not count as a st)" or "(counts as first …)" after it'
        )
    space = (SaidChain(told.space),) if told.space else ()
    return Start(told.times - told.space, told.sense != "not_counted"), (*space, *rest)


def _begun(said: Said, heard: Heard) -> int:
    """Places that the loop on the hook has passed: one where a round was joined to its first."""
    if not heard.closed:
        return 0
    if heard.row is None:
        return int(any(ending.kind.startswith("join") for ending in said.endings))
    return int(heard.row.end.join != "none")


def _across(said: Across, begun: int, vocabulary: Vocabulary) -> int:
    """Places before the one that the row begins in."""
    if vocabulary.key(said.word) != SLIP_STITCH:
        raise InputError(f'only slip stitches lead over places without counting, not "{said.word}"')
    return said.times - 1 + begun if said.into else said.times


# What is worked


def _body(
    items: tuple[Item, ...], ground: Ground, said: Said, start: Start, vocabulary: Vocabulary,
    number: int,
) -> tuple[Node, ...]:  # fmt: skip
    items = tuple(item for item in items if not isinstance(item, Backwards))
    match items:
        case (SaidChain(times, sense),) if number == 0:
            ring = any(ending.kind == "join_ring" for ending in said.endings)
            return (Chain(times, each=sense != "one_space" and not ring),)
    taken = start.across + int(start.counts and not start.shares)
    context = Context(ground, said.noted, start, vocabulary)
    worked = tuple(i for i in items if not isinstance(i, Older) and i != NOTHING)
    body, reached = nodes_of(worked, taken, context)
    if (size := size_of(body)) > MOST_STITCHES:
        raise InputError(f"a row of {size} stitches; {MOST_STITCHES} are the most that are read")
    _check_across(said, context)
    _check_short(said, body)
    later = sum(node.times for node in body if isinstance(node, Leave))
    _check_older(items, ground, reached - later)
    return body


def _check_across(said: Said, context: Context) -> None:
    match said.items[:1]:
        case (Across(_, times, noun, ""),):
            context.check(noun, 0, times)
        case (Across(_, times, noun, into),):
            last = context.start.across
            context.check(noun, last - times + 1, times - 1)
            context.check(into, last, 1)


def _check_short(said: Said, body: tuple[Node, ...]) -> None:
    if said.short and not any(isinstance(node, Leave) for node in body):
        raise InputError(
            'a short row leaves places for later; write "leave last 5 sts unworked for now"'
        )


def _check_older(items: tuple[Item, ...], ground: Ground, taken: int) -> None:
    """What is said of places that were left has to be what is worked into them."""
    told = [item.times for item in items if isinstance(item, Older)]
    if told and sum(told) != (older := ground.older(taken)):
        raise InputError(
            f"{sum(told)} places left unworked are said to be worked into, but the row comes to "
            f"{older} of them"
        )


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
        elif ending.kind == "join":
            join = "chain_top" if start.counts and start.chains else "first_stitch"
        elif ending.kind == "join_ring":
            join = "first_stitch"
    return End(join, turn=any(ending.kind == "turn" for ending in endings))


def _join_top(ending: Ending, start: Start) -> Join:
    if ending.chains != start.chains:
        raise InputError(
            f"it is joined to the top of {ending.chains} chains, but began with {start.chains}"
        )
    return "chain_top"


def _join_first(ending: Ending, body: tuple[Node, ...], vocabulary: Vocabulary) -> Join:
    first = first_made(body, vocabulary.stitches) or CHAIN
    alike = (first, vocabulary.stitches[first].like)
    if ending.word and vocabulary.key(ending.word) not in alike:
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
