"""The body of a row in words: what is the same in each place, what repeats, and the rest in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from frogless.rows.count import consumed
from frogless.rows.nodes import (
    Change,
    Into,
    Node,
    Repeat,
    Skip,
    Start,
    Work,
)
from frogless.rows.spread import even_spread
from frogless.write.evenly import Evenly, even_parts, say_shares
from frogless.write.ground import Ground, Noun, one_noun, say_place
from frogless.write.hook_places import told_apart
from frogless.write.node import say_change, say_in, say_spot, say_work, say_worked, worked
from frogless.write.repeats import say_shortest
from frogless.write.spots import Spot, needs_note, spots
from frogless.write.words import Words

#: What is there fewer times than this is written out (common practice).
LEAST_REPEATED = 3

#: A node in words, as one of many and where it stands in the row: "in next st", "in first st".
Item = tuple[str, str]

NO_START = Start()


@dataclass(frozen=True, slots=True)
class Setting:
    """What the words of a body depend on besides the body.

    Args:
        closed: whether it is a round.
        start: what the row begins with.
        star: which node of the body repeats to its end, in a row for any number of repeats.
    """

    words: Words
    ground: Ground
    closed: bool
    start: Start = NO_START
    star: int | None = None

    @property
    def taken(self) -> int:
        """Places that are taken before the body begins."""
        start = self.start
        return start.across + int(start.counts and start.chains > 0 and not start.shares)

    @property
    def shares(self) -> bool:
        """Whether the body begins in the place that the turning chain stands on."""
        return self.start.shares and self.start.counts and self.start.chains > 0


@dataclass(frozen=True, slots=True)
class SaidBody:
    """A body in words.

    Args:
        items: what is worked, in order.
        noted: it has to be said that chain spaces count as stitches in this row: not where every
            one is named, and not in a row that is all alike.
    """

    items: tuple[str, ...]
    noted: bool


def say_body(body: Sequence[Node], setting: Setting) -> SaidBody:
    """The items of a body; a row that is all alike is one item, "dc in each st around"."""
    head, rest, at = _begun(body, setting)
    first, core, last = _without_changes(rest)
    slipped = Spot(Skip(), 0, 0, setting.ground.of(0, setting.start.across))
    if each := alike(core, setting, at):
        before, after = (
            tuple(say_change(c, setting.words) for c in part) for part in (first, last)
        )
        said = (*head, *before, _in_each(each, at, setting), *after)
        return SaidBody(said, needs_note((slipped,)))
    found = spots(rest, at, setting.ground, setting.words.stands_on)
    if setting.star is not None:
        # The places of what is the same in each of them are named one kind after the other.
        several = (spot for spot in found if not _one_each(spot.node, setting.words))
        noted = needs_note((slipped, *several))
        cut = setting.star - (len(worked(body)) - len(rest))
        return SaidBody((*head, *_starred(_noted(found, noted), cut, setting)), noted)
    noted = needs_note((slipped, *found))
    items = tuple(_items(rest, _noted(found, noted), at, setting, noted=noted))
    plain = tuple(plain for plain, _ in items)
    told = say_shortest(plain, str, _bracket(setting.words), least=LEAST_REPEATED)
    return SaidBody((*head, *_located(told, items)), noted)


def _noted(found: tuple[Spot, ...], noted: bool) -> tuple[Spot, ...]:
    """Where nodes stand; with every chain space called a stitch when that was said."""
    return tuple(spot.counted_as_stitches() for spot in found) if noted else found


def _without_changes(
    body: Sequence[Node],
) -> tuple[tuple[Change, ...], tuple[Node, ...], tuple[Change, ...]]:
    """A body between the changes of colour that it begins and ends with."""
    first = tuple(_changes(body))
    rest = tuple(body)[len(first) :]
    last = tuple(_changes(reversed(rest)))
    return first, rest[: len(rest) - len(last)], last[::-1]


def _changes(body: Iterable[Node]) -> Iterator[Change]:
    """The changes of colour that come first."""
    for node in body:
        if not isinstance(node, Change):
            return
        yield node


def _starred(found: Sequence[Spot], star: int, setting: Setting) -> Iterator[str]:
    """A body whose node `star` repeats as often as there is room."""
    words = setting.words
    before, repeated, after = found[:star], found[star], found[star + 1 :]
    yield from (told for spot in before for _, told in _spot_items(spot, setting))
    last = _to_last([noun for spot in after for noun in spot.nouns], words)
    if each := _one_each(repeated.node, words):
        yield _each(each, repeated.nouns, repeated.at, last, setting)
    else:
        items = ", ".join(say_spot(spot, "next", words) for spot in repeated.inner)
        way = "last" if last else "around" if setting.closed else "across"
        yield words.phrases.say(f"star_{way}", items=items, last=last)
    yield from (told for spot in after for _, told in _spot_items(spot, setting))


def _to_last(nouns: Sequence[Noun], words: Words) -> str:
    """The places that a repeat leaves: "2 sts", "ch-1 sp and st"; nothing when there are none."""
    counts = Counter("st" if noun == "ch" else noun for noun in nouns)
    told = [
        words.phrases.count("some_places", n, place=say_place(noun, n, words))
        for noun, n in counts.items()
    ]
    return _and(told, words) if told else ""


def _one_each(node: Node, words: Words) -> Work | Into | None:
    """What a repeat works into each place, if it is one thing in one place."""
    match node:
        case Repeat((Into() as into,), _):
            return into
        case Repeat((Work(stitch, 1) as work,), _) if words.stitches[stitch].stands_on == 1:
            return work
    return None


def _located(told: tuple[str, ...], items: tuple[Item, ...]) -> tuple[str, ...]:
    """The first and the last places called so, where they are not part of a repeat."""
    located = list(told)
    if told and told[0] == items[0][0]:
        located[0] = items[0][1]
    for back in range(1, len(told) + 1):
        if told[-back] != items[-back][0]:
            break
        located[-back] = items[-back][1]
    return tuple(located)


def alike(body: Sequence[Node], setting: Setting, at: int) -> Work | Into | None:
    """What stands in every place there is from `at` on; nothing when they are not all alike."""
    words, places = setting.words, setting.ground.places
    if places is None or len(body) != 1:
        return None
    match body[0]:
        case Work(stitch, times) if times == places - at > 1:
            return Work(stitch) if words.stitches[stitch].stands_on == 1 else None
        case Repeat(_, times) as repeat if times == places - at > 1:
            return _one_each(repeat, words)
    return None


def _bracket(words: Words) -> Callable[[str, int], str]:
    return lambda items, times: words.phrases.count("times", times, items=items)


def _in_each(what: Work | Into, at: int, setting: Setting) -> str:
    nouns = setting.ground.of(at, (setting.ground.places or 0) - at)
    return _each(what, nouns, at, "", setting)


def _each(what: Work | Into, nouns: Sequence[Noun], at: int, last: str, setting: Setting) -> str:
    """The same in each place from `at` on, to the end or up to the last places."""
    words = setting.words
    place = _all_nouns(nouns, words)
    hook, (node,) = told_apart((what,), nouns[0], words)
    told = say_worked(node, words)
    remaining = "remaining_" if at else ""
    way = "to_last" if last else remaining + ("around" if setting.closed else "across")
    name = "each" if hook == "in" else f"each_{hook}"
    return words.phrases.say(f"{name}_{way}", what=told, place=place, last=last)


def _all_nouns(nouns: Sequence[Noun], words: Words) -> str:
    """Every kind of place by name: "st", "ch-2 sp", "st and ch-sp", "st and row end"."""
    if len(kinds := tuple(dict.fromkeys(nouns))) > 1:
        kinds = tuple(dict.fromkeys("sp" if kind.startswith("sp") else kind for kind in kinds))
    told = [say_place(kind, 1, words) for kind in kinds]
    # Chain spaces stand among stitches, and are named after them whichever comes first.
    told.sort(key=lambda name: name == say_place("sp", 1, words))
    return _and(told, words)


def _and(told: Sequence[str], words: Words) -> str:
    joined = told[0]
    for name in told[1:]:
        joined = words.phrases.say("and", a=joined, b=name)
    return joined


def _begun(body: Sequence[Node], setting: Setting) -> tuple[tuple[str, ...], tuple[Node, ...], int]:
    """What shares the place of the turning chain, in words; the rest, and where it begins."""
    nodes, stands_on = worked(body), setting.words.stands_on
    if not setting.shares:
        return (), nodes, setting.taken
    head, rest = _shared(nodes, setting)
    return head, rest, setting.taken + consumed(nodes, stands_on) - consumed(rest, stands_on)


def _shared(body: tuple[Node, ...], setting: Setting) -> tuple[tuple[str, ...], tuple[Node, ...]]:
    """What is worked into the place of the turning chain, in words, and the rest of the body.

    What takes more than that one place, or may, is only said to begin there.
    """
    words, noun = setting.words, setting.ground.of(setting.start.across, 1)[0]
    what: Node | None = None
    rest = body
    match body:
        case (Work(stitch, 1) as what, *others) if (
            noun == "ring" and words.stitches[stitch].stands_on == 1
        ):
            rest = tuple(others)
        case (Into((Work(_, 1) as what,)), *others) if noun != "ring":
            rest = tuple(others)
        case (Into() as what, *others):
            rest = tuple(others)
    if rest is body or what is None:
        place = say_place(noun, 1, words)
        return (words.phrases.say("begin_in_same", place=place),), body
    return (say_in("same", what, noun, words),), rest


def _items(
    body: tuple[Node, ...], found: Sequence[Spot], at: int, setting: Setting, *, noted: bool
) -> Iterator[Item]:
    """Every node in words; what is picked up evenly along a stretch of an edge is said so.

    Args:
        found: where the nodes of the body stand.
    """
    words, ground = setting.words, setting.ground
    for part in even_parts(body, ground.stretches_from(at), words.stands_on):
        if part == body:
            yield from _one_by_one(found, setting)
            return
        if not isinstance(part, Evenly):
            here = spots(part, at, ground, words.stands_on)
            yield from _one_by_one(_noted(here, noted), setting)
            at += consumed(part, words.stands_on)
            continue
        noun = one_noun(ground.of(at, part.over))
        told = _evenly(part, "st" if noted and noun == "place" else noun, words)
        yield told, told
        at += part.over


def _evenly(part: Evenly, noun: Noun, words: Words) -> str:
    return words.phrases.count(
        "evenly",
        part.count,
        stitch=words.stitch(part.stitch),
        places=part.over,
        place=say_place(noun, part.over, words),
        told=say_shares(even_spread(part.count, part.over), words),
    )


def _one_by_one(found: Sequence[Spot], setting: Setting) -> Iterator[Item]:
    """Every node in words, a run of stitches over unlike places as a run for each."""
    for spot in found:
        yield from _spot_items(spot, setting)


def _spot_items(spot: Spot, setting: Setting) -> Iterator[Item]:
    """A node in words, a run of stitches over unlike places as a run for each."""
    words = setting.words
    match spot.node:
        case Work(stitch, _) if spot.is_cut:
            for noun, run in groupby(spot.nouns):
                told = say_work(Work(stitch, len(tuple(run))), noun, "next", words)
                yield told, told
        case _:
            yield say_spot(spot, "next", words), say_spot(spot, _where(spot, setting), words)


def _where(spot: Spot, setting: Setting) -> str:
    """Whether a place is the first or the last of a row; "next" in rounds, which have no ends."""
    places = setting.ground.places
    if setting.closed or places is None or spot.takes >= places:
        return "next"
    if spot.at + spot.takes == places:
        return "last"
    stands_in = setting.start.counts and setting.start.chains
    return "first" if not spot.at and not stands_in else "next"
