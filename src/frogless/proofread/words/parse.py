"""A clause parsed: the grammar of `clause.lark` over the kinds of its tokens."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from lark import Lark, Tree
from lark import Token as Leaf
from lark.exceptions import UnexpectedInput
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
def parse(kinds: tuple[str, ...]) -> Parsed | None:
    """The tree of a clause, its leaves the places of its tokens; None when it does not parse."""
    if len(kinds) > LONGEST:
        return None
    try:
        return _parser().parse(kinds)
    except UnexpectedInput:
        return None


@cache
def _parser() -> Lark:
    text = GRAMMAR.read_text(encoding="utf-8")
    return Lark(text, parser="lalr", lexer=_Kinds, start="clause", maybe_placeholders=False)
