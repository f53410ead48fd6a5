"""What goes with a knob that is turned: keys that make no sense any more, and those then needed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from frogless.design.document import Design
from frogless.design.save import Value, inside
from frogless.design.strict import Strict
from frogless.design.trims import CoveredElastic, Drawcord, RibbedBand
from frogless.files import Document
from frogless.stitches import edgings, patterns
from frogless.stitches.parameters import Numbered
from frogless.toml_text import Steps

WAISTS: Mapping[str, type[Strict]] = {
    "covered elastic": CoveredElastic,
    "drawcord": Drawcord,
    "ribbed band": RibbedBand,
}
NEEDED: Mapping[str, Mapping[str, str]] = {
    "covered elastic": {"width": "6 mm"},
    "drawcord": {},
    "ribbed band": {"height": "4 cm"},
}
"""What a waist has to say, as it is usual (common practice)."""

Follows = tuple[dict[Steps, Value], tuple[Steps, ...]]


def follow(document: Document[Design], path: Steps, value: Value | None) -> Follows:
    """What else is to be set, and which keys are to go, when the knob at `path` gets this value."""
    if path[-1] not in ("kind", "pattern"):
        return {}, ()
    table: Mapping[str, Any] = inside(document.data, path[:-1])
    match path[-1]:
        case "kind" if value is not None and path[-2:-1] == ("waist",):
            return _waist(table, path, str(value))
        case "pattern" if path[-2:-1] == ("edging",):
            known = edgings.patterns().get(str(value))
            return _parameters(table, path, known.parameters if known else {})
        case "pattern":
            return _parameters(table, path, _of_pattern(document.checked, value))
    return {}, ()


def _of_pattern(design: Design, value: Value | None) -> Mapping[str, Numbered]:
    if value in design.pattern:
        return design.pattern[str(value)].parameters
    known = patterns.patterns().get(str(value))
    return known.parameters if known else {}


def _parameters(table: Mapping[str, Any], path: Steps, known: Mapping[str, Numbered]) -> Follows:
    """Numbers that the other one has not, or not so far, go."""
    written = table.get("parameters", {})
    kept = {n for n, v in written.items() if n in known and known[n].low <= v <= known[n].high}
    holder = (*path[:-1], "parameters")
    if written and not kept:
        return {}, (holder,)
    return {}, tuple((*holder, name) for name in written if name not in kept)


def _waist(table: Mapping[str, Any], path: Steps, kind: str) -> Follows:
    fields = WAISTS[kind].model_fields
    gone = tuple((*path[:-1], key) for key in table if key not in fields)
    needed = {(*path[:-1], k): v for k, v in NEEDED[kind].items() if k not in table}
    return dict(needed), gone
