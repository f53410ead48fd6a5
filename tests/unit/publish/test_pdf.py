"""The printed pattern: tagged, named, complete, and safe from what the text says."""

from __future__ import annotations

import shutil
import subprocess
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pikepdf
import pytest
from sample_pattern import SCHEMATIC

from frogless.errors import FroglessError, InputError
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
from frogless.publish.pdf import Paper, pdf

NASTY = "#panic() *bold* _x_ $x^2$ `raw` @ref <label> \\ // c /* [a] #{1/0} = h \" '"


@pytest.fixture(scope="module")
def made(document: Document) -> bytes:
    """The sample pattern, set once."""
    return pdf(document)


@pytest.fixture(scope="module")
def opened(made: bytes) -> Iterator[pikepdf.Pdf]:
    """The sample pattern, opened."""
    with pikepdf.open(BytesIO(made)) as file:
        yield file


def structure(node: object) -> Iterator[pikepdf.Dictionary]:
    """Every element of the structure tree, in reading order."""
    if isinstance(node, pikepdf.Array):
        for child in node:
            yield from structure(child)
    elif isinstance(node, pikepdf.Dictionary) and "/S" in node:
        yield node
        yield from structure(node.get("/K", pikepdf.Array()))


def kinds(file: pikepdf.Pdf) -> Counter[str]:
    """How many elements of each kind the structure tree has."""
    return Counter(str(e.S)[1:] for e in structure(file.Root.StructTreeRoot.K))


def text_of(data: bytes, tmp_path: Path, *options: str) -> str:
    """What poppler reads on the pages."""
    tool = shutil.which("pdftotext")
    assert tool, "pdftotext is missing; install poppler-utils"
    source = tmp_path / "pattern.pdf"
    source.write_bytes(data)
    done = subprocess.run([tool, *options, str(source), "-"], capture_output=True, check=True)
    return done.stdout.decode()


def test_file_is_tagged_and_names_itself(opened: pikepdf.Pdf, document: Document) -> None:
    """Tagged, with language, title shown in the window's bar, and author."""
    root = opened.Root
    assert bool(root.MarkInfo.Marked)
    assert str(root.Lang) == "en"
    assert bool(root.ViewerPreferences.DisplayDocTitle)
    with opened.open_metadata() as metadata:
        assert metadata["dc:title"] == document.title
        assert metadata["dc:creator"] == [document.author]
        assert metadata["pdfuaid:part"] == "1"


def test_structure_is_that_of_the_document(opened: pikepdf.Pdf, document: Document) -> None:
    """One heading, list item, table and figure for each in the document."""
    found = kinds(opened)
    count = Counter(type(block).__name__ for block in document.blocks)
    assert found["Title"] == 1
    assert sum(found[f"H{n}"] for n in range(1, 5)) == count["Heading"]
    assert found["Table"] == count["Table"]
    assert found["Figure"] == count["Figure"]
    items = sum(len(b.items) for b in document.blocks if isinstance(b, Bullets | Terms))
    assert found["LI"] == found["LBody"] == items + count["Instruction"]


def test_headings_do_not_skip_levels(opened: pikepdf.Pdf) -> None:
    """Each step down is one level."""
    names = [str(e.S)[1:] for e in structure(opened.Root.StructTreeRoot.K)]
    levels = [int(n[1]) for n in names if n[0] == "H" and n[1:].isdigit()]
    assert levels[0] == 1
    assert all(below <= above + 1 for above, below in pairwise(levels))


def test_every_figure_has_a_text(opened: pikepdf.Pdf, document: Document) -> None:
    """What the drawing shows is told."""
    alts = [str(e.Alt) for e in structure(opened.Root.StructTreeRoot.K) if e.S == "/Figure"]
    assert alts == [b.alt for b in document.blocks if isinstance(b, Figure)]


def test_tables_have_header_cells(opened: pikepdf.Pdf, document: Document) -> None:
    """One header cell for each column."""
    columns = sum(len(b.header) for b in document.blocks if isinstance(b, Table))
    assert kinds(opened)["TH"] == columns


def test_fonts_are_embedded(opened: pikepdf.Pdf) -> None:
    """Every font of every page travels with the file."""
    fonts = [f for page in opened.pages for f in page.Resources.get("/Font", {}).values()]
    assert fonts
    for font in fonts:
        (descendant,) = font.DescendantFonts
        assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descendant.FontDescriptor.keys())


