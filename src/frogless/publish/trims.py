"""What is put on: elastic, cord, band and strands, each with what to cut and how to do it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from frogless.design.document import tubes
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, StrandPlan
from frogless.publish.blocks import Block, Bullets, Heading, Instruction, Paragraph
from frogless.publish.drafted import Drafted, strands_of, waist_of
from frogless.publish.materials import hook_size
from frogless.publish.messages import say
from frogless.publish.remarks import notes_at, strand_notes
from frogless.rows.nodes import Piece, Seam
from frogless.units import show_length
from frogless.write.pattern import write_seam
from frogless.write.seams import say_spread
from frogless.write.words import Words


def before_rows(drafted: Drafted, piece: Piece) -> Iterator[Block]:
    """What to know and to do before the rows of a trim."""
    waist = waist_of(drafted)
    if piece.bases and isinstance(waist, ElasticPlan):
        yield from notes_at(drafted, "elastic")
        yield Bullets(tuple(_elastic(drafted, waist)))
    elif isinstance(waist, BandPlan) and _is_seamed(drafted, piece):
        girth = show_length(waist.girth.value, drafted.units)
        yield from notes_at(drafted, "band")
        yield Paragraph(say(drafted, "band_1", rows=waist.rows, girth=girth))
    for strand in _strands(drafted, piece):
        yield from strand_notes(drafted, strand)
        yield Bullets(tuple(_strand(drafted, strand)))


def after_rows(drafted: Drafted, piece: Piece) -> Iterator[Block]:
    """What to do when the rows of a trim are worked: seams, sewing on."""
    waist = waist_of(drafted)
    if isinstance(waist, BandPlan) and _is_seamed(drafted, piece):
        yield from _band(drafted, waist)
    else:
        yield from (_seam(drafted, seam) for seam in _seams_after(drafted, piece))
    for strand in _strands(drafted, piece):
        yield Paragraph(_sew_on(drafted, strand))


def begins_on_chain(drafted: Drafted) -> bool:
    """Whether the skirt begins on a bare chain; it has no foot that could gape.

    Of several tubes the one that hangs from the waist.
    """
    found = tubes(drafted.basis.design)
    hung = next((tube for tube in found if tube.waist is not None), found[0])
    return hung.start.made_of == "chain"


def gap(drafted: Drafted) -> tuple[str, ...]:
    """What closes the foot of the foundation's join, if it has one."""
    return () if begins_on_chain(drafted) else (say(drafted, "gap"),)


def gap_is_told_early(drafted: Drafted) -> bool:
    """Whether the gap is closed before something is worked onto the waist edge."""
    return isinstance(waist_of(drafted), ElasticPlan | BandPlan)


def _is_seamed(drafted: Drafted, piece: Piece) -> bool:
    return bool(_seams_after(drafted, piece))


def _seams_after(drafted: Drafted, piece: Piece) -> tuple[Seam, ...]:
    """Seams that can be worked once this piece is there, and not before."""
    order = [p.name for p in drafted.plan.program.pieces]
    return tuple(
        seam
        for seam in drafted.plan.program.seams
        if piece.name == max((seam.first[0].piece, seam.second[0].piece), key=order.index)
    )


def _seam(drafted: Drafted, seam: Seam) -> Instruction:
    line = write_seam(seam, drafted.stitches, drafted.dialect, drafted.language)
    return Instruction(line.label, line.text, line.count)


def _strands(drafted: Drafted, piece: Piece) -> tuple[StrandPlan, ...]:
    return tuple(strand for strand in strands_of(drafted) if strand.name == piece.name)


def _join(drafted: Drafted) -> str:
    return say(drafted, f"join_{drafted.join_at}")


def _from_join(drafted: Drafted) -> str:
    """From centre back both ways lead to the front; from a side only one is a quarter."""
    at_side = drafted.basis.design.work.join_at != "centre back"
    return say(drafted, "from_join_side" if at_side else "from_join")


def _elastic(drafted: Drafted, plan: ElasticPlan) -> Iterator[str]:
    units = drafted.units
    yield from gap(drafted)
    yield say(
        drafted, "elastic_1", cut=show_length(plan.cut, units), lap=show_length(plan.lap, units),
        ring=show_length(plan.finished, units),
    )  # fmt: skip
    yield say(drafted, "elastic_2", quarter=quarter(plan.base_count))
    yield say(
        drafted, "elastic_3" if plan.stitches_in_each > 1 else "elastic_3_one",
        n=plan.stitches_in_each, stitch=drafted.short("single_crochet"), total=plan.cover_count,
        join=_join(drafted),
    )  # fmt: skip


