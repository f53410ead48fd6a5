"""The sizes a pattern is written for: as it names them, else as many as its brackets hold."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from frogless.proofread.script.brackets import MOST, decimal_list, lists_in
from frogless.proofread.script.model import Part, Span

_LETTER = (
    r"(?:[2-9][ ]?X(?:[LS])?|X{0,5}[SL]|[1-9]X|M|OS|NB"
    r"|(?i:(?:(?:extra|x{1,4})[ -]?){0,3}(?:small|medium|large)|[2-9][ ]?x[ -]?(?:large|small|l)"
    r"|x{1,5}[sl]|[2-9]xl"
    r"|one size|newborn|preemie|infant|baby|toddler|kids?|child(?:ren)?|youth|teen(?:ager)?|(?:adult"
    r"|child|women'?s?|men'?s?|ladies|junior)"
    r"(?:[ ](?:small|medium|large|[sml]\b))?|petite|doll))(?![A-Za-z0-9])"
)  # fmt: skip
_NUMBER = (
    r"(?:\d{1,3}(?:[.]\d)?(?:[ ]?-[ ]?\d{1,3})?[ ]?(?i:months?|mos?\.?|years?|yrs?\.?|t|m|y)?"
    r"(?![A-Za-z0-9]|[.]\d|\s?(?:(?:cm|mm|in|inch)\b|\"|''))"
    r"(?!\s?x\s?\d))"
)  # fmt: skip
_NAME = re.compile(rf"{_LETTER}")
_ANY_NAME = re.compile(rf"{_LETTER}|{_NUMBER}")
_BETWEEN = re.compile(
    r"[ \t\n,;:/()\[\]{}&-]{0,24}(?:(?i:and|or|to)[ ]{1,4})?(?i:(?:adult|size)[ ](?=\S))?"
)
_WORDS = re.compile(
    r"(?i:(?:written |made |comes |given |available )?(?:for|in )?\s?\bsize[sd]?\b)[^\n\dA-Z]{0,40}"
)
#: A table whose first column holds the sizes.
_TABLED = re.compile(r"^[ ]{0,8}sizes?\b[^\n]{0,200}\n", re.IGNORECASE | re.MULTILINE)
#: "Numbers are for S (M, L)": the sizes in the order of the brackets.
_ORDERED = re.compile(
    r"\b(?i:numbers|figures|counts|instructions|directions)\s(?:[a-z]{1,12}\s){0,4}?"
    r"(?:for|as|in order of)\s(?:sizes?\s)?"
)
#: Letters of a part in which it is said.
_SEEN = 4000
_GROUPED = re.compile(
    r"[A-Za-z][\w -]{0,20}?(?:\s?[(\[{][A-Za-z][^()\[\]{}\d\n]{0,80}[)\]}]){1,12}"
    rf"(?!\s?[(\[{{]|\s{{1,2}}{_LETTER}\s?[(\[{{])"
)
_TITLED = re.compile(
    r"\s*(?i:(?:sizes?|us sizes?|to fit)\b)?[ :.=-]{0,30}"
    r"(?:(?i:(?:(?:child(?:ren)?|kids?|bab(?:y|ies)|toddlers?)(?:'s?)?\s)?age[sd]?:?\s)(?=\d))?"
)
#: A width and a length of one thing: no sizes.
_MEASURED = re.compile(
    r"[^\n(,;]{0,20}?\d[\d ./]{0,12}\s?(?:\"|''|in\b|inch|cm\b|mm\b)[^\n(,;]{0,20}?"
    r"\b(?:wide|long|tall|high|deep|across|around|diameter|square|x\s?\d)"
)
#: A line of sizes and no more: "Women's (Men's)".
_LINED = re.compile(
    rf"^[ ]{{0,8}}({_LETTER}(?:[ ]?[(\[,/]?[ ]?{_LETTER}[)\]]?){{1,12}})[ ]{{0,8}}$", re.MULTILINE
)
#: Their sizes are those of hooks, beads and threads, but for lists as long as those of the rows.
_OF_TOOLS = frozenset({"materials", "gauge"})
_BODY = re.compile(
    r"\b(?:to fit|bust|chest|waist|hips?|cm|in|inch(?:es)?|circumference|head|around|foot)\b|\"",
    re.I,
)
_AGES = re.compile(r"\bage[sd]?\b|\b(?:years?|yrs?|months?|mos?)\b", re.IGNORECASE)
_PAIR = re.compile(r"(?<![\d.(])\d{1,4}[ ]?\(\d{1,4}\)[ ](?=[a-z])")
_FROM = re.compile(r"\s{0,2}(?:-|to|through)\s{0,2}$", re.IGNORECASE)
_SCALE = ("XXS", "XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL", "5XL", "6XL")
_SAME = {"XXL": "2XL", "XXXL": "3XL", "2X": "2XL", "3X": "3XL", "4X": "4XL", "5X": "5XL", "SMALL": "S",
         "MEDIUM": "M", "LARGE": "L", "EXTRA SMALL": "XS", "EXTRA LARGE": "XL", "X-SMALL": "XS",
         "X-LARGE": "XL", "2XS": "XXS", "1X": "XL"}  # fmt: skip
_FRONT = ("sizes", "measurements", "title", "about", "notes", "materials", "gauge")

Sizes = tuple[tuple[str, ...], Span | None]
ONE: Sizes = (("",), None)


def sizes_of(plain: str, parts: Sequence[Part]) -> Sizes:
    """The names of the sizes, and where they are named.

    Sizes that only body measures tell of, or only the brackets of the instructions, are called
    "1", "2" and so on.
    """
    brackets = _bracketed(plain, parts)
    for kind in _FRONT:
        for part in parts:
            if part.kind != kind:
                continue
            for span in _places(plain, part):
                named = _named(plain, span, part.kind, brackets)
                if named and (len(named[0]) == brackets or not _is_of_tools(named[0], part.kind)):
                    return named if len(named[0]) > 1 else (("",), named[1])
            begins = plain.rfind("\n", 0, part.body.start) + 1
            for found in _TABLED.finditer(plain, begins, part.body.end):
                end = min(part.body.end, found.end() + _SEEN)
                if named := _entries(plain, found.end(), end):
                    return named
    told = _ordered(plain, parts, brackets) or _lined(plain, parts, brackets)
    return told or ((_counted(brackets), None) if brackets > 1 else ONE)


def _lined(plain: str, parts: Sequence[Part], brackets: int) -> Sizes | None:
    """Sizes on a line by themselves, without the word."""
    for part in parts:
        if part.kind in {"title", "about", "notes", "measurements"}:
            end = min(part.body.end, part.body.start + _SEEN)
            for found in _LINED.finditer(plain, part.heading.start, end):
                named = _run(plain, found.start(1), found.end(1), _NAME, brackets)
                if named and len(named[0]) > 1 and brackets in {0, len(named[0])}:
                    return named
    return None


def _is_of_tools(names: Sequence[str], kind: str) -> bool:
    """Whether names may be sizes of hooks, beads and threads: "size 6/0", "size 7 (1.65 mm)"."""
    numbers = all(each[0].isdigit() for each in names) and len(names) > 1
    return kind in _OF_TOOLS or (numbers and kind != "sizes")


def _ordered(plain: str, parts: Sequence[Part], brackets: int) -> Sizes | None:
    """Sizes that only a sentence on the numbers names."""
    for part in parts:
        end = min(part.body.end, part.body.start + _SEEN)
        for found in _ORDERED.finditer(plain, part.body.start, end):
            named = _run(plain, found.end(), end, _NAME, brackets)
            if named and len(named[0]) == brackets:
                return named
    return None


def _places(plain: str, part: Part) -> Iterator[Span]:
    """Where sizes may be named: in the part of the sizes anywhere, elsewhere behind the word."""
    start, end = part.body.start, min(part.body.end, part.body.start + _SEEN)
    if part.kind == "sizes":
        yield Span(start, end)
        return
    for found in _WORDS.finditer(plain, start, end):
        yield Span(found.end(), end)


def _named(plain: str, span: Span, kind: str, brackets: int) -> Sizes | None:
    at, end = span.start, span.end
    if kind != "sizes":
        form = _ANY_NAME if plain[at : at + 1].isdigit() else _NAME
        return _words(plain, at, end, brackets) or _run(plain, at, end, form, brackets)
    if begun := _TITLED.match(plain, at, end):
        at = begun.end()
    several = decimal_list(plain, at, sizes=2)
    if _MEASURED.match(plain, at, end) and not (several and len(several[0]) > 1):
        return None
    return (
        _entries(plain, at, end)
        or _words(plain, at, end, brackets)
        or _run(plain, at, end, _ANY_NAME, brackets)
        or _searched(plain, at, end, brackets)
    )


def _run(plain: str, at: int, end: int, form: re.Pattern[str], brackets: int) -> Sizes | None:
    """Names one behind the other: "S (M, L) [XL]", "XS/S, M/L", "6-12 (12-18) months"."""
    names: list[str] = []
    between: list[str] = []
    start, stop = at, at
    while len(names) < MOST and (found := form.match(plain, at, end)):
        names.append(found[0].strip())
        stop = found.end()
        gap = _BETWEEN.match(plain, stop, end)
        between.append(gap[0] if gap else "")
        at = gap.end() if gap else stop
    names, between = _merged(names, between)
    if not names:
        return None
    if all(each[0].isdigit() and not each.upper().endswith(("X", "XL", "XS")) for each in names):
        return _numbered(plain, start, end)
    where = Span(start, stop)
    if len(names) == 2 and _FROM.match(between[0]):
        return _scale(names, brackets, where)
    return _joined(names, between), where


def _merged(names: list[str], between: list[str]) -> tuple[list[str], list[str]]:
    """Words of one name put together: "child 4 to 6 years" is one size."""
    kept: list[str] = []
    gaps: list[str] = []
    for name, gap in zip(names, between, strict=True):
        ranged = bool(gaps) and bool(_FROM.match(gaps[-1])) and "\n" not in gaps[-1]
        one = bool(gaps) and gaps[-1] == " "
        numeric = name[0].isdigit() and not name.upper().endswith(("X", "XL", "XS"))
        if kept and ((one and (numeric or len(kept[-1]) > 3)) or (ranged and numeric)):
            kept[-1] += f"{gaps.pop()}{name}"
        else:
            kept.append(name)
        gaps.append(gap)
    return kept, gaps


def _joined(names: list[str], between: list[str]) -> tuple[str, ...]:
    """Names with slashes within them put together, where something else parts them."""
    inner = between[: len(names) - 1]
    if all("/" in each for each in inner) or not any("/" in each for each in inner):
        return tuple(names)
    joined = [names[0]]
    for gap, name in zip(inner, names[1:], strict=True):
        if gap.strip() == "/":
            joined[-1] += f"/{name}"
        else:
            joined.append(name)
    return tuple(joined)


def _scale(names: list[str], brackets: int, where: Span) -> Sizes:
    """All sizes from one to another, when the scale between them has as many as the brackets."""
    first, last = (_SAME.get(each.upper(), each.upper()) for each in names)
    if first in _SCALE and last in _SCALE:
        between = _SCALE[_SCALE.index(first) : _SCALE.index(last) + 1]
        if len(between) > 1 and brackets in {0, len(between)}:
            return between, where
    return (_counted(brackets) if brackets > 1 else tuple(names)), where


def _numbered(plain: str, at: int, end: int) -> Sizes | None:
    """Sizes that are numbers: 34 (36, 38), 2-4 (6-8) years; body measures are no names."""
    line = plain.find("\n", at, end)
    words = plain[at : line if line >= 0 else end]
    names = [each[0].strip() for each in _ANY_NAME.finditer(words)][:MOST]
    read = decimal_list(plain, at, sizes=2)
    if read and len(read[0]) > 1:
        where = Span(at, read[1])
        head = plain[max(0, at - 40) : at].rpartition("\n")[2] + words
        if _BODY.search(head) and not _AGES.search(head):
            return _counted(len(read[0])), where
        return tuple(re.findall(r"\d[\d.]*", plain[at : read[1]])), where
    if len(names) > 1 and re.match(rf"{_NUMBER}[ ]?(?:[(\[/]|,[ ]?{_NUMBER},)", words):
        return tuple(names), Span(at, at + len(words))
    return None


def _words(plain: str, at: int, end: int, brackets: int) -> Sizes | None:
    """Sizes of any name, as many as the brackets hold: "short (regular, long) [longest]"."""
    found = _GROUPED.match(plain, at, end)
    if not found:
        return None
    names = tuple(each.strip() for each in re.findall(r"[A-Za-z][^()\[\]{},;]*", found[0]))
    headed = plain[max(0, at - 40) : at].lower().rstrip(" :=-").endswith("sizes")
    two = brackets < 2 and len(names) == 2 and headed
    return (names, Span(at, found.end())) if len(names) == brackets or two else None


def _entries(plain: str, at: int, end: int) -> Sizes | None:
    """Sizes named line by line: "S: bust 80 cm", "- M (90 cm)"."""
    names: list[str] = []
    stop = at
    for found in re.finditer(
        rf"^[ *+-]{{0,8}}(?:(?i:size)[ ])?({_LETTER}(?:/{_LETTER})?)[ ]{{0,3}}(?=[:=(-]|[ ][ ]|$)[^\n]*",
        plain[at:end],
        re.MULTILINE,
    ):
        if len(names) < MOST and found[1] not in names:
            names.append(found[1].strip())
            stop = at + found.end(1)
    # one behind the other on the first line is no list of lines
    first = plain[at:end].lstrip(" *+-\n").partition("\n")[0]
    if len(names) < 2 or len(list(_NAME.finditer(first))) > 1 + names[0].count("/"):
        return None
    return tuple(names), Span(at, stop)


def _searched(plain: str, at: int, end: int, brackets: int) -> Sizes | None:
    """The first place behind other words where two names or more stand together."""
    for found in _ANY_NAME.finditer(plain, at, end):
        run = _run(plain, found.start(), end, _ANY_NAME, brackets)
        if run and len(run[0]) > 1:
            return run
    return None


def _bracketed(plain: str, parts: Sequence[Part]) -> int:
    """How many numbers the brackets of the instructions mostly hold, 0 where there are none."""
    lengths: Counter[int] = Counter()
    pairs = 0
    for part in parts:
        if part.kind in {"instructions", "finishing"}:
            lengths.update(len(each[0]) for each in lists_in(plain, part.body.start, part.body.end))
            pairs += sum(1 for _ in _PAIR.finditer(plain, part.body.start, part.body.end))
    if lengths:
        return max(lengths.items(), key=lambda each: (each[1], each[0]))[0]
    return 2 if pairs > 1 else 0


def _counted(number: int) -> tuple[str, ...]:
    return tuple(str(each) for each in range(1, number + 1))
