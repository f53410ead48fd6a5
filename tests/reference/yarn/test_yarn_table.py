"""The yarn table of the package against the printed one, and against the table of hooks."""

from __future__ import annotations

import csv
from dataclasses import replace
from importlib import resources
from itertools import pairwise
from pathlib import Path

import pytest

from frogless.swatch import Reading, Swatch, Yarn, advice, yarn_ranges

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    """A table of this folder."""
    return list(csv.DictReader((HERE / name).read_text("utf-8").splitlines()))


PACKAGED = list(
    csv.DictReader(
        (resources.files("frogless") / "data" / "yarn_weights.csv").read_text("utf-8").splitlines()
    )
)


@pytest.mark.parametrize("printed", rows("yarn_table.csv"), ids=lambda row: row["name"])
def test_category_is_as_printed(printed: dict[str, str]) -> None:
    """Gauge in 4 in, hook in mm; category 0 is counted in double crochet, the rest in single."""
    assert printed["source"]
    ours = yarn_ranges()[int(printed["category"])]
    assert (ours.name, ours.stitch) == (printed["name"], printed["stitch"])
    assert ours.gauge == (float(printed["gauge_low"]), float(printed["gauge_high"]))
    assert ours.hook == (float(printed["hook_low"]), float(printed["hook_high"]))


def test_hooks_of_the_yarn_table_are_those_of_the_hook_table() -> None:
    """Where both give a size in mm and a US label, they name the same hook."""
    regular = [row for row in rows("hook_sizes.csv") if row["hook_type"] == "regular"]
    labels = {float(r["mm"]): r["us_label"] for r in regular if r["basis"] == "published"}
    for row in PACKAGED:
        for end in ("low", "high"):
            size, label = row[f"hook_mm_{end}"], row[f"hook_us_{end}"]
            if size and not label.startswith("steel"):
                # The hook table says M/N-13 where the yarn table says M-13.
                assert label.replace("M-13", "M/N-13") == labels[float(size)]


def test_thicker_yarn_has_fewer_stitches_and_a_larger_hook() -> None:
    """Categories follow each other without gaps in the hooks."""
    for thin, thick in pairwise(yarn_ranges()[category] for category in range(1, 8)):
        assert thin.gauge[1] > thick.gauge[1]
        assert thin.hook[1] == thick.hook[0]


def test_firm_skirt_of_light_yarn_needs_no_remark() -> None:
    """Category 3 on 3.75 mm is common for skirts (common practice), one size under the table's."""
    reading = Reading("single_crochet", "washed", 3.75, 17, 100.0, 19, 100.0)
    swatch = Swatch("x", "single_crochet", 3.75, Yarn("", 3, "", None, None), readings=(reading,))
    assert advice(swatch) == ()
    (told,) = advice(replace(swatch, hook=3.5))
    assert "nothing is wrong with that" in told
