"""What the forms of a garment's page send besides what they change."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_http_methods

from frogless.studio.garments.page import TITLES

View = Callable[..., HttpResponse]


def posted(view: View) -> View:
    """A view for a form; who asks for its address again, or comes back to it, is shown the shape."""

    @require_http_methods(["POST", "GET", "HEAD"])
    @wraps(view)
    def answer(request: HttpRequest, pk: int) -> HttpResponse:
        if request.method != "POST":
            return redirect("garments:room", pk, "shape")
        return view(request, pk)

    return answer


def room_of(request: HttpRequest) -> str:
    """The room that the page shows."""
    room = request.POST.get("room", "")
    return room if room in TITLES else "shape"
