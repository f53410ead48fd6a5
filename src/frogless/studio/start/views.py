"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST, require_safe

from frogless.studio.library.preferences import ACCEPTED, prefer


@require_safe
def home(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "start/home.html")


@require_safe
def start_with(request: HttpRequest, ref: str) -> HttpResponse:
    """Measurements and a swatch for one design."""
    return render(request, "start/home.html")


@require_POST
def preferences(request: HttpRequest) -> HttpResponse:
    """Units, names of stitches and hand, kept for every page; then back to where it was asked."""
    chosen = {name: request.POST[name] for name in ACCEPTED if name in request.POST}
    prefer(**chosen)
    return redirect(own_path(request.POST.get("next", "")))


def own_path(asked: str) -> str:
    """A path of the studio itself; the first page for anything else."""
    own = asked.startswith("/") and url_has_allowed_host_and_scheme(asked, allowed_hosts=None)
    return asked if own else reverse("home")
