"""What a hook can be inserted into, from a data file: loops, posts, bars, rows further down."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType

from frogless.errors import InputError, near_names
from frogless.stitches.model import Ratio, Stitch

#: A stitch as high as it is under both loops.
AS_USUAL = Ratio(1.0, 1.0, 1.0)


@dataclass(frozen=True, slots=True)
class InsertPlace:
    """A place that steps name: `insert in front_post`.

    Args:
        how: what follows on "insert the hook"; `{key}` stands for a term.
        left_handed: `how` for a left-hander, where the words differ.
        mark: the part it adds to the symbol of a stitch; "" for none.
        height: a stitch worked there against the same one worked as usual.
        reaches: rows further down than the row below.
    """

    key: str
    how: str
    source: str
    basis: str
    left_handed: str = ""
    mark: str = ""
    height: Ratio = AS_USUAL
    reaches: int = 0

    def scaled(self, ratio: Ratio) -> Ratio:
        """A height of the same stitch worked as usual, as it is here."""
        low, typical, high = self.height.low, self.height.typical, self.height.high
        return Ratio(
            round(ratio.low * low, 2),
            round(ratio.typical * typical, 2),
            round(ratio.high * high, 2),
        )


@cache
def insert_places() -> Mapping[str, InsertPlace]:
    """Every place by key."""
    text = files("frogless.stitches").joinpath("data", "places.toml").read_text(encoding="utf-8")
    found = {key: _place(key, entry) for key, entry in tomllib.loads(text).items()}
    return MappingProxyType(found)


def insert_place(key: str) -> InsertPlace:
    """The place of that key.

    Raises:
        InputError: no such place, with the nearest ones.
    """
    known = insert_places()
    if key not in known:
        raise InputError(
            f'"{key}" is no place to insert the hook into; '
            f"accepted: {', '.join(known)}{near_names(key, known)}"
        )
    return known[key]


def worked_into(stitch: Stitch, place: InsertPlace) -> dict[str, object]:
    """What differs in a stitch when it is worked into that place."""
    shape = stitch.height_over_width
    begins = f"Work {{{stitch.key}}}, but insert the hook"
    return {
        "steps": tuple(step.put_into(place.key) for step in stitch.steps),
        "height": place.scaled(stitch.height),
        "height_over_width": shape and place.scaled(shape),
        "symbol": (*stitch.symbol, *filter(None, [place.mark])),
        "reaches": place.reaches,
        "how": f"{begins} {place.how}.",
        "left_handed": f"{begins} {place.left_handed}." if place.left_handed else "",
        "source": f"height as {stitch.terms['us'].name}, changed as usual: {place.source}",
        "basis": place.basis,
    }


def _place(key: str, entry: Mapping[str, object]) -> InsertPlace:
    values = {**entry, "key": key}
    if isinstance(factors := entry.get("height"), list):
        values["height"] = Ratio(*factors)
    return InsertPlace(**values)  # type: ignore[arg-type]
