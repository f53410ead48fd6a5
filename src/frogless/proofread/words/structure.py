"""The tokens of a row put together: what stands in brackets, what a star repeats, the clauses.

A bracket or a star that does not close spoils nothing but itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.proofread.script.model import Span
from frogless.proofread.words.tokens import Token

#: Brackets within brackets (own choice: a published row has three).
DEEPEST = 12
_PAIRS = {"(": ")", "[": "]", "{": "}", "<": ">"}
#: Stars of one row that are open at a time.
MOST_STARS = 24
SEPARATORS = frozenset({"COMMA", "SEMI", "STOP", "DASH", "COLON", "THEN"})
#: What may follow a closing star that repeats what stands before it.
_FAR = frozenset({"IN", "NTIMES", "ACROSS", "AROUND", "TO", "UNTIL", "REP"})


@dataclass(frozen=True, slots=True)
class Group:
    """What stands in brackets, or what a star repeats.

    Args:
        kind: GROUP; STARRED of "rep from *", which may leave open what it counts.
        opens: the bracket; "*".
    """

    kind: str
    start: int
    end: int
    opens: str
    items: tuple[Item, ...]

    @property
    def span(self) -> Span:
        """Where it stands."""
        return Span(self.start, self.end)


Item = Token | Group


@dataclass(frozen=True, slots=True)
class Clause:
    """What stands between two separators.

    Args:
        after: the kind of the separator before it; "" of the first.
    """

    items: tuple[Item, ...]
    after: str


def structure(tokens: Sequence[Token]) -> tuple[Item, ...]:
    """The tokens with their brackets closed and their stars followed."""
    return tuple(_starred(_bracketed(tokens)))


def clauses(items: Sequence[Item]) -> Iterator[Clause]:
    """The clauses of one level, the separators left out."""
    found: list[Item] = []
    after = ""
    for item in items:
        if isinstance(item, Token) and item.kind in SEPARATORS:
            if found:
                yield Clause(tuple(found), after)
                found = []
                after = item.kind
            elif after not in ("DASH", "COLON"):
                after = item.kind
        else:
            found.append(item)
    if found:
        yield Clause(tuple(found), after)


def _bracketed(tokens: Sequence[Token]) -> list[Item]:
    levels: list[list[Item]] = [[]]
    opened: list[Token] = []
    for token in tokens:
        if token.kind == "OPEN":
            if len(opened) < DEEPEST:
                opened.append(token)
                levels.append([])
            else:
                levels[-1].append(replace(token, kind="OTHER"))
        elif token.kind == "CLOSE":
            if opened and _PAIRS[str(opened[-1].value)] == token.value:
                group = _group(opened.pop(), token, levels.pop())
                levels[-1].append(group)
            else:
                levels[-1].append(replace(token, kind="OTHER"))
        else:
            levels[-1].append(token)
    while opened:
        # Never closed: the bracket itself is what is not understood, not what it holds.
        inside = levels.pop()
        levels[-1] += [replace(opened.pop(), kind="OTHER"), *inside]
    return levels[0]


def _group(opens: Token, closes: Token, inside: list[Item]) -> Group:
    items = tuple(_starred(inside))
    return Group("GROUP", opens.start, closes.end, str(opens.value), items)


def _starred(items: Sequence[Item]) -> list[Item]:
    """What stands between a star and "rep from *" made one item."""
    out: list[Item] = []
    marks: list[int] = []  # where the stars stand in it that are not closed
    at = 0
    while at < len(items):
        item = items[at]
        at += 1
        if not isinstance(item, Token) or item.kind not in ("STAR", "REP_FROM"):
            out.append(item)
            continue
        star = item.value if item.kind == "STAR" else _named(item)
        same = [n for n in marks if _star(out[n]) == star]
        if item.kind == "STAR" and same and _repeats(items, at):
            group = _star_group(out[same[-1] + 1 :], out[same[-1]], item.end)
            out[same[-1] :] = [replace(group, kind="GROUP")]
        elif item.kind == "STAR" and _opened_by_bracket(out, items[at : at + 1], star):
            out[-1] = replace(out[-1], kind="STARRED", end=items[at].end)
            at += 1
        elif item.kind == "STAR":
            if len(marks) < MOST_STARS:
                marks.append(len(out))
            out.append(item)
        elif same:
            # the first of a pair: "*…*; rep from * to *"
            _close(out, same[-2] if len(same) > 1 else same[-1], item)
            at = _ended_early(items, at, out)
        else:
            out.append(item)
        marks = [n for n in marks if n < len(out) and _is_kind(out[n], "STAR")]
    return out


def _opened_by_bracket(before: Sequence[Item], after: Sequence[Item], star: object) -> bool:
    """ "(sc, ch 2, sk 1)* rep from * around": the bracket is what the star repeats."""
    rep = after[0] if after else None
    named = isinstance(rep, Token) and rep.kind == "REP_FROM" and _named(rep) == star
    return named and bool(before) and isinstance(before[-1], Group)


def _named(rep: Token) -> object:
    """The star that a repeat names."""
    return rep.value[0] if isinstance(rep.value, tuple) and rep.value else "*"


def _close(out: list[Item], begun: int, rep: Token) -> None:
    """Puts what is repeated in the place of the star; what follows says how far."""
    mark = out[begun]
    body = out[begun + 1 :]
    closed = _mark(body, _star(mark))
    between: list[Item] = []
    if closed is not None:
        body, between = body[:closed], body[closed + 1 :]
    if any(not _is_separator(each) for each in between):
        out[begun:] = [*body, *between, _star_group(body, mark, rep.end)]
    else:
        out[begun:] = [_star_group(body, mark, rep.end)]


def _star_group(body: Sequence[Item], mark: Item, end: int) -> Group:
    items = list(body)
    while items and (_is_separator(items[-1]) or _is_kind(items[-1], "AND")):
        items.pop()
    return Group("STARRED", mark.start, end, "*", tuple(items))


def _ended_early(items: Sequence[Item], at: int, out: list[Item]) -> int:
    """ "ending last rep at **": all but what follows the inner star comes once more.

    A ** B; rep from * around, ending last rep at ** is A, then B and A again and again.
    """
    group = out[-1]
    assert isinstance(group, Group)  # noqa: S101 - it was put there just now
    inner = [n for n, each in enumerate(group.items) if _is_kind(each, "STAR")]
    if not inner:
        return at
    cut = inner[-1]
    first, rest = group.items[:cut], group.items[cut + 1 :]
    for end in range(at, min(at + 9, len(items))):
        if _is_kind(items[end], "STAR") and _star(items[end]) == _star(group.items[cut]):
            tail = items[at:end]
            far = [each for each in tail if getattr(each, "kind", "") in _FAR - {"REP", "IN"}]
            comma = Token("COMMA", group.start, group.start, ",")
            again = replace(group, items=(*rest, comma, *first))
            out[-1:] = [*first, comma, again, *far[:1]]
            return end + 1
    return at


def _mark(out: Sequence[Item], star: object) -> int | None:
    found = [n for n, each in enumerate(out) if _is_kind(each, "STAR") and _star(each) == star]
    return found[-1] if found else None


def _repeats(items: Sequence[Item], at: int) -> bool:
    """Whether what follows a closing star says how often, without naming the star again."""
    if at < len(items) and _is_separator(items[at]):
        at += 1
        far = at < len(items) and _is_kind(items[at], "ACROSS", "AROUND")
        ends = at + 1 == len(items) or (far and not isinstance(items[at + 1], Token))
        ends = ends or (at + 1 < len(items) and _is_separator(items[at + 1]))
        return at < len(items) and (_is_kind(items[at], "REP", "NTIMES") or (far and ends))
    return at < len(items) and isinstance(items[at], Token) and items[at].kind in _FAR


def _star(item: Item) -> object:
    return item.value if isinstance(item, Token) else ""


def _is_kind(item: Item, *kinds: str) -> bool:
    return isinstance(item, Token) and item.kind in kinds


def _is_separator(item: Item) -> bool:
    return isinstance(item, Token) and item.kind in SEPARATORS


def span_of(items: Sequence[Item]) -> Span:
    """From the first to the last of them."""
    return Span(items[0].start, items[-1].end)
