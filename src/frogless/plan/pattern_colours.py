"""Stitch patterns in several colours within a piece: which is in use where a pattern begins and ends."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from frogless.plan.patterned import BASE
from frogless.plan.sections import Span
from frogless.rows.nodes import Change, Row
from frogless.rows.walk import nodes


def begin_colour(spans: Sequence[Span]) -> str:
    """The letter of the colour a piece begins with: that of its first pattern in colours."""
    letters = (span.worked.pattern.way.colour for span in spans if span.worked)
    return next(filter(None, letters), "")


def carried_on(rows: Sequence[Row], spans: Sequence[Span]) -> list[Row]:
    """The rows with each pattern begun in its own colour, and none begun for what does not come.

    A change at the end of a pattern's last round is for the round that would follow, and falls away;
    where the next stretch of a pattern begins in another colour, the round below brings it.
    """
    colour = begin_colour(spans)
    if not colour:
        return list(rows)
    first, last = dict(_begins(spans)), frozenset(_ends(spans))
    made: list[Row] = []
    for row in rows:
        wanted = first.get(row.number, "")
        if wanted and wanted != colour and made:
            made[-1] = replace(made[-1], body=(*made[-1].body, Change(wanted)))
            colour = wanted
        body = row.body
        if row.number in last and body and isinstance(body[-1], Change):
            body = body[:-1]
        made.append(replace(row, body=body))
        changes = [node.colour for node, _ in nodes(body) if isinstance(node, Change)]
        colour = changes[-1] if changes else colour
    return made


def _begins(spans: Sequence[Span]) -> Iterator[tuple[int, str]]:
    """Rounds that begin a pattern anew, each with the colour that it begins with."""
    for span in spans:
        for i, one in enumerate(span.worked.rounds if span.worked else (), 1):
            if one.row == 0 and span.worked:
                yield span.rounds_above + i, span.worked.pattern.way.colour


def _ends(spans: Sequence[Span]) -> Iterator[int]:
    """Rounds of a pattern after which it does not go on."""
    numbered = [
        (span.rounds_above + i, one.row)
        for span in spans
        for i, one in enumerate(span.worked.rounds if span.worked else (), 1)
    ]
    for (number, row), (following, after) in pairwise([*numbered, (-1, BASE)]):
        if row != BASE and (following != number + 1 or after != row + 1):
            yield number
