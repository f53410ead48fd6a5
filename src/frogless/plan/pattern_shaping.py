"""A section in a stitch pattern in whichever way it is shaped; refused, with what the others make."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from frogless.errors import FroglessError, Impossible
from frogless.plan.basis import Basis
from frogless.plan.pattern_asked import Asked
from frogless.plan.pattern_columns import by_columns
from frogless.plan.pattern_growth import Made
from frogless.plan.pattern_repeats import by_repeats
from frogless.plan.pattern_sections import kept

TRIED_COLUMNS = (8, 6, 4, 12)
"""Columns that are offered, the usual number of gores first."""


def made_section(basis: Basis, ask: Asked) -> Made:
    """The section in whichever way it is shaped.

    Raises:
        InputError, Impossible: it cannot be shaped so; says what can be had, and what the other ways
            make of it.
    """
    try:
        return _made(basis, ask)
    except Impossible as refused:
        raise _with_figures(basis, ask, refused) from None


def _made(basis: Basis, ask: Asked) -> Made:
    if ask.shape_by == "repeats":
        return by_repeats(basis, ask)
    if ask.shape_by == "columns":
        return by_columns(basis, ask)
    found = kept(basis, ask)
    return found, (None,) * len(found)


def _with_figures(basis: Basis, ask: Asked, refused: Impossible) -> Impossible:
    """The refusal, with what comes of the other ways where they do."""
    figures = dict(_figures(basis, ask)) if ask.target is not None else {}
    ways = [
        next((told for way, told in figures.items() if f'"{way}"' in one), one)
        for one in refused.ways_out
    ]
    return Impossible(
        refused.requirement,
        refused.faults[0].place,
        short_stitches=refused.short_stitches,
        short=refused.short,
        ways_out=ways,
        requirements=refused.requirements,
    )


def _figures(basis: Basis, ask: Asked) -> Iterator[tuple[str, str]]:
    """What comes of whole repeats, and of columns, each as a way out."""
    if ask.shape_by != "repeats" and (girth := _girth(basis, ask, "repeats", None)):
        yield "repeats", f'shape_by = "repeats", which comes to {basis.show(girth)}'
    for columns in TRIED_COLUMNS if ask.shape_by != "columns" else ():
        if girth := _girth(basis, ask, "columns", columns):
            told = f'shape_by = "columns", columns = {columns}, which comes to {basis.show(girth)}'
            yield "columns", told
            return


def _girth(basis: Basis, ask: Asked, way: str, columns: int | None) -> float:
    """The girth at the end of a section that is shaped so, mm; 0 when it cannot be."""
    section = ask.section.model_copy(
        update={"shape": "shaped", "shape_by": way, "columns": columns, "grades": (), "hooks": ()}
    )
    try:
        spans, _ = _made(basis, replace(ask, section=section, fabrics=ask.fabrics[:1]))
    except FroglessError:
        return 0.0
    last = spans[-1]
    return last.worked.girth(last.gauge.width, last.worked.rounds[-1]).value if last.worked else 0.0
