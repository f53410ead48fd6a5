"""The plain letters of a text: as many as it has, each in its place.

What typographers, word processors and Markdown add is taken away, so that the reader meets one
kind of quote, dash, space and digit. An asterisk that marks a repeat stays.
"""

# ruff: noqa: RUF001 - the letters that are replaced look like those that replace them

from __future__ import annotations

import re
import unicodedata

_SAME = {
    '"': "“”„‟″‶«»❝❞〝〞",
    "'": "‘’‚‛′‵´ʹʼ",
    "-": "‐‑‒–—―−﹘﹣⸺⸻⁃",
    " ": "`\t\v\f\u00a0\u00ad\u1680\u180e\u202f\u205f\u3000\u2060\ufeff•◦▪▫●○■□▸►▶‣·✓✔☐☑⚫⬤➤→",
    "*": "∗⁎✱✲✳✻＊",
    "x": "×✕✖",
    ".": "…․",
    "/": "⁄∕",
    "[": "⟦【〔",
    "]": "⟧】〕",
    "(": "❨⟮",
    ")": "❩⟯",
}  # fmt: skip


class _Letters(dict[int, str]):
    """What each letter becomes, found when it is first met."""

    def __missing__(self, code: int) -> str:
        letter = chr(code)
        self[code] = self._plain(letter)
        return self[code]

    def _plain(self, letter: str) -> str:
        kind = unicodedata.category(letter)
        if kind == "Nd":
            return str(unicodedata.digit(letter))
        if 0xFF01 <= ord(letter) <= 0xFF5E:  # fullwidth forms of ASCII
            return chr(ord(letter) - 0xFEE0)
        # spaces of every width, controls, marks of direction, lone halves of a pair
        return " " if kind in {"Zs", "Zl", "Zp", "Cc", "Cf", "Cs"} else letter


def _letters() -> _Letters:
    table = _Letters({ord("\n"): "\n"})
    table.update({code: chr(code) for code in range(0x20, 0x7F)})
    table.update({ord(each): plain for plain, many in _SAME.items() for each in many})
    return table


_LETTERS = _letters()

_ESCAPED = re.compile(r"\\(?=[\\`*_{}\[\]()#+.!>~|-])")
_HASHES = re.compile(r"^[ ]{0,3}#{1,6}(?=[ ]|$)|(?<=[ ])#{1,6}[ ]*$", re.MULTILINE)
_QUOTED = re.compile(r"^[ ]{0,3}(?:>[ ]?){1,4}", re.MULTILINE)
_BREAK = re.compile(r"<br[ ]?/?>", re.IGNORECASE)
_UNDERSCORES = re.compile(r"(?<![A-Za-z0-9])_{1,3}(?=[^\s_])|(?<=[^\s_])_{1,3}(?![A-Za-z0-9])")
_LINK = re.compile(r"\[([^\[\]\n]{1,200})\](\((?:https?:|mailto:|#|/)[^()\s]{0,300}\))")
_TABLE_RULE = re.compile(r"^[ ]{0,8}\|?(?:[ ]*:?-{2,}:?[ ]*\|){1,40}[ :-]*$", re.MULTILINE)
#: A row of a table that begins with its number and ends with its count: "| 3 | inc | 24 |".
_TABLE_ROW = re.compile(
    r"^([ ]{0,8}\|[ ]*(?:R|Rnd|Row|Round)?[ ]?\d{1,4}(?:[ ]?-[ ]?\d{1,4})?[ ]*\|[^|\n]{1,2000})\|"
    r"([ ]*[(\[]?\d{1,5}(?:[ ][a-z][a-z\d-]{0,8}){0,2}(?:[ ]?[+,][ ]?\d{1,5}(?:[ ][a-z][a-z\d-]{0,8}){1,3}){0,4}"
    r"[)\]]?[ ]*)\|",
    re.MULTILINE | re.IGNORECASE,
)
_STARS = re.compile(r"\*{2,3}")
_REFERS = re.compile(r"(?:from|to|between|at|of|last|and|through|btw|rep|repeat)[ ]{0,4}$", re.I)
#: A count at a line's end in slanted letters: "*(36 sts)*", "- *36 sts*".
_SLANTED_COUNT = re.compile(
    r"\*(\(\s?\d[^*\n]{0,200}\)|(?<=[-.)] \*)\d{1,5}(?: [a-z]{1,8}){0,3}\.?)\*(?=\s*$)"
)
#: A wave between words parts them as a dash does.
_WAVE = re.compile(r"(?<=[ ])~(?=[ ])")
#: Nothing for the first sizes, "- (-, 24, 26)": no dash between clauses.
_NOTHING = re.compile(r"(?<=[\s(\[])-(?=[ ]?[(\[][ ]?-[ ]?,[-, \d]{1,60}[)\]])")
_STAR_ITEM = re.compile(r"[ ]{0,12}\*(?=[ ])")


