"""What every request passes, what every answer carries, and the pages of refusal."""

from __future__ import annotations

from collections.abc import Callable

from django.conf import settings
from django.core.exceptions import RequestDataTooBig
from django.db import DatabaseError
from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import render
from django.utils import timezone

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""The browser itself is told that nothing comes from, or goes, anywhere else."""

SENTENCES = {
    400: "The browser asked for something that the studio does not answer.",
    401: "The studio lets in only the person who started it. Open the link that the terminal shows; "
    "each works once. Press Enter there for a new one.",
    403: "This form did not come from a page of this studio. Load the page again, then send it.",
    404: "There is no such page in the studio.",
    413: "This is more than the studio takes: a design, body or swatch file has a few kilobytes, "
    "a pattern at most 150,000 letters, its file and a whole library at most 20 MB.",
    503: "The library could not be read or written: the disk is full, or the library may not be written to, "
    "or another program is using it. Nothing that was saved before is lost.",
    500: "Something went wrong inside Frogless. Nothing that you saved was changed.",
}

OURS = ("same-origin", "none", "")
"""Where a request that changes something may come from, as browsers say it; old ones say nothing."""

LARGE = ("/library/import/", "/proofread/new/")
"""Where a whole library comes in, and a booklet with its pictures."""

SAFE = ("GET", "HEAD", "OPTIONS")

Answer = Callable[[HttpRequest], HttpResponseBase]


def guarded(answer: Answer) -> Answer:
    """Middleware: refuses a foreign host, another site's form and too much data; sets the policy."""

    def respond(request: HttpRequest) -> HttpResponseBase:
        request.get_host()
        timezone.activate(settings.LOCAL_ZONE)
        if int(request.META.get("CONTENT_LENGTH") or 0) > _most(request):
            return refusal(request, 413)
        if request.method not in SAFE and request.headers.get("Sec-Fetch-Site", "") not in OURS:
            return refusal(request, 403)
        response = answer(request)
        response.headers.setdefault("Content-Security-Policy", POLICY)
        response.headers.setdefault("X-Frame-Options", "DENY")
        response.headers.setdefault("Cross-Origin-Resource-Policy", "same-origin")
        if not request.path.startswith(settings.STATIC_URL):
            response.headers.setdefault("Cache-Control", "no-store")
        return response

    respond.process_exception = unkept  # type: ignore[attr-defined] # Django asks for it by this name
    return respond


def unkept(request: HttpRequest, error: Exception) -> HttpResponse | None:
    """503 when the library cannot be used: a page with all that was sent, to send again."""
    if not isinstance(error, DatabaseError):
        return None
    again = request.get_full_path() if request.method == "POST" else ""
    return _with_what_was_sent(request, 503, again)


def _with_what_was_sent(request: HttpRequest, status: int, again: str) -> HttpResponse:
    sent = [(name, text) for name, texts in request.POST.lists() for text in texts]
    kept = [pair for pair in sent if pair[0] != "csrfmiddlewaretoken"]
    context = {"sentence": SENTENCES[status], "again": again, "sent": kept}
    response = render(request, "studio/unkept.html", context, status=status)
    response.headers["Content-Security-Policy"] = POLICY
    return response


def _most(request: HttpRequest) -> int:
    """Bytes that a request may have: only files are larger than a form."""
    large: bool = request.path in LARGE
    most: int = settings.LARGEST_LIBRARY if large else settings.LARGEST_REQUEST
    return most


def stranger(request: HttpRequest) -> HttpResponse:
    """401. What was sent by a page that was opened before the studio was started anew can be copied.

    Nobody knows yet who sent it, so no button sends it again.
    """
    if request.method == "POST" and request.POST:
        return _with_what_was_sent(request, 401, "")
    return refusal(request, 401)


def refusal(request: HttpRequest, status: int) -> HttpResponse:
    """A page with one sentence."""
    context = {"sentence": SENTENCES[status], "outside": status == 401}
    response = render(request, "studio/refusal.html", context, status=status)
    response.headers["Content-Security-Policy"] = POLICY
    return response


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponse:
    """400; 413 where the fields of a form hold more than is taken."""
    return refusal(request, 413 if isinstance(exception, RequestDataTooBig) else 400)


def from_elsewhere(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403: the form has no token of ours."""
    return refusal(request, 403)


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    """404."""
    return refusal(request, 404)


def our_fault(request: HttpRequest) -> HttpResponse:
    """500; what happened is written to the terminal."""
    return refusal(request, 500)
