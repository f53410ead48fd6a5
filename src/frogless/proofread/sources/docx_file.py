"""The text of a .docx: paragraphs, lists with their numbers, and tables, in their order."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator
from io import BytesIO

import docx
from docx.oxml.ns import qn
from docx.oxml.xmlchemy import BaseOxmlElement as Element

from frogless.errors import InputError
from frogless.proofread.sources.numbering import Numbering
from frogless.proofread.sources.source import MOST_LETTERS

MOST_UNPACKED = 100_000_000
"""Bytes of all files in it, pictures included."""

MOST_XML = 8_000_000
"""Bytes of one file of text; in memory it is forty times as large."""

MOST_FILES = 2_000
MOST_LINES = 100_000
DEEPEST = 12
"""Tables within tables."""

_TOO_MUCH = "this .docx unpacks to far more than a pattern; save the text alone"
_BROKEN = "this .docx is damaged or of a kind that is not read; save it anew as .docx, or as text"

_PARAGRAPH, _TABLE, _ROW, _CELL = qn("w:p"), qn("w:tbl"), qn("w:tr"), qn("w:tc")
_BOX = qn("w:txbxContent")

#: What was deleted, what stands there a second time for older programs, and pictures' words.
_PASSED_OVER = frozenset(
    {
        qn("w:del"),
        qn("w:moveFrom"),
        qn("w:pPr"),
        qn("w:rPr"),
        "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback",
        _BOX,
    }
)
_SIGNS = {
    qn("w:tab"): "\t",
    qn("w:br"): "\n",
    qn("w:cr"): "\n",
    qn("w:noBreakHyphen"): "-",
}
_TEXT = qn("w:t")


def drawn_from_docx(data: bytes) -> tuple[str, tuple[str, ...]]:
    """The text of a document; headings are marked as in Markdown.

    Raises:
        InputError: it is damaged, or unpacks to far more than a pattern.
    """
    try:
        _check_sizes(data)
        document = docx.Document(BytesIO(data))
        numbering = Numbering(document)
        return "".join(_bounded(_blocks(document.element.body, numbering))), ()
    except InputError:
        raise
    except MemoryError:
        raise InputError(_TOO_MUCH) from None
    except Exception:
        # What a damaged file makes zip, XML and the library raise is endless.
        raise InputError(_BROKEN) from None


def _check_sizes(data: bytes) -> None:
    """Unpacks everything once, piece by piece: a directory may say less than there is."""
    left = MOST_UNPACKED
    with zipfile.ZipFile(BytesIO(data)) as packed:
        files = packed.infolist()
        if len(files) > MOST_FILES or sum(one.file_size for one in files) > MOST_UNPACKED:
            raise InputError(_TOO_MUCH)
        for one in files:
            # Word writes these two; the others unpack without a bound on a piece.
            if one.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
                raise InputError(_BROKEN)
            is_xml = one.filename.endswith((".xml", ".rels"))
            most = min(left, MOST_XML) if is_xml else left
            left -= _unpacked(packed, one, most)


def _unpacked(packed: zipfile.ZipFile, one: zipfile.ZipInfo, most: int) -> int:
    size = 0
    with packed.open(one) as file:
        while piece := file.read(1 << 16):
            size += len(piece)
            if size > most:
                raise InputError(_TOO_MUCH)
    return size


def _bounded(lines: Iterator[str]) -> Iterator[str]:
    letters = 0
    for number, line in enumerate(lines):
        letters += len(line) + 1
        if letters > MOST_LETTERS or number > MOST_LINES:
            raise InputError(_TOO_MUCH)
        yield f"{line}\n"


def _blocks(parent: Element, numbering: Numbering, depth: int = 0) -> Iterator[str]:
    """The lines of a body, a cell or a box."""
    for child in parent:
        if child.tag == _PARAGRAPH:
            yield from _paragraph(child, numbering, depth)
        elif child.tag == _TABLE:
            yield from _table(child, numbering, depth + 1)
        elif child.tag not in _PASSED_OVER and len(child) and depth < DEEPEST:
            yield from _blocks(child, numbering, depth + 1)  # a control around what it holds


def _paragraph(paragraph: Element, numbering: Numbering, depth: int) -> Iterator[str]:
    text = "".join(_letters(paragraph))
    if not text.strip():
        yield ""
    elif level := numbering.heading(paragraph):
        yield ""
        yield f"{'#' * level} {text.strip()}"
    else:
        yield numbering.label(paragraph) + text
    if depth < DEEPEST:
        for box in _boxes(paragraph):
            yield from _blocks(box, numbering, depth + 1)


def _letters(parent: Element) -> Iterator[str]:
    for child in parent:
        if child.tag == _TEXT:
            yield child.text or ""
        elif child.tag in _SIGNS:
            yield _SIGNS[child.tag]
        elif child.tag not in _PASSED_OVER:
            yield from _letters(child)


def _boxes(parent: Element) -> Iterator[Element]:
    """Text boxes that hang on a paragraph."""
    for child in parent:
        if child.tag == _BOX:
            yield child
        elif child.tag not in _PASSED_OVER:
            yield from _boxes(child)


def _table(table: Element, numbering: Numbering, depth: int) -> Iterator[str]:
    """A row of short cells is a line; a row that lays out a page is its cells, one by one."""
    if depth > DEEPEST:
        return
    for row in table.iter(_ROW):
        if next(row.iterancestors(_TABLE)) is not table:
            continue  # of a table within this one, which its cell gives
        cells = [
            list(_blocks(cell, numbering, depth)) for cell in row.iter(_CELL) if _of(cell, row)
        ]
        filled = [[line for line in cell if line.strip()] for cell in cells]
        if all(len(cell) <= 1 for cell in filled):
            yield "\t".join(cell[0].strip() for cell in filled if cell)
        else:
            yield from (line for cell in cells for line in cell)


def _of(cell: Element, row: Element) -> bool:
    return bool(next(cell.iterancestors(_ROW)) is row)
