"""The text of a PDF, in the order in which its lines were set."""

from __future__ import annotations

import logging
from collections.abc import Sequence
from io import BytesIO

from pypdf import Configuration, PageObject, PdfReader, apply_configuration
from pypdf.errors import LimitReachedError

from frogless.errors import InputError
from frogless.proofread.sources.leading import SetLine, lines_of, spaced
from frogless.proofread.sources.pages import joined
from frogless.proofread.sources.source import MOST_LETTERS, MOST_PAGES

MOST_STEPS = 200_000
"""Drawing steps of all pages together. A pattern of eleven pages with its drawings has 22,000."""

MOST_OF_PAGE = 1_000_000
"""Bytes of a page's drawing; a page with more is a picture made of lines, such as a chart."""

MOST_DRAWING = 60_000_000
"""Bytes of all pages together, those that are left out included."""

#: A stream may unpack to a thousand times its size, and a form be drawn in a form in a form.
_LIMITS = Configuration(
    maximum_declared_stream_length=20_000_000,
    array_based_stream_maximum_output_length=10_000_000,
    lzw_maximum_output_length=10_000_000,
    run_length_maximum_output_length=10_000_000,
    zlib_maximum_output_length=10_000_000,
    brotli_maximum_output_length=10_000_000,
    stream_decoding_work_maximum_length=30_000_000,
    stream_parsing_work_maximum_count=400_000,
    page_tree_maximum_entries=10_000,
    page_tree_maximum_page_entries=100_000,
    xform_maximum_invocations_per_extraction=200,
    jbig2dec_binary=None,  # no program is started for a picture
    disable_legacy_handling=True,
)

_TOO_MUCH = "this PDF unpacks to far more than a pattern; save the text alone"
_BROKEN = "this PDF is damaged or was cut off; save it anew, or save the text alone"
_LOCKED = "this PDF is locked with a password; save a copy without one, or save the text alone"
_PICTURES = (
    "there is no text in this PDF, only pictures of pages; the text has to be typed or recognized "
    "first"
)


Matrix = Sequence[float]
"""Six numbers: from one system of places on a page to another."""


class _TooMuchError(BaseException):
    """More steps or letters than are read; the library passes over every other fault in a form."""


def drawn_from_pdf(data: bytes) -> tuple[str, tuple[str, ...]]:
    """The text of all pages without what repeats at their edges, and what is to be said of it.

    Raises:
        InputError: it is damaged, locked, too long, or has no text.
    """
    # It would tell of every small fault of a file on the standard error.
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        with apply_configuration(_LIMITS):
            pages, left_out = _pages(data)
    except InputError:
        raise
    except (LimitReachedError, _TooMuchError, MemoryError):
        raise InputError(_TOO_MUCH) from None
    except Exception:
        # What a damaged file makes a library raise is endless: KeyError, RecursionError and more.
        raise InputError(_BROKEN) from None
    if not any(page.strip() for page in pages):
        raise InputError(_TOO_MUCH if left_out else _PICTURES)
    text, told = joined(pages)
    return text, (*told, *_left_out(left_out))


def _left_out(pages: Sequence[int]) -> tuple[str, ...]:
    named = ", ".join(map(str, pages))
    told = f"Left out, since so much is drawn there: page{'s' * (len(pages) > 1)} {named}."
    return (told,) if pages else ()


def _pages(data: bytes) -> tuple[list[str], list[int]]:
    """The text of each page, and the numbers of those that were left out."""
    reader = PdfReader(BytesIO(data))
    # Many are locked against changes alone: these open without a password.
    if reader.is_encrypted and not _opens(reader):
        raise InputError(_LOCKED)
    if len(reader.pages) > MOST_PAGES:
        raise InputError(
            f"this PDF has {len(reader.pages)} pages; {MOST_PAGES} are the most that are read"
        )
    budget = _Budget()
    pages: list[list[SetLine]] = []
    left_out: list[int] = []
    for number, page in enumerate(reader.pages, 1):
        if budget.draws_little(page):
            pages.append(_lines(page, budget))
        else:
            left_out.append(number)
    return spaced(pages), left_out


def _lines(page: PageObject, budget: _Budget) -> list[SetLine]:
    pieces: list[tuple[str, float, float]] = []

    def hear(text: str, page_to: Matrix, text_to: Matrix, _: object, size: float) -> None:
        budget.read(len(text))
        x, y = text_to[4], text_to[5]
        height = x * page_to[1] + y * page_to[3] + page_to[5]
        pieces.append((text, height, size * abs(text_to[3] * page_to[3])))

    page.extract_text(visitor_operand_before=budget.spend, visitor_text=hear)
    return lines_of(pieces)


def _opens(reader: PdfReader) -> bool:
    try:
        return bool(reader.decrypt(""))
    except Exception:
        # Without its helper library for AES, pypdf cannot open what only that opens.
        return False


class _Budget:
    """Steps, bytes and letters that are left."""

    def __init__(self) -> None:
        self.steps = MOST_STEPS
        self.drawing = MOST_DRAWING
        self.letters = MOST_LETTERS

    def draws_little(self, page: PageObject) -> bool:
        """Whether a page may be read.

        Raises:
            _TooMuchError: all pages together draw too much.
        """
        content = page.get_contents()
        size = 0 if content is None else len(content.get_data())
        self.drawing -= size
        if self.drawing < 0:
            raise _TooMuchError
        return size <= MOST_OF_PAGE

    def spend(self, *_: object) -> None:
        """One step more.

        Raises:
            _TooMuchError: none is left.
        """
        self.steps -= 1
        if self.steps < 0:
            raise _TooMuchError

    def read(self, letters: int) -> None:
        """Letters more.

        Raises:
            _TooMuchError: no letter is left.
        """
        self.letters -= letters
        if self.letters < 0:
            raise _TooMuchError
