"""A clause parsed: the grammar of `clause.lark` over the kinds of its tokens."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from lark import Lark, Tree
from lark import Token as Leaf
from lark.exceptions import UnexpectedToken
from lark.lexer import Lexer

GRAMMAR = Path(__file__).with_name("clause.lark")
#: Shapes of clauses that are remembered; a pattern has some dozens.
KEPT = 8192
#: Words of a clause that are parsed as one; nobody writes a longer one.
LONGEST = 60

Parsed = Tree[Leaf]


class _Kinds(Lexer):
    """Hands the kinds of tokens on; each leaf knows which token it is."""

    def __init__(self, conf: Any) -> None:  # noqa: ANN401 - of lark's own making
        pass

    def lex(self, data: Any) -> Iterator[Leaf]:  # type: ignore[override]  # noqa: ANN401
        for index, kind in enumerate(data):
            yield Leaf(kind, str(index))


@lru_cache(maxsize=KEPT)
def parse(kinds: tuple[str, ...]) -> Parsed | int:
    """The tree of a clause, its leaves the places of its tokens.

    Of one that does not parse, how many of its tokens may still be the beginning of one.
    """
    if len(kinds) > LONGEST:
        return LONGEST
    try:
        return _parser().parse(kinds)
    except UnexpectedToken as error:
        return len(kinds) - 1 if error.token.type == "$END" else int(error.token)


@cache
def _parser() -> Lark:
    text = GRAMMAR.read_text(encoding="utf-8")
    return Lark(text, parser="lalr", lexer=_Kinds, start="clause", maybe_placeholders=False)
