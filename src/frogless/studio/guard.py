"""What every request passes, what every answer carries, and the pages of refusal."""

from __future__ import annotations

from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import render

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
"""The browser itself is told that nothing comes from, or goes, anywhere else."""

SENTENCES = {
    400: "The browser asked for something that the studio does not answer.",
    403: "This form did not come from a page of this studio. Load the page again, then send it.",
    404: "There is no such page in the studio.",
    413: "This is more than the studio takes: a design, body or swatch file has a few kilobytes.",
    500: "Something went wrong inside Frogless. Nothing that you saved was changed.",
}

Answer = Callable[[HttpRequest], HttpResponseBase]


def guarded(answer: Answer) -> Answer:
    """Middleware: refuses a foreign host or too much data, and sets the policy of the page."""

    def respond(request: HttpRequest) -> HttpResponseBase:
        request.get_host()
        if int(request.META.get("CONTENT_LENGTH") or 0) > settings.LARGEST_REQUEST:
            return refusal(request, 413)
        response = answer(request)
        response.headers.setdefault("Content-Security-Policy", POLICY)
        if not request.path.startswith(settings.STATIC_URL):
            response.headers.setdefault("Cache-Control", "no-store")
        return response

    return respond


def refusal(request: HttpRequest, status: int) -> HttpResponse:
    """A page with one sentence."""
    response = render(
        request, "studio/refusal.html", {"sentence": SENTENCES[status]}, status=status
    )
    response.headers["Content-Security-Policy"] = POLICY
    return response


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponse:
    """400."""
    return refusal(request, 400)


def from_elsewhere(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403: the form has no token of ours."""
    return refusal(request, 403)


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    """404."""
    return refusal(request, 404)


def our_fault(request: HttpRequest) -> HttpResponse:
    """500; what happened is written to the terminal."""
    return refusal(request, 500)
