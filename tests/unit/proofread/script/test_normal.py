"""A text in plain letters has as many as before."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.proofread.script.normal import plain_of


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("Rnds 2–3 — “x” ’", 'Rnds 2-3 - "x" \''),
        ("18×20\u00a0cm", "18x20 cm"),
        ("**Rnd 5:** sc", "  Rnd 5:   sc"),
        ("## Gauge", "   Gauge"),
        ("- #5 hook", "- #5 hook"),
        ("> _Note_", "   Note "),
        (r"\*sc, inc; rep from \*", " *sc, inc; rep from  *"),
        ("*sc in next 3, inc; rep from * around", "*sc in next 3, inc; rep from * around"),
        ("**sc in next 3; rep from ** around", "**sc in next 3; rep from ** around"),
        ("* cotton, 50 g", "  cotton, 50 g"),
        ("* sc, inc; rep from\n* around", "* sc, inc; rep from\n* around"),
        ("turn. *(36 sts)*", "turn.  (36 sts) "),
        ("| Hint", "  Hint"),
        ("| 3 | inc around | 12 |", "  3   inc around - 12  "),
        ("１２ ｓｃ", "12 sc"),  # noqa: RUF001
        ("31½ in", "31½ in"),
    ],
)
def test_marks_are_made_plain(text: str, plain: str) -> None:
    """Typography and Markdown go; the asterisk of a repeat stays."""
    assert plain_of(text) == plain


@given(st.text(max_size=200) | st.text(alphabet="*_|#-[]() \\\nab1", max_size=200))
def test_no_letter_is_lost_or_won(text: str) -> None:
    """Places mean the same in both, line ends too."""
    plain = plain_of(text)
    assert len(plain) == len(text)
    assert [i for i, each in enumerate(text) if each == "\n"] == [
        i for i, each in enumerate(plain) if each == "\n"
    ]
