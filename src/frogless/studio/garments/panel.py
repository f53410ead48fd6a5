"""The panel "Change it": the knobs of a design in groups, most used first, and how they are turned."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from frogless.design.knobs import Group, Knob, add, knobs, names_in_formulas, parts, take_away, turn
from frogless.errors import InputError
from frogless.publish.drawings import slug
from frogless.stitches.model import Dialect
from frogless.studio.garments.faults import in_words, knob_name, path_named
from frogless.toml_text import Steps
from frogless.units import Units

ADDS, TAKES = "add:", "take:"
"""What the names of changes begin with that are no turn of a knob."""

Changes = tuple[tuple[str, str], ...]
"""Names of knobs, and what is to be written there."""

MOST_USED = "knobs-most-used"
"""The id of the group that stands open."""

MOST_QUICK = 12
"""Knobs in the group that stands open; what is beyond stays in its own group."""

QUICK: tuple[tuple[str, ...], ...] = (
    ("garment", "length"),
    ("piece", "*", "depth"),
    ("piece", "*", "length"),
    ("lengths", "*"),
    ("start", "ease"),
    ("section", "*", "ease"),
    ("section", "*", "points"),
    ("piece", "*", "ease"),
    ("edging", "pattern"),
)
"""Knobs that are turned most, by the way to them; * is any place in a list, or any name."""


SECTIONS = QUICK.index(("section", "*", "ease"))


@dataclass(frozen=True, slots=True)
class Field:
    """A knob as a field of a form.

    Args:
        name: of the field, and of the knob in what a form sends.
        typed: what stands in it: what is written in the design, or what was typed and refused.
        as_is: what the design has, "" when nothing.
        free: other values than the choices are accepted too.
        comes: the length that the formula in it gives for the body, and in words what it `reads`.
        error: what is wrong; `drafted` when what is written can be read and not be made.
    """

    name: str
    id: str
    label: str
    kind: str
    typed: str
    as_is: str
    choices: tuple[tuple[str, str], ...]
    hint: str
    default: str
    unit: str
    written: bool
    free: bool = False
    error: str = ""
    drafted: bool = False
    comes: str = ""
    reads: str = ""


@dataclass(frozen=True, slots=True)
class FieldGroup:
    """Fields under one title; `more` are those that nothing is written in.

    Args:
        goes: name of the table when it can be taken away; "" when it cannot.
    """

    id: str
    title: str
    fields: tuple[Field, ...]
    more: tuple[Field, ...] = ()
    open: bool = False
    goes: str = ""


@dataclass(frozen=True, slots=True)
class Panel:
    """All of it.

    Args:
        adds: what can be added, with what it is called.
        names: that lengths may be made of, with what each is.
        error: why there is none.
    """

    groups: tuple[FieldGroup, ...] = ()
    adds: tuple[tuple[str, str], ...] = ()
    names: tuple[tuple[str, str], ...] = ()
    error: str = ""

    def fields(self) -> dict[str, Field]:
        """Every field by its name."""
        return {f.name: f for group in self.groups for f in (*group.fields, *group.more)}

    def called(self, name: str) -> str:
        """A knob with the title of its group: "Waist to hip: least gap"; "" where there is none."""
        for group in self.groups:
            for field in (*group.fields, *group.more):
                if field.name == name:
                    label = field.label[:1].lower() + field.label[1:]
                    said = field.label if group.id == MOST_USED else f"{group.title}: {label}"
                    return said[:1].upper() + said[1:]
        return ""


@dataclass(frozen=True, slots=True)
class Turned:
    """A design after its knobs were turned.

    Args:
        text: with what could be turned.
        errors: sentence by the name of the field that was refused.
        told: what was turned, in words: "Bricks: ease 6 cm → 8 cm".
    """

    text: str
    errors: tuple[tuple[str, str], ...]
    told: str


@lru_cache(maxsize=64)
def panel(text: str, terms: Dialect) -> Panel:
    """The panel of a design."""
    try:
        groups = knobs(text, terms)
        adds = tuple((_part_name(one.what, one.at), one.label) for one in parts(text))
    except InputError as error:
        return Panel(error=str(error))
    quick = tuple(_quick(groups))
    moved = {knob.path for _, knob in quick}
    first = FieldGroup(
        MOST_USED,
        "Most used",
        tuple(_field(knob, f"{title}: {knob.label}" if title else "") for title, knob in quick),
        open=True,
    )
    return Panel(
        (first, *(_group(group, moved) for group in groups)), adds, names_in_formulas(text)
    )


def _quick(groups: Iterable[Group]) -> Iterator[tuple[str, Knob]]:
    """What is turned most, with the title of its group: sections one after the other."""
    groups = tuple(groups)
    found = [
        (_turn(place), _short(group), knob)
        for group in groups
        for knob in group.knobs
        for place, way in enumerate(QUICK)
        if _is_at(knob.path, way) and _is_of_use(knob, group)
    ]
    shared = _shared(groups, tuple(knob for *_, knob in found))
    found = [one for one in found if one[2].path[0] != "lengths" or one[2].path[1] in shared]
    found = [one for one in found if one[2].path[0] != "piece" or one[2].value not in shared]
    found.sort(key=lambda one: one[0])
    yield from ((title, knob) for _, title, knob in found[:MOST_QUICK])


def _shared(groups: tuple[Group, ...], quick: tuple[Knob, ...]) -> frozenset[str]:
    """Own lengths to be turned by themselves.

    Not those that nothing uses, nor one that is all that a single knob beside it says.
    """
    every = [knob for group in groups for knob in group.knobs if knob.written]
    found = set()
    for name in (str(knob.path[1]) for knob in quick if knob.path[0] == "lengths"):
        word = re.compile(rf"\b{re.escape(name)}\b")
        uses = [one for one in every if one.path != ("lengths", name) and word.search(one.value)]
        alone = len(uses) == 1 and uses[0].value == name and uses[0] in quick
        if uses and not alone:
            found.add(name)
    return frozenset(found)


def _is_of_use(knob: Knob, group: Group) -> bool:
    """Whether turning it does anything: a straight section has neither ease nor points."""
    if knob.path[-1] in ("length", "depth"):
        return knob.written
    shape = next((one.value for one in group.knobs if one.path[-1] == "shape"), "shaped")
    return knob.written or knob.path[0] != "section" or shape == "shaped"


def _turn(place: int) -> int:
    """The order in the group; ease and points of a section stay together."""
    return SECTIONS if QUICK[place][0] == "section" else place


def _is_at(path: tuple[str | int, ...], way: tuple[str, ...]) -> bool:
    return len(path) == len(way) and all(w in ("*", p) for p, w in zip(path, way, strict=True))


def _short(group: Group) -> str:
    """ "Bricks" of "Section: bricks"; "" of the garment itself, which needs no name."""
    name = group.title.rpartition(": ")[2] if group.path[0] not in ("garment", "edging") else ""
    return name[:1].upper() + name[1:]


def _group(group: Group, moved: set[tuple[str | int, ...]]) -> FieldGroup:
    kept = [knob for knob in group.knobs if knob.path not in moved]
    needed = [knob for knob in kept if knob.written or not knob.default]
    more = [knob for knob in kept if knob not in needed]
    return FieldGroup(
        f"knobs-{slug(knob_name(group.path)) if group.path else 'about'}",
        group.title,
        tuple(_field(knob) for knob in needed),
        tuple(_field(knob) for knob in more),
        goes=knob_name(group.path) if group.may_go else "",
    )


def _field(knob: Knob, label: str = "") -> Field:
    name = knob_name(knob.path)
    label = label or knob.label
    if knob.path[0] == "lengths":
        label = label.replace("_", " ")
    return Field(
        name=name,
        id=f"knob-{slug(name)}",
        label=label[:1].upper() + label[1:],
        kind=knob.kind,
        typed=knob.value if knob.written else "",
        as_is=knob.value if knob.written else "",
        choices=tuple(knob.choices),
        hint=knob.hint,
        default=in_words(knob.default),
        unit=knob.unit,
        written=knob.written,
        free=knob.kind not in ("choice", "truth") or knob.low is not None,
    )


def _part_name(what: str, at: Steps) -> str:
    return knob_name((what, *at))


def turned(text: str, changes: Changes, units: Units, terms: Dialect) -> Turned:
    """The design with knobs turned; what is the same as it was is left alone.

    A change whose name begins with `ADDS` or `TAKES` adds a table or takes one away.
    """
    before = panel(text, terms).fields()
    errors: list[tuple[str, str]] = []
    told: list[str] = []
    for name, written in changes:
        try:
            changed = _changed(text, name, written.strip(), units, before.get(name))
        except InputError as error:
            errors.append((name, in_words(error.faults[0].message)))
            continue
        if changed != text:
            told.append(_told(before.get(name), panel(changed, terms).fields().get(name), name))
        text = changed
    return Turned(text, tuple(errors), "; ".join(told))


def _changed(text: str, name: str, written: str, units: Units, field: Field | None) -> str:
    if name.startswith(ADDS):
        what, *at = path_named(name.removeprefix(ADDS))
        return add(text, str(what), tuple(at), units)
    if name.startswith(TAKES):
        return take_away(text, path_named(name.removeprefix(TAKES)))
    if field is not None and written == field.as_is:
        return text
    return turn(text, path_named(name), written, units)


def _told(before: Field | None, after: Field | None, name: str) -> str:
    """What was turned, in words."""
    if name.startswith((ADDS, TAKES)):
        way, _, key = name.partition(":")
        steps = path_named(key)
        what = " ".join(str(step + 1 if isinstance(step, int) else step) for step in steps)
        return f"{'added' if way == 'add' else 'taken away'}: {what}"
    field = after or before
    label = field.label if field else name.rpartition("/")[2].replace("_", " ")
    return f"{label} {value_of(before)} → {value_of(after)}"


def apart(mine: str, theirs: str, terms: Dialect) -> tuple[str, ...]:
    """Where two texts of a design differ, knob by knob: "Length: yours 24 in, there 20 in"."""
    own, other = panel(mine, terms), panel(theirs, terms)
    ours, others = own.fields(), other.fields()
    return tuple(
        f"{own.called(name) or other.called(name)}: yours {value_of(ours.get(name))}, "
        f"there {value_of(others.get(name))}"
        for name in dict.fromkeys((*ours, *others))
        if value_of(ours.get(name)) != value_of(others.get(name))
    )


def value_of(field: Field | None) -> str:
    """What a knob stands at, in words; "nothing" where there is none."""
    if field is None:
        return "nothing"
    return dict(field.choices).get(field.as_is, field.as_is) or field.default or "nothing"


def refused(
    found: Panel,
    typed: Mapping[str, str],
    errors: Mapping[str, str],
    drafted: Collection[str] = (),
) -> Panel:
    """The panel with what was typed and why it was refused, beside each field.

    Args:
        drafted: names of those that could be read, and not be made.
    """

    def told(field: Field) -> Field:
        if field.name not in errors:
            return field
        error, made = errors[field.name], field.name in drafted
        stands = field.typed if made else typed.get(field.name, field.typed)
        return replace(field, typed=stands, error=error, drafted=made)

    groups = tuple(
        replace(
            group,
            fields=tuple(map(told, group.fields)),
            more=tuple(map(told, group.more)),
            open=group.open or any(f.name in errors for f in (*group.fields, *group.more)),
        )
        for group in found.groups
    )
    return replace(found, groups=groups)


def differing(before: Panel, after: Panel) -> tuple[FieldGroup, ...] | None:
    """Groups of which more than values has changed; None when they are not the same groups."""
    if _shown(before) != _shown(after):
        return None
    pairs = zip(before.groups, after.groups, strict=True)
    return tuple(new for old, new in pairs if _bones(old) != _bones(new))


def _shown(found: Panel) -> list[str]:
    """Ids of the groups that there is something to see of."""
    return [one.id for one in found.groups if one.fields or one.more or one.goes]


def _bones(group: FieldGroup) -> tuple[object, ...]:
    fields = sorted((*group.fields, *group.more), key=lambda field: field.name)
    return (
        group.title,
        group.goes,
        tuple((f.name, f.label, f.kind, f.choices, f.hint, f.default, f.unit) for f in fields),
    )
