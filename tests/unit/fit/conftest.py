"""A flared skirt of 60 rounds (152, 208 and 256 stitches) as a plan, built by hand."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest
from one_piece import one_piece

from frogless.because import Because
from frogless.body.measurements import Body, Measurement
from frogless.plan.model import (
    BandPlan,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    Landmark,
    Plan,
    StrandPlan,
)
from frogless.rows.nodes import Chain, End, Piece, Program, Row, Work
from frogless.swatch import Gauge
from frogless.units import Measured

WIDTH, HEIGHT = 100 / 18, 10.0
SHAPED = {*range(1, 20, 3), *range(23, 59, 7)}
GAUGE = Gauge("double_crochet", Measured(WIDTH, WIDTH * 0.01), Measured(HEIGHT, 0.1), "washed")


def skirt_counts(start: int = 152) -> tuple[int, ...]:
    """Counts of the rounds, foundation first."""
    counts = [start]
    for number in range(1, 61):
        counts.append(counts[-1] + (8 if number in SHAPED else 0))
    return tuple(counts)


def make_landmark(key: str, rounds: int, count: int, body: float | None, wanted: float) -> Landmark:
    """A landmark with the garment's girth from its count, allowed 2 cm to either side."""
    garment = Measured(count * WIDTH, count * WIDTH * 0.01)
    return Landmark(
        key=key,
        depth=rounds * HEIGHT,
        body=None if body is None else Measured(body),
        estimated=False,
        wanted=wanted,
        low=wanted - 20,
        high=wanted + 20,
        rounds=rounds,
        count=count,
        garment=garment,
        because=Because(),
    )


@pytest.fixture
def landmark() -> Callable[..., Landmark]:
    """Makes one landmark."""
    return make_landmark


@pytest.fixture
def skirt() -> Callable[..., Plan]:
    """Makes the plan, begun with foundation stitches unless `chain`."""

    def make(
        *,
        counts: tuple[int, ...] = skirt_counts(),
        chain: bool = False,
        closed: bool = True,
        joined: bool = True,
        waist: ElasticPlan | CordPlan | BandPlan | None = None,
        edging: EdgingPlan | None = None,
        strands: tuple[StrandPlan, ...] = (),
        waist_girth: float = 840.0,
        hip_girth: float = 1120.0,
    ) -> Plan:
        first = Chain(counts[0], each=True) if chain else Work("foundation", counts[0])
        end = End("first_stitch" if joined else "none")
        rows = [Row(0, "RS", "start", (first,), counts[0])]
        for number, (below, count) in enumerate(pairwise(counts), 1):
            rows.append(Row(number, "RS", "body", (Work("double_crochet", below),), count, end=end))
        landmarks = (
            make_landmark("waist_girth", 0, counts[0], waist_girth, 840.0),
            make_landmark("hip_girth", 20, counts[min(20, len(counts) - 1)], hip_girth, 1160.0),
            make_landmark("hem", len(counts) - 1, counts[-1], None, 1420.0),
        )
        return one_piece(
            landmarks=landmarks,
            sections=(),
            edging=edging,
            waist=waist,
            strands=strands,
            depths=tuple(HEIGHT * number for number in range(len(counts))),
            gauges={"body": GAUGE},
            remarks=(),
            program=Program((Piece("skirt", closed, tuple(rows)),)),
        )

    return make


@pytest.fixture
def body() -> Callable[..., Body]:
    """Makes a body from measurements in mm."""

    def make(age: float | None = None, **girths: float) -> Body:
        known = {key: Measurement(key, Measured(value)) for key, value in girths.items()}
        return Body("someone", known, file="someone.toml", age=age)

    return make


@pytest.fixture
def elastic() -> Callable[..., ElasticPlan]:
    """Makes a covered elastic of nine tenths of an 84 cm waist."""

    def make(kind: str = "knitted", finished: float = 756.0) -> ElasticPlan:
        return ElasticPlan(
            width=20.0,
            kind=kind,
            finished=finished,
            lap=25.0,
            cut=finished + 25.0,
            base_count=152,
            stitches_in_each=2,
            cover_count=304,
            needed_stretch=1120 / finished,
            comfortable_stretch=1.4,
            because=Because(),
        )

    return make


@pytest.fixture
def cord() -> Callable[..., CordPlan]:
    """Makes a drawcord with 20 eyelets."""

    def make(length: float = 1540.0) -> CordPlan:
        return CordPlan(2, (8,) * 12 + (7,) * 8, length, Because())

    return make


@pytest.fixture
def band() -> Callable[..., BandPlan]:
    """Makes a ribbed band."""

    def make(girth: float = 700.0) -> BandPlan:
        return BandPlan(40.0, 8, 98, Measured(girth, 7.0), 144, (1,) * 98, 1060 / girth, Because())

    return make


@pytest.fixture
def strand() -> StrandPlan:
    """A beaded strand with twelve beads."""
    return StrandPlan(
        name="strand", span=180.0, sag=50.0, wanted=213.0, length=Measured(216.0), actual_sag=53.0,
        repeats=12, chains_between=3, beads=12, spare_beads=2, chains=36, plies=2, yarn_plies=4,
        cut_yarn=900.0, bead_hole=1.0, bead_diameter=3.0, hook=0.6,
        strand_diameter=0.5, tails=150.0, from_stitch=-16, to_stitch=16, sampled=True,
        because=Because(),
    )  # fmt: skip
