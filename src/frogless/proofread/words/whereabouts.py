"""Where on the piece something is worked, told behind it: "20 sc evenly down the left front".

Of a place that the row below counts it is said in other words and left out; else the stitches go into
an edge whose places nobody counts.
"""

from __future__ import annotations

from collections.abc import Sequence

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Numbers
from frogless.proofread.words.order import FAR, MOST_TRIED
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Times, Token

#: Along the side of a piece lie the ends of its rows, and not the stitches of its last one.
_SIDEWAYS = frozenset({"up", "down", "along"})
_BEHIND = frozenset({"after", "past", "beyond"})
#: Where a row ends, in other words than "to the end".
_ENDS = frozenset({
    "brim", "edge", "hem", "neck", "neckline", "fold", "tip", "cuff", "crown", "beginning", "start", "body", "cup",
    "seam", "waist", "tail", "base", "side", "point",
})  # fmt: skip
_LEVEL = frozenset({"top", "neck", "bottom", "hem", "waist", "brim", "ch"})
_OF_PIECE = frozenset({
    "WORD", "TOP", "CENTER", "FIRST", "LAST", "REM", "REMAIN", "ORD", "OF", "SAME", "NUM", "EACH", "CH", "ROW_END",
})  # fmt: skip
_NAMED = ("WORD", "TOP", "CENTER", "CH", "ROW_END")
#: A clause that only says how many of which stitch, and not into what.
_COUNTED = frozenset({"WORK", "NUM", "STITCH", "EVENLY", "ST", "AND", "THEN"})
_LAYERS = frozenset({"layers", "thicknesses", "edges", "sides", "pieces", "legs", "ears"})
#: Words before a stitch or chain that tell on which part of the piece it lies.
_PARTS = frozenset({
    "underarm", "sleeve", "body", "neck", "front", "back", "held", "rib", "ribbing", "hem", "crown", "brim",
    "shoulder", "armhole", "heel", "cuff", "yoke", "border", "waist", "thumb",
})  # fmt: skip
_PLACES = frozenset({"ST", "STITCH", "CH", "SP", "CH_SP"})


def without_part(items: Sequence[Item]) -> Sequence[Item]:
    """ "sc in next 4 underarm ch": on which part they lie, left out."""
    if not any(each.kind == "WORD" for each in items):
        return items
    return [
        each
        for at, each in enumerate(items)
        if not (_word(each) in _PARTS and at + 1 < len(items) and items[at + 1].kind in _PLACES)
    ]


def parted(items: Sequence[Item]) -> int:
    """ "30 sc around the neck and 20 sc down the left front": where the second begins; 0."""
    kinds = [each.kind for each in items]
    for at in range(3, len(kinds) - 2):
        ends = kinds[at - 1] in ("WORD", "TOP", "REM") and kinds[at + 1] in (
            "NUM",
            "STITCH",
            "WORK",
        )
        if kinds[at] == "AND" and ends and _begins(items[:at]):
            return at
    return 0


def placed(items: Sequence[Item]) -> Sequence[Item]:
    """The words of a clause without those that tell where on the piece it is worked."""
    kinds = [each.kind for each in items]
    for at in range(1, len(items) - 2):
        rows = (
            kinds[at : at + 2] in (["OVER", "EACH"], ["IN", "EACH"])
            and "ROWS" in kinds[at + 2 : at + 4]
        )
        if rows:
            return _on_edge(items[:at], each=True)  # "3 sc over every 2 rows"
    at = _begins(items)
    if not at:
        return items
    head, where = items[:at], items[at:]
    if where[0].kind == "TO":
        head = head[:-1] if _word(head[-1]) == "back" else head
        return [*head, Token("ACROSS", where[0].start, where[-1].end)]
    counted = {each.kind for each in head} <= _COUNTED
    numbered = any(each.kind == "NUM" for each in head)
    layers = where[0].kind == "THROUGH"
    often = _often(where)
    ends = any(each.kind == "ROW_END" for each in where)
    if ends and counted:
        return _on_edge(head, each=not numbered)
    if (often == 0 and not layers) or (layers and not numbered):
        return _on_edge(head, each=True)
    times = [_times(where, often)] if often > 1 else []
    if counted and numbered and (often > 1 or layers or _is_sideways(where)):
        return [*_on_edge(head, each=False), *times]
    if layers:
        count = next(each for each in head if each.kind == "NUM")
        stitch = next((each for each in head if each.kind == "STITCH"), None)
        return _on_edge([count, *([stitch] if stitch else [])], each=False)
    return [*head, *times]


def along_row_ends(items: Sequence[Item]) -> bool:
    """ "Working into the row ends of the cuff, …": where the next acts are worked."""
    kinds = [each.kind for each in items]
    told = set(kinds[1:]) & {"STITCH", "NUM", "CH", "WORK", "GROUP"}
    return kinds[0] == "IN" and "ROW_END" in kinds[1:3] and not told


def to_body(items: Sequence[Item]) -> bool:
    """ "sl st in next 2 sts of body": it joins the row to another edge."""
    kinds = [each.kind for each in items]
    slips = [each for each in items if isinstance(each, Token) and each.value == "slip_stitch"]
    at = kinds.index("OF") if "OF" in kinds else 0
    return bool(at and slips and {"IN", "NUM"} & set(kinds[:at]) and _word(items[-1]) in _BODY)


