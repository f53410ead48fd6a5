"""What was not understood, or may be read in two ways."""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, all_acts, finding, lines_of
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.words.model import Repeat, Unclear

#: Letters of such words that are shown.
_SHOWN = 80
_WORD = re.compile(r"[a-z][a-z0-9'-]*", re.IGNORECASE)
#: Words between rows that are instructions and no remark.
_WORKED = re.compile(
    r"\b(?:ch|chain|rows?|rnds?|rounds?|sts?|rep|repeat|inc|dec|\w+\d+tog)\b", re.I
)


def unclear(reading: Reading) -> Iterator[Finding]:
    """Words of a row that no sense was made of."""
    for line in lines_of(reading):
        acts = [act for act in all_acts(line.told.said.acts) if isinstance(act, Unclear)]
        those = [act for act in acts if _matters(reading, line, act)]
        if not those:
            continue
        words = "; ".join(reading.script.words(act.span) for act in those)
        guess = next((f" Perhaps: {act.guess}." for act in those if act.guess), "")
        hint = (
            "These words were not understood, so nothing that follows from them is proven."
            f"{guess} Say it in other words."
        )
        texts = (words if len(words) <= _SHOWN else words[:_SHOWN] + "…", "not understood", hint)
        certainty: Certainty = "likely" if line.told.label else "possible"
        yield finding("unclear", reading, line, those[0].span, texts, certainty)


def _matters(reading: Reading, line: Line, act: Unclear) -> bool:
    """In a row all of it; between rows only what speaks of stitches and rows."""
    if line.told.label is not None:
        return True
    text = reading.script.plain[act.span.start : act.span.end].lower()
    return bool(_WORKED.search(text)) or any(
        word in reading.lexicon.keys and len(word) < 6 for word in _WORD.findall(text)
    )


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
