"""A document as plain text: readable in any program, by a screen reader, in a message."""

from __future__ import annotations

import re
import unicodedata
from functools import singledispatch

from frogless.publish.arrange import (
    GLUE,
    columns_of_figures,
    note_title,
    squared,
    steady_headings,
)
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

WIDTH = 78
HANG = "    "
GAP = "  "
UNDERLINES = {1: "=", 2: "-"}
NARROWEST = 6
"""A column of a table is not squeezed below this many characters."""

WIDE = "\u3000-\u30ff\u3400-\u9fff\uff00-\uff60"
TOKEN = re.compile(rf"([^\S\u00a0\u202f]*)([{WIDE}]|(?:[^\s{WIDE}]|[\u00a0\u202f])+)")
"""A line may break around ideographs and at any space but those that hold a number to its unit."""


def plain(document: Document) -> str:
    """The document as UTF-8 text of at most 78 characters a line.

    >>> print(plain(Document("A skirt", "", "en", (Paragraph("In rounds."),), (), "")))
    A skirt
    *******
    <BLANKLINE>
    In rounds.
    <BLANKLINE>
    """
    parts = [_over("*", document.title), *_maybe(document.subtitle)]
    for block in steady_headings(document.blocks):
        if isinstance(block, Heading) and block.level == 1:
            parts.append("")
        parts.append(_set(block, document))
    parts += ["-" * 8 + "\n" + wrapped(document.footer)] if document.footer else []
    # What held together while lines were broken is an ordinary space to whoever searches the text.
    return ("\n\n".join(parts) + "\n").replace(GLUE, " ")


def width_of(text: str) -> int:
    """Columns of a text in a fixed-width font: wide characters take two, combining marks none."""
    return sum(_columns(character) for character in text)


def wrapped(text: str, first: str = "", rest: str = "", width: int = WIDTH) -> str:
    """The text in lines of at most `width` columns, `first` before the first, `rest` before others.

    Words are never cut; one that is too long has a line to itself.
    """
    lines: list[str] = []
    line = first
    empty = True
    for space, word in TOKEN.findall(text):
        gap = " " if space and not empty else ""
        if not empty and width_of(line + gap + word) > width:
            lines.append(line)
            line, gap = rest, ""
        line += gap + word
        empty = False
    return "\n".join([*lines, line.rstrip()])


def _columns(character: str) -> int:
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _over(mark: str, text: str) -> str:
    """The text, underlined as long as its longest line."""
    lines = wrapped(text)
    return lines + "\n" + mark * max(width_of(line) for line in lines.splitlines())


def _maybe(text: str) -> list[str]:
    return [wrapped(text)] if text else []


@singledispatch
def _set(block: Block, document: Document) -> str:
    raise TypeError(type(block).__name__)


@_set.register
def _heading(block: Heading, document: Document) -> str:
    mark = UNDERLINES.get(block.level)
    return _over(mark, block.text) if mark else wrapped(block.text)


@_set.register
def _paragraph(block: Paragraph, document: Document) -> str:
    return wrapped(block.text)


@_set.register
def _bullets(block: Bullets, document: Document) -> str:
    return "\n".join(wrapped(item, "* ", "  ") for item in block.items)


@_set.register
def _terms(block: Terms, document: Document) -> str:
    widest = max((width_of(term) for term, _ in block.items), default=0)
    if widest <= WIDTH // 4:
        indent = " " * (widest + 2)
        return "\n".join(
            wrapped(meaning, _filled(term, widest) + GAP, indent) for term, meaning in block.items
        )
    return "\n".join(f"{wrapped(t)}\n{wrapped(m, HANG, HANG)}" for t, m in block.items)


@_set.register
def _instruction(block: Instruction, document: Document) -> str:
    label = f"{block.label}: " if block.label else ""
    count = f" ({_glued(block.count)})" if block.count else ""
    return wrapped(label + block.text + count, rest=HANG)


@_set.register
def _figure(block: Figure, document: Document) -> str:
    caption = ("\n" + wrapped(block.caption)) if block.caption else ""
    return wrapped(f"[{document.words.picture}: {block.alt}]", rest=" ") + caption


@_set.register
def _note(block: Note, document: Document) -> str:
    return wrapped(f"{note_title(block.kind, block.title)}: {block.text}", "  | ", "  | ")


@_set.register
def _table(block: Table, document: Document) -> str:
    rows = squared(block)
    widths = _column_widths((block.header, *rows))
    right = columns_of_figures(block)
    lines = [
        _row(block.header, widths, right),
        GAP.join("-" * width for width in widths),
    ]
    lines += [_row(row, widths, right) for row in rows]
    return "\n".join([*_maybe(block.caption), *lines])


def _column_widths(rows: tuple[tuple[str, ...], ...]) -> list[int]:
    """As wide as the widest cell; while the line is too long, the widest column gives way."""
    widths = [max(1, *(width_of(cell) for cell in column)) for column in zip(*rows, strict=True)]
    while sum(widths) + len(GAP) * (len(widths) - 1) > WIDTH and max(widths) > NARROWEST:
        widths[widths.index(max(widths))] -= 1
    return widths


def _row(cells: tuple[str, ...], widths: list[int], right: tuple[bool, ...]) -> str:
    """One row of a table, over as many lines as its fullest cell needs."""
    columns = [wrapped(cell, width=w).split("\n") for cell, w in zip(cells, widths, strict=True)]
    height = max(len(lines) for lines in columns)
    lines = [
        GAP.join(
            _filled(column[line] if line < len(column) else "", w, r)
            for column, w, r in zip(columns, widths, right, strict=True)
        ).rstrip()
        for line in range(height)
    ]
    return "\n".join(lines)


def _glued(count: str) -> str:
    """A short count stays on one line, so that the eye finds it; one for many sizes may break."""
    return count.replace(" ", GLUE) if width_of(count) <= WIDTH // 3 else count


def _filled(text: str, width: int, right: bool = False) -> str:
    room = " " * (width - width_of(text))
    return room + text if right else text + room
