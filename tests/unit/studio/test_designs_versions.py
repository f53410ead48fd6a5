"""Named versions: kept, read, compared, brought back, deleted."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest
from designs_made import FAULTY, LEAST, LIVE, now, own, read, save, shown
from django.conf import settings
from django.test import Client

from frogless.studio.library.models import Document, Version

LONGER = LEAST.replace('"55 cm"', '"65 cm"')


@pytest.fixture
def document(client: Client) -> Document:
    """A design with a version, changed since."""
    made = own()
    client.post(f"/designs/{made.pk}/versions/keep/", {"name": "as first worked"})
    save(client, made, LONGER)
    return now(made)


def version(document: Document) -> Version:
    """Its version."""
    return document.versions.get()


def test_version_is_listed_and_read(client: Client, document: Document) -> None:
    """With its whole text."""
    here = f"/designs/{document.pk}/versions/"
    assert "as first worked" in read(client, here)
    page = read(client, f"{here}{version(document).pk}/")
    assert LEAST in page


def test_version_says_when_it_was_kept(client: Client, document: Document) -> None:
    """By the clock of this computer."""
    kept = version(document).made.astimezone(settings.LOCAL_ZONE)
    page = read(client, f"/designs/{document.pk}/versions/{version(document).pk}/")
    assert f"Kept on {kept.day} {kept:%B %Y, %H:%M}." in page


def test_clock_is_the_computer_s() -> None:
    """Whatever zone Django sets the process to."""
    asked = "from frogless.studio import settings; print(settings.LOCAL_ZONE.utcoffset(None))"
    environment = {**os.environ, "TZ": "XYZ-9:30"}
    command = [sys.executable, "-c", asked]
    answer = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
    assert answer.stdout.strip() == "9:30:00"


@pytest.mark.parametrize("name", ["", "  ", "x" * 201])
def test_version_without_a_good_name_is_refused(client: Client, name: str) -> None:
    """With a sentence beside the field, and what was typed."""
    made = own()
    answer = client.post(f"/designs/{made.pk}/versions/keep/", {"name": name})
    assert answer.status_code == 422
    assert 'aria-invalid="true"' in shown(answer)
    assert not made.versions.exists()


def test_comparison_tells_the_garment_and_the_lines(client: Client, document: Document) -> None:
    """What comes out otherwise, and the lines with signs and words."""
    address = f"/designs/{document.pk}/versions/?before={version(document).pk}&after=now"
    page = read(client, address)
    assert "as first worked → Now" in page
    assert "<li>Length: 55.5 cm → 65 cm</li>" in page
    assert "<li>Length and fit, length: 55 cm → 65 cm</li>" in page
    assert '<ins>+<span class="unseen"> added</span></ins>' in page
    assert '<del>−<span class="unseen"> removed</span></del>' in page
    assert "1 line added, 1 removed." in page


def test_comparison_with_a_faulty_text_says_why_there_are_no_counts(
    client: Client, document: Document
) -> None:
    """The lines are told all the same."""
    save(client, document, FAULTY)
    address = f"/designs/{document.pk}/versions/?before={version(document).pk}&after=now"
    page = read(client, address)
    assert "cannot be drafted" in page
    assert "eese" in page


def test_text_compared_with_itself_is_the_same(client: Client, document: Document) -> None:
    """Nothing is drafted for that."""
    page = read(client, f"/designs/{document.pk}/versions/?before=now&after=now")
    assert "Every line is the same." in page


@pytest.mark.parametrize("before", ["x", "999", "9" * 40, "-1"])
def test_what_is_no_version_is_not_found(client: Client, document: Document, before: str) -> None:
    """Neither to compare nor to read."""
    read(client, f"/designs/{document.pk}/versions/?before={before}&after=now", 404)
    read(client, f"/designs/{document.pk}/versions/999/", 404)


def test_version_of_another_design_is_not_found(client: Client, document: Document) -> None:
    """Each design has its own."""
    other = own()
    read(client, f"/designs/{other.pk}/versions/{version(document).pk}/", 404)


def test_version_comes_back_as_a_step(client: Client, document: Document) -> None:
    """It can be undone."""
    back = f"/designs/{document.pk}/versions/{version(document).pk}/back/"
    client.post(back, {"base": document.revision})
    assert now(document).text == LEAST
    client.post(f"/designs/{document.pk}/undo/", {"base": now(document).revision})
    assert now(document).text == LONGER


@pytest.mark.parametrize("headers", [{}, LIVE])
def test_version_does_not_come_over_what_the_page_did_not_know(
    client: Client, document: Document, headers: dict[str, str]
) -> None:
    """Both texts are shown."""
    back = f"/designs/{document.pk}/versions/{version(document).pk}/back/"
    answer = client.post(back, {"base": document.revision - 1}, headers=headers)
    assert answer.status_code == 409
    assert now(document).text == LONGER


def test_version_is_deleted_and_the_design_stays(client: Client, document: Document) -> None:
    """Only the version goes."""
    client.post(f"/designs/{document.pk}/versions/{version(document).pk}/delete/")
    assert not document.versions.exists()
    assert now(document).text == LONGER


def test_steps_are_listed_and_gone_back_to(client: Client, document: Document) -> None:
    """Any of them with one press."""
    save(client, document, LONGER + "# more\n")
    here = f"/designs/{document.pk}/versions/"
    assert "The beginning" in read(client, here)
    sent = {"base": now(document).revision, "to": "1", "next": here}
    answer = client.post(f"/designs/{document.pk}/undo/", sent)
    assert answer["Location"] == here
    assert now(document).text == LEAST


def test_bringing_back_goes_on_where_it_was_asked(client: Client, document: Document) -> None:
    """On the page of versions, which says so; or where the form says, within the studio."""
    back = f"/designs/{document.pk}/versions/{version(document).pk}/back/"
    for asked, where in (
        ("", f"/designs/{document.pk}/versions/?done=back"),
        ("/garments/", "/garments/"),
        ("https://elsewhere.example/", f"/designs/{document.pk}/versions/?done=back"),
    ):
        document.refresh_from_db()
        answer = client.post(back, {"base": document.revision, "next": asked})
        assert answer["location"] == where
    assert (
        "The version is back"
        in client.get(f"/designs/{document.pk}/versions/?done=back").content.decode()
    )
