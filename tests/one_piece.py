"""Plans of a single piece, as most tests want them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from frogless.plan.model import (
    BandPlan,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    Landmark,
    PiecePlan,
    Plan,
    Remark,
    SectionPlan,
    StrandPlan,
)
from frogless.rows.nodes import Program
from frogless.swatch import Gauge


def one_piece(
    landmarks: tuple[Landmark, ...],
    sections: tuple[SectionPlan, ...],
    edging: EdgingPlan | None,
    waist: ElasticPlan | CordPlan | BandPlan | None,
    strands: tuple[StrandPlan, ...],
    depths: tuple[float, ...],
    gauges: Mapping[str, Gauge],
    remarks: tuple[Remark, ...],
    program: Program,
) -> Plan:
    """A plan whose main piece is the first of the program."""
    counts = tuple(row.count for row in program.pieces[0].rows) if program.pieces else ()
    main = PiecePlan(
        name=program.pieces[0].name if program.pieces else "skirt",
        construction="tube",
        counts=counts,
        depths=depths,
        sections=sections,
        landmarks=landmarks,
        edging=edging,
        waist=waist,
        strands=strands,
    )
    return Plan((main,), gauges, remarks, program)


def alter(plan: Plan, **changes: Any) -> Plan:  # noqa: ANN401
    """The plan with its main piece changed."""
    return replace(plan, pieces=(replace(plan.main, **changes), *plan.pieces[1:]))
