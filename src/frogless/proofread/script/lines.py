"""The lines of a text, and what their look says of them before a word is understood."""

from __future__ import annotations

import re
from typing import NamedTuple

#: Looks of a heading, from the loudest to the quietest. Markdown's has its own level, 1 to 6.
CAPITALS, BOLD, COLON, QUIET = 7, 8, 9, 10

_RULE = re.compile(r"\s*(={3,}|-{3,}|~{3,}|\*{3,}|_{3,}|#{3,})\s*$")
_BULLET = re.compile(r"\s*(?:[-+*•◦▪▫●○■□▸►‣·]|☐|✓|→)\s{1,6}(?=\S)")
_BOLD = re.compile(r"\s*(?:[-+*] )?(?:(\*\*|__)[^*\n]{1,120}\1|\*(?=\S)[^*\n]{1,120}\*)[:.]?\s*$")
#: A heading between strokes or hearts: "--- Strap ---", "~ Strap ~".
_DECKED = re.compile(
    r"\s*(-{2,12}|={2,12}|~{1,12}|_{2,12}|\*{3,12}|[★☆♥♡❤✿❀◆♦✦✧]{1,8})\s?[A-Za-z][A-Za-z0-9 '&()/-]{2,50}?\s?\1\s*$"
)
_BRACKETED = re.compile(r"[(\[{][^()\[\]{}]{0,80}[)\]}]")
_NAMED = re.compile(
    r"((?!SC\b|DC\b|HDC\b|HTR\b|DTR\b)[A-Z][A-Z' -]{2,30}),(?: (?:[a-z]{1,12}|\d{1,2})){1,6}$"
)
_PAGE = re.compile(
    r"\s*(?:-{1,2}\s?\d{1,3}\s?-{1,2}|(?:page|p\.)\s?\d{1,3}(?:\s?(?:/|of)\s?\d{1,3})?|\d{1,3})\s*$",
    re.IGNORECASE,
)
#: A running head with its page: "The Tea Cosy      Page 2 of 2".
_PAGED = re.compile(r"\s{2,}page\s\d{1,3}(?:\s(?:/|of)\s\d{1,3})?\s*$", re.IGNORECASE)
_ROW = re.compile(r"\W{0,4}(?:rnds?|rounds?|rows?|r)\b\.?\s?\d", re.IGNORECASE)
_OWNER = re.compile(r"\s*(?:©|\(c\)\s|copyright\b)", re.IGNORECASE)
_LETTERS_OF = {"=": 1, "*": 1, "#": 1, "-": 2, "~": 3, "_": 3}


class Line(NamedTuple):  # a tuple, as a text may have millions
    """One line.

    Args:
        start, end: without its line end.
        at: its first letter, bullets left out; `end` when there is none.
        indent: blanks before its first letter, a bullet counted as its first letter.
        level: of the heading that it looks like; 0 for none.
        rule: it is drawn, not written: ====.
        bullet: it begins with one.
        boxed: it stands beside a stroke, "| Hint: ..."; `table`: strokes or tabs part its columns.
    """

    start: int
    end: int
    at: int
    indent: int
    level: int = 0
    rule: bool = False
    bullet: bool = False
    boxed: bool = False
    table: bool = False

    @property
    def blank(self) -> bool:
        """Whether nothing is written on it."""
        return self.at >= self.end


def lines_of(text: str, plain: str) -> tuple[Line, ...]:
    """All lines, from the first to the last."""
    shouted = _is_shouted(plain)
    raws, plains = text.split("\n"), plain.split("\n")
    rules = [_rule(raw) for raw in raws]
    lines: list[Line] = []
    start = 0
    for index, (raw, words) in enumerate(zip(raws, plains, strict=True)):
        if not words:
            lines.append(Line(start, start, start, 0))
            start += len(raw) + 1
            continue
        below = rules[index + 1] if index + 1 < len(rules) else 0
        lines.append(_line(start, raw, words, rules[index], below, shouted))
        start += len(raw) + 1
    return tuple(lines)


