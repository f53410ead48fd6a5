"""Sound patterns to break."""

from __future__ import annotations

import pytest
from examples import Example, drafted, subject

from frogless.proof.model import Subject


@pytest.fixture(scope="session")
def ring() -> Subject:
    """Shaped and turned, with markers, picots, covered elastic and a strand."""
    return subject(drafted(Example("ring-dance-skirt")))


@pytest.fixture(scope="session")
def procession() -> Subject:
    """A spiral from a chain, with a ribbed band and its seams."""
    return subject(drafted(Example("procession-skirt")))


@pytest.fixture(scope="session")
def torchlight() -> Subject:
    """Rows in stripes of two colours."""
    return subject(drafted(Example("torchlight-shawl")))
