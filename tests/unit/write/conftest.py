"""Words of both dialects for the tests of this folder."""

from __future__ import annotations

import pytest

from frogless.stitches.load import dictionary
from frogless.write.phrases import phrases
from frogless.write.words import Words


@pytest.fixture
def us() -> Words:
    """US terms in English."""
    return Words(dictionary(), "us", phrases())


@pytest.fixture
def uk() -> Words:
    """UK terms in English."""
    return Words(dictionary(), "uk", phrases())
