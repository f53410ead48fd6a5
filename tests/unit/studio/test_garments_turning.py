"""Knobs of a garment's design: turned, refused, undone; in parts and as pages."""

from __future__ import annotations

import json
import re
from html import unescape

import pytest
from django.test import Client
from garments_made import LIVE, field, garment, on_shelf, own_design, read, turn

from frogless.studio.examples import examples
from frogless.studio.garments import drafts
from frogless.studio.garments.turned import in_a_line
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment

RING = examples("design")["ring-dance-skirt"].text


@pytest.fixture
def made() -> Garment:
    """A skirt."""
    return garment()


def told(answer: str) -> str:
    """The line that says what a change did."""
    found = re.search(r'id="turned"[^>]*>([^<]*)<', answer)
    assert found
    return unescape(found[1]).strip()


def test_first_change_makes_the_example_ones_own(client: Client, made: Garment) -> None:
    """The garment has a copy from then on, whose first step is the example."""
    answer = turn(client, made, path="garment/length", written="70")
    document = own_design(made)
    assert answer.status_code == 200
    assert 'length = "70 cm"' in document.text
    assert document.steps.get(number=1).text == RING
    assert "a design of its own" in unescape(answer.content.decode())


def test_answer_is_what_changed_alone(client: Client, made: Garment) -> None:
    """Drawing, tables, summary and the field; no whole page, and the panel stays as it is."""
    answer = turn(client, made, path="garment/length", written="70 cm")
    part = answer.content.decode()
    assert "<html" not in part
    assert "<svg" in part
    assert 'id="summary" hx-swap-oob="true"' in part
    assert 'id="knob-garment-length-field" hx-swap-oob="true"' in part
    assert 'id="panel"' not in part
    assert json.loads(answer["HX-Trigger"]) == {"turned": {"base": own_design(made).revision}}


def test_line_says_what_it_did(client: Client, made: Garment) -> None:
    """What was turned, and what came of it: length, rounds, yarn."""
    line = told(turn(client, made, path="garment/length", written="70 cm").content.decode())
    assert re.search(r"→ 70 cm: length: [\d.]+ cm → [\d.]+ cm; ", line)
    assert re.search(r"yarn: about \d+ m, \d balls → about \d+ m, \d balls", line)


def test_change_that_changes_no_stitch_says_so(client: Client, made: Garment) -> None:
    """It is not left open whether anything came of it."""
    line = told(turn(client, made, path="author", written="Somebody").content.decode())
    assert line.startswith("Author The folk-dance group → Somebody: no stitch is different")


def test_long_differences_are_counted() -> None:
    """A line stays a line: short ones first, the yarn always, then how many more."""
    found = ("x" * 90, "a", "b", "c", "d", "yarn: more", "e")
    assert in_a_line(found) == "a; b; c; yarn: more; 3 more changes"
    assert in_a_line(()) == ""
    assert in_a_line(("a", "x" * 90)) == "a; 1 more change"


def test_numbers_stand_before_the_proof_and_the_proof_follows(
    client: Client, made: Garment
) -> None:
    """A change is answered at once; the page asks for its proof by itself."""
    drafts.forget()
    part = turn(client, made, path="garment/length", written="70 cm").content.decode()
    assert "The proof is under way." in part
    assert f'hx-get="/garments/{made.pk}/proof/shape/" hx-trigger="load' in part
    assert "Drafted and proven" in read(client, f"/garments/{made.pk}/proof/shape/")


def test_whole_group_is_sent_without_scripts(client: Client, made: Garment) -> None:
    """Only what differs is turned, and the page is asked for again."""
    page = read(client, f"/garments/{made.pk}/shape/")
    assert 'value="' in field(page, "k:garment/length")
    sent = {"k:garment/kind": "skirt", "k:garment/length": "70 cm"}
    answer = turn(client, made, live=False, **sent)
    document = own_design(made)
    assert answer.status_code == 302
    assert document.steps.count() == 2
    again = read(client, answer["Location"])
    assert "a design of its own" in again
    assert 'value="70 cm"' in field(again, "k:garment/length")


@pytest.mark.parametrize("live", [True, False])
def test_refused_value_stands_beside_its_knob(client: Client, made: Garment, live: bool) -> None:
    """With its sentence; nothing is saved, and the example stays the design."""
    answer = turn(client, made, live=live, path="garment/length", written="7 parsecs")
    page = unescape(answer.content.decode())
    assert answer.status_code == 422
    assert 'value="7 parsecs"' in field(page, "k:garment/length")
    assert 'aria-invalid="true"' in field(page, "k:garment/length")
    assert re.search(r'id="knob-garment-length-error">[^<]+<', page)
    made.refresh_from_db()
    assert made.design == "example:ring-dance-skirt"
    assert ("<html" in page) is not live


