"""How each class of shape looks. Weights and dashes carry the meaning, so that print keeps it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

INK = "#1d1b18"
SOFT = "#6a655d"
ACCENT = "#9c3022"
GREEN = "#1f4d3a"
HAIR = "#ded5c3"
CLOTH = "#f5f1e8"
PAPER = "#ffffff"


@dataclass(frozen=True, slots=True)
class Style:
    """Paint of one class.

    Args:
        stroke, fill: colours, "none" for none.
        width: of the stroke, mm. dash: lengths on and off, mm.
        size: of lettering, mm (0: not lettering).
    """

    stroke: str = "none"
    fill: str = "none"
    width: float = 0.0
    dash: tuple[float, ...] = ()
    size: float = 0.0
    bold: bool = False
    italic: bool = False


STYLES: Mapping[str, Style] = {
    "cloth": Style(fill=CLOTH),
    "patch": Style(fill=CLOTH),
    "trim": Style(stroke=INK, fill=PAPER, width=0.35),
    "outline": Style(stroke=INK, width=0.55),
    "edging": Style(stroke=INK, fill=PAPER, width=0.35),
    "hatch": Style(stroke=INK, width=0.18),
    "cord": Style(stroke=INK, width=0.55),
    "cord knot": Style(stroke=INK, fill=PAPER, width=0.55),
    "eyelet": Style(stroke=INK, fill=PAPER, width=0.25),
    "strand": Style(stroke=INK, width=0.3),
    "strand behind": Style(stroke=SOFT, width=0.2, dash=(0.5, 0.9)),
    "bead": Style(stroke=INK, fill=INK, width=0.1),
    "shaping": Style(stroke=INK, width=0.18, dash=(1.8, 1.1)),
    "shaping tick": Style(stroke=INK, width=0.24),
    # So short a dash with round ends is a dot everywhere; some renderers drop one of length 0.
    "wanted": Style(stroke=ACCENT, width=0.42, dash=(0.01, 1.0)),
    "dimension": Style(stroke=SOFT, width=0.16),
    "tick": Style(stroke=INK, width=0.3),
    "join": Style(stroke=INK, fill=INK, width=0.1),
    "scale": Style(stroke=INK, width=0.45),
    "grid": Style(stroke="#d9d4c9", width=0.14),
    "frame": Style(stroke=INK, width=0.25),
    "worked": Style(stroke=INK, width=0.5),
    "body": Style(stroke=SOFT, width=0.25, dash=(2.2, 1.2)),
    "body dot": Style(stroke=SOFT, fill=PAPER, width=0.3),
    "whisker": Style(stroke=INK, width=0.35),
    "landmark dot": Style(stroke=PAPER, fill=INK, width=0.25),
    "stray": Style(stroke=ACCENT, width=0.9),
    # The measuring guide: a figure, the tape on it, the string round its waist.
    "figure": Style(fill=CLOTH),
    "hair": Style(fill=HAIR),
    "figure line": Style(stroke=INK, width=0.42),
    "figure mark": Style(stroke=SOFT, width=0.26),
    "figure arm": Style(stroke=SOFT, width=0.26, dash=(1.4, 1.1)),
    "tape": Style(stroke=ACCENT, width=1.15),
    "tape fine": Style(stroke=ACCENT, width=0.7),
    "tape behind": Style(stroke=ACCENT, width=0.55, dash=(1.0, 1.25)),
    "tape along": Style(stroke=ACCENT, width=0.85),
    "tape end": Style(stroke=ACCENT, fill=ACCENT, width=0.2),
    "scales": Style(stroke=ACCENT, fill=PAPER, width=0.8),
    "leader": Style(stroke=SOFT, width=0.2),
    "number disc": Style(stroke=ACCENT, fill=PAPER, width=0.35),
    "string": Style(stroke=GREEN, width=0.6),
    "string knot": Style(stroke=GREEN, fill=GREEN, width=0.1),
    "string behind": Style(stroke=GREEN, width=0.4, dash=(0.6, 1.0)),
    "level": Style(stroke=SOFT, width=0.26, dash=(1.6, 1.2)),
    "number": Style(fill=INK, size=3.2, bold=True),
    # The swatch guide.
    "swatch": Style(fill=CLOTH),
    "stitch": Style(stroke="#8d867a", width=0.24),
    "stitch counted": Style(stroke=ACCENT, width=0.62),
    "tape strip": Style(stroke=ACCENT, fill=PAPER, width=0.3),
    "tape tick": Style(stroke=ACCENT, width=0.22),
    "tape number": Style(fill=ACCENT, size=3.2),
    "count": Style(fill=ACCENT, size=3.7, bold=True),
    "pin": Style(stroke=INK, width=0.45),
    "pin head": Style(stroke=INK, fill=GREEN, width=0.25),
    "rod": Style(stroke=INK, width=0.9),
    "weight": Style(stroke=INK, fill=HAIR, width=0.35),
    "display": Style(fill=INK, size=6.0),
    # What is printed at true scale; marks thin enough to read between.
    "cm mark": Style(stroke=INK, width=0.16),
    "in mark": Style(stroke=INK, width=0.16),
    "hole": Style(fill=PAPER),
    "cut": Style(stroke=INK, width=0.3, dash=(2.4, 1.4)),
    # Small pictures of garments.
    "row hint": Style(stroke="#cfc6b4", width=0.22),
    "fold": Style(stroke=SOFT, width=0.26),
    "inside": Style(stroke=INK, fill=HAIR, width=0.3),
    "trimming": Style(stroke=ACCENT, fill=PAPER, width=0.36),
    "band": Style(stroke=INK, fill=PAPER, width=0.45),
    "rib": Style(stroke=INK, width=0.2),
    "tie": Style(stroke=ACCENT, width=0.5),
    "tie knot": Style(stroke=ACCENT, fill=ACCENT, width=0.1),
    "strap": Style(stroke=INK, width=1.7),
    "strap inside": Style(stroke=CLOTH, width=0.8),
    "name": Style(fill=INK, size=3.8, bold=True),
    "value": Style(fill=INK, size=3.7),
    "remark": Style(fill=INK, size=3.4, italic=True),
    "length": Style(fill=INK, size=3.6),
    "axis": Style(fill=INK, size=3.4),
    "legend": Style(fill=INK, size=3.6),
    "view": Style(fill=INK, size=3.8, italic=True),
}
