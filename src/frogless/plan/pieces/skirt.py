"""Skirts worked from the waist down in the round: the order of work."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.design.trims import CoveredElastic, Drawcord, RibbedBand
from frogless.errors import InputError
from frogless.plan import edging as edging_
from frogless.plan import pattern_colours, refusals, strand, waist
from frogless.plan.basis import Basis
from frogless.plan.hung import hung_remarks
from frogless.plan.landmarks import check_passed, landmarks, less_than_asked, with_landmarks
from frogless.plan.layout import Layout, Multiple, lay_out
from frogless.plan.model import CordPlan, PiecePlan, Remark
from frogless.plan.pattern_remarks import pattern_remarks
from frogless.plan.pieces import seat
from frogless.plan.pieces.made import Made
from frogless.plan.pieces.rounds import eyelets, manner, rows, shaping_rounds
from frogless.plan.pieces.tube_told import (
    edging_depths,
    edging_work,
    girths,
    offered,
    section_plans,
)
from frogless.plan.row_gauges import by_section
from frogless.plan.sections import LANDMARKS, Span, Target, spans, start_target
from frogless.plan.stages import has_patterns, staged
from frogless.plan.tube import Tube, tube
from frogless.rows.nodes import Piece

# Eyelets that have to make room for shaping may move this many rounds down: any lower, and a cord
# no longer draws in the waist (own choice).
EYELETS_MOVE = 3


def made_skirt(basis: Basis) -> Made:
    """A skirt with what it has at its waist and hem, and the strands that hang from it.

    Raises:
        InputError: the design, body or swatch has to be mended.
        Impossible: a requirement cannot be met; says by how much and what would help.
    """
    skirt = _decide(basis)
    trim = _waist(skirt)
    cord = trim.plan if trim and isinstance(trim.plan, CordPlan) else None
    hem = edging_work(skirt)
    strands = [
        strand.plan_strand(basis, choice, f"strand.{i}", skirt.counts[0])
        for i, choice in enumerate(basis.tube.strand, 1)
    ]
    pieces = (
        Piece(
            basis.tube.name,
            True,
            (*rows(skirt, cord), *(hem.rows if hem else ())),
            colour=pattern_colours.begin_colour(skirt.spans),
        ),
        *(trim.pieces if trim else ()),
        *(strand.strand_piece(s) for s in strands),
    )
    depths = skirt.depths()
    passed = landmarks(skirt, depths)
    main = PiecePlan(
        name=basis.tube.name,
        construction="tube",
        counts=tuple(row.count for row in pieces[0].rows),
        girths=_girths(skirt, hem),
        depths=(*depths, *(edging_depths(basis, depths[-1], hem.rows) if hem else ())),
        sections=section_plans(skirt),
        landmarks=passed,
        edging=hem.plan if hem else None,
        waist=trim.plan if trim else None,
        strands=tuple(strands),
    )
    high = seat.raised(skirt, pieces[0].rows)
    if high is not None:
        pieces = (seat.with_rows(pieces[0], high), *pieces[1:])
        main = seat.with_plan(main, pieces[0], high)
    return Made(
        pieces=pieces,
        plans=(main,),
        edges=tuple(offered(skirt, pieces[0], finished=hem is not None, free=trim is None)),
        seams=trim.seams if trim else (),
        remarks=(
            *_remarks(skirt),
            *pattern_remarks(skirt),
            *((seat.told(skirt, high),) if high else ()),
            *hung_remarks(basis, passed),
            *(hem.remarks if hem else ()),
            *(trim.remarks if trim else ()),
            *(r for s in strands for r in strand.strand_remarks(s)),
        ),
        gauges=by_section(
            basis,
            {s.section.name: s.gauge for s in skirt.spans},
            (row for piece in pieces for row in piece.rows),
        ),
    )


def _decide(basis: Basis) -> Tube:
    """Counts and rhythms; the edging's multiple is met at the hem, or its first round adapts."""
    first = start_target(basis)

    def run(
        aim: Target, found: tuple[Span, ...], ends: bool
    ) -> tuple[tuple[Span, ...], Layout, Multiple]:
        return _laid_out(basis, aim, found, ends=ends)

    if not has_patterns(basis):
        return tube(basis, first, *run(first, spans(basis), True))
    if basis.tube.start.seat:
        raise InputError(
            "short rows for the seat are not planned together with stitch patterns; leave the seat "
            "or the patterns out",
            basis.place("start.seat"),
        )
    made = staged(basis, first, run)
    check_passed(made)
    return made


