"""A text cut into parts, rows and sentences."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.script.lines import Line, lines_of, without_printed
from frogless.proofread.script.marks import Mark, marks_of
from frogless.proofread.script.model import Heading, Part, RowText, Script, Statement
from frogless.proofread.script.normal import plain_of
from frogless.proofread.script.only import with_only
from frogless.proofread.script.outline import Stretch, outline
from frogless.proofread.script.pieces import with_pieces
from frogless.proofread.script.sentences import trim
from frogless.proofread.script.sizes import sizes_of
from frogless.proofread.script.statements import Reader

#: Letters of a line that a text may be set to; longer ones are paragraphs, shorter ones are ended.
_NARROWEST, _WIDEST = 40, 110


def cut(text: str) -> Script:
    """The parts of a pattern and where each row stands.

    Works on any text: what is no heading and no row is a sentence of the part it stands in.
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    plain = without_printed(plain_of(text))
    lines = lines_of(text, plain)
    marks = marks_of(plain, lines)
    parts = tuple(_parts(plain, marks, Reader(plain, _width(lines))))
    sizes, sizes_at = sizes_of(plain, parts)
    parts = with_only(plain, parts, sizes)
    return Script(text, plain, tuple(each.start for each in lines), parts, sizes, sizes_at)


def _parts(plain: str, marks: tuple[Mark, ...], reader: Reader) -> Iterator[Part]:
    stretches = outline(plain, marks)
    read = [_statements(each, marks, reader) for each in stretches]
    levels = {mark.head.start: mark.head.level for mark in marks if mark.head}
    told = iter(with_pieces(plain, [each for statements in read for each in statements], levels))
    for stretch, statements in zip(stretches, read, strict=True):
        last = max(
            (mark.line.end for mark in marks[stretch.first : stretch.last] if not mark.line.blank),
            default=0,
        )
        body = trim(plain, stretch.body, max(stretch.body, last))
        own = tuple(next(told) for _ in statements)
        yield Part(stretch.kind, stretch.heading, body, own)


def _statements(part: Stretch, marks: tuple[Mark, ...], reader: Reader) -> list[Statement]:
    if part.kind not in {"instructions", "finishing"}:
        return []
    lines = marks[part.first : part.last]
    found = list(reader.statements(lines, part.heads, part.first, part.body))
    if part.kind == "finishing" and any(isinstance(each, RowText) for each in found):
        name = " ".join(reader.plain[part.heading.start : part.heading.end].split())
        found.insert(0, Heading(part.heading, name))
    return found


def _width(lines: tuple[Line, ...]) -> int:
    """Letters of a full line, where the text is set to a width; else none is too short."""
    lengths = sorted(each.end - each.start for each in lines if not each.blank)
    if not lengths:
        return 0
    width = lengths[-1 - len(lengths) // 50]
    return width if _NARROWEST <= width <= _WIDEST else 10**9
