"""A line of text as a `Said`: the grammar, and what each of its rules gives."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from lark import Lark, Token, Transformer
from lark.exceptions import UnexpectedInput

from frogless.errors import InputError
from frogless.read.guess import not_understood
from frogless.read.spoken import (
    NOTHING,
    Across,
    Backwards,
    Bare,
    Changed,
    Each,
    Ending,
    Evenly,
    FromHook,
    Group,
    Handling,
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
    SameStart,
    Skipped,
    Starred,
    Tog,
    Unworked,
    Where,
)
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import Chain, Into, Node, Repeat, Work

GRAMMAR = Path(__file__).with_name("pattern.lark")


def parse_row(text: str, vocabulary: Vocabulary) -> Said | SaidAgain:
    """What a line says.

    Raises:
        InputError: a word that is not understood or does not fit, with its column, an excerpt and
            a guess.
    """
    result = _parse(text, "row", vocabulary)
    if not isinstance(result, Said | SaidAgain):
        raise TypeError(f"a row was parsed as {result!r}")
    return result


def parse_spread(text: str, vocabulary: Vocabulary) -> tuple[int, ...]:
    """How many stitches each place of a seam takes.

    Raises:
        InputError: as `parse_row`.
    """
    return tuple(_parse(text, "spread", vocabulary))


def _parse(text: str, start: str, vocabulary: Vocabulary) -> Any:  # noqa: ANN401 — a rule's own type
    parser = _parser(vocabulary.terminals)
    try:
        tree = parser.parse(text, start=start)
    except UnexpectedInput as error:
        raise InputError(not_understood(text, error, vocabulary)) from error
    return _Builder(vocabulary).transform(tree)


@cache
def _parser(terminals: str) -> Lark:
    grammar = GRAMMAR.read_text(encoding="utf-8") + "\n" + terminals + "\n"
    return Lark(grammar, parser="lalr", start=["row", "spread"], maybe_placeholders=False)


HANDLING: Mapping[str, Handling] = {
    "PLACE_MARKERS": "placed",
    "REPLACE_MARKERS": "replaced",
    "MOVE": "moved",
}


WHERE: Mapping[str, Where] = {
    "IN_NEXT": "next",
    "IN_FIRST": "first",
    "IN_LAST": "last",
    "IN_SAME": "same",
    "IN_RING": "ring",
    "OVER_NEXT": "next",
    "OVER_FIRST": "first",
    "OVER_LAST": "last",
}


class _Builder(Transformer[Token, Any]):
    """Each method is a rule of the grammar; it gets what the rule's parts gave."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        super().__init__()
        self.words = vocabulary

    # Lines and labels

    def repeated(self, parts: list[Any]) -> SaidAgain:
        label, (first, last, times), *stated = parts
        return SaidAgain(label, first, last, times, stated[0][1] if stated else None)

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
        items = tuple(part for part in parts if not isinstance(part, Ending))
        return "main", (items, endings)

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
        return SaidChain(int(parts[1]), parts[2] if len(parts) > 2 else "")

    def not_counted(self, _: list[Any]) -> str:
        return "not_counted"

    def counted(self, _: list[Any]) -> str:
        return "counted"

    def counted_next(self, _: list[Any]) -> str:
        return "counted_next"

    def each_counted(self, _: list[Any]) -> str:
        return "each_counted"

    def one_space(self, _: list[Any]) -> str:
        return "one_space"

    def from_hook(self, parts: list[Any]) -> FromHook:
        ordinal, _, *skipped, _, sense = parts
        return FromHook(int(ordinal[:-2]), int(skipped[0]) if skipped else 1, sense == "counted")

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
        return _noun(parts[0])

    def one_in_each(self, parts: list[Any]) -> Placed:
        work = Work(self.words.key(parts[0]), _number(parts[2:]))
        return Placed(work, WHERE[parts[1].type], _named(parts))

    def all_in_one(self, parts: list[Any]) -> Placed:
        return Placed(parts[0], WHERE[parts[1].type], _named(parts))

    def several(self, parts: list[Token]) -> Into:
        return Into((self._work(parts),))

    def listed(self, parts: list[Node]) -> Into:
        return Into(tuple(parts))

    def over(self, parts: list[Any]) -> Over:
        *times, word, where, places, noun = parts
        times_ = int(times[0]) if times else 1
        return Over(str(word), times_, int(places), WHERE[where.type], noun)

    def bare_one(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[0]))

    def bare_many(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[1]), int(parts[0]))

    def together(self, parts: list[Token]) -> Tog:
        return Tog(str(parts[0]))

    def each(self, parts: list[Any]) -> Each:
        what, *rest = parts
        remaining = any(isinstance(part, Token) for part in rest)
        nouns = tuple(part for part in rest if not isinstance(part, Token))
        if isinstance(what, Into):
            return Each("", what, remaining, nouns)
        return Each(self.words.key(what), None, remaining, nouns)

    def group(self, parts: list[Any]) -> Group:
        *items, times = parts
        return Group(tuple(items), int(times))

    def items(self, parts: list[Any]) -> tuple[Any, ...]:
        return tuple(parts)

    def starred(self, parts: list[Any]) -> Starred:
        items, *last = parts
        return Starred(items, *last[0]) if last else Starred(items)

    def to_last(self, parts: list[Any]) -> tuple[int, Noun]:
        return _number(parts), parts[-1]

    def change(self, parts: list[Token]) -> Changed:
        return Changed(str(parts[0]), carried=len(parts) == 1)

    def inner_group(self, parts: list[Any]) -> Repeat:
        *items, times = parts
        return Repeat(tuple(items), int(times))

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

    def inner_slide(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def foundation_run(self, parts: list[Token]) -> Made:
        return Made(self._work(parts))

    def ring_made(self, parts: list[Token]) -> Made:
        return Made(self._work(parts))

    def inner_one(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def inner_many(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def inner_chain(self, parts: list[Token]) -> Chain:
        return Chain(int(parts[1]), each=len(parts) > 2)

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

    def join_ring(self, parts: list[Token]) -> Ending:
        return Ending("join_ring", slip=str(parts[0]))

    def no_join(self, _: list[Any]) -> Ending:
        return Ending("no_join")

    def turn(self, _: list[Any]) -> Ending:
        return Ending("turn")

    # The spread of a seam

    def spread(self, parts: list[tuple[int, ...]]) -> tuple[int, ...]:
        return sum(parts, ())

    def spread_one(self, parts: list[Token]) -> tuple[int, ...]:
        return (int(parts[0]),)

    def spread_many(self, parts: list[Token]) -> tuple[int, ...]:
        return (int(parts[0]),) * int(parts[1])

    def spread_group(self, parts: list[Any]) -> tuple[int, ...]:
        *items, times = parts
        return tuple(sum(items, ())) * int(times)


def _number(parts: list[Any]) -> int:
    """The number among some parts; 1 when there is none."""
    found = (int(part) for part in parts if isinstance(part, Token) and part.type == "NUMBER")
    return next(found, 1)


def _named(parts: list[Any]) -> Noun:
    """The place that was named last; a ring names itself."""
    last = parts[-1]
    return "ring" if isinstance(last, Token) and last.type == "IN_RING" else str(last)


def _noun(word: Token) -> Noun:
    """A place by its kind, without its number."""
    plain = " ".join(word.lower().split())
    if word.type == "SPACE":
        return "sp"
    if word.type == "CHAIN_SPACE":
        return "sp" + plain.partition("-")[2].split()[0]
    return "end" if plain.startswith("row") else plain.removesuffix("s")


def _kind(word: str) -> Any:  # noqa: ANN401 — a literal of Label
    return "round" if word.lower().startswith(("rnd", "round")) else "row"


def _sides(parts: list[Any]) -> tuple[str, ...]:
    return parts[-1] if parts and isinstance(parts[-1], tuple) else ()
