"""The nodes of a row's body in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Together, Work
from frogless.rows.walk import unrolled
from frogless.write.ground import Ground
from frogless.write.repeats import say_shortest
from frogless.write.words import Words

#: A group in one place is written out when it has no more items than this: brackets within
#: brackets are harder to follow than a short list.
MOST_WRITTEN_OUT = 9


#: What is there fewer times than this is written out (common practice).
LEAST_REPEATED = 3


@dataclass(frozen=True, slots=True)
class Setting:
    """What the words of a body depend on besides the body.

    Args:
        remaining: a turning chain already stands on the first place.
    """

    words: Words
    ground: Ground
    closed: bool
    remaining: bool = False


def say_body(body: Sequence[Node], setting: Setting) -> tuple[str, ...]:
    """The items of a body; a row that is all alike is one item, "dc in each st around"."""
    what = alike(body, setting)
    if what:
        return (_in_each(what, setting),)
    phrases = setting.words.phrases

    def say(node: Node) -> str:
        return _on(node, setting)

    def bracket(items: str, times: int) -> str:
        return phrases.count("times", times, items=items)

    worked: tuple[Node, ...] = tuple(_worked(body))
    return say_shortest(worked, say, bracket, least=LEAST_REPEATED)


def made(stitch: str, times: int, words: Words) -> str:
    """Stitches named without where they stand: "dc", "5 dc", "3 picots", "slide up a bead"."""
    kind = words.stitches[stitch].kind
    name = f"made_{kind}" if kind in ("ornament", "trim") else "made_stitch"
    return words.phrases.count(name, times, stitch=words.stitch(stitch))


def alike(body: Sequence[Node], setting: Setting) -> str:
    """What stands in every place there is to work into; nothing when the row is not all alike."""
    words, places = setting.words, setting.ground.places
    if places is None:
        return ""
    places -= setting.remaining
    match body:
        case (Work(stitch, times),) if times == places > 1:
            if words.stitches[stitch].stands_on == 1:
                return words.stitch(stitch)
        case (Repeat((Into(inner),), times),) if times == places > 1:
            return _in_one(inner, words)
    return ""


def _worked(body: Sequence[Node]) -> Iterator[Node]:
    """The nodes that are worked at all: 0 times is not said."""
    return (node for node in body if getattr(node, "times", 1))


def _in_each(what: str, setting: Setting) -> str:
    phrases = setting.words.phrases
    noun = "sp" if setting.ground.spaces else setting.ground.noun
    place = phrases.say(noun, chain=setting.words.chain)
    remaining = "remaining_" if setting.remaining else ""
    way = "around" if setting.closed else "across"
    return phrases.say(f"each_{remaining}{way}", what=what, place=place)


def _on(node: Node, setting: Setting) -> str:
    """A node that takes the next places for itself."""
    words, noun = setting.words, setting.ground.noun
    phrases = words.phrases
    match node:
        case Work(stitch, times):
            return _work(stitch, times, setting)
        case Into(inner):
            return phrases.say(f"in_next_{noun}", what=_in_one(inner, words))
        case Skip(times):
            return phrases.count(f"skip_{noun}", times, skip=words.skip)
        case Repeat(inner, times):
            items = ", ".join(_on(each, setting) for each in _worked(inner))
            return phrases.count("times", times, items=items)
        case Together() | Chain():
            return _placeless(node, words)


def _work(stitch: str, times: int, setting: Setting) -> str:
    words, entry = setting.words, setting.words.stitches[stitch]
    name = words.stitch(stitch)
    if entry.kind == "foundation":
        return words.phrases.say("made_foundation", n=times, stitch=name)
    if entry.stands_on == 0:
        return made(stitch, times, words)
    if entry.stands_on == 1:
        return words.phrases.count(f"next_{setting.ground.noun}", times, stitch=name)
    return words.phrases.count("over_next", times, stitch=name, places=times * entry.stands_on)


def _in_one(body: Sequence[Node], words: Words) -> str:
    """All that is worked into one place: "2 dc", "(sc, picot, sc)"."""
    match body:
        case (Work(stitch, times),) if times > 1:
            return made(stitch, times, words)
    written_out = tuple(_worked(tuple(unrolled(body))))
    items = written_out if len(written_out) <= MOST_WRITTEN_OUT else body
    return words.phrases.say("group", items=", ".join(_in(node, words) for node in _worked(items)))


def _in(node: Node, words: Words) -> str:
    """A node inside a group that stands in one place."""
    match node:
        case Work(stitch, times):
            return made(stitch, times, words)
        case Repeat(inner, times):
            items = ", ".join(_in(each, words) for each in _worked(inner))
            return words.phrases.count("times", times, items=items)
        case Chain():
            return _placeless(node, words)
        case Into() | Together() | Skip():
            raise ValueError(
                f"{type(node).__name__} takes places of its own; it cannot stand in one"
            )


def _placeless(node: Together | Chain, words: Words) -> str:
    """A node that is worded alike wherever it stands."""
    match node:
        case Together(stitch, places):
            return words.phrases.say("together", stitch=words.stitch(stitch), places=places)
        case Chain(times, each):
            name = "chain_each" if each else "chain"
            return words.phrases.say(name, chain=words.chain, n=times)
