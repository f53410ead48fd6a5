"""The room of swatches, as a browser without scripts meets it."""

from __future__ import annotations

import html
import re
from xml.etree import ElementTree

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.http.response import HttpResponseBase
from django.test import Client
from studio_page import Page

from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.preferences import prefer, preferred
from frogless.swatch import parse_swatch

TEXT = """format = "frogless-swatch/1"
name = "blue"
stitch = "dc"
hook = "4 mm" # the steel one
[[reading]]
state = "washed"
stitches = 27
width = "15 cm"
rows = 15
height = "15.8 cm"
"""
READ = {
    "name": "blue", "stitch": "double_crochet", "hook": "4", "units": "cm", "readings": "1",
    "r1-state": "washed", "r1-count": "27", "r1-width": "15", "r1-rows": "15", "r1-height": "15.8",
}  # fmt: skip
GET = ("/swatches/", "/swatches/new/", "/swatches/open/", "/swatches/ruler/", "/swatches/rows.svg")


def text_of(response: HttpResponseBase) -> str:
    """What a page says."""
    page = response.content.decode()  # type: ignore[attr-defined]
    return html.unescape(page).replace("\u00a0", " ")


def error_of(response: HttpResponseBase, field: str) -> str:
    """What stands beside a field."""
    found = re.search(rf'id="{field}-error"[^>]*>([^<]*)<', text_of(response))
    return found[1] if found else ""


def fields_of(response: HttpResponseBase) -> dict[str, str]:
    """What the form of a page would send."""
    page = text_of(response).split('id="swatch-form"')[1].split("</form>")[0]
    fields = dict(re.findall(r'<input[^>]*name="([^"]+)" value="([^"]*)"', page))
    for name, options in re.findall(r'<select[^>]*name="([^"]+)".*?>(.*?)</select>', page, re.S):
        chosen = re.search(r'value="([^"]*)" selected', options)
        fields[name] = chosen[1] if chosen else ""
    fields.pop("csrfmiddlewaretoken", None)
    return fields


@pytest.mark.parametrize("address", GET)
def test_stranger_stays_outside(client: Client, address: str) -> None:
    """The owner sees each page; nobody else does."""
    assert client.get(address).status_code == 200
    assert Client(headers={"host": "localhost"}).get(address).status_code == 401


@pytest.mark.parametrize(
    "address", ["77/", "77/text/", "nothing.svg", "own:77/face.svg", "example:none/face.svg"]
)
def test_what_is_not_there_is_not_found(client: Client, address: str) -> None:
    """404, in words."""
    assert client.get(f"/swatches/{address}").status_code == 404


@pytest.mark.parametrize("address", ["77/undo/", "77/redo/", "copy/own:77/", "copy/size:women:M/"])
def test_what_is_not_there_is_not_changed(client: Client, address: str) -> None:
    """404, too."""
    assert client.post(f"/swatches/{address}").status_code == 404


def test_body_is_no_swatch(client: Client) -> None:
    """A key of another kind of document."""
    body = shelf.create("body", 'format = "frogless-body/1"\nname = "Ada"\n')
    assert client.get(f"/swatches/{body.pk}/").status_code == 404


def test_list_tells_gauge_yarn_and_garments(client: Client) -> None:
    """One's own, what they are used in, and examples to copy."""
    document = shelf.create("swatch", TEXT)
    Garment.objects.create(name="Ring skirt", design="a", body="b", swatches=[document.ref])
    page = text_of(client.get("/swatches/"))
    assert "18.0 stitches and 9.5 rows in 10 cm, ± 2.5 %" in page
    assert "Used in" in page
    assert "Ring skirt" in page
    assert "Light cotton, washed" in page


def test_new_swatch_is_kept(client: Client) -> None:
    """Filled in and saved: a document, and its page."""
    response = client.post("/swatches/new/", {**READ, "do": "save"})
    document = Document.objects.get()
    assert response.url == f"/swatches/{document.pk}/?saved"  # type: ignore[attr-defined]
    assert parse_swatch(document.text).readings[0].stitches == 27
    page = client.get(response.url)  # type: ignore[attr-defined]
    assert "Saved." in text_of(page)
    assert "Measure this next" in text_of(page)


def test_wrong_field_is_told_and_nothing_lost(client: Client) -> None:
    """422, beside the field and in the list above; what was typed is there."""
    response = client.post("/swatches/new/", {**READ, "r1-width": "15 cn", "yarn-fibre": "nettle"})
    assert response.status_code == 422
    assert "no unit for a length" in error_of(response, "r1-width")
    assert {**READ, "r1-width": "15 cn", "yarn-fibre": "nettle"}.items() <= fields_of(
        response
    ).items()
    assert 'href="#r1-width"' in text_of(response)
    assert not Document.objects.exists()


