"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


@require_safe
def people_list(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "people/people_list.html")


@require_safe
def of_own(request: HttpRequest, pk: int) -> HttpResponse:
    """One body of the person's own."""
    return render(request, "people/people_list.html")


@require_safe
def of_size(request: HttpRequest, table: str, size: str) -> HttpResponse:
    """One size of a table."""
    return render(request, "people/people_list.html")


@require_safe
def picture(request: HttpRequest, key: str) -> HttpResponse:
    """How a measurement is taken."""
    return render(request, "people/people_list.html")
