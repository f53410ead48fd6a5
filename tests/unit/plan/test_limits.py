"""What no garment asks for is refused before every stitch of it is expanded."""

from __future__ import annotations

import pytest
from examples import FOLDER

from frogless.draft import Texts, draft_texts
from frogless.errors import InputError
from frogless.plan import limits

TOP = (FOLDER / "harvest-top" / "design.toml").read_text(encoding="utf-8")
BODY = (FOLDER / "bodies" / "dancer-3.toml").read_text(encoding="utf-8")
SWATCH = (FOLDER / "swatches" / "light-cotton.toml").read_text(encoding="utf-8")


def test_garment_of_too_many_stitches_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """At the piece that makes it too many, with how many there are."""
    draft_texts(Texts(TOP, BODY, (SWATCH,)))
    monkeypatch.setattr(limits, "MOST_IN_ALL", 5000)
    with pytest.raises(InputError, match="no more than 5,000 are planned") as raised:
        draft_texts(Texts(TOP, BODY, (SWATCH,)))
    assert raised.value.faults[0].place.key == "piece[1]"
