"""The pattern as a maker reads it: every row with an id, every count with its because."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator

from frogless.publish.blocks import Instruction
from frogless.publish.drafted import Drafted
from frogless.publish.drawings import slug
from frogless.publish.pattern import drawings, rooms
from frogless.publish.reasons_names import piece_keys
from frogless.studio.garments.sheet import Part, TitleBlock
from frogless.studio.garments.shown_blocks import Place, parts
from frogless.write.fold import Line
from frogless.write.pattern import write_pieces


def pattern_parts(drafted: Drafted) -> tuple[Part, ...]:
    """How to work it: stitches, rows, finishing, what was checked."""
    return parts(rooms(drafted)["pattern"], names(), _placed(drafted), dict(drawings(drafted)))


def contents(made: tuple[Part, ...]) -> tuple[tuple[str, str], ...]:
    """The parts of the page to jump to."""
    return tuple((p.id, p.text) for p in made if isinstance(p, TitleBlock) and p.level == 2)


def names() -> Callable[[str], str]:
    """Ids made of texts, each different from all that were given before."""
    taken: Counter[str] = Counter()

    def name(text: str) -> str:
        own = f"part-{slug(text)}"
        taken[own] += 1
        return own if taken[own] == 1 else f"{own}-{taken[own]}"

    return name


def _placed(drafted: Drafted) -> Callable[[Instruction], Place]:
    """Tells the rows of an instruction; the rows come in the order in which they are written."""
    lines = _lines(drafted)
    waiting = next(lines, None)

    def place(row: Instruction) -> Place:
        nonlocal waiting
        if waiting is None or (row.label, row.text) != (waiting[1].label, waiting[1].text):
            return "", (), ""
        piece, line = waiting
        waiting = next(lines, None)
        ids = tuple(f"row-{piece}-{n}" for n in range(line.first_row, line.last_row + 1))
        return ids[0], ids[1:], f"row.{piece}.{line.last_row}"

    return place


def _lines(drafted: Drafted) -> Iterator[tuple[str, Line]]:
    keys = piece_keys(drafted)
    program = drafted.plan.program
    for piece in write_pieces(program, drafted.stitches, drafted.dialect, drafted.language):
        yield from ((keys[piece.name], line) for line in piece.lines)
