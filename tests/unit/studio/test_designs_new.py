"""New designs: from an example, from a file or text, from the least that can be drafted."""

from __future__ import annotations

import pytest
from designs_made import LEAST, RING, read, shown
from django.core.files.uploadedfile import SimpleUploadedFile
from django.http import HttpResponse
from django.test import Client

from frogless.studio.designs.checked import check
from frogless.studio.examples import examples
from frogless.studio.library.models import Document

NEW = "/designs/new/"


def send(client: Client, **fields: object) -> HttpResponse:
    """A form of the page, sent."""
    answer: HttpResponse = client.post(NEW, fields)
    return answer


def file(content: bytes) -> SimpleUploadedFile:
    """A file to upload."""
    return SimpleUploadedFile("design.toml", content)


@pytest.mark.parametrize(
    ("fields", "text"),
    [
        ({"from": "example", "design": "example:ring-dance-skirt"}, RING),
        ({"from": "least"}, LEAST),
        ({"from": "text", "text": RING.replace("\n", "\r\n")}, RING),
    ],
)
def test_new_design_opens_in_the_editor(client: Client, fields: dict[str, str], text: str) -> None:
    """It is the person's own, letter by letter."""
    answer = send(client, **fields)
    document = Document.objects.get()
    assert document.text == text
    assert answer["Location"] == f"/designs/{document.pk}/text/?done=made"


def test_file_is_taken_before_the_text(client: Client) -> None:
    """With or without the mark that some programs write first."""
    send(client, **{"from": "text", "text": "x", "file": file(b"\xef\xbb\xbf" + RING.encode())})
    assert Document.objects.get().text == RING


def test_faulty_file_is_taken_too(client: Client) -> None:
    """It is mended in the editor."""
    assert send(client, **{"from": "text", "file": file(b"not TOML [")}).status_code == 302


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"from": "text", "text": " "}, "Choose a file, or paste a design."),
        ({"text": ""}, "Choose a file, or paste a design."),
        ({"from": "text", "file": file(b"\xff\xfe\x00\x01")}, "This is no text file"),
        ({"from": "text", "text": "x" * 50_001}, "50,001 letters; 50,000 are accepted"),
        ({"from": "text", "file": file(b"x" * 200_001)}, "200,001 bytes; 50,000 letters"),
        ({"from": "example", "design": "example:none"}, "is not there any more"),
    ],
)
def test_what_cannot_be_taken_gets_a_sentence(
    client: Client, fields: dict[str, object], sentence: str
) -> None:
    """And nothing is made of it."""
    answer = send(client, **fields)
    assert answer.status_code == 422
    assert sentence in shown(answer)
    assert not Document.objects.exists()


def test_pasted_text_is_still_there_when_it_is_refused(client: Client) -> None:
    """Nothing typed is lost."""
    text = "y" * 200_001
    assert text in shown(send(client, **{"from": "text", "text": text}))


def test_page_offers_every_example(client: Client) -> None:
    """To be copied."""
    page = read(client, NEW)
    assert all(f'value="example:{key}"' in page for key in examples("design"))


@pytest.mark.parametrize("body", sorted(examples("body")))
def test_least_skirt_can_be_drafted(body: str) -> None:
    """For every example body."""
    swatch = examples("swatch")["light-cotton"].text
    assert check(LEAST, examples("body")[body].text, (swatch,)).faults == ()
