"""The numbers that a word processor sets before the paragraphs of a list, and which are headings.

Source: ECMA-376, Office Open XML, part 1, 17.9 (numbering) and 17.3.1.19 (numPr).
"""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import dataclass

from docx.document import Document
from docx.oxml.ns import qn
from docx.oxml.xmlchemy import BaseOxmlElement as Element

_VALUE = qn("w:val")
_ROMAN = (
    (1000, "m"), (900, "cm"), (500, "d"), (400, "cd"), (100, "c"), (90, "xc"), (50, "l"), (40, "xl"),
    (10, "x"), (9, "ix"), (5, "v"), (4, "iv"), (1, "i"),
)  # fmt: skip
_HEADING = re.compile(r"heading ([1-6])", re.IGNORECASE)
LARGEST = 99_999
DEEPEST_STYLE = 12
"""Styles that are based on styles."""


@dataclass(frozen=True, slots=True)
class _Level:
    form: str
    text: str
    start: int
    after: str


_PLAIN = _Level("bullet", "", 1, "tab")


class Numbering:
    """The lists of one document, counted as its paragraphs come by."""

    def __init__(self, document: Document) -> None:
        self._styles = {
            style.get(qn("w:styleId")): style
            for style in document.styles.element.iterchildren(qn("w:style"))
        }
        self._chains: dict[str, list[Element]] = {}
        self._abstract: dict[str, str] = {}
        self._levels: dict[str, dict[int, _Level]] = {}
        self._restarts: dict[tuple[str, int], int] = {}
        self._counts: defaultdict[str, dict[int, int]] = defaultdict(dict)
        root = next(
            (
                part.element
                for part in (
                    one.target_part for one in document.part.rels.values() if not one.is_external
                )
                if str(part.partname).endswith("numbering.xml")
            ),
            None,
        )
        if root is not None:
            self._learn(root)

    def _learn(self, root: Element) -> None:
        for one in root.iterchildren(qn("w:abstractNum")):
            self._levels[one.get(qn("w:abstractNumId"))] = {
                _number(level.get(qn("w:ilvl"))): _level(level)
                for level in one.iterchildren(qn("w:lvl"))
            }
        for one in root.iterchildren(qn("w:num")):
            name = one.get(qn("w:numId"))
            self._abstract[name] = _child(one, "w:abstractNumId")
            for override in one.iterchildren(qn("w:lvlOverride")):
                if start := _child(override, "w:startOverride"):
                    self._restarts[name, _number(override.get(qn("w:ilvl")))] = _number(start)

    def heading(self, paragraph: Element) -> int:
        """1 to 6 for a heading, 1 for a title, 0 for anything else."""
        for style in self._chain(paragraph):
            name = _child(style, "w:name")
            if found := _HEADING.fullmatch(name):
                return int(found[1])
            if name.lower() == "title":
                return 1
        return 0

    def label(self, paragraph: Element) -> str:
        """What stands before a paragraph, and counts it: "5. "; "" outside of lists."""
        name, depth = self._place(paragraph)
        abstract = self._abstract.get(name, "")
        levels = self._levels.get(abstract, {})
        if not levels:
            return ""
        level = levels.get(depth, _PLAIN)
        counts = self._counts[abstract]
        if (restart := self._restarts.pop((name, depth), None)) is not None:
            counts[depth] = restart
        else:
            counts[depth] = counts.get(depth, level.start - 1) + 1
        for deeper in [one for one in counts if one > depth]:
            del counts[deeper]
        return _shown(level, levels, counts)

    def _place(self, paragraph: Element) -> tuple[str, int]:
        """The list and the depth in it, as the paragraph says or as its style does."""
        sources = [paragraph, *self._chain(paragraph)]
        found = [one for one in map(_list_of, sources) if one is not None]
        name = next((_child(one, "w:numId") for one in found if _child(one, "w:numId")), "0")
        depth = next((_child(one, "w:ilvl") for one in found if _child(one, "w:ilvl")), "0")
        return name, _number(depth)

    def _chain(self, paragraph: Element) -> list[Element]:
        """The paragraph's style and those it is based on."""
        properties = paragraph.find(qn("w:pPr"))
        name = _child(properties, "w:pStyle") if properties is not None else ""
        if name not in self._chains:
            self._chains[name] = self._based_on(name)
        return self._chains[name]

    def _based_on(self, name: str) -> list[Element]:
        chain: list[Element] = []
        while name in self._styles and len(chain) < DEEPEST_STYLE:
            chain.append(self._styles[name])
            name = _child(chain[-1], "w:basedOn")
        return chain


def _list_of(element: Element) -> Element | None:
    properties = element.find(qn("w:pPr"))
    found: Element | None = None if properties is None else properties.find(qn("w:numPr"))
    return found


def _child(element: Element, tag: str) -> str:
    found = element.find(qn(tag))
    return "" if found is None else str(found.get(_VALUE) or "")


def _number(text: str | None) -> int:
    return min(int(text), LARGEST) if text and text.isascii() and text.isdigit() else 0


def _level(level: Element) -> _Level:
    return _Level(
        _child(level, "w:numFmt") or "decimal",
        _child(level, "w:lvlText"),
        _number(_child(level, "w:start") or "1"),
        _child(level, "w:suff") or "tab",
    )


def _shown(level: _Level, levels: dict[int, _Level], counts: dict[int, int]) -> str:
    if level.form == "none":
        return ""
    if level.form == "bullet":
        return "- "

    def figure(found: re.Match[str]) -> str:
        depth = int(found[1]) - 1
        of = levels.get(depth, _PLAIN)
        return _figure(counts.get(depth, of.start), of.form)

    text = re.sub(r"%([1-9])", figure, level.text)
    return text + ("" if level.after == "nothing" else " ") if text else ""


def _figure(number: int, form: str) -> str:
    match form:
        case "lowerLetter" | "upperLetter":
            letter = chr(ord("a") + (number - 1) % 26) * min((number - 1) // 26 + 1, 4)
            return letter if form == "lowerLetter" else letter.upper()
        case "lowerRoman" | "upperRoman":
            roman = _roman(number)
            return roman if form == "lowerRoman" else roman.upper()
        case "decimalZero":
            return f"{number:02d}"
        case _:
            return str(number)


def _roman(number: int) -> str:
    if number > 3999:
        return str(number)
    text = ""
    for value, letters in _ROMAN:
        text += letters * (number // value)
        number %= value
    return text
