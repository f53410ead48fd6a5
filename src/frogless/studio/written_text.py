"""A text as it is kept, however it was written, pasted or saved: one rule for every editor."""

from __future__ import annotations

from django.http import HttpRequest

MARK = "\ufeff"
"""Some programs begin a text with it; it is no letter of the text, and no parser takes it."""


def plain(text: str) -> str:
    """A text as it is kept: without a mark before it, its lines ended as everywhere.

    >>> plain("a = 1\\r\\nb = 2\\r")
    'a = 1\\nb = 2\\n'
    """
    lines = text.replace("\r\n", "\n").replace("\r", "\n")
    return lines.replace("\0", "").lstrip(MARK)


def text_of(request: HttpRequest) -> str:
    """The text of a form as it is kept."""
    return plain(request.POST.get("text", ""))
