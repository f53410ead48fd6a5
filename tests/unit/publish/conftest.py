"""The sample pattern, for every format."""

from __future__ import annotations

import pytest
from sample_pattern import pattern

from frogless.publish.blocks import Document


@pytest.fixture(scope="session")
def document() -> Document:
    """A skirt for one body, about four pages long."""
    return pattern()
