"""What is said of stitches that are left: those skipped by name, those drawn together at the end."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from frogless.proofread.checks.model import Reading
from frogless.proofread.checks.rows.heights import base_of
from frogless.proofread.checks.rows.lines import Line, finding, lines_of, named, speaks_otherwise
from frogless.proofread.checks.rows.strays import PLAIN
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.model import Bare, Evenly, Into, Together

#: "draw the tail through the last 8 sts".
_THROUGH = re.compile(
    r"\bthrough (?:the )?(?:front loops? of (?:the )?)?(?:last|remaining|rem|all)\.? "
    r"(?P<count>\d{1,3}) (?:sts?|stitches|loops|sc|dc|hdc|htr)\b",
    re.IGNORECASE,
)
_TO_END = re.compile(r"\b(?:to (?:the )?end|across|around),? *$", re.IGNORECASE)
#: "increasing 8 sts every 4th rnd 8 more times, and work even between. (216 dc)".
_OFTEN = re.compile(
    r"\b(?P<sense>increas|decreas)ing (?P<each>\d{1,3}) (?:sts?|stitches) (?:in |on )?(?:each|every) [^.;()]{1,40}? "
    r"(?P<times>\d{1,3}) (?:more )?times\b[^()]{0,60}\((?P<count>\d{1,4})\b(?! ?\()",
    re.IGNORECASE,
)
#: "until there are 72 rows".
_ROWS = re.compile(r"\buntil there are (?P<count>\d{1,4}) rows\b", re.IGNORECASE)
#: "You have 21 squares."
_SQUARES = re.compile(
    r"\byou (?:should |will )?(?:now )?have (?P<count>\d{1,4}) (?:little |open )?(?:squares|windows|holes)\b",
    re.IGNORECASE,
)
#: "skip first dc", "leave 30 hdc", "to last 2 dc", "in each dc".
_PASSED = re.compile(
    r"\b(?:(?:sk|skip|miss|leave|leaving) (?:the )?(?:(?:first|next|last|rem(?:aining)?) )?"
    r"(?:\d{1,3} )?|to (?:the )?last (?:\d{1,3} )?|in(?:to)? (?:each|every) )(?P<stitch>[a-z]{2,4})\b(?! ?\d|\s?tog)",
    re.IGNORECASE,
)


#: One stitch in so many rows is as few as there are along an edge.
FEWEST_ALONG = 3


def drawn_together(reading: Reading) -> Iterator[Finding]:
    """The number of stitches that the tail goes through, and how many there are."""
    rows = [line for line in lines_of(reading) if line.told.label]
    for found in _THROUGH.finditer(reading.script.plain):
        before = [line for line in rows if line.told.span.start < found.start()]
        if not before or len(reading.script.sizes) > 1:
            continue
        line = before[-1]
        made = line.works[-1].worked if line.works else None
        says = int(found["count"])
        if made is None or made == says:
            continue
        texts = (
            f"{says} sts",
            f"{made} sts",
            f"{line.name} ends with {made} stitches, and the tail is drawn through {says}.",
        )
        yield finding("row-count", reading, line, Span(*found.span()), texts, "likely")


def changed_often(reading: Reading) -> Iterator[Finding]:
    """So many stitches more or fewer, so often, and the count that this comes to."""
    before: int | None = None
    for line in lines_of(reading):
        if line.told.begins or len(reading.script.sizes) > 1:
            before = None
        span = line.told.span
        found = _OFTEN.search(reading.script.plain, span.start, span.end)
        if found and before is not None and not any(w.problems for w in line.works):
            change = int(found["each"]) * int(found["times"])
            works = before + (change if found["sense"].lower() == "increas" else -change)
            says = int(found["count"])
            if says != works:
                texts = (
                    f"{says} sts",
                    f"{works} sts",
                    f"{before} stitches and {found['times']} times {found['each']} "
                    f"{'more' if works > before else 'fewer'} are {works}.",
                )
                there = Span(*found.span())
                yield finding("row-count", reading, line, there, texts, "likely")
        if line.works:
            before = line.works[-1].stated or line.works[-1].worked


def along_rows(reading: Reading) -> Iterator[Finding]:
    """ "Until there are 27 rows", and then 72 stitches along their ends.

    Along the ends of rows go about as many stitches to a row as it has chains in height (common
    practice: 1 to a row of sc, 2 to a row of dc).
    """
    rows, stitch, piece = 0, "", -1
    for line in lines_of(reading):
        span = line.told.span
        if found := _ROWS.search(reading.script.plain, span.start, span.end):
            rows, piece = int(found["count"]), line.told.piece
            stitch = base_of(line.works[-1].stitch) if line.works else ""
            continue
        act = next((a for a in line.told.said.acts if isinstance(a, Evenly) and a.total), None)
        known = reading.lexicon.stitches.get(stitch)
        if not rows or act is None or act.total is None or known is None:
            continue
        total, tall = min(act.total.values), known.turning_chain
        if piece == line.told.piece and not rows / FEWEST_ALONG <= total <= rows * (tall + 1):
            texts = (
                f"{total} stitches along {rows} rows",
                f"about {rows * max(tall - 1, 1)}",
                f"{line.name} works {total} stitches along the ends of {rows} rows: one of the "
                "numbers may be wrong.",
            )
            yield finding("row-count", reading, line, act.span, texts, "possible")
        rows = 0


def squares_of_mesh(reading: Reading) -> Iterator[Finding]:
    """ "You have 21 squares": a mesh has as many as it has chain spaces.

    A filled square has none; a row that has such is left out.
    """
    for line in lines_of(reading):
        span = line.told.span
        found = _SQUARES.search(reading.script.plain, span.start, span.end)
        if found is None or not line.works or len(reading.script.sizes) > 1:
            continue
        made = line.works[-1].made
        spaces = sum(count for key, count in made.items() if key.endswith(" sp"))
        stitches = sum(count for key, count in made.items() if base_of(key) in PLAIN)
        says = int(found["count"])
        if not spaces or stitches != spaces + 1 or says == spaces:
            continue
        texts = (
            f"{says} squares",
            f"{spaces} spaces",
            f"{line.name} makes {spaces} chain spaces, so there are {spaces} squares.",
        )
        yield finding("count-by-kind", reading, line, Span(*found.span()), texts, "likely")


def after_the_end(reading: Reading) -> Iterator[Finding]:
    """ "Sc in each st to end, sc2tog": stitches to be closed together where none are left."""
    for line in lines_of(reading):
        acts = line.told.said.acts
        for act, after in pairwise(acts):
            if not isinstance(act, Into | Bare) or not isinstance(after, Together):
                continue
            words = reading.script.plain[act.span.start : after.span.start]
            if not line.told.label or not _TO_END.search(words):
                continue
            places = after.places
            texts = (
                reading.script.words(act.span),
                f"nothing is left for {reading.script.words(after.span)}",
                f"{line.name} works to the end and then closes {places} stitches together: "
                f'"to last {places} sts" is meant.',
            )
            yield finding("row-fills", reading, line, act.span, texts, "likely")


def passed_by_name(reading: Reading) -> Iterator[Finding]:
    """Stitches that are skipped or left, by a name that the row below has none of."""
    keys = keys_of(reading.lexicon.terms.dialect)
    before: Line | None = None
    for line in lines_of(reading):
        if line.told.begins:
            before = None
        below, span = _plain_made(before), line.told.span
        before = line if line.told.label and line.works else None
        if not below or line.told.label is None or speaks_otherwise(reading, line):
            continue
        if any(problem.kind == "no_place" for worked in line.works for problem in worked.problems):
            continue
        here = _plain_made(line) if line.told.label.onward or len(line.works) > 1 else frozenset()
        for found in _PASSED.finditer(reading.script.plain, span.start, span.end):
            stitch = base_of(keys.get(found["stitch"].lower().removesuffix("s"), ""))
            if stitch not in PLAIN or stitch in below | here:
                continue
            name = named(stitch, reading)
            texts = (
                reading.script.words(Span(*found.span())),
                f"no {name} in the row below",
                f"{line.name} speaks of {name} of the row below, which has none: another stitch "
                "is meant.",
            )
            yield finding("place-missing", reading, line, Span(*found.span()), texts, "likely")


def _plain_made(line: Line | None) -> frozenset[str]:
    """The plain stitches that a row is made of; empty where it has others, or is not known."""
    if line is None or not line.works:
        return frozenset()
    made = {base_of(key) for worked in line.works for key in worked.made}
    made -= {"group", "chain", *(key for key in made if key.startswith("ch-"))}
    return (
        frozenset(made)
        if made and made <= PLAIN and all(worked.made for worked in line.works)
        else frozenset()
    )
