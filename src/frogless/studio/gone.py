"""A document was deleted on another page: what was written for it is offered as a new one."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django_htmx.http import reselect, reswap, retarget

from frogless.errors import InputError
from frogless.studio.library.models import Document
from frogless.studio.library.shelf import KINDS, documents
from frogless.studio.library.single import kind_of

OPENED_AT = {
    "body": "people:open",
    "swatch": "swatches:open",
    "design": "designs:new",
    "pattern": "proofreading:new",
}
"""Where a text of a kind becomes a new document."""

LARGEST_KEY = 2**63 - 1
"""No key is larger, and none larger can be looked for."""


def gone_page(
    request: HttpRequest, kind: str, text: str, sentence: str = "", status: int = 409
) -> HttpResponse:
    """What was written, to be kept as a new document; 409.

    Args:
        kind: "body", "swatch", "design" or "pattern"; anything else when only the text can say.
        sentence: what is wrong, when it is something else than that the document is gone.
    """
    kind = kind if kind in KINDS else _said_kind(text)
    context = {
        "kind": kind,
        "text": text,
        "sentence": sentence or f"the {kind} that you wrote on is not there any more",
        "address": reverse(OPENED_AT[kind]),
    }
    response = render(request, "studio/gone.html", context, status=status)
    return reselect(reswap(retarget(response, "#main"), "outerHTML"), "#main")


def is_there(kind: str, key: int) -> bool:
    """Whether there is a document of that kind and key on the shelf."""
    return documents(kind).filter(pk=min(key, LARGEST_KEY)).exists()


def last_text(kind: str, key: int) -> str:
    """The text of a document that is in the bin; "" when it is nowhere any more."""
    found = Document.objects.filter(kind=kind, pk=min(key, LARGEST_KEY), removed=True).first()
    return found.text if found else ""


def _said_kind(text: str) -> str:
    """What a text says that it is; a design, which may be anything, when it does not say."""
    try:
        return kind_of(text)
    except InputError:
        return "design"
