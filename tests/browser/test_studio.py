"""The studio, as a person meets it: with hand and keyboard, on a desk and on a phone."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, expect

PHONE = {"width": 320, "height": 640}
DESK = {"width": 1280, "height": 900}
SIZES = pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])

AXE = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}

OVERFLOW = """() => [...document.body.querySelectorAll('*')]
    .filter(e => !e.closest('.scroll, .skip, .unseen') && e.checkVisibility())
    .filter(e => e.getBoundingClientRect().right > innerWidth + 0.5)
    .map(e => e.outerHTML.slice(0, 80))"""

SMALL = """() => [...document.querySelectorAll('a, button, input, select, textarea, summary')]
    .filter(e => e.checkVisibility() && !e.matches('.skip'))
    .filter(e => { const r = e.getBoundingClientRect(); return r.width < 24 || r.height < 24 })
    .map(e => e.outerHTML.slice(0, 80))"""

READ = {"stitches": "27", "width": "15", "rows": "15", "height": "15.8"}


# A draft is made within a tenth of a second; a machine that does ten other things takes longer.
expect.set_options(timeout=30_000)


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The studio running over a library of its own; its address."""
    environment = {**os.environ, "FROGLESS_DATA": str(tmp_path_factory.mktemp("data"))}
    process = subprocess.Popen(
        [sys.executable, "-m", "frogless", "studio", "--no-browser"],
        env=environment,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout
    yield process.stdout.readline().split()[-1]
    process.kill()
    process.communicate()


@pytest.fixture
def page(browser: Browser, studio: str) -> Iterator[Page]:
    """The draft with nothing in it, and nothing that the browser complains of."""
    context = browser.new_context(viewport=DESK, accept_downloads=True)
    opened = context.new_page()
    said: list[str] = []
    asked: list[str] = []

    def note_message(message: ConsoleMessage) -> None:
        # A change while another is on its way calls that one off; htmx notes this.
        if not message.text.startswith(("htmx:afterRequest", "htmx:sendAbort")):
            said.append(message.text)

    def note_request(request: Request) -> None:
        asked.append(request.url)

    opened.on("console", note_message)
    opened.on("request", note_request)
    opened.goto(studio)
    opened.get_by_role("button", name="Clear the form").click()
    opened.wait_for_url(f"{studio}#result")
    yield opened
    context.close()
    assert said == []
    assert [url for url in asked if not url.startswith((studio, "data:"))] == []


def fill(page: Page) -> None:
    """The least that the ring dance skirt can be drafted from, as a person fills it in."""
    page.get_by_label("Design", exact=True).select_option(label="Ring dance skirt")
    expect(page.get_by_role("group", name="Double crochet", exact=True)).to_be_visible()
    page.get_by_label("Waist girth").fill("72")
    page.get_by_label(re.compile("^Hip girth")).fill("101")
    page.get_by_label("Hook").fill("3.75")
    for part, size in READ.items():
        page.locator(f"#swatch-double_crochet-{part}").fill(size)
    page.keyboard.press("Tab")


@SIZES
def test_draft_follows_every_change(page: Page, size: dict[str, int]) -> None:
    """Nothing but filling in: the draft appears, follows, and says what is wrong where it is."""
    page.set_viewport_size(size)  # type: ignore[arg-type]
    fill(page)
    result = page.locator("#result")
    expect(result).to_contain_text("Drafted and proven")
    expect(page.get_by_role("status").first).to_contain_text("Drafted and proven")
    hips = result.get_by_role("row", name="hip").get_by_role("cell")
    before = hips.nth(0).text_content()
    hip = page.get_by_label(re.compile("^Hip girth"))
    hip.fill("110")
    hip.press("Tab")
    expect(hips.nth(0)).not_to_have_text(before or "")
    hip.fill("110 cn")
    hip.press("Tab")
    expect(hip).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#body-hip_girth-error")).to_contain_text("no unit for a length")
    result.get_by_role("link", name="Hip girth").click()
    expect(hip).to_be_focused()
    page.keyboard.type("1")
    hip.fill("101")
    hip.press("Tab")
    expect(hip).not_to_have_attribute("aria-invalid", "true")
    expect(result).to_contain_text("Drafted and proven")


def test_what_is_being_typed_is_kept_while_the_draft_is_made(page: Page) -> None:
    """The answer to a change does not touch the next field."""
    fill(page)
    expect(page.locator("#result")).to_contain_text("Drafted and proven")
    page.get_by_label("Waist girth").fill("74")
    page.get_by_label("Waist girth").press("Tab")
    page.keyboard.type("100.5")
    expect(page.locator("#result").get_by_role("row", name="waist")).to_contain_text("74 cm")
    expect(page.get_by_label(re.compile("^Hip girth"))).to_have_value("100.5")
    expect(page.get_by_label(re.compile("^Hip girth"))).to_be_focused()


def test_pattern_opens_and_files_are_saved(page: Page) -> None:
    """The pattern in a tab of its own, the others as files."""
    fill(page)
    expect(page.locator("#result")).to_contain_text("Drafted and proven")
    with page.context.expect_page() as opened:
        page.get_by_role("button", name="Open the pattern").click()
    expect(opened.value.get_by_role("heading", level=1)).to_have_text("Ring dance skirt")
    opened.value.get_by_role("checkbox").first.check()
    opened.value.close()
    for name, begins in (("PDF", b"%PDF"), ("plan.json", b"{"), ("Save as body.toml", b"format")):
        with page.expect_download() as saved:
            page.get_by_role("button", name=name).click()
        assert Path(saved.value.path()).read_bytes().startswith(begins)


def test_design_of_ones_own_is_read_while_it_is_written(page: Page) -> None:
    """Copied, changed, told with its line, mended."""
    fill(page)
    page.get_by_text("Write, paste or open your own").click()
    page.get_by_role("button", name="Copy the chosen design").click()
    text = page.get_by_label("Text of the design")
    expect(text).to_have_value(re.compile("frogless-design/1"))
    own = text.input_value()
    text.fill(own.replace("[work]", "[wrok]"))
    text.press("Tab")
    expect(page.locator("#design_text-error")).to_contain_text('unknown key "wrok"')
    text.fill(own.replace('title = "Ring dance skirt"', 'title = "Mine"'))
    text.press("Tab")
    expect(page.get_by_role("heading", name="Mine")).to_be_visible()


def test_file_that_is_chosen_fills_the_form(page: Page, tmp_path: Path) -> None:
    """At once, and the rest stays."""
    file = tmp_path / "anna.toml"
    file.write_text(
        'format = "frogless-body/1"\nname = "Anna"\n[measurements]\nhip_girth = "99 cm"\n', encoding="utf-8"
    )  # fmt: skip
    page.get_by_label("Hook").fill("4")
    page.get_by_text("Open a body file").click()
    page.get_by_label("A body file").set_input_files(file)
    expect(page.get_by_label(re.compile("^Hip girth"))).to_have_value("99")
    expect(page.get_by_label("Hook")).to_have_value("4")


@SIZES
def test_library_keeps_renames_deletes_and_gives_back(page: Page, size: dict[str, int]) -> None:
    """A body saved, used again, renamed, deleted, brought back, all on the page."""
    page.set_viewport_size(size)  # type: ignore[arg-type]
    name = f"Anna {size['width']}"
    fill(page)
    page.get_by_role("button", name="Save the body in the library").click()
    expect(page.get_by_text('"Me" is in the library')).to_be_visible()
    page.get_by_role("link", name="Library").click()
    page.get_by_label("Name of Me").fill(name)
    page.get_by_role("button", name="Rename Me").click()
    page.get_by_role("button", name=f"Delete {name}").click()
    page.get_by_role("button", name=f"Undo and bring back {name}").click()
    # The page that follows has a body only when it has come.
    expect(page.get_by_label(f"Name of {name}")).to_be_visible()
    assert page.evaluate(OVERFLOW) == []
    assert page.evaluate(SMALL) == []
    page.get_by_role("link", name="Draft", exact=True).click()
    expect(page.locator("#result")).to_contain_text("Drafted and proven")
    page.get_by_label("Fill in a body").select_option(label=name)
    page.get_by_role("button", name="Fill in the chosen body").click()
    expect(page.get_by_label(re.compile("^Hip girth"))).to_have_value("101")
    page.get_by_role("link", name="Library").click()
    page.get_by_role("button", name=f"Delete {name}").click()


@SIZES
def test_journey_without_scripts(browser: Browser, studio: str, size: dict[str, int]) -> None:
    """The same with scripts switched off: one button, and the result in view."""
    context = browser.new_context(viewport=size, java_script_enabled=False)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(studio)
    page.get_by_role("button", name="Clear the form").click()
    page.get_by_label("Design", exact=True).select_option(label="Ring dance skirt")
    page.get_by_role("button", name="Draft it").click()
    expect(page.locator("#body-hip_girth-error")).to_have_text("is needed")
    expect(page.get_by_role("heading", name="To mend")).to_be_in_viewport()
    for kind, name in (("body", "Dancer 2"), ("swatch", "light cotton, washed")):
        page.get_by_label(f"Fill in a {kind}").select_option(label=name)
        page.get_by_role("button", name=f"Fill in the chosen {kind}").click()
    expect(page.locator("#result")).to_contain_text("Drafted and proven")
    context.close()


@SIZES
@pytest.mark.parametrize("state", ["empty", "faulty", "drafted"])
def test_page_is_accessible(
    browser: Browser, studio: str, size: dict[str, int], state: str
) -> None:
    """No finding of axe, nothing out of the window, nothing too small to hit, in any state."""
    # The page's own policy keeps the checker out as well; only for it the policy is set aside.
    context = browser.new_context(viewport=size, bypass_csp=True)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(studio)
    page.get_by_role("button", name="Clear the form").click()
    if state == "drafted":
        fill(page)
        expect(page.locator("#result")).to_contain_text("Drafted and proven")
    if state == "faulty":
        page.get_by_role("button", name="Draft it").click()
    page.evaluate("document.querySelectorAll('details').forEach(e => e.open = true)")
    results = Axe().run(page, options=AXE)
    checked = {rule["id"] for rule in results.response["passes"]}
    overflow, small = page.evaluate(OVERFLOW), page.evaluate(SMALL)
    wide = page.evaluate("document.documentElement.scrollWidth")
    context.close()
    assert results.violations_count == 0, results.generate_report()
    assert {"color-contrast", "heading-order", "label", "target-size"} <= checked
    assert (overflow, small, wide) == ([], [], size["width"])


def test_keyboard_reaches_everything_and_shows_where_it_is(page: Page) -> None:
    """Tab passes each control that is shown, in the order of the page, each with its outline."""
    fill(page)
    expect(page.locator("#result")).to_contain_text("Drafted and proven")
    page.goto(page.url.partition("#")[0])
    shown = page.evaluate(
        """() => [...document.querySelectorAll('a, button, input, select, textarea, summary, [tabindex="0"]')]
            .filter(e => e.checkVisibility() && !(e.type === 'radio' && !e.checked)).length"""
    )
    reached = 0
    while reached <= shown:
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement === document.body"):
            break
        reached += 1
        outline = page.evaluate(
            "[getComputedStyle(document.activeElement).outlineStyle, document.activeElement.outerHTML.slice(0, 90)]"
        )
        assert outline[0] == "solid", outline[1]
    assert reached == shown


def test_enter_in_a_field_drafts(page: Page) -> None:
    """And presses none of the buttons in between."""
    fill(page)
    page.get_by_label(re.compile("^Hip girth")).press("Enter")
    page.wait_for_url(re.compile("#result$"))
    expect(page.get_by_role("heading", name="Ring dance skirt")).to_be_visible()
    expect(page.get_by_label(re.compile("^Hip girth"))).to_have_value("101")


def test_studio_that_was_stopped_is_told(browser: Browser, tmp_path: Path) -> None:
    """What was written stays, and the page says what to do."""
    environment = {**os.environ, "FROGLESS_DATA": str(tmp_path)}
    command = [sys.executable, "-m", "frogless", "studio", "--no-browser"]
    process = subprocess.Popen(command, env=environment, stdout=subprocess.PIPE, text=True)
    assert process.stdout
    page = browser.new_page()
    page.goto(process.stdout.readline().split()[-1])
    process.kill()
    process.communicate()
    page.get_by_label("Waist girth").fill("72")
    page.get_by_label("Waist girth").press("Tab")
    expect(page.get_by_role("status").first).to_contain_text("does not answer")
    expect(page.get_by_label("Waist girth")).to_have_value("72")
    page.close()
