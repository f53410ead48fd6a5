"""Gauge lines: so many stitches and rows to so much width and height."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from frogless.proofread.facts.hooks import hooks_in
from frogless.proofread.facts.lengths import NUMBER, lengths_in
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Gauge, Lengths
from frogless.proofread.facts.words import stitch_in
from frogless.proofread.script.model import Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.units import parse_number

_ROWS = re.compile(r"(?:rows?|rounds?|rnds?)\b", re.IGNORECASE)
_STITCHES = re.compile(r"(?:sts?|stitch(?:es)?)\b", re.IGNORECASE)
_COUNT = re.compile(
    rf"(?<![\d.,/-])(?P<low>{NUMBER})(?:[ ]?(?:-|to)[ ]?(?P<high>\d{{1,3}}))?[ ]?"
    r"(?P<what>[A-Za-z][A-Za-z-]*(?:[ ][A-Za-z-]+){0,3})"
)
_WASHED = re.compile(r"\b(?:block|wash|steam|dri)ed\b|\bafter (?:block|wash)ing\b", re.IGNORECASE)
_NOT_WASHED = re.compile(r"\bun(?:block|wash)ed\b|\bbefore (?:block|wash)ing\b", re.IGNORECASE)
_SURE = re.compile(r"within (\d{1,2}(?:\.\d+)?) ?% \(95 ?%\)")
_REPEAT = re.compile(
    rf"repeat of (\d{{1,3}}) st(?:itche)?s is ({NUMBER} ?(?:cm|in|mm))", re.IGNORECASE
)
#: What is counted where it is no stitch of the dictionary.
_UNITS = re.compile(
    r"(?:pattern |patt )?(?P<unit>shell|repeat|rep|fan|v-?st|v-stitch|loop|mesh|block|group|motif|"
    r"cluster|puff|bobble|square|pineapple|scallop|ripple|wave|space|sp)s?\b",
    re.IGNORECASE,
)
_PATTERN = re.compile(r"(?:[a-z]+ ){0,3}patt(?:ern)?\b", re.IGNORECASE)
_MOST = 400  # stitches that any swatch is counted over


@dataclass(frozen=True, slots=True)
class _Event:
    at: int
    end: int
    count: float = 0.0
    rows: bool = False
    unit: str = ""
    stitch: str = ""
    lengths: Lengths | None = None


def gauges_in(line: Line, lexicon: Lexicon) -> Iterator[Gauge]:
    """The gauges of one paragraph of the gauge's part, in its order."""
    repeat = _REPEAT.search(line.text)
    if repeat:
        width = next(iter(lengths_in(repeat[2])), None)
        if width:
            span = Span(line.start + repeat.start(), line.start + repeat.end())
            yield Gauge(span, int(repeat[1]), width.values[0], after_washing=True)
        return
    events = sorted((*_counts(line, lexicon), *_lengths(line)), key=lambda each: each.at)
    parts = list(_grouped(events))
    for number, part in enumerate(parts):
        end = parts[number + 1][0].at if number + 1 < len(parts) else len(line.text)
        begin = part[0].at if number else 0
        gauge = _gauge(part, line, Span(begin, end), lexicon)
        if gauge:
            yield gauge


def _counts(line: Line, lexicon: Lexicon) -> Iterator[_Event]:
    for match in _COUNT.finditer(line.text):
        what = match["what"]
        rows, unit, stitch = bool(_ROWS.match(what)), "st", ""
        if not rows and not _STITCHES.match(what):
            stitch = _stitch_at_start(what, lexicon)
            named = _UNITS.match(what)
            if named and (not stitch or stitch in lexicon.own):
                unit, stitch = named["unit"].lower(), stitch
            elif not stitch:
                continue
            elif lexicon.stitches.get(stitch) and lexicon.stitches[stitch].kind == "group":
                unit = stitch
        low = parse_number(match["low"])
        count = (low + float(match["high"])) / 2 if match["high"] else low
        if 0 < count <= _MOST:
            yield _Event(match.start(), match.end(), count, rows, unit, stitch)


