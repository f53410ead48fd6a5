"""The proofreader's desk: a written pattern, what was found in it, and mending it in place."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST

from frogless.errors import InputError
from frogless.studio.asked import base_of, of_own
from frogless.studio.conflict import conflict_page
from frogless.studio.gone import gone_page, is_there, last_text
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.lines import told as told_of
from frogless.studio.onward import onward, saying
from frogless.studio.proofreading.asked import choice_of
from frogless.studio.proofreading.checking import Choice, checked, too_long
from frogless.studio.proofreading.looked import Looked
from frogless.studio.proofreading.marked import marked
from frogless.studio.proofreading.places import put
from frogless.studio.proofreading.texts import remarks
from frogless.studio.written_text import text_of

SAID: Mapping[str, str] = {
    "saved": "Saved.",
    "put": "Put in place and saved; undo takes it back.",
    "undo": "Undone.",
    "redo": "Done again.",
    "renamed": "It has another name.",
    "made": "It is kept in the library; its name can be changed below.",
    "tried": "Three errors are in this pattern. It is yours to try things on; delete it when you like.",
}
"""By the word that stands in the address."""

GONE = Looked(
    fault="This text was deleted on another page. Save what you write; it can be kept as a new one."
)

AT_ONCE = 30_000
"""Letters of a text that is checked before its page is shown; a longer one while it is."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The desk as a page shows it: the text may be one that is not saved."""

    document: Document
    text: str
    base: int
    choice: Choice
    looked: Looked | None


@require_http_methods(["GET", "HEAD", "POST"])
def text(request: HttpRequest, pk: int) -> HttpResponse:
    """The text; what was written for one that is gone can become another."""
    if request.method == "POST" and not is_there("pattern", pk):
        return gone_page(request, "pattern", text_of(request))
    answer: HttpResponse = _text(request, pk)
    return answer


@of_own("pattern")
def _text(request: HttpRequest, document: Document) -> HttpResponse:
    """What is sent is checked, mended, or saved whatever is wrong with it."""
    choice = choice_of(request, document)
    if request.method != "POST":
        return _opened(request, document, choice)
    written = text_of(request)
    if sentence := too_long(written):
        looked = Looked(fault=sentence)
        if getattr(request, "htmx", False):
            return _live(request, document, choice, looked, written, 422)
        sheet = Sheet(document, written, base_of(request), choice, looked)
        return _shown(request, sheet, 422, sentence)
    if "put" in request.POST:
        return _put(request, document, written, choice)
    if request.POST.get("do") == "check" or "leave" in request.POST:
        looked = _looked(document, written, choice)
        return _shown(request, Sheet(document, written, base_of(request), choice, looked))
    return _saved(request, document, written, choice)


@require_POST
def check(request: HttpRequest, pk: int) -> HttpResponse:
    """What is found in the text as it is written: the part beside it."""
    if not is_there("pattern", pk) and text_of(request):
        context = {"looked": GONE, "choice": Choice()}
        return render(request, "proofreading/_looked.html", context, status=422)
    answer: HttpResponse = _check(request, pk)
    return answer


@of_own("pattern")
def _check(request: HttpRequest, document: Document) -> HttpResponse:
    written, choice = text_of(request), choice_of(request, document)
    looked = _looked(document, written, choice)
    return _live(request, document, choice, looked, written)


@require_POST
def walk(request: HttpRequest, pk: int, way: str) -> HttpResponse:
    """A step back or forward; refused while there is something that was not saved."""
    if not is_there("pattern", pk) and (written := text_of(request) or last_text("pattern", pk)):
        return gone_page(request, "pattern", written)
    answer: HttpResponse = _walk(request, pk, way)
    return answer


@of_own("pattern")
def _walk(request: HttpRequest, document: Document, way: str) -> HttpResponse:
    here, base, written = _here(document), base_of(request), text_of(request)
    choice = choice_of(request, document)
    if "text" in request.POST and written != document.text:
        sentence = f"There are changes that are not saved. Save them first, then {way}."
        looked = _looked(document, written, choice)
        return _shown(request, Sheet(document, written, base, choice, looked), 422, sentence)
    move = shelf.undo if way == "undo" else shelf.redo
    try:
        move(document.pk, base)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, written or conflict.document.text, here)
    return redirect(saying(onward(request, here), f"done={way}"))


