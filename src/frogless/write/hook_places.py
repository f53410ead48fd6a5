"""Where the hook goes, told with the place and not with the stitch: "dc in sp before next st"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from frogless.rows.nodes import Into, Node, Repeat, Work
from frogless.rows.walk import stitch_keys
from frogless.stitches.model import Stitch
from frogless.write.words import Words

#: For the places of steps that are told so, what their phrases are called after. Loops and posts are
#: told with the stitch, "sc blo", "FPdc", as its abbreviation has them.
_TOLD: Mapping[str, str] = {"before_stitch": "before"}
_AS_USUAL = "in"


def told_apart(body: Sequence[Node], noun: str, words: Words) -> tuple[str, tuple[Node, ...]]:
    """What the phrases for a place are called after, and what is worked there as it is called then.

    Args:
        noun: what the place is called; into a ring there is but one way.
    """
    stitches = words.stitches
    keys = [key for key in stitch_keys(body) if stitches[key].stands_on]
    ways = {_TOLD.get(stitches[key].into, "") for key in keys}
    if noun == "ring" or len(ways) != 1 or ways == {""}:
        return _AS_USUAL, tuple(body)
    if not all(_is_first(key, stitches) for key in keys):
        return _AS_USUAL, tuple(body)
    return ways.pop(), tuple(_as_usual(node, stitches) for node in body)


def called(key: str, words: Words) -> str:
    """The key that a stitch is called by where its place is not told: in counts and at joins."""
    stitch = words.stitches[key]
    apart = stitch.into in _TOLD and _is_first(key, words.stitches)
    return stitch.like if apart else key


def _is_first(key: str, stitches: Mapping[str, Stitch]) -> bool:
    """Whether a stitch is the one that is found by what it is like and where it goes."""
    stitch = stitches[key]
    alike = (o for o in stitches.values() if (o.like, o.into) == (stitch.like, stitch.into))
    return next(alike).key == key


def _as_usual(node: Node, stitches: Mapping[str, Stitch]) -> Node:
    match node:
        case Work(stitch, _) if stitches[stitch].stands_on:
            return replace(node, stitch=stitches[stitch].like)
        case Into(body) | Repeat(body, _):
            return replace(node, body=tuple(_as_usual(each, stitches) for each in body))
    return node
