"""The list of garments, new ones, and what they are shown for."""

from __future__ import annotations

import pytest
from django.test import Client
from garments_made import BODY, SWATCH, field, garment, on_shelf, read

from frogless.studio.examples import examples
from frogless.studio.library.models import Document, Garment

LIVE = {"HX-Request": "true", "HX-Target": "garment"}


@pytest.fixture
def made() -> Garment:
    """A skirt."""
    return garment()


def test_list_without_garments_shows_the_way(client: Client) -> None:
    """It says what a garment is, and where one begins."""
    page = read(client, "/garments/")
    assert "Nothing here yet" in page
    assert 'href="/start/"' in page


def test_list_shows_each_with_its_picture(client: Client, made: Garment) -> None:
    """Name, what it is, for whom, in which yarn."""
    page = read(client, "/garments/")
    assert f'<a href="/garments/{made.pk}/shape/">Ring dance skirt for Dancer 3</a>' in page
    assert "example:ring-dance-skirt" in page
    assert "for Dancer 3, in light cotton, washed" in page


def test_list_is_for_the_owner(stranger: Client) -> None:
    """Nobody else on this computer sees what is in it."""
    read(stranger, "/garments/", 401)


def test_create(client: Client) -> None:
    """A garment of what was chosen, opened in its first room."""
    sent = {"design": "example:drum-bag", "body": BODY, "swatch": [SWATCH], "name": " My  bag "}
    answer = client.post("/garments/create/", sent)
    made = Garment.objects.get()
    assert answer["Location"] == f"/garments/{made.pk}/shape/"
    assert (made.name, made.design, made.swatches) == ("My bag", "example:drum-bag", [SWATCH])


@pytest.mark.parametrize("wrong", ["design", "body", "swatch"])
def test_create_of_what_is_not_there(client: Client, wrong: str) -> None:
    """A sentence, and no garment."""
    sent = {"design": "example:drum-bag", "body": BODY, "swatch": SWATCH, wrong: "own:999999"}
    answer = client.post("/garments/create/", sent)
    assert answer.status_code == 422
    assert "not there any more" in answer.content.decode()
    assert Garment.objects.count() == 0


def test_create_without_swatch_asks_for_one(client: Client) -> None:
    """There is no gauge without."""
    answer = client.post("/garments/create/", {"design": "example:drum-bag", "body": BODY})
    assert answer.status_code == 422
    assert "swatch is needed" in answer.content.decode()


def test_rename(client: Client, made: Garment) -> None:
    """The new name stands in the list."""
    client.post(f"/garments/{made.pk}/rename/", {"name": "For the fair"})
    assert "For the fair" in read(client, "/garments/")


def test_rename_to_nothing_keeps_what_was_typed(client: Client, made: Garment) -> None:
    """The sentence stands beside the field."""
    answer = client.post(f"/garments/{made.pk}/rename/", {"name": "x" * 300})
    page = answer.content.decode()
    assert answer.status_code == 422
    assert "x" * 300 in field(page, "name")
    assert "letters at most" in page


def test_duplicate_can_be_changed_alone(client: Client) -> None:
    """It has a copy of a design of its own."""
    ref = on_shelf("design", examples("design")["drum-bag"].text)
    made = garment(ref)
    client.post(f"/garments/{made.pk}/duplicate/")
    other = Garment.objects.exclude(pk=made.pk).get()
    assert other.name == "Drum bag for Dancer 3 2"
    assert other.design != made.design
    assert Document.objects.count() == 2


def test_duplicate_of_an_example_shares_it(client: Client, made: Garment) -> None:
    """An example cannot change, so no copy is needed."""
    client.post(f"/garments/{made.pk}/duplicate/")
    assert Document.objects.count() == 0
    assert Garment.objects.count() == 2


def test_delete_puts_it_into_the_bin(client: Client, made: Garment) -> None:
    """It is not in the list and has no page any more; nothing else is gone."""
    client.post(f"/garments/{made.pk}/delete/")
    assert "Ring dance skirt" not in read(client, "/garments/")
    read(client, f"/garments/{made.pk}/shape/", 404)
    assert Garment.objects.get().removed


@pytest.mark.parametrize("what", ["rename", "duplicate", "delete"])
def test_nothing_of_it_by_strangers_or_links(client: Client, made: Garment, what: str) -> None:
    """A link changes nothing, and what is not there cannot be changed."""
    read(client, f"/garments/{made.pk}/{what}/", 405)
    assert client.post(f"/garments/999999/{what}/").status_code == 404
    client.cookies.clear()
    assert client.post(f"/garments/{made.pk}/{what}/").status_code == 401


def test_choose_another_body_terms_and_units(client: Client, made: Garment) -> None:
    """The page stays in its room, and the choice is kept."""
    sent = {"room": "pattern", "body": "size:women:M", "terms": "uk", "units": "in", "hand": "left"}
    answer = client.post(f"/garments/{made.pk}/choose/", sent)
    made.refresh_from_db()
    assert answer["Location"] == f"/garments/{made.pk}/pattern/"
    assert (made.body, made.terms, made.units, made.hand) == ("size:women:M", "uk", "in", "left")
    page = read(client, answer["Location"])
    assert "UK terms, inches, left-handed" in page
    assert "For Women’s size M" in page


def test_choice_is_answered_with_the_inside_of_the_page(client: Client, made: Garment) -> None:
    """The same as the whole page has."""
    answer = client.post(
        f"/garments/{made.pk}/choose/", {"room": "fit", "units": "in"}, headers=LIVE
    )
    part = answer.content.decode()
    assert part.lstrip().startswith('<div id="garment"')
    assert " in</td>" in part or " in</a>" in part


@pytest.mark.parametrize("sent", [{"terms": "elvish"}, {"units": "ells"}, {"hand": "third"}])
def test_choice_that_is_none_changes_nothing(
    client: Client, made: Garment, sent: dict[str, str]
) -> None:
    """What was chosen before stays."""
    client.post(f"/garments/{made.pk}/choose/", sent)
    made.refresh_from_db()
    assert (made.terms, made.units, made.hand) == ("us", "cm", "right")


def test_choice_of_a_body_that_is_gone(client: Client, made: Garment) -> None:
    """A sentence; the garment is as it was."""
    answer = client.post(f"/garments/{made.pk}/choose/", {"room": "shape", "body": "own:999999"})
    assert answer.status_code == 422
    assert "not there any more" in answer.content.decode()
    made.refresh_from_db()
    assert made.body == BODY


def test_swatch_for_each_colour(client: Client) -> None:
    """A design in two colors asks for two swatches, and the second may be left out."""
    made = garment("example:torchlight-shawl")
    page = read(client, f"/garments/{made.pk}/materials/")
    assert page.count('name="swatch"') == 2
    sent = {"room": "materials", "swatch": [SWATCH, ""]}
    client.post(f"/garments/{made.pk}/choose/", sent)
    made.refresh_from_db()
    assert made.swatches == [SWATCH]
    assert "Drafted and proven" in read(client, f"/garments/{made.pk}/materials/")
