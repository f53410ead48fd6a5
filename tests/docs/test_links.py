"""Links lead somewhere, and every page can be reached."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pages import DOCS, ROOT, papers

LINK = re.compile(r"\]\((?P<target>[^)\s]+)\)")
REMOTE = ("https://pipx.pypa.io",)  # the one program that the README sends people to


def targets(paper: Path) -> list[str]:
    """Where a paper links to."""
    return [found["target"] for found in LINK.finditer(paper.read_text(encoding="utf-8"))]


def anchors(file: Path) -> set[str]:
    """The anchors of a page's headings, as they are made of their words."""
    headings = re.findall(r"^#+ (.+)$", file.read_text(encoding="utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", text.lower()).strip().replace(" ", "-") for text in headings}


@pytest.mark.parametrize("paper", papers(), ids=lambda p: p.relative_to(ROOT).as_posix())
def test_link_leads_somewhere(paper: Path) -> None:
    """To a file here, and to a heading in it when it says so."""
    broken = []
    for target in targets(paper):
        if target.startswith(REMOTE):
            continue
        name, _, anchor = target.partition("#")
        file = (paper.parent / name).resolve() if name else paper
        if not file.is_file() or (anchor and anchor not in anchors(file)):
            broken.append(target)
    assert broken == []


def test_every_page_is_linked_from_the_first_one() -> None:
    """Nobody has to guess an address."""
    linked = {target for target in targets(DOCS / "index.md") if target.endswith(".md")}
    assert {page.name for page in DOCS.glob("*.md")} - {"index.md"} == linked


def test_every_page_is_in_the_contents() -> None:
    """In the site's own list, too."""
    contents = re.findall(
        r": ([\w-]+\.md)$", (ROOT / "mkdocs.yml").read_text("utf-8"), re.MULTILINE
    )
    assert sorted(contents) == sorted(page.name for page in DOCS.glob("*.md"))
