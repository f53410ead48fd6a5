"""The text of PDFs made by two programs."""

from __future__ import annotations

import re
from collections.abc import Callable

import fpdf
import pytest
import typst

from frogless.proofread.sources.pages import joined, whole_words
from frogless.proofread.sources.read import text_of

ROWS = [
    f"Rnd {number}: {text}"
    for number, text in enumerate(
        [
            "Ch 3 (counts as dc), dc in next 5 sts, 2 dc in next st; repeat from * around, join with "
            "a slip stitch to the top of the beginning ch-3. (96 dc)",
            "Ch 1, sc in first st, *ch 5, skip next 3 sts, sc in next st; rep from * to last 3 sts, "
            "ch 2, skip 2 sts, dc in first sc. (24 ch-5 sps)",
            "Repeat the second round, working into the chain spaces of the round below and finishing "
            "each with a double crochet in the first stitch. (24 sps)",
            "FPdc around each of next 4 dc, [2 dc, ch 1, 2 dc] in next ch-1 sp, skip first 2 fluffy "
            "offset stitches, turn. (100 sts)",
        ]
        * 6,
        1,
    )
]


def plain(text: str) -> str:
    """On one line."""
    return " ".join(text.split())


def set_by_typst(columns: int) -> bytes:
    """Justified and hyphenated, with bold labels, ligatures, a running head and page numbers."""
    rows = (re.sub(r"([*\[\]-])", r"\\\1", row).replace("Rnd ", "*Rnd ", 1) for row in ROWS)
    body = "\n\n".join(row.replace(":", ":*", 1) for row in rows)
    return typst.compile(
        (
            f"#set page(width: 12cm, height: 14cm, columns: {columns}, header: [Cap for the band #h(1fr) A Gift],"
            " footer: context [Page #counter(page).display() of 9])\n"
            "#set text(size: 9pt, hyphenate: true)\n#set par(justify: true)\n" + body
        ).encode()
    )


class Paper(fpdf.FPDF):
    """Pages with a running head and numbers."""

    def header(self) -> None:
        """The same on each page."""
        self.set_font("helvetica", size=8)
        self.cell(0, 5, "Cap for the band", align="C")
        self.ln(8)

    def footer(self) -> None:
        """The number of the page."""
        self.set_y(-15)
        self.cell(0, 5, f"- {self.page_no()} -", align="C")


def set_by_fpdf(columns: int) -> bytes:
    """Justified, not hyphenated."""
    paper = Paper(format=(130, 150))
    paper.set_auto_page_break(True, 18)
    paper.add_page()
    paper.set_font("helvetica", size=9)
    with paper.text_columns(ncols=columns, gutter=6, text_align="J") as column:
        for row in ROWS:
            with column.paragraph(bottom_margin=2) as paragraph:
                paragraph.write(row)
    return bytes(paper.output())


@pytest.mark.parametrize("columns", [1, 2])
@pytest.mark.parametrize("made", [set_by_typst, set_by_fpdf])
def test_every_row_is_read_word_for_word(made: Callable[[int], bytes], columns: int) -> None:
    """Over column and page ends, without what stands at the edges of the pages."""
    source = text_of(made(columns), "cap.pdf")
    text = plain(source.text)
    assert source.kind == "pdf"
    assert [row for row in ROWS if row not in text] == []
    assert "Cap for the band" not in text
    assert not re.search(r"Page \d|- \d -", text)
    assert '"Cap for the band' in source.remarks[0]


def test_table_of_rounds_is_read_row_by_row() -> None:
    """Label, instruction and count stay together, as in the patterns that Frogless prints."""
    cells = ", ".join(f"[Rnd {n} (RS)], [Dc in next {n} sts.], [{n} dc]" for n in range(1, 30))
    made = typst.compile(f"#table(columns: (2cm, 1fr, 2cm), {cells})".encode())
    text = plain(text_of(made, "x").text)
    assert "Rnd 7 (RS): Dc in next 7 sts. 7 dc Rnd 8 (RS): Dc in next 8 sts. 8 dc" in text


def test_pdf_is_known_by_its_content() -> None:
    """A name may say anything."""
    assert text_of(set_by_fpdf(1), "cap.txt").kind == "pdf"


def test_pdf_that_opens_without_a_password_is_read() -> None:
    """Many are locked against changes alone."""
    paper = fpdf.FPDF()
    paper.set_encryption(owner_password="drum", encryption_method="RC4")  # noqa: S106 of a test
    paper.add_page()
    paper.set_font("helvetica", size=9)
    paper.cell(text="Rnd 1: 6 sc")
    assert text_of(bytes(paper.output()), "x").text.strip() == "Rnd 1: 6 sc"


@pytest.mark.parametrize(
    ("broken", "whole"),
    [
        ("re-\npeat from *", "repeat\nfrom *"),
        ("re\xad\npeat from *", "repeat\nfrom *"),
        ("in next ch-\n2 sp", "in next ch-2\nsp"),
        ("in next ch\xad2 sp", "in next ch-2 sp"),
        ("join with sl-\nst, turn", "join with sl-st,\nturn"),
        ("V-\nst in next st", "V-st\nin next st"),
        ("FPdc-\nBPdc rib", "FPdc-BPdc\nrib"),
        ("(24 sts) -\nnot 26", "(24 sts) -\nnot 26"),
        ("Rnds 5-\n8: sc", "Rnds 5-\n8: sc"),
    ],
)
def test_broken_words_are_joined_and_hyphens_of_the_trade_stay(broken: str, whole: str) -> None:
    """ "ch-2" is one word, "re-peat" is none."""
    assert whole_words(broken) == whole


def test_rows_at_the_edge_of_pages_are_no_running_heads() -> None:
    """Rounds, counts and instructions repeat as well; nothing of a pattern may be lost."""
    edge = "Sc in each st around.\nRnd 5: sc around\n(96 sts)\n96 sts\nFasten off"
    pages = [f"{edge}\nRnd {n}: 6 sc\nmiddle {n}\n{edge}" for n in range(4)]
    text, told = joined(pages)
    assert text.count(edge) == 8
    assert told == ()


def test_heads_of_left_and_right_pages_are_left_out() -> None:
    """Two in turn, with the number outside."""
    pages = [
        f"{f'{n} The Band' if n % 2 else f'Caps {n}'}\nRnd {n}: {n} sc\ndc in next st"
        for n in range(1, 9)
    ]
    text, told = joined(pages)
    assert text == "".join(f"Rnd {n}: {n} sc\ndc in next st\n" for n in range(1, 9))
    assert told == ('Left out, since it repeats on the pages: "1 The Band", "Caps 2".',)


@pytest.mark.parametrize("number", ["1", "- 1 -", "Page 1", "page 1 of 3", "1 / 3"])
def test_number_of_a_page_is_left_out_on_a_single_page_too(number: str) -> None:
    """Another number is none of the page."""
    assert joined([f"Rnd 1: 6 sc\n{number}"]) == ("Rnd 1: 6 sc\n", ())
    other = number.replace("1", "7")
    assert joined([f"Rnd 1: 6 sc\n{other}"])[0] == f"Rnd 1: 6 sc\n{other}\n"
