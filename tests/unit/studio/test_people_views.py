"""The room of people, as a browser without scripts meets it and as htmx does."""

from __future__ import annotations

import tomllib

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from studio_page import Page

from frogless.body.measurements import known_measurements
from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.preferences import prefer

HTMX = {"HX-Request": "true", "host": "localhost"}
COMMENTED = """format = "frogless-body/1"
name = "Anna"
[measurements]
waist_girth = "72 cm"  # after breakfast
hip_girth = "101 cm"
"""


@pytest.fixture
def anna() -> Document:
    """A body of the person's own."""
    return shelf.create("body", COMMENTED)


def sent(client: Client, address: str, **fields: str) -> Page:
    """The form of a page, with these fields filled in, sent; the page that comes of it."""
    page = Page(client.get(address))
    return Page(client.post(address, {**page.fields, "do": "save", **fields}, follow=True))


ADDRESSES = [
    "/people/",
    "/people/new/",
    "/people/open/",
    "/people/sheet/",
    "/people/sizes/",
    "/people/sizes/women/M/",
    "/people/sizes/children/8/",
    "/people/examples/dancer-3/",
    "/people/measuring/whole.svg",
    "/people/measuring/waist_girth.svg",
]


@pytest.mark.parametrize("address", ADDRESSES)
def test_pages_are_the_owners(client: Client, stranger: Client, address: str) -> None:
    """A stranger on this computer sees none of them."""
    assert client.get(address).status_code == 200
    assert Client(headers={"host": "localhost"}).get(address).status_code == 401


@pytest.mark.parametrize(
    "address",
    [
        "/people/99/",
        "/people/99/text/",
        "/people/99/sheet/",
        "/people/sizes/women/Q/",
        "/people/sizes/cats/M/",
        "/people/examples/nobody/",
        "/people/measuring/tail.svg",
        "/people/99999999999999999999999/",
    ],
)
def test_what_is_not_there_is_not_found(client: Client, address: str) -> None:
    """One sentence, never a fault of ours."""
    assert client.get(address).status_code == 404


@pytest.mark.parametrize("address", ["/people/99/undo/", "/people/99/redo/", "/people/copy/own:9/"])
def test_nothing_is_done_with_what_is_not_there(client: Client, address: str) -> None:
    """Also not by a button of an old page."""
    assert client.post(address, {"base": "1"}).status_code == 404


def test_swatch_is_no_body(client: Client) -> None:
    """A document of another kind has no page here."""
    swatch = shelf.create("swatch", examples("swatch")["light-cotton"].text)
    assert client.get(f"/people/{swatch.pk}/").status_code == 404


def test_body_is_made_shown_and_changed(client: Client) -> None:
    """From nothing to a body with two girths, then a third."""
    page = sent(client, "/people/new/", waist_girth="72", hip_girth="39 3/4 in")
    made = Document.objects.get()
    assert (made.kind, made.name) == ("body", "Me")
    assert "Saved." in page.text
    assert page.fields["waist_girth"] == "72"
    assert page.fields["hip_girth"] == "39 3/4 in"
    sent(client, f"/people/{made.pk}/", bust_girth="90")
    made.refresh_from_db()
    assert tomllib.loads(made.text)["measurements"]["bust_girth"] == "90 cm"


def test_comments_of_a_file_survive_the_form(client: Client, anna: Document) -> None:
    """The text is the truth; a field changes its own line."""
    sent(client, f"/people/{anna.pk}/", waist_girth="73")
    anna.refresh_from_db()
    assert 'waist_girth = "73 cm"  # after breakfast' in anna.text


def test_refused_value_is_told_beside_its_field_and_everything_is_kept(client: Client) -> None:
    """422, nothing saved, the fault in the list with a link too."""
    page = Page(client.get("/people/new/"))
    fields = {**page.fields, "do": "save", "name": "Anna", "waist_girth": "33", "hip_girth": "101"}
    answer = client.post("/people/new/", fields)
    page = Page(answer)
    assert answer.status_code == 422
    assert "did you mean 33 in" in page.error("waist_girth")
    assert page.attributes["waist_girth"]["aria-invalid"] == "true"
    assert "#waist_girth" in page.links
    assert (page.fields["name"], page.fields["hip_girth"]) == ("Anna", "101")
    assert not Document.objects.exists()


def test_rare_value_is_questioned_and_saved(client: Client) -> None:
    """Large bodies exist."""
    page = sent(client, "/people/new/", waist_girth="150", hip_girth="160")
    assert "Is this so?" in page.texts["waist_girth-said"]
    assert Document.objects.count() == 1


