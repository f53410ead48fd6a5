"""The web page as a file; how it behaves in a browser is tested in tests/browser."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise

import pytest
from sample_pattern import SCHEMATIC

from frogless.publish.arrange import folded
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
    Words,
)
from frogless.publish.webpage import webpage

NASTY = "</p><script>alert(1)</script><img src=x onerror=alert(1)> & \"'"
EVERY_BLOCK: tuple[Block, ...] = (
    Heading(NASTY, 3),
    Paragraph(NASTY),
    Bullets((NASTY,)),
    Table(NASTY, (NASTY,), ((NASTY,),)),
    Terms(((NASTY, NASTY),)),
    Instruction(NASTY, NASTY, NASTY),
    Figure(NASTY, NASTY, NASTY),
    Note(NASTY, NASTY, NASTY),
)
VOID = {"meta", "link", "input", "path"}


class Reader(HTMLParser):
    """Collects what a page holds, and minds that every element is closed."""

    def __init__(self, page: str) -> None:
        """Read a page."""
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text: list[str] = []
        self.open: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note an element."""
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note an element that closes itself."""
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        """Close the innermost element."""
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        """Note text."""
        self.text.append(data)

    def all(self, tag: str) -> list[dict[str, str | None]]:
        """The attributes of every element of a name."""
        return [attributes for name, attributes in self.elements if name == tag]


@pytest.fixture(scope="module")
def page(document: Document) -> Reader:
    """The sample pattern as a page, read."""
    return Reader(webpage(document))


def test_elements_are_closed_in_order(page: Reader) -> None:
    """The page is well formed."""
    assert page.open == []


def test_page_says_what_it_is(page: Reader, document: Document) -> None:
    """Language, title, width for phones, and the author."""
    assert page.all("html") == [{"lang": "en"}]
    assert document.title in page.text
    metas = page.all("meta")
    assert {"name": "viewport", "content": "width=device-width, initial-scale=1"} in metas
    assert {"name": "author", "content": "The dance group"} in metas


def test_page_fetches_and_runs_nothing(document: Document) -> None:
    """No script, no address but those inside the page, and a policy that forbids them."""
    text = webpage(document)
    reader = Reader(text)
    assert not reader.all("script")
    addresses = [a.get(k) or "" for _, a in reader.elements for k in ("href", "src") if k in a]
    assert all(address.startswith(("#", "data:")) for address in addresses)
    assert "url(" not in text
    assert "@import" not in text
    assert "default-src 'none'" in (page_policy(reader) or "")


def page_policy(reader: Reader) -> str | None:
    """The policy that the page gives the browser."""
    return next(m["content"] for m in reader.all("meta") if "http-equiv" in m)


def test_links_inside_the_page_lead_somewhere(page: Reader) -> None:
    """Every id is there once, and every reference has its id."""
    ids = Counter(a["id"] for _, a in page.elements if "id" in a)
    assert {name for name, times in ids.items() if times > 1} == set()
    wanted = {(a["href"] or "")[1:] for a in page.all("a")}
    wanted |= {a["aria-labelledby"] or "" for _, a in page.elements if "aria-labelledby" in a}
    assert wanted <= set(ids)


def test_contents_list_the_parts(page: Reader, document: Document) -> None:
    """One link for each heading of level 1, before the pattern."""
    parts = [b.text for b in document.blocks if isinstance(b, Heading) and b.level == 1]
    assert len(page.all("a")) == len(parts) + 1
    assert Counter(page.text)[parts[0]] == 2


def test_contents_are_left_out_when_there_is_one_part() -> None:
    """A list of one part helps nobody."""
    reader = Reader(webpage(Document("T", "", "en", (Heading("One"),), (), "")))
    assert not reader.all("nav")


def test_heading_levels_do_not_skip(page: Reader) -> None:
    """The title is the only h1, and each step down is one level."""
    levels = [int(tag[1]) for tag, _ in page.elements if re.fullmatch("h[1-6]", tag)]
    assert levels.count(1) == 1
    assert all(below <= above + 1 for above, below in pairwise(levels))


def test_every_row_can_be_ticked(page: Reader, document: Document) -> None:
    """One box for each instruction, called by the row's label, and one for each folded round."""
    rows = [b for b in document.blocks if isinstance(b, Instruction)]
    boxes = page.all("input")
    assert len(boxes) == len(rows) + sum(len(folded(row)) for row in rows)
    assert all(box["type"] == "checkbox" for box in boxes)
    labelled = {box["aria-labelledby"] for box in boxes}
    assert len(labelled) == len(boxes)
    assert labelled >= {
        a["id"] for a in page.all("span") if a.get("class") == "label" and "id" in a
    }


