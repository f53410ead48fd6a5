"""What a pattern says of itself outside its rows: gauge, materials, finished measurements.

Lengths are mm, masses g; a value for each size is a tuple, of one where all sizes share it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from frogless.proofread.script.model import Span

Way = Literal["girth", "width", "length", "diameter", ""]


@dataclass(frozen=True, slots=True)
class Lengths:
    """One length, or one for each size, as it is written: in cm, in inches, or in both.

    Args:
        metric, inches: mm, from what is written in either; () where it is not.
        metric_step, inch_step: how finely each is written, mm: 1 in for "33 in", ¼ in for "33¼ in".
        ranged: "54-57 cm": `metric` and `inches` hold the two ends of one value.
        crossed: "90 x 60 cm": width and length.
        bracketed: written as a list with brackets, one for each size.
    """

    span: Span
    metric: tuple[float, ...] = ()
    inches: tuple[float, ...] = ()
    metric_step: float = 5.0
    inch_step: float = 6.35
    ranged: bool = False
    crossed: bool = False
    bracketed: bool = False

    @property
    def values(self) -> tuple[float, ...]:
        """mm, the finer of the two."""
        if self.metric and self.inches:
            return self.metric if self.metric_step <= self.inch_step else self.inches
        return self.metric or self.inches

    @property
    def rounding(self) -> float:
        """Half of the step of what `values` gives, mm."""
        step = self.metric_step if self.values is self.metric else self.inch_step
        return step / 2


@dataclass(frozen=True, slots=True)
class Gauge:
    """ "18 sts and 10 rows = 10 cm in dc".

    Args:
        stitches: over `width`, mm; 0 where only rows are said.
        rows: over `height`, mm; 0 where none are said.
        stitch: key of the stitch it is counted in; "" for a pattern of several, or unsaid.
        unit: "st", or what is counted instead: "shell", "repeat".
        hook: mm; 0.
        after_washing: it says that the swatch was blocked or washed.
        sure: relative uncertainty (95 %) that the text states; 0.
        slack: relative difference of the widths in cm and in inches (10 cm for 4 in: 0.016).
    """

    span: Span
    stitches: float = 0.0
    width: float = 0.0
    rows: float = 0.0
    height: float = 0.0
    stitch: str = ""
    unit: str = "st"
    hook: float = 0.0
    after_washing: bool = False
    sure: float = 0.0
    slack: float = 0.0


@dataclass(frozen=True, slots=True)
class Hook:
    """A hook, by its millimetres.

    Args:
        mm: 0 where only a letter is said that no table has.
        label: letter and number as written, "F-5"; "".
        place: where it is named.
    """

    span: Span
    mm: float
    label: str = ""
    place: Literal["materials", "gauge", "rows"] = "materials"


@dataclass(frozen=True, slots=True)
class YarnAmount:
    """An entry of the yarn that is needed.

    Args:
        balls: for each size; ().
        ball_mass, ball_length: of one ball, g and mm; 0.
        lengths, masses: what is needed in all, for each size, mm and g; ().
        colour: "MC", "B"; "".
        category: 0 to 7; None.
    """

    span: Span
    balls: tuple[int, ...] = ()
    ball_mass: float = 0.0
    ball_length: float = 0.0
    lengths: tuple[float, ...] = ()
    masses: tuple[float, ...] = ()
    colour: str = ""
    category: int | None = None


@dataclass(frozen=True, slots=True)
class Notion:
    """Something to buy besides yarn and hook: "5 buttons, 15 mm".

    Args:
        name: of the table of notions, "button".
        count: 0 where it is not said.
        optional: the text leaves it to the maker.
    """

    span: Span
    name: str
    count: int = 0
    optional: bool = False


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour of the yarn, by its letters: "MC", "B"."""

    span: Span
    name: str


@dataclass(frozen=True, slots=True)
class Measurement:
    """A finished or body measurement.

    Args:
        name: in lower case, "hip"; `way`: what kind of length it is.
        count: stitches or rows that stand beside it, "(140 sts)", and which; 0, "".
        body: of the person that it fits, not of the work.
        piece: heading or column that it stands under, in lower case; "".
        drawn: it is a number of the schematic.
    """

    name: str
    lengths: Lengths
    way: Way = ""
    count: int = 0
    counted: Literal["sts", "rows", ""] = ""
    body: bool = False
    piece: str = ""
    drawn: bool = False


@dataclass(frozen=True, slots=True)
class Progress:
    """A length with its rows within the instructions: "until it measures 20 cm (20 rounds)"."""

    span: Span
    lengths: Lengths
    rows: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Multiple:
    """ "multiple of 8 + 1, + 2 for the chain".

    Args:
        chain: extra for the chain alone; None where nothing is said of it.
        words: the sentence that it stands in, in lower case.
    """

    span: Span
    multiple: int
    over: int = 0
    chain: int | None = None
    words: str = ""


@dataclass(frozen=True, slots=True)
class Facts:
    """The front matter of a pattern, as far as it was understood.

    Args:
        materials: where they are listed, line by line.
        grows: "grows 3.2 % in length" worn or washed, as a fraction of 1.
        both: every length that is written in cm and in inches, anywhere in the text.
    """

    gauges: tuple[Gauge, ...] = ()
    hooks: tuple[Hook, ...] = ()
    yarns: tuple[YarnAmount, ...] = ()
    notions: tuple[Notion, ...] = ()
    colours: tuple[Colour, ...] = ()
    measurements: tuple[Measurement, ...] = ()
    progress: tuple[Progress, ...] = ()
    multiples: tuple[Multiple, ...] = ()
    both: tuple[Lengths, ...] = ()
    materials: tuple[Span, ...] = ()
    grows: float = 0.0
