"""Makes the pictures of the README and of these pages: `./dev images`. Needs poppler and Chromium."""

from __future__ import annotations

import io
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

from frogless import draft

ROOT = Path(__file__).parents[1]
IMAGES = ROOT / "docs" / "images"
SHOWN = "2 dc in next st"  # the page with the first increase
DPI = 96
COLOURS = 32  # text on white needs no more; a page stays far below 200 KB


def drafted() -> draft.Draft:
    """The example that the README speaks of."""
    designs = ROOT / "designs"
    return draft.draft(
        draft.Request(
            designs / "ring-dance-skirt" / "design.toml",
            designs / "bodies" / "dancer-3.toml",
            (designs / "swatches" / "light-cotton.toml",),
        )
    )


def page_with(text: str, pdf: Path) -> int:
    """Number of the first page that has these words, wherever its lines break.

    Raises:
        SystemExit: no page has them; the pattern's wording has changed.
    """
    pages = [" ".join(p.split()) for p in _run("pdftotext", str(pdf), "-").decode().split("\f")]
    for number, page in enumerate(pages, 1):
        if text in page:
            return number
    raise SystemExit(f'no page has "{text}"; mend SHOWN in docs/make_images.py')


def picture(pdf: Path, page: int) -> bytes:
    """One page as PNG, in few colours."""
    drawn = _run(
        "pdftoppm",
        "-png",
        "-r",
        str(DPI),
        "-f",
        str(page),
        "-l",
        str(page),
        "-singlefile",
        str(pdf),
    )
    return in_few_colours(drawn, COLOURS)


def in_few_colours(drawn: bytes, colours: int) -> bytes:
    """A PNG as a smaller one."""
    few = Image.open(io.BytesIO(drawn)).convert("RGB").quantize(colours)
    out = io.BytesIO()
    few.save(out, "PNG", optimize=True)
    return out.getvalue()


def studio() -> bytes:
    """The shape of the example in the studio, as PNG in few colours."""
    with tempfile.TemporaryDirectory() as data, sync_playwright() as playwright:
        process = subprocess.Popen(
            [sys.executable, "-m", "frogless", "studio", "--no-browser"],
            env={**os.environ, "FROGLESS_DATA": data},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert process.stdout  # noqa: S101 - it was asked for
        link = process.stdout.readline().split()[-1]
        browser = playwright.chromium.launch(
            executable_path=os.environ.get("FROGLESS_CHROMIUM") or shutil.which("chromium"),
            args=["--no-sandbox", "--disable-gpu"],
        )
        page = browser.new_page(viewport={"width": 1180, "height": 860})
        page.goto(link)
        page.goto(f"{link.partition('/enter/')[0]}/look/ring-dance-skirt/shape/")
        page.wait_for_load_state("networkidle")
        drawn = page.screenshot()
        browser.close()
        process.kill()
        process.wait()
    return in_few_colours(drawn, 2 * COLOURS)


def _run(*command: str) -> bytes:
    return subprocess.run(command, check=True, capture_output=True).stdout


def main() -> None:
    """Drafts the example and writes its pictures, and one of the studio."""
    IMAGES.mkdir(exist_ok=True)
    files = draft.outputs(drafted().drafted)
    (IMAGES / "schematic.svg").write_bytes(files["schematic.svg"])
    with tempfile.TemporaryDirectory() as folder:
        pdf = Path(folder, "pattern.pdf")
        pdf.write_bytes(files["pattern.pdf"])
        (IMAGES / "page.png").write_bytes(picture(pdf, page_with(SHOWN, pdf)))
    (IMAGES / "studio.png").write_bytes(studio())
    for image in sorted(IMAGES.iterdir()):
        print(f"{image.relative_to(ROOT)}  {image.stat().st_size / 1000:.0f} KB")


if __name__ == "__main__":
    main()
