"""What the planner decided: whole numbers, each with its because. mm, and stitches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from frogless.because import Because
from frogless.rows.nodes import Program
from frogless.swatch import Gauge
from frogless.units import Measured


@dataclass(frozen=True, slots=True)
class Landmark:
    """A girth of the body at its depth, and what the garment is wanted to measure there.

    Args:
        key: `waist_girth`, `high_hip_girth`, `hip_girth`, "hem", or "top_edge" above a waist that
            is passed on the way.
        depth: mm below the top edge, worn.
        body: the body's girth there; None at the hem of a skirt that has no body girth to meet.
        wanted: garment girth, mm.
        low, high: what is allowed (−inf / inf when nothing was said).
        rounds: rounds worked above it.
        count: the stitches there.
        garment: girth that count gives, with the gauge's uncertainty.
    """

    key: str
    depth: float
    body: Measured | None
    estimated: bool
    wanted: float
    low: float
    high: float
    rounds: int
    count: int
    garment: Measured
    because: Because


@dataclass(frozen=True, slots=True)
class Clause:
    """ "every q rounds, t more times"; two numbers in `every`: alternately every q and q + 1."""

    every: tuple[int, ...]
    times: int


@dataclass(frozen=True, slots=True)
class Rhythm:
    """On which rounds of a section the shaping falls: `first`, then the clauses.

    Args:
        rounds: all of them, counted from 1 where the section begins.
    """

    first: int
    clauses: tuple[Clause, ...]
    rounds: tuple[int, ...]

    @property
    def clause_count(self) -> int:
        """Clauses as a maker reads them; an alternation counts as two."""
        return sum(len(c.every) for c in self.clauses)


@dataclass(frozen=True, slots=True)
class Option:
    """A rhythm with the shaping points it is for, and how far it strays from the wanted profile.

    Args:
        stray: greatest distance from the wanted girth in the section, mm, with its sign.
        stray_at: the depth where that is, mm.
    """

    points: int
    add: int
    rhythm: Rhythm
    stray: float
    stray_at: float


@dataclass(frozen=True, slots=True)
class SectionPlan:
    """One section, planned. Rounds are numbered through the piece.

    Args:
        first_round, last_round: both of them in the section.
        fullness: λ = Δn·w / 2πh: 0 tube, below 1 cone, 1 flat, above 1 ruffle.
        others: rhythms as good as the tape can see, or smoother ones, for the author to choose.
        profile: (depth, girth) between which the wanted profile runs straight in this section, mm.
        floor: the least girth, mm, that its rhythm keeps before its first round and after each; 0
            where none is asked. Empty when it has no floor.
    """

    name: str
    stitch: str
    hook: float
    gauge: Gauge
    first_round: int
    last_round: int
    count_before: int
    count_after: int
    chosen: Option | None
    others: tuple[Option, ...]
    fullness: float
    because: Because
    profile: tuple[tuple[float, float], ...] = ()
    floor: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class EdgingPlan:
    """The edging: repeats over a base of `base_count` places.

    Args:
        correction: stitches that its first round adds to the hem's, or takes away (negative).
        names: dialect and what the edging is called in it.
    """

    pattern: str
    hook: float
    hem_count: int
    base_count: int
    repeats: int
    multiple: int
    offset: int
    correction: int
    first_round: int
    last_round: int
    gauge: Gauge
    hem_girth: Measured
    girth: Measured
    because: Because
    names: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class ElasticPlan:
    """Covered elastic. `finished` is the ring, `cut` includes the lap; mm."""

    width: float
    kind: str
    finished: float
    lap: float
    cut: float
    base_count: int
    stitches_in_each: int
    cover_count: int
    needed_stretch: float
    comfortable_stretch: float
    because: Because


@dataclass(frozen=True, slots=True)
class CordPlan:
    """Drawcord: the stitches of each gap, its eyelet included, and the cord's length, mm."""

    eyelet_round: int
    gaps: tuple[int, ...]
    cord: float
    because: Because


@dataclass(frozen=True, slots=True)
class BandPlan:
    """Ribbed band worked sideways.

    Args:
        row_stitches: stitches in a row.
        spread: for each row end, how many stitches of the waist it takes.
    """

    height: float
    row_stitches: int
    rows: int
    girth: Measured
    waist_count: int
    spread: tuple[int, ...]
    needed_stretch: float
    because: Because


@dataclass(frozen=True, slots=True)
class StrandPlan:
    """A beaded strand between two points of the waist edge; lengths in mm.

    Args:
        span: distance of the points along the edge.
        wanted: the hanging length (catenary).
        from_stitch, to_stitch: waist stitches from centre front; to the wearer's left positive.
    """

    name: str
    span: float
    sag: float
    wanted: float
    length: Measured
    actual_sag: float
    repeats: int
    chains_between: int
    beads: int
    spare_beads: int
    chains: int
    plies: int
    yarn_plies: int | None
    cut_yarn: float
    bead_hole: float
    bead_diameter: float
    hook: float
    strand_diameter: float
    tails: float
    from_stitch: int
    to_stitch: int
    sampled: bool
    because: Because


@dataclass(frozen=True, slots=True)
class Remark:
    """Something the planner wants known: a stable name, one sentence, and how serious."""

    name: str
    sentence: str
    serious: bool = True


@dataclass(frozen=True, slots=True)
class Plan:
    """The plan of one garment for one body and swatch, with the row program that carries it out.

    Args:
        depths: worn depth of the lower edge of each round of the main piece, by row number, mm.
        gauges: by section name, the gauge that its rounds are worked to.
    """

    landmarks: tuple[Landmark, ...]
    sections: tuple[SectionPlan, ...]
    edging: EdgingPlan | None
    waist: ElasticPlan | CordPlan | BandPlan | None
    strands: tuple[StrandPlan, ...]
    depths: tuple[float, ...]
    gauges: Mapping[str, Gauge]
    remarks: tuple[Remark, ...]
    program: Program
