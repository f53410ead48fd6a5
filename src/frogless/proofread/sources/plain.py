"""Bytes as text: the encodings that editors write."""

from __future__ import annotations

import codecs
import re

from frogless.errors import InputError
from frogless.proofread.sources.source import ACCEPTED

_MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),  # begins as UTF-16 does, so it is asked for first
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f]")
MOST_CONTROL = 0.01
FEW_CONTROL = 8
"""Share of control characters from which on it is no text; a short text may have a few."""

AS_WINDOWS = (
    "The file is not UTF-8; it was read as Windows-1252. Look at letters with accents, quotation "
    "marks and dashes."
)


def decoded(data: bytes) -> tuple[str, tuple[str, ...]]:
    """The text, and what is to be said of how it was read.

    Raises:
        InputError: it is no text, or does not hold to the encoding that its beginning says.
    """
    for mark, encoding in _MARKS:
        if data.startswith(mark):
            return _strictly(data[len(mark) :], encoding), ()
    if encoding := _wide(data):
        return _strictly(data, encoding), ()
    remarks: tuple[str, ...] = ()
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        text, remarks = data.decode("cp1252", errors="replace"), (AS_WINDOWS,)
    if len(_CONTROL.findall(text)) > max(FEW_CONTROL, MOST_CONTROL * len(text)):
        raise InputError(f"this is no text; {ACCEPTED}")
    return text, remarks


def _strictly(data: bytes, encoding: str) -> str:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        raise InputError(
            f"this begins as {encoding[:6].upper()} text and does not go on so; save it as UTF-8"
        ) from None


def _wide(data: bytes) -> str:
    """UTF-16 without a mark: nearly every second byte of English is zero."""
    begin = data[:2000]
    half = len(begin) // 2
    if half < 4 or len(data) % 2:
        return ""
    low, high = begin[::2].count(0), begin[1::2].count(0)
    if high > 0.8 * half and low < 0.1 * half:
        return "utf-16-le"
    return "utf-16-be" if low > 0.8 * half and high < 0.1 * half else ""