def test_knob_that_is_none_is_refused(client: Client, made: Garment) -> None:
    """A sentence, not a fault."""
    answer = turn(client, made, path="garment/wings", written="2")
    assert answer.status_code == 422
    assert Document.objects.count() == 0


def test_impossible_stands_in_place_of_the_result_with_ways_out(
    client: Client, made: Garment
) -> None:
    """The change is kept so that it can be undone, and the panel goes on working."""
    ref = on_shelf("design", RING)
    Garment.objects.filter(pk=made.pk).update(design=ref)
    answer = turn(client, made, base=1, path="section/1/least_gap", written="20")
    part = unescape(answer.content.decode())
    assert answer.status_code == 422
    assert "This cannot be made so" in part
    assert "As it was before" in part
    assert "<svg" in part
    assert re.search(r'class="to-knob" href="#knob-section-1-\w+">Waist to hip: ', part)
    assert part.index('class="to-knob"') < part.index("line ")
    assert "What would make it possible" in part
    assert re.search(r'name="k:section/1/\w+" value="[^"]+"', part)
    document = own_design(made)
    again = turn(client, made, base=document.revision, path="section/1/least_gap", written="")
    assert again.status_code == 200
    assert "<svg" in again.content.decode()


def test_undo_goes_back(client: Client, made: Garment) -> None:
    """Step by step to the design as it was."""
    turn(client, made, path="garment/length", written="70 cm")
    document = own_design(made)
    back = shelf.undo(document.pk, document.revision)
    assert back.text == RING
    assert shelf.can_redo(back)


@pytest.mark.parametrize("live", [True, False])
def test_change_from_an_old_page_overwrites_nothing(
    client: Client, made: Garment, live: bool
) -> None:
    """Both texts are shown."""
    turn(client, made, path="garment/length", written="70 cm")
    document = own_design(made)
    answer = turn(
        client, made, base=document.revision - 1, live=live, path="garment/length", written="75 cm"
    )
    assert answer.status_code == 409
    assert own_design(made).text == document.text
    assert "75 cm" in answer.content.decode()
    page = answer.content.decode()
    assert "Length: yours 75 cm, there 70 cm" in page
    assert page.index("yours 75 cm") < page.index("<summary>Both texts") < page.index("<pre")


def test_edging_is_taken_away_and_added(client: Client, made: Garment) -> None:
    """A table goes, and another comes; the panel is set anew each time."""
    gone = turn(client, made, take="edging")
    document = own_design(made)
    assert gone.status_code == 200
    assert "[edging]" not in document.text
    assert 'id="knobs" hx-swap-oob="innerHTML"' in gone.content.decode()
    back = turn(client, made, base=document.revision, add="edging")
    assert back.status_code == 200
    assert "[edging]" in own_design(made).text


def test_turning_is_for_the_owner(stranger: Client, made: Garment) -> None:
    """Nobody else changes a garment."""
    assert turn(stranger, made, path="garment/length", written="70 cm").status_code == 401


def test_turning_is_no_reading(client: Client, made: Garment) -> None:
    """A link turns nothing; who reloads such an address comes to the shape."""
    for way in ("turn", "keep", "choose", "own"):
        answer = client.get(f"/garments/{made.pk}/{way}/")
        assert (answer.status_code, answer["Location"]) == (302, f"/garments/{made.pk}/shape/")
    assert client.put(f"/garments/{made.pk}/turn/").status_code == 405


def test_turning_what_is_not_there(client: Client) -> None:
    """No garment has that key."""
    assert client.post("/garments/999999/turn/", {"base": "1"}).status_code == 404


@pytest.mark.parametrize("base", ["", "-1", "x", "9" * 30])
def test_odd_bases_are_conflicts_at_most(client: Client, made: Garment, base: str) -> None:
    """Whatever is sent, nothing is overwritten and nothing breaks."""
    turn(client, made, path="garment/length", written="70 cm")
    answer = client.post(
        f"/garments/{made.pk}/turn/", {"base": base, "path": "garment/length", "written": "75 cm"}
    )
    assert answer.status_code == 409