def _stitch_at_start(what: str, lexicon: Lexicon) -> str:
    words = what.split(" ")
    for size in range(len(words), 0, -1):
        key = stitch_in(" ".join(words[:size]), lexicon)
        # The first word must be part of the name, or it is "balls of dc".
        if key and key == stitch_in(words[0], lexicon):
            return key
        if size > 1 and key and not stitch_in(" ".join(words[1:size]), lexicon):
            return key
    return ""


def _lengths(line: Line) -> Iterator[_Event]:
    for found in lengths_in(line.text):
        if 10 < found.values[0] <= 1000:
            yield _Event(found.span.start, found.span.end, lengths=found)


def _grouped(events: list[_Event]) -> Iterator[list[_Event]]:
    """Events of one gauge each: another count of stitches begins the next."""
    part: list[_Event] = []
    for event in events:
        stitched = any(each.count and not each.rows for each in part)
        measured = any(each.lengths for each in part)
        new_count = event.count and not event.rows and stitched
        new_length = event.lengths and measured and (not part or not part[-1].count) and stitched
        if part and (new_count or (new_length and _complete(part))):
            yield part
            part = []
        part.append(event)
    if part:
        yield part


def _complete(part: list[_Event]) -> bool:
    return any(each.rows for each in part)


def _gauge(part: list[_Event], line: Line, span: Span, lexicon: Lexicon) -> Gauge | None:
    width = height = 0.0
    slack = 0.0
    stitches = rows = 0.0
    unit, stitch = "st", ""
    pending: list[_Event] = []
    last: Lengths | None = None
    for event in part:
        if event.lengths:
            last = event.lengths
            slack = max(slack, _slack(last))
            for count in pending:
                width, height = _given(count, last, width, height)
            pending = []
        elif event.rows:
            rows = rows or event.count
            pending.append(event)
        elif not stitches:
            stitches, unit, stitch = event.count, event.unit, event.stitch
            pending.append(event)
    if last is None:
        return None
    for count in pending:
        width, height = _given(count, last, width, height)
    if not (stitches and width) and not (rows and height):
        return None
    words = line.text[span.start : span.end]
    stitch = stitch or _stitch_of(words, lexicon)
    found = Gauge(
        Span(line.start + part[0].at, line.start + max(each.end for each in part)),
        stitches if width else 0.0, width, rows if height else 0.0, height, stitch, unit,
        slack=slack,
    )  # fmt: skip
    return _with_state(found, words, line.start + span.start)


def _given(count: _Event, lengths: Lengths, width: float, height: float) -> tuple[float, float]:
    values = lengths.values
    tall = values[1] if lengths.crossed and len(values) > 1 else values[0]
    return (width, tall) if count.rows else (values[0], height)


def _slack(lengths: Lengths) -> float:
    if not (lengths.metric and lengths.inches):
        return 0.0
    return abs(lengths.metric[0] / lengths.inches[0] - 1)


def _stitch_of(words: str, lexicon: Lexicon) -> str:
    """What "in dc", "over sc rows", "of trebles" names; "" for a pattern."""
    for said in re.finditer(r"\b(?:in|over|of|working)\b[ ]+(?=[A-Za-z])", words, re.IGNORECASE):
        rest = words[said.end() : said.end() + 60]
        if _PATTERN.match(rest):
            return ""
        key = stitch_in(re.split(r"[.,;()]| on | with | using | to ", rest)[0], lexicon)
        if key:
            return key
    # "In dc: 18 sts and 9 rows", "20 rows sc": the one stitch that is named.
    return "" if "patt" in words.lower() else stitch_in(words.split(". ")[0], lexicon)


def _with_state(gauge: Gauge, words: str, offset: int) -> Gauge:
    hook = next(iter(hooks_in(words, offset, "gauge")), None)
    sure = _SURE.search(words)
    washed = _WASHED.search(words) and not _NOT_WASHED.search(words)
    return replace(
        gauge,
        hook=hook.mm if hook else 0.0,
        sure=float(sure[1]) / 100 if sure else 0.0,
        after_washing=bool(washed),
    )