def test_row_is_called_by_its_text_when_it_has_no_label() -> None:
    """A box always has a name."""
    reader = Reader(webpage(Document("T", "", "en", (Instruction("", "Fasten off.", ""),), (), "")))
    (box,) = reader.all("input")
    (named,) = [a for a in reader.all("span") if a.get("id") == box["aria-labelledby"]]
    assert named["class"] == "text"


def test_side_of_a_row_is_set_apart_but_part_of_its_name() -> None:
    """The number is what the eye looks for; the ear hears both."""
    row = Instruction("Rnds 3–5 (RS, WS in turn)", "Dc.", "4 dc")
    page = webpage(Document("T", "", "en", (row,), (), ""))
    assert 'Rnds 3–5 <span class="side">(RS, WS in turn)</span>' in page


@pytest.mark.parametrize(
    ("count", "class_"), [("372 sc, 186 picots, 62 ch-1 sps", "count long"), ("304 sc", "count")]
)
def test_long_count_stands_below_its_row(count: str, class_: str) -> None:
    """Beside it, it would take the room of every other row's text."""
    page = webpage(Document("T", "", "en", (Instruction("Rnd 1", "Dc.", count),), (), ""))
    assert f'<span class="{class_}">{count}</span>' in page


def test_tables_name_their_columns_and_rows(page: Reader, document: Document) -> None:
    """A caption for each table, a scope for each header, the first cell of a row among them."""
    tables = [b for b in document.blocks if isinstance(b, Table)]
    assert len(page.all("caption")) == len(page.all("table")) == len(tables)
    scopes = Counter(a["scope"] for a in page.all("th"))
    assert scopes["col"] == sum(len(t.header) for t in tables)
    assert scopes["row"] == sum(len(t.rows) for t in tables)


def test_same_words_get_different_ids() -> None:
    """Two parts of one name, two drawings of one key, and the page's own ids do not clash."""
    blocks = (
        Heading("Pattern"),
        Heading("Pattern"),
        Figure("d", "one", ""),
        Figure("d", "two", ""),
    )
    reader = Reader(webpage(Document("T", "", "en", blocks, (("d", SCHEMATIC),), "")))
    ids = [a["id"] for _, a in reader.elements if "id" in a]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("block", EVERY_BLOCK, ids=lambda block: type(block).__name__)
def test_text_stays_text_when_it_looks_like_markup(block: Block) -> None:
    """No part of a block can open an element."""
    document = Document(
        NASTY, NASTY, "en", (block,), ((NASTY, SCHEMATIC),), NASTY, NASTY, Words(NASTY, NASTY)
    )
    reader = Reader(webpage(document))
    assert not reader.all("script")
    assert not reader.all("img")
    assert NASTY in reader.text


def test_words_are_those_of_the_document(document: Document) -> None:
    """What the page adds can be translated."""
    german = replace(document, language="de", words=Words("Inhalt", "Zur Anleitung", "Bild"))
    text = webpage(german)
    assert "Inhalt" in text
    assert "Zur Anleitung" in text
    assert "Contents" not in text


def test_page_is_the_same_when_made_twice(document: Document) -> None:
    """Nothing depends on when or where it was made."""
    assert webpage(document) == webpage(document)


def test_chain_and_its_number_are_held_together() -> None:
    """A line must not end between "ch-" and "1"; the text itself stays as it was proven."""
    row = Instruction("Rnd 2 (RS)", "Join with sl st to top of ch-2.", "152 dc")
    assert '<span class="held">ch-2</span>' in webpage(Document("T", "", "en", (row,), (), ""))
