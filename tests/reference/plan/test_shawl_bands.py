"""A shawl with a band of another stitch: its yarn is that of its stitches, band by band."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import body, swatch, table

from frogless import draft
from frogless.tally.model import YarnNeed

SINGLE = (
    'stitch = "sc"\nstate = "washed"\nstitches = 18\nwidth = "10 cm"\nrows = 20\n'
    'height = "10 cm"\nmass = "9 g"'
)


def need(folder: Path, *bands: str) -> YarnNeed:
    """The yarn of a triangle in double crochet that weighs 6 g in 10 × 10 cm, single crochet 9 g."""
    texts = {
        "design": "\n".join(
            [
                'format = "frogless-design/1"\ntitle = "Sample"',
                table("garment", kind="shawl"),
                table("work", stitch="double_crochet", turning_chain=3),
                table("[piece]", construction="shawl", name="shawl", depth="40 cm"),
                *bands,
            ]
        ),
        "body": body(stature="168 cm"),
        "swatch": swatch(18, 10, more='mass = "6 g"', readings=[SINGLE]),
    }
    for name, text in texts.items():
        (folder / f"{name}.toml").write_text(text, encoding="utf-8")
    files = [folder / f"{name}.toml" for name in texts]
    made = draft.draft(draft.Request(files[0], files[1], (files[2],)))
    (yarn,) = made.drafted.tally.yarn
    return yarn


def test_a_band_weighs_what_its_own_stitch_weighs(tmp_path: Path) -> None:
    """Half way out single crochet begins, which is 1.5 times as heavy.

    Rows grow with their distance from the middle, so the outer half of the rows is three quarters
    of the triangle: 1/4 × 6 + 3/4 × 9 = 8.25 g in 10 × 10 cm, where the square rule without the
    band's own weight says 6.
    """
    plain = need(tmp_path)
    banded = need(
        tmp_path,
        table("[piece.band]", name="middle", length="14 cm"),
        table("[piece.band]", name="rim", stitch="single_crochet"),
    )
    assert plain.mass.value == pytest.approx(0.16 * 600, rel=0.08)
    assert banded.mass.value / plain.mass.value == pytest.approx(8.25 / 6, rel=0.06)
