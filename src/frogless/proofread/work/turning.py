"""What a pattern says of its turning chains, line by line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from frogless.proofread.words.model import Chain
from frogless.proofread.work.acts import targets
from frogless.proofread.work.model import Told


def chains_told(
    told: Sequence[Told], general: Mapping[int, bool]
) -> list[tuple[tuple[int, bool], ...]]:
    """What is known of turning chains at each line: said in general, and by the rows up to it.

    Once a row has said it of a chain of a length, it holds until another row says otherwise. What
    the first such row says holds for those before it too, when nothing else was said of it. A single
    chain that is said to count is so rare that it holds for that row alone.
    """
    first: dict[int, bool] = {}
    said_at: list[dict[int, bool]] = []
    for each in told:
        here: dict[int, bool] = {}
        for act in each.said.acts:
            if isinstance(act, Chain) and act.counts is not None and len(act.times.values) == 1:
                here[act.times.values[0]] = act.counts
                break
        for target in targets(each.said.acts):
            if target.what == "from_hook" and target.counts is not None:
                here.setdefault(target.nth - 1, target.counts)
        for chains, counts in here.items():
            if chains > 1 or not counts:
                first.setdefault(chains, counts)
        said_at.append(here)
    now = {**first, **general}
    found = []
    for here in said_at:
        found.append(tuple(sorted({**now, **here}.items())))
        now |= {chains: counts for chains, counts in here.items() if chains > 1 or not counts}
    return found
