"""The swatch file `frogless-swatch/1`: what it may hold, and what makes a reading useless."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from frogless.errors import Fault, InputError, Place, near_names
from frogless.files import Document, Letter, Line, Name, parse_document, read_text
from frogless.units import Hook, Length, Mass

WHAT = "swatch file"
State = Literal["as worked", "washed", "hung"]

STITCH_NAMES: Mapping[str, str] = {
    "ch": "chain",
    "sl_st": "slip_stitch",
    "sc": "single_crochet",
    "sc_blo": "single_crochet_back_loop",
    "hdc": "half_double_crochet",
    "dc": "double_crochet",
    "tr": "treble",
    "dtr": "double_treble",
    "trtr": "triple_treble",
    "esc": "extended_single_crochet",
    "ehdc": "extended_half_double_crochet",
    "edc": "extended_double_crochet",
}
"""US abbreviations for the full names. A swatch knows no more of a stitch than its name."""

SMALLEST_WINDOW = 50.0
"""mm; over less than this a count is refused: half a stitch would be more than any ease."""

SMALLEST_STITCH, LARGEST_STITCH = 0.5, 200.0
"""mm; from the finest thread to rope worked on the arm (own choice): only a slip lies outside."""

EXAMPLE_HIP = 1160.0
"""mm; a hip of 112 cm with 4 cm of ease, for telling what an uncertain count means."""


class _Strict(BaseModel):
    model_config = ConfigDict(
        extra="forbid", frozen=True, str_strip_whitespace=True, allow_inf_nan=False
    )


Count = Annotated[float, Field(gt=0, multiple_of=0.25)]
"""Stitches or rows; halves and quarters may be read."""


class YarnTable(_Strict):
    """The table `[yarn]`: what the label says."""

    name: Line = ""
    category: Annotated[int, Field(ge=0, le=7)] | None = None
    fibre: Line = ""
    ball_mass: Mass | None = None
    ball_length: Length | None = None
    plies: Annotated[int, Field(ge=1, le=48)] | None = None


class ReadingTable(_Strict):
    """A table `[[reading]]`: stitches over a width, rows over a height, or both.

    In a stitch pattern whole repeats are counted, not stitches.
    """

    state: State
    stitch: str | None = None
    pattern: Name | None = None
    parameters: dict[str, int] = Field(default_factory=dict)
    hook: Hook | None = None
    stitches: Count | None = None
    repeats: Count | None = None
    width: Length | None = None
    rows: Count | None = None
    height: Length | None = None
    mass: Mass | None = None
    load: Mass | None = None
    stretched_width: Length | None = None


class SwatchFile(_Strict):
    """The document `frogless-swatch/1`."""

    format: Literal["frogless-swatch/1"]
    name: Name
    stitch: str
    hook: Hook
    colour: Letter | None = None
    yarn: YarnTable = YarnTable()
    reading: Annotated[tuple[ReadingTable, ...], Field(min_length=1)]


def stitch_key(name: str) -> str:
    """The full US name: "dc" and "double crochet" are `double_crochet`.

    Raises:
        InputError: no stitch has this name.
    """
    plain = "_".join(name.lower().split())
    key = STITCH_NAMES.get(plain, plain)
    if key not in STITCH_NAMES.values():
        known = (*STITCH_NAMES, *STITCH_NAMES.values())
        hint = near_names(plain, known) or f"; accepted are {', '.join(STITCH_NAMES)}"
        raise InputError(f'unknown stitch "{name}"{hint}')
    return key


def read_swatch_file(path: Path | str) -> Document[SwatchFile]:
    """The checked document of a file, as `parse_swatch_file` checks it.

    Raises:
        InputError: as `parse_swatch_file`, or it cannot be read.
    """
    path = Path(path)
    return parse_swatch_file(read_text(path, what=WHAT), path.name)


def parse_swatch_file(text: str, name: str = "") -> Document[SwatchFile]:
    """The checked document of a text, every reading of it good enough to count with.

    Args:
        name: what its faults are told of.

    Raises:
        InputError: the file's faults, or a count over so short a length that it tells nothing.
    """
    document = parse_document(text, name, SwatchFile, what=WHAT)
    if faults := _faults(document):
        raise InputError.of(faults)
    return document


def _faults(document: Document[SwatchFile]) -> list[Fault]:
    faults = _stitch_faults(document.checked.stitch, document.place(("stitch",)))
    for index, one in enumerate(document.checked.reading):
        place = _places(document, index)
        faults += _stitch_faults(one.stitch, place("stitch")) + _pattern_faults(one, place)
        faults += _pair_faults(one, place) + _window_faults(one, place)
        if one.load and one.state != "hung":
            faults.append(Fault('a load belongs to a reading with state = "hung"', place("load")))
        if one.stretched_width and one.width and one.stretched_width < one.width:
            least, found = shown_cm(one.width), shown_cm(one.stretched_width)
            told = f"must be the width of {least} or more, not {found}"
            faults.append(Fault(told, place("stretched_width")))
    return faults


def _places(document: Document[SwatchFile], index: int) -> Callable[[str], Place]:
    return lambda key: document.place(("reading", index, key))


def _stitch_faults(name: str | None, place: Place) -> list[Fault]:
    try:
        stitch_key(name or "dc")
    except InputError as error:
        return list(error.at(place).faults)
    return []


def _pattern_faults(one: ReadingTable, place: Callable[[str], Place]) -> list[Fault]:
    """What belongs to a reading in a stitch pattern, and what to one in a stitch."""
    if one.pattern is None:
        return [
            Fault('belongs to a reading with a "pattern"', place(key))
            for key in ("repeats", "parameters")
            if key in one.model_fields_set
        ]
    faults = []
    if one.stitch is not None:
        told = 'is left out where "pattern" is given: a reading is in one or the other'
        faults.append(Fault(told, place("stitch")))
    if one.stitches is not None:
        faults.append(Fault("is left out in a pattern: count its repeats", place("stitches")))
    told = "belongs to a reading in a stitch; of a pattern only its size is read"
    faults += [Fault(told, place(key)) for key in OF_A_STITCH if key in one.model_fields_set]
    return faults


OF_A_STITCH = ("mass", "stretched_width", "load")
"""What is not read of a stitch pattern: yarn, stretch and growth go by the garment's stitch."""


