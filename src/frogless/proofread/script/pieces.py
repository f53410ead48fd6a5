"""Which headings begin a piece, and which a section of one.

A piece begins anew: its rows are numbered from the start again, or a chain, a ring or a foundation
row begins it, or it says how often it is made. A section goes on where the rows before it ended.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from frogless.proofread.script.headings import how_often, names_piece
from frogless.proofread.script.marks import is_founded
from frogless.proofread.script.model import Heading, Prose, RowText, Span, Statement

_ENDED = re.compile(
    r"(?:fasten|finish|bind|cut|break)\s{0,2}(?:off|the yarn|yarn|thread)", re.IGNORECASE
)
_BEGUN = re.compile(
    r"\b(?:magic|mr\b|foundation|f[sdht]c\b|fhdc|fdc|ring\b"
    r"|(?:re)?join(?:ing)?\b[^.;]{0,40}\b(?:yarn|colou?r|to any|in any|at|along)"
    r"|(?:re)?attach|new yarn|slip\s?knot|into \d+ (?:sts|row ends)|along)", re.IGNORECASE,
)  # fmt: skip
#: Names of what is done to a piece in hand, rather than of a piece.
_GOES_ON = re.compile(
    r"^(?:shap(?:e|ing)|divide|dividing|begin|raglan)\b|\b(?:armholes?|shoulders?|neck|neckline|cap|shaping)$",
    re.IGNORECASE,
)
_CHAIN = re.compile(r"^[^.;]{0,60}?\bch(?:ain)?s?\s(\d{1,9})", re.IGNORECASE)
#: Headings below one another that are looked through for its first row.
_DEEP = 8
#: Chains that may begin a row that stands on another: no stitch is taller.
_TURNING = 7
_STARTS = re.compile(
    r"from hook|magic|(?:form|make|into) an?\s(?:\w{1,12}\s)?(?:ring|loop|circle)", re.IGNORECASE
)
_WORKS = re.compile(
    r"\b(?:ch|chain|sc|dc|hdc|tr|rep|repeat|join|sew|work|turn|sl st)\b", re.IGNORECASE
)
_HOOKED = re.compile(r"[^,;.]{0,40}\bch(?:ain)? from (?:the )?hook\b", re.IGNORECASE)
#: How a piece is worked stands behind its name, or on the line below.
_HOW = re.compile(r":?\s{1,4}worked (?:in|flat|from)\b", re.IGNORECASE)
_SET_UP = re.compile(r"^(?:foundation|set-?\s?up|beginning|starting)\b", re.IGNORECASE)
_FOUNDATIONS = frozenset({"foundation", "setup"})


@dataclass(frozen=True, slots=True)
class _Following:
    """What follows a heading up to its first row with a number, and with it.

    Args:
        hooked: that row goes into a chain by its number from the hook, so a chain right above it,
            however short, is a foundation.
    """

    number: int | None = None
    founded: bool = False
    begun: bool = False
    make: int = 0
    hooked: bool = False


def with_pieces(
    plain: str, statements: Sequence[Statement], levels: Mapping[int, int]
) -> tuple[Statement, ...]:
    """The same statements, each heading told a piece or a section.

    Args:
        levels: how loud each heading is, by where it begins.
    """
    ahead = _ahead(plain, statements, levels)
    told: list[Statement] = []
    last: int | None = None
    ended = True
    waiting = 0  # the level of a piece that was headed and has no row yet
    off = False  # the yarn was cut, or a piece was named, since the last row
    for index, each in enumerate(statements):
        if isinstance(each, Heading):
            following = ahead[index]
            level = levels.get(each.span.start, 1)
            under = 0 < waiting < level
            begun = bool(_HOW.match(plain, each.span.end))
            piece = not under and (begun or _is_piece(each, following, last, ended))
            onto = piece and not (
                begun
                or ended
                or following.begun
                or following.founded
                or each.make > 1
                or following.make
            )
            piece = piece and not (onto and following.number is not None and last is not None)
            waiting = level if piece else waiting
            last = last if last or not piece else None
            last = 0 if _SET_UP.match(each.name) else last
            make = max(each.make, following.make, 1)
            told.append(replace(each, piece=piece, make=make, onto=onto and not piece))
            continue
        anew = off and not waiting and last is not None
        if anew and _begins(plain, statements, index):
            each = replace(each, begins=True)
            off, last = False, None
        told.append(each)
        if isinstance(each, RowText):
            off = False
            if each.label.numbers:
                last = each.label.numbers[-1]
            elif each.label.name in _FOUNDATIONS or waiting:
                last = 0
            waiting = 0
            words = plain[each.body.start : each.body.end]
        else:
            words = plain[each.span.start : each.span.end]
        ended = bool(_ENDED.search(words[-2000:])) or (ended and waiting > 0)
        off = off or ended or (isinstance(each, Prose) and _names(words))
    return tuple(told)


def _begins(plain: str, statements: Sequence[Statement], index: int) -> bool:
    """Whether a chain is made there that Row 1 goes into by its number from the hook."""
    each = statements[index]
    if isinstance(each, RowText) and each.label.numbers not in ((), (0,)):
        return False
    span = each.body if isinstance(each, RowText) else each.span
    if not _CHAIN.match(plain[span.start : min(span.end, span.start + 120)]):
        return False
    for after in statements[index + 1 : index + 4]:
        if isinstance(after, RowText):
            first = after.label.numbers[:1] == (1,)
            return first and bool(_HOOKED.match(plain, after.body.start, after.body.end))
        if isinstance(after, Heading):
            return False
    return False


def _names(words: str) -> bool:
    """Whether a few words do no more than name a piece: "Strap x 2", "~ Strap ~"."""
    return len(words.split()) <= 5 and names_piece(words) and not _WORKS.search(words)


def _is_piece(heading: Heading, following: _Following, last: int | None, ended: bool) -> bool:
    if following.number is not None and last is not None and following.number == last + 1:
        return False
    if heading.make > 1 or following.make or how_often(heading.name):
        return True
    if _GOES_ON.search(heading.name) and not following.founded and last is not None:
        return False
    if following.number is None:
        return names_piece(heading.name) and (following.founded or last is None or ended)
    if last is None or following.founded:
        return True
    anew = following.number < last or following.number == last == 1
    return anew and (following.number <= 2 or names_piece(heading.name))


def _ahead(
    plain: str, statements: Sequence[Statement], levels: Mapping[int, int]
) -> dict[int, _Following]:
    """For each heading what follows it, up to its first row with a number.

    What stands under the headings below it counts while they are quieter than it is.
    """
    own: list[tuple[int, int, _Following]] = []
    now = _Following()
    for index in range(len(statements) - 1, -1, -1):
        each = statements[index]
        if isinstance(each, Heading):
            own.append((index, levels.get(each.span.start, 1), now))
            now = _Following()
        else:
            now = _with(plain, each, now)
    own.reverse()
    return {index: _joined(own, place) for place, (index, _, _) in enumerate(own)}


def _joined(own: Sequence[tuple[int, int, _Following]], place: int) -> _Following:
    _, level, joined = own[place]
    for _, below, after in own[place + 1 : place + 1 + _DEEP]:
        if below <= level or joined.number is not None:
            break
        joined = _Following(
            after.number,
            joined.founded or after.founded,
            joined.begun or after.begun,
            joined.make or after.make,
            joined.hooked or after.hooked,
        )
    return joined


def _is_foundation(plain: str, words: str, span: Span) -> bool:
    """Whether a row or a sentence begins on nothing; "Ch 3" only begins a row."""
    if not is_founded(plain, span.start, span.end):
        return False
    chain = _CHAIN.search(words)
    if chain is None or _STARTS.search(words):
        return True
    return int(chain[1]) > _TURNING


def _with(plain: str, each: RowText | Prose, after: _Following) -> _Following:
    span = each.body if isinstance(each, RowText) else each.span
    words = plain[span.start : min(span.end, span.start + 400)]
    begun = bool(_BEGUN.search(words)) or _is_foundation(plain, words, span)
    if isinstance(each, RowText):
        founded = each.label.name in _FOUNDATIONS or _is_foundation(plain, words, each.body)
        if each.label.numbers:
            number = each.label.numbers[0]
            hooked = number == 1 and bool(_HOOKED.match(words))
            return _Following(number, founded and number == 1, begun, hooked=hooked)
        return replace(after, founded=after.founded or founded, begun=after.begun or begun)
    make = how_often(words) if len(words) < 40 else 0
    hooked = after.hooked and bool(_CHAIN.match(words))
    founded = (_is_foundation(plain, words, span) and begun) or hooked
    return replace(
        after,
        founded=after.founded or founded,
        begun=after.begun or begun or hooked,
        make=make or after.make,
    )
