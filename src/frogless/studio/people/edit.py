"""The form of a body: new, changed, asked about while it is filled in, undone."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any
from urllib.parse import urlsplit

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from frogless.errors import InputError
from frogless.studio.asked import base_of, document_or_404
from frogless.studio.conflict import conflict_page
from frogless.studio.examples import examples
from frogless.studio.fields import respelled
from frogless.studio.gone import gone_page, is_there, last_text
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.preferences import prefer, preferred
from frogless.studio.offers import taken
from frogless.studio.people.body_text import NEW, values_of, written
from frogless.studio.people.checked import Checked, checked
from frogless.studio.people.measured import fields
from frogless.studio.people.shown import form
from frogless.units import Units

FIRST_NAME = "Me"


@require_http_methods(["GET", "HEAD", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """A body that is not saved yet."""
    if request.method != "POST":
        name = "" if shelf.documents("body").filter(name=FIRST_NAME).exists() else FIRST_NAME
        return _page(request, None, NEW, {"name": name})
    return _sent(request, None, NEW)


@require_http_methods(["GET", "HEAD", "POST"])
def edit(request: HttpRequest, pk: int) -> HttpResponse:
    """A body of the person's own."""
    if request.method == "POST" and not is_there("body", pk):
        return gone_page(request, "body", _of_gone(request, pk))
    document = document_or_404("body", pk)
    if request.method == "POST":
        return _sent(request, document, document.text)
    values = values_of(document.text, preferred().units)
    if values is None:
        return redirect("people:text", pk)
    return _page(request, document, document.text, values)


def _sent(request: HttpRequest, document: Document | None, text: str) -> HttpResponse:
    units, values = held(request)
    do = request.POST.get("do", "save")
    if do in ("cm", "in"):
        values = respelled(values, fields(), units, do)  # type: ignore[arg-type]
        prefer(units=do)
        return _page(request, document, text, values)
    if "take" in request.POST:
        more = taken(request.POST["take"], [one.name for one in fields()])
        return _page(request, document, text, {**values, **more}, at=next(iter(more), ""))
    try:
        mine = written(text, values, units)
    except InputError as error:
        told = Checked(None, {"": str(error)})
        return _page(request, document, text, values, told, status=422)
    told = checked(mine, units)
    if told.errors:
        return _page(request, document, text, values, told, status=422)
    return _saved(request, document, mine)


def _saved(request: HttpRequest, document: Document | None, mine: str) -> HttpResponse:
    if document is None:
        made = shelf.create("body", mine)
        return redirect(f"{reverse('people:edit', args=[made.pk])}?saved=new")
    address = reverse("people:edit", args=[document.pk])
    try:
        shelf.change(document.pk, base_of(request), mine, "Changed measurements")
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, mine, address)
    except InputError as error:
        return gone_page(request, "body", mine, str(error))
    return redirect(f"{address}?saved=again")


def _of_gone(request: HttpRequest, pk: int) -> str:
    """What the form of a body that is gone holds, laid over its last text where that is known."""
    units, values = held(request)
    last = last_text("body", pk)
    return written(last if values_of(last, units) else NEW, values, units)


@require_POST
def said(request: HttpRequest) -> HttpResponse:
    """What there is to say beside every field, while the form is filled in."""
    units, values = held(request)
    told = checked(written(NEW, values, units), units)
    # The name is asked for when the form is sent, not while it is filled in.
    kept = {name: sentence for name, sentence in told.errors.items() if name != "name"}
    told = Checked(told.body, kept, told.questions, told.estimates)
    shown = form(values, told, units, design_texts())
    asked = request.headers.get("HX-Trigger-Name", "")
    heard = next((row for row in shown.rows if row.field.name == asked), None)
    context = {"form": shown, "heard": heard, "here": page_of(request, reverse("people:new"))}
    return render(request, "people/_said.html", context)


def page_of(request: HttpRequest, usual: str) -> str:
    """The path of the page that a part is asked for by htmx; the usual one for anything else."""
    whole = urlsplit(request.headers.get("HX-Current-URL", ""))
    is_own = whole.netloc == request.get_host() and whole.path.startswith("/")
    return whole.path if is_own and not whole.path.startswith("//") else usual


@require_POST
def undo(request: HttpRequest, pk: int) -> HttpResponse:
    """One step back."""
    return _walked(request, pk, shelf.undo)


@require_POST
def redo(request: HttpRequest, pk: int) -> HttpResponse:
    """One step forward again."""
    return _walked(request, pk, shelf.redo)


def _walked(request: HttpRequest, pk: int, walk: Callable[[int, int], Document]) -> HttpResponse:
    document = document_or_404("body", pk)
    address = reverse("people:edit", args=[pk])
    try:
        walk(pk, base_of(request))
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, document.text, address)
    return redirect(address)


def held(request: HttpRequest) -> tuple[Units, dict[str, str]]:
    """The units that the form was filled in with, and what it holds."""
    units: Units = "in" if request.POST.get("units_were") == "in" else "cm"
    names = ("name", "age", *(one.name for one in fields()))
    given = {name: request.POST.get(name, "").replace("\0", "") for name in names}
    return units, {name: text for name, text in given.items() if text.strip()}


def design_texts() -> tuple[str, ...]:
    """Everything that could be made: own designs and the examples."""
    own = shelf.documents("design").values_list("text", flat=True)
    return (*own, *(one.text for one in examples("design").values()))


def users_of(ref: str) -> tuple[Garment, ...]:
    """The garments that are made for a body."""
    return tuple(Garment.objects.filter(body=ref, removed=False).order_by("name"))


def _page(
    request: HttpRequest,
    document: Document | None,
    text: str,
    values: Mapping[str, str],
    told: Checked | None = None,
    status: int = 200,
    at: str = "",
) -> HttpResponse:
    units = preferred().units
    if told is None:
        told = checked(written(text, values, units), units)
        # Nothing is refused before it was sent; an empty form is no fault.
        errors = {name: said for name, said in told.errors.items() if name != "name"}
        told = Checked(told.body, errors, told.questions, told.estimates)
    shown = form(values, told, units, design_texts())
    alerts = [told.errors[""]] if "" in told.errors else []
    context: dict[str, Any] = {
        "form": shown,
        "units": units,
        "at": at,
        "here": request.path,
        "body": document,
        "alerts": alerts,
        "faults": [row for row in shown.rows if row.error] if status == 422 else [],
        "saved": request.GET.get("saved", ""),
    }
    if document is not None:
        context |= {
            "base": request.POST.get("base", document.revision),
            "undo": shelf.can_undo(document),
            "redo": shelf.can_redo(document),
            "garments": users_of(document.ref),
        }
    return render(request, "people/edit_body.html", context, status=status)
