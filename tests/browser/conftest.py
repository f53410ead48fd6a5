"""A browser, and the sample pattern open in it."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright
from running_studio import PHONE, Studio, opened, owner_of, running
from sample_pattern import pattern

from frogless.publish.webpage import webpage

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
"""Root may not use the sandbox, and nothing here shows a stranger's page or talks to anybody."""

NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")


def chromium() -> str:
    """The browser of the system, or the one that FROGLESS_CHROMIUM names."""
    found = os.environ.get("FROGLESS_CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), "")
    assert found, "no Chromium on this machine; install it or name it in FROGLESS_CHROMIUM"
    return found


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One browser for all tests."""
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium(), args=QUIET)
        yield started
        started.close()


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The sample pattern as a file."""
    file: Path = tmp_path_factory.mktemp("page") / "pattern.html"
    file.write_text(webpage(pattern()), encoding="utf-8")
    return file.as_uri()


@pytest.fixture
def page(browser: Browser, address: str) -> Iterator[Page]:
    """The sample pattern on a phone, without scripts of its own being let in."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    opened = context.new_page()
    opened.goto(address)
    yield opened
    context.close()


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Studio]:
    """The studio running over a library that the tests of a module share."""
    with running(tmp_path_factory.mktemp("data")) as started:
        yield started


@pytest.fixture(scope="module")
def owner(browser: Browser, studio: Studio) -> dict[str, str]:
    """The cookie of the person who started it."""
    return owner_of(browser, studio)


@pytest.fixture
def desk(browser: Browser, studio: Studio, owner: dict[str, str]) -> Iterator[Page]:
    """The first page in a wide window."""
    with opened(browser, studio, owner) as page:
        yield page


@pytest.fixture
def phone(browser: Browser, studio: Studio, owner: dict[str, str]) -> Iterator[Page]:
    """The first page on a phone."""
    with opened(browser, studio, owner, viewport=PHONE, has_touch=True) as page:
        yield page


@pytest.fixture
def unscripted(browser: Browser, studio: Studio, owner: dict[str, str]) -> Iterator[Page]:
    """The first page in a browser that runs no scripts."""
    with opened(browser, studio, owner, java_script_enabled=False) as page:
        yield page