def test_change_keeps_comments_and_can_be_undone(client: Client) -> None:
    """Changed, undone, done again; each told."""
    document = shelf.create("swatch", TEXT)
    address = f"/swatches/{document.pk}/"
    fields = fields_of(client.get(address))
    assert fields["r1-width"] == "15"
    client.post(address, {**fields, "r1-count": "27.5", "do": "save"})
    document.refresh_from_db()
    assert document.text == TEXT.replace("27", "27.5")
    assert 'Undo<span class="unseen">: reading 1 changed' in text_of(client.get(address))
    done = client.post(f"{address}undo/", {"base": document.revision})
    assert done.url == f"{address}?undone"  # type: ignore[attr-defined]
    document.refresh_from_db()
    assert document.text == TEXT
    client.post(f"{address}redo/", {"base": document.revision})
    document.refresh_from_db()
    assert document.text == TEXT.replace("27", "27.5")


@pytest.mark.parametrize("room", ["", "text/", "undo/"])
def test_page_that_is_out_of_date_overwrites_nothing(client: Client, room: str) -> None:
    """409, with both texts."""
    document = shelf.create("swatch", TEXT)
    address = f"/swatches/{document.pk}/"
    fields = fields_of(client.get(address))
    shelf.change(document.pk, 1, TEXT.replace("4 mm", "4.5 mm"))
    sent = {**fields, "r1-count": "26", "text": TEXT.replace("27", "26"), "do": "save"}
    response = client.post(f"{address}{room}", sent)
    assert response.status_code == 409
    assert "4.5 mm" in text_of(response)
    if room != "undo/":
        assert "26" in text_of(response)
    document.refresh_from_db()
    assert "27" in document.text


def test_readings_come_and_go_without_scripts(client: Client) -> None:
    """Buttons that post; nothing is saved by them, and nothing that was typed is lost."""
    document = shelf.create("swatch", TEXT)
    address = f"/swatches/{document.pk}/"
    fields = {**fields_of(client.get(address)), "name": "red"}
    added = client.post(address, {**fields, "do": "add-1"})
    more = fields_of(added)
    assert more["readings"] == "1 2"
    assert (more["name"], more["r1-count"], more["r2-count"]) == ("red", "27", "")
    assert "This is not saved yet." in text_of(added)
    less = fields_of(client.post(address, {**more, "r2-count": "9", "do": "remove-1"}))
    assert (less["readings"], less["r2-count"]) == ("2", "9")
    document.refresh_from_db()
    assert document.text == TEXT


def test_live_part_tells_and_saves_nothing(client: Client) -> None:
    """What the form tells, and faults only where something is written."""
    part = text_of(client.post("/swatches/look/", {**READ, "hook": "", "r1-height": "9 cn"}))
    assert "<html" not in part
    assert "no unit for a length" in part
    assert 'id="hook-error" hx-swap-oob="true"></p>' in part
    assert "the hook is needed" in part
    told = text_of(client.post("/swatches/look/", READ))
    assert "18.0 stitches and 9.5 rows in 10 cm" in told
    assert not Document.objects.exists()


def test_whole_page_and_live_part_say_the_same(client: Client) -> None:
    """One template, one context."""
    document = shelf.create("swatch", TEXT)
    page = client.get(f"/swatches/{document.pk}/")
    part = text_of(client.post("/swatches/look/", fields_of(page)))
    told = part.split('<p class="error"')[0].strip()
    assert told in text_of(page)


def test_units_and_terms_are_the_readers(client: Client) -> None:
    """Inches and UK names; what was written keeps its unit, and is saved as it was."""
    prefer(units="in", terms="uk")
    document = shelf.create("swatch", TEXT)
    address = f"/swatches/{document.pk}/"
    page = client.get(address)
    assert "rows in 4 in" in text_of(page)
    assert "Reading 1: treble crochet, washed" in text_of(page)
    fields = fields_of(page)
    assert fields["r1-width"] == "15 cm"
    client.post(address, {**fields, "do": "save"})
    document.refresh_from_db()
    assert document.text == TEXT


def test_example_is_copied(client: Client) -> None:
    """With its own name, then beside it."""
    for name in ("light cotton, washed", "light cotton, washed 2"):
        client.post("/swatches/copy/example:light-cotton/")
        assert shelf.documents("swatch").filter(name=name).exists()


@pytest.mark.parametrize("way", ["file", "text"])
def test_file_is_opened(client: Client, way: str) -> None:
    """Chosen or pasted; kept to the letter."""
    sent = SimpleUploadedFile("a.toml", TEXT.encode()) if way == "file" else TEXT
    client.post("/swatches/open/", {way: sent})
    assert Document.objects.get().text == TEXT


@pytest.mark.parametrize(
    ("sent", "told"),
    [
        ({"text": TEXT.replace("27", "3").replace("15 cm", "2 cm")}, "Line 8: reading[1].width"),
        ({"text": "a = "}, "Line 1: this is not valid TOML"),
        ({"text": 'format = "frogless-body/1"'}, "is not the format of a swatch file"),
        ({"file": SimpleUploadedFile("a.png", b"\x89\xff")}, "not text in UTF-8"),
        ({"file": SimpleUploadedFile("a.toml", b"#" * 200_001)}, "more than 200 kB"),
    ],
)
def test_faulty_file_is_told_by_line(client: Client, sent: dict[str, str], told: str) -> None:
    """422, the line and what stands there; the text stays."""
    response = client.post("/swatches/open/", sent)
    assert response.status_code == 422
    assert told in text_of(response)
    if isinstance(sent.get("text"), str):
        assert sent["text"] in text_of(response)


