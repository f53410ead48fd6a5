"""Texts that no parser should be asked about, told before it is."""

from __future__ import annotations

import re

MOST_DOTS = 500
"""On one line. A key of so many parts takes a parser as many times as much memory, squared."""

MOST_DIGITS = 1000
"""Of one number; Python itself takes 4300 at most."""

_LONG_NUMBER = re.compile(rf"[0-9_]{{{MOST_DIGITS}}}")


def overgrown(text: str) -> tuple[int, str] | None:
    """The first line that nobody wrote by hand and that would take a parser too long, and why.

    >>> overgrown("a = 1\\nb" + ".b" * 501 + " = 1")
    (2, 'this line has more than 500 dots; a key has a few parts')
    """
    if text.count(".") > MOST_DOTS:
        for number, line in enumerate(text.split("\n"), 1):
            if line.count(".") > MOST_DOTS:
                return number, f"this line has more than {MOST_DOTS} dots; a key has a few parts"
    if found := _LONG_NUMBER.search(text):
        line_number = text.count("\n", 0, found.start()) + 1
        return line_number, f"a number has {MOST_DIGITS} digits at most"
    return None
