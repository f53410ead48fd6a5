"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


@require_safe
def designs_list(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "designs/designs_list.html")


@require_safe
def about(request: HttpRequest, ref: str) -> HttpResponse:
    """One design."""
    return render(request, "designs/designs_list.html")


@require_safe
def of_own(request: HttpRequest, pk: int) -> HttpResponse:
    """One design of the person's own."""
    return render(request, "designs/designs_list.html")
