"""What a pattern costs in yarn, and how high its rows are."""

from __future__ import annotations

import csv
from math import sqrt
from pathlib import Path

import pytest

from frogless.library.cost import arch, cost, row_height
from frogless.read.patterns import read_way, way_of
from frogless.rows.nodes import Chain, Repeat, Skip, Work
from frogless.stitches.load import dictionary
from frogless.stitches.patterns import WayText, patterns

AREA = Path(__file__).parents[2] / "reference" / "stitches" / "yarn_area.csv"


def rows_of(stitch: str) -> WayText:
    """A fabric of one stitch, its turning chain not counted."""
    chains = dictionary()[stitch].turning_chain
    name = dictionary()[stitch].terms["us"].abbreviation
    return WayText(
        f"Row 1 (RS): Ch {chains} (does not count as a st), *{name} in next st; "
        "rep from * across; turn.",
        1,
    )


@pytest.mark.parametrize(
    "row", list(csv.DictReader(AREA.read_text("utf-8").splitlines())), ids=lambda row: row["key"]
)
def test_yarn_over_an_area_matches_what_was_ravelled(row: dict[str, str]) -> None:
    """Plain fabrics against yarn ravelled from rows of one length."""
    way = read_way(rows_of(row["key"]), dictionary(), "us", closed=False, values={})
    found = cost(way, dictionary())
    assert row["source"]
    assert found.yarn == pytest.approx(float(row["yarn_per_area"]), abs=float(row["tolerance"]))


def test_stitches_of_a_repeat_are_counted_without_the_ends() -> None:
    """Two rows of moss stitch over a repeat of 2: a single and a chain each."""
    found = cost(way_of("moss", closed=False), dictionary())
    assert found.stitches == {"single_crochet": 2, "chain": 2}
    # Caught 2 for each single and 1 for each chain, over the area of 4 singles: 6 / 8.
    assert found.yarn == pytest.approx(0.75)


def test_arch_is_as_high_as_two_legs_when_pulled_up() -> None:
    """Five chains over three places: legs of 2.5 over half of 3, by Pythagoras 2."""
    assert arch(5, 3) == pytest.approx(sqrt(2.5**2 - 1.5**2)) == pytest.approx(2.0)


def test_flat_arch_encloses_what_it_does_at_45_degrees() -> None:
    """Of all spans under a run of five chains none encloses more: two legs of 2.5 at right angles."""
    most = max(span * sqrt(5**2 - span**2) / 2 for span in (n / 1000 for n in range(1, 5000)))
    assert most == pytest.approx(2.5 * 2.5, abs=1e-4)
    assert arch(5, 5) * 5 == pytest.approx(most, abs=1e-4)
    assert arch(2, 3) * 3 == pytest.approx(1.0)


def test_row_of_arches_is_higher_than_its_singles() -> None:
    """Chain 5 over three places and a single: 2 stitch widths, in heights of single crochet."""
    body = (Repeat((Work("single_crochet"), Chain(5), Skip(2)), 3),)
    assert row_height(body, dictionary()) == pytest.approx(2.0 / 0.9)
    assert row_height((Work("double_crochet", 4),), dictionary()) == 1.9


def test_arches_stand_as_wide_as_the_stitches_they_were_laid_over() -> None:
    """In later rows of a trellis over 4 an arch skips one single; it still is 4 stitches wide.

    Five chains over 4 lie flatter than at 45 degrees, where they span 5 / sqrt 2: the area counts,
    25 / 4 over 4. A single and five chains catch the yarn 7 times.
    """
    found = cost(way_of("trellis", closed=True), dictionary())
    assert found.height == pytest.approx(25 / 4 / 4 / 0.9)
    assert found.yarn == pytest.approx(7 / (4 * 2 * found.height))


def test_long_loops_are_arches_that_take_yarn_by_their_length() -> None:
    """Two knots, each 3 long, over 4 stitches; yarn of 3 catches and 2 chains more for each."""
    found = cost(way_of("knot_mesh", closed=False), dictionary())
    assert found.height == pytest.approx(sqrt(6**2 - 4**2) / 2 / 0.9)
    assert found.yarn == pytest.approx((2 * 5 + 2) / (4 * 2 * found.height))


def test_tall_and_short_stitches_share_a_row_evenly() -> None:
    """A single and a double in turn, which change places in the next row: (1 + 1.9) / 2."""
    body = (Repeat((Work("single_crochet"), Work("double_crochet")), 3),)
    assert row_height(body, dictionary()) == pytest.approx(1.45)


@pytest.mark.parametrize("key", patterns())
def test_every_pattern_has_a_likely_cost(key: str) -> None:
    """From open net to thick texture."""
    entry = patterns()[key]
    for closed, text in ((False, entry.rows), (True, entry.rounds)):
        if text is not None:
            found = cost(way_of(key, closed=closed), dictionary())
            assert 0.4 < found.yarn < 2
            assert found.height > 0.3
            assert sum(found.stitches.values()) > 0
