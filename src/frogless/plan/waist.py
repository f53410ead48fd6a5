"""The waist: covered elastic, drawcord or ribbed band: what to cut, and the pieces to make."""

from __future__ import annotations

from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.body.children import CORD_END, is_for_child
from frogless.design.trims import CoveredElastic, Drawcord, RibbedBand
from frogless.errors import Impossible, InputError
from frogless.plan import elastic
from frogless.plan.basis import Basis
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Remark
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Node,
    Piece,
    Repeat,
    Row,
    Seam,
    Skip,
    Start,
    Work,
)
from frogless.rows.spread import even_spread
from frogless.swatch import Gauge
from frogless.units import Measured

ELASTIC_PERCENT = 90.0
COVER = "elastic cover"
BAND = "waistband"
PLAIN = "single_crochet"
RIB = "single_crochet_back_loop"

# Single crochets stand side by side on two strands each; at twice to two and a half times the
# swatch's density the strands touch (own estimate from yarn diameters of half to two thirds of a
# strand's room).
CLOSEST_BUNCHING = 2.5


@dataclass(frozen=True, slots=True)
class Trim:
    """A trim's plan with the pieces and seams it adds and what should be known about it."""

    plan: ElasticPlan | CordPlan | BandPlan
    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    remarks: tuple[Remark, ...] = ()


def widest(basis: Basis) -> float:
    """The widest girth a skirt's waist passes when stepped into, mm."""
    girths = [basis.body.get(k) for k in ("hip_girth", "high_hip_girth", "waist_girth")]
    return max((g.value.value for g in girths if g is not None), default=0.0)


def covered_elastic(basis: Basis, choice: CoveredElastic, waist_count: int) -> Trim:
    """Elastic shorter than the waist, lapped and sewn into a ring, covered with single crochet.

    Raises:
        InputError: it would have no length, or is given in two ways.

    Source: cut 2.5–5 cm under the waist or at 80–95 % of it, lap 1.3–2.5 cm: common practice.
    """
    waist = basis.girth_wanted("waist_girth", "waist")
    finished, steps = _elastic_length(basis, choice, waist)
    lap = basis.length(choice.lap, "waist.lap")
    if finished <= 0:
        raise InputError(
            f"the elastic would be a ring of {basis.show(finished)}; reduce it by less",
            basis.place("waist.reduce"),
        )
    close = waist_count * choice.stitches_in_each * basis.trim_gauge(PLAIN).width.value / finished
    note = f"its cover {close:.1f} times as close as in the swatch"
    plan = ElasticPlan(
        width=choice.width,
        kind=choice.elastic,
        finished=finished,
        lap=lap,
        cut=finished + lap,
        base_count=waist_count,
        stitches_in_each=choice.stitches_in_each,
        cover_count=waist_count * choice.stitches_in_each,
        needed_stretch=widest(basis) / finished,
        comfortable_stretch=elastic.stretch(choice.elastic).comfortable,
        because=Because(
            (
                Step("waist_girth", waist),
                *steps[:-1],
                replace(steps[-1], note=note),
                Step("lap", lap),
                Step("cut", finished + lap),
            )
        ),
    )
    cover = _cover(plan, choice.hook or basis.hook, basis.tube.name)
    return Trim(plan, (cover,), remarks=_elastic_remarks(basis, plan))


def _elastic_length(
    basis: Basis, choice: CoveredElastic, waist: float
) -> tuple[float, tuple[Step, ...]]:
    if choice.reduce is not None and choice.percent is not None:
        raise InputError('write either "reduce" or "percent", not both', basis.place("waist"))
    if choice.reduce is not None:
        less = basis.length(choice.reduce, "waist.reduce")
        return waist - less, (Step("allowance", less), Step("ring", waist - less))
    percent = choice.percent or ELASTIC_PERCENT
    ring = waist * percent / 100
    return ring, (Step("percent", percent, ""), Step("ring", ring))


def _cover(plan: ElasticPlan, hook: float, skirt: str) -> Piece:
    body: Node = Work(PLAIN, plan.base_count)
    if plan.stitches_in_each > 1:
        body = Repeat((Into((Work(PLAIN, plan.stitches_in_each),)),), plan.base_count)
    row = Row(
        number=1,
        side="RS",
        section=COVER,
        body=(body,),
        count=plan.cover_count,
        start=Start(1),
        end=End("first_stitch", fasten_off=True),
        hook=hook,
    )
    return Piece(COVER, True, (row,), (Base(skirt, "foundation"),))


