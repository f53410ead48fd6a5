"""What the planner decided: whole numbers, each with its because. mm, and stitches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

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
        count: the stitches there; in a stitch pattern those that its repeats stand on.
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
class RunnerUp:
    """The best rhythm of another number of clauses.

    Args:
        clauses: at most so many.
        stray, stray_at: as in `Option`.
        cost: how much further than the one taken it strays, mm; below zero when it strays less.
    """

    clauses: int
    rhythm: Rhythm
    stray: float
    stray_at: float
    cost: float


@dataclass(frozen=True, slots=True)
class Evidence:
    """How good the rhythm of a section is, and what it was weighed against; mm.

    Args:
        clauses, stray, squares: of the rhythm taken, in the order in which they were compared;
            squares in mm² over all rounds.
        indifference: strays this much above `least` were taken to be as good.
        least: the least stray with as many clauses as are allowed, found by a search that leaves
            nothing out.
        bound: what no choice of shaping rounds betters at all, in however many clauses.
        most_clauses: how many were allowed.
        runners_up: for other numbers of clauses, fewest first; one that strays no less than with
            fewer clauses is left out.
        binding: what keeps the rhythm from straying less: any of "clauses", "indifference",
            "least_gap", "allowed", "forbidden", "every", "floor", "ceiling".
    """

    clauses: int
    stray: float
    squares: float
    indifference: float
    least: float
    bound: float
    most_clauses: int
    runners_up: tuple[RunnerUp, ...]
    binding: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PatternBand:
    """Rounds of a stitch pattern between two that change the count. Rounds are numbered as the piece's.

    Args:
        under: the round below it.
        base: stitches that round leaves, on which the band stands.
        repeats: all round; `column` stitches in each plain column between them.
        goes_on: it stands on rounds of the same pattern, worked on another hook.
    """

    under: int
    first_round: int
    last_round: int
    base: int
    repeats: int
    column: int = 0
    goes_on: bool = False


@dataclass(frozen=True, slots=True)
class PatternPlan:
    """The stitch pattern that a section is worked in.

    Args:
        key, names: of the pattern; names by dialect.
        parameters: its numbers.
        row_repeat: rounds that come again; `setup` come once before them.
        shape_by: "repeats", "columns", "grades", "hook", or "" when the repeats stay as they are.
        based: rounds of base stitches, which change the count.
        columns: plain columns all round, of `column_stitch`; 0 when there are none.
        left: places that the last round leaves.
        repeat_leaves: places that one repeat leaves after each round, where columns part them.
        girth_before, girth_after: of the fabric, mm.
    """

    key: str
    names: tuple[tuple[str, str], ...]
    parameters: tuple[tuple[str, int], ...]
    multiple: int
    offset: int
    row_repeat: int
    setup: int
    shape_by: str
    base_stitch: str
    based: tuple[int, ...]
    bands: tuple[PatternBand, ...]
    left: int
    girth_before: Measured
    girth_after: Measured
    columns: int = 0
    column_stitch: str = ""
    repeat_leaves: tuple[int, ...] = ()


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
        evidence: how good its rhythm is; None when it is not shaped.
        lines: how its shaping points stand: evenly, in lines; staggered; or on both sides of each
            line between gores.
        based: what its first round is worked in when that corrects the count; "" when none does.
        pattern: the stitch pattern it is worked in, with the counts that its repeats stand on; then
            `stitch` is that of its base rounds, and the counts are base stitches.
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
    evidence: Evidence | None = None
    lines: Literal["even", "staggered", "gores"] = "even"
    based: str = ""
    pattern: PatternPlan | None = None

    @property
    def girth_before(self) -> Measured:
        """What it measures where it begins, mm."""
        if self.pattern is not None:
            return self.pattern.girth_before
        return self.gauge.width.times(self.count_before)

    @property
    def girth_after(self) -> Measured:
        """What it measures at its end, mm."""
        if self.pattern is not None:
            return self.pattern.girth_after
        return self.gauge.width.times(self.count_after)


@dataclass(frozen=True, slots=True)
class EdgingBeadsPlan:
    """Beads in the repeats of an edging, strung before it is begun; mm.

    Args:
        beads: that are worked in. spare: strung beyond them.
        yarn_diameter: None when the label does not tell it.
        balls: repeats that each ball is good for, one after the other; one number when a single
            ball is enough, or when it is not known how much a repeat takes.
        picots: of which the middle one has the bead in each repeat; 0 when it is not in a picot.
    """

    beads: int
    spare: int
    per_repeat: int
    bead_diameter: float
    bead_hole: float
    yarn_diameter: float | None
    balls: tuple[int, ...]
    picots: int = 0

    @property
    def strung(self) -> int:
        """Beads on the yarn when the edging is begun."""
        return self.beads + self.spare


@dataclass(frozen=True, slots=True)
class EdgingPlan:
    """The edging: repeats over a base of `base_count` places.

    Args:
        correction: stitches that its first round adds to the hem's, or takes away (negative).
        names: dialect and what the edging is called in it.
        fringe_yarn: all that is cut for the strands of a fringe, mm.
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
    beads: EdgingBeadsPlan | None = None
    fringe_yarn: float = 0.0


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
class Measure:
    """One finished measurement of a piece, for its schematic and its text.

    Args:
        name: in words, "width at the bust", "armhole depth", unique in the piece.
        kind: a girth goes all round, a width is flat, a length runs along the work, an edge along
            an outline.
        got: what the whole numbers give, mm. wanted: what was asked, None when nothing was.
        count: the stitches, or for a length the rows, that give it.
        line: the two ends of its dimension line on the shape, mm; None when it is told only.
    """

    name: str
    kind: Literal["girth", "width", "length", "edge"]
    got: Measured
    wanted: float | None
    count: int
    because: Because
    line: tuple[tuple[float, float], tuple[float, float]] | None = None


