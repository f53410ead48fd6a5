"""What a file is, by what stands in it: an ending may say anything."""

from __future__ import annotations

import re
import zipfile
from io import BytesIO
from pathlib import PurePath

from frogless.errors import InputError
from frogless.proofread.sources.source import ACCEPTED, Kind

#: How a file begins, and what it is then. Source: the formats' own descriptions.
_BEGINNINGS: tuple[tuple[bytes, str], ...] = (
    (b"{\\rtf", "an RTF file; save it as .docx or as text"),
    (b"\x89PNG", "a picture; the text has to be typed or recognized first"),
    (b"\xff\xd8\xff", "a picture; the text has to be typed or recognized first"),
    (b"GIF8", "a picture; the text has to be typed or recognized first"),
    (b"II*\x00", "a picture; the text has to be typed or recognized first"),
    (b"MM\x00*", "a picture; the text has to be typed or recognized first"),
    (b"BM", "a picture; the text has to be typed or recognized first"),
    (b"RIFF", "a picture or a recording; the text has to be typed or recognized first"),
    (b"%!PS", "a PostScript file; save it as a PDF"),
    (b"\x1f\x8b", "a packed file; unpack it first"),
    (b"7z\xbc\xaf\x27\x1c", "a packed file; unpack it first"),
    (b"Rar!", "a packed file; unpack it first"),
    (b"BZh", "a packed file; unpack it first"),
    (b"\xfd7zXZ", "a packed file; unpack it first"),
)

#: A file within a zip, and what the zip is then.
_WITHIN: tuple[tuple[str, str], ...] = (
    (r"Index/Document\.iwa|index\.xml|.*\.iwa", "a Pages document; export it as .docx or PDF"),
    (r"content\.xml", "an OpenDocument file (.odt); save it as .docx or PDF"),
    (r"xl/workbook\.xml", "a spreadsheet; copy the text out of it"),
    (r"ppt/presentation\.xml", "a presentation; save it as PDF"),
    (r"META-INF/container\.xml", "an e-book; copy the text out of it"),
)

_HTML = re.compile(rb"\s*(?:<\?xml[^>]{0,200}\?>\s*)?<(?:!doctype\s+html|html)\b", re.IGNORECASE)
_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_LOCKED = "EncryptedPackage".encode("utf-16-le")


def kind_of(data: bytes, name: str) -> Kind:
    """What a file holds.

    Raises:
        InputError: none of what is read; it says what the file is instead, and what is read.
    """
    if data.startswith((b"PK\x03\x04", b"PK\x05\x06")):
        return _kind_of_zip(data)
    # Programs that read PDFs take some bytes before the mark, so files have them.
    if re.search(rb"(?:^|[\r\n])\s{0,8}%PDF-\d", data[:1024]) and b"obj" in data:
        return "pdf"
    if found := _other(data):
        raise InputError(f"this is {found}; {ACCEPTED}")
    return "markdown" if PurePath(name).suffix.lower() in (".md", ".markdown") else "text"


def _other(data: bytes) -> str:
    if data.startswith(_OLE):
        if _LOCKED in data:
            return "locked with a password; save a copy without one"
        return "an old Word file (.doc) or another old office file; save it as .docx"
    if data[4:8] == b"ftyp":
        return "a picture or a recording; the text has to be typed or recognized first"
    if _HTML.match(data[:1024]):
        return "a web page; copy its text out of the browser"
    # Text may begin with the letters that a picture begins with.
    found = next((told for begin, told in _BEGINNINGS if data.startswith(begin)), "")
    return found if found and (b"\x00" in data or data.startswith((b"{\\rtf", b"%!PS"))) else ""


def _kind_of_zip(data: bytes) -> Kind:
    try:
        with zipfile.ZipFile(BytesIO(data)) as packed:
            names = packed.namelist()
    except (zipfile.BadZipFile, ValueError, OSError, NotImplementedError):
        raise InputError(
            f"this is a packed file that is damaged or was cut off; {ACCEPTED}"
        ) from None
    if "word/document.xml" in names:
        return "docx"
    for pattern, told in _WITHIN:
        if any(re.fullmatch(pattern, name) for name in names):
            raise InputError(f"this is {told}; {ACCEPTED}")
    raise InputError(f"this is a packed file (zip); unpack it first; {ACCEPTED}")
