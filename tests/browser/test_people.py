"""People, in a browser: on a desk, on a phone, with keys alone, without scripts."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import DESK, PHONE, SMALL_PHONE, Studio, faults_of, opened

SIZES = {"desk": DESK, "phone": PHONE, "small phone": SMALL_PHONE}


def open_new(page: Page) -> None:
    """The form of somebody who is not saved yet."""
    page.goto(page.url.partition("#")[0].rstrip("/") + "/people/new/")


def test_what_is_said_follows_the_tape(desk: Page) -> None:
    """A slip is told beside its field, an estimate appears, and what is typed next is not touched."""
    open_new(desk)
    waist = desk.get_by_label("Waist girth")
    waist.fill("33")
    waist.press("Tab")
    desk.keyboard.type("101")
    expect(desk.locator("#waist_girth-error")).to_contain_text("did you mean 33 in")
    expect(waist).to_have_attribute("aria-invalid", "true")
    expect(desk.locator("#hip_girth")).to_have_value("101")
    waist.fill("72")
    waist.press("Tab")
    expect(desk.locator("#waist_girth-error")).to_be_empty()
    expect(waist).not_to_have_attribute("aria-invalid", "true")
    desk.get_by_text("Down the body").click()
    stature = desk.get_by_label("Stature")
    stature.fill("165")
    stature.press("Tab")
    expect(desk.locator("#waist_to_hip-said")).to_contain_text("from stature")


def test_question_is_heard(desk: Page) -> None:
    """Whoever does not see the page is told of the field that was just left."""
    open_new(desk)
    desk.get_by_label("Waist girth").fill("150")
    desk.get_by_label("Waist girth").press("Tab")
    expect(desk.locator("#heard")).to_contain_text("Waist girth: ")
    expect(desk.locator("#heard")).to_contain_text("lies outside surveys")


def test_tape_is_in_view_beside_the_field_on_a_desk(desk: Page) -> None:
    """The picture of the field that is filled in, in the window and beside it, and no other."""
    open_new(desk)
    for name in ("waist_girth", "bust_girth"):
        field = desk.locator(f"#{name}")
        field.focus()
        shown = desk.locator("img.taking:visible")
        expect(shown).to_have_count(1)
        expect(shown).to_be_in_viewport(ratio=1)
        assert f"/{name}.svg" in (shown.get_attribute("src") or "")
        picture, box = shown.bounding_box(), field.bounding_box()
        assert picture
        assert box
        assert picture["x"] > box["x"] + box["width"]
    desk.get_by_label("Name").focus()
    expect(desk.locator("img.taking:visible")).to_have_count(0)
    expect(desk.locator("figure.whole img")).to_be_visible()


def test_tape_unfolds_under_the_field_on_a_phone(phone: Page) -> None:
    """One tap, and it is wide enough to see."""
    open_new(phone)
    phone.locator("summary", has_text="How to measure waist girth").tap()
    shown = phone.get_by_role("img", name="How to measure: waist girth")
    expect(shown).to_be_visible()
    box = shown.bounding_box()
    assert box
    assert box["width"] > 250


def test_body_is_saved_with_enter_and_undone(desk: Page) -> None:
    """Keys alone: Enter saves and presses none of the buttons in between."""
    open_new(desk)
    desk.get_by_label("Name").fill("Keys")
    desk.get_by_label("Waist girth").fill("28 1/4 in")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Keys")
    expect(desk.get_by_text("Saved.")).to_be_visible()
    desk.get_by_label("Waist girth").fill("74")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("button", name="Undo changed measurements")).to_be_enabled()
    desk.get_by_role("button", name="Undo changed measurements").press("Enter")
    expect(desk.get_by_label("Waist girth")).to_have_value("28 1/4 in")
    expect(desk.get_by_role("button", name="Redo changed measurements")).to_be_enabled()


def test_two_tabs_do_not_overwrite_each_other(desk: Page) -> None:
    """The second one sees both, and keeps its own as a copy."""
    open_new(desk)
    desk.get_by_label("Name").fill("Twice")
    desk.get_by_label("Waist girth").fill("72")
    desk.keyboard.press("Enter")
    expect(desk.get_by_text("Saved.")).to_be_visible()
    other = desk.context.new_page()
    other.goto(desk.url)
    other.get_by_label("Waist girth").fill("74")
    other.keyboard.press("Enter")
    expect(other.get_by_text("Saved.")).to_be_visible()
    other.close()
    desk.get_by_label("Waist girth").fill("76")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Changed on another page")
    expect(desk.locator("mark")).to_have_text(['waist_girth = "76 cm"', 'waist_girth = "74 cm"'])
    desk.get_by_role("button", name="Keep mine as a copy").click()
    expect(desk.get_by_label("Waist girth")).to_have_value("76")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Twice, copy")


def test_file_is_opened_and_saved(desk: Page, tmp_path: Path) -> None:
    """It comes out as it went in."""
    text = 'format = "frogless-body/1"\nname = "File"\n[measurements]\nhip_girth = "99 cm" # sat\n'
    file = tmp_path / "anna.toml"
    file.write_text(text, encoding="utf-8")
    desk.goto(f"{desk.url}people/open/")
    desk.get_by_label("The file").set_input_files(file)
    desk.get_by_role("button", name="Open it").click()
    expect(desk.locator("#hip_girth")).to_have_value("99")
    with desk.expect_download() as saved:
        desk.get_by_role("link", name="Save as a file").click()
    assert Path(saved.value.path()).read_text(encoding="utf-8") == text


def test_journey_without_scripts(unscripted: Page) -> None:
    """Measured, refused, mended, saved; units switched on the way."""
    page = unscripted
    page.get_by_role("link", name="People").click()
    page.get_by_role("link", name="Measure somebody").click()
    page.get_by_label("Name").fill("Plain")
    page.get_by_label("Waist girth").fill("33")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#waist_girth-error")).to_contain_text("did you mean 33 in")
    page.get_by_role("button", name="inches").click()
    expect(page.get_by_label("Waist girth")).to_have_value("33 cm")
    page.get_by_label("Waist girth").fill("33")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_text("Saved.")).to_be_visible()
    page.get_by_role("button", name="cm", exact=True).click()
    expect(page.get_by_label("Waist girth")).to_have_value("33 in")


@pytest.mark.parametrize(
    ("size", "scheme"), [("desk", "light"), ("phone", "dark"), ("small phone", "light")]
)
@pytest.mark.parametrize(
    "path", ["", "new/", "open/", "sheet/", "sizes/", "sizes/women/M/", "examples/dancer-4/"]
)
def test_pages_are_accessible(
    browser: Browser, studio: Studio, owner: dict[str, str], path: str, scheme: str, size: str
) -> None:
    """No finding of axe, nothing out of the window, nothing too small to hit."""
    with opened(browser, studio, owner, viewport=SIZES[size], color_scheme=scheme) as page:
        page.goto(f"{studio.address}/people/{path}")
        assert faults_of(browser, page, color_scheme=scheme) == []


def test_saved_body_is_accessible(browser: Browser, phone: Page) -> None:
    """With everything unfolded, estimates and questions among it."""
    phone.goto(f"{phone.url}people/")
    phone.get_by_role("button", name="Copy Dancer 4").tap()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Dancer 4")
    phone.goto(phone.url.partition("?")[0])
    assert faults_of(browser, phone) == []


@pytest.mark.parametrize("size", SIZES)
def test_size_tables_scroll_by_themselves(
    browser: Browser, studio: Studio, owner: dict[str, str], size: str
) -> None:
    """The page is as wide as the window; only the table in it is wider."""
    with opened(browser, studio, owner, viewport=SIZES[size]) as page:
        page.goto(f"{page.url}people/sizes/")
        assert page.evaluate("document.documentElement.scrollWidth") == SIZES[size]["width"]
