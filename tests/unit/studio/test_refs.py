"""What garments are made of, by ref."""

from __future__ import annotations

import pytest

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.library.bundle import MOST_SWATCHES, Bundle, KeptGarment, pack
from frogless.studio.library.unbundle import unpack

DAY = "2026-07-01T12:00:00+00:00"
COTTON = "example:light-cotton"


def test_swatches_are_what_they_stand_for() -> None:
    """In their order."""
    assert [one.ref for one in refs.swatches([COTTON] * MOST_SWATCHES)] == [COTTON] * MOST_SWATCHES


def test_more_swatches_than_a_garment_has_are_refused() -> None:
    """The same number that a library can hold, or it could not come in again."""
    with pytest.raises(InputError, match="30 swatches at most, these are 31"):
        refs.swatches([COTTON] * 31)
    for number, comes_in in ((30, True), (31, False)):
        garment = KeptGarment("Skirt", "example:ring-skirt", "example:dancer-3", (COTTON,) * number)
        data = pack(Bundle((), (garment,)), "1", DAY)
        if comes_in:
            assert unpack(data).garments == (garment,)
        else:
            with pytest.raises(InputError, match="cannot be read"):
                unpack(data)


def test_swatch_that_is_not_there_is_refused() -> None:
    """Among others that are."""
    with pytest.raises(InputError, match="not there any more"):
        refs.swatches([COTTON, "example:nothing"])
