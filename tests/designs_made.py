"""Designs for the tests of their room, and pages read as a browser without scripts reads them."""

from __future__ import annotations

import re
from html import unescape

from django.http import HttpResponse
from django.test import Client

from frogless.studio.designs.least import LEAST
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document

LIVE = {"HX-Request": "true"}
RING = examples("design")["ring-dance-skirt"].text
FAULTY = LEAST.replace('ease = "6 cm"', 'eese = "6 cm"')
IMPOSSIBLE = LEAST.replace('["2 cm", "10 cm"]', '["5.9 cm", "6.1 cm"]')


def own(text: str = LEAST, name: str = "") -> Document:
    """A design of the person's own."""
    return shelf.create("design", text, name)


def read(client: Client, address: str, status: int = 200, **headers: str) -> str:
    """A page, its entities resolved."""
    answer = client.get(address, headers=headers)
    assert answer.status_code == status
    return shown(answer)


def shown(answer: HttpResponse) -> str:
    """What an answer shows, its entities resolved."""
    return unescape(answer.content.decode())


def cards(page: str) -> list[str]:
    """The names on the cards of a gallery."""
    return re.findall(r'<h3><a href="/designs/about/[^"]+/">([^<]+)</a></h3>', page)


def save(client: Client, document: Document, text: str, base: int = 0, **more: str) -> HttpResponse:
    """The text of a design sent as its page sends it."""
    sent = {"base": str(base or document.revision), "text": text, "do": "save", **more}
    answer: HttpResponse = client.post(f"/designs/{document.pk}/text/", sent)
    return answer


def now(document: Document) -> Document:
    """The document as it is by now."""
    return Document.objects.get(pk=document.pk)
