"""The pages of this room."""

from __future__ import annotations

from collections.abc import Mapping

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.asked import base_of, document_or_404
from frogless.studio.conflict import conflict_page
from frogless.studio.examples import examples
from frogless.studio.gone import gone_page, is_there, last_text
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import prefer, preferred
from frogless.studio.library.uses import uses
from frogless.studio.offers import taken
from frogless.studio.refs import resolve
from frogless.studio.swatches import page
from frogless.studio.swatches.doubts import doubts, mark
from frogless.studio.swatches.form import (
    all_fields,
    empty_values,
    in_units,
    posted,
    values_of,
    with_reading,
    without_reading,
)
from frogless.studio.swatches.looking import looked_at, what_changed
from frogless.studio.swatches.written import checked, written
from frogless.studio.written_text import text_of
from frogless.swatch import parse_swatch

KIND = "swatch"


@require_safe
def swatches_list(request: HttpRequest) -> HttpResponse:
    """One's own swatches with their gauge, and the examples to make a copy of."""
    used = uses()
    own = [
        (document, *_at_a_glance(document.text), used.get(document.ref, ()))
        for document in shelf.documents(KIND)
    ]
    shipped = [
        (f"example:{key}", one.title, *_at_a_glance(one.text))
        for key, one in examples(KIND).items()
    ]
    return render(request, "swatches/swatches_list.html", {"own": own, "shipped": shipped})


def _at_a_glance(text: str) -> tuple[str, str]:
    """The gauge of a swatch in a line, and its yarn and hook in another."""
    chosen = preferred()
    line = looked_at(text, chosen.units, chosen.terms).headline
    if not line:
        return "", "This text has a fault; open it to mend it."
    swatch = parse_swatch(text)
    parts = (swatch.yarn.name, swatch.yarn.fibre, f"{swatch.hook:g} mm hook")
    return line, ", ".join(dict.fromkeys(part for part in parts if part))


@require_http_methods(["GET", "HEAD", "POST"])
def new_swatch(request: HttpRequest) -> HttpResponse:
    """A swatch that is written down for the first time."""
    if request.method != "POST":
        return page.form_page(request, None, empty_values(preferred().units))
    values = posted(request.POST)
    if "take" in request.POST:
        return _taken(request, None, values)
    if (changed := _other_readings(request, values)) is not None:
        return page.form_page(request, None, changed, notice="Nothing is saved yet.")
    made = checked(values)
    if made.errors:
        return page.form_page(request, None, values, made.errors, status=422)
    if sure := _unsure(request, values, {}):
        return page.form_page(request, None, values, status=422, sure=sure)
    try:
        document = shelf.create(KIND, made.text, values.get("name", ""))
    except InputError as error:
        return page.form_page(request, None, values, {"name": str(error)}, status=422)
    return redirect(page.address(document, "saved"))


@require_http_methods(["GET", "HEAD", "POST"])
def edit_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """A swatch of one's own, as a form; as a text where the form cannot read it."""
    if request.method == "POST" and not is_there(KIND, pk):
        return gone_page(request, KIND, _of_gone(request, pk))
    document = document_or_404(KIND, pk)
    chosen = preferred()
    try:
        parse_swatch(document.text)
    except InputError:
        return redirect("swatches:text", pk)
    if request.method != "POST":
        return page.form_page(request, document, values_of(document.text, chosen.units))
    values = posted(request.POST)
    base = base_of(request)
    if document.revision != base:
        # Laid over what is saved by now, only what differs differs; what it says is the form's.
        mine, again = written(values, document.text).text, reverse("swatches:edit", args=[pk])
        return conflict_page(request, shelf.Conflict(document), mine, again)
    if "take" in request.POST:
        return _taken(request, document, values)
    if (changed := _other_readings(request, values)) is not None:
        return page.form_page(request, document, changed, notice="This is not saved yet.")
    made = checked(values, document.text)
    if made.errors:
        return page.form_page(request, document, values, made.errors, status=422)
    before = values_of(document.text, page.units_of(values))
    if sure := _unsure(request, values, before):
        return page.form_page(request, document, values, status=422, sure=sure)
    told = what_changed(values, before)
    return _save(request, document, base, made.text, told, "swatches:edit")


def _unsure(request: HttpRequest, values: Mapping[str, str], before: Mapping[str, str]) -> str:
    """Stands for what is to be asked before this is kept; "" when it was, or was kept before."""
    units, terms = page.units_of(values), preferred().terms
    known = {one.sentence for one in doubts(before, units, terms)}
    asked = mark(one for one in doubts(values, units, terms) if one.sentence not in known)
    return "" if request.POST.get("sure") == asked else asked


