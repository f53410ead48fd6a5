"""Blocks of a pattern as a page sets them: figures to the right, rows with ids, counts with keys."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping

from frogless.publish.arrange import (
    columns_of_figures,
    in_pieces,
    rows_have_names,
    squared,
    terms_are_short,
)
from frogless.publish.blocks import (
    Block,
    Bullets,
    Figure,
    Heading,
    Instruction,
    Note,
    Paragraph,
    Table,
    Terms,
)
from frogless.publish.reasons_model import Asked, KeyedTable
from frogless.studio.garments.sheet import (
    Cell,
    DrawingBlock,
    ListBlock,
    NoteBlock,
    Part,
    RowLine,
    RowsBlock,
    TableBlock,
    TermsBlock,
    TextBlock,
    TitleBlock,
)

Place = tuple[str, tuple[str, ...], str]
"""Of a line of instructions its id, those of further rows in it, and the key of its count."""

Placed = Callable[[Instruction], Place]


CLASS = re.compile(r' class="[^"]*"')


def parts(
    blocks: Iterable[Block],
    name: Callable[[str], str],
    placed: Placed | None = None,
    drawn: Mapping[str, str] | None = None,
) -> tuple[Part, ...]:
    """The blocks for a page; headings begin at level 2.

    Args:
        name: gives the id of a heading.
        placed: gives the place of an instruction; without it they have none.
        drawn: SVG of figures by key; a figure that is not there is left out.
    """
    made: list[Part] = []
    rows: list[RowLine] = []
    for block in blocks:
        if isinstance(block, Instruction):
            rows.append(_row(block, placed(block) if placed else ("", (), "")))
            continue
        if rows:
            made.append(RowsBlock(tuple(rows)))
            rows = []
        if isinstance(block, Figure):
            made.extend(_drawing(block, drawn or {}))
        else:
            made.extend(_part(block, name))
    if rows:
        made.append(RowsBlock(tuple(rows)))
    return tuple(made)


def _part(block: Block, name: Callable[[str], str]) -> Iterator[Part]:
    match block:
        case Heading(text, level):
            yield TitleBlock(text, min(level + 1, 4), name(text))
        case Paragraph(text):
            yield TextBlock(text)
        case Bullets(items):
            yield ListBlock(tuple(map(Cell, items)))
        case Terms(items):
            yield TermsBlock(items, terms_are_short(block))
        case Note():
            yield note(block)
        case Table():
            yield table(block, name(block.caption))
        case _:
            return


def _drawing(figure: Figure, drawn: Mapping[str, str]) -> Iterator[Part]:
    if figure.key in drawn:
        yield drawing(drawn[figure.key], figure.caption, figure.key)


def drawing(svg: str, caption: str, key: str) -> DrawingBlock:
    """A drawing; its classes are left out, for the page would take them for its own."""
    return DrawingBlock(CLASS.sub("", svg), caption, key)


def note(block: Note) -> NoteBlock:
    """A note; cautions and serious remarks are set with care."""
    title = block.title or block.kind[:1].upper() + block.kind[1:]
    return NoteBlock(title, block.text, block.kind in ("caution", "remark"))


def table(block: Table, name: str) -> TableBlock:
    """A table, its columns of figures to the right."""
    right = columns_of_figures(block) if block.rows else (False,) * len(block.header)
    named = rows_have_names(block)
    header = tuple(Cell(t, figure=r) for t, r in zip(block.header, right, strict=True))
    rows = tuple(
        tuple(
            Cell(text, figure=r and (n > 0 or not named))
            for n, (text, r) in enumerate(zip(row, right, strict=True))
        )
        for row in squared(block)
    )
    return TableBlock(block.caption, header, rows, name)


def asked(found: Iterable[Asked]) -> ListBlock:
    """Lines that can each be asked."""
    return ListBlock(tuple(Cell(_capital(one.text), one.key) for one in found))


def keyed(found: KeyedTable, name: str) -> TableBlock:
    """A table whose cells can be asked; names begin with a capital."""
    plain = Table("", found.header, tuple(tuple(c.text for c in row) for row in found.rows))
    right = columns_of_figures(plain) if found.rows else (False,) * len(found.header)
    header = tuple(Cell(t, figure=r) for t, r in zip(found.header, right, strict=True))
    rows = tuple(
        tuple(
            Cell(_capital(c.text) if n == 0 else c.text, c.key, figure=r and n > 0)
            for n, (c, r) in enumerate(zip(row, right, strict=True))
        )
        for row in found.rows
    )
    return TableBlock(found.caption, header, rows, name)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _row(row: Instruction, place: Place) -> RowLine:
    number, bracket, side = row.label.partition(" (")
    own, also, key = place
    return RowLine(
        label=number,
        side=f"({side}" if bracket else "",
        held=in_pieces(row.text),
        count=row.count,
        id=own,
        also=also,
        key=key,
    )
