"""Nodes as data files write them: `{ work = "single_crochet", times = 2 }`, `{ chain = 1 }`, ...

The known stitches are handed in, so that the dictionary itself can be read with it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Any

from frogless.errors import InputError, near_names
from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Together, Work
from frogless.stitches.model import Stitch
from frogless.stitches.sums import whole

Written = Mapping[str, Any]
Values = Mapping[str, int]
Known = Mapping[str, Stitch]


def read_nodes(fragment: object, values: Values, known: Known) -> tuple[Node, ...]:
    """The nodes that a fragment writes.

    Args:
        values: the parameters that its numbers may name.
        known: the stitches that it may work; a group is what it works, into one place.

    Raises:
        InputError: not a node, an unknown stitch, or a number that is not understood.

    >>> from frogless.stitches.load import dictionary
    >>> read_nodes([{"work": "treble", "times": "n + 1"}], {"n": 2}, dictionary())
    (Work(stitch='treble', times=3),)
    """
    if not isinstance(fragment, list | tuple):
        raise InputError(f"{fragment!r} is no list of nodes")
    return tuple(node for entry in fragment for node in _read_node(entry, values, known))


def known_stitch(key: object, known: Collection[str]) -> str:
    """The key itself.

    Raises:
        InputError: it is not among the known stitches, with the nearest ones.
    """
    if not isinstance(key, str):
        raise InputError(f"{key!r} is no stitch; write its key")
    if key not in known:
        raise InputError(f'unknown stitch "{key}"{near_names(key, known)}')
    return key


def _read_node(entry: object, values: Values, known: Known) -> tuple[Node, ...]:
    told = [word for word in _READERS if isinstance(entry, Mapping) and word in entry]
    if not isinstance(entry, Mapping) or not told:
        raise InputError(f"{entry} is not a node; write one of {', '.join(_READERS)}")
    read, more = _READERS[told[0]]
    if unknown := [key for key in entry if key not in (told[0], *more)]:
        may = f'; it may have "{more[0]}"' if more else ""
        raise InputError(f'a node with "{told[0]}" has no "{unknown[0]}"{may}')
    return read(entry, values, known)


def _work(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    times = whole(entry.get("times", 1), values)
    stitch = known[known_stitch(entry["work"], known)]
    if not times:
        return ()
    if stitch.kind != "group":
        return (Work(stitch.key, times),)
    group = (Into(stitch.works),)
    return group if times == 1 else (Repeat(group, times),)


def _into(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    """All in one place, a group among them as what it works."""
    return (Into(_in_one(read_nodes(entry["into"], values, known))),)


def _in_one(nodes: Iterable[Node]) -> tuple[Node, ...]:
    inside: list[Node] = []
    for node in nodes:
        match node:
            case Into(body):
                inside += _in_one(body)
            case Repeat(body, times):
                inside.append(Repeat(_in_one(body), times))
            case _:
                inside.append(node)
    return tuple(inside)


def _together(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    stitch = known_stitch(entry["together"], known)
    return (Together(stitch, _number(entry, "places", values)),)


def _skip(entry: Written, values: Values, _: Known) -> tuple[Node, ...]:
    times = whole(entry["skip"], values)
    return (Skip(times),) if times else ()


def _chain(entry: Written, values: Values, _: Known) -> tuple[Node, ...]:
    times = whole(entry["chain"], values)
    return (Chain(times),) if times else ()


def _repeat(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    times, body = _number(entry, "times", values), read_nodes(entry["repeat"], values, known)
    return body * times if times < 2 else (Repeat(body, times),)


def _number(entry: Written, name: str, values: Values) -> int:
    if name not in entry:
        raise InputError(f"{entry} says no {name}")
    return whole(entry[name], values)


_Reader = Callable[[Written, Values, Known], tuple[Node, ...]]
#: By the word that a node is known by: what reads it, and the keys that may stand beside that word.
_READERS: Mapping[str, tuple[_Reader, tuple[str, ...]]] = {
    "work": (_work, ("times",)),
    "into": (_into, ()),
    "together": (_together, ("places",)),
    "skip": (_skip, ()),
    "chain": (_chain, ()),
    "repeat": (_repeat, ("times",)),
}
