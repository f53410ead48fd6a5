"""The pages of this room."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def swatches_list(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def new_swatch(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def open_swatch(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def look(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def copy_swatch(request: HttpRequest, ref: str) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def edit_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def swatch_text(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def undo_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")


def redo_swatch(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "swatches/swatches_list.html")
