"""The first five minutes, in a browser: from nothing to a pattern of one's own."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import DESK, PHONE, SMALL_PHONE, Studio, faults_of, opened, owner_of, running

SIZES = {"desk": DESK, "phone": PHONE, "small phone": SMALL_PHONE}
LEAST = {
    "Waist girth": "72",
    "Hip girth": "39 3/4 in",
    "Hook": "3.75",
    "Stitches": "18",
    "Rows": "9.5",
}


def field(page: Page, label: str) -> None:
    """Fills in one field of the first page of a garment."""
    page.get_by_label(re.compile(f"^{label}( needed)?$")).fill(LEAST[label])


def make(page: Page) -> None:
    """Presses the button at the end of the page."""
    page.get_by_role("button", name="Make the pattern", exact=True).click()


@pytest.mark.parametrize("size", SIZES)
def test_somebody_new_comes_to_her_pattern(
    browser: Browser, tmp_path_factory: pytest.TempPathFactory, size: str
) -> None:
    """Two links, five fields, one button; the studio was empty."""
    with running(tmp_path_factory.mktemp("empty")) as studio:
        owner = owner_of(browser, studio)
        with opened(browser, studio, owner, viewport=SIZES[size]) as page:
            page.get_by_role("link", name="Choose a garment").click()
            page.get_by_role("link", name="Ring dance skirt").click()
            for label in LEAST:
                field(page, label)
            make(page)
            expect(page).to_have_url(re.compile("/garments/1/shape/$"))
            expect(page.get_by_role("heading", level=1)).to_contain_text("Ring dance skirt")


def test_first_page_shows_six_fields(desk: Page, studio: Studio) -> None:
    """Everything else is folded; fewer than ten stand between opening and the pattern."""
    desk.goto(f"{studio.address}/start/example:procession-skirt/")
    inputs = desk.locator("main form input:visible, main form select:visible")
    expect(inputs).to_have_count(6)


def test_what_is_missing_is_told_and_found_with_keys(desk: Page, studio: Studio) -> None:
    """The list leads to the field."""
    desk.goto(f"{studio.address}/start/example:ring-dance-skirt/")
    field(desk, "Waist girth")
    make(desk)
    alert = desk.get_by_role("alert")
    expect(alert).to_contain_text("Hip girth")
    alert.get_by_role("link", name="Hip girth").press("Enter")
    expect(desk.get_by_label(re.compile("^Hip girth"))).to_be_focused()
    expect(desk.get_by_label(re.compile("^Waist girth"))).to_have_value("72")


def test_slip_is_told_while_it_is_typed(phone: Page, studio: Studio) -> None:
    """Beside its field; the empty ones are not complained of."""
    phone.goto(f"{studio.address}/start/example:ring-dance-skirt/")
    waist = phone.get_by_label(re.compile("^Waist girth"))
    waist.fill("33")
    waist.press("Tab")
    expect(phone.locator("#body-waist_girth-error")).to_contain_text("did you mean 33 in")
    expect(phone.locator("#body-hip_girth-error")).to_be_empty()


def test_journey_without_scripts(unscripted: Page) -> None:
    """The same; the second garment takes what is there, and a new person is measured by choice."""
    page = unscripted
    page.get_by_role("link", name="Choose a garment").click()
    page.get_by_role("link", name=re.compile("^Skirts")).click()
    page.get_by_role("link", name="Procession skirt").click()
    make(page)
    expect(page.locator("#body-hip_girth-error")).to_have_text("Hip girth is needed.")
    for label in LEAST:
        field(page, label)
    make(page)
    # Single crochet is no higher than wide: rows of double crochet are asked about.
    expect(page.get_by_role("alert")).to_contain_text("Is this so?")
    page.get_by_label(re.compile("^Rows")).first.fill("19")
    make(page)
    expect(page).to_have_url(re.compile("/garments/[0-9]+/shape/$"))
    page.get_by_role("link", name="Frogless", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Go on")
    page.get_by_role("link", name="Choose a garment").click()
    page.get_by_role("link", name="Procession skirt").click()
    expect(page.get_by_label(re.compile("^Waist girth"))).to_be_hidden()
    page.get_by_label("Body").select_option(label="Somebody new, measured below")
    expect(page.get_by_label(re.compile("^Waist girth"))).to_be_visible()
    page.get_by_label("Body").select_option(label="Women’s size M")
    make(page)
    expect(page).to_have_url(re.compile("/garments/[0-9]+/shape/$"))


@pytest.mark.parametrize(
    ("size", "scheme"), [("desk", "light"), ("phone", "dark"), ("small phone", "light")]
)
@pytest.mark.parametrize(
    "path",
    ["", "start/", "start/example:ring-dance-skirt/", "start/example:bellflower-skirt/"],
)
def test_pages_are_accessible(
    browser: Browser, studio: Studio, owner: dict[str, str], path: str, scheme: str, size: str
) -> None:
    """No finding of axe, nothing out of the window, nothing too small to hit."""
    with opened(browser, studio, owner, viewport=SIZES[size], color_scheme=scheme) as page:
        page.goto(f"{studio.address}/{path}")
        assert faults_of(browser, page, color_scheme=scheme) == []


@pytest.fixture(scope="module")
def empty(
    browser: Browser, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[tuple[Studio, dict[str, str]]]:
    """A studio in which nobody makes anything, and its owner: its form is that of a first visit."""
    with running(tmp_path_factory.mktemp("empty")) as started:
        yield started, owner_of(browser, started)


@pytest.mark.parametrize("size", [DESK, PHONE, SMALL_PHONE], ids=["desk", "phone", "small phone"])
def test_how_to_measure_is_in_view_from_the_beginning(
    browser: Browser, empty: tuple[Studio, dict[str, str]], size: dict[str, int]
) -> None:
    """Small beside each needed field, at most 9 rem high; larger when it is opened."""
    with opened(browser, *empty, viewport=size) as page:
        page.goto(f"{page.url}start/example:ring-dance-skirt/")
        for name in ("body-waist_girth", "body-hip_girth", "swatch-r1-count", "swatch-r1-rows"):
            small = page.locator(f".field:has(#{name}) img.small")
            small.scroll_into_view_if_needed()
            expect(small).to_be_visible()
            box = small.bounding_box()
            assert box
            assert 60 < box["height"] <= 9 * 16
        page.locator(".field:has(#body-waist_girth) summary").click()
        large = page.get_by_role("img", name="How to measure: waist girth")
        expect(large).to_be_visible()
        opened_box = large.bounding_box()
        assert opened_box
        assert opened_box["width"] > 2 * box["width"]
        assert page.evaluate("document.documentElement.scrollWidth") == size["width"]


def test_question_is_taken_with_a_click(
    browser: Browser, empty: tuple[Studio, dict[str, str]]
) -> None:
    """The page stays, the field has it and the focus; what else was typed is there."""
    with opened(browser, *empty) as desk:
        desk.goto(f"{desk.url}start/example:ring-dance-skirt/")
        desk.locator("#body-hip_girth").fill("101")
        desk.locator("#body-waist_girth").fill("33")
        desk.locator("#body-waist_girth").press("Tab")
        desk.get_by_role("button", name="Write 33 in").click()
        expect(desk.locator("#body-waist_girth")).to_have_value("33 in")
        expect(desk.locator("#body-waist_girth")).to_be_focused()
        expect(desk.locator("#body-hip_girth")).to_have_value("101")
        expect(desk.get_by_role("button", name="Write 33 in")).to_have_count(0)
