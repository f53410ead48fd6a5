"""Patterns for many bodies: begun, watched, cancelled, saved."""

from __future__ import annotations

import zipfile

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import Studio, faults_of


def begin(page: Page, studio: Studio, *sizes: str) -> None:
    """A garment of an example, and from it to the work for these sizes."""
    page.goto(
        f"{studio.address}/start/example:rehearsal-skirt/?body=example:dancer-3&swatch=example:light-cotton"
    )
    page.get_by_role("button", name="Make the pattern").click()
    page.get_by_role("link", name="PDFs for several sizes").first.click()
    for size in sizes:
        page.get_by_label(f"Women’s size {size}", exact=True).check()
    page.get_by_role("button", name="Make the patterns").click()


def test_patterns_for_several_bodies_are_watched_and_saved(desk: Page, studio: Studio) -> None:
    """The page follows by itself and offers the zip when it is done."""
    begin(desk, studio, "S", "M")
    expect(desk.get_by_role("heading", level=1)).to_contain_text("for 3 bodies")
    expect(desk.get_by_text("All 3 are done.")).to_be_visible()
    with desk.expect_download() as saved:
        desk.get_by_role("link", name="Save patterns.zip").click()
    with zipfile.ZipFile(saved.value.path()) as archive:
        assert sorted(name.rpartition(".")[2] for name in archive.namelist()) == ["pdf"] * 3 + [
            "txt"
        ]


def test_long_work_is_cancelled_by_key(phone: Page, studio: Studio) -> None:
    """With nothing of it kept."""
    begin(phone, studio, "XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X")
    expect(phone.get_by_role("progressbar")).to_be_visible()
    phone.get_by_role("button", name="Cancel").focus()
    phone.keyboard.press("Enter")
    expect(phone.get_by_text("Nothing of it was kept.")).to_be_visible()


def test_page_without_scripts_follows_too(unscripted: Page, studio: Studio) -> None:
    """It loads itself again until it is done."""
    begin(unscripted, studio)
    expect(unscripted.get_by_text("All 1 are done.")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pages_of_long_work_are_accessible(
    browser: Browser, phone: Page, studio: Studio, scheme: str
) -> None:
    """The choice, the list, and a work that is over."""
    begin(phone, studio)
    expect(phone.get_by_text("All 1 are done.")).to_be_visible()
    assert faults_of(browser, phone, color_scheme=scheme) == []
    phone.goto(f"{studio.address}/jobs/")
    assert faults_of(browser, phone, color_scheme=scheme) == []
    phone.goto(f"{studio.address}/garments/")
    phone.locator("a[href$='/shape/']").first.click()
    phone.get_by_role("link", name="PDFs for several sizes").first.click()
    assert faults_of(browser, phone, color_scheme=scheme) == []
