"""The designer's own words in another dialect."""

from __future__ import annotations

import pytest
from examples import Example
from published import shown

from frogless.publish.authored import authored


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("A skirt in single crochet.", "A skirt in double crochet."),
        ("Double crochet, then half double crochet", "Treble crochet, then half treble crochet"),
        ("a foundation single crochet", "a foundation double crochet"),
        ("work 2 dc, 1 hdc, sl st", "work 2 tr, 1 htr, ss"),
        ("discover, schedule, picot", "discover, schedule, picot"),
    ],
)
def test_stitches_are_called_as_the_dialect_calls_them(written: str, told: str) -> None:
    """All at once, so that what was translated is not translated again; parts of words stay."""
    assert authored(shown(Example(), "uk"), written) == told
    assert authored(shown(Example(), "us"), written) == written
