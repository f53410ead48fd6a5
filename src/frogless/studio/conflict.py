"""Two pages changed one document: both texts are shown, and neither is lost."""

from __future__ import annotations

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST
from django_htmx.http import reswap, retarget

from frogless.errors import InputError
from frogless.studio.compare import groups
from frogless.studio.gone import gone_page
from frogless.studio.guard import refusal
from frogless.studio.library import shelf
from frogless.studio.library.bundle import longest
from frogless.studio.library.models import Document
from frogless.studio.written_text import text_of

EDITED_AT = {
    "body": "people:edit",
    "swatch": "swatches:edit",
    "design": "designs:text",
    "pattern": "proofreading:text",
}
"""Where a document of a kind is changed."""

MOST_LINES = 20_000
"""Of both; longer texts are shown unmarked."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a text, and whether the other text lacks it."""

    text: str
    only_here: bool


def conflict_page(
    request: HttpRequest,
    conflict: shelf.Conflict,
    mine: str,
    again: str,
    apart: tuple[str, ...] = (),
) -> HttpResponse:
    """409: what was written here beside what stands there by now, and what can be done with it.

    Args:
        mine: the document as this page would have saved it.
        again: address of the page that changes the document as it is now.
        apart: in words where the two differ; the texts are then folded under it.
    """
    document = conflict.document
    ours, theirs = beside(mine, document.text)
    context = {
        "document": document,
        "sentence": str(conflict),
        "mine": mine,
        "again": again,
        "apart": apart,
        "texts": (("What you wrote here", ours), ("What is saved by now", theirs)),
    }
    if not getattr(request, "htmx", False):
        return render(request, "studio/conflict.html", context, status=409)
    response = render(request, "studio/_conflict.html", context, status=409)
    return reswap(retarget(response, "#main"), "innerHTML")


def beside(mine: str, theirs: str) -> tuple[tuple[Line, ...], tuple[Line, ...]]:
    """The lines of both texts, each with whether the other has it."""
    ours, others = mine.splitlines(), theirs.splitlines()
    only_ours, only_theirs = set[int](), set[int]()
    if len(ours) + len(others) <= MOST_LINES:
        for tag, i1, i2, j1, j2 in groups(ours, others):
            if tag != "equal":
                # Two blocks that were too long to be held against each other can have lines in common.
                here, there = set(ours[i1:i2]), set(others[j1:j2])
                only_ours |= {n for n in range(i1, i2) if ours[n] not in there}
                only_theirs |= {n for n in range(j1, j2) if others[n] not in here}
    return (
        tuple(Line(text, n in only_ours) for n, text in enumerate(ours)),
        tuple(Line(text, n in only_theirs) for n, text in enumerate(others)),
    )


@require_POST
def settle(request: HttpRequest) -> HttpResponse:
    """What was decided: mine becomes a copy, or takes the place of the other, which undo keeps.

    When neither can be, what was written is given back.
    """
    text = text_of(request)
    try:
        document = _settled(request, text)
    except shelf.Conflict as conflict:
        again = reverse(EDITED_AT[conflict.document.kind], args=[conflict.document.pk])
        return conflict_page(request, conflict, text, again)
    except (InputError, ValueError, OverflowError) as error:
        if not text.strip():
            return refusal(request, 400)
        kind = request.POST.get("kind", "")
        if len(text) > longest(kind):
            return gone_page(request, kind, text, str(error), 422)
        return gone_page(request, kind, text)
    return redirect(EDITED_AT[document.kind], document.pk)


def _settled(request: HttpRequest, text: str) -> Document:
    key, base = int(request.POST.get("key", "")), int(request.POST.get("base", ""))
    if request.POST.get("do") == "replace":
        return shelf.change(key, base, text, "Put another text in its place")
    document = Document.objects.filter(pk=key).first()
    if document is None:
        raise InputError("this document is not there any more")
    return shelf.create(document.kind, text, f"{document.name}, copy")
