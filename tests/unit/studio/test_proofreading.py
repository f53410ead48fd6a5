"""The room of proofreading: a pattern comes in, is read, mended in place, kept and forgotten."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterator
from html import unescape

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection
from django.http import HttpResponse
from django.test import Client
from proofread_made import report

from frogless.errors import InputError
from frogless.proofread.checks.model import Check
from frogless.proofread.checks.table import BY_NAME
from frogless.proofread.findings import Report
from frogless.proofread.sources.source import Source
from frogless.studio.library import shelf
from frogless.studio.library.bundle import Bundle, KeptDocument, pack
from frogless.studio.library.models import Document, Step
from frogless.studio.library.unbundle import unpack
from frogless.studio.proofreading import checking, example, reading
from frogless.studio.proofreading.models import Asked
from frogless.studio.proofreading.texts import title_of
from frogless.studio.work.pool import Busy, TooMuchWork

LIVE = {"HX-Request": "true"}
TEXT = "Bell Skirt\n\nRnd 1: 6 sc in ring. (6 sts)\nRnd 2: 2 sc in each st. (13 sts)\n"


@pytest.fixture(autouse=True)
def reads(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A reader for which round 2 makes 12, whatever stands in it."""

    def read(text: str, terms: str | None = None) -> Report:
        if not text.strip():
            raise InputError("there is no text in it; a written pattern is needed")
        return report(text, {2: (12,)})

    reading.read.cache_clear()
    monkeypatch.setattr("frogless.proofread.run.proofread", read)
    monkeypatch.setitem(
        BY_NAME, "row-count", Check("row-count", "states another count", "", lambda _: ())
    )
    yield
    reading.read.cache_clear()


def kept(text: str = TEXT, name: str = "Bell Skirt") -> Document:
    """A pattern of the person's own."""
    return shelf.create("pattern", text, name)


def shown(answer: HttpResponse) -> str:
    """What an answer shows, its entities resolved."""
    return unescape(answer.content.decode())


def sent(document: Document, text: str, **more: object) -> dict[str, object]:
    """What the form of the editor sends."""
    base = Document.objects.get(pk=document.pk).revision
    return {"base": base, "text": text, "terms": "auto", **more}


def test_empty_room_offers_an_example(client: Client) -> None:
    """With one button it is there to be tried, under a name that says what it is."""
    assert "Try it on an example" in shown(client.get("/proofread/"))
    answer = client.post("/proofread/new/", {"from": "example"}, follow=True)
    assert "Three errors are in this pattern" in shown(answer)
    assert shelf.documents("pattern").get().text == example.TEXT


def test_pasted_text_is_kept_under_its_first_line(client: Client) -> None:
    """And opens with what was found beside it."""
    answer = client.post("/proofread/new/", {"text": f"\n# {TEXT}", "from": "text"}, follow=True)
    assert shelf.documents("pattern").get().name == "Bell Skirt"
    page = shown(answer)
    assert "1 finding." in page
    assert "Line 5, Rnd 2" in page
    assert "Put 12 here" in page


@pytest.mark.parametrize("text", ["", "   \n\t\n", "\0"])
def test_nothing_is_refused_with_a_sentence(client: Client, text: str) -> None:
    """And nothing is kept."""
    answer = client.post("/proofread/new/", {"text": text})
    assert answer.status_code == 422
    assert "Paste a pattern, or choose a file." in shown(answer)
    assert not shelf.documents("pattern").exists()