#: What a border or hem that is worked sideways is joined to.
_BODY = frozenset(
    {
        "body",
        "hat",
        "bag",
        "cap",
        "skirt",
        "crown",
        "yoke",
        "piece",
        "main",
        "edge",
        "blanket",
        "shawl",
    }
)


def _begins(items: Sequence[Item]) -> int:
    """Where the words begin that tell where; 0."""
    for at in range(1, len(items)):
        each, rest = items[at], items[at + 1 :]
        if not rest:
            return 0
        if each.kind == "THROUGH":
            if rest[0].kind == "EACH" and len(rest) == 2 and _word(rest[1]) in _LAYERS:
                return at
            continue
        if each.kind == "TO":
            if _word(rest[-1]) in _ENDS and all(_word(one) or one.kind == "REM" for one in rest):
                return at
            continue
        opens = _word(each) in _SIDEWAYS | _BEHIND or each.kind in ("ACROSS", "AROUND")
        of_each = each.kind == "OF" and rest[0].kind == "EACH"
        named = any(_word(word) or word.kind in (*_NAMED, "REM") for word in rest)
        if (opens or of_each) and named and _is_of_piece(rest, of_each=of_each):
            return at
    return 0


def _is_of_piece(rest: Sequence[Item], *, of_each: bool) -> bool:
    kinds = [each.kind for each in rest]
    if of_each and kinds[-1:] in (["ACROSS"], ["AROUND"]):
        kinds = kinds[:-1]
    if set(kinds) - _OF_PIECE or kinds[-1] not in (*_NAMED, "REM"):
        return False
    numbers = [at for at, kind in enumerate(kinds) if kind == "NUM"]
    return all(kinds[at + 1] == "WORD" for at in numbers)


def _often(where: Sequence[Item]) -> int:
    """On how many pieces or sides; 0 where it is not said."""
    kinds = [each.kind for each in where]
    if "EACH" not in kinds:
        return 1
    rest = where[kinds.index("EACH") + 1 :]
    number = getattr(rest[0], "value", None) if rest else None
    if isinstance(number, Numbers) and len(number.values) == 1:
        return number.values[0]
    pair = len(rest) == 2 and _word(rest[0]) in ("short", "long") and _word(rest[1]).startswith("s")
    return 2 if pair else 0  # a piece with long and short sides has two of each


def _times(where: Sequence[Item], often: int) -> Token:
    span = Span(where[0].start, where[-1].end)
    return Token("NTIMES", span.start, span.end, Times(Numbers((often,), span)))


def _is_sideways(where: Sequence[Item]) -> bool:
    level = {_word(each) or each.kind.lower() for each in where[1:]} & _LEVEL
    return _word(where[0]) in ("up", "down") or (_word(where[0]) == "along" and not level)


def _on_edge(head: Sequence[Item], *, each: bool) -> list[Item]:
    """What is worked, into an edge of which nobody says how many places it has."""
    kinds = [one.kind for one in head]
    made = head[: kinds.index("IN")] if "IN" in kinds else head
    made = [one for one in made if one.kind != "EVENLY"]
    end = head[-1].end
    words = ["IN", "EACH", "ROW_END", "ACROSS"] if each else ["IN", "ROW_END"]
    return [*made, *(Token(kind, end, end) for kind in words)]


def _word(item: Item) -> str:
    return str(item.value) if isinstance(item, Token) and item.kind == "WORD" else ""


def without_purpose(items: Sequence[Item]) -> Sequence[Item]:
    """ "skip next 30 sts for armhole": what it is for changes nothing."""
    at = next((n for n, each in enumerate(items) if each.kind == "FOR"), 0)
    end = next((n for n in range(at, len(items)) if items[n].kind == "AND"), len(items))
    after = {each.kind for each in items[at + 1 : end]}
    return items if not at or after & FAR else [*items[:at], *items[end:]]


def without_piece(items: Sequence[Item]) -> Sequence[Item]:
    """ "sc in 16 sts of second cup", "evenly around the edge of the band": where, in other words."""
    if len(items) > MOST_TRIED:
        return items
    kinds = [each.kind for each in items]
    if "EVENLY" in kinds and "WORD" in kinds and kinds.index("WORD") > kinds.index("EVENLY"):
        after = kinds[kinds.index("EVENLY") :]
        if not set(after) & {"NUM", "OVER", "STITCH"}:
            return items[: kinds.index("EVENLY") + 1]
    for at in range(1, len(kinds)):
        rest = kinds[at + 1 :]
        on = kinds[at] == "IN" and bool({"IN", "NEXT"} & set(kinds[:at]))  # "… on second leg"
        if (
            (on or kinds[at] in ("OF", "ON", "AT"))
            and "WORD" in rest
            and not set(rest) - _NAMES_PIECE
        ):
            return items[:at]
    return items


#: What a piece is named with.
_NAMES_PIECE = frozenset({
    "WORD", "FIRST", "LAST", "REM", "ORD", "OF", "SAME", "CENTER",
})  # fmt: skip
