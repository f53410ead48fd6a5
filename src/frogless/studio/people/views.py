"""Who there is to crochet for, the size tables, and how measurements are taken."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_safe

from frogless.body.measurements import known_measurements
from frogless.body.size_tables import TABLES
from frogless.draw.drawing import Drawing
from frogless.draw.measuring import measuring
from frogless.draw.overview import all_measurements
from frogless.draw.svg import svg
from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.asked import document_or_404
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import preferred
from frogless.studio.people.edit import users_of
from frogless.studio.people.measured import ordered
from frogless.studio.people.sheet import briefly, paper, sheet
from frogless.studio.people.tables import table
from frogless.units import Units


@require_safe
def people_list(request: HttpRequest) -> HttpResponse:
    """Bodies of the person's own with what is made for them, then the examples to copy."""
    units = preferred().units
    own = [
        {"body": one, "briefly": briefly(one.text, units), "garments": users_of(one.ref)}
        for one in shelf.documents("body")
    ]
    shipped = [
        {"key": key, "name": one.title, "briefly": briefly(one.text, units)}
        for key, one in examples("body").items()
    ]
    return render(request, "people/people_list.html", {"own": own, "examples": shipped})


@require_safe
def sizes_page(request: HttpRequest) -> HttpResponse:
    """The size tables."""
    units = preferred().units
    return render(request, "people/sizes.html", {"tables": [table(one, units) for one in TABLES]})


@require_safe
def size(request: HttpRequest, table: str, size: str) -> HttpResponse:
    """One size of a table."""
    return _look(request, f"size:{table}:{size}")


@require_safe
def example(request: HttpRequest, key: str) -> HttpResponse:
    """One of the example bodies."""
    return _look(request, f"example:{key}")


def _look(request: HttpRequest, ref: str) -> HttpResponse:
    try:
        found = refs.resolve("body", ref)
    except InputError:
        raise Http404 from None
    context: dict[str, Any] = {
        "found": found,
        "is_size": ref.startswith("size:"),
        "sheet": sheet(found.text, preferred().units),
    }
    return render(request, "people/body.html", context)


@require_safe
def blank_sheet(request: HttpRequest) -> HttpResponse:
    """A sheet to print and fill in beside the tape."""
    return _paper(request, "", None)


@require_safe
def filled_sheet(request: HttpRequest, pk: int) -> HttpResponse:
    """The same with what is known of a person."""
    document = document_or_404("body", pk)
    return _paper(request, document.text, document)


def _paper(request: HttpRequest, text: str, document: Document | None) -> HttpResponse:
    units = preferred().units
    try:
        groups = paper(text, units)
    except InputError:
        return redirect("people:text", document.pk if document else 0)
    context = {"groups": groups, "units": units, "body": document}
    return render(request, "people/paper.html", context)


@require_safe
def picture(request: HttpRequest, key: str) -> HttpResponse:
    """How one measurement is taken."""
    try:
        return _drawn(measuring(key, _units(request)))
    except InputError:
        raise Http404 from None


@require_safe
def whole(request: HttpRequest) -> HttpResponse:
    """The whole body with every tape on it, numbered in the order that is asked for."""
    asked = [key for key in request.GET.get("keys", "").split(",") if key in known_measurements()]
    keys = tuple(dict.fromkeys(asked)) or ordered()
    return _drawn(all_measurements(keys, _units(request)))


def _units(request: HttpRequest) -> Units:
    asked = request.GET.get("units", preferred().units)
    return "in" if asked == "in" else "cm"


def _drawn(drawing: Drawing) -> HttpResponse:
    response = HttpResponse(svg(drawing), content_type="image/svg+xml")
    response.headers["Cache-Control"] = "private, max-age=3600"
    return response
