"""Swatches for the tests, as files and as data."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from frogless.swatch import Reading, Swatch, Yarn

HEAD = """format = "frogless-swatch/1"
name = "main yarn"
stitch = "dc"
hook = "3.5 mm"
[yarn]
category = 3
fibre = "cotton"
ball_mass = "50 g"
ball_length = "120 m"
"""


@pytest.fixture
def swatch_file(tmp_path: Path) -> Callable[..., Path]:
    """`swatch_file('state = "washed"\\n…')` is a swatch file with one reading for each text."""

    def make(*readings: str, head: str = HEAD) -> Path:
        path = tmp_path / "swatch.toml"
        text = head + "".join(f"[[reading]]\n{reading}\n" for reading in readings)
        path.write_text(text, encoding="utf-8")
        return path

    return make


@pytest.fixture
def make_swatch() -> Callable[..., Swatch]:
    """`make_swatch(Reading(…))` is a swatch of double crochet in a yarn of category 4."""

    def make(*readings: Reading, category: int | None = 4, hook: float = 6.0) -> Swatch:
        long = 15_000.0 if category == 7 else 120_000.0
        yarn = Yarn("", category, "wool", 50.0, long)
        return Swatch("main", "double_crochet", hook, yarn, "swatch.toml", readings)

    return make
