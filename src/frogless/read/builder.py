"""What each rule of the grammar gives: the parts of a `Said`."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from lark import Token, Transformer, Tree
from lark.exceptions import VisitError

from frogless.errors import InputError
from frogless.read.same_place import (
    first_worked,
    in_same_place,
    inside,
    is_worked,
    led_to_chain,
    with_others,
)
from frogless.read.spoken import (
    NOTHING,
    Across,
    Backwards,
    Bare,
    Changed,
    Counted,
    Each,
    Ending,
    Evenly,
    FromHook,
    Group,
    Handling,
    InKind,
    Item,
    Label,
    Made,
    Marked,
    NoTurningChain,
    Noun,
    Older,
    Over,
    Placed,
    Said,
    SaidAgain,
    SaidChain,
    SaidSame,
    SameStart,
    Skipped,
    SkippedOthers,
    Starred,
    Tog,
    Unworked,
    Where,
)
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import Into, Repeat, Work

HANDLING: Mapping[str, Handling] = {
    "PLACE_MARKERS": "placed",
    "REPLACE_MARKERS": "replaced",
    "MOVE": "moved",
}


#: The last word of these says which places: "in the next", "in each of next", "over last".
WHERE: Mapping[str, Where] = {
    "NEXT": "next",
    "FIRST": "first",
    "LAST": "last",
    "SAME": "same",
    "RING": "ring",
}
#: The most that a number in a row may be: more stitches than any garment has.
MOST = 99_999


def built(tree: Tree[Token], vocabulary: Vocabulary) -> Any:  # noqa: ANN401 — a rule's own type
    """What a parsed line, or the spread of a seam, says.

    Raises:
        InputError: a part that means nothing where it stands.
    """
    try:
        return _Builder(vocabulary).transform(tree)
    except VisitError as error:
        raise error.orig_exc from None


class _Builder(Transformer[Token, Any]):
    """Each method is a rule of the grammar; it gets what the rule's parts gave."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        super().__init__()
        self.words = vocabulary

    def NUMBER(self, number: Token) -> Token:  # noqa: N802 — named after the terminal
        """A number that a row may have."""
        if len(number) > len(str(MOST)):
            raise InputError(
                f"column {number.column}: {number[:12]} is more than {MOST}, the most that a "
                "number in a row may be"
            )
        return number

    # Lines and labels

    def repeated(self, parts: list[Any]) -> SaidAgain:
        label, (first, last, times), *stated = parts
        return SaidAgain(label, first, last, times, stated[0][1] if stated else None)

    def same_as(self, parts: list[Any]) -> SaidSame:
        label, _, source, *stated = parts
        return SaidSame(label, int(source), stated[0][1] if stated else None)

    def again(self, parts: list[Token]) -> tuple[int, int, int]:
        numbers = [int(part) for part in parts if part.type == "NUMBER"]
        return numbers[0], numbers[-2], numbers[-1]

    def line(self, parts: list[Any]) -> Said:
        label, *rest = parts
        said: dict[str, Any] = {}
        for name, value in rest:
            said[name] = value
        items, endings = said.pop("main")
        handling, marked = said.pop("markers", ("", ()))
        return Said(label, items, endings, marked=marked, handling=handling, **said)

    def foundation(self, parts: list[Any]) -> Label:
        return Label("foundation", 0, 0, _sides(parts))

    def numbered(self, parts: list[Any]) -> Label:
        number = int(parts[1])
        return Label(_kind(parts[0]), number, number, _sides(parts))

    def folded(self, parts: list[Any]) -> Label:
        return Label(_kind(parts[0]), int(parts[1]), int(parts[2]), _sides(parts))

    def sides(self, parts: list[Token]) -> tuple[str, ...]:
        return tuple(side.upper() for side in parts)

    # Sentences

    def begin(self, parts: list[Token]) -> tuple[str, str]:
        return "colour", str(parts[0])

    def hook(self, parts: list[Token]) -> tuple[str, float]:
        return "hook", float(parts[0].lower().removesuffix("mm"))

    def note(self, _: list[Any]) -> tuple[str, bool]:
        return "noted", True

    def short(self, _: list[Any]) -> tuple[str, bool]:
        return "short", True

    def rejoin(self, _: list[Any]) -> tuple[str, bool]:
        return "rejoined", True

    def main(self, parts: list[Any]) -> tuple[str, Any]:
        endings = tuple(part for part in parts if isinstance(part, Ending))
        items = self._items(
            led_to_chain(_flat(p for p in parts if not isinstance(p, Ending)), self.words)
        )
        return "main", (items or (NOTHING,), endings)

    def markers(self, parts: list[Any]) -> tuple[str, Any]:
        handling, *marked = parts
        return "markers", (HANDLING[handling.type], tuple(marked))

    def marked(self, parts: list[Any]) -> Marked:
        return Marked(parts[0], int(parts[1][:-2]))

    def numbers(self, parts: list[range]) -> tuple[int, ...]:
        return tuple(number for span in parts for number in span)

    def span(self, parts: list[Token]) -> range:
        return range(int(parts[0]), int(parts[-1]) + 1)

    def fasten(self, _: list[Any]) -> tuple[str, bool]:
        return "fasten_off", True

    def stated(self, parts: list[int]) -> tuple[str, int]:
        return "stated", sum(parts)

    def stated_stitch(self, parts: list[Token]) -> int:
        leaves = self.words.stitches[self.words.key(parts[1])].leaves
        return int(parts[0]) if leaves else 0

    def stated_space(self, parts: list[Token]) -> int:
        return int(parts[0])

    def stated_places(self, parts: list[Token]) -> int:
        return int(parts[0])

    # Items

    def chain(self, parts: list[Any]) -> SaidChain:
        times: int = int(parts[1])
        sense: Any = parts[2] if len(parts) > 2 else ""
        if not isinstance(sense, int):
            return SaidChain(times, sense)
        if sense >= times:
            raise InputError(f"of {times} chains, {sense} cannot be a space after the first stitch")
        return SaidChain(times, "counted", sense)

    def not_counted(self, _: list[Any]) -> str:
        return "not_counted"

    def counted(self, _: list[Any]) -> str:
        return "counted"

    def counted_more(self, parts: list[Token]) -> int:
        """So many chains of a turning chain are a chain space."""
        return int(re.findall(r"\d+", parts[-1])[-1])

    def counted_next(self, _: list[Any]) -> str:
        return "counted_next"

    def each_counted(self, _: list[Any]) -> str:
        return "each_counted"

    def one_space(self, _: list[Any]) -> str:
        return "one_space"

    def from_hook(self, parts: list[Any]) -> FromHook:
        ordinal, _, (skipped, counts) = parts
        return FromHook(int(ordinal[:-2]), skipped, counts)

    def skipped(self, parts: list[Any]) -> tuple[int, bool]:
        return _number(parts), parts[-1] == "counted"

    def one_from_hook(self, parts: list[Any]) -> tuple[Item, ...]:
        return self._from_hook(Work(self.words.key(parts[0])), parts)

    def all_from_hook(self, parts: list[Any]) -> tuple[Item, ...]:
        return self._from_hook(parts[0], parts)

    def _from_hook(self, node: Work | Into, parts: list[Any]) -> tuple[Item, ...]:
        nth = int(re.findall(r"\d+", parts[1])[0])
        skipped, counts = parts[-1] if isinstance(parts[-1], tuple) else (nth - 1, None)
        return FromHook(nth, skipped, counts, first_worked(node)), Placed(node, "next", "ch")

    def no_turning_chain(self, _: list[Any]) -> NoTurningChain:
        return NoTurningChain()

    def backwards(self, _: list[Any]) -> Backwards:
        return Backwards()

    def nothing(self, _: list[Any]) -> Group:
        return NOTHING

    def across(self, parts: list[Any]) -> Across:
        return Across(str(parts[0]), _number(parts[1:]), parts[-1])

    def same_start(self, _: list[Any]) -> SameStart:
        return SameStart()

    def older(self, parts: list[Any]) -> Older:
        return Older(_number(parts))

    def place(self, parts: list[Token]) -> Noun:
        word = parts[0]
        if word.type == "STITCH":
            return "=" + self.words.key(word)
        if word.type == "TOGETHER":
            return "=" + self.words.key(re.sub(r"\d+tog$", "", word, flags=re.IGNORECASE))
        return _noun(word)

    def as_last(self, _: list[Any]) -> None:
        return None

    def one_in_each(self, parts: list[Any]) -> Placed:
        work = self._put_into(Work(self.words.key(parts[0]), _number(parts[2:])), parts[1])
        return Placed(work, _where(parts[1]), _named(parts))

    def one_in_each_then(self, parts: list[Any]) -> tuple[Item, ...]:
        return self.one_in_each(parts[:-2]), self.one_in_each([parts[0], *parts[-2:]])

    def all_in_one(self, parts: list[Any]) -> Placed:
        node: Into = self._put_into(parts[0], parts[1])
        in_each = "EACH_OF" in parts[1].type
        placed = Repeat((node,), _number(parts[2:])) if in_each else node
        return Placed(placed, _where(parts[1]), _named(parts))

    def one_in_top(self, parts: list[Any]) -> Placed:
        return Placed(Work(self.words.key(parts[0])), "top", chains=parts[1])

    def all_in_top(self, parts: list[Any]) -> Placed:
        return Placed(parts[0], "top", chains=parts[1])

    def in_top(self, parts: list[Token]) -> int:
        """Of how many chains the top was named; 0: the turning chain, whatever it has."""
        return int("0" + "".join(re.findall(r"\d+", parts[-1])))

    def several(self, parts: list[Token]) -> Into:
        if not int(parts[0]):
            raise InputError("0 stitches in a place leave it out; write that it is skipped")
        return Into((self._work(parts),))

    def named_group(self, parts: list[Token]) -> Into:
        return Into(self.words.stitches[self.words.key(parts[0])].works)

    def listed(self, parts: list[Item]) -> tuple[Item, ...]:
        return tuple(parts)

    def in_one(self, parts: list[Any]) -> Into:
        """What is listed in brackets, all of it worked into one place."""
        return Into(tuple(inside(item, self.words) for item in parts[0]))

    def _put_into(self, node: Any, where: Token) -> Any:  # noqa: ANN401 — the type it is given
        return self.words.put_into(node, where) if where.type.startswith("INTO") else node

    def over(self, parts: list[Any]) -> Over:
        *times, word, where, places, noun = parts
        times_ = int(times[0]) if times else 1
        return Over(str(word), times_, int(places), _where(where), noun)

    def bare_one(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[0]))

    def bare_many(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[1]), int(parts[0]))

    def together(self, parts: list[Token]) -> Tog:
        return Tog(str(parts[0]))

    def each(self, parts: list[Any]) -> Each:
        last = parts.pop() if isinstance(parts[-1], tuple) else ()
        found: list[tuple[Work | Into, bool, list[Noun]]] = []
        for part in parts:
            if isinstance(part, str):
                found[-1][2].append(part)
            else:
                found.append((*part, []))
        (node, remaining, nouns), *others = found
        more = tuple(InKind(node, tuple(nouns)) for node, _, nouns in others)
        stitch, into = ("", node) if isinstance(node, Into) else (node.stitch, None)
        return Each(stitch, into, remaining, tuple(nouns), last, more)

    def each_head(self, parts: list[Any]) -> list[Any]:
        """What is worked into each, and whether into those that remain."""
        what, *tokens = parts
        node: Any = what if isinstance(what, Into) else Work(self.words.key(what))
        into = next((token for token in tokens if token.type == "INTO_EACH"), None)
        if into is not None:
            node = self.words.put_into(node, into)
        return [node, any(token.type == "REMAINING" for token in tokens)]

    def skip_others(self, _: list[Token]) -> SkippedOthers:
        return SkippedOthers()

    def group(self, parts: list[Any]) -> Group:
        *items, times = parts
        listed = items[0] if isinstance(items[0], tuple) else items
        return Group(self._items(listed), times)

    def often(self, parts: list[Token]) -> int:
        return 2 if parts[0].type == "TWICE" else int(parts[0])

    def _items(self, parts: Iterable[Any]) -> tuple[Item, ...]:
        """Items one after the other, those in the same place as the one before brought together."""
        return in_same_place(with_others(filter(is_worked, _flat(parts))), self.words)

    def starred(self, parts: list[Any]) -> Starred:
        *items, last = parts
        if isinstance(last, tuple) and isinstance(last[0], Counted):
            return Starred(self._items(items), last)
        return Starred(self._items(parts))

    def again_from(self, parts: list[Any]) -> Group:
        """A number of times more than the once that was written."""
        *items, more = parts
        word = more.split()[0].lower()
        times = {"once": 1, "twice": 2}.get(word) or int(word)
        return Group(self._items(items), 1 + times)

    def to_last(self, parts: list[Counted]) -> tuple[Counted, ...]:
        return tuple(parts)

    def count(self, parts: list[Any]) -> Counted:
        return Counted(_number(parts), parts[-1])

    def change(self, parts: list[Token]) -> Changed:
        return Changed(str(parts[0]), carried=len(parts) == 1)

    def evenly(self, parts: list[Any]) -> Evenly:
        count, stitch, over, noun, *shares = parts
        return Evenly(self.words.key(stitch), int(count), int(over), tuple(shares), noun)

    def share(self, parts: list[Token]) -> tuple[int, int]:
        return int(parts[0]), int(parts[1])

    def skip(self, parts: list[Any]) -> Skipped:
        return Skipped(_number(parts[1:]), parts[-1])

    def leave(self, parts: list[Any]) -> Unworked:
        for_now = isinstance(parts[-1], Token) and parts[-1].type == "FOR_NOW"
        named = parts[:-1] if for_now else parts
        return Unworked(_number(named), for_now, named[-1])

    def slide(self, parts: list[Token]) -> Made:
        return Made(self._work(parts))

    def foundation_run(self, parts: list[Token]) -> Made:
        return Made(self._work(parts))

    def ring_made(self, parts: list[Token]) -> Made:
        return Made(self._work(parts))

    def _work(self, parts: list[Token]) -> Work:
        """A stitch with the number before it, if there is one."""
        return Work(self.words.key(parts[-1]), int(parts[0]) if len(parts) > 1 else 1)

    # Endings

    def untwisted(self, _: list[Any]) -> Ending:
        return Ending("untwisted")

    def join_first(self, parts: list[Token]) -> Ending:
        return Ending("join_first", slip=str(parts[0]), word=str(parts[1]))

    def join_top(self, parts: list[Token]) -> Ending:
        return Ending("join_top", slip=str(parts[0]), chains=int(parts[1].rpartition("-")[2]))

    def join_nth(self, parts: list[Token]) -> Ending:
        nth = int(re.findall(r"\d+", parts[1])[0])
        return Ending("join_top", slip=str(parts[0]), chains=nth)

    def join_plain(self, parts: list[Token]) -> Ending:
        return Ending("join", slip=str(parts[0]) if parts else "")

    def join_ring(self, parts: list[Token]) -> Ending:
        return Ending("join_ring", slip=str(parts[0]))

    def no_join(self, _: list[Any]) -> Ending:
        return Ending("no_join")

    def no_turn(self, _: list[Any]) -> Ending:
        return Ending("no_turn")

    def turn(self, _: list[Any]) -> Ending:
        return Ending("turn")

    # The spread of a seam

    def spread(self, parts: list[tuple[int, ...]]) -> tuple[int, ...]:
        return sum(parts, ())

    def spread_one(self, parts: list[Token]) -> tuple[int, ...]:
        return (int(parts[0]),)

    def spread_many(self, parts: list[Token]) -> tuple[int, ...]:
        return (int(parts[0]),) * int(parts[-1])

    def spread_group(self, parts: list[Any]) -> tuple[int, ...]:
        *items, times = parts
        return tuple(sum(items, ())) * int(times)


