"""A pattern's text, read from a file, an upload or the standard input."""

from __future__ import annotations

import sys
from pathlib import Path

from frogless.errors import InputError, Place
from frogless.files import read_bytes
from frogless.proofread.sources.letters import tidied
from frogless.proofread.sources.plain import decoded
from frogless.proofread.sources.recognize import kind_of
from frogless.proofread.sources.source import (
    ACCEPTED,
    MOST_BYTES,
    MOST_LETTERS,
    Kind,
    Source,
)

STANDARD_INPUT = "standard input"


def read_source(path: Path | str) -> Source:
    """The text of a file; "-" is the standard input.

    Raises:
        InputError: it cannot be read, is too large, is none of what is read, or has no text.
    """
    if str(path) == "-":
        return text_of(sys.stdin.buffer.read(MOST_BYTES + 1), named(path))
    data = read_bytes(path, what="written pattern", most=MOST_BYTES + 1)
    return text_of(data, named(path))


def named(path: Path | str) -> str:
    """By which the faults of a file are told."""
    return STANDARD_INPUT if str(path) == "-" else Path(path).name


def text_of(data: bytes, name: str) -> Source:
    """The text of a file's bytes.

    Args:
        name: by which faults are told; its ending tells Markdown from text and nothing else.

    Raises:
        InputError: as `read_source`.
    """
    try:
        return _text_of(data, name)
    except InputError as error:
        raise error.at(Place(name)) from None


def _text_of(data: bytes, name: str) -> Source:
    if len(data) > MOST_BYTES:
        raise InputError(
            f"the file is larger than {MOST_BYTES // 1_000_000} MB, the most that is read; "
            "leave out the pictures, or save the text alone"
        )
    if not data.strip():
        raise InputError(f"the file is empty; {ACCEPTED}")
    kind = kind_of(data, name)
    text, remarks = _drawn(data, kind)
    text = tidied(text)
    if len(text) > MOST_LETTERS:
        raise InputError(f"the text has {len(text)} letters; {MOST_LETTERS} are the most")
    if not text.strip():
        raise InputError(f"there is no text in it; {ACCEPTED}")
    return Source(text, kind, remarks)


def _drawn(data: bytes, kind: Kind) -> tuple[str, tuple[str, ...]]:
    # Imported here: whoever proofreads plain text need not wait for the libraries.
    if kind == "pdf":
        from frogless.proofread.sources.pdf import drawn_from_pdf

        return drawn_from_pdf(data)
    if kind == "docx":
        from frogless.proofread.sources.docx_file import drawn_from_docx

        return drawn_from_docx(data)
    return decoded(data)
