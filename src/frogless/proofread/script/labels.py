"""What rows call themselves: "Rnd 5:", "Rows 3–6 (RS) -", "Row 2 and all even rows:", "1st row"."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Literal

from frogless.proofread.script.model import MOST_NUMBERS, Label, Span

#: The greatest number of a row that is taken as one.
GREATEST = 99_999

_ROW = r"(?:rows?|rnds?|rounds?|rds?)"
_ORDINAL = (
    r"(?:\d{1,5}(?:st|nd|rd|th)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)"
)
_TO = r"\s{0,2}(?:-|to|through|thru|until)\s{0,2}"
# Longer than any row has: a number that is refused is still the number of a row.
_NUMBER = r"\d{1,4000}"
_RANGE = rf"{_NUMBER}(?:{_TO}(?:(?:{_ROW}|r)\.?\s?)?{_NUMBER})?"
_AND = rf"\s{{0,2}}(?:,\s{{0,2}}(?:and|&)|,|;|/|and|&|\+)\s{{0,2}}(?:{_ROW}\s{{0,2}})?"
_NUMBERS = rf"{_RANGE}(?:{_AND}{_RANGE}){{0,40}}"
_ONWARD = (
    r"\s{0,2},?\s{0,2}(?:and|&|,)\s{0,2}(?:(?:then|on)\s)?(?:for\s)?(?P<onward>(?:all|every|each)\s[a-z -]{0,40}?)"
    rf"{_ROW}(?:\s(?:thereafter|after|to|through|until|up\sto)\s?[\d]{{0,5}})?"
)
_NAME = r"(?P<name>[a-z][a-z'/]{1,14}(?:[ -]{1,2}[a-z][a-z'/]{0,14}){0,3})"
_BEGINNING = r"(?:foundation|setup|set-up|set\sup|base|starting|beginning)"

#: Numbers of all sizes: "13 (15, 17)", "9/10/11".
_LIST = r"\d{1,5}(?:\s?[(\[]\d{1,5}(?:,\s?\d{1,5}){0,20}[)\]]){1,6}|\d{1,5}(?:\s?/\s?\d{1,5}){1,20}"
_FORMS = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (
        # "Rounds 7 (8, 9) - 13 (15, 17)", of other rows in each size
        rf"(?P<unit>{_ROW})\.?\s(?P<froms>{_LIST}){_TO}(?P<tos>{_LIST}|\d{{1,5}})(?![\w%])",
        # so many in each size: "Next 9 (10, 11) rnds"
        rf"(?P<next>next|following|foll)\s(?P<each>{_LIST})\s(?P<unit>{_ROW})(?![\w%])",
        # "Rnds 8-15", "R5", "Row 2 and all even rows", "Rnds 2, 4 and 6"
        rf"(?P<unit>{_ROW}|r)\.?\s{{0,2}}(?:nos?\.?\s?|\#\s?)?(?P<numbers>{_NUMBERS})(?:{_ONWARD})?(?![\w%])",
        # "R5 - 6 sc": the dash ends the label
        rf"(?P<unit>{_ROW}|r)\.?\s{{0,2}}(?P<numbers>\d{{1,12}})(?![\w%])",
        # by ordinals: "1st row", "2nd and 4th rnds"
        rf"(?P<ordinals>{_ORDINAL}(?:(?:{_TO}|{_AND}){_ORDINAL}){{0,20}})"
        rf"(?:\s(?P<unit>{_ROW}))?(?:{_ONWARD})?(?![\w])",
        # "Next 4 rows", "Next row", "Increase rnd", "Edging rnd 1", "Joining round"
        rf"(?:(?P<next>next|following|foll)\s(?P<times>\d{{1,6}})|{_NAME})[ -]{{1,2}}(?P<unit>{_ROW})"
        rf"(?:\s{{0,2}}(?P<numbers>{_NUMBERS}))?(?![\w%])",
        # by name: "Foundation (RS)", "Foundation chain", "Set-up"
        rf"(?P<name>{_BEGINNING})(?:\s(?:chain|ch))?(?P<unit>)(?![\w])",
    )
)  # fmt: skip
_LISTED = re.compile(
    rf"(?P<numbers>{_NUMBER}(?:[.)]?{_TO}{_NUMBER})?)(?P<end>[.):](?=\s)|\s-(?=\s))", re.IGNORECASE
)
_TABLED = re.compile(rf"({_NUMBER}(?:{_TO}{_NUMBER})?)\s{{2,200}}(?=\S)", re.IGNORECASE)
_ASIDE = re.compile(
    r"\s{0,2},?\s{0,2}(?:\(([^()\n]{1,80})\)|\[([^\[\]\n]{1,80})\]|(RS|WS)(?![\w]))"
)
_END = re.compile(
    r"[ ]{0,4}(?::|;(?=\s)|\.-{1,2}(?=\s|\w|[*(\[])|\.(?!\d)(?=\s|$|[^\d\s])|\)(?=\s)|-{1,2}(?=\s|$|[a-z*(\[]))",
    re.IGNORECASE,
)
_NOTHING = re.compile(r"\s{0,200}$")
_STITCHED = r"ch|sc|hdc|dc|htr|tr|dtr|ss|inc|dec"
_STITCHES = re.compile(
    r"[ ]{1,6}(?:[*\[(]|\d|(?:ch|sc|dc|hdc|htr|tr|dtr|esc|fsc|fdc|sl|ss|sk|skip|miss|inc|dec|mr|mc"
    r"|magic|beg|join|work|turn|in|with|"
    r"repeat|rep|as|make|\w{2,6}\d?tog|fp\w{1,3}|bp\w{1,3}|blo|flo)(?![a-z]))", re.IGNORECASE
)  # fmt: skip
_WORKED = re.compile(rf"\s{{1,2}}(?:[*\[(]|(?:\d{{1,3}}\s)?(?:{_STITCHED})\b)", re.IGNORECASE)
#: Behind the side of a row, "Row 1 (RS) Beginning in ...": a sentence begins.
_SENTENCE = re.compile(r"[ ]{1,6}(?:[A-Z]|[*\[(]|\d)")
#: The color that a row is worked in: "R2. (yellow) Ch 3, ...", "Rnd 3: (with MC) sc ...".
_COLOURED = re.compile(
    r"\s{0,2}[(\[](?!(?:sc|dc|hdc|htr|tr|dtr|inc|dec|ch|st|sts|sk|skip|miss|fan|shell|picot|puff|bobble|popcorn|cluster"
    r"|corner|cl|pc|bo)\b)(?:(?:with|in|using|yarn|colou?r)\s)?(?:[a-z]{3,12}(?:\s[a-z]{3,12})?|mc|cc\d?|[a-e])[)\]]"
    r"[,:;]?(?=\s{1,2}(?:ch|join|beg|with|sc|dc|hdc|htr|tr|\d{1,3}\s?(?:ch|sc|dc|hdc|htr|tr)|magic|mr|[*])\b)",
    re.IGNORECASE,
)
_WORDS = {
    "set-up": "setup", "set up": "setup", "base": "foundation", "starting": "foundation",
    "beginning": "foundation", "inc": "increase", "increasing": "increase", "dec": "decrease",
    "decreasing": "decrease", "following": "next", "foll": "next", "final": "last",
}  # fmt: skip
_COUNTED = (
    "first",
    "second",
    "third",
    "fourth",
    "fifth",
    "sixth",
    "seventh",
    "eighth",
    "ninth",
    "tenth",
)
#: Words that make no name of a row: "Repeat last row", "Work as for Row 3".
_NO_NAME = frozenset(
    {
        "rep", "repeat", "reps", "work", "working", "worked", "as", "of", "from", "to", "and", "for", "in", "on", "at",
        "until", "till", "after", "before", "every", "all", "each", "this", "that", "these", "those", "see", "follow",
        "through", "with", "or", "is", "are", "by", "per", "between", "the", "a", "an", "than", "also", "over", "into",
        "end", "ending", "continue", "cont", "complete", "like", "same", "alternate", "other", "more", "ch",
        "join", "turn", "if", "when", "while", "note",
    }
)  # fmt: skip
_REFERS = frozenset(
    {
        "rep", "repeat", "reps", "repeating", "as", "of", "from", "to", "and", "for", "in", "on", "at", "until", "till",
        "after", "before", "every", "all", "each", "this", "that", "these", "those", "see", "follow", "following",
        "through", "thru", "with", "or", "by", "per", "between", "the", "a", "an", "than", "over", "into", "ending",
        "end", "like", "same", "work", "working", "worked", "last", "next", "rows", "rnds", "row", "rnd", "rounds",
        "round", "pattern", "patt", "finish", "end's", "since", "alternate", "alternating", "&", "across",
    }
)  # fmt: skip
_WORD_BEFORE = re.compile(r"([A-Za-z&']+)[\s]{0,12}$")


@dataclass(frozen=True, slots=True)
class Found:
    """A label, where its row's text begins, and how plainly it is one.

    Args:
        firm: it ends with a colon or a dash, or with the side that faces; "Row 2." and "Row 2 ch 3"
            may as well be words of a sentence.
        dashed: it ends with a dash; `other`: of "Rnd 1-2 sc in next st" that may be Rnd 1 with 2 sc
            behind it, that reading.
    """

    label: Label
    body: int
    firm: bool
    dashed: bool = False
    other: Found | None = None


def label_at(plain: str, at: int, line_end: int) -> Found | None:
    """The label that begins there; None when the words there are no label."""
    for form in _FORMS:
        found = form.match(plain, at, line_end)
        if found and (read := _finished(plain, found, line_end)):
            return _doubted(plain, read, line_end)
    return None


_DASHED = re.compile(
    rf"(?:row|rnd|round|rd|r)\.?\s{{0,2}}(\d{{1,5}})\s?-{{1,2}}\s?(?=\d{{1,3}}\s?(?:{_STITCHED})\b)",
    re.IGNORECASE,
)


def _doubted(plain: str, read: Found, line_end: int) -> Found:
    """The label with its other reading: "Rnd 1-2 sc in next st" is Rnds 1 and 2, or Rnd 1."""
    shut = _DASHED.match(plain, read.label.span.start, line_end)
    if not shut or len(read.label.numbers) < 2 or read.firm:
        return read
    label = replace(read.label, span=Span(shut.start(), shut.end(1)), numbers=(int(shut[1]),))
    return replace(read, other=Found(label, shut.end(), firm=True, dashed=True))


def listed_at(plain: str, at: int, line_end: int) -> Found | None:
    """The number of a list that begins there: "5.", "5)", "5-8:". Neighbors tell if it is a row."""
    found = _LISTED.match(plain, at, line_end)
    if not found:
        return None
    label = Label(Span(at, found.end()), numbers=numbers_of(re.sub(r"[.)]", "", found["numbers"])))
    return Found(label, found.end(), firm=True) if label.numbers else None


def tabled_at(plain: str, at: int, line_end: int) -> Found | None:
    """The number in the first column of a table of rows: a gap parts it from what is worked."""
    found = _TABLED.match(plain, at, line_end)
    if not found or not _STITCHES.match(plain, found.end() - 1, line_end):
        return None
    return Found(
        Label(Span(at, found.end(1)), numbers=numbers_of(found[1])), found.end(), firm=True
    )


def refers(plain: str, at: int) -> bool:
    """Whether the word before makes "Row 2" a part of its sentence: "rep Row 2", "as Row 2"."""
    before = plain[max(0, at - 40) : at]
    if before.rstrip().endswith((":-", ".-", ":--")):
        return False  # "as follows:-"
    if before.rstrip()[-1:] in {",", "(", "[", "-", "/", "&"}:
        return True
    word = _WORD_BEFORE.search(before)
    return word is not None and word[1].lower() in _REFERS


def numbers_of(words: str) -> tuple[int, ...]:
    """The numbers of "2, 4 and 6-9"; of a range too long to keep, the first ones and the last.

    >>> numbers_of("2, 4 and 6-9")
    (2, 4, 6, 7, 8, 9)
    """
    kept: list[int] = []
    for found in re.finditer(
        rf"({_NUMBER})(?:{_TO}(?:(?:{_ROW}|r)\.?\s?)?({_NUMBER}))?", words, re.IGNORECASE
    ):
        first, last = int(found[1]), int(found[2] or found[1])
        if max(first, last) > GREATEST:
            first, last = min(first, GREATEST), min(last, GREATEST)
        upward = range(first, last + 1) if last >= first else range(first, last - 1, -1)
        room = MOST_NUMBERS - len(kept)
        if len(upward) > room > 0:
            kept.extend((*upward[: room - 1], last))
        elif room > 0:
            kept.extend(upward)
    return tuple(kept)


_DIGITS = re.compile(r"\d{1,5}")


def _listed(words: str) -> tuple[int, ...]:
    return tuple(int(each) for each in _DIGITS.findall(words))


def _finished(plain: str, found: re.Match[str], line_end: int) -> Found | None:
    groups = found.groupdict()
    name, numbers = _name(groups.get("name") or groups.get("next") or ""), _numbers(groups)
    if name is None or numbers is None or not (groups.get("unit") or groups.get("onward") or name):
        return None
    end, asides = _asides(plain, found.end(), line_end)
    closed = _END.match(plain, end, line_end)
    if not numbers and name not in _OFTEN and _HYPHEN.match(plain, end, line_end):
        return None  # "Bandstand Round-Yoke Pullover"
    firm = bool(closed) and closed[0].strip() in {":", "-", "--", ".-", ".--"}  # type: ignore[index]
    alone = bool(_NOTHING.match(plain, end, line_end))
    plural = (groups.get("unit") or "").lower().endswith("s")
    close = re.fullmatch(r"\d+-\d+", groups.get("numbers") or "")
    sided = bool(asides and _SIDE.match(asides[-1]) and _SENTENCE.match(plain, end, line_end))
    sided = sided and bool(numbers or name == "foundation")
    bare = (len(numbers) == 1 or (bool(numbers) and (plural or close))) and bool(
        _STITCHES.match(plain, end, line_end)
    )
    if not (
        firm
        or (numbers and closed)
        or (name == "next" and closed and _WORKED.match(plain, closed.end(), line_end))
        or (
            alone
            and (
                numbers
                or (
                    name
                    and (
                        groups.get("unit")
                        or asides
                        or (groups.get("name") or "").lower() == "foundation"
                    )
                )
            )
        )
        or bare
        or sided
    ):
        return None
    if name in _SIDES:
        name, asides = "", [name, *asides]
    firsts, lasts = _of_sizes(numbers, asides)
    if groups.get("froms"):
        firsts, lasts = _listed(groups["froms"] or ""), _listed(groups["tos"] or "")
        lasts = lasts * len(firsts) if len(lasts) == 1 else lasts
    each = _listed(groups.get("each") or "")
    sides, rows, called = _told([each for each in asides if not (lasts and _SIZED.match(each))])
    body = closed.end() if closed else end
    if colour := _COLOURED.match(plain, body, line_end):
        body = colour.end()
    label = Label(
        span=Span(found.start(), end),
        kind=_kind(groups.get("unit") or found[0]),
        numbers=numbers,
        name=name or (called if not numbers or called else ""),
        sides=sides,
        onward=_onward(groups.get("onward") or "", numbers),
        rows=rows or (each[0] if each else _times(groups.get("times") or "")),
        lasts=lasts,
        firsts=firsts,
        rows_of_sizes=each,
    )
    dashed = bool(closed) and closed[0].strip().startswith("-")  # type: ignore[index]
    return Found(label, body, firm or sided, dashed)


def _name(words: str) -> str | None:
    """The name of a row; None when these words make none."""
    name = " ".join(words.lower().split())
    if not name:
        return ""
    if name in _COUNTED:
        return None
    if any(word in _NO_NAME for word in re.split(r"[ -]+", name)):
        return None
    return _WORDS.get(name, name)


#: Names that a dash may follow without a blank: "Next rnd-sc in each st".
_OFTEN = frozenset(
    {"next", "foundation", "setup", "last", "increase", "decrease", "edging", "joining"}
)
_HYPHEN = re.compile(r"-[a-z]", re.IGNORECASE)
_SIDES = frozenset({"rs", "ws", "right side", "wrong side"})


def _numbers(groups: dict[str, str | None]) -> tuple[int, ...] | None:
    if froms := groups.get("froms"):
        first, last = (int(_DIGITS.findall(groups[key] or "")[0]) for key in ("froms", "tos"))
        return numbers_of(f"{first}-{last}") if froms and first <= last else None
    if numbers := groups.get("numbers"):
        return numbers_of(numbers) or None
    ordinals = (groups.get("ordinals") or "").lower()
    for number, word in enumerate(_COUNTED, start=1):
        ordinals = re.sub(rf"\b{word}\b", str(number), ordinals)
    return numbers_of(re.sub(r"(?<=\d)(?:st|nd|rd|th)", "", ordinals))


def _asides(plain: str, at: int, line_end: int) -> tuple[int, list[str]]:
    """What stands in brackets behind a label, and where that ends."""
    asides: list[str] = []
    while len(asides) < 4 and (found := _ASIDE.match(plain, at, line_end)):
        words = found[1] or found[2] or found[3]
        if not _describes(words, plain[found.end() : min(line_end, found.end() + 40)]):
            break
        asides.append(words)
        at = found.end()
    return at, asides


_COUNT = re.compile(r"(\d{1,6})\s(?:rows?|rnds?|rounds?)(?:\stotal|\sin\sall)?$", re.IGNORECASE)
_SIDE = re.compile(
    r"(?:(RS|right side)|(WS|wrong side))(?: row| rnd| facing)?(?![a-z])", re.IGNORECASE
)


#: Numbers of rows for the other sizes: "42, 44", "R3-R7, R3-R8", "23-62".
_SIZED = re.compile(
    r"r?\d{1,5}(?:-r?\d{1,5})?(?:\s?[,;/:]\s?r?\d{1,5}(?:-r?\d{1,5})?){0,20}$", re.IGNORECASE
)


def _of_sizes(
    numbers: tuple[int, ...], asides: list[str]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The first and the last number for each size: "Rows 2-40 (42, 44):", "Row 5 (7):"."""
    sized = [each for each in asides if _SIZED.match(each)]
    if not (numbers and sized) or sized[0] != asides[0]:
        return (), ()
    ends = [(int(a), int(b or 0)) for each in sized for a, b in _ENDS.findall(each)]
    single = len(numbers) == 1
    firsts = (numbers[0], *(a if b or single else numbers[0] for a, b in ends))
    lasts = (numbers[-1], *(b or a for a, b in ends))
    return (firsts if len(set(firsts)) > 1 else ()), lasts


