"""The rows of a reading as the checks look at them: one line of text, all sizes together."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from frogless.proofread.checks.model import Reading
from frogless.proofread.findings import Certainty, Finding
from frogless.proofread.script.model import Heading, Label, Span
from frogless.proofread.words.forms import foreign_to
from frogless.proofread.words.model import Act, Into, Repeat, Unclear
from frogless.proofread.work.model import Told, Worked

_KINDS = {"round": "Rnd", "row": "Row", "": "Row"}


@dataclass(frozen=True, slots=True, eq=False)
class Line:
    """One row, or sentence between rows, and what it comes to.

    Args:
        index: of its `Told`.
        works: what it comes to, in the order of the work: each number it stands for, size by size.
        before: the name of the row that it is worked over; "" where there is none in its piece.
    """

    index: int
    told: Told
    works: tuple[Worked, ...]
    before: str = ""

    @property
    def name(self) -> str:
        """ "Rnd 7"; "" of a sentence."""
        number = next((each.number for each in self.works if each.number is not None), None)
        return row_name(self.told.label, number)

    @property
    def number(self) -> int | None:
        """The first that it stands for."""
        label = self.told.label
        return label.numbers[0] if label and label.numbers else None

    def first(self) -> tuple[Worked, ...]:
        """What the first row that it stands for comes to, size by size."""
        return (
            tuple(w for w in self.works if w.number == self.works[0].number) if self.works else ()
        )


@lru_cache(maxsize=1)
def lines_of(reading: Reading) -> tuple[Line, ...]:
    """Every row and sentence, in the order of the text; kept, since each check asks for them."""
    by_told: dict[int, list[Worked]] = {}
    for worked in reading.reckoning.rows:
        by_told.setdefault(worked.told, []).append(worked)
    return tuple(_lines(reading.told, by_told))


def _lines(told: Sequence[Told], by_told: dict[int, list[Worked]]) -> Iterator[Line]:
    before, piece = "", -1
    for index, each in enumerate(told):
        if each.begins or each.piece != piece:
            before, piece = "", each.piece
        works = tuple(by_told.get(index, ()))
        yield Line(index, each, works, before)
        if last := next((w.number for w in reversed(works) if w.number is not None), None):
            before = row_name(each.label, last)
        elif each.label:
            numbers = each.label.numbers
            before = row_name(each.label, numbers[-1] if numbers else None)
        elif works:
            before = "the foundation" if not before else "the row before"


@lru_cache(maxsize=1)
def resting(reading: Reading) -> frozenset[int]:
    """The lines that rest on a row of which not all was understood, by their index.

    What such a row leaves is not known, whatever it states; a later row that comes out as it states
    is firm ground again.
    """
    found: set[int] = set()
    dark = False
    for line in lines_of(reading):
        if line.told.begins:
            dark = False
        if dark:
            found.add(line.index)
        if line.told.label is None:
            continue
        lost = any(isinstance(act, Unclear) for act in all_acts(line.told.said.acts))
        if lost or any(worked.verdict == "unclear" for worked in line.works):
            dark = True
        elif line.works and all(w.verdict == "ok" and w.worked for w in line.works):
            dark = dark and line.works[-1].stated is None
    return frozenset(found)


def row_name(label: Label | None, number: int | None) -> str:
    """What a row is called: "Rnd 7", "Row 3", "Increase rnd"."""
    if label is None:
        return ""
    if number is None and label.numbers:
        number = label.numbers[0]
    if number is not None:
        return f"{_KINDS[label.kind]} {number}"
    kind = {"round": " rnd", "row": " row", "": ""}[label.kind]
    name = label.name or "row"
    return name[:1].upper() + name[1:] + (kind if kind.strip() not in name else "")


def finding(
    kind: str,
    reading: Reading,
    line: Line,
    span: Span,
    texts: tuple[str, str, str],
    certainty: Certainty,
    sizes: Collection[int] = (),
    number: int | None = None,
) -> Finding:
    """A finding in a row.

    Args:
        texts: what it says, what it works out to, the hint.
        sizes: indices; empty, or all: it holds for every size.
    """
    names = reading.script.sizes
    only = tuple(names[size] for size in sorted(sizes)) if 0 < len(sizes) < len(names) else ()
    says, works_out_to, hint = texts
    number = line.number if number is None else number
    return Finding(
        kind,
        span,
        says,
        works_out_to,
        hint,
        certainty,
        row=row_name(line.told.label, number),
        number=number if line.told.label else None,
        sizes=only,
        piece=line.told.piece_name if reading.told[-1].piece else "",
    )


def listed(values: Sequence[int]) -> str:
    """A number, or one for each size: "96 (104, 112)"."""
    if not values or len(set(values)) == 1:
        return str(values[0]) if values else ""
    return f"{values[0]} ({', '.join(map(str, values[1:]))})"


def counted(count: int, one: str, many: str = "") -> str:
    """ "1 stitch", "2 stitches"."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def speaks_otherwise(reading: Reading, line: Line) -> bool:
    """Whether a row has words of the other dialect: its stitches are then not what they seem."""
    foreign = foreign_to(reading.lexicon.terms.dialect)
    return any(used.word.lower() in foreign for used in line.told.said.used)


def named(what: str, reading: Reading) -> str:
    """A stitch or place as the pattern writes it: "dc", "ch-2 sp"."""
    stitch = reading.lexicon.stitches.get(what)
    if stitch is None:
        return what
    term = stitch.terms[reading.lexicon.terms.dialect]
    return term.name if stitch.kind in ("group", "ornament") else term.abbreviation


def all_acts(acts: Sequence[Act]) -> Iterator[Act]:
    """Every act, those within others after the one that holds them."""
    for act in acts:
        yield act
        if isinstance(act, Into | Repeat):
            yield from all_acts(act.body)


def headings(reading: Reading) -> tuple[Span, ...]:
    """Where headings stand among the rows."""
    return tuple(
        statement.span
        for part in reading.script.parts
        for statement in part.statements
        if isinstance(statement, Heading)
    )


def certainty_of(reading: Reading, line: Line) -> Certainty:
    """Certain, unless something was assumed in this row to read it, or it rests on an unclear one."""
    if line.index in resting(reading):
        return "possible"
    span = line.told.span
    begin = line.told.label.span.start if line.told.label else span.start
    assumed = any(
        a.span is not None and begin <= a.span.start < span.end
        for a in reading.reckoning.assumptions
    )
    return "likely" if assumed else "certain"
