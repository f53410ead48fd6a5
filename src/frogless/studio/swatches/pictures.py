"""How a swatch is read, as pictures; and a sheet to print with a ruler that can be checked."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frogless.draw.drawing import Drawing
from frogless.draw.ruler import ruler, swatch_window
from frogless.draw.svg import svg
from frogless.draw.swatching import counting
from frogless.errors import InputError
from frogless.studio.library.preferences import preferred
from frogless.studio.refs import resolve
from frogless.studio.swatches.face import face
from frogless.swatch import parse_swatch
from frogless.units import Units

SHEETS: Mapping[str, Callable[[Units], Drawing]] = {"ruler": ruler, "window": swatch_window}


@require_safe
def picture(request: HttpRequest, key: str) -> HttpResponse:
    """One drawing: how something is counted, the ruler, or the window to count through."""
    units = preferred().units
    try:
        drawing = SHEETS[key](units) if key in SHEETS else counting(key, units)
    except InputError:
        raise Http404 from None
    return HttpResponse(svg(drawing), content_type="image/svg+xml")


@require_safe
def face_of(request: HttpRequest, ref: str) -> HttpResponse:
    """A square of the fabric of a swatch, in true proportion."""
    try:
        drawing = face(parse_swatch(resolve("swatch", ref).text), preferred().units)
    except InputError:
        raise Http404 from None
    return HttpResponse(svg(drawing), content_type="image/svg+xml")


@require_safe
def ruler_page(request: HttpRequest) -> HttpResponse:
    """The sheets, and how to check a printer and a tape measure with them."""
    units = preferred().units
    sheets = [(key, draw(units).description) for key, draw in SHEETS.items()]
    return render(request, "swatches/ruler.html", {"sheets": sheets})
