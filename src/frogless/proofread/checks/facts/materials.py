"""What is listed and never used, and what is used and never listed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from frogless.proofread.checks.model import Check, Reading
from frogless.proofread.facts.model import Notion
from frogless.proofread.facts.notions import NOTIONS, USES
from frogless.proofread.findings import Finding
from frogless.proofread.script.model import Span
from frogless.proofread.words.model import Again, Join, Turn

#: Words that say that a notion is needed, where it is not listed.
NEEDED: Mapping[str, re.Pattern[str]] = {
    name: re.compile(words, re.IGNORECASE)
    for name, words in {
        "button": r"\b(?:sew|attach|add|fasten)\b[^.\n]{0,40}\bbuttons?\b(?!hole)",
        "elastic": r"\b(?:thread|insert|sew|put|pull|run|place|slide)\b[^.\n]{0,40}\belastic\b",
        "marker": r"\b(?:place|use|move|put|keep)\b[^.\n]{0,20}\bmarkers?\b",
        "bead": r"\b(?:thread|string|sew|slide|through)\b[^.\n]{0,40}\bbeads?\b",
        "ribbon": r"\b(?:thread|weave|sew|tie|run|pull)\b[^.\n]{0,30}\bribbon\b",
        "zip": r"\b(?:sew|insert|pin|attach)\b[^.\n]{0,30}\bzip(?:per)?\b",
        "cord": r"\b(?:thread|weave|run|pull)\b[^.\n]{0,30}\b(?:cord|drawstring)\b",
        "safety eyes": r"\b(?:insert|attach|place|put|add)\b[^.\n]{0,30}\b(?:safety eyes\b"
        r"|eyes\b[^.\n]{0,12}\bbetween\b)",
        "buckle": r"\b(?:sew|attach)\b[^.\n]{0,30}\bbuckle\b",
        "lining": r"\b(?:sew|insert|cut)\b[^.\n]{0,30}\blining\b",
    }.items()
}
#: Lines of a list of materials that is meant to be whole.
_A_LIST = 3
#: A cord that the pattern makes itself need not be bought.
_MADE = re.compile(
    r"\b(?:make|crochet|work|twist|plait|braid)\b[^.\n]{0,40}\b(?:cord|drawstring|tie|button|ribbon)"
    r"|\b(?:cord|drawstring|tie|button|ribbon|strap)s?\b[ ]*(?:\n|:|\(make)"
    r"|\b(?:cord|tie|drawstring)\b[^.\n]{0,20}\bch",
    re.IGNORECASE,
)
_OPTIONAL = re.compile(
    r"\boptional|\bif (?:you|desired|wanted|liked|needed|preferred|necessary)\b|\byou (?:may|can|could)\b",
    re.IGNORECASE,
)
_COLOURED = re.compile(
    r"\b(?i:colou?r|yarn|shade)[ ](?P<one>[A-H])\b(?![-'])"
    r"|\b(?:[Ww]ith|[Tt]o|[Jj]oin|in|using|[Dd]rop|[Cc]hange to)[ ](?P<two>MC|CC\d?|[B-H])\b(?![-'])"
    r"|(?<![\w-])(?P<three>MC|CC\d?)\b"
    r"|\b(?:[Ww]ith|[Tt]o|[Jj]oin|[Uu]sing)[ ](?P<four>A)(?=[,.;:)])"  # else it is an article
)


def material_unused(reading: Reading) -> Iterator[Finding]:
    """Notions and colours of the materials that the rest of the text never takes up."""
    rest = _rest(reading)
    told: set[str] = set()
    for notion in reading.facts.notions:
        if notion.optional or notion.name in told:
            continue
        told.add(notion.name)
        if notion.name == "marker" and _goes_round(reading):
            continue
        if not USES[notion.name].search(rest):
            yield _unused(notion)
    colours = {each.name: each for each in reading.facts.colours}
    used = {_colour(match) for match in _COLOURED.finditer(rest)}
    # A pattern that names none of its letters speaks of its colors in other words.
    if len(colours) > 1 and used:
        for name, colour in colours.items():
            by_itself = re.search(rf"(?<![\w'-]){re.escape(name)}(?![\w'-])", rest)
            if name not in used and not by_itself:
                yield Finding(
                    "material-unused", colour.span, f"color {name}", "never used",
                    f"The materials list color {name}; no row takes it up. Leave it out, or say "
                    "where it is used.",
                    "likely",
                )  # fmt: skip


def _goes_round(reading: Reading) -> bool:
    """Rounds that are neither joined nor turned: where they begin, everybody marks."""
    return any(
        told.label is not None
        and told.label.kind != "row"
        and len(told.label.numbers) > 0
        and not any(isinstance(act, Join | Turn | Again) for act in told.said.acts)
        for told in reading.told
    )


def material_missing(reading: Reading) -> Iterator[Finding]:
    """Notions and colours that the work needs and the materials do not list."""
    if not reading.facts.materials:
        return
    listed = {notion.name for notion in reading.facts.notions}
    rest = _rest(reading)
    whole = " ".join(reading.script.plain[s.start : s.end] for s in reading.facts.materials)
    for name, words in NEEDED.items():
        if name in listed or NOTIONS[name].search(whole):
            continue
        if name == "marker" and len(reading.facts.materials) < _A_LIST:
            continue  # a scrap of yarn marks as well; a short list need not name it
        found = next((m for m in words.finditer(rest) if not _is_optional(rest, m)), None)
        if found and not (name in ("cord", "button", "ribbon") and _MADE.search(rest)):
            yield Finding(
                "material-missing", Span(*found.span()), name, "not in the materials",
                f"The work needs {_one(name)}, and the materials list none. Add it to them.",
                "likely",
            )  # fmt: skip
    yield from _colours_missing(reading, rest)


def _is_optional(text: str, found: re.Match[str]) -> bool:
    """ "Thread elastic through if you like": the sentence leaves it to the maker."""
    before, after = text[max(0, found.start() - 40) : found.start()], text[found.end() :][:80]
    sentence = re.split(r"[.\n]", before)[-1] + " " + re.split(r"[.\n]", after)[0]
    return bool(_OPTIONAL.search(sentence))


def _colours_missing(reading: Reading, rest: str) -> Iterator[Finding]:
    listed = {each.name for each in reading.facts.colours}
    if len(listed) < 2:
        return
    told: set[str] = set()
    for match in _COLOURED.finditer(rest):
        name = _colour(match)
        if name in listed | told or (name.startswith("CC") and "CC" in " ".join(listed)):
            continue
        told.add(name)
        names = ", ".join(sorted(listed))
        yield Finding(
            "material-missing", Span(*match.span()), f"color {name}", f"listed are {names}",
            f"Color {name} is used, and the materials list only {names}. Add it, or correct the "
            "letter.",
            "likely",
        )  # fmt: skip


def _colour(match: re.Match[str]) -> str:
    return next(group for group in match.groups() if group)


def _rest(reading: Reading) -> str:
    """The text without the lines that list materials; every place stays where it is."""
    text = list(reading.script.plain)
    for span in reading.facts.materials:
        text[span.start : span.end] = " " * (span.end - span.start)
    parts = [part.body for part in reading.script.of("abbreviations")]
    for entry in reading.lexicon.entries:
        span = entry.span
        if any(body.start <= span.start < body.end for body in parts):
            text[span.start : span.end] = " " * (span.end - span.start)
    return "".join(text)


def _unused(notion: Notion) -> Finding:
    return Finding(
        "material-unused",
        notion.span,
        notion.name,
        "never used",
        f"The materials list {_one(notion.name)}, and nothing in the instructions uses it. Leave it "
        "out, or say where it goes.",
        "possible" if notion.name == "marker" else "likely",
    )


def _one(name: str) -> str:
    if name in ("elastic", "stuffing", "lining", "safety eyes", "cord", "ribbon"):
        return name
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"


UNUSED = Check(
    "material-unused",
    "everything in the materials is used",
    "Materials\nDK cotton\n5 mm hook\n4 buttons\n\nInstructions\nCh 31.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\nFasten off.\n",
    material_unused,
)
MISSING = Check(
    "material-missing",
    "everything that the work needs is in the materials",
    "Materials\nDK cotton\n5 mm hook\n\nInstructions\nCh 31.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n"
    "Fasten off. Sew on 4 buttons.\n",
    material_missing,
)
