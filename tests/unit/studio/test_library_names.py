"""Names that nobody sees, or that hide something: how they come in, and how they are given."""

from __future__ import annotations

import pytest
from django.test import Client

from frogless.studio.library import shelf
from frogless.studio.library.bundle import Bundle, KeptDocument, KeptGarment, KeptVersion
from frogless.studio.library.exchange import bring_in, coming
from frogless.studio.library.models import Document, Garment, Version

DAY = "2026-07-01T12:00:00+00:00"
UNSEEN = ("\u200b", " \u00a0 ", "\u202e\u2066", "\x07\x1b", "\u00ad\ufeff")
"""Zero width, blanks, the order of writing turned, control characters, soft hyphen and mark."""


def library(name: str) -> Bundle:
    """A body with a version, and a garment, all of that name."""
    version = KeptVersion(name, "a = 1\n", DAY)
    document = KeptDocument("file:a", "body", name, "a = 2\n", (version,))
    garment = KeptGarment(name, "example:ring-skirt", "file:a", ("example:light-cotton",))
    return Bundle((document,), (garment,))


def names() -> tuple[str, str, str]:
    """What is called what by now."""
    return Document.objects.get().name, Version.objects.get().name, Garment.objects.get().name


@pytest.mark.parametrize("name", UNSEEN)
def test_name_that_nobody_sees_comes_in_as_one_that_is_seen(client: Client, name: str) -> None:
    """Nothing of a library is left behind for its name."""
    bring_in(library(name))
    assert names() == ("My body", "Version", "Garment")


def test_name_comes_in_without_what_nobody_sees(client: Client) -> None:
    """And is known again when it comes in once more."""
    bring_in(library("\u202eAda\x07  B.\u200b"))
    assert names() == ("Ada B.", "Ada B.", "Ada B.")
    assert [one.news for one in coming(library("\u202eAda\x07  B.\u200b"))] == ["same", "same"]


@pytest.mark.parametrize("name", UNSEEN)
def test_nothing_is_renamed_to_what_nobody_sees(client: Client, name: str) -> None:
    """A sentence beside the field; the name stays."""
    document = shelf.create("body", 'format = "frogless-body/1"\nname = "Ada"\n')
    answer = client.post(f"/library/{document.pk}/rename/", {"name": name})
    assert answer.status_code == 422
    assert "a name is needed" in answer.content.decode().lower()
    document.refresh_from_db()
    assert document.name == "Ada"


def test_new_name_stands_in_the_text_as_it_is_kept(client: Client) -> None:
    """Without what nobody sees."""
    document = shelf.create("body", 'format = "frogless-body/1"\nname = "Ada"\n')
    client.post(f"/library/{document.pk}/rename/", {"name": "Bea\u200b \x07C."})
    document.refresh_from_db()
    assert document.name == "Bea C."
    assert 'name = "Bea C."' in document.text