def plain_of(text: str) -> str:
    """The text in plain letters, of the same length."""
    plain = text.translate(_LETTERS)
    for marks in (_ESCAPED, _HASHES, _QUOTED, _BREAK, _UNDERSCORES, _TABLE_RULE):
        plain = marks.sub(_blank, plain)
    plain = _LINK.sub(lambda found: f" {found[1]} {' ' * len(found[2])}", plain)
    plain = _TABLE_ROW.sub(lambda found: f"{found[1]}-{found[2]} ", plain)
    plain = _WAVE.sub("-", _NOTHING.sub("0", _without_dots(plain)))
    return _without_stars(plain).replace("|", " ")


#: Abbreviations that old British patterns set with a stop: "1 d.c. into 2nd ch. from hook".
_POINTED = re.compile(
    r"\b(?:([dsht]|tr|dbl|sl|l)\.[ ]?(c|t|tr|s|st)|(?:h\.d\.c)|(?:tr|ch|ss|dc|htr|dtr|sp|sps|rep|st|sts|chs|lp|lps"
    r"|beg|foll|patt|cont|tog|gr|grs|cl|blk|blks|rem|alt))\.(?=[ ]?(?-i:[a-z\d(*,;:)\]]))",
    re.IGNORECASE,
)
#: Stitches, with a stop and without: what tells how a pattern sets its abbreviations.
_STITCHES = re.compile(r"\b(?:(?:[dh]\.[ ]?)?(?:tr|c)|ch|ss|dc|htr|dtr)\b(\.?)", re.IGNORECASE)


def _without_dots(plain: str) -> str:
    """The stops of abbreviations blanked, where most of them have one: elsewhere they end sentences."""
    pointed = [bool(found[1]) for found in _STITCHES.finditer(plain)]
    if 2 * sum(pointed) <= len(pointed):
        return plain
    return _POINTED.sub(_shut, plain)


def _shut(found: re.Match[str]) -> str:
    letters = re.sub(r"[. ]", "", found[0])
    return letters.ljust(len(found[0]))


def _blank(found: re.Match[str]) -> str:
    return " " * len(found[0])


def _without_stars(plain: str) -> str:
    """Bullets and emphasis made of asterisks are blanked; those of repeats stay."""
    if "*" not in plain:
        return plain
    lines = plain.split("\n")
    for index, line in enumerate(lines):
        if "*" in line and _is_item(lines, index):
            lines[index] = line = line.replace("*", " ", 1)
        if "**" in line:
            lines[index] = line = _without_bold(line)
        if line.count("*") == 2 and _is_slanted(line):
            lines[index] = line = line.replace("*", " ")
        if line.rstrip().endswith("*") and line.count("*") % 2 == 0:
            lines[index] = _SLANTED_COUNT.sub(r" \1 ", line)
    return "\n".join(lines)


def _is_item(lines: list[str], index: int) -> bool:
    """A star and a space begin a line of a list, unless another star says it is repeated."""
    if not _STAR_ITEM.match(lines[index]) or _goes_on(lines, index):
        return False
    if "*" in lines[index].replace("*", " ", 1).replace("**", ""):
        return False
    for other in range(index + 1, min(index + 12, len(lines))):
        if not lines[other].strip():
            return True
        if "*" in lines[other]:
            return bool(_STAR_ITEM.match(lines[other])) and not _goes_on(lines, other)
    return True


def _goes_on(lines: list[str], index: int) -> bool:
    """Whether the star at a line's start belongs to the words on the line above: "rep from"."""
    return index > 0 and bool(_REFERS.search(lines[index - 1][-20:]))


def _without_bold(line: str) -> str:
    """Pairs of ** around words are blanked; "rep from ** to **" is left as it is."""
    places = list(_STARS.finditer(line))
    if any(_REFERS.search(line[max(0, each.start() - 16) : each.start()]) for each in places):
        return line
    letters = list(line)
    for opens, closes in zip(places[::2], places[1::2], strict=False):
        inside = line[opens.end() : closes.start()]
        if inside.strip() and (not inside[0].isspace() or line.strip()[-2:] == "**"):
            for each in (opens, closes):
                letters[each.start() : each.end()] = " " * len(each[0])
    return "".join(letters)


def _is_slanted(line: str) -> bool:
    """A line wholly between two stars: emphasis, as no group of stitches stands so alone."""
    words = line.strip().rstrip(".:")
    inside = words[1:-1]
    return (
        words.startswith("*")
        and words.endswith("*")
        and not inside[:1].isspace()
        and not re.search(r"\brep|\d+ (?:sc|dc|hdc|tr|st)", inside)
    )
