"""Skirts worked from the waist down in the round."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.design.document import CoveredElastic, Drawcord, RibbedBand
from frogless.errors import InputError
from frogless.plan import edging as edging_
from frogless.plan import layout as layout_
from frogless.plan import shaping, strand, waist
from frogless.plan.basis import Basis
from frogless.plan.landing import because_landed, multiple_note
from frogless.plan.layout import Layout, Multiple, lay_out
from frogless.plan.model import Landmark, Plan, Remark, SectionPlan
from frogless.plan.sections import (
    LANDMARKS,
    Span,
    Target,
    foundation_height,
    girth_of,
    least_ease,
    spans,
    start_target,
)
from frogless.rows import walk
from frogless.rows.nodes import Chain, End, Node, Piece, Program, Row, Side, Start, Work
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge

FOUNDATION = "foundation"


@dataclass(frozen=True, slots=True)
class Skirt:
    """A skirt under way: what has been decided so far."""

    basis: Basis
    first: Target
    spans: tuple[Span, ...]
    layout: Layout
    multiple: Multiple

    @property
    def waist_count(self) -> int:
        """Stitches of the first round."""
        return self.layout.counts[0]

    @property
    def rounds(self) -> int:
        """Rounds before the edging."""
        return sum(s.rounds for s in self.spans)

    def wanted_before(self, i: int) -> float:
        """Wanted girth where section i begins, mm."""
        above = [s.target.wanted for s in self.spans[:i] if s.target]
        return above[-1] if above else self.first.wanted


def plan_skirt(basis: Basis) -> Plan:
    """The whole plan of a skirt.

    Raises:
        InputError: the design, body or swatch has to be mended.
        Impossible: a requirement cannot be met; says by how much and what would help.
    """
    skirt = _decide(basis)
    sections = _section_plans(skirt)
    counts = round_counts(skirt)
    depths = _depths(skirt)
    trim = _waist(skirt, sections)
    rows = _rows(skirt, sections, counts, trim)
    hem = None
    if basis.design.edging is not None:
        hem = edging_.plan_edging(
            basis, basis.design.edging, skirt.spans[-1].gauge, counts[-1], skirt.rounds + 1
        )
        rows = (*rows, *hem.rows)
        depths = (*depths, *_edging_depths(basis, depths[-1], hem.rows))
    strands = [
        strand.plan_strand(basis, s, f"strand.{i}", skirt.waist_count)
        for i, s in enumerate(basis.design.strand, 1)
    ]
    pieces = (
        Piece(waist.MAIN_PIECE, True, rows),
        *(trim.pieces if trim else ()),
        *(strand.strand_piece(s) for s in strands),
    )
    remarks = (
        *_remarks(skirt),
        *(hem.remarks if hem else ()),
        *(trim.remarks if trim else ()),
        *(r for s in strands for r in strand.strand_remarks(s)),
    )
    return Plan(
        _landmarks(skirt, counts, depths), sections, hem.plan if hem else None,
        trim.plan if trim else None, tuple(strands), depths, _gauges(skirt, pieces), remarks,
        Program(pieces, trim.seams if trim else ()),
    )  # fmt: skip


def _decide(basis: Basis) -> Skirt:
    """Counts and rhythms; the edging's multiple is met at the hem, or its first round takes up the rest."""
    first, measured = start_target(basis), spans(basis, foundation_height(basis))
    wish = edging_.multiple(basis, basis.design.edging)
    choice = basis.design.edging
    strict = choice is None or choice.correction_round == "never"
    found = lay_out(basis, first, measured, wish, strict=strict)
    if found is None:
        wish = Multiple()
        found = lay_out(basis, first, measured, wish, strict=True)
    if found is None:
        raise AssertionError("a strict layout is found or refused")
    return Skirt(basis, first, measured, found, wish)


def _section_plans(skirt: Skirt) -> tuple[SectionPlan, ...]:
    plans, first = [], 1
    for i, span in enumerate(skirt.spans):
        before, after = skirt.layout.counts[i : i + 2]
        shaped, wanted = skirt.layout.shaped[i], skirt.wanted_before(i)
        chosen = layout_.chosen_option(span, wanted, before, after, shaped) if shaped else None
        others = layout_.smoother(span, wanted, before, after, shaped) if shaped else ()
        rise = (after - before) / span.rounds
        plans.append(
            SectionPlan(
                span.section.name, span.gauge.stitch, skirt.basis.hook, span.gauge, first,
                first + span.rounds - 1, before, after, chosen, others,
                rise * span.width / (2 * math.pi * span.height),
                _because_section(skirt, i), span.outline(wanted),
            )
        )  # fmt: skip
        first += span.rounds
    return tuple(plans)


