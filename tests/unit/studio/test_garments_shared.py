"""A design that several garments share, one that is gone, and what is said after undo and redo."""

from __future__ import annotations

import re
from html import unescape

import pytest
from django.test import Client
from garments_made import garment, on_shelf, own_design, read, turn

from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment

RING = examples("design")["ring-dance-skirt"].text


@pytest.fixture
def pair() -> tuple[Garment, Garment]:
    """Two garments of one design, the second with a name that no other has."""
    ref = on_shelf("design", RING)
    first, second = garment(ref), garment(ref)
    Garment.objects.filter(pk=second.pk).update(name="Skirt for the fair")
    return first, second


def test_shared_design_is_said_before_and_after(
    client: Client, pair: tuple[Garment, Garment]
) -> None:
    """Which garment else changes stands in the panel, and in the answer to a change."""
    page = read(client, f"/garments/{pair[0].pk}/shape/")
    assert "A change here also changes" in page
    assert "Skirt for the fair" in page
    part = turn(client, pair[0], base=1, path="garment/length", written="70 cm").content.decode()
    assert "This also changed" in part
    assert "Skirt for the fair" in part
    assert "Make a copy for this garment only" in part


def test_garment_alone_says_nothing_of_sharing(client: Client) -> None:
    """Nor does one whose companion lies in the bin."""
    ref = on_shelf("design", RING)
    made, other = garment(ref), garment(ref)
    Garment.objects.filter(pk=other.pk).update(removed=True)
    assert "also changes" not in read(client, f"/garments/{made.pk}/shape/")
    assert "also changes" not in read(client, f"/garments/{garment().pk}/shape/")


def test_copy_before_a_change(client: Client, pair: tuple[Garment, Garment]) -> None:
    """From then on each has its own."""
    answer = client.post(f"/garments/{pair[0].pk}/own/", {"base": "1", "room": "fit"})
    assert answer["Location"] == f"/garments/{pair[0].pk}/fit/?done=copied#panel"
    assert "a design of its own" in read(client, answer["Location"])
    assert own_design(pair[0]).pk != own_design(pair[1]).pk
    turn(client, pair[0], base=1, path="garment/length", written="70 cm")
    assert own_design(pair[1]).text == RING


def test_copy_after_a_change_takes_it_along(client: Client, pair: tuple[Garment, Garment]) -> None:
    """The other garment is as it was, and the copy can be undone to what both were."""
    turn(client, pair[0], base=1, path="garment/length", written="70 cm")
    shared = own_design(pair[1])
    sent = {"base": str(shared.revision), "room": "shape", "back": "1"}
    answer = client.post(f"/garments/{pair[0].pk}/own/", sent)
    assert "took the last change with it" in read(client, answer["Location"])
    copy = own_design(pair[0])
    assert 'length = "70 cm"' in copy.text
    assert own_design(pair[1]).text == RING
    assert shelf.undo(copy.pk, copy.revision).text == RING


def test_copy_after_another_page_changed_it_leaves_the_other(
    client: Client, pair: tuple[Garment, Garment]
) -> None:
    """Nobody's change is taken back unseen."""
    turn(client, pair[0], base=1, path="garment/length", written="70 cm")
    client.post(f"/garments/{pair[0].pk}/own/", {"base": "1", "room": "shape", "back": "1"})
    assert 'length = "70 cm"' in own_design(pair[1]).text


def test_example_needs_no_copy(client: Client) -> None:
    """It is nobody's to change."""
    made = garment()
    client.post(f"/garments/{made.pk}/own/", {"base": "0"})
    assert Document.objects.count() == 0


def test_undo_and_redo_say_what_they_did(client: Client) -> None:
    """The step that was undone, and what the garment became by it."""
    made = garment()
    turn(client, made, path="garment/length", written="70 cm")
    document = own_design(made)
    sent = {"base": str(document.revision), "next": f"/garments/{made.pk}/shape/?done=undo"}
    page = read(client, client.post(f"/designs/{document.pk}/undo/", sent)["Location"])
    line = page.partition('id="turned"')[2].partition("</p>")[0]
    assert "Undone: " in line
    assert "→ 70 cm. Now length: " in line
    document.refresh_from_db()
    shelf.redo(document.pk, document.revision)
    page = read(client, f"/garments/{made.pk}/shape/?done=redo")
    assert "Redone: " in page.partition('id="turned"')[2].partition("</p>")[0]


def test_buttons_of_history_ask_for_that(client: Client) -> None:
    """Both come back to a page that says it."""
    made = garment()
    turn(client, made, path="garment/length", written="70 cm")
    page = read(client, f"/garments/{made.pk}/shape/")
    assert f'value="/garments/{made.pk}/shape/?done=undo"' in page
    assert f'value="/garments/{made.pk}/shape/?done=redo"' in page


def test_change_without_scripts_says_what_it_did(client: Client) -> None:
    """The page that is asked for again tells it, and a reload sends nothing."""
    made = garment()
    first = turn(client, made, live=False, path="garment/length", written="70 cm")
    assert first.status_code == 302
    page = read(client, first["Location"])
    assert "→ 70 cm: length: " in page
    assert "a design of its own" in page
    base = own_design(made).revision
    second = turn(client, made, base=base, live=False, path="garment/length", written="80 cm")
    line = read(client, second["Location"]).partition('id="turned"')[2].partition("</p>")[0]
    assert re.search("→ 80 cm: .*yarn: about", line)


@pytest.mark.parametrize("kind", ["design", "body", "swatch"])
def test_what_is_gone_can_be_chosen_anew(client: Client, kind: str) -> None:
    """The list of what there is stands open, files are not offered, and a choice mends it."""
    made = garment()
    gone: dict[str, object] = {kind if kind != "swatch" else "swatches": "own:999"}
    if kind == "swatch":
        gone = {"swatches": ["own:999"]}
    Garment.objects.filter(pk=made.pk).update(**gone)
    page = read(client, f"/garments/{made.pk}/shape/")
    assert f"Choose a {kind}" in page
    assert f"Choose another {kind} above" in page
    assert 'id="choices" open' in page
    assert "/files/pattern.pdf" not in page
    ref = {"design": "example:ring-dance-skirt", "body": "example:dancer-3"}
    sent = {kind: ref.get(kind, "example:light-cotton"), "room": "shape"}
    mended = read(client, client.post(f"/garments/{made.pk}/choose/", sent)["Location"])
    assert "<svg" in mended
    assert "/files/pattern.pdf" in unescape(mended)


def test_design_is_not_offered_while_it_is_there(client: Client) -> None:
    """A garment is of its design."""
    assert 'id="choose-design"' not in read(client, f"/garments/{garment().pk}/shape/")
