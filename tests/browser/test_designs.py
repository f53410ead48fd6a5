"""The room of designs in a browser: choosing, writing, comparing; by hand and by keyboard."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import DESK, PHONE, SMALL_PHONE, Studio, faults_of, opened

LOOKS = pytest.mark.parametrize(
    ("size", "scheme"),
    [(DESK, "light"), (DESK, "dark"), (PHONE, "dark"), (SMALL_PHONE, "light")],
    ids=["desk", "dark desk", "dark phone", "small phone"],
)


def begin(page: Page, studio: Studio) -> str:
    """The address of a new design of the person's own, open in the editor."""
    page.goto(f"{studio.address}/designs/new/")
    page.get_by_role("button", name="Begin").click()
    page.wait_for_url(re.compile(r"/designs/\d+/text/"))
    expect(page.locator("#verdict")).to_contain_text("Drafted and proven")
    return page.url.partition("?")[0]


def write(page: Page, old: str, new: str) -> None:
    """Changes the text as somebody who types it does."""
    area = page.get_by_label("Text of the design")
    area.fill(area.input_value().replace(old, new))


def test_filters_follow_each_other_and_the_address(desk: Page, studio: Studio) -> None:
    """Each change shows at once, is said, and stays in the address; nothing found says why."""
    desk.goto(f"{studio.address}/designs/")
    told, cards = desk.locator("#told"), desk.locator("#found .card")
    everything = cards.count()
    desk.get_by_role("checkbox", name="Hat").check()
    expect(told).to_contain_text("2 of")
    expect(cards).to_have_count(2)
    expect(desk).to_have_url(re.compile(r"\?kind=hat$"))
    desk.get_by_label("Search").fill("spiral")
    expect(cards).to_have_count(1)
    expect(desk).to_have_url(re.compile(r"q=spiral"))
    desk.reload()
    expect(cards).to_have_count(1)
    desk.get_by_role("checkbox", name="Beads").check()
    expect(told).to_contain_text("None of")
    desk.get_by_role("link", name="Beads").click()
    expect(cards).to_have_count(1)
    desk.get_by_role("link", name="Clear filters").click()
    expect(cards).to_have_count(everything)


def test_pictures_load_as_they_come_into_view(desk: Page, studio: Studio) -> None:
    """And all of them are drawn."""
    desk.goto(f"{studio.address}/designs/")
    pictures = desk.locator("#found img")
    for picture in pictures.all():
        picture.scroll_into_view_if_needed()
        expect(picture).to_have_js_property("complete", True)
        assert picture.evaluate("e => e.naturalWidth") > 0


def test_faults_are_shown_at_their_lines_while_one_types(desk: Page, studio: Studio) -> None:
    """In the list and in the numbers; the link puts the cursor there; mended, the counts stand."""
    begin(desk, studio)
    write(desk, 'ease = "6 cm"', 'eese = "6 cm"')
    expect(desk.locator("#verdict")).to_contain_text("1 fault")
    expect(desk.locator(".gutter .faulty-line")).to_have_text(re.compile("✗ 23"))
    desk.get_by_role("link", name="Line 23").click()
    area = desk.get_by_label("Text of the design")
    expect(area).to_be_focused()
    chosen = area.evaluate("e => e.value.slice(e.selectionStart, e.selectionEnd)")
    assert chosen == 'eese = "6 cm"'
    desk.keyboard.type('ease = "6 cm"')
    expect(desk.locator("#verdict")).to_contain_text("Drafted and proven")
    expect(desk.locator(".gutter .faulty-line")).to_have_count(0)
    expect(desk.get_by_role("row", name="Hip", exact=False).first).to_be_visible()


def test_ctrl_s_saves_and_undo_takes_back(desk: Page, studio: Studio) -> None:
    """The page stays as it is, with the cursor where it was; undo says what it undoes."""
    begin(desk, studio)
    write(desk, '"55 cm"', '"65 cm"')
    expect(desk.locator("#unsaved")).to_be_visible()
    desk.keyboard.press("Control+s")
    expect(desk.locator("#messages")).to_contain_text("Saved.")
    expect(desk.locator("#unsaved")).to_be_hidden()
    expect(desk.get_by_label("Text of the design")).to_be_focused()
    write(desk, '"65 cm"', '"70 cm"')
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.locator("#unsaved")).to_be_hidden()
    for length in ("65 cm", "55 cm"):
        desk.get_by_role("button", name="Undo: line 8 changed").click()
        expect(desk.get_by_label("Text of the design")).to_have_value(re.compile(f'"{length}"'))
    desk.get_by_role("button", name="Redo: line 8 changed").click()
    expect(desk.get_by_label("Text of the design")).to_have_value(re.compile('"65 cm"'))


def test_leaving_with_changes_asks(desk: Page, studio: Studio) -> None:
    """Whoever stays finds what was written; after saving nobody asks."""
    here = begin(desk, studio)
    write(desk, '"55 cm"', '"65 cm"')
    asked: list[str] = []

    def stay(dialog: object) -> None:
        asked.append(dialog.type)  # type: ignore[attr-defined]
        dialog.dismiss()  # type: ignore[attr-defined]

    desk.on("dialog", stay)
    desk.get_by_label("Text of the design").click()
    desk.get_by_role("link", name="About it").click(no_wait_after=True)
    desk.wait_for_timeout(300)
    assert asked == ["beforeunload"]
    assert desk.url.startswith(here)
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.locator("#unsaved")).to_be_hidden()
    desk.get_by_role("link", name="About it").click()
    desk.wait_for_url(re.compile("/about/"))
    assert asked == ["beforeunload"]


