"""One file that is brought in: which kind of document it is. Knows no Django."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping

from frogless.body.load import parse_body
from frogless.design.load import parse_design
from frogless.errors import InputError, Place
from frogless.files import refuse_overgrown
from frogless.studio.library.bundle import LONGEST_TEXT, Bundle, KeptDocument
from frogless.swatch import parse_swatch
from frogless.toml_text import in_plain_words

CHECKS: Mapping[str, Callable[[str], object]] = {
    "body": parse_body,
    "swatch": parse_swatch,
    "design": parse_design,
}
"""What finds the faults of each kind."""

_FORMAT = re.compile(r"frogless-(body|swatch|design)/\d+")
ACCEPTED = (
    '"frogless-body/1", "frogless-swatch/1" or "frogless-design/1", or a zip that a library was '
    "saved as"
)
_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)$")


def single(data: bytes, name: str) -> Bundle:
    """A bundle of one document.

    Args:
        name: of the file, for faults and for what calls itself nothing.

    Raises:
        InputError: it is no text, no TOML, or of no format that is known; or it has faults.
    """
    text = _text(data)
    kind = kind_of(text)
    CHECKS[kind](text)
    own = tomllib.loads(text)
    called = own.get("title") or own.get("name") or name.rpartition(".")[0] or f"My {kind}"
    title = " ".join(str(called).split())[:190]
    return Bundle((KeptDocument("file", kind, title, text),))


def kind_of(text: str) -> str:
    """What a text says it is: "body", "swatch" or "design".

    Raises:
        InputError: it is not valid TOML, or says nothing, or something else.
    """
    refuse_overgrown(text, "", what="file")
    try:
        data = tomllib.loads(text)
    except RecursionError:
        raise InputError("this is nested too deeply") from None
    except ValueError as error:
        found = _AT_LINE.search(str(error))
        line = int(found[1]) if found else None
        reason = in_plain_words(_AT_LINE.sub("", str(error)), text, line)
        raise InputError(f"this is not valid TOML: {reason}", Place("", line)) from None
    found_format = data.get("format")
    if found_format is None:
        raise InputError(f"this file does not say what it is; its format must be {ACCEPTED}")
    known = _FORMAT.fullmatch(str(found_format))
    if known is None:
        raise InputError(
            f'the format of this file is "{str(found_format)[:60]}"; accepted is {ACCEPTED}'
        )
    return known[1]


def _text(data: bytes) -> str:
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        raise InputError(
            "this file is neither text in UTF-8 nor a zip; choose a file of Frogless"
        ) from None
    if "\0" in text:
        raise InputError("this file is neither text nor a zip; choose a file of Frogless")
    if len(text) > LONGEST_TEXT:
        raise InputError(f"this file has {len(text):,} letters; {LONGEST_TEXT:,} are accepted")
    return text
