"""The first page, and the way from a garment that somebody likes to her own pattern."""

from __future__ import annotations

from dataclasses import replace
from typing import Any
from urllib.parse import urlencode

from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.examples import examples
from frogless.studio.garments.create import make_garment
from frogless.studio.library import shelf
from frogless.studio.library.models import Garment
from frogless.studio.library.preferences import ACCEPTED, prefer, preferred
from frogless.studio.needs import Needs, needs
from frogless.studio.offers import taken
from frogless.studio.onward import onward
from frogless.studio.shipped import ANYBODY
from frogless.studio.start import offered
from frogless.studio.start.asked import (
    BODY,
    Asked,
    asked,
    first_values,
    in_other_units,
    moved_windows,
)
from frogless.studio.start.page import pick, shown, swatch_pick
from frogless.studio.start.written import Understood, body_lacks, swatch_lacks, understood
from frogless.units import Units

SHOWN_GARMENTS = 6
LOOKED_AT = ("procession-skirt", "hayfield-pullover", "half-moon-shawl")
"""Examples to look at first: of different making."""

FIRST_BODY, FIRST_SWATCH = "Me", "My swatch"
"""What a body and a swatch are called until they have a name of their own."""

GONE = "a {kind} that is gone"
"""What a garment is made of when that was deleted for good."""


@require_safe
def home(request: HttpRequest) -> HttpResponse:
    """What was opened last, and the two ways to begin."""
    garments = [_last(one) for one in Garment.objects.filter(removed=False)[:SHOWN_GARMENTS]]
    known = examples("design")
    looks = [{"key": key, "name": known[key].title} for key in LOOKED_AT if key in known]
    context = {"garments": garments, "looks": looks, "first": f"example:{offered.FIRST}"}
    return render(request, "start/home.html", context)


def _last(garment: Garment) -> dict[str, Any]:
    yarns = [_name("swatch", ref) for ref in garment.swatches]
    design = _name("design", garment.design)
    return {
        "garment": garment,
        "design": design,
        "is_drawn": design != GONE.format(kind="design"),
        "body": _name("body", garment.body),
        "yarns": ", ".join(yarns),
    }


def _name(kind: str, ref: str) -> str:
    try:
        return refs.resolve(kind, ref).name
    except InputError:
        return GONE.format(kind=kind)


@require_safe
def start(request: HttpRequest) -> HttpResponse:
    """Everything that can be made, to choose from."""
    terms = preferred().terms
    own = [(one.ref, one.name, one.text) for one in shelf.documents("design")]
    shipped = [(f"example:{key}", one.title, one.text) for key, one in examples("design").items()]
    shipped.sort(key=lambda one: one[0] != f"example:{offered.FIRST}")
    offers = [offered.offer(*one, terms) for one in (*own, *shipped)]
    kind = request.GET.get("kind", "")
    kept = [one for one in offers if not kind or one.kind == kind]
    body = request.GET.get("body", "")
    carried = {name: ref for name in ("body", "swatch") if (ref := request.GET.get(name, ""))}
    context = {
        "offers": kept,
        "all": len(offers),
        "kinds": tuple(offered.kinds(offers)),
        "kind": kind,
        "carried": urlencode(carried),
        "whose": _name("body", body) if body else "",
    }
    return render(request, "start/choose.html", context)


@require_http_methods(["GET", "HEAD", "POST"])
def start_with(request: HttpRequest, ref: str) -> HttpResponse:
    """One page from a design to a pattern: measurements, a swatch, done."""
    found = _design(ref)
    need, likes = needs(found.text), preferred()
    if request.method != "POST":
        page = asked(need, likes.terms, likes.units)
        return _page(request, found, need, page, _begun(request, need, page), Understood())
    units, page, values = _held(request, need)
    do = request.POST.get("do", "make")
    if do in ("cm", "in"):
        prefer(units=do)
        moved = moved_windows(page, values, units, do)  # type: ignore[arg-type]
        values = in_other_units(page, values, units, do)  # type: ignore[arg-type]
        page = asked(need, likes.terms, preferred().units)
        return _page(request, found, need, page, values, Understood(questions=moved))
    if "take" in request.POST:
        more = taken(request.POST["take"], [one.name for one in page.fields])
        values |= more
        told, at = _so_far(page, values, units), next(iter(more), "")
        return _page(request, found, need, page, values, told, at=at)
    told = _told(need, page, values, units)
    if told.errors or (told.doubt and request.POST.get("sure") != told.doubt):
        return _page(request, found, need, page, values, told, status=422)
    if not values.get("body") and _is_for_anybody(need, page, values):
        values["body"] = ANYBODY
    return redirect("garments:room", _made(found, values, told).pk, "shape")


def _is_for_anybody(need: Needs, page: Asked, values: dict[str, str]) -> bool:
    """Whether nothing has to be measured, and nothing was written of anybody."""
    age = f"{BODY}age"
    told = any(values.get(name) for name in (*(one.name for one in page.worth), age))
    named = values[f"{BODY}name"] != shelf.free_name("body", FIRST_BODY)
    return not need.measurements and not told and not named


