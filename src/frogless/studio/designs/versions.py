"""Named versions of an own design: kept, read, compared, brought back, deleted; and its steps."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.asked import of_own
from frogless.studio.designs.compared import Differences, compare_drafts
from frogless.studio.designs.said import SAID
from frogless.studio.designs.standing import tries
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import preferred
from frogless.studio.lines import Line, compared, counted
from frogless.studio.versions import brought_back, deleted, kept, latest_steps, version_or_404
from frogless.studio.work.pool import TooMuchWork, pool

NOW = "now"
"""Stands for the text as it is, beside the keys of versions."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two texts held against each other."""

    before: str
    after: str
    lines: tuple[Line, ...]
    added: int
    removed: int
    differences: Differences


@require_safe
@of_own("design")
def versions(request: HttpRequest, document: Document) -> HttpResponse:
    """All of them, and two compared where two are asked for."""
    said = SAID.get(request.GET.get("done", ""))
    return _shown(request, document, notices=(said,) if said else ())


@require_POST
@of_own("design")
def keep(request: HttpRequest, document: Document) -> HttpResponse:
    """The text as it is, under a name."""
    try:
        return kept(request, document, _here(document))
    except InputError as error:
        return _shown(request, document, status=422, error=str(error))


@require_safe
@of_own("design")
def read(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """The text of one."""
    version = version_or_404(document, key)
    return render(request, "designs/version.html", {"document": document, "version": version})


@require_POST
@of_own("design")
def bring_back(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """The text of a version as a new step, which can be undone."""
    return brought_back(request, document, key, _here(document))


@require_POST
@of_own("design")
def delete(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """Deletes a version; the design stays as it is."""
    return deleted(document, key, _here(document))


def _shown(
    request: HttpRequest,
    document: Document,
    status: int = 200,
    error: str = "",
    notices: tuple[str, ...] = (),
) -> HttpResponse:
    versions = list(document.versions.all())
    asked = request.GET.get("before", ""), request.GET.get("after", "")
    context = {
        "document": document,
        "versions": versions,
        "name": request.POST.get("name", ""),
        "error": error,
        "notices": notices,
        "before": asked[0] or (str(versions[0].pk) if versions else NOW),
        "after": asked[1] or NOW,
        "now": NOW,
        "comparison": _comparison(document, *asked) if all(asked) else None,
        "steps": latest_steps(document),
    }
    return render(request, "designs/versions.html", context, status=status)


def _comparison(document: Document, before: str, after: str) -> Comparison:
    (old_name, old), (new_name, new) = _text(document, before), _text(document, after)
    lines = compared(old, new)
    return Comparison(old_name, new_name, lines, *counted(lines), _differences(document, old, new))


def _differences(document: Document, old: str, new: str) -> Differences:
    if old == new:
        return Differences()
    likes, worn = preferred(), tries(document.ref)
    affinity = f"design {document.ref}"
    try:
        return pool().ask(affinity, compare_drafts, old, new, worn, likes.terms, likes.units)
    except TooMuchWork as error:
        return Differences(why=str(error).capitalize())


def _text(document: Document, key: str) -> tuple[str, str]:
    """The name and the text that a choice stands for."""
    if key == NOW:
        return "Now", document.text
    version = version_or_404(document, key)
    return version.name, version.text


def _here(document: Document) -> str:
    return reverse("designs:versions", args=[document.pk])
