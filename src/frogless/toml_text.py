"""A TOML text: on which line each key stands, and what is wrong with it in plain words."""

from __future__ import annotations

import re
import tomllib
from typing import Any

Steps = tuple[str | int, ...]
"""The way to a value in a document: `("section", 1, "length")`."""

LONGEST = 50_000
"""Characters in a file; the longest example has 5,000 (own choice)."""

MOST_NAMES = 20
"""In a key such as `pattern.lattice.parameters`; none that is known has more than four. Each name of a
key costs a parser as much as all before it."""

MOST_DIGITS = 1000
"""Of one number; Python itself takes 4300 at most."""

_LONG_KEY = re.compile(
    rf"(?<![\w.\-])(?:(?:[\w\-]++|\"[^\"\n]*+\"|'[^'\n]*+')[ \t]*+\.[ \t]*+){{{MOST_NAMES}}}"
)
_LONG_NUMBER = re.compile(rf"[0-9_]{{{MOST_DIGITS}}}")

_SAID_OF_TEXT = (
    (
        re.compile(r"\r(?!\n)"),
        "its lines end as on old Macs; save it with Unix or Windows line ends",
    ),
    (re.compile(r"\0"), "it is not a text file, or a damaged one"),
)
_SAID_OF_LINE = (
    (
        re.compile("[=\\[,]\\s*[\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb]"),
        'these quotes are curly; write straight ones: "',
    ),
    (
        re.compile(r"=\s*[\d.,]+(?:\s+\d+/\d+)?\s*[A-Za-z\"\'\u2033\u2032]"),
        'a size stands in quotes with its unit, such as "72.5 cm"',
    ),
)
_SAID_OF_REASON = (
    (
        re.compile(r"cannot declare \('?([^',)]+)'?,\) twice", re.IGNORECASE),
        "[{0}] stands twice; a table that may stand again is written [[{0}]] each time",
    ),
    (re.compile("cannot overwrite a value", re.IGNORECASE), "this key stands twice in its table"),
    (
        re.compile(r"illegal character '\\n'|unterminated string|expected [\"']{3}", re.IGNORECASE),
        "a text is not closed; it ends with the quote it begins with, on the same line",
    ),
)


def overgrown(text: str) -> tuple[int | None, str] | None:
    """What nobody writes by hand and a parser should not be asked about: its line, and why.

    >>> overgrown("a = 1\\nb" + ".b" * 20 + " = 1")
    (2, 'more than 20 names stand in one key')
    """
    if len(text) > LONGEST:
        return None, f"has {len(text):,} characters; at most {LONGEST:,} are read"
    if found := _LONG_KEY.search(text):
        return text.count(
            "\n", 0, found.start()
        ) + 1, f"more than {MOST_NAMES} names stand in one key"
    if found := _LONG_NUMBER.search(text):
        return text.count(
            "\n", 0, found.start()
        ) + 1, f"a number has {MOST_DIGITS:,} digits at most"
    return None


def table(text: str) -> dict[str, Any]:
    """What stands in a text, for whoever can do without; empty when it is overgrown or no TOML.

    >>> table('name = "Ada"')["name"], table("name = ")
    ('Ada', {})
    """
    if overgrown(text) is not None:
        return {}
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError):
        return {}


def in_plain_words(reason: str, text: str, line: int | None) -> str:
    """What is wrong with a text that is not valid TOML.

    Args:
        reason: as `tomllib` says it; told as it is when nothing plainer is known.
        line: where, counted from 1, as far as it is known.
    """
    lines = text.split("\n")
    stands = lines[line - 1] if line and line <= len(lines) else ""
    for table, place in ((_SAID_OF_TEXT, text), (_SAID_OF_LINE, stands), (_SAID_OF_REASON, reason)):
        for pattern, words in table:
            if found := pattern.search(place):
                return words.format(*found.groups())
    return f"{reason[:1].lower()}{reason[1:]}"


_STRING = re.compile(
    r'"""(?:\\.|[^\\])*?"{3,5}|\'{3}.*?\'{3,5}|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'', re.DOTALL
)
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_BARE_VALUE = re.compile(r"[^,\]}\n#]*")
_BLANK = re.compile(r"(?:\s|#[^\n]*)*")


def key_lines(text: str) -> dict[Steps, int]:
    """The line of every key, table and list item of a valid TOML text.

    `tomllib` keeps no places and the containers of `tomlkit` have none, hence this scan.
    """
    return _Scan(text).lines


class _Scan:
    """One pass over a text that is known to be valid TOML."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.lines: dict[Steps, int] = {}
        self.last: dict[Steps, int] = {}  # index of the newest table of each array of tables
        table: Steps = ()
        while self._skip_blank():
            if self._take("["):
                table = self._header(array=self._take("["))
            else:
                self._pair(table)

    def _note(self, steps: Steps) -> None:
        self.lines.setdefault(steps, self.text.count("\n", 0, self.at) + 1)

    def _skip_blank(self) -> bool:
        found = _BLANK.match(self.text, self.at)
        self.at = found.end() if found else self.at
        return self.at < len(self.text)

    def _take(self, sign: str) -> bool:
        taken = self.text.startswith(sign, self.at)
        self.at += len(sign) if taken else 0
        return taken

    def _match(self, pattern: re.Pattern[str]) -> str:
        found = pattern.match(self.text, self.at)
        self.at = found.end() if found else len(self.text)
        return found[0] if found else ""

    def _key(self) -> list[str]:
        keys = []
        while True:
            self._skip_blank()
            sign = self.text[self.at]
            part = self._match(_STRING if sign in "\"'" else _BARE_KEY)
            keys.append(tomllib.loads(f"key = {part}")["key"] if sign in "\"'" else part)
            self._skip_blank()
            if not self._take("."):
                return keys

    def _header(self, *, array: bool) -> Steps:
        steps: Steps = ()
        keys = self._key()
        for place, key in enumerate(keys):
            steps = (*steps, key)
            self._note(steps)
            if array and place == len(keys) - 1:
                self.last[steps] = self.last.get(steps, -1) + 1
            if steps in self.last:
                steps = (*steps, self.last[steps])
                self._note(steps)
        self._take("]]" if array else "]")
        return steps

    def _pair(self, table: Steps) -> None:
        steps = table
        for key in self._key():
            steps = (*steps, key)
            self._note(steps)
        self._take("=")
        self._value(steps)

    def _value(self, steps: Steps) -> None:
        self._skip_blank()
        if self.text[self.at] in "\"'":
            self._match(_STRING)
        elif self._take("["):
            self._items(steps)
        elif self._take("{"):
            while self._skip_blank() and not self._take("}"):
                if not self._take(","):
                    self._pair(steps)
        else:
            self._match(_BARE_VALUE)

    def _items(self, steps: Steps) -> None:
        place = 0
        while self._skip_blank() and not self._take("]"):
            if not self._take(","):
                self._note((*steps, place))
                self._value((*steps, place))
                place += 1
