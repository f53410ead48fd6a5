"""Bases from small files, for the planner's tests."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import Design, Made, basis, body, swatch

from frogless.plan.basis import Basis


@pytest.fixture
def made(tmp_path: Path) -> Made:
    """Makes a basis: a design of sections, a body in cm, a swatch of 18 × 10 in 10 cm."""

    def make(*sections: str, sample: str = "", person: str = "", **design: object) -> Basis:
        tables = design.pop("tables", ())
        text = Design(sections, tables=tuple(tables), **design).text  # type: ignore[arg-type]
        someone = person or body(waist_girth="84 cm", hip_girth="112 cm", waist_to_hip="20 cm")
        stitches = sample or swatch(27, 15, width="15 cm", height="15 cm")
        return basis(tmp_path, text, someone, stitches)

    return make
