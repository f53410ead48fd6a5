"""Rows, headings and sentences in the order of the text, from the lines of a part."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from frogless.proofread.script.headings import how_often
from frogless.proofread.script.labels import Found, label_at, refers
from frogless.proofread.script.lines import Line
from frogless.proofread.script.marks import ACTS, Mark, ends_with_count, is_founded, is_remark
from frogless.proofread.script.model import Heading, Prose, RowText, Span, Statement
from frogless.proofread.script.only import names_sizes
from frogless.proofread.script.sentences import sentences, trim

_INSIDE = re.compile(
    r"(?<![\w-])(?:(?:next|foundation|set-?up|last|final|inc(?:rease)?|dec(?:rease)?|base|edging"
    r"|border|\d{1,5}(?:st|nd|rd|th))\s)?"
    r"(?:rows?|rnds?|rounds?|r)\.?(?=[\s:(\d])", re.IGNORECASE,
)  # fmt: skip
_CONNECTS = re.compile(
    r"(?:[,;/+&(\[-]|\b(?:in|of|to|the|and|next|from|each|(?-i:a)|an|with|or|into|for|as|rep|until|between"
    r"|over|first|last|ch"
    r"|at|on|rnd|row|rnds|rows|sl))\s*$", re.IGNORECASE,
)  # fmt: skip
_COUNT = re.compile(r"[(\[]?\s{0,2}[+=-]?\s{0,2}\d{1,6}[^A-Z.]{0,40}[)\]]?\.?\s*$")
_STITCHES = re.compile(r"(?:ch|sc|hdc|dc|tr|inc|dec|sk|skip|sl st)\b", re.IGNORECASE)
#: A count, and behind it a sentence that is talk or ends the work.
_TOLD = re.compile(
    r"[(\[=]\s?\d{1,6}(?:\s(?:sts?|sc|dc|hdc|tr|stitches))?[)\]]\.?\s{1,3}"
    r"((?:try it|it|that's|this|you|you'll|if|don't|look|eyes|stuff"
    r"|It|That|This|These|You|Your|Now|So|Look|Don't|We|I|The|If|See|Well|Try|Fasten|Cut|Finish)\b)"
)
_WORKED = re.compile(
    r"\b(?:sc|dc|hdc|tr|ch|sl st|inc|dec|rep|repeat|fasten|cut|finish|join|turn|work|rows?|rnds?|rounds?)\b",
    re.IGNORECASE,
)
_NUMBERED = re.compile(r"\d{1,2}[.)]\s{1,4}(?=[A-Z])")
#: What is done when a row is done, whether or not it is written with a capital.
_LEAVES = re.compile(
    r"(?:(?:sl st,? (?:and )?)?(?:fasten off|finish off|f\.?o)|cut|weave|stuff|sew|change (?:to|colou?r)|insert"
    r"|repeat r|rep r|work even|fold|flatten|embroider|(?:do not|don't) (?:fasten|cut|turn)"
    r"|leav(?:e|ing) (?:an? |the )?(?:\d{1,3} ?(?:cm|in|inch|\") ?)?(?:long |short )?(?:tail|end))(?!\w)",
    re.IGNORECASE,
)
#: What a row counts to, at the end of its line in lower case: it runs on no more.
_COUNTED = re.compile(
    r"(?:[(\[{]\s?\d{1,5}(?:\s?(?:sts?|stitches))?\s?[)\]}]|[-=]\s?\d{1,5}\s?sts?)\.?$",
    re.IGNORECASE,
)
#: Also behind a comma, where a blank line follows.
_COUNTED_FAR = re.compile(
    r"(?:[,;-]\s?\d{1,5}\s(?:sts?|sc|dc|hdc|tr|htr|stitches)|[(\[][^()\[\]]{1,60}[)\]])$",
    re.IGNORECASE,
)
#: A count may stand in the middle of a row all the same.
_STILL = re.compile(
    r"(?:in|into|around|times|twice|thrice|to|and|over|across|each|more|on|at|of|from|then|sts?|turn|join|ch|sl|ss|rep"
    r"|repeat|fo|fasten|cut|do not|don't|\d|[(*\[=-])(?![a-z])", re.IGNORECASE,
)  # fmt: skip
_ENDS = frozenset(".!?)]:}\"'")


@dataclass(slots=True)
class _Open:
    """A paragraph that lines are still added to; with a label it is a row.

    Args:
        alone: the label has its line for itself, the text follows below.
        hanging: lines below the first stand further in.
    """

    start: int
    end: int
    indent: int
    label: Found | None = None
    alone: bool = False
    hanging: bool = False
    boxed: bool = False


class Reader:
    """The statements of one part after another.

    Args:
        width: of a full line, where the text is set to a width.
    """

    def __init__(self, plain: str, width: int) -> None:
        self.plain, self.width = plain, width

    def statements(
        self, marks: Sequence[Mark], heads: set[int], first: int, body: int
    ) -> Iterator[Statement]:
        """What stands in these lines.

        Args:
            heads: numbers of the lines whose heading is a piece or a section.
            first: the number of the first line; `body`: where the text of the part begins.
        """
        now: _Open | None = None
        gap = False
        before: Line | None = None
        for number, mark in enumerate(marks, start=first):
            line = mark.line
            at = max(line.at, body)
            if at >= line.end:
                gap = True
                continue
            heads_it = mark.head if number in heads else None
            if now and not (heads_it or mark.label) and self._goes_on(now, before, line, gap):
                now.hanging = now.hanging or line.indent > now.indent
                now.end, now.alone = line.end, False
            else:
                yield from self._closed(now)
                now = None
                if heads_it:
                    name = Span(heads_it.start, heads_it.end)
                    make = how_often(self.plain[heads_it.start : heads_it.end])
                    yield Heading(
                        name, self.plain[name.start : name.end] and heads_it.name, make=make or 1
                    )
                    at = heads_it.content
                if at < line.end:
                    label = mark.label if not heads_it else None
                    now = self._opened(at, line, label)
            before, gap = line, False
        yield from self._closed(now)

    def _opened(self, at: int, line: Line, label: Found | None) -> _Open:
        if label is None and (numbered := _NUMBERED.match(self.plain, at, line.end)):
            at = numbered.end()
        start = at + len(self.plain[at : line.end]) - len(self.plain[at : line.end].lstrip())
        if label is None and start > line.at:  # behind an inline heading
            label = label_at(self.plain, start, line.end)
        alone = label is not None and not self.plain[label.body : line.end].strip()
        return _Open(start, line.end, line.indent, label, alone, boxed=line.boxed)

    def _goes_on(self, now: _Open, before: Line | None, line: Line, gap: bool) -> bool:
        """Whether a line continues the paragraph above it."""
        if names_sizes(self.plain, now.start, now.end):
            return False
        if line.bullet or now.boxed != line.boxed or before is None:
            return False
        if is_remark(self.plain, line.at, line.end) or names_sizes(self.plain, line.at, line.end):
            return False
        if now.boxed:
            return not gap
        words = self.plain[line.at : min(line.at + 80, line.end)]
        above = self.plain[max(now.start, before.end - 24) : before.end]
        if now.label and now.alone:
            return True
        if above[-1:] in _ENDS and _NUMBERED.match(words):
            return False
        if before.end - before.start + len(words.split()[0]) < self.width and _LEAVES.match(words):
            return bool(_CONNECTS.search(above))
        begins = not now.label and is_founded(self.plain, line.at, line.end)
        if begins and not _CONNECTS.search(above):
            return False  # "Strap x 2" and below it "Ch 6."
        counted = _COUNTED_FAR if gap else _COUNTED
        if (
            now.label
            and counted.search(above)
            and not _STILL.match(words)
            and not words[0].isupper()
        ):
            return False
        if above[-1:] in {",", ";"} or (words[0].islower() and not (gap and above[-1:] in _ENDS)):
            return True
        if gap:
            return bool(now.label) and words[0] in "([=" and bool(_COUNT.match(words))
        return self._runs_on(now, before, line, above, words)

    def _runs_on(self, now: _Open, before: Line, line: Line, above: str, words: str) -> bool:
        """Whether a line with no blank line before it and a capital or a sign at its start runs on."""
        if line.indent > now.indent:
            return True
        if now.hanging:
            return False
        if not words[0].isupper() or _CONNECTS.search(above):
            return True
        first = words.split()[0]
        if ends_with_count(self.plain, before.start, before.end):
            return False
        full = before.end - before.start + 1 + len(first) > self.width
        if full or not now.label:
            return full or above[-1:] not in _ENDS
        if _STITCHES.match(words):
            return True
        return above[-1:] not in _ENDS and not above[-1:].isdigit() and not ACTS.match(words)

    def _closed(self, now: _Open | None) -> Iterator[Statement]:
        if now is None:
            return
        if now.boxed or (now.label is None and is_remark(self.plain, now.start, now.end)):
            yield Prose(trim(self.plain, now.start, now.end), remark=True)
            return
        cuts = list(self._inside(now))
        starts = [(now.start, now.label), *cuts, (now.end, None)]
        for (start, label), (end, _) in pairwise(starts):
            if label:
                yield from self._row(label, end)
            else:
                yield from (Prose(each) for each in sentences(self.plain, start, end))

    def _row(self, label: Found, end: int) -> Iterator[Statement]:
        """A row; what is told behind its count in whole sentences stands alone."""
        told = _TOLD.search(self.plain, label.body, end)
        yield RowText(label.label, trim(self.plain, label.body, told.start(1) if told else end))
        if told:
            remark = not _WORKED.search(self.plain, told.start(1), end)
            for each in sentences(self.plain, told.start(1), end):
                yield Prose(each, remark=remark)

    def _inside(self, now: _Open) -> Iterator[tuple[int, Found | None]]:
        """Labels within a paragraph: "... (6). Rnd 2: ..."."""
        at = now.label.body if now.label else now.start + 1
        last = now.label.label.numbers[-1] if now.label and now.label.label.numbers else None
        for found in _INSIDE.finditer(self.plain, at, now.end):
            if found.start() < at or not self._may_begin(found, now.start):
                continue
            label = label_at(self.plain, found.start(), now.end)
            if not label or not label.firm or refers(self.plain, found.start()):
                continue
            before = self.plain[max(now.start, found.start() - 6) : found.start()].rstrip()[-1:]
            numbers = label.label.numbers
            if before.isalpha() and not (numbers and last is not None and numbers[0] == last + 1):
                continue
            at = label.body
            last = numbers[-1] if numbers else None
            yield found.start(), label

    def _may_begin(self, found: re.Match[str], start: int) -> bool:
        before = self.plain[max(start, found.start() - 6) : found.start()].rstrip()[-1:]
        return found[0][0].isupper() or before in {".", ")", "]", "!"}