@dataclass(frozen=True, slots=True)
class Shape:
    """The outline of a piece lying flat, right side up, as it is worn: y grows downwards, mm.

    Args:
        outlines: closed rings of corners; the first is the outer edge, others are holes in it. A
            tube lies folded: its widths are half its girths.
        lines: what is drawn inside: shaping lines, folds, the join; each a run of points.
        way: the direction in which the work grows, as a unit vector; None from the middle outwards.
    """

    outlines: tuple[tuple[tuple[float, float], ...], ...]
    lines: tuple[tuple[tuple[float, float], ...], ...] = ()
    way: tuple[float, float] | None = (0.0, 1.0)


@dataclass(frozen=True, slots=True)
class PiecePlan:
    """One piece, planned.

    Args:
        construction: which module of `plan.pieces` planned it.
        counts: stitches that each row of the piece leaves, its first row first.
        depths: lower edge of each row, as worn, mm below the top edge of the garment; for pieces
            that are not worn upright, how far along the piece it is. As long as `counts`.
        number_made: how many of it are made.
        girths: what each row measures, mm, where that is not its count times the width of a stitch:
            in stitch patterns. As long as `counts`, or empty.
        shape: for the schematic; None for a tube, whose silhouette is drawn from its landmarks.
    """

    name: str
    construction: str
    counts: tuple[int, ...] = ()
    depths: tuple[float, ...] = ()
    number_made: int = 1
    sections: tuple[SectionPlan, ...] = ()
    landmarks: tuple[Landmark, ...] = ()
    edging: EdgingPlan | None = None
    waist: ElasticPlan | CordPlan | BandPlan | None = None
    strands: tuple[StrandPlan, ...] = ()
    measures: tuple[Measure, ...] = ()
    shape: Shape | None = None
    girths: tuple[float, ...] = ()

    def girth_of(self, index: int, count: int, gauge: Gauge) -> float:
        """What a row measures, mm, by its index: what was planned, else its count in that gauge."""
        return self.girths[index] if self.girths else count * gauge.width.value


@dataclass(frozen=True, slots=True)
class JoinPlan:
    """Two edges that are joined: what each measures, and how one is spread over the other.

    Args:
        first, second: the edges by piece and name, "front left side".
        first_length, second_length: mm.
        limit: mm by which they may differ; the longer is eased in.
    """

    name: str
    first: str
    second: str
    first_length: Measured
    second_length: Measured
    limit: float
    because: Because


@dataclass(frozen=True, slots=True)
class Plan:
    """The plan of one garment for one body and swatch, with the row program that carries it out.

    Args:
        pieces: in the order worked; the first is the main piece.
        gauges: by section name, the gauge that its rows are worked to.
    """

    pieces: tuple[PiecePlan, ...]
    gauges: Mapping[str, Gauge]
    remarks: tuple[Remark, ...]
    program: Program
    joins: tuple[JoinPlan, ...] = ()

    @property
    def main(self) -> PiecePlan:
        """The piece that the garment hangs from."""
        return self.pieces[0]

    @property
    def landmarks(self) -> tuple[Landmark, ...]:
        """Those of all pieces."""
        return tuple(mark for piece in self.pieces for mark in piece.landmarks)

    @property
    def sections(self) -> tuple[SectionPlan, ...]:
        """Those of all pieces."""
        return tuple(section for piece in self.pieces for section in piece.sections)

    def piece(self, name: str) -> PiecePlan | None:
        """The plan of a piece; None for one that was not planned row by row, such as a trim."""
        return next((piece for piece in self.pieces if piece.name == name), None)
