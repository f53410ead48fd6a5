"""The beginning of a row: its foundation, its slip stitches, the chain that lifts the work."""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Evenly,
    Increase,
    Into,
    Join,
    Repeat,
    Ring,
    Skip,
    Together,
    Turn,
    Unclear,
)
from frogless.proofread.work.acts import (
    begins_with_slips,
    every,
    first_stitch,
    is_quiet,
    is_slip,
    is_strand,
    leads_on,
    rejoins,
)
from frogless.proofread.work.edge import MOST_PLACES, RING, Edge, Place, merged, of_chains
from frogless.proofread.work.hand import Hand, TooLongError
from frogless.proofread.work.model import Problem
from frogless.proofread.work.worker import Worker

#: A chain that is joined into a ring to be worked into has no more than so many chains (from
#: memory: rings of 4 to 8 are usual); a longer one is the edge of a tube.
RING_CHAINS = 16
#: A chain that is longer lifts no row (the tallest stitch of the dictionary takes 7).
LONGEST_TURN = 7


def begin(worker: Worker, acts: Sequence[Act], lift: Chain | None) -> int:
    """Work the foundation, the slip stitches and the chain that a row begins with.

    Returns:
        int: the index of the first act that is left.
    """
    slips = lift is None and worker.way.led and begins_with_slips(acts, worker.trade)
    if lift is not None and not _begins_with_chain(acts):
        turn_up(worker, lift, acts, slipped=False)
    slipped = False
    led = rejoins(acts)
    if worker.hand.edge.begun == "nothing" and is_strand(acts, worker.trade):
        return 0
    for index, act in enumerate(acts):
        if isinstance(act, Turn | Unclear) or not is_quiet(act):
            if isinstance(act, Turn | Unclear):
                continue
            if isinstance(act, Ring):
                lay(worker, RING, 0)
            elif isinstance(act, Chain) and worker.hand.edge.begun == "nothing" and _is_space(act):
                return index
            elif isinstance(act, Chain) and worker.hand.edge.begun == "nothing":
                count = worker.number(act.times)
                lay(worker, of_chains(count), count)
            elif isinstance(act, Chain) and _is_bridge(worker, act, acts[index + 1 :]):
                return index
            elif isinstance(act, Skip) and index < led:
                worker.work((act,))
                worker.hand.last, worker.begun = None, False
            elif isinstance(act, Chain):
                turn_up(worker, act, acts[index + 1 :], slipped=slipped)
                return index + 1
            elif isinstance(act, Into) and leads_on(act, worker.trade):
                _lead_on(worker, act)  # the chain after it stands on the next place
            elif slips and is_slip(act, worker.trade):
                _travel(worker, act)
                slipped = True
            else:
                return index
        elif isinstance(act, Join) and act.to == "ring" and 0 < worker.laid <= RING_CHAINS:
            worker.hand.edge = worker.hand.edge._replace(begun="ring")
    return len(acts)


def _is_space(chain: Chain) -> bool:
    """ "Ch 12 (counts as one ch-sp)": all of it is one place."""
    return chain.counts is True and not chain.counts_as


def _is_bridge(worker: Worker, chain: Chain, rest: Sequence[Act]) -> bool:
    """ "Ch 17, skip next 17 sts": a chain over an opening, and none that lifts the row.

    So is one that no stitch is as tall as (own choice: twice the tallest of the dictionary).
    """
    count = worker.number(chain.times)
    if chain.counts is not None or count <= LONGEST_TURN or _works_from_hook(rest):
        return False
    after = next((act for act in rest if not is_quiet(act)), None)
    if isinstance(after, Skip) and after.times is not None:
        return worker.number(after.times) >= count // 2
    return count > 2 * LONGEST_TURN


def _lead_on(worker: Worker, act: Act) -> None:
    """Slip stitches that only move the work."""
    before = len(worker.out), len(worker.extras)
    worker.work((act,))
    del worker.out[before[0] :], worker.extras[before[1] :]
    worker.begun = False


