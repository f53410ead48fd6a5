"""Sentences and clauses that change no stitch: markers, colours, fastening off, explanations.

Only what is clearly so is passed over: each pattern of `remarks.toml` holds from the first word on.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache, lru_cache
from pathlib import Path
from typing import Literal, cast

_FILE = Path(__file__).with_name("remarks.toml")
#: Letters of a clause that are looked at; nothing that is asked for stands behind them.
LONGEST = 400
#: Words that are remembered with what they are; a pattern says the same again and again.
KEPT = 4096
AsideKind = Literal[
    "marker", "colour", "fasten_off", "join_yarn", "join_piece", "hook", "back", "spaces", "left_over",
    "remark",
]  # fmt: skip
_TOLD = re.compile(
    r"(?:after (?:row|rnd|round) \d{1,4},? )?"
    r"(?:now |and )?(?:you|there|that|this|it|we)(?:'ll|'ve)? (?:now |should |will |then |should now )?"
    r"(?:have|are|makes?|gives?|leaves?|be|is)\b[^\d]{0,20}\d"
)
_HOOK = re.compile(r"(\d{1,2}(?:\.\d{1,2})?)[ -]?mm")


def clause_remark(text: str) -> AsideKind | None:
    """What a clause is that changes no stitch; None when it may.

    Args:
        text: in lower case, its blanks single ones.
    """
    return _first("clause", text)


def sentence_remark(text: str) -> AsideKind | None:
    """What a sentence is that only explains; None when it may be more than that."""
    return _first("sentence", text)


def bracket_remark(text: str) -> bool:
    """Whether words in brackets only explain what stands before them."""
    return _first("bracket", text) is not None


def count_told(text: str) -> bool:
    """Whether a sentence tells how many stitches there are: "You should have 28 sts now."."""
    return bool(_TOLD.match(text[:LONGEST]))


def hook_named(text: str) -> float:
    """The hook in mm that a clause names; 0."""
    found = _HOOK.search(text)
    return float(found[1]) if found else 0.0


@lru_cache(maxsize=KEPT)
def _first(table: str, text: str) -> AsideKind | None:
    """The first kind of a table that words are; they come again and again."""
    found = _table(table).match(text[:LONGEST])
    return cast("AsideKind", found.lastgroup) if found else None


@cache
def _table(name: str) -> re.Pattern[str]:
    """All patterns of a table in one, those of each kind in a group by its name."""
    told = tomllib.loads(_FILE.read_text(encoding="utf-8"))
    kinds = (
        f"(?P<{kind}>{'|'.join(_filled(each, told['yarn'], told['piece']) for each in patterns)})"
        for kind, patterns in told[name].items()
    )
    return re.compile("|".join(kinds))


def _filled(pattern: str, yarn: str, piece: str) -> str:
    return pattern.replace("{yarn}", yarn).replace("{piece}", piece)
