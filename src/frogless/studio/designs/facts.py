"""What the gallery and the page about a design know of it without drafting."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.design.load import parse_design
from frogless.draft import needed
from frogless.errors import InputError, Place
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.studio.designs.facets import FACETS, PATTERN, Facets, facets
from frogless.studio.designs.special import Said, special
from frogless.studio.needs import Needs, needs

NOTHING = Needs()


@dataclass(frozen=True, slots=True)
class Facts:
    """A design as far as its text tells; of a faulty one only `fault` and perhaps its title.

    Args:
        measurements: every one that its lengths are made of, also those that can be estimated.
        said_us, said_uk: what is special about it, in the terms of each dialect.
        fault: the first thing that is wrong with the text, with its line.
    """

    title: str = ""
    summary: str = ""
    author: str = ""
    version: str = ""
    notes: tuple[str, ...] = ()
    facets: Facets = ()
    measurements: tuple[str, ...] = ()
    needs: Needs = NOTHING
    said_us: Said = ()
    said_uk: Said = ()
    fault: str = ""

    def has(self, facet: str) -> tuple[str, ...]:
        """What it has of a facet."""
        return dict(self.facets).get(facet, ())

    def said(self, dialect: Dialect) -> Said:
        """What is special about it."""
        return self.said_uk if dialect == "uk" else self.said_us


def facts(text: str) -> Facts:
    """The facts of a design's text; a fault is told, not raised."""
    try:
        design = parse_design(text, "design.toml").checked
        measurements = needed(design, lambda key: Place("design.toml", key=key))
    except InputError as error:
        return Facts(fault=in_line(error))
    return Facts(
        title=design.title,
        summary=design.summary,
        author=design.author,
        version=design.version,
        notes=design.notes,
        facets=facets(design),
        measurements=measurements,
        needs=needs(text),
        said_us=special(design, "us"),
        said_uk=special(design, "uk"),
    )


def in_line(error: InputError) -> str:
    """ "line 12, section[2].length: must be …": the first fault of a text, without a file's name."""
    fault = error.faults[0]
    line = f"line {fault.place.line}" if fault.place.line else ""
    where = ", ".join(part for part in (line, fault.place.key) if part)
    return f"{where}: {fault.message}" if where else fault.message


def label(facet: str, value: str, dialect: Dialect) -> str:
    """What a value of a facet is called; stitches as in the dialect."""
    if facet != "stitch":
        return next(one.labels.get(value, value) for one in FACETS if one.key == facet)
    if value == PATTERN:
        return "Stitch pattern"
    return stitch_name(value, dialect).capitalize()


def stitch_name(key: str, dialect: Dialect) -> str:
    """A stitch as the dialect calls it; a key that no dictionary has, in words."""
    stitch = dictionary().get(key)
    return stitch.terms[dialect].name if stitch else key.replace("_", " ")


def measure(key: str) -> str:
    """ "waist", "waist to knee": a measurement in a list of them."""
    return key.removesuffix("_girth").replace("_", " ")
