"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


@require_safe
def home(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "start/home.html")


@require_safe
def start_with(request: HttpRequest, ref: str) -> HttpResponse:
    """Measurements and a swatch for one design."""
    return render(request, "start/home.html")
