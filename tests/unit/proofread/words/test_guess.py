"""A guess is a real word, and only where it is close."""

import pytest

from frogless.proofread.script.cut import cut
from frogless.proofread.words.glossary import entries_of
from frogless.proofread.words.guess import guess_of
from frogless.proofread.words.model import Terms
from frogless.proofread.words.own import lexicon_of
from frogless.proofread.words.tokens import Token


def _guess(word: str) -> str:
    script = cut("Special stitches\nTrellis: (dc, ch 2, dc) in one st.\n")
    lexicon = lexicon_of(script, entries_of(script), Terms("us"))
    return guess_of((Token("WORD", 0, len(word), word),), lexicon)


@pytest.mark.parametrize(
    ("slip", "word"),
    [("chian", "chain"), ("repaet", "repeat"), ("trun", "turn"), ("aroud", "around"),
     ("treliss", ""), ("trelis", "trellis")],
)  # fmt: skip
def test_a_slip_is_guessed(slip: str, word: str) -> None:
    """One letter too many or too few, another one, or two that changed places."""
    assert _guess(slip) == (f'"{word}" instead of "{slip}"' if word else "")


@pytest.mark.parametrize(
    "word", ["block", "blocks", "till", "has", "beige", "out", "stitchs", "picture"]
)
def test_another_word_is_no_slip(word: str) -> None:
    """An ordinary word is not bent to one of the trade."""
    assert _guess(word) == ""
