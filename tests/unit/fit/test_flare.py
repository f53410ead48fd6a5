"""Fullness in words."""

from __future__ import annotations

import math

import pytest

from frogless.fit.flare import describe_fullness, flare_sentence, fullness


@pytest.mark.parametrize(
    ("lam", "word"),
    [
        (0.0, "tube"),
        (0.005, "tube"),
        (0.1, "cone"),
        (-0.1, "cone"),
        (0.5, "cone"),
        (1.0, "flat"),
        (1.05, "flat"),
        (1.5, "ruffle"),
    ],
)
def test_a_word_is_given_when_the_fullness_is_known(lam: float, word: str) -> None:
    """Tube, cone, flat and ruffle by their bounds."""
    assert describe_fullness(lam) == word


def test_fullness_is_one_when_a_round_adds_a_full_circle() -> None:
    """2 pi h / w stitches per round lie flat."""
    flat_rate = 2 * math.pi * 10 / 5.5
    assert fullness(flat_rate, 5.5, 10) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("lam", "words"),
    [
        (0.0, "tube"),
        (1.0, "flat"),
        (2.0, "360° more"),
        (0.16, "surveyed women"),
        (-0.2, "Narrows: 0.20"),
    ],
)
def test_a_sentence_says_what_it_makes_when_a_section_is_shaped(lam: float, words: str) -> None:
    """Each kind has its sentence."""
    assert words in flare_sentence(lam)
