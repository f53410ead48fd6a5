"""The text of .docx files made by a library, and by hand where word processors go further."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO

import docx
import pytest
from docx.document import Document
from docx.oxml import parse_xml
from docx.oxml.ns import nsdecls

from frogless.proofread.sources.read import text_of


def drawn(document: Document) -> list[str]:
    """Its lines, those that are empty left out."""
    file = BytesIO()
    document.save(file)
    source = text_of(file.getvalue(), "cap.docx")
    assert source.kind == "docx"
    return [line for line in source.text.splitlines() if line]


def xml(text: str) -> object:
    """An element with the names of a document."""
    return parse_xml(text.replace(">", f" {nsdecls('w')}>", 1))


def with_list(document: Document, form: str, text: str, *, start: int = 1) -> str:
    """A list of a form of its own; gives its number."""
    numbering = document.part.numbering_part.element
    abstract = xml(
        f'<w:abstractNum w:abstractNumId="90"><w:lvl w:ilvl="0"><w:start w:val="{start}"/>'
        f'<w:numFmt w:val="{form}"/><w:lvlText w:val="{text}"/></w:lvl><w:lvl w:ilvl="1">'
        '<w:start w:val="1"/><w:numFmt w:val="lowerLetter"/><w:lvlText w:val="%1%2)"/></w:lvl>'
        "</w:abstractNum>"
    )
    numbering.insert(0, abstract)
    for name in ("90", "91"):
        over = (
            '<w:lvlOverride w:ilvl="0"><w:startOverride w:val="1"/></w:lvlOverride>'
            if name == "91"
            else ""
        )
        numbering.append(
            xml(f'<w:num w:numId="{name}"><w:abstractNumId w:val="90"/>{over}</w:num>')
        )
    return "90"


def add(document: Document, text: str, number: str, depth: int = 0) -> None:
    """A paragraph of a list."""
    paragraph = document.add_paragraph(text)
    paragraph._p.get_or_add_pPr().append(
        xml(f'<w:numPr><w:ilvl w:val="{depth}"/><w:numId w:val="{number}"/></w:numPr>')
    )


def test_headings_paragraphs_and_tables_stand_in_their_order() -> None:
    """Headings marked as in Markdown, a row of a table on one line."""
    document = docx.Document()
    document.add_heading("Drummer's cap", 0)
    document.add_heading("Crown", 2)
    document.add_paragraph("Ch 4, join.")
    table = document.add_table(1, 3)
    for cell, text in zip(table.rows[0].cells, ("Rnd 1", "12 dc in ring", "(12 dc)"), strict=True):
        cell.text = text
    document.add_paragraph("Fasten off.").add_run().add_break()
    assert drawn(document) == [
        "# Drummer's cap",
        "## Crown",
        "Ch 4, join.",
        "Rnd 1\t12 dc in ring\t(12 dc)",
        "Fasten off.",
    ]


def test_cells_that_lay_out_a_page_are_read_one_by_one() -> None:
    """Materials beside the instructions."""
    document = docx.Document()
    left, right = document.add_table(1, 2).rows[0].cells
    left.text = "Cotton\nHook 4 mm"
    left.add_paragraph("Markers")
    right.text = "Rnd 1: 6 sc"
    right.add_table(1, 2).rows[0].cells[0].text = "within"
    assert drawn(document) == ["Cotton", "Hook 4 mm", "Markers", "Rnd 1: 6 sc", "within"]


def test_numbers_of_a_list_become_text() -> None:
    """They are nowhere in the paragraphs, and name the rows."""
    document = docx.Document()
    document.add_paragraph("cotton", style="List Bullet")
    for text in ("6 sc", "2 sc in each st"):
        document.add_paragraph(text, style="List Number")
    assert drawn(document) == ["- cotton", "1. 6 sc", "2. 2 sc in each st"]


@pytest.mark.parametrize(
    ("form", "text", "start", "says"),
    [
        ("decimal", "Rnd %1:", 1, ["Rnd 1: sc", "Rnd 2: sc"]),
        ("decimalZero", "%1.", 9, ["09. sc", "10. sc"]),
        ("upperRoman", "%1.", 4, ["IV. sc", "V. sc"]),
        ("lowerRoman", "(%1)", 9, ["(ix) sc", "(x) sc"]),
        ("upperLetter", "%1.", 26, ["Z. sc", "AA. sc"]),
        ("none", "%1.", 1, ["sc", "sc"]),
    ],
)
def test_numbers_are_shown_as_the_list_says(
    form: str, text: str, start: int, says: list[str]
) -> None:
    """In each form, from where it begins."""
    document = docx.Document()
    number = with_list(document, form, text, start=start)
    for _ in says:
        add(document, "sc", number)
    assert drawn(document) == says


def test_list_within_a_list_begins_anew_and_a_second_list_where_it_says() -> None:
    """As the word processor counts."""
    document = docx.Document()
    number = with_list(document, "decimal", "%1.")
    for depth in (0, 1, 1, 0, 1):
        add(document, "sc", number, depth)
    add(document, "sc", "91")
    assert drawn(document) == ["1. sc", "1a) sc", "1b) sc", "2. sc", "2a) sc", "1. sc"]


@pytest.mark.parametrize(
    ("inner", "says"),
    [
        ("<w:ins><w:r><w:t>12 sc</w:t></w:r></w:ins>", "Rnd 1: 12 sc"),
        ("<w:del><w:r><w:delText>12 sc</w:delText></w:r></w:del>", "Rnd 1:"),
        ("<w:hyperlink><w:r><w:t>12 sc</w:t></w:r></w:hyperlink>", "Rnd 1: 12 sc"),
        ("<w:r><w:t>ch</w:t><w:noBreakHyphen/><w:t>2 sp</w:t></w:r>", "Rnd 1: ch-2 sp"),
        ("<w:sdt><w:sdtContent><w:r><w:t>6 sc</w:t></w:r></w:sdtContent></w:sdt>", "Rnd 1: 6 sc"),
        ("<w:r><w:instrText>PAGE</w:instrText><w:t>6 sc</w:t></w:r>", "Rnd 1: 6 sc"),
    ],
)
def test_what_stands_on_the_page_is_read(inner: str, says: str) -> None:
    """Changes that were made, links and controls; nothing that was deleted."""
    document = docx.Document()
    paragraph = document.add_paragraph("Rnd 1: ")
    for child in xml(f"<w:p>{inner}</w:p>"):  # type: ignore[attr-defined]
        paragraph._p.append(child)
    assert [line.strip() for line in drawn(document)] == [says]


def test_text_box_is_read_once() -> None:
    """After the paragraph that it hangs on, and not again for older programs."""
    box = "<w:txbxContent><w:p><w:r><w:t>{}</w:t></w:r></w:p></w:txbxContent>"
    old = "http://schemas.openxmlformats.org/markup-compatibility/2006"
    document = docx.Document()
    paragraph = document.add_paragraph("Rnd 1: 6 sc")
    paragraph._p.append(
        xml(
            f"<w:r><w:drawing>{box.format('Gauge: 16 sts')}</w:drawing>"
            f'<mc:Fallback xmlns:mc="{old}">{box.format("Gauge: 16 sts")}</mc:Fallback></w:r>'
        )
    )
    assert drawn(document) == ["Rnd 1: 6 sc", "Gauge: 16 sts"]


def _deep_tables(document: Document) -> None:
    cell = document.add_table(1, 1).rows[0].cells[0]
    for _ in range(40):
        cell = cell.add_table(1, 1).rows[0].cells[0]
    cell.text = "too deep"


def _style_on_itself(document: Document) -> None:
    style = document.styles["List Number"].element
    style.append(xml('<w:style><w:basedOn w:val="ListNumber"/></w:style>')[0])
    document.add_paragraph("sc", style="List Number")


def _list_that_is_not_there(document: Document) -> None:
    add(document, "sc", "77", 9)


@pytest.mark.parametrize("strange", [_deep_tables, _style_on_itself, _list_that_is_not_there])
def test_strange_documents_are_read_as_far_as_they_go(strange: Callable[[Document], None]) -> None:
    """Neither endless nor broken off."""
    document = docx.Document()
    document.add_paragraph("Rnd 1: 6 sc")
    strange(document)
    assert drawn(document)[0] == "Rnd 1: 6 sc"
