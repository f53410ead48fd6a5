"""The papers of this repository as text, and what stands in their tables, links and examples."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1]
DOCS = ROOT / "docs"
_CODE = re.compile(r"`([^`]+)`")
_FENCE = re.compile(r"^```(?P<language>\w+)\n(?P<text>.*?)^```$", re.MULTILINE | re.DOTALL)
_PLAIN_FENCE = re.compile(r"^```\n(?P<text>.*?)^```$", re.MULTILINE | re.DOTALL)


def page(name: str) -> str:
    """A page of `docs/`, or another paper by its path from the root."""
    file = DOCS / name if (DOCS / name).is_file() else ROOT / name
    return file.read_text(encoding="utf-8")


def papers() -> list[Path]:
    """Every Markdown file that is read by people."""
    return sorted([*ROOT.glob("*.md"), *DOCS.glob("*.md"), *ROOT.glob("[!.]*/README.md")])


def part(text: str, heading: str) -> str:
    """What stands under a heading, up to the next one of its own or a higher level."""
    level = len(heading) - len(heading.lstrip("#"))
    begin = text.index(f"{heading}\n") + len(heading) + 1
    following = re.compile(rf"^#{{1,{level}}} ", re.MULTILINE).search(text, begin)
    return text[begin : following.start() if following else None]


def rows(text: str) -> Iterator[list[str]]:
    """The cells of every row of every table, rules left out."""
    for line in text.splitlines():
        if line.startswith("| ") and not set(line) <= set("| -"):
            yield [cell.strip() for cell in line.strip("| ").split(" | ")]


def named(text: str) -> list[str]:
    """What the first cells of all tables name in code: `a`, `b`."""
    return [name for cells in rows(text) for name in _CODE.findall(cells[0])]


def examples(text: str, language: str) -> list[str]:
    """The fenced examples in a language."""
    return [found["text"] for found in _FENCE.finditer(text) if found["language"] == language]


def figure(text: str) -> str:
    """The last drawing made of letters: a fence without a language."""
    return _PLAIN_FENCE.findall(_FENCE.sub("", text))[-1]
