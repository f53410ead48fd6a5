"""What a page says of that which was done right before it, by a key in its address."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from frogless.errors import FroglessError
from frogless.studio.garments.page import of_its_own
from frogless.studio.garments.subject import Made, Subject, made_of
from frogless.studio.garments.turned import did
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.work.pool import pool


def done(subject: Subject, key: str) -> dict[str, Any]:
    """What the page is told besides its own; nothing for a key that says nothing.

    Args:
        key: "own" after the first change of an example, "turned" after another, "undo", "redo",
            "copied" after a copy was made, "apart" when the copy took the last change with it.
    """
    made = made_of(subject)
    document = made.design.document if made.design else None
    if document is None:
        return {}
    if key in ("copied", "apart"):
        return {"notices": [_copied(document, key)]}
    told = _told(subject, made, document, key)
    found: dict[str, Any] = {"turned": told} if told else {}
    if key == "own":
        found["notices"] = [of_its_own(document)]
    return found | {"also_changed": bool(told) and key == "turned"}


def _copied(copy: Document, key: str) -> str:
    there = "it took the last change with it" if key == "apart" else "the other stays as it is"
    return f"This garment now has a design of its own, “{copy.name}”; {there}."


def _told(subject: Subject, made: Made, document: Document, key: str) -> str:
    """What was turned, undone or done again, and what became of the garment by that."""
    if key in ("own", "turned", "redo"):
        words, from_step = shelf.can_undo(document), document.step - 1
    elif key == "undo":
        words, from_step = shelf.can_redo(document), document.step + 1
    else:
        return ""
    before = document.steps.filter(number=from_step).first()
    order = made.order(subject)
    if words is None or before is None or order is None:
        return ""
    word = {"undo": "Undone: ", "redo": "Redone: "}.get(key, "")
    was = replace(order, texts=replace(order.texts, design=before.text))
    try:
        came = pool().ask(subject.affinity, did, was, order)
    except FroglessError:
        came = ""
    now = "Now " if key == "undo" else ""
    if not came:
        return f"{word}{words}."
    return f"{word}{words}. {now}{came}." if word else f"{words}: {came}"
