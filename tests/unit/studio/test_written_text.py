"""Texts as they are kept, whatever was pasted into an editor."""

from __future__ import annotations

import html

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from frogless.studio.designs.least import LEAST
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.written_text import plain

TEXTS = {
    "body": 'format = "frogless-body/1"\nname = "Ada"\n[measurements]\nwaist_girth = "70 cm"\n',
    "swatch": 'format = "frogless-swatch/1"\nname = "blue"\nstitch = "dc"\nhook = "4 mm"\n'
    '[[reading]]\nstate = "washed"\nstitches = 27\nwidth = "15 cm"\nrows = 15\nheight = "15.8 cm"\n',
    "design": LEAST,
}
ROOMS = {"body": "people", "swatch": "swatches", "design": "designs"}
OPENED = {"body": "/people/open/", "swatch": "/swatches/open/", "design": "/designs/new/"}
MARK = "\ufeff"


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        (f"{MARK}a = 1\r\n", "a = 1\n"),
        (f"{MARK}{MARK}a\rb\0", "a\nb"),
        (f'a = "{MARK}"', f'a = "{MARK}"'),
        ("", ""),
    ],
)
def test_text_is_kept_without_what_is_no_letter_of_it(written: str, kept: str) -> None:
    """Within the text a mark stays: there it is a letter."""
    assert plain(written) == kept


@pytest.mark.parametrize("kind", TEXTS)
def test_pasted_text_is_saved_without_its_mark(client: Client, kind: str) -> None:
    """In the editor of each kind."""
    document = shelf.create(kind, TEXTS[kind])
    sent = {"base": "1", "text": MARK + TEXTS[kind].replace("\n", "\r\n") + "# more"}
    assert client.post(f"/{ROOMS[kind]}/{document.pk}/text/", sent).status_code == 302
    document.refresh_from_db()
    assert document.text == TEXTS[kind] + "# more"


@pytest.mark.parametrize("kind", TEXTS)
@pytest.mark.parametrize("uploaded", [True, False])
def test_opened_text_is_kept_without_its_mark(client: Client, kind: str, *, uploaded: bool) -> None:
    """Pasted or chosen as a file."""
    text = MARK + TEXTS[kind].replace("\n", "\r\n")
    file = SimpleUploadedFile("one.toml", text.encode())
    sent = {"from": "text", **({"file": file} if uploaded else {"text": text})}
    assert client.post(OPENED[kind], sent).status_code == 302
    assert Document.objects.get().text == TEXTS[kind]


def test_checked_text_has_no_mark_either(client: Client) -> None:
    """The design that is only looked at has the fault of no mark."""
    document = shelf.create("design", LEAST)
    answer = client.post(f"/designs/{document.pk}/check/", {"base": "1", "text": MARK + LEAST})
    assert "TOML" not in html.unescape(answer.content.decode())
