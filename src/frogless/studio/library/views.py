"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


@require_safe
def show_library(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "library/show_library.html")
