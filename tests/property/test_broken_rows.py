"""Rows of patterns with words changed, left out or moved are read, or refused in a sentence."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from frogless.errors import InputError
from frogless.read.patterns import find_way, read_way
from frogless.stitches.load import dictionary
from frogless.stitches.pattern_rows import Way
from frogless.stitches.patterns import WayText, patterns
from frogless.write.stitch_pattern import say_way

STITCHES = dictionary()
TEXTS = tuple(
    (closed, told)
    for entry in patterns().values()
    for closed, told in ((False, entry.rows), (True, entry.rounds))
    if told is not None and "{" not in told.text
)
WORDS = tuple(
    sorted({word for _, told in TEXTS for word in told.text.split()} | {"*", "0", "999", ";"})
)


@st.composite
def broken(draw: st.DrawFn) -> tuple[bool, WayText]:
    """A pattern of the library with up to three words changed, left out, doubled or swapped."""
    closed, told = draw(st.sampled_from(TEXTS))
    words = told.text.replace("\n", " \n ").split(" ")
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(words) - 1))
        match draw(st.sampled_from(["change", "leave out", "double", "swap", "add"])):
            case "change":
                words[at] = draw(st.sampled_from(WORDS))
            case "leave out":
                words[at] = ""
            case "double":
                words.insert(at, words[at])
            case "swap":
                other = draw(st.integers(0, len(words) - 1))
                words[at], words[other] = words[other], words[at]
            case "add":
                words.insert(at, draw(st.sampled_from(WORDS)))
    multiple = draw(st.integers(1, 12))
    return closed, WayText(" ".join(words), multiple, draw(st.integers(0, 6)), told.setup)


@settings(max_examples=60, deadline=None)
@given(broken())
def test_broken_rows_are_read_or_refused_in_a_sentence(case: tuple[bool, WayText]) -> None:
    """No traceback; what is read says the same when it is written."""
    closed, told = case
    way: Way | None = None
    for read in (_found, _stated):
        try:
            way = read(told, closed)
        except InputError:
            continue
        text = "\n".join(say_way(way, STITCHES, "us"))
        again = WayText(text, way.multiple, way.offset, way.setup, way.least)
        assert read_way(again, STITCHES, "us", closed=closed, values={}) == way


def _found(told: WayText, closed: bool) -> Way:
    return find_way(told.text, STITCHES, "us", closed=closed, setup=told.setup)


def _stated(told: WayText, closed: bool) -> Way:
    return read_way(told, STITCHES, "us", closed=closed, values={})
