"""Names of files that any system can have, made of the names that people give."""

from __future__ import annotations

import re
import unicodedata

LONGEST = 60
"""Letters; paths stay far below what the shortest-minded system takes."""

RESERVED = {"con", "prn", "aux", "nul", *(f"{d}{n}" for d in ("com", "lpt") for n in range(10))}
"""What Windows keeps for itself, with any ending. Source: its naming conventions, from memory."""

_OTHER = re.compile(r"[^a-z0-9]+")


def stem(name: str, taken: set[str] | None = None, instead: str = "document") -> str:
    """A name of lower-case letters, digits and hyphens; the first with a number that is free.

    Args:
        taken: names that are in use; the new one is added.
        instead: the name of what has no such letter in it.

    >>> stem("Crème brûlée, washed!"), stem("CON"), stem("编织")
    ('creme-brulee-washed', 'con-file', 'document')
    """
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    base = _OTHER.sub("-", plain).strip("-")[:LONGEST].strip("-") or instead
    if base in RESERVED:
        base = f"{base}-file"
    if taken is None:
        return base
    found, number = base, 2
    while found in taken:
        found, number = f"{base}-{number}", number + 1
    taken.add(found)
    return found
