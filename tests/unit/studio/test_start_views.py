"""The first five minutes, as a browser without scripts meets them and as htmx does."""

from __future__ import annotations

import pytest
from django.test import Client
from studio_page import Page

from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.library.preferences import preferred

SKIRT = "/start/example:ring-dance-skirt/"
LEAST = {
    "body-waist_girth": "72",
    "body-hip_girth": "101",
    "swatch-hook": "3,75",
    "swatch-r1-count": "18",
    "swatch-r1-rows": "9 1/2",
}
HTMX = {"HX-Request": "true", "host": "localhost"}


def filled(client: Client, address: str = SKIRT, **fields: str) -> dict[str, str]:
    """The fields of a start page as a browser would send them."""
    return {**Page(client.get(address)).fields, "do": "make", **fields}


@pytest.mark.parametrize("address", ["/", "/start/", SKIRT])
def test_pages_are_the_owners(client: Client, address: str) -> None:
    """A stranger on this computer sees none of them."""
    assert client.get(address).status_code == 200
    assert Client(headers={"host": "localhost"}).get(address).status_code == 401


@pytest.mark.parametrize(
    "ref", ["example:nope", "own:9", "own:x", "size:women:M", "own:" + "9" * 30]
)
def test_design_that_is_not_there_is_not_found(client: Client, ref: str) -> None:
    """Neither shown nor made."""
    for answer in (client.get(f"/start/{ref}/"), client.post(f"/start/{ref}/", LEAST)):
        assert answer.status_code == 404
    assert client.post(f"/start/{ref}/said/").status_code == 404


def test_empty_studio_offers_two_ways(client: Client) -> None:
    """Start from a garment, or look at an example; nothing else to decide."""
    page = Page(client.get("/"))
    assert "Start from a garment" in page.text
    assert "Look at an example" in page.text
    assert "/start/" in page.links
    assert "/look/procession-skirt/shape/" in page.links
    assert "Go on" not in page.text


def test_how_everything_is_shown_is_chosen_on_the_first_page(client: Client) -> None:
    """Units, terms, hand; what was chosen stands there."""
    page = Page(client.get("/"))
    kept = {name: page.fields[name] for name in ("units", "terms", "hand")}
    assert kept == {"units": "cm", "terms": "us", "hand": "right"}
    client.post("/preferences/", {**page.fields, "terms": "uk"})
    assert Page(client.get("/")).fields["terms"] == "uk"


def test_garments_are_gone_on_with_first(client: Client) -> None:
    """What was opened last, for whom and in what yarn; what is gone is said to be gone."""
    Garment.objects.create(
        name="Festival skirt", design="example:whirl-skirt", body="own:99", swatches=["own:98"]
    )
    page = Page(client.get("/"))
    assert "Festival skirt" in page.text
    assert "For a body that is gone, in a swatch that is gone" in page.text
    assert "Start from a garment" in page.text


def test_every_design_can_be_chosen(client: Client) -> None:
    """With what it asks; own ones first."""
    own = shelf.create("design", examples("design")["whirl-skirt"].text, "My whirl")
    page = Page(client.get("/start/"))
    for design in examples("design").values():
        assert design.title in page.text
    assert "Needs waist and hip; a swatch in double crochet. Estimated when" in page.text
    assert page.text.index("My whirl") < page.text.index("Ring dance skirt")
    assert f"/start/{own.ref}/" in page.links


def test_kind_of_garment_is_chosen(client: Client) -> None:
    """Hats only; one that nobody knows says so."""
    page = Page(client.get("/start/?kind=hat"))
    assert "Haymaker hat" in page.text
    assert "Ring dance skirt" not in page.text
    assert "There is none of that kind." in Page(client.get("/start/?kind=sock")).text


def test_person_that_was_chosen_is_kept_on_the_way(client: Client) -> None:
    """From a size to a garment in it; a swatch as well."""
    address = "/start/?body=size:women:M&swatch=example:fine-wool&kind=skirt"
    page = Page(client.get(address))
    assert "For Women’s size M." in page.text
    link = next(one for one in page.links if one.startswith(SKIRT))
    fields = Page(client.get(link)).fields
    assert (fields["body"], fields["swatch"]) == ("size:women:M", "example:fine-wool")


