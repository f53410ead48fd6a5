"""Named versions of a written pattern: kept, compared line by line, brought back, deleted; its steps."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.conflict import conflict_page
from frogless.studio.designs.asked import base_of
from frogless.studio.designs.lines import Line, compared, counted
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Version
from frogless.studio.onward import onward
from frogless.studio.proofreading.asked import of_own

SAID = {
    "kept": "Kept as a version.",
    "deleted": "The version is deleted.",
    "back": "The version is back; undo takes it away again.",
}
MOST_STEPS_SHOWN = 30


@dataclass(frozen=True, slots=True)
class Comparison:
    """A version held against the text as it is now."""

    name: str
    lines: tuple[Line, ...]
    added: int
    removed: int


@require_safe
@of_own
def versions(request: HttpRequest, document: Document) -> HttpResponse:
    """All of them, and one compared with the text as it is where that is asked for."""
    said = SAID.get(request.GET.get("done", ""))
    return _shown(request, document, notices=(said,) if said else ())


@require_POST
@of_own
def keep(request: HttpRequest, document: Document) -> HttpResponse:
    """The text as it is, under a name."""
    try:
        shelf.name_version(document, request.POST.get("name", ""))
    except InputError as error:
        return _shown(request, document, status=422, error=str(error))
    return redirect(f"{_here(document)}?done=kept")


@require_POST
@of_own
def bring_back(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """The text of a version as a new step, which can be undone."""
    version = _version(document, key)
    told = f"the version “{version.name}” came back"
    try:
        shelf.change(document.pk, base_of(request), version.text, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, version.text, _here(document))
    return redirect(onward(request, f"{_here(document)}?done=back"))


@require_POST
@of_own
def delete(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """Deletes a version; the text stays as it is."""
    _version(document, key).delete()
    shelf.forget_traces()
    return redirect(f"{_here(document)}?done=deleted")


def _shown(
    request: HttpRequest,
    document: Document,
    status: int = 200,
    error: str = "",
    notices: tuple[str, ...] = (),
) -> HttpResponse:
    context = {
        "document": document,
        "versions": list(document.versions.all()),
        "name": request.POST.get("name", ""),
        "error": error,
        "notices": notices,
        "comparison": _comparison(document, request.GET.get("with", "")),
        "steps": document.steps.order_by("-number")[:MOST_STEPS_SHOWN],
    }
    return render(request, "proofreading/versions.html", context, status=status)


def _comparison(document: Document, key: str) -> Comparison | None:
    if not key:
        return None
    if not (key.isascii() and key.isdecimal() and len(key) < 19):
        raise Http404
    version = _version(document, int(key))
    lines = compared(version.text, document.text)
    return Comparison(version.name, lines, *counted(lines))


def _version(document: Document, key: int) -> Version:
    version: Version = get_object_or_404(document.versions, pk=min(key, 2**63 - 1))
    return version


def _here(document: Document) -> str:
    return reverse("proofreading:versions", args=[document.pk])
