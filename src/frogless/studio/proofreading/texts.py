"""The room's first page: a pattern is pasted, opened or tried on an example, and what is kept."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_safe

from frogless.errors import InputError
from frogless.studio.asked import of_own
from frogless.studio.library import shelf
from frogless.studio.library.file_names import stem
from frogless.studio.library.models import Document
from frogless.studio.library.pending import Pending
from frogless.studio.proofreading import example
from frogless.studio.proofreading.checking import LARGEST_FILE, opened, too_long
from frogless.studio.proofreading.reading import Opened, spoken
from frogless.studio.written_text import plain, text_of

NOTHING = "Paste a pattern, or choose a file."
LONGEST_TITLE = 80

remarks = Pending()
"""What is to be said of files that were opened, on the page that comes next."""


@require_safe
def texts(request: HttpRequest) -> HttpResponse:
    """What is kept, and the form that begins another."""
    return _shown(request)


@require_http_methods(["GET", "HEAD", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """A text becomes one that is kept, and opens in the editor."""
    if request.method != "POST":
        return redirect("proofreading:list")
    if request.POST.get("from") == "example":
        document = shelf.create("pattern", example.TEXT, example.NAME)
        return redirect(f"{_editor(document)}?done=tried")
    written = text_of(request)
    try:
        name, found = _sent(request, written)
        text = plain(found.text)
        if not text.strip():
            raise InputError(NOTHING)
        if sentence := too_long(text):
            raise InputError(sentence)
        document = shelf.create("pattern", text, name or title_of(text))
    except InputError as error:
        return _shown(request, written, spoken(error))
    token = remarks.put("", "\n".join(found.remarks).encode()) if found.remarks else ""
    return redirect(f"{_editor(document)}?done=made{token and f'&remarks={token}'}")


@require_safe
@of_own("pattern")
def download(request: HttpRequest, document: Document) -> HttpResponse:
    """The text as a file."""
    response = HttpResponse(document.text, content_type="text/plain; charset=utf-8")
    file = f"{stem(document.name, instead='pattern')}.txt"
    response["Content-Disposition"] = f'attachment; filename="{file}"'
    return response


def title_of(text: str) -> str:
    """What a text is called: its first line.

    >>> title_of("\\n# Bell Skirt\\n\\nRnd 1: ...")
    'Bell Skirt'
    """
    first = next((line for line in text.splitlines() if line.strip(" #*_=-\t")), "Pattern")
    return shelf.clean_name(first.strip(" #*_=-\t"))[:LONGEST_TITLE].strip() or "Pattern"


def _sent(request: HttpRequest, written: str) -> tuple[str, Opened]:
    """The name of the file and its text, or what was pasted."""
    file = request.FILES.get("file")
    if file is None:
        return "", Opened(written)
    data = file.read(LARGEST_FILE + 1)
    if not data and written.strip():
        return "", Opened(written)
    found = opened(data, file.name or "")
    return shelf.clean_name((file.name or "").rpartition(".")[0])[:LONGEST_TITLE], found


def _shown(request: HttpRequest, written: str = "", error: str = "") -> HttpResponse:
    context = {
        "documents": shelf.documents("pattern").order_by("-changed"),
        "text": written,
        "error": error,
    }
    return render(request, "proofreading/texts.html", context, status=422 if error else 200)


def _editor(document: Document) -> str:
    return reverse("proofreading:text", args=[document.pk])
