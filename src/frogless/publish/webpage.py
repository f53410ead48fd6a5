"""A document as one web page: a single file that fetches and runs nothing."""

from __future__ import annotations

from collections import Counter
from functools import singledispatch
from importlib.resources import files

from frogless.publish.arrange import (
    Run,
    columns_of_figures,
    drawing_of,
    folded,
    in_pieces,
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
    Instruction,
    Note,
    Paragraph,
    Table,
    Terms,
)
from frogless.publish.drawings import inlined, slug
from frogless.publish.markup import Markup, element, joined

POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
"""The browser itself is told that the page may fetch and run nothing."""

NOTHING = "data:,"
LONGEST_COUNT = 14


class _Page:
    """What the blocks of one page share: the document, and which ids are taken."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self._taken: Counter[str] = Counter()
        self.parts: list[tuple[str, str]] = []

    def new_id(self, text: str) -> str:
        """An id made from a text, different from all others on the page."""
        name = slug(text)
        self._taken[name] += 1
        return name if self._taken[name] == 1 else f"{name}-{self._taken[name]}"


def webpage(document: Document) -> str:
    """The document as a self-contained HTML page.

    Raises:
        InputError: a figure without its drawing, a faulty drawing, a table row that is too long.
    """
    page = _Page(document)
    for taken in ("pattern", "contents"):
        page.new_id(taken)
    blocks = in_runs(steady_headings(document.blocks))
    body = joined(*(_set(block, page) for block in blocks), between="\n")
    html = element("html", _head(document), _body(page, body), lang=document.language)
    return f"<!DOCTYPE html>\n{html}\n"


def _head(document: Document) -> Markup:
    style = files("frogless.publish").joinpath("templates/webpage.css").read_text("utf-8")
    author = element("meta", name="author", content=document.author) if document.author else ""
    return element(
        "head",
        element("meta", charset="utf-8"),
        element("meta", http_equiv="Content-Security-Policy", content=POLICY),
        element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        author,
        element("title", document.title),
        element("link", rel="icon", href=NOTHING),
        element("style", Markup(style)),
    )


def _body(page: _Page, blocks: Markup) -> Markup:
    document = page.document
    subtitle = element("p", document.subtitle, class_="subtitle") if document.subtitle else ""
    footer = element("footer", element("p", document.footer)) if document.footer else ""
    header = element("header", element("h1", document.title), subtitle, _contents(page))
    main = element("main", blocks, id="pattern", tabindex="-1")
    return element(
        "body",
        element("a", document.words.skip, class_="skip", href="#pattern"),
        element("div", header, "\n", main, "\n", footer, class_="page"),
    )


def _contents(page: _Page) -> Markup:
    if len(page.parts) < 2:
        return Markup("")
    links = (element("li", element("a", text, href=f"#{id_}")) for id_, text in page.parts)
    return element(
        "nav",
        element("p", page.document.words.contents, id="contents"),
        element("ul", *links),
        aria_labelledby="contents",
    )


@singledispatch
def _set(block: Block | Run, page: _Page) -> Markup:
    raise TypeError(type(block).__name__)


@_set.register
def _heading(block: Heading, page: _Page) -> Markup:
    name = page.new_id(block.text)
    if block.level == 1:
        page.parts.append((name, block.text))
    return element(f"h{block.level + 1}", block.text, id=name)


@_set.register
def _paragraph(block: Paragraph, page: _Page) -> Markup:
    return element("p", block.text)


@_set.register
def _bullets(block: Bullets, page: _Page) -> Markup:
    return element("ul", *(element("li", item) for item in block.items))


@_set.register
def _terms(block: Terms, page: _Page) -> Markup:
    pairs = (joined(element("dt", term), element("dd", means)) for term, means in block.items)
    return element("dl", *pairs, class_="short" if terms_are_short(block) else "long")


@_set.register
def _run(block: Run, page: _Page) -> Markup:
    # A list styled without markers is no longer read out as a list in Safari; the role mends it.
    rows = (_row(row, page) for row in block.instructions)
    return element("ol", *rows, class_="rows", role="list")


def _row(row: Instruction, page: _Page) -> Markup:
    """One instruction: the whole row ticks the box, which is called by the row's label alone."""
    name = page.new_id(row.label or row.text)
    tick = element("input", type="checkbox", aria_labelledby=name)
    names_label = name if row.label else None
    return element(
        "li",
        element(
            "label",
            tick,
            element("span", *_label(row.label), class_="label", id=names_label),
            element("span", *_held(row.text), class_="text", id=None if row.label else name),
            element("span", row.count, class_=_count_class(row.count)) if row.count else "",
        ),
        _strip(row, name, page),
    )


def _strip(row: Instruction, name: str, page: _Page) -> Markup:
    """A small box for each round that the row stands for, in a group called by the row's label."""
    ticks = (_small_tick(number, page.new_id(f"{name}-{number}")) for number in folded(row))
    boxes = joined(*ticks)
    if not boxes:
        return boxes
    return element("div", boxes, class_="strip", role="group", aria_labelledby=name)


def _small_tick(number: int, name: str) -> Markup:
    tick = element("input", type="checkbox", aria_labelledby=name)
    return element("label", tick, element("span", str(number), id=name))


def _held(text: str) -> tuple[str, ...]:
    """The text with what must not break at its hyphen held together."""
    return tuple(
        element("span", piece, class_="held") if whole else piece
        for piece, whole in in_pieces(text)
    )


def _label(label: str) -> tuple[str, ...]:
    """The number of a row, and set apart from it the side that faces."""
    number, bracket, side = label.partition(" (")
    return (f"{number} ", element("span", f"({side}", class_="side")) if bracket else (number,)


def _count_class(count: str) -> str:
    """A long count stands below the text, where it does not take the room of all other rows."""
    return "count" if len(count) <= LONGEST_COUNT else "count long"


@_set.register
def _figure(block: Figure, page: _Page) -> Markup:
    drawing = inlined(
        block.key, drawing_of(page.document, block), block.alt, f"{page.new_id(block.key)}-"
    )
    caption = element("figcaption", block.caption) if block.caption else ""
    return element("figure", Markup(drawing), caption)


@_set.register
def _note(block: Note, page: _Page) -> Markup:
    kind = element("p", note_title(block.kind, block.title), class_="kind")
    return element(
        "div",
        kind,
        element("p", block.text),
        class_=f"note {slug(block.kind)}",
        role="note",
    )


@_set.register
def _table(block: Table, page: _Page) -> Markup:
    figures = ["figures" if right else None for right in columns_of_figures(block)]
    name = page.new_id(block.caption)
    head = (
        element("th", cell, scope="col", class_=class_)
        for cell, class_ in zip(block.header, figures, strict=True)
    )
    rows = (_table_row(row, figures) for row in squared(block))
    table = element(
        "table",
        element("caption", block.caption, id=name) if block.caption else "",
        element("thead", element("tr", *head)),
        element("tbody", *rows),
        class_=None if rows_have_names(block) else "sentences",
    )
    # A box that scrolls must be reachable by keyboard (WCAG 2.1.1).
    named = name if block.caption else None
    return element("div", table, class_="scroll", role="group", tabindex="0", aria_labelledby=named)


def _table_row(cells: tuple[str, ...], figures: list[str | None]) -> Markup:
    first = element("th", cells[0], scope="row", class_=figures[0])
    others = (
        element("td", cell, class_=class_)
        for cell, class_ in zip(cells[1:], figures[1:], strict=True)
    )
    return element("tr", first, *others)
