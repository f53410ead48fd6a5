"""Design files read: one tube with its tables at the top, or a list of pieces."""

from __future__ import annotations

import re
import tomllib
from functools import lru_cache
from pathlib import Path

from frogless.design.document import Design, PiecesDesign, TubeDesign
from frogless.errors import InputError, Place
from frogless.files import Document, parse_document, read_text

WHAT = "design file"

LONGEST = 50_000
"""Characters in a design file; the longest example has 5,000 (own choice)."""

DEEPEST = 20
"""Names in a key such as `pattern.lattice.parameters` (own choice); no key has more than four."""

_DOTTED = re.compile(
    rf"(?<![\w.\-])(?:(?:[\w\-]++|\"[^\"\n]*+\"|'[^'\n]*+')[ \t]*+\.[ \t]*+){{{DEEPEST}}}"
)
KEPT = 64
"""Texts that are remembered: whoever edits one thing drafts with the others as they were."""


def read_design(path: Path | str) -> Document[Design]:
    """A design from its file.

    Raises:
        InputError: it cannot be read, is no TOML, or keys are missing, unknown or wrong.
    """
    path = Path(path)
    return parse_design(read_text(path, what=WHAT), path.name)


@lru_cache(maxsize=KEPT)
def parse_design(text: str, name: str = "") -> Document[Design]:
    """A design from its text; `name` is what its faults are told of.

    Raises:
        InputError: as `read_design`, or the text is far too long for a design.
    """
    if len(text) > LONGEST:
        told = f"this {WHAT} has {len(text):,} characters; at most {LONGEST:,} are read"
        raise InputError(told, Place(name))
    # Each name of a key costs as much as all before it.
    if found := _DOTTED.search(text):
        line = text.count("\n", 0, found.start()) + 1
        raise InputError(f"more than {DEEPEST} names stand in one key", Place(name, line))
    model: type[Design] = PiecesDesign if _has_pieces(text) else TubeDesign
    return parse_document(text, name, model, what=WHAT)


def _has_pieces(text: str) -> bool:
    try:  # what is no TOML is told of where it is parsed for good
        return "piece" in tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError):
        return False
