"""Each line marked: does it head something, does a row begin there."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import NamedTuple

from frogless.proofread.script.headings import (
    bare_name,
    bracketless,
    how_often,
    names_piece,
    part_kind,
)
from frogless.proofread.script.labels import Found, label_at, listed_at, refers, tabled_at
from frogless.proofread.script.lines import CAPITALS, COLON, QUIET, Line
from frogless.proofread.script.model import PartKind
from frogless.proofread.script.only import names_sizes

_INLINE = re.compile(
    r"([A-Za-z](?:[^:\n|.;=]|U\.[SK]\.){1,70}?)\s{0,2}(?::|\s-{1,2}(?=\s))\s{0,4}(?=\S)"
)
#: "SIZES small (medium)", "Gauge 20 sts": no colon between the word and what it says.
_BARE = re.compile(
    r"((?i:sizes|gauge|tension|to fit)|SIZE)\s{1,4}(?=\d|[SML]\b|\d?X{1,4}[SL]?\b"
    r"|(?i:x-|extra |small|medium|adult|child))"
)
#: "Abbreviations—ch = chain", "ABBREV.: ch (chain)": a dash without blanks, a shortened word.
_SHUT = re.compile(
    r"((?:abbreviations|gauge|tension|materials|notes|sizes?|measurements|finishing)[.]?(?=\s?-)"
    r"|abbrev(?:iation)?s?[.]?|abbr[.])\s?(?::|-{1,2})\s{0,4}(?=\S)",
    re.IGNORECASE,
)
#: A line that only names the stretch of rows below it.
_SECTION = re.compile(r"section:\s{1,4}(?=\S)", re.IGNORECASE)
_REMARK = re.compile(
    r"(?:note|nb|n\.b\.|hint|tip|caution|check|remember|remark|please note|important|warning"
    r"|attention)s?\b[^:.\n]{0,20}:|(?:check|caution|warning|attention)[ ]{0,3}(?=\n|$)",
    re.IGNORECASE,
)  # fmt: skip
#: "Hint" on a line of its own may head a part as well.
_HINT = re.compile(r"(?:hint|tip|note)[ ]{0,3}\n", re.IGNORECASE)
#: How an instruction begins; no heading begins so.
ACTS = re.compile(
    r"(?:fasten|cut|break|turn|weave|repeat|rep|work|join|ch|chain|sew|leave|continue|cont|change"
    r"|with|using|do|place|make a|begin|start"
    r"|stuff|insert|pull|attach|skip|sl st|slip|sc|dc|hdc|tr|dtr|inc|dec|mark|move|remove|measure"
    r"|fold|pin|pick|hold|in|from|for|you|this"
    r"|the|if|when|do not|don't|see|now|then|next|proceed|end|finish off|make sure|lay|divide|\d|[*\[(])(?![a-z])",
    re.IGNORECASE,
)  # fmt: skip
_FOUNDED = re.compile(
    # a chain that counts as something, or does not, is told of and not made
    r"(?![^.\n]{0,80}\b(?:not count|counts as|at the (?:start|beginning) of (?:a|each|every)))"
    r"(?:(?:starting|beginning) (?:at|from) [^.,;\n]{1,40},\s|for (?:the|this|our) (?:sample|piece)(?: shown)?,?\s"
    r"|(?:with|using|in) (?:[^.;]|[.]\d){1,60}?,?\s)?"
    r"(?:(?:loosely |begin by |to begin,? |to start,? |start by |make (?:a )?|work "
    r"|(?:begin|start)(?:ning|ing)? with ){0,2}"
    r"(?:(?:ch|chain)(?:s|ing)?\s(?:a\s)?(?:\d|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven"
    r"|twelve|\w{3,5}teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|a? ?hundred)\b)"
    r"|(?:ch|chain) (?:a )?multiple|\d{1,5}(?:\s?[(\[{][^)\]}]{1,60}[)\]}]){0,6}\s?(?:ch|chains?|f[sdht]c|fhdc)\b)"
    r"|(?:(?:make|start with|begin with) )?(?:a )?chain of \d"
    r"|make (?:a|an) (?:magic|adj|sl)|magic (?:ring|circle|loop)|(?:f[sdht]c|fhdc)\b|(?:mr|mc)\b"
    r"|start(?:ing)? with|commenc(?:e|ing) with|begin(?:ning)? (?:at|with)|wind (?:the )?yarn|form a ring|attach"
    r"|(?:re)?join (?:the )?(?:new )?(?:yarn|colou?r|main|\w{1,12} yarn)"
    r"|join .{1,60} (?:to|in|with)|work \d{1,5} f[sdht]c)",
    re.IGNORECASE,
)
_STITCHED = re.compile(
    r"\s{0,6}(?:[*\[(]|(?:with .{1,40}, )?(?:\d{1,4}\s?)?(?:ch|chain|sc|dc|hdc|htr|tr|dtr|sl st|ss"
    r"|inc|dec|mr|mc|magic|sk|miss|beg|\d{1,4}(?:\s|,))"
    r"(?![a-z]))", re.IGNORECASE,
)  # fmt: skip
_COUNTED = re.compile(
    r"(?:[(\[{]\s?\d[^()\[\]{}]{0,50}[)\]}]|[=-]\s?\d{1,6})\s?(?:(?:sts?|sc|dc|hdc|tr|htr|stitches)\b)?\.?$",
    re.IGNORECASE,
)
#: What is nothing but counts: "20 dc, 180 tr".
_BARE_COUNT = re.compile(
    r"\d{1,5} [A-Za-z][\w-]{0,12}(?: [a-z][\w-]{0,8})?"
    r"(?:, \d{1,5} [A-Za-z][\w-]{0,12}(?: [a-z][\w-]{0,8})?){0,12}$"
)
_STOPPED = re.compile(r"[.!?;:]\s{1,3}")
_WORKED_SO = re.compile(r"worked (?:in|flat|from|as)\b", re.IGNORECASE)
_WORKS = re.compile(r"\d|\b(?:ch|chain|sc|dc|hdc|tr|magic|inc|dec|sl st)\b", re.IGNORECASE)
#: "Strap, worked in rows", "Straps - make 2".
_SAID_HOW = re.compile(r"(?:,|\s-{1,2})?\s(?:worked|made|make|work)\s.{1,30}$", re.IGNORECASE)
_NUMBERED = re.compile(r"\d{1,3}[.)]\s{1,4}(?=[A-Za-z])")
_SENTENCE_END = frozenset('.!?)]:}"')


@dataclass(frozen=True, slots=True)
class Head:
    """A heading.

    Args:
        kind: the part that it heads, None for another.
        content: where what stands on the same line behind it begins; its end when nothing does.
    """

    start: int
    end: int
    content: int
    name: str
    kind: PartKind | None
    level: int


class Mark(NamedTuple):  # a tuple, as `Line`
    """A line with what begins on it."""

    line: Line
    head: Head | None = None
    label: Found | None = None


def marks_of(plain: str, lines: tuple[Line, ...]) -> tuple[Mark, ...]:
    """Every line marked."""
    labels = _labels(plain, lines)
    return tuple(_mark(plain, lines, labels, index) for index in range(len(lines)))


def _mark(plain: str, lines: tuple[Line, ...], labels: list[Found | None], index: int) -> Mark:
    line, label = lines[index], labels[index]
    if line.blank:
        return Mark(line)
    if label and not label.label.numbers and 0 < line.level < CAPITALS:
        # "### Base - spiral": nothing is worked in it
        named = not _WORKS.search(plain, label.body, line.end)
        label = None if named else label
    if label and not label.label.numbers and label.body >= line.end:
        # "Foundation" underlined heads a section, "Increase rows" those below it; "Row 5" in bold is a row
        below = _below(lines, index)
        follows = labels[below] if below is not None else None
        twice = follows and (follows.label.numbers or follows.label.name == label.label.name)
        if 0 < line.level < CAPITALS or twice:
            label = None
    return Mark(line, None if label else _head(plain, lines, labels, index), label)


def _labels(plain: str, lines: tuple[Line, ...]) -> list[Found | None]:
    worded: list[Found | None] = []
    last = 0
    for index in range(len(lines)):
        found = _label(plain, lines, index, last)
        last = found.label.numbers[-1] if found and found.label.numbers else last
        worded.append(found)
    listed = _listed(plain, lines)
    if sum(each is not None and bool(each.label.numbers) for each in worded) < len(listed):
        for index, found in listed.items():
            worded[index] = worded[index] or found
    return _in_turn(_parted(worded))


def _parted(labels: list[Found | None]) -> list[Found | None]:
    """The labels with "Rnd 1-2 sc" read as Rnd 1 where Rnd 2 comes next, or most end with a dash."""
    numbered = [n for n, each in enumerate(labels) if each and each.label.numbers]
    sure = [each for each in labels if each and each.firm]
    dashed = 2 * sum(each.dashed for each in sure) > len(sure)
    follows = len(labels)
    for n in reversed(numbered):
        now = labels[n]
        if now and now.other:
            after = labels[follows] if follows < len(labels) else None
            begins = after.label.numbers[0] if after else 0
            first, last = now.other.label.numbers[0], now.label.numbers[-1]
            if begins == first + 1 or (dashed and begins != last + 1):
                labels[n] = now.other
        follows = n
    return labels


def _in_turn(labels: list[Found | None]) -> list[Found | None]:
    """The labels with those firm whose number comes right before or after another's: "R1.", "R2."."""
    numbered = [n for n, each in enumerate(labels) if each and each.label.numbers]
    for one, other in pairwise(numbered):
        first, then = labels[one], labels[other]
        if first and then and first.label.numbers[-1] + 1 == then.label.numbers[0]:
            labels[one], labels[other] = replace(first, firm=True), replace(then, firm=True)
    return labels


