"""The parser of a dialect: its tables are made once, for no dialect changes the grammar's rules."""

from __future__ import annotations

import pickle
import re
from functools import cache, lru_cache
from io import BytesIO
from pathlib import Path
from typing import Any

from lark import Lark
from lark.lexer import PatternRE

GRAMMAR = Path(__file__).with_name("pattern.lark")
_TERMINAL = re.compile(r"(?P<label>(?P<name>\w+)(?:\.\d+)?): /(?P<pattern>.*)/i")


@lru_cache(maxsize=32)
def parser(terminals: str) -> Lark:
    """The parser whose words of a dialect are these terminals, one to a line.

    The first takes about half a second, each of the others a hundredth of that.
    """
    told = [found for line in terminals.splitlines() if (found := _TERMINAL.fullmatch(line))]
    patterns = {each["name"]: each["pattern"] for each in told}
    saved = pickle.loads(_tables(tuple(each["label"] for each in told)))  # noqa: S301 — our own
    for each in saved["memo"].values():
        if each["__type__"] == "TerminalDef" and each["name"] in patterns:
            each["pattern"] = PatternRE(patterns[each["name"]], ("i",)).serialize()
    return Lark.load(saved)


def make_ready(terminals: str) -> None:
    """Makes all that the parser for these terminals otherwise makes when it meets it, in a second."""
    lexer: Any = parser(terminals).parser.lexer
    for each in {*lexer.lexers.values(), lexer.root_lexer}:
        each.scanner  # noqa: B018 — made when it is first asked for


@cache
def _tables(labels: tuple[str, ...]) -> bytes:
    """The tables, with its own name in the place of each terminal that depends on the dialect."""
    words = "\n".join(f"{label}: /{label.partition('.')[0]}/i" for label in labels)
    made = Lark(
        f"{GRAMMAR.read_text(encoding='utf-8')}\n{words}\n",
        parser="lalr",
        start=["row", "spread"],
        maybe_placeholders=False,
    )
    saved = BytesIO()
    made.save(saved)
    return saved.getvalue()
