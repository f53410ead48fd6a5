"""What designs are like, derived from their documents alone."""

from __future__ import annotations

import pytest
from designs_made import FAULTY

from frogless.design.load import parse_design
from frogless.studio.designs.facets import FACETS, PATTERN, facets
from frogless.studio.designs.facts import facts, label
from frogless.studio.designs.least import LEAST
from frogless.studio.examples import examples

EXAMPLES = sorted(examples("design"))


def of(key: str) -> dict[str, tuple[str, ...]]:
    """What an example has of each facet."""
    return dict(facets(parse_design(examples("design")[key].text).checked))


@pytest.mark.parametrize("key", EXAMPLES)
def test_every_example_has_its_facets(key: str) -> None:
    """Each is of a kind, worked somehow, in some stitch, of some shape; nothing without a label."""
    found = of(key)
    assert set(found) == {facet.key for facet in FACETS}
    assert all(found[facet] for facet in ("kind", "worked", "shape", "stitch"))
    for facet in FACETS:
        unknown = set(found[facet.key]) - set(facet.labels)
        assert unknown == set() or facet.key == "stitch"
    assert all(label("stitch", value, "us") for value in found["stitch"])


@pytest.mark.parametrize(
    ("key", "facet", "value"),
    [
        ("haymaker-hat", "worked", "spiral"),
        ("haymaker-hat", "worked", "middle"),
        ("hayfield-pullover", "worked", "neck"),
        ("hayfield-pullover", "details", "sleeves"),
        ("fiddler-cardigan", "worked", "seams"),
        ("fiddler-cardigan", "worked", "rows"),
        ("fiddler-cardigan", "details", "sleeves"),
        ("sunwheel-skirt", "shape", "circle"),
        ("kerchief-skirt", "shape", "square"),
        ("windmill-skirt", "shape", "gores"),
        ("millrace-skirt", "shape", "tiers"),
        ("procession-skirt", "shape", "straight"),
        ("procession-skirt", "details", "band"),
        ("ring-dance-skirt", "shape", "fitted"),
        ("ring-dance-skirt", "shape", "flared"),
        ("ring-dance-skirt", "details", "beads"),
        ("whirl-skirt", "details", "cord"),
        ("rosin-bag", "details", "cord"),
        ("torchlight-shawl", "details", "stripes"),
        ("moth-wing-shawl", "shape", "triangle"),
        ("half-moon-shawl", "shape", "crescent"),
        ("bellflower-skirt", "stitch", PATTERN),
        ("sluice-top", "stitch", PATTERN),
    ],
)
def test_what_is_written_is_found(key: str, facet: str, value: str) -> None:
    """As the titles and summaries of the examples say it themselves."""
    assert value in of(key)[facet]


@pytest.mark.parametrize(
    ("key", "facet", "value"),
    [
        ("procession-skirt", "shape", "flared"),
        ("millrace-skirt", "shape", "straight"),
        ("moth-wing-shawl", "worked", "seams"),
        ("drum-bag", "details", "elastic"),
        ("maypole-camisole", "details", "sleeves"),
    ],
)
def test_what_is_not_there_is_not_found(key: str, facet: str, value: str) -> None:
    """A straight skirt is not flared, tiers are not straight, straps are no sleeves."""
    assert value not in of(key)[facet]


def test_a_change_of_the_document_changes_its_facets() -> None:
    """Nothing is listed by design."""
    before = dict(facets(parse_design(LEAST).checked))
    text = LEAST.replace('rounds = "joined and turned"', 'rounds = "spiral"')
    text = text.replace(
        'kind = "covered elastic"\npercent = 95\nwidth = "6 mm"\nstitches_in_each = 1',
        'kind = "drawcord"',
    )
    after = dict(facets(parse_design(text).checked))
    assert (before["worked"], after["worked"]) == (("joined",), ("spiral",))
    assert (before["details"], after["details"]) == (("elastic",), ("cord",))


def test_text_that_cannot_be_read_has_a_fault_and_no_facets() -> None:
    """The fault says its line."""
    found = facts(FAULTY)
    assert found.fault.startswith("line 23, section[1].eese: unknown key")
    assert (found.facets, found.title) == ((), "")