def _label(plain: str, lines: tuple[Line, ...], index: int, last: int) -> Found | None:
    line = lines[index]
    if line.blank:
        return None
    found = label_at(plain, line.at, line.end)
    if not found and line.table:
        return tabled_at(plain, line.at, line.end)
    if not found and (listed := _NUMBERED.match(plain, line.at, line.end)):
        found = label_at(plain, listed.end(), line.end)
    if not found or index == 0 or line.bullet or lines[index - 1].blank:
        return found
    before = lines[index - 1]
    follows = found.firm and found.label.numbers[:1] == (last + 1,)
    if not follows and refers(plain, before.end):
        return None
    loose = not found.firm and found.label.numbers[:1] != (last + 1,)
    if names_sizes(plain, before.at, before.end):
        return found
    if found.label.numbers[:1] in ((1,), ()) and _is_short(plain, lines, index - 1):
        return found
    if loose and plain[before.end - 1] not in _SENTENCE_END and before.level == 0:
        return None
    return found


def _is_short(plain: str, lines: tuple[Line, ...], index: int) -> bool:
    """A few words by themselves: they may head what follows, and run on to nothing."""
    line = lines[index]
    words = plain[line.at : line.end]
    free = index == 0 or _parts(plain, lines[index - 1])
    return free and len(words) <= 40 and words[0].isupper() and words[-1].isalpha()


