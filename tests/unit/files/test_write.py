"""Folders are written wholly or not at all."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from frogless.errors import InputError
from frogless.files import write_all

TOO_LONG = "n" * 300


def tree(folder: Path) -> dict[str, bytes]:
    """All files below a folder, and its folders as empty."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() else b"/"
        for path in sorted(folder.rglob("*"))
    }


def test_folder_is_made_with_its_parents_when_absent(tmp_path: Path) -> None:
    """The paths come back in the order that was given."""
    out = tmp_path / "a" / "out"
    assert write_all(out, {"b.txt": b"2", "a.txt": b"1"}) == (out / "b.txt", out / "a.txt")
    assert tree(out) == {"a.txt": b"1", "b.txt": b"2"}
    assert list(out.parent.iterdir()) == [out]


def test_files_are_exchanged_and_others_kept_when_the_folder_is_there(tmp_path: Path) -> None:
    """A second run replaces its own files and leaves the maker's notes alone."""
    (tmp_path / "notes.txt").write_bytes(b"mine")
    write_all(tmp_path, {"a.txt": b"1", "b.txt": b"2"})
    write_all(tmp_path, {"a.txt": b"3"})
    assert tree(tmp_path) == {"a.txt": b"3", "b.txt": b"2", "notes.txt": b"mine"}


def test_nothing_is_changed_when_a_file_is_read_only(tmp_path: Path) -> None:
    """Whoever locked a pattern wants to keep it, root as well."""
    write_all(tmp_path, {"a.txt": b"1", "b.txt": b"2"})
    (tmp_path / "b.txt").chmod(0o444)
    with pytest.raises(InputError, match=r"b\.txt: this file is read-only, so nothing was written"):
        write_all(tmp_path, {"a.txt": b"3", "b.txt": b"4"})
    assert tree(tmp_path) == {"a.txt": b"1", "b.txt": b"2"}


def test_new_folder_has_the_usual_permissions(tmp_path: Path) -> None:
    """Others may read what the umask lets them read, as in any folder made by hand."""
    usual = tmp_path / "usual"
    usual.mkdir()
    write_all(tmp_path / "out", {"a.txt": b"1"})
    assert (tmp_path / "out").stat().st_mode == usual.stat().st_mode


@pytest.mark.parametrize("there", [True, False])
def test_nothing_is_left_when_one_name_is_too_long(tmp_path: Path, *, there: bool) -> None:
    """What was there stays, what was not is not made, nor are its parents."""
    out = tmp_path / "deep" / "out"
    if there:
        write_all(out, {"a.txt": b"old"})
    before = tree(tmp_path)
    with pytest.raises(InputError, match="nothing was written, because a name is too long"):
        write_all(out, {"a.txt": b"new", TOO_LONG: b"x"})
    assert tree(tmp_path) == before


def test_nothing_is_changed_when_a_folder_has_the_name_of_a_file(tmp_path: Path) -> None:
    """Found out before anything is touched."""
    (tmp_path / "b.txt").mkdir()
    (tmp_path / "a.txt").write_bytes(b"old")
    with pytest.raises(InputError, match=r"b\.txt: a folder stands where a file is to be written"):
        write_all(tmp_path, {"a.txt": b"new", "b.txt": b"x"})
    assert tree(tmp_path) == {"a.txt": b"old", "b.txt": b"/"}


@pytest.mark.parametrize("below", ["", "out"])
def test_writing_is_refused_when_a_file_stands_for_the_folder(tmp_path: Path, below: str) -> None:
    """The output folder is a file, or would be inside one."""
    (tmp_path / "taken").write_bytes(b"x")
    with pytest.raises(InputError, match="a file stands where a folder is needed"):
        write_all(tmp_path / "taken" / below, {"a.txt": b"1"})
    assert tree(tmp_path) == {"taken": b"x"}


FULL_DISK = """
import resource, signal, sys
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
sys.dont_write_bytecode = True
from frogless.errors import InputError
from frogless.files import write_all
try:
    write_all(sys.argv[1], {"a.txt": b"new", "b.txt": b"x" * 5000})
except InputError as error:
    print(error)
"""


def test_old_files_stay_when_the_disk_takes_no_more(tmp_path: Path) -> None:
    """A limit on the size of files stands for a full disk: the second file breaks off half way."""
    write_all(tmp_path / "out", {"a.txt": b"old"})
    said = subprocess.run(
        [sys.executable, "-c", FULL_DISK, str(tmp_path / "out")],
        capture_output=True,
        text=True,
        check=True,
    )
    assert "nothing was written, because the disk takes no file of this size" in said.stdout
    assert tree(tmp_path) == {"out": b"/", "out/a.txt": b"old"}


def test_path_as_a_name_is_a_fault_of_ours(tmp_path: Path) -> None:
    """Names are chosen by the program, never by a person."""
    with pytest.raises(ValueError, match="not plain file names"):
        write_all(tmp_path, {"../a.txt": b"1"})
