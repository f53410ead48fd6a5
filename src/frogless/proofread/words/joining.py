"""Words of a row that are one thing put together: "3 times", "ch-2 sp", "dc2tog", "rep from *"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Numbers
from frogless.proofread.words.tokens import Times, Token


def joined(words: tuple[Token, ...], plain: str) -> tuple[Token, ...]:
    """The same, with those put together that are one thing: "ch-2 sp", "dc2tog", "3 times"."""
    return tuple(_joined(list(words), plain))


def _joined(tokens: list[Token], plain: str) -> Iterator[Token]:
    """Tokens that are one thing put together: "3 times", "ch-2 sp", "dc2tog", "rep from *"."""
    tokens = list(_with_stops(tokens, plain))
    at = 0
    while at < len(tokens):
        if tokens[at].kind not in _BEGIN:
            yield tokens[at]
            at += 1
            continue
        if _is_around(tokens, at, plain):
            tokens[at] = Token("AROUND", tokens[at].start, tokens[at].end)
        if _is_sign(tokens, at, plain):
            tokens[at] = Token("TIMES", tokens[at].start, tokens[at].end)
        if _is_all(tokens, at, plain):
            middle = tokens[at].start + 2
            yield Token("IN", tokens[at].start, middle)
            tokens[at] = Token("EACH", middle + 1, tokens[at].end)
        if _is_named_stitch(tokens, at, plain):
            at += 2 if str(tokens[at + 2].value) not in _OF_SO_MANY else 0
            if str(tokens[at].value) not in _GATHERED:
                yield tokens[at]
                yield tokens[at + 1]
                at += 3
                continue
        if _is_first_of_row(tokens[at]) and _kinds(tokens[at + 1 : at + 3]) == "NUM CH":
            number = tokens[at + 1]  # "beg 3-ch"
            yield Token("TCH", tokens[at].start, tokens[at].end)
            yield Token("NUM", number.start, tokens[at + 2].end, number.value)
            at += 3
            continue
        if _is_along_row_ends(tokens, at, plain):
            word, end = tokens[at], tokens[at + 1]
            yield Token("WORD", word.start, word.start, "along")
            yield Token("ROW_END", word.end - 3, end.end)
            at += 2
            continue
        if tokens[at].kind == "ROW_END" and _is_of_each(tokens[at], plain):
            yield Token("EACH", tokens[at].start, tokens[at].start)
        if tokens[at].kind == "LOOPS" and _is_of_place(tokens[at], plain):
            yield Token("IN", tokens[at].start, tokens[at].start)
        if side := _other_side(tokens, at):
            yield Token("OTHER_SIDE", tokens[at].start, tokens[side].end)
            at = side + 1
            continue
        beginning = _is_first_of_row(tokens[at])
        if beginning and at + 1 < len(tokens) and tokens[at + 1].kind == "STITCH":
            at += 1
        if rows := _row_ref(tokens, at):
            yield rows[0]
            at = rows[1]
            continue
        for length, joined in _BY_FIRST.get(tokens[at].kind, ()):
            window = tokens[at : at + length]
            if len(window) == length and (made := joined(window, plain)):
                yield made
                at += length
                break
        else:
            yield tokens[at]
            at += 1


#: A word that begins a sentence, where the stop before it was left out.
_CAPITAL = re.compile(
    r"[A-Z][a-z]+(?![a-z])(?<!Rnd)(?<!Row)(?<!Rows)(?<!Rnds)(?<!Round)(?<!Rounds)"
)


def _with_stops(tokens: list[Token], plain: str) -> Iterator[Token]:
    """Behind a bracket, and on a new line, a capital begins a sentence: "(90 sc) Fasten off."."""
    for at, (before, token) in enumerate(zip((None, *tokens), tokens, strict=False)):
        if before is not None and before.kind not in ("STOP", "OPEN", "COMMA", "SEMI"):
            new_line = "\n" in plain[before.end : token.start]
            if (before.kind == "CLOSE" or new_line) and _CAPITAL.match(plain, token.start):
                yield Token("STOP", before.end, before.end)
            if before.kind in _ENDS and token.kind == "NUM":
                counted = [each.kind for each in tokens[at + 1 : at + 3]]
                if counted in (["ST"], ["ST", "STOP"]):
                    yield Token("STOP", before.end, before.end)
        yield token


#: What may end a row before its count: "turn   60 sts".
_ENDS = frozenset({"ACROSS", "AROUND", "TURN", "JOIN", "TO_JOIN", "CLOSE"})


def _is_around(tokens: list[Token], at: int, plain: str) -> bool:
    """ "sc in each st round": round as it is said for around."""
    word = plain[tokens[at].start : tokens[at].end].lower()
    if tokens[at].kind != "ROWS" or word != "round" or not at:
        return False
    follows = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    if tokens[at - 1].kind == "STITCH" and follows in ("NEXT", "POST", "EACH", "FIRST", "LAST"):
        return True  # "1 rtrf round next st"
    return tokens[at - 1].kind in (
        "ST",
        "STITCH",
        "CH",
        "SP",
        "CH_SP",
        "CLOSE",
        "REP_FROM",
        "REP",
    ) and (follows in ("COMMA", "SEMI", "STOP", "OPEN", "CLOSE", "DASH", "AND"))


#: Several stitches made into one, and several that stand in one place.
_GATHERED = frozenset(
    {"cluster", "cluster_of_two", "treble_cluster", "popcorn", "bobble", "puff", "bean"}
)
_OF_SO_MANY = frozenset({"shell", "fan", "petal"})
_FIRST_OF_ROW = frozenset({"beg", "beginning", "standing", "starting"})


def _is_first_of_row(token: Token) -> bool:
    return token.kind == "WORD" and token.value in _FIRST_OF_ROW


def _is_along_row_ends(tokens: list[Token], at: int, plain: str) -> bool:
    """ "evenly around the row ends": their places, and not around a row."""
    near = [plain[each.start : each.end].lower() for each in tokens[at : at + 2]]
    rows = tokens[at].kind in ("AROUND", "ACROSS") and near[0].endswith(" row")
    return rows and near[1:] in (["ends"], ["edges"])


def _is_of_each(token: Token, plain: str) -> bool:
    """ "the end of each row"."""
    return bool(set(plain[token.start : token.end].lower().split()) & {"each", "every", "ends"})


def _is_of_place(token: Token, plain: str) -> bool:
    """ "in back bump of": the place of the next words."""
    words = plain[token.start : token.end].lower().split()
    return words[0] in ("in", "into") and words[-1] == "of"


#: What leads on to the other side of a chain: "turn to work along the bottom of the chain".
_LEADS_ON = frozenset({"CONT", "TURN", "WORK", "TO", "AND", "THEN"})


def _other_side(tokens: list[Token], at: int) -> int:
    """Where words end that lead on to the other side of the chain; there no row is turned."""
    if tokens[at].kind not in ("CONT", "TURN", "WORK"):
        return 0
    end = at + 1
    while end < min(at + 5, len(tokens)) and (
        tokens[end].kind in _LEADS_ON or tokens[end].value == "back"
    ):
        end += 1
    return end if end < len(tokens) and tokens[end].kind == "OTHER_SIDE" else 0


def _is_all(tokens: list[Token], at: int, plain: str) -> bool:
    """ "in all sts", "in all 6 sts": in each of them, and no total."""
    if tokens[at].kind != "TOTAL":
        return False
    word = " ".join(plain[tokens[at].start : tokens[at].end].lower().split())
    follows = [each.kind for each in tokens[at + 1 : at + 3]]
    if follows[:1] == ["NUM"]:
        follows = follows[1:]
    return word == "in all" and follows[:1] in (["ST"], ["STITCH"], ["CH"], ["SP"], ["CH_SP"])


def _is_named_stitch(tokens: list[Token], at: int, plain: str) -> bool:
    """ "3-dc cluster", "5-dc shell": what it is made of stands before it."""
    window = tokens[at : at + 3]
    if _kinds(window) != "NUM STITCH STITCH":
        return False
    tight = plain[window[0].end : window[0].end + 1] == "-"
    key = str(window[2].value)
    return key in _GATHERED or (tight and key in _OF_SO_MANY)


def _is_sign(tokens: list[Token], at: int, plain: str) -> bool:
    """ "(sc, inc) * 6"; "(X, V) x 8" where X is a stitch."""
    if tokens[at].kind not in ("STAR", "STITCH"):
        return False
    near = [each.kind for each in tokens[max(0, at - 1) : at + 2]]
    letter = plain[tokens[at].start : tokens[at].end].lower() == "x"
    return near == ["CLOSE", "STAR", "NUM"] or (letter and near == ["CLOSE", "STITCH", "NUM"])


def _row_ref(tokens: list[Token], at: int) -> tuple[Token, int] | None:
    """ "Rows 2 and 3", "Rnds 8-15", "Rnds 2, 3 and 4": the first and the last of them."""
    if at and tokens[at].kind == "ORD" and tokens[at - 1].kind in ("REP", "AS"):
        return _nth_rows(tokens, at)
    kinds = [each.kind for each in tokens[at : at + 2]]
    bare = at > 0 and tokens[at - 1].kind == "REP" and kinds[:1] == ["NUM"] and (
        [each.kind for each in tokens[at + 1 : at + 3]] in (["PLUS", "NUM"], ["AND", "NUM"], ["RANGE", "NUM"])
    )  # fmt: skip
    if not bare and (kinds != ["ROWS", "NUM"] or _is_count(tokens, at + 1)):
        return None
    found = [tokens[at if bare else at + 1]]
    end = at + 1 if bare else at + 2
    while True:
        if not bare and _kinds(tokens[end : end + 2]) == "ROWS NUM" and end == at + 2:
            found.append(tokens[end + 1])  # "R3-R6"
            end += 2
        elif not bare and _kinds(tokens[end : end + 3]) in ("AND ROWS NUM", "DASH ROWS NUM"):
            found.append(tokens[end + 2])  # "R3 and R4"
            end += 3
        elif not (
            end + 1 < len(tokens)
            and tokens[end].kind in ("AND", "DASH", "RANGE", "TO", "THROUGH", "COMMA", "PLUS")
            and tokens[end + 1].kind == "NUM"
            and not _is_count(tokens, end + 1)
        ):
            break
        else:
            found.append(tokens[end + 1])
            end += 2
    numbers = [each.value.values[0] for each in found if isinstance(each.value, Numbers)]
    span = (tokens[at].start, found[-1].end)
    return Token("ROW_REF", *span, (numbers[0], numbers[-1])), end


def _nth_rows(tokens: list[Token], at: int) -> tuple[Token, int] | None:
    """ "rep 2nd and 3rd rows"."""
    for shape in (["ORD", "AND", "ORD", "ROWS"], ["ORD", "ROWS"]):
        window = tokens[at : at + len(shape)]
        if [each.kind for each in window] == shape:
            rows = (window[0].value, window[-2].value)
            return Token("ROW_REF", window[0].start, window[-1].end, rows), at + len(shape)
    return None


def _is_count(tokens: list[Token], at: int) -> bool:
    """ "rep every 3rd rnd 6 times": the number is not that of a row."""
    if _kinds(tokens[at + 1 : at + 3]) == "ROWS NUM":
        return False  # "R3-R6"
    return at + 1 < len(tokens) and tokens[at + 1].kind in _COUNTED


_COUNTED = frozenset({"TIMES", "MORE", "STITCH", "ST", "ROWS", "CH", "INC", "DEC"})


def _kinds(window: list[Token]) -> str:
    return " ".join(each.kind for each in window)


def _times(window: list[Token], plain: str) -> Token | None:
    kinds = _kinds(window)
    shape = _TIMES.get(kinds)
    if shape is None:
        return None
    at, more, total = shape
    number = window[at]
    span = Span(window[0].start, window[-1].end)
    if number.kind == "OFTEN":
        times = Numbers((int(str(number.value)),), number.span)
    else:
        times = number.value if isinstance(number.value, Numbers) else Numbers((1,), span)
    return Token("NTIMES", span.start, span.end, Times(times, more, total))


_TIMES: Mapping[str, tuple[int, bool, bool]] = {
    "NUM TIMES": (0, False, False),
    "TIMES NUM": (1, False, False),
    "NUM MORE TIMES": (0, True, False),
    "NUM TIMES MORE": (0, True, False),
    "ANOTHER NUM TIMES": (1, True, False),
    "ANOTHER NUM MORE TIMES": (1, True, False),
    "NUM TIMES TOTAL": (0, False, True),
    "NUM TOTAL TIMES": (0, False, True),
    "TOTAL NUM TIMES": (1, False, True),
    "MORE NUM TIMES": (1, True, False),
    "OFTEN": (0, False, False),
    "OFTEN MORE": (0, True, False),
    "OFTEN TOTAL": (0, False, True),
    "NUM MORE TIMES TOTAL": (0, True, False),
    "ANOTHER TIMES": (1, True, False),
    "OFTEN MORE TOTAL": (0, True, False),
    "MORE OFTEN": (1, True, False),
    "MORE TIMES NUM": (2, True, False),
}


def _chain_space(window: list[Token], plain: str) -> Token | None:
    kinds = _kinds(window)
    if kinds in ("NUM SP", "NUM LOOP"):
        # "3-ch sps", "5-ch loop", and not "3 ch sps"
        if plain[window[0].end : window[0].end + 1] != "-":
            return None
        return Token("CH_SP", window[0].start, window[1].end, window[0].value)
    if kinds in (
        "CH NUM SP",
        "NUM CH SP",
        "CH NUM CORNER",
        "CH NUM CORNER SP",
        "CH NUM LOOP",
        "NUM CH LOOP",
    ):
        number = next(each.value for each in window if each.kind == "NUM")
        if kinds.startswith("CH NUM") and "," in plain[window[0].start : window[-1].end]:
            return None
        return Token("CH_SP", window[0].start, window[-1].end, number)
    return None


def _star_repeat(window: list[Token], plain: str) -> Token | None:
    kinds = _kinds(window)
    if kinds not in _STAR_REPEATS:
        return None
    stars = [str(each.value) for each in window if each.kind == "STAR"]
    return Token("REP_FROM", window[0].start, window[-1].end, tuple(stars))


_STAR_REPEATS = frozenset(
    {
        "REP FROM STAR", "REP STAR", "REP FROM STAR TO STAR", "REP BETWEEN STAR AND STAR", "REP STAR TO STAR",
        "REP BETWEEN STAR", "REP BETWEEN STAR STAR", "REP FROM STAR AND STAR", "REP FROM STAR THROUGH STAR",
        "FROM STAR TO STAR", "REP FROM STAR DASH STAR", "REP STAR DASH STAR", "FROM STAR",
        "BETWEEN STAR AND STAR", "REP STAR AND STAR",
    }
)  # fmt: skip


def _together(window: list[Token], plain: str) -> Token | None:
    kinds = _kinds(window)
    if kinds == "STITCH NUM TOG" and isinstance(window[1].value, Numbers):
        places = window[1].value.values[0]
        return Token("TOGETHER", window[0].start, window[-1].end, (window[0].value, places))
    return None


_RULES = (
    (5, _star_repeat, ("REP", "FROM", "BETWEEN")),
    (4, _star_repeat, ("REP", "FROM", "BETWEEN")),
    (3, _star_repeat, ("REP", "FROM", "BETWEEN")),
    (2, _star_repeat, ("REP", "FROM")),
    (4, _times, ("NUM", "ANOTHER")),
    (4, _chain_space, ("CH",)),
    (3, _chain_space, ("CH", "NUM")),
    (3, _together, ("STITCH",)),
    (3, _times, ("NUM", "ANOTHER", "TOTAL", "MORE", "OFTEN")),
    (2, _chain_space, ("NUM",)),
    (2, _times, ("NUM", "TIMES", "ANOTHER", "OFTEN", "MORE")),
    (1, _times, ("OFTEN",)),
)
#: The rules by the kind of the first token, the longest first.
_BY_FIRST = {
    kind: tuple((length, rule) for length, rule, kinds in _RULES if kind in kinds)
    for kind in {kind for _, _, kinds in _RULES for kind in kinds}
}
#: What something may begin with that is put together, or read as another kind; the rest stays.
_BEGIN = frozenset(_BY_FIRST) | {
    "ROWS", "STAR", "WORD", "AROUND", "ACROSS", "LOOPS", "ROW_END", "CONT", "TURN", "WORK", "ORD",
}  # fmt: skip
