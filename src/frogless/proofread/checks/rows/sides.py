"""Right and wrong side: as the turning has it."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import Line, finding, headings, lines_of
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import Again, Aside, Chain, Join, Turn

#: So many pairs that agree with the rule before one that does not is a slip.
RULE = 2


def sides(reading: Reading) -> Iterator[Finding]:
    """Rows whose side contradicts the turning between them and the row before."""
    pairs = list(_pairs(reading))
    for turned, kind in ((True, "row"), (False, "round"), (True, "round")):
        those = [
            p for p in pairs if p[2] == turned and p[1].told.label and p[1].told.label.kind == kind
        ]
        wrong = [(before, line) for before, line, _ in those if _changes(before, line) != turned]
        # A side that is wrong in one row contradicts the rows before and after it.
        fewest = 1 if turned else RULE
        if not wrong or len(wrong) > 2 or len(those) - len(wrong) < fewest:
            continue
        before, line = wrong[0]
        yield _told(reading, before, line, turned=turned)


def _told(reading: Reading, before: Line, line: Line, *, turned: bool) -> Finding:
    label, earlier = line.told.label, before.told.label
    here = label.sides[0] if label else ""
    there = earlier.sides[-1] if earlier else ""
    turning = "turned" if turned else "not turned"
    texts = (
        f"{line.name} is {here}",
        "RS" if here == "WS" else "WS",
        f"{before.name} is {there} and the work is {turning} after it, "
        f"so {line.name} cannot be {here}{' too' if turned else ''}.",
    )
    span = label.span if label else line.told.span
    return finding("sides", reading, line, span, texts, "likely")


def _changes(before: Line, line: Line) -> bool:
    one, other = before.told.label, line.told.label
    return bool(one and other and one.sides[-1] != other.sides[0])


def _pairs(reading: Reading) -> Iterator[tuple[Line, Line, bool]]:
    """Rows that follow one another, both with a side, and whether the work is turned between."""
    breaks = headings(reading)
    telling = {
        each.piece for each in reading.told if any(isinstance(a, Turn) for a in each.said.acts)
    }
    before: Line | None = None
    for line in lines_of(reading):
        label = line.told.label
        if label is None:
            if line.told.said.acts and not all(isinstance(a, Aside) for a in line.told.said.acts):
                before = None
            continue
        if before is not None and before.told.label and label.sides and not line.told.begins:
            start, end = before.told.span.end, label.span.start
            numbered = label.numbers and before.told.label.numbers
            follows = (
                len(label.sides) == 1
                and numbered
                and label.numbers[0] == before.told.label.numbers[-1] + 1
            )
            if follows and not any(start <= b.start < end for b in breaks):
                turned = _turned(before, line, tells=line.told.piece in telling)
                if turned is not None:
                    yield before, line, turned
        usable = label.sides and len(label.sides) in (1, len(label.numbers))
        before = line if usable and _plain(line) else None


def _plain(line: Line) -> bool:
    """A row, or a range that tells its sides; rows to be repeated may end on either."""
    label = line.told.label
    several = label is not None and len(label.numbers) > 1
    return not several and not any(
        isinstance(a, Again) and (a.until or a.length or a.rows or a.times)
        for a in line.told.said.acts
    )


def _turned(before: Line, line: Line, *, tells: bool) -> bool | None:
    """Whether the work is turned between two rows; None where that cannot be told.

    Args:
        tells: rows of the piece say where they turn, so that silence is no turning.
    """
    kind = line.told.label.kind if line.told.label else ""
    told = [*_turns(before, leading=False), *_turns(line, leading=True)]
    if any(isinstance(a, Aside) and a.kind == "fasten_off" for a in before.told.said.acts):
        return None
    if any(isinstance(a, Again) for a in before.told.said.acts):
        return None
    if told:
        return all(turn.turned for turn in told)
    if kind == "row":
        return None if tells else True
    joined = any(isinstance(a, Join) for a in before.told.said.acts)
    return False if kind == "round" and joined else None


def _turns(line: Line, *, leading: bool) -> list[Turn]:
    """The turns before the first stitch of a row ("ch 1, turn, ..."), or those after it."""
    acts = line.told.said.acts
    begun = next(
        (i for i, a in enumerate(acts) if not isinstance(a, Chain | Turn | Aside)), len(acts)
    )
    return [a for a in (acts[:begun] if leading else acts[begun:]) if isinstance(a, Turn)]