@require_POST
def said(request: HttpRequest, ref: str) -> HttpResponse:
    """What there is to say beside the fields while they are filled in."""
    need = needs(_design(ref).text)
    units, page, values = _held(request, need)
    form = shown(page, need, values, _so_far(page, values, units), units)
    trigger = request.headers.get("HX-Trigger-Name", "")
    heard = next((row for row in form.rows if row.field.name == trigger), None)
    context = {"form": form, "heard": heard, "here": reverse("start_with", args=[ref])}
    return render(request, "start/_said.html", context)


def _so_far(page: Asked, values: dict[str, str], units: Units) -> Understood:
    """What there is to say of a page that is not filled in yet: what is empty is no fault."""
    told = understood(page, values, units, terms=preferred().terms)
    filled = {name: one for name, one in told.errors.items() if values.get(name)}
    return replace(told, errors=filled)


def _design(ref: str) -> refs.Found:
    try:
        return refs.resolve("design", ref)
    except InputError:
        raise Http404 from None


def _begun(request: HttpRequest, need: Needs, page: Asked) -> dict[str, str]:
    """A page that nobody has filled in yet: with the person's own body and swatch, if they do."""
    own = {kind: tuple(shelf.documents(kind).order_by("-changed")) for kind in ("body", "swatch")}
    values = first_values(
        page,
        body_name=shelf.free_name("body", FIRST_BODY),
        swatch_name=shelf.free_name("swatch", FIRST_SWATCH),
    )
    for kind, documents in own.items():
        good = (one.ref for one in documents if not _lacks(kind, one.ref, need))
        chosen = request.GET.get(kind) or next(good, "")
        if any(chosen == one for _, group in refs.choices(kind) for one, _ in group):
            values[kind] = chosen
    return values


def _held(request: HttpRequest, need: Needs) -> tuple[Units, Asked, dict[str, str]]:
    """The units that the page was filled in with, its fields, and what they hold."""
    units: Units = "in" if request.POST.get("units_were") == "in" else "cm"
    page = asked(need, preferred().terms, units)
    names = ("body", "swatch", "swatch-state", *(one.name for one in page.fields))
    given = {name: request.POST.get(name, "").replace("\0", "") for name in names}
    values = {name: text for name, text in given.items() if text.strip()}
    # Whoever empties a name that has a usual one gets the usual one.
    usual = {
        "body-name": shelf.free_name("body", FIRST_BODY),
        "swatch-name": shelf.free_name("swatch", FIRST_SWATCH),
    }
    return units, page, {**usual, **values}


def _told(need: Needs, page: Asked, values: dict[str, str], units: Units) -> Understood:
    body, swatch = values.get("body", ""), values.get("swatch", "")
    told = understood(
        page, values, units, body=not body, swatch=not swatch, terms=preferred().terms
    )
    errors = dict(told.errors)
    if need.error:
        errors[""] = need.error
    for kind, ref in (("body", body), ("swatch", swatch)):
        if ref and (lacking := _lacks(kind, ref, need)):
            errors[kind] = lacking
    return replace(told, errors=errors)


def _lacks(kind: str, ref: str, need: Needs) -> str:
    try:
        text = refs.resolve(kind, ref).text
    except InputError as error:
        return str(error)
    return body_lacks(need, text) if kind == "body" else swatch_lacks(need, text, preferred().terms)


@transaction.atomic
def _made(found: refs.Found, values: dict[str, str], told: Understood) -> Garment:
    body = values.get("body") or shelf.create("body", told.body).ref
    swatch = values.get("swatch") or shelf.create("swatch", told.swatch).ref
    # Of a garment for nobody in particular nobody's name is part.
    name = found.name if body == ANYBODY else ""
    return make_garment(name, found.ref, body, [swatch])


def _page(
    request: HttpRequest,
    found: refs.Found,
    need: Needs,
    page: Asked,
    values: dict[str, str],
    told: Understood,
    status: int = 200,
    at: str = "",
) -> HttpResponse:
    likes = preferred()
    if not told.estimates:
        fresh = understood(page, values, likes.units, swatch=False)
        told = replace(told, estimates=fresh.estimates)
    errors = told.errors
    context = {
        "design": found,
        "need": need,
        "page": shown(page, need, values, told, likes.units),
        "units": likes.units,
        "who": pick("body", values.get("body", ""), errors.get("body", "")),
        "yarn": swatch_pick(values.get("swatch", ""), need, likes, errors.get("swatch", "")),
        "faulty": status == 422,
        "at": at,
        "here": request.path,
        "sure": told.doubt if status == 422 and not told.errors else "",
        "alerts": [errors[""]] if "" in errors else [],
    }
    return render(request, "start/start_with.html", context, status=status)


@require_POST
def preferences(request: HttpRequest) -> HttpResponse:
    """Units, names of stitches and hand, kept for every page; then back to where it was asked."""
    chosen = {name: request.POST[name] for name in ACCEPTED if name in request.POST}
    prefer(**chosen)
    return redirect(onward(request, reverse("home")))
