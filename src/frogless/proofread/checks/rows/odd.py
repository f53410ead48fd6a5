"""A single stitch of another kind in a piece that is otherwise all of one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.lines import (
    Line,
    all_acts,
    finding,
    lines_of,
    speaks_otherwise,
)
from frogless.proofread.checks.rows.lone import lone
from frogless.proofread.checks.rows.strays import strays
from frogless.proofread.findings import Finding
from frogless.proofread.words.model import (
    Act,
    Bare,
    Chain,
    Increase,
    Into,
    Repeat,
    Skip,
    Together,
)

#: So many places of one stitch in a row, and one of another: the other may be a slip.
RULE = 2
#: So many stitches in one place are a shell, not an increase.
GROUP = 4
_PLAIN = frozenset(
    {"single_crochet", "half_double_crochet", "double_crochet", "treble", "double_treble"}
)


def stitch_odd(reading: Reading) -> Iterator[Finding]:
    """Stitches where another is likelier; each row is told of once."""
    seen: set[tuple[str, int | None, str]] = set()
    for each in (*strays(reading), *_once_in_a_piece(reading), *lone(reading)):
        key = (each.row, each.number, each.piece)
        if key not in seen:
            seen.add(key)
            yield each


def _once_in_a_piece(reading: Reading) -> Iterator[Finding]:
    """A stitch that occurs in one place of a piece, in a row that is else of one stitch."""
    by_piece: dict[int, list[tuple[Line, Act, str]]] = {}
    for line in lines_of(reading):
        by_piece.setdefault(line.told.piece, []).extend((line, a, s) for a, s in _stitches(line))
    for those in by_piece.values():
        counts = Counter(stitch for _, _, stitch in those)
        once = [each for each in those if counts[each[2]] == 1 and each[2] in _PLAIN]
        if len(once) != 1:
            continue
        line, act, odd = once[0]
        row = Counter(stitch for other, _, stitch in those if other is line and stitch != odd)
        usual = next(iter(row), "")
        if len(row) != 1 or row[usual] < RULE or usual not in _PLAIN or _lacy(line):
            continue
        if speaks_otherwise(reading, line):
            continue
        dialect = reading.lexicon.terms.dialect
        name, other = (
            reading.lexicon.stitches[k].terms[dialect].abbreviation for k in (odd, usual)
        )
        texts = (
            f"one {name}",
            f"{other} in the rest of the row",
            f"{line.name} has a single {name} among {other}, and there is no other in the piece: it may be a slip.",
        )
        yield finding("stitch-odd", reading, line, act.span, texts, "possible")


def _stitches(line: Line) -> Iterator[tuple[Act, str]]:
    """Every mention of a stitch in a row, those of a repeat twice; chains and slip stitches not."""
    for act in line.told.said.acts:
        often = 2 if isinstance(act, Repeat) else 1
        for each in all_acts((act,)):
            stitch = each.stitch if isinstance(each, Bare | Increase | Together) else ""
            if stitch not in ("", "chain", "slip_stitch"):
                yield from [(each, stitch)] * often


def _lacy(line: Line) -> bool:
    """A row with spaces or with groups in one place: it has several stitches on purpose."""
    for at, act in enumerate(line.told.said.acts):
        for each in all_acts((act,)):
            if isinstance(each, Skip) or (isinstance(each, Chain) and at > 1):
                return True
            if isinstance(each, Into) and (len(each.body) > 1 or _many(each.body)):
                return True
    return False


def _many(body: tuple[Act, ...]) -> bool:
    return any(isinstance(a, Bare) and a.times and max(a.times.values) >= GROUP for a in body)
