"""What the knobs of a design come to for a body: the length that a formula gives, and it in words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from frogless.design import formulas
from frogless.draft import load_texts
from frogless.errors import FroglessError, InputError, Place
from frogless.plan.basis import Basis
from frogless.studio.garments.drafts import Order
from frogless.studio.garments.panel import Field, Panel, panel
from frogless.units import Units, show_length
from frogless.write.formula import readable
from frogless.write.phrases import phrases

LENGTHS = "lengths/"
"""What the names of a design's own lengths begin with."""


def panel_of(order: Order) -> Panel:
    """The panel of a design with what each formula comes to for the body; without where it is none.

    Raises:
        InputError: as `panel`.
    """
    found = panel(order.texts.design, order.terms)
    try:
        basis, _ = load_texts(order.texts, order.units)
    except FroglessError:
        return found
    fields = found.fields()
    own = {name.removeprefix(LENGTHS): one.as_is for name, one in fields.items() if LENGTHS in name}
    return _each(found, lambda field: _told(field, basis, own, order.units))


def _each(found: Panel, told: Callable[[Field], Field]) -> Panel:
    groups = tuple(
        replace(group, fields=tuple(map(told, group.fields)), more=tuple(map(told, group.more)))
        for group in found.groups
    )
    return replace(found, groups=groups)


def _told(field: Field, basis: Basis, own: Mapping[str, str], units: Units) -> Field:
    """A field with what its formula comes to; a plain length says that itself."""
    if field.kind != "length" or not field.as_is:
        return field
    try:
        if not formulas.names_in(field.as_is, Place()):
            return field
        value = formulas.length(field.as_is, basis.scope, Place())
    except InputError:
        return field
    words = readable(own.get(field.as_is, field.as_is), units, phrases())
    return replace(field, comes=show_length(value, units), reads=words)


def differing_values(before: Panel, after: Panel) -> frozenset[str]:
    """Names of the fields that come to something else than before."""
    was = before.fields()
    return frozenset(
        name
        for name, one in after.fields().items()
        if name in was and (one.comes, one.reads) != (was[name].comes, was[name].reads)
    )
