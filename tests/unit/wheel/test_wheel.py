"""The wheel holds everything that the program reads, so that it works away from a checkout."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built with the tools of this environment."""
    folder = tmp_path_factory.mktemp("dist")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder)]
    subprocess.run([*command, str(ROOT)], check=True, capture_output=True)
    (built,) = folder.glob("*.whl")
    return built


def test_every_file_of_the_package_ships(wheel: Path) -> None:
    """Data, templates and schemas as well as code."""
    package = ROOT / "src"
    wanted = {
        file.relative_to(package).as_posix()
        for file in (package / "frogless").rglob("*")
        if file.is_file() and "__pycache__" not in file.parts
    }
    with zipfile.ZipFile(wheel) as archive:
        assert wanted - set(archive.namelist()) == set()


def test_examples_ship(wheel: Path) -> None:
    """The studio offers them wherever it is installed."""
    examples = {f"frogless/{file.relative_to(ROOT)}" for file in (ROOT / "designs").rglob("*.toml")}
    with zipfile.ZipFile(wheel) as archive:
        assert examples - set(archive.namelist()) == set()


def test_wheel_is_for_every_system_and_carries_its_licence(wheel: Path) -> None:
    """Plain Python; the licence travels with it."""
    assert wheel.name.endswith("-py3-none-any.whl")
    with zipfile.ZipFile(wheel) as archive:
        assert any(name.endswith("licenses/LICENSE") for name in archive.namelist())


def test_program_runs_from_the_wheel_alone(wheel: Path, tmp_path: Path) -> None:
    """A pattern can be set from the unpacked wheel, in a folder of its own."""
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(tmp_path / "installed")
    script = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "import frogless; assert frogless.__file__.startswith(sys.argv[1])\n"
        "from frogless.publish.blocks import Document\n"
        "from frogless.publish.pdf import pdf\n"
        "from frogless.publish.webpage import webpage\n"
        "from frogless.stitches.load import dictionary\n"
        "document = Document('T', '', 'en', (), (), '')\n"
        "assert pdf(document)[:4] == b'%PDF' and '<h1>' in webpage(document) and dictionary()\n"
    )
    command = [sys.executable, "-I", "-c", script, str(tmp_path / "installed")]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.stderr == ""
    assert done.returncode == 0
