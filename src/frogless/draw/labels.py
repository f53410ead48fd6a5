"""Labels on the skirt itself: a name and its figures, clear of what hangs there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from frogless.draw.drawing import Point, Shape, Text, polyline
from frogless.draw.frame import Frame
from frogless.draw.layout import Box, text_box, text_width

#: Between the parts of a label, and between a label and the line it stands on, mm on the sheet.
SPACE = 1.3
OVER = 1.5
#: From one line of lettering to the next, between labels and within one, mm.
STEP = 5.0
LINE = 4.2
#: The part of an estimated width that is air.
ROOMY = 0.08
#: What a label keeps free of the side edges and of other things, mm.
CLEAR = 1.0
#: Where along the width a label is tried, in parts of the half width from the middle.
TRIED_ACROSS = (0.0, 0.3, -0.3)


@dataclass(frozen=True, slots=True)
class Label:
    """Lettering as (text, style): a name, figures, a remark."""

    parts: tuple[tuple[str, str], ...]

    def on_one_line(self, middle: float, baseline: float) -> tuple[Text, ...]:
        """All parts on one line, centred on x = `middle`.

        The name ends and the figures begin at one spot, so that the space between them is the same
        in every font.
        """
        (name, style), *others = self.parts
        widths = [text_width(text, look) for text, look in self.parts]
        x = middle - (sum(widths) + SPACE * len(others)) / 2 + widths[0]
        # Widths are on the roomy side, so what is set from the spot to the right falls short more.
        x += ROOMY * (sum(widths[1:]) - widths[0]) / 2
        texts = [Text((x, baseline), name, style, "end")]
        for (text, look), width in zip(others, widths[1:], strict=True):
            texts.append(Text((x + SPACE, baseline), text, look))
            x += SPACE + width
        return tuple(texts)

    def in_lines(self, middle: float, baseline: float) -> tuple[Text, ...]:
        """Each part on a line of its own, the last one on the baseline, all centred."""
        first = baseline - (len(self.parts) - 1) * LINE
        return tuple(
            Text((middle, first + i * LINE), text, style, "middle")
            for i, (text, style) in enumerate(self.parts)
        )


def stacked(labels: Sequence[Label], middle: float, first: float) -> Iterator[Shape]:
    """The labels one below the other, the first on the baseline y = `first`."""
    for i, label in enumerate(labels):
        yield from label.on_one_line(middle, first + i * STEP)


def on_cloth(
    labels: Sequence[tuple[float, Label]], frame: Frame, taken: Sequence[Box]
) -> tuple[Shape, ...] | None:
    """Each label on or below the line at its depth, on a patch of plain cloth.

    Args:
        labels: by depth, mm of garment, the highest first. taken: what no label may cover.

    Returns:
        None when there is no room for one of them.
    """
    busy, shapes = list(taken), []
    for depth, label in labels:
        texts = next(_free(label, frame, depth, busy), None)
        if texts is None:
            return None
        box = _round(texts)
        busy.append(box)
        shapes += [_patch(box), *texts]
    return tuple(shapes)


def _free(
    label: Label, frame: Frame, depth: float, busy: Sequence[Box]
) -> Iterator[tuple[Text, ...]]:
    """The places for a label that are free, the best first."""
    y = frame.y(depth)
    for set_text in (label.on_one_line, label.in_lines):
        height = y - _round(set_text(0.0, y)).top
        for baseline in (y - OVER, y + OVER + height):
            for across in TRIED_ACROSS:
                middle = frame.middle + across * frame.half(depth) * frame.scale
                texts = set_text(middle, baseline)
                box = _round(texts)
                if _is_inside(box, frame) and not any(box.overlaps(other) for other in busy):
                    yield texts


def _is_inside(box: Box, frame: Frame) -> bool:
    """Whether a box lies on the cloth, clear of its edges."""
    deepest = frame.shape[-1].depth
    for y in (box.top, box.bottom):
        depth = (y - frame.top) / frame.scale
        if not 0 <= depth <= deepest:
            return False
        (left, _), (right, _) = frame.edges(depth)
        if box.left < left + CLEAR or box.right > right - CLEAR:
            return False
    return True


def _round(texts: Sequence[Text]) -> Box:
    boxes = [text_box(text) for text in texts]
    return Box(
        min(box.left for box in boxes) - CLEAR / 2,
        min(box.top for box in boxes),
        max(box.right for box in boxes) + CLEAR / 2,
        max(box.bottom for box in boxes),
    )


def _patch(box: Box) -> Shape:
    corners: tuple[Point, ...] = (
        (box.left, box.top),
        (box.right, box.top),
        (box.right, box.bottom),
        (box.left, box.bottom),
    )
    return polyline(corners, "patch", closed=True)
