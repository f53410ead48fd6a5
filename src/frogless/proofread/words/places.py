"""Which places are meant: the tree of "next 2 ch-1 sps", "2nd ch from hook", "top of ch-3"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from lark import Token as Leaf

from frogless.proofread.script.model import Span
from frogless.proofread.words.counts import Counts
from frogless.proofread.words.model import Numbers, Target, What
from frogless.proofread.words.parse import Parsed
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.tokens import Token

#: What a group is part of that the pattern does not call by a name.
UNNAMED = "group"
Which = Literal["next", "first", "last", "each", "same"]


class UnclearError(Exception):
    """A clause whose words stand in order and do not go together; the message is a guess."""


@dataclass(frozen=True, slots=True)
class Places:
    """Places that are meant, and how many.

    Args:
        anew: "and in …": the same is worked there too, an act of its own.
    """

    target: Target
    count: Numbers | None = None
    anew: bool = False
    rest: bool = False  # "remaining"
    left: bool = False  # "2 sts remain"


@dataclass(slots=True)
class _Found:
    """What the words of one place say, gathered word by word."""

    which: Which | None = None
    each: bool = False
    rest: bool = False
    count: Numbers | None = None
    nth: int = 0
    corner: bool = False
    center: bool = False
    top: bool = False
    post: bool = False
    marked: bool = False
    what: What | None = None
    stitch: str = ""
    chains: Numbers | None = None
    from_hook: bool = False
    of: Target | None = None
    counts: Counts | None = None
    same_as: bool = False
    skipped: bool = False
    loop: bool = False
    left: bool = False
    of_group: bool = False
    of_count: Numbers | None = None


def places(tree: Parsed, items: Sequence[Item]) -> tuple[Places, ...]:
    """The places that a `place` names, one for each "and in"."""
    (first, *more) = _parts(tree)
    found = [_place(first[1], items)]
    for anew, part in more:
        place = _place(part, items, before=None if anew else found[-1])
        both = (found[-1].target.which, place.target.which)
        if place.count is not None and not anew:
            raise UnclearError("")  # "… and 3 sc in each ch-2 sp" is another act
        if both == ("each", "each"):
            found[-1] = _with_other(found[-1], place.target)
        elif anew or (both[1] == "each" and both[0] != "each"):
            found.append(replace(place, anew=True))
        else:
            found[-1] = _with_other(found[-1], place.target)
    return tuple(found)


def some(children: Sequence[Parsed | Leaf], items: Sequence[Item]) -> Places:
    """The place of words that stand side by side, without "and"."""
    found = _Found()
    for child in children:
        if isinstance(child, Leaf):
            _descr(found, item_of(child, items))
            continue
        _gather(found, child, items)
    return _made(found)


def item_of(leaf: Leaf, items: Sequence[Item]) -> Item:
    """The token or group that a leaf of a tree stands for."""
    return items[int(leaf)]


def _parts(tree: Parsed) -> list[tuple[bool, Parsed]]:
    """The parts of a place, and whether each stands after "and in"."""
    parts: list[tuple[bool, Parsed]] = []
    while tree.data in ("also", "and_in"):
        trees = [each for each in tree.children if not isinstance(each, Leaf)]
        parts.append((tree.data == "and_in", trees[1]))
        tree = trees[0]
    only = tree.children[0] if tree.data == "place" else tree
    assert not isinstance(only, Leaf)  # noqa: S101 - a place is made of `some`
    return [(False, only), *reversed(parts)]


def _place(tree: Parsed, items: Sequence[Item], before: Places | None = None) -> Places:
    place = some(tree.children, items)
    if before is not None and place.target.which == "next":
        return replace(place, target=replace(place.target, which=before.target.which))
    return place


def _with_other(place: Places, other: Target) -> Places:
    """ "each st and ch": whatever comes; "each sc and ch-1 sp": the one and the other."""
    target = place.target
    kinds = {target.what, other.what}
    if kinds == {"stitch", "chain"}:
        return replace(place, target=replace(target, what="any", stitch=""))
    return replace(
        place, target=replace(target, others=(*target.others, replace(other, others=())))
    )


def _gather(found: _Found, tree: Parsed, items: Sequence[Item]) -> None:
    match tree.data:
        case "lead" | "descr":
            for child in tree.children:
                if isinstance(child, Leaf):
                    _descr(found, item_of(child, items))
                else:
                    _gather(found, child, items)
        case "noun":
            _noun(found, [item_of(leaf, items) for leaf in tree.children if isinstance(leaf, Leaf)])
        case "of":
            (inner,) = (each for each in tree.children if not isinstance(each, Leaf))
            (first, *_) = places(inner, items)
            found.of, found.of_count = first.target, first.count
            clumps = [each for each in inner.iter_subtrees() if each.data == "noun"]
            found.of_group = any(
                isinstance(leaf, Leaf) and leaf.type == "CLUMP"
                for each in clumps
                for leaf in each.children
            )
        case "from_hook":
            found.from_hook = True
        case "as_last":
            found.same_as = True
        case "left":
            found.left = True
        case "counts":
            token = item_of(next(c for c in tree.children if isinstance(c, Leaf)), items)
            if isinstance(token, Token) and isinstance(token.value, Counts):
                found.counts = token.value
        case _:
            pass  # "below", "left unworked": said for clearness; "between [the] sts": which


_WHICH: dict[str, Which] = {"NEXT": "next", "FIRST": "first", "LAST": "last", "SAME": "same"}


def _descr(found: _Found, item: Item) -> None:
    match item.kind:
        case "EACH":
            found.each = True
        case "REM":
            found.rest = True
        case "NUM":
            if found.count is not None:
                raise UnclearError("two numbers side by side")
            found.count = numbers(item)
        case "ORD":
            found.nth = number(item)
        case "SP_BETWEEN":
            found.what = "between"
        case "CENTER":
            found.center = True
        case "CORNER":
            found.corner = True
        case "TOP":
            found.top = True
        case "SKIPPED":
            found.skipped = True
        case "POST":
            found.post = True
        case "MARKED":
            found.marked = True
        case kind:
            found.which = _WHICH[kind]


_WHATS: dict[str, What] = {
    "ST": "stitch", "CH": "chain", "SP": "space", "CH_SP": "space", "STITCH": "stitch", "CLUMP": "stitch",
    "LOOP": "space",
    "RING": "ring", "MAGIC": "ring", "TCH": "top", "ROW_END": "row_end", "INC": "stitch",
    "DEC": "stitch", "TOGETHER": "stitch",
}  # fmt: skip


def _noun(found: _Found, words: Sequence[Item]) -> None:
    first, *rest = words
    found.what = _WHATS[first.kind]
    found.loop = first.kind == "LOOP"
    if first.kind == "CH_SP":
        found.chains = numbers(first)
    if first.kind == "STITCH" and isinstance(first, Token):
        found.stitch = str(first.value)
    for each in rest:
        if each.kind == "NUM":
            found.chains = numbers(each)
            if found.what == "chain":
                # "ch 3" of a place is a run of chains: the top of it, or the space under it
                found.what = "space" if found.which and not found.top else "top"
        elif each.kind == "CLUMP":
            found.stitch = ""  # "next 5-dc group": whichever it is made of
            found.count = None
        elif each.kind == "MARKED":
            found.marked = True
        elif each.kind == "SP":
            found.what = "space"
            found.of = Target(stitch=found.stitch) if found.stitch else found.of
            found.stitch = ""


def _made(found: _Found) -> Places:
    what = _what(found)
    of = found.of.stitch if found.of else ""
    if what == "space" and found.count is None and not found.each and not found.nth:
        found.count = found.of_count  # "in ch-1 sp of next 14 V-sts"
    if found.of_group and not of and found.nth:
        of = UNNAMED  # "4th tr of next scallop"
    chains = found.chains
    if found.of and found.of.what in ("top", "space") and what == "chain" and found.nth:
        # "3rd ch of beg ch-3": its top
        what, chains = ("top", found.of.chains) if found.of.what == "top" else ("chain", None)
    if what == "top" and found.count is not None and chains is None:
        # "top of 3 ch"
        chains, found.count = found.count, None
    if found.what is None and found.nth and found.of and found.of.what in ("top", "chain"):
        what, chains = "top", found.of.chains  # "3rd of 3 ch"
    which: Which = "each" if found.each and found.count is None else found.which or "next"
    if found.of and (of or found.of.what == "corner") and found.which is None and not found.each:
        # "in ch-1 sp of each V-st"
        which = found.of.which
    if found.each and found.which == "last":
        which = "last"
    target = Target(
        what=what,
        stitch=found.stitch if what == "stitch" else "",
        chains=chains,
        which=which,
        nth=-1 if found.center and what != "corner" else found.nth,
        of=of,
        counts=found.counts.counts if found.counts else None,
        counts_as=found.counts.stitch if found.counts else "",
    )
    return Places(target, found.count, rest=found.rest, left=found.left)


def _what(found: _Found) -> What:
    if found.from_hook:
        return "from_hook"
    if found.marked:
        return "marked"
    if found.which == "same" or found.same_as:
        return "same"
    if found.skipped:
        return "skipped"
    if found.loop and not found.which and found.count is None and not (found.each or found.corner):
        return "ring"  # "6 sc into loop"
    if found.corner and found.what in (None, "space", "stitch"):
        return "corner"
    if found.center and found.of and found.of.what == "corner":
        return "corner"  # "center sc of each corner"
    if found.top and found.what in (None, "chain"):
        return "top"
    return found.what or "stitch"


def numbers(item: Item) -> Numbers:
    """The numbers of a NUM or a chain space."""
    value = item.value if isinstance(item, Token) else None
    if isinstance(value, Numbers):
        return value
    raise UnclearError("")


def number(item: Item) -> int:
    """The number of an ORD."""
    value = item.value if isinstance(item, Token) else None
    return value if isinstance(value, int) else 0


def span_of(items: Sequence[Item]) -> Span:
    """From the first of them to the last."""
    return Span(items[0].start, items[-1].end)


def is_group(item: Item) -> bool:
    """Whether it stands in brackets or is repeated by a star."""
    return isinstance(item, Group)