def test_way_out_is_a_button(client: Client, made: Garment) -> None:
    """Taking it is turning the knob that it names."""
    turn(client, made, path="section/1/least_gap", written="20")
    page = read(client, f"/garments/{made.pk}/shape/")
    found = re.search(r'name="(k:section/1/\w+)" value="([^"]+)">\s*\n?<button>Take it', page)
    assert found
    answer = turn(client, made, base=own_design(made).revision, **{found[1]: found[2]})
    assert answer.status_code == 200


def test_other_ways_are_planned_apart_and_can_be_taken(client: Client) -> None:
    """The page asks for them when it is read so far; without scripts they have an address."""
    made = garment("example:kerchief-skirt")
    assert f'hx-get="/garments/{made.pk}/ways/"' in read(client, f"/garments/{made.pk}/shape/")
    part = read(client, f"/garments/{made.pk}/ways/", **LIVE)
    whole = read(client, f"/garments/{made.pk}/ways/")
    assert "One line of instructions less" in part
    assert "One line of instructions less" in whole
    assert "<html" in whole
    assert "<html" not in part
    form = part[part.index("<form") : part.index("</form>")]
    changes = dict(re.findall(r'name="(k:[^"]+)" value="([^"]+)"', form))
    answer = turn(client, made, **changes)
    assert answer.status_code == 200
    assert "clauses = 1" in own_design(made).text


@pytest.mark.parametrize("live", [True, False])
def test_version_is_kept_under_a_name(client: Client, made: Garment, live: bool) -> None:
    """From the panel, without leaving the page."""
    turn(client, made, path="garment/length", written="70 cm")
    headers = LIVE if live else {}
    answer = client.post(f"/garments/{made.pk}/keep/", {"name": "for the fair"}, headers=headers)
    assert own_design(made).versions.get().name == "for the fair"
    assert answer.status_code == (200 if live else 302)


@pytest.mark.parametrize("live", [True, False])
def test_version_needs_a_name(client: Client, made: Garment, live: bool) -> None:
    """The sentence stands beside the field."""
    turn(client, made, path="garment/length", written="70 cm")
    headers = LIVE if live else {}
    answer = client.post(f"/garments/{made.pk}/keep/", {"name": " "}, headers=headers)
    assert answer.status_code == 422
    assert "a name is needed" in answer.content.decode().lower()


def test_example_has_no_versions(client: Client, made: Garment) -> None:
    """Only what is one's own is kept."""
    assert client.post(f"/garments/{made.pk}/keep/", {"name": "x"}).status_code == 404


def test_page_of_the_impossible_marks_the_knob(client: Client, made: Garment) -> None:
    """Also when it is opened anew."""
    turn(client, made, path="section/1/least_gap", written="20")
    page = read(client, f"/garments/{made.pk}/shape/")
    assert 'aria-invalid="true"' in field(page, "k:section/1/points")


ODD = (
    "\0",
    "\n\n",
    '"""',
    "]]>",
    "<script>alert(1)</script>",
    "9" * 400,
    "-5 cm",
    "1e999",
    "∞",
    "x" * 30_000,
    "a\r\nb",
)


@pytest.mark.parametrize(
    "path", ["garment/length", "section/1/points", "edging/pattern", "title", "notes/0"]
)
def test_whatever_is_typed_is_answered(client: Client, made: Garment, path: str) -> None:
    """Kept or refused with a sentence; what was typed is never run, and nothing breaks."""
    for typed in ODD:
        made.refresh_from_db()
        base = own_design(made).revision if made.design.startswith("own:") else 0
        answer = turn(client, made, base=base, path=path, written=typed)
        assert answer.status_code in (200, 422)
        assert "<script>alert" not in answer.content.decode()
    assert read(client, f"/garments/{made.pk}/shape/")


@pytest.mark.parametrize(("room", "sign"), [("fit", ">Going on<"), ("materials", "Working time")])
def test_knobs_are_turned_where_their_effect_is_read(
    client: Client, made: Garment, room: str, sign: str
) -> None:
    """Ease beside the fit, length beside the yarn; the answer is of the room that is shown."""
    assert 'id="panel"' in read(client, f"/garments/{made.pk}/{room}/")
    sent = {"base": "0", "room": room, "path": "garment/length", "written": "70 cm"}
    answer = client.post(f"/garments/{made.pk}/turn/", sent, headers=LIVE)
    assert sign in answer.content.decode()
    assert "<svg" not in answer.content.decode()
    assert 'id="panel"' not in read(client, f"/garments/{made.pk}/pattern/")
