"""A garment in a browser: changed, asked, read, shown for somebody else; by hand and by keyboard."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import DESK, PHONE, SMALL_PHONE, Studio, faults_of, opened

ROOMS = ("shape", "pattern", "materials", "fit")


def made(page: Page, studio: Studio, design: str = "ring-dance-skirt") -> str:
    """The address of a new garment, without its room."""
    page.goto(f"{studio.address}/swatches/new/")
    token = page.locator("input[name=csrfmiddlewaretoken]").first.get_attribute("value")
    answer = page.request.post(
        f"{studio.address}/garments/create/",
        form={
            "csrfmiddlewaretoken": token or "",
            "design": f"example:{design}",
            "body": "example:dancer-3",
            "swatch": "example:light-cotton",
        },
        headers={"Origin": studio.address},
    )
    return answer.url.removesuffix("shape/")


@pytest.fixture
def still(browser: Browser, studio: Studio, owner: dict[str, str]) -> Iterator[Page]:
    """A phone on which nothing moves by itself."""
    with opened(
        browser, studio, owner, viewport=PHONE, has_touch=True, reduced_motion="reduce"
    ) as page:
        yield page


def test_knob_changes_what_is_seen(desk: Page, studio: Studio) -> None:
    """The line, the drawing, the summary follow; focus goes on where the person was going."""
    desk.goto(f"{made(desk, studio)}shape/")
    drawing = desk.locator("figure.schematic svg")
    before = drawing.inner_html()
    desk.locator("#knob-garment-length").fill("70")
    desk.keyboard.press("Tab")
    expect(desk.locator("#turned")).to_contain_text("→ 70 cm")
    expect(desk.locator("#turned")).to_contain_text("yarn: about")
    expect(desk.locator("#summary .proven")).to_contain_text("Drafted and proven")
    assert drawing.inner_html() != before
    assert desk.evaluate("document.activeElement.matches('#panel input, #panel select')")
    expect(desk.locator("#knob-garment-length")).to_have_value("70 cm")
    expect(desk.locator("#turned")).to_contain_text("a design of its own")


def test_console_stays_empty_whatever_else_styles_the_page(desk: Page, studio: Studio) -> None:
    """A style that an extension of the browser left on a field is not carried over to the new one."""
    desk.goto(f"{made(desk, studio)}shape/")
    for length in ("66 cm", "70 cm", "75 cm"):
        # The policy lets a program set a property, and what it leaves behind is an empty style.
        desk.evaluate(
            "document.querySelectorAll('[id]').forEach("
            "e => { e.style.caretColor = 'red'; e.style.removeProperty('caret-color') })"
        )
        assert desk.locator("#knob-garment-length").get_attribute("style") == ""
        desk.locator("#knob-garment-length").fill(length)
        desk.keyboard.press("Tab")
        expect(desk.locator("#turned")).to_contain_text(f"→ {length}")
        expect(desk.locator("#summary .proven")).to_be_visible()
    desk.locator("#undo").click()
    expect(desk.locator("#turned")).to_contain_text("Undone")


def test_one_change_after_the_other(desk: Page, studio: Studio) -> None:
    """Every form knows the newest text of the design, so nothing conflicts with itself."""
    desk.goto(f"{made(desk, studio)}shape/")
    for length in ("66 cm", "67 cm", "68 cm"):
        desk.locator("#knob-garment-length").fill(length)
        desk.keyboard.press("Enter")
        expect(desk.locator("#turned")).to_contain_text(f"→ {length}")
    desk.locator("#knobs-edging > summary").click()
    desk.locator("#knob-edging-pattern").select_option("crab")
    expect(desk.locator("#turned")).to_contain_text("crab")
    assert desk.locator("#knobs-edging").evaluate("e => e.open")


def test_undo_and_redo_by_keyboard(desk: Page, studio: Studio) -> None:
    """Ctrl+Z and Ctrl+Shift+Z outside of fields; what was open stays open."""
    desk.goto(f"{made(desk, studio)}shape/")
    was = desk.locator("#knob-garment-length").input_value()
    desk.locator("#knob-garment-length").fill("70 cm")
    desk.keyboard.press("Tab")
    expect(desk.locator("#turned")).to_contain_text("→ 70 cm")
    desk.locator("#knobs-edging > summary").click()
    desk.keyboard.press("Control+z")
    expect(desk.locator("#knob-garment-length")).to_have_value(was)
    assert desk.locator("#knobs-edging").evaluate("e => e.open")
    expect(desk.locator("#status")).to_contain_text("Undone: ")
    expect(desk.locator("#turned")).to_contain_text("→ 70 cm. Now length: ")
    expect(desk.locator("#redo")).to_be_focused()
    desk.keyboard.press("Control+Shift+z")
    expect(desk.locator("#knob-garment-length")).to_have_value("70 cm")


def test_version_is_kept_without_leaving_the_page(desk: Page, studio: Studio) -> None:
    """A name, Enter, and it is said."""
    desk.goto(f"{made(desk, studio)}shape/")
    desk.locator("#knob-garment-length").fill("70 cm")
    desk.keyboard.press("Tab")
    desk.locator("#keep > summary").click()
    desk.get_by_label("Name of the version").fill("for the fair")
    desk.keyboard.press("Enter")
    expect(desk.locator("#history")).to_contain_text("Kept as “for the fair”")
    expect(desk.locator("figure.schematic")).to_be_visible()


def test_refused_value_stays_with_its_sentence(desk: Page, studio: Studio) -> None:
    """Nothing else changes, and another value mends it."""
    desk.goto(f"{made(desk, studio)}shape/")
    length = desk.locator("#knob-garment-length")
    length.fill("7 parsecs")
    desk.keyboard.press("Tab")
    expect(desk.locator("#knob-garment-length-error")).not_to_be_empty()
    expect(length).to_have_value("7 parsecs")
    expect(length).to_have_attribute("aria-invalid", "true")
    length.fill("70 cm")
    desk.keyboard.press("Tab")
    expect(desk.locator("#knob-garment-length-error")).to_be_empty()


def test_way_out_of_the_impossible_is_one_press(desk: Page, studio: Studio) -> None:
    """The reason stands in place of the drawing; a way out brings the drawing back."""
    desk.goto(f"{made(desk, studio)}shape/")
    desk.locator("#knobs-section-1 > summary").click()
    desk.locator("#knobs-section-1-more > summary").click()
    desk.locator("#knob-section-1-least_gap").fill("20")
    desk.keyboard.press("Tab")
    expect(desk.get_by_role("heading", name="This cannot be made so")).to_be_visible()
    desk.get_by_role("button", name=re.compile("^Take it")).first.click()
    expect(desk.locator("figure.schematic")).to_be_visible()
    expect(desk.locator("#panel .error:not(:empty)")).to_have_count(0)


def test_impossible_keeps_the_drawing_and_leads_to_the_knob(desk: Page, studio: Studio) -> None:
    """The drawing as it was stays in sight; the name of the knob opens its fold and goes there."""
    desk.goto(f"{made(desk, studio)}shape/")
    desk.locator("#knobs-section-1 > summary").click()
    desk.locator("#knobs-section-1-more > summary").click()
    desk.locator("#knob-section-1-least_gap").fill("20")
    desk.keyboard.press("Tab")
    expect(desk.get_by_role("heading", name="As it was before")).to_be_visible()
    expect(desk.locator(".was svg")).to_be_in_viewport()
    link = desk.locator("a.to-knob").first
    name = (link.get_attribute("href") or "").removeprefix("#")
    link.click()
    expect(desk.locator(f"[id='{name}']")).to_be_focused()


@pytest.mark.parametrize("design", ["ring-dance-skirt", "fiddler-cardigan"])
def test_drawing_is_seen_first(desk: Page, phone: Page, studio: Studio, design: str) -> None:
    """At once in a wide window; on a phone within a screen and a half."""
    address = f"{made(desk, studio, design)}shape/"
    for page, screens in ((desk, 1.0), (phone, 1.5)):
        page.goto(address)
        box = page.locator("figure.sheet svg").first.bounding_box()
        height = (page.viewport_size or {})["height"]
        assert box
        assert box["y"] + min(box["height"], 300) <= screens * height


@pytest.mark.parametrize("viewport", [{"width": 1280, "height": 900}, PHONE, SMALL_PHONE])
def test_field_that_is_gone_to_is_not_covered(
    browser: Browser, studio: Studio, owner: dict[str, str], viewport: dict[str, int]
) -> None:
    """Going on by Tab, and back, every field stands clear of what stays in sight above it."""
    covered = """() => { const e = document.activeElement, r = e.getBoundingClientRect();
        if (!e.matches('#panel .field input, #panel .field select')) return '';
        const there = document.elementFromPoint(r.x + r.width / 2, r.y + 3);
        if (r.y >= 0 && r.bottom <= innerHeight && e === there) return '';
        return [e.id, r.y, r.bottom, there?.outerHTML.slice(0, 80)].join(' '); }"""
    with opened(browser, studio, owner, viewport=viewport, reduced_motion="reduce") as page:
        page.goto(f"{made(page, studio)}shape/")
        page.locator("#knob-garment-length").fill("70 cm")
        page.keyboard.press("Tab")
        expect(page.locator("#turned")).to_contain_text("→ 70 cm")
        expect(page.locator("#summary .proven")).to_be_visible()
        for key in (*["Tab"] * 10, *["Shift+Tab"] * 10):
            page.keyboard.press(key)
            assert page.evaluate(covered) == ""


def test_switches_are_at_hand_at_any_row(still: Page, studio: Studio) -> None:
    """The bar with the rooms says for whom the pattern is shown, and opens there."""
    still.goto(f"{made(still, studio)}pattern/#row-skirt-40")
    expect(still.locator("#choices > summary")).to_be_in_viewport()
    still.locator("#choices > summary").click()
    expect(still.locator("#choose-terms")).to_be_in_viewport()


def test_number_stays_in_sight_beside_its_because(still: Page, studio: Studio) -> None:
    """The sheet lies below the number that was tapped, and says which rows it is about."""
    still.goto(f"{made(still, studio)}pattern/")
    number = still.locator(".rows a.why[href*='from=']").last
    number.tap()
    expect(still.locator("#because h2")).to_contain_text(
        re.compile("^Rounds [0-9]+ to [0-9]+, each")
    )
    sheet, box = still.locator("#because").bounding_box(), number.bounding_box()
    assert sheet
    assert box
    assert box["y"] >= 0
    assert box["y"] + box["height"] <= sheet["y"]


def test_panel_is_a_jump_away(desk: Page, studio: Studio) -> None:
    """By keyboard, without all that stands before it."""
    desk.goto(f"{made(desk, studio)}shape/")
    link = desk.get_by_role("link", name="Skip to “Change it”")
    link.focus()
    expect(link).to_be_in_viewport()
    desk.keyboard.press("Enter")
    expect(desk.locator("#panel")).to_be_focused()
    for _ in range(3):
        desk.keyboard.press("Tab")
    assert desk.evaluate("document.activeElement.closest('#panel') !== null")


def test_copy_for_this_garment_only(unscripted: Page, studio: Studio) -> None:
    """Two garments of one design are told apart by one button, without scripts."""
    address = made(unscripted, studio)
    unscripted.goto(f"{address}shape/")
    unscripted.locator("#knob-garment-length").fill("70 cm")
    unscripted.get_by_role("button", name="Change it").first.click()
    action = unscripted.locator("#history form").first.get_attribute("action") or ""
    design = f"own:{re.findall('[0-9]+', action)[0]}"
    token = unscripted.locator("input[name=csrfmiddlewaretoken]").first.get_attribute("value")
    unscripted.request.post(
        f"{studio.address}/garments/create/",
        form={
            "csrfmiddlewaretoken": token or "",
            "design": design,
            "body": "example:dancer-3",
            "swatch": "example:light-cotton",
            "name": "Skirt for Anna",
        },
        headers={"Origin": studio.address},
    )
    unscripted.goto(f"{address}shape/")
    expect(unscripted.locator("#shared")).to_contain_text("also changes Skirt for Anna")
    unscripted.locator("#knob-garment-length").fill("75 cm")
    unscripted.get_by_role("button", name="Change it").first.click()
    expect(unscripted.locator("#shared")).to_contain_text("This also changed Skirt for Anna")
    unscripted.get_by_role("button", name="Make a copy for this garment only").click()
    expect(unscripted.locator("#shared")).to_be_empty()
    expect(unscripted.locator("#knob-garment-length")).to_have_value("75 cm")
    unscripted.goto(f"{studio.address}/garments/")
    unscripted.get_by_role("link", name="Skirt for Anna").click()
    expect(unscripted.locator("#knob-garment-length")).to_have_value("70 cm")


def test_because_opens_and_closes_by_keyboard(desk: Page, studio: Studio) -> None:
    """Enter on a number asks it, Escape closes, and focus is back on the number."""
    desk.goto(f"{made(desk, studio)}shape/")
    number = desk.locator("#result td a.why").first
    number.focus()
    desk.keyboard.press("Enter")
    expect(desk.locator("#because h2")).to_be_focused()
    expect(desk.locator("#because .chain li").first).to_be_visible()
    desk.keyboard.press("Escape")
    expect(desk.locator("#because")).to_be_hidden()
    expect(number).to_be_focused()


def test_row_can_be_linked_to(still: Page, studio: Studio) -> None:
    """Its address brings it into view below the bar with the rooms, and marks it."""
    still.goto(f"{made(still, studio)}pattern/#row-skirt-12")
    row = still.locator("li:has(#row-skirt-12), li#row-skirt-12").first
    expect(row).to_be_in_viewport()
    bar = still.locator(".tabs").bounding_box()
    box = row.bounding_box()
    assert bar
    assert box
    assert box["y"] >= bar["y"] + bar["height"] - 1
    assert row.evaluate("e => getComputedStyle(e).backgroundColor") != still.evaluate(
        "getComputedStyle(document.body).backgroundColor"
    )


def test_row_stays_in_view_when_terms_change(still: Page, studio: Studio) -> None:
    """Who reads a row and switches to UK terms goes on reading that row."""
    still.goto(f"{made(still, studio)}pattern/#row-skirt-20")
    row = still.locator("#row-skirt-20")
    expect(row).to_be_in_viewport()
    still.evaluate("document.getElementById('choices').open = true")
    still.evaluate("document.getElementById('choose-terms').value = 'uk'")
    still.locator("#row-skirt-20").scroll_into_view_if_needed()
    still.evaluate(
        "document.getElementById('choose-terms').dispatchEvent(new Event('change', {bubbles: true}))"
    )
    expect(still.locator("header.about")).to_contain_text("UK terms")
    expect(still.locator("#row-skirt-20")).to_be_in_viewport()


def test_choosing_stays_in_the_room(desk: Page, studio: Studio) -> None:
    """Another body by one choice; the address stays."""
    address = f"{made(desk, studio)}fit/"
    desk.goto(address)
    desk.locator("#choices > summary").click()
    desk.get_by_label("For whom").select_option(label="Women’s size M")
    expect(desk.locator("#made-of")).to_contain_text("Women’s size M")
    assert desk.url == address
    assert desk.locator("#choices").evaluate("e => e.open")


def test_look_at_an_example_and_choose(desk: Page, studio: Studio) -> None:
    """The choices are in the address, so that the page can be shown to somebody."""
    desk.goto(f"{studio.address}/look/ring-dance-skirt/fit/")
    desk.locator("#choices > summary").click()
    desk.get_by_label("Units").select_option("in")
    expect(desk.locator("header.about")).to_contain_text("inches")
    assert "units=in" in desk.url
    expect(desk.get_by_role("link", name="Make it mine")).to_be_visible()


def test_all_of_it_without_scripts(unscripted: Page, studio: Studio) -> None:
    """A group has its button, a number its page, and the choices theirs."""
    address = made(unscripted, studio)
    unscripted.goto(f"{address}shape/")
    unscripted.locator("#knob-garment-length").fill("70 cm")
    unscripted.get_by_role("button", name="Change it").first.click()
    expect(unscripted.locator("#knob-garment-length")).to_have_value("70 cm")
    unscripted.locator("#result td a.why").first.click()
    expect(unscripted.get_by_role("heading", level=1)).to_have_text("Why this number")
    unscripted.get_by_role("link", name=re.compile("^Back to")).click()
    unscripted.locator("#choices > summary").click()
    unscripted.get_by_label("Stitch names").select_option("uk")
    unscripted.get_by_role("button", name="Show it so").click()
    expect(unscripted.locator("header.about")).to_contain_text("UK terms")


@pytest.mark.parametrize("room", ROOMS)
def test_room_is_accessible(browser: Browser, desk: Page, studio: Studio, room: str) -> None:
    """Nothing for axe to report, nothing out of the window, nothing too small to hit."""
    desk.goto(f"{made(desk, studio)}{room}/")
    for viewport, scheme in ((DESK, "light"), (PHONE, "dark"), (SMALL_PHONE, "light")):
        assert faults_of(browser, desk, viewport=viewport, color_scheme=scheme) == [], viewport


@pytest.mark.parametrize("path", ["/garments/", "/look/fiddler-cardigan/shape/"])
def test_other_pages_are_accessible(
    browser: Browser, desk: Page, studio: Studio, path: str
) -> None:
    """The list, and an example of pieces."""
    made(desk, studio)
    desk.goto(f"{studio.address}{path}")
    assert faults_of(browser, desk) == []


def test_print_shows_the_room_alone(desk: Page, studio: Studio) -> None:
    """Title, for whom, gauge and the rows; no bars, forms or buttons."""
    desk.goto(f"{made(desk, studio)}pattern/")
    desk.emulate_media(media="print")
    expect(desk.get_by_role("heading", level=1)).to_be_visible()
    expect(desk.locator("header.about .gauge")).to_contain_text("Gauge")
    expect(desk.locator("#row-skirt-1")).to_be_visible()
    for hidden in (".tabs", "#choices", ".files", "header.top", "#look-at"):
        expect(desk.locator(hidden)).to_be_hidden()
    expect(desk.locator("#summary .only-printed")).to_contain_text("The opening of")
    assert desk.evaluate(
        "[...document.querySelectorAll('a.why')].every("
        "e => !e.checkVisibility() || !e.textContent.startsWith('why'))"
    )
