"""What a pattern says to a left-hander: the same rows, and which parts change sides.

A left-hander works the same words the other way and makes the mirror image (common practice). The
sides of the wearer are told for the garment as it is worn; names of pieces, edges and joins stay as
the rows and the proof have them, and it is said which of them change sides.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from frogless.publish.blocks import Note
from frogless.publish.drafted import Drafted, strands_of
from frogless.publish.messages import say

_SIDE = re.compile(r"\b(left|right)\b")
_OTHER = {"left": "right", "right": "left"}


def line(drafted: Drafted) -> Iterator[str]:
    """The line that a pattern for the right hand has for those who work with the left."""
    if drafted.hand == "right":
        yield say(drafted, "left_handed")


def notes(drafted: Drafted) -> tuple[Note, ...]:
    """The note of a pattern for the left hand; none in one for the right."""
    if drafted.hand == "right":
        return ()
    return (Note("hint", " ".join(_told(drafted)), say(drafted, "left_title")),)


def _told(drafted: Drafted) -> Iterator[str]:
    yield say(drafted, "left_work")
    if not drafted.of_pieces or any(piece.shape for piece in drafted.plan.pieces):
        yield say(drafted, "left_drawing")
    if drafted.of_pieces:
        yield from _sides(drafted)
    else:
        work = drafted.basis.design.work
        if work.join_at != "centre back":
            yield say(drafted, "left_join", join=say(drafted, f"join_{drafted.join_at}"))
        if work.rounds != "joined and turned":
            yield say(drafted, "left_lean")
    if strands_of(drafted):
        yield say(drafted, "left_sewn")


def _sides(drafted: Drafted) -> Iterator[str]:
    """How to read left and right, and which pieces and joins are those of the other side."""
    yield say(drafted, "left_edges")
    named = [piece.name for piece in drafted.plan.program.pieces]
    named += [join.name for join in drafted.plan.joins]
    pairs = [
        say(drafted, "left_pair", name=name, other=other_side(name))
        for name in dict.fromkeys(named)
        if _SIDE.search(name)
    ]
    if pairs:
        yield say(drafted, "left_pieces", pairs=", ".join(pairs))


def other_side(name: str) -> str:
    """A name with its sides exchanged.

    >>> other_side("left front"), other_side("back, right side")
    ('right front', 'back, left side')
    """
    return _SIDE.sub(lambda found: _OTHER[found[0]], name)


def caption(drafted: Drafted) -> str:
    """What stands under the drawing of the garment."""
    told = say(drafted, "schematic_caption")
    return told if drafted.hand == "right" else say(drafted, "left_caption", caption=told)


def terms(drafted: Drafted) -> str:
    """What the pattern is written in, and for the left hand if it is."""
    told = say(drafted, f"terms_{drafted.dialect}")
    return told if drafted.hand == "right" else say(drafted, "left_terms", terms=told)
