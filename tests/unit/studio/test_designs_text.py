"""The document editor: faults at their lines, nothing lost, undo and redo, two pages at once."""

from __future__ import annotations

import re

import pytest
from designs_made import FAULTY, IMPOSSIBLE, LEAST, LIVE, RING, now, own, read, save, shown
from django.test import Client

from frogless.draft import Texts, draft_texts
from frogless.studio.examples import examples
from frogless.studio.garments.create import make_garment
from frogless.studio.library import shelf

TWO_FAULTS = LEAST.replace('kind = "skirt"', 'kind = "tent"').replace(
    "turning_chain = 3", 'turning_chain = "three"'
)
AFTER = LEAST.count("\n") + 1
"""The number of a line that is written below the last one."""

HOSTILE = {
    "brackets": "[" * 50_000,
    "nested arrays": "a = " + "[" * 20_000 + "]" * 20_000,
    "nested tables": "a = " + "{a=" * 12_000,
    "a key of many parts": "a" + ".a" * 24_000 + " = 1",
    "a long number": LEAST.replace("turning_chain = 3", "turning_chain = " + "9" * 40_000),
    "a long skirt": LEAST.replace('"55 cm"', '"1000000000 cm"'),
    "many repeats": RING.replace("picots = 3", "picots = 1000000000"),
    "many points": LEAST.replace('to = "hip"', 'to = "hip"\npoints = [' + "1," * 12_000 + "1]"),
    "many sections": LEAST + '[[section]]\nname = "x"\n' * 1_800,
    "a deep formula": LEAST.replace('"55 cm"', '"' + "(" * 480 + '1 cm"'),
    "no text": "",
    "letters of every kind": "a = '\x01\x7f\ufffe\u2028'",
}


def test_page_shows_the_text_as_it_is(client: Client) -> None:
    """Comments and all; it does not check before it is asked, so that it opens at once."""
    document = own(RING)
    page = read(client, f"/designs/{document.pk}/text/")
    assert RING in page
    assert f'name="base" value="{document.revision}"' in page
    assert "Not checked yet." in page


def test_text_is_checked_as_it_is_written(client: Client) -> None:
    """Each fault with its line, its key and its sentence; nothing is saved."""
    document = own()
    answer = client.post(f"/designs/{document.pk}/check/", {"text": TWO_FAULTS})
    part = shown(answer)
    assert re.findall(r'data-line="(\d+)"', part) == ["7", "13"]
    assert "<code>garment.kind</code>" in part
    assert 'Must be "skirt"' in part
    assert "✗ 2 faults to mend." in part
    assert now(document).text == LEAST


def test_near_names_are_offered(client: Client) -> None:
    """As the library tells them."""
    part = shown(client.post(f"/designs/{own().pk}/check/", {"text": FAULTY}))
    assert 'Unknown key "eese"; did you mean "ease"?' in part


def test_impossible_text_has_its_ways_out(client: Client) -> None:
    """The text is sound, and asks for what cannot be."""
    part = shown(client.post(f"/designs/{own().pk}/check/", {"text": IMPOSSIBLE}))
    assert "It cannot be had as it is written." in part
    assert "What would make it possible" in part
    assert 'data-line="24"' in part


def test_sound_text_comes_to_proven_counts(client: Client) -> None:
    """The counts at the landmarks are those of the library."""
    part = shown(client.post(f"/designs/{own().pk}/check/", {"text": RING}))
    body, swatch = examples("body")["dancer-3"].text, examples("swatch")["light-cotton"].text
    drafted = draft_texts(Texts(RING, body, (swatch,))).drafted
    for mark in drafted.plan.landmarks:
        assert f'<td class="figures">{mark.count}</td>' in part
    assert "Drafted and proven: " in part
    assert 'src="data:image/svg+xml;base64,' in part


def test_garment_of_pieces_comes_to_counts_of_its_pieces(client: Client) -> None:
    """First and last row of each."""
    text = examples("design")["fiddler-cardigan"].text
    part = shown(client.post(f"/designs/{own().pk}/check/", {"text": text}))
    assert "Counts of the pieces" in part
    assert "Sleeve, 2 of it" in part


