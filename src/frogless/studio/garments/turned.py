"""A knob is turned: the new text, what comes of it, and in one line what it did."""

from __future__ import annotations

from dataclasses import dataclass, replace

from frogless.errors import FroglessError
from frogless.studio.garments import shown
from frogless.studio.garments.difference import told
from frogless.studio.garments.drafts import Order, drafted
from frogless.studio.garments.faults import knob_name
from frogless.studio.garments.panel import (
    Changes,
    Field,
    FieldGroup,
    Panel,
    differing,
    panel,
    refused,
    turned,
)
from frogless.studio.garments.sheet import Shown


@dataclass(frozen=True, slots=True)
class Change:
    """What turning knobs comes to.

    Args:
        text: of the design; as it was when every change was refused.
        told: what was turned. did: what that did to the garment, in a line.
        shown: the room after it; None when nothing has changed.
        fields: that are to be set anew.
        groups: that are to be set anew; None when the whole panel is.
    """

    text: str
    told: str
    did: str
    shown: Shown | None
    errors: tuple[tuple[str, str], ...]
    fields: tuple[Field, ...]
    groups: tuple[FieldGroup, ...] | None
    panel: Panel


def change(order: Order, changes: Changes, room: str, *, prove: bool) -> Change:
    """Turns knobs, and shows a room of what comes of it.

    Raises:
        InputError: the text is no design in which a knob could be turned.
    """
    made = turned(order.texts.design, changes, order.units, order.terms)
    errors = dict(made.errors)
    before = panel(order.texts.design, order.terms)
    if made.text == order.texts.design:
        typed = dict(changes)
        after = refused(before, typed, errors)
        fields = tuple(f for f in after.fields().values() if f.name in dict(changes))
        return Change(made.text, "", "", None, made.errors, fields, (), after)
    new = replace(order, texts=replace(order.texts, design=made.text))
    seen = shown.show(new, room, prove=prove)
    errors |= _beside(seen)
    after = refused(panel(made.text, order.terms), dict(changes), errors)
    names = {name for name, _ in changes} | errors.keys()
    fields = tuple(f for f in after.fields().values() if f.name in names)
    return Change(
        made.text,
        made.told,
        did(order, new) if seen.refusal is None else "",
        seen,
        tuple(errors.items()),
        fields,
        differing(before, after),
        after,
    )


def _beside(seen: Shown) -> dict[str, str]:
    """What went wrong, by the knob that it is about."""
    told = seen.refusal.told if seen.refusal else ()
    return {knob_name(one.path): one.sentence for one in told if one.path}


def did(before: Order, after: Order) -> str:
    """What a change did to the garment; "" when it could not be drafted before or after."""
    try:
        return told(drafted(before).drafted, drafted(after).drafted)
    except FroglessError:
        return ""