def test_outline_lists_the_headings(opened: pikepdf.Pdf, document: Document) -> None:
    """The reader's side panel leads to each part."""
    with opened.open_outline() as outline:
        titles = [item.title for item in outline.root]
    assert titles == [b.text for b in document.blocks if isinstance(b, Heading) and b.level == 1]


def test_every_word_is_on_the_pages(made: bytes, document: Document, tmp_path: Path) -> None:
    """Labels, texts, counts and cells can be read and copied."""
    words = set(text_of(made, tmp_path).split())
    wanted: set[str] = set(document.title.split() + document.footer.split())
    for block in document.blocks:
        match block:
            case Instruction(label, text, count):
                wanted |= {*label.split(), *text.split(), *count.split()}
            case Table(caption, header, rows):
                wanted |= {w for c in (caption, *header, *sum(rows, ())) for w in c.split()}
            case Heading(text) | Paragraph(text) | Note(text=text):
                wanted |= set(text.split())
    assert wanted - words == set()


def test_title_runs_on_and_pages_are_numbered(
    made: bytes, document: Document, tmp_path: Path
) -> None:
    """From the second page on the title stands at the head; every page has its number."""
    pages = text_of(made, tmp_path, "-layout").split("\f")[:-1]
    assert len(pages) > 1
    for number, page in enumerate(pages, 1):
        lines = page.strip().splitlines()
        assert lines[0].strip() == document.title
        assert lines[-1].endswith(f" {number}/{len(pages)}")


@pytest.mark.parametrize(("paper", "size"), [("a4", (595, 842)), ("us-letter", (612, 792))])
def test_page_has_the_size_of_the_paper(
    document: Document, paper: Paper, size: tuple[int, int]
) -> None:
    """Points, from ISO 216 and ANSI Y14.1."""
    with pikepdf.open(BytesIO(pdf(document, paper))) as file:
        assert {tuple(round(x) for x in page.MediaBox[2:]) for page in file.pages} == {size}


def test_file_is_the_same_when_made_twice(made: bytes, document: Document) -> None:
    """No date and no font of this machine gets in."""
    assert pdf(document) == made


def test_text_is_never_read_as_markup(tmp_path: Path) -> None:
    """Every string of every block arrives on the page as it was written."""
    blocks: tuple[Block, ...] = (
        Heading(NASTY),
        Paragraph(NASTY),
        Bullets((NASTY,)),
        Table(NASTY, (NASTY,), ((NASTY,),)),
        Terms(((NASTY, NASTY),)),
        Instruction(NASTY, NASTY, NASTY),
        Figure("d", NASTY, NASTY),
        Note(NASTY, NASTY),
    )
    document = Document(NASTY, NASTY, "en", blocks, (("d", SCHEMATIC),), NASTY, NASTY)
    text = "".join(text_of(pdf(document), tmp_path, "-raw").split())
    # Title, subtitle, heading, paragraph, bullet, caption, header, cell, term, meaning, three of
    # the row, caption, two of the note, and the footer of each page.
    assert text.count("".join(NASTY.split())) >= 17


@pytest.mark.parametrize(
    "text", ["3½ × 4¼–5⅜ … “−2°”", "Größe çà łódź ñandú şapka", "Спица иглы", "βελονάκι"]
)
def test_letters_of_other_languages_are_printed(text: str, tmp_path: Path) -> None:
    """The fonts inside the program have Latin, Greek and Cyrillic letters and the trade's signs."""
    made = pdf(Document("T", "", "pt-BR", (Paragraph(text),), (), ""))
    assert text in text_of(made, tmp_path)


def test_language_and_region_are_told_apart() -> None:
    """A reader picks the right voice."""
    with pikepdf.open(BytesIO(pdf(Document("T", "", "pt-BR", (), (), "")))) as file:
        assert str(file.Root.Lang) == "pt-BR"


def test_many_sizes_fit_the_column_of_counts(tmp_path: Path) -> None:
    """A count for ten sizes is broken into lines and stays whole."""
    count = "100 (108, 116, 124, 132, 140, 148, 156, 164, 172) dc"
    row = Instruction("Rnds 120–131 (RS and WS)", "Work even.", count)
    text = text_of(pdf(Document("T", "", "en", (row,), (), "")), tmp_path, "-raw")
    assert count in " ".join(text.split())