def _line(start: int, raw: str, words: str, rule: int, below: int, shouted: bool) -> Line:
    end = start + len(words.rstrip())
    if rule or not words.strip():
        return Line(start, end, end, 0, rule=bool(rule))
    indent = len(words) - len(words.lstrip())
    bullet = _BULLET.match(raw)
    at = start + indent
    if bullet:
        indent = len(raw) - len(raw.lstrip())
        # an asterisk that stands in the plain letters too is no bullet
        if "*" in words[: bullet.end()]:
            bullet = None
        else:
            at = (
                start
                + bullet.end()
                + len(words[bullet.end() :])
                - len(words[bullet.end() :].lstrip())
            )
    strokes = raw.count("|") - raw.count("\\|") if "|" in raw else 0
    boxed = strokes == 1 and raw.lstrip().startswith("|")
    return Line(
        start=start, end=end, at=min(at, end), indent=indent,
        level=0 if strokes else _level(raw, words.strip(), below, shouted),
        bullet=bool(bullet), boxed=boxed, table=strokes > 1 or raw.count("\t") > 1,
    )  # fmt: skip


def without_printed(plain: str) -> str:
    """The text with every line blank that belongs to the page, in the middle of a row as well."""
    lines = plain.split("\n")
    for index in _printed(lines):
        lines[index] = " " * len(lines[index])
    return "\n".join(lines)


def _printed(lines: list[str]) -> set[int]:
    """Numbers of the lines that belong to the page: its number, its running head, its owner."""
    written = [index for index, line in enumerate(lines) if line.strip()]
    if not written:
        return set()
    if _ROW.match(lines[written[0]]):
        title = ""  # rows that are alike but for their numbers are no running heads
    else:
        title = _letters(lines[written[0]])
    heads = [each for each in written[1:] if len(title) > 3 and _letters(lines[each]) == title]
    printed = {each for each in written if _PAGE.match(lines[each]) and _stands_alone(lines, each)}
    printed |= {each for each in written[1:] if _OWNER.match(lines[each])}
    for each in heads:
        if len(heads) > 1 or each - 1 in printed or re.search(r"\d", lines[each]):
            printed.add(each)
    return printed | {each for each in written if _PAGED.search(lines[each][-40:])}


def _stands_alone(lines: list[str], index: int) -> bool:
    """A bare number with a blank line beside it, or a word that says it is a page's."""
    if re.search(r"[a-z/-]", lines[index], re.IGNORECASE):
        return True
    beside = [lines[each].strip() for each in (index - 1, index + 1) if 0 <= each < len(lines)]
    return "" in beside


def _letters(line: str) -> str:
    words = re.sub(r"\b(?:page|of|p)\b", "", line[:120].lower())
    return "".join(each for each in words if each.isalpha())


def _rule(raw: str) -> int:
    found = _RULE.match(raw) if raw[:1] in " \t=-~*_#" else None
    return _LETTERS_OF[found[1][0]] if found else 0


def _level(raw: str, words: str, below: int, shouted: bool) -> int:
    hashes = len(raw.lstrip()) - len(raw.lstrip().lstrip("#"))
    if 1 <= hashes <= 6 and raw.lstrip()[hashes : hashes + 1] in {" ", "\t"}:
        return hashes
    if len(words) > 100 or len(words.split()) > 12:
        return 0
    if below and not words.endswith((".", ",", ";")):
        return below
    if not shouted and _is_capitals(words):
        return CAPITALS
    if _DECKED.match(raw):
        return BOLD
    if _BOLD.match(raw) and not words.endswith((".", "!", "?")):
        return BOLD
    if (
        words.endswith(":")
        and words[:1].isalpha()
        and ". " not in words
        and len(words.split()) <= 8
    ):
        return COLON
    return 0


def _is_capitals(words: str) -> bool:
    name = _BRACKETED.sub("", words).strip()
    if named := _NAMED.match(name):
        name = named[1]  # "NOSE, pink", "ARMS, make 2"
    letters = sum(each.isalpha() for each in name)
    if letters < 3 or name != name.upper() or name.endswith((".", ",", ";")):
        return False
    return len(name.split()) <= 8 and "=" not in name


def _is_shouted(plain: str) -> bool:
    """A text all in capitals: they are no look of a heading then."""
    sample = plain[:20_000]
    large = sum(each.isupper() for each in sample)
    small = sum(each.islower() for each in sample)
    return large > 2 * small
