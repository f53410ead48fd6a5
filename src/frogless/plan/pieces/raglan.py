"""A yoke from the top with four raglan lines, worked in joined rounds.

Every increase is worked into the corner stitch of a line: as many stitches into it as the body's
side gains there, one that is the next corner, and as many as the sleeve's side gains; three in a
usual round. So a line is one column of corner stitches in turned and in unturned rounds, whichever
sides grow, and its marker has only to be moved up into the corner. The corner stitches are the
outermost of front and back.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import accumulate

from frogless.because import Because, Step
from frogless.design.pieces.raglan import RaglanChoice
from frogless.errors import Impossible, InputError
from frogless.plan.basis import Basis
from frogless.plan.model import Option, PiecePlan, Rhythm, SectionPlan
from frogless.plan.pieces import yoke_edges
from frogless.plan.pieces.disc_rate import flat_rate
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.raglan_counts import (
    Choice,
    Counts,
    Kind,
    choices,
    choose,
    near_counts,
    strays,
)
from frogless.plan.pieces.yoke import Wanted, Yoke, yoke
from frogless.plan.pieces.yoke_rows import (
    Parts,
    Worked,
    halved,
    plain,
    short_rows,
    yoke_rows,
)
from frogless.plan.rhythm.engine import Solution, solve
from frogless.plan.rhythm.spread import edge_task
from frogless.rows.nodes import Into, Node, Piece, Work

LINES = 4
SIDES: Mapping[Kind, str] = {
    (2, 1): "the body side",
    (1, 2): "the sleeve side",
    (2, 2): "both sides",
}
WIDE_UNDERARM = 100.0
"""mm; an underarm that is wider is said to be wide (own choice)."""


def plan_raglan(basis: Basis, choice: RaglanChoice, key: str, _made: Mapping[str, Made]) -> Made:
    """A raglan yoke, planned.

    Raises:
        InputError: a length is out of reach, or the work is none for a yoke.
        Impossible: no counts near the girths fit their ease, or there are too few rounds.
    """
    shell = yoke(basis, choice, key)
    top = None
    if choice.sleeve_top is not None:
        top = basis.girth_wanted(choice.sleeve_top, f"{key}.sleeve_top")
    found = choices(shell, top, choice.add)
    if not found:
        raise _refused(shell, choice, tuple(near_counts(shell, top)), top)
    return _made_of(shell, choose(found))


def _made_of(shell: Yoke, chosen: Choice) -> Made:
    counts, on_join = chosen.counts, shell.manner.chain_counts
    neck = halved(counts.neck_front, counts.neck_sleeve, on_join=on_join)
    solution = solve(edge_task(shell.rounds, chosen.rounds)) if chosen.rounds else None
    kinds = kinds_by_round(chosen, solution.rhythm.rounds if solution else (), shell.rounds)
    states = states_of(neck, kinds)
    rounds = tuple(
        _worked(shell, r, before, kind)
        for r, (before, kind) in enumerate(zip(states, kinds, strict=False), 1)
    )
    piece = Piece(shell.name, True, yoke_rows(shell, neck, rounds))
    above = short_rows(shell)
    plan = PiecePlan(
        name=shell.name,
        construction="raglan yoke",
        counts=tuple(row.count for row in piece.rows),
        depths=(
            *(shell.top for _ in range(above + 1)),
            *(shell.depth_at(r) for r in range(1, shell.rounds + 1)),
        ),
        sections=(_section(shell, chosen, states, solution, above),),
        measures=yoke_edges.measures(shell, neck, states[-1]),
        shape=yoke_edges.shape(shell, neck, states[-1]),
    )
    return Made(
        pieces=(piece,),
        plans=(plan,),
        edges=yoke_edges.edges(shell, neck, states[-1], piece.rows[-1]),
        remarks=tuple(yoke_edges.remarks(shell, neck)),
        gauges={shell.name: shell.gauge},
    )


def kinds_by_round(chosen: Choice, on: Sequence[int], rounds: int) -> tuple[Kind, ...]:
    """What each of so many rounds adds; the rarer kinds lie evenly among the increase rounds.

    Args:
        on: the increase rounds.
    """
    ranked = sorted(chosen.mix, key=lambda pair: -pair[1])
    order = [kind for kind, _ in ranked[:1] for _ in range(chosen.rounds)]
    free = list(range(chosen.rounds))
    for kind, times in ranked[1:]:
        taken = [free[(2 * i + 1) * len(free) // (2 * times)] for i in range(times)]
        for at in taken:
            order[at] = kind
        free = [at for at in free if at not in taken]
    added = dict(zip(on, order, strict=True))
    return tuple(added.get(r, (0, 0)) for r in range(1, rounds + 1))


def states_of(neck: Parts, kinds: Sequence[Kind]) -> tuple[Parts, ...]:
    """The parts before the first round and after each."""
    return tuple(accumulate(kinds, lambda parts, kind: parts.grown(*kind), initial=neck))


def _worked(shell: Yoke, round_: int, before: Parts, kind: Kind) -> Worked:
    """One round over the parts below it."""
    body, sleeve = kind
    if not body + sleeve:
        return plain(shell, before.count)
    on_join = shell.manner.chain_counts
    met = before.as_met(on_join=on_join) if shell.manner.side(round_) == "WS" else before
    stitch = shell.gauge.stitch
    corner: Node = Into((Work(stitch, 1 + body + sleeve),))
    runs = (
        met.first - 1 - int(on_join),
        met.sleeve,
        met.front - 2,
        met.sleeve,
        met.last - 1,
    )
    nodes: list[Node] = []
    for i, run in enumerate(runs):
        nodes += [corner] if i else []
        nodes += [Work(stitch, run)] if run else []
    # Body and sleeve lie before and after a corner by turns, whichever way it is worked.
    return Worked(tuple(nodes), before.grown(*kind).count, (body, sleeve, body, sleeve))


def _section(
    shell: Yoke, chosen: Choice, states: Sequence[Parts], solution: Solution | None, above: int
) -> SectionPlan:
    first, last = states[0].count, states[-1].count
    option = None
    if solution is not None and len(chosen.mix) == 1:
        ((body, sleeve), _) = chosen.mix[0]
        added = body + sleeve
        rhythm = solution.rhythm
        shifted = Rhythm(
            rhythm.first + above, rhythm.clauses, tuple(r + above for r in rhythm.rounds)
        )
        stray = solution.worst * LINES * added * shell.width
        option = Option(LINES, added, shifted, stray, shell.depth_at(solution.worst_round))
    steps = (
        Step("change", last - first, "stitches"),
        Step("shapings", chosen.rounds),
        Step("points", LINES),
    )
    return SectionPlan(
        name=shell.name,
        stitch=shell.gauge.stitch,
        hook=shell.hook,
        gauge=shell.gauge,
        first_round=1,
        last_round=above + shell.rounds,
        count_before=first,
        count_after=last,
        chosen=option,
        others=(),
        fullness=(last - first) / shell.rounds / flat_rate(shell.gauge).value,
        because=Because(steps),
    )


def _refused(
    shell: Yoke, choice: RaglanChoice, all_counts: Sequence[Counts], top: float | None
) -> InputError | Impossible:
    """Why there is no choice: an ease without a count in it, a neck too wide, too few rounds."""
    if not all_counts:
        return _none_near(shell)
    least = min(strays(shell, counts, top)[0] for counts in all_counts)
    tried = [c for c in all_counts if strays(shell, c, top)[0] <= least + 1]
    counts = min(tried, key=lambda c: (max(c.needs), strays(shell, c, top)))
    if top is not None:
        counts = min(tried, key=lambda c: strays(shell, c, top))
    return _too_few_rounds(shell, choice, counts, top)


def _none_near(shell: Yoke) -> Impossible:
    """An allowed ease that no whole count meets, or a neck that leaves nothing to grow."""
    show = shell.basis.show
    step = {"bust": 2 * shell.width, "arm": shell.width}
    for name, wanted in (("bust", shell.bust), ("arm", shell.arm)):
        if not _has_count(wanted, step[name]):
            return Impossible(
                f"no whole number of stitches lies between the {show(wanted.low)} and "
                f"{show(wanted.high)} that are allowed",
                shell.basis.place(
                    f"{shell.key}.{'ease' if name == 'bust' else 'arm_ease'}_allowed"
                ),
                short=step[name] - (wanted.high - wanted.low),
                ways_out=(f"allow {show(step[name])} from the least to the most",),
            )
    return Impossible(
        f"a neck of {show(shell.neck)} leaves nothing to increase to {show(shell.bust.wanted)} at "
        f"the bust and {show(shell.arm.wanted)} at the arm",
        shell.basis.place(f"{shell.key}.neck"),
        ways_out=("a narrower neck", "a narrower underarm", "more ease"),
    )


def _has_count(wanted: Wanted, step: float) -> bool:
    return math.floor(wanted.high / step + 1e-9) >= math.ceil(wanted.low / step - 1e-9)


def _too_few_rounds(
    shell: Yoke, choice: RaglanChoice, counts: Counts, top: float | None
) -> Impossible:
    body, sleeve = counts.needs
    is_body = body >= sleeve
    needed = max(body, sleeve)
    short = needed - shell.rounds
    side, part = ("body", "front") if is_body else ("sleeve", "sleeve")
    before, after = (
        (counts.neck_front, counts.front) if is_body else (counts.neck_sleeve, counts.sleeve)
    )
    return Impossible(
        f"{side} and {'sleeve' if is_body else 'body'} cannot arrive on the same round: the {part} "
        f"grows from {before} to {after} stitches, {needed} increases at each line, and there are "
        f"{shell.rounds} rounds, {short} short on the {side} lines",
        shell.basis.place(f"{shell.key}.depth"),
        short_stitches=short,
        short=short * shell.height,
        ways_out=tuple(_ways_out(shell, choice, counts, top)),
    )


def _ways_out(
    shell: Yoke, choice: RaglanChoice, counts: Counts, top: float | None
) -> Iterator[str]:
    show = shell.basis.show
    needed = max(counts.needs)
    if choice.add == 1 and (found := choices(shell, top, 2)):
        doubled = choose(found)
        kinds = [(kind, times) for kind, times in doubled.mix if max(kind) == 2]
        sides = [f"at {SIDES[kind]} in {times} rounds" for kind, times in kinds]
        yield f"add = 2: two stitches {' and '.join(sides)}"
    under = _wider_underarm(shell, counts)
    if under is not None:
        wide = under * shell.width
        told = ", which is wide" if wide > WIDE_UNDERARM else ""
        yield f"an underarm of {under} stitches, {show(wide)}{told}"
    yield f"{needed} rounds, a depth of {show(shell.depth_at(needed))}"


def _wider_underarm(shell: Yoke, counts: Counts) -> int | None:
    """The least even underarm that takes enough from front and sleeve; None when none does."""
    fronts, sleeves = counts.front + shell.underarm, counts.sleeve + shell.underarm
    for under in range(shell.underarm + 2, sleeves, 2):
        body = (fronts - under - counts.neck_front) / 2
        sleeve = (sleeves - under - counts.neck_sleeve) / 2
        if min(body, sleeve) < 0:
            return None
        if max(body, sleeve) <= shell.rounds:
            return under
    return None