def _flat(parts: Iterable[Any]) -> list[Item]:
    """Items one after the other, of which some rules give several at once."""
    flat: list[Item] = []
    for part in parts:
        flat += part if isinstance(part, tuple) else (part,)
    return flat


def _number(parts: list[Any]) -> int:
    """The number among some parts; 1 when there is none."""
    found = (int(part) for part in parts if isinstance(part, Token) and part.type == "NUMBER")
    return next(found, 1)


def _where(token: Token) -> Where:
    return WHERE[token.type.rpartition("_")[2]]


def _named(parts: list[Any]) -> Noun:
    """The place that was named last; a ring names itself."""
    last = next(part for part in reversed(parts) if part is not None)
    return "ring" if isinstance(last, Token) and last.type == "IN_RING" else str(last)


def _noun(word: Token) -> Noun:
    """A place by its kind, without its number."""
    plain = " ".join(word.lower().split())
    if word.type == "SPACE":
        return "sp"
    if word.type == "CHAIN_SPACE":
        return "sp" + str(re.findall(r"\d+", plain)[0])
    if plain.startswith("row"):
        return "end"
    return "st" if plain.startswith("stitch") else plain.removesuffix("s")


def _kind(word: str) -> Any:  # noqa: ANN401 — a literal of Label
    return "round" if word.lower().startswith(("rnd", "round")) else "row"


def _sides(parts: list[Any]) -> tuple[str, ...]:
    return parts[-1] if parts and isinstance(parts[-1], tuple) else ()
