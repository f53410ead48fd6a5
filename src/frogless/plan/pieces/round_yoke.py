"""A yoke from the top with rings of increases, a band of plain rounds below each.

The wanted count runs straight from the neck to where the yoke parts; after each ring it is the
multiple nearest to that. Each ring is spread evenly, and every other one is shifted by half a gap, so
that increases do not stand in columns.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from frogless.because import Because, Step
from frogless.design.pieces.round_yoke import RoundYokeChoice
from frogless.errors import Impossible, InputError
from frogless.plan import shaping
from frogless.plan.basis import Basis
from frogless.plan.landing import land, multiple_note
from frogless.plan.model import PiecePlan, SectionPlan
from frogless.plan.pieces import yoke_edges
from frogless.plan.pieces.disc_rate import flat_rate
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.yoke import Yoke, near, yoke
from frogless.plan.pieces.yoke_rows import Parts, Worked, halved, plain, short_rows, yoke_rows
from frogless.rows.nodes import Piece


@dataclass(frozen=True, slots=True)
class Rings:
    """Counts before the first ring and after each, and the rounds they lie on.

    Args:
        front, sleeve: where the yoke parts.
    """

    counts: tuple[int, ...]
    rounds: tuple[int, ...]
    front: int
    sleeve: int


def plan_round_yoke(
    basis: Basis, choice: RoundYokeChoice, key: str, _made: Mapping[str, Made]
) -> Made:
    """A round yoke, planned.

    Raises:
        InputError: a length is out of reach, or the rings lie where they cannot.
        Impossible: no count fits eases and multiple, a ring would more than double its round, or
            the yoke would ruffle.
    """
    shell = yoke(basis, choice, key)
    rounds = _ring_rounds(shell, choice)
    front, sleeve = _parting(shell, choice.multiple)
    counts = ring_counts(
        shell.neck / shell.width, 2 * (front + sleeve), len(rounds), choice.multiple
    )
    rings = Rings(counts, rounds, front, sleeve)
    _check(shell, rings)
    return _made_of(shell, choice, rings)


def ring_counts(neck: float, last: int, rings: int, multiple: int) -> tuple[int, ...]:
    """The counts at the neck and after each ring: the multiples nearest to a straight line.

    Args:
        neck: stitches wanted at the neck, as they come.
        last: where the yoke parts; a multiple.

    >>> ring_counts(92.0, 252, 4, 6)
    (90, 132, 174, 210, 252)
    """
    wanted = [neck + (last - neck) * ring / rings for ring in range(rings)]
    return (*(land(each, 1.0, multiple).count for each in wanted), last)


def ring_places(places: int, more: int, ring: int, *, first: int = 0) -> tuple[int, ...]:
    """The places of a round that take the increases of a ring (0 first): evenly, by turns shifted.

    A quarter of a gap from the beginning, in every other ring three quarters.

    Args:
        first: places that take none (a chain that counts).

    >>> ring_places(12, 4, 0), ring_places(12, 4, 1)
    ((0, 3, 6, 9), (2, 5, 8, 11))
    """
    quarters = 3 if ring % 2 else 1
    n = places - first
    return tuple(first + (4 * i + quarters) * n // (4 * more) for i in range(more))


def _made_of(shell: Yoke, choice: RoundYokeChoice, rings: Rings) -> Made:
    on_join = shell.manner.chain_counts
    parts = halved(rings.front, rings.sleeve, on_join=on_join)
    neck = _neck(rings, on_join=on_join)
    worked = tuple(_rounds(shell, rings))
    piece = Piece(shell.name, True, yoke_rows(shell, neck, worked))
    above = short_rows(shell)
    plan = PiecePlan(
        name=shell.name,
        construction="round yoke",
        counts=tuple(row.count for row in piece.rows),
        depths=(
            *(shell.top for _ in range(above + 1)),
            *(shell.depth_at(r) for r in range(1, shell.rounds + 1)),
        ),
        sections=(_section(shell, choice, rings, above),),
        measures=yoke_edges.measures(shell, neck, parts),
        shape=yoke_edges.shape(shell, neck, parts),
    )
    return Made(
        pieces=(piece,),
        plans=(plan,),
        edges=yoke_edges.edges(shell, neck, parts, piece.rows[-1]),
        remarks=tuple(yoke_edges.remarks(shell, neck)),
        gauges={shell.name: shell.gauge},
    )


def _neck(rings: Rings, *, on_join: bool) -> Parts:
    """The neck in the shares in which the yoke parts; the back takes an odd stitch."""
    total, whole = rings.counts[0], 2 * (rings.front + rings.sleeve)
    sleeve = (2 * total * rings.sleeve + whole) // (2 * whole)
    front = (total - 2 * sleeve) // 2
    back = total - 2 * sleeve - front
    last = (back - int(on_join)) // 2
    return Parts(back - last, sleeve, front, last)


def _ring_rounds(shell: Yoke, choice: RoundYokeChoice) -> tuple[int, ...]:
    """The round of each ring: at the author's depths, else the middle of its share of the depth.

    So the steps of the count lie on both sides of the straight line alike (derived).
    """
    total = shell.rounds
    if not choice.at:
        n = choice.rings
        found = [max((2 * j + 1) * total // (2 * n), 1) for j in range(n)]
        place = shell.basis.place(f"{shell.key}.rings")
    else:
        depths = [shell.basis.length(text, f"{shell.key}.at") for text in choice.at]
        found = [math.floor((d - shell.top) / shell.height + 0.5 + 1e-9) for d in depths]
        place = shell.basis.place(f"{shell.key}.at")
    if found[0] < 1 or found[-1] > total or any(b <= a for a, b in pairwise(found)):
        raise InputError(
            f"the rings would lie on rounds {', '.join(map(str, found))} of {total}; each needs a "
            "round of its own, from the neck down",
            place,
        )
    return tuple(found)


def _parting(shell: Yoke, multiple: int) -> tuple[int, int]:
    """Front and sleeve nearest to the wanted girths whose total is a multiple.

    Of all within what is allowed: the least greatest stray, in what the tape can see, then the
    least sum.

    Raises:
        Impossible: there are none.
    """
    width, under = shell.width, shell.underarm
    reach = multiple + 4
    tried: list[tuple[tuple[float, float], int, int]] = []
    for front in near(shell.bust.wanted / width / 2 - under, reach):
        for sleeve in near(shell.arm.wanted / width - under, reach):
            body, arm = 2 * (front + under) * width, (sleeve + under) * width
            allowed = shell.bust.allows(body) and shell.arm.allows(arm)
            if allowed and 2 * (front + sleeve) % multiple == 0:
                off = (abs(body - shell.bust.wanted), abs(arm - shell.arm.wanted))
                seen = (off[0] / shell.seen(body), off[1] / shell.seen(arm))
                tried.append(((round(max(seen), 6), round(sum(off), 4)), front, sleeve))
    if not tried:
        raise Impossible(
            f"no whole numbers of stitches are within the eases allowed and come to a "
            f"{multiple_note(multiple) or 'whole'} where the yoke parts",
            shell.basis.place(f"{shell.key}.multiple"),
            ways_out=("a smaller multiple", "a wider range of ease"),
        )
    _, front, sleeve = min(tried)
    return front, sleeve


def _check(shell: Yoke, rings: Rings) -> None:
    """No ring takes away or more than doubles; the yoke is no flatter than flat.

    Source: a flat disc gains 2π × height / width stitches in a round: geometry.
    """
    place = shell.basis.place(f"{shell.key}.neck")
    for before, after in pairwise(rings.counts):
        if after < before:
            raise Impossible(
                f"the neck of {rings.counts[0]} stitches is wider than the {rings.counts[-1]} where "
                "the yoke parts",
                place,
                short_stitches=before - after,
                ways_out=("a narrower neck", "a smaller multiple"),
            )
        if after > 2 * before - int(shell.manner.chain_counts):
            raise Impossible(
                f"a ring would take {before} stitches to {after}, more than two into each",
                place,
                short_stitches=after - 2 * before,
                ways_out=("more rings", "a wider neck"),
            )
    flat = flat_rate(shell.gauge).value
    change = rings.counts[-1] - rings.counts[0]
    if change > flat * shell.rounds + 1e-9:
        needed = math.ceil(change / flat - 1e-9)
        raise Impossible(
            f"{change} stitches in {shell.rounds} rounds are {change / shell.rounds:.1f} a round; "
            f"more than {flat:.1f} ruffle",
            shell.basis.place(f"{shell.key}.depth"),
            short_stitches=math.ceil(change - flat * shell.rounds),
            short=(needed - shell.rounds) * shell.height,
            ways_out=(
                f"{needed} rounds, a depth of {shell.basis.show(shell.depth_at(needed))}",
                "a wider neck",
            ),
        )


def _rounds(shell: Yoke, rings: Rings) -> Iterator[Worked]:
    """Every round: a ring, or plain."""
    ring_on = {r: ring for ring, r in enumerate(rings.rounds)}
    count = rings.counts[0]
    for r in range(1, shell.rounds + 1):
        more = _more(rings, ring_on.get(r))
        if not more:
            yield plain(shell, count)
            continue
        on_join = int(shell.manner.chain_counts)
        at = ring_places(count, more, ring_on[r], first=on_join)
        one = shaping.Round(count, more, 1, shell.manner.side(r), bool(on_join), at)
        yield Worked(shaping.body(shell.gauge.stitch, one), one.left)
        count = one.left


def _more(rings: Rings, ring: int | None) -> int:
    return 0 if ring is None else rings.counts[ring + 1] - rings.counts[ring]


def _section(shell: Yoke, choice: RoundYokeChoice, rings: Rings, above: int) -> SectionPlan:
    first, last = rings.counts[0], rings.counts[-1]
    steps: Sequence[Step] = (
        Step("wanted", shell.neck),
        Step("landed", first, "stitches", multiple_note(choice.multiple)),
        Step("change", last - first, "stitches"),
        Step("shapings", len(rings.rounds)),
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
        chosen=None,
        others=(),
        fullness=(last - first) / shell.rounds / flat_rate(shell.gauge).value,
        because=Because(tuple(steps)),
    )
