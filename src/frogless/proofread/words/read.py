"""What a row says: its text read with the words of its pattern.

Tokens (`tokens`) are put into groups and clauses (`structure`); each clause is looked up in the
tables of remarks (`remarks`), read as rows worked again (`rows`) or as a count (`stated`), and else
parsed (`clause.lark`) and built (`build`). What one clause does not say clearly is an `Unclear` of
its own; the next is read all the same.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise, takewhile

from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.build import Asked, Begin, Elliptic, Piece, built
from frogless.proofread.words.counts import counts_of
from frogless.proofread.words.ending import Ending, ending_at, omitted
from frogless.proofread.words.guess import guess_of
from frogless.proofread.words.joining import joined
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.merge import merged, with_chain_first
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Evenly,
    Into,
    Join,
    Leave,
    Met,
    Numbers,
    Repeat,
    Ring,
    Said,
    Skip,
    Stated,
    Turn,
    Unclear,
)
from frogless.proofread.words.net import squares, with_first_of_net
from frogless.proofread.words.order import (
    MOST_TRIED,
    is_purpose,
    joined_with,
    placed_last,
    skip_to,
    skipped_then,
    skips,
    stands_for,
)
from frogless.proofread.words.parse import parse
from frogless.proofread.words.places import UnclearError
from frogless.proofread.words.remarks import (
    AsideKind,
    bracket_remark,
    clause_remark,
    count_told,
    hook_named,
    sentence_remark,
)
from frogless.proofread.words.rows import OF_ROWS, rounds_of, rows_again
from frogless.proofread.words.short import again_before, in_short, once
from frogless.proofread.words.stated import stated_of
from frogless.proofread.words.structure import Clause, Group, Item, clauses, span_of, structure
from frogless.proofread.words.talk import is_of_markers, is_work, says_no_work, sentences_of
from frogless.proofread.words.tokens import Token, words_of
from frogless.proofread.words.used import used
from frogless.proofread.words.whereabouts import (
    along_row_ends,
    parted,
    placed,
    to_body,
    without_part,
    without_piece,
    without_purpose,
)

#: What is said behind brackets that hold what is repeated.
_REPEATS = frozenset({"NTIMES", "ACROSS", "AROUND", "IN", "TO", "UNTIL"})
#: Which loop, and which side of a chain: how it is worked, and not how much.
_HOW = frozenset({"LOOPS", "OTHER_SIDE"})
#: What a clause before a colon may be, "OK so: …", "Total: 10 sts".
_NAMES = frozenset({"WORD", "ST", "TOTAL"})
_OPENING = frozenset({"THEN", "AND", "END_WITH", "WORK", "COMMA", "OR"})
_BEGINS_WORK = frozenset({
    "STITCH", "NUM", "GROUP", "STARRED", "CH", "INC", "DEC", "TOGETHER", "SKIP", "JOIN", "NO_JOIN", "TURN",
    "NOT", "LEAVE", "MAGIC", "AND", "IN", "FOR", "UNTIL", "REP", "AS", "WITH",
})  # fmt: skip


def said(span: Span, script: Script, lexicon: Lexicon) -> Said:
    """What the text there says; what is not understood is in it as `Unclear`."""
    words = words_of(span, script, lexicon)
    tokens = joined(words, script.plain)
    reader = _Reader(script, lexicon)
    acts = with_chain_first(reader.acts(structure(tokens), depth=0))
    acts = with_first_of_net(acts, lexicon)
    return Said(acts, tuple(reader.stated), tuple(used(words, script)))


#: What a pattern for any number of repeats is begun on: no number of chains.
_MULTIPLE = re.compile(
    r"(?:ch|chain|make)\s+(?:an?\s+|any\s+)?(?:even\s+)?multiple\s+of\b", re.IGNORECASE
)
#: On how many it is shown: that is the foundation that its counts go by.
_SHOWN = re.compile(
    r"(?:shown|given|written)\s+(?:here\s+)?(?:on|over|for|with)\s+(?P<chains>\d{1,5})\s+(?:chs?|chains)\.?",
    re.IGNORECASE,
)


@dataclass(slots=True)
class _Reader:
    """Reads the clauses of a row; the counts that it states are gathered on the way."""

    script: Script
    lexicon: Lexicon
    stated: list[Stated] = field(default_factory=list)
    why: str = ""  # words of the clause at hand do not go together

    def acts(self, items: Sequence[Item], depth: int) -> tuple[Act, ...]:
        """The acts of one level."""
        pieces: list[Piece] = []
        sentences = tuple(sentences_of(items))
        for at, sentence in enumerate(sentences):
            last = at == len(sentences) - 1
            if depth == 0 and _has_work(pieces) and (told := self._told_count(sentence, last=last)):
                self.stated += told
                if sentence[0].kind != "NUM":
                    pieces.append(Aside(span_of(sentence), "remark"))
                continue
            if is_of_markers(sentence):
                pieces.append(Aside(span_of(sentence), "marker"))
                continue
            if self._counts_seam(sentence, pieces):
                pieces.append(Aside(span_of(sentence), "remark"))
                continue
            if kind := self._remark(sentence):
                pieces.append(Aside(span_of(sentence), kind))
                continue
            found = tuple(clauses(sentence))
            for n, clause in enumerate(found):
                named = n + 1 < len(found) and found[n + 1].after == "COLON"
                what = self._text(clause.items).startswith(("foundation ch", "base ch"))
                if named and (what or all(each.kind in _NAMES for each in clause.items)):
                    pieces.append(Aside(span_of(clause.items), "remark"))  # "OK so: …"
                    continue
                if n and depth == 0 and self._counted_to_end(found[n:], pieces, last=last):
                    break
                alone = depth == 0 and (clause.after in ("DASH", "COLON") or (at > 0 and not n))
                pieces += self._clause(clause, pieces, depth, alone=alone)
        return merged(pieces)

    def _inside(self, group: Group, depth: int) -> tuple[Act, ...]:
        return self.acts(group.items, depth + 1)

    def _counts_seam(self, sentence: Sequence[Item], before: Sequence[Piece]) -> bool:
        """ "Seam sides: sl st through both edges: …. (21 sl st)": the count of what is no row."""
        (group, *rest) = sentence
        alone = all(each.kind == "STOP" for each in rest)
        told = bool(before) and all(isinstance(each, Aside) for each in before)
        if not (alone and told and isinstance(group, Group)):
            return False
        return bool(stated_of(group.items, self.lexicon))

    def _remark(self, sentence: Sequence[Item]) -> AsideKind | None:
        """What a sentence is that is no work: it says so, or has no word of work."""
        if is_work(sentence[0]):
            return None
        text = self._text(sentence)
        kind = sentence_remark(text) or ("remark" if says_no_work(sentence) else None)
        return "fasten_off" if kind and clause_remark(text) == "fasten_off" else kind

    def _told_count(self, sentence: Sequence[Item], *, last: bool) -> tuple[Stated, ...]:
        """ "You have 28 stitches.": a count that is told in a sentence; "20 dc, 180 tr" at the end."""
        if last and sentence[0].kind == "NUM":
            return stated_of(sentence, self.lexicon)
        if last and [each.kind for each in sentence[:2]] == ["DASH", "NUM"]:
            return stated_of(sentence[1:], self.lexicon)
        number = next((n for n, each in enumerate(sentence) if each.kind == "NUM"), 0)
        text = self._text(sentence) if number else ""
        if text.startswith(("you ", "each ", "this ")):
            # "You gain 8 dc on every rnd and finish with 254 dc."
            kinds = [each.kind for each in sentence]
            pairs = list(pairwise(kinds))
            if ("END_WITH", "NUM") in pairs:
                return stated_of(sentence[pairs.index(("END_WITH", "NUM")) + 1 :], self.lexicon)
        return stated_of(sentence[number:], self.lexicon) if count_told(text) else ()

    def _text(self, items: Sequence[Item]) -> str:
        words = self.script.plain[items[0].start : items[-1].end]
        return " ".join(words[:600].lower().split())

    def _counted_to_end(
        self, rest: Sequence[Clause], pieces: Sequence[Piece], *, last: bool
    ) -> bool:
        """A dash and counts end a row: "- 64 dc, 32 ch-2 sps"; so does "across; 10 sc"."""
        if rest[0].after in ("SEMI", "COMMA"):
            if not last or self.stated or not _is_full(pieces, rest[0].after):
                return False
        elif rest[0].after not in ("DASH", "COLON") or not _has_work(pieces):
            return False
        if clause_remark(self._text(rest[0].items)):
            return False  # "…, 1 in each row"
        items = [item for clause in rest for item in clause.items]
        found = stated_of(items, self.lexicon)
        self.stated += found
        return bool(found)

    def _clause(
        self, clause: Clause, before: Sequence[Piece], depth: int, *, alone: bool
    ) -> list[Piece]:
        items, asides = self._without_remarks(clause.items, before, depth)
        if not items:
            return asides
        whole = isinstance(clause.items[0], Token) and clause.items[0].kind != "COLOUR"
        text = self._text(clause.items if whole else items)
        if [each.kind for each in items] in (["NUM", "RING"], ["FIRST"], ["NEXT"]):
            return [*asides, Aside(span_of(items), "remark")]  # a count: "1 ring"; "First, ch 27"
        if _MULTIPLE.match(text):
            return [*asides, Aside(span_of(items), "remark")]
        if shown := _SHOWN.fullmatch(text):
            span = span_of(items)
            return [*asides, Chain(span, Numbers((int(shown["chains"]),), span))]
        if not is_work(clause.items[0]) and (kind := clause_remark(text)):
            if kind == "join_piece" and (at := joined_with(items)):
                joined = Aside(span_of(items[:at]), kind)
                return [*asides, joined, *self._parts(items[at + 1 :], depth)]
            return [
                *asides,
                Aside(span_of(items), kind, hook_named(text) if kind == "hook" else 0.0),
            ]
        if square := squares(items, self.lexicon):
            return [*asides, square]
        found = stated_of(items, self.lexicon, stitches=alone and _has_work(before))
        own = isinstance(items[-1], Token) and items[-1].value in self.lexicon.own
        worked = own and len(items) == 2 and bool(self.stated) and not _has_work(before)
        if found and not worked:  # "8V [16]" is work: its count stands behind it
            self.stated += found
            return asides
        if counts := counts_of(items):
            return [*asides, counts]
        return [*_no_lift(self._worked(items, before, depth), before, self.script), *asides]

    def _worked(self, items: Sequence[Item], before: Sequence[Piece], depth: int) -> list[Piece]:
        items = skip_to(without_purpose(items))
        ending = items[0].kind == "END_WITH"
        while len(items) > 1 and items[0].kind in _OPENING and not _keeps_opening(items):
            items = items[1:]
        at, end = ending_at(items)
        if end:
            found = self._worked(items[:at], before, depth) if at else []
            last = self._parts(items[end:], depth)
            first = last[0] if isinstance(last[0], Into | Bare | Chain | Skip) else None
            return [*found, Ending(span_of(items[at:end]), first=first), *last]
        if left_out := omitted(items):
            return [left_out]
        if again := rows_again(items, self.script):
            return [again]
        if short := in_short(items):
            return [*short]
        if rounds := rounds_of(items):
            return [*rounds]
        if len(items) > 1 and items[0].kind == "REP" and isinstance(items[1], Group):
            items = items[1:]
            if isinstance(items[0], Group) and not items[0].items:
                items = [Token("REP", items[0].start, items[0].end), *items[1:]]
        if loose := again_before(items):
            return [loose]
        if len(items) > 2 and items[2].kind == "TURN" and (loose := again_before(items[:2])):
            return [loose, *self._parts(items[2:], depth)]  # "repeat across, turn" without comma
        items = without_part(items)
        if len(items) > 1 and isinstance(items[0], Token) and items[0].value == "now":
            items = items[1:]
        if len(items) == 1 and isinstance(items[0], Token) and items[0].value == "now":
            return [Aside(span_of(items), "remark")]
        if len(items) > 1 and items[-1].kind == "AND":
            items = items[:-1]
        if is_purpose(items):
            return [Aside(span_of(items), "remark")]
        if along_row_ends(items):
            return [Aside(span_of(items), "remark")]
        if to_body(items):
            return [Leave(span_of(items))]
        if passed := skips(items, before):
            return [piece for some in passed for piece in self._parts(some, depth)]
        if opened := self._opened(items, depth):
            return opened
        items = placed_last(items)
        if cut := parted(items):
            begun = self._parts(placed(items[:cut]), depth)
            return [*begun, *self._parts(placed(items[cut + 1 :]), depth)]
        found = self._parts(without_piece(placed(items)), depth)
        if ending and _is_last_of_repeat(found, before):
            return [Aside(span_of(items), "remark")]
        return found

    def _parts(self, items: Sequence[Item], depth: int) -> list[Piece]:
        """A clause as one, or its longest beginnings that can be understood, one after the other."""
        pieces: list[Piece] = []
        unclear: list[Item] = []
        self.why = ""
        at = 0
        while at < len(items):
            length, found = self._longest(items[at : at + MOST_TRIED], depth)
            if found:
                if unclear:
                    pieces.append(self._unclear(unclear))
                    unclear = []
                pieces += found
            else:
                unclear.append(items[at])
            at += length
        if unclear:
            pieces.append(self._unclear(unclear))
        return pieces

    def _opened(self, items: Sequence[Item], depth: int) -> list[Piece]:
        """ "into each loop work 1 dc", which more may follow; nothing of other clauses."""
        kinds = [each.kind for each in items[:MOST_TRIED]]
        at = kinds.index("WORK") if kinds[0] == "IN" and "WORK" in kinds else 0
        if not at or set(kinds[at + 1 :]) - {"NUM", "STITCH", "AND", "CH"}:
            return []
        place = self._parts(items[:at], depth)
        *rings, last = place
        if not isinstance(last, Elliptic) or not all(isinstance(each, Ring) for each in rings):
            return []
        return [*rings, replace(last, opens=True), *self._parts(items[at + 1 :], depth)]

    def _longest(self, items: Sequence[Item], depth: int) -> tuple[int, list[Piece]]:
        if items[0].kind == "AND" and len(items) > 1:
            text = self._text(items[1:])
            if kind := clause_remark(text):
                return len(items), [Aside(span_of(items), kind)]
        if cut := skipped_then(items):
            items = items[:cut]
        of_rows = any(each.kind in OF_ROWS for each in items)
        first = 0
        while first + 1 < len(items) and items[first].kind in ("AND", "THEN", "WORK", "WITH"):
            first += 1
        most = len(items)
        for end in range(len(items), first, -1):
            if end < len(items) and items[end].kind not in _BEGINS_WORK:
                continue
            if of_rows and (again := rows_again(items[first:end], self.script)):
                return end, [again]
            if end > most:
                continue
            found, most = self._parsed(items[first:end], depth)
            most += first
            if found:
                return end, found
            if not of_rows and most < 1:
                break
        return 1, []

    def _parsed(self, items: Sequence[Item], depth: int) -> tuple[list[Piece], int]:
        """The acts of a clause; of what is none, how many of its words may still begin one."""
        tree = parse(tuple(each.kind for each in items))
        if isinstance(tree, int):
            return [], tree
        asked = Asked(self.lexicon, lambda group: self._inside(group, depth))
        try:
            found = built(tree, items, asked)
        except UnclearError as error:
            self.why = self.why or str(error)
            return [], len(items) - 1
        rings = [each for each in items if each.kind == "MAGIC"]
        if rings and not any(isinstance(each, Ring) for each in found):
            return [Ring(Span(rings[0].start, rings[0].end)), *found], len(items)
        return found, len(items)

    def _unclear(self, items: Sequence[Item]) -> Unclear:
        return Unclear(span_of(items), guess_of(items, self.lexicon) or self.why)

    def _without_remarks(
        self, items: Sequence[Item], before: Sequence[Piece], depth: int
    ) -> tuple[list[Item], list[Piece]]:
        """A clause without what only explains it: remarks and counts in brackets, colours, loops."""
        kept: list[Item] = []
        asides: list[Piece] = []
        for n, item in enumerate(items):
            if isinstance(item, Group) and item.kind == "GROUP":
                last = all(each.kind == "TURN" for each in items[n + 1 :])
                far = not last and items[n + 1].kind in _REPEATS
                if not far and (parts := stands_for(items[:n], item)):
                    kept.append(parts)
                    continue
                piece = (
                    None
                    if far
                    else self._bracket(item, before, last=last and depth == 0, work=bool(kept))
                )
                if piece is None:
                    kept.append(item)
                elif isinstance(piece, Token):
                    kept.append(piece)
                else:
                    asides += piece
            elif item.kind == "COLOUR":
                asides.append(Aside(Span(item.start, item.end), "colour"))
            elif item.kind not in _HOW and not _is_said_twice(items, n):
                kept.append(item)
        if not asides and all(i.kind in _HOW | {"WORK", "THROUGH", "IN"} for i in items):
            kept = []
            asides.append(Aside(span_of(items), "remark"))
        return kept, asides

    def _names_what_is_made(self, group: Group) -> bool:
        """ "5 dc in next ch (shell)": what was just made by its name."""
        (item, *rest) = group.items
        if rest or item.kind != "STITCH" or not isinstance(item, Token):
            return False
        stitch, own = (
            self.lexicon.stitches.get(str(item.value)),
            str(item.value) in self.lexicon.own,
        )
        return own or (stitch is not None and (stitch.kind != "stitch" or stitch.leaves != 1))

    def _bracket(
        self, group: Group, before: Sequence[Piece], *, last: bool, work: bool
    ) -> Token | list[Piece] | None:
        """What a bracket is that is no work: a token that counts, or asides; None when it is work."""
        if not group.items:
            return [Aside(group.span, "remark")]
        kinds = [each.kind for each in group.items]
        if set(kinds) == {"LENGTH"} or kinds in (["NUM", "RING"], ["NUM", "MAGIC"]):
            return [Aside(group.span, "remark")]  # a length in another unit; "(1 ring)"
        if counts := counts_of(group.items):
            return Token("COUNTS", group.start, group.end, counts)
        if work and any(each.kind == "ROW_END" for each in group.items):
            return [Aside(group.span, "remark")]  # "120 dc down the side (2 dc in each row end)"
        if work and self._names_what_is_made(group):
            return [Aside(group.span, "remark")]
        at_end = last and (work or _has_work(before))
        found = stated_of(group.items, self.lexicon, stitches=at_end)
        if found and (at_end or any(each.change or not each.stitch for each in found)):
            self.stated += found
            return []
        text = self.script.plain[group.start + 1 : group.end - 1][:600]
        text = " ".join(text.lower().split())
        if sentence_remark(text) or clause_remark(text) or bracket_remark(text):
            return [Aside(group.span, "remark")]
        return None


def _no_lift(found: list[Piece], before: Sequence[Piece], script: Script) -> list[Piece]:
    """ "no turning chain, ch 10": the chain is worked as part of the row."""
    if not (found and isinstance(found[0], Chain)):
        return found
    asides = takewhile(lambda each: isinstance(each, Aside), reversed(before))
    told = (script.plain[each.span.start : each.span.end].lower() for each in asides)
    if "no turning chain" not in told:
        return found
    return [Repeat(found[0].span, (found[0],), once(found[0].span)), *found[1:]]


def _is_said_twice(items: Sequence[Item], at: int) -> bool:
    """ "next unworked st": which else."""
    follows = items[at + 1].kind if at + 1 < len(items) else ""
    return items[at].kind == "UNWORKED" and follows in ("ST", "STITCH", "CH", "SP", "CH_SP")


def _is_last_of_repeat(found: Sequence[Piece], before: Sequence[Piece]) -> bool:
    """ "*ch 1, dc in next dc; rep from * across, ending with dc in top of ch-4".

    That is where the last dc of the repeats stands, and none beside it (common practice).
    """
    repeat = next((each for each in reversed(before) if not isinstance(each, Aside)), None)
    if len(found) != 1 or not isinstance(repeat, Repeat) or repeat.extent.kind != "end":
        return False
    mine, last = found[0], repeat.body[-1] if len(repeat.body) > 1 else None
    if not isinstance(mine, Into) or not isinstance(last, Into) or len(mine.body) != len(last.body):
        return False
    return all(
        isinstance(a, Bare) and isinstance(b, Bare) and (a.stitch, _n(a)) == (b.stitch, _n(b))
        for a, b in zip(mine.body, last.body, strict=True)
    )


def _n(bare: Bare) -> tuple[int, ...]:
    return bare.times.values if bare.times else (1,)


def _is_full(pieces: Sequence[Piece], after: str) -> bool:
    """Whether the row below is worked to its end, so that a bare number behind it is a count.

    Behind a repeat and a comma, "rep from * around, 2 sc", it may be work.
    """
    worked = (p for p in reversed(pieces) if not isinstance(p, Aside | Turn | Join | Chain))
    last = next(worked, None)
    if isinstance(last, Repeat):
        return last.extent.kind == "end" and after == "SEMI"
    if after == "SEMI" and isinstance(pieces[-1], Join | Turn):
        return True  # "…, join; 48 sc"
    at_end = isinstance(last, Into) and (last.target.which == "last" or last.target.what == "top")
    if after == "SEMI" and at_end:
        return True
    return isinstance(last, Evenly) or (isinstance(last, Into | Met) and last.extent.kind == "end")


def _has_work(pieces: Sequence[Piece]) -> bool:
    return any(not isinstance(each, Aside | Unclear | Elliptic | Begin) for each in pieces)


def _keeps_opening(items: Sequence[Item]) -> bool:
    """Words that open a clause of rows: "work even", "work as Rnd 4"."""
    kinds = {each.kind for each in items}
    if items[0].kind == "END_WITH":
        return bool(ending_at(items)[1])
    return items[0].kind == "WORK" and bool(kinds & {"EVEN", "ROWS", "ROW_REF", "AS"})
