"""What can stand in a design document, made from the models that check it."""

from __future__ import annotations

import types
import typing
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, BeforeValidator
from pydantic.fields import FieldInfo
from pydantic_core import PydanticUndefined

from frogless.body.measurements import known_measurements
from frogless.design.document import PiecesDesign, TubeDesign
from frogless.design.strict import FORMULA
from frogless.files import Letter
from frogless.units import Hook, Length

DESIGNS: tuple[type[BaseModel], ...] = (TubeDesign, PiecesDesign)
KINDS = ("construction", "kind")
"""The keys that say which of several tables it is."""

READ_AS = {
    get_args(Hook)[1]: "the size of a hook, such as 3.75 mm",
    get_args(Length)[1]: "a length, such as 2.5 cm",
    get_args(Letter)[1]: "a capital letter",
    FORMULA: "a length or a formula",
}
"""What marks a field, and what is written there; all of it in quotes."""

STITCH = "a stitch, such as double_crochet"
NAMED = {
    "stitch": STITCH,
    "base_stitch": STITCH,
    "column_stitch": STITCH,
    "body": "a measurement, such as hip_girth",
    "pattern": "a pattern, such as shell",
    "with": "chain, or a foundation such as foundation_double_crochet",
    "on": "a list of edges, such as front.neck",
    "into": "a list of edges, such as front.left armhole",
    "first": "a list of edges, such as front.left side",
    "second": "a list of edges, such as back.right side",
}
"""What a key of that name holds, where it is plain text or a list of it."""

PLAIN: dict[object, str] = {
    bool: "true or false",
    int: "a whole number",
    float: "a number",
    str: "text",
}


@dataclass(frozen=True, slots=True)
class Key:
    """One key: what is accepted, what holds when it is left out, and whether it must be there."""

    name: str
    accepted: str
    default: str = ""
    needed: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """One table: how its head may be written, what it is for, its keys."""

    heads: tuple[str, ...]
    told: str
    keys: tuple[Key, ...]


@cache
def tables() -> tuple[Table, ...]:
    """Every table of a design document, in the order of the document, each once."""
    heads: dict[type[BaseModel], list[str]] = {}
    for design in DESIGNS:
        _gather(design, "", heads)
    top = {key.name: key for design in DESIGNS for key in _keys(design)}
    shared = (
        Table(
            ("At the top of the file",),
            "What every design begins with.",
            tuple(key for key in top.values() if not _has_table(key)),
        ),
    )
    return shared + tuple(
        Table(tuple(dict.fromkeys(found)), _told(model), tuple(_keys(model)))
        for model, found in heads.items()
    )


def search(words: str) -> tuple[Table, ...]:
    """The tables with those keys in which all the words occur; all of them for no words."""
    asked = words.casefold().split()
    found = (_only(table, asked) for table in tables())
    return tuple(table for table in found if table.keys)


def _only(table: Table, asked: Sequence[str]) -> Table:
    head = " ".join((*table.heads, table.told)).casefold()
    keys = tuple(
        key
        for key in table.keys
        if all(word in f"{head} {key.name} {key.accepted}".casefold() for word in asked)
    )
    return Table(table.heads, table.told, keys)


def _gather(model: type[BaseModel], head: str, heads: dict[type[BaseModel], list[str]]) -> None:
    for name, info in model.model_fields.items():
        path = f"{head}.{info.alias or name}".lstrip(".")
        for inner in _models(info.annotation):
            written = _head(path, inner, info.annotation)
            known = inner in heads
            heads.setdefault(inner, []).append(written)
            if not known or written not in heads[inner]:
                _gather(inner, path, heads)


def _head(path: str, model: type[BaseModel], annotation: object) -> str:
    """ "[[piece]], construction = "panel"": what is written above the keys of a table."""
    if get_origin(annotation) is dict:
        path = f"{path}.name"
    bracketed = f"[[{path}]]" if _is_listed(annotation) else f"[{path}]"
    for kind in KINDS:
        field = model.model_fields.get(kind)
        if field is not None and get_origin(field.annotation) is Literal and field.is_required():
            values = get_args(field.annotation)
            return f'{bracketed} with {kind} = "{values[0]}"' if len(values) == 1 else bracketed
    return bracketed


