"""A document that was deleted in another tab: what was written for it is offered as a new one."""

from __future__ import annotations

import html
import re
from collections.abc import Callable

import pytest
from django.http.response import HttpResponseBase
from django.test import Client

from frogless.studio.designs.least import LEAST
from frogless.studio.library import shelf
from frogless.studio.library.models import Document

BODY = 'format = "frogless-body/1"\nname = "Ada"\n[measurements]\nwaist_girth = "70 cm" # hers\n'
SWATCH = (
    'format = "frogless-swatch/1"\nname = "blue"\nstitch = "dc"\nhook = "4 mm" # steel\n[[reading]]\n'
    'state = "washed"\nstitches = 27\nwidth = "15 cm"\nrows = 15\nheight = "15.8 cm"\n'
)
TEXTS = {"body": BODY, "swatch": SWATCH, "design": LEAST}
ROOMS = {"body": "people", "swatch": "swatches", "design": "designs"}
BODY_FORM = {"do": "save", "units_were": "cm", "name": "Ada", "waist_girth": "74"}
SWATCH_FORM = {
    "name": "blue", "stitch": "double_crochet", "hook": "4", "units": "cm", "readings": "1",
    "r1-state": "washed", "r1-count": "28", "r1-width": "15", "r1-rows": "15", "r1-height": "15.8",
}  # fmt: skip
WAYS: dict[str, Callable[[Document], object]] = {
    "into the bin": shelf.remove,
    "for good": shelf.delete_for_good,
}


def deleted(kind: str, way: str) -> int:
    """The key of a document that was there."""
    document = shelf.create(kind, TEXTS[kind])
    key = document.pk
    WAYS[way](document)
    return int(key)


def offered(answer: HttpResponseBase) -> tuple[str, str]:
    """Where the offer goes, and the text in it."""
    page = answer.content.decode()  # type: ignore[attr-defined]
    assert "What you wrote is here" in page
    form = re.search(
        r'<form method="post" action="([^"]+)">.*?<textarea[^>]*>\n(.*?)</textarea>', page, re.S
    )
    assert form is not None
    return form[1], html.unescape(form[2])


def kept(client: Client, answer: HttpResponseBase) -> Document:
    """What comes of the offer when it is taken."""
    address, text = offered(answer)
    assert client.post(address, {"from": "text", "text": text}).status_code == 302
    return Document.objects.get(removed=False)


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize(
    ("kind", "form", "written"),
    [
        ("body", BODY_FORM, 'waist_girth = "74 cm"'),
        ("swatch", SWATCH_FORM, "stitches = 28"),
    ],
)
def test_form_of_what_is_gone_is_not_lost(
    client: Client, way: str, kind: str, form: dict[str, str], written: str
) -> None:
    """409 with its text, which can be kept as a new one."""
    key = deleted(kind, way)
    answer = client.post(f"/{ROOMS[kind]}/{key}/", {**form, "base": "1"})
    assert answer.status_code == 409
    new = kept(client, answer)
    assert new.kind == kind
    assert written in new.text


@pytest.mark.parametrize(
    ("kind", "form", "remark"), [("body", BODY_FORM, "# hers"), ("swatch", SWATCH_FORM, "# steel")]
)
def test_form_is_laid_over_what_is_in_the_bin(
    client: Client, kind: str, form: dict[str, str], remark: str
) -> None:
    """With the comments that were there."""
    answer = client.post(f"/{ROOMS[kind]}/{deleted(kind, 'into the bin')}/", {**form, "base": "1"})
    assert remark in offered(answer)[1]


