"""The small pictures of garments."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from examples import TEXTS, Example
from lxml import etree

from frogless import draft
from frogless.draw.drawing import Drawing, Path
from frogless.draw.layout import Box, extent
from frogless.draw.silhouette import MARGIN, SIDE, kind_of, silhouette
from frogless.draw.styles import STYLES
from frogless.draw.svg import svg
from frogless.plan.make import plan
from frogless.plan.model import Plan

KINDS = {
    "skirt": {name for name in TEXTS if name.endswith("skirt")},
    "shawl": {"half-moon-shawl", "moth-wing-shawl", "torchlight-shawl"},
    "hat": {"haymaker-hat", "lantern-cap"},
    "bag": {"drum-bag", "rosin-bag"},
    "cardigan": {"fiddler-cardigan"},
    "top": {
        "harvest-top",
        "hayfield-pullover",
        "maypole-camisole",
        "midsummer-dress",
        "ribbon-dance-top",
        "sluice-top",
    },
}
WANTED = {name: kind for kind, names in KINDS.items() for name in names}


@cache
def planned(name: str) -> Plan:
    """The plan of an example, made once."""
    design, body, swatch = Example(name).files
    return plan(draft.load(draft.Request(design, body, (swatch,)))[0])


def paths(drawing: Drawing, style: str) -> list[Path]:
    """The paths of one class."""
    return [s for s in drawing.shapes if isinstance(s, Path) and s.style == style]


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_design_is_drawn_as_what_it_is(name: str) -> None:
    """Skirt, top, cardigan, hat, bag or shawl; the words say it too."""
    assert kind_of(planned(name)) == WANTED[name]
    assert WANTED[name] in silhouette(planned(name)).description


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_picture_fills_its_square_and_stays_inside(name: str) -> None:
    """Nothing sticks out, the garment is as large as the square lets it be, in the middle."""
    drawing = silhouette(planned(name), title=name)
    box = extent(drawing.shapes)
    assert (drawing.width, drawing.height, drawing.title) == (SIDE, SIDE, name)
    assert Box(0, 0, SIDE, SIDE).holds(box)
    largest = max(box.right - box.left, box.bottom - box.top)
    assert largest == pytest.approx(SIDE - 2 * MARGIN, abs=0.01)
    assert (box.left + box.right) / 2 == pytest.approx(SIDE / 2)
    assert (box.top + box.bottom) / 2 == pytest.approx(SIDE / 2)


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_picture_is_small_and_has_no_numbers(name: str) -> None:
    """Well-formed, without lettering or style attributes, the same each time."""
    text = svg(silhouette(planned(name)))
    root = etree.fromstring(text.encode())
    assert "style" not in {key for element in root.iter() for key in element.attrib}
    assert not silhouette(planned(name)).texts
    assert len(text) < 40_000
    assert svg(silhouette(planned(name))) == text


def test_edging_in_repeats_is_scalloped_and_another_is_even() -> None:
    """The decorated edge tells the two apart."""
    fancy = paths(silhouette(planned("ring-dance-skirt")), "trimming")[-1]
    even = paths(silhouette(planned("hop-garden-skirt")), "trimming")[-1]
    assert any(len(segment) == 2 for segment in fancy.segments)
    assert all(len(segment) == 1 for segment in even.segments)


def test_full_hem_falls_in_folds_and_a_narrow_one_does_not() -> None:
    """A circle of cloth waves at its hem; folds of a gathered waist stay short."""
    folds = {
        name: max(
            extent([fold]).bottom - extent([fold]).top
            for fold in paths(silhouette(planned(name)), "fold")
        )
        for name in ("sunwheel-skirt", "procession-skirt")
    }
    assert folds["sunwheel-skirt"] > 2 * folds["procession-skirt"]


def test_tiered_skirt_widens_from_tier_to_tier() -> None:
    """Each tier is drawn, the lower the wider."""
    tiers = [extent([cloth]) for cloth in paths(silhouette(planned("millrace-skirt")), "cloth")]
    by_depth = sorted(tiers, key=lambda box: box.bottom)
    widths = [box.right - box.left for box in by_depth]
    assert len(widths) == 3
    assert widths == sorted(widths)


@pytest.mark.parametrize("name", ["harvest-top", "fiddler-cardigan", "hayfield-pullover"])
def test_garment_with_sleeves_is_symmetric_and_has_both(name: str) -> None:
    """A sleeve on either side, each the other's mirror image."""
    boxes = [extent([cloth]) for cloth in paths(silhouette(planned(name)), "cloth")]
    left = min(boxes, key=lambda box: box.left)
    right = max(boxes, key=lambda box: box.right)
    assert SIDE - right.right == pytest.approx(left.left)
    assert right.left > SIDE / 2 - 12
    assert right.bottom == pytest.approx(left.bottom)


def test_bag_and_camisole_have_their_handles() -> None:
    """Two of each."""
    for name in ("drum-bag", "rosin-bag", "maypole-camisole"):
        assert len(paths(silhouette(planned(name)), "strap")) == 2


def test_anything_else_is_shown_as_its_pieces() -> None:
    """A panel alone lies flat; a plan without any shape still gives a picture."""
    bag = planned("rosin-bag")
    alone = replace(bag, pieces=bag.pieces[:1])
    assert kind_of(alone) == "pieces"
    assert len(paths(silhouette(alone), "outline")) == 1
    bare = replace(alone, pieces=(replace(alone.main, shape=None),))
    assert paths(silhouette(bare), "outline")


def test_every_class_has_its_look() -> None:
    """No picture uses a class without paint."""
    used = {s.style for name in TEXTS for s in silhouette(planned(name)).shapes}
    assert used <= set(STYLES)
