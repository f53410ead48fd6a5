"""The front matter of a pattern, read."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from frogless.proofread.facts.gauges import gauges_in
from frogless.proofread.facts.hooks import hooks_in
from frogless.proofread.facts.lengths import lengths_in
from frogless.proofread.facts.lines import Line, joined, lines_of
from frogless.proofread.facts.measures import measures_in
from frogless.proofread.facts.model import (
    Colour,
    Facts,
    Gauge,
    Hook,
    Lengths,
    Measurement,
    Multiple,
    Notion,
    Progress,
    YarnAmount,
)
from frogless.proofread.facts.multiples import multiples_in
from frogless.proofread.facts.notions import colours_in, notions_in
from frogless.proofread.facts.progress import progress_in
from frogless.proofread.facts.tables import tables_in
from frogless.proofread.facts.yarns import yarns_in
from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.lexicon import Lexicon

#: Facts of one kind; a front matter has fewer, and hostile text does not get more.
_MOST = 500
#: Letters of a line that may be a heading.
_A_HEADING = 30
_GAUGE_LINE = re.compile(r"[\s*-]{0,6}(?:gauge|tension)\b", re.IGNORECASE)
#: "I get 16 dc and 8 rounds to 10 cm": a gauge in the middle of a story.
_GAUGE_TOLD = re.compile(
    r"\d [a-z -]{2,30}(?:and|x|by|,) \d[\d.]* (?:rows?|rounds?|rnds?)[a-z ]{0,30}"
    r"(?:=|to|over|per|in|make|measure) ?(?:a )?\d",
    re.IGNORECASE,
)
#: A gauge that nobody has to meet gives no measure, and no yarn.
_NOT_MEANT = re.compile(
    r"\b(?:gauge|tension|it)\b[^.;\n]{0,30}(?:n't|\bnot) (?:so |very |too |really |that )?"
    r"(?:important|critical|crucial|essential|matter)",
    re.IGNORECASE,
)
_MEASURE_LINE = re.compile(
    r"\b(?:finished|measures|measurements?|dimensions|schematic|comes? out at)\b"
    r"|^[\s*-]{0,4}size\b|^[\s*-]{0,4}(?:[a-z]+ ){1,4}?[a-z]*:? ?\d[\d.]{0,5}[^:]{0,60}$"
    r"|^[\s*-]{0,4}[a-z]+:\s{0,4}\d[^:]{0,60}$",
    re.IGNORECASE,
)
_GROWS = re.compile(r"\bgrows? (\d{1,2}(?:\.\d)?) ?% in length")
_INCHES = re.compile(r"\"|\bin\b|\dins?\b|inch", re.IGNORECASE)
_METRIC = re.compile(r"[\d)\]] ?(?:cm|mm)\b", re.IGNORECASE)
#: "Your main hook has one step less": advice on hooks, and no instruction.
_ADVICE = re.compile(
    r"\b(?:hint:|tip:|designer|main hook|size (?:up|down)|smaller|larger)", re.IGNORECASE
)
#: A line that works stitches is no list of materials, whatever part it stands in.
_WORKED = re.compile(r"\b(?:ch|chain) ?\d", re.IGNORECASE)
_USING = re.compile(r"\busing the\b|\bwork in\b|\bplace (?:a|the)\b", re.IGNORECASE)
_FINISHED_LINE = re.compile(r"[\s*-]{0,4}(?:finished|measure|size)", re.IGNORECASE)
_NEEDED = re.compile(r"\b(?:i used|you(?:'ll| will)? need|materials?)\b", re.IGNORECASE)
_NO_MEASURES = ("instructions", "finishing", "materials", "abbreviations", "special")
_WORK = ("instructions", "finishing")


def facts_of(script: Script, lexicon: Lexicon) -> Facts:
    """Gauge, materials, sizes and finished measurements that a pattern states."""
    lines = lines_of(script)
    paragraphs = tuple(joined(lines))
    grows = _GROWS.search(script.plain)
    return Facts(
        gauges=tuple(islice(_gauges(paragraphs, lexicon), _MOST)),
        hooks=tuple(islice(_hooks(paragraphs), _MOST)),
        yarns=tuple(islice(_yarns(paragraphs), _MOST)),
        notions=tuple(islice(_notions(paragraphs), _MOST)),
        colours=tuple(islice(_colours(paragraphs), _MOST)),
        measurements=tuple(islice(_measurements(script, lines), _MOST)),
        progress=tuple(islice(_progress(paragraphs), _MOST)),
        multiples=tuple(islice(_multiples(paragraphs), _MOST)),
        both=tuple(islice(_both(paragraphs), _MOST)),
        materials=tuple(Span(e.start, e.start + len(e.text)) for e in _materials(paragraphs)),
        grows=float(grows[1]) / 100 if grows else 0.0,
    )


def _progress(paragraphs: tuple[Line, ...]) -> Iterator[Progress]:
    for line in paragraphs:
        if line.part in _WORK:
            yield from progress_in(line)


def _multiples(paragraphs: tuple[Line, ...]) -> Iterator[Multiple]:
    for line in paragraphs:
        yield from multiples_in(line)


def _gauges(paragraphs: tuple[Line, ...], lexicon: Lexicon) -> Iterator[Gauge]:
    for line in paragraphs:
        told = _GAUGE_LINE.match(line.text) or _GAUGE_TOLD.search(line.text)
        if _NOT_MEANT.search(line.text):
            continue
        if line.part == "gauge" or (line.part not in _WORK and told):
            yield from gauges_in(line, lexicon)


def _hooks(paragraphs: tuple[Line, ...]) -> Iterator[Hook]:
    for line in paragraphs:
        if line.part in _WORK:
            if not _ADVICE.search(line.text):
                yield from hooks_in(line.text, line.start, "rows")
        elif not _WORKED.search(line.text):
            gauge = line.part == "gauge"
            yield from hooks_in(line.text, line.start, "gauge" if gauge else "materials")


def _materials(paragraphs: tuple[Line, ...]) -> Iterator[Line]:
    """The lines that list what is needed; told in a story where no part does."""
    listed = any(line.part == "materials" for line in paragraphs)
    # A heading alone is no list.
    for line in paragraphs:
        told = not listed and line.part not in _WORK and _NEEDED.search(line.text[:60])
        if _USING.search(line.text):
            continue
        if line.part == "materials" or (told and len(line.text) > _A_HEADING):
            yield line


def _yarns(paragraphs: tuple[Line, ...]) -> Iterator[YarnAmount]:
    for line in _materials(paragraphs):
        yield from yarns_in(line)


def _notions(paragraphs: tuple[Line, ...]) -> Iterator[Notion]:
    for line in _materials(paragraphs):
        yield from notions_in(line)


def _colours(paragraphs: tuple[Line, ...]) -> Iterator[Colour]:
    for line in _materials(paragraphs):
        yield from colours_in(line)


def _measurements(script: Script, lines: tuple[Line, ...]) -> Iterator[Measurement]:
    front = tuple(
        line
        for line in lines
        if line.part not in _NO_MEASURES
        or (line.part == "materials" and _FINISHED_LINE.match(line.text))
    )
    tabled, used = tables_in(front, script.sizes)
    yield from tabled
    for line in joined(tuple(each for each in front if each.start not in used)):
        heading = line.heading
        drawn = "schematic" in heading or "schematic" in line.text[:40].lower()
        finished = "finished" in heading or "finished" in line.text[:60].lower()
        stated = line.part == "measurements" or _MEASURE_LINE.search(line.text[:400])
        if stated:
            found = measures_in(line, finished, heading)
        elif line.part == "sizes":
            found = (each for each in measures_in(line, finished) if each.way != "girth")
        else:
            continue
        yield from (replace(each, drawn=drawn) for each in found)


def _both(paragraphs: tuple[Line, ...]) -> Iterator[Lengths]:
    for line in paragraphs:
        if _INCHES.search(line.text) and _METRIC.search(line.text):
            for each in lengths_in(line.text, line.start):
                if each.metric and each.inches:
                    yield each
