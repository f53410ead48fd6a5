"""The title in the text of a design."""

from __future__ import annotations

import json
import re

TITLE = re.compile(r'^[ \t]*title[ \t]*=[ \t]*("(?:[^"\\\n]|\\.)*"|\'[^\'\n]*\')', re.MULTILINE)
FIRST_TABLE = re.compile(r"^[ \t]*\[", re.MULTILINE)
"""A title stands above the first table."""


def retitled(text: str, title: str) -> str | None:
    """The text of a design with another title, every other letter as it was; None when it has none.

    >>> retitled('format = "frogless-design/1"\\ntitle = "One"   # mine\\n', "Two")
    'format = "frogless-design/1"\\ntitle = "Two"   # mine\\n'
    """
    head = FIRST_TABLE.search(text)
    found = TITLE.search(text, 0, head.start() if head else len(text))
    if found is None:
        return None
    written = json.dumps(title, ensure_ascii=False)
    return text[: found.start(1)] + written + text[found.end(1) :]
