"""The library, as a person meets it: what goes out comes in, what is deleted comes back or is gone."""

from __future__ import annotations

import re
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from running_studio import PHONE, SMALL_PHONE, Studio, faults_of, opened, owner_of, running

TEXT = 'format = "frogless-body/1"\nname = "Ada"\n[measurements]\nwaist_girth = "71.625 cm"\n'


def bring_in(page: Page, studio: Studio, text: str) -> None:
    """A text, pasted and brought in."""
    page.goto(f"{studio.address}/library/import/")
    page.get_by_text("Paste a text instead").click()
    page.get_by_label("Text of a body").fill(text)
    page.get_by_role("button", name="Look at it").click()
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("status").filter(has_text="1 came in")).to_be_visible()


def test_library_moves_to_another_computer(
    desk: Page, browser: Browser, studio: Studio, tmp_path: Path
) -> None:
    """Saved as a zip here, looked at and brought in there."""
    bring_in(desk, studio, TEXT)
    with desk.expect_download() as saved:
        desk.get_by_role("link", name="Save all of it").click()
    file = tmp_path / saved.value.suggested_filename
    saved.value.save_as(file)
    with zipfile.ZipFile(file) as archive:
        assert "bodies/ada.toml" in archive.namelist()
    (tmp_path / "there").mkdir()
    with (
        running(tmp_path / "there") as other,
        opened(browser, other, owner_of(browser, other)) as page,
    ):
        page.goto(f"{other.address}/library/")
        page.get_by_role("link", name="Bring in a file").click()
        page.get_by_label("File", exact=True).set_input_files(file)
        page.get_by_role("button", name="Look at it").click()
        expect(page.get_by_role("row", name="Ada Body New")).to_be_visible()
        page.get_by_role("button", name="Bring it in").click()
        expect(page.get_by_role("link", name="Ada", exact=True)).to_be_visible()


@pytest.mark.parametrize("who", ["phone", "unscripted"])
def test_deleted_comes_back_or_is_gone(
    request: pytest.FixtureRequest, studio: Studio, who: str
) -> None:
    """Into the bin, out of it, and at last for good."""
    page: Page = request.getfixturevalue(who)
    name = f"Bea {who}"
    bring_in(page, studio, TEXT.replace("Ada", name))
    page.get_by_role("button", name=f"Delete {name}", exact=True).click()
    page.get_by_role("button", name=f"Bring back {name}", exact=True).click()
    page.get_by_role("button", name=f"Delete {name}", exact=True).click()
    page.get_by_role("link", name=re.compile(f"Delete for good.*{name}")).click()
    expect(page.get_by_text("Nobody can bring it back, not even you.")).to_be_visible()
    page.get_by_role("button", name="Delete for good").click()
    expect(page.get_by_text("It is deleted for good.")).to_be_visible()
    expect(page.get_by_text(name)).to_have_count(0)


def test_deleted_for_good_is_in_no_file(browser: Browser, tmp_path: Path) -> None:
    """While the studio runs and other pages are open, nothing of it is left on the disk."""
    with (
        running(tmp_path) as studio,
        opened(browser, studio, owner_of(browser, studio)) as page,
    ):
        bring_in(page, studio, TEXT)
        assert files_with(b"71.625", tmp_path)
        page.get_by_role("button", name="Delete Ada", exact=True).click()
        page.get_by_role("link", name=re.compile("Delete for good.*Ada")).click()
        page.get_by_role("button", name="Delete for good").click()
        expect(page.get_by_text("It is deleted for good.")).to_be_visible()
        assert files_with(b"71.625", tmp_path) == []


def files_with(word: bytes, folder: Path) -> list[str]:
    """The files below a folder that hold a word."""
    files = (file for file in folder.rglob("*") if file.is_file())
    return [file.name for file in files if word in file.read_bytes()]


def test_renamed_with_the_keyboard(desk: Page, studio: Studio) -> None:
    """Unfolded, written and sent without a mouse; a taken name is told."""
    for name in ("Cleo", "Dora"):
        bring_in(desk, studio, TEXT.replace("Ada", name))
    summary = desk.locator("summary").filter(has_text="Rename Cleo")
    summary.focus()
    desk.keyboard.press("Enter")
    desk.keyboard.press("Tab")
    desk.keyboard.press("ControlOrMeta+a")
    desk.keyboard.type("Dora")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("alert")).to_contain_text('called "Dora" already')
    field = desk.get_by_label("New name of Cleo")
    expect(field).to_have_value("Dora")
    field.fill("Eva")
    field.press("Enter")
    expect(desk.get_by_role("link", name="Eva", exact=True)).to_be_visible()


@pytest.fixture(params=[("desk", "light"), ("phone", "dark"), ("small", "light")], ids=str)
def looked_at(
    request: pytest.FixtureRequest, browser: Browser, studio: Studio, owner: dict[str, str]
) -> Iterator[tuple[Page, str]]:
    """A page of each size, in light and dark."""
    size, scheme = request.param
    sizes = {"desk": {"width": 1280, "height": 900}, "phone": PHONE, "small": SMALL_PHONE}
    with opened(browser, studio, owner, viewport=sizes[size], color_scheme=scheme) as page:
        yield page, scheme


def test_pages_are_accessible(
    browser: Browser, looked_at: tuple[Page, str], studio: Studio
) -> None:
    """The shelves with a bin, the way in, and the page that asks: axe finds nothing."""
    page, scheme = looked_at
    wide = page.evaluate("innerWidth")
    bring_in(page, studio, TEXT.replace("Ada", f"Fay {wide}"))
    bring_in(page, studio, TEXT.replace("Ada", f"Gus {wide}"))
    page.get_by_role("button", name=f"Delete Gus {wide}", exact=True).click()
    assert faults_of(browser, page, color_scheme=scheme) == []
    page.get_by_role("link", name="Empty the bin").click()
    assert faults_of(browser, page, color_scheme=scheme) == []
    page.goto(f"{studio.address}/library/import/")
    assert faults_of(browser, page, color_scheme=scheme) == []
