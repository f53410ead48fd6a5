"""The round-trip proof: the written pattern, read by an independent parser, is the same fabric."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

import numpy as np

from frogless.errors import FroglessError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.model import RowFabric
from frogless.proof.model import Finding, Subject, finding
from frogless.read.build import read_program
from frogless.rows.count import CHAIN, SLIP_STITCH
from frogless.rows.nodes import Chain
from frogless.rows.walk import nodes
from frogless.stitches.model import Dialect
from frogless.write.counted import stands_for
from frogless.write.hook_places import called
from frogless.write.phrases import phrases
from frogless.write.words import Words

# "Rnds 2–5 (RS, WS in turn): … (180 hdc, 26 ch-1 sps)": a line that states its count by kind.
_COUNTED = re.compile(
    r"(?:Foundation|Rnds?|Rows?)(?: (?P<first>\d+)(?:–(?P<last>\d+))?)?[^:]*: .*"
    r"\((?P<kinds>[^()]*, [^()]*)\)"
)

# As in "Rnds 21–40 (RS): Rep rnds 17–20 another 5 times. (19 sc, 171 tr)".
_AGAIN = re.compile(r": Rep (?:rnds|rows) \d")


def check_reads_back(subject: Subject) -> Finding:
    """In every dialect the text reads back to the same stitches and the same stated counts."""
    faults = []
    for dialect, text in subject.texts.items():
        difference = _difference(subject, dialect, text)
        if difference is not None:
            faults.append(f"{dialect}: {difference}")
    stitches = sum(int(r.stitch.size) for rows in subject.fabric.pieces.values() for r in rows)
    return finding("reads_back", faults, stitches * len(subject.texts), "stitches")


def _difference(subject: Subject, dialect: Dialect, text: str) -> str | None:
    try:
        program = read_program(text, subject.stitches, dialect)
    except FroglessError as error:
        return f"the text cannot be read: {error}"
    if different := same(subject.fabric, expand(program, subject.stitches)):
        return different
    for ours, theirs in zip(subject.program.pieces, program.pieces, strict=True):
        for row, read in zip(ours.rows, theirs.rows, strict=True):
            if (row.count, row.marks, row.side) != (read.count, read.marks, read.side):
                return f"{ours.name}, row {row.number}: count, markers or side read otherwise"
    if program.seams != subject.program.seams:
        return "the seams read otherwise"
    return next(_told_otherwise(subject, dialect, text), None)


def _told_otherwise(subject: Subject, dialect: Dialect, text: str) -> Iterator[str]:
    """Rows whose count by kind is not what the fabric holds; the reader looks at their sums only."""
    rows: dict[int, RowFabric] = {}
    for line in text.splitlines():
        for name, fabric in subject.fabric.pieces.items():
            if line.startswith(f"{name}: worked "):
                rows = {row.row.number: row for row in fabric}
        if (found := _COUNTED.fullmatch(line)) is None:
            continue
        first = int(found["first"] or 0)
        if _AGAIN.search(line):  # rows that come in turn state the count of the last of them
            first = int(found["last"] or first)
        for number in range(first, int(found["last"] or first) + 1):
            held, told = _held(subject, dialect, rows[number]), _told(found["kinds"])
            if held != told:
                yield f"{found[0].partition(':')[0]} states {dict(told)} and holds {dict(held)}"


def _told(kinds: str) -> Counter[str]:
    """Numbers by kind as stated; chain spaces together, plurals as one."""
    told: Counter[str] = Counter()
    for kind in kinds.split(", "):
        number, _, what = kind.partition(" ")
        told["sp" if what.endswith(("sp", "sps")) else what.removesuffix("s")] += int(number)
    return told


def _held(subject: Subject, dialect: Dialect, row: RowFabric) -> Counter[str]:
    """Numbers by kind in the fabric, each kind by the name it has in counts.

    Of stitches that leave several places those places are counted.
    """
    words, held = Words(subject.stitches, dialect, phrases()), Counter[str]()
    for i in np.unique(row.stitch).tolist():
        key, here = row.keys[i], row.stitch == i
        if key == CHAIN:
            single = _single_chains(row)
            held["sp"] += int(row.counted[here].sum()) - int(row.row.start.counts) - single
            held[_singular(CHAIN, words)] += single
            continue
        # The slip stitches that a row begins across lead to its first stitch and are none of it.
        worked = int(here.sum()) - (row.row.start.across if key == SLIP_STITCH else 0)
        held[_singular(key, words)] += worked * max(subject.stitches[key].leaves, 1)
    if row.row.start.counts:
        held[_singular(stands_for(row.row, words), words)] += 1
    return +held


def _singular(key: str, words: Words) -> str:
    return words.stitch(called(key, words)).removesuffix("s")


def _single_chains(row: RowFabric) -> int:
    """Chains each of which is a place of its own, as those that bridge an underarm."""
    return sum(
        node.times * times
        for node, times in nodes(row.row.body)
        if isinstance(node, Chain) and node.each
    )
