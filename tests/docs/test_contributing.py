"""The examples of CONTRIBUTING do what it says, in a copy of the program."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from pages import ROOT, examples, page, part

from frogless.read.motifs import read_motif
from frogless.stitches.edged import round_corners
from frogless.stitches.edgings import build, read_patterns
from frogless.stitches.load import dictionary
from frogless.stitches.motifs import motif_entry
from frogless.stitches.tables import read_tables
from frogless.write.phrases import phrases

TEXT = page("CONTRIBUTING.md")
DESIGNS = ROOT / "designs"


def example(heading: str, language: str) -> list[str]:
    """The examples under a heading."""
    return examples(part(TEXT, heading), language)


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the program with the edging, the stitch and the check of the examples."""
    folder = tmp_path_factory.mktemp("copy")
    package = folder / "frogless"
    shutil.copytree(
        ROOT / "src" / "frogless", package, ignore=shutil.ignore_patterns("__pycache__")
    )
    data = package / "stitches" / "data"
    append(data / "edgings.toml", "\n".join(example("## Add an edging", "toml")))
    append(data / "stitches.toml", "\n".join(example("## Add a stitch", "toml")))
    after(
        package / "swatch_file.py",
        '"edc": "extended_double_crochet",\n',
        *example("## Add a stitch", "text"),
    )
    (function,), (line,) = (example("## Add a check", kind) for kind in ("python", "text"))
    append(package / "proof" / "checks" / "rows.py", f"\n{function}")
    after(package / "proof" / "prove.py", "rows.check_numbers,\n", line)
    return folder


def append(file: Path, text: str) -> None:
    """Puts a text at the end of a file."""
    file.write_text(file.read_text(encoding="utf-8") + "\n" + text, encoding="utf-8")


def after(file: Path, line: str, more: str) -> None:
    """Puts a text behind a line of a file."""
    before = file.read_text(encoding="utf-8")
    assert line in before
    file.write_text(before.replace(line, line + more), encoding="utf-8")


def drafted(program: Path, design: Path, swatch: Path) -> dict[str, Any]:
    """The plan of a design, drafted by the copy in a process of its own."""
    body = DESIGNS / "bodies" / "dancer-3.toml"
    command = ["draft", str(design), "--body", str(body), "--swatch", str(swatch), "--json"]
    done = subprocess.run(
        [sys.executable, "-m", "frogless", *command],
        cwd=program,
        env={**os.environ, "PYTHONPATH": str(program)},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.stderr == ""
    size: dict[str, Any] = json.loads(done.stdout)["sizes"][0]
    return size


def changed(source: Path, into: Path, *changes: tuple[str, str]) -> Path:
    """A copy of an example file with some of its words replaced."""
    text = source.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    into.write_text(text, encoding="utf-8")
    return into


COTTON = DESIGNS / "swatches" / "light-cotton.toml"
RING = DESIGNS / "ring-dance-skirt" / "design.toml"
PICOTS = 'pattern = "picot_group"'
PARAMETERS = "parameters = { singles = 4, picots = 3 }\n"


def test_added_edging_fills_the_hem(program: Path, tmp_path: Path) -> None:
    """The hem lands on its multiple, and the proof passes."""
    asked = ((PICOTS, 'pattern = "arches"'), (PARAMETERS, "parameters = { over = 4 }\n"))
    size = drafted(program, changed(RING, tmp_path / "design.toml", *asked), COTTON)
    last = size["pieces"][0]["rows"][-1]
    hem = size["pieces"][0]["rows"][-2]
    assert hem["count"] % 5 == 0
    assert f"{hem['count'] // 5} times" in last["text"]
    assert {check["verdict"] for check in size["checks"]} <= {"pass", "warn"}


def test_added_edging_goes_in_rows_and_round_corners() -> None:
    """As the second example says: a stitch more in rows, three on a side."""
    read = read_patterns("\n".join(example("## Add an edging", "toml")), "edgings.toml")
    arches = build(read["cornered_arches"])
    assert (arches.row_offset, arches.side_offset) == (1, 3)
    (row,) = round_corners(arches, (11, 7, 11, 7), dictionary())
    assert row.count == 4 * 3 + (1 + 2 * 2) + (1 + 2 * 1) + (1 + 2 * 2) + (1 + 2 * 1)


def test_added_motif_is_proven_and_told_how_it_lies() -> None:
    """Twelve more in each round, which is more than lies flat, in the figures that the text names."""
    (text,) = example("## Add a motif", "toml")
    entries = read_tables(text, "polygons.toml", motif_entry)
    made = read_motif(entries["half_double_hexagon"], dictionary(), "us", rounds=9)
    assert made.counts == tuple(12 * r for r in range(1, 10))
    assert made.flatness is not None
    assert made.flatness.lies == "ruffles"
    flat = made.flatness.flat
    told = f"gains {made.flatness.growth:g} where {flat.low:.1f} to {flat.high:.1f} lie flat"
    assert told in part(TEXT, "## Add a motif")


def test_added_stitch_makes_a_skirt(program: Path, tmp_path: Path) -> None:
    """Swatched under its abbreviation, worked, tallied, written, read back."""
    stitch = ('stitch = "double_crochet"', 'stitch = "double_extended_single_crochet"')
    design = changed(RING, tmp_path / "design.toml", stitch)
    swatch = changed(COTTON, tmp_path / "swatch.toml", ('stitch = "dc"', 'stitch = "desc"'))
    size = drafted(program, design, swatch)
    assert "desc in each st around" in size["pieces"][0]["rows"][1]["text"]
    assert {c["name"]: c["verdict"] for c in size["checks"]}["reads_back"] == "pass"


def test_added_check_runs_with_the_others(program: Path) -> None:
    """Once it stands in the table it is part of every proof."""
    checks = {c["name"]: c for c in drafted(program, RING, COTTON)["checks"]}
    assert checks["worked"]["verdict"] == "pass"
    assert checks["worked"]["looked_at"] == checks["counts"]["looked_at"] > 0


def test_added_language_is_a_file(tmp_path: Path) -> None:
    """Read by its path; what it leaves out stays English."""
    (catalogue,) = example("## Add a language", "po")
    file = tmp_path / "de" / "LC_MESSAGES" / "frogless.po"
    file.parent.mkdir(parents=True)
    file.write_text(catalogue, encoding="utf-8")
    german = phrases("de", tmp_path)
    assert german.say("round", first=3, side="RS") == "Runde 3 (RS)"
    assert german.stitch("double_crochet", "dc") == "Stb"
    assert german.say("turn") == "turn"
