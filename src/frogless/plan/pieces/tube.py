"""A tube that is one piece of several: on a foundation of its own, or begun on earlier edges."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from frogless.because import Because
from frogless.design.pieces.tube import PieceSection, TubeChoice
from frogless.errors import InputError, near_names
from frogless.plan import edging as edging_
from frogless.plan import pattern_colours, refusals
from frogless.plan.basis import Basis
from frogless.plan.landing import land
from frogless.plan.layout import Layout, Multiple, lay_out
from frogless.plan.model import Landmark, Measure, PiecePlan, Shape
from frogless.plan.pattern_remarks import pattern_remarks
from frogless.plan.pieces.made import Made, OfferedEdge, edge_named
from frogless.plan.pieces.rounds import manner, rows
from frogless.plan.pieces.skirt import made_skirt
from frogless.plan.pieces.tube_told import (
    edging_depths,
    edging_work,
    girths,
    offered,
    section_plans,
)
from frogless.plan.row_gauges import by_section
from frogless.plan.sections import LANDMARKS, Span, Target, first_gauge, spans, start_target
from frogless.plan.stages import has_patterns, staged
from frogless.plan.tube import Tube, tube
from frogless.rows.nodes import Chain, Node, Piece, Work
from frogless.rows.spread import even_spread, worked_over
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class _Begun:
    """The edges a tube is begun on, and the stitches that its first round makes of them."""

    edges: tuple[OfferedEdge, ...] = ()
    count: int = 0

    @property
    def places(self) -> int:
        """Places of all edges, bridging chains counted."""
        return sum(edge.count for edge in self.edges)


def plan_tube(basis: Basis, choice: TubeChoice, key: str, made: Mapping[str, Made]) -> Made:
    """A tube, planned.

    Raises:
        InputError: the design, body or swatch has to be mended.
        Impossible: a requirement cannot be met; says by how much and what would help.
    """
    choice = _named(choice)
    own = basis.of_tube(choice, key)
    _check(own, choice)
    _check_body(own, choice)
    if _hangs_from_waist(choice):
        return made_skirt(own)
    begun = _begun(own, choice, made)
    worked = _decide(replace(own, begun_with=begun.count))
    finish = edging_work(worked)
    begin = _first_body(worked, begun) if begun.edges else ()
    piece = Piece(
        choice.name,
        True,
        (*rows(worked, begin=begin), *(finish.rows if finish else ())),
        tuple(base for edge in begun.edges for base in edge.bases),
        pattern_colours.begin_colour(worked.spans),
    )
    low = worked.depths()[-1]
    depths = (*worked.depths(), *(edging_depths(own, low, finish.rows) if finish else ()))
    depths = depths[1:] if begun.edges else depths
    plan = PiecePlan(
        name=choice.name,
        construction="tube",
        counts=tuple(row.count for row in piece.rows),
        girths=_girths(worked, piece, finish),
        depths=_worn(choice, depths, low),
        sections=section_plans(worked),
        landmarks=tuple(_landmarks(worked, begun, low)),
        edging=finish.plan if finish else None,
        measures=tuple(_measures(worked)),
        shape=_shape(worked),
    )
    return Made(
        pieces=(piece,),
        plans=(plan,),
        edges=tuple(offered(worked, piece, finished=finish is not None)),
        remarks=(*pattern_remarks(worked), *(finish.remarks if finish else ())),
        gauges=by_section(own, {s.section.name: s.gauge for s in worked.spans}, piece.rows),
    )


def _named(choice: TubeChoice) -> TubeChoice:
    """The tube with its sections named after it, so that no other piece has one of that name."""
    sections = tuple(
        section
        if section.name.startswith(choice.name)
        else section.model_copy(update={"name": f"{choice.name} {section.name}"})
        for section in choice.section
    )
    return choice.model_copy(update={"section": sections})


def _check_body(basis: Basis, choice: TubeChoice) -> None:
    """Measurements that are named have been taken, and a skirt is worked from its waist down.

    Raises:
        InputError: one was not, or a tube that hangs from the waist is worked upwards.
    """
    if choice.direction == "up" and _hangs_from_waist(choice):
        raise InputError(
            "what hangs from the waist is worked downwards; end its sections by length, without "
            'a waist, to work it upwards, or write direction = "down"',
            basis.place("direction"),
        )
    named = [("start.body", choice.start.body)]
    named += [(f"section.{i}.body", s.body) for i, s in enumerate(choice.section, 1)]
    for key, name in named:
        if name is not None and basis.body.get(name) is None:
            known = [*basis.body.measurements, *basis.scope.wanting]
            told = (
                "is needed here and was not measured; measure it and add it to the body"
                if name in basis.scope.wanting
                else f"is no measurement of the body{near_names(name, known)}"
            )
            raise InputError(f'"{name}" {told}', basis.place(key))


def _check(basis: Basis, choice: TubeChoice) -> None:
    """One way to begin, and nothing that only a skirt at the waist has.

    Raises:
        InputError: what is there twice, not at all, or out of place.
    """
    start = choice.start
    if bool(start.on) == (start.made_of is not None):
        raise InputError(
            'a tube begins either "with" a foundation or "on" edges of earlier pieces, not both',
            basis.place("start"),
        )
    for name in ("girth", "ease", "ease_allowed"):
        if start.on and name in start.model_fields_set:
            raise InputError(
                f'begun "on" an edge, a tube has the girth of that edge; leave "{name}" out',
                basis.place(f"start.{name}"),
            )
    if start.seat and not _hangs_from_waist(choice):
        raise InputError(
            "short rows for the seat lie below a waist edge; a piece without one has no seat",
            basis.place("start.seat"),
        )
    for name in ("waist", "strand"):
        if start.on and getattr(choice, name):
            raise InputError(
                f"a {name} hangs on a foundation, and this piece is begun on an edge; leave it out",
                basis.place(name),
            )


def _hangs_from_waist(choice: TubeChoice) -> bool:
    """Whether it is a skirt that knows the body's landmarks from the waist down."""
    landmarks = any(section.to in LANDMARKS for section in choice.section)
    return not choice.start.on and (landmarks or bool(choice.waist or choice.strand))


