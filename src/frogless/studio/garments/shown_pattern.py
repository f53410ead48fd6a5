"""The pattern as a maker reads it: every row with an id, every count with its because."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from frogless.publish.blocks import Instruction
from frogless.publish.drafted import Drafted
from frogless.publish.drawings import slug
from frogless.publish.pattern import drawings, rooms
from frogless.publish.reasons import row_keys
from frogless.studio.garments.sheet import Part, TitleBlock
from frogless.studio.garments.shown_blocks import Place, parts


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
    """Tells the rows of an instruction; instructions are met in the order of the pattern."""
    keys = iter(row_keys(drafted).values())

    def place(_: Instruction) -> Place:
        own = next(keys, ())
        if not own:
            return "", (), ""
        first, *others = (key.replace(".", "-") for key in own)
        return first, tuple(others), own[-1]

    return place