def _told(model: type[BaseModel]) -> str:
    """The first paragraph of what its model says of itself."""
    return " ".join((model.__doc__ or "").strip().partition("\n\n")[0].split())


def _keys(model: type[BaseModel]) -> Iterator[Key]:
    for name, info in model.model_fields.items():
        written = info.alias or name
        accepted = _accepted(info.annotation, tuple(info.metadata))
        yield Key(
            written,
            NAMED.get(written, accepted) if accepted in TEXTS else accepted,
            _default(info),
            info.is_required(),
        )


def _default(info: FieldInfo) -> str:
    value = info.get_default(call_default_factory=True)
    if value in (None, PydanticUndefined, (), {}, "") or isinstance(value, BaseModel):
        return ""
    if isinstance(value, bool):
        return str(value).lower()
    return f"{value:g}" if isinstance(value, float) else str(value)


def _has_table(key: Key) -> bool:
    return key.accepted.startswith(TABLE)


TABLE = "a table"
TEXTS = ("text", "a list, each text")


def _accepted(annotation: object, marks: tuple[object, ...]) -> str:
    """What may be written for a field, in words."""
    for mark in marks:
        if isinstance(mark, str | BeforeValidator) or callable(getattr(mark, "func", None)):
            told = next((words for known, words in READ_AS.items() if known == mark), "")
            if told:
                return told
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _accepted(inner[0], (*_unpacked(inner[1:]), *marks))
    if origin in (Union, types.UnionType):
        told_each = (_accepted(one, ()) for one in inner if one is not type(None))
        return " or ".join(dict.fromkeys(told_each))
    if origin is Literal:
        return " or ".join(f'"{v}"' if isinstance(v, str) else str(v) for v in inner)
    if origin is tuple:
        return _listed(inner)
    if origin is dict:
        return f"{TABLE} of names, each with {_accepted(inner[1], ())}"
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return TABLE
    return _between(PLAIN.get(annotation, "anything"), marks)


def _listed(inner: tuple[Any, ...]) -> str:
    if next(iter(_models(inner[0])), None) is not None:
        return f"{TABLE} that may stand again"
    if inner[-1] is Ellipsis:
        return f"a list, each {_accepted(inner[0], ())}"
    return f"a list of {len(inner)}, each {_accepted(inner[0], ())}"


def _unpacked(marks: Sequence[object]) -> Iterator[object]:
    for mark in marks:
        yield from mark.metadata if isinstance(mark, FieldInfo) else (mark,)


def _between(plain: str, marks: Sequence[object]) -> str:
    """A number with its limits, as far as there are any."""
    limits = {
        name: f"{value:g}"
        for mark in marks
        for name in ("ge", "gt", "le", "lt")
        if isinstance(value := getattr(mark, name, None), int | float)
    }
    low = limits.get("ge") or (f"more than {limits['gt']}" if "gt" in limits else "")
    high = limits.get("le") or (f"less than {limits['lt']}" if "lt" in limits else "")
    if low and high:
        return f"{plain}, {low}{' to ' if 'ge' in limits else ', up to '}{high}"
    if low:
        return f"{plain}, {low} or more" if "ge" in limits else f"{plain}, {low}"
    return f"{plain}, {high} at most" if high else plain


def _is_listed(annotation: object) -> bool:
    inner = get_args(annotation)
    return get_origin(annotation) is tuple or any(_is_listed(one) for one in inner)


def _models(annotation: object) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for one in typing.get_args(annotation):
        yield from _models(one)


def names(words: str) -> tuple[tuple[str, str], ...]:
    """The measurements that a formula may name, and how each is taken, in which all words occur."""
    asked = words.casefold().split()
    return tuple(
        (key, one.how_taken)
        for key, one in known_measurements().items()
        if one.kind != "mass" and all(word in f"{key} {one.how_taken}".casefold() for word in asked)
    )
