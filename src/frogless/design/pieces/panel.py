"""A flat piece worked in rows, shaped at its edges or inside."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from frogless.design.strict import FEW, SEVERAL, Formula, Multiple, Offset, Strict
from frogless.design.work import Work
from frogless.files import Name
from frogless.units import Hook

Edges = Literal["both", "left", "right", "inside"]
OuterEdges = Literal["both", "left", "right"]
ShapedRows = Literal["auto", "right side", "any"]


class PanelSection(Strict):
    """A stretch of rows: how long it is, how wide it ends, and where the stitches change.

    `at_once` is what each shaped edge loses in its first row; what is left changes stitch by stitch,
    spread evenly or one after the other ("steep"). `inside` shapes at `lines` on both sides of the
    middle: darts and princess lines. In a stitch `pattern` a section is as wide as the piece.
    """

    name: Name
    length: Formula
    width: Formula | None = None
    edges: Edges = "both"
    lines: Annotated[tuple[Formula, ...], FEW] = ()
    at_once: Formula = "0 cm"
    rate: Literal["even", "steep"] = "even"
    rows: ShapedRows = "auto"
    multiple: Multiple = 1
    offset: Offset = 0
    stitch: str | None = None
    pattern: Name | None = None
    parameters: dict[str, int] = Field(default_factory=dict)
    base_stitch: str = "single_crochet"


class Armhole(Strict):
    """The top rows of a side edge, that a sleeve is joined to, cut in to `width` when it is given."""

    depth: Formula
    width: Formula | None = None
    at_once: Formula | None = None
    edges: OuterEdges = "both"
    rows: ShapedRows = "auto"


class Neck(Strict):
    """What the top of the panel leaves free for the neck: in the middle, or at one edge of a half.

    A round one leaves about a third at once, more when it is too shallow for that.
    """

    width: Formula
    depth: Formula
    shape: Literal["round", "V", "square"] = "round"
    at: Literal["middle", "left", "right"] = "middle"
    at_once_percent: Annotated[float, Field(ge=0, le=100)] | None = None
    rows: ShapedRows = "auto"


class Shoulder(Strict):
    """How far the shoulder falls from the neck to its tip, worked in short rows."""

    drop: Formula


class FullBust(Strict):
    """Short rows that make the middle longer than the sides by `extra`, `above` the beginning."""

    extra: Formula
    above: Formula


class Cap(Strict):
    """The head of a sleeve, made to the length of the armhole edges that it is sewn into.

    Args:
        into: those edges ("front.left armhole"), of pieces before this one.
        top: width of its top.
        ease: how much longer than the armhole it is wanted.
        shorter, longer: what it may differ from that.
    """

    into: Annotated[tuple[str, ...], Field(min_length=1), SEVERAL]
    top: Formula = "10 cm"
    at_once: Formula | None = None
    ease: Formula = "0 cm"
    shorter: Formula = "1 cm"
    longer: Formula = "1.5 cm"


class PanelChoice(Strict):
    """A flat piece worked in rows, its right side towards you: left and right are as it lies there.

    What `section` does not take up of the length stays as wide as it is; armhole, neck and shoulder
    are measured from the top, a cap is worked on top of the length. With `body` the width is held
    against a girth of the body, of which the panel is one part in `share`.
    """

    construction: Literal["panel"]
    name: Name
    work: Work | None = None
    hook: Hook | None = None
    make: Annotated[int, Field(ge=1, le=20)] = 1
    made_of: str = Field(default="chain", alias="with")
    width: Formula
    ease: Formula = "0 cm"
    multiple: Multiple = 1
    offset: Offset = 0
    body: str | None = None
    share: Annotated[float, Field(gt=0, le=100)] = 2
    ease_allowed: tuple[Formula, Formula] | None = None
    length: Formula
    worked: Literal["upwards", "downwards"] = "upwards"
    section: Annotated[tuple[PanelSection, ...], SEVERAL] = ()
    slit: Formula | None = None
    full_bust: FullBust | None = None
    armhole: Armhole | None = None
    neck: Neck | None = None
    placket: Formula | None = None
    shoulder: Shoulder | None = None
    cap: Cap | None = None
