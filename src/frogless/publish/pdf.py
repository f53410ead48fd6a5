"""A document as a PDF that a screen reader can read out (PDF/UA-1), set by Typst."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import asdict
from functools import singledispatch
from importlib.resources import files
from typing import Any, Final, Literal, get_args

import typst

from frogless.errors import FroglessError, InputError
from frogless.publish.arrange import (
    Run,
    columns_of_figures,
    drawing_of,
    folded,
    in_runs,
    note_title,
    rows_have_names,
    squared,
    steady_headings,
    terms_are_short,
)
from frogless.publish.blocks import (
    Block,
    Bullets,
    Document,
    Figure,
    Heading,
    Note,
    Paragraph,
    Table,
    Terms,
)
from frogless.publish.drawings import checked

Paper = Literal["a4", "us-letter"]

STANDARD: Final = "ua-1"
"""PDF/UA-1, ISO 14289-1:2014: tagged, with language, title and a text for each drawing."""

BOX: Final = "\N{WHITE SQUARE}"
BOXES: Final = (
    "{box} stands for letters that no font on this machine has ({codes}); "
    "the web page and the text have them."
)
# Each try names more of the letters that are missing; all of them are known after one or two.
TRIES: Final = 6
NO_LETTER = re.compile(r"the text `\"?(.+?)\"?` could not be displayed")
ESCAPE = re.compile(r"\\u\{([0-9a-f]+)\}")
LANGUAGE = re.compile(r"(?P<lang>[A-Za-z]{2,3})(-[A-Za-z]{4})?(-(?P<region>[A-Za-z]{2}))?")


def pdf(document: Document, paper: Paper = "a4") -> bytes:
    """The document as a tagged PDF/UA-1 file with its fonts inside.

    The same document gives the same bytes. Letters that the fonts inside the program lack are taken
    from the fonts of the system; for those that no font here has a box stands, and a last line says
    which they are, so that one letter in a title does not cost the whole pattern.

    Raises:
        InputError: paper or language not known, a figure without its drawing, a faulty drawing.
        FroglessError: a page that cannot be set.
    """
    if paper not in get_args(Paper):
        accepted = " and ".join(get_args(Paper))
        raise InputError(f'"{paper}" is not a paper that pages are set for; accepted: {accepted}')
    template = files("frogless.publish").joinpath("templates/pattern.typ").read_bytes()
    data = _data(document, paper)
    missing: tuple[str, ...] = ()
    for own_fonts_only in (True, *[False] * TRIES):
        try:
            return _compiled(template, _boxed(data, missing), own_fonts_only=own_fonts_only)
        except typst.TypstError as fault:
            lacking = [_letter(found) for found in NO_LETTER.findall(fault.diagnostic)]
            if not lacking:
                raise FroglessError(f"the PDF could not be set: {fault.message}") from fault
            if not own_fonts_only:
                missing = tuple(dict.fromkeys((*missing, *"".join(lacking))))
    raise FroglessError(f"the PDF could not be set: no font has {', '.join(map(_code, missing))}")


def _boxed(data: dict[str, Any], missing: Sequence[str]) -> str:
    """The document as the template reads it, a box for each missing letter, and a line that says so."""
    if missing:
        codes = ", ".join(map(_code, missing[:8])) + (" …" if len(missing) > 8 else "")
        note = BOXES.format(box=BOX, codes=codes)
        blocks = [*data["blocks"], {"kind": "paragraph", "text": note}]
        data = {**data, "blocks": blocks}
    text = json.dumps(data, ensure_ascii=False)
    return text.translate({ord(letter): BOX for letter in missing})


def _compiled(template: bytes, data: str, *, own_fonts_only: bool) -> bytes:
    return typst.compile(
        template,
        format="pdf",
        pdf_standards=[STANDARD],
        ignore_system_fonts=own_fonts_only,
        sys_inputs={"pattern": data},
    )


def _letter(found: str) -> str:
    """A letter as it is, where the typesetter wrote an escape for it."""
    return ESCAPE.sub(lambda escape: chr(int(escape[1], 16)), found)


def _code(letter: str) -> str:
    return f"U+{ord(letter):04X}"


def _data(document: Document, paper: Paper) -> dict[str, Any]:
    language = LANGUAGE.fullmatch(document.language)
    if not language:
        raise InputError(f'"{document.language}" is not a language tag such as en or pt-BR')
    return {
        "title": document.title,
        "subtitle": document.subtitle,
        "author": document.author,
        "footer": document.footer,
        "paper": paper,
        "lang": language["lang"].lower(),
        "region": language["region"].upper() if language["region"] else None,
        "blocks": [_block(b, document) for b in in_runs(steady_headings(document.blocks))],
    }


@singledispatch
def _block(block: Block | Run, document: Document) -> dict[str, Any]:
    raise TypeError(type(block).__name__)


@_block.register
def _heading(block: Heading, document: Document) -> dict[str, Any]:
    return {"kind": "heading", **asdict(block)}


@_block.register
def _paragraph(block: Paragraph, document: Document) -> dict[str, Any]:
    return {"kind": "paragraph", **asdict(block)}


@_block.register
def _bullets(block: Bullets, document: Document) -> dict[str, Any]:
    return {"kind": "bullets", **asdict(block)}


@_block.register
def _terms(block: Terms, document: Document) -> dict[str, Any]:
    return {"kind": "terms", "short": terms_are_short(block), **asdict(block)}


@_block.register
def _run(block: Run, document: Document) -> dict[str, Any]:
    return {
        "kind": "run",
        "rows": [{**asdict(row), "numbers": folded(row)} for row in block.instructions],
    }


@_block.register
def _note(block: Note, document: Document) -> dict[str, Any]:
    title = note_title(block.kind, block.title)
    return {"kind": "note", "look": block.kind, "title": title, "text": block.text}


@_block.register
def _figure(block: Figure, document: Document) -> dict[str, Any]:
    svg = drawing_of(document, block)
    checked(block.key, svg)
    return {"kind": "figure", "svg": svg, "alt": block.alt, "caption": block.caption}


@_block.register
def _table(block: Table, document: Document) -> dict[str, Any]:
    return {
        "kind": "table",
        "caption": block.caption,
        "header": block.header,
        "rows": squared(block),
        "right": columns_of_figures(block),
        "names": rows_have_names(block),
    }
