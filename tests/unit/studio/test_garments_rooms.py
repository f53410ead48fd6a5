"""A garment in its rooms: what each shows, and what it says where nothing can be shown."""

from __future__ import annotations

import re

import pytest
from django.template.loader import render_to_string
from django.test import Client
from garments_made import BODY, SWATCH, garment, on_shelf, read

from frogless.draft import Texts, draft_texts
from frogless.errors import Impossible, Place, ProofFailed
from frogless.publish.pattern import pattern
from frogless.studio.examples import examples
from frogless.studio.garments import faults, shown
from frogless.studio.garments.create import default_name, make_garment
from frogless.studio.garments.sheet import Way
from frogless.studio.garments.subject import colours, of_colour
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.work.pool import TooMuchWork

ROOMS = ("shape", "pattern", "materials", "fit")
RING = examples("design")["ring-dance-skirt"].text


@pytest.fixture
def made() -> Garment:
    """A skirt."""
    return garment()


@pytest.mark.parametrize("room", ROOMS)
def test_room_names_garment_body_yarn_and_proof(client: Client, made: Garment, room: str) -> None:
    """Each room has an address of its own and begins with what it is, for whom, in which yarn."""
    page = read(client, f"/garments/{made.pk}/{room}/")
    assert "<h1>Ring dance skirt for Dancer 3</h1>" in page
    assert "For Dancer 3, in light cotton, washed" in page
    assert re.search(
        r"Drafted and proven: \d+ stitches at the waist, .*; \d+ of \d+ checks pass", page
    )
    assert re.search(rf'<a href="/garments/{made.pk}/{room}/" aria-current="page">', page)


@pytest.mark.parametrize("room", ROOMS)
def test_room_is_for_the_owner(stranger: Client, made: Garment, room: str) -> None:
    """Nobody else on this computer sees a garment."""
    read(stranger, f"/garments/{made.pk}/{room}/", 401)


@pytest.mark.parametrize(
    "address", ["/garments/999999/shape/", "/garments/{pk}/attic/", "/garments/999999/why/x/"]
)
def test_what_is_not_there_is_not_found(client: Client, made: Garment, address: str) -> None:
    """Neither a garment that is none nor a room that is none."""
    read(client, address.format(pk=made.pk), 404)


def test_shape_shows_counts_of_the_draft(client: Client, made: Garment) -> None:
    """The landmarks' counts are those of the library, and each asks for its because."""
    drafted = draft_texts(
        Texts(RING, examples("body")["dancer-3"].text, (examples("swatch")["light-cotton"].text,))
    ).drafted
    page = read(client, f"/garments/{made.pk}/shape/")
    for mark in drafted.plan.landmarks:
        key = f"landmark.{mark.key}"
        assert re.search(
            rf'<a class="why" href="/garments/\d+/why/{key}/[^"]*"[^>]*>{mark.count}</a>', page
        )
    assert page.count("<figure") == 2


def test_shape_of_pieces_tells_their_measurements(client: Client) -> None:
    """A garment of pieces has no girth by depth, and the measurements of every piece instead."""
    page = read(client, f"/garments/{garment('example:drum-bag').pk}/shape/")
    assert "Drafted and proven: base, rim and 2 of handle" in page
    assert "inished measurements" in page


def test_pattern_has_every_row_under_an_address(client: Client, made: Garment) -> None:
    """Any row can be linked to, a row that is folded with others too."""
    page = read(client, f"/garments/{made.pk}/pattern/")
    numbers = [int(n) for n in re.findall(r'id="row-skirt-(\d+)"', page)]
    assert numbers == list(range(numbers[0], numbers[-1] + 1))
    assert len(numbers) > 30


def test_pattern_has_the_words_of_the_published_one(client: Client, made: Garment) -> None:
    """Nothing is told otherwise than in the pattern that is printed."""
    drafted = draft_texts(
        Texts(RING, examples("body")["dancer-3"].text, (examples("swatch")["light-cotton"].text,))
    ).drafted
    page = re.sub(r"<[^>]+>", "", read(client, f"/garments/{made.pk}/pattern/"))
    rows = [block for block in pattern(drafted).blocks if type(block).__name__ == "Instruction"]
    assert rows
    assert all(row.text in page for row in rows)  # type: ignore[union-attr]


def test_materials_tell_yarn_with_its_interval_and_time(client: Client, made: Garment) -> None:
    """What has to be bought, and how long it takes."""
    page = read(client, f"/garments/{made.pk}/materials/")
    assert re.search(r"about \d+\sm \(\d+\sm to \d+\sm\)", page)
    assert "Working time" in page


def test_fit_begins_with_the_cautions(client: Client, made: Garment) -> None:
    """What can hurt comes before ease."""
    page = read(client, f"/garments/{made.pk}/fit/")
    assert 0 < page.index("Caution") < page.index(">Ease<") < page.index(">Going on<")


