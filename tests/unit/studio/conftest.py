"""The studio over a library of its own, and pages read as a browser without scripts reads them."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

# Models can only be imported once Django knows its settings, and these where the library lies.
FOLDER = Path(tempfile.mkdtemp(prefix="frogless-studio-"))
os.environ["FROGLESS_DATA"] = str(FOLDER)
os.environ["DJANGO_SETTINGS_MODULE"] = "frogless.studio.settings"

import django  # noqa: E402
from django.db import connection  # noqa: E402
from django.test import Client  # noqa: E402
from studio_page import Page, Press  # noqa: E402

django.setup()

from frogless.studio import serve  # noqa: E402
from frogless.studio.library.models import Document, LastForm  # noqa: E402

HERE = {"host": "localhost"}


@pytest.fixture(scope="session", autouse=True)
def library() -> Iterator[Path]:
    """A library of this run's own, made as the studio makes it."""
    serve.prepared()
    yield FOLDER
    connection.close()
    shutil.rmtree(FOLDER)


@pytest.fixture(autouse=True)
def empty_library(library: Path) -> Iterator[None]:
    """Every test begins with an empty library."""
    yield
    Document.objects.all().delete()
    LastForm.objects.all().delete()
    connection.close()


@pytest.fixture
def client() -> Client:
    """A browser on this computer."""
    return Client(headers=HERE)


@pytest.fixture
def press(client: Client) -> Press:
    """Presses a button of the form: sends what the page holds, changed as somebody would."""

    def pressed(page: Page, do: str, **changes: object) -> Page:
        data = {**page.fields, "do": do, **changes}
        return Page(client.post("/", {k.replace("__", "-"): v for k, v in data.items()}))

    return pressed


@pytest.fixture
def filled(client: Client, press: Press) -> Page:
    """The form with an example in each part."""
    page = Page(client.get("/"))
    page = press(page, "load-body", body_pick="example:dancer-3", design="example:ring-dance-skirt")
    return press(page, "load-swatch", swatch_pick="example:light-cotton")
