"""What the pages of a written pattern ask of a request: the document, and how it is to be read."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Concatenate, ParamSpec

from django.http import Http404, HttpRequest, HttpResponse

from frogless.errors import InputError
from frogless.proofread.checks.table import BY_NAME
from frogless.studio.gone import LARGEST_KEY
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.proofreading.checking import Choice
from frogless.studio.proofreading.models import Asked
from frogless.studio.proofreading.reading import AUTO, DIALECTS

P = ParamSpec("P")
LONGEST_SIZE = 60


def of_own(
    view: Callable[Concatenate[HttpRequest, Document, P], HttpResponse],
) -> Callable[..., HttpResponse]:
    """A view of a written pattern by its key; 404 when there is none (any more)."""

    @wraps(view)
    def found(request: HttpRequest, pk: int, *args: P.args, **kwargs: P.kwargs) -> HttpResponse:
        try:
            document = shelf.found("pattern", min(pk, LARGEST_KEY))
        except InputError:
            raise Http404 from None
        return view(request, document, *args, **kwargs)

    return found


def choice_of(request: HttpRequest, document: Document) -> Choice:
    """How the pattern is to be read: as the form says, else as was asked the last time.

    What the form says is kept for the next time.
    """
    before = _kept(document)
    if request.method != "POST" or "terms" not in request.POST:
        return before
    chosen = _sent(request)
    if chosen != before:
        Asked.objects.update_or_create(
            document=document,
            defaults={
                "terms": chosen.terms,
                "size": chosen.size,
                "silenced": list(chosen.silenced),
            },
        )
    return chosen


def _sent(request: HttpRequest) -> Choice:
    terms = request.POST.get("terms", AUTO)
    size = request.POST.get("size", "").strip().replace("\0", "")[:LONGEST_SIZE]
    asked = {*request.POST.getlist("silenced"), request.POST.get("leave", "")}
    return Choice(
        terms if terms in DIALECTS else AUTO, size, tuple(sorted(asked.intersection(BY_NAME)))
    )


def _kept(document: Document) -> Choice:
    asked = Asked.objects.filter(document=document).first()
    if asked is None:
        return Choice()
    silenced = tuple(name for name in asked.silenced if name in BY_NAME)
    return Choice(asked.terms, asked.size, silenced)
