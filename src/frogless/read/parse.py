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
    Backwards,
    Bare,
    Each,
    Ending,
    Group,
    Handling,
    Label,
    Marked,
    NoTurningChain,
    Over,
    Said,
    SaidChain,
    Tog,
)
from frogless.read.vocabulary import Vocabulary
from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Work

GRAMMAR = Path(__file__).with_name("pattern.lark")


def parse_row(text: str, vocabulary: Vocabulary) -> Said:
    """What a line says.

    Raises:
        InputError: a word that is not understood or does not fit, with its column, an excerpt and
            a guess.
    """
    result = _parse(text, "row", vocabulary)
    if not isinstance(result, Said):
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


class _Builder(Transformer[Token, Any]):
    """Each method is a rule of the grammar; it gets what the rule's parts gave."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        super().__init__()
        self.words = vocabulary

    # Lines and labels

    def row(self, parts: list[Any]) -> Said:
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

    def each_counted(self, _: list[Any]) -> str:
        return "each_counted"

    def one_space(self, _: list[Any]) -> str:
        return "one_space"

    def no_turning_chain(self, _: list[Any]) -> NoTurningChain:
        return NoTurningChain()

    def backwards(self, _: list[Any]) -> Backwards:
        return Backwards()

    def one_in_each(self, parts: list[Token]) -> Work:
        return Work(self.words.key(parts[0]), int(parts[1]) if len(parts) > 1 else 1)

    def all_in_one(self, parts: list[Into]) -> Into:
        return parts[0]

    def several(self, parts: list[Token]) -> Into:
        return Into((self._work(parts),))

    def listed(self, parts: list[Node]) -> Into:
        return Into(tuple(parts))

    def over(self, parts: list[Token]) -> Over:
        times = int(parts[0]) if len(parts) > 2 else 1
        return Over(str(parts[-2]), times, int(parts[-1]))

    def bare_one(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[0]))

    def bare_many(self, parts: list[Token]) -> Bare:
        return Bare(str(parts[1]), int(parts[0]))

    def together(self, parts: list[Token]) -> Tog:
        return Tog(str(parts[0]))

    def each(self, parts: list[Any], *, spaces: bool = False) -> Each:
        what = parts[0]
        remaining = any(isinstance(part, Token) and part.type == "REMAINING" for part in parts)
        if isinstance(what, Into):
            return Each("", what, remaining, spaces)
        return Each(self.words.key(what), None, remaining, spaces)

    def each_and_space(self, parts: list[Any]) -> Each:
        return self.each(parts, spaces=True)

    def group(self, parts: list[Any]) -> Group | Repeat:
        *items, times = parts
        if all(isinstance(item, Node) for item in items):
            return Repeat(tuple(items), int(times))
        return Group(tuple(items), int(times))

    def skip(self, parts: list[Token]) -> Skip:
        return Skip(int(parts[1]) if len(parts) > 1 else 1)

    def slide(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def foundation_run(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def inner_one(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def inner_many(self, parts: list[Token]) -> Work:
        return self._work(parts)

    def inner_chain(self, parts: list[Token]) -> Chain:
        return Chain(int(parts[1]))

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


def _kind(word: str) -> Any:  # noqa: ANN401 — a literal of Label
    return "round" if word.lower().startswith(("rnd", "round")) else "row"


def _sides(parts: list[Any]) -> tuple[str, ...]:
    return parts[-1] if parts and isinstance(parts[-1], tuple) else ()