def test_body_without_a_name_is_asked_for_one(client: Client) -> None:
    """Beside its field."""
    page = Page(client.get("/people/new/"))
    answer = client.post("/people/new/", {**page.fields, "do": "save", "name": " "})
    assert answer.status_code == 422
    assert Page(answer).error("name")


def test_switching_units_keeps_what_was_typed(client: Client, anna: Document) -> None:
    """Nothing is converted, nothing saved; back again it is as it was."""
    address = f"/people/{anna.pk}/"
    page = Page(client.get(address))
    page = Page(client.post(address, {**page.fields, "do": "in", "thigh_girth": "58"}))
    assert (page.fields["waist_girth"], page.fields["thigh_girth"]) == ("72 cm", "58 cm")
    assert page.fields["units_were"] == "in"
    page = Page(client.post(address, {**page.fields, "do": "cm"}))
    assert (page.fields["waist_girth"], page.fields["thigh_girth"]) == ("72", "58")
    anna.refresh_from_db()
    assert anna.text == COMMENTED


def test_estimates_stand_at_their_fields_marked_in_words(client: Client, anna: Document) -> None:
    """In the units of the person."""
    page = Page(client.get(f"/people/{anna.pk}/"))
    assert page.texts["waist_to_hip-said"].startswith("Estimated: about 19 cm, ± 3.5 cm")
    assert "waist_girth-said" not in page.texts
    assert page.texts["bust_girth-said"].startswith("Cannot be estimated")
    prefer(units="in")
    page = Page(client.get(f"/people/{anna.pk}/"))
    assert " in, " in page.texts["waist_to_hip-said"]


def test_what_is_said_follows_the_fields(client: Client) -> None:
    """An answer for htmx: a fault, an estimate from what was typed, and no field is replaced."""
    fields = {"units_were": "cm", "waist_girth": "33", "stature": "165"}
    answer = client.post(
        "/people/said/", fields, headers={**HTMX, "HX-Trigger-Name": "waist_girth"}
    )
    page = Page(answer)
    assert answer.status_code == 200
    assert "did you mean 33 in" in page.error("waist_girth")
    assert "from stature" in page.texts["waist_to_hip-said"]
    assert "Waist girth: 33 cm is no waist girth" in page.texts["heard"]
    assert page.error("name") == ""
    assert "<input" not in answer.content.decode()


def test_change_on_another_page_is_not_overwritten(client: Client, anna: Document) -> None:
    """409 with both texts; mine becomes a copy, or takes the other's place, which undo keeps."""
    address = f"/people/{anna.pk}/"
    old = Page(client.get(address))
    sent(client, address, waist_girth="74")
    answer = client.post(address, {**old.fields, "do": "save", "waist_girth": "76"})
    assert answer.status_code == 409
    page = Page(answer)
    assert 'waist_girth = "76 cm"' in page.fields["text"]
    assert 'waist_girth = "74 cm"' in page.text
    assert 'waist_girth = "76 cm"' in page.text
    client.post("/settle/", {**page.fields, "do": "copy"})
    assert sorted(Document.objects.values_list("name", flat=True)) == ["Anna", "Anna, copy"]
    client.post("/settle/", {**page.fields, "do": "replace"})
    anna.refresh_from_db()
    assert '"76 cm"' in anna.text
    shelf.undo(anna.pk, anna.revision)
    anna.refresh_from_db()
    assert '"74 cm"' in anna.text


def test_conflict_of_a_part_takes_the_place_of_the_page(client: Client, anna: Document) -> None:
    """htmx is told where to put it."""
    page = Page(client.get(f"/people/{anna.pk}/"))
    shelf.change(anna.pk, anna.revision, COMMENTED.replace("72", "75"))
    fields = {**page.fields, "do": "save", "waist_girth": "76"}
    answer = client.post(f"/people/{anna.pk}/", fields, headers=HTMX)
    assert answer.status_code == 409
    assert answer.headers["HX-Retarget"] == "#main"
    assert "<html" not in answer.content.decode()


@pytest.mark.parametrize(
    "fields",
    [
        {},
        {"key": "x", "base": "1"},
        {"key": "9" * 30, "base": "1", "do": "copy", "text": " "},
    ],
)
def test_settling_what_is_not_there_is_refused(client: Client, fields: dict[str, str]) -> None:
    """A sentence, and nothing is made."""
    assert client.post("/settle/", fields).status_code == 400
    assert not Document.objects.exists()


