"""Plans built by hand, so that drawings are tested apart from the planner."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import inf

import numpy as np
from one_piece import one_piece

from frogless.because import Because
from frogless.plan.model import (
    BandPlan,
    Clause,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    Landmark,
    Option,
    Plan,
    Rhythm,
    SectionPlan,
    StrandPlan,
)
from frogless.rows.nodes import End, Into, Node, Piece, Program, Row, Work
from frogless.swatch import Gauge
from frogless.units import Measured

WHY = Because()


@dataclass(frozen=True, slots=True)
class Stretch:
    """A section to build: where it ends and its shaping."""

    key: str
    rounds: int
    count: int
    points: int = 0
    shaping: tuple[int, ...] = ()
    wanted: float = 0.0
    body: float | None = None
    allowed: tuple[float, float] = (-20.0, 20.0)
    estimated: bool = False


@dataclass(frozen=True, slots=True)
class Sample:
    """A whole skirt to build: counts at the waist and after each stretch, one stitch in mm."""

    waist_count: int
    width: float
    height: float
    stretches: tuple[Stretch, ...]
    above_waist: int = 0
    edging: EdgingPlan | None = None
    waist: ElasticPlan | CordPlan | BandPlan | None = None
    strands: tuple[StrandPlan, ...] = ()
    turned: bool = True


def gauge(sample: Sample) -> Gauge:
    """Good to 1.5 %."""
    width, height = sample.width, sample.height
    return Gauge(
        "double_crochet", Measured(width, width * 0.015), Measured(height, height * 0.015), "washed"
    )


def shaping_body(before: int, points: int, add: int) -> tuple[Node, ...]:
    """Points spread evenly from half a gap after the beginning; gaps differ by one at most."""
    spots = [(2 * i + 1) * before // (2 * points) for i in range(points)]
    body: list[Node] = []
    reached = 0
    for spot in spots:
        body += [Work("double_crochet", spot - reached)] if spot > reached else []
        body.append(Into((Work("double_crochet", 1 + add),)))
        reached = spot + 1
    return (*body, Work("double_crochet", before - reached)) if before > reached else tuple(body)


def build_rows(sample: Sample) -> tuple[Row, ...]:
    """The foundation and every round."""
    rows = [
        Row(0, "RS", "start", (Work("double_crochet", sample.waist_count),), sample.waist_count)
    ]
    count, number = sample.waist_count, 0
    for stretch in sample.stretches:
        for inside in range(1, stretch.rounds + 1):
            number += 1
            side = "WS" if sample.turned and number % 2 == 0 else "RS"
            body: tuple[Node, ...] = (Work("double_crochet", count),)
            if inside in stretch.shaping:
                add = (stretch.count - rows_start(sample, stretch)) // (
                    len(stretch.shaping) * stretch.points
                )
                if add > 0:
                    body = shaping_body(count, stretch.points, add)
                count += add * stretch.points
            rows.append(Row(number, side, stretch.key, body, count, end=End("first_stitch")))
    return tuple(rows)


def rows_start(sample: Sample, stretch: Stretch) -> int:
    """The count before a stretch."""
    index = sample.stretches.index(stretch)
    return sample.stretches[index - 1].count if index else sample.waist_count


def build_sections(sample: Sample) -> tuple[SectionPlan, ...]:
    """One section for each stretch."""
    sections, first = [], 1
    for stretch in sample.stretches:
        before = rows_start(sample, stretch)
        chosen = None
        if stretch.shaping:
            add = abs(stretch.count - before) // (len(stretch.shaping) * stretch.points)
            rhythm = Rhythm(stretch.shaping[0], (Clause((3,), 1),), stretch.shaping)
            chosen = Option(stretch.points, add, rhythm, 0.0, 0.0)
        sections.append(
            SectionPlan(
                stretch.key,
                "double_crochet",
                4.0,
                gauge(sample),
                first,
                first + stretch.rounds - 1,
                before,
                stretch.count,
                chosen,
                (),
                0.2,
                WHY,
            )
        )
        first += stretch.rounds
    return tuple(sections)


def build_landmarks(sample: Sample) -> tuple[Landmark, ...]:
    """The waist, then the end of every stretch that has a wanted girth."""
    girth = sample.waist_count * sample.width
    waist_depth = sample.above_waist * sample.height
    marks = [
        Landmark(
            "waist_girth", waist_depth, Measured(girth - 4, 5), False, girth - 4, girth - 14,
            girth + 16, sample.above_waist, sample.waist_count, Measured(girth, 12), WHY,
        )
    ]  # fmt: skip
    rounds = 0
    for stretch in sample.stretches:
        rounds += stretch.rounds
        if not stretch.wanted:
            continue
        body = None if stretch.body is None else Measured(stretch.body, 5)
        low, high = (stretch.wanted + d for d in stretch.allowed)
        garment = Measured(stretch.count * sample.width, stretch.count * sample.width * 0.015)
        marks.append(
            Landmark(
                stretch.key, rounds * sample.height, body, stretch.estimated, stretch.wanted, low,
                high, rounds, stretch.count, garment, WHY,
            )
        )  # fmt: skip
    return tuple(marks)


def stray(sample: Sample, section: SectionPlan, marks: tuple[Landmark, ...]) -> SectionPlan:
    """The section with its greatest distance from the wanted profile, by a count of its own."""
    if section.chosen is None:
        return section
    depths, wanted = [m.depth for m in marks], [m.wanted for m in marks]
    step = (section.count_after - section.count_before) // len(section.chosen.rhythm.rounds)
    found = []
    for number in range(section.first_round, section.last_round + 1):
        shaped = sum(r + section.first_round - 1 <= number for r in section.chosen.rhythm.rounds)
        depth = number * sample.height
        girth = (section.count_before + shaped * step) * sample.width
        found.append((girth - float(np.interp(depth, depths, wanted)), depth))
    worst, at = max(found, key=lambda pair: abs(pair[0]))
    return replace(section, chosen=replace(section.chosen, stray=worst, stray_at=at))


def build(sample: Sample) -> Plan:
    """The plan of a sample."""
    marks = build_landmarks(sample)
    rounds = sum(stretch.rounds for stretch in sample.stretches)
    depths = tuple(number * sample.height for number in range(rounds + 1))
    program = Program((Piece("skirt", closed=True, rows=build_rows(sample)),))
    return one_piece(
        marks,
        tuple(stray(sample, section, marks) for section in build_sections(sample)),
        sample.edging,
        sample.waist,
        sample.strands,
        depths,
        {s.key: gauge(sample) for s in sample.stretches},
        (),
        program,
    )


def edging(repeats: int, multiple: int, hem: float, first: int, *, rounds: int = 1) -> EdgingPlan:
    """An edging that sits on the hem without correction."""
    count = repeats * multiple
    fine = Gauge("single_crochet", Measured(4.2), Measured(12.0), "washed")
    girth = Measured(hem, hem * 0.015)
    return EdgingPlan(
        "picot_groups", 2.25, count, count, repeats, multiple, 0, 0, first, first + rounds - 1,
        fine, girth, girth, WHY,
    )  # fmt: skip


def elastic(waist: float) -> ElasticPlan:
    """Ten per cent shorter than the waist."""
    ring = waist * 0.9
    return ElasticPlan(20.0, "knitted", ring, 25.0, ring + 25, 152, 2, 304, 0.48, 0.8, WHY)


def cord(eyelets: int, gap: int, length: float) -> CordPlan:
    """Eyelets in round 2."""
    return CordPlan(2, (gap,) * eyelets, length, WHY)


def band(girth: float, height: float, rows: int) -> BandPlan:
    """A ribbed band."""
    return BandPlan(height, 9, rows, Measured(girth, 10), rows, (1,) * rows, 0.4, WHY)


def strand(start: int, end: int, span: float, sag: float, beads: int = 12) -> StrandPlan:
    """A beaded strand between two stitches of the waist edge."""
    length = span * (1 + 8 / 3 * (sag / span) ** 2)
    return StrandPlan(
        name="beaded strand", span=span, sag=sag, wanted=length, length=Measured(length, 3),
        actual_sag=sag, repeats=beads, chains_between=20, beads=beads, spare_beads=2,
        chains=beads * 20, plies=2, yarn_plies=4, cut_yarn=1200.0, bead_hole=0.9,
        bead_diameter=4.0, hook=0.6, strand_diameter=0.5, tails=150.0, from_stitch=start,
        to_stitch=end, sampled=True, because=WHY,
    )  # fmt: skip


def flared() -> Sample:
    """Waist 84, hip 112 + 4, hem 142 cm, with a picot edging, elastic and beaded strands."""
    return Sample(
        152, 100 / 18, 10.0,
        (
            Stretch("high_hip_girth", 10, 184, 8, (1, 4, 7, 10), 1010, 985, estimated=True),
            Stretch("hip_girth", 10, 208, 8, (3, 6, 9), 1160, 1120),
            Stretch("hem", 40, 256, 8, (3, 10, 17, 24, 31, 38), 1420, allowed=(-30, 30)),
        ),
        edging=edging(32, 8, 1422, 61),
        waist=elastic(840),
        strands=(strand(-16, 16, 180, 50), strand(20, 64, 240, 60)),
    )  # fmt: skip


def straight() -> Sample:
    """A straight knee-length skirt with a drawcord, joined without turning."""
    return Sample(
        176, 5.5, 9.0,
        (
            Stretch("hip_girth", 20, 184, 2, (4, 8, 12, 16), 1015, 985),
            Stretch("hem", 44, 184, wanted=1015, allowed=(-inf, inf)),
        ),
        waist=cord(22, 8, 1600),
        edging=edging(184, 1, 1012, 65),
        turned=False,
    )  # fmt: skip


def tiny() -> Sample:
    """A doll's skirt: 24 cm at the waist, 7 cm long."""
    return Sample(
        60, 4.0, 7.0,
        (
            Stretch("high_hip_girth", 1, 66, 6, (1,), 262, 250),
            Stretch("hip_girth", 2, 72, 6, (1,), 290, 270),
            Stretch("hem", 7, 96, 6, (1, 3, 5, 7), 385),
        ),
        waist=band(216, 18, 30),
        edging=edging(16, 6, 384, 11),
    )  # fmt: skip