def _because_section(skirt: Skirt, i: int) -> Because:
    span = skirt.spans[i]
    shaped = skirt.layout.shaped[i]
    if shaped is None:
        return span.because
    change = skirt.layout.counts[i + 1] - skirt.layout.counts[i]
    return span.because.then(
        Step("change", change, "stitches"),
        Step("points", shaped.points, ""),
        Step("shapings", len(shaped.chosen.rhythm.rounds), "rows"),
        Step("indifference", shaped.indifference),
        Step("stray", shaped.chosen.stray),
    )


def round_counts(skirt: Skirt) -> tuple[int, ...]:
    """Stitches after each round, the foundation first."""
    counts = [skirt.waist_count]
    for i, span in enumerate(skirt.spans):
        change = skirt.layout.counts[i + 1] - skirt.layout.counts[i]
        shaped = skirt.layout.shaped[i]
        at = set(shaped.chosen.rhythm.rounds) if shaped else set()
        step = change // len(at) if at else 0
        for r in range(1, span.rounds + 1):
            counts.append(counts[-1] + (step if r in at else 0))
    return tuple(counts)


def _depths(skirt: Skirt) -> tuple[float, ...]:
    depths = [foundation_height(skirt.basis)]
    for span in skirt.spans:
        depths.extend(float(d) for d in span.depths()[1:])
    return tuple(depths)


def _edging_depths(basis: Basis, depth: float, rows: Sequence[Row]) -> tuple[float, ...]:
    """Depths below the hem: each edging round is as high as its tallest stitch."""
    depths = []
    for row in rows:
        depth += max(
            (basis.trim_gauge(k).height.value for k in _stitches_of(basis, row)), default=0.0
        )
        depths.append(depth)
    return tuple(depths)


def _stitches_of(basis: Basis, row: Row) -> list[str]:
    return [k for k in sorted(walk.stitch_keys(row.body)) if basis.stitches[k].kind == "stitch"]


def _landmarks(
    skirt: Skirt, counts: Sequence[int], depths: Sequence[float]
) -> tuple[Landmark, ...]:
    found = [_waist_landmark(skirt, counts)]
    above = skirt.basis.length(skirt.basis.design.start.above_waist, "start.above_waist")
    hem = depths[skirt.rounds]
    for girth_key, depth_key in LANDMARKS.values():
        girth, down = skirt.basis.body.get(girth_key), skirt.basis.body.get(depth_key)
        if girth is None or down is None:
            continue
        depth = above + down.value.value
        if depth <= hem + 1e-6:
            found.append(_body_landmark(skirt, girth_key, depth, counts, depths))
    found.append(_hem_landmark(skirt, counts, depths))
    return tuple(found)


def _waist_landmark(skirt: Skirt, counts: Sequence[int]) -> Landmark:
    basis, first = skirt.basis, skirt.first
    above = basis.length(basis.design.start.above_waist, "start.above_waist")
    body = basis.body.get("waist_girth")
    gauge = skirt.spans[0].gauge
    note = _step_note(skirt, 0)
    because = first.because.then(*because_landed(first.wanted, gauge.width.value, counts[0], note))
    return Landmark(
        "waist_girth", above, body.value if body else None, bool(body and body.estimated),
        first.wanted, first.low, first.high, 0, counts[0], girth_of(counts[0], gauge), because,
    )  # fmt: skip


def _step_note(skirt: Skirt, stop: int) -> str:
    """What the count at a stop was landed on: the edging's multiple, or steps of the shaping points."""
    last = max((i + 1 for i, s in enumerate(skirt.spans) if s.target), default=0)
    if stop >= last and skirt.multiple.of > 1:
        return multiple_note(skirt.multiple.of, skirt.multiple.offset)
    shaped = [s for s in skirt.layout.shaped if s]
    if not shaped:
        return ""
    step = shaped[0].points * shaped[0].add
    return (
        multiple_note(step)
        if all(c % step == 0 for c in skirt.layout.counts)
        else f"steps of {step}"
    )


def _body_landmark(
    skirt: Skirt, key: str, depth: float, counts: Sequence[int], depths: Sequence[float]
) -> Landmark:
    """A body girth at its depth: the round whose lower edge lies nearest to it."""
    basis = skirt.basis
    r = min(range(skirt.rounds + 1), key=lambda i: (round(abs(depths[i] - depth), 4), i))
    i = _section_of(skirt, r)
    span = skirt.spans[i]
    girth = basis.body.measurements[key]
    aim = span.target
    ends_here = aim is not None and aim_key(span) == key
    wanted = float(skirt.spans[i].profile(skirt.wanted_before(i))[_within(skirt, i, r)])
    if ends_here and aim is not None:
        low, high, wanted = aim.low, aim.high, aim.wanted
    else:
        low = girth.value.value + (least_ease(aim) if aim else 0.0)
        high = float("inf")
    steps = [Step(key, girth.value.value, "mm", girth.source, girth.estimated)]
    steps.append(Step("ease", wanted - girth.value.value))
    note = _step_note(skirt, i + 1)
    because = Because(
        (*steps, *because_landed(wanted, span.width, counts[r], note), Step("depth", depth))
    )
    return Landmark(
        key, depth, girth.value, girth.estimated, wanted, low, high, r, counts[r],
        girth_of(counts[r], span.gauge), because,
    )  # fmt: skip