def _laid_out(
    basis: Basis, first: Target, sections: tuple[Span, ...], *, ends: bool
) -> tuple[tuple[Span, ...], Layout, Multiple]:
    """Plain sections laid out; those that begin at the waist with what the body asks of them."""
    choice = basis.tube.edging
    wish = edging_.multiple(basis, choice) if ends else Multiple()
    wishes = [wish]
    if wish.of > 1 and choice and choice.correction_round == "when needed":
        wishes.append(Multiple())
    measured = bare = sections
    if not sections[0].rounds_above:
        # The ease asked for on the way is kept where it can be; then at least the body has room.
        found = seat.unshaped(sections, basis.tube.start.seat, basis.work.join_at)
        measured = with_landmarks(basis, first, found)
        bare = with_landmarks(basis, first, found, bare=True)
    for each in (measured,) if bare == measured else (measured, bare):
        for one in wishes:
            if layout := lay_out(basis, first, each, one):
                return each, layout, one
    raise refusals.why_not(basis, first, bare, wishes[-1])


def _girths(skirt: Tube, hem: edging_.EdgingWork | None) -> tuple[float, ...]:
    """What each row measures, mm, where some are in a stitch pattern; an edging as it was planned."""
    own = girths(skirt, skirt.rounds + 1)
    return (*own, *(hem.plan.girth.value for _ in hem.rows)) if own and hem else own


def _waist(skirt: Tube) -> waist.Trim | None:
    basis, count = skirt.basis, skirt.counts[0]
    match basis.tube.waist:
        case CoveredElastic() as choice:
            return waist.covered_elastic(basis, choice, count)
        case RibbedBand() as choice:
            return waist.ribbed_band(basis, choice, count)
        case Drawcord() as choice:
            return _cord(skirt, choice)
        case None:
            return None


def _cord(skirt: Tube, choice: Drawcord) -> waist.Trim:
    """The eyelets go into the first round from the one asked for that has room for them."""
    asked, how = choice.eyelet_round, manner(skirt.basis)
    rounds, lowest = shaping_rounds(skirt, how), min(asked + EYELETS_MOVE, skirt.rounds)
    opening = skirt.girth(0).value
    for r in range(asked, lowest + 1):
        if r in rounds or skirt.spans[skirt.section_of(r)].worked is not None:
            continue
        cord, remarks = waist.drawcord(skirt.basis, choice, skirt.counts[r], r, opening)
        if eyelets(rounds, r, how, cord.gaps) is not None:
            moved = () if r == asked else (_moved(asked, r),)
            return waist.Trim(cord, remarks=(*remarks, *moved))
    found = (
        f"the skirt has {skirt.rounds} rounds"
        if asked > skirt.rounds
        else f"rounds {asked} to {lowest} have no room beside their shaping"
    )
    raise InputError(
        f"{found}, so there is none for the eyelets; begin with a straight section that holds them",
        skirt.basis.place("waist.eyelet_round"),
    )


def _moved(asked: int, taken: int) -> Remark:
    return Remark(
        "eyelet_round",
        f"round {asked} has no room for eyelets beside its shaping, so they stand in round {taken}",
        serious=False,
    )


def _remarks(skirt: Tube) -> Iterator[Remark]:
    basis = skirt.basis
    yield from less_than_asked(skirt)
    if basis.growth is None:
        yield Remark(
            "hang_test",
            "the swatch was not hung, so lengths are planned without growth; hang it overnight, and "
            "give the swatch a reading of the same stitches and rows as they hang",
            serious=False,
        )
    if any(basis.body.get(key) is None for key in LANDMARKS["high hip"]):
        yield Remark(
            "high_hip",
            "the high hip was not measured, so the girth between waist and hip is not checked "
            "there; measure it about half way down, and how far below the waist it lies "
            "(high_hip_girth and waist_to_high_hip), and draft again",
        )
    if basis.body.get(LANDMARKS["hip"][1]) is None:
        yield Remark(
            "hip_depth",
            "how far the hip lies below the waist was not measured, so the girth there is not "
            "checked; measure it (waist_to_hip), and draft again",
        )
    if basis.work.join_at != "centre back":
        for span, shaped in zip(skirt.spans, skirt.layout.shaped, strict=True):
            if shaped and (shaped.points == 2 or shaped.points % 2):
                yield _side_join(span.section.name, shaped.points)


def _side_join(section: str, points: int) -> Remark:
    where = (
        "its two shaping points lie at centre front and back"
        if points == 2
        else f"its {points} shaping points lie even to the join, not to centre front"
    )
    return Remark(
        "side_join_points",
        f'section "{section}": with the join at a side {where}; join at centre back to have them '
        "even on both sides",
    )
