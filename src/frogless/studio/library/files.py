"""The pages of this room."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def export_all(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def import_files(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def export(request: HttpRequest, ref: str) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")
