"""The parts of a pattern: which lines belong to which."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from frogless.proofread.script.labels import label_at
from frogless.proofread.script.lines import BOLD, COLON
from frogless.proofread.script.marks import Ahead, Head, Mark, begins_work, is_founded
from frogless.proofread.script.model import PartKind, Span

_MEANS = re.compile(r"[A-Za-z][\w-]{0,14}(?: st)?\s{0,2}=\s{0,2}(?=[(\[]|\d|[a-z])")
#: A line of a list of abbreviations: "MR - magic ring".
_EXPLAINS = re.compile(r"[A-Za-z][\w()/-]{0,12}(?: st)?\s{1,3}[-=:]\s{1,3}[a-z]")
_WORKED = frozenset({"instructions", "finishing"})
#: Parts whose own rows, of a swatch or a stitch pattern, are no rows of the piece.
_OWN_ROWS = frozenset({"gauge", "special"})
#: Parts that may come again between rows with no more than "Gauge: ..." at a line's start.
_ANYWHERE = frozenset(
    {"finishing", "abbreviations", "special", "gauge", "materials", "measurements"}
)


@dataclass(slots=True)
class Stretch:
    """A part as its lines: from `first` up to `last`, and where its heading and body stand.

    Args:
        level: of its heading, 0 for none.
    """

    kind: PartKind
    heading: Span
    body: int
    first: int
    last: int = 0
    level: int = 0
    heads: set[int] = field(default_factory=set)


def outline(plain: str, marks: tuple[Mark, ...]) -> tuple[Stretch, ...]:
    """The parts in the order of the text; they hold every line that is not blank."""
    walk = _Walk(plain, marks)
    for index in range(len(marks)):
        walk.take(index)
    return tuple(walk.ended())


class _Walk:
    """The lines met one by one, and the part that is open."""

    def __init__(self, plain: str, marks: tuple[Mark, ...]) -> None:
        self.plain, self.marks, self.ahead = plain, marks, Ahead(marks)
        self.parts: list[Stretch] = []

    def take(self, index: int) -> None:
        """One line."""
        mark = self.marks[index]
        if mark.line.blank:
            return
        if not self.parts:
            self._begin(index, mark)
        elif mark.head:
            self._heading(index, mark.head)
        elif mark.label and self.parts[-1].kind not in _WORKED:
            self._row(index)
        elif self._defines(index):
            self._open("abbreviations", index)
        elif self._is_told(index):
            self._open("notes", index)
        elif self.parts[-1].kind == "title" and not self._is_title(index):
            self._open("about", index)

    def ended(self) -> Iterator[Stretch]:
        """All parts; instructions are looked for where no row and no heading told of them."""
        for part, after in pairwise([*self.parts, None]):
            if part:
                part.last = after.first if after else len(self.marks)
        if not any(part.kind == "instructions" for part in self.parts):
            for part in self.parts:
                if part.kind == "about" and part.level == 0 and self._is_worked(part):
                    part.kind = "instructions"
        return iter(self.parts)

    def _begin(self, index: int, mark: Mark) -> None:
        line = mark.line
        if mark.label or is_founded(self.plain, line.at, line.end):
            self._open("instructions", index)
        elif mark.head and mark.head.kind:
            self._heading(index, mark.head)
        else:
            self._open("title", index)
            self.parts[-1].level = min(line.level, 1)

    def _is_title(self, index: int) -> bool:
        return index == self.parts[-1].first

    def _defines(self, index: int) -> bool:
        """Whether a line says what a short word means: "V = (dc, ch 2, dc) in one st"."""
        line = self.marks[index].line
        free = self.parts[-1].kind in {"title", "about", "notes"} or self._is_told(index)
        return free and bool(_MEANS.match(self.plain, line.at, line.end))

    def _is_told(self, index: int) -> bool:
        """Whether what is headed on one line, "Gauge: 18 sts", ended with a blank line above."""
        part = self.parts[-1]
        end = self.marks[part.first].line.end
        line = self.marks[index].line
        return (
            part.kind in {"gauge", "sizes", "measurements", "materials"}
            and part.heading.end < part.body < end
            and self.marks[index - 1].line.blank
            and not (line.bullet or line.table)
        )

    def _heading(self, index: int, head: Head) -> None:
        now = self.parts[-1].kind if self.parts else "about"
        if head.kind is not None:
            if self._opens(now, head):
                self._open(head.kind, index, head)
        elif now in _WORKED:
            self.parts[-1].heads.add(index)
        elif (self.ahead.has_rows(index) or self._starts(index)) and not self._is_own(index, head):
            self._open("instructions", index)
            self.parts[-1].heads.add(index)
        elif head.level <= BOLD and not self._is_under(head):
            self._open("about", index, head)

    def _starts(self, index: int) -> bool:
        """Whether work is begun right below a heading."""
        for mark in self.marks[index + 1 : index + 4]:
            if not mark.line.blank:
                return not mark.head and is_founded(self.plain, mark.line.at, mark.line.end)
        return False

    def _opens(self, now: PartKind, head: Head) -> bool:
        """Whether a heading of a known part opens it here."""
        if not self.parts:
            return True
        if now not in _WORKED:
            return not (now == head.kind and head.level >= COLON and self.parts[-1].level < COLON)
        inline = head.content > head.end
        if head.level >= COLON or inline:
            told = head.kind == "about" and len(head.name.split()) > 2  # "Why these numbers"
            return head.kind in _ANYWHERE or told
        return True

    def _is_under(self, head: Head) -> bool:
        """Whether a heading of no known part is quieter than the one of the open part."""
        part = self.parts[-1]
        return part.kind != "title" and 0 < part.level < head.level

    def _is_own(self, index: int, head: Head) -> bool:
        part = self.parts[-1]
        return (
            part.kind in _OWN_ROWS
            and self._is_under(head)
            and self.ahead.starts_later(index, part.level)
        )

    def _row(self, index: int) -> None:
        part = self.parts[-1]
        if part.kind in _OWN_ROWS and self._has_rows(part) and self.ahead.starts_later(index):
            return
        mark = self.marks[index]
        firm = mark.label is not None and mark.label.firm and bool(mark.label.label.numbers)
        if not firm and index and not self.marks[index - 1].line.blank:
            return
        self._open("instructions", self._founded(index, part.first))

    def _has_rows(self, part: Stretch) -> bool:
        """Whether rows below may belong to it: "Gauge: 18 sts" has all of it on its line."""
        end = self.marks[part.first].line.end
        inline = part.heading.end < part.body < end
        return not inline or label_at(self.plain, part.body, end) is not None

    def _founded(self, index: int, first: int) -> int:
        """The line where the work is begun, when it stands right above the first row."""
        begins = index
        for above in range(index - 1, max(first, index - 12) - 1, -1):
            mark = self.marks[above]
            if mark.head and mark.head.kind:
                break
            if _EXPLAINS.match(self.plain, mark.line.at, mark.line.end):
                continue
            if not mark.line.blank and begins_work(self.plain, mark.line.at, mark.line.end):
                begins = above
        return begins

    def _is_worked(self, part: Stretch) -> bool:
        return any(
            is_founded(self.plain, mark.line.at, mark.line.end)
            for mark in self.marks[part.first : part.last]
            if not mark.line.blank
        )

    def _open(self, kind: PartKind, index: int, head: Head | None = None) -> None:
        if self.parts and self.parts[-1].first == index:
            self.parts.pop()
        at = self.marks[index].line.at
        heading = Span(head.start, head.end) if head else Span(at, at)
        body = head.content if head else at
        if head and body == self.marks[index].line.end and index + 1 < len(self.marks):
            below = self.marks[index + 1].line
            body = below.end if below.rule else body
        self.parts.append(Stretch(kind, heading, body, index, level=head.level if head else 0))