def test_body_and_swatch_can_be_chosen(client: Client) -> None:
    """What is not there is passed over."""
    document = own()
    sent = {"text": LEAST, "body": "example:dancer-1", "swatch": "example:fine-wool"}
    one = shown(client.post(f"/designs/{document.pk}/check/", sent))
    other = shown(client.post(f"/designs/{document.pk}/check/", {"text": LEAST, "body": "own:77"}))
    assert "Drafted and proven" in one
    assert "Drafted and proven" in other
    assert one != other


def test_text_is_checked_for_the_last_garment(client: Client) -> None:
    """Unless another body and swatch are chosen."""
    make_garment("", "example:ring-dance-skirt", "example:dancer-5", ["example:fine-wool"])
    page = read(client, f"/designs/{own().pk}/text/")
    assert '<option value="example:dancer-5" selected>' in page
    assert '<option value="example:fine-wool" selected>' in page


def test_fault_of_a_body_is_told_as_the_body_s(client: Client) -> None:
    """Not as one of a line of the design."""
    short = 'format = "frogless-body/1"\nname = "Anna"\n[measurements]\nhead_girth = "55 cm"\n'
    ref = shelf.create("body", short).ref
    part = shown(client.post(f"/designs/{own().pk}/check/", {"text": LEAST, "body": ref}))
    assert "<strong>The body</strong>" in part
    assert "data-line" not in part


@pytest.mark.parametrize("text", [FAULTY, "no TOML [", "", IMPOSSIBLE, RING])
def test_saving_keeps_any_text(client: Client, text: str) -> None:
    """Faulty ones too: nothing that was written is lost."""
    document = own()
    answer = save(client, document, text)
    assert answer.status_code == 302
    assert now(document).text == text


def test_saving_says_that_there_are_faults(client: Client) -> None:
    """On the page that follows, and at once where scripts run."""
    document = own()
    answer = save(client, document, TWO_FAULTS)
    assert "Saved, with 2 faults" in read(client, answer["Location"])
    document = now(document)
    sent = {"base": str(document.revision), "text": FAULTY, "do": "save"}
    part = shown(client.post(f"/designs/{document.pk}/text/", sent, headers=LIVE))
    assert "Saved, with a fault" in part
    assert f'name="base" value="{now(document).revision}" id="base" hx-swap-oob="true"' in part


def test_lines_end_as_in_a_file(client: Client) -> None:
    """Browsers send two letters for each."""
    document = own()
    save(client, document, LEAST.replace("\n", "\r\n") + "# more\r\n")
    assert now(document).text == LEAST + "# more\n"


def test_name_follows_the_title(client: Client) -> None:
    """The text is the truth."""
    document = own()
    save(client, document, LEAST.replace("My skirt", "Her skirt"))
    assert now(document).name == "Her skirt"


def test_text_that_is_too_long_is_refused_and_still_there(client: Client) -> None:
    """With how long it is and may be."""
    document = own()
    long = "# " + "x" * 50_001
    answer = save(client, document, long)
    assert answer.status_code == 422
    page = shown(answer)
    assert "50,003 letters; 50,000 are accepted" in page
    assert long in page
    assert now(document).text == LEAST
    part = client.post(f"/designs/{document.pk}/check/", {"text": long})
    assert part.status_code == 422


def test_check_without_scripts_keeps_what_was_typed(client: Client) -> None:
    """The whole page, with the text as it was sent."""
    document = own()
    page = shown(save(client, document, FAULTY, do="check"))
    assert FAULTY in page
    assert "✗ 1 fault to mend." in page
    assert now(document).text == LEAST


@pytest.mark.parametrize("live", [False, True])
def test_two_pages_lose_nothing(client: Client, live: bool) -> None:
    """The second is told; both texts are there."""
    document = own()
    save(client, document, LEAST + "# one\n")
    sent = {"base": str(document.revision), "text": LEAST + "# two\n", "do": "save"}
    answer = client.post(f"/designs/{document.pk}/text/", sent, headers=LIVE if live else {})
    assert answer.status_code == 409
    assert "# one" in shown(answer)
    assert "# two" in shown(answer)
    assert now(document).text == LEAST + "# one\n"