def quarter(count: int) -> str:
    """A quarter of a count: "38", or "27–28" when it does not divide.

    >>> quarter(152), quarter(110)
    ('38', '27–28')
    """
    return str(count // 4) if count % 4 == 0 else f"{count // 4}\u2013{count // 4 + 1}"


def eyelets(drafted: Drafted, plan: CordPlan) -> Iterator[Block]:
    """Which round has the eyelets, told before its section."""
    yield from notes_at(drafted, "cord")
    yield Paragraph(say(drafted, "eyelets", round=plan.eyelet_round, eyelets=len(plan.gaps)))


def cord(drafted: Drafted) -> Iterator[Block]:
    """The cord under a heading of its own: made, threaded, knotted."""
    plan = waist_of(drafted)
    if not isinstance(plan, CordPlan):
        return
    yield Heading(say(drafted, "cord"))
    for_child = any(caution.key == "child_cord" for caution in drafted.fit.cautions)
    away = len(plan.gaps) // (2 if drafted.basis.design.work.join_at == "centre back" else 4)
    yield Bullets(
        (
            say(
                drafted, "cord_1", cord=show_length(plan.cord, drafted.units),
                hook=hook_size(drafted, drafted.basis.hook),
            ),
            say(
                drafted, "cord_2", first=drafted.phrases.nth(away),
                second=drafted.phrases.nth(away + 1), from_join=_from_join(drafted),
            ),
            say(drafted, "cord_3_child" if for_child else "cord_3"),
        )
    )  # fmt: skip


def _band(drafted: Drafted, plan: BandPlan) -> Iterator[Block]:
    """The band closed to a ring, then worked onto the waist."""
    ends, waist = drafted.plan.program.seams
    yield Heading(say(drafted, "putting_on"), 2)
    yield Bullets((*gap(drafted), say(drafted, "band_2")))
    yield _seam(drafted, ends)
    yield Paragraph(
        say(
            drafted, "band_3", join=_join(drafted), quarter=quarter(plan.waist_count),
            rows=quarter(plan.rows),
        )
    )  # fmt: skip
    yield _seam(drafted, waist)
    if len(set(waist.spread)) > 1:
        yield Paragraph(_by_quarters(drafted, waist.spread))


def _by_quarters(drafted: Drafted, spread: tuple[int, ...]) -> str:
    """How the seam goes quarter by quarter: place by place when all four are alike, else its sums."""
    ends = [len(spread) * n // 4 for n in range(5)]
    parts = [spread[a:b] for a, b in pairwise(ends)]
    if len(set(parts)) == 1:
        words = Words(drafted.stitches, drafted.dialect, drafted.phrases)
        told, rows = say_spread(parts[0], words), len(parts[0])
        return say(drafted, "band_quarter", rows=rows, total=sum(parts[0]), told=told)
    quarters = "; ".join(
        say(drafted, "band_nth_quarter", n=n, rows=len(part), total=sum(part))
        for n, part in enumerate(parts, start=1)
    )
    return say(drafted, "band_quarters", told=quarters)


def _strand(drafted: Drafted, plan: StrandPlan) -> Iterator[str]:
    units = drafted.units
    key = "strand_1" if plan.yarn_plies else "strand_1_unknown"
    yield say(
        drafted, key, cut=show_length(plan.cut_yarn, units), plies=plan.plies, of=plan.yarn_plies
    )
    yield say(
        drafted, "strand_2", beads=plan.beads, spare=plan.spare_beads, plies=plan.plies,
        hook=hook_size(drafted, plan.hook),
    )  # fmt: skip
    yield say(drafted, "strand_3", tail=show_length(plan.tails, units), chains=plan.chains)


def _sew_on(drafted: Drafted, plan: StrandPlan) -> str:
    waist = drafted.plan.program.pieces[0].rows[0].count
    away = 2 if drafted.basis.design.work.join_at == "centre back" else 4
    return say(
        drafted, "strand_4", length=show_length(plan.length.value, drafted.units),
        sag=show_length(plan.actual_sag, drafted.units), here=_point(drafted, plan.from_stitch),
        there=_point(drafted, plan.to_stitch), front=round(waist / away),
        from_join=_from_join(drafted),
    )  # fmt: skip


def _point(drafted: Drafted, stitch: int) -> str:
    if stitch == 0:
        return say(drafted, "strand_at_front")
    return say(drafted, "strand_at_left" if stitch > 0 else "strand_at_right", n=abs(stitch))
