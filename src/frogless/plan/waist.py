"""The waist: covered elastic, drawcord or ribbed band, with what to cut and the pieces that carry it out."""

from __future__ import annotations

from dataclasses import dataclass

from frogless.because import Because, Step
from frogless.design.document import CoveredElastic, Drawcord, RibbedBand
from frogless.errors import InputError
from frogless.plan import elastic
from frogless.plan.basis import Basis
from frogless.plan.model import BandPlan, CordPlan, ElasticPlan, Remark
from frogless.plan.shaping import even_gaps
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

ELASTIC_PERCENT = 90.0
MAIN_PIECE = "skirt"


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

    Source: cut 2.5–5 cm under the waist or at 80–95 % of it, lap 1.3–2.5 cm: common practice.
    """
    waist = basis.girth_wanted("waist_girth", "waist")
    finished, steps = _elastic_length(basis, choice, waist)
    lap = basis.length(choice.lap, "waist.lap")
    if finished <= 0 or lap < 0:
        raise InputError(
            f"the elastic would be {basis.show(finished)} with a lap of {basis.show(lap)}; "
            "both have to be above zero",
            basis.place("waist"),
        )
    stretch = widest(basis) / finished
    because = Because(
        (Step("waist_girth", waist), *steps, Step("lap", lap), Step("cut", finished + lap))
    )
    plan = ElasticPlan(
        choice.width, choice.elastic, finished, lap, finished + lap, waist_count,
        choice.stitches_in_each, waist_count * choice.stitches_in_each, stretch,
        elastic.stretch(choice.elastic).comfortable, because,
    )  # fmt: skip
    hook = choice.hook or basis.hook
    return Trim(plan, (_cover(plan, hook),), remarks=_elastic_remarks(basis, plan))


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


def _cover(plan: ElasticPlan, hook: float) -> Piece:
    each = Work("single_crochet", plan.stitches_in_each)
    group: Node = Into((each,)) if plan.stitches_in_each > 1 else each
    body: tuple[Node, ...] = (
        (Repeat((group,), plan.base_count),)
        if plan.stitches_in_each > 1
        else (Work("single_crochet", plan.base_count),)
    )
    row = Row(
        1, "RS", "elastic cover", body, plan.cover_count, Start(1), End("first_stitch", fasten_off=True),
        hook=hook,
    )  # fmt: skip
    return Piece("elastic cover", True, (row,), Base(MAIN_PIECE, "foundation"))


def _elastic_remarks(basis: Basis, plan: ElasticPlan) -> tuple[Remark, ...]:
    """Whether the elastic's cover can bunch as close as the ring asks; that it passes the hips, `fit` looks at."""
    remarks = []
    gauge = basis.trim_gauge("single_crochet")
    bunched = plan.cover_count * gauge.width.value / plan.finished
    if bunched > CLOSEST_BUNCHING:
        remarks.append(
            Remark(
                "elastic_cover",
                f"{plan.cover_count} single crochets on a ring of {basis.show(plan.finished)} are "
                f"{bunched:.1f} times as close as in the swatch: they may not bunch so far; work "
                "fewer in each stitch, or try 5 cm of it first",
            )
        )
    return tuple(remarks)


# Single crochets stand side by side on two strands each; at twice to two and a half times the swatch's
# density the strands touch (own estimate from yarn diameters of half to two thirds of a strand's room).
CLOSEST_BUNCHING = 2.5


def drawcord(basis: Basis, choice: Drawcord, count: int, round_: int) -> Trim:
    """Eyelets, an even number of them, and a cord long enough to open over the hips.

    Source: cord = larger of waist + two tie ends and hips + two spare ends; even eyelets, so that both
    ends come out on one side: common practice.
    """
    eyelets = max(round(count / choice.eyelets_about_every), 2)
    eyelets += eyelets % 2
    if eyelets * 2 > count:
        raise InputError(
            f"{eyelets} eyelets do not fit into {count} stitches; give eyelets_about_every more stitches",
            basis.place("waist.eyelets_about_every"),
        )
    waist = basis.girth_wanted("waist_girth", "waist")
    tie = basis.length(choice.tie_ends, "waist.tie_ends")
    spare = basis.length(choice.spare_over_hips, "waist.spare_over_hips")
    tied, opened = waist + 2 * tie, widest(basis) + 2 * spare
    because = Because(
        (
            Step("waist_girth", waist), Step("tie_ends", 2 * tie), Step("widest", widest(basis)),
            Step("spare_ends", 2 * spare), Step("cut", max(tied, opened)),
        )
    )  # fmt: skip
    return Trim(CordPlan(round_, even_gaps(count, eyelets), max(tied, opened), because))


