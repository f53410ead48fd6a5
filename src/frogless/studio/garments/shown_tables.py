"""What to have ready, and how it will sit: the two rooms that are mostly tables and lists."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.model import LandmarkFit
from frogless.publish.blocks import Heading
from frogless.publish.drafted import Drafted
from frogless.publish.front import place, time
from frogless.publish.messages import say
from frogless.publish.pattern import rooms
from frogless.publish.reasons_names import landmarks
from frogless.publish.remarks import sentence
from frogless.studio.garments.sheet import (
    Cell,
    ListBlock,
    Part,
    TableBlock,
    TextBlock,
    TitleBlock,
)
from frogless.studio.garments.shown_blocks import parts
from frogless.studio.garments.shown_pattern import names
from frogless.units import as_shown, show_length, show_signed


def materials_parts(drafted: Drafted) -> tuple[Part, ...]:
    """Yarn, hooks, notions; colours; gauge; time."""
    blocks = (*rooms(drafted)["materials"], Heading("Time"))
    return (*parts(blocks, names()), TextBlock(f"{time(drafted)}."))


def fit_parts(drafted: Drafted) -> tuple[Part, ...]:
    """Ease by landmark, going on, staying up, hanging; the cautions stand above them."""
    return (*_ease(drafted), *_going_on(drafted), *_staying(drafted), *_hanging(drafted))


def _ease(drafted: Drafted) -> Iterator[Part]:
    keys = {id(mark): key for key, _, mark in landmarks(drafted)}
    pairs = tuple(zip(drafted.fit.landmarks, drafted.plan.landmarks, strict=True))
    if not pairs:
        return
    yield TitleBlock("Ease", 2, "ease")
    pieces = (Cell("piece"),) if drafted.of_pieces else ()
    header = (
        Cell("at"),
        *pieces,
        Cell("body", figure=True),
        Cell("garment", figure=True),
        Cell("likely", figure=True),
        Cell("ease", figure=True),
        Cell("wanted ease", figure=True),
        Cell("sits"),
    )
    rows = tuple(_landmark(drafted, fit, keys[id(mark)]) for fit, mark in pairs)
    yield TableBlock("", header, rows, "ease-table")
    yield TextBlock(
        "“Likely” is where 95 of 100 such garments would measure, as sure as the swatch is."
    )


def _landmark(drafted: Drafted, fit: LandmarkFit, key: str) -> tuple[Cell, ...]:
    units, none = drafted.units, say(drafted, "none")
    body, ease, wanted = none, none, none
    if fit.body is not None:
        body = show_length(fit.body, units)
        ease = show_signed(as_shown(fit.garment, units) - as_shown(fit.body, units), units)
    if fit.wanted_ease is not None:
        wanted = show_signed(fit.wanted_ease, units)
    if fit.estimated:
        body = say(drafted, "estimated_mark", value=body)
    named = drafted.phrases.measurement(fit.at) if drafted.of_pieces else place(drafted, fit.at)
    low, high = show_length(fit.low, units), show_length(fit.high, units)
    piece = (Cell(fit.piece),) if drafted.of_pieces else ()
    return (
        Cell(named[:1].upper() + named[1:]),
        *piece,
        Cell(body, figure=True),
        Cell(show_length(fit.garment, units), f"{key}.girth", figure=True),
        Cell(f"{low} to {high}", figure=True),
        Cell(ease, figure=True),
        Cell(wanted, figure=True),
        Cell({"ok": "as wanted"}.get(fit.verdict, fit.verdict)),
    )


def _going_on(drafted: Drafted) -> Iterator[Part]:
    yield TitleBlock("Going on", 2, "going-on")
    openings = drafted.fit.openings or (drafted.fit.going_on,)
    verdicts = {
        "passes": "goes on",
        "uncertain": "may not go on",
        "does not pass": "does not go on",
    }
    told = []
    for one in openings:
        name = f"{one.name[:1].upper()}{one.name[1:]}: " if one.name else ""
        told.append(f"{name}{verdicts[one.verdict]}. {' '.join(one.reasons)}".strip())
    yield ListBlock(tuple(line[:1].upper() + line[1:] for line in told))
    ways = tuple(dict.fromkeys(sentence(way) for one in openings for way in one.ways_out))
    if ways:
        yield TextBlock("What would make it surer:")
        yield ListBlock(ways)


def _staying(drafted: Drafted) -> Iterator[Part]:
    if drafted.fit.staying_up:
        yield TitleBlock("Staying up", 2, "staying-up")
        yield TextBlock(sentence(drafted.fit.staying_up))


def _hanging(drafted: Drafted) -> Iterator[Part]:
    yield TitleBlock("Hanging", 2, "hanging")
    hanging = drafted.fit.hanging
    told = hanging.sentence
    if hanging.measured:
        percent = f"{100 * hanging.growth:.1f}".removesuffix(".0")
        told = say(drafted, "gauge_growth", percent=percent)
    yield TextBlock(told)
