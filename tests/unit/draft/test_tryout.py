"""Designs tried on many bodies."""

from __future__ import annotations

import pytest
from examples import FOLDER

from frogless.errors import Fault, Impossible, InputError, Place, ProofFailed
from frogless.tryout import FAULT, Tried, data, groups, reason, table, tryout

DESIGN = FOLDER / "whirl-skirt" / "design.toml"
SWATCH = FOLDER / "swatches" / "light-cotton.toml"


@pytest.fixture(scope="module")
def tried() -> tuple[Tried, ...]:
    """A skirt on children's sizes and three surveyed women."""
    return tryout([DESIGN], [SWATCH], groups(["child"], 3))


def test_each_group_is_counted(tried: tuple[Tried, ...]) -> None:
    """What came out and what did not are all of them."""
    children, surveyed = tried
    assert (children.group, children.bodies) == ("sizes child", 8)
    assert (surveyed.bodies, surveyed.drafted, surveyed.refusals) == (3, 3, ())
    assert {one.design for one in tried} == {"whirl-skirt"}


def test_bodies_refused_for_one_reason_stand_together(tried: tuple[Tried, ...]) -> None:
    """No child's hip depth can be estimated: eight bodies, one reason, one of them as example."""
    (refusal,) = tried[0].refusals
    assert refusal.reason == "waist_to_hip is needed and cannot be estimated"
    assert (refusal.bodies, refusal.example) == (8, "2")
    assert "measure it from the waist straight down" in refusal.sentence
    assert tried[0].drafted == 0


def test_progress_is_told_for_every_body() -> None:
    """The title, the group and the number."""
    told: list[str] = []
    tryout([DESIGN], [SWATCH], groups([], 2), told.append)
    assert told == [f"Whirl skirt, surveyed women: {n} of 2" for n in (1, 2)]


def test_the_table_has_a_line_for_each_group(tried: tuple[Tried, ...]) -> None:
    """And its refusals below."""
    header, children, refusal, surveyed = table(tried).splitlines()
    assert header.split() == ["design", "bodies", "tried", "drafted", "refused"]
    assert children.split() == ["whirl-skirt", "sizes", "child", "8", "0", "8"]
    assert refusal == "  8 × waist_to_hip is needed and cannot be estimated"
    assert surveyed.split()[-3:] == ["3", "3", "0"]


def test_the_same_is_data(tried: tuple[Tried, ...]) -> None:
    """Counts and reasons by name."""
    children, surveyed = data(tried)
    assert (children["tried"], children["drafted"], surveyed["drafted"]) == (8, 0, 3)
    assert surveyed["refused"] == []


@pytest.mark.parametrize(
    ("error", "expected"),
    [
        (
            Impossible("at the hip 3.5 cm are missing; widen sooner"),
            "at the hip … are missing",
        ),
        (
            InputError.of(
                [Fault("is needed and cannot be estimated; ask", Place(key="measurements.x"))]
            ),
            "x is needed and cannot be estimated",
        ),
        (ProofFailed(["counts: 3 of 4", "ease: off"]), f"{FAULT}: not proven (counts, ease)"),
        (TypeError("no tube"), f"{FAULT}: TypeError"),
    ],
)
def test_a_reason_has_no_numbers(error: Exception, expected: str) -> None:
    """So that bodies refused for the same reason are counted together; faults are called so."""
    assert reason(error) == expected


def test_a_size_table_that_is_not_there_is_refused() -> None:
    """By those that are."""
    with pytest.raises(InputError, match='no size table "men"; known are women, child'):
        groups(["men"], 0)
