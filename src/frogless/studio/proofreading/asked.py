"""What the pages of a written pattern ask of a request: how it is to be read."""

from __future__ import annotations

from django.http import HttpRequest

from frogless.proofread.checks.table import BY_NAME
from frogless.studio.library.models import Document
from frogless.studio.proofreading.checking import Choice
from frogless.studio.proofreading.models import Asked
from frogless.studio.proofreading.reading import AUTO, DIALECTS

LONGEST_SIZE = 60


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
