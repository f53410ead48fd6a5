"""Gauge lines in the ways that patterns write them."""

from __future__ import annotations

import pytest

from frogless.proofread.facts.gauges import gauges_in
from frogless.proofread.facts.lines import Line
from frogless.proofread.facts.model import Gauge
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Terms
from frogless.stitches.load import dictionary

US = Lexicon(Terms("us"), dictionary(), keys_of("us"))
DC, SC, HDC = "double_crochet", "single_crochet", "half_double_crochet"


def _gauges(text: str) -> list[Gauge]:
    return list(gauges_in(Line(text, 0, "gauge"), US))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("18 sts and 10 rows = 10 cm / 4 in in dc", (18, 100, 10, 100, DC)),
        ('14 dc x 8 rows to 4" square', (14, 101.6, 8, 101.6, DC)),
        ("20 sc = 4 inches", (20, 101.6, 0, 0, SC)),
        ("Tension: 16 tr and 9 rows to 10 cm", (16, 100, 9, 100, "treble")),
        ("16 sts = 3.5 in; 21 rows = 4 in", (16, 88.9, 21, 101.6, "")),
        ("10 cm = 18 sts and 10 rows in dc", (18, 100, 10, 100, DC)),
        ('4" square: 18 sts x 10 rows in single crochet', (18, 101.6, 10, 101.6, SC)),
        ("In dc: 18 sts and 9 rows = 10 cm", (18, 100, 9, 100, DC)),
        ("16-17 hdc = 10 cm", (16.5, 100, 0, 0, HDC)),
        ("16 dc and 9 rows = 10 cm x 10 cm", (16, 100, 9, 100, DC)),
        ("14 sts and 8 rows in pattern to 10 cm", (14, 100, 8, 100, "")),
        ("To 10 cm in half double crochet: 13 sts, 10 rows", (13, 100, 10, 100, HDC)),
        ("18 stitches = 10 cm, 10 rows = 10 cm", (18, 100, 10, 100, "")),
    ],
)
def test_stitches_and_rows(text: str, expected: tuple[float | str, ...]) -> None:
    """Stitches, rows, what they are counted over, and the stitch."""
    (found,) = _gauges(text)
    assert (found.stitches, found.width, found.rows, found.height, found.stitch) == (
        pytest.approx(expected[0]),
        pytest.approx(expected[1]),
        pytest.approx(expected[2]),
        pytest.approx(expected[3]),
        expected[4],
    )


def test_several_gauges() -> None:
    """Each count of stitches begins a gauge of its own."""
    found = _gauges("18 sts x 20 rows in sc = 4 in; 14 sts x 8 rows in dc = 4 in")
    assert [(each.stitches, each.rows, each.stitch) for each in found] == [
        (18, 20, SC),
        (14, 8, DC),
    ]


def test_shells_are_no_stitches() -> None:
    """What is counted may be a group."""
    (found,) = _gauges("2 shells = 5 cm")
    assert (found.unit, found.stitches, found.width) == ("shell", 2, 50)


def test_our_own_gauge_line() -> None:
    """Its hook, its state and how sure it says that it is."""
    (found,) = _gauges(
        "18 sts and 9.5 rounds in dc to 10 cm, washed and dried, on a 3.75 mm (US F-5) hook. It was "
        "counted to within 2.5 % (95 %), which is 3 cm on the widest girth."
    )
    assert (found.hook, found.after_washing, found.sure) == (3.75, True, 0.025)


def test_unwashed() -> None:
    """ "Before blocking" is not after it."""
    (found,) = _gauges("18 dc = 10 cm before blocking")
    assert not found.after_washing


@pytest.mark.parametrize("text", ["Rnds 1-4 = 6 cm in diameter", "One square measures 12 cm", ""])
def test_what_is_no_gauge(text: str) -> None:
    """A measure of rounds or of a motif has no stitches to count with."""
    assert [each for each in _gauges(text) if each.stitches] == []
