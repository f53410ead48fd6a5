"""The library: what is saved, and what was deleted while the studio has been open."""

from __future__ import annotations

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.library import shelf
from frogless.studio.library.models import Document

SHELVES = (("body", "Bodies"), ("swatch", "Swatches"), ("design", "Designs"))


@require_safe
def show(request: HttpRequest) -> HttpResponse:
    """Everything by kind."""
    return _page(request)


@require_POST
def rename_document(request: HttpRequest, key: int) -> HttpResponse:
    """Another name; a name that cannot be is told beside the field, with what was written."""
    document = get_object_or_404(Document, pk=key, removed=False)
    name = request.POST.get("name", "")
    try:
        shelf.rename(document, name)
    except InputError as error:
        return _page(request, refused=key, written=name, sentence=str(error))
    return redirect("library")


@require_POST
def delete_document(request: HttpRequest, key: int) -> HttpResponse:
    """Into the bin."""
    shelf.remove(get_object_or_404(Document, pk=key, removed=False))
    return redirect("library")


@require_POST
def restore_document(request: HttpRequest, key: int) -> HttpResponse:
    """Out of the bin."""
    shelf.bring_back(get_object_or_404(Document, pk=key, removed=True))
    return redirect("library")


def _page(request: HttpRequest, **more: Any) -> HttpResponse:  # noqa: ANN401 - a template's context
    shelves = [(title, kind, shelf.documents(kind)) for kind, title in SHELVES]
    context = {"shelves": shelves, "bin": shelf.in_bin(), **more}
    return render(request, "library/library.html", context)