def test_because_is_a_chain_that_ends_in_the_number(client: Client, made: Garment) -> None:
    """As a page of its own with a way back, or as the inside of the page alone."""
    address = f"/garments/{made.pk}/why/landmark.hip_girth/?back=fit"
    whole = read(client, address)
    part = read(client, address, **{"HX-Request": "true", "HX-Target": "because"})
    assert f'href="/garments/{made.pk}/fit/"' in whole
    assert "<html" not in part
    for page in (whole, part):
        values = re.findall(r'class="value">([^<]+)<', page)
        assert values[0] == "101 cm"
        assert f": {values[-1]}</h2>" in page


def test_every_because_that_a_room_offers_is_told(client: Client, made: Garment) -> None:
    """No number leads to an answer that is none."""
    for room in ROOMS:
        links = re.findall(
            r'hx-get="(/garments/\d+/why/[^"]+)"', read(client, f"/garments/{made.pk}/{room}/")
        )
        for link in list(dict.fromkeys(links))[::7]:
            read(client, link, 200)


def test_unknown_because_says_so(client: Client, made: Garment) -> None:
    """A number that is no more there has no page."""
    read(client, f"/garments/{made.pk}/why/landmark.nose/", 404)


def test_missing_measurement_is_asked_for(client: Client) -> None:
    """What the body lacks is said, with the way to add it; the page is a page."""
    ref = on_shelf(
        "body", 'format = "frogless-body/1"\nname = "Me"\n[measurements]\nhip_girth = "101 cm"\n'
    )
    page = read(client, f"/garments/{garment(body=ref).pk}/shape/")
    assert "waist girth is needed and cannot be estimated" in page
    assert f'href="/people/{ref.removeprefix("own:")}/"' in page


def test_faulty_design_tells_the_line_and_leads_to_its_text(client: Client) -> None:
    """The panel says that the text has to be mended first."""
    ref = on_shelf("design", RING + "\nnonsense = 1\n")
    page = read(client, f"/garments/{garment(ref).pk}/shape/")
    assert re.search(r"line \d+", page)
    assert f'href="/designs/{ref.removeprefix("own:")}/text/' in page
    assert "has to be mended first" in page


def test_body_that_was_deleted_is_told(client: Client) -> None:
    """Another can be chosen."""
    made = garment()
    Garment.objects.filter(pk=made.pk).update(body="own:999999")
    page = read(client, f"/garments/{made.pk}/shape/")
    assert "this body is not there any more" in page


def test_design_in_the_bin_is_told(client: Client) -> None:
    """With the way to where it can be brought back from."""
    made = garment(on_shelf("design", RING))
    shelf.remove(Document.objects.get())
    page = read(client, f"/garments/{made.pk}/shape/")
    assert "this design is not there any more" in page
    assert 'href="/library/">Bring it back from the bin' in page
    assert 'id="panel"' not in page


def test_look_at_an_example(client: Client) -> None:
    """The same page without knobs, with a way to make it one's own."""
    page = read(client, "/look/ring-dance-skirt/shape/")
    assert "Drafted and proven" in page
    assert 'href="/start/example:ring-dance-skirt/?body=' in page
    assert 'id="panel"' not in page
    link = re.findall(r'href="(/look/ring-dance-skirt/why/[^"]+)"', page)[0]
    assert "Back to Ring dance skirt" in read(client, link)


def test_look_takes_what_was_chosen_in_its_address(client: Client) -> None:
    """Another body, other units and terms, without anything being kept."""
    page = read(client, "/look/ring-dance-skirt/pattern/?body=size:women:M&units=in&terms=uk")
    assert "For Women’s size M" in page
    assert "UK terms" in page
    assert Garment.objects.count() == 0


@pytest.mark.parametrize("address", ["/look/no-such/shape/", "/look/ring-dance-skirt/attic/"])
def test_look_at_nothing(client: Client, address: str) -> None:
    """There is no such example, or no such room."""
    read(client, address, 404)


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("pattern.pdf", "application/pdf"),
        ("pattern.html", "text/html"),
        ("pattern.txt", "text/plain"),
        ("plan.json", "application/json"),
        ("schematic.svg", "image/svg+xml"),
        ("design.toml", "application/toml"),
        ("body.toml", "application/toml"),
        ("swatch.toml", "application/toml"),
    ],
)
def test_files(client: Client, made: Garment, name: str, kind: str) -> None:
    """Every file is of its kind, has something in it, and is called after the garment."""
    answer = client.get(f"/garments/{made.pk}/files/{name}")
    assert answer.status_code == 200
    assert answer["Content-Type"].startswith(kind)
    assert len(answer.content) > 200
    assert "ring-dance-skirt-for-dancer-3-" in answer["Content-Disposition"]


def test_no_other_files(client: Client, made: Garment) -> None:
    """Nothing is read from the disk by its name."""
    read(client, f"/garments/{made.pk}/files/library.sqlite3", 404)


def test_file_of_what_cannot_be_drafted(client: Client) -> None:
    """The page with the reason, and no file."""
    ref = on_shelf(
        "body", 'format = "frogless-body/1"\nname = "Me"\n[measurements]\nhip_girth = "101 cm"\n'
    )
    page = read(client, f"/garments/{garment(body=ref).pk}/files/pattern.pdf", 422)
    assert "waist girth is needed" in page


