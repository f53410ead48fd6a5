"""The library as a page of the documentation: patterns by what they work over, then each in full."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from frogless.library.cost import cost
from frogless.library.items import ways
from frogless.library.told import (
    again_told,
    corners_told,
    edging_told,
    edging_ways,
    flatness_told,
    how_it_goes_on,
    how_it_works,
    motif_rows,
    motif_told,
    multiple,
    spelled,
    yarn_told,
)
from frogless.read.motifs import motif
from frogless.stitches import edgings
from frogless.stitches.joins import joins, say_join
from frogless.stitches.load import dictionary, explain
from frogless.stitches.motifs import motifs
from frogless.stitches.patterns import PatternEntry, patterns
from frogless.stitches.together import can_close_together
from frogless.write.stitch_pattern import say_way

_TOP = """# Which stitches, patterns and edgings are there?

This page is made from the library itself by `docs/make_catalogue.py`. `frogless stitches WORDS`
searches it by any name, in US and UK terms and other languages; `frogless stitches --over 212`
tells what works over a count. How the data are written: [stitches](stitches.md) and the
[row language](row-language.md). Terms here are US; `--terms uk` shows the rows in UK terms.

Yarn is what a pattern takes against single crochet over the same area, and is derived from the
motions of its stitches: a swatch knows better. Multiples are of the stitches that the first row or
round is worked into.
"""


def catalogue() -> str:
    """The whole page, Markdown."""
    parts = (_by_multiple, _every_pattern, _every_edging, _every_motif, _every_join, _stitches)
    return "\n".join([_TOP, *(line for part in parts for line in part())])


def _by_multiple() -> Iterator[str]:
    """What works over which counts, smallest repeats first."""
    yield "## By what they work over\n"
    yield "| rows | rounds | pattern | yarn | drape | stretch | leans |"
    yield "| --- | --- | --- | --- | --- | --- | --- |"
    entries = sorted(patterns().values(), key=lambda entry: (_first(entry), entry.names["us"]))
    for entry in entries:
        told = {way.closed: multiple(way.multiple, way.offset) for way in ways(entry)}
        yarn = next(cost(way, dictionary()).yarn for way in ways(entry))
        name = f"[{entry.names['us']}](#{_anchor(entry)})"
        yield (
            f"| {told.get(False, '–')} | {told.get(True, '–')} | {name} | {yarn:.2f} | "
            f"{entry.drape} | {entry.stretch} | {entry.bias} |"
        )
    yield ""


def _first(entry: PatternEntry) -> tuple[int, int]:
    return min((way.multiple, way.offset) for way in ways(entry))


def _anchor(entry: PatternEntry) -> str:
    return entry.names["us"].lower().replace(" ", "-").replace("'", "").replace(",", "")


def _every_pattern() -> Iterator[str]:
    by_family: dict[str, list[PatternEntry]] = {}
    for entry in patterns().values():
        by_family.setdefault(entry.family, []).append(entry)
    for family, entries in by_family.items():
        yield f"## {spelled(family, 'us').capitalize()}\n"
        for entry in entries:
            yield from _pattern(entry)


def _pattern(entry: PatternEntry) -> Iterator[str]:
    yield f"### {entry.names['us']}\n"
    other = "" if entry.names["uk"] == entry.names["us"] else f"; UK: {entry.names['uk']}"
    other += f"; also called {', '.join(entry.also)}" if entry.also else ""
    yield f"`{entry.key}`{other}. Drape: {entry.drape}. Stretch: {entry.stretch}. Leans: {entry.bias}.\n"
    if entry.parameters:
        told = (
            f"`{n}` {p.low} to {p.high} (here {p.default})" for n, p in entry.parameters.items()
        )
        yield f"May be changed: {', '.join(told)}.\n"
    for way in ways(entry):
        yield f"{how_it_works(way).capitalize()}; {yarn_told(cost(way, dictionary()), 'us')}.\n"
        yield from _fenced(say_way(way, dictionary(), "us"))
        if again := again_told(way):
            yield f"{again}\n"
    if entry.note:
        yield f"{spelled(entry.note, 'us')}\n"
    yield f"From: {spelled(entry.source, 'us')} ({entry.basis}).\n"


def _every_edging() -> Iterator[str]:
    yield "## Edgings\n"
    for key, pattern in edgings.patterns().items():
        made = edgings.edging(key)
        yield f"### {made.terms['us'].name}\n"
        yield f"`{key}`: {edging_told(made)}.\n"
        if pattern.parameters:
            told = (f"`{n}` {p.low} to {p.high}" for n, p in pattern.parameters.items())
            yield f"May be changed: {', '.join(told)}.\n"
        for way in edging_ways(made):
            yield from _fenced(say_way(way, dictionary(), "us"))
        if made.sides:
            head, *rounds = corners_told(made, "us")
            yield f"{head}\n"
            yield from _fenced(rounds)
        if made.note:
            yield f"{spelled(made.note, 'us')}\n"
        yield f"From: {spelled(made.source, 'us')} ({made.basis}).\n"


def _every_motif() -> Iterator[str]:
    yield "## Motifs\n"
    for entry in motifs().values():
        yield f"### {entry.names['us']}\n"
        yield f"`{entry.key}`: {motif_told(entry)}.\n"
        yield from _fenced(motif_rows(entry, "us"))
        if goes_on := how_it_goes_on(entry):
            yield f"{goes_on}\n"
        if flatness := motif(entry.key).flatness:
            yield f"{flatness_told(flatness, 'us')}\n"
        if entry.note:
            yield f"{spelled(entry.note, 'us')}\n"
        yield f"From: {spelled(entry.source, 'us')} ({entry.basis}).\n"


def _every_join() -> Iterator[str]:
    yield "## Joins\n"
    for join in joins().values():
        yield f"* **{join.names['us']}** (`{join.key}`), {join.looks}; {join.held}. {say_join(join, 'us')}"
    yield ""


def _fenced(lines: Iterable[str]) -> Iterator[str]:
    yield "```text"
    yield from lines
    yield "```\n"


def _stitches() -> Iterator[str]:
    yield "## Stitches\n"
    yield "Any of the stitches marked *tog* is also worked together over two places or more: sc2tog, dc3tog.\n"
    for stitch in dictionary().values():
        us, uk = stitch.terms["us"], stitch.terms["uk"]
        yield f"* **{us.name}** ({us.abbreviation}), UK {uk.name} ({uk.abbreviation}), `{stitch.key}`: "
        tog = " *tog*" if can_close_together(stitch) else ""
        yield f"  stands on {stitch.stands_on}, leaves {stitch.leaves}{tog}. {explain(stitch, 'us')}"
    yield ""
