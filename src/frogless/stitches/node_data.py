"""Nodes as data files write them: `{ work = "single_crochet", times = 2 }`, `{ chain = 1 }`, ...

The known stitches are handed in, so that the dictionary itself can be read with it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from typing import Any

from frogless.errors import InputError, near_names
from frogless.rows.nodes import Chain, Into, Node, Repeat, Skip, Together, Work
from frogless.stitches.sums import whole

Written = Mapping[str, Any]
Values = Mapping[str, int]
Known = Collection[str]


def read_nodes(fragment: Iterable[Written], values: Values, known: Known) -> tuple[Node, ...]:
    """The nodes that a fragment writes.

    Args:
        values: the parameters that its numbers may name.
        known: keys of the stitches that it may work.

    Raises:
        InputError: not a node, an unknown stitch, or a number that is not understood.

    >>> read_nodes([{"work": "treble", "times": "n + 1"}], {"n": 2}, {"treble"})
    (Work(stitch='treble', times=3),)
    """
    return tuple(node for entry in fragment for node in _read_node(entry, values, known))


def known_stitch(key: str, known: Known) -> str:
    """The key itself.

    Raises:
        InputError: it is not among the known stitches, with the nearest ones.
    """
    if key not in known:
        raise InputError(f'unknown stitch "{key}"{near_names(key, known)}')
    return key


def _read_node(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    for word, read in _READERS.items():
        if word in entry:
            return read(entry, values, known)
    raise InputError(f"{dict(entry)} is not a node; write one of {', '.join(_READERS)}")


def _work(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    times = whole(entry.get("times", 1), values)
    return (Work(known_stitch(entry["work"], known), times),) if times else ()


def _into(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    return (Into(read_nodes(entry["into"], values, known)),)


def _together(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    stitch = known_stitch(entry["together"], known)
    return (Together(stitch, whole(entry["places"], values)),)


def _skip(entry: Written, values: Values, _: Known) -> tuple[Node, ...]:
    times = whole(entry["skip"], values)
    return (Skip(times),) if times else ()


def _chain(entry: Written, values: Values, _: Known) -> tuple[Node, ...]:
    times = whole(entry["chain"], values)
    return (Chain(times),) if times else ()


def _repeat(entry: Written, values: Values, known: Known) -> tuple[Node, ...]:
    times, body = whole(entry["times"], values), read_nodes(entry["repeat"], values, known)
    return body * times if times < 2 else (Repeat(body, times),)


_Reader = Callable[[Written, Values, Known], tuple[Node, ...]]
_READERS: Mapping[str, _Reader] = {
    "work": _work,
    "into": _into,
    "together": _together,
    "skip": _skip,
    "chain": _chain,
    "repeat": _repeat,
}