def test_text_is_edited(client: Client) -> None:
    """By hand, with its comments; a fault is told and nothing changed."""
    document = shelf.create("swatch", TEXT)
    address = f"/swatches/{document.pk}/text/"
    assert TEXT in text_of(client.get(address))
    wrong = client.post(address, {"base": 1, "text": TEXT.replace('"4 mm"', "4")})
    assert wrong.status_code == 422
    assert "Line 4" in text_of(wrong)
    client.post(address, {"base": 1, "text": TEXT.replace("\n", "\r\n") + "# more\r\n"})
    document.refresh_from_db()
    assert document.text == TEXT + "# more\n"


def test_faulty_document_opens_as_text(client: Client) -> None:
    """What the form cannot read is shown as it is, with what has to be mended."""
    document = shelf.create("swatch", TEXT.replace('"dc"', '"dd"'))
    assert client.get(f"/swatches/{document.pk}/").url == f"/swatches/{document.pk}/text/"  # type: ignore[attr-defined]
    page = client.get(f"/swatches/{document.pk}/text/")
    assert page.status_code == 200
    assert "To be mended." in text_of(page)
    assert "This text has a fault" in text_of(client.get("/swatches/"))


@pytest.mark.parametrize(
    "key",
    ["stitches", "rows", "repeats", "mass", "stretched_width", "hung_height", "ruler", "window"],
)
def test_pictures_are_drawings(client: Client, key: str) -> None:
    """SVG that can be read."""
    response = client.get(f"/swatches/{key}.svg")
    assert response["Content-Type"] == "image/svg+xml"
    assert ElementTree.fromstring(text_of(response)).tag.endswith("svg")  # noqa: S314 - ours


def test_swatch_out_of_the_ordinary_is_asked_about_before_it_is_saved(client: Client) -> None:
    """27 stitches over 15 in on a 4 mm hook; taken as 15 cm with one button, or kept with another."""
    odd = Page(client.get("/swatches/new/")).fields | {"name": "Odd", "hook": "4", "units": "in"}
    odd |= {"r1-count": "27", "r1-width": "15", "r1-rows": "14", "r1-height": "15"}
    answer = client.post("/swatches/new/", odd)
    page = Page(answer)
    assert answer.status_code == 422
    assert not Document.objects.exists()
    assert "Did you mean 15 cm?" in page.texts["r1-count-said"]
    take = next(value for name, value in page.buttons if name == "take")
    taken = Page(client.post("/swatches/new/", {**odd, "take": take})).fields
    assert (taken["r1-width"], taken["r1-height"], taken["r1-count"]) == ("15 cm", "15 cm", "27")
    assert not Document.objects.exists()
    (sure,) = (value for name, value in page.buttons if name == "sure")
    assert client.post("/swatches/new/", {**odd, "sure": sure}).status_code == 302


def test_question_that_was_answered_is_not_asked_again(client: Client) -> None:
    """Another name for a swatch that was kept as it is."""
    odd = Page(client.get("/swatches/new/")).fields | {"name": "Odd", "hook": "4", "units": "in"}
    odd |= {"r1-count": "27", "r1-width": "15"}
    (sure,) = (v for n, v in Page(client.post("/swatches/new/", odd)).buttons if n == "sure")
    address = client.post("/swatches/new/", {**odd, "sure": sure})["location"].partition("?")[0]
    fields = Page(client.get(address)).fields
    assert client.post(address, {**fields, "r1-count": "20"}).status_code == 422
    assert client.post(address, {**fields, "name": "Renamed"}).status_code == 302


def test_live_part_asks_beside_the_field(client: Client) -> None:
    """With a button that the whole page answers."""
    odd = {"units": "in", "stitch": "double_crochet", "hook": "4", "readings": "1"}
    odd |= {"r1-of": "", "r1-state": "washed", "r1-count": "27", "r1-width": "15"}
    told = client.post("/swatches/look/", odd).content.decode()
    assert 'id="r1-count-said" hx-swap-oob="true"' in told
    assert 'hx-post="/swatches/new/"' in told


def test_units_are_switched_on_the_page_of_a_swatch(client: Client) -> None:
    """Nothing is converted and nothing saved."""
    fields = Page(client.get("/swatches/new/")).fields | {"r1-width": "15", "r1-count": "27"}
    page = Page(client.post("/swatches/new/", {**fields, "do": "in"}))
    assert (page.fields["units"], page.fields["r1-width"]) == ("in", "15 cm")
    assert preferred().units == "in"
    assert not Document.objects.exists()
