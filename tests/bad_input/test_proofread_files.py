"""Files that hold no pattern, or are made to hurt: one sentence, exit code 2, no traceback."""

from __future__ import annotations

import io
import random
import sys
import zipfile
import zlib
from collections.abc import Mapping, Sequence
from pathlib import Path

import docx
import fpdf
import pytest
from PIL import Image

from frogless import cli
from frogless.proofread.sources import docx_file, pdf, source

Capture = pytest.CaptureFixture[str]


def refused(data: bytes, tmp_path: Path, capsys: Capture, name: str = "cap.txt") -> str:
    """The one sentence that a file is refused with."""
    file = tmp_path / name
    file.write_bytes(data)
    assert cli.main(["proofread", str(file)]) == 2
    said = capsys.readouterr()
    assert not said.out
    (line,) = said.err.splitlines()
    assert line.startswith(f"frogless: {name}: ")
    return line.removeprefix(f"frogless: {name}: ")


def packed(contents: Mapping[str, bytes]) -> bytes:
    """A zip."""
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as made:
        for name, content in contents.items():
            made.writestr(name, content)
    return file.getvalue()


def word(body: bytes = b"<w:p><w:r><w:t>Rnd 1: 6 sc</w:t></w:r></w:p>", head: bytes = b"") -> bytes:
    """A .docx with another body."""
    file = io.BytesIO()
    docx.Document().save(file)
    names = b'xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"'
    with zipfile.ZipFile(file) as made:
        contents = {name: made.read(name) for name in made.namelist()}
    text = head + b"<w:document " + names + b"><w:body>" + body + b"</w:body></w:document>"
    return packed(contents | {"word/document.xml": text})


def stream(content: bytes, more: bytes = b"") -> bytes:
    """A packed stream of a PDF."""
    data = zlib.compress(content, 9)
    return b"<<%s/Filter/FlateDecode/Length %d>>stream\n%s\nendstream" % (more, len(data), data)


def paper(
    content: bytes, *, forms: Sequence[bytes] = (), pages: int = 1, kids: bytes = b""
) -> bytes:
    """A PDF; `forms` are objects from 6 on, the first is called X."""
    shared = b"/Resources<</Font<</F 5 0 R>>/XObject<</X 6 0 R>>>>/Contents 4 0 R"
    objects = [
        b"<</Type/Catalog/Pages 2 0 R>>",
        b"<</Type/Pages/Kids[%s]/Count %d>>" % (kids or b"3 0 R " * pages, pages),
        b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]%s>>" % shared,
        stream(content),
        b"<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>",
        *forms,
    ]
    data, places = b"%PDF-1.7\n", []
    for number, one in enumerate(objects, 1):
        places.append(len(data))
        data += b"%d 0 obj\n%s\nendobj\n" % (number, one)
    table = b"".join(b"%010d 00000 n \n" % place for place in places)
    size = len(objects) + 1
    return (
        data
        + b"xref\n0 %d\n0000000000 65535 f \n%s" % (size, table)
        + b"trailer\n<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF" % (size, len(data))
    )


TEXT = b"BT /F 9 Tf 20 20 Td (Rnd 1: 6 sc) Tj ET "


def picture(kind: str) -> bytes:
    """A small picture."""
    file = io.BytesIO()
    Image.new("RGB", (20, 20)).save(file, kind)
    return file.getvalue()


def scanned() -> bytes:
    """A PDF with a picture on its page."""
    made = fpdf.FPDF()
    made.add_page()
    made.image(Image.new("RGB", (20, 20)))
    return bytes(made.output())


def locked() -> bytes:
    """A PDF that opens with a password."""
    made = fpdf.FPDF()
    made.set_encryption("drum", user_password="fife", encryption_method="RC4")  # noqa: S106
    made.add_page()
    return bytes(made.output())


