"""Two lists of lines held against each other, never for longer than somebody waits. No Django."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from difflib import SequenceMatcher

MOST_WORK = 8_000_000
"""Lines of both and pairs of them that are the same, times the lines of the shorter text.

`SequenceMatcher` looks through what is left of both for every line that it finds, so this is what
it can come to. Texts with more, between what begins and ends alike, are told as two blocks. A
thousand lines have half as much; lines that come again hundreds of times have more.
"""

Group = tuple[str, int, int, int, int]
"""What to do to some old lines, as `SequenceMatcher.get_opcodes` tells it: tag, old, new."""


def groups(old: Sequence[str], new: Sequence[str]) -> Sequence[Group]:
    """What makes the new lines of the old; what begins and ends alike is looked at first.

    >>> groups(["a", "b", "d"], ["a", "c", "d"])
    [('equal', 0, 1, 0, 1), ('replace', 1, 2, 1, 2), ('equal', 2, 3, 2, 3)]
    """
    head = _alike(old, new)
    tail = _alike(old[head:][::-1], new[head:][::-1])
    ends = len(old) - tail, len(new) - tail
    inner = _inner(old[head : ends[0]], new[head : ends[1]])
    found = [("equal", 0, head, 0, head)] if head else []
    found += [(tag, i + head, j + head, k + head, m + head) for tag, i, j, k, m in inner]
    return [*found, ("equal", ends[0], len(old), ends[1], len(new))] if tail else found


def _alike(old: Sequence[str], new: Sequence[str]) -> int:
    """How many lines are the same from the beginning."""
    pairs = enumerate(zip(old, new, strict=False))
    return next((n for n, (one, other) in pairs if one != other), min(len(old), len(new)))


def _inner(old: Sequence[str], new: Sequence[str]) -> Sequence[Group]:
    if not old or not new:
        tag = "delete" if old else "insert"
        return [(tag, 0, len(old), 0, len(new))] if old or new else []
    if _work(old, new) > MOST_WORK:
        return [("replace", 0, len(old), 0, len(new))]
    return SequenceMatcher(None, old, new, autojunk=False).get_opcodes()


def _work(old: Sequence[str], new: Sequence[str]) -> int:
    there = Counter(new)
    alike = sum(there[line] for line in old)
    return (len(old) + len(new) + alike) * min(len(old), len(new))
