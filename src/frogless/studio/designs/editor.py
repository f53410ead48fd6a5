"""The document editor: the text of an own design, checked as it is written, saved as it stands."""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frogless.errors import InputError
from frogless.studio import lines, refs
from frogless.studio.asked import base_of, is_number, of_own
from frogless.studio.conflict import conflict_page
from frogless.studio.designs import keys
from frogless.studio.designs.checked import Checked
from frogless.studio.designs.checking import checked, known, too_long
from frogless.studio.designs.said import SAID
from frogless.studio.designs.standing import Pair, chosen, swatch_choices
from frogless.studio.designs.title import retitled
from frogless.studio.gone import gone_page, is_there, last_text
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import preferred
from frogless.studio.onward import onward, saying
from frogless.studio.written_text import text_of

GONE = "This design was deleted on another page. Save what you write; it can be kept as a new one."


@dataclass(frozen=True, slots=True)
class Sheet:
    """The editor as a page shows it: the text may be one that is not saved."""

    document: Document
    text: str
    base: int
    pair: Pair
    checked: Checked | None


@require_http_methods(["GET", "HEAD", "POST"])
def text(request: HttpRequest, pk: int) -> HttpResponse:
    """The text of an own design; what was written for one that is gone can become another."""
    if request.method == "POST" and not is_there("design", pk):
        return gone_page(request, "design", text_of(request))
    answer: HttpResponse = _text(request, pk)
    return answer


@of_own("design")
def _text(request: HttpRequest, document: Document) -> HttpResponse:
    """What is sent is checked, or saved whatever is wrong with it."""
    if request.method != "POST":
        return _opened(request, document)
    written, pair = text_of(request), chosen(request.POST.dict())
    if sentence := too_long(written):
        if getattr(request, "htmx", False):
            return render(request, "designs/_checked.html", {"sentence": sentence}, status=422)
        sheet = Sheet(document, written, base_of(request), pair, None)
        return _shown(request, sheet, 422, sentence)
    if request.POST.get("do") == "check":
        found = _found(document, written, pair)
        return _shown(request, Sheet(document, written, base_of(request), pair, found))
    return _saved(request, document, written, pair)


@require_POST
def check(request: HttpRequest, pk: int) -> HttpResponse:
    """What the text comes to as it is written: the part beside it."""
    if not is_there("design", pk) and text_of(request):
        return render(request, "designs/_checked.html", {"sentence": GONE}, status=422)
    answer: HttpResponse = _check(request, pk)
    return answer


@of_own("design")
def _check(request: HttpRequest, document: Document) -> HttpResponse:
    written, pair = text_of(request), chosen(request.POST.dict())
    if sentence := too_long(written):
        return render(request, "designs/_checked.html", {"sentence": sentence}, status=422)
    context = _told(_found(document, written, pair))
    return render(request, "designs/_checked.html", context)


@require_POST
def walk(request: HttpRequest, pk: int, way: str) -> HttpResponse:
    """So many steps back or forward; refused while there is something that was not saved."""
    if not is_there("design", pk) and (written := text_of(request) or last_text("design", pk)):
        return gone_page(request, "design", written)
    answer: HttpResponse = _walk(request, pk, way)
    return answer


@of_own("design")
def _walk(request: HttpRequest, document: Document, way: str) -> HttpResponse:
    here = reverse("designs:text", args=[document.pk])
    base, written = base_of(request), text_of(request)
    pair = chosen(request.POST.dict())
    if "text" in request.POST and written != document.text:
        sentence = f"There are changes that are not saved. Save them first, then {way}."
        return _shown(request, Sheet(document, written, base, pair, None), 422, sentence)
    move = shelf.undo if way == "undo" else shelf.redo
    try:
        for _ in range(_steps(request, document)):
            before, document = document.revision, move(document.pk, base)
            base = document.revision
            if base == before:
                break
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, written or conflict.document.text, here)
    target = onward(request, here)
    return redirect(f"{target}?done={way}" if target == here else target)


@require_POST
def rename(request: HttpRequest, pk: int) -> HttpResponse:
    """Another title: in the text where it can be read, else of the document alone."""
    if not is_there("design", pk) and (last := text_of(request) or last_text("design", pk)):
        title = shelf.clean_name(request.POST.get("title", ""))
        return gone_page(request, "design", (title and retitled(last, title)) or last)
    answer: HttpResponse = _rename(request, pk)
    return answer


