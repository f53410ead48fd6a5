"""Bodies for the tests, as files and as data."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from frogless.body.measurements import Body, Measurement
from frogless.units import Measured


@pytest.fixture
def make_body() -> Callable[..., Body]:
    """`make_body(waist_girth=720)` is a body with a waist of 72 cm ± 5 mm."""

    def make(*, age: float | None = None, **sizes: float) -> Body:
        measured = {key: Measurement(key, Measured(size, 5.0)) for key, size in sizes.items()}
        return Body("somebody", measured, "body.toml", age)

    return make


@pytest.fixture
def body_file(tmp_path: Path) -> Callable[..., Path]:
    """`body_file('waist_girth = "72 cm"')` is a body file with that measurement."""

    def make(*measurements: str, head: str = "") -> Path:
        path = tmp_path / "body.toml"
        lines = ['format = "frogless-body/1"', 'name = "Dancer 3"', head, "[measurements]"]
        path.write_text("\n".join((*lines, *measurements)), encoding="utf-8")
        return path

    return make
