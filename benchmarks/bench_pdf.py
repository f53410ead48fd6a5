"""How fast is the PDF? The pattern of the 60-round skirt against fpdf2, in the same run.

fpdf2 is a general-purpose PDF library in pure Python. It lays out the same blocks: every heading,
paragraph, list, table and row, and both drawings. It need not tag the page for screen readers
(PDF/UA-1), carry a font, or keep a row whole at the end of a page, so the comparison is in its
favour.
"""

from __future__ import annotations

import io
import logging
from collections.abc import Iterable, Sequence
from functools import partial, singledispatch
from pathlib import Path

import pikepdf
from fpdf import FPDF
from skirt import ROUNDS, in_a_folder, request
from timing import MEDIANS, ratio, timed

from frogless import draft
from frogless.publish.blocks import (
    Block,
    Bullets,
    Document,
    Figure,
    Heading,
    Instruction,
    Note,
    Paragraph,
    Table,
    Terms,
)
from frogless.publish.pattern import pattern
from frogless.publish.pdf import pdf

LINE = 5.0  # mm
FONT = "Times"


def peer(document: Document) -> bytes:
    """The same blocks by fpdf2."""
    page = FPDF(format="A4")
    page.set_title(plain(document.title))
    page.add_page()
    write(page, document.title, size=20)
    write(page, document.subtitle)
    for block in document.blocks:
        put(block, page, document)
    return bytes(page.output())


def plain(text: str) -> str:
    """The text in the letters that a reader's own fonts have."""
    return text.encode("latin-1", "replace").decode("latin-1")


def write(page: FPDF, text: str, *, size: int = 11, style: str = "", indent: float = 0) -> None:
    """One paragraph, broken into lines."""
    page.set_font(FONT, style, size)
    page.set_x(page.l_margin + indent)
    page.multi_cell(0, LINE * size / 11, plain(text), new_x="LMARGIN", new_y="NEXT")


@singledispatch
def put(block: Block, page: FPDF, document: Document) -> None:
    """One block on the page."""
    raise TypeError(type(block).__name__)


@put.register
def _heading(block: Heading, page: FPDF, document: Document) -> None:
    write(page, block.text, size=17 - 2 * block.level, style="B")


@put.register
def _paragraph(block: Paragraph, page: FPDF, document: Document) -> None:
    write(page, block.text)


@put.register
def _bullets(block: Bullets, page: FPDF, document: Document) -> None:
    for item in block.items:
        write(page, f"- {item}", indent=3)


@put.register
def _note(block: Note, page: FPDF, document: Document) -> None:
    write(page, block.title or block.kind, style="B", indent=3)
    write(page, block.text, indent=3)


@put.register
def _instruction(block: Instruction, page: FPDF, document: Document) -> None:
    rows(page, [(block.label, block.text, block.count)], (30, 110, 30))


@put.register
def _terms(block: Terms, page: FPDF, document: Document) -> None:
    rows(page, block.items, (50, 120))


@put.register
def _table(block: Table, page: FPDF, document: Document) -> None:
    write(page, block.caption, style="B")
    rows(page, [block.header, *block.rows], ())


@put.register
def _figure(block: Figure, page: FPDF, document: Document) -> None:
    drawing = plain(dict(document.drawings)[block.key])
    page.image(io.BytesIO(drawing.encode()), w=page.epw * 0.7)
    write(page, block.caption or " ")


def rows(page: FPDF, cells: Iterable[Sequence[str]], widths: tuple[int, ...]) -> None:
    """Rows of a table."""
    page.set_font(FONT, "", 10)
    with page.table(
        col_widths=widths or None, first_row_as_headings=False, line_height=LINE
    ) as table:
        for row in cells:
            table.row([plain(cell) for cell in row])


def pages(made: bytes) -> int:
    """How many pages a PDF has."""
    with pikepdf.open(io.BytesIO(made)) as file:
        return len(file.pages)


def main() -> None:
    """Prints the medians and the ratio."""
    logging.getLogger("fpdf").setLevel(
        logging.ERROR
    )  # it would tell of each <title> that it passes over
    with in_a_folder() as folder:
        document = pattern(draft.draft(request(Path(folder))).drafted)
    ours = timed("Frogless: tagged PDF/UA-1 with its fonts, by Typst", partial(pdf, document))
    theirs = timed("fpdf2: the same blocks, untagged, no fonts inside", partial(peer, document))
    sizes = (pages(pdf(document)), pages(peer(document)))
    print(f"PDF of a skirt of {ROUNDS} rounds, {sizes[0]} pages, by the peer {sizes[1]}; {MEDIANS}")
    print(ours.line())
    print(theirs.line())
    print("ratio, below 1 is faster than the peer")
    print(ratio("PDF, Frogless / fpdf2", ours, theirs))


if __name__ == "__main__":
    main()