def eyelet_body(stitch: str, gaps: tuple[int, ...], *, chain_counts: bool) -> tuple[Node, ...]:
    """An eyelet round: in each gap the eyelet (chain 1, skip 1) stands in the middle, half a gap from the join."""
    nodes: list[Node] = []
    carried = -1 if chain_counts else 0
    for gap in gaps:
        before = (gap - 1) // 2
        if carried + before > 0:
            nodes.append(Work(stitch, carried + before))
        nodes.extend((Chain(1), Skip(1)))
        carried = gap - 1 - before
    if carried > 0:
        nodes.append(Work(stitch, carried))
    return tuple(nodes)


def ribbed_band(basis: Basis, choice: RibbedBand, waist_count: int) -> Trim:
    """A band worked sideways in back-loop single crochet: rows round the waist, an even number.

    Source: rib rows = waist × 90 % × rows per cm, even; stitches picked up spread evenly: common practice.
    """
    waist = basis.girth_wanted("waist_girth", "waist")
    height = basis.girth_wanted(choice.height, "waist.height")
    gauge = basis.trim_gauge(RIB)
    row = gauge.height
    remarks = []
    if choice.rows_in_10cm is not None and gauge.estimated:
        # The designer's rib stands to her main stitch as the maker's will to hers.
        row = row.times(100 / choice.rows_in_10cm * basis.scale / row.value)
    if gauge.estimated:
        remarks.append(
            Remark(
                "rib_gauge",
                "the rib was not swatched: its gauge is estimated; work the band first, and stop at the "
                "length given, not at the row",
                serious=False,
            )
        )
    wanted = waist * choice.percent / 100
    rows = max(2 * round(wanted / row.value / 2), 2)
    stitches = max(round(height / gauge.width.value), 2)
    because = Because(
        (
            Step("waist_girth", waist), Step("percent", choice.percent, ""), Step("wanted", wanted),
            Step("row_gauge", 100 / row.value, "rows per 10 cm"),
            Step("exact", wanted / row.value, "rows"), Step("landed", rows, "rows", "even number"),
            Step("girth", rows * row.value),
        )
    )  # fmt: skip
    spread = even_gaps(waist_count, rows)
    plan = BandPlan(
        stitches * gauge.width.value, stitches, rows, row.times(rows), waist_count, spread,
        widest(basis) / (rows * row.value), because,
    )  # fmt: skip
    hook = choice.hook or basis.hook
    return Trim(plan, (_band(plan, hook),), _band_seams(plan), tuple(remarks))


RIB = "single_crochet_back_loop"


def _band(plan: BandPlan, hook: float) -> Piece:
    n = plan.row_stitches
    rows = [Row(0, "WS", "waistband", (Chain(n, each=True),), n, hook=hook, end=End(turn=True))]
    for r in range(1, plan.rows + 1):
        stitch = "single_crochet" if r == 1 else RIB
        last = r == plan.rows
        side = "RS" if r % 2 else "WS"
        end = End(turn=not last, fasten_off=last)
        rows.append(Row(r, side, "waistband", (Work(stitch, n),), n, Start(1), end, hook=hook))
    return Piece("waistband", False, tuple(rows))


def _band_seams(plan: BandPlan) -> tuple[Seam, ...]:
    n = plan.row_stitches
    ends = Seam(
        "band ends", "slip_stitch", Base("waistband", "last_row"), Base("waistband", "foundation"),
        n, n, (1,) * n,
    )  # fmt: skip
    waist = Seam(
        "band to waist", "single_crochet", Base(MAIN_PIECE, "foundation"), Base("waistband", "row_ends"),
        plan.waist_count, plan.rows, plan.spread,
    )  # fmt: skip
    return ends, waist
