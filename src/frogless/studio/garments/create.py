"""New garments: a design for a body in a yarn, under a name that says so."""

from __future__ import annotations

from collections.abc import Iterable

from frogless.studio import refs
from frogless.studio.library.models import Garment
from frogless.studio.library.preferences import preferred
from frogless.studio.library.shelf import LONGEST_NAME, clean_name


def make_garment(name: str, design_ref: str, body_ref: str, swatch_refs: Iterable[str]) -> Garment:
    """A garment of these, shown in the person's units, terms and hand.

    Args:
        name: what it is called; "" for a name of its design and body.

    Raises:
        InputError: a ref stands for nothing (any more).
    """
    design = refs.resolve("design", design_ref)
    body = refs.resolve("body", body_ref)
    swatches = [found.ref for found in refs.swatches(tuple(swatch_refs))]
    called = clean_name(name) or default_name(design.name, body.name)
    likes = preferred()
    return Garment.objects.create(
        name=free_name(called),
        design=design.ref,
        body=body.ref,
        swatches=swatches,
        terms=likes.terms,
        units=likes.units,
        hand=likes.hand,
    )


def default_name(design: str, body: str) -> str:
    """The name of a garment that was given none.

    >>> default_name("Ring dance skirt", "Me")
    'Ring dance skirt for Me'
    """
    return f"{design} for {body}"


def free_name(name: str, but: Garment | None = None) -> str:
    """The name, or where another garment has it the name with the first number that is free."""
    name = name[: LONGEST_NAME - 6]
    others = Garment.objects.filter(removed=False, name__startswith=name)
    others = others.exclude(pk=but.pk) if but else others
    taken = set(others.values_list("name", flat=True))
    names = (name, *(f"{name} {number}" for number in range(2, len(taken) + 3)))
    return next(one for one in names if one not in taken)
