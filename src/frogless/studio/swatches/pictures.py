"""The pages of this room."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def ruler_page(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def picture(request: HttpRequest, key: str) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")
