"""The examples as they are published: drafted in terms and units, and the texts of their blocks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields, replace
from functools import cache

from examples import DESIGNS, Example, drafted

from frogless.publish.blocks import Block, Document, Heading, Instruction, Note
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import pattern
from frogless.stitches.model import Dialect
from frogless.units import Units

#: Each design for two bodies, one of them not measured in full.
EXAMPLES = tuple(Example(design, body) for design in DESIGNS for body in ("dancer-3", "dancer-4"))
EDITIONS: tuple[tuple[Dialect, Units], ...] = (("us", "cm"), ("uk", "in"))


def shown(example: Example, dialect: Dialect = "us", units: Units = "cm") -> Drafted:
    """An example in the terms and units of an edition."""
    return replace(drafted(example, units), dialect=dialect)


@cache
def published(example: Example, dialect: Dialect = "us", units: Units = "cm") -> Document:
    """The document of an edition; each made once in a run."""
    return pattern(shown(example, dialect, units))


def texts(value: object) -> Iterator[str]:
    """Every string of a block, of blocks, or of a document's blocks, no-break spaces as plain ones."""
    if isinstance(value, str):
        yield value.replace("\u00a0", " ")
    elif isinstance(value, tuple):
        for part in value:
            yield from texts(part)
    elif isinstance(value, Document):
        yield from texts(value.blocks)
    elif hasattr(value, "__dataclass_fields__"):
        for field in fields(value):  # type: ignore[arg-type]
            yield from texts(getattr(value, field.name))


def text_of(value: object) -> str:
    """All of it, a line for each string."""
    return "\n".join(texts(value))


def headings(document: Document, level: int = 1) -> list[str]:
    """The headings of a level, in order."""
    return [b.text for b in document.blocks if isinstance(b, Heading) and b.level == level]


def part(document: Document, heading: str) -> tuple[Block, ...]:
    """The blocks under a heading of level 1, up to the next one."""
    blocks = list(document.blocks)
    start = next(
        i
        for i, b in enumerate(blocks)
        if isinstance(b, Heading) and (b.text, b.level) == (heading, 1)
    )
    rest = blocks[start + 1 :]
    end = next(
        (i for i, b in enumerate(rest) if isinstance(b, Heading) and b.level == 1), len(rest)
    )
    return tuple(rest[:end])


def rows(blocks: Iterable[Block]) -> list[Instruction]:
    """The rows among some blocks."""
    return [block for block in blocks if isinstance(block, Instruction)]


def notes(blocks: Iterable[Block]) -> list[Note]:
    """The notes among some blocks."""
    return [block for block in blocks if isinstance(block, Note)]
