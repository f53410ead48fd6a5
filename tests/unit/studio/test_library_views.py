"""The library's pages: what is kept, the bin, and what goes out and comes in."""

from __future__ import annotations

import io
import json
import zipfile
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection
from django.http.response import HttpResponseBase
from django.test import Client
from hypothesis import HealthCheck, given, settings
from library_bundles import DAY, bundles

from frogless.studio.library import shelf
from frogless.studio.library.bundle import Bundle, pack
from frogless.studio.library.exchange import bring_in, coming, kept
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.unbundle import unpack

BODY = 'format = "frogless-body/1"\nname = "Ada"\n[measurements]\nwaist_girth = "70 cm"\n'
SWATCH = (
    'format = "frogless-swatch/1"\nname = "blue"\nstitch = "dc"\nhook = "4 mm"\n[[reading]]\n'
    'state = "washed"\nstitches = 27\nwidth = "15 cm"\nrows = 15\nheight = "15.8 cm"\n'
)

GET = ("/library/", "/library/library.zip", "/library/import/", "/library/example:dancer-3.toml")


def text_of(response: HttpResponseBase) -> str:
    """What a page says."""
    return response.content.decode()  # type: ignore[attr-defined]


def garment_of(body: Document, swatch: Document, name: str = "Skirt") -> Garment:
    """A garment of an example design for a body in a yarn."""
    return Garment.objects.create(
        name=name, design="example:ring-dance-skirt", body=body.ref, swatches=[swatch.ref]
    )


def filled() -> None:
    """A body, a swatch with a named version, and a garment made of both."""
    body, swatch = shelf.create("body", BODY), shelf.create("swatch", SWATCH)
    shelf.name_version(swatch, "first")
    garment_of(body, swatch)


def file_of(data: bytes, name: str = "library.zip") -> dict[str, SimpleUploadedFile]:
    """What a form sends."""
    return {"file": SimpleUploadedFile(name, data)}


@pytest.mark.parametrize("address", GET)
def test_stranger_stays_outside(client: Client, stranger: Client, address: str) -> None:
    """The owner sees each page; nobody else does."""
    assert client.get(address).status_code == 200
    assert Client(headers={"host": "localhost"}).get(address).status_code == 401


@pytest.mark.parametrize(
    "address", ["rename", "delete", "restore", "delete-for-good", "garments/restore"]
)
def test_bad_key_is_not_found(client: Client, address: str) -> None:
    """A document that is not there."""
    path = f"/library/{address.replace('garments/', 'garments/77/')}/"
    path = path if "garments" in address else f"/library/77/{address}/"
    assert client.post(path).status_code == 404


def test_everything_is_shown_by_kind(client: Client) -> None:
    """Names, what they are part of, versions."""
    filled()
    page = text_of(client.get("/library/"))
    for word in ("Ada", "blue", "1 named version", "Part of", "Skirt"):
        assert word in page


def test_search_is_by_name(client: Client) -> None:
    """Only what has the letters in its name is left."""
    filled()
    page = text_of(client.get("/library/", {"q": "BLU"}))
    assert "blue" in page
    assert "Ada" not in page
    assert "Nothing is called" in text_of(client.get("/library/", {"q": "xyz"}))


def test_long_shelf_is_cut(client: Client) -> None:
    """Two hundred of a kind are shown; the others are told of, and found by name."""
    Document.objects.bulk_create(
        Document(kind="body", name=f"No {number:03}", text=BODY) for number in range(205)
    )
    page = text_of(client.get("/library/"))
    assert "And 5 more" in page
    assert "No 204" not in page
    assert "No 204" in text_of(client.get("/library/", {"q": "204"}))


