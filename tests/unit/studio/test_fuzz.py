"""Every address of the studio, asked with what no page of it would send: 2xx, 3xx or 4xx, no more."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable, Iterator

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Garment
from frogless.studio.proofreading import example

FIELDS = ("base", "next", "do", "file")
"""Names that forms have everywhere; the others are taken from the pages."""

NAMES: set[str] = set()

HOSTILE = (
    "", " ", "0", "-1", "1e309", "nan", "9" * 400, "½", "1/0", "٣", "own:1", "own:99999999999999999999", "example:",
    "size::", "size:women:M", "example:light-cotton", "\x00", "<script>alert(1)</script>",
    "'; DROP TABLE library_document; --", "../../etc/passwd",
    "//elsewhere.example/", "http://elsewhere.example/",
    "[" * 5000, "a" * 250_000, "section.0.length", "['section', 0, 'points']", "{}", "null",
    '["section",0,"points"]', "🧶" * 50,
    'format = "frogless-body/1"\nname = "A"\n[measurements]\nwaist_girth = "1e400 cm"\n',
    'format = "frogless-design/1"\ntitle = "A"\n',
)  # fmt: skip

KINDS = {
    "people": "body",
    "swatches": "swatch",
    "designs": "design",
    "proofread": "pattern",
    "garments": "garment",
    "jobs": "garment",
}
"""What a room keeps."""

ARGUMENTS = {
    "pk": ("{pk}", "0", "999999999999999999999"),
    "key": ("1", "waist_girth", "row.skirt.3", "x" * 300, "%00"),
    "ref": ("{ref}", "example:ring-dance-skirt", "size:women:M", "own:999", "nonsense", "own:٣"),
    "room": ("shape", "pattern", "materials", "fit", "nix"),
    "table": ("women", "children", "nix"),
    "size": ("M", "8", "nix"),
    "name": ("pattern.pdf", "pattern.txt", "plan.json", "nix"),
    "token": ("x",),
}


def patterns() -> Iterator[str]:
    """Every address, with its arguments in angle brackets."""

    def walk(resolver: URLResolver, before: str) -> Iterator[str]:
        for one in resolver.url_patterns:
            path = before + str(one.pattern)
            if isinstance(one, URLResolver):
                yield from walk(one, path)
            elif isinstance(one, URLPattern):
                yield path

    return walk(get_resolver(), "/")


ADDRESSES = sorted(set(patterns()))


def zipped() -> bytes:
    """A zip that is no library."""
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w") as archive:
        archive.writestr("../manifest.json", "{}")
    return data.getvalue()


FILES = st.sampled_from(
    (b"", b"\xff\xfe\x00", b"PK\x03\x04rubbish", zipped(), b"[" * 5000, b"a = 1\n", b"\x00" * 1000)
)
VALUES = st.sampled_from(HOSTILE) | st.text(max_size=40)


@pytest.fixture
def ready(client: Client) -> dict[str, str]:
    """A library with one of each, and the keys of what is in it."""
    keys = {}
    for kind, key in (
        ("body", "dancer-3"),
        ("swatch", "light-cotton"),
        ("design", "rehearsal-skirt"),
    ):
        keys[kind] = str(shelf.create(kind, examples(kind)[key].text).pk)
    keys["pattern"] = str(shelf.create("pattern", example.TEXT, "P").pk)
    garment = Garment.objects.create(
        name="G",
        design=f"own:{keys['design']}",
        body=f"own:{keys['body']}",
        swatches=[f"own:{keys['swatch']}"],
    )
    return {**keys, "garment": str(garment.pk)}


@pytest.fixture
def names(client: Client, ready: dict[str, str]) -> tuple[str, ...]:
    """The names of all fields of all pages, gathered once."""
    if not NAMES:
        for address in ADDRESSES:
            page = client.get(filled(address, ready, lambda choices: choices[0])).content
            NAMES.update(re.findall(r' name="([^"]{1,60})"', page.decode("utf-8", "replace")))
        assert len(NAMES) > 50
    return tuple(sorted({*FIELDS, *NAMES}))


def filled(address: str, keys: dict[str, str], choose: Callable[[tuple[str, ...]], str]) -> str:
    """An address with arguments that may or may not be there."""
    room = address.split("/")[1]
    own = keys[KINDS.get(room, "design")]

    def argument(found: re.Match[str]) -> str:
        name = found[1].rpartition(":")[2]
        return choose(ARGUMENTS.get(name, ("1", "x"))).format(pk=own, ref=f"own:{own}")

    return re.sub(r"<([^>]+)>", argument, address)


@pytest.mark.parametrize("address", ADDRESSES)
@given(draw=st.data())
@settings(max_examples=6, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_nothing_that_is_sent_breaks_the_studio(
    client: Client,
    ready: dict[str, str],
    names: tuple[str, ...],
    address: str,
    draw: st.DataObject,
) -> None:
    """Forms, files and addresses."""
    client.raise_request_exception = False
    path = filled(address, ready, lambda choices: draw.draw(st.sampled_from(choices)))
    values = VALUES | st.lists(VALUES, max_size=3)
    form = draw.draw(st.dictionaries(st.sampled_from(names), values, max_size=10))
    headers = {"hx-request": "true"} if draw.draw(st.booleans()) else {}
    if draw.draw(st.booleans()):
        answer = client.get(path, form, headers=headers)
    else:
        file = SimpleUploadedFile("a.toml", draw.draw(FILES))
        sent = {**form, "file": file} if draw.draw(st.booleans()) else form
        answer = client.post(path, sent, headers=headers)
    assert answer.status_code < 500, (path, form)
    for elsewhere in ("//elsewhere", "http://elsewhere"):
        assert not answer.headers.get("Location", "").startswith(elsewhere)
