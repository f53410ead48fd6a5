"""Rows of filet, told in the squares of a net: "5 sps, 5 blks, 5 sps".

What a space and a block are the pattern says among its own stitches; each is worked over several places.
"""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Act, Bare, Chain, Numbers, OwnStitch
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Token

_SPACES = ("space", "sp", "open square", "open mesh")
#: Chains that stand for the first double crochet of a row.
_FIRST = 3


def _is_square(own: OwnStitch | None) -> bool:
    return own is not None and own.takes > 1 and bool(own.body)


def _space_of(lexicon: Lexicon) -> OwnStitch | None:
    """What the pattern calls a space, where it is a square of a net."""
    found = next((lexicon.own[key] for key in _SPACES if key in lexicon.own), None)
    return found if _is_square(found) else None


def squares(items: Sequence[Item], lexicon: Lexicon) -> Bare | None:
    """ "5 sps" or "5 blks" as work; None where they are none."""
    space = _space_of(lexicon) if len(items) == 2 and items[0].kind == "NUM" else None
    if space is None or not all(isinstance(each, Token) for each in items):
        return None
    number, name = (getattr(each, "value", None) for each in items)
    own = space if items[1].kind == "SP" else lexicon.own.get(str(name))
    if own is None or not _is_square(own) or not isinstance(number, Numbers):
        return None
    return Bare(Span(items[0].start, items[1].end), own.key, number)


def with_first_of_net(acts: tuple[Act, ...], lexicon: Lexicon) -> tuple[Act, ...]:
    """The acts of a row told in squares, with the chain that stands for its first stitch.

    The first square of a row begins upon it ("5ch" of a space is 3 and 2).
    """
    first = acts[0] if acts and _space_of(lexicon) else None
    if not isinstance(first, Bare) or not _is_square(lexicon.own.get(first.stitch)):
        return acts
    start = Span(first.span.start, first.span.start)
    return (Chain(start, Numbers((_FIRST,), start), counts=True), *acts)