def _listed(plain: str, lines: tuple[Line, ...]) -> dict[int, Found]:
    """Rows that have a number and no more, "5.", known by the numbers of their neighbors."""
    runs: list[dict[int, Found]] = [{}]
    last = -1
    for index, line in enumerate(lines):
        found = (
            listed_at(plain, line.at, line.end) if plain[line.at : line.at + 1].isdigit() else None
        )
        if found is None:
            continue
        if found.label.numbers[0] != last + 1:
            runs.append({})
        runs[-1][index] = found
        last = found.label.numbers[-1]
    kept: dict[int, Found] = {}
    for run in runs:
        stitched = sum(bool(_STITCHED.match(plain, each.body)) for each in run.values())
        if len(run) > 1 and 2 * stitched >= len(run):
            kept |= run
    return kept


def _head(
    plain: str, lines: tuple[Line, ...], labels: list[Found | None], index: int
) -> Head | None:
    line = lines[index]
    if line.blank or line.boxed:
        return None
    words = plain[line.at : line.end]
    if not line.table and (inline := _inline(plain, lines, index)):
        return inline
    level = line.level or (QUIET if _is_quiet(plain, lines, labels, index) else 0)
    if not level or _REMARK.match(words) or not any(each.isalpha() for each in words):
        return None
    kind = part_kind(words)
    if kind is None and level >= CAPITALS and ACTS.match(words):
        return None
    return Head(line.at, line.end, line.end, bare_name(words), kind, level)


def _inline(plain: str, lines: tuple[Line, ...], index: int) -> Head | None:
    """A heading with its content on the same line: "Gauge: 18 sts", "Sleeve (make 2): Ch 30." """
    line = lines[index]
    if bare := _BARE.match(plain, line.at, line.end) or _SHUT.match(plain, line.at, line.end):
        kind = part_kind(bare[1])
        return Head(line.at, bare.end(1), bare.end(), bare_name(bare[1]), kind, COLON)
    if section := _SECTION.match(plain, line.at, line.end):
        name = plain[section.end() : line.end]  # it is a part of the piece that is headed above it
        return Head(section.end(), line.end, line.end, bare_name(name) or name, None, QUIET)
    found = _INLINE.match(plain, line.at, line.end)
    if not found or found.end() >= line.end:
        return None
    name = found[1]
    kind = part_kind(name)
    if kind is None and _REMARK.match(plain, line.at, line.end):
        return None
    if plain[line.at].islower() and not (index == 0 or _parts(plain, lines[index - 1])):
        return None
    begins = (names_piece(name) or how_often(name)) and _FOUNDED.match(plain, found.end(), line.end)
    begins = begins or _WORKED_SO.match(plain, found.end(), line.end)
    rows = not kind and label_at(plain, found.end(), line.end)
    if kind is None and not (len(name.split()) <= 5 and (begins or rows) and not ACTS.match(name)):
        return None
    level = line.level if line.level <= 6 and line.level else COLON
    return Head(line.at, found.end(1), found.end(), bare_name(name), kind, level)


