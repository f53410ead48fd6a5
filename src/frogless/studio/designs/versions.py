"""Named versions of an own design: kept, read, compared, brought back, deleted; and its steps."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from frogless.errors import InputError
from frogless.studio.conflict import conflict_page
from frogless.studio.designs.asked import base_of, of_own
from frogless.studio.designs.compared import Differences, compare_drafts
from frogless.studio.designs.lines import Line, compared, counted
from frogless.studio.designs.said import SAID
from frogless.studio.designs.standing import tries
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Version
from frogless.studio.library.preferences import preferred
from frogless.studio.onward import onward
from frogless.studio.work.pool import TooMuchWork, pool

NOW = "now"
"""Stands for the text as it is, beside the keys of versions."""

MOST_STEPS_SHOWN = 30


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
@of_own
def versions(request: HttpRequest, document: Document) -> HttpResponse:
    """All of them, and two compared where two are asked for."""
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


@require_safe
@of_own
def read(request: HttpRequest, document: Document, key: int) -> HttpResponse:
    """The text of one."""
    version = _version(document, key)
    return render(request, "designs/version.html", {"document": document, "version": version})


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
    """Deletes a version; the design stays as it is."""
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
    kept = list(document.versions.all())
    asked = request.GET.get("before", ""), request.GET.get("after", "")
    context = {
        "document": document,
        "versions": kept,
        "name": request.POST.get("name", ""),
        "error": error,
        "notices": notices,
        "before": asked[0] or (str(kept[0].pk) if kept else NOW),
        "after": asked[1] or NOW,
        "now": NOW,
        "comparison": _comparison(document, *asked) if all(asked) else None,
        "steps": document.steps.order_by("-number")[:MOST_STEPS_SHOWN],
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
    if not (key.isascii() and key.isdecimal() and len(key) < 19):
        raise Http404
    version = _version(document, int(key))
    return version.name, version.text


def _version(document: Document, key: int) -> Version:
    version: Version = get_object_or_404(document.versions, pk=min(key, 2**63 - 1))
    return version


def _here(document: Document) -> str:
    return reverse("designs:versions", args=[document.pk])
