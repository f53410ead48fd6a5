"""Makes the pictures of the README and of these pages: `./dev images`. Needs poppler."""

from __future__ import annotations

import io
import subprocess
import tempfile
from pathlib import Path

from PIL import Image

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
    few = Image.open(io.BytesIO(drawn)).convert("RGB").quantize(COLOURS)
    out = io.BytesIO()
    few.save(out, "PNG", optimize=True)
    return out.getvalue()


def _run(*command: str) -> bytes:
    return subprocess.run(command, check=True, capture_output=True).stdout


def main() -> None:
    """Drafts the example and writes both pictures."""
    IMAGES.mkdir(exist_ok=True)
    files = draft.outputs(drafted().drafted)
    (IMAGES / "schematic.svg").write_bytes(files["schematic.svg"])
    with tempfile.TemporaryDirectory() as folder:
        pdf = Path(folder, "pattern.pdf")
        pdf.write_bytes(files["pattern.pdf"])
        (IMAGES / "page.png").write_bytes(picture(pdf, page_with(SHOWN, pdf)))
    for image in sorted(IMAGES.iterdir()):
        print(f"{image.relative_to(ROOT)}  {image.stat().st_size / 1000:.0f} KB")


if __name__ == "__main__":
    main()
