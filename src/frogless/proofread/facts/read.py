"""The front matter of a pattern, read."""

from __future__ import annotations

import re
from collections.abc import Iterator

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
    Notion,
    YarnAmount,
)
from frogless.proofread.facts.multiples import multiples_in
from frogless.proofread.facts.notions import colours_in, notions_in
from frogless.proofread.facts.progress import progress_in
from frogless.proofread.facts.tables import tables_in
from frogless.proofread.facts.yarns import yarn_in
from frogless.proofread.script.model import Script
from frogless.proofread.words.lexicon import Lexicon

#: Facts of one kind; a front matter has fewer, and hostile text does not get more.
_MOST = 500
_GAUGE_LINE = re.compile(r"\s*(?:gauge|tension)\b", re.IGNORECASE)
_MEASURE_LINE = re.compile(
    r"\s*[*•-]?\s*(?:finished|measures|measurements?|dimensions|size)\b", re.IGNORECASE
)
_GROWS = re.compile(r"\bgrows? (\d{1,2}(?:\.\d)?) ?% in length")
_INCHES = re.compile(r"\"|\bin\b|\dins?\b|inch", re.IGNORECASE)
_METRIC = re.compile(r"[\d)\]] ?(?:cm|mm)\b", re.IGNORECASE)
_WORK = ("instructions", "finishing")


def facts_of(script: Script, lexicon: Lexicon) -> Facts:
    """Gauge, materials, sizes and finished measurements that a pattern states."""
    lines = lines_of(script)
    paragraphs = tuple(joined(lines))
    grows = _GROWS.search(script.plain)
    return Facts(
        gauges=tuple(_gauges(paragraphs, lexicon))[:_MOST],
        hooks=tuple(_hooks(paragraphs))[:_MOST],
        yarns=tuple(_yarns(paragraphs))[:_MOST],
        notions=tuple(_notions(paragraphs))[:_MOST],
        colours=tuple(_colours(paragraphs))[:_MOST],
        measurements=tuple(_measurements(script, lines))[:_MOST],
        progress=tuple(
            each for line in paragraphs if line.part in _WORK for each in progress_in(line)
        )[:_MOST],
        multiples=tuple(each for line in paragraphs for each in multiples_in(line))[:_MOST],
        both=tuple(_both(paragraphs))[:_MOST],
        grows=float(grows[1]) / 100 if grows else 0.0,
    )


def _gauges(paragraphs: tuple[Line, ...], lexicon: Lexicon) -> Iterator[Gauge]:
    for line in paragraphs:
        if line.part == "gauge" or (line.part not in _WORK and _GAUGE_LINE.match(line.text)):
            yield from gauges_in(line, lexicon)


def _hooks(paragraphs: tuple[Line, ...]) -> Iterator[Hook]:
    for line in paragraphs:
        if line.part == "materials":
            yield from hooks_in(line.text, line.start, "materials")
        elif line.part == "gauge":
            yield from hooks_in(line.text, line.start, "gauge")
        elif line.part in _WORK:
            yield from hooks_in(line.text, line.start, "rows")


def _yarns(paragraphs: tuple[Line, ...]) -> Iterator[YarnAmount]:
    for line in paragraphs:
        found = yarn_in(line) if line.part == "materials" else None
        if found:
            yield found


def _notions(paragraphs: tuple[Line, ...]) -> Iterator[Notion]:
    for line in paragraphs:
        if line.part == "materials":
            yield from notions_in(line)


def _colours(paragraphs: tuple[Line, ...]) -> Iterator[Colour]:
    for line in paragraphs:
        if line.part == "materials":
            yield from colours_in(line)


def _measurements(script: Script, lines: tuple[Line, ...]) -> Iterator[Measurement]:
    front = tuple(line for line in lines if line.part not in (*_WORK, "gauge", "materials"))
    tabled, used = tables_in(front, script.sizes)
    yield from tabled
    for line in joined(tuple(each for each in front if each.start not in used)):
        stated = line.part == "measurements" or _MEASURE_LINE.match(line.text)
        if stated:
            yield from measures_in(line, finished="finished" in line.text[:60].lower())
        elif line.part == "sizes":
            yield from (each for each in measures_in(line, finished=False) if each.way != "girth")


def _both(paragraphs: tuple[Line, ...]) -> Iterator[Lengths]:
    for line in paragraphs:
        if _INCHES.search(line.text) and _METRIC.search(line.text):
            for each in lengths_in(line.text, line.start):
                if each.metric and each.inches:
                    yield each
