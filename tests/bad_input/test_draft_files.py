"""Files that are none, folders that take none, disks that are full: one sentence, nothing half-written."""

from __future__ import annotations

import os
import random
import subprocess
import sys
import time
from pathlib import Path

import pytest
from examples import NAMES, Example, write_files

from frogless import cli

OLD = {"pattern.pdf", "pattern.html", "pattern.txt", "plan.json", "schematic.svg"}


@pytest.fixture
def arguments(tmp_path: Path) -> list[str]:
    """The example's files in a folder of their own, and the arguments that draft them."""
    folder = tmp_path / "in"
    folder.mkdir()
    return write_files(folder, Example().texts())


def says(arguments: list[str], capsys: pytest.CaptureFixture[str], code: int = 2) -> str:
    """The one line that is said."""
    assert cli.main(arguments) == code
    said = capsys.readouterr()
    assert not said.out
    (line,) = said.err.splitlines()
    return line.removeprefix("frogless: ")


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(
    ("content", "what"),
    [
        (b"title = \xff\xfe", "is not UTF-8 text"),
        (b"", "is missing; a"),
        (b"{not toml}", "this is not valid TOML"),
        (b"\x00\x01\x02", "this is not valid TOML"),
        (b"%PDF-1.7 \xe2\xe3", "is not UTF-8 text"),
    ],
)
def test_file_that_is_none_of_ours_is_named(
    name: str, content: bytes, what: str, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Empty, in another encoding, or something else altogether."""
    path = next(Path(a) for a in arguments if a.endswith(name))
    path.write_bytes(content)
    line = says(arguments, capsys)
    assert line.startswith(name)
    assert what in line


@pytest.mark.parametrize("name", NAMES)
def test_missing_file_and_folder_are_named(
    name: str, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """With what was wanted there."""
    path = next(Path(a) for a in arguments if a.endswith(name))
    path.unlink()
    what = f"a {name.removesuffix('.toml')} file is needed"
    assert says(arguments, capsys) == f"{path}: there is no such file; {what}"
    path.mkdir()
    assert says(arguments, capsys) == f"{path}: this is a folder; {what}"


def test_files_in_each_other_s_places_are_told_apart(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """A body where the swatch belongs."""
    mixed = [arguments[3] if a == arguments[5] else a for a in arguments]
    assert '"frogless-body/1" is not the format of a swatch file' in says(mixed, capsys)


def test_names_with_blanks_and_letters_of_any_language_are_taken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """For files and for the folder."""
    folder = tmp_path / "meine Röcke 裙"
    folder.mkdir()
    arguments = write_files(folder, Example().texts())
    out = folder / "fertig & schön"
    assert cli.main([*arguments, "-o", str(out)]) == 0
    assert {path.name for path in out.iterdir()} == OLD
    assert "fertig & schön" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("below", ["", "deeper", "deeper/still"])
def test_file_where_the_folder_should_be_is_refused(
    below: str, tmp_path: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Or on the way to it; the file stays."""
    taken = tmp_path / "out"
    taken.write_text("mine", encoding="utf-8")
    line = says([*arguments, "-o", str(taken / below)], capsys)
    assert line == (
        f"{taken / below}: nothing was written, because a file stands where a folder is needed"
    )
    assert taken.read_text(encoding="utf-8") == "mine"


def test_folder_where_a_file_should_be_is_refused(
    tmp_path: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Before any other file is touched."""
    (tmp_path / "out" / "plan.json").mkdir(parents=True)
    line = says([*arguments, "-o", str(tmp_path / "out")], capsys)
    assert "a folder stands where a file is to be written" in line
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["plan.json"]


# A process that is root may write everywhere but into /proc; others may not into a folder of mode 555.
def test_folder_that_may_not_be_written_to_is_refused(
    tmp_path: Path, arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is left of the attempt."""
    if os.geteuid():
        closed = tmp_path / "closed"
        closed.mkdir(mode=0o555)
    else:
        closed = Path("/proc/self")
    line = says([*arguments, "-o", str(closed / "out")], capsys)
    assert line.startswith(f"{closed / 'out'}: nothing was written, because ")
    assert not (closed / "out").exists()


def test_folder_needs_a_name(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """An empty one comes of a variable that the shell does not know."""
    with pytest.raises(SystemExit) as ended:
        cli.main([*arguments, "-o", ""])
    assert ended.value.code == 2
    assert "the folder needs a name" in capsys.readouterr().err


# The largest file is the PDF; a limit on the size of files stands for a full disk.
LIMITED = """
import resource, sys
resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))
sys.dont_write_bytecode = True
from frogless.cli import main
sys.exit(main(sys.argv[1:]))
"""


@pytest.mark.parametrize("there", [True, False])
def test_full_disk_leaves_what_was_there(
    tmp_path: Path, arguments: list[str], *, there: bool
) -> None:
    """The old pattern whole, or nothing at all."""
    out = tmp_path / "out"
    if there:
        out.mkdir()
        (out / "pattern.txt").write_text("old", encoding="utf-8")
    before = sorted(tmp_path.rglob("*"))
    command = [sys.executable, "-c", LIMITED, *arguments, "-o", str(out)]
    ended = subprocess.run(command, capture_output=True, text=True, check=False)
    assert ended.returncode == 2
    assert ended.stderr == (
        f"frogless: {out}: nothing was written, because the disk takes no file of this size\n"
    )
    assert sorted(tmp_path.rglob("*")) == before
    assert not there or (out / "pattern.txt").read_text(encoding="utf-8") == "old"


# Small parts are written slowly, so that the moment of the end falls into the writing.
SLOWLY = """
import sys
from pathlib import Path
from frogless.files import write_all
whole = {f"{n}.txt": letter.encode() * 3_000_000 for n in range(12) for letter in sys.argv[2]}
print("begun", flush=True)
while True:
    write_all(Path(sys.argv[1]), whole)
"""


def test_program_killed_while_writing_leaves_every_file_whole(tmp_path: Path) -> None:
    """Old or new, never half of one and never neither; tried at moments drawn at random."""
    out = tmp_path / "out"
    out.mkdir()
    old = {f"{n}.txt": b"o" * 3_000_000 for n in range(12)}
    draw = random.Random(2)  # noqa: S311 — moments, not secrets
    for _ in range(4):
        for name, content in old.items():
            (out / name).write_bytes(content)
        writer = subprocess.Popen(
            [sys.executable, "-c", SLOWLY, str(out), "n"], stdout=subprocess.PIPE
        )
        assert writer.stdout is not None
        writer.stdout.readline()
        time.sleep(draw.uniform(0.0, 0.15))
        writer.kill()
        writer.wait()
        writer.stdout.close()
        for name, content in old.items():
            assert (out / name).read_bytes() in (content, b"n" * len(content))


def test_output_that_takes_no_more_is_told(tmp_path: Path, arguments: list[str]) -> None:
    """The plan file sent to a disk that is full."""
    command = [sys.executable, "-c", LIMITED, *arguments, "--json"]
    with (tmp_path / "plan.json").open("w", encoding="utf-8") as full:
        ended = subprocess.run(command, stdout=full, stderr=subprocess.PIPE, text=True, check=False)
    assert ended.returncode == 2
    assert ended.stderr == "frogless: the text could not be printed (file too large)\n"


def test_reader_that_has_seen_enough_ends_it_quietly(arguments: list[str]) -> None:
    """As `frogless draft … --json | head` does."""
    command = [sys.executable, "-m", "frogless", *arguments, "--json"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as writer:
        assert writer.stdout is not None
        assert writer.stderr is not None
        writer.stdout.read(10)
        writer.stdout.close()
        assert writer.stderr.read() == b""
    assert writer.returncode == 0
