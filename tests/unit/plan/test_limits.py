"""What no garment asks for is refused before every stitch of it is expanded."""

from __future__ import annotations

import re

import pytest
from examples import FOLDER

from frogless.draft import Texts, draft_texts
from frogless.errors import InputError

TOP = (FOLDER / "harvest-top" / "design.toml").read_text(encoding="utf-8")
BODY = (FOLDER / "bodies" / "dancer-3.toml").read_text(encoding="utf-8")
SWATCH = (FOLDER / "swatches" / "light-cotton.toml").read_text(encoding="utf-8")


def test_garment_of_too_many_stitches_is_refused() -> None:
    """At the piece that makes it too many, with how many there are."""
    draft_texts(Texts(TOP, BODY, (SWATCH,)))
    vast = re.sub(r"(?m)^(panel|length) = .*", r'\1 = "16 m"', TOP)
    with pytest.raises(InputError, match="no more than 1,000,000 are planned") as raised:
        draft_texts(Texts(vast, BODY, (SWATCH,)))
    assert raised.value.faults[0].place.key == "piece[1]"