def _begun(basis: Basis, choice: TubeChoice, made: Mapping[str, Made]) -> _Begun:
    place = basis.place("start.on")
    edges = tuple(edge_named(name, made, place) for name in choice.start.on)
    if not edges:
        return _Begun()
    open_ = [name for name, edge in zip(choice.start.on, edges, strict=True) if not edge.closed]
    if len(edges) == 1 and open_:
        raise InputError(
            f'"{open_[0]}" does not go all round; a tube needs an edge that does', place
        )
    found = _Begun(edges)
    start = choice.start
    if choice.section[0].pattern is not None:
        return _begun_in_pattern(basis, found)
    if start.gather == 1.0 and start.multiple == 1:
        return replace(found, count=found.places)
    wanted = found.places * start.gather
    return replace(found, count=land(wanted, 1.0, start.multiple).count)


def _begun_in_pattern(basis: Basis, found: _Begun) -> _Begun:
    """The stitches of a first round that a pattern stands on, at the girth of the edges, gathered."""
    first = basis.tube.section[0]
    way = basis.pattern(str(first.pattern), _numbers(first), "section.1", closed=True).way
    girth = sum(edge.length.value for edge in found.edges) * basis.tube.start.gather
    width = first_gauge(basis).width.value
    return replace(found, count=land(girth, width, way.multiple, way.offset).count)


def _numbers(first: PieceSection) -> Mapping[str, int]:
    return {**first.parameters, **(first.grades[0] if first.grades else {})}


def _decide(basis: Basis) -> Tube:
    """Counts and rhythms; the edging's multiple is met at its end, or its first round adapts."""
    first = start_target(basis)

    def run(
        aim: Target, found: tuple[Span, ...], ends: bool
    ) -> tuple[tuple[Span, ...], Layout, Multiple]:
        return _laid_out(basis, aim, found, ends=ends)

    if has_patterns(basis):
        return staged(basis, first, run)
    return tube(basis, first, *run(first, spans(basis), True))


def _laid_out(
    basis: Basis, first: Target, spans_: tuple[Span, ...], *, ends: bool
) -> tuple[tuple[Span, ...], Layout, Multiple]:
    """Plain sections laid out; an edging's multiple is met where the piece ends."""
    choice = basis.tube.edging
    found = tuple(_begun_plain(basis, spans_))
    wish = edging_.multiple(basis, choice) if ends else Multiple()
    wishes = [wish]
    if wish.of > 1 and choice and choice.correction_round == "when needed":
        wishes.append(Multiple())
    for one in wishes:
        if layout := lay_out(basis, first, found, one):
            return found, layout, one
    raise refusals.why_not(basis, first, found, wishes[-1])


def _begun_plain(basis: Basis, found: tuple[Span, ...]) -> Iterator[Span]:
    """The sections; a first round that is worked onto edges is not shaped besides."""
    for span in found:
        begun = basis.begun_with and not span.rounds_above
        yield replace(span, plain=(1, *span.plain)) if begun else span


def _first_body(worked: Tube, begun: _Begun) -> tuple[Node, ...]:
    """Round 1 onto the edges: each stretch worked, each bridge chained, or all spread evenly.

    Raises:
        InputError: an edge that has bridging chains is gathered.
    """
    first_span = worked.spans[0]
    stitch, counts = first_span.gauge.stitch, int(manner(worked.basis).chain_counts)
    if first_span.worked is not None:
        stitch, counts = first_span.worked.base_stitch, 0
    if begun.count != begun.places:
        if any(any(edge.bridges) for edge in begun.edges):
            raise InputError(
                "an edge with bridging chains is worked stitch by stitch; gather a later piece",
                worked.basis.place("start.gather"),
            )
        spread = even_spread(begun.count, begun.places)
        first, *others = spread
        rest = (first - counts, *others)
        if counts and first > 1:
            raise InputError(
                "a gathered round cannot begin with a chain that counts; write "
                "turning_chain_counts = false in the work of this piece",
                worked.basis.place("start.gather"),
            )
        return worked_over(stitch, rest[counts:])
    nodes: list[Node] = []
    for edge in begun.edges:
        bridges = edge.bridges or (0,) * len(edge.bases)
        for places, bridge in zip(edge.places, bridges, strict=True):
            nodes += _run(stitch, places)
            if bridge:
                nodes.append(Chain(bridge, each=True))
    return _without_first(nodes) if counts else tuple(nodes)


