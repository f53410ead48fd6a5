"""A studio that runs, and pages of it in a browser that must have nothing to complain of."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, expect

PHONE = {"width": 390, "height": 844}
SMALL_PHONE = {"width": 320, "height": 640}
DESK = {"width": 1280, "height": 900}

AXE = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "resultTypes": ["violations"],  # what passes is only counted, which takes half the time
}

OVERFLOW = """() => [...document.body.querySelectorAll('*')]
    .filter(e => !e.closest('.scroll, .tabs, .skip, .unseen, svg') && e.checkVisibility())
    .filter(e => e.getBoundingClientRect().right > innerWidth + 0.5)
    .map(e => e.outerHTML.slice(0, 80))"""

SMALL = """() => [...document.querySelectorAll('a, button, input, select, textarea, summary')]
    .filter(e => e.checkVisibility() && !e.matches('.skip') && !e.closest('p, li:not(:has(> a:only-child)), dd'))
    .filter(e => { const r = e.getBoundingClientRect(); return r.width < 24 || r.height < 24 })
    .map(e => e.outerHTML.slice(0, 80))"""

# A draft is made within a tenth of a second; a machine that does ten other things takes longer.
expect.set_options(timeout=30_000)


@dataclass(frozen=True, slots=True)
class Studio:
    """A running studio: its address, the link that was printed, its process."""

    address: str
    link: str
    process: subprocess.Popen[str]


@contextmanager
def running(data: Path, port: int = 0) -> Iterator[Studio]:
    """The studio over the library in a folder, until the block is left."""
    process = subprocess.Popen(
        [sys.executable, "-m", "frogless", "studio", "--no-browser", "--port", str(port)],
        env={**os.environ, "FROGLESS_DATA": str(data)},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout
    link = process.stdout.readline().split()[-1]
    address = link.partition("/enter/")[0]
    try:
        yield Studio(address, link, process)
    finally:
        process.kill()
        process.wait()
        # Its workers still hold the other end for a moment.
        process.stdout.close()


@contextmanager
def opened(
    browser: Browser, studio: Studio, owner: dict[str, str], **options: object
) -> Iterator[Page]:
    """A page of the owner's; at the end nothing was said in the console and nobody else was asked.

    Args:
        owner: the owner's cookie as the browser keeps it.
        options: of the browser's context: `viewport`, `color_scheme`, `java_script_enabled`.
    """
    context = browser.new_context(**{"viewport": DESK, "accept_downloads": True, **options})  # type: ignore[arg-type]
    context.add_cookies([owner])  # type: ignore[list-item]
    page = context.new_page()
    said: list[str] = []
    asked: list[str] = []

    def note_message(message: ConsoleMessage) -> None:
        # A change while another is on its way calls that one off; htmx notes this. A refusal with a
        # sentence (409, 422) is an answer, which the browser notes as well.
        if message.text.startswith(("htmx:afterRequest", "htmx:sendAbort")):
            return
        if "status of 422" in message.text or "status of 409" in message.text:
            return
        said.append(message.text)

    def note_request(request: Request) -> None:
        asked.append(request.url)

    page.on("console", note_message)
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", note_request)
    page.goto(f"{studio.address}/")
    yield page
    context.close()
    assert said == []
    assert [url for url in asked if not url.startswith((studio.address, "data:"))] == []


def owner_of(browser: Browser, studio: Studio) -> dict[str, str]:
    """The owner's cookie: the link is opened, which works once."""
    context = browser.new_context()
    context.new_page().goto(studio.link)
    cookies = context.cookies()
    context.close()
    found = next(c for c in cookies if c["name"].startswith("frogless_owner"))
    return {key: found[key] for key in ("name", "value", "domain", "path")}  # type: ignore[literal-required]


def faults_of(browser: Browser, page: Page, **options: object) -> list[str]:
    """What axe, the window's edge and a fingertip have against a page as it is now.

    Args:
        options: of the browser's context, where they are to be others than the page's own.
    """
    # The page's own policy keeps the checker out as well; only for it the policy is set aside.
    context = browser.new_context(
        **{  # type: ignore[arg-type]
            "viewport": page.viewport_size,
            "bypass_csp": True,
            "storage_state": page.context.storage_state(),
            **options,
        }
    )
    again = context.new_page()
    again.goto(page.url)
    again.evaluate("document.querySelectorAll('details').forEach(e => e.open = true)")
    again.wait_for_load_state("networkidle")
    results = Axe().run(again, options=AXE)
    checked = {rule["id"] for rule in results.response["passes"]}
    told = [results.generate_report()] if results.violations_count else []
    told += [f"out of the window: {e}" for e in again.evaluate(OVERFLOW)]
    told += [f"too small to hit: {e}" for e in again.evaluate(SMALL)]
    if "color-contrast" not in checked:
        told.append("axe checked no contrast")
    context.close()
    return told
