"""The room of swatches, as a person meets it: with hand and keyboard, on a desk and on a phone."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pikepdf
import pytest
from playwright.sync_api import Browser, Dialog, Page, expect
from running_studio import PHONE, SMALL_PHONE, Studio, faults_of, opened

READ = {"#r1-count": "13", "#r1-width": "8", "#r1-rows": "8", "#r1-height": "9"}


@pytest.fixture(params=["desk", "phone"])
def either(request: pytest.FixtureRequest) -> Page:
    """A page on a desk, and one on a phone."""
    page: Page = request.getfixturevalue(request.param)
    return page


def fill(page: Page) -> None:
    """A short reading, typed."""
    page.get_by_label("Name").fill("blue")
    page.get_by_label("Hook", exact=False).first.fill("4")
    for field, text in READ.items():
        page.locator(field).fill(text)


def test_swatch_is_written_down(either: Page, studio: Studio) -> None:
    """Typed: the gauge follows, what is wrong is told beside it, and it is saved."""
    page = either
    page.goto(f"{studio.address}/swatches/")
    page.get_by_role("link", name="Write down a swatch").click()
    told = page.get_by_role("region", name="What this swatch tells")
    expect(told).to_contain_text("No gauge yet")
    fill(page)
    expect(told).to_contain_text("16.2 stitches and 8.9 rows in 10 cm")
    expect(told).to_contain_text("Count stitches over 15 cm instead of 8 cm")
    height = page.locator("#r1-height")
    height.fill("9 cn")
    expect(height).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#r1-height-error")).to_contain_text("no unit for a length")
    expect(told).to_contain_text("16.2 stitches in 10 cm")
    height.fill("9")
    expect(height).not_to_have_attribute("aria-invalid", "true")
    page.get_by_role("button", name="Save", exact=True).last.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("blue")
    expect(page.get_by_role("status").filter(has_text="Saved.")).to_be_visible()


def test_reading_is_added_and_taken_away(either: Page, studio: Studio) -> None:
    """Another one of the same, then none of it; the gauge follows."""
    page = either
    page.goto(f"{studio.address}/swatches/")
    page.get_by_role("button", name="Copy to change light cotton").click()
    page.get_by_role("button", name="Read it again Reading 1:").click()
    added = page.locator("fieldset").filter(has=page.locator("#r12-count"))
    expect(added).to_be_visible()
    page.locator("#r12-count").fill("36")
    page.locator("#r12-width").fill("15")
    told = page.get_by_role("region", name="What this swatch tells")
    expect(told).to_contain_text("differ by 33 % in their stitches")
    page.get_by_role("button", name="Remove Reading 12:").click()
    expect(page.locator("#r12-count")).to_have_count(0)
    expect(told).not_to_contain_text("differ by")
    page.get_by_role("button", name="Save", exact=True).last.click()
    expect(page.get_by_role("status").filter(has_text="Saved.")).to_be_visible()


def test_link_to_a_folded_reading_unfolds_it(desk: Page, studio: Studio) -> None:
    """From a sentence to the fields that it is about."""
    desk.goto(f"{studio.address}/swatches/")
    desk.locator("form[action*='light-cotton'] button").click()
    expect(desk.locator("#r2-count")).not_to_be_visible()
    region = desk.get_by_role("region", name="What this swatch tells")
    region.get_by_role("link", name="reading 2", exact=True).first.click()
    expect(desk.locator("#r2-count")).to_be_visible()


def test_keyboard_alone(desk: Page, studio: Studio) -> None:
    """From the name to a saved swatch without a mouse; Enter saves."""
    desk.goto(f"{studio.address}/swatches/new/")
    desk.get_by_label("Name").focus()
    for keys in ("red", "", "5", ""):
        desk.keyboard.type(keys)
        desk.keyboard.press("Tab")
    desk.locator("#r1-count").focus()
    for keys in ("27", "15", "15", "15.8"):
        desk.keyboard.type(keys)
        desk.keyboard.press("Tab")
    desk.keyboard.press("Shift+Tab")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("heading", level=1)).to_have_text("red")


def test_unsaved_writing_is_asked_about(desk: Page, studio: Studio) -> None:
    """Leaving with something written is a question; what was saved is none."""
    desk.goto(f"{studio.address}/swatches/new/")
    desk.get_by_label("Name").click()
    desk.keyboard.type("green")
    expect(desk.locator("#unsaved")).to_have_text("Not saved yet")
    asked: list[str] = []

    def answer(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.accept()

    desk.on("dialog", answer)
    desk.get_by_role("link", name="All swatches").click()
    expect(desk.get_by_role("heading", level=1)).to_have_text("Swatches")
    assert asked == ["beforeunload"]


def test_without_scripts(unscripted: Page, studio: Studio) -> None:
    """The same form, with buttons that post."""
    page = unscripted
    page.goto(f"{studio.address}/swatches/new/")
    fill(page)
    page.get_by_role("button", name="Add a reading").click()
    page.locator("#r2-rows").fill("9")
    page.locator("#r2-height").fill("9 cn")
    page.get_by_role("button", name="Save", exact=True).last.click()
    expect(page.locator("#r2-height-error")).to_contain_text("no unit for a length")
    page.locator("#r2-height").fill("10")
    page.get_by_role("button", name="Save", exact=True).last.click()
    expect(page.get_by_text("Saved.")).to_be_visible()
    expect(page.get_by_role("region", name="What this swatch tells")).to_contain_text("16.2")


ROOMS = ("", "new/", "open/", "ruler/", "1/", "1/text/")


@pytest.fixture(scope="module")
def one_swatch(browser: Browser, studio: Studio, owner: dict[str, str]) -> None:
    """A swatch that is there, under the key that the addresses name."""
    with opened(browser, studio, owner) as page:
        page.goto(f"{studio.address}/swatches/")
        page.locator("form[action*='light-cotton'] button").click()


@pytest.fixture(params=[("desk", "light"), ("phone", "dark"), ("small", "light")], ids=str)
def looked_at(
    request: pytest.FixtureRequest, browser: Browser, studio: Studio, owner: dict[str, str]
) -> Iterator[tuple[Page, str]]:
    """A page of each size, in light and dark."""
    size, scheme = request.param
    sizes = {"desk": {"width": 1280, "height": 900}, "phone": PHONE, "small": SMALL_PHONE}
    with opened(browser, studio, owner, viewport=sizes[size], color_scheme=scheme) as page:
        yield page, scheme


@pytest.mark.usefixtures("one_swatch")
@pytest.mark.parametrize("room", ROOMS)
def test_rooms_are_accessible(
    browser: Browser, looked_at: tuple[Page, str], studio: Studio, room: str
) -> None:
    """Axe finds nothing, nothing leaves the window, everything can be hit."""
    page, scheme = looked_at
    page.goto(f"{studio.address}/swatches/{room}")
    assert faults_of(browser, page, color_scheme=scheme) == []


POINT = 25.4 / 72


def boxes(page: pikepdf.Page) -> list[tuple[float, float]]:
    """Width and height of every path of a page as it is printed, mm."""
    found: list[tuple[float, float]] = []
    _walk(page, pikepdf.Matrix(), found)
    return found


def _walk(
    within: pikepdf.Page | pikepdf.Object, start: pikepdf.Matrix, found: list[tuple[float, float]]
) -> None:
    now, kept, points = start, [], []
    for operands, operator in pikepdf.parse_content_stream(within):
        name = str(operator)
        numbers = [float(n) for n in operands] if name in ("cm", "m", "l", "c", "re") else []
        if name == "q":
            kept.append(now)
        elif name == "Q":
            now = kept.pop()
        elif name == "cm":
            now = pikepdf.Matrix(*numbers) @ now
        elif name in ("m", "l", "c"):
            points.append(now.transform(tuple(numbers[-2:])))
        elif name == "re":
            x, y, width, height = numbers
            points += [now.transform((x, y)), now.transform((x + width, y + height))]
        elif name == "Do":
            form = within.Resources.XObject[str(operands[0])]  # type: ignore[union-attr]
            if form.get("/Subtype") == "/Form":
                inner = form.get("/Matrix")
                matrix = pikepdf.Matrix(inner) if inner is not None else pikepdf.Matrix()
                _walk(form, matrix @ now, found)
        elif name in ("S", "s", "f", "f*", "B", "b", "n", "B*", "b*") and points:
            xs, ys = ([point[k] for point in points] for k in (0, 1))
            found.append(((max(xs) - min(xs)) * POINT, (max(ys) - min(ys)) * POINT))
            points = []


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_ruler_is_printed_true(desk: Page, studio: Studio, tmp_path: Path, paper: str) -> None:
    """On paper the square is 100 mm, the bank card 53.98 × 85.60 mm, each sheet one page.

    Source of the card: ISO/IEC 7810, format ID-1.
    """
    desk.goto(f"{studio.address}/swatches/ruler/")
    for image in desk.locator("figure img").all():
        image.scroll_into_view_if_needed()
    desk.wait_for_load_state("networkidle")
    file = tmp_path / "ruler.pdf"
    desk.pdf(path=file, format=paper)
    with pikepdf.open(file) as printed:
        assert len(printed.pages) == 2
        first, second = (boxes(page) for page in printed.pages)
    assert _has(first, 100.0, 100.0)
    assert _has(first, 53.98, 85.60)
    assert _has(second, 100.0, 100.0)


def _has(found: list[tuple[float, float]], width: float, height: float) -> bool:
    """Whether there is a path of that size, to a twentieth of a millimetre."""
    return any(abs(w - width) < 0.05 and abs(h - height) < 0.05 for w, h in found)
