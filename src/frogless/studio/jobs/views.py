"""The room's pages."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe


@require_safe
def jobs_list(request: HttpRequest) -> HttpResponse:
    """Everything in it."""
    return render(request, "jobs/jobs_list.html")
