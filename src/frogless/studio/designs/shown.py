"""Pictures, the page about a design, and copying it."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec

from django.http import Http404, HttpRequest, HttpResponse, HttpResponseNotModified
from django.shortcuts import redirect, render
from django.utils.http import parse_etags
from django.views.decorators.http import require_POST, require_safe

from frogless.body.measurements import known_measurements
from frogless.errors import InputError
from frogless.studio.designs.entries import Entry, entry, known_picture, picture, picture_key
from frogless.studio.designs.facts import stitch_name
from frogless.studio.designs.gallery import card
from frogless.studio.designs.pictures import Of
from frogless.studio.designs.suits import suits
from frogless.studio.library import shelf
from frogless.studio.library.preferences import preferred
from frogless.studio.needs import measurement_name

P = ParamSpec("P")

KEEP = 24 * 3600
"""Seconds that a browser may show a picture without asking; its address changes with the design."""

DRAWINGS: dict[str, Of] = {"outline": "outline", "flat": "flat"}


def of_entry(
    view: Callable[Concatenate[HttpRequest, Entry, P], HttpResponse],
) -> Callable[..., HttpResponse]:
    """A view of a design by its ref; 404 when it stands for none."""

    @wraps(view)
    def found(request: HttpRequest, ref: str, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
        try:
            one = entry(ref)
        except InputError:
            raise Http404 from None
        return view(request, one, *args, **kwargs)

    return found


@require_safe
@of_entry
def draw(request: HttpRequest, one: Entry) -> HttpResponse:
    """The picture of a design as SVG: its outline, or `?of=flat` the drawing with measurements."""
    of, units = DRAWINGS.get(request.GET.get("of", ""), "outline"), preferred().units
    tag = f'"{picture_key(one, of, units)}"'
    # What it is made of is all that it depends on, so nothing is drawn to find that it is known.
    if tag in parse_etags(request.headers.get("If-None-Match", "")):
        response: HttpResponse = HttpResponseNotModified()
        drawn = True
    else:
        made = picture(one, of, units)
        response = HttpResponse(made.svg, content_type="image/svg+xml; charset=utf-8")
        drawn = not made.fault
    if drawn:
        response["ETag"] = tag
    fresh = KEEP if drawn and request.GET.get("v") == one.mark else 0
    response["Cache-Control"] = f"private, max-age={fresh}"
    return response


@require_safe
@of_entry
def drawn_part(request: HttpRequest, one: Entry) -> HttpResponse:
    """A picture with its words, which are only known when it is drawn."""
    likes = preferred()
    if request.GET.get("of") == "flat":
        context = {"one": one, "flat": picture(one, "flat", likes.units)}
        return render(request, "designs/_flat.html", context)
    picture(one, "outline", likes.units)
    return render(request, "designs/_drawn.html", {"card": card(one, likes)})


@require_safe
@of_entry
def about(request: HttpRequest, one: Entry) -> HttpResponse:
    """All that is to be known of a design before it is made."""
    likes = preferred()
    known = known_measurements()
    needs = one.facts.needs
    context = {
        "one": one,
        "card": card(one, likes),
        "flat": known_picture(picture_key(one, "flat", likes.units)),
        "example": one.ref.partition(":")[2],
        "measured": [
            (key, measurement_name(key), known[key].how_taken, key in needs.measurements)
            for key in one.facts.measurements
        ],
        "worth": [
            (measurement_name(each.key), each.why)
            for each in needs.worth
            if each.key not in one.facts.measurements
        ],
        "stitches": [(stitch_name(each.key, likes.terms), each.needed) for each in needs.stitches],
        "patterns": [_pattern_name(each.key, each.parameters) for each in needs.patterns],
        "special": one.facts.said(likes.terms),
        "suits": suits(one) if "tried" in request.GET else None,
    }
    return render(request, "designs/about.html", context)


@require_safe
@of_entry
def tried(request: HttpRequest, one: Entry) -> HttpResponse:
    """Which of the person's bodies and swatches would do."""
    return render(request, "designs/_suits.html", {"one": one, "suits": suits(one)})


@require_POST
@of_entry
def copy(request: HttpRequest, one: Entry) -> HttpResponse:
    """A copy of the person's own, to be made or to be written on."""
    document = shelf.create("design", one.text, one.name)
    if request.POST.get("then") == "garment":
        return redirect("start_with", document.ref)
    return redirect("designs:text", document.pk)


def _pattern_name(key: str, parameters: tuple[tuple[str, int], ...]) -> str:
    numbers = ", ".join(f"{name.replace('_', ' ')} {value}" for name, value in parameters)
    words = key.replace("_", " ")
    return f"{words} ({numbers})" if numbers else words
