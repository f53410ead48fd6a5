"""A draft as the page shows it: the pattern's own tables and words, drawings, warnings."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from frogless.draft import Draft, plan_text
from frogless.plan.model import SectionPlan
from frogless.publish.arrange import columns_of_figures, drawing_of, squared
from frogless.publish.blocks import (
    Block,
    Bullets,
    Document,
    Figure,
    Heading,
    Note,
    Paragraph,
    Table,
)
from frogless.publish.drafted import Drafted
from frogless.publish.materials import listed
from frogless.publish.messages import say
from frogless.publish.pattern import pattern
from frogless.publish.pdf import pdf
from frogless.publish.plain import plain
from frogless.publish.remarks import caution_note
from frogless.publish.webpage import webpage
from frogless.studio.drafting.fields import in_words
from frogless.write.rhythm import rhythm_sentence

PARTS = ("glance", "schematic", "materials")
"""The parts of the pattern that the page shows, by the messages that head them."""

SHAPING_AFTER = "glance"
"""The part that the page's own list of sections follows."""


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the pattern: a heading, and its blocks as (kind, what the page needs of one)."""

    title: str
    blocks: tuple[tuple[str, object], ...]


@dataclass(frozen=True, slots=True)
class Shown:
    """What the page says of a draft; `warnings` come from the proof, the plan and the files."""

    title: str
    sentence: str
    warnings: tuple[str, ...]
    parts: tuple[Part, ...]


def shown(made: Draft) -> Shown:
    """The draft for the page."""
    drafted = made.drafted
    shaping = tuple(_section(drafted, section) for section in drafted.plan.sections)
    of_pattern = tuple(_parts(drafted))
    warned = (*map(in_words, _warnings(made)), *_estimates(drafted, of_pattern))
    warnings = tuple(dict.fromkeys(warned))
    parts = list(_cautions(drafted))
    for part in of_pattern:
        glance = part.title == say(drafted, SHAPING_AFTER)
        parts.append(_without(part, warnings) if glance else part)
        if glance and shaping:
            parts.append(Part("Shaping", (("list", shaping),)))
    return Shown(
        title=drafted.basis.design.title,
        sentence=_sentence(drafted),
        warnings=warnings,
        parts=tuple(parts),
    )


def _cautions(drafted: Drafted) -> Iterator[Part]:
    """All of them, also those that the pattern tells where they belong: they come before work."""
    notes = tuple(("note", caution_note(drafted, one)) for one in drafted.fit.cautions)
    if notes:
        yield Part(say(drafted, "cautions"), notes)


def _estimates(drafted: Drafted, parts: Iterable[Part]) -> Iterator[str]:
    """The pattern's own sentence on what was estimated and not measured, if there is one."""
    begins = say(drafted, "glance_estimated", lengths="\0").partition("\0")[0]
    blocks = (block for part in parts for _, block in part.blocks if isinstance(block, tuple))
    lines = (str(line) for block in blocks for line in block)
    yield from (" ".join(line.split()) for line in lines if line.startswith(begins))


def _without(part: Part, warnings: Sequence[str]) -> Part:
    """A part less what the warnings above it say already: remarks, and lines that repeat one."""
    blocks: list[tuple[str, object]] = []
    for kind, block in part.blocks:
        match block:
            case Note(kind="remark"):
                continue
            case tuple():
                left = tuple(line for line in block if not _repeats(str(line), warnings))
                blocks.append((kind, left))
            case _:
                blocks.append((kind, block))
    return Part(part.title, tuple(blocks))


def _repeats(line: str, warnings: Sequence[str]) -> bool:
    plain = " ".join(line.split())
    return any(warning in plain for warning in warnings)


def _parts(drafted: Drafted) -> Iterator[Part]:
    document = pattern(drafted)
    gathered: dict[str, list[tuple[str, object]]] = {say(drafted, key): [] for key in PARTS}
    title = ""
    for block in document.blocks:
        if isinstance(block, Heading) and block.level == 1:
            title = block.text
        elif isinstance(block, Figure):
            gathered[say(drafted, "schematic")].append(_block(block, document))
        elif title in gathered:
            gathered[title].append(_block(block, document))
    yield from (Part(title, tuple(blocks)) for title, blocks in gathered.items() if blocks)


def _block(block: Block, document: Document) -> tuple[str, object]:
    match block:
        case Table():
            right = columns_of_figures(block)
            rows = [list(zip(row, right, strict=True)) for row in squared(block)]
            head = list(zip(block.header, right, strict=True))
            return "table", {"caption": block.caption, "header": head, "rows": rows}
        case Bullets(items):
            return "list", items
        case Figure():
            # As an image a drawing cannot reach the page, whatever stands in it.
            svg = b64encode(drawing_of(document, block).encode()).decode()
            return "figure", {"source": f"data:image/svg+xml;base64,{svg}", "alt": block.alt}
        case Note():
            return "note", block
        case Heading(text) | Paragraph(text):
            return "text", text
        case _:
            return "text", ""


def _sentence(drafted: Drafted) -> str:
    counts = _pieces(drafted) if drafted.of_pieces else _landmarks(drafted)
    checks = len(drafted.findings)
    passed = sum(finding.verdict == "pass" for finding in drafted.findings)
    warned = "" if passed == checks else f", {checks - passed} warn{'s' * (checks - passed == 1)}"
    return f"Drafted and proven: {counts}; {passed} of {checks} checks pass{warned}."


def _landmarks(drafted: Drafted) -> str:
    first, *others = drafted.plan.main.landmarks
    counts = f"{first.count} stitches at the {say(drafted, first.key)}"
    return counts + "".join(f", {mark.count} at the {say(drafted, mark.key)}" for mark in others)


def _pieces(drafted: Drafted) -> str:
    """ "front, back and 2 of sleeve"."""
    names = [
        piece.name if piece.number_made == 1 else f"{piece.number_made} of {piece.name}"
        for piece in drafted.plan.pieces
    ]
    return listed(drafted, names)


def _section(drafted: Drafted, section: SectionPlan) -> str:
    name = section.name[:1].upper() + section.name[1:]
    told = f"{name}, rounds {section.first_round} to {section.last_round}: "
    if section.chosen is None:
        return f"{told}straight, {section.count_after} stitches"
    rhythm = rhythm_sentence(section.chosen.rhythm, section.first_round - 1, drafted.language)
    return (
        f"{told}{section.count_before} to {section.count_after} stitches, "
        f"{section.chosen.points} shaping points {rhythm}"
    )


def _warnings(made: Draft) -> Iterator[str]:
    yield from made.questions
    for found in made.drafted.findings:
        yield from found.faults
    yield from (remark.sentence for remark in made.drafted.plan.remarks if remark.serious)


def _pdf(drafted: Drafted) -> bytes:
    return pdf(pattern(drafted), "us-letter" if drafted.units == "in" else "a4")


OUTPUTS: Mapping[str, tuple[str, Callable[[Drafted], bytes]]] = {
    "pattern.html": ("text/html; charset=utf-8", lambda d: webpage(pattern(d)).encode()),
    "pattern.pdf": ("application/pdf", _pdf),
    "pattern.txt": ("text/plain; charset=utf-8", lambda d: plain(pattern(d)).encode()),
    "plan.json": ("application/json", lambda d: plan_text(d).encode()),
}
"""The files of a pattern: what kind each is, and how it is made."""
