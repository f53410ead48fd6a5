"""The parser of a dialect. Its tables are made once, since no dialect changes the grammar's rules."""

from __future__ import annotations

import pickle
import re
from functools import cache
from io import BytesIO
from pathlib import Path

from lark import Lark
from lark.lexer import PatternRE

GRAMMAR = Path(__file__).with_name("pattern.lark")
_TERMINAL = re.compile(r"(?P<name>\w+)(?:\.\d+)?: /(?P<pattern>.*)/i")


@cache
def parser(terminals: str) -> Lark:
    """The parser whose words of a dialect are these terminals, one to a line.

    The first takes about half a second, each of the others a hundredth of that.
    """
    saved = pickle.loads(_tables())  # noqa: S301 — pickled by this very process
    patterns = dict(_named(terminals))
    for each in saved["memo"].values():
        if each["__type__"] == "TerminalDef" and each["name"] in patterns:
            each["pattern"] = PatternRE(patterns[each["name"]], ("i",)).serialize()
    return Lark.load(BytesIO(pickle.dumps(saved)))


@cache
def _tables() -> bytes:
    """The tables with a placeholder for each word of a dialect."""
    names = re.findall(r"[A-Z_]+", NAMES)
    words = "\n".join(f"{name}: /{name}/" for name in names)
    made = Lark(
        GRAMMAR.read_text(encoding="utf-8") + "\n" + words + "\n",
        parser="lalr",
        start=["row", "spread"],
        maybe_placeholders=False,
    )
    saved = BytesIO()
    made.save(saved)
    return saved.getvalue()


def _named(terminals: str) -> Iterator[tuple[str, str]]:
    for line in terminals.splitlines():
        if found := _TERMINAL.fullmatch(line):
            yield found["name"], found["pattern"]
