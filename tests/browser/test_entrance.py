"""The way into the studio, in a browser."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect
from running_studio import Studio, faults_of


def test_link_lets_in_once(browser: Browser, studio: Studio, owner: dict[str, str]) -> None:
    """Whoever opens it a second time, in another browser, stands before the door."""
    stranger = browser.new_page()
    stranger.goto(studio.link)
    expect(stranger.get_by_role("heading", level=1)).to_have_text("The door is closed")
    stranger.goto(f"{studio.address}/people/")
    expect(stranger.get_by_role("heading", level=1)).to_have_text("The door is closed")
    stranger.close()


def test_owner_stays_in(desk: Page, studio: Studio) -> None:
    """The cookie of the first visit is enough for the next, and the used link leads home."""
    expect(desk.get_by_role("navigation", name="Rooms")).to_be_visible()
    desk.goto(studio.link)
    expect(desk.get_by_role("navigation", name="Rooms")).to_be_visible()


def test_door_is_accessible(browser: Browser, studio: Studio) -> None:
    """Also who stands outside can read what to do."""
    page = browser.new_page()
    page.goto(f"{studio.address}/")
    faults = faults_of(browser, page)
    page.close()
    assert faults == []