def _elastic_remarks(basis: Basis, plan: ElasticPlan) -> tuple[Remark, ...]:
    """Whether the cover can bunch as close as the ring asks. Passing the hips is the fit's."""
    gauge = basis.trim_gauge(PLAIN)
    bunched = plan.cover_count * gauge.width.value / plan.finished
    if bunched <= CLOSEST_BUNCHING:
        return ()
    rest, pulled = (
        f"{plan.cover_count / girth * 100:.0f}" for girth in (plan.finished, widest(basis))
    )
    return (
        Remark(
            "elastic_cover",
            f"{plan.cover_count} single crochets on a ring of {basis.show(plan.finished)} are "
            f"{rest} in 10 cm, {bunched:.1f} times as close as the swatch's "
            f"{100 / gauge.width.value:.0f} ({pulled} when it is pulled over "
            f"{basis.show(widest(basis))}): they may not bunch so far; work fewer in each stitch, "
            "or try 5 cm of it first",
        ),
    )


def drawcord(
    basis: Basis, choice: Drawcord, count: int, round_: int, opening: float
) -> tuple[CordPlan, tuple[Remark, ...]]:
    """Eyelets, an even number of them, and a cord long enough to open over the hips.

    Args:
        count: stitches of the round of eyelets.
        opening: girth of the top edge laid flat, unstretched, mm.

    Raises:
        InputError: the eyelets do not fit in.
        Impossible: no cord both opens over the hips and is short enough for a child.

    Source: cord = larger of waist + two tie ends and hips + two spare ends; even eyelets, so that
    both ends come out on one side: common practice. For a child no longer than opening + two ends
    of 14 cm: EN 14682:2007.
    """
    number = max(round(count / choice.eyelets_about_every), 2)
    number += number % 2
    if number * 2 > count:
        raise InputError(
            f"{number} eyelets do not fit into {count} stitches; give eyelets_about_every more "
            "stitches",
            basis.place("waist.eyelets_about_every"),
        )
    waist = basis.girth_wanted("waist_girth", "waist")
    tie = basis.length(choice.tie_ends, "waist.tie_ends")
    spare = basis.length(choice.spare_over_hips, "waist.spare_over_hips")
    cord = max(waist + 2 * tie, widest(basis) + 2 * spare)
    steps = (
        Step("waist_girth", waist),
        Step("tie_ends", 2 * tie),
        Step("widest", widest(basis)),
        Step("spare_ends", 2 * spare),
        Step("cut", cord),
    )
    gaps = even_spread(count, number)
    # Whole half centimetres, as it is printed, so that rounding makes it no longer.
    most = (opening + 2 * CORD_END) // 5 * 5
    if cord <= most or not is_for_child(basis.body, for_children=basis.design.garment.for_children):
        return CordPlan(round_, gaps, cord, Because(steps)), ()
    if most < widest(basis):
        raise _no_cord_for_child(basis, opening, most)
    short = Because((Step("wanted", cord), Step("cut", most, note=_child_rule(basis))))
    return CordPlan(round_, gaps, most, short), (_shorter_cord(basis, cord, most),)


def _child_rule(basis: Basis) -> str:
    return f"for a child at most {basis.show(CORD_END)} at each end with the garment open flat"


def _shorter_cord(basis: Basis, wanted: float, cord: float) -> Remark:
    return Remark(
        "child_cord",
        f"the cord is {basis.show(cord)} long and not {basis.show(wanted)}: {_child_rule(basis)} "
        "(EN 14682:2007; local rules and the edition in force come first)",
        serious=False,
    )


def _no_cord_for_child(basis: Basis, opening: float, most: float) -> Impossible:
    hips = widest(basis)
    return Impossible(
        f"a cord that opens over {basis.show(hips)} leaves more than {basis.show(CORD_END)} at "
        f"each end of an opening of {basis.show(opening)}, too long on a child's garment "
        "(EN 14682:2007)",
        basis.place("waist.kind"),
        short=hips - most,
        ways_out=(
            'kind = "covered elastic": an elastic has no ends',
            f"an opening of {basis.show(hips - 2 * CORD_END)} or more",
        ),
    )


def eyelets(
    gaps: tuple[int, ...], *, chain_counts: bool = False, marked: frozenset[int] = frozenset()
) -> tuple[int, ...] | None:
    """The places of an eyelet round that become eyelets: the middle of each gap.

    Args:
        chain_counts: place 0 is the turning chain's.
        marked: places that carry a marker, which an eyelet would lose. It moves one place aside,
            if its gap leaves room.

    Returns:
        one place for each gap; None when an eyelet cannot move aside.
    """
    found, start = [], 0
    for gap in gaps:
        middle = start + gap // 2
        nearby = (middle, middle + 1, middle - 1) if gap > 2 else (middle,)
        free = [p for p in nearby if p not in marked and p >= int(chain_counts)]
        if not free:
            return None
        found.append(free[0])
        start += gap
    return tuple(found)