def test_file_is_opened_and_what_is_to_know_of_it_is_said_once(
    client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Its name is the pattern's; the remark stands on the page that comes next, no later."""

    def opened(data: bytes, name: str) -> Source:
        return Source(data.decode(), "pdf", ("The running head is left out.",))

    monkeypatch.setattr("frogless.proofread.sources.read.text_of", opened)
    file = SimpleUploadedFile("Bell of the band.pdf", TEXT.encode())
    answer = client.post("/proofread/new/", {"file": file}, follow=True)
    assert shelf.documents("pattern").get().name == "Bell of the band"
    assert "The running head is left out." in shown(answer)
    again = client.get(answer.request["PATH_INFO"] + "?" + answer.request["QUERY_STRING"])
    assert "The running head is left out." not in shown(again)


def test_file_that_cannot_be_read_is_refused_and_what_was_pasted_stays(client: Client) -> None:
    """422, with a sentence."""
    file = SimpleUploadedFile("a.docx", b"PK\x03\x04rubbish")
    answer = client.post("/proofread/new/", {"file": file, "text": "Rnd 1: 6 sc."})
    assert answer.status_code == 422
    assert "Rnd 1: 6 sc." in shown(answer)
    assert not shelf.documents("pattern").exists()


def test_large_file_is_let_in_here_alone(client: Client) -> None:
    """A booklet with pictures is larger than any form; elsewhere it is refused."""
    booklet = {"file": SimpleUploadedFile("a.pdf", b"%PDF" + bytes(2_000_000))}
    assert client.post("/proofread/new/", booklet).status_code == 422
    booklet = {"file": SimpleUploadedFile("a.pdf", b"%PDF" + bytes(2_000_000))}
    assert client.post("/proofread/", booklet).status_code == 413


def test_too_long_a_text_is_refused_and_given_back(client: Client) -> None:
    """With both lengths, when it comes in and when it is saved."""
    long = "x" * 150_001
    page = shown(client.post("/proofread/new/", {"text": long}))
    assert "150,001 letters; 150,000 are accepted" in page
    document = kept()
    answer = client.post(f"/proofread/{document.pk}/", sent(document, long, do="save"))
    assert answer.status_code == 422
    assert long in shown(answer)
    assert Document.objects.get(pk=document.pk).text == TEXT


def test_check_tells_without_keeping(client: Client) -> None:
    """The text on the page is the one that was sent; the library has the old one."""
    document = kept()
    more = TEXT + "Rnd 3: sc around. (12 sts)\n"
    answer = client.post(f"/proofread/{document.pk}/", sent(document, more, do="check"))
    assert "Rnd 3" in shown(answer)
    assert Document.objects.get(pk=document.pk).text == TEXT
    live = client.post(f"/proofread/{document.pk}/check/", sent(document, more), headers=LIVE)
    assert "<html" not in shown(live)
    assert "1 finding." in shown(live)


def test_save_keeps_and_undo_takes_back(client: Client) -> None:
    """Each save is a step that says what it did."""
    document = kept()
    here = f"/proofread/{document.pk}/"
    mended = TEXT.replace("13", "12")
    page = shown(client.post(here, sent(document, mended, do="save"), follow=True))
    assert "Nothing found. Every row that was read adds up." in page
    assert 'Undo<span class="what">: line 4 changed' in page
    client.post(f"{here}undo/", sent(document, mended))
    assert Document.objects.get(pk=document.pk).text == TEXT
    client.post(f"{here}redo/", sent(document, TEXT))
    assert Document.objects.get(pk=document.pk).text == mended


def test_what_is_offered_is_put_in_place_as_a_step(client: Client) -> None:
    """Without scripts too; undo takes it back."""
    document = kept()
    here = f"/proofread/{document.pk}/"
    page = shown(client.post(here, sent(document, TEXT, put="1"), follow=True))
    assert "Put in place and saved" in page
    document.refresh_from_db()
    assert document.text == TEXT.replace("13", "12")
    assert shelf.can_undo(document) == "12 put on line 4"
    answer = client.post(here, sent(document, document.text, put="1"))
    assert answer.status_code == 422
    assert "not offered any more" in shown(answer)


def test_kind_that_is_left_out_stays_left_out(client: Client) -> None:
    """Kept for this text and counted; unticked, it is back."""
    document = kept()
    here = f"/proofread/{document.pk}/"
    page = shown(client.post(here, sent(document, TEXT, leave="row-count")))
    assert "Nothing found; 1 left out." in page
    assert "Nothing found; 1 left out." in shown(client.get(here))
    page = shown(client.post(f"{here}check/", sent(document, TEXT)))
    assert "1 finding." in page
    other = kept(name="Another")
    assert "1 finding." in shown(client.get(f"/proofread/{other.pk}/"))


def test_choice_of_nonsense_is_no_choice(client: Client) -> None:
    """Unknown terms are guessed, unknown kinds are not kept."""
    document = kept()
    more = {"terms": "klingon", "silenced": ["nix", "row-count"], "size": "XXL" * 99}
    answer = client.post(f"/proofread/{document.pk}/check/", sent(document, TEXT) | more)
    assert answer.status_code == 200
    asked = Asked.objects.get()
    assert (asked.terms, asked.silenced, len(asked.size)) == ("auto", ["row-count"], 60)


@pytest.mark.parametrize(
    ("error", "sentence"),
    [
        (TooMuchWork(20), "took longer than 20 seconds"),
        (RuntimeError("KeyError: 7"), "something went wrong inside Frogless"),
        (InputError("the worker ended"), "The worker ended."),
    ],
)
def test_slow_or_failed_check_loses_nothing(
    client: Client, monkeypatch: pytest.MonkeyPatch, error: Exception, sentence: str
) -> None:
    """The page stands, with the text as it was written, and it can be saved."""

    def fail(*_: object) -> None:
        raise error

    document = kept()
    monkeypatch.setattr(checking, "look", fail)
    answer = client.post(f"/proofread/{document.pk}/", sent(document, "Rnd 1: mine", do="check"))
    assert answer.status_code == 200
    page = shown(answer)
    assert sentence in page
    assert "What you wrote is still here" in page
    assert "Rnd 1: mine" in page
    client.post(f"/proofread/{document.pk}/", sent(document, "Rnd 1: mine", do="save"))
    assert Document.objects.get(pk=document.pk).text == "Rnd 1: mine"


def test_busy_studio_is_asked_again_by_itself(
    client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The page says so, and its part asks again with what is in the form by then."""

    def busy(*_: object) -> None:
        raise Busy

    monkeypatch.setattr(checking, "look", busy)
    page = shown(client.get(f"/proofread/{kept().pk}/"))
    assert "as soon as there is time" in page
    assert 'hx-trigger="load delay:2s"' in page


def test_what_is_left_out_survives_a_failed_check(
    client: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The form sends it again though no kind is listed."""
    document = kept("", "Empty")
    client.post(f"/proofread/{document.pk}/check/", sent(document, TEXT, silenced="row-count"))
    page = shown(
        client.post(f"/proofread/{document.pk}/check/", sent(document, "", silenced="row-count"))
    )
    assert '<input type="hidden" name="silenced" value="row-count" form="editor">' in page


def test_two_pages_lose_nothing(client: Client) -> None:
    """The second to save sees both texts."""
    document = kept()
    old = sent(document, TEXT + "mine", do="save")
    client.post(f"/proofread/{document.pk}/", sent(document, TEXT + "theirs", do="save"))
    answer = client.post(f"/proofread/{document.pk}/", old)
    assert answer.status_code == 409
    assert "mine" in shown(answer)
    assert "theirs" in shown(answer)


def test_what_was_written_on_a_deleted_text_can_be_kept(client: Client) -> None:
    """Saving offers it as a new one, and the check says so while one writes."""
    document = kept()
    here = f"/proofread/{document.pk}/"
    shelf.delete_for_good(document)
    form = {"base": 1, "text": "Rnd 1: mine", "do": "save"}
    answer = client.post(here, form)
    assert answer.status_code == 409
    assert 'action="/proofread/new/"' in shown(answer)
    live = client.post(f"{here}check/", form, headers=LIVE)
    assert "deleted on another page" in shown(live)
    client.post("/proofread/new/", {"text": "Rnd 1: mine", "from": "text"})
    assert shelf.documents("pattern").get().text == "Rnd 1: mine"


def test_text_is_saved_as_a_file_and_renamed(client: Client) -> None:
    """A plain text file under its name; two of one name are refused."""
    document = kept()
    kept(name="Other")
    here = f"/proofread/{document.pk}/"
    answer = client.post(f"{here}rename/", {"name": "Other"})
    assert answer.status_code == 422
    client.post(f"{here}rename/", {"name": "Bell of May"})
    for address in (f"{here}text.txt", f"/library/own:{document.pk}.toml"):
        answer = client.get(address)
        assert answer.content.decode() == TEXT
        assert answer["Content-Type"].startswith("text/plain")
        assert 'filename="bell-of-may.txt"' in answer["Content-Disposition"]


def test_versions_are_kept_compared_and_brought_back(client: Client) -> None:
    """And deleted."""
    document = kept()
    here = f"/proofread/{document.pk}/versions/"
    client.post(f"{here}keep/", {"name": "first"})
    client.post(f"/proofread/{document.pk}/", sent(document, TEXT + "more\n", do="save"))
    version = document.versions.get()
    assert "1 line added, 0 removed" in shown(client.get(f"{here}?with={version.pk}"))
    base = Document.objects.get(pk=document.pk).revision
    client.post(f"{here}{version.pk}/back/", {"base": base})
    assert Document.objects.get(pk=document.pk).text == TEXT
    client.post(f"{here}{version.pk}/delete/")
    assert not document.versions.exists()
    assert client.get(f"{here}?with=nix").status_code == 404
    assert client.post(f"{here}keep/", {"name": ""}).status_code == 422


def test_deleted_for_good_is_gone_from_the_library(client: Client) -> None:
    """The text, its steps, its choices: no file of the library has them any more."""
    words = "Hortensia-of-the-bandstand"
    document = kept(f"{words}\nRnd 2: 6 sc. (6 sts)\n", "S")
    client.post(f"/proofread/{document.pk}/", sent(document, f"{words}!\n", leave="row-count"))
    client.post(f"/proofread/{document.pk}/", sent(document, f"{words}!!\n", do="save"))
    client.post(f"/library/{document.pk}/delete/")
    assert "Pattern" in shown(client.get("/library/"))
    client.post(f"/library/{document.pk}/delete-for-good/")
    assert not Document.objects.exists()
    assert not Step.objects.exists()
    assert not Asked.objects.exists()
    file = connection.settings_dict["NAME"]
    for name in (file, f"{file}-wal"):
        with open(name, "rb") as opened:  # noqa: PTH123 - as Django names it
            assert words.encode() not in opened.read()


def test_strangers_keys_are_not_found(client: Client) -> None:
    """Nor is a body taken for a pattern."""
    body = shelf.create("body", 'name = "Ada"\n')
    for key in (body.pk, 999, 10**30):
        assert client.get(f"/proofread/{key}/").status_code == 404


def test_text_and_words_are_never_markup(client: Client) -> None:
    """Whatever is written stays text, in the list, in the marks and in the table."""
    document = kept("<script>x</script>\nRnd 2: <b>6 sc</b>. (7 sts)\n", "<i>N</i>")
    page = client.get(f"/proofread/{document.pk}/").content.decode()
    assert "<script>x" not in page
    assert "<b>6" not in page
    assert "<i>N" not in page
    assert not re.search(r"<script>|\son\w+=|style=", page)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("\n  **Bell Skirt**\n", "Bell Skirt"),
        ("---\n===\n", "Pattern"),
        ("a\x07b", "a b"),
        ("x" * 99, "x" * 80),
    ],
)
def test_text_is_called_by_its_first_words(text: str, name: str) -> None:
    """Marks of Markdown and what nobody sees left out; not too long."""
    assert title_of(text) == name