def test_undo_and_redo_walk_through_the_changes(client: Client, anna: Document) -> None:
    """And a button that came too late shows both."""
    address = f"/people/{anna.pk}/"
    sent(client, address, waist_girth="74")
    anna.refresh_from_db()
    client.post(f"{address}undo/", {"base": anna.revision})
    assert Page(client.get(address)).fields["waist_girth"] == "72"
    assert client.post(f"{address}redo/", {"base": anna.revision}).status_code == 409
    anna.refresh_from_db()
    client.post(f"{address}redo/", {"base": anna.revision})
    assert Page(client.get(address)).fields["waist_girth"] == "74"


@pytest.mark.parametrize("base", ["", "x", "-1", "1" * 40])
def test_save_without_its_revision_overwrites_nothing(
    client: Client, anna: Document, base: str
) -> None:
    """It is a conflict like any other."""
    fields = {"do": "save", "base": base, "name": "Anna", "waist_girth": "80"}
    assert client.post(f"/people/{anna.pk}/", fields).status_code == 409


def test_file_is_opened(client: Client) -> None:
    """It becomes a body of the person's own, letter by letter."""
    file = SimpleUploadedFile("anna.toml", COMMENTED.encode())
    answer = client.post("/people/open/", {"file": file}, follow=True)
    assert Document.objects.get().text == COMMENTED
    assert Page(answer).fields["waist_girth"] == "72"


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"x" * 200_001, "at most"),
        (b"\xff\xfe\x00", "not text in UTF-8"),
        (COMMENTED.replace("hip_girth", "hip_grith").encode(), "Line 5"),
        (b"x = [", "not valid TOML"),
    ],
)
def test_file_that_will_not_do_is_told_with_its_line(
    client: Client, content: bytes, told: str
) -> None:
    """And nothing is kept of it."""
    answer = client.post("/people/open/", {"file": SimpleUploadedFile("a.toml", content)})
    assert answer.status_code == 422
    assert told in Page(answer).text
    assert not Document.objects.exists()


def test_pasted_text_stays_until_it_is_mended(client: Client) -> None:
    """With the fault at its line and the near name."""
    faulty = COMMENTED.replace("hip_girth", "hip_grith")
    page = Page(client.post("/people/open/", {"text": faulty.replace("\n", "\r\n")}))
    assert page.fields["text"] == faulty
    assert 'did you mean "hip_girth"' in page.text
    client.post("/people/open/", {"text": COMMENTED})
    assert Document.objects.get().name == "Anna"


def test_nothing_that_is_opened_is_told(client: Client) -> None:
    """Neither a file nor a text."""
    answer = client.post("/people/open/", {"text": " "})
    assert answer.status_code == 422
    assert "choose a body file, or paste" in Page(answer).text.lower()


def test_faulty_body_on_the_shelf_is_shown_as_text(client: Client) -> None:
    """The form could not hold it; nothing of it is lost."""
    text = COMMENTED.replace("hip_girth", "hip_grith")
    body = shelf.create("body", text)
    answer = client.get(f"/people/{body.pk}/", follow=True)
    page = Page(answer)
    assert page.fields["text"] == text
    assert 'unknown key "hip_grith"' in page.text
    fields = {**page.fields, "text": COMMENTED}
    page = Page(client.post(f"/people/{body.pk}/text/", fields, follow=True))
    assert page.fields["hip_girth"] == "101"


def test_text_that_is_edited_badly_is_not_saved(client: Client, anna: Document) -> None:
    """422, and what was typed stays."""
    answer = client.post(f"/people/{anna.pk}/text/", {"base": anna.revision, "text": "x = ["})
    assert answer.status_code == 422
    assert Page(answer).fields["text"] == "x = ["
    anna.refresh_from_db()
    assert anna.text == COMMENTED


def test_list_shows_own_bodies_with_what_is_made_for_them(client: Client, anna: Document) -> None:
    """And the examples; that it is private is said once."""
    Garment.objects.create(name="Skirt for Anna", design="x", body=anna.ref, swatches=[])
    page = Page(client.get("/people/"))
    assert "Waist 72 cm, hip 101 cm; 2 measurements" in page.text
    assert "Wears Skirt for Anna" in page.text
    for example in examples("body").values():
        assert example.title in page.text
    assert page.text.count("nothing leaves this computer") == 1


