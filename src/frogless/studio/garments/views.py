"""The room's pages."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.garments.create import make_garment
from frogless.studio.library.models import Garment

ROOMS = ("shape", "pattern", "materials", "fit")


@require_safe
def garments_list(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "garments/garments_list.html", {"garments": _garments()})


def _garments() -> list[Garment]:
    return list(Garment.objects.filter(removed=False))


def _garment(pk: int) -> Garment:
    return get_object_or_404(Garment, pk=pk, removed=False)


@require_POST
def create(request: HttpRequest) -> HttpResponse:
    """A garment of what was chosen."""
    given = request.POST
    try:
        made = make_garment(
            given.get("name", ""),
            given.get("design", ""),
            given.get("body", ""),
            given.getlist("swatch"),
        )
    except InputError as error:
        context = {"garments": _garments(), "alerts": [str(error)]}
        return render(request, "garments/garments_list.html", context, status=422)
    return redirect("garments:room", made.pk, "shape")


@require_safe
def room(request: HttpRequest, pk: int, room: str) -> HttpResponse:
    """One room of a garment."""
    if room not in ROOMS:
        raise Http404
    return render(request, "garments/garment.html", {"garment": _garment(pk), "room": room})


@require_safe
def look(request: HttpRequest, key: str, room: str) -> HttpResponse:
    """One room of an example."""
    if room not in ROOMS:
        raise Http404
    return render(request, "garments/garment.html", {"room": room})


@require_safe
def look_why(request: HttpRequest, key: str, number: str) -> HttpResponse:
    """The because of a number of an example."""
    raise Http404


@require_POST
def turn(request: HttpRequest, pk: int) -> HttpResponse:
    """A knob was turned."""
    return redirect("garments:room", _garment(pk).pk, "shape")


@require_POST
def choose(request: HttpRequest, pk: int) -> HttpResponse:
    """Another body, swatch, terms, units or hand."""
    return redirect("garments:room", _garment(pk).pk, "shape")


@require_POST
def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """Another name."""
    return redirect("garments:list")


@require_POST
def duplicate(request: HttpRequest, pk: int) -> HttpResponse:
    """The same once more."""
    return redirect("garments:list")


@require_POST
def delete(request: HttpRequest, pk: int) -> HttpResponse:
    """Puts a garment into the bin."""
    Garment.objects.filter(pk=_garment(pk).pk).update(removed=True)
    return redirect("garments:list")


@require_safe
def why(request: HttpRequest, pk: int, key: str) -> HttpResponse:
    """The because of a number."""
    raise Http404


@require_safe
def file(request: HttpRequest, pk: int, name: str) -> HttpResponse:
    """A file of the garment."""
    raise Http404
