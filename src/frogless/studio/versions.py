"""Named versions of a text, the same in every room that keeps them: found, kept, brought back, deleted."""

from __future__ import annotations

from django.db.models import QuerySet
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect

from frogless.studio.asked import base_of, is_number
from frogless.studio.conflict import conflict_page
from frogless.studio.gone import LARGEST_KEY
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Step, Version
from frogless.studio.onward import onward

MOST_STEPS_SHOWN = 30


def version_or_404(document: Document, key: int | str) -> Version:
    """A version of a document by its key; 404 when there is none."""
    if isinstance(key, str):
        if not is_number(key, digits=18):
            raise Http404
        key = int(key)
    version: Version | None = document.versions.filter(pk=min(key, LARGEST_KEY)).first()
    if version is None:
        raise Http404
    return version


def latest_steps(document: Document) -> QuerySet[Step]:
    """The last steps of a text, the latest first."""
    return document.steps.order_by("-number")[:MOST_STEPS_SHOWN]


def kept(request: HttpRequest, document: Document, here: str) -> HttpResponse:
    """The text as it is, under the name that the form gives.

    Raises:
        InputError: the name cannot be had.
    """
    shelf.name_version(document, request.POST.get("name", ""))
    return redirect(f"{here}?done=kept")


def brought_back(request: HttpRequest, document: Document, key: int, here: str) -> HttpResponse:
    """The text of a version as a new step, which can be undone."""
    version = version_or_404(document, key)
    told = f"the version “{version.name}” came back"
    try:
        shelf.change(document.pk, base_of(request), version.text, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, version.text, here)
    return redirect(onward(request, f"{here}?done=back"))


def deleted(document: Document, key: int, here: str) -> HttpResponse:
    """Without a version; the text stays as it is."""
    version_or_404(document, key).delete()
    shelf.forget_traces()
    return redirect(f"{here}?done=deleted")