def aim_key(span: Span) -> str | None:
    """The body girth a section ends at, when it is shaped to one and has no girth of its own."""
    if span.section.to in LANDMARKS:
        return LANDMARKS[str(span.section.to)][0]
    return None


def _hem_landmark(skirt: Skirt, counts: Sequence[int], depths: Sequence[float]) -> Landmark:
    i = len(skirt.spans) - 1
    span, count = skirt.spans[i], counts[skirt.rounds]
    aim = span.target
    wanted = aim.wanted if aim else skirt.wanted_before(i)
    low, high = (aim.low, aim.high) if aim else (float("-inf"), float("inf"))
    because = (aim.because if aim else Because()).then(
        *because_landed(wanted, span.width, count, _step_note(skirt, i + 1))
    )
    return Landmark(
        "hem", depths[skirt.rounds], None, False, wanted, low, high, skirt.rounds, count,
        girth_of(count, span.gauge), because,
    )  # fmt: skip


def _section_of(skirt: Skirt, round_: int) -> int:
    """Index of the section that round belongs to (the foundation to the first)."""
    passed = 0
    for i, span in enumerate(skirt.spans):
        passed += span.rounds
        if round_ <= passed:
            return i
    return len(skirt.spans) - 1


def _within(skirt: Skirt, i: int, round_: int) -> int:
    return round_ - sum(s.rounds for s in skirt.spans[:i])


def _waist(skirt: Skirt, sections: Sequence[SectionPlan]) -> waist.Trim | None:
    choice = skirt.basis.design.waist
    match choice:
        case CoveredElastic():
            return waist.covered_elastic(skirt.basis, choice, skirt.waist_count)
        case RibbedBand():
            return waist.ribbed_band(skirt.basis, choice, skirt.waist_count)
        case Drawcord():
            return _cord(skirt, choice, sections)
        case None:
            return None


def _cord(skirt: Skirt, choice: Drawcord, sections: Sequence[SectionPlan]) -> waist.Trim:
    """The eyelets go into the first round from the one asked for that is not shaped."""
    busy = shaping_rounds(sections)
    plain = [r for r in range(choice.eyelet_round, skirt.rounds + 1) if r not in set(busy)]
    if not plain:
        raise InputError(
            f"there is no plain round at or below round {choice.eyelet_round} for the eyelets",
            skirt.basis.place("waist.eyelet_round"),
        )
    trim = waist.drawcord(skirt.basis, choice, round_counts(skirt)[plain[0]], plain[0])
    if plain[0] == choice.eyelet_round:
        return trim
    moved = Remark(
        "eyelet_round",
        f"round {choice.eyelet_round} is a shaping round, so the eyelets stand in round {plain[0]}",
        serious=False,
    )
    return replace(trim, remarks=(*trim.remarks, moved))


def shaping_rounds(sections: Sequence[SectionPlan]) -> dict[int, SectionPlan]:
    """The section that shapes it, for every shaping round of the piece, in order."""
    return {
        section.first_round - 1 + r: section
        for section in sections
        if section.chosen is not None
        for r in section.chosen.rhythm.rounds
    }


def _rows(
    skirt: Skirt,
    sections: Sequence[SectionPlan],
    counts: Sequence[int],
    trim: waist.Trim | None,
) -> tuple[Row, ...]:
    design = skirt.basis.design
    rounds = _shaping_rounds(skirt, sections, counts)
    order = sorted(rounds)
    following = {a: rounds[b] for a, b in zip(order, order[1:], strict=False)}
    gaps = trim.plan.gaps if trim and isinstance(trim.plan, waist.CordPlan) else ()
    eyelets = trim.plan.eyelet_round if trim and isinstance(trim.plan, waist.CordPlan) else 0
    rows = [_foundation(skirt)]
    for r in range(1, skirt.rounds + 1):
        section = sections[_section_of(skirt, r)]
        stitch = section.stitch
        marks: tuple[int, ...] = ()
        body: tuple[Node, ...]
        if r in rounds:
            body = shaping.body(stitch, rounds[r])
            marks = shaping.marks(rounds[r], following.get(r))
        elif r == eyelets:
            body = waist.eyelet_body(stitch, gaps, chain_counts=_chain_counts(skirt))
        else:
            body = (Work(stitch, counts[r] - int(_chain_counts(skirt))),)
        last = r == skirt.rounds
        rows.append(
            Row(
                r, side_of(skirt, r), section.name, body, counts[r], _start(skirt), _end(skirt, r, last=last),
                marks, hook=section.hook,
            )
        )  # fmt: skip
    if design.edging is None:
        rows[-1] = replace(rows[-1], end=replace(rows[-1].end, turn=False, fasten_off=True))
    return tuple(rows)


