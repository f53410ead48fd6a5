"""What every page needs to know of a document before it is set: runs, levels, figures."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from itertools import groupby

from frogless.errors import InputError, Place
from frogless.publish.blocks import Block, Document, Figure, Heading, Instruction, Table, Terms

DEEPEST = 4
"""Headings below this level look alike on any page."""

GLUE = "\N{NO-BREAK SPACE}"
HOLDS = re.compile(r"\d(?: \d+/\d+)?(?: (?:cm|mm|m|in|yd|g|oz|%)(?!\w))?")

HYPHENED = re.compile(r"(\w+-\d+)")

FOLDED = re.compile(r"\D*(\d+)–(\d+)(?!\d)")
MOST_FOLDED = 120

LONGEST_NAME = 28
"""What stands first in a row of a table is a name up to so many characters, beyond it a sentence."""

LONGEST_TERM = 9
"""A longer word stands above its meaning or before it, not beside it."""

NOTHING = "–"
"""What stands in a cell that has nothing to say."""

FIGURES = re.compile(
    r"""[+−–-]?                     # a sign
        [\d½¼¾⅓⅔⅛⅜⅝⅞][\d\s.,½¼¾⅓⅔⅛⅜⅝⅞/–-]*   # a number, a fraction or a range
        (\s?([^\W\d]{1,3}|%))?      # a unit as short as cm, in or %
    """,
    re.VERBOSE,
)


@dataclass(frozen=True, slots=True)
class Run:
    """Instructions that follow each other."""

    instructions: tuple[Instruction, ...]


def steady_headings(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The same blocks with heading levels from 1 that never go down by more than one.

    A page reader announces levels, and PDF/UA-1 (ISO 14289-1, 7.4.2) refuses one that was skipped.
    """
    steady: list[Block] = []
    level = 0
    for block in blocks:
        if isinstance(block, Heading):
            level = max(1, min(block.level, level + 1, DEEPEST))
            steady.append(replace(block, level=level))
        else:
            steady.append(block)
    return tuple(steady)


def in_runs(blocks: tuple[Block, ...]) -> tuple[Block | Run, ...]:
    """The blocks with instructions that follow each other gathered into one run."""
    gathered: list[Block | Run] = []
    for together, group in groupby(blocks, key=lambda block: isinstance(block, Instruction)):
        if together:
            gathered.append(Run(tuple(b for b in group if isinstance(b, Instruction))))
        else:
            gathered.extend(group)
    return tuple(gathered)


def folded(row: Instruction) -> tuple[int, ...]:
    """The numbers of the rounds that one row stands for, to be ticked off one by one.

    None for a single round, nor for so many that counting them off would fill a page.

    >>> folded(Instruction("Rnds 3–5 (RS)", "Dc in each st around.", "152 dc"))
    (3, 4, 5)
    """
    found = FOLDED.match(row.label)
    if not found:
        return ()
    first, last = int(found[1]), int(found[2])
    return tuple(range(first, last + 1)) if 0 < last - first < MOST_FOLDED else ()


def in_pieces(text: str) -> tuple[tuple[str, bool], ...]:
    """The text in pieces, and of each whether it must not break, as "ch-1" must not.

    >>> in_pieces("top of ch-2, turn")
    (('top of ', False), ('ch-2', True), (', turn', False))
    """
    parts = HYPHENED.split(text)
    return tuple((part, bool(n % 2)) for n, part in enumerate(parts) if part)


def glued(text: str) -> str:
    """The text with every number held to its fraction and its unit, also at the end of a line.

    >>> glued("42 1/4 in around, 10 % more").replace(GLUE, "_")
    '42_1/4_in around, 10_% more'
    """
    return HOLDS.sub(lambda found: found[0].replace(" ", GLUE), text)


def columns_of_figures(table: Table) -> tuple[bool, ...]:
    """Which columns hold only numbers with a short unit, or nothing, and so stand to the right.

    >>> columns_of_figures(Table("", ("Yarn", "Need"), (("cotton", "412 m"), ("", "–"))))
    (False, True)
    >>> columns_of_figures(Table("", ("At", "Body"), (("hip", "110.5 cm"), ("waist", ""))))
    (False, True)
    """
    columns = zip(*squared(table), strict=True)
    return tuple(any(cells) and all(_is_figure(cell) for cell in cells) for cells in columns)


def rows_have_names(table: Table) -> bool:
    """Whether the rows begin with names, which are set strong; sentences are not."""
    return all(len(row[0]) <= LONGEST_NAME for row in table.rows if row)


def terms_are_short(terms: Terms) -> bool:
    """Whether words and their meanings can stand side by side, also on a phone."""
    return all(len(term) <= LONGEST_TERM for term, _ in terms.items)


def squared(table: Table) -> tuple[tuple[str, ...], ...]:
    """The rows of a table, each as long as its header.

    Raises:
        InputError: a row has more cells than the header.
    """
    wide = len(table.header)
    for row in table.rows:
        if len(row) > wide:
            raise InputError(
                f"a row has {len(row)} cells and the header {wide}; give every column a header",
                Place(key=f'table "{table.caption}"'),
            )
    return tuple(row + ("",) * (wide - len(row)) for row in table.rows)


def drawing_of(document: Document, figure: Figure) -> str:
    """The SVG that a figure shows.

    Raises:
        InputError: the document has no drawing of that key.
    """
    drawings = dict(document.drawings)
    if figure.key not in drawings:
        known = ", ".join(drawings) or "none"
        raise InputError(
            f'there is no drawing "{figure.key}"; drawings of this document: {known}',
            Place(key=f'figure "{figure.caption}"'),
        )
    return drawings[figure.key]


def note_title(kind: str, title: str) -> str:
    """What is shown above a note: its title, or its kind with a capital."""
    return title or kind[:1].upper() + kind[1:]


def _is_figure(cell: str) -> bool:
    return cell in ("", NOTHING) or FIGURES.fullmatch(cell) is not None
