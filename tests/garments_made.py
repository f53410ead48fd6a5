"""Garments for the tests of their rooms, and forms as a browser without scripts sends them."""

from __future__ import annotations

import re
from html import unescape

from django.http import HttpResponse
from django.test import Client

from frogless.studio.garments.create import make_garment
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment

BODY, SWATCH = "example:dancer-3", "example:light-cotton"
LIVE = {"HX-Request": "true", "HX-Target": "result"}


def garment(design: str = "example:ring-dance-skirt", body: str = BODY) -> Garment:
    """A garment of an example."""
    return make_garment("", design, body, [SWATCH])


def own_design(garment: Garment) -> Document:
    """The document that a garment's design is; the garment is read anew."""
    garment.refresh_from_db()
    return Document.objects.get(pk=int(garment.design.removeprefix("own:")))


def on_shelf(kind: str, text: str, name: str = "") -> str:
    """The ref of a new document."""
    return shelf.create(kind, text, name).ref


def read(client: Client, address: str, status: int = 200, **headers: str) -> str:
    """A page, its entities resolved."""
    answer = client.get(address, headers=headers)
    assert answer.status_code == status
    return unescape(answer.content.decode())


def field(page: str, name: str) -> str:
    """The tag of a field."""
    found = re.search(rf'<(?:input|select|textarea)[^>]*name="{re.escape(name)}"[^>]*>', page)
    assert found, name
    return found[0]


def turn(
    client: Client, garment: Garment, base: int = 0, *, live: bool = True, **more: str
) -> HttpResponse:
    """The answer to a knob that was turned; `path` and `written` say which and how."""
    sent = {"base": str(base), "room": "shape", **more}
    headers = LIVE if live else {}
    answer: HttpResponse = client.post(f"/garments/{garment.pk}/turn/", sent, headers=headers)
    return answer