_ENDS = re.compile(r"(\d{1,5})(?:-r?(\d{1,5}))?", re.IGNORECASE)


def _describes(words: str, after: str) -> bool:
    """Whether a bracket behind a label tells about the row, rather than to work something."""
    if _COUNT.match(words) or _SIDE.match(words):
        return True
    if _SIZED.match(words) and re.match(r"\s?\.\s", after):
        return True
    return bool(re.match(r"\s{0,2}[:(\[]|\s{1,2}-\s|\.?\s*$", after))


def _told(asides: list[str]) -> tuple[tuple[Literal["RS", "WS"], ...], int, str]:
    """Sides, number of rows, and name, as the brackets say them."""
    sides: list[Literal["RS", "WS"]] = []
    rows, name = 0, ""
    for words in asides:
        if count := _COUNT.match(words):
            rows = int(count[1])
        elif _SIDE.search(words):
            sides += ["RS" if found[1] else "WS" for found in _SIDE.finditer(words)]
        else:
            plain = re.sub(rf"[ -]?{_ROW}$", "", " ".join(words.lower().split()))
            name = name or _WORDS.get(plain, plain)
    return tuple(sides[:MOST_NUMBERS]), rows, name


def _kind(unit: str) -> Literal["row", "round", ""]:
    letters = unit.lower()
    if letters.startswith("row") or " row" in letters:
        return "row"
    # "R5" is a row and a round alike
    return "round" if re.search(r"(?:^|\s)(?:rnd|round|rd)", letters) else ""


def _onward(words: str, numbers: tuple[int, ...]) -> Literal["", "even", "odd", "all"]:
    if not words:
        return ""
    for parity in ("even", "odd"):
        if parity in words.lower():
            return parity
    if re.search(r"other|alt|2nd|second|RS|WS|right|wrong", words, re.IGNORECASE):
        return "odd" if numbers and numbers[-1] % 2 else "even"
    return "all"


def _times(words: str) -> int:
    return min(int(words), GREATEST) if words else 0