def _taken(
    request: HttpRequest, document: Document | None, values: Mapping[str, str]
) -> HttpResponse:
    """The form with what a question offered; not saved yet."""
    more = taken(request.POST["take"], [one.name for one in all_fields(values)])
    now, at = {**values, **more}, next(iter(more), "")
    errors = {name: told for name, told in checked(now).errors.items() if now.get(name)}
    return page.form_page(request, document, now, errors, notice="This is not saved yet.", at=at)


def _save(
    request: HttpRequest, document: Document, base: int, text: str, told: str, again: str
) -> HttpResponse:
    """Keeps a text that was found good; a page of both texts where another page was quicker."""
    try:
        document = shelf.change(document.pk, base, text, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, text, reverse(again, args=[document.pk]))
    except InputError as error:
        return gone_page(request, KIND, text, str(error))
    return redirect(page.address(document, "saved"))


def _of_gone(request: HttpRequest, pk: int) -> str:
    """What the form of a swatch that is gone holds, laid over its last text where that is known."""
    last = last_text(KIND, pk)
    return written(posted(request.POST), "" if _fault_of(last) else last).text


def _other_readings(request: HttpRequest, values: Mapping[str, str]) -> dict[str, str] | None:
    """The form with a reading more or less, or in other units; None when it is to be saved."""
    if (units := request.POST.get("do", "")) in ("cm", "in"):
        prefer(units=units)
        return in_units(values, units)  # type: ignore[arg-type]
    do, _, number = request.POST.get("do", "").partition("-")
    place = int(number) if number.isdecimal() and len(number) < 4 else None
    if do == "add":
        try:
            return with_reading(values, place)
        except InputError:
            return dict(values)
    if do == "remove" and place is not None:
        return without_reading(values, place)
    return None


@require_POST
def look(request: HttpRequest) -> HttpResponse:
    """What the form tells while it is filled in; nothing is saved."""
    return page.live_part(request, posted(request.POST))


@require_http_methods(["GET", "HEAD", "POST"])
def open_swatch(request: HttpRequest) -> HttpResponse:
    """A swatch file, chosen or pasted, becomes a swatch of one's own."""
    if request.method != "POST":
        return page.text_page(request, None, "")
    text = ""
    try:
        text = page.text_sent(request)
        name = parse_swatch(text).name
        document = shelf.create(KIND, text, name)
    except InputError as error:
        return page.text_page(request, None, text, error)
    return redirect(page.address(document, "opened"))


@require_http_methods(["GET", "HEAD", "POST"])
def swatch_text(request: HttpRequest, pk: int) -> HttpResponse:
    """A swatch as its file, to be written by hand."""
    if request.method == "POST" and not is_there(KIND, pk):
        return gone_page(request, KIND, text_of(request))
    document = document_or_404(KIND, pk)
    if request.method != "POST":
        return page.text_page(request, document, document.text, _fault_of(document.text))
    text = text_of(request)
    base = base_of(request)
    if document.revision != base:
        again = reverse("swatches:text", args=[pk])
        return conflict_page(request, shelf.Conflict(document), text, again)
    try:
        parse_swatch(text)
    except InputError as error:
        return page.text_page(request, document, text, error)
    return _save(request, document, base, text, "text changed", "swatches:text")


def _fault_of(text: str) -> InputError | None:
    try:
        parse_swatch(text)
    except InputError as error:
        return error
    return None


@require_POST
def copy_swatch(request: HttpRequest, ref: str) -> HttpResponse:
    """A copy to change: of an example, or of a swatch of one's own."""
    try:
        original = resolve(KIND, ref)
    except InputError:
        raise Http404 from None
    document = shelf.create(KIND, original.text, original.name)
    return redirect(page.address(document, "copied"))


@require_POST
def undo_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """One step back."""
    return _walk(request, pk, "undo")


@require_POST
def redo_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """One step forward again."""
    return _walk(request, pk, "redo")


def _walk(request: HttpRequest, pk: int, way: str) -> HttpResponse:
    document = document_or_404(KIND, pk)
    walk = shelf.undo if way == "undo" else shelf.redo
    try:
        document = walk(pk, base_of(request))
    except shelf.Conflict as conflict:
        again = reverse("swatches:edit", args=[pk])
        return conflict_page(request, conflict, document.text, again)
    return redirect(page.address(document, "undone" if way == "undo" else "redone"))
