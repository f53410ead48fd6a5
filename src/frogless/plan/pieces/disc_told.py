"""What a disc measures, how it looks laid flat, and what its maker should know."""

from __future__ import annotations

import math
from collections.abc import Iterator

from frogless.because import Because, Step
from frogless.plan.model import Landmark, Measure, Remark, Shape
from frogless.plan.pieces.disc_rate import FAR, FRILL, flat_rate, usual_discs
from frogless.plan.pieces.disc_stages import Disc, Stage, straights
from frogless.units import Measured

HEAD, OPENING = "head_girth", "head opening"
CORNERS = 72
"""Of the ring that stands for a circle."""

SLIGHT = 0.03
"""A growth that differs from what lies flat by less is not worth a word (own choice: what the
gauge of a good swatch leaves open)."""

Corner = tuple[float, float]


def lies_flat(disc: Disc) -> bool:
    """Whether it is a disc to look at: nothing goes on from it, and it is hardly domed."""
    return len(disc.stages) == 1 and disc.growth.lie > 1 - FRILL


def landmarks(disc: Disc) -> tuple[Landmark, ...]:
    """The head's girth, of a hat worked up to one that was measured."""
    wanted, head = disc.wanted, disc.basis.body.get(HEAD)
    if wanted is None or head is None or disc.basis.design.garment.kind != "hat":
        return ()
    stage = _worn(disc)
    above = disc.stages[: disc.stages.index(stage) + 1]
    return (
        Landmark(
            key=HEAD,
            depth=sum(each.length for each in above),
            body=head.value,
            estimated=head.estimated,
            wanted=wanted.girth,
            low=wanted.low,
            high=wanted.high,
            rounds=sum(len(each.counts) for each in above),
            count=stage.last,
            garment=stage.gauge.width.times(stage.last),
            because=disc.crown.because,
        ),
    )


def _worn(disc: Disc) -> Stage:
    """What sits on the head: the first straight section, else the crown."""
    return next((stage for _, stage in straights(disc)), disc.crown)


def measures(disc: Disc) -> tuple[Measure, ...]:
    """Its diameter, the girth of its edge, and the height of what goes on from it."""
    crown, edge = disc.crown, disc.stages[-1]
    if lies_flat(disc):
        return (_diameter(disc), _girth(disc, crown, "edge"))
    is_hat = disc.basis.design.garment.kind == "hat"
    opening = _worn(disc) if is_hat else edge
    found = [_girth(disc, opening, OPENING if is_hat else "opening"), _height(disc)]
    if len(disc.stages) > 1:
        found.insert(0, _crown(crown))
    if edge.last != opening.last:
        found.append(_girth(disc, edge, "edge"))
    return tuple(found)


def _diameter(disc: Disc) -> Measure:
    """Twice the rounds by their height; of a polygon from side to side."""
    crown = disc.crown
    rounds = len(crown.counts)
    text = disc.choice.radius
    wanted = None if text is None else 2 * disc.basis.length(text, f"{disc.key}.radius")
    radius = crown.length
    got = crown.gauge.height.times(2 * rounds)
    line = ((0.0, radius), (2 * radius, radius))
    return Measure("diameter", "length", got, wanted, 2 * rounds, crown.because, line)


def _crown(crown: Stage) -> Measure:
    rounds = len(crown.counts)
    got = crown.gauge.height.times(rounds)
    because = Because(
        (
            Step("row_gauge", 100 / crown.gauge.height.value, "rows per 10 cm"),
            Step("landed", rounds, "rows"),
        )
    )
    return Measure("radius of the disc", "length", got, None, rounds, because)


def _girth(disc: Disc, stage: Stage, name: str) -> Measure:
    wanted = disc.wanted.girth if disc.wanted and stage.last == disc.crown.last else None
    line = None
    if not lies_flat(disc):
        half, down = stage.girth / 4, _down(disc, _end_of(disc, stage))
        middle = _widest(disc)
        line = ((middle - half, down), (middle + half, down))
    got = stage.gauge.width.times(stage.last)
    return Measure(name, "girth", got, wanted, stage.last, stage.because, line)


def _height(disc: Disc) -> Measure:
    """Along the work from the middle of the crown to the edge; of a bag from its base."""
    got, rounds = Measured(0.0), 0
    for stage in disc.stages[int(_stands(disc)) :]:
        got = got.plus(stage.gauge.height.times(len(stage.counts)))
        rounds += len(stage.counts)
    right = 2 * _widest(disc)
    line = ((right, 0.0), (right, got.value))
    because = Because((Step("landed", rounds, "rows"), Step("length", got.value)))
    return Measure("height", "length", got, None, rounds, because, line)


def _stands(disc: Disc) -> bool:
    """Whether it stands on the disc (a bag), rather than hangs from it (a hat)."""
    return disc.basis.design.garment.kind == "bag" and len(disc.stages) > 1


def _end_of(disc: Disc, stage: Stage) -> float:
    until = disc.stages.index(stage) + 1
    return sum(each.length for each in disc.stages[:until])


