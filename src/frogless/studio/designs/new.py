"""A new design: from an example, from a file or a text, or from the least that can be drafted."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.designs.checking import too_long
from frogless.studio.designs.least import LEAST
from frogless.studio.library import shelf
from frogless.studio.library.shelf import LONGEST_TEXT
from frogless.studio.written_text import plain, text_of

NO_TEXT = "Choose a file, or paste a design."
NOT_TEXT = "This is no text file; a design is one, and its name ends in .toml."


@require_http_methods(["GET", "HEAD", "POST"])
def new(request: HttpRequest) -> HttpResponse:
    """The three ways to begin; what was begun opens in the editor."""
    written, chosen = "", "example:" + next(iter(_examples()))[0].partition(":")[2]
    error = ""
    if request.method == "POST":
        written = text_of(request)
        chosen = request.POST.get("design", chosen)
        try:
            document = shelf.create("design", _text(request, written))
            return redirect(f"{reverse('designs:text', args=[document.pk])}?done=made")
        except InputError as refused:
            error = str(refused)[:1].upper() + str(refused)[1:]
    at = "example" if request.POST.get("from") == "example" else "text"
    context = _context(written, error, at, chosen)
    return render(request, "designs/new.html", context, status=422 if error else 200)


def _context(written: str, error: str, at: str = "text", chosen: str = "") -> dict[str, object]:
    return {
        "examples": _examples(),
        "chosen": chosen,
        "text": written,
        "error": error,
        "at": at,
    }


def _examples() -> tuple[tuple[str, str], ...]:
    return dict(refs.choices("design"))["Examples"]


def _text(request: HttpRequest, written: str) -> str:
    match request.POST.get("from"):
        case "example":
            return refs.resolve("design", request.POST.get("design", "")).text
        case "least":
            return LEAST
        case _:
            text = _uploaded(request) or written
    if not text.strip():
        raise InputError(NO_TEXT)
    if sentence := too_long(text):
        raise InputError(sentence)
    return text


def _uploaded(request: HttpRequest) -> str:
    file = request.FILES.get("file")
    if file is None:
        return ""
    if file.size and file.size > 4 * LONGEST_TEXT:
        raise InputError(
            f"this file has {file.size:,} bytes; {LONGEST_TEXT:,} letters are accepted"
        )
    try:
        return plain(file.read().decode())
    except UnicodeDecodeError:
        raise InputError(NOT_TEXT) from None
