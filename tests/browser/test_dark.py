"""Drawings in the dark: their paper does not glare, and their ink can be read on it."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser
from running_studio import DESK, Studio, opened

DIM = "e => getComputedStyle(e).filter"
PLACES = [
    ("/", ".large"),
    ("/start/", ".card .picture"),
    ("/start/example:ring-dance-skirt/", ".whole img"),
    ("/designs/", ".card .picture"),
    ("/swatches/", ".swatches > li > img"),
]


def luminance(color: str, dimmed: float = 1) -> float:
    """Relative luminance of a color like "#1d1b18"; source: WCAG 2.2."""
    parts = [dimmed * int(color[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    light = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]


@pytest.mark.parametrize(("path", "drawn"), PLACES)
def test_drawings_are_dimmed_in_the_dark_alone(
    browser: Browser, studio: Studio, owner: dict[str, str], path: str, drawn: str
) -> None:
    """With enough contrast left for the quietest ink (4.5 to 1, WCAG 2.2, 1.4.3)."""
    for scheme in ("light", "dark"):
        with opened(browser, studio, owner, viewport=DESK, color_scheme=scheme) as page:
            page.goto(f"{studio.address}{path}")
            found = page.locator(drawn).first.evaluate(DIM)
        if scheme == "light":
            assert found == "none"
            continue
        dimmed = float(found.removeprefix("brightness(").removesuffix(")"))
        assert 0.7 < dimmed < 0.9
        paper, ink = luminance("#ffffff", dimmed), luminance("#55504a", dimmed)
        assert (paper + 0.05) / (ink + 0.05) > 4.5
