"""What was not understood, or may be read in two ways."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import zip_longest

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of
from frogless.proofread.checks.rows.sizes import numbers_of
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.words.model import Repeat, Unclear
from frogless.proofread.work.acts import works

#: Letters of such words that are shown.
_SHOWN = 80


def unclear(reading: Reading) -> Iterator[Finding]:
    """What was not understood, and rows that could not be worked out."""
    yield from _words(reading)
    yield from not_worked_out(reading)


def _words(reading: Reading) -> Iterator[Finding]:
    """Words of a row that no sense was made of."""
    lines = lines_of(reading)
    counts: dict[int, bool] = {}
    for line, after in zip_longest(lines, lines[1:]):
        counted = counts.get(line.told.piece, False)
        counts[line.told.piece] = counted or any(w.worked is not None for w in line.works)
        if line.told.label is None and not (counted and _loses(after)):
            continue
        those = [act for act in all_acts(line.told.said.acts) if isinstance(act, Unclear)]
        if not those:
            continue
        words = "; ".join(reading.script.words(act.span) for act in those)
        guess = next((f" Perhaps: {act.guess}." for act in those if act.guess), "")
        hint = (
            "The program does not know these words, so nothing that follows from them is proven."
            f"{guess} Check this row yourself, or say it in other words."
        )
        texts = (words if len(words) <= _SHOWN else words[:_SHOWN] + "…", "not understood", hint)
        certainty: Certainty = "likely" if line.told.label else "possible"
        yield finding("unclear", reading, line, those[0].span, texts, certainty)


def not_worked_out(reading: Reading) -> Iterator[Finding]:
    """Rows that were understood, and of which it could not be told what they come to.

    Where something before them in their piece is blamed, they follow from it.
    """
    run: list[Line] = []
    blamed: set[int] = set()
    for line in lines_of(reading):
        if _is_blamed(line, len(reading.script.sizes)):
            blamed.add(line.told.piece)
        elif line.told.label is None:
            continue
        elif line.told.piece not in blamed and any(w.verdict == "unclear" for w in line.works):
            run.append(line)
            continue
        yield from _dark(reading, run)
        run = []
    yield from _dark(reading, run)


def _is_blamed(line: Line, sizes: int) -> bool:
    if any(worked.problems for worked in line.works):
        return True
    if any(isinstance(act, Unclear) for act in all_acts(line.told.said.acts)):
        return True
    return any(len(each.values) not in (1, sizes) for each in numbers_of(line.told.said))


def _dark(reading: Reading, run: Sequence[Line]) -> Iterator[Finding]:
    if not run:
        return
    first, last = run[0], run[-1]
    rows = first.name if first is last else f"{first.name} to {last.name}"
    verb = "was" if first is last else "were"
    stated = next((w.stated for line in run for w in line.works if w.stated is not None), None)
    count = f", so the count of {stated} is not proven" if stated is not None else ""
    why, mend = "it is not known what is worked into", "what it begins with, or give the count of"
    mend += " the row below"
    if first.told.said.acts and not works(first.told.said.acts):
        why, mend = "no stitch is named that is worked", "which stitches are worked"
    texts = (
        rows,
        "not worked out",
        f"{rows} {verb} not worked out, since {why}{count}. Say {mend}.",
    )
    yield finding("unclear", reading, first, first.told.span, texts, "possible")


def _loses(after: Line | None) -> bool:
    """Whether the row after a sentence cannot be reckoned, so that the sentence was no remark."""
    if after is None or after.told.label is None or after.told.begins:
        return False
    return any(worked.available is None for worked in after.first())


def doubtful_reading(reading: Reading) -> Iterator[Finding]:
    """Repeats that may be read in two ways where no count decides."""
    for line in lines_of(reading):
        if any(w.stated is not None or w.problems for w in line.works) or line.told.label is None:
            continue
        if line.works and all(
            w.consumed is not None and w.consumed == w.available for w in line.works
        ):
            continue
        for act in all_acts(line.told.said.acts):
            if isinstance(act, Repeat) and act.doubtful and act.extent.times:
                times = act.extent.times.values[0]
                texts = (
                    reading.script.words(act.span)[-60:],
                    f"{times} times, or {times + 1}",
                    f"It may be worked {times} times in all, or {times} times more after the "
                    "first; write which, and give the count of the row.",
                )
                yield finding("doubtful-reading", reading, line, act.span, texts, "possible")