def eyelet_body(
    stitch: str, places: int, holes: tuple[int, ...], *, chain_counts: bool
) -> tuple[Node, ...]:
    """A round over `places` places with an eyelet (chain 1, skip 1) at each of `holes`."""
    nodes: list[Node] = []
    reached = int(chain_counts)
    for hole in holes:
        if hole > reached:
            nodes.append(Work(stitch, hole - reached))
        nodes.extend((Chain(1), Skip(1)))
        reached = hole + 1
    if places > reached:
        nodes.append(Work(stitch, places - reached))
    return tuple(nodes)


def ribbed_band(basis: Basis, choice: RibbedBand, waist_count: int) -> Trim:
    """A band worked sideways in back-loop single crochet: rows round the waist, an even number.

    Source: rib rows = waist × 90 % × rows per cm, even; stitches picked up spread evenly: common
    practice.
    """
    waist = basis.girth_wanted("waist_girth", "waist")
    height = basis.girth_wanted(choice.height, "waist.height")
    gauge = basis.trim_gauge(RIB)
    row = _rib_row(basis, choice, gauge)
    wanted = waist * choice.percent / 100
    rows = max(2 * round(wanted / row.value / 2), 2)
    stitches = max(round(height / gauge.width.value), 2)
    because = Because(
        (
            Step("waist_girth", waist),
            Step("percent", choice.percent, ""),
            Step("wanted", wanted),
            Step("row_gauge", 100 / row.value, "rows per 10 cm"),
            Step("exact", wanted / row.value, "rows"),
            Step("landed", rows, "rows", "even number"),
            Step("girth", rows * row.value),
        )
    )
    plan = BandPlan(
        height=stitches * gauge.width.value,
        row_stitches=stitches,
        rows=rows,
        girth=row.times(rows),
        waist_count=waist_count,
        spread=even_spread(waist_count, rows),
        needed_stretch=widest(basis) / (rows * row.value),
        because=because,
    )
    remarks = (_rib_remark(),) if gauge.estimated else ()
    return Trim(
        plan, (_band(plan, choice.hook or basis.hook),), _band_seams(plan, basis.tube.name), remarks
    )


def _rib_row(basis: Basis, choice: RibbedBand, gauge: Gauge) -> Measured:
    """Height of a row of the rib: swatched, else the designer's scaled, else estimated, mm."""
    row = gauge.height
    if choice.rows_in_10cm is not None and gauge.estimated:
        # The designer's rib stands to her main stitch as the maker's will to hers.
        return row.times(100 / choice.rows_in_10cm * basis.scale / row.value)
    return row


def _rib_remark() -> Remark:
    return Remark(
        "rib_gauge",
        "the rib was not swatched: its gauge is estimated; work the band first, and stop at the "
        "length given, not at the row",
        serious=False,
    )


def _band(plan: BandPlan, hook: float) -> Piece:
    n = plan.row_stitches
    first = Row(0, "WS", BAND, (Chain(n, each=True),), n, end=End(turn=True), hook=hook)
    rows = (_band_row(plan, number, hook) for number in range(1, plan.rows + 1))
    return Piece(BAND, False, (first, *rows))


def _band_row(plan: BandPlan, number: int, hook: float) -> Row:
    last = number == plan.rows
    return Row(
        number=number,
        side="RS" if number % 2 else "WS",
        section=BAND,
        body=(Work(PLAIN if number == 1 else RIB, plan.row_stitches),),
        count=plan.row_stitches,
        start=Start(1),
        end=End(turn=not last, fasten_off=last),
        hook=hook,
    )


def _band_seams(plan: BandPlan, skirt: str) -> tuple[Seam, ...]:
    n = plan.row_stitches
    ends = Seam(
        name="band ends",
        stitch="slip_stitch",
        first=(Base(BAND, "last_row"),),
        second=(Base(BAND, "foundation"),),
        count=n,
        over=n,
        spread=(1,) * n,
    )
    waist = Seam(
        name="band to waist",
        stitch=PLAIN,
        first=(Base(skirt, "foundation"),),
        second=(Base(BAND, "row_ends"),),
        count=plan.waist_count,
        over=plan.rows,
        spread=plan.spread,
    )
    return ends, waist
