"""What the papers say of the repository is so: sources, pictures, versions, no registries."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest
from pages import DOCS, ROOT, named, page

from frogless import __version__

IMAGES = sorted((DOCS / "images").iterdir())
DATA = {".csv", ".toml"}


def data_files() -> set[str]:
    """Every file of data that the program or its reference tests read."""
    folders = (ROOT / "src", ROOT / "tests" / "reference")
    found = [f for folder in folders for f in folder.rglob("*") if f.suffix in DATA]
    return {f.relative_to(ROOT).as_posix() for f in found}


def test_every_data_file_has_its_source() -> None:
    """And none is named that is gone."""
    assert set(named(page("DATA_SOURCES.md"))) == data_files()


def test_changes_tell_of_this_version() -> None:
    """What is new stands in the changes."""
    assert f"## {__version__}" in page("CHANGELOG.md")


@pytest.mark.parametrize("image", IMAGES, ids=lambda p: p.name)
def test_picture_is_small_and_used(image: Path) -> None:
    """Below 200 KB, shown in the README, with words for whoever does not see it."""
    assert image.stat().st_size < 200_000
    assert re.search(rf"!\[[^\]]{{40,}}\]\(docs/images/{image.name}\)", page("README.md"))


def test_readme_says_the_two_commands() -> None:
    """The first thing that a newcomer types."""
    assert "./dev demo" in page("README.md")
    assert "./dev test" in page("README.md")


REGISTRIES = (
    "pypi" + ".org",
    "python" + "hosted",
    "npm" + "js",
    "debian" + ".org",
    "crates" + ".io",
)


def tracked() -> list[Path]:
    """Every file of the repository; the folder itself where there is no history."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=False)
    names = listed.stdout.decode().split("\0") if listed.returncode == 0 else []
    files = [ROOT / name for name in names if name] or [
        f
        for folder in ("src", "docs", "designs", "requirements")
        for f in (ROOT / folder).rglob("*")
    ]
    return [file for file in files if file.is_file()]


def test_no_file_names_a_registry() -> None:
    """Packages are named, not the places they come from: whoever installs chooses those."""
    named_in = [
        f"{file.relative_to(ROOT)}: {host}"
        for file in tracked()
        for host in REGISTRIES
        if host.encode() in file.read_bytes()
    ]
    assert named_in == []


@pytest.mark.parametrize("lock", ["runtime.txt", "dev.txt"])
def test_lock_has_a_hash_for_everything_and_no_address(lock: str) -> None:
    """What is installed is what was tried."""
    text = (ROOT / "requirements" / lock).read_text(encoding="utf-8")
    pinned = [entry for entry in re.split(r"\n(?=\w)", text) if re.match(r"[\w.-]+==", entry)]
    assert len(pinned) > 5
    assert [entry.split()[0] for entry in pinned if "--hash=sha256:" not in entry] == []
    assert "://" not in text


@pytest.mark.parametrize("lock", ["runtime.txt", "dev.txt"])
def test_lock_holds_every_library(lock: str) -> None:
    """Neither lock was forgotten when a library was added."""
    text = (ROOT / "requirements" / lock).read_text(encoding="utf-8").lower()
    project = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    needed = re.findall(r'^  "([\w-]+)', part_of(project, "dependencies = ["), re.MULTILINE)
    assert [name for name in needed if f"\n{name.lower()}==" not in text] == []


def part_of(project: str, begin: str) -> str:
    """A list of pyproject.toml, as text."""
    start = project.index(f"\n{begin}")
    return project[start : project.index("\n]", start)]
