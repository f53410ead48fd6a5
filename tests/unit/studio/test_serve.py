"""Starting: loopback only, one sentence for what does not go, the library in its place."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from http.client import HTTPConnection
from pathlib import Path

import pytest
from running_studio import running

from frogless.errors import InputError
from frogless.studio import examples
from frogless.studio.places import data_folder, made, private

HOME = Path("/home/anna")
STUDIO = [sys.executable, "-m", "frogless", "studio", "--no-browser"]


@pytest.mark.parametrize(
    ("environment", "system", "folder"),
    [
        ({}, "linux", "/home/anna/.local/share/frogless"),
        ({"XDG_DATA_HOME": "/data"}, "linux", "/data/frogless"),
        ({"XDG_DATA_HOME": "relative"}, "linux", "/home/anna/.local/share/frogless"),
        ({}, "darwin", "/home/anna/Library/Application Support/Frogless"),
        ({"LOCALAPPDATA": "/app"}, "win32", "/app/Frogless"),
        ({}, "win32", "/home/anna/AppData/Local/Frogless"),
        ({"FROGLESS_DATA": "/own", "XDG_DATA_HOME": "/data"}, "linux", "/own"),
    ],
)
def test_library_lies_where_the_system_keeps_data(
    environment: dict[str, str], system: str, folder: str
) -> None:
    """By the rules of each system; one's own choice first."""
    assert data_folder(environment, system, HOME) == Path(folder)


def test_library_is_for_its_owner_alone(tmp_path: Path) -> None:
    """Nobody else on the computer may read it."""
    folder = made(tmp_path / "a" / "b")
    assert os.name == "nt" or folder.stat().st_mode & 0o077 == 0


def test_library_is_for_its_owner_alone_in_a_folder_that_others_may_enter(tmp_path: Path) -> None:
    """Whether the file was there before or not."""
    tmp_path.chmod(0o755)
    old = tmp_path / "old.sqlite3"
    old.write_bytes(b"kept")
    old.chmod(0o644)
    for file in (private(old), private(tmp_path / "new.sqlite3")):
        assert os.name == "nt" or file.stat().st_mode & 0o077 == 0
    assert old.read_bytes() == b"kept"


def test_library_of_the_studio_is_a_private_file(library: Path) -> None:
    """As `prepared` leaves it, and so are the files that belong to it."""
    found = list(library.glob("library.sqlite3*"))
    assert len(found) >= 1
    assert os.name == "nt" or all(file.stat().st_mode & 0o077 == 0 for file in found)


def test_place_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    """With the way out."""
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(InputError, match="FROGLESS_DATA"):
        made(tmp_path / "file" / "folder")


def run(
    arguments: list[str], data: Path, start: list[str] | None = None
) -> subprocess.CompletedProcess[str]:
    """The studio, started to fail."""
    environment = {**os.environ, "FROGLESS_DATA": str(data)}
    return subprocess.run(
        [*(start or STUDIO), *arguments],
        env=environment,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


def ask(
    address: str, path: str = "/", body: bytes | None = None, **headers: str
) -> tuple[int, str, bytes]:
    """Status, the cookie that was set, and the page."""
    connection = HTTPConnection(address.removeprefix("http://").rstrip("/"), timeout=30)
    try:
        connection.request("POST" if body else "GET", path, body, headers)
        answer = connection.getresponse()
        cookie = (answer.getheader("Set-Cookie") or "").partition(";")[0]
        return answer.status, cookie, answer.read()
    finally:
        connection.close()


def test_studio_answers_on_loopback_and_stops_when_told(tmp_path: Path) -> None:
    """Its door, its style and its scripts; a name that is not its own is refused; Ctrl-C ends it."""
    with running(tmp_path) as studio:
        address = studio.address
        assert address.startswith("http://127.0.0.1:")
        status, cookie, _ = ask(address, studio.link.removeprefix(address))
        assert (status, cookie.startswith("frogless_owner_")) == (302, True)
        assert b"Frogless" in ask(address, Cookie=cookie)[2]
        for part in ("studio/base.css", "studio/studio.js", "django_htmx/htmx-2.min.js"):
            assert ask(address, f"/static/{part}")[0] == 200
        assert ask(address, Host="frogless.example")[0] == 400
        status, _, page = ask(address, body=b"x" * 3_000_000, Cookie=cookie)
        assert status == 413
        assert b"more than the studio takes" in page
        port = address.rpartition(":")[2]
        done = run(["--port", port], Path(os.environ["FROGLESS_DATA"]))
        assert (done.returncode, done.stderr.count("\n")) == (2, 1)
        assert f"port {port} cannot be had" in done.stderr
        studio.process.send_signal(signal.SIGINT)
        said, _ = studio.process.communicate(timeout=30)
        assert said.endswith("Frogless studio: stopped.\n")
        assert studio.process.returncode == 0


def test_port_that_is_none_is_told(tmp_path: Path) -> None:
    """One sentence."""
    done = run(["--port", "70000"], tmp_path)
    assert done.returncode == 2
    assert "port 70000 cannot be had (a port is a number from 0 to 65535)" in done.stderr


def test_library_that_is_none_is_told(tmp_path: Path) -> None:
    """A file of that name which is no database is left as it is."""
    file = tmp_path / "library.sqlite3"
    file.write_bytes(b"not a database, but somebody's file" * 100)
    done = run([], tmp_path)
    assert done.returncode == 2
    assert "cannot be used" in done.stderr
    assert "Traceback" not in done.stderr
    assert file.read_bytes().startswith(b"not a database")


def test_missing_extra_is_told(tmp_path: Path) -> None:
    """What to install, in one sentence."""
    script = (
        "import sys; sys.modules['django'] = None\n"
        "from frogless.cli import main; sys.exit(main(['studio', '--no-browser']))"
    )
    done = run([], tmp_path, [sys.executable, "-c", script])
    assert done.returncode == 2
    assert done.stderr == (
        "frogless: the studio needs django, which is not installed; "
        'install "frogless[studio]" (in a checkout: python -m pip install ".[studio]")\n'
    )


def test_examples_are_found_in_a_checkout() -> None:
    """Designs by their folders, bodies and swatches by their files, each with what it calls itself."""
    assert "ring-dance-skirt" in examples.example_designs()
    assert examples.examples("body")["dancer-3"].title == "Dancer 3"
    assert all(one.text for kind in examples.PATTERNS for one in examples.examples(kind).values())