def test_example_or_size_is_copied(client: Client) -> None:
    """Each becomes a body of the person's own."""
    for ref in ("example:dancer-3", "size:women:M", "size:children:8"):
        assert client.post(f"/people/copy/{ref}/").status_code == 302
    names = set(Document.objects.values_list("name", flat=True))
    assert names == {"Dancer 3", "Women’s size M", "Child of 8"}


def test_size_tables_are_in_the_persons_units(client: Client) -> None:
    """CYC 2018, women's M: bust 36 to 38 in, so 37 in or 94 cm; hip 38 to 40 in, so 39 in or 99 cm."""
    assert "Bust girth73.583.594104" in Page(client.get("/people/sizes/")).text
    client.post("/preferences/", {"units": "in", "next": "/people/sizes/"})
    page = Page(client.get("/people/sizes/"))
    assert "Hip girth33¼35½39" in page.text
    assert "Craft Yarn Council" in page.text
    assert "/people/sizes/women/M/" in page.links


def test_size_says_what_is_estimated(client: Client) -> None:
    """And offers to make something in it."""
    page = Page(client.get("/people/sizes/women/M/"))
    assert "estimated from the hip" in page.text
    assert "/start/?body=size:women:M" in page.links
    child = Page(client.get("/people/sizes/children/8/"))
    assert "estimated from" not in child.text
    assert "8 years old" in child.text


def test_pictures_are_drawings_in_the_units_asked_for(client: Client) -> None:
    """As images, with nothing in them that runs."""
    answer = client.get("/people/measuring/body_mass.svg?units=in")
    assert answer.headers["Content-Type"] == "image/svg+xml"
    assert b">lb<" in answer.content
    whole = client.get("/people/measuring/whole.svg?keys=waist_girth,nonsense,hip_girth")
    assert whole.status_code == 200


def test_every_field_has_its_hint_and_picture(client: Client) -> None:
    """How it is taken, in words and as a drawing that is there."""
    page = Page(client.get("/people/new/"))
    described = page.attributes["hip_girth"]["aria-describedby"].split()
    assert described[0] == "hip_girth-hint"
    assert page.texts["hip_girth-hint"].startswith("Level, where the seat is fullest.")
    assert "/people/measuring/hip_girth.svg" in page.html


def test_sheet_has_a_place_for_every_measurement(client: Client, anna: Document) -> None:
    """Empty, or with what was measured written in; a faulty file is mended first."""
    page = Page(client.get("/people/sheet/"))
    assert "Name Date" in page.text
    for key in known_measurements():
        assert key.replace("_", " ").capitalize() in page.text
    page = Page(client.get(f"/people/{anna.pk}/sheet/"))
    assert "72 cm" in page.text
    faulty = shelf.create("body", "x = [", "Faulty")
    answer = client.get(f"/people/{faulty.pk}/sheet/")
    assert answer.headers["Location"] == f"/people/{faulty.pk}/text/"


def test_garments_follow_a_change(client: Client, anna: Document) -> None:
    """Whoever changes a measurement is led to what changes with it."""
    garment = Garment.objects.create(name="Skirt", design="x", body=anna.ref, swatches=[])
    page = sent(client, f"/people/{anna.pk}/", waist_girth="74")
    assert "What is made for Anna follows: Skirt." in page.text
    assert f"/garments/{garment.pk}/shape/" in page.links


def test_offer_is_taken_with_one_button(client: Client) -> None:
    """33 in for 33 cm, the rest as it was, nothing saved."""
    fields = Page(client.get("/people/new/")).fields | {"waist_girth": "33", "hip_girth": "101"}
    page = Page(client.post("/people/new/", fields))
    assert ("take", "waist_girth=33+in") in page.buttons
    after = Page(client.post("/people/new/", {**fields, "take": "waist_girth=33+in"}))
    assert (after.fields["waist_girth"], after.fields["hip_girth"]) == ("33 in", "101")
    assert "autofocus" in after.attributes["waist_girth"]
    assert not Document.objects.exists()


def test_offer_that_is_said_goes_to_the_page_that_asked(client: Client) -> None:
    """And never to an address outside the studio."""
    fields = {"units_were": "cm", "waist_girth": "33"}
    for current, address in (
        ("http://localhost/people/7/?saved=new", "/people/7/"),
        ("http://elsewhere.example/people/7/", "/people/new/"),
        ("", "/people/new/"),
    ):
        headers = {"HX-Request": "true", "HX-Current-URL": current}
        told = client.post("/people/said/", fields, headers=headers).content.decode()
        assert f'hx-post="{address}"' in told