def test_undo_and_redo_walk_and_say_what_they_do(client: Client) -> None:
    """Any number of steps, each named by its lines."""
    document = own()
    texts = [LEAST, LEAST + "# one\n", LEAST + "# one\n# two\n"]
    for text in texts[1:]:
        save(client, now(document), text)
    page = read(client, f"/designs/{document.pk}/text/")
    assert f'Undo<span class="what">: line {AFTER + 1} changed' in page
    for text in (texts[1], texts[0]):
        sent = {"base": str(now(document).revision)}
        client.post(f"/designs/{document.pk}/undo/", sent)
        assert now(document).text == text
    assert f'Redo<span class="what">: line {AFTER} changed' in read(
        client, f"/designs/{document.pk}/text/"
    )
    sent = {"base": str(now(document).revision), "to": "3"}
    client.post(f"/designs/{document.pk}/redo/", sent)
    assert now(document).text == texts[2]


def test_undo_is_refused_while_something_is_not_saved(client: Client) -> None:
    """What was typed is still there."""
    document = own()
    save(client, document, LEAST + "# one\n")
    sent = {"base": str(now(document).revision), "text": LEAST + "# one\n# typed\n"}
    answer = client.post(f"/designs/{document.pk}/undo/", sent)
    assert answer.status_code == 422
    assert "# typed" in shown(answer)
    assert "not saved" in shown(answer)
    assert now(document).text == LEAST + "# one\n"


def test_undo_from_an_old_page_is_told(client: Client) -> None:
    """Nothing is taken back that the page did not know of."""
    document = own()
    save(client, document, LEAST + "# one\n")
    answer = client.post(f"/designs/{document.pk}/undo/", {"base": str(document.revision)})
    assert answer.status_code == 409


@pytest.mark.parametrize("target", ["https://elsewhere.example/", "//elsewhere.example/", "x"])
def test_undo_goes_on_within_the_studio_only(client: Client, target: str) -> None:
    """Whatever a form asks for."""
    document = own()
    save(client, document, LEAST + "# one\n")
    sent = {"base": str(now(document).revision), "next": target}
    answer = client.post(f"/designs/{document.pk}/undo/", sent)
    assert answer["Location"] == f"/designs/{document.pk}/text/?done=undo"


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_hostile_text_gets_a_sentence(client: Client, text: str) -> None:
    """It can be saved, is answered with faults, and the gallery stands."""
    document = own()
    assert save(client, document, text).status_code == 302
    part = shown(client.post(f"/designs/{document.pk}/check/", {"text": text}))
    assert '<ol class="faults">' in part
    read(client, "/designs/")
    read(client, f"/designs/about/{document.ref}/")
    picture = client.get(f"/designs/pictures/{document.ref}.svg")
    assert b"<title>Not drawn</title>" in picture.content


@pytest.mark.parametrize("address", ["text/", "versions/"])
def test_pages_of_an_own_design_are_for_its_owner(
    client: Client, stranger: Client, address: str
) -> None:
    """A stranger stands before the door; what is not there is not found."""
    document = own()
    read(client, f"/designs/{document.pk}/{address}")
    read(client, f"/designs/999/{address}", 404)
    read(client, f"/designs/{10**30}/{address}", 404)
    client.cookies.clear()
    read(stranger, f"/designs/{document.pk}/{address}", 401)


@pytest.mark.parametrize("address", ["check/", "undo/", "redo/", "rename/", "versions/keep/"])
def test_what_changes_needs_a_post(client: Client, address: str) -> None:
    """An address alone changes nothing."""
    read(client, f"/designs/{own().pk}/{address}", 405)


@pytest.mark.parametrize("headers", [{}, LIVE])
def test_text_for_a_design_that_is_gone_is_not_lost(
    client: Client, headers: dict[str, str]
) -> None:
    """It was put into the bin in another tab; what was written can become a new one."""
    document = own()
    shelf.remove(document)
    sent = {"base": "1", "text": LEAST + "# typed\n", "do": "save"}
    answer = client.post(f"/designs/{document.pk}/text/", sent, headers=headers)
    assert answer.status_code == 409
    assert "# typed" in shown(answer)
    assert "is not there any more" in shown(answer)
    assert '<form method="post" action="/designs/new/">' in shown(answer)
    read(client, f"/designs/{document.pk}/text/", 404)