def _shaping_rounds(
    skirt: Skirt, sections: Sequence[SectionPlan], counts: Sequence[int]
) -> dict[int, shaping.Round]:
    rounds = {}
    for r, section in shaping_rounds(sections).items():
        if section.chosen is None:
            continue
        points = section.chosen.points
        rounds[r] = shaping.Round(
            counts[r - 1], points, (counts[r] - counts[r - 1]) // points, side_of(skirt, r),
            _chain_counts(skirt),
        )  # fmt: skip
    return rounds


def _turned(skirt: Skirt) -> bool:
    return skirt.basis.design.work.rounds == "joined and turned"


def _spiral(skirt: Skirt) -> bool:
    return skirt.basis.design.work.rounds == "spiral"


def _chain_counts(skirt: Skirt) -> bool:
    work = skirt.basis.design.work
    return work.turning_chain_counts and work.turning_chain > 0 and not _spiral(skirt)


def side_of(skirt: Skirt, round_: int) -> Side:
    """RS, or in turned rounds RS for the odd ones."""
    return "WS" if _turned(skirt) and round_ % 2 == 0 else "RS"


def _start(skirt: Skirt) -> Start:
    if _spiral(skirt):
        return Start()
    return Start(skirt.basis.design.work.turning_chain, _chain_counts(skirt))


def _end(skirt: Skirt, round_: int, *, last: bool) -> End:
    """Joined as the design says. Before the edging the work is turned only if that brings the right side up."""
    if _spiral(skirt):
        return End("first_stitch") if last else End()
    work = skirt.basis.design.work
    into = (
        "chain_top" if work.join_into == "top of chain" and work.turning_chain else "first_stitch"
    )
    if _chain_counts(skirt):
        into = "chain_top"
    turn = _turned(skirt) and not (last and side_of(skirt, round_) == "RS")
    return End("chain_top" if into == "chain_top" else "first_stitch", turn=turn)


def _foundation(skirt: Skirt) -> Row:
    made_of: Stitch = skirt.basis.stitches[skirt.basis.design.start.made_of]
    n = skirt.waist_count
    body: tuple[Node, ...] = (
        (Work(made_of.key, n),) if made_of.kind == FOUNDATION else (Chain(n, each=True),)
    )
    return Row(
        0,
        "RS",
        skirt.spans[0].section.name,
        body,
        n,
        end=End("first_stitch"),
        hook=skirt.basis.hook,
    )


def _gauges(skirt: Skirt, pieces: Sequence[Piece]) -> dict[str, Gauge]:
    """The gauge of every section named in a row; trims and edgings by the stitch they are mostly made of."""
    gauges = {s.section.name: s.gauge for s in skirt.spans}
    for piece in pieces:
        for row in piece.rows:
            keys = _stitches_of(skirt.basis, row)
            if row.section not in gauges and keys:
                gauges[row.section] = skirt.basis.trim_gauge(keys[0])
    return gauges


def _remarks(skirt: Skirt) -> tuple[Remark, ...]:
    basis = skirt.basis
    remarks = []
    if basis.growth is None:
        remarks.append(
            Remark(
                "hang_test",
                "the swatch was not hung, so lengths are planned without growth; hang it overnight and add "
                'a reading with state = "hung"',
                serious=False,
            )
        )
    if any(basis.body.get(key) is None for key in LANDMARKS["high hip"]):
        remarks.append(
            Remark(
                "high_hip",
                "the high hip was not measured, so the girth between waist and hip is not checked there; "
                "measure it about half way down, and how far below the waist it lies, and add "
                "high_hip_girth and waist_to_high_hip to the body file",
            )
        )
    for span in skirt.spans:
        if span.section.points == 2 and basis.design.work.join_at != "centre back" and span.target:
            remarks.append(
                Remark(
                    "side_join_points",
                    f'section "{span.section.name}": with the join at a side its two shaping points lie at '
                    "centre front and back; join at centre back to have them at the sides",
                )
            )
    return tuple(remarks)
