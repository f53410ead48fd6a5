"""A knob is turned: the new text, what comes of it, and in one line what it did."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from frogless.errors import FroglessError
from frogless.publish.difference import differences
from frogless.studio.garments import shown
from frogless.studio.garments.comes import differing_values, panel_of
from frogless.studio.garments.drafts import Order, drafted
from frogless.studio.garments.faults import knob_name
from frogless.studio.garments.panel import (
    Changes,
    Field,
    FieldGroup,
    Panel,
    differing,
    refused,
    turned,
)
from frogless.studio.garments.sheet import Shown

MOST_TOLD, LONGEST_TOLD = 4, 80
"""Differences that the line tells, and letters that one of them may have."""

MOST_RHYTHMS = 2
"""Sections whose new rhythm the line tells."""

RHYTHM = re.compile(r"shaping of (?P<section>.+?): (?P<was>.+) → (?P<now>.+)")


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
    before = panel_of(order)
    if made.text == order.texts.design:
        typed = dict(changes)
        after = refused(before, typed, errors)
        fields = tuple(f for f in after.fields().values() if f.name in dict(changes))
        return Change(made.text, "", "", None, made.errors, fields, (), after)
    new = replace(order, texts=replace(order.texts, design=made.text))
    seen = shown.show(new, room, prove=prove)
    of_draft = beside(seen)
    errors = of_draft | errors
    drafted_ones = of_draft.keys() - dict(made.errors).keys()
    turned_to = panel_of(new)
    after = refused(turned_to, dict(changes), errors, drafted_ones)
    names = {name for name, _ in changes} | errors.keys() | differing_values(before, turned_to)
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


def beside(seen: Shown) -> dict[str, str]:
    """What went wrong, by the knob that it is about."""
    told = seen.refusal.told if seen.refusal else ()
    return {knob_name(one.path): one.sentence for one in told if one.path}


def did(before: Order, after: Order) -> str:
    """What a change did to the garment; "" when it could not be drafted before or after."""
    try:
        found = differences(drafted(before).drafted, drafted(after).drafted)
    except FroglessError:
        return ""
    return in_a_line(found) or "no stitch is different"


def in_a_line(found: tuple[str, ...]) -> str:
    """The first differences that are short, rhythms, the yarn, and how many more there are."""
    yarn = tuple(one for one in found if one.startswith("yarn"))[:1]
    whole = tuple(one for one in found if not RHYTHM.fullmatch(one))
    short = [one for one in whole if len(one) <= LONGEST_TOLD and one not in yarn]
    short = short[: MOST_TOLD - len(yarn)]
    room = max(MOST_RHYTHMS - len(short), 0)
    rhythms = tuple(filter(None, map(_rhythm, found)))[:room]
    same = rhythms and not any(" stitches" in one for one in whole)
    counts = ("the counts between sections stay",) if same else ()
    more = len(found) - len(rhythms) - len(short) - len(yarn)
    others = (f"{more} more {'change' if more == 1 else 'changes'}",) if more else ()
    return "; ".join((*short, *rhythms, *counts, *yarn, *others))


def _rhythm(found: str) -> str:
    """How a section is shaped now and was before, in short; "" of another difference."""
    parts = RHYTHM.fullmatch(found)
    if parts is None:
        return ""
    was, now = (told.rpartition(" (") for told in (parts["was"], parts["now"]))
    rounds = f"{now[2].rstrip(')')}, before {was[2].rstrip(')').partition(' ')[2]}"
    points, before = (told[0].partition(",")[0] for told in (now, was))
    many = f"{points}, " if points != before else ""
    told = rounds if was[0] and now[0] and len(rounds) <= LONGEST_TOLD else parts["now"]
    return f"{parts['section']} is shaped now: {many}{told}"
