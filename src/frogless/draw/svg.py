"""A drawing as standalone SVG 1.1: plain attributes only, so that all renderers agree."""

from __future__ import annotations

from collections.abc import Iterator
from hashlib import sha256
from html import escape
from itertools import groupby

from frogless.draw.drawing import Circle, Drawing, Line, Path, Point, Shape, Text
from frogless.draw.styles import PAPER, STYLES, Style

FONTS = "'Libertinus Serif', serif"
_LETTERS = {1: "L", 2: "Q", 3: "C"}


def svg(drawing: Drawing) -> str:
    """The drawing as one SVG document; the same drawing always gives the same text.

    Ids are taken from title and description, so that several drawings can stand in one web page.
    """
    name = "drawing-" + sha256(f"{drawing.title}\n{drawing.description}".encode()).hexdigest()[:10]
    width, height = _number(drawing.width), _number(drawing.height)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{width}mm"'
        f' height="{height}mm" viewBox="0 0 {width} {height}" role="img"'
        f' aria-labelledby="{name}-title {name}-desc">',
        f'<title id="{name}-title">{_words(drawing.title)}</title>',
        f'<desc id="{name}-desc">{_words(drawing.description)}</desc>',
        f'<rect width="{width}" height="{height}" fill="{PAPER}"/>',
        *_groups(drawing),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _groups(drawing: Drawing) -> Iterator[str]:
    """Neighbours of one class share a group, which carries the paint."""
    for style, shapes in groupby(drawing.shapes, key=lambda shape: shape.style):
        name = style.replace(" ", "-")
        yield f'<g class="{name}"{_paint(STYLES[style])}>'
        yield from (_element(shape) for shape in shapes)
        yield "</g>"


def _paint(style: Style) -> str:
    paint = {"fill": style.fill, "stroke": style.stroke}
    if style.width:
        paint |= {"stroke-width": _number(style.width)}
        paint |= {"stroke-linecap": "round", "stroke-linejoin": "round"}
    if style.dash:
        paint["stroke-dasharray"] = " ".join(_number(length) for length in style.dash)
    if style.size:
        paint |= {"font-family": FONTS, "font-size": _number(style.size)}
    if style.bold:
        paint["font-weight"] = "bold"
    if style.italic:
        paint["font-style"] = "italic"
    return "".join(f' {key}="{value}"' for key, value in paint.items())


def _element(shape: Shape) -> str:
    match shape:
        case Line((x1, y1), (x2, y2)):
            ends = zip(("x1", "y1", "x2", "y2"), (x1, y1, x2, y2), strict=True)
            return "<line " + " ".join(f'{key}="{_number(value)}"' for key, value in ends) + "/>"
        case Circle((x, y), radius):
            return f'<circle cx="{_number(x)}" cy="{_number(y)}" r="{_number(radius)}"/>'
        case Path():
            return f'<path d="{_path(shape)}"/>'
        case Text():
            return _text(shape)


def _path(path: Path) -> str:
    parts = ["M" + _pair(path.start)]
    parts += [_LETTERS[len(s)] + " ".join(_pair(point) for point in s) for s in path.segments]
    return "".join(parts) + ("Z" if path.closed else "")


def _text(text: Text) -> str:
    x, y = (_number(value) for value in text.at)
    turn = f' transform="rotate({_number(text.angle_deg)} {x} {y})"' if text.angle_deg else ""
    anchor = "" if text.anchor == "start" else f' text-anchor="{text.anchor}"'
    return f'<text x="{x}" y="{y}"{anchor}{turn}>{_words(text.text)}</text>'


def _pair(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _number(value: float) -> str:
    """At most two decimals (0.01 mm), without trailing zeros or a minus before nothing."""
    shown = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


def _words(text: str) -> str:
    """Escaped, and without the control characters that XML cannot hold."""
    return escape("".join(c for c in text if c >= " " or c in "\t\n"), quote=False)
