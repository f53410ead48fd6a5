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

django.setup()

from frogless.studio import entrance, serve  # noqa: E402
from frogless.studio.library.models import Document, Garment, Preferences  # noqa: E402

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
    for model in (Document, Garment, Preferences):
        model.objects.all().delete()
    connection.close()


@pytest.fixture
def stranger() -> Client:
    """A browser on this computer that nobody let in."""
    return Client(headers=HERE)


@pytest.fixture
def client(stranger: Client) -> Client:
    """The owner's browser."""
    stranger.get(entrance.link())
    return stranger