def test_five_fields_make_a_body_a_swatch_and_a_garment(client: Client) -> None:
    """And the garment stands there."""
    answer = client.post(SKIRT, filled(client, **LEAST))
    garment = Garment.objects.get()
    body, swatch = Document.objects.get(kind="body"), Document.objects.get(kind="swatch")
    assert answer.headers["Location"] == f"/garments/{garment.pk}/shape/"
    assert garment.name == "Ring dance skirt for Me"
    assert (garment.design, garment.body) == ("example:ring-dance-skirt", body.ref)
    assert garment.swatches == [swatch.ref]
    assert 'waist_girth = "72 cm"' in body.text
    assert (body.name, swatch.name) == ("Me", "My swatch")
    assert 'width = "10 cm"' in swatch.text
    assert client.get(answer.headers["Location"]).status_code == 200


def test_inches_make_the_same(client: Client) -> None:
    """Four inches are the window then."""
    client.post("/preferences/", {"units": "in"})
    given = {**LEAST, "body-waist_girth": "28 1/4", "body-hip_girth": "101 cm"}
    client.post(SKIRT, filled(client, **given))
    assert 'waist_girth = "28 1/4 in"' in Document.objects.get(kind="body").text
    assert 'width = "4 in"' in Document.objects.get(kind="swatch").text


def test_what_is_missing_is_told_and_nothing_is_made(client: Client) -> None:
    """422; what was typed stays."""
    answer = client.post(
        SKIRT, filled(client, **{**LEAST, "body-hip_girth": "", "swatch-hook": ""})
    )
    page = Page(answer)
    assert answer.status_code == 422
    assert page.error("body-hip_girth") == "Hip girth is needed."
    assert page.error("swatch-hook") == "Hook is needed."
    assert {"#body-hip_girth", "#swatch-hook"} <= set(page.links)
    assert page.fields["body-waist_girth"] == "72"
    assert not Document.objects.exists()
    assert not Garment.objects.exists()


def test_faulty_values_are_told_beside_their_fields(client: Client) -> None:
    """A slip of the unit, a count that is none, a height that is none."""
    given = {**LEAST, "body-waist_girth": "33", "swatch-r1-count": "x", "swatch-r1-height": "low"}
    page = Page(client.post(SKIRT, filled(client, **given)))
    assert "did you mean 33 in" in page.error("body-waist_girth")
    assert page.error("swatch-r1-count")
    assert page.error("swatch-r1-height")


def test_units_are_switched_on_the_page(client: Client) -> None:
    """What was typed stays, with its unit; nothing is made."""
    page = Page(client.post(SKIRT, filled(client, **{**LEAST, "do": "in"})))
    assert page.fields["body-waist_girth"] == "72 cm"
    assert page.fields["swatch-hook"] == "3,75"
    assert preferred().units == "in"
    assert not Document.objects.exists()


def test_own_body_and_swatch_are_picked_already(client: Client) -> None:
    """The second garment asks nothing any more, and takes neither measure twice."""
    client.post(SKIRT, filled(client, **LEAST))
    address = "/start/example:rehearsal-skirt/"
    fields = filled(client, address)
    assert fields["body"].startswith("own:")
    assert fields["swatch"].startswith("own:")
    client.post(address, fields)
    assert Document.objects.count() == 2
    assert Garment.objects.count() == 2


def test_own_swatch_that_will_not_do_is_not_picked(client: Client) -> None:
    """A new one is asked for; who picks the old one all the same is told what it lacks."""
    client.post(SKIRT, filled(client, **LEAST))
    address = "/start/example:whirl-skirt/"
    fields = filled(client, address)
    assert fields["swatch"] == ""
    swatch = Document.objects.get(kind="swatch")
    answer = client.post(address, {**fields, "swatch": swatch.ref})
    page = Page(answer)
    assert answer.status_code == 422
    assert "not read in half double crochet" in page.error("swatch")
    assert f"/swatches/{swatch.pk}/" in page.links
    assert "(does not do for this design)" in page.text


def test_own_body_that_lacks_a_girth_is_told(client: Client) -> None:
    """With the way to measure it."""
    body = shelf.create(
        "body", 'format = "frogless-body/1"\nname = "Eva"\n[measurements]\nwaist_girth = "72 cm"\n'
    )
    fields = filled(client, **LEAST)
    assert fields["body"] == ""
    page = Page(client.post(SKIRT, {**fields, "body": body.ref}))
    assert page.error("body").startswith("Hip girth is not measured yet.")
    assert f"/people/{body.pk}/" in page.links