def _down(disc: Disc, along: float) -> float:
    """How far down on the shape a round lies that is so far along the work, mm."""
    return _end_of(disc, disc.stages[-1]) - along if _stands(disc) else along


def _widest(disc: Disc) -> float:
    """Half the greatest width when it lies folded, mm."""
    return max(half for half, _ in _profile(disc))


def _profile(disc: Disc) -> list[Corner]:
    """Half the width and how far down it is, round by round, mm.

    The crown is drawn as a dome as high as it is long along the work: a flat disc does not fold.
    """
    crown, rounds = disc.crown, len(disc.crown.counts)
    along = list(zip(disc.counts, disc.depths(), strict=True))
    sides = [
        (n * stage.gauge.width.value / 4, _down(disc, depth))
        for stage, (n, depth) in zip(_stage_of(disc), along, strict=True)
    ]
    if _stands(disc):
        return [(crown.girth / 4, _down(disc, crown.length)), *sides[rounds:]]
    turns = [math.pi / 2 * (r + 1) / rounds for r in range(rounds)]
    dome = [(crown.girth / 4 * math.sin(t), crown.length * (1 - math.cos(t))) for t in turns]
    return [*dome, *sides[rounds:]]


def _stage_of(disc: Disc) -> Iterator[Stage]:
    return (stage for stage in disc.stages for _ in stage.counts)


def shape(disc: Disc) -> Shape:
    """A circle or polygon; or, of what stands up, its silhouette folded flat."""
    if not lies_flat(disc):
        return _silhouette(disc)
    sides, radius = disc.choice.sides, disc.crown.length
    corners = sides or CORNERS
    out = radius / math.cos(math.pi / sides) if sides else radius
    turns = [2 * math.pi * (i + 0.5) / corners for i in range(corners)]
    ring = tuple((radius + out * math.sin(turn), radius + out * math.cos(turn)) for turn in turns)
    return Shape((ring,), way=None)


def _silhouette(disc: Disc) -> Shape:
    profile, middle = _profile(disc), _widest(disc)
    left = [(middle - half, down) for half, down in profile]
    right = [(middle + half, down) for half, down in reversed(profile)]
    begin = [(stage.girth / 4, _down(disc, _end_of(disc, stage))) for stage in disc.stages[:-1]]
    if _stands(disc):
        return Shape(((*left, *right),), _across(middle, begin[1:]), (0.0, -1.0))
    return Shape((((middle, 0.0), *left, *right),), _across(middle, begin))


def _across(middle: float, folds: list[Corner]) -> tuple[tuple[Corner, Corner], ...]:
    return tuple(((middle - half, down), (middle + half, down)) for half, down in folds)


def remarks(disc: Disc) -> Iterator[Remark]:
    """A swatch far outside the trade's numbers, ruffles, domes, what the last round takes."""
    name = disc.choice.name
    yield from _unusual(disc)
    asked, lie = disc.choice.lie, disc.growth.lie
    if asked > 1 + FRILL:
        yield Remark(
            "disc_ruffled",
            f"{name}: it grows by {asked:g} times what lies flat, so it ruffles, as its design "
            "asks for",
            serious=False,
        )
    elif asked == 1 and lie > 1 + FRILL:
        yield Remark(
            "disc_frills",
            f"{name}: its edge has {(lie - 1) * 100:.0f} % more stitches than lie flat; it will "
            "ruffle",
        )
    elif asked == 1 and lie > 1 + SLIGHT:
        yield Remark(
            "disc_slight_frill",
            f"{name}: its edge has {(lie - 1) * 100:.0f} % more stitches than lie flat, a slight "
            "frill that blocks out",
            serious=False,
        )
    elif asked == 1 and lie < 1 - FRILL:
        yield Remark(
            "disc_cups",
            f"{name}: its edge has {(1 - lie) * 100:.0f} % fewer stitches than lie flat; it will "
            "cup",
            serious=len(disc.stages) == 1,
        )
    yield from _left_over(disc)


def _unusual(disc: Disc) -> Iterator[Remark]:
    gauge = disc.crown.gauge
    usual, flat = usual_discs().get(gauge.stitch), flat_rate(gauge).value
    if usual and not usual.low * (1 - FAR) <= flat <= usual.high * (1 + FAR):
        stitch = gauge.stitch.replace("_", " ")
        between = f"{usual.low} to {usual.high}" if usual.low < usual.high else f"{usual.low}"
        yield Remark(
            "disc_gauge",
            f"{disc.choice.name}: by your swatch {flat:.1f} stitches a round lie flat, where {between} "
            f"are usual in {stitch}; count its stitches and rows again, and work four rounds first",
        )


def _left_over(disc: Disc) -> Iterator[Remark]:
    counts, step = disc.growth.counts, disc.growth.per_round
    if not disc.growth.left_over or len(counts) < 2:
        return
    yield Remark(
        "disc_last_round",
        f"{disc.choice.name}: its last round adds {counts[-1] - counts[-2]} stitches where the "
        f"others add {step}, to come to {counts[-1]}",
        serious=False,
    )
