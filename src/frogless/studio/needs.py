"""What a design has to be told before it can be drafted: measurements, stitches, stitch patterns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from frogless.body.estimate import estimates
from frogless.body.measurements import known_measurements
from frogless.design.document import Design, PiecesDesign, TubeDesign, tubes
from frogless.design.load import parse_design
from frogless.design.pieces.panel import PanelChoice
from frogless.draft import needed, wished
from frogless.errors import InputError, Place
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.swatch_file import STITCH_NAMES

SKIRT_WHY: Mapping[str, str] = {
    "high_hip_girth": "Without it the girth between waist and hip is not checked; there skirts "
    "fail first.",
    "waist_to_high_hip": "Says where the high hip lies: the two belong together.",
    "stature": "Makes a better estimate of the lengths that were not measured.",
    "shoulder_girth": "Tells whether it goes on over the head.",
}
"""What is worth measuring for a garment that hangs from the waist, and why."""

ESTIMATED_WHY = "Estimated from a survey when left empty; measured is better."
FIT_WHY = "Tells whether the openings are wide enough; estimated when left empty."


@dataclass(frozen=True, slots=True)
class Worth:
    """A measurement that a design can do without, and what it is good for."""

    key: str
    why: str


@dataclass(frozen=True, slots=True)
class StitchNeed:
    """A stitch to be read in a swatch; what is not `needed` is estimated from the main stitch."""

    key: str
    needed: bool = True


@dataclass(frozen=True, slots=True)
class PatternNeed:
    """A stitch pattern to be read in a swatch, with the numbers that the design gives it."""

    key: str
    parameters: tuple[tuple[str, int], ...] = ()
    needed: bool = True


@dataclass(frozen=True, slots=True)
class Needs:
    """What a design needs.

    Args:
        title, summary, kind: as the design says; "" when its text cannot be read.
        measurements: keys of what has to be measured.
        estimated: keys that the design uses as well and that a survey tells.
        worth: what may be left empty, and what it is good for; what the design uses comes first.
        stitches: to be read in a swatch, the main stitch first, then what is only estimated
            without one.
        error: what is wrong with the design, when it cannot be read.
    """

    title: str = ""
    summary: str = ""
    kind: str = ""
    measurements: tuple[str, ...] = ()
    estimated: tuple[str, ...] = ()
    worth: tuple[Worth, ...] = ()
    stitches: tuple[StitchNeed, ...] = ()
    patterns: tuple[PatternNeed, ...] = ()
    error: str = ""

    @property
    def needed_stitches(self) -> tuple[str, ...]:
        """Keys of the stitches without which nothing can be drafted."""
        return tuple(one.key for one in self.stitches if one.needed)


@lru_cache(maxsize=256)
def needs(design_text: str) -> Needs:
    """What the design of a text needs; its `error` says so when it cannot be read."""
    try:
        document = parse_design(design_text, "design.toml")
        design = document.checked
        used = _used(design)
    except InputError as error:
        return Needs(error=str(error))
    must = _must_be_measured(used)
    return Needs(
        title=design.title,
        summary=design.summary,
        kind=design.garment.kind,
        measurements=must,
        estimated=tuple(key for key in used if key not in must),
        worth=tuple(_worth(design, used, must)),
        stitches=tuple(StitchNeed(key, is_needed) for key, is_needed in _stitches(design).items()),
        patterns=tuple(_patterns(design)),
    )


def _used(design: Design) -> tuple[str, ...]:
    return needed(design, lambda key: Place("design.toml", key=key))


def _must_be_measured(used: tuple[str, ...]) -> tuple[str, ...]:
    """Of what a design uses, what no survey tells from the rest of it."""
    sources = {one.key: set[str]() for one in estimates()}
    for one in estimates():
        sources[one.key].add(one.from_key)
    return tuple(key for key in used if not sources.get(key, set()) & {"", *used})


def _worth(design: Design, used: tuple[str, ...], must: tuple[str, ...]) -> Iterator[Worth]:
    told = {key: ESTIMATED_WHY for key in used if key not in must}
    told |= dict.fromkeys(wished(design, used), FIT_WHY)
    if isinstance(design, TubeDesign) or design.garment.kind == "dress":
        told |= {key: why for key, why in SKIRT_WHY.items() if key not in (*used, *told)}
    yield from (Worth(key, why) for key, why in told.items())


def _stitches(design: Design) -> dict[str, bool]:
    """Stitches that can be swatched, with whether the garment itself is made of them."""
    made_of = [design.work.stitch]
    pieces = design.piece if isinstance(design, PiecesDesign) else ()
    own_work = (getattr(one, "work", None) for one in pieces)
    made_of += [work.stitch for work in own_work if work is not None]
    made_of += [one.stitch for one in _sections(design) if one.stitch]
    found = {key: True for key in made_of if key in STITCH_NAMES.values()}
    trims = ["single_crochet", *(["single_crochet_back_loop"] if _has_band(design) else [])]
    return found | {key: False for key in trims if key not in found}


def _patterns(design: Design) -> Iterator[PatternNeed]:
    found: dict[PatternNeed, None] = {}
    for section in _sections(design):
        grades: tuple[dict[str, int], ...] = getattr(section, "grades", ()) or ({},)
        for numbers in grades if section.pattern else ():
            own = {**section.parameters, **numbers}
            found[PatternNeed(section.pattern, tuple(sorted(own.items())))] = None
    yield from found


def _sections(design: Design) -> Iterator[Any]:
    """The sections of a design that may be in a stitch or a stitch pattern of their own."""
    yield from (section for tube in tubes(design) for section in tube.section)
    if isinstance(design, PiecesDesign):
        for piece in design.piece:
            if isinstance(piece, PanelChoice):
                yield from piece.section


def _has_band(design: Design) -> bool:
    return any(t.waist is not None and t.waist.kind == "ribbed band" for t in tubes(design))


def measurement_name(key: str) -> str:
    """ "Waist girth": a measurement as forms call it."""
    words = known_measurements()[key].key.replace("_", " ")
    return words[:1].upper() + words[1:]


def need_words(need: Needs, terms: Dialect) -> str:
    """What must be measured, the swatch, and what is estimated: in the same words everywhere.

    "waist and hip; a swatch in double crochet. Estimated when not measured: waist to hip."
    """
    must, told = map(_shortly, need.measurements), tuple(map(_shortly, need.estimated))
    body = _listed(tuple(must))
    if not body:
        body = f"{_listed(told)}, or estimated" if told else "no measurements"
        told = ()
    read = [dictionary()[key].terms[terms].name for key in need.needed_stitches]
    read += [_pattern_name(one.key, terms) for one in need.patterns]
    swatch = _listed(tuple(dict.fromkeys(read))) or "its stitch"
    rest = f" Estimated when not measured: {', '.join(told)}." if told else ""
    return f"{body}; a swatch in {swatch}.{rest}"


def _shortly(key: str) -> str:
    """ "waist", "waist to knee": a measurement in a list of them."""
    return key.removesuffix("_girth").replace("_", " ")


def _pattern_name(key: str, terms: Dialect) -> str:
    entry = patterns().get(key)
    name = entry.names[terms] if entry else key.replace("_", " ")
    return name[:1].lower() + name[1:]


def _listed(parts: tuple[str, ...]) -> str:
    return " and ".join(filter(None, (", ".join(parts[:-1]), *parts[-1:])))
