"""Plain text in the encodings that editors write."""

from __future__ import annotations

import codecs
from pathlib import Path

import pytest

from frogless.proofread.sources.read import read_source, text_of
from frogless.proofread.sources.source import Source

TEXT = "Rnd 1: 6 sc – “tight”\nRnd 2: 2 sc in each st. (12)\n"


@pytest.mark.parametrize(
    "data",
    [
        TEXT.encode("utf-8"),
        TEXT.encode("utf-8-sig"),
        TEXT.encode("utf-16"),
        codecs.BOM_UTF16_BE + TEXT.encode("utf-16-be"),
        TEXT.encode("utf-16-le"),
        TEXT.encode("utf-16-be"),
        TEXT.encode("utf-32"),
    ],
)
def test_unicode_is_read_in_every_form(data: bytes) -> None:
    """With a mark at its beginning or without."""
    assert text_of(data, "hat.txt") == Source(TEXT, "text")


def test_windows_text_is_read_and_told() -> None:
    """Dashes and quotation marks come out right, and somebody is to look at them."""
    source = text_of(TEXT.encode("cp1252"), "hat.txt")
    assert source.text == TEXT
    (remark,) = source.remarks
    assert "Windows-1252" in remark


def test_markdown_is_kept_as_it_is() -> None:
    """Its marks too: they say what is a heading."""
    text = "# Cap\n\n**Rnd 1:** 6 sc\n"
    assert text_of(text.encode(), "cap.md") == Source(text, "markdown")


@pytest.mark.parametrize("end", ["\r\n", "\r", "\u2028", "\x0c", "\x85"])
def test_line_ends_are_made_plain(end: str) -> None:
    """Those of every system, and what else ends a line."""
    assert text_of(f"Rnd 1: 6 sc{end}Rnd 2".encode(), "a").text == "Rnd 1: 6 sc\nRnd 2"


def test_ligatures_come_apart_and_fractions_do_not() -> None:
    """They mean other things than their parts."""
    assert text_of("ﬁrst ﬂat ½ × 2²".encode(), "a").text == "first flat ½ × 2²"


def test_signs_that_would_move_a_terminal_are_taken_out() -> None:
    """A pattern has no business there; one blank for each, so that places stay."""
    text = f"Rnd 1: {'6 sc ' * 60}\x1b[2J\x9b2J"
    assert text_of(text.encode(), "a").text == text.replace("\x1b", " ").replace("\x9b", " ")


def test_text_may_begin_as_a_picture_does() -> None:
    """ "BM" are the first letters of a bitmap, and of a name."""
    assert text_of(b"BM Cap\nRnd 1: 6 sc", "a").text.startswith("BM Cap")


def test_text_that_speaks_of_pdf_is_text() -> None:
    """The mark alone makes no PDF."""
    assert text_of(b"%PDF-1.7 is what I exported.\nRnd 1: 6 sc", "a").kind == "text"


def test_file_is_read_by_its_name(tmp_path: Path) -> None:
    """Whatever ending it has."""
    (tmp_path / "hat.pattern").write_text(TEXT, encoding="utf-8")
    assert read_source(tmp_path / "hat.pattern").text == TEXT
