"""A library that cannot be written: a sentence, and everything that was sent."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from django.db import connection
from django.test import Client

from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment

TEXT = examples("design")["rehearsal-skirt"].text


@pytest.fixture
def locked(library: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Another program holds the library for itself, and nobody waits for it."""
    connection.close()
    monkeypatch.setitem(connection.settings_dict["OPTIONS"], "timeout", 0.1)
    with closing(sqlite3.connect(library / "library.sqlite3", isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield
        other.execute("ROLLBACK")
    connection.close()


@pytest.fixture
def design() -> Document:
    """A design of one's own."""
    return shelf.create("design", TEXT)


def test_text_that_could_not_be_kept_comes_back(
    client: Client, design: Document, locked: None
) -> None:
    """In a form that sends it again."""
    form = {"base": design.revision, "text": TEXT + "# more <here>\n", "do": "save"}
    answer = client.post(f"/designs/{design.pk}/text/", form)
    assert answer.status_code == 503
    page = answer.content.decode()
    assert "another program is using it" in page
    assert "# more &lt;here&gt;" in page
    assert f'action="/designs/{design.pk}/text/"' in page
    assert answer.headers["Content-Security-Policy"]


@pytest.mark.parametrize(
    "path", ["/", "/designs/", "/people/", "/swatches/", "/proofread/", "/library/", "/garments/"]
)
def test_reading_needs_no_writing(
    client: Client, design: Document, locked: None, path: str
) -> None:
    """Pages are shown while another program writes."""
    assert client.get(path).status_code == 200


def test_garment_is_shown_while_nothing_can_be_written(
    client: Client, request: pytest.FixtureRequest
) -> None:
    """That it was opened just now is not worth a refusal."""
    garment = Garment.objects.create(
        name="G",
        design="example:rehearsal-skirt",
        body="example:dancer-3",
        swatches=["example:light-cotton"],
    )
    request.getfixturevalue("locked")
    assert client.get(f"/garments/{garment.pk}/shape/").status_code == 200