def test_pick_that_is_gone_is_told(client: Client) -> None:
    """Deleted on another page in the meantime."""
    answer = client.post(SKIRT, filled(client, **{**LEAST, "body": "own:99"}))
    assert answer.status_code == 422
    assert "not there any more" in Page(answer).error("body")


def test_size_and_example_make_a_garment_without_a_field(client: Client) -> None:
    """Nothing of one's own is made but the garment."""
    fields = filled(client, body="size:women:M", swatch="example:light-cotton")
    client.post(SKIRT, fields)
    garment = Garment.objects.get()
    assert (garment.body, garment.swatches) == ("size:women:M", ["example:light-cotton"])
    assert not Document.objects.exists()


def test_garment_of_its_own_size_needs_nobody_measured(client: Client) -> None:
    """A shawl: hook, stitches, rows."""
    address = "/start/example:half-moon-shawl/"
    assert "nothing has to be measured" in Page(client.get(address)).text
    given = {name: value for name, value in LEAST.items() if name.startswith("swatch-")}
    client.post(address, filled(client, address, **given))
    assert Garment.objects.get().name == "Half moon shawl"
    assert not shelf.documents("body").exists()


def test_hat_asks_for_the_head_though_it_could_be_estimated(client: Client) -> None:
    """Where nothing else is measured, what is used is asked at once."""
    page = Page(client.get("/start/example:haymaker-hat/"))
    assert page.texts["body-head_girth-said"].startswith("Estimated: about 56 cm")


def test_faulty_design_of_ones_own_says_so(client: Client) -> None:
    """With its line, on the card and on its page; it cannot be made."""
    text = examples("design")["whirl-skirt"].text.replace("[work]", "[wrok]")
    own = shelf.create("design", text, "Faulty")
    assert "Cannot be made yet:" in Page(client.get("/start/")).text
    page = Page(client.get(f"/start/{own.ref}/"))
    assert 'unknown key "wrok"' in page.text
    assert client.post(f"/start/{own.ref}/", LEAST).status_code == 422
    assert not Garment.objects.exists()


def test_what_is_said_follows_the_fields(client: Client) -> None:
    """For htmx: what was typed is looked at, what is still empty is not complained of."""
    fields = {"units_were": "cm", "body-waist_girth": "33", "swatch-hook": "x"}
    answer = client.post(f"{SKIRT}said/", fields, headers=HTMX)
    page = Page(answer)
    assert answer.status_code == 200
    assert "did you mean 33 in" in page.error("body-waist_girth")
    assert page.error("swatch-hook")
    assert page.error("body-hip_girth") == ""
    assert "<input" not in answer.content.decode()


@pytest.mark.parametrize(
    ("asked", "led"),
    [
        ("/people/sizes/", "/people/sizes/"),
        ("/people/sizes/?a=1", "/people/sizes/?a=1"),
        ("https://elsewhere.example/", "/"),
        ("//elsewhere.example/", "/"),
        ("/\\elsewhere.example/", "/"),
        ("javascript:alert(1)", "/"),
        ("", "/"),
    ],
)
def test_preferences_lead_back_within_the_studio_only(client: Client, asked: str, led: str) -> None:
    """To a path of its own, or to the first page."""
    answer = client.post("/preferences/", {"terms": "uk", "hand": "left", "next": asked})
    assert answer.headers["Location"] == led
    assert (preferred().terms, preferred().hand, preferred().units) == ("uk", "left", "cm")


def test_preference_that_is_none_changes_nothing(client: Client) -> None:
    """And a page to look at it there is none."""
    client.post("/preferences/", {"units": "ells"})
    assert preferred().units == "cm"
    assert client.get("/preferences/").status_code == 405


def test_question_is_answered_with_one_button(client: Client) -> None:
    """33 in for 33 cm: without scripts the page comes again with it, and nothing is made."""
    fields = filled(client, **{**LEAST, "body-waist_girth": "33"})
    refused = client.post(SKIRT, fields)
    page = Page(refused)
    assert refused.status_code == 422
    assert ("take", "body-waist_girth=33+in") in page.buttons
    taken = client.post(SKIRT, {**fields, "take": "body-waist_girth=33+in"})
    assert taken.status_code == 200
    assert Page(taken).fields["body-waist_girth"] == "33 in"
    assert Page(taken).fields["body-hip_girth"] == "101"
    assert not Document.objects.exists()


