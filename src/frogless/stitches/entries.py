"""One entry of a dictionary file: its keys read one by one, and what it leaves out filled in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from types import MappingProxyType
from typing import Any, get_args

from frogless.errors import InputError, near_names
from frogless.stitches.groups import group_values
from frogless.stitches.model import Dialect, Stitch
from frogless.stitches.node_data import known_stitch, read_nodes
from frogless.stitches.places import insert_place, worked_into
from frogless.stitches.steps import closes, loops_after
from frogless.stitches.values import READERS, read_values

Known = Mapping[str, Stitch]

#: Every key that an entry may have.
KEYS = frozenset(READERS) | {"works"}

_DIALECTS: tuple[Dialect, ...] = get_args(Dialect)
_NAMED = frozenset(_DIALECTS)
_COUNTED_KEYS = frozenset({"stands_on", "leaves", "turning_chain", "height", "width", "steps"})
_SAID = frozenset({"how", "source", "basis"})
#: What an entry must have, by how it is written.
_WHOLE = _NAMED | _COUNTED_KEYS | _SAID | {"kind"}
_GROUP = _NAMED | _SAID | {"kind", "works"}
_LIKE = _NAMED | {"like"}
#: What is a stitch's own, and not taken over from the one that it is like.
_OWN = frozenset({"key", "terms", "terms_basis", "also", "abroad", "yarn_basis", "like", "into"})


def read_stitch(key: str, entry: Mapping[str, Any], known: Known) -> Stitch:
    """The stitch of an entry.

    Args:
        known: the stitches that it may be like, or may work.

    Raises:
        InputError: a key missing, unknown or not understood; or it does not close with one loop.
    """
    _check_keys(entry)
    given: dict[str, Any] = read_values(entry)
    given["terms"] = MappingProxyType({one: given.pop(one) for one in _DIALECTS})
    if "how" in given:  # a sentence of its own is not left to another's left-handed one
        given.setdefault("left_handed", "")
    stitch = Stitch(**{**_filled_in(entry, known), **given, "key": key})
    if not closes(stitch):
        raise InputError(
            f"its steps leave {', '.join(map(str, loops_after(stitch.steps)))} loops on the hook; "
            "a stitch ends with 1 and never has fewer"
        )
    return stitch


def _filled_in(entry: Mapping[str, Any], known: Known) -> dict[str, Any]:
    """What the entry does not say itself: from what it works, or from what it is like."""
    if "works" in entry:
        return group_values(read_nodes(entry["works"], {}, known), known)
    if "like" not in entry:
        return {}
    base = known[known_stitch(entry["like"], known)]
    if base.kind == "group":
        raise InputError(f'it is like "{base.key}", which is a group; write what it works')
    kept = {f.name: getattr(base, f.name) for f in fields(base) if f.name not in _OWN}
    return {**kept, **(worked_into(base, insert_place(entry["into"])) if "into" in entry else {})}


def _check_keys(entry: Mapping[str, Any]) -> None:
    if unknown := sorted(entry.keys() - KEYS):
        raise InputError(f'unknown key "{unknown[0]}"{near_names(unknown[0], KEYS)}')
    needed = _needed(entry)
    if missing := sorted(needed - entry.keys()):
        raise InputError(f"{', '.join(missing)} missing")
    if "works" in entry and entry["kind"] != "group":
        raise InputError(f'kind is "{entry["kind"]}"; what has works is a group')
    if "works" in entry and (counted := sorted(entry.keys() & (_COUNTED_KEYS | {"like", "into"}))):
        raise InputError(f"{counted[0]} of a group follows from what it works; leave it out")


def _needed(entry: Mapping[str, Any]) -> frozenset[str]:
    if "works" in entry or entry.get("kind") == "group":
        return _GROUP
    if "like" in entry:
        return _LIKE if "into" in entry else _LIKE | _SAID
    return _WHOLE | ({"like"} if "into" in entry else frozenset())
