"""Named versions of a written pattern: kept, compared line by line, brought back, deleted; its steps."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.asked import of_own
from frogless.studio.library.models import Document
from frogless.studio.lines import Line, compared, counted
from frogless.studio.versions import brought_back, deleted, kept, latest_steps, version_or_404

SAID = {
    "kept": "Kept as a version.",
    "deleted": "The version is deleted.",
    "back": "The version is back; undo takes it away again.",
}


@dataclass(frozen=True, slots=True)
class Comparison:
    """A version held against the text as it is now."""

    name: str
    lines: tuple[Line, ...]
    added: int
    removed: int


@require_safe
@of_own("pattern")
def versions(request: HttpRequest, document: Document) -> HttpResponse:
    """All of them, and one compared with the text as it is where that is asked for."""
    said = SAID.get(request.GET.get("done", ""))
    return _shown(request, document, notices=(said,) if said else ())


@require_POST
@of_own("pattern")
def keep(request: HttpRequest, document: Document) -> HttpResponse:
    """The text as it is, under a name."""
    try:
        return kept(request, document, _here(document))
    except InputError as error:
        return _shown(request, document, status=422, error=str(error))


@require_POST
@of_own("pattern")
def bring_back(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """The text of a version as a new step, which can be undone."""
    return brought_back(request, document, key, _here(document))


@require_POST
@of_own("pattern")
def delete(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """Deletes a version; the text stays as it is."""
    return deleted(document, key, _here(document))


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
        "steps": latest_steps(document),
    }
    return render(request, "proofreading/versions.html", context, status=status)


def _comparison(document: Document, key: str) -> Comparison | None:
    if not key:
        return None
    version = version_or_404(document, key)
    lines = compared(version.text, document.text)
    return Comparison(version.name, lines, *counted(lines))


def _here(document: Document) -> str:
    return reverse("proofreading:versions", args=[document.pk])
