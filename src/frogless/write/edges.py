"""Stretches of edges in words: what a piece is begun on, what a seam joins."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from frogless.fabric.model import Fabric
from frogless.fabric.stretches import stretch
from frogless.rows.nodes import ROW_ENDS, Base, Piece
from frogless.write.ground import Noun, say_place
from frogless.write.words import Words

#: The edges that are a row of their piece, which may be a round.
_OF_A_ROW = frozenset({"row", "underside"})


def say_stretches(
    bases: Sequence[Base],
    words: Words,
    rounds: Collection[str] = (),
    nouns: Sequence[Noun] = (),
) -> str:
    """Stretches one after the other: "52 sts along rnd 22 of yoke (sts 38–89), then …".

    Args:
        rounds: names of the pieces that are worked in rounds.
        nouns: what the places of each stretch are called, if that is known.
    """
    called = tuple(nouns) or tuple(noun_of(base) for base in bases)
    pairs = zip(bases, called, strict=True)
    told = [_stretch(base, words, rounds, noun) for base, noun in pairs]
    joined = told[0]
    for each in told[1:]:
        joined = words.phrases.say("edges_then", a=joined, b=each)
    return joined


def say_along(n: int, bases: Sequence[Base], words: Words, rounds: Collection[str] = ()) -> str:
    """So many places along an edge: "12 row ends of band", "58 sts, made up of …"."""
    if len(bases) == 1 and _is_told_by_its_count(bases[0], n):
        (base,) = bases
        told = _along(n, base, words, rounds, noun_of(base))
        if base.count is not None:
            told = _numbered(told, base, words)
        return _reversed(told, base, words)
    nouns = {noun_of(base) for base in bases}
    place = say_place(nouns.pop() if len(nouns) == 1 else "place", n, words)
    edges = say_stretches(bases, words, rounds)
    return words.phrases.say("made_up_of", n=n, place=place, edges=edges)


def _is_told_by_its_count(base: Base, n: int) -> bool:
    """Whether "n sts along …" says all of a stretch: it is a whole edge, or has just n places."""
    return base.count == n or (base.count is None and not base.first)


def say_joining(piece: Piece, fabric: Fabric, words: Words) -> str:
    """The place that the first row of a piece begins in: "the first st", "st 20"."""
    first = fabric.pieces[piece.name][0]
    base, at = piece.bases[0], 0
    if first.order.size:
        met = int(first.order[0])
        base, at = piece.bases[-1 - int(first.from_row[met])], int(first.from_place[met])
    size = stretch(base, fabric.pieces).size
    number = size - at if base.reverse and base.edge != "last_row" else at + 1
    place = say_place(noun_of(base), 1, words)
    if base.count is not None or base.first:
        place_number = base.first + number
        return words.phrases.say("join_in_numbered", place=place, number=place_number)
    name = "last" if number == size > 1 else "first" if number == 1 else "numbered"
    return words.phrases.say(f"join_in_{name}", place=place, number=number)


def noun_of(base: Base) -> Noun:
    """What the places of an edge are called, as far as the edge tells."""
    return "end" if base.edge in ROW_ENDS else "st"


def needs_numbers(bases: Sequence[Base]) -> bool:
    """Whether any of them is told by numbers or by a side, so that these have to be explained."""
    return any(
        base.first or base.count is not None or base.edge in ("right_edge", "left_edge")
        for base in bases
    )


def _stretch(base: Base, words: Words, rounds: Collection[str], noun: Noun) -> str:
    if base.count is not None:
        told = _numbered(_along(base.count, base, words, rounds, noun), base, words)
    else:
        told = _edge(base, words, rounds)
        if base.first:
            place = say_place(noun_of(base), 1, words)
            told = words.phrases.say("stretch_from", edge=told, place=place, first=base.first + 1)
    return _reversed(told, base, words)


def _reversed(told: str, base: Base, words: Words) -> str:
    return words.phrases.say("stretch_reversed", edge=told) if base.reverse else told


def _along(n: int, base: Base, words: Words, rounds: Collection[str], noun: Noun) -> str:
    if base.edge in ROW_ENDS:
        return words.phrases.count(f"along_{base.edge}", n, piece=base.piece)
    place = say_place(noun, n, words)
    return words.phrases.count("along", n, place=place, edge=_edge(base, words, rounds))


def _numbered(told: str, base: Base, words: Words) -> str:
    """With the numbers of its first place and its last."""
    first, count = base.first + 1, base.count or 0
    name = "numbered_none" if not count else "numbered" if count == 1 else "numbered_many"
    place = say_place(noun_of(base), max(count, 1), words)
    last = base.first + count
    return words.phrases.say(name, edge=told, place=place, first=first, last=last)


def _edge(base: Base, words: Words, rounds: Collection[str]) -> str:
    """A whole edge: "the foundation edge of skirt", "rnd 22 of yoke"."""
    name = f"edge_{base.edge}"
    if base.edge in _OF_A_ROW:
        name += "_0" if not base.row else "_of_rounds" if base.piece in rounds else ""
    return words.phrases.say(name, piece=base.piece, row=base.row)