def test_rename(client: Client) -> None:
    """A name that is free is taken; one that is not is said, and stays in the field."""
    one, _ = shelf.create("body", BODY, "One"), shelf.create("body", BODY, "Two")
    assert client.post(f"/library/{one.pk}/rename/", {"name": " Three "}).status_code == 302
    assert Document.objects.get(pk=one.pk).name == "Three"
    refused = client.post(f"/library/{one.pk}/rename/", {"name": "Two"})
    assert refused.status_code == 422
    assert "there is a body called &quot;Two&quot; already" in text_of(refused)
    assert 'value="Two"' in text_of(refused)


def test_new_name_stands_in_the_text_too(client: Client) -> None:
    """What the pattern calls it is what the library calls it; undo takes both back."""
    one = shelf.create("body", BODY + "# mine\n")
    client.post(f"/library/{one.pk}/rename/", {"name": "Bea"})
    one.refresh_from_db()
    assert one.text == BODY.replace("Ada", "Bea") + "# mine\n"
    one = shelf.undo(one.pk, one.revision)
    assert one.text == BODY + "# mine\n"


@pytest.mark.parametrize("text", ["a = ", "title = 3\n", "", "[name]\na = 1\n"])
def test_text_without_a_name_is_left_alone(client: Client, text: str) -> None:
    """Only the library's name is another."""
    one = shelf.create("design", text, "One")
    client.post(f"/library/{one.pk}/rename/", {"name": "Two"})
    one.refresh_from_db()
    assert (one.name, one.text) == ("Two", text)


def test_delete_and_restore(client: Client) -> None:
    """Into the bin and out of it."""
    one = shelf.create("body", BODY)
    client.post(f"/library/{one.pk}/delete/")
    assert list(shelf.in_bin()) == [one]
    client.post(f"/library/{one.pk}/restore/")
    assert list(shelf.documents("body")) == [one]


def test_delete_goes_on_where_it_is_told(client: Client) -> None:
    """To a page of the studio, and never anywhere else."""
    one, two = shelf.create("body", BODY), shelf.create("body", BODY)
    assert client.post(f"/library/{one.pk}/delete/", {"next": "/people/"}).url == "/people/"  # type: ignore[attr-defined]
    away = client.post(f"/library/{two.pk}/delete/", {"next": "//example.org/"})
    assert away.url == "/library/?deleted"  # type: ignore[attr-defined]


def test_what_a_garment_is_made_of_is_asked_about(client: Client) -> None:
    """Once, with the garment's name and what happens then."""
    body, swatch = shelf.create("body", BODY), shelf.create("swatch", SWATCH)
    garment_of(body, swatch)
    asked = client.post(f"/library/{swatch.pk}/delete/")
    assert asked.status_code == 200
    assert "Skirt" in text_of(asked)
    assert "no pattern can be made of" in text_of(asked)
    assert not shelf.in_bin().exists()
    client.post(f"/library/{swatch.pk}/delete/", {"sure": "yes"})
    assert list(shelf.in_bin()) == [swatch]


def test_garment_comes_back(client: Client) -> None:
    """A garment in the bin can be brought back, or deleted for good."""
    garment = Garment.objects.create(name="Skirt", design="a", body="b", removed=True)
    client.post(f"/library/garments/{garment.pk}/restore/")
    assert not Garment.objects.get().removed
    Garment.objects.update(removed=True)
    address = f"/library/garments/{garment.pk}/delete-for-good/"
    assert "Skirt" in text_of(client.get(address))
    client.post(address)
    assert not Garment.objects.exists()


def traces(library: Path, word: str) -> list[str]:
    """The files of the database that hold a word."""
    return [f.name for f in library.glob("library.sqlite3*") if word.encode() in f.read_bytes()]


def test_deleted_for_good_leaves_no_trace(client: Client, library: Path) -> None:
    """Text, earlier text and version are in no file of the database any more."""
    one = shelf.create("body", BODY.replace("70 cm", "71.625 cm"))
    shelf.name_version(one, "first of 71.625")
    one = shelf.change(one.pk, one.revision, BODY.replace("70 cm", "72.875 cm"), "waist")
    assert traces(library, "71.625")
    assert traces(library, "72.875")
    assert "with all its earlier texts and 1 named version" in " ".join(
        text_of(client.get(f"/library/{one.pk}/delete-for-good/")).split()
    )
    assert Document.objects.filter(pk=one.pk).exists()
    client.post(f"/library/{one.pk}/delete-for-good/")
    connection.close()
    assert traces(library, "71.625") == []
    assert traces(library, "72.875") == []


