"""The gallery: whole page and live part, filters in the address, pictures that are kept."""

from __future__ import annotations

import re

import pytest
from designs_made import FAULTY, IMPOSSIBLE, LEAST, LIVE, RING, cards, own, read
from django.test import Client
from django.urls import reverse

from frogless.studio.designs import standing
from frogless.studio.examples import examples
from frogless.studio.library import shelf

LIST = "/designs/"


def test_every_example_has_a_card(client: Client) -> None:
    """Each with a picture, its line and what it needs."""
    page = read(client, LIST)
    assert cards(page) == [one.title for one in examples("design").values()]
    assert page.count('loading="lazy"') == len(examples("design"))
    assert "Needs waist and hip; a swatch in double crochet. Estimated when not measured: " in page
    assert ">25 designs</p>" in page


def test_own_designs_come_first(client: Client) -> None:
    """Under a heading of their own."""
    own(RING, "Mine")
    page = read(client, LIST)
    assert cards(page)[0] == "Mine"
    assert page.index("<h2>Yours</h2>") < page.index("<h2>Examples</h2>")


def test_filters_work_from_the_address(client: Client) -> None:
    """The form is filled in as it was, and only what fits is shown."""
    page = read(client, f"{LIST}?kind=hat&worked=spiral&q=sun")
    assert cards(page) == ["Haymaker hat"]
    assert 'name="kind" value="hat" checked' in page
    assert 'value="sun"' in page
    assert ">1 of 25 designs</p>" in page


def test_live_part_says_the_same_as_the_page(client: Client) -> None:
    """The same cards, the sentence and the numbers beside the filters."""
    address = f"{LIST}?details=beads"
    part, page = read(client, address, **LIVE), read(client, address)
    assert cards(part) == cards(page) == ["Ring dance skirt"]
    assert "<html" not in part
    assert '<span hx-swap-oob="innerHTML:#told">1 of 25 designs</span>' in part
    counts = re.findall(r'id="(n-[^"]+)"[^>]*>(\d+)<', part)
    assert counts == re.findall(r'id="(n-[^"]+)"[^>]*>(\d+)<', page)
    assert counts


def test_nothing_found_says_what_to_let_go_of(client: Client) -> None:
    """With a link to the address without it."""
    page = read(client, f"{LIST}?kind=hat&details=beads")
    assert "Nothing is like that." in page
    assert '<a href="/designs/?kind=hat">Beads</a>: then there are 2' in page
    assert "None of 25 designs" in page


def test_only_what_a_body_was_measured_for(client: Client) -> None:
    """A body with a head and no more can have hats, shawls and bags."""
    body = 'format = "frogless-body/1"\nname = "Anna"\n[measurements]\nhead_girth = "55 cm"\n'
    ref = shelf.create("body", body).ref
    names = cards(read(client, f"{LIST}?body={ref}"))
    assert {"Haymaker hat", "Moth wing shawl", "Drum bag"} <= set(names)
    assert "Ring dance skirt" not in names


@pytest.mark.parametrize(
    "query", ["body=own:99", "body=x", "kind=&q=", "stitch=%00", "q=" + "x" * 999]
)
def test_strange_addresses_do_no_harm(client: Client, query: str) -> None:
    """What stands for nothing is passed over, or finds nothing."""
    read(client, f"{LIST}?{query}")


def test_faulty_design_says_so_on_its_card(client: Client) -> None:
    """Its fault stands there and in the words of its picture."""
    own(FAULTY, "Faulty one")
    page = read(client, LIST)
    assert "<strong>To mend:</strong> line 23, section[1].eese: unknown key" in page
    assert 'alt="Not drawn. line 23, section[1].eese' in page


def test_design_that_cannot_be_has_a_picture_that_says_why(client: Client) -> None:
    """The reason is drawn, and is the picture's alternative text once it is known."""
    document = own(IMPOSSIBLE, "Too narrow")
    part = read(client, f"/designs/pictures/{document.ref}/drawn/")
    assert re.search(r'alt="Not drawn\. .*No whole number of stitches', part)
    picture = read(client, f"/designs/pictures/{document.ref}.svg")
    assert "No whole number of" in picture
    assert 'alt="Not drawn. ' in read(client, LIST)


