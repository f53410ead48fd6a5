"""The list of garments, and what can be done with one as a whole."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.garments.create import free_name, make_garment
from frogless.studio.garments.subject import garment_of, made_of, of_garment
from frogless.studio.library import shelf
from frogless.studio.library.models import Garment


@dataclass(frozen=True, slots=True)
class Card:
    """A garment in the list."""

    garment: Garment
    design: str
    picture: str
    who: str
    yarn: str


@require_safe
def garments_list(request: HttpRequest) -> HttpResponse:
    """All of them, the one that was opened last first."""
    return _list(request)


def _list(request: HttpRequest, status: int = 200, **more: object) -> HttpResponse:
    cards = [_card(one) for one in Garment.objects.filter(removed=False)]
    return render(request, "garments/garments_list.html", {"cards": cards, **more}, status=status)


def _card(garment: Garment) -> Card:
    made = made_of(of_garment(garment))
    return Card(
        garment,
        design=made.design.name if made.design else "",
        picture=made.design.ref if made.design else "",
        who=made.body.name if made.body else "",
        yarn=" and ".join(dict.fromkeys(one.name for one in made.swatches)),
    )


@require_POST
def create(request: HttpRequest) -> HttpResponse:
    """A garment of what was chosen."""
    given = request.POST
    swatches = [ref for ref in given.getlist("swatch") if ref]
    try:
        if not swatches:
            raise InputError("a swatch is needed, for the gauge; choose one")
        made = make_garment(
            given.get("name", ""), given.get("design", ""), given.get("body", ""), swatches
        )
    except InputError as error:
        return _list(request, 422, alerts=[str(error)])
    return redirect("garments:room", made.pk, "shape")


@require_POST
def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """Another name."""
    garment = garment_of(pk)
    written = request.POST.get("name", "")
    try:
        name = shelf.checked_name(written)
    except InputError as error:
        faulty = {"faulty": garment.pk, "written": written, "error": str(error)}
        return _list(request, 422, **faulty)
    garment.name = free_name(name, garment)
    garment.save(update_fields=["name"])
    return redirect("garments:list")


@require_POST
def duplicate(request: HttpRequest, pk: int) -> HttpResponse:
    """The same once more, with a copy of a design of its own, so that each can be changed alone."""
    garment = garment_of(pk)
    design = made_of(of_garment(garment)).design
    if design is not None and design.document is not None:
        garment.design = shelf.create("design", design.text, design.name).ref
    garment.pk = None
    garment.name = free_name(garment.name)
    garment._state.adding = True
    garment.save()
    return redirect("garments:room", garment.pk, "shape")


@require_POST
def delete(request: HttpRequest, pk: int) -> HttpResponse:
    """Puts a garment into the bin; its design, body and swatches stay."""
    garment = garment_of(pk)
    garment.removed = True
    garment.save(update_fields=["removed"])
    return redirect("garments:list")
