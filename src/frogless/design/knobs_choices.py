"""What a knob with choices offers, each with its name in the maker's terms."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache

from pydantic.fields import FieldInfo

from frogless.body.measurements import known_measurements
from frogless.design.document import Design
from frogless.design.knobs_kinds import kind_of, named
from frogless.design.knobs_words import Words
from frogless.design.pieces.panel import PanelSection
from frogless.design.pieces.tube import Section
from frogless.design.strict import Strict
from frogless.design.trims import EdgingChoice
from frogless.stitches import edgings, patterns
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.parameters import Numbered
from frogless.swatch_file import STITCH_NAMES

Choices = tuple[tuple[str, str], ...]
"""Values with their names."""

TRUTHS: Choices = (("true", "yes"), ("false", "no"))


def choices_of(said: Words, info: FieldInfo, design: Design, terms: Dialect) -> Choices:
    """The choices of a key."""
    if said.source:
        return (*_own(said.source, design), *_SOURCES[said.source](terms))
    if said.choices:
        return tuple((value, value) for value in said.choices)
    if kind_of(info) == "truth":
        return TRUTHS
    return tuple((str(value), str(value)) for value in named(info))


def parameters_of(part: Strict, design: Design) -> Mapping[str, Numbered]:
    """The numbers that the edging or the stitch pattern of a table leaves open."""
    match part:
        case EdgingChoice(pattern=key):
            known = edgings.patterns()
            return known[key].parameters if key in known else {}
        case Section(pattern=str(key)) | PanelSection(pattern=str(key)):
            if key in design.pattern:
                return design.pattern[key].parameters
            library = patterns.patterns()
            return library[key].parameters if key in library else {}
    return {}


@cache
def _fabric(terms: Dialect) -> Choices:
    """Stitches that a swatch may be worked in: a garment is made of no others."""
    known = dictionary()
    return _stitches([key for key in STITCH_NAMES.values() if known[key].turning_chain], terms)


@cache
def _any_stitch(terms: Dialect) -> Choices:
    known = dictionary().values()
    return _stitches([s.key for s in known if s.kind == "stitch" and s.stands_on == 1], terms)


@cache
def _foundations(terms: Dialect) -> Choices:
    known = dictionary().values()
    begun = [s.key for s in known if s.kind == "foundation" and s.leaves == 1 and s.begins_on]
    return _stitches(["chain", *begun], terms)


def _stitches(keys: list[str], terms: Dialect) -> Choices:
    return tuple((key, dictionary()[key].terms[terms].name) for key in keys)


@cache
def _edgings(terms: Dialect) -> Choices:
    return tuple((key, found.entry[terms][0]) for key, found in edgings.patterns().items())


@cache
def _girths(_: Dialect) -> Choices:
    known = known_measurements().values()
    return tuple((m.key, m.key.replace("_", " ")) for m in known if m.kind == "girth")


@cache
def _in_rounds(terms: Dialect) -> Choices:
    known = patterns.patterns().values()
    return tuple((p.key, p.names[terms]) for p in known if p.rounds is not None)


@cache
def _in_rows(terms: Dialect) -> Choices:
    known = patterns.patterns().values()
    return tuple((p.key, p.names[terms]) for p in known if p.rows is not None)


def _own(source: str, design: Design) -> Choices:
    """Stitch patterns of the design's own, which come before those of the library."""
    if source not in ("rounds", "rows"):
        return ()
    return tuple(
        (key, made.name)
        for key, made in design.pattern.items()
        if ((made.rounds or made.round) if source == "rounds" else (made.rows or made.row))
    )


_SOURCES: Mapping[str, Callable[[Dialect], Choices]] = {
    "fabric": _fabric,
    "stitch": _any_stitch,
    "foundation": _foundations,
    "edging": _edgings,
    "girth": _girths,
    "rounds": _in_rounds,
    "rows": _in_rows,
}
