"""Who is let in, and what is refused at the door."""

from __future__ import annotations

import pytest
from django.test import Client

from frogless.studio import entrance
from frogless.studio.guard import POLICY

ROOMS = (
    "/",
    "/garments/",
    "/designs/",
    "/people/",
    "/swatches/",
    "/proofread/",
    "/library/",
    "/jobs/",
)


@pytest.mark.parametrize("room", ROOMS)
def test_rooms_are_closed_to_strangers(stranger: Client, client: Client, room: str) -> None:
    """The owner gets in; another browser on the same computer sees the door."""
    assert client.get(room).status_code == 200
    other = Client(headers={"host": "localhost"})
    answer = other.get(room)
    assert answer.status_code == 401
    assert b"terminal" in answer.content
    assert b"Rooms" not in answer.content


def test_link_is_good_once(stranger: Client) -> None:
    """A link that somebody else finds in a history opens nothing."""
    link = entrance.link()
    assert stranger.get(link).status_code == 302
    assert Client(headers={"host": "localhost"}).get(link).status_code == 401


def test_link_grows_old(monkeypatch: pytest.MonkeyPatch) -> None:
    """One that nobody used is worth nothing after a while."""
    keys = entrance.Keys()
    token = keys.hand_out()
    monkeypatch.setattr(entrance, "GOOD_FOR", 0.0)
    assert keys.use(token) is None


def test_made_up_keys_do_not_fit() -> None:
    """Neither a guessed token nor a guessed cookie, whatever letters it has."""
    keys = entrance.Keys()
    assert keys.use("guessed") is None
    assert not keys.fit("")
    assert not keys.fit("schlüssel")


def test_cookie_is_no_scripts_and_no_other_sites(stranger: Client) -> None:
    """HttpOnly and SameSite=Strict, by the name of its port."""
    stranger.get(entrance.link())
    (cookie,) = (c for name, c in stranger.cookies.items() if name.startswith("frogless_owner_"))
    assert cookie["httponly"]
    assert cookie["samesite"] == "Strict"


def test_another_browser_gets_a_link_from_who_is_in(client: Client) -> None:
    """And not from who is not."""
    page = client.post("/another-browser/").content.decode()
    token = page.partition("/enter/")[2].partition("<")[0]
    other = Client(headers={"host": "localhost"})
    assert other.post("/another-browser/").status_code == 401
    assert other.get(f"/enter/{token}").status_code == 302


@pytest.mark.parametrize("host", ["frogless.example", "127.0.0.1.frogless.example", "[::2]", ""])
def test_other_names_are_refused(client: Client, host: str) -> None:
    """A page elsewhere cannot have its own name lead here (DNS rebinding)."""
    assert client.get("/", headers={"host": host}).status_code == 400


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_forms_of_other_pages_are_refused(client: Client, site: str) -> None:
    """Also those of another program on this computer, which browsers call the same site."""
    answer = client.post("/another-browser/", headers={"sec-fetch-site": site})
    assert answer.status_code == 403


def test_form_without_its_token_is_refused() -> None:
    """A browser that says nothing of where it comes from still needs the token of the page."""
    careful = Client(headers={"host": "localhost"}, enforce_csrf_checks=True)
    careful.get(entrance.link())
    assert careful.post("/another-browser/").status_code == 403


def test_every_answer_carries_the_policy(client: Client, stranger: Client) -> None:
    """Nothing inline runs or styles, nothing is fetched from elsewhere, nobody frames a page."""
    for path in (*ROOMS, "/no-such-page/", "/enter/used"):
        policy = client.get(path).headers["Content-Security-Policy"]
        assert policy == POLICY
    assert "unsafe" not in POLICY


def test_what_was_written_before_a_restart_can_be_copied(stranger: Client) -> None:
    """A form of a page that the studio before this one made is not let in, and not thrown away."""
    answer = stranger.post("/designs/1/text/", {"text": "# my <own>\nwords", "do": "save"})
    assert answer.status_code == 401
    page = answer.content.decode()
    assert "# my &lt;own&gt;\nwords" in page
    assert "<button" not in page
