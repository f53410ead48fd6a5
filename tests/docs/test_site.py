"""The pages build without a fault, and fetch nothing from elsewhere."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from pages import DOCS, ROOT


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site, built strictly: a warning is a fault."""
    folder = tmp_path_factory.mktemp("site")
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict", "--site-dir"]
    done = subprocess.run(
        [*command, str(folder)], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    return folder


def test_every_page_is_built(site: Path) -> None:
    """One file each, and nothing that is no page."""
    assert {f.stem for f in DOCS.glob("*.md")} | {"404"} == {f.stem for f in site.glob("*.html")}
    assert not [*site.rglob("*.py")]


def test_pages_fetch_nothing(site: Path) -> None:
    """Scripts, styles, fonts and pictures lie beside the pages."""
    fetched = re.compile(
        r"<(?:script|link|img|iframe|source)\b[^>]*\b(?:src|href)=\"(?:https?:)?//[^\"]*\""
        r"|@import[^;]*//[^;]*;|url\(['\"]?(?:https?:)?//[^)]*\)"
    )
    texts = [f for f in site.rglob("*") if f.suffix in {".html", ".css"}]
    assert {hit for f in texts for hit in fetched.findall(f.read_text(encoding="utf-8"))} == set()
