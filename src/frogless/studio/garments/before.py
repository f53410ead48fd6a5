"""The garment as it was, for a page on which it cannot be made as it is."""

from __future__ import annotations

from dataclasses import replace

from frogless.errors import FroglessError
from frogless.studio.garments import shown
from frogless.studio.garments.sheet import DrawingBlock
from frogless.studio.garments.subject import Made, Subject
from frogless.studio.work.pool import pool

FARTHEST = 5
"""Steps that are looked back for one that could be drafted."""


def as_it_was(subject: Subject, made: Made) -> tuple[DrawingBlock, ...]:
    """The drawings of the last step of the design that could be drafted; none where there is none."""
    document = made.design.document if made.design else None
    order = made.order(subject)
    if document is None or order is None:
        return ()
    earlier = document.steps.filter(number__lt=document.step).order_by("-number")
    for step in earlier[:FARTHEST]:
        was = replace(order, texts=replace(order.texts, design=step.text))
        try:
            drawings = pool().ask(subject.affinity, shown.drawings_of, was)
        except FroglessError:
            continue
        if drawings:
            return drawings
    return ()
