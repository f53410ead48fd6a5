"""Discs and polygons from a ring, and the hats, bags and mats that go on from them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import accumulate, pairwise

from frogless.design.pieces.disc import DiscChoice
from frogless.plan import shaping
from frogless.plan.basis import Basis
from frogless.plan.edging import EdgingWork, in_piece, plan_edging
from frogless.plan.model import PiecePlan, SectionPlan
from frogless.plan.pieces import disc_told
from frogless.plan.pieces.disc_rate import flat_rate
from frogless.plan.pieces.disc_rows import (
    Worked,
    cornered,
    first_round,
    staggered,
    worked,
)
from frogless.plan.pieces.disc_stages import Disc, Stage, decide
from frogless.plan.pieces.made import Made, OfferedEdge
from frogless.plan.row_gauges import by_section, height_of
from frogless.rows.nodes import Base, End, Piece, Row, Work

EDGE = "edge"
RING = "adjustable_ring"


def plan_disc(basis: Basis, choice: DiscChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A disc, planned, with the sections and the edging that go on from it.

    Raises:
        InputError: a length is missing, given twice or out of reach.
        Impossible: the edging cannot be fitted to its edge.
    """
    del made
    disc = decide(basis, choice, key)
    edging = _edging(disc)
    rows = (*_rows(disc), *(edging.rows if edging else ()))
    if edging is None:
        rows = (*rows[:-1], _cut_off(rows[-1]))
    piece = Piece(choice.name, True, rows)
    return Made(
        pieces=(piece,),
        plans=(_plan(disc, piece, edging),),
        edges=(_edge(disc, rows[-1]),),
        remarks=(*disc_told.remarks(disc), *(edging.remarks if edging else ())),
        gauges=by_section(disc.basis, {s.name: s.gauge for s in disc.stages}, rows),
    )


def _cut_off(row: Row) -> Row:
    return replace(row, end=replace(row.end, turn=False, fasten_off=True))


def _edging(disc: Disc) -> EdgingWork | None:
    choice, last = disc.choice.edging, disc.stages[-1]
    if choice is None:
        return None
    basis = in_piece(disc.basis, disc.key)
    return plan_edging(basis, choice, last.gauge, last.last, disc.rounds + 1)


def _rows(disc: Disc) -> Iterator[Row]:
    """The ring, and every round."""
    hook = disc.crown.gauge.hook or disc.basis.hook
    joined = End("first_stitch")
    yield Row(0, "RS", disc.choice.name, (Work(RING),), 1, end=joined, hook=hook)
    for number, (stage, work) in enumerate(_worked(disc), 1):
        chains = work.start.chains
        yield Row(
            number=number,
            side=disc.manner.side(number),
            section=stage.name,
            body=work.body,
            count=disc.counts[number - 1],
            start=work.start,
            end=disc.manner.end(number, chains, last=number == disc.rounds),
            hook=stage.gauge.hook or disc.basis.hook,
        )


def _worked(disc: Disc) -> Iterator[tuple[Stage, Worked]]:
    """Every round with the stage that it belongs to."""
    number = 1
    for i, stage in enumerate(disc.stages):
        if i == 0:
            yield stage, first_round(stage.gauge.stitch, stage.counts[0], disc.manner, stage.chains)
            counts = stage.counts
        else:
            counts = (stage.before, *stage.counts)
        for work in _following(disc, stage, counts, number + int(i == 0)):
            yield stage, work
        number += len(stage.counts)


def _following(disc: Disc, stage: Stage, counts: Sequence[int], number: int) -> Iterator[Worked]:
    """The rounds that stand on one another; `number` is that of the first of them."""
    stitch, how = stage.gauge.stitch, disc.manner
    if counts[-1] < counts[0]:
        for r, (before, after) in enumerate(pairwise(counts), number):
            yield _narrowed(disc, stage, before, after, r)
        return
    for r, spread in enumerate(_spreads(disc, stage, counts, number), number):
        yield worked(stitch, spread, how.side(r), how, stage.chains)


def _spreads(
    disc: Disc, stage: Stage, counts: Sequence[int], number: int
) -> Iterator[tuple[int, ...]]:
    choice, how = disc.choice, disc.manner
    corners = choice.sides or (None if choice.staggered else disc.growth.per_round)
    if stage is not disc.crown or corners is None:
        return staggered(counts, number, how)
    return cornered(counts, corners, number, how)


def _narrowed(disc: Disc, stage: Stage, before: int, after: int, number: int) -> Worked:
    how, stitch = disc.manner, stage.gauge.stitch
    if after == before:
        return worked(stitch, (1,) * before, how.side(number), how, stage.chains)
    one = shaping.Round(before, before - after, -1, how.side(number), how.chain_counts)
    plain = worked(stitch, (1,) * before, how.side(number), how, stage.chains)
    return replace(plain, body=shaping.body(stitch, one))


def _plan(disc: Disc, piece: Piece, edging: EdgingWork | None) -> PiecePlan:
    depths = [0.0, *disc.depths()]
    for row in edging.rows if edging else ():
        depths.append(depths[-1] + height_of(disc.basis, row))
    return PiecePlan(
        name=piece.name,
        construction="disc",
        counts=tuple(row.count for row in piece.rows),
        depths=tuple(depths),
        sections=tuple(_sections(disc)),
        landmarks=disc_told.landmarks(disc),
        edging=edging.plan if edging else None,
        measures=disc_told.measures(disc),
        shape=disc_told.shape(disc),
    )


def _sections(disc: Disc) -> Iterator[SectionPlan]:
    ends = list(accumulate(len(stage.counts) for stage in disc.stages))
    for stage, end in zip(disc.stages, ends, strict=True):
        rounds = len(stage.counts)
        yield SectionPlan(
            name=stage.name,
            stitch=stage.gauge.stitch,
            hook=stage.gauge.hook or disc.basis.hook,
            gauge=stage.gauge,
            first_round=end - rounds + 1,
            last_round=end,
            count_before=stage.before or 1,
            count_after=stage.last,
            chosen=None,
            others=(),
            fullness=(stage.last - stage.before) / rounds / flat_rate(stage.gauge).value,
            because=stage.because,
        )


def _edge(disc: Disc, last: Row) -> OfferedEdge:
    stage = disc.stages[-1]
    return OfferedEdge(
        name=EDGE,
        bases=(Base(disc.choice.name, "last_row"),),
        places=(last.count,),
        length=stage.gauge.width.times(stage.last),
        gauge=stage.gauge,
        closed=True,
    )
