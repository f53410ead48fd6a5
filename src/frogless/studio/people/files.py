"""Bodies as texts: opened from a file, pasted, mended at the line, copied."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from frogless.body.load import parse_body
from frogless.errors import Fault, InputError
from frogless.studio import refs
from frogless.studio.asked import base_of, document_or_404
from frogless.studio.conflict import conflict_page
from frogless.studio.gone import gone_page, is_there
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.people.body_text import FILE
from frogless.studio.written_text import plain, text_of

LARGEST_FILE = 200_000
"""Bytes; a body file has two thousand."""


@require_http_methods(["GET", "HEAD", "POST"])
def open_file(request: HttpRequest) -> HttpResponse:
    """A body file that is opened or pasted becomes a body of the person's own."""
    if request.method != "POST":
        return _editor(request, None, "")
    try:
        text = _brought(request)
    except InputError as error:
        return _editor(request, None, text_of(request), [str(error)], status=422)
    if faults := faults_of(text):
        return _editor(request, None, text, faults, status=422)
    made = shelf.create("body", text)
    return redirect(f"{reverse('people:edit', args=[made.pk])}?saved=new")


@require_http_methods(["GET", "HEAD", "POST"])
def text(request: HttpRequest, pk: int) -> HttpResponse:
    """A body of the person's own as the text that it is."""
    if request.method == "POST" and not is_there("body", pk):
        return gone_page(request, "body", text_of(request))
    document = document_or_404("body", pk)
    if request.method != "POST":
        return _editor(request, document, document.text, faults_of(document.text))
    mine = text_of(request)
    try:
        faults = faults_of(mine)
        if not faults:
            shelf.change(pk, base_of(request), mine, "Changed the text")
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, mine, reverse("people:text", args=[pk]))
    except InputError as error:
        faults = [str(error)]
    if faults:
        return _editor(request, document, mine, faults, status=422)
    return redirect(f"{reverse('people:edit', args=[pk])}?saved=again")


@require_POST
def copy(request: HttpRequest, ref: str) -> HttpResponse:
    """An example, a size or another body becomes a body of the person's own, to be changed."""
    try:
        found = refs.resolve("body", ref)
    except InputError:
        raise Http404 from None
    made = shelf.create("body", found.text, found.name)
    return redirect(f"{reverse('people:edit', args=[made.pk])}?saved=copy")


def faults_of(text: str) -> list[str]:
    """What is wrong with a body file, each with its line: "line 4, hip_grith: unknown key"."""
    try:
        parse_body(text, FILE)
    except InputError as error:
        return [_told(fault) for fault in error.faults]
    return []


def _told(fault: Fault) -> str:
    line = f"line {fault.place.line}" if fault.place.line else ""
    where = ", ".join(filter(None, (line, fault.place.key.removeprefix("measurements."))))
    return f"{where}: {fault.message}" if where else fault.message


def _brought(request: HttpRequest) -> str:
    """The text of the file that was chosen, else what was pasted.

    Raises:
        InputError: the file is too large or no text, or there is neither.
    """
    upload: Any = request.FILES.get("file")
    if upload is None:
        if not (typed := text_of(request)).strip():
            raise InputError("choose a body file, or paste the text of one")
        return typed
    if upload.size > LARGEST_FILE:
        raise InputError(
            f"the file {upload.name} has {upload.size // 1000} kB; a body file has "
            f"{LARGEST_FILE // 1000} kB at most"
        )
    try:
        content: bytes = upload.read()
        return plain(content.decode())
    except UnicodeDecodeError:
        raise InputError(
            f"the file {upload.name} is not text in UTF-8; a body file is TOML, saved as UTF-8"
        ) from None


def _editor(
    request: HttpRequest,
    document: Document | None,
    text: str,
    faults: list[str] | None = None,
    status: int = 200,
) -> HttpResponse:
    context: dict[str, Any] = {"body": document, "text": text, "faults": faults or []}
    if document is not None:
        context["base"] = request.POST.get("base", document.revision)
    return render(request, "people/body_text.html", context, status=status)
