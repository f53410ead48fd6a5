"""Small garments as plans and fabrics, and a swatch that was weighed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest
from one_piece import one_piece

from frogless.because import Because
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.plan.model import CordPlan, ElasticPlan, Plan, StrandPlan
from frogless.rows.nodes import Piece, Program, Row, Seam, Work
from frogless.stitches.load import dictionary
from frogless.stitches.model import Stitch
from frogless.swatch import Gauge, Reading, Swatch, Yarn
from frogless.units import Measured

GAUGE = Gauge("double_crochet", Measured(100 / 18, 100 / 18 * 0.02), Measured(10.0, 0.15), "washed")
LABEL = Yarn("main yarn", 3, "cotton", 50.0, 120_000.0)


@pytest.fixture
def stitches() -> Mapping[str, Stitch]:
    """The dictionary."""
    return dictionary()


@pytest.fixture
def label() -> Yarn:
    """50 g and 120 m of cotton."""
    return LABEL


@pytest.fixture
def swatch() -> Callable[..., Swatch]:
    """Makes a swatch of 27 by 15 double crochets on 15 by 15 cm."""

    def make(*, mass: float | None = 9.0, yarn: Yarn = LABEL) -> Swatch:
        reading = Reading("double_crochet", "washed", 4.0, 27, 150.0, 15, 150.0, mass=mass)
        return Swatch("swatch", "double_crochet", 4.0, yarn, readings=(reading,))

    return make


@pytest.fixture
def rows() -> Callable[..., tuple[Row, ...]]:
    """Makes rounds of one stitch."""

    def make(count: int = 100, number: int = 10, **more: object) -> tuple[Row, ...]:
        stitch = str(more.pop("stitch", "double_crochet"))
        section = str(more.pop("section", "body"))
        return tuple(
            Row(n, "RS", section, (Work(stitch, count),), count, **more)  # type: ignore[arg-type]
            for n in range(1, number + 1)
        )

    return make


@pytest.fixture
def plan() -> Callable[..., Plan]:
    """Makes a plan that has what the tally asks for."""

    def make(
        *pieces: tuple[Row, ...],
        waist: ElasticPlan | CordPlan | None = None,
        strands: tuple[StrandPlan, ...] = (),
        seams: tuple[Seam, ...] = (),
        gauges: Mapping[str, Gauge] | None = None,
    ) -> Plan:
        made = tuple(
            Piece(f"piece {n}", closed=True, rows=rows) for n, rows in enumerate(pieces, 1)
        )
        return one_piece(
            (), (), None, waist, strands, (0.0,), gauges or {"body": GAUGE}, (),
            Program(made, seams),
        )  # fmt: skip

    return make


@pytest.fixture
def fabric(stitches: Mapping[str, Stitch]) -> Callable[[Plan], Fabric]:
    """Expands the program of a plan."""

    def make(plan: Plan) -> Fabric:
        return expand(plan.program, stitches)

    return make


@pytest.fixture
def elastic() -> ElasticPlan:
    """A covered elastic, 20 mm wide."""
    return ElasticPlan(20.0, "knitted", 756.0, 25.0, 781.0, 152, 2, 304, 1120 / 756, 1.4, Because())


@pytest.fixture
def cord() -> CordPlan:
    """A drawcord of 154 cm through 20 eyelets."""
    return CordPlan(2, (8,) * 12 + (7,) * 8, 1540.0, Because())


@pytest.fixture
def strand() -> Callable[..., StrandPlan]:
    """Makes a beaded strand with twelve beads and two spare."""

    def make(*, hole: float = 1.0, name: str = "strand") -> StrandPlan:
        return StrandPlan(
            name=name, span=180.0, sag=50.0, wanted=213.0, length=Measured(216.0), actual_sag=53.0,
            repeats=12, chains_between=3, beads=12, spare_beads=2, chains=36, plies=2, yarn_plies=4,
            cut_yarn=1400.0, bead_hole=hole, bead_diameter=3.0, hook=0.6, strand_diameter=0.45,
            tails=150.0, from_stitch=-16, to_stitch=16, sampled=True, because=Because(),
        )  # fmt: skip

    return make
