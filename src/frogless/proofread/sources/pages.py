"""Pages made one text: running heads and page numbers dropped, broken words joined."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

EDGE = 3
"""Lines at the top and at the bottom of a page among which a running head is looked for."""

_NUMBER = re.compile(r"\d+")

# "3", "- 3 -", "Page 3 of 9": no running head is needed beside it, nor a second page.
_OF_A_PAGE = re.compile(r"\W*(?:page\b\W*)?(\d{1,3})(?:\s*(?:of|/)\s*\d{1,3})?\W*", re.IGNORECASE)

# Rows, their counts and other instructions repeat from page to page as well, and are no running
# heads. A head that is left in does less harm than an instruction that is left out.
_OF_A_ROW = re.compile(
    r".*[*\[\]{}=]|.*\d+ *(?:\([\d, ]+\) *)?[a-z][\w-]{0,8}\W*$|(?:.*\b)?(?:rnds?|rows?|rounds?|sts?|sps?|"
    r"sc|h?dc|h?tr|chs?|sl|rep|repeat|skip|sk|inc|dec|turn|join|fasten|weave|yo|hook|next|last)\b",
    re.IGNORECASE,
)

# A hyphen at a line's end between small letters. A soft one anywhere else is a hyphen too: many
# programs set both with one sign, and a PDF then knows only one of the two letters.
_BROKEN = re.compile(
    r"(?<![^\W\d_])(?P<before>[^\W\d_]+)(?P<hyphen>[-\u2010\xad])[ \t]*\n[ \t]*(?P<after>[^\W_]+)"
    r"(?P<rest>[^\s]*)[ \t]*"
)

#: First parts of words of the trade that keep their hyphen: "ch-2 sp", "sl-st", "dc-group".
_KEEPS = frozenset(
    {"ch", "sl", "st", "sc", "dc", "hdc", "tr", "htr", "dtr", "ttr", "fp", "bp", "picot", "shell"}
    | {"cluster", "half", "single", "double", "triple", "treble", "non", "right", "left", "front"}
    | {"back", "turning", "chain", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
)


# A label in a narrow column of a table: its sides stand on a line of their own.
_NARROW = re.compile(
    r"^((?:rnd|row|round)s? \d+(?:[-\u2013]\d+)?|foundation(?: row| rnd)?)\n(\((?:RS|WS)[^()\n]{0,30}\))\n",
    re.IGNORECASE | re.MULTILINE,
)

# "19  20": numbers of rows to be ticked off, one after the other, the last of them perhaps alone.
_TICKS = re.compile(r"(?<=\n)\n*(?:\d{1,4}(?: +\d{1,4})+ *\n+)+(?:\d{1,4} *\n)?")


def joined(pages: Sequence[str]) -> tuple[str, tuple[str, ...]]:
    """One text of all pages, and what is to be said of it."""
    lines = [[line.rstrip() for line in page.splitlines()] for page in pages]
    heads = _running(lines)
    # A row may go on over the page: no blank line is left where a head stood.
    kept = [
        "\n".join(_without(page, heads, number)).strip("\n") for number, page in enumerate(lines, 1)
    ]
    text = "\n".join(page for page in kept if page.strip())
    told = (f"Left out, since it repeats on the pages: {_listed(heads)}.",) if heads else ()
    return _in_a_line(whole_words(text) + "\n"), told


def _in_a_line(text: str) -> str:
    return _TICKS.sub(_without_ticks, _NARROW.sub(r"\1 \2: ", text))


def _without_ticks(found: re.Match[str]) -> str:
    numbers = [int(one) for one in found[0].split()]
    follow = numbers == list(range(numbers[0], numbers[0] + len(numbers)))
    if not follow:
        return found[0]
    return "\n" if found[0].endswith("\n\n") else ""


def _running(pages: Sequence[Sequence[str]]) -> dict[str, str]:
    """Running heads: how they look without numbers, with one as it stands there."""
    seen: Counter[tuple[str, int | str]] = Counter()
    example: dict[str, str] = {}
    for number, page in enumerate(pages):
        looks = {_look(line): line for line in _edges(page) if _may_run(line)}
        for look, line in looks.items():
            example.setdefault(look, " ".join(line.split()))
            for figure in _figures(line, number):
                seen[look, figure] += 1
    # The first page often has none, and left and right pages have different ones.
    enough = max(2, (len(pages) - 1) // 2)
    return {look: example[look] for (look, _), times in seen.items() if times >= enough}


def _figures(line: str, number: int) -> set[int | str]:
    """How a line may go on from page to page: as it is, or counting the pages."""
    return {" ".join(line.split()), *(int(one[:9]) - number for one in _NUMBER.findall(line))}


def _edges(page: Sequence[str]) -> list[str]:
    filled = [line for line in page if line.strip()]
    return [*filled[:EDGE], *filled[EDGE:][-EDGE:]]


def _may_run(line: str) -> bool:
    return len(line) <= 200 and not _OF_A_ROW.match(line)


def _look(line: str) -> str:
    return _NUMBER.sub("0", " ".join(line.split()))


def _without(page: Sequence[str], heads: dict[str, str], number: int) -> Iterator[str]:
    filled = [place for place, line in enumerate(page) if line.strip()]
    dropped = {
        *_heads(page, filled[:EDGE], heads, number),
        *_heads(page, filled[: -EDGE - 1 : -1], heads, number),
    }
    yield from (line for place, line in enumerate(page) if place not in dropped)


def _heads(
    page: Sequence[str], places: Sequence[int], heads: dict[str, str], number: int
) -> Iterator[int]:
    """Heads from the edge of the page inwards, up to the first line that is none."""
    for place in places:
        line = page[place]
        counts = (found := _OF_A_PAGE.fullmatch(line)) and int(found[1]) == number
        if not (counts or (_may_run(line) and _look(line) in heads)):
            return
        yield place


def _listed(heads: dict[str, str]) -> str:
    shown = [f'"{line[:60]}"' for line in heads.values()]
    more = f" and {len(shown) - 3} more" if len(shown) > 3 else ""
    return ", ".join(shown[:3]) + more


def whole_words(text: str) -> str:
    """Words that were broken at the end of a line put together on the first of the two lines."""
    known = set(re.findall(r"[^\W\d_]+", text.lower()))
    return _BROKEN.sub(lambda found: _whole(found, known), text).replace("\xad", "-")


def _whole(found: re.Match[str], known: set[str]) -> str:
    before, after = found["before"], found["after"]
    both = (before + after).lower()
    broken = after.islower() and after.isalpha() and before[-1].islower()
    keeps = before.lower() in _KEEPS and both not in known
    hyphen = "" if broken and len(before) > 1 and not keeps else "-"
    return f"{before}{hyphen}{after}{found['rest']}\n"
