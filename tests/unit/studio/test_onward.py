"""Forms go on to pages of this studio only, and say nothing false when asked for others."""

from __future__ import annotations

import pytest
from django.test import Client, RequestFactory

from frogless.studio.library import shelf
from frogless.studio.onward import onward, saying

ELSEWHERE = (
    "evil",
    "home",
    "https://a.example/",
    "//a.example",
    "/\\a.example",
    "\x01/x",
    "",
    " /",
)


@pytest.mark.parametrize("asked", ELSEWHERE)
def test_form_goes_nowhere_else(asked: str) -> None:
    """Not to another site, and not to a page by its name."""
    request = RequestFactory().post("/", {"next": asked})
    assert onward(request, "/library/") == "/library/"


def test_form_goes_on_to_a_page_of_ours() -> None:
    """With what was chosen there."""
    request = RequestFactory().post("/", {"next": "/designs/?q=ring"})
    assert onward(request, "/library/") == "/designs/?q=ring"
    assert saying("/designs/?q=ring", "done=renamed") == "/designs/?q=ring&done=renamed"


@pytest.mark.parametrize("asked", ELSEWHERE)
def test_every_form_of_the_library_has_the_same_rule(client: Client, asked: str) -> None:
    """Renamed, deleted, restored; and what was asked for is done."""
    document = shelf.create("body", 'format = "frogless-body/1"\nname = "Ada"\n')
    for what in ("rename", "delete", "restore"):
        sent = {"next": asked, "name": "Bea"}
        answer = client.post(f"/library/{document.pk}/{what}/", sent)
        assert answer.status_code == 302
        assert answer["Location"].startswith("/library/?")
    document.refresh_from_db()
    assert (document.name, document.removed) == ("Bea", False)


@pytest.mark.parametrize("asked", ELSEWHERE)
def test_preferences_go_on_to_the_first_page(client: Client, asked: str) -> None:
    """When the page that they were chosen on is none."""
    assert client.post("/preferences/", {"units": "in", "next": asked})["Location"] == "/"
