"""What to have ready, and how it will sit: the two rooms that are mostly tables and lists."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.fit.model import LandmarkFit
from frogless.publish.blocks import Bullets
from frogless.publish.drafted import Drafted
from frogless.publish.front import openings, time
from frogless.publish.messages import say
from frogless.publish.pattern import rooms
from frogless.publish.reasons import fit_table, materials_lines
from frogless.publish.reasons_fit import fits
from frogless.publish.reasons_model import Asked
from frogless.publish.remarks import sentence
from frogless.studio.garments.sheet import Cell, ListBlock, Part, TableBlock, TextBlock, TitleBlock
from frogless.studio.garments.shown_blocks import asked, keyed, parts
from frogless.studio.garments.shown_pattern import names
from frogless.units import show_length

PASSES = {
    "passes": "it goes on",
    "uncertain": "it may not go on",
    "does not pass": "it does not go on",
}
SITS = {"ok": "as wanted", "tight": "tight", "loose": "loose"}


def materials_parts(drafted: Drafted) -> tuple[Part, ...]:
    """Yarn, hooks, notions; colours; gauge; time."""
    title, *others = rooms(drafted)["materials"]
    name = names()
    first = parts((title,), name)
    # The list of the pattern stands here with what each line can be asked.
    rest = others[1:] if others and isinstance(others[0], Bullets) else others
    lines = asked(materials_lines(drafted))
    spent = asked((Asked(f"{time(drafted)}.", "time"),))
    return (*first, lines, *parts(rest, name), TitleBlock("Time", 2, "part-time"), spent)


def fit_parts(drafted: Drafted) -> tuple[Part, ...]:
    """Ease by landmark, going on, staying up, hanging; the cautions stand above them."""
    return (*_ease(drafted), *_going_on(drafted), *_staying(drafted), *_hanging(drafted))


def _ease(drafted: Drafted) -> Iterator[Part]:
    table = keyed(fit_table(drafted), "ease-table")
    if not table.rows:
        return
    yield TitleBlock("Ease", 2, "ease")
    header = (*table.header, Cell("likely", figure=True), Cell("sits"))
    found = zip(table.rows, (fit for *_, fit in fits(drafted)), strict=True)
    rows = tuple((*row, *_more(drafted, fit)) for row, fit in found)
    yield TableBlock(table.caption, header, rows, table.id)
    yield TextBlock(
        "“Likely” is where 95 of 100 such garments would measure, as sure as the swatch is."
    )


def _more(drafted: Drafted, fit: LandmarkFit) -> tuple[Cell, Cell]:
    low, high = (show_length(end, drafted.units) for end in (fit.low, fit.high))
    return Cell(f"{low} to {high}", figure=True), Cell(SITS[fit.verdict])


def _going_on(drafted: Drafted) -> Iterator[Part]:
    yield TitleBlock("Going on", 2, "going-on")
    told = []
    ways: dict[str, None] = {}
    for key, one in openings(drafted):
        name = f"{one.name}: " if one.name else ""
        told.append(Asked(f"{name}{PASSES[one.verdict]}. {' '.join(one.reasons)}".strip(), key))
        ways |= dict.fromkeys(sentence(way) for way in one.ways_out)
    yield asked(told)
    if ways:
        yield TextBlock("What would make it surer:")
        yield ListBlock(tuple(map(Cell, ways)))


def _staying(drafted: Drafted) -> Iterator[Part]:
    if drafted.fit.staying_up:
        yield TitleBlock("Staying up", 2, "staying-up")
        yield asked((Asked(sentence(drafted.fit.staying_up), "staying_up"),))


def _hanging(drafted: Drafted) -> Iterator[Part]:
    hanging = drafted.fit.hanging
    told = hanging.sentence
    if hanging.measured:
        percent = f"{100 * hanging.growth:.1f}".removesuffix(".0")
        told = say(drafted, "gauge_growth", percent=percent)
    yield TitleBlock("Hanging", 2, "hanging")
    yield TextBlock(told)
