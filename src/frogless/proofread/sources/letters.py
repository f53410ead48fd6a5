"""Letters and line ends made such as a reader of patterns expects them."""

from __future__ import annotations

import re
import unicodedata

# Only these: NFKC would also take fractions apart, and make a plain 2 of a raised one.
_LIGATURES = {code: unicodedata.normalize("NFKC", chr(code)) for code in range(0xFB00, 0xFB07)}
_LINE_ENDS = re.compile(r"\r\n|[\r\x0b\x0c\x1c-\x1e\x85\u2028\u2029]")
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f\x7f-\x9f\ufeff\ufffe\uffff\ud800-\udfff]")


def tidied(text: str) -> str:
    """The text with plain line ends, without ligatures and control characters."""
    return _CONTROL.sub(" ", _LINE_ENDS.sub("\n", text)).translate(_LIGATURES)
