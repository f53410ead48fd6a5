"""Which kind of knob a key is, by the type that the format gives it."""

from __future__ import annotations

import types
import typing
from collections.abc import Iterator
from typing import Literal, Union

from annotated_types import Ge, Gt, Le, Lt
from pydantic.fields import FieldInfo

from frogless.design.strict import FORMULA
from frogless.units import Hook, Length

Kind = Literal["length", "size", "number", "choice", "truth", "text", "pair", "list"]
"""What a knob takes.

length: a formula that gives a length. size: a length without arithmetic. pair: two, "2 cm to 6 cm".
list: several, parted by ";".
"""

_SIZES = tuple(marks[0] for marks in (Hook.__metadata__, Length.__metadata__))  # type: ignore[attr-defined]


def kind_of(info: FieldInfo) -> Kind:
    """The kind of knob that a field is."""
    if inner := _several(info.annotation):
        return "list" if Ellipsis in inner else "pair"
    return _single(info)


def kind_of_items(info: FieldInfo) -> Kind:
    """What each of a list or a pair is."""
    return _single(info)


def _single(info: FieldInfo) -> Kind:
    marks, leaves = list(_marks(info)), set(_leaves(info.annotation))
    if FORMULA in marks:
        return "length"
    if any(mark is size for mark in marks for size in _SIZES):
        return "size"
    if bool in leaves:
        return "truth"
    if leaves & {int, float}:
        return "number"
    return "choice" if named(info) else "text"


def named(info: FieldInfo) -> tuple[str | int, ...]:
    """The values that the format itself lists."""
    return tuple(_named(info.annotation))


def ends(info: FieldInfo) -> tuple[float | None, float | None]:
    """The least and the most that a number may be, as far as there are such."""
    low: float | None = None
    high: float | None = None
    for mark in _marks(info):
        match mark:
            case Ge(ge=end) | Gt(gt=end):
                low = float(end)  # type: ignore[arg-type]
            case Le(le=end) | Lt(lt=end):
                high = float(end)  # type: ignore[arg-type]
    return low, high


def _several(kind: object) -> tuple[object, ...]:
    """What stands in the tuple of a type that is one, or may be left out; () for any other."""
    if typing.get_origin(kind) is tuple:
        return typing.get_args(kind)
    if typing.get_origin(kind) in (Union, types.UnionType):
        inner = [one for one in typing.get_args(kind) if one is not type(None)]
        return _several(inner[0]) if len(inner) == 1 else ()
    if typing.get_origin(kind) is typing.Annotated:
        return _several(typing.get_args(kind)[0])
    return ()


def _named(kind: object) -> Iterator[str | int]:
    if typing.get_origin(kind) is Literal:
        yield from typing.get_args(kind)
        return
    for inner in typing.get_args(kind):
        yield from _named(inner)


def _leaves(kind: object) -> Iterator[object]:
    if typing.get_origin(kind) is Literal:
        return
    inner = typing.get_args(kind)
    if not inner:
        yield kind
    for one in inner:
        yield from _leaves(one)


def _marks(info: FieldInfo) -> Iterator[object]:
    """Everything that a field and the types in it are annotated with."""
    yield from info.metadata
    stack: list[object] = [info.annotation]
    while stack:
        kind = stack.pop()
        for mark in getattr(kind, "__metadata__", ()):
            yield from mark.metadata if isinstance(mark, FieldInfo) else (mark,)
        stack.extend(getattr(kind, "__args__", ()))
