"""Ways through the tree of a row: every node with its multiplicity, the body without repeats."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from frogless.rows.nodes import Chain, Into, Leave, Node, Repeat, Skip, Work


def nodes(body: Iterable[Node], times: int = 1) -> Iterator[tuple[Node, int]]:
    """Every node of a body, inner ones too, with how often it is met; nothing is unrolled.

    A repeat or an `Into` comes before what it holds.
    """
    for node in body:
        yield node, times
        if isinstance(node, Repeat):
            yield from nodes(node.body, times * node.times)
        elif isinstance(node, Into):
            yield from nodes(node.body, times)


def unrolled(body: Iterable[Node]) -> Iterator[Node]:
    """The body with every repeat written out; what is inside an `Into` stays there."""
    for node in body:
        if isinstance(node, Repeat):
            for _ in range(node.times):
                yield from unrolled(node.body)
        else:
            yield node


def flatten(body: Iterable[Node]) -> tuple[Node, ...]:
    """The body without repeats and as short as it gets: neighbours of one kind are one run.

    What is worked 0 times vanishes. Two runs of chains stay two: each is a place of its own.

    >>> flatten((Repeat((Work("single_crochet", 2), Skip()), 2), Skip()))[-1]
    Skip(times=2)
    """
    flat: list[Node] = []
    for node in unrolled(body):
        inner = Into(flatten(node.body)) if isinstance(node, Into) else node
        if isinstance(inner, Work | Skip | Leave | Chain) and not inner.times:
            continue
        merged = _merged(flat[-1], inner) if flat else None
        if merged is None:
            flat.append(inner)
        else:
            flat[-1] = merged
    return tuple(flat)


def stitch_keys(body: Iterable[Node]) -> frozenset[str]:
    """The keys of all stitches that a body names."""
    return frozenset(stitch for node, _ in nodes(body) if (stitch := getattr(node, "stitch", "")))


def _merged(before: Node, after: Node) -> Node | None:
    match before, after:
        case Work(stitch, m), Work(other, n) if stitch == other:
            return Work(stitch, m + n)
        case Skip(m), Skip(n):
            return Skip(m + n)
        case Leave(m), Leave(n):
            return Leave(m + n)
        case Chain(m, True), Chain(n, True):
            return Chain(m + n, each=True)
    return None
