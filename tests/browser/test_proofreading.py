"""The room of proofreading in a browser: findings beside the words, mended by hand and by keyboard."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import DESK, SMALL_PHONE, Studio, faults_of, opened

TEXT = """Bell Skirt

SIZES: S (M, L)

Rnd 1: Ch 12 (14, 16), join with sl st to form a ring.
Rnd 2: Ch 1 (does not count), sc in each ch around, join. (12 (14, 16) sts)
Rnd 3: 2 sc in each st around, join. (24 (29, 33) sts)
Rnd 4: Sc in each st around, frobnicate the lot, join. (24 (28, 32) sts)
"""
WRONG, RIGHT = "24 (29, 33)", "24 (28, 32)"
MENDED = TEXT.replace("frobnicate the lot, ", "").replace(WRONG, RIGHT)
CHOSEN = "e => e.value.slice(e.selectionStart, e.selectionEnd)"
ALIKE = """() => { const [a, m] = [document.getElementById('text'), document.querySelector('.mirror')];
    return a.scrollHeight === m.scrollHeight && a.clientWidth === m.clientWidth }"""


def begin(page: Page, studio: Studio, text: str = TEXT) -> None:
    """A pattern that was pasted, with what was found beside it."""
    page.goto(f"{studio.address}/proofread/")
    page.get_by_label("Paste the pattern").fill(text)
    page.get_by_role("button", name="Proofread it").click()
    expect(page.locator(".verdict")).to_be_visible()


def test_finding_leads_to_its_words_and_is_put_right(desk: Page, studio: Studio) -> None:
    """Marked in the text, chosen by its link, mended by its button, taken back, mended by hand."""
    begin(desk, studio)
    area = desk.get_by_label("Text of the pattern")
    finding = desk.locator(".found > li", has_text="Line 7, Rnd 3, sizes M and L")
    expect(desk.locator(".mirror .marked-line").first).to_have_attribute("data-number", "7")
    finding.get_by_role("link").click()
    expect(area).to_be_focused()
    assert WRONG in area.evaluate(CHOSEN)
    expect(finding).to_have_class(re.compile("here"))
    finding.get_by_role("button", name=f"Put {RIGHT} here").click()
    expect(finding).to_have_count(0)
    desk.get_by_role("button", name="Take it back").click()
    expect(finding).to_have_count(1)
    expect(area).to_have_value(TEXT)
    assert desk.evaluate(ALIKE)
    # Marks follow their words before anything is read again.
    area.press("Control+Home")
    desk.keyboard.type("A line more\n")
    expect(desk.locator(".mirror .marked-line").first).to_have_attribute("data-number", "8")
    area.fill(MENDED)
    expect(desk.locator(".verdict")).to_contain_text("Nothing found")
    expect(desk.locator("#said")).to_have_text("Nothing found.")
    desk.keyboard.press("Control+s")
    expect(desk.locator("#messages")).to_contain_text("Saved.")
    expect(desk.get_by_role("button", name=re.compile("^Undo: lines 7 to 8"))).to_be_enabled()


def test_kinds_and_sizes_are_left_out_for_this_text(phone: Page, studio: Studio) -> None:
    """On a phone too, where a bar leads to the findings; it is so when one comes back."""
    begin(phone, studio)
    phone.get_by_role("link", name="Findings 2").click()
    phone.get_by_label("Size").select_option("S")
    expect(phone.locator(".verdict")).to_contain_text("1 finding for size S.")
    phone.get_by_role("button", name="Leave out all of this kind (unclear)").click()
    expect(phone.locator(".verdict")).to_contain_text("Nothing found for size S; 1 left out.")
    phone.get_by_text("Kinds of findings").click()
    box = phone.get_by_role("checkbox", name=re.compile("unclear"))
    box.uncheck()
    expect(phone.locator(".verdict")).to_contain_text("1 finding for size S.")
    expect(box).to_be_focused()
    box.check()
    expect(phone.locator(".verdict")).to_contain_text("1 left out")
    phone.reload()
    expect(phone.locator(".verdict")).to_contain_text("Nothing found for size S; 1 left out.")


def test_journey_without_scripts(unscripted: Page, studio: Studio) -> None:
    """Tried on the example, put right, checked, saved, undone: plain pages and forms."""
    page = unscripted
    page.goto(f"{studio.address}/proofread/")
    page.get_by_role("button", name="Try it on an example").click()
    while page.get_by_text("Press Check to try again").count():  # a worker still starts
        page.get_by_role("button", name="Check").click()
    expect(page.locator(".found > li").first).to_contain_text("25 sts")
    page.get_by_role("link", name="Line 24, Rnd 4").click()
    expect(page.locator("#line-24 mark")).to_be_in_viewport()
    page.get_by_role("button", name="Put 24 here").click()
    expect(page.get_by_label("Text of the pattern")).to_have_value(re.compile(r"\(24 sts\)"))
    page.get_by_role("button", name="Undo: 24 put on line 24").click()
    page.get_by_label("Text of the pattern").fill(MENDED)
    page.get_by_role("button", name="Check").click()
    expect(page.locator(".verdict")).to_contain_text("Nothing found")


@pytest.mark.parametrize(
    ("size", "scheme"),
    [(DESK, "light"), (SMALL_PHONE, "dark")],
    ids=["desk", "small dark phone"],
)
def test_pages_are_accessible(
    browser: Browser, studio: Studio, owner: dict[str, str], size: dict[str, int], scheme: str
) -> None:
    """No finding of axe, nothing out of the window, nothing too small to hit."""
    with opened(browser, studio, owner, viewport=size, color_scheme=scheme) as page:
        begin(page, studio)
        told = {"text": faults_of(browser, page, color_scheme=scheme)}
        page.goto(f"{studio.address}/proofread/")
        told["list"] = faults_of(browser, page, color_scheme=scheme)
    assert {name: faults for name, faults in told.items() if faults} == {}


def test_paper_has_the_findings_and_the_marked_text(desk: Page, studio: Studio) -> None:
    """Without the form."""
    begin(desk, studio)
    desk.emulate_media(media="print")
    expect(desk.locator("#editor")).to_be_hidden()
    expect(desk.locator(".found > li").first).to_be_visible()
    expect(desk.locator("#line-7 mark")).to_be_visible()