NOISE = random.Random(7).randbytes(5000)  # noqa: S311 - the same in every run
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "the file is empty; text, Markdown, a PDF"),
        (b" \n\t\r\n", "the file is empty; text, Markdown, a PDF"),
        (b"\xef\xbb\xbf\n", "there is no text in it"),
        (b"{\\rtf1 Rnd 1: 6 sc}", "this is an RTF file; save it as .docx"),
        (OLE, "this is an old Word file (.doc) or another old office file; save it as .docx"),
        (OLE + "EncryptedPackage".encode("utf-16-le"), "this is locked with a password"),
        (picture("png"), "this is a picture; the text has to be typed"),
        (picture("jpeg"), "this is a picture; the text has to be typed"),
        (picture("gif"), "this is a picture; the text has to be typed"),
        (picture("webp"), "this is a picture or a recording; the text"),
        (b"\x00\x00\x00\x18ftypheic" + bytes(90), "this is a picture or a recording; the text"),
        (b"<!DOCTYPE html><p>Rnd 1", "this is a web page; copy its text out"),
        (b"%!PS-Adobe-3.0\n", "this is a PostScript file; save it as a PDF"),
        (b"\x1f\x8b\x08\x00" + bytes(20), "this is a packed file; unpack it first"),
        (packed({"cap.txt": b"Rnd 1"}), "this is a packed file (zip); unpack it first"),
        (packed({"content.xml": b"<a/>"}), "this is an OpenDocument file (.odt); save it as"),
        (packed({"Index/Document.iwa": b""}), "this is a Pages document; export it"),
        (packed({"xl/workbook.xml": b""}), "this is a spreadsheet; copy the text"),
        (packed({"META-INF/container.xml": b""}), "this is an e-book; copy the text"),
        (packed({"cap.txt": b"Rnd 1"})[:40], "this is a packed file that is damaged"),
        (NOISE, "this is no text; text, Markdown"),
        (b"\xff\xfeR\x00n\x00d", "this begins as UTF-16 text and does not go on so"),
        (b"%PDF-1.7\nobj" + NOISE, "this PDF is damaged or was cut off"),
        (paper(TEXT)[:200], "this PDF is damaged or was cut off"),
        (paper(TEXT, kids=b"2 0 R"), "this PDF is damaged or was cut off"),
        (scanned(), "there is no text in this PDF, only pictures of pages"),
        (locked(), "this PDF is locked with a password; save a copy without one"),
        (paper(TEXT, pages=301), "this PDF has 301 pages; 300 are the most that are read"),
        (word(b"<w:p/>"), "there is no text in it"),
        (word(b"<w:p>"), "this .docx is damaged or of a kind that is not read"),
        (word()[:-300], "this is a packed file that is damaged"),
        (packed({"word/document.xml": b"<a/>"}), "this .docx is damaged or of a kind"),
    ],
    ids=lambda given: given if isinstance(given, str) else "file",
)
def test_file_that_is_no_pattern_is_refused(
    data: bytes, says: str, tmp_path: Path, capsys: Capture
) -> None:
    """With what it is, and what is read."""
    assert refused(data, tmp_path, capsys).startswith(says)


def test_text_without_a_row_is_refused(tmp_path: Path, capsys: Capture) -> None:
    """Nothing that adds up in nothing is proven."""
    says = refused(b"The band plays on Saturday.\nBring a drum.\n", tmp_path, capsys)
    assert says.startswith("no row of a pattern was found in it")


@pytest.mark.parametrize("name", ["cap.pdf", "cap.docx", "cap.md", "cap"])
def test_file_is_known_by_its_content(name: str, tmp_path: Path, capsys: Capture) -> None:
    """Whatever it is called."""
    assert refused(picture("png"), tmp_path, capsys, name).startswith("this is a picture")


FORM = (
    b"/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources<</Font<</F 5 0 R>>/XObject<</X %d 0 R>>>>"
)


@pytest.mark.parametrize(
    "data",
    [
        paper(b" " * 11_000_000 + TEXT),
        paper(b"BT /F 9 Tf " + b"(a) Tj " * 450_000 + b"ET"),
        word(b"<w:p><w:r><w:t>" + b"a " * 4_500_000 + b"</w:t></w:r></w:p>"),
        word(b"<w:p/>" * 110_000),
    ],
)
def test_file_that_unpacks_to_far_more_is_refused(
    data: bytes, tmp_path: Path, capsys: Capture
) -> None:
    """Small as it is."""
    assert len(data) < 100_000
    assert "unpacks to far more than a pattern" in refused(data, tmp_path, capsys)


