"""What a pattern is published from."""

from __future__ import annotations

from examples import Example
from published import shown


def test_stitches_are_called_as_the_dialect_calls_them() -> None:
    """By name and in short; the dictionary is the one it was drafted with."""
    us, uk = shown(Example(), "us"), shown(Example(), "uk")
    assert (us.name("double_crochet"), us.short("double_crochet")) == ("double crochet", "dc")
    assert (uk.name("double_crochet"), uk.short("double_crochet")) == ("treble crochet", "tr")
    assert us.stitches is us.basis.stitches


def test_phrases_are_those_of_the_language() -> None:
    """English when nothing else was asked for."""
    assert shown(Example()).phrases.language == "en"
