"""The library: nothing that was saved is lost by one press, and nothing deleted is kept for ever."""

from __future__ import annotations

import pytest
from django.test import Client
from studio_page import Page

from frogless.errors import InputError
from frogless.studio import serve
from frogless.studio.library import shelf
from frogless.studio.library.models import Document


def names(kind: str = "body") -> list[str]:
    """What is on a shelf."""
    return [document.name for document in shelf.documents(kind)]


def test_saved_document_is_found_by_its_key() -> None:
    """Text and name as they were."""
    saved, replaced = shelf.save("body", "  Anna  B ", "text")
    assert not replaced
    assert (saved.name, saved.text) == ("Anna B", "text")
    assert shelf.found(str(saved.pk)) == saved
    assert shelf.found("x") is None
    assert shelf.found("0") is None
    assert names("swatch") == []


def test_same_text_again_changes_nothing() -> None:
    """Pressing twice is no replacing."""
    first, _ = shelf.save("body", "Anna", "text")
    assert shelf.save("body", "Anna", "text") == (first, False)
    assert not shelf.in_bin().exists()


def test_older_one_can_be_brought_back_when_it_was_replaced() -> None:
    """Undo changes the two places; undo of the undo as well."""
    shelf.save("body", "Anna", "old")
    assert shelf.save("body", "Anna", "new")[1]
    for text in ("old", "new"):
        (document,) = shelf.in_bin()
        assert document.text == text
        shelf.bring_back(document)
        (there,) = shelf.documents("body")
        assert there.text == text


def test_bin_is_emptied_when_the_studio_starts() -> None:
    """What was deleted before is gone; what is on the shelf stays."""
    shelf.save("body", "Anna", "text")
    shelf.save("body", "Bea", "text")
    shelf.remove(Document.objects.get(name="Bea"))
    serve.prepared()
    assert [document.name for document in Document.objects.all()] == ["Anna"]


def test_deleted_text_is_not_left_in_the_file(library: object) -> None:
    """A measurement that was deleted for good cannot be read in the file any more."""
    shelf.save("body", "Anna", "waist of ninety-eight and a half")
    assert b"ninety-eight" in serve_file()
    shelf.remove(Document.objects.get())
    shelf.empty_bin()
    assert b"ninety-eight" not in serve_file()


def serve_file() -> bytes:
    """The library's file."""
    from frogless.studio.settings import DATA

    return (DATA / "library.sqlite3").read_bytes()


@pytest.mark.parametrize(
    ("name", "told"), [(" ", "is needed"), ("x" * 201, "200 letters at most"), ("Bea", "already")]
)
def test_name_that_cannot_be_is_told(name: str, told: str) -> None:
    """Empty, too long or taken."""
    shelf.save("body", "Anna", "text")
    shelf.save("body", "Bea", "text")
    shelf.save("swatch", "Cotton", "text")
    with pytest.raises(InputError, match=told):
        shelf.rename(Document.objects.get(name="Anna"), name)
    assert names() == ["Anna", "Bea"]


def test_journey_through_the_library(client: Client) -> None:
    """Rename, delete, undo, each by a form of the page."""
    shelf.save("body", "Anna", "text")
    (anna,) = shelf.documents("body")
    page = Page(client.post(f"/library/{anna.pk}/rename", {"name": "Anna B"}, follow=True))
    assert page.fields["name"] == "Anna B"
    page = Page(client.post(f"/library/{anna.pk}/delete", follow=True))
    assert "Deleted or replaced" in page.text
    assert names() == []
    page = Page(client.post(f"/library/{anna.pk}/restore", follow=True))
    assert names() == ["Anna B"]
    assert "Deleted or replaced" not in page.text


def test_name_that_is_taken_is_told_beside_the_field(client: Client) -> None:
    """With what was written."""
    shelf.save("body", "Anna", "text")
    shelf.save("body", "Bea", "text")
    key = Document.objects.get(name="Anna").pk
    page = Page(client.post(f"/library/{key}/rename", {"name": "Bea"}))
    assert page.attributes[f"name-{key}"]["aria-invalid"] == "true"
    assert page.attributes[f"name-{key}"]["value"] == "Bea"
    assert 'there is a body called "Bea" already' in page.texts["refused"]


@pytest.mark.parametrize("step", ["rename", "delete", "restore"])
def test_document_that_is_not_there_is_told(client: Client, step: str) -> None:
    """404, and 405 for anything but a form."""
    assert client.post(f"/library/999/{step}", {"name": "x"}).status_code == 404
    assert client.get(f"/library/999/{step}").status_code == 405


def test_form_is_kept_as_one() -> None:
    """The last one; forgotten when asked."""
    assert shelf.kept() is None
    shelf.keep({"a": "1"})
    shelf.keep({"a": "2"})
    assert shelf.kept() == {"a": "2"}
    shelf.forget()
    assert shelf.kept() is None