def _travel(worker: Worker, act: Act) -> None:
    """The same before a chain; the space that they end in is still to be worked."""
    mark = worker.hand.mark()
    _lead_on(worker, act)
    _tell_passed(worker, act, mark.at)
    worker.travelled += worker.hand.has(mark.at, worker.hand.at)
    last = worker.hand.last
    if last is not None and last.kind == "space":
        worker.hand.back(mark)
        worker.hand.pass_to(worker.hand.next_at(lambda p: p == last, worker.hand.total) or 0)
        worker.hand.last = last
        worker.free = True


def _tell_passed(worker: Worker, act: Act, start: int) -> None:
    """Slip stitches go from place to place: "sl st in next dc and in ch-2 sp" with 3 dc before it.

    One stitch is let pass: the round below was joined to it, and has to pass where that was a chain
    that counts. So is a step to a space from the very
    beginning, as "sl st to ch-2 sp" is common.
    """
    if not start or not isinstance(act, Into) or act.target.what != "space":
        return
    passed = worker.hand.stitches(start, worker.hand.at)
    first = worker.hand.runs[0][0]
    on_chain = (
        first.kind == "stitch" and first.chains > 0
    )  # the join stands on it: next is the second
    if (passed > 1 or (on_chain and start > 1 and not passed)) and not worker.problems:
        worker.problems.append(Problem("passed", act.span, uses=passed))


def lay(worker: Worker, edge: Edge, chains: int) -> None:
    """What the row is worked into is made by the row itself."""
    if chains > MOST_PLACES:
        raise TooLongError
    worker.hand = Hand(edge, worker.trade, weigh_spaces=worker.hand.weigh_spaces)
    worker.laid = chains


def turn_up(worker: Worker, chain: Chain, rest: Sequence[Act], *, slipped: bool) -> None:
    """The chain that a row begins with."""
    count = worker.number(chain.times)
    if _works_from_hook(rest):
        # Chains added at the edge: they are worked back along like a foundation.
        edge = worker.hand.edge
        runs = merged([(Place("chain"), count), *edge.runs])
        lay(worker, edge._replace(runs=runs, begun="chain"), count)
        return
    first = first_stitch(rest, worker.trade)
    named = next((a.stitch for a in every(rest) if isinstance(a, Bare) and a.stitch), "")
    if worker.trade.base(named) != first and first:
        named = first
    stitch = chain.counts_as or named or worker.row_stitch
    counts = _counts(worker, chain, (count, first))
    worker.turning = (count, counts != "no")
    worker.stands_for = chain.counts_as
    if counts == "no":
        worker.out.append((Place("turning", chains=count), 1))
        worker.free = worker.free or not slipped
        return
    worker.put([(Place("stitch", stitch, chains=count), 1)])
    if counts == "space":
        space = chain.space or max(count - worker.trade.turning_chain(stitch), 1)
        worker.put([(Place("space", chains=space), 1)])
    _stand(worker, slipped=slipped)


def _counts(worker: Worker, chain: Chain, key: tuple[int, str]) -> str:
    if chain.counts is None:
        return "space" if chain.space else worker.way.count_of(key)
    return "space" if chain.counts and chain.space else "yes" if chain.counts else "no"


def _stand(worker: Worker, *, slipped: bool) -> None:
    """A chain that counts stands on the first place, or on that of the last slip stitch."""
    if slipped and worker.free:
        worker.hand.forward(1)  # the chain stands in the space that the work was moved to
        worker.free = False
        return
    if slipped and not worker.way.next_foot:
        return
    if worker.hand.edge.begun == "ring" or (worker.hand.known and not worker.hand.runs):
        return
    first = next((p for p, _ in worker.hand.runs[worker.hand.run :] if worker.hand.weight(p)), None)
    worker.hand.take(lambda p: p == first, 1, worker.hand.total)


def _begins_with_chain(acts: Sequence[Act]) -> bool:
    for act in acts:
        if isinstance(act, Chain):
            return True
        if isinstance(act, Bare | Into | Increase | Together | Repeat | Skip | Evenly):
            return False
    return False


def _works_from_hook(acts: Sequence[Act]) -> bool:
    for act in acts:
        target = getattr(act, "target", None)
        if target is not None:
            return bool(target.what == "from_hook")
    return False