def test_two_tabs_lose_nothing(browser: Browser, desk: Page, studio: Studio) -> None:
    """The second to save sees both texts, and keeps hers as a copy."""
    here = begin(desk, studio)
    other = desk.context.new_page()
    other.goto(here)
    write(desk, '"55 cm"', '"65 cm"')
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.locator("#messages")).to_contain_text("Saved.")
    write(other, '"55 cm"', '"75 cm"')
    other.get_by_role("button", name="Save", exact=True).click()
    expect(other.get_by_role("heading", level=1)).to_have_text("Changed on another page")
    other.get_by_role("button", name="Keep mine as a copy").click()
    expect(other.get_by_label("Text of the design")).to_have_value(re.compile('"75 cm"'))
    other.close()


def test_versions_are_kept_compared_and_brought_back(desk: Page, studio: Studio) -> None:
    """What differs is told for the garment and for the text."""
    here = begin(desk, studio)
    desk.get_by_role("link", name="Versions").click()
    desk.get_by_label("Keep it as it is now, under a name").fill("short")
    desk.get_by_role("button", name="Keep").click()
    desk.goto(here)
    write(desk, '"55 cm"', '"65 cm"')
    desk.get_by_role("button", name="Save", exact=True).click()
    expect(desk.locator("#messages")).to_contain_text("Saved.")
    desk.get_by_role("link", name="Versions").click()
    desk.get_by_role("link", name=re.compile("Compare with now.*short")).click()
    expect(desk.get_by_role("heading", name="short → Now")).to_be_visible()
    expect(desk.get_by_text("1 line added, 1 removed.")).to_be_visible()
    desk.get_by_role("button", name="Bring back short").click()
    desk.wait_for_url(re.compile(r"/versions/\?done=back$"))
    desk.goto(here)
    expect(desk.get_by_label("Text of the design")).to_have_value(re.compile('"55 cm"'))


def test_reference_of_keys_unfolds_and_finds(phone: Page, studio: Studio) -> None:
    """On the phone too, beside the text."""
    begin(phone, studio)
    phone.get_by_text("What can stand in a design").click()
    phone.get_by_label("Find a key").fill("bead_hole")
    expect(phone.locator("#keys dt")).to_have_count(2)
    expect(phone.locator("#keys")).to_contain_text("a length, such as 2.5 cm")


def test_journey_without_scripts(unscripted: Page, studio: Studio) -> None:
    """Found, copied, changed, checked, saved, undone: plain pages and forms."""
    page = unscripted
    page.goto(f"{studio.address}/designs/")
    page.get_by_text("Filters", exact=True).click()
    page.get_by_role("checkbox", name="Hat").check()
    page.get_by_role("button", name="Show").click()
    expect(page.locator("#told")).to_contain_text("2 of")
    page.get_by_role("link", name="Haymaker hat").click()
    page.get_by_role("button", name="Copy it to change the text").click()
    write(page, '"7 cm"', '"8 cn"')
    page.get_by_role("button", name="Check").click()
    expect(page.locator("#verdict")).to_contain_text("1 fault")
    expect(page.get_by_label("Text of the design")).to_have_value(re.compile("8 cn"))
    write(page, '"8 cn"', '"8 cm"')
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#messages")).to_contain_text("Saved.")
    page.get_by_role("button", name=re.compile("^Undo")).click()
    expect(page.get_by_label("Text of the design")).to_have_value(re.compile('"7 cm"'))


def test_everything_can_be_done_by_keyboard(desk: Page, studio: Studio) -> None:
    """A filter, a card and its first action, each with a visible outline."""
    desk.goto(f"{studio.address}/designs/")
    desk.get_by_label("Search").focus()
    desk.keyboard.type("windmill")
    expect(desk.locator("#found .card")).to_have_count(1)
    for _ in range(60):
        desk.keyboard.press("Tab")
        outline = desk.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        assert outline == "solid"
        if desk.evaluate("document.activeElement.textContent") == "Windmill skirt":
            break
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Windmill skirt")


@LOOKS
def test_pages_are_accessible(
    browser: Browser, studio: Studio, owner: dict[str, str], size: dict[str, int], scheme: str
) -> None:
    """No finding of axe, nothing out of the window, nothing too small to hit, on any page."""
    with opened(browser, studio, owner, viewport=size, color_scheme=scheme) as page:
        begin(page, studio)
        write(page, 'ease = "6 cm"', 'eese = "6 cm"')
        page.get_by_role("button", name="Save", exact=True).click()
        expect(page.locator("#messages")).to_contain_text("Saved, with a fault")
        here = page.url.partition("text/")[0]
        page.goto(f"{here}versions/")
        page.get_by_label("Keep it as it is now, under a name").fill("faulty")
        page.get_by_role("button", name="Keep").click()
        told = {}
        for address in (
            f"{studio.address}/designs/",
            f"{studio.address}/designs/?kind=hat&details=beads",
            f"{studio.address}/designs/about/example:ring-dance-skirt/",
            f"{here}text/?check=1",
            f"{here}versions/?before=now&after=now",
            f"{studio.address}/designs/new/",
            f"{studio.address}/designs/keys/?find=bead",
        ):
            page.goto(address)
            told[address] = faults_of(browser, page, color_scheme=scheme)
    assert {address: faults for address, faults in told.items() if faults} == {}
