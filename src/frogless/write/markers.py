"""Which stitch of a group each marker moves up into.

Markers are numbered from the join as seen with the right side facing, so that each keeps its
number: a row worked the other way meets the last one first.
"""

from __future__ import annotations

from itertools import pairwise

from frogless.rows.nodes import Piece, Row, Together
from frogless.rows.walk import nodes
from frogless.write.phrases import Phrases


def by_number(row: Row) -> tuple[int, ...]:
    """The stitch of its group (0 first) for marker 1, 2, …; `marks` has the order worked."""
    return row.marks[::-1] if (row.side == "WS") != row.backwards else row.marks


def say_markers(row: Row, phrases: Phrases, *, standing: int) -> str:
    """Where the markers go in a shaping row, or nothing in a row without shaping.

    Markers that are more or fewer than the shaping points do not lead to them: they are placed
    anew.

    Args:
        standing: how many markers stand in the work.
    """
    if not row.marks:
        return ""
    placed = standing == len(row.marks)
    parts = [_part(numbers, index, phrases, placed) for index, numbers in _by_stitch(row)]
    joined = parts[0]
    for part in parts[1:]:
        joined = phrases.say("and", a=joined, b=part)
    name = "move_markers" if placed else "replace_markers" if standing else "place_markers"
    return phrases.say(name, parts=joined, group=phrases.say(_group(row)))


def say_in_general(piece: Piece, phrases: Phrases) -> str:
    """What holds for the markers of a piece in all its rows, or nothing when it has none."""
    if not any(row.marks for row in piece.rows):
        return ""
    if not piece.closed:
        return phrases.say("markers_general_rows")
    turned = any(row.side == "WS" for row in piece.rows if row.marks)
    return phrases.say("markers_general" if turned else "markers_general_unturned")


def say_numbers(numbers: tuple[int, ...]) -> str:
    """Numbers as short as they get: "1–8", "1, 3", "1–3, 5"."""
    runs = [[numbers[0]]]
    for before, after in pairwise(numbers):
        if after == before + 1:
            runs[-1].append(after)
        else:
            runs.append([after])
    return ", ".join(_run(run) for run in runs)


def _run(run: list[int]) -> str:
    return ", ".join(map(str, run)) if len(run) < 3 else f"{run[0]}\u2013{run[-1]}"


def _by_stitch(row: Row) -> list[tuple[int, tuple[int, ...]]]:
    """For each stitch of the group that markers go into, their numbers, the lowest first."""
    numbers: dict[int, list[int]] = {}
    for number, index in enumerate(by_number(row), start=1):
        numbers.setdefault(index, []).append(number)
    return [(index, tuple(found)) for index, found in numbers.items()]


def _part(numbers: tuple[int, ...], index: int, phrases: Phrases, placed: bool) -> str:
    many = "markers" if len(numbers) > 1 else "marker"
    name = f"{many}_{'moved' if placed else 'placed'}"
    return phrases.say(name, numbers=say_numbers(numbers), nth=phrases.nth(index + 1))


def _group(row: Row) -> str:
    decreasing = any(isinstance(node, Together) for node, _ in nodes(row.body))
    each = "each" if len(row.marks) > 1 else "the"
    return f"of_{each}_{'decrease' if decreasing else 'increase'}"