def _run(stitch: str, places: int) -> list[Node]:
    return [Work(stitch, places)] if places else []


def _without_first(nodes: Sequence[Node]) -> tuple[Node, ...]:
    """The nodes without their first stitch, for which the turning chain stands."""
    first, *others = nodes
    if isinstance(first, Work) and first.times > 1:
        return (replace(first, times=first.times - 1), *others)
    return tuple(others)


def _section(span: Span) -> PieceSection | None:
    return span.section if isinstance(span.section, PieceSection) else None


def _landmarks(worked: Tube, begun: _Begun, low: float) -> Iterator[Landmark]:
    """Where it begins, if that is for a girth of the body, and the sections that are."""
    start = worked.basis.tube.start
    for edge in begun.edges:
        if edge.landmark is not None:
            yield replace(edge.landmark, depth=_level(worked, 0.0, low), rounds=1)
    if start.body is not None and not begun.edges:
        why = worked.first.because.then(*worked.because_landed(0, worked.first.wanted))
        yield _landmark(worked, start.body, worked.first, 0, _level(worked, 0.0, low), why)
    for i, span in enumerate(worked.spans):
        section = _section(span)
        named = section.body if section else None
        body = named or LANDMARKS.get(str(span.section.to), ("",))[0]
        if not body or span.target is None:
            continue
        last = span.rounds_above + span.rounds
        landed = worked.because_landed(last, span.target.wanted)
        depth = _level(worked, worked.spans[i].end_depth, low)
        why = span.target.because.then(*landed)
        yield _landmark(worked, body, span.target, last, depth, why)


def _landmark(
    worked: Tube, key: str, aim: Target, rounds: int, depth: float, because: Because
) -> Landmark:
    body = worked.basis.body.get(key)
    return Landmark(
        key=key,
        depth=depth,
        body=body.value if body else None,
        estimated=bool(body and body.estimated),
        wanted=aim.wanted,
        low=aim.low,
        high=aim.high,
        rounds=rounds,
        count=worked.counts[rounds],
        garment=worked.girth(rounds),
        because=because,
    )


def _level(worked: Tube, depth: float, low: float) -> float:
    """How far a depth lies below the upper edge: worked upwards it counts from below."""
    return low - depth if worked.basis.tube.direction == "up" else depth


def _worn(choice: TubeChoice, depths: Sequence[float], low: float) -> tuple[float, ...]:
    return tuple(low - depth if choice.direction == "up" else depth for depth in depths)


def _girths(worked: Tube, piece: Piece, finish: edging_.EdgingWork | None) -> tuple[float, ...]:
    """What each row measures, mm, where some are in a stitch pattern; an edging as it was planned."""
    edging = finish.rows if finish else ()
    own = girths(worked, len(piece.rows) - len(edging))
    return (*own, *(finish.plan.girth.value for _ in edging)) if own and finish else own


def _measures(worked: Tube) -> Iterator[Measure]:
    """Its girth where it begins and after each shaped section, and its length."""
    low, start = worked.depths()[-1], worked.basis.begun_with
    ends = [(0, "girth at the start", worked.first.wanted, worked.first.because)]
    for span in worked.spans:
        if span.target is not None:
            name = f"girth after {span.section.name}"
            last = span.rounds_above + span.rounds
            ends.append((last, name, span.target.wanted, span.target.because))
    for round_, name, wanted, because in ends:
        half = worked.girth(round_).value / 4
        level = _level(worked, worked.depths()[round_], low)
        line = ((-half, level), (half, level))
        got = worked.girth(round_)
        yield Measure(name, "girth", got, wanted, worked.counts[round_], because, line)
    far = max(worked.girth(r).value for r in range(worked.rounds + 1)) / 4
    heights = sum(s.rounds * s.gauge.height.uncertainty for s in worked.spans)
    yield Measure(
        name="length",
        kind="length",
        got=Measured(low, heights),
        wanted=worked.spans[-1].end_wanted,
        count=worked.rounds + int(not start),
        because=worked.spans[-1].because,
        line=((far * 0.6, 0.0), (far * 0.6, low)),
    )


def _shape(worked: Tube) -> Shape:
    """The tube folded flat: half its girth wide at every round."""
    depths, low = worked.depths(), worked.depths()[-1]
    levels = [
        (worked.girth(r).value / 4, _level(worked, depths[r], low))
        for r in range(worked.rounds + 1)
    ]
    right = [(half, level) for half, level in levels]
    left = [(-half, level) for half, level in reversed(levels)]
    up = worked.basis.tube.direction == "up"
    return Shape(((*right, *left),), way=(0.0, -1.0 if up else 1.0))