def _pair_faults(one: ReadingTable, place: Callable[[str], Place]) -> list[Fault]:
    given = one.model_dump(exclude_none=True)
    across = "stitches" if one.pattern is None else "repeats"
    faults = [
        Fault(f"is missing: {have} is given, and each is read over the other", place(lacks))
        for pair in ((across, "width"), ("rows", "height"))
        for have, lacks in (pair, pair[::-1])
        if have in given and lacks not in given
    ]
    needs = {"stretched_width": ("width",), "mass": (across, "rows")}
    faults += [
        Fault(f"needs {lacks} in the same reading", place(key))
        for key, others in needs.items()
        for lacks in others
        if key in given and lacks not in given
    ]
    if not faults and not {"width", "height"} & set(given):
        told = f"has neither {across} over a width nor rows over a height"
        faults = [Fault(told, place("state"))]
    return faults


def _window_faults(one: ReadingTable, place: Callable[[str], Place]) -> list[Fault]:
    windows = (
        ("stitches", one.stitches, one.width, "width"),
        ("repeats", one.repeats, one.width, "width"),
        ("rows", one.rows, one.height, "height"),
    )
    return [
        Fault(_too_short(what, count, window), place(key))
        for what, count, window, key in windows
        if count and window and window < SMALLEST_WINDOW
    ] + [
        Fault(_no_stitch(what, count, window), place(key))
        for what, count, window, key in windows
        if count and window and not SMALLEST_STITCH <= window / count <= LARGEST_STITCH
    ]


def _no_stitch(what: str, count: float, window: float) -> str:
    one = {"stitches": "a stitch", "repeats": "a repeat", "rows": "a row"}[what]
    return (
        f"{count:.12g} {what} over {shown_cm(window)} make {one} {_two_figures(window / count)} mm; "
        f"{SMALLEST_STITCH:g} mm to {LARGEST_STITCH:g} mm is accepted"
    )


def _two_figures(number: float) -> str:
    """ "350" and "0.00017", where two figures are all that matter and powers of ten are no help."""
    return f"{float(f'{number:.1e}'):.12f}".rstrip("0").rstrip(".")


def _too_short(what: str, count: float, window: float) -> str:
    off = 0.5 / count
    one = {"stitches": "stitch", "repeats": "repeat", "rows": "row"}[what]
    told = f"{count:g} {what} over {shown_cm(window)}: half a {one} is {off * 100:.0f} %"
    if what == "rows":
        return f"{told}; count over 5 cm at least, better over 10 cm"
    # Half a stitch in n is EXAMPLE_HIP / 2n on the hip; for ± 20 mm n is EXAMPLE_HIP / 40.
    needed = math.ceil(EXAMPLE_HIP * 0.5 / 20)
    return (
        f"{told}, ± {off * EXAMPLE_HIP / 10:.1f} cm on a hip of {shown_cm(EXAMPLE_HIP)}; "
        f"count over 5 cm at least, and for ± 2 cm at least {needed} {what}"
    )


def shown_cm(length: float) -> str:
    """ "2.5 cm", "11.45 cm": a swatch is read to the millimetre or better."""
    return f"{round(length / 10, 2):g} cm"
