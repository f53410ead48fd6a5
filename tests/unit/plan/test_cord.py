"""Cords and straps."""

from __future__ import annotations

from pathlib import Path

import pytest
from pieces_designs import garment

from frogless.errors import InputError


def cord(**keys: object) -> str:
    """A cord."""
    given = {"construction": "cord", "name": "strap", "length": "40 cm", **keys}
    return "[[piece]]\n" + "\n".join(
        f'{key} = "{value}"' if isinstance(value, str) else f"{key} = {value}"
        for key, value in given.items()
    )


def test_a_cord_is_a_chain_when_it_has_no_rows(tmp_path: Path) -> None:
    """40 cm at 18 in 10 cm, cut at its end."""
    made = garment(tmp_path, cord(make=2))
    (row,) = made.plan.program.pieces[0].rows
    assert (row.count, row.end.fasten_off, made.piece("strap").number_made) == (72, True, 2)
    assert made.faults() == {}
    assert [edge.name for edge in made.edges("strap")] == ["first side"]


def test_a_strap_is_worked_back_along_when_it_has_rows(tmp_path: Path) -> None:
    """Three rows of double crochet are 3 cm wide."""
    made = garment(tmp_path, cord(stitch="double_crochet", rows=3))
    assert made.piece("strap").counts == (72, 72, 72, 72)
    assert made.measure("strap", "width").got.value == pytest.approx(30)
    assert made.measure("strap", "length").got.value == pytest.approx(400)
    assert made.faults() == {}
    places = {edge.name: edge.places for edge in made.edges("strap")}
    assert places == {"first side": (72,), "last side": (72,), "right end": (3,), "left end": (3,)}


def test_a_stitch_that_was_not_swatched_is_told_of(tmp_path: Path) -> None:
    """The chain's gauge is an estimate."""
    remarks = garment(tmp_path, cord()).plan.remarks
    assert [remark.name for remark in remarks] == ["cord_gauge"]
    assert not garment(tmp_path, cord(stitch="double_crochet", rows=1)).plan.remarks


def test_a_cord_of_no_length_is_refused(tmp_path: Path) -> None:
    """By its key."""
    with pytest.raises(InputError, match=r"piece\.1\.length"):
        garment(tmp_path, cord(length="0 cm"))