def test_library_takes_a_pattern_out_and_in(client: Client) -> None:
    """As plain text with its versions; whatever stands in it, no parser of ours is asked."""
    long_key = "[" + "a." * 40 + "a]\n" + TEXT
    document = kept(long_key)
    shelf.name_version(document, "first")
    data = client.get("/library/library.zip").content
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        assert archive.read("patterns/bell-skirt.txt").decode() == long_key
        assert "versions/patterns/bell-skirt/001-first.txt" in archive.namelist()
    shelf.delete_for_good(document)
    page = client.post("/library/import/", {"file": SimpleUploadedFile("l.zip", data)})
    assert "<td>Pattern</td><td>New" in shown(page)
    token = re.search(r'name="token" value="([^"]+)"', shown(page))
    assert token
    client.post("/library/import/", {"token": token[1]})
    back = shelf.documents("pattern").get()
    assert (back.name, back.text) == ("Bell Skirt", long_key)
    assert back.versions.get().text == long_key


def test_too_long_a_pattern_does_not_come_in() -> None:
    """A zip is held to the same length as the page."""
    bundle = Bundle((KeptDocument("own:1", "pattern", "Long", "x" * 150_001),))
    with pytest.raises(InputError, match=r"150,001 letters; 150,000 are accepted"):
        unpack(pack(bundle, "1", "2026-05-04T03:02:01+00:00"))


def test_second_of_two_pages_keeps_hers_as_a_copy(client: Client) -> None:
    """Or puts it in place of the other, which undo brings back."""
    document = kept()
    form = {"key": document.pk, "kind": "pattern", "base": 1, "text": "mine", "do": "copy"}
    answer = client.post("/settle/", form)
    assert answer["Location"].startswith("/proofread/")
    assert {one.text for one in shelf.documents("pattern")} == {TEXT, "mine"}
    client.post("/settle/", form | {"do": "replace"})
    assert Document.objects.get(pk=document.pk).text == "mine"