@of_own("design")
def _rename(request: HttpRequest, document: Document) -> HttpResponse:
    name, here = request.POST.get("title", ""), reverse("designs:text", args=[document.pk])
    try:
        name = shelf.checked_name(name)
        changed = retitled(document.text, name)
        if changed is None:
            shelf.rename(document, name)
        else:
            shelf.change(document.pk, base_of(request), changed, f"the title became {name}")
    except shelf.Conflict as conflict:
        mine = retitled(document.text, name) or document.text
        return conflict_page(request, conflict, mine, here)
    except InputError as error:
        sheet = Sheet(document, document.text, document.revision, chosen({}), None)
        return _shown(request, sheet, 422, str(error))
    return redirect(saying(onward(request, here), "done=renamed"))


@require_safe
def reference(request: HttpRequest) -> HttpResponse:
    """What can stand in a design; for htmx only what was looked for."""
    words = request.GET.get("find", "")[:100]
    context = {"tables": keys.search(words), "find": words, "names": keys.names(words)}
    live = getattr(request, "htmx", False)
    return render(request, f"designs/{'_keys' if live else 'keys'}.html", context)


def _opened(request: HttpRequest, document: Document) -> HttpResponse:
    likes, pair = preferred(), chosen(request.GET.dict())
    found = known(document.text, pair, likes)
    if found is None and "check" in request.GET:
        found = _found(document, document.text, pair)
    said = SAID.get(request.GET.get("done", ""))
    if said and request.GET.get("done") == "saved" and found and found.faults:
        said = said_of(found)
    sheet = Sheet(document, document.text, document.revision, pair, found)
    return _shown(request, sheet, notices=(said,) if said else ())


def _saved(request: HttpRequest, document: Document, written: str, pair: Pair) -> HttpResponse:
    here = reverse("designs:text", args=[document.pk])
    told = lines.told(document.text, written)
    try:
        document = shelf.change(document.pk, base_of(request), written, told)
    except shelf.Conflict as conflict:
        return conflict_page(request, conflict, written, here)
    found = _found(document, written, pair)
    if not getattr(request, "htmx", False):
        return redirect(f"{here}?{_choice(pair)}&done=saved")
    sheet = Sheet(document, written, document.revision, pair, found)
    context = _context(sheet, notices=(said_of(found),))
    return render(request, "designs/_saved.html", context)


def said_of(found: Checked) -> str:
    """What is said of a text that was saved."""
    number = len(found.faults)
    if not number:
        return "Saved."
    if found.impossible:
        return "Saved. It cannot be had for this body and swatch; see beside the text."
    if number == 1:
        return "Saved, with a fault; mend it before it can be made."
    return f"Saved, with {number} faults; mend them before it can be made."


def _found(document: Document, written: str, pair: Pair) -> Checked:
    return checked(written, pair, preferred(), f"design {document.ref}")


def _choice(pair: Pair) -> str:
    return urlencode({"body": pair.body, "swatch": pair.written})


def _steps(request: HttpRequest, document: Document) -> int:
    """How many steps it is to the one that is asked for; one when none is."""
    given = request.POST.get("to", "")
    if not is_number(given):
        return 1
    return max(1, min(abs(document.step - int(given)), shelf.MOST_STEPS))


def _shown(
    request: HttpRequest,
    sheet: Sheet,
    status: int = 200,
    alert: str = "",
    notices: tuple[str, ...] = (),
) -> HttpResponse:
    context = _context(sheet, notices, (alert,) if alert else ())
    return render(request, "designs/text.html", context, status=status)


def _told(found: Checked | None) -> dict[str, Any]:
    """What was found, its drawing as an image, which cannot reach the page whatever stands in it."""
    picture = ""
    if found is not None and found.picture is not None:
        written = b64encode(found.picture.svg.encode()).decode()
        picture = f"data:image/svg+xml;base64,{written}"
    return {"checked": found, "picture": picture}


def _context(
    sheet: Sheet, notices: tuple[str, ...] = (), alerts: tuple[str, ...] = ()
) -> dict[str, Any]:
    document = sheet.document
    return {
        "document": document,
        "text": sheet.text,
        "base": sheet.base,
        "pair": sheet.pair,
        **_told(sheet.checked),
        "bodies": refs.choices("body"),
        "swatches": swatch_choices(sheet.pair),
        "undo": shelf.can_undo(document),
        "redo": shelf.can_redo(document),
        "notices": notices,
        "alerts": alerts,
    }
