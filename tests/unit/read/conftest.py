"""Vocabularies of both dialects for the tests of this folder."""

from __future__ import annotations

import pytest

from frogless.read.vocabulary import Vocabulary, vocabulary
from frogless.stitches.load import dictionary


@pytest.fixture
def us() -> Vocabulary:
    """US terms."""
    return vocabulary(dictionary(), "us")


@pytest.fixture
def uk() -> Vocabulary:
    """UK terms."""
    return vocabulary(dictionary(), "uk")