def test_steps_of_all_pages_count_together(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """So that many pages, each within bounds, do not add up to hours."""
    monkeypatch.setattr(pdf, "MOST_STEPS", 200)
    data = paper(b"BT /F 9 Tf " + b"(a) Tj " * 90 + b"ET", pages=3)
    assert "unpacks to far more" in refused(data, tmp_path, capsys)


def test_forms_within_forms_are_counted(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Ten in each of twelve would draw a million million times."""
    monkeypatch.setattr(pdf, "MOST_STEPS", 150)
    forms = [stream(b"/X Do " * 10, FORM % (number + 1)) for number in range(6, 18)]
    data = paper(b"/X Do " * 10, forms=[*forms, stream(TEXT, FORM % 6)])
    assert "unpacks to far more" in refused(data, tmp_path, capsys)


def test_directory_of_a_zip_is_not_believed(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It says less than there is."""
    honest = word(b"<w:p><w:r><w:t>" + b"a " * 50_000 + b"</w:t></w:r></w:p>")
    size = len(zipfile.ZipFile(io.BytesIO(honest)).read("word/document.xml"))
    lying = honest.replace(size.to_bytes(4, "little"), (100).to_bytes(4, "little"))
    assert lying != honest
    assert refused(lying, tmp_path, capsys).startswith("this .docx is damaged")
    monkeypatch.setattr(docx_file, "MOST_XML", 50_000)
    assert "unpacks to far more" in refused(honest, tmp_path, capsys)


def test_entities_are_not_unfolded(tmp_path: Path, capsys: Capture) -> None:
    """A thousand million laughs."""
    names = b"".join(b'<!ENTITY a%d "%s">' % (n, b"&a%d;" % (n - 1) * 10) for n in range(1, 10))
    head = b'<!DOCTYPE w [<!ENTITY a0 "ha">' + names + b"]>"
    refused(word(b"<w:p><w:r><w:t>&a9;</w:t></w:r></w:p>", head), tmp_path, capsys)


def test_large_file_is_refused_before_it_is_looked_at(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Or a device that never ends."""
    assert "larger than 20 MB" in refused(b"a" * (source.MOST_BYTES + 1), tmp_path, capsys)
    if Path("/dev/zero").exists():
        assert cli.main(["proofread", "/dev/zero"]) == 2
        assert "larger than 20 MB" in capsys.readouterr().err


def test_long_text_is_refused(tmp_path: Path, capsys: Capture) -> None:
    """Longer than any book of patterns."""
    assert "letters; 2000000 are the most" in refused(b"sc " * 700_000, tmp_path, capsys)


def test_missing_file_and_folder_are_told(tmp_path: Path, capsys: Capture) -> None:
    """With what was wanted there."""
    for path, says in (
        (tmp_path / "cap.txt", "there is no such file"),
        (tmp_path, "this is a folder"),
    ):
        assert cli.main(["proofread", str(path)]) == 2
        said = capsys.readouterr().err
        assert said == f"frogless: {path}: {says}; a written pattern is needed\n"


def test_standard_input_is_refused_by_its_name(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It has no other."""
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(picture("png"))))
    assert cli.main(["proofread", "-"]) == 2
    assert capsys.readouterr().err.startswith("frogless: standard input: this is a picture")


@pytest.mark.parametrize("seed", range(25))
def test_damaged_files_never_surprise(seed: int, tmp_path: Path, capsys: Capture) -> None:
    """Bytes changed, cut out or doubled: read all the same, or refused in a sentence."""
    chance = random.Random(seed)  # noqa: S311 - the same cases in every run
    data = bytearray(chance.choice([paper(TEXT), word(), scanned()]))
    for _ in range(chance.randint(1, 8)):
        place = chance.randrange(len(data))
        match chance.randrange(3):
            case 0:
                data[place] = chance.randrange(256)
            case 1:
                del data[place : place + chance.randint(1, 40)]
            case _:
                data[place:place] = data[place : place + 30]
    file = tmp_path / "cap"
    file.write_bytes(data)
    code = cli.main(["proofread", str(file)])
    assert code in (0, 1, 2)
    err = capsys.readouterr().err
    assert (len(err.splitlines()), "fault of ours" in err) == (1 if code == 2 else 0, False)