def _is_quiet(plain: str, lines: tuple[Line, ...], labels: list[Found | None], index: int) -> bool:
    """A short line by itself with no look at all that is a heading by its words and neighbors."""
    line = lines[index]
    words = plain[line.at : line.end]
    if len(words) > 60 or len(words.split()) > 7 or words.endswith((".", ",", ";", "!", "?")):
        return False
    if (
        line.bullet
        or line.table
        or not words[0].isalpha()
        or (index and not _parts(plain, lines[index - 1]))
    ):
        return False
    if part_kind(words):
        return True
    below = _below(lines, index)
    if below is None or ACTS.match(words):
        return False
    if words[0].isupper() and _WORKED_SO.match(plain, lines[below].at, lines[below].end):
        return True  # "Back, right side", and below it how it is worked
    if re.search(r"\d(?!\)| ?x\b)|[,=]", _SAID_HOW.sub("", bracketless(words))):
        return False
    label = labels[below]
    if not words[0].isupper():
        # in lower case only right above a first row, with nothing right above it
        anew = label is not None and label.label.numbers[:1] == (1,)
        return anew and below == index + 1 and index > 0 and lines[index - 1].blank
    starts = label or _FOUNDED.match(plain, lines[below].at, lines[below].end)
    return bool(starts) or (
        names_piece(words) and (len(words.split()) <= 3 or bool(how_often(words)))
    )


def _below(lines: tuple[Line, ...], index: int) -> int | None:
    """The number of the next line that is not blank, where it is near."""
    near = range(index + 1, min(index + 4, len(lines)))
    return next((each for each in near if not lines[each].blank), None)


def _parts(plain: str, before: Line) -> bool:
    """Whether the line before lets a heading follow: it is blank or ends a sentence."""
    return (
        before.blank
        or plain[before.end - 1] in _SENTENCE_END
        or ends_with_count(plain, before.start, before.end)
    )


def ends_with_count(plain: str, start: int, end: int) -> bool:
    """Whether a line ends with what a row counts to: "(20)", "{256} sc", "= 36 sts"."""
    stop = plain.rfind(". ", max(start, end - 80), end)
    if _BARE_COUNT.match(plain, stop + 2 if stop >= 0 else start, end):
        return True
    return bool(_COUNTED.search(plain, max(start, end - 60), end))


def is_remark(plain: str, start: int, end: int) -> bool:
    """Whether a paragraph says of itself that it is a remark: "Note: ..."."""
    return bool(_REMARK.match(plain, start, end) or _HINT.match(plain, start))


def is_founded(plain: str, start: int, end: int) -> bool:
    """Whether work is begun there: a chain, a ring, yarn joined."""
    return bool(_FOUNDED.match(plain, start, end))


def begins_work(plain: str, start: int, end: int) -> bool:
    """Whether a sentence of a line begins work, "Leave a long tail. Ch 36." """
    end = min(end, start + 600)
    places = [start, *(found.end() for found in _STOPPED.finditer(plain, start, end))]
    return any(_FOUNDED.match(plain, at, end) for at in places)


class Ahead:
    """What comes next after a line, answered fast."""

    def __init__(self, marks: tuple[Mark, ...]) -> None:
        self._labels = [index for index, mark in enumerate(marks) if mark.label]
        self._known = [i for i, mark in enumerate(marks) if mark.head and mark.head.kind]
        self._levels: dict[int, list[int]] = {level: [] for level in range(1, QUIET + 1)}
        for index, mark in enumerate(marks):
            if mark.head:
                self._levels[mark.head.level].append(index)
        self._marks = marks
        self._starts = [index for index in range(len(marks)) if self._is_start(index)]

    def has_rows(self, index: int) -> bool:
        """Whether a row follows a heading before one as loud, or one of a part."""
        label = _next(self._labels, index)
        head = self._marks[index].head
        if label is None or head is None:
            return False
        others = [_next(self._levels[level], index) for level in range(1, head.level + 1)]
        return all(each is None or each > label for each in (*others, _next(self._known, index)))

    def starts_later(self, index: int, level: int = QUIET) -> bool:
        """Whether a heading at most so quiet follows that instructions begin with."""
        at = bisect_right(self._starts, index)
        for each in self._starts[at : at + 200]:
            head = self._marks[each].head
            if head and head.level <= level:
                return True
        return False

    def _is_start(self, index: int) -> bool:
        head = self._marks[index].head
        if head is None:
            return False
        return head.kind == "instructions" or (head.kind is None and self.has_rows(index))


def _next(places: list[int], index: int) -> int | None:
    at = bisect_right(places, index)
    return places[at] if at < len(places) else None