def test_emptied_bin_leaves_no_trace(client: Client, library: Path) -> None:
    """Asked once; then everything in it is overwritten."""
    one = shelf.create("body", BODY.replace("70 cm", "73.375 cm"))
    shelf.remove(one)
    assert one.name in text_of(client.get("/library/empty-bin/"))
    client.post("/library/empty-bin/")
    connection.close()
    assert traces(library, "73.375") == []
    assert client.get("/library/empty-bin/").status_code == 404


@pytest.mark.parametrize(
    ("ref", "name"),
    [
        ("example:dancer-3", "dancer-3.toml"),
        ("size:women:M", "women-s-size-m.toml"),
        ("example:ring-dance-skirt", "ring-dance-skirt.toml"),
    ],
)
def test_shipped_documents_are_saved_as_files(client: Client, ref: str, name: str) -> None:
    """Examples and sizes, too."""
    response = client.get(f"/library/{ref}.toml")
    assert response["Content-Disposition"].startswith("attachment")
    assert text_of(response).count("format = ")
    if "size" not in ref:
        assert "frogless-" in text_of(response)


def test_own_document_is_saved_as_it_is(client: Client) -> None:
    """To the last letter."""
    one = shelf.create("body", BODY + "# mine\n", "Ädä")
    response = client.get(f"/library/{one.ref}.toml")
    assert text_of(response) == BODY + "# mine\n"
    assert response["Content-Disposition"] == 'attachment; filename="ada.toml"'
    assert client.get("/library/own:99.toml").status_code == 404


def test_library_goes_out_and_comes_in(client: Client) -> None:
    """Looked at first, then brought in; garments are made of the new documents."""
    filled()
    before = kept()
    data = client.get("/library/library.zip").content
    assert zipfile.ZipFile(io.BytesIO(data)).testzip() is None
    empty()
    looked = client.post("/library/import/", file_of(data))
    assert text_of(looked).count("<td>New") == 3
    assert not Document.objects.exists()
    token = text_of(looked).split('name="token" value="')[1].split('"')[0]
    done = client.post("/library/import/", {"token": token})
    assert done.url == "/library/?new=3&second=0&same=0"  # type: ignore[attr-defined]
    assert pack(kept(), "1", DAY) == pack(before, "1", DAY)
    garment = Garment.objects.get()
    assert garment.body == shelf.documents("body").get().ref
    assert client.post("/library/import/", {"token": token}).status_code == 422


def test_what_is_there_stays(client: Client) -> None:
    """The same is left alone; another of the same name becomes a second one."""
    filled()
    data = client.get("/library/library.zip").content
    body = shelf.documents("body").get()
    shelf.change(body.pk, body.revision, BODY.replace("70", "71"), "waist")
    page = text_of(client.post("/library/import/", file_of(data)))
    assert "kept as a second one" in page
    assert page.count("Same as yours") == 1
    token = page.split('name="token" value="')[1].split('"')[0]
    client.post("/library/import/", {"token": token})
    assert [one.name for one in shelf.documents("body")] == ["Ada", "Ada 2"]
    assert shelf.documents("swatch").count() == 1
    assert shelf.documents("swatch").get().versions.count() == 1


def test_two_versions_that_are_alike_both_come_in() -> None:
    """Named twice the same, it is there twice; brought in again, it is not there four times."""
    one = shelf.create("body", BODY)
    for _ in range(2):
        shelf.name_version(one, "first")
    data = pack(kept(), "1", DAY)
    empty()
    for _ in range(2):
        bring_in(unpack(data))
        assert pack(kept(), "1", DAY) == data