def test_offer_writes_in_fields_of_the_page_alone(client: Client) -> None:
    """Nothing else can be taken."""
    answer = client.post(SKIRT, {**filled(client), "take": "units_were=in&do=make&x=1"})
    assert answer.status_code == 200
    assert not Document.objects.exists()


def test_exchanged_count_is_asked_about_before_a_pattern_is_made(client: Client) -> None:
    """Beside the field and once above; whoever says that it is so is believed."""
    swapped = filled(client, **{**LEAST, "swatch-r1-count": "9", "swatch-r1-rows": "17"})
    asked = client.post(SKIRT, swapped)
    page = Page(asked)
    assert asked.status_code == 422
    assert not Garment.objects.exists()
    assert "Did you mean 17 stitches and 9 rows?" in page.text
    (sure,) = (value for name, value in page.buttons if name == "sure")
    assert client.post(SKIRT, {**swapped, "sure": "another"}).status_code == 422
    assert client.post(SKIRT, {**swapped, "sure": sure}).status_code == 302


def test_advice_and_questions_are_said_while_the_swatch_is_filled_in(client: Client) -> None:
    """As parts for htmx."""
    fields = filled(client, **LEAST)
    short = client.post(
        f"{SKIRT}said/", {**fields, "swatch-r1-width": "6", "swatch-r1-count": "11"}
    )
    assert "count over 10 cm or more" in Page(short).text
    odd = client.post(f"{SKIRT}said/", {**fields, "swatch-r1-width": "10 in"})
    assert 'id="swatch-r1-count-said" hx-swap-oob="true"' in odd.content.decode()
    assert "Did you mean 10 cm?" in Page(odd).text
    assert f'hx-post="{SKIRT}"' in odd.content.decode()
    assert "In 10 in, counted" in Page(odd).text


HAT = "/start/example:lantern-cap/"


def least_of(client: Client, address: str) -> dict[str, str]:
    """A start page with a likely swatch in every reading, and nothing measured."""
    fields = filled(client, address)
    readings = [name for name in fields if name.endswith("-count")]
    for name in readings:
        start = name.removesuffix("count")
        fields |= {name: "18", f"{start}rows": "10", f"{start}width": "10", f"{start}height": "10"}
    return {**fields, "swatch-hook": "4", "body": "", "swatch": ""}


def test_hat_of_nobody_measured_makes_no_person(client: Client) -> None:
    """Its head is estimated; the field asks for it in view."""
    page = Page(client.get(HAT))
    assert "body-head_girth" in page.fields
    fields = {**least_of(client, HAT), "swatch": "example:light-cotton"}
    assert client.post(HAT, fields).status_code == 302
    assert not shelf.documents("body").exists()
    (made,) = Garment.objects.all()
    assert made.body == "example:anybody"
    room = client.get(f"/garments/{made.pk}/shape/")
    assert room.status_code == 200
    assert "Anybody, estimated" in room.content.decode()


@pytest.mark.parametrize("told", [{"body-head_girth": "57"}, {"body-name": "Ada"}])
def test_hat_of_somebody_makes_a_person(client: Client, told: dict[str, str]) -> None:
    """As soon as there is something to remember."""
    fields = {**least_of(client, HAT), "swatch": "example:light-cotton", **told}
    assert client.post(HAT, fields).status_code == 302
    assert shelf.documents("body").count() == 1


def test_next_free_name_is_proposed_in_view(client: Client) -> None:
    """Me, then Me 2; of a swatch as well."""
    assert Page(client.get(SKIRT)).fields["body-name"] == "Me"
    client.post(SKIRT, filled(client, **LEAST))
    page = Page(client.get(SKIRT))
    assert (page.fields["body-name"], page.fields["swatch-name"]) == ("Me 2", "My swatch 2")
    assert page.html.index('id="body-name"') < page.html.index('id="body-waist_girth"')


def test_own_design_is_marked_among_those_to_make(client: Client) -> None:
    """A copy has the name of its example."""
    shelf.create("design", examples("design")["ring-dance-skirt"].text)
    assert client.get("/start/").content.decode().count("<li>yours</li>") == 1
