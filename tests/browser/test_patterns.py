"""The published examples on a phone and on a desk, as a browser meets them."""

from __future__ import annotations

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from examples import Example
from playwright.sync_api import Browser
from published import EDITIONS, published

from frogless.publish.webpage import webpage

WIDTHS = (360, 1200)
DRAFTS = [
    (Example("ring-dance-skirt"), EDITIONS[0]),
    (Example("procession-skirt"), EDITIONS[1]),
]


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize(("example", "edition"), DRAFTS, ids=str)
def test_pattern_is_accessible_and_keeps_to_the_window(
    browser: Browser, tmp_path: Path, example: Example, edition: tuple[str, str], width: int
) -> None:
    """No finding of axe, nothing but tables scrolls sideways, and drawings can be read."""
    file = tmp_path / "pattern.html"
    file.write_text(webpage(published(example, *edition)), encoding="utf-8")  # type: ignore[arg-type]
    # The page's own policy keeps the checker out as well; only for it the policy is set aside.
    context = browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True)
    page = context.new_page()
    page.goto(file.as_uri())
    results = Axe().run(page)
    overflow = page.evaluate("document.documentElement.scrollWidth")
    smallest = page.evaluate(
        "Math.min(...[...document.querySelectorAll('svg text:not([transform])')]"
        ".map(t => t.getBoundingClientRect().height))"
    )
    context.close()
    assert results.violations_count == 0, results.generate_report()
    assert overflow == width
    assert smallest > 9