def test_long_count_follows_its_row_and_leaves_the_text_its_width(tmp_path: Path) -> None:
    """A short count stands at the edge of the page; a long one takes no column from the others."""
    text = "Ch 2, dc in each st around; join with sl st to top of ch-2, turn."
    long = Instruction("Rnd 2 (RS)", "Dc.", "372 sc, 186 picots, 62 ch-1 sps")
    alone = pdf(Document("T", "", "en", (Instruction("Rnd 1 (WS)", text, "160 dc"),), (), ""))
    both = pdf(Document("T", "", "en", (Instruction("Rnd 1 (WS)", text, "160 dc"), long), (), ""))
    for data in (alone, both):
        assert f"{text}" in text_of(data, tmp_path, "-raw").replace("\n160", "")
    assert "372 sc, 186 picots, 62 ch-1 sps" in text_of(both, tmp_path, "-raw")


def test_long_words_stand_before_their_meanings(tmp_path: Path) -> None:
    """Beside them, they would run into what they mean."""
    items = (
        ("foundation half double crochet", "Yarn over, and so on."),
        ("picot", "Three chains."),
    )
    told = text_of(pdf(Document("T", "", "en", (Terms(items),), (), "")), tmp_path)
    assert "foundation half double crochet Yarn over" in " ".join(told.split())


def test_leading_sentence_stays_with_what_it_leads_to(tmp_path: Path) -> None:
    """A heading and its sentence go to the next page with the first row."""
    filler = tuple(Paragraph("Filler.") for _ in range(29))
    row = Instruction("Rnd 1 (RS)", "Dc in each st around. " * 40, "4 dc")
    blocks = (*filler, Heading("Part"), Paragraph("It leads."), row)
    pages = text_of(pdf(Document("T", "", "en", blocks, (), "")), tmp_path).split("\f")
    assert not [p for p in pages if "It leads." in p and "Rnd 1" not in p]


@pytest.mark.parametrize("paper", ["a5", "", "letter"])
def test_paper_is_refused_when_unknown(document: Document, paper: Paper) -> None:
    """The sentence says which papers there are."""
    with pytest.raises(InputError, match="accepted: a4 and us-letter"):
        pdf(document, paper)


@pytest.mark.parametrize("language", ["", "english", "xx_yy", "de-"])
def test_language_is_refused_when_it_is_no_tag(document: Document, language: str) -> None:
    """The sentence shows what a tag looks like."""
    with pytest.raises(InputError, match="such as en or pt-BR"):
        pdf(replace(document, language=language))


def test_boxes_stand_for_letters_that_no_font_has(tmp_path: Path) -> None:
    """Code points without a letter are in no font; a last line says which they are."""
    document = Document("T \u0378", "", "en", (Paragraph("a \u0378 b \u0379"),), (), "")
    text = " ".join(text_of(pdf(document), tmp_path).split())
    assert "a□b□" in text  # the box comes from a wide font, whose blank is not read as one
    assert "no font on this machine has (U+0378, U+0379)" in text


def test_fault_is_one_sentence_when_a_page_cannot_be_set() -> None:
    """What the typesetter says, without an excerpt of its program."""
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="0" height="0"/>'
    document = Document("T", "", "en", (Figure("d", "alt", ""),), (("d", svg),), "")
    with pytest.raises(FroglessError, match=r"^the PDF could not be set: ") as caught:
        pdf(document)
    assert "\n" not in str(caught.value)
    assert ".typ" not in str(caught.value)


def test_long_title_is_cut_short_where_it_runs_along(tmp_path: Path) -> None:
    """It is told once in full; head and foot of a page have no room for it."""
    title = " ".join(["Skirt"] * 160)
    blocks = tuple(Paragraph("Round and round. " * 60) for _ in range(8))
    data = pdf(Document(title, "", "en", blocks, (), f"{title}, version 1"))
    pages = text_of(data, tmp_path, "-layout").split("\f")[:-1]
    assert len(pages) > 1
    assert all(page.strip().splitlines()[0].endswith("…") for page in pages[1:])
    assert all(page.count("Skirt") < 70 for page in pages[1:])


def test_folded_rounds_have_a_number_each_to_tick(tmp_path: Path) -> None:
    """Below their row, in the order worked."""
    row = Instruction("Rnds 3–7 (RS)", "Dc in each st around.", "152 dc")
    data = pdf(Document("T", "", "en", (row,), (), ""))
    assert "3 4 5 6 7" in " ".join(text_of(data, tmp_path, "-raw").split())
