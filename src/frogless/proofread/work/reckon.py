"""Every row worked over the row below, in every size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Unclear
from frogless.proofread.work.acts import every
from frogless.proofread.work.again import MOST_ROWS_OF_LINE
from frogless.proofread.work.choose import chosen, most_rows
from frogless.proofread.work.model import Assumption, Problem, Reckoning, Told, Worked
from frogless.proofread.work.standing import rows_of


def reckon(told: Sequence[Told], lexicon: Lexicon, sizes: int) -> Reckoning:
    """What each row uses and makes.

    Where the text leaves open how it is meant, it is read in the way in which the fewest rows of
    the whole pattern go wrong; where two ways are as good, by the custom of the trade.
    """
    choice = chosen(told, lexicon, sizes)
    rows = [rows_of(standing) for standing in choice.standings]
    if choice.spent:
        rows = [_told_unworked(those, told) for those in rows]
    assumptions = list(choice.assumptions)
    assumptions += _on_unknown_edges(told, rows)
    if choice.cut:
        assumptions.append(
            Assumption(
                f"more rows are asked for than are worked: {MOST_ROWS_OF_LINE:,} of one line and "
                f"{most_rows(sizes):,} of a pattern in {sizes} size{'s' * (sizes > 1)}; "
                "the rest is left out"
            )
        )
    return Reckoning(tuple(_by_row(rows)), tuple(assumptions))


def _told_unworked(rows: list[Worked], told: Sequence[Told]) -> list[Worked]:
    """The rows, with a word of the first that was not worked as there was too much to be worked."""
    for index, row in enumerate(rows):
        acts = every(told[row.told].said.acts)
        if row.verdict == "unclear" and not any(isinstance(act, Unclear) for act in acts):
            problem = Problem("too_long", told[row.told].span)
            first = replace(row, verdict="wrong", problems=(*row.problems, problem))
            return [*rows[:index], first, *rows[index + 1 :]]
    return rows


def _on_unknown_edges(told: Sequence[Told], rows: list[list[Worked]]) -> list[Assumption]:
    """Rows worked onto an edge that nobody counts are taken as they are stated."""
    met = {row.told for size in rows for row in size if _is_taken_as_stated(row)}
    return [
        Assumption(
            "how many places lie under this row is not told; it is taken to make what it states",
            told[index].span,
        )
        for index in sorted(met)
    ]


def _is_taken_as_stated(row: Worked) -> bool:
    return row.available is None and not row.made and row.stated is not None


def _by_row(rows: list[list[Worked]]) -> list[Worked]:
    """In the order of the text, and for each row size by size."""
    if len(rows) == 1:
        return rows[0]
    placed: list[tuple[int, int, int, Worked]] = []
    for size, those in enumerate(rows):
        told, nth = -1, 0
        for row in those:
            nth = nth + 1 if row.told == told else 0
            told = row.told
            placed.append((row.told, nth, size, row))
    return [row for *_, row in sorted(placed, key=lambda each: each[:3])]
