"""The studio killed in the middle of saving, again and again: what it had said yes to is there."""

from __future__ import annotations

import random
import re
import sqlite3
import threading
import time
from contextlib import closing
from http.client import HTTPException
from http.cookiejar import CookieJar
from pathlib import Path
from urllib.error import URLError
from urllib.parse import urlencode
from urllib.request import HTTPCookieProcessor, OpenerDirector, build_opener

from running_studio import Studio, running

from frogless.studio.examples import example_designs

KILLS = 3
TEXT = example_designs()["rehearsal-skirt"].text


def test_what_was_acknowledged_survives_being_killed(tmp_path: Path) -> None:
    """After each kill the library opens, is whole, and has every text that a page said was saved."""
    chance = random.Random(20)  # noqa: S311 - moments to kill at
    saved = 0
    for _ in range(KILLS):
        with running(tmp_path) as studio:
            acknowledged = save_until_killed(studio, saved, chance.uniform(0.1, 0.8))
        found = kept(tmp_path)
        assert acknowledged <= found <= acknowledged + 1
        saved = found
    assert saved >= 2 * KILLS


def save_until_killed(studio: Studio, start: int, seconds: float) -> int:
    """Saves one text after the other, and kills the studio meanwhile, so many seconds after the
    first was acknowledged; the number of the last one that was."""
    browser = build_opener(HTTPCookieProcessor(CookieJar()))
    last = start
    until = time.monotonic() + 60
    try:
        browser.open(studio.link, timeout=30).close()
        page = design_page(browser, studio)
        while time.monotonic() < until:
            form = fields(read(browser, page))
            form["text"] = f"{TEXT}\n# saved {last + 1}\n"
            answer = browser.open(page, urlencode({**form, "do": "save"}).encode(), timeout=30)
            with answer:
                assert answer.status == 200
            last += 1
            if last == start + 1:
                threading.Timer(seconds, studio.process.kill).start()
    except (URLError, HTTPException, ConnectionError, TimeoutError):
        return last
    raise AssertionError("nobody killed the studio")


def design_page(browser: OpenerDirector, studio: Studio) -> str:
    """The page of the one design, which is copied from an example the first time."""
    with browser.open(f"{studio.address}/designs/", timeout=30) as answer:
        listed = answer.read().decode()
    own = re.search(r"/designs/about/own:(\d+)/", listed)
    if own is None:
        with browser.open(
            f"{studio.address}/designs/about/example:rehearsal-skirt/", timeout=30
        ) as answer:
            token = fields(answer.read().decode())["csrfmiddlewaretoken"]
        form = urlencode({"csrfmiddlewaretoken": token, "go": "text"}).encode()
        browser.open(
            f"{studio.address}/designs/copy/example:rehearsal-skirt/", form, timeout=30
        ).close()
        return design_page(browser, studio)
    return f"{studio.address}/designs/{own[1]}/text/"


def read(browser: OpenerDirector, page: str) -> str:
    """A page as text."""
    with browser.open(page, timeout=30) as answer:
        found: str = answer.read().decode()
        return found


def fields(page: str) -> dict[str, str]:
    """The hidden fields of a page."""
    hidden = re.findall(r'<input type="hidden" name="(\w+)" value="([^"]*)"', page)
    return dict(reversed(hidden))


def kept(folder: Path) -> int:
    """The number of the text that the library has, which must be a whole library."""
    with closing(sqlite3.connect(folder / "library.sqlite3")) as library:
        assert library.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        rows = library.execute("SELECT text, step FROM library_document").fetchall()
        if not rows:
            return 0
        ((text, step),) = rows
        (latest,) = library.execute(
            "SELECT text FROM library_step WHERE number = ?", (step,)
        ).fetchone()
    assert latest == text
    found = re.search(r"# saved (\d+)", text)
    return int(found[1]) if found else 0