@require_POST
def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """Another name; the text stays as it is."""
    if not is_there("pattern", pk) and (last := text_of(request) or last_text("pattern", pk)):
        return gone_page(request, "pattern", last)
    answer: HttpResponse = _rename(request, pk)
    return answer


@of_own("pattern")
def _rename(request: HttpRequest, document: Document) -> HttpResponse:
    here = _here(document)
    try:
        shelf.rename(document, request.POST.get("name", ""))
    except InputError as error:
        document.refresh_from_db()
        choice = choice_of(request, document)
        looked = _looked(document, document.text, choice)
        sheet = Sheet(document, document.text, document.revision, choice, looked)
        return _shown(request, sheet, 422, str(error))
    return redirect(saying(onward(request, here), "done=renamed"))


def _opened(request: HttpRequest, document: Document, choice: Choice) -> HttpResponse:
    said = SAID.get(request.GET.get("done", ""))
    at_once = len(document.text) <= AT_ONCE or "check" in request.GET
    looked = _looked(document, document.text, choice) if at_once else None
    sheet = Sheet(document, document.text, document.revision, choice, looked)
    waiting = remarks.take(request.GET.get("remarks", ""))
    of_file = waiting[1].decode().split("\n") if waiting else []
    return _shown(request, sheet, notices=(*((said,) if said else ()), *of_file))


def _saved(request: HttpRequest, document: Document, written: str, choice: Choice) -> HttpResponse:
    try:
        told = told_of(document.text, written)
        document = shelf.change(document.pk, base_of(request), written, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, written, _here(document))
    if not getattr(request, "htmx", False):
        return redirect(saying(_here(document), "done=saved"))
    looked = _looked(document, written, choice)
    sheet = Sheet(document, written, document.revision, choice, looked)
    context = _context(sheet, notices=(SAID["saved"],))
    return render(request, "proofreading/_saved.html", context)


def _put(request: HttpRequest, document: Document, written: str, choice: Choice) -> HttpResponse:
    """What a finding offers is put in its place, and that is saved as a step."""
    asked, looked = request.POST.get("put", ""), _looked(document, written, choice)
    found = next((one for one in looked.found if str(one.number) == asked and one.put), None)
    if found is None or found.put is None:
        sheet = Sheet(document, written, base_of(request), choice, looked)
        return _shown(request, sheet, 422, "this is not offered any more; see what is found now")
    amended = put(written, found.put.start, found.put.end, found.put.words)
    told = f"{found.put.words} put on line {found.place.line}"
    try:
        shelf.change(document.pk, base_of(request), amended, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, amended, _here(document))
    return redirect(saying(_here(document), "done=put"))


def _looked(document: Document, written: str, choice: Choice) -> Looked:
    return checked(written, choice, f"pattern {document.ref}")


def _here(document: Document) -> str:
    return reverse("proofreading:text", args=[document.pk])


def _live(
    request: HttpRequest,
    document: Document,
    choice: Choice,
    looked: Looked,
    written: str,
    status: int = 200,
) -> HttpResponse:
    context = _told(document, choice, looked, written)
    return render(request, "proofreading/_looked.html", context, status=status)


def _shown(
    request: HttpRequest,
    sheet: Sheet,
    status: int = 200,
    alert: str = "",
    notices: tuple[str, ...] = (),
) -> HttpResponse:
    context = _context(sheet, notices, (alert,) if alert else ())
    return render(request, "proofreading/text.html", context, status=status)


def _told(
    document: Document, choice: Choice, looked: Looked | None, written: str
) -> dict[str, Any]:
    """What was found; the strip as an image, which cannot reach the page whatever stands in it."""
    picture = ""
    if looked is not None and looked.strip is not None:
        drawn = b64encode(looked.strip.svg.encode()).decode()
        picture = f"data:image/svg+xml;base64,{drawn}"
    return {
        "document": document,
        "choice": choice,
        "looked": looked,
        "picture": picture,
        "lines": marked(written, looked) if looked is not None else (),
    }


def _context(
    sheet: Sheet, notices: tuple[str, ...] = (), alerts: tuple[str, ...] = ()
) -> dict[str, Any]:
    document = sheet.document
    return {
        "text": sheet.text,
        "base": sheet.base,
        **_told(document, sheet.choice, sheet.looked, sheet.text),
        "undo": shelf.can_undo(document),
        "redo": shelf.can_redo(document),
        "notices": notices,
        "alerts": alerts,
    }