def test_proof_alone_says_what_the_page_says(client: Client, made: Garment) -> None:
    """The part that follows a change has the sentence of the whole page."""
    sentence = re.search(r"Drafted and proven: [^<]*", read(client, f"/garments/{made.pk}/shape/"))
    part = read(client, f"/garments/{made.pk}/proof/shape/")
    assert sentence
    assert sentence[0] in part
    assert "<html" not in part


def test_default_name_says_what_and_for_whom() -> None:
    """A second one of the same has a number."""
    assert default_name("Ring dance skirt", "Me") == "Ring dance skirt for Me"
    assert [make_garment("", "example:drum-bag", BODY, [SWATCH]).name for _ in range(2)] == [
        "Drum bag for Dancer 3",
        "Drum bag for Dancer 3 2",
    ]


LITTLE = """format = "frogless-body/1"
name = "Me"
[measurements]
waist_girth = "72 cm"
hip_girth = "101 cm"
waist_to_hip = "21 cm"
waist_to_knee = "58 cm"
"""


def test_fit_tells_what_was_not_measured(client: Client) -> None:
    """With what it would be good for, and where it is added."""
    ref = on_shelf("body", LITTLE)
    page = read(client, f"/garments/{garment(body=ref).pk}/fit/")
    assert "Not measured" in page
    assert "High hip girth. Without it" in page
    assert f'href="/people/{ref.removeprefix("own:")}/">Add to “Me”' in page


def test_materials_tell_what_was_not_swatched(client: Client, made: Garment) -> None:
    """A gauge that is estimated is not hidden."""
    light = examples("swatch")["light-cotton"].text
    only = light[: light.index('[[reading]]\nstitch = "hdc"')]
    Garment.objects.filter(pk=made.pk).update(swatches=[on_shelf("swatch", only)])
    page = read(client, f"/garments/{made.pk}/materials/")
    assert "Not swatched" in page
    assert "Single crochet. Its gauge is estimated" in page


def test_failed_proof_is_told_and_shows_nothing_else() -> None:
    """The finding stands in place of the result."""
    seen = shown.refused(ProofFailed(["row 12 states 160 stitches and works 161"]))
    found = {"shown": seen, "room": "shape", "mends": [{"sentence": seen.refusal.told[0].sentence}]}
    page = render_to_string("garments/_result.html", found)
    assert seen.state == "refused"
    assert "did not pass its own proof" in seen.sentence
    assert "row 12 states 160 stitches and works 161" in page
    assert "fault of the program" in page
    assert "<svg" not in page


def test_too_much_work_is_told() -> None:
    """A design that takes too long is no fault of the page."""
    refused = faults.too_much(TooMuchWork(20))
    assert refused.why == "work"
    assert "took longer than 20 seconds" in refused.told[0].sentence


@pytest.mark.parametrize(
    ("way", "sentence", "changes"),
    [
        (
            "add = 2: two stitches at each point",
            "Add 2: two stitches at each point.",
            (("section/1/add", "2"),),
        ),
        (
            'every = "auto": shape more often',
            "Every auto: shape more often.",
            (("section/1/every", "auto"),),
        ),
        ("a longer section", "A longer section.", ()),
        ("8 shaping points", "8 shaping points.", (("section/1/points", "8"),)),
    ],
)
def test_ways_out_that_are_knobs(
    way: str, sentence: str, changes: tuple[tuple[str, str], ...]
) -> None:
    """What says which key should be what can be taken at once."""
    error = Impossible("too wide", Place("design.toml", 9, "section[2].points"), ways_out=(way,))
    assert faults.refusal(error).ways == (Way(sentence, changes),)


@pytest.mark.parametrize(
    "query",
    [
        "body=own:999999",
        "body=",
        "swatch=x&swatch=y",
        "units=ells&terms=no&hand=3",
        "body=size:a:b",
    ],
)
def test_odd_addresses_of_an_example_are_answered(client: Client, query: str) -> None:
    """What is no choice is told, or left out."""
    page = read(client, f"/look/ring-dance-skirt/fit/?{query}")
    assert "not there any more" in page or "Drafted and proven" in page


@pytest.mark.parametrize("key", ["x", "landmark..", "row.skirt.9999", "%22%3E", "a b"])
def test_odd_keys_have_no_because(client: Client, made: Garment, key: str) -> None:
    """As a page, and as the inside of a page."""
    read(client, f"/garments/{made.pk}/why/{key}/", 404)
    part = read(client, f"/garments/{made.pk}/why/{key}/", 200, **{"HX-Request": "true"})
    assert "No because" in part


def test_colours_are_read_of_no_text_that_no_parser_should_be_asked_about() -> None:
    """It is told by the draft, in its own process; here it has no colours."""
    overgrown = ".".join(["a"] * 8000) + " = 1\n"
    assert colours(overgrown) == ()
    assert of_colour(overgrown, "B") == overgrown
    assert colours("colours = 3") == colours("colours = { names = 3 }") == ()
