"""The pages of this room."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def show_library(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def delete(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def restore(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def delete_for_good(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def restore_garment(request: HttpRequest, pk: int) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")


def empty_bin(request: HttpRequest) -> HttpResponse:
    """To come."""
    return render(request, "library/show_library.html")