def test_picture_is_kept_by_the_browser(client: Client) -> None:
    """With a tag, for this browser alone; asked for again with it, nothing is sent."""
    page = read(client, LIST)
    address = re.findall(r'src="(/designs/pictures/example:haymaker-hat[^"]+)"', page)[0]
    answer = client.get(address)
    assert answer["Content-Type"] == "image/svg+xml; charset=utf-8"
    assert answer.content.startswith(b"<svg")
    assert answer["Cache-Control"] == "private, max-age=86400"
    again = client.get(address, headers={"If-None-Match": answer["ETag"]})
    assert (again.status_code, again.content) == (304, b"")


def test_picture_without_its_mark_is_asked_for_again(client: Client) -> None:
    """Only an address that changes with the text may be kept unasked."""
    answer = client.get("/designs/pictures/example:haymaker-hat.svg")
    assert answer["Cache-Control"] == "private, max-age=0"


def test_picture_follows_the_text(client: Client) -> None:
    """Another text, another address and another picture."""
    document = own()
    first = client.get(f"/designs/pictures/{document.ref}.svg")
    shelf.change(document.pk, document.revision, document.text.replace("55 cm", "80 cm"))
    second = client.get(f"/designs/pictures/{document.ref}.svg")
    assert first["ETag"] != second["ETag"]
    assert first.content != second.content


@pytest.mark.parametrize("key", sorted(examples("design")))
def test_every_example_can_be_drawn(client: Client, key: str) -> None:
    """Outline and drawing, neither of them a placeholder."""
    for of in ("outline", "flat"):
        answer = client.get(f"/designs/pictures/example:{key}.svg?of={of}")
        assert b"Not drawn" not in answer.content


@pytest.mark.parametrize(
    "address",
    [
        "",
        "about/example:ring-dance-skirt/",
        "pictures/example:ring-dance-skirt.svg",
        "new/",
        "keys/",
    ],
)
def test_gallery_is_for_the_owner(stranger: Client, address: str) -> None:
    """Nobody else on this computer gets in."""
    read(stranger, f"{LIST}{address}", 401)


@pytest.mark.parametrize(
    "ref", ["example:no-such", "own:99", "own:x", "size:women:M", "", "own:9" * 20]
)
@pytest.mark.parametrize("address", ["about/{}/", "pictures/{}.svg", "about/{}/suits/"])
def test_what_is_not_there_is_not_found(client: Client, address: str, ref: str) -> None:
    """A ref that stands for no design."""
    read(client, LIST + address.format(ref), 404)


def test_slip_of_the_search_is_taken_for_the_nearest_word(client: Client) -> None:
    """And said; what is near nothing finds nothing."""
    told = read(client, f"{LIST}?q=pullovr")
    assert "Nothing for “pullovr”; shown for “pullover”: " in told
    assert cards(told) == cards(read(client, f"{LIST}?q=pullover"))
    assert '<span class="count" id="n-kind-top">0</span>' not in told
    part = client.get(f"{LIST}?q=skrt, picots", headers={"HX-Request": "true", "host": "localhost"})
    assert "shown for “skirt picots”" in part.content.decode()
    assert "Nothing is like that" in read(client, f"{LIST}?q=qqqqqq")


def test_pictures_without_the_example_files_are_placeholders(
    client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder that is missing costs pictures, and no page."""
    made = shelf.create("design", LEAST)
    monkeypatch.setattr(standing, "STANDING", standing.Pair("example:gone", ("example:gone",)))
    answer = client.get(f"/designs/pictures/{made.ref}.svg")
    assert answer.status_code == 200
    assert "Not drawn" in answer.content.decode()
    for address in (LIST, reverse("designs:show", args=[made.ref]), "/start/", "/"):
        assert client.get(address).status_code == 200
