"""The web page of a pattern, as a person meets it."""

from __future__ import annotations

from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, expect
from sample_pattern import pattern

from frogless.publish.arrange import folded
from frogless.publish.blocks import Instruction

PHONES = (320, 390)
WIDTHS = (*PHONES, 1280)

AXE = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}

OVERFLOW = """() => [...document.body.querySelectorAll('*')]
    .filter(e => !e.closest('.scroll, svg, .skip'))
    .filter(e => e.getBoundingClientRect().right > innerWidth + 0.5)
    .map(e => e.outerHTML.slice(0, 80))"""


@pytest.mark.parametrize("width", PHONES)
def test_page_does_not_overflow_on_a_phone(page: Page, width: int) -> None:
    """Nothing but the tables' own boxes scrolls sideways (WCAG 1.4.10)."""
    page.set_viewport_size({"width": width, "height": 800})
    assert page.evaluate("document.documentElement.scrollWidth") == width
    assert page.evaluate(OVERFLOW) == []


def test_page_does_not_overflow_when_its_text_is_doubled(page: Page) -> None:
    """Text at 200 % still keeps to a desktop window (WCAG 1.4.4)."""
    page.set_viewport_size({"width": 1280, "height": 800})
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert page.evaluate(OVERFLOW) == []


@pytest.mark.parametrize("width", WIDTHS)
def test_page_is_accessible(browser: Browser, address: str, width: int) -> None:
    """No finding of axe, contrast among its rules, with a row ticked and without."""
    # The page's own policy keeps the checker out as well; only for it the policy is set aside.
    context = browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True)
    page = context.new_page()
    page.goto(address)
    page.get_by_role("checkbox").first.check()
    results = Axe().run(page, options=AXE)
    checked = {rule["id"] for rule in results.response["passes"]}
    context.close()
    assert results.violations_count == 0, results.generate_report()
    assert {"color-contrast", "heading-order", "label", "svg-img-alt", "target-size"} <= checked


def test_headings_go_down_one_level_at_a_time(page: Page) -> None:
    """One title, then parts and their parts."""
    levels = page.evaluate(
        "[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(h => Number(h.tagName[1]))"
    )
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(below <= above + 1 for above, below in pairwise(levels))


def test_keyboard_reaches_the_pattern_first(page: Page) -> None:
    """The first stop skips to the pattern, and shows itself there."""
    page.keyboard.press("Tab")
    skip = page.get_by_role("link", name="Skip to the pattern")
    expect(skip).to_be_focused()
    assert (skip.bounding_box() or {"y": -1})["y"] >= 0
    page.keyboard.press("Enter")
    expect(page.locator("main")).to_be_focused()


def test_keyboard_ticks_off_every_row(page: Page) -> None:
    """Tab goes from row to row in the order of the work, the space bar ticks, the focus shows."""
    rows: list[str] = []
    for block in pattern().blocks:
        if isinstance(block, Instruction):
            rows += [block.label, *map(str, folded(block))]
    ticked = []
    page.get_by_role("checkbox").first.focus()
    while page.evaluate("document.activeElement.type") == "checkbox":
        page.keyboard.press("Space")
        box = page.locator(":focus")
        assert box.evaluate("e => getComputedStyle(e).outlineStyle") == "solid"
        ticked.append(
            box.evaluate(
                "e => document.getElementById(e.getAttribute('aria-labelledby')).textContent"
            )
        )
        page.keyboard.press("Tab")
    assert ticked == rows
    assert page.locator(":checked").count() == len(rows)


def test_whole_row_ticks_when_it_is_tapped(page: Page) -> None:
    """A thumb may land anywhere on the row, which is higher than 44 px (WCAG 2.5.5)."""
    row = page.locator(".rows li", has_text="Rnd 5 (RS)")
    assert (row.bounding_box() or {"height": 0})["height"] >= 44
    row.locator(".text").click()
    expect(page.get_by_role("checkbox", name="Rnd 5 (RS)", exact=True)).to_be_checked()
    row.locator(".count").click()
    expect(page.get_by_role("checkbox", name="Rnd 5 (RS)", exact=True)).not_to_be_checked()


def test_table_scrolls_inside_its_box_when_the_screen_is_narrow(page: Page) -> None:
    """The last column can be reached with the arrow keys."""
    page.set_viewport_size({"width": 320, "height": 800})
    box = page.get_by_role("group", name="Body and skirt, around")
    assert box.evaluate("e => e.scrollWidth > e.clientWidth")
    box.focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function("e => e.scrollLeft > 0", arg=box.element_handle())


def test_text_is_large_and_open(page: Page) -> None:
    """At least 16 px, with lines at least half as far apart again (WCAG 1.4.12)."""
    for part in ("p", ".text", "td", "dd", ".count"):
        size = page.locator(f"main {part}").first.evaluate(
            "e => parseFloat(getComputedStyle(e).fontSize)"
        )
        assert size >= 16, part
    lead = page.locator(".text").first.evaluate(
        "e => parseFloat(getComputedStyle(e).lineHeight) / parseFloat(getComputedStyle(e).fontSize)"
    )
    assert lead >= 1.5


def test_picture_is_one_image_with_its_text(page: Page) -> None:
    """A reader hears what the drawing shows, not its numbers one by one."""
    image = page.get_by_role("img", name="The skirt laid flat: 36 cm wide at the waist")
    expect(image).to_be_visible()


def test_nothing_is_fetched(browser: Browser, address: str) -> None:
    """The page asks for itself alone, and the browser has nothing to complain of."""
    asked: list[str] = []
    said: list[str] = []

    def note_request(request: Request) -> None:
        asked.append(request.url)

    def note_message(message: ConsoleMessage) -> None:
        said.append(message.text)

    context = browser.new_context()
    page = context.new_page()
    page.on("request", note_request)
    page.on("console", note_message)
    page.goto(address)
    page.wait_for_load_state("networkidle")
    context.close()
    assert [url for url in asked if not url.startswith("data:")] == [address]
    assert said == []


def test_print_hides_what_paper_cannot_do(page: Page) -> None:
    """No boxes, no links to jump with; rows and counts stay, in ink on white."""
    page.get_by_role("checkbox").first.check()
    page.emulate_media(media="print")
    for hidden in (".rows input", "nav", ".skip"):
        expect(page.locator(hidden).first).to_be_hidden()
    expect(page.locator(".count").first).to_be_visible()
    colours = page.locator(".count").first.evaluate("e => getComputedStyle(e).color")
    paper = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert (colours, paper) == ("rgb(0, 0, 0)", "rgb(255, 255, 255)")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_rows_are_whole_when_printed(page: Page, paper: str) -> None:
    """The browser makes pages of either paper, and a row is never torn apart."""
    page.emulate_media(media="print")
    assert page.pdf(format=paper).startswith(b"%PDF")
    for part in (".rows li", "tbody tr", "figure", ".note"):
        broken = page.locator(part).first.evaluate("e => getComputedStyle(e).breakInside")
        assert broken == "avoid", part
