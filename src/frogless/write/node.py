"""One node of a row in words: what is worked, and into which places."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.rows.nodes import Chain, Change, Into, Leave, Node, Repeat, Skip, Together, Work
from frogless.rows.walk import unrolled
from frogless.write.ground import Noun, one_noun, say_place
from frogless.write.hook_places import told_apart
from frogless.write.spots import Spot
from frogless.write.words import Words

#: A group in one place is written out when it has no more items than this: brackets within
#: brackets are harder to follow than a short list.
MOST_WRITTEN_OUT = 9


def made(stitch: str, times: int, words: Words) -> str:
    """Stitches named without where they stand: "dc", "5 dc", "3 picots", "slide up a bead"."""
    kind = words.stitches[stitch].kind
    name = f"made_{kind}" if kind in ("ornament", "trim") else "made_stitch"
    return words.phrases.count(name, times, stitch=words.stitch(stitch))


def worked(body: Sequence[Node]) -> tuple[Node, ...]:
    """The nodes that are worked at all: 0 times is not said."""
    return tuple(node for node in body if getattr(node, "times", 1))


def say_spot(spot: Spot, where: str, words: Words) -> str:
    """A node that takes the next places for itself, or the first or last ones of a row."""
    noun = one_noun(spot.nouns)
    match spot.node:
        case Work() as node:
            return say_work(node, noun, where, words)
        case Into() as node:
            return say_in(where, node, noun, words)
        case Skip(times):
            if where == "last":
                return _counted("leave", times, noun, words)
            return _counted("skip", times, noun, words, skip=words.skip)
        case Leave(times):
            return _counted("leave_for_now", times, noun, words)
        case Repeat((Into() as into,), times) if times > 1 and noun not in ("place", "ring"):
            return _in_each_of_next(into, times, noun, words)
        case Repeat(_, times):
            items = ", ".join(say_spot(inner, "next", words) for inner in spot.inner)
            return words.phrases.count("times", times, items=items)
        case Together(stitch, places):
            told = _together(stitch, places, words)
            if noun == "place" or (where == "next" and not noun.startswith("sp")):
                return told  # its name tells how many places it takes
            place = say_place(noun, places, words)
            return words.phrases.say(f"together_{where}", stitch=told, n=places, place=place)
        case Chain() as node:
            return _chain(node, words)
        case Change() as node:
            return say_change(node, words)
    raise TypeError(f"{spot.node!r} is no node")


def say_work(node: Work, noun: Noun, where: str, words: Words) -> str:
    """A stitch in the next place or places: "dc in next st", "5 picots", "dc in next 3 sts"."""
    stitch, times = node.stitch, node.times
    entry, name = words.stitches[stitch], words.stitch(stitch)
    if entry.kind == "foundation" and entry.stands_on == 0:
        return words.phrases.say("made_foundation", n=times, stitch=name)
    if entry.stands_on == 0:
        return made(stitch, times, words)
    if entry.stands_on > 1:
        places = times * entry.stands_on
        place = say_place(noun, places, words)
        return words.phrases.count("over_next", times, stitch=name, places=places, place=place)
    if times == 1:
        return say_in(where, node, noun, words)
    hook, (told,) = told_apart((node,), noun, words)
    name = "next" if hook == "in" else f"{hook}_each"
    return _counted(name, times, noun, words, stitch=words.stitch(getattr(told, "stitch", stitch)))


def say_in(where: str, node: Node, noun: Noun, words: Words) -> str:
    """All that is worked into one place; there is only one ring, so it is neither next nor last."""
    hook, (told,) = told_apart((node,), noun, words)
    what = say_worked(told, words)
    if noun == "ring":
        return words.phrases.say("in_ring", what=what)
    return words.phrases.say(f"{hook}_{where}", what=what, place=say_place(noun, 1, words))


def _in_each_of_next(node: Into, times: int, noun: Noun, words: Words) -> str:
    """The same group in each of some places: "2 dc in each of next 3 sts"."""
    hook, (told,) = told_apart((node,), noun, words)
    what, place = say_worked(told, words), say_place(noun, times, words)
    return words.phrases.say(f"{hook}_each_of_next", what=what, n=times, place=place)


def _counted(name: str, n: int, noun: Noun, words: Words, **values: str) -> str:
    return words.phrases.count(name, n, place=say_place(noun, n, words), **values)


def say_worked(node: Node, words: Words) -> str:
    """What is worked into one place: "dc", "2 dc", "(sc, picot, sc)"."""
    if isinstance(node, Work):
        return words.stitch(node.stitch)
    body = node.body if isinstance(node, Into) else (node,)
    match body:
        case (Work(stitch, times),) if times > 1:
            return made(stitch, times, words)
    written_out = worked(tuple(unrolled(body)))
    items = written_out if len(written_out) <= MOST_WRITTEN_OUT else worked(body)
    return words.phrases.say("group", items=", ".join(_inside(node, words) for node in items))


def _inside(node: Node, words: Words) -> str:
    """A node inside a group that stands in one place."""
    match node:
        case Work(stitch, times):
            return made(stitch, times, words)
        case Repeat(inner, times):
            items = ", ".join(_inside(each, words) for each in worked(inner))
            return words.phrases.count("times", times, items=items)
        case Chain():
            return _chain(node, words)
        case Change():
            return say_change(node, words)
        case Into() | Together() | Skip() | Leave():
            raise ValueError(
                f"{type(node).__name__} takes places of its own; it cannot stand in one"
            )


def _together(stitch: str, places: int, words: Words) -> str:
    return words.phrases.say("together", stitch=words.stitch(stitch), places=places)


def _chain(node: Chain, words: Words) -> str:
    name = "chain_each" if node.each else "chain"
    return words.phrases.say(name, chain=words.chain, n=node.times)


def say_change(node: Change, words: Words) -> str:
    """Another colour from here on."""
    name = "change_colour" if node.carried else "change_colour_cut"
    return words.phrases.say(name, word=words.colour, colour=node.colour)
