"""Rows worked again: "rep Rows 2 and 3 until …", "work 6 rnds even", "as Rnd 4"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from frogless.proofread.script.model import RowText, Script, Span
from frogless.proofread.words.model import Act, Again, Bare, Extent, Into, Numbers, Target
from frogless.proofread.words.remarks import LONGEST, clause_remark
from frogless.proofread.words.structure import Item
from frogless.proofread.words.tokens import Times, Token

_STARTS = frozenset({
    "INC", "DEC", "ROW_REF",
    "REP", "AS", "EVEN", "CONT", "WORK", "NUM", "ANOTHER", "FOR", "UNTIL", "TO", "THROUGH", "EACH", "IN_THIS_WAY",
})  # fmt: skip
_OF_A_PIECE = frozenset({"WORD", "FIRST", "LAST", "REM", "ORD", "OF", "SAME"})
#: Rows with a name that are looked through for one.
MOST_NAMED = 200
_LINKS = frozenset({"TO", "AND", "DASH", "RANGE", "THROUGH"})
#: Without one of these no clause is about rows.
OF_ROWS = frozenset({"ROWS", "ROW_REF", "EVEN", "CONT", "AS", "IN_THIS_WAY"})
_NAMES = {"INC": "increase", "DEC": "decrease", "EVEN": "even"}


def rows_again(items: Sequence[Item], script: Script) -> Again | None:
    """What rows a clause says to work again, and how far; None when it says something else."""
    if not items or not all(isinstance(each, Token) for each in items):
        return None
    tokens = _by_number([each for each in items if isinstance(each, Token)])
    if tokens[0].kind not in _STARTS:
        return None
    kinds = [each.kind for each in tokens]
    if kinds[0] == "ROW_REF" and kinds[1:] != ["NTIMES"]:
        return None
    if not _is_of_rows(kinds):
        return None
    if any(kind in ("CH", "SKIP", "JOIN", "GROUP") for kind in _without_until(kinds)):
        return None
    return _Reader(tokens, script).again()


def _by_number(tokens: list[Token]) -> list[Token]:
    """The tokens with "2nd to 4th rows" as one."""
    kinds = [each.kind for each in tokens]
    at = next((n for n, kind in enumerate(kinds[:4]) if kind == "ORD"), len(kinds))
    to = at + 1 + (kinds[at + 1 : at + 2] != ["ORD"])
    if kinds == ["ORD", "ROWS", "NTIMES"]:  # "…, then the 2nd row once"
        row = Token("ROW_REF", tokens[0].start, tokens[1].end, (tokens[0].value, tokens[0].value))
        return [row, tokens[2]]
    if kinds[to : to + 2] != ["ORD", "ROWS"] or not set(kinds[at + 1 : to]) <= _LINKS:
        return tokens
    value = (tokens[at].value, tokens[to].value)
    token = Token("ROW_REF", tokens[at].start, tokens[to + 1].end, value)
    return [*tokens[:at], token, *tokens[to + 2 :]]


def _without_until(kinds: Sequence[str]) -> Sequence[str]:
    for stop in ("UNTIL", "FOR"):
        if stop in kinds:
            return kinds[: kinds.index(stop)]
    return kinds


def _is_of_rows(kinds: Sequence[str]) -> bool:
    if "ROW_REF" in kinds or "ROWS" in kinds or "AS" in kinds[:2]:
        return True
    if kinds[:2] == ["CONT", "IN_THIS_WAY"]:
        return True
    far = "LENGTH" in kinds or "UNTIL" in kinds
    return far and kinds[0] in ("EVEN", "CONT", "WORK", "REP", "IN_THIS_WAY") and (
        "EVEN" in kinds or "IN_THIS_WAY" in kinds or kinds[0] == "CONT" or "AS" in kinds or kinds[1:2] == ["UNTIL"]
    )  # fmt: skip


def rounds_of(items: Sequence[Item]) -> tuple[Act, ...]:
    """ "sc for 3 rnds", "work 2 rows of sc", "sc 1 round": a row of one stitch, and how many of it."""
    kinds = [each.kind for each in items]
    shape = _ROUNDS_OF.get(" ".join(kinds))
    if shape is None:
        return ()
    stitch, number = items[shape[0]], items[shape[1]]
    rows = number.value if isinstance(number, Token) else None
    if not isinstance(stitch, Token) or not isinstance(rows, Numbers):
        return ()
    span = Span(items[0].start, items[-1].end)
    bare = Bare(stitch.span, str(stitch.value))
    into = Into(span, (bare,), Target(which="each"), Extent("end"))
    return into, Again(span, name="same", rows=rows)


_ROUNDS_OF = {
    "STITCH FOR NUM ROWS": (0, 2),
    "STITCH EVEN FOR NUM ROWS": (0, 3),
    "WORK NUM ROWS OF STITCH": (4, 1),
    "NUM ROWS OF STITCH": (3, 0),
    "NUM ROWS STITCH": (2, 0),
    "STITCH NUM ROWS": (0, 1),
    "WORK NUM ROWS IN STITCH": (4, 1),
    "NUM ROWS IN STITCH": (3, 0),
}


class _Reader:
    """Reads the words of such a clause one after the other."""

    def __init__(self, tokens: Sequence[Token], script: Script) -> None:
        self.tokens = tokens
        self.script = script
        self.first = self.last = 0
        self.name = ""
        self.times: Numbers | None = None
        self.rows: Numbers | None = None
        self.every = 1
        self.until = ""
        self.until_rows = 0
        self.length: tuple[float, ...] = ()

    def again(self) -> Again | None:
        """All of it; None when a word does not belong."""
        if piece := self._piece():
            return piece
        at = 0
        while at < len(self.tokens):
            taken = self._take(at)
            if not taken and not (self.first and self._is_talk(at)):
                return None
            at = at + taken if taken else len(self.tokens)
        span = Span(self.tokens[0].start, self.tokens[-1].end)
        if not (
            self.first or self.name or self.rows or self.length or self.until or self.until_rows
        ):
            return None
        name = self.name or ("" if self.first else "even" if self.rows or self.length else "same")
        return Again(
            span, self.first, self.last, name, self.times, self.rows, self.every, self.until,
            self.until_rows, self.length,
        )  # fmt: skip

    def _is_row(self, word: str) -> bool:
        """Whether a row of the pattern is called so: "Rib rnd"."""
        rows = (
            each.label.name
            for part in self.script.parts
            for each in part.statements
            if isinstance(each, RowText) and each.label.name
        )
        return any(word in name.split() for name in islice(rows, MOST_NAMED))

    def _is_talk(self, at: int) -> bool:
        """ "as Row 2 without changing color": what changes no row."""
        words = self.script.plain[self.tokens[at].start : self.tokens[-1].end]
        return clause_remark(" ".join(words[:LONGEST].lower().split())) is not None

    def _piece(self) -> Again | None:
        """ "Work as back", "work as first cup": the rows of another piece."""
        kinds = [each.kind for each in self.tokens]
        at = kinds.index("AS") + 1 if "AS" in kinds[:2] else 0
        if kinds[:3] == ["WORK", "ROW_REF", "AS"]:
            at = 3  # "Work Rows 1-5 as for the first earflap"
        if not at or not kinds[at:] or set(kinds[at:]) - _OF_A_PIECE or "WORD" not in kinds[at:]:
            return None
        span = Span(self.tokens[0].start, self.tokens[-1].end)
        return Again(
            span, name="piece", until=self.script.words(Span(self.tokens[at].start, span.end))
        )

    def _kinds(self, at: int, n: int) -> str:
        return " ".join(each.kind for each in self.tokens[at : at + n])

    def _take(self, at: int) -> int:
        """Reads on from a word; how many were read, 0 when it does not belong."""
        token = self.tokens[at]
        if token.kind in ("UNTIL", "TO", "THROUGH", "FOR"):
            return self._until(at)
        if self._kinds(at, 2) == "WORD ROWS" and self._is_row(str(token.value)):
            self.name = str(token.value)
            of = self._kinds(at + 2, 2) == "OF WORD"  # "as rib rnd of the body"
            return 4 if of else 2
        for shape, act in self._SHAPES:
            n = shape.count(" ") + 1
            if self._kinds(at, n) == shape:
                act(self, at)
                return n
        return 0

    def _until(self, at: int) -> int:
        rest = self.tokens[at + 1 :]
        kinds = [each.kind for each in rest]
        if "LENGTH" in kinds:
            value = rest[kinds.index("LENGTH")].value
            self.length = value if isinstance(value, tuple) else ()
            self.until = self.script.words(Span(rest[0].start, self.tokens[-1].end))
            return len(rest) + 1
        if kinds[:1] == ["ROW_REF"] and isinstance(rest[0].value, tuple):
            self.until_rows = rest[0].value[1]
            return 2 + sum(each.kind == "WORD" for each in rest[1:])
        if kinds[:2] == ["NUM", "ROWS"] or kinds[:3] == ["NUM", "MORE", "ROWS"]:
            value = rest[0].value
            if self.tokens[at].kind == "UNTIL" and isinstance(value, Numbers):
                self.until_rows = value.values[0]
            elif isinstance(value, Numbers):
                self.rows = value
            return (3 if kinds[1] == "ROWS" else 4) + sum(
                each.kind in ("WORD", "TOTAL", "EVEN") for each in rest[2:]
            )
        if self.tokens[at].kind == "UNTIL" and rest:
            self.until = self.script.words(Span(rest[0].start, self.tokens[-1].end))
            return len(rest) + 1
        return 0

    def _row_ref(self, at: int) -> None:
        value = next(t for t in self.tokens[at:] if t.kind == "ROW_REF").value
        if isinstance(value, tuple):
            self.first, self.last = value

    def _named(self, at: int) -> None:
        for token in self.tokens[at : at + 2]:
            self.name = self.name or _NAMES.get(token.kind, "")

    def _last_rows(self, at: int) -> None:
        self.name = "last"
        number = next((t.value for t in self.tokens[at : at + 2] if t.kind == "NUM"), None)
        self.last = number.values[0] if isinstance(number, Numbers) else 1

    def _even(self, at: int) -> None:
        self.name = self.name or "even"

    def _pattern(self, at: int) -> None:
        self.name = self.name or "pattern"

    def _often(self, at: int) -> None:
        value = self.tokens[at].value
        if isinstance(value, Times):
            self.times = value.times

    def _rows(self, at: int) -> None:
        value = next(t.value for t in self.tokens[at:] if t.kind == "NUM")
        if isinstance(value, Numbers):
            self.rows = value

    def _every(self, at: int) -> None:
        value = next((t.value for t in self.tokens[at : at + 2] if t.kind == "ORD"), 2)
        self.every = value if isinstance(value, int) else 2
        self.name = self.name or "same"

    def _nothing(self, at: int) -> None:
        pass

    _SHAPES = (
        ("LAST NUM ROWS", _last_rows),
        ("NUM LAST ROWS", _last_rows),
        ("LAST ROWS", _last_rows),
        ("SAME NUM ROWS", _last_rows),
        ("SAME ROWS", _last_rows),
        ("EACH ORD ROWS", _every),
        ("EACH REM ROWS", _every),
        ("EACH NUM ROWS", _rows),
        ("EACH ROWS", _nothing),
        ("NEXT NUM ROWS", _rows),
        ("NUM MORE ROWS", _rows),
        ("ANOTHER NUM ROWS", _rows),
        ("NUM ROWS", _rows),
        ("INC ROWS", _named),
        ("DEC ROWS", _named),
        ("EVEN ROWS", _named),
        ("ROW_REF", _row_ref),
        ("NTIMES", _often),
        ("REP", _nothing),
        ("AS", _nothing),
        ("CONT", _nothing),
        ("WORK", _nothing),
        ("EVEN", _even),
        ("IN_THIS_WAY", _pattern),
        ("TOTAL", _nothing),
        ("AND", _nothing),
        ("STITCH", _nothing),
        ("IN STITCH", _nothing),
        ("IN NUM ST", _nothing),
        ("OVER NUM ST", _nothing),
        ("ACROSS", _nothing),
        ("TO INC", _named),
        ("TO DEC", _named),
        ("IN EACH ST", _even),
        ("INC NUM ST EACH_END", _named),
        ("DEC NUM ST EACH_END", _named),
        ("INC NUM EACH_END", _named),
        ("DEC NUM EACH_END", _named),
        ("INC NUM ST", _named),
        ("DEC NUM ST", _named),
        ("ROWS", _nothing),
    )