def test_single_file_comes_in(client: Client) -> None:
    """Chosen or pasted."""
    for sent in (file_of(BODY.encode(), "ada.toml"), {"text": SWATCH}):
        page = text_of(client.post("/library/import/", sent))
        token = page.split('name="token" value="')[1].split('"')[0]
        client.post("/library/import/", {"token": token})
    assert [one.name for one in Document.objects.all()] == ["Ada", "blue"]


@pytest.mark.parametrize(
    ("sent", "told"),
    [
        ({}, "nothing was chosen"),
        ({"text": "a = 1"}, "does not say what it is"),
        ({"text": SWATCH.replace("dc", "dd")}, "unknown stitch"),
        ({"text": BODY.replace("70 cm", "70")}, "no unit"),
        (file_of(b"\x89PNG\xff"), "neither text in UTF-8 nor a zip"),
        (file_of(b"PK\x03\x04junk"), "damaged"),
        (file_of(b"a" * 900_000), "too long for a document"),
        ({"token": "nothing"}, "let go of in the meantime"),
    ],
)
def test_what_cannot_come_in_is_said(client: Client, sent: dict[str, str], told: str) -> None:
    """422, one sentence, and what was pasted is still there."""
    response = client.post("/library/import/", sent)
    assert response.status_code == 422
    page = text_of(response).replace("&quot;", '"').replace("&#x27;", "'")
    assert told.lower() in page.lower()
    if "text" in sent:
        assert sent["text"].split("\n")[0] in page
    assert not Document.objects.exists()


def test_nothing_comes_in_when_something_cannot(client: Client) -> None:
    """A zip with one damaged file leaves the library as it was."""
    filled()
    data = client.get("/library/library.zip").content
    Document.objects.all().delete()
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name).replace(b"27", b"28"))
    assert client.post("/library/import/", file_of(out.getvalue())).status_code == 422
    assert not Document.objects.exists()


def test_manifest_has_what_is_in_the_bin_left_out(client: Client) -> None:
    """What was deleted does not go out; a garment made of it names nothing."""
    filled()
    shelf.remove(shelf.documents("body").get())
    files = zipfile.ZipFile(io.BytesIO(client.get("/library/library.zip").content))
    assert [name for name in files.namelist() if "bodies" in name] == []
    assert json.loads(files.read("garments.json"))["garments"][0]["body"] == "gone"


@given(bundles())
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck), database=None)
def test_own_export_of_any_library_comes_in_the_same(bundle: Bundle) -> None:
    """Whatever is kept: out, into an empty library, and out again is one and the same file."""
    empty()
    bring_in(bundle)
    first = kept()
    data = pack(first, "1", DAY)
    empty()
    bring_in(unpack(data))
    assert pack(kept(), "1", DAY) == data


def empty() -> None:
    """A library with nothing in it."""
    for model in (Document, Garment):
        model.objects.all().delete()


def test_garment_whose_design_is_gone_gets_it_back() -> None:
    """A second one beside it would be half of each; what came of others stays as it is."""
    text = 'format = "frogless-design/1"\n'
    design = shelf.create("design", text, "Ring")
    made = Garment.objects.create(
        name="Skirt", design=design.ref, body="example:dancer-3", swatches=["example:light-cotton"]
    )
    other = Garment.objects.create(
        name="Skirt", design="own:999", body="example:dancer-4", swatches=["example:light-cotton"]
    )
    library = unpack(pack(Bundle(kept().documents, kept().garments[:1]), "1", DAY))
    assert library.garments[0].body == "example:dancer-3"
    shelf.remove(design)
    assert [one.news for one in coming(library)] == ["new", "mended"]
    bring_in(library)
    made.refresh_from_db()
    other.refresh_from_db()
    (back,) = shelf.documents("design")
    assert made.design == back.ref
    assert other.design == "own:999"
    assert Garment.objects.count() == 2
    assert [one.news for one in coming(library)] == ["same", "same"]
