"""Rounds of the worked examples, written out as people write them: four styles, US and UK.

A round is data: lead once, repeat so many times, tail once; each operation is what it is called,
the places it takes and the stitches it makes.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Round = dict[str, Any]
Operation = tuple[str, int, int]
CASES: dict[str, dict[str, Any]] = {
    case["id"]: case
    for case in json.loads(
        (Path(__file__).parents[1] / "worked" / "worked_examples.json").read_text(encoding="utf-8")
    )["cases"]
}
CHAINS = {"sc": 1, "hdc": 2, "dc": 3, "tr": 4}
NAMES = {
    "sc": "single crochet",
    "hdc": "half double crochet",
    "dc": "double crochet",
    "tr": "treble crochet",
    "FPdc": "front post double crochet",
}
UK = {"sc": "dc", "hdc": "htr", "dc": "tr", "tr": "dtr", "FPdc": "FPtr"}
ORDER = ("turning", "corner", "ring", "between", "each_of", "one", "together", "plain")
PATTERNS = {
    "turning": r"(?:turning )?chain counted as (?P<stitch>\w+)",
    "corner": r"corner(?P<stitch>)",
    "ring": r"(?P<stitch>\w+) into ring",
    "between": r"(?P<many>\d+) (?P<stitch>\w+) in space between",
    "each_of": r"(?P<many>\d+) (?P<stitch>\w+) in each of (?P<places>\d+)",
    "one": r"(?P<many>\d+) (?P<stitch>\w+) in one",
    "together": r"(?P<stitch>[a-z]+)(?P<many>\d)tog",
    "plain": r"(?P<stitch>post stitch|[a-z]+)(?: x(?P<many>\d+))?(?: into chain)?$",
}


@dataclass(frozen=True, slots=True)
class Op:
    """One operation: `many` stitches of `stitch`, worked as `kind` says."""

    kind: str
    stitch: str
    many: int = 1
    places: int = 1


@dataclass(frozen=True, slots=True)
class Style:
    """How a round is put into words.

    Args:
        op: one operation, in the middle of a row. `whole`: a round that is all of one operation.
        times: a group of words so many times.
        row: number, words and count of a whole row.
    """

    name: str
    begin: Callable[[int], str]
    ring: str
    op: Callable[[Op], str]
    whole: Callable[[Op, int, str], str]
    times: Callable[[str, int], str]
    row: Callable[[str, str, int | None], str]


def op_of(operation: Operation) -> Op:
    """What an operation is, by what it is called."""
    for kind in ORDER:
        found = re.match(PATTERNS[kind], operation[0])
        if found:
            group = found.groupdict()
            stitch = "FPdc" if group["stitch"] == "post stitch" else group["stitch"]
            return Op(kind, stitch, int(group.get("many") or 1), int(group.get("places") or 1))
    raise ValueError(operation[0])


def text_of(rounds: list[Round], style: Style) -> str:
    """A pattern of these rounds."""
    below = rounds[0]["consumed"]
    lines = [style.begin(below) if below else style.ring]
    lines += [
        style.row(
            str(each["n"]), _body(each, style, "ch" if below and not at else "st"), _count(each)
        )
        for at, each in enumerate(rounds)
    ]
    return "Worked example\n\n" + "\n".join(line for line in lines if line) + "\n"


def _count(round_: Round) -> int | None:
    stated: int | None = round_["stated_total"]
    return stated


def _body(round_: Round, style: Style, place: str) -> str:
    lead, repeat, tail = (
        [op_of(operation) for operation in round_[part]] for part in ("lead", "repeat", "tail")
    )
    told = [style.op(each) for each in lead]
    if len(repeat) == 1 and not tail and all(each.kind == "turning" for each in lead):
        told.append(style.whole(repeat[0], round_["times"], place))
    elif repeat:
        told.append(style.times(", ".join(style.op(each) for each in repeat), round_["times"]))
    told += [style.op(each) for each in tail]
    return ", ".join(told)


def _sts(many: int) -> str:
    return "next st" if many == 1 else f"next {many} sts"


def _terse(op: Op) -> str:
    words = {
        "turning": f"ch {CHAINS.get(op.stitch, 0)} (counts as {op.stitch})",
        "each_of": f"inc x{op.places}",
        "one": "inc" if op.many == 2 else f"{op.many} {op.stitch} in same st",
        "together": f"{op.stitch}{op.many}tog",
        "plain": op.stitch if op.many == 1 else f"{op.many} {op.stitch}",
    }
    return words[op.kind]


def _terse_whole(op: Op, times: int, place: str) -> str:
    words = {
        "ring": f"{times} {op.stitch} in mr",
        "between": f"{op.many} {op.stitch} in each sp between sts around",
        "one": f"inc x{times}" if op.many == 2 else f"{op.many} {op.stitch} in each {place}",
        "plain": f"{op.stitch} in each {place} around",
    }
    return words[op.kind]


def _brackets(op: Op) -> str:
    words = {
        "turning": f"ch {CHAINS.get(op.stitch, 0)} (counts as {op.stitch})",
        "each_of": f"{op.many} {op.stitch} in each of next {op.places} sts",
        "one": f"{op.many} {op.stitch} in next st",
        "together": f"{op.stitch}{op.many}tog",
        "plain": f"{op.stitch} in {_sts(op.many)}",
    }
    return words[op.kind]


def _brackets_whole(op: Op, times: int, place: str) -> str:
    words = {
        "ring": f"{times} {op.stitch} in ring",
        "between": f"{op.many} {op.stitch} in each space between sts around",
        "one": f"{op.many} {op.stitch} in each {place} around",
        "plain": f"{op.stitch} {'around' if op.stitch == 'FPdc' else 'in'} each {place} around",
    }
    return words[op.kind]


def _sentences(op: Op) -> str:
    name = NAMES.get(op.stitch, "")
    next_ = "the next stitch" if op.many == 1 else f"the next {op.many} stitches"
    words = {
        "turning": f"chain {CHAINS.get(op.stitch, 0)} (counts as 1 {name})",
        "each_of": f"work {op.many} {name} in each of the next {op.places} stitches",
        "one": f"work {op.many} {name} in the next stitch",
        "together": f"{name} the next {op.many} stitches together",
        "plain": f"{name} in {next_}",
    }
    return words[op.kind]


def _sentences_whole(op: Op, times: int, place: str) -> str:
    name, place = NAMES.get(op.stitch, ""), {"ch": "chain", "st": "stitch"}[place]
    words = {
        "ring": f"work {times} {name} into the ring",
        "between": f"work {op.many} {name} in each space between two stitches around",
        "one": f"work {op.many} {name} in each {place} around",
        "plain": f"{name} {'around' if op.stitch == 'FPdc' else 'in'} each {place} around",
    }
    return words[op.kind]


def _stars(op: Op) -> str:
    stitch = UK.get(op.stitch, "")
    next_ = "next st" if op.many == 1 else f"each of next {op.many} sts"
    words = {
        "turning": f"{CHAINS.get(op.stitch, 0)} ch (counts as 1 {stitch})",
        "each_of": f"{op.many} {stitch} in each of next {op.places} sts",
        "one": f"{op.many} {stitch} in next st",
        "together": f"{stitch}{op.many}tog",
        "plain": f"1 {stitch} in {next_}",
    }
    return words[op.kind]


def _stars_whole(op: Op, times: int, place: str) -> str:
    stitch = UK.get(op.stitch, "")
    words = {
        "ring": f"{times} {stitch} into loop",
        "between": f"{op.many} {stitch} in each space between sts to end",
        "one": f"{op.many} {stitch} in each {place} to end",
        "plain": f"1 {stitch} {'around' if op.stitch == 'FPdc' else 'in'} each {place} to end",
    }
    return words[op.kind]


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _said(count: int | None, before: str, after: str) -> str:
    return "" if count is None else f"{before}{count}{after}"


def _more(times: int) -> str:
    return "once more" if times == 2 else f"{times - 1} more times"


TERSE = Style(
    "terse",
    lambda below: f"ch {below}, join with sl st",
    "",
    _terse,
    _terse_whole,
    lambda words, times: f"({words}) x{times}",
    lambda n, words, count: f"R{n}: {words}" + _said(count, " [", "]"),
)
BRACKETS = Style(
    "brackets",
    lambda below: f"Ch {below}; join with sl st to form a ring.",
    "Make a magic ring.",
    _brackets,
    _brackets_whole,
    lambda words, times: f"[{words}] {times} times",
    lambda n, words, count: (
        f"{'Rnds' if '-' in n else 'Rnd'} {n}: {_capital(words)}." + _said(count, " (", " sts)")
    ),
)
SENTENCES = Style(
    "sentences",
    lambda below: f"Chain {below} and join with a slip stitch to form a ring.",
    "Make a magic ring.",
    _sentences,
    _sentences_whole,
    lambda words, times: f"*{words}; repeat from * {_more(times)}",
    lambda n, words, count: (
        f"{'Rounds' if '-' in n else 'Round'} {n.replace('-', ' to ')}: {_capital(words)}."
        + _said(count, " (", " stitches)")
    ),
)
STARS_UK = Style(
    "stars, UK",
    lambda below: f"UK terms.\nMake {below} ch, ss to first ch to form a ring.",
    "UK terms.\nMake a magic loop.",
    _stars,
    _stars_whole,
    lambda words, times: f"*{words}; rep from * {_more(times)}",
    lambda n, words, count: (
        f"{'Rounds' if '-' in n else 'Round'} {n.replace('-', '–')}: {_capital(words)}."
        + _said(count, " ", " sts.")
    ),
)
STYLES = (TERSE, BRACKETS, SENTENCES, STARS_UK)


def lists() -> Iterator[tuple[str, list[Round]]]:
    """Every list of rounds of every case, by case and size, on a ring where it begins on a chain."""
    for case in CASES.values():
        if "rounds" in case:
            yield case["id"], case["rounds"]
        for size in case.get("rounds_per_size", ()):
            yield f"{case['id']} {size['size']}", _filled(size["rounds"])


def _filled(rounds: list[Round]) -> list[Round]:
    """With the plain rounds that a page leaves out between two numbers, and a chain to begin on."""
    filled: list[Round] = []
    for each in rounds:
        last = int(str(filled[-1]["n"]).split("-")[-1]) if filled else 0
        if filled and each["n"] > last + 1:
            between = f"{last + 1}-{each['n'] - 1}" if each["n"] > last + 2 else f"{last + 1}"
            filled.append(_plain(between, filled[-1]["stated_total"]))
        begun = not filled and not each["consumed"]
        filled.append(_plain(each["n"], each["produced"]) if begun else each)
    return filled


def _plain(n: int | str, count: int) -> Round:
    return {
        "n": n,
        "lead": [],
        "repeat": [("sc", 1, 1)],
        "times": count,
        "tail": [],
        "stated_total": count,
        "consumed": count,
        "produced": count,
    }


LISTS = dict(lists())
