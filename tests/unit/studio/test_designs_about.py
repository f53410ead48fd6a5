"""The page about a design, and copying it."""

from __future__ import annotations

import pytest
from designs_made import FAULTY, RING, own, read
from django.test import Client

from frogless.studio.examples import examples
from frogless.studio.library import shelf
from frogless.studio.library.models import Document
from frogless.studio.library.preferences import prefer

RING_PAGE = "/designs/about/example:ring-dance-skirt/"


def test_page_tells_all_that_matters_before_making(client: Client) -> None:
    """Summary, notes, what is special, what is measured and counted, and the ways on."""
    page = read(client, RING_PAGE)
    assert "<h1>Ring dance skirt</h1>" in page
    assert "A knee-length skirt worked from the waist down" in page
    assert "Try the skirt on at the end of each section" in page
    assert "Elastic laid along the edge" in page
    assert "<strong>Waist girth</strong>" in page
    assert 'src="/people/measuring/waist_girth.svg"' in page
    assert "Double crochet" in page
    assert 'href="/start/example:ring-dance-skirt/"' in page
    assert 'href="/look/ring-dance-skirt/shape/"' in page


def test_page_speaks_the_person_s_terms(client: Client) -> None:
    """Double crochet is treble crochet in UK terms."""
    prefer(terms="uk")
    assert "<li>Treble crochet</li>" in read(client, RING_PAGE)


def test_own_bodies_and_swatches_are_tried(client: Client) -> None:
    """Those that do and those that do not, with the reason."""
    shelf.create("body", examples("body")["dancer-1"].text)
    short = 'format = "frogless-body/1"\nname = "Anna"\n[measurements]\nhead_girth = "55 cm"\n'
    shelf.create("body", short)
    shelf.create("swatch", examples("swatch")["light-cotton"].text)
    for address in (f"{RING_PAGE}suits/", f"{RING_PAGE}?tried=1"):
        page = read(client, address)
        assert "Dancer 1</a> will do" in page
        assert "Anna</a> will not: Waist girth is needed and cannot be estimated" in page
        assert "light cotton, washed</a> will do" in page


def test_nothing_of_ones_own_leads_on(client: Client) -> None:
    """To measuring and to a swatch."""
    page = read(client, f"{RING_PAGE}suits/")
    assert 'href="/people/new/"' in page
    assert 'href="/swatches/new/"' in page


@pytest.mark.parametrize(
    ("then", "target"), [("text", "/designs/{pk}/text/"), ("garment", "/start/own:{pk}/")]
)
def test_copy_is_ones_own(client: Client, then: str, target: str) -> None:
    """The example stays; the copy opens as text, or is made."""
    answer = client.post("/designs/copy/example:ring-dance-skirt/", {"then": then})
    document = Document.objects.get(kind="design")
    assert document.text == RING
    assert answer["Location"] == target.format(pk=document.pk)


def test_copying_needs_a_post(client: Client) -> None:
    """An address alone changes nothing."""
    read(client, "/designs/copy/example:ring-dance-skirt/", 405)


def test_own_faulty_design_offers_its_text_and_no_making(client: Client) -> None:
    """With its fault told."""
    document = own(FAULTY)
    page = read(client, f"/designs/about/{document.ref}/")
    assert "line 23, section[1].eese: unknown key" in page
    assert f'href="/designs/{document.pk}/text/"' in page
    assert f'href="/start/{document.ref}/"' not in page


def test_own_design_is_renamed_where_its_title_stands(client: Client) -> None:
    """Comments and all else stay as they were; the name follows."""
    document = own(RING)
    sent = {"base": document.revision, "title": 'The "round" skirt'}
    client.post(f"/designs/{document.pk}/rename/", sent)
    document.refresh_from_db()
    assert document.name == 'The "round" skirt'
    assert document.text == RING.replace('"Ring dance skirt"', '"The \\"round\\" skirt"', 1)


def test_faulty_text_without_title_is_renamed_all_the_same(client: Client) -> None:
    """Then only the document has the name."""
    document = own("no TOML at all", "Draft")
    client.post(f"/designs/{document.pk}/rename/", {"base": "1", "title": "Another"})
    document.refresh_from_db()
    assert (document.name, document.text) == ("Another", "no TOML at all")


def test_empty_title_is_refused(client: Client) -> None:
    """With a sentence."""
    document = own()
    answer = client.post(f"/designs/{document.pk}/rename/", {"base": "1", "title": " "})
    assert answer.status_code == 422
    assert "A name is needed" in answer.content.decode()


def test_rename_from_an_old_page_loses_nothing(client: Client) -> None:
    """Both texts are shown."""
    document = own()
    shelf.change(document.pk, document.revision, document.text + "# more\n")
    answer = client.post(f"/designs/{document.pk}/rename/", {"base": "1", "title": "New"})
    assert answer.status_code == 409
