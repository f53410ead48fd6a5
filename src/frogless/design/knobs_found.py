"""The knobs of a design, found by walking through its tables."""

from __future__ import annotations

import typing
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from pydantic.fields import FieldInfo

from frogless.design.document import Design
from frogless.design.knobs_choices import Choices, choices_of, parameters_of
from frogless.design.knobs_kinds import Kind, ends, kind_of, kind_of_items
from frogless.design.knobs_words import Words, words
from frogless.design.strict import Strict
from frogless.files import Document
from frogless.stitches.model import Dialect
from frogless.toml_text import Steps

ORDER = (
    "garment", "start", "section", "edging", "waist", "strand", "piece", "join", "work", "colours",
    "gauge",
)  # fmt: skip
"""Groups in the order in which a garment is thought of."""

TOP = "About"
"""The title of the group of the keys at the top of the file."""


@dataclass(frozen=True, slots=True)
class Knob:
    """Something in a design that a person may turn.

    Args:
        path: the way to it: `("section", 1, "points")`, places counted from 0.
        label: what it is called in its group.
        value: what is written, as a person would type it; "" where nothing is.
        choices: what is accepted, or offered where other values are accepted too, each with its name.
        default: what holds where nothing is written, in words; "" where something has to be.
        low, high: the ends of a number, where it has any.
        items: of a pair or a list, what each of it is.
        unit: of a number that is written without one; "" for the unit of the page.
    """

    path: Steps
    label: str
    kind: Kind
    value: str
    choices: Choices
    hint: str
    default: str
    written: bool
    low: float | None = None
    high: float | None = None
    items: Kind | None = None
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Knobs that belong together, under one heading.

    Args:
        path: the table that they are of; () for the top of the file.
        may_go: whether this table can be taken away.
    """

    title: str
    knobs: tuple[Knob, ...]
    path: Steps = ()
    may_go: bool = False


def found(document: Document[Design], terms: Dialect = "us") -> tuple[Group, ...]:
    """The groups of knobs of a design, in the order in which a garment is thought of."""
    walk = _Walk(document.checked, terms)
    top = Group(TOP, tuple(walk.knobs(document.checked, document.data, ())))
    groups = [top, *walk.inner(document.checked, document.data, (), "")]
    order = {key: place for place, key in enumerate(ORDER)}
    groups.sort(key=lambda group: order[str(group.path[0])] if group.path else -1)
    return tuple(_beside(groups, document.checked))


def _beside(groups: list[Group], design: Design) -> Iterator[Group]:
    """Knobs that belong to another group than that of their own table, moved there."""
    moved: dict[str, list[Knob]] = {}
    kept: list[Knob] = []
    for knob in groups[0].knobs:
        key = str(knob.path[0])
        home = words(type(design), key).beside
        (moved.setdefault(home, []) if home else kept).append(knob)
    yield replace(groups[0], knobs=tuple(kept))
    for group in groups[1:]:
        more = moved.get(str(group.path[0]), []) if len(group.path) == 1 else []
        yield replace(group, knobs=(*group.knobs, *more))


@dataclass(frozen=True, slots=True)
class _Walk:
    design: Design
    terms: Dialect

    def inner(
        self, part: Strict, data: Mapping[str, Any], path: Steps, title: str
    ) -> Iterator[Group]:
        """The groups of the tables in a table."""
        for key, info, value in _fields(part):
            said = words(type(part), key)
            if not said.group or value is None or key not in data:
                continue
            inside = value if isinstance(value, tuple) else (value,)
            for place, one in enumerate(inside):
                listed = isinstance(value, tuple)
                steps = (*path, key, place) if listed else (*path, key)
                raw = data[key][place] if listed else data[key]
                name = f"{said.label}: {one.name}" if hasattr(one, "name") else said.label
                heading = f"{title}, {name}" if title else name
                may_go = len(inside) > 1 if listed and _is_needed(info) else not info.is_required()
                yield Group(heading, tuple(self.knobs(one, raw, steps)), steps, may_go)
                yield from self.inner(one, raw, steps, heading)

    def knobs(
        self, part: Strict, data: Mapping[str, Any], path: Steps, before: str = ""
    ) -> Iterator[Knob]:
        """The knobs of a table, and of the tables in it that are no groups of their own."""
        for key, info, value in _fields(part):
            said = words(type(part), key)
            if said.group or not said.knob:
                continue
            steps = (*path, key)
            if isinstance(value, Strict):
                yield from self.knobs(value, data[key], steps, f"{before}{said.label}, ")
            elif _holds_tables(value):
                for place, one in enumerate(value):
                    label = f"{before}{said.label} {place + 1}, "
                    yield from self.knobs(one, data[key][place], (*steps, place), label)
            elif isinstance(value, Mapping):
                yield from self._entries(part, key, data.get(key, {}), steps, before)
            elif key == "notes":
                yield from _notes(said, data.get(key, ()), steps)
            elif not _is_table(info):
                yield self._knob(part, key, info, said, data, steps, before)

    def _entries(
        self, part: Strict, key: str, data: Mapping[str, Any], path: Steps, before: str
    ) -> Iterator[Knob]:
        """Knobs for names that are not of the format: own lengths, colours, numbers of patterns."""
        said = words(type(part), key)
        if key != "parameters":
            kind: Kind = "length" if key == "lengths" else "text"
            for name, value in data.items():
                label = before + (f"{said.label} {name}" if kind == "text" else name)
                yield Knob((*path, name), label, kind, str(value), (), said.hint, "", written=True)
            return
        for name, number in parameters_of(part, self.design).items():
            written = name in data
            yield Knob(
                (*path, name), f"{before}{name.replace('_', ' ')}", "number",
                str(data[name]) if written else "", (), f"{said.label}, {number.low} to {number.high}",
                str(number.default), written, number.low, number.high,
            )  # fmt: skip

    def _knob(
        self,
        part: Strict,
        key: str,
        info: FieldInfo,
        said: Words,
        data: Mapping[str, Any],
        path: Steps,
        before: str,
    ) -> Knob:
        sort = _sort(type(part), key)
        choices = choices_of(said, info, self.design, self.terms)
        written = key in data
        value = shown(data[key], sort.kind) if written else ""
        default = dict(choices).get(sort.default, sort.default)
        if sort.kind == "choice" and written and value not in dict(choices):
            choices = ((value, value), *choices)
        return Knob(
            path, before + said.label, sort.kind, value, choices, said.hint, default, written,
            sort.low, sort.high, sort.items, said.unit,
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Sort:
    """What is the same for a key of a table in every design."""

    kind: Kind
    items: Kind | None
    low: float | None
    high: float | None
    default: str


@cache
def _sort(model: type[Strict], key: str) -> _Sort:
    info = next(i for name, i in model.model_fields.items() if key == (i.alias or name))
    said = words(model, key)
    kind = kind_of(info)
    items = kind_of_items(info) if kind in ("pair", "list") else None
    if said.choices or said.source:
        kind = "choice"
    low, high = ends(info)
    return _Sort(kind, items, low, high, _default(info, said, kind))


def _fields(part: Strict) -> Iterator[tuple[str, FieldInfo, Any]]:
    for name, info in type(part).model_fields.items():
        yield info.alias or name, info, getattr(part, name)


def _holds_tables(value: object) -> bool:
    return isinstance(value, tuple) and bool(value) and isinstance(value[0], Strict)


def _is_table(info: FieldInfo) -> bool:
    """Whether a field that is empty now would hold tables."""
    stack: list[object] = [info.annotation]
    while stack:
        kind = stack.pop()
        if isinstance(kind, type) and issubclass(kind, Strict):
            return True
        stack.extend(typing.get_args(kind))
        if typing.get_origin(kind) is dict:
            return True
    return False


def _is_needed(info: FieldInfo) -> bool:
    return info.is_required()


def _notes(said: Words, notes: tuple[str, ...], path: Steps) -> Iterator[Knob]:
    for place, note in enumerate(notes):
        label = f"{said.label} {place + 1}"
        yield Knob((*path, place), label, "text", note, (), said.hint, "", written=True)


def shown(value: object, kind: Kind) -> str:
    """A value of the document as a person would type it."""
    match value:
        case bool():
            return str(value).lower()
        case list() | tuple():
            parted = " to " if kind == "pair" else ", " if _are_counts(value) else "; "
            return parted.join(shown(one, kind) for one in value)
        case float():
            return f"{value:g}" if float(f"{value:g}") == value else repr(value)
    return str(value)


def _are_counts(values: list[Any] | tuple[Any, ...]) -> bool:
    return all(isinstance(value, int) for value in values)


def _default(info: FieldInfo, said: Words, kind: Kind) -> str:
    if info.is_required():
        return ""
    if said.default or info.default is None:
        return said.default
    return shown(info.get_default(call_default_factory=True), kind)
