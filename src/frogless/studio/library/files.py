"""Files that leave the library and files that come in."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe

import frogless
from frogless.errors import Fault, InputError
from frogless.studio.examples import PATTERNS
from frogless.studio.library.bundle import Bundle, ending, pack
from frogless.studio.library.exchange import Brought, bring_in, coming, kept
from frogless.studio.library.file_names import stem
from frogless.studio.library.models import Document
from frogless.studio.library.pending import pending
from frogless.studio.library.single import single
from frogless.studio.library.unbundle import is_zip, unpack
from frogless.studio.shipped import with_us

LARGEST_UPLOAD = 20_000_000
"""Bytes of a file that is brought in."""

LARGEST_TEXT_FILE = 200_000
"""Bytes of one document: no letter takes more than four."""


@require_safe
def export(request: HttpRequest, ref: str) -> HttpResponse:
    """A document as its file: one's own, an example or a size."""
    kind, name, text = _text_of(request, ref)
    end = ending(kind)
    sort = "text/plain" if end == "txt" else "application/toml"
    response = HttpResponse(text, content_type=f"{sort}; charset=utf-8")
    file = f"{stem(name, instead=kind)}.{end}"
    response["Content-Disposition"] = f'attachment; filename="{file}"'
    return response


def _text_of(request: HttpRequest, ref: str) -> tuple[str, str, str]:
    """Kind, name and text of what a ref stands for."""
    where, _, key = ref.partition(":")
    if where == "own" and key.isdecimal() and len(key) < 19:
        document = get_object_or_404(Document, pk=int(key), removed=False)
        return document.kind, document.name, document.text
    kinds = [request.GET["kind"]] if request.GET.get("kind") in PATTERNS else PATTERNS
    for kind in kinds:
        shipped = with_us(kind, ref)
        if shipped is not None:
            return kind, shipped.title, shipped.text
    raise Http404


@require_safe
def export_all(request: HttpRequest) -> HttpResponse:
    """The whole library as one zip."""
    now = timezone.localtime()
    try:
        data = pack(kept(), frogless.__version__, now.isoformat(timespec="seconds"))
    except InputError as error:
        return render(request, "library/import.html", {"alerts": [str(error)]}, status=422)
    response = HttpResponse(data, content_type="application/zip")
    name = f"frogless-library-{now:%Y-%m-%d}.zip"
    response["Content-Disposition"] = f'attachment; filename="{name}"'
    return response


@require_http_methods(["GET", "HEAD", "POST"])
def import_files(request: HttpRequest) -> HttpResponse:
    """A file is looked at, what would come in is shown, and then it comes in."""
    if request.method != "POST":
        return render(request, "library/import.html")
    if token := request.POST.get("token", ""):
        return _bring_in(request, token)
    try:
        name, data = _sent(request)
        bundle = read(name, data)
    except InputError as error:
        return _refused(request, error)
    found = coming(bundle)
    shown = {
        "name": name,
        "token": pending.put(name, data),
        "coming": found,
        "nothing": all(one.news == "same" and not one.versions for one in found),
    }
    return render(request, "library/coming.html", shown)


def _bring_in(request: HttpRequest, token: str) -> HttpResponse:
    waiting = pending.take(token)
    if waiting is None:
        return _refused(
            request, InputError("this file was let go of in the meantime; choose it again")
        )
    try:
        brought = bring_in(read(*waiting))
    except InputError as error:
        return _refused(request, error)
    return redirect(f"{reverse('library:show')}?{_told(brought)}")


def _refused(request: HttpRequest, error: InputError) -> HttpResponse:
    """422: what is wrong, beside what was pasted or where a file is chosen."""
    text = request.POST.get("text", "")
    told = [_with_line(fault) for fault in error.faults]
    context = {"text": text, "text_faults" if text else "file_faults": told}
    return render(request, "library/import.html", context, status=422)


def _with_line(fault: Fault) -> str:
    line = f"line {fault.place.line}" if fault.place.line else ""
    where = ", ".join(part for part in (line, fault.place.key) if part)
    return f"{where}: {fault.message}" if where else fault.message


def _told(brought: Brought) -> str:
    return f"new={brought.new}&second={brought.second}&same={brought.same}"


def read(name: str, data: bytes) -> Bundle:
    """What a file holds, whatever kind of file it is.

    Raises:
        InputError: it is none that is known, or damaged.
    """
    return unpack(data) if is_zip(data) else single(data, name)


def _sent(request: HttpRequest) -> tuple[str, bytes]:
    file = request.FILES.get("file")
    if file is None:
        text = request.POST.get("text", "").strip()
        if not text:
            raise InputError("nothing was chosen and nothing pasted; choose a file")
        return "pasted text", (text + "\n").encode()
    data: bytes = file.read(LARGEST_UPLOAD + 1)
    if len(data) > LARGEST_UPLOAD:
        raise InputError(
            f"this file has more than {LARGEST_UPLOAD // 1_000_000} MB; a library has some MB"
        )
    if not is_zip(data) and len(data) > LARGEST_TEXT_FILE:
        raise InputError("this file is too long for a document, and it is no zip")
    return file.name or "file", data
