"""What a stitch takes and leaves: the dictionary's, and those that the pattern defines itself."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cached_property

from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import OwnStitch
from frogless.proofread.work.edge import Place, Run
from frogless.rows.nodes import Chain, Into, Node, Repeat, Work
from frogless.stitches.model import Stitch

_FOUNDATION = "foundation_"
#: "like" leads from a stitch to the plain one in one or two steps.
_LIKE_STEPS = 4
#: Chains of a double crochet. Before that or taller stitches more chains are a space (common practice).
TALL = 3


class Trade:
    """The stitches of one pattern."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self._bases: dict[str, str] = {}

    def own(self, key: str) -> OwnStitch | None:
        """The pattern's own stitch of that key, when it is one."""
        return self.lexicon.own.get(key)

    def known(self, key: str) -> Stitch | None:
        """The dictionary's stitch; of the pattern's own the one that it means."""
        own = self.own(key)
        return self.lexicon.stitches.get(own.meaning if own else key)

    def base(self, key: str) -> str:
        """The plain stitch that a stitch is but for its place: "dc" for one around a post.

        A foundation double crochet is a double crochet to the row above.
        """
        if key not in self._bases:
            self._bases[key] = self._base(key)
        return self._bases[key]

    def _base(self, key: str) -> str:
        own = self.own(key)
        if own is not None and not own.meaning:
            return key
        found = own.meaning if own else key
        found = found.removeprefix(_FOUNDATION) if found.startswith(_FOUNDATION) else found
        for _ in range(_LIKE_STEPS):
            stitch = self.lexicon.stitches.get(found)
            if stitch is None or not stitch.like:
                break
            found = stitch.like
        return found

    def takes(self, key: str) -> int:
        """Places of the row below that a stitch takes; 0 for a picot or a foundation stitch."""
        own = self.own(key)
        if own is not None and not own.meaning:
            return max(own.takes, 0)
        stitch = self.known(key)
        return 1 if stitch is None else stitch.stands_on

    def body(self, key: str) -> OwnStitch | None:
        """The pattern's own group, when its stitches are told."""
        own = self.own(key)
        return own if own is not None and own.body else None

    def leaves(self, key: str) -> tuple[Run, ...]:
        """The places that a stitch leaves whose stitches are not told by the pattern."""
        own = self.own(key)
        if own is not None and not own.meaning:
            if own.takes == own.leaves > 1:  # a cable: as many as it is worked over
                return ((Place("stitch", key), own.leaves),)
            if own.leaves > 1:  # a group whose stitches are not told: whichever they are
                return tagged(((Place("stitch"), own.leaves),), key)
            return ((Place("stitch", key), own.leaves),) if own.leaves > 0 else ()
        stitch = self.known(key)
        if stitch is None:
            return ((Place("stitch", key), 1),)
        if stitch.kind == "group" and stitch.works:
            return tagged(tuple(_of_nodes(stitch.works)), stitch.key)
        return ((Place("stitch", stitch.key), stitch.leaves),) if stitch.leaves else ()

    def is_group(self, key: str) -> bool:
        """Whether the stitch is several in one place that are known by one name."""
        stitch, own = self.known(key), self.own(key)
        if own is not None and not own.meaning and own.leaves > 1:
            return True
        return self.body(key) is not None or (stitch is not None and stitch.kind == "group")

    def is_trim(self, key: str) -> bool:
        """Whether it is a bead or a picot: it takes no place, and begins no row."""
        stitch = self.known(key)
        return stitch is not None and stitch.kind in ("trim", "ornament")

    def turning_chain(self, key: str) -> int:
        """Chains as tall as the stitch; 0 where it is not known."""
        stitch = self.known(self.base(key))
        return stitch.turning_chain if stitch else 0

    def usually_counts(self, chains: int, key: str) -> bool:
        """Whether a chain that long in front of that stitch counts by the custom of the trade.

        One that is shorter than the stitch is tall does not (common practice).
        """
        stitch = self.known(self.base(key))
        if stitch is None:
            return chains > 2
        return stitch.chain_counts == "yes" and chains >= stitch.turning_chain

    def called(self, key: str) -> str:
        """The abbreviation of a stitch in the pattern's dialect."""
        own = self.own(key)
        if own is not None:
            return own.words[0] if own.words else key
        stitch = self.lexicon.stitches.get(key)
        return stitch.terms[self.lexicon.terms.dialect].abbreviation if stitch else key

    @cached_property
    def slips(self) -> frozenset[str]:
        """The keys of all slip stitches."""
        keys: Mapping[str, Stitch] = self.lexicon.stitches
        return frozenset(key for key in keys if self.base(key) == "slip_stitch")


def tagged(runs: tuple[Run, ...], group: str) -> tuple[Run, ...]:
    """The places marked as those of one group, its first and its last among them."""
    if not runs:
        return ()
    flat: list[Run] = []
    for place, count in runs:
        flat += [(place._replace(of=group), 1)] if count == 1 else _ends_apart(place, count, group)
    first, last = flat[0][0], flat[-1][0]
    if len(flat) == 1:
        return ((first._replace(ends=3), 1),)
    return ((first._replace(ends=1), 1), *flat[1:-1], (last._replace(ends=2), 1))


def _ends_apart(place: Place, count: int, group: str) -> list[Run]:
    inner = place._replace(of=group)
    middle = [(inner, count - 2)] if count > 2 else []
    return [(inner, 1), *middle, (inner, 1)]


def _of_nodes(nodes: Iterable[Node]) -> Iterable[Run]:
    for node in nodes:
        match node:
            case Work(stitch, times):
                yield Place("stitch", stitch), times
            case Chain(times, _):
                yield Place("space", chains=times), 1
            case Repeat(body, times):
                for _ in range(times):
                    yield from _of_nodes(body)
            case Into(body):
                yield from _of_nodes(body)
            case _:
                pass
