"""The script of a checkout: what it says when it cannot go on. What it does is done by using it."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest
from pages import ROOT

SCRIPT = ROOT / "dev"
NEEDED = ("sh", "dirname", "id", "tr", "cat", "pwd", "cksum")


def run(*words: str, path: Path | None = None) -> subprocess.CompletedProcess[str]:
    """One call, with only these programs on its path."""
    environment = {"PATH": str(path) if path else os.environ["PATH"], "HOME": str(ROOT)}
    shell = shutil.which("sh") or "sh"
    return subprocess.run(
        [shell, str(SCRIPT), *words], env=environment, capture_output=True, text=True, check=False
    )


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A path on which nothing is but what every Unix has, and a user who is nobody."""
    for name in NEEDED:
        if found := shutil.which(name):
            (tmp_path / name).symlink_to(found)
    (tmp_path / "id").unlink()
    stand_in(tmp_path / "id", "echo 1000")
    return tmp_path


def stand_in(file: Path, does: str) -> None:
    """A program of one line."""
    file.write_text(f"#!{shutil.which('sh')}\n{does}\n", encoding="utf-8")
    file.chmod(0o755)


def test_help_names_every_command() -> None:
    """The list and the choices agree."""
    done = run("help")
    listed = re.findall(r"^  (\w+) {2,}\S", done.stdout, re.MULTILINE)
    chosen = re.findall(r"^    ([a-z]+)\) ", SCRIPT.read_text(encoding="utf-8"), re.MULTILINE)
    assert (done.returncode, sorted(listed)) == (0, sorted(chosen))


def test_unknown_command_is_refused() -> None:
    """By name, with the list beside it."""
    done = run("knit")
    assert done.returncode == 1
    assert done.stderr.endswith("./dev: unknown command: knit\n")
    assert "usage: ./dev COMMAND" in done.stderr


def test_missing_tools_are_named_in_one_line(bare: Path) -> None:
    """No test is left out in silence."""
    done = run("test", path=bare)
    assert done.returncode == 1
    assert done.stderr == (
        "./dev: the tests need chromium poppler-utils; "
        "install it with the system's package manager\n"
    )


def test_only_what_is_missing_is_named(bare: Path) -> None:
    """A browser by another name will do."""
    stand_in(bare / "google-chrome", "exit 0")
    done = run("test", path=bare)
    assert "the tests need poppler-utils;" in done.stderr