def long() -> Sample:
    """A floor-length skirt with a ribbed band, high-waisted, without an edging."""
    return Sample(
        168, 4.5, 12.0,
        (
            Stretch("rise", 4, 168),
            Stretch("high_hip_girth", 8, 208, 8, (1, 3, 4, 6, 8), 930, 900),
            Stretch("hip_girth", 9, 232, 4, (1, 3, 4, 6, 7, 9), 1050, 1000),
            Stretch("hem", 66, 296, 8, (8, 16, 24, 32, 40, 48, 56, 64), 1340, allowed=(-40, 40)),
        ),
        above_waist=4,
        waist=band(700, 60, 98),
    )  # fmt: skip


def circle() -> Sample:
    """Nearly a full circle: hem 350 cm after 45 cm."""
    return Sample(
        140, 5.0, 10.0,
        (
            Stretch("high_hip_girth", 9, 252, 16, (1, 2, 4, 5, 6, 8, 9), 1265, 860),
            Stretch("hip_girth", 11, 396, 16, (1, 2, 4, 5, 6, 7, 9, 10, 11), 1957, 1010),
            Stretch(
                "hem", 25, 700, 16, tuple(r for r in range(1, 26) if r % 4 != 3), 3527,
                allowed=(-100, 100),
            ),
        ),
        edging=edging(175, 4, 3500, 46, rounds=2),
        waist=elastic(700),
    )  # fmt: skip


