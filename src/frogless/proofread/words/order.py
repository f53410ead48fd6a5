"""Clauses whose words stand in another order than they are read in, and what only explains.

"In next ch-3 sp work (sc, 5 dc, sc)" is read like "(sc, 5 dc, sc) in next ch-3 sp"; "skip ch-1 sp, next 11 dc
and next ch-1 sp" is three skips.
"""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.words.counts import Counts
from frogless.proofread.words.model import Numbers, Skip
from frogless.proofread.words.structure import Group, Item
from frogless.proofread.words.tokens import Token

#: Words of a clause that are tried to be understood one part after the other.
MOST_TRIED = 40
#: After "for" these tell how far, and not what for.
FAR = frozenset({"NUM", "ROWS", "ROW_REF", "LENGTH", "NTIMES", "ST", "GROUP", "STARRED"})


def stands_for(before: Sequence[Item], group: Group) -> Token | None:
    """ "ch 4 (dc + ch 1)": what the chain stands for."""
    if {each.kind for each in before[-2:]} != {"CH", "NUM"}:
        return None
    kinds = " ".join(each.kind for each in group.items[:5])
    if kinds not in (
        "STITCH PLUS CH NUM",
        "STITCH PLUS NUM CH",
        "STITCH AND CH NUM",
        "STITCH PLUS CH_SP",
    ):
        return None
    number = next(
        each.value
        for each in group.items
        if each.kind in ("NUM", "CH_SP") and isinstance(each, Token)
    )
    space = number.values[0] if isinstance(number, Numbers) else 0
    counts = Counts(group.span, True, str(getattr(group.items[0], "value", "")), space)
    return Token("COUNTS", group.start, group.end, counts)


def is_purpose(items: Sequence[Item]) -> bool:
    """ "…, for the cord": what it is for changes nothing."""
    after = {each.kind for each in items[1:]}
    return items[0].kind == "FOR" and bool(after) and not after & (FAR | _WHERE)


#: What tells how far or into what.
_WHERE = frozenset({
    "IN", "EACH", "NEXT", "ACROSS", "AROUND", "CH", "STAR", "ORD", "REP", "FIRST", "LAST", "REM", "SKIP", "INC", "DEC",
})  # fmt: skip


def skips(items: Sequence[Item], before: Sequence[object]) -> list[list[Item]]:
    """ "skip ch-1 sp, next 11 dc and next ch-1 sp": each of them passed over; else nothing."""
    kinds = [each.kind for each in items]
    if len(items) > MOST_TRIED or set(kinds) - _SKIPPED:
        return []
    goes_on = kinds[0] == "NEXT" and bool(before) and isinstance(before[-1], Skip)
    if not goes_on and (kinds[0] != "SKIP" or "AND" not in kinds):
        return []
    if not goes_on:
        items, kinds = items[1:], kinds[1:]
    skip = Token("SKIP", items[0].start, items[0].start)
    found: list[list[Item]] = [[skip]]
    for item in items:
        if item.kind == "AND":
            found.append([skip])
        else:
            found[-1].append(item)
    return found if all(len(each) > 1 for each in found) else []


_SKIPPED = frozenset({"SKIP", "NEXT", "NUM", "ST", "STITCH", "CH", "CH_SP", "SP", "AND", "CORNER"})


def placed_last(items: Sequence[Item]) -> Sequence[Item]:
    """ "in next ch-3 sp work (sc, 5 dc, sc)": what is worked first, as it is said elsewhere."""
    kinds = [each.kind for each in items[:MOST_TRIED]]
    if kinds[0] != "IN" or len(kinds) < 3:
        return items
    at = kinds.index("WORK") if "WORK" in kinds else kinds.index("GROUP") if "GROUP" in kinds else 0
    made = items[at + 1 :] if kinds[at] == "WORK" else items[at:]
    if not at or not made or {"IN", "OVER", "AND", "SKIP"} & {each.kind for each in made}:
        return items
    return [*made, *items[:at]]


def joined_with(items: Sequence[Item]) -> int:
    """ "join to the first leg with a sc in any st and sc in next 17 sts": where "with" stands; 0."""
    kinds = [each.kind for each in items[:MOST_TRIED]]
    at = kinds.index("WITH") if "WITH" in kinds else 0
    stitch = next((each for each in items[at + 1 : at + 3] if each.kind == "STITCH"), None)
    slips = isinstance(stitch, Token) and stitch.value == "slip_stitch"
    return 0 if stitch is None or slips or "IN" not in kinds[at:] else at


def skip_to(items: Sequence[Item]) -> Sequence[Item]:
    """ "skip all sts of sleeve to next ch-2 sp": what lies before that place, whatever it is."""
    kinds = [each.kind for each in items[:MOST_TRIED]]
    if kinds[0] != "SKIP" or "TO" not in kinds or "EACH" not in kinds[:2]:
        return items
    to = kinds.index("TO")
    between = {"EACH", "ST", "STITCH", "OF", "WORD", "CH", "IN", "SP"}
    return [items[0], *items[to:]] if set(kinds[1:to]) <= between else items


def skipped_then(items: Sequence[Item]) -> int:
    """ "skip the first ch and sc into the next one": where another act begins; 0."""
    kinds = [each.kind for each in items[:MOST_TRIED]]
    if kinds[0] != "SKIP" or "AND" not in kinds:
        return 0
    cut = kinds.index("AND")
    return cut if kinds[cut + 1 : cut + 3] == ["STITCH", "IN"] else 0
