"""The examples that ship with the program: designs, bodies and swatches, as text."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType

import frogless

PATTERNS = {"design": "*/design.toml", "body": "bodies/*.toml", "swatch": "swatches/*.toml"}


@dataclass(frozen=True, slots=True)
class Example:
    """One example: what people call it, and its text."""

    title: str
    text: str


def example_designs() -> Mapping[str, Example]:
    """The example designs by key, "ring-dance-skirt"."""
    return examples("design")


FIRST_DESIGN = "procession-skirt"
"""What a visitor sees first: the fewest measurements that show what fitting is."""


@cache
def examples(kind: str) -> Mapping[str, Example]:
    """The examples of a kind ("design", "body" or "swatch") by key, in order of their keys."""
    found = sorted(folder().glob(PATTERNS[kind]))
    return MappingProxyType(
        {(f.parent.name if kind == "design" else f.stem): _example(f) for f in found}
    )


def folder() -> Path:
    """Where the examples lie: in the installed package, or beside `src` in a checkout."""
    package = Path(frogless.__file__).parent
    installed = package / "designs"
    return installed if installed.is_dir() else package.parents[1] / "designs"


def _example(file: Path) -> Example:
    text = file.read_text(encoding="utf-8")
    data = tomllib.loads(text)
    return Example(str(data.get("title") or data.get("name") or file.stem), text)