@pytest.mark.parametrize(("kind", "form"), [("body", BODY_FORM), ("swatch", SWATCH_FORM)])
@pytest.mark.parametrize("text", ["[[[", "", "a = 1", "measurements = 1\nreading = 1"])
def test_form_is_given_back_whatever_is_in_the_bin(
    client: Client, kind: str, form: dict[str, str], text: str
) -> None:
    """Even what no form can be laid over."""
    document = shelf.create(kind, text)
    shelf.remove(document)
    answer = client.post(f"/{ROOMS[kind]}/{document.pk}/", {**form, "base": "1"})
    assert answer.status_code == 409
    assert f"frogless-{kind}/1" in offered(answer)[1]


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("kind", TEXTS)
@pytest.mark.parametrize("headers", [{}, {"HX-Request": "true"}])
def test_text_of_what_is_gone_is_not_lost(
    client: Client, way: str, kind: str, headers: dict[str, str]
) -> None:
    """Letter by letter, on the whole page and in its place."""
    text = TEXTS[kind] + "# typed\n"
    address = f"/{ROOMS[kind]}/{deleted(kind, way)}/text/"
    answer = client.post(address, {"base": "1", "text": text}, headers=headers)
    assert (answer.status_code, answer["HX-Retarget"]) == (409, "#main")
    assert kept(client, answer).text == text


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("kind", TEXTS)
@pytest.mark.parametrize("do", ["copy", "replace"])
@pytest.mark.parametrize("says", [True, False])
def test_settled_text_of_what_is_gone_is_not_lost(
    client: Client, way: str, kind: str, do: str, says: bool
) -> None:
    """As a copy or in its place; the form says which kind, else the text does."""
    key, text = deleted(kind, way), TEXTS[kind] + "# typed\n"
    sent = {"key": str(key), "base": "2", "text": text, "do": do}
    answer = client.post("/settle/", sent | ({"kind": kind} if says else {}))
    if answer.status_code == 302:  # of what is in the bin there can be a copy
        assert (way, do) == ("into the bin", "copy")
        assert Document.objects.get(removed=False).text == text
    else:
        assert answer.status_code == 409
        new = kept(client, answer)
        assert (new.kind, new.text) == (kind, text)


@pytest.mark.parametrize("key", ["", "x", "9" * 30, "99"])
def test_settled_text_without_its_document_is_given_back(client: Client, key: str) -> None:
    """Whatever the form says of it."""
    answer = client.post("/settle/", {"key": key, "base": "1", "do": "copy", "text": "a = 1"})
    assert answer.status_code == 409
    assert offered(answer) == ("/designs/new/", "a = 1")


@pytest.mark.parametrize("do", ["copy", "replace"])
def test_settled_text_that_is_too_long_is_given_back(client: Client, do: str) -> None:
    """422, with how many letters are accepted."""
    document = shelf.create("body", BODY)
    text = BODY + "# typed\n" * 60_000
    sent = {"key": document.pk, "base": document.revision, "text": text, "do": do, "kind": "body"}
    answer = client.post("/settle/", sent)
    assert answer.status_code == 422
    assert "are accepted" in answer.content.decode()
    assert offered(answer) == ("/people/open/", text)


@pytest.mark.parametrize("way", ["undo", "redo"])
def test_undo_of_a_design_that_is_gone_gives_its_text_back(client: Client, way: str) -> None:
    """What was typed, else what is in the bin."""
    key = deleted("design", "into the bin")
    typed = client.post(f"/designs/{key}/{way}/", {"base": "1", "text": "# typed\n"})
    alone = client.post(f"/designs/{key}/{way}/", {"base": "1"})
    assert (typed.status_code, alone.status_code) == (409, 409)
    assert (offered(typed)[1], offered(alone)[1]) == ("# typed\n", LEAST)


def test_rename_of_a_design_that_is_gone_gives_its_text_back(client: Client) -> None:
    """With the title that it was to have."""
    key = deleted("design", "into the bin")
    answer = client.post(f"/designs/{key}/rename/", {"base": "1", "title": "My ring"})
    assert answer.status_code == 409
    assert kept(client, answer).name == "My ring"


@pytest.mark.parametrize("kind", TEXTS)
@pytest.mark.parametrize("what", ["text", "undo", "redo"])
def test_what_never_was_is_no_page(client: Client, kind: str, what: str) -> None:
    """404, also for keys that no document can have; nothing was written, so nothing is lost."""
    for key in (7, 10**30):
        assert client.get(f"/{ROOMS[kind]}/{key}/text/").status_code == 404
        if what != "text":
            assert client.post(f"/{ROOMS[kind]}/{key}/{what}/", {"base": "1"}).status_code == 404


def test_check_of_a_design_that_is_gone_says_so(client: Client) -> None:
    """While it is written on, beside the text."""
    key = deleted("design", "for good")
    answer = client.post(f"/designs/{key}/check/", {"base": "1", "text": "# typed"})
    assert answer.status_code == 422
    assert "was deleted on another page" in answer.content.decode()
    assert client.post(f"/designs/{key}/check/").status_code == 404