def pegged() -> Sample:
    """Narrower at the hem than at the hip, by decreases."""
    return Sample(
        150, 5.3, 9.1,
        (
            Stretch("hip_girth", 22, 194, 4, tuple(range(1, 23, 2)), 1020, 990),
            Stretch("hem", 44, 178, 4, (6, 17, 28, 39), 940),
        ),
        waist=cord(20, 7, 1540),
    )  # fmt: skip


SAMPLES: Mapping[str, Callable[[], Sample]] = {
    f.__name__: f for f in (flared, straight, tiny, long, circle, pegged)
}


def skirt(
    counts: tuple[int, int, int, int], rounds: tuple[int, int, int], width: float, height: float
) -> Plan:
    """A skirt from counts at waist, high hip, hip and hem, rounds between and one stitch's size."""
    keys = ("high_hip_girth", "hip_girth", "hem")
    stretches = tuple(
        Stretch(
            key, many, count, abs(count - before), (1,) if count != before else (),
            count * width, count * width,
        )
        for key, many, count, before in zip(keys, rounds, counts[1:], counts, strict=False)
    )  # fmt: skip
    hem = edging(max(1, counts[-1] // 6), 6, counts[-1] * width, sum(rounds) + 1)
    waist = elastic(counts[0] * width)
    return build(Sample(counts[0], width, height, stretches, edging=hem, waist=waist))
