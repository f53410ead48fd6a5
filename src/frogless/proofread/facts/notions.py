"""Notions and colours of the materials list, and where the rest of the text uses them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Colour, Notion
from frogless.proofread.script.model import Span

#: Notions by name: how they are listed. Needles, scissors, pins and tape belong to every work.
NOTIONS: Mapping[str, re.Pattern[str]] = {
    name: re.compile(rf"\b(?:{words})\b", re.IGNORECASE)
    for name, words in {
        "button": r"buttons?",
        "elastic": r"elastic",
        "marker": r"(?:st(?:itch)?[ -])?markers?",
        "bead": r"(?:seed )?beads?",
        "ribbon": r"ribbons?",
        "zip": r"zip(?:per)?s?",
        "snap": r"(?:snap|press)[ -](?:fastener|stud)s?|snaps",
        "hook and eye": r"hooks? (?:and|&) eyes?",
        "cord": r"(?:draw)?cord|drawstring",
        "safety eyes": r"safety eyes?",
        "stuffing": r"(?:toy )?stuffing|fiberfill|fibrefill|polyfill|toy filling",
        "lining": r"lining(?: fabric)?",
        "buckle": r"buckles?",
        "ring": r"[dD]-rings?|metal rings?|key ?rings?",
        "sequin": r"sequins?",
        "clasp": r"clasps?|toggles?",
        "handle": r"handles?",
        "pompom": r"pom[ -]?poms?",
    }.items()
}
#: How the work uses a notion, where that is another word than its name.
USES: Mapping[str, re.Pattern[str]] = {
    "button": re.compile(r"\bbutton", re.IGNORECASE),
    "elastic": re.compile(r"\belastic|\bwaistband casing", re.IGNORECASE),
    "marker": re.compile(
        r"\bmark|\bpm\b|\bsm\b|\bmm\b(?<!\d mm)|\bspiral|\bcontinuous", re.IGNORECASE
    ),
    "bead": re.compile(r"\bbead", re.IGNORECASE),
    "ribbon": re.compile(r"\bribbon|\bbow\b", re.IGNORECASE),
    "zip": re.compile(r"\bzip", re.IGNORECASE),
    "snap": re.compile(r"\bsnap|\bpress[ -]stud|\bfasten(?:er|ing)", re.IGNORECASE),
    "hook and eye": re.compile(r"\beyes?\b|\bfasten(?:er|ing)", re.IGNORECASE),
    "cord": re.compile(r"\bcord|\bdrawstring|\btie\b|\bthread ", re.IGNORECASE),
    "safety eyes": re.compile(r"\beyes?\b", re.IGNORECASE),
    "stuffing": re.compile(r"\bstuff|\bfill", re.IGNORECASE),
    "lining": re.compile(r"\blin(?:e|ed|ing)\b", re.IGNORECASE),
    "buckle": re.compile(r"\bbuckle", re.IGNORECASE),
    "ring": re.compile(r"\brings?\b", re.IGNORECASE),
    "sequin": re.compile(r"\bsequin", re.IGNORECASE),
    "handle": re.compile(r"\bhandle", re.IGNORECASE),
    "pompom": re.compile(r"\bpom[ -]?pom", re.IGNORECASE),
    "clasp": re.compile(r"\bclasp|\btoggle|\bfasten(?:er|ing)|\bclos", re.IGNORECASE),
}
_COUNT = re.compile(r"(\d{1,3})[ ](?:[\w-]+[ ]){0,3}$")
_OPTIONAL = re.compile(
    r"\boptional|\bif (?:you |desired|wanted|liked)|\bto decorate", re.IGNORECASE
)
_COLOUR = re.compile(
    r"\b(?i:colou?r|yarn|shade)[ ](?P<one>[A-H])\b(?!-)|\((?P<two>MC|CC\d?|[A-H])\)"
    r"|(?:^|(?<=[*•,;]|-)[ ]?|(?<=\n))(?P<three>MC|CC\d?|[A-H])[ ]?[:=]"
    r"|\b(?P<four>MC|CC\d?)\b"
)


def notions_in(line: Line) -> Iterator[Notion]:
    """The notions of one line of the materials, each once."""
    for name, words in NOTIONS.items():
        match = words.search(line.text)
        if not match or (name == "cord" and "elastic" in line.text.lower()):
            continue
        count = _COUNT.search(line.text[: match.start()][-60:])
        span = Span(line.start + match.start(), line.start + match.end())
        # "a marker for the join": the list itself says what it is for.
        told = name == "marker" and re.search(r"\b(?:for|to mark)\b", line.text[match.end() :])
        chosen = re.search(r"\bor\b", line.text)  # "a button or a ribbon"
        optional = bool(_OPTIONAL.search(line.text) or told or chosen)
        yield Notion(span, name, int(count[1]) if count else 0, optional)


def colours_in(line: Line) -> Iterator[Colour]:
    """The colours that one line of the materials gives a letter to."""
    for match in _COLOUR.finditer(line.text):
        name = next(group for group in match.groups() if group)
        yield Colour(Span(line.start + match.start(), line.start + match.end()), name)
