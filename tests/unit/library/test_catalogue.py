"""The page of the library."""

from __future__ import annotations

import re
from pathlib import Path

from frogless.library.catalogue import catalogue
from frogless.library.items import items

PAGE = Path(__file__).parents[3] / "docs" / "catalogue.md"


def test_page_is_the_one_that_the_library_makes() -> None:
    """`python docs/make_catalogue.py` makes it anew."""
    assert PAGE.read_text(encoding="utf-8") == catalogue()


def test_page_has_everything_and_every_link_leads_there() -> None:
    """Each key once at least; each pattern of the table has its heading."""
    page = PAGE.read_text(encoding="utf-8")
    assert all(f"`{item.key}`" in page for item in items())
    headings = {
        re.sub(r"[^\w -]", "", line[4:]).lower().replace(" ", "-")
        for line in page.splitlines()
        if line.startswith("### ")
    }
    assert set(re.findall(r"\]\(#([^)]+)\)", page)) <= headings
