"""The page of stitches lists the motifs and the joins that there are, with their figures."""

from __future__ import annotations

import re
import tomllib

import pytest
from pages import ROOT, named, page, part, rows

from frogless.read.motifs import motif
from frogless.stitches.edgings import edging, edgings
from frogless.stitches.joins import joins
from frogless.stitches.motifs import motifs

STITCHES = page("stitches.md")
DATA = ROOT / "src" / "frogless" / "stitches" / "data"
MOTIFS = {cells[0].strip("`"): cells for cells in rows(part(STITCHES, "## Motifs")) if cells[5:]}


def test_every_motif_is_listed_when_looked_up() -> None:
    """In the order of the files, and nothing else."""
    assert list(MOTIFS)[1:] == list(motifs())


@pytest.mark.parametrize("key", motifs())
def test_a_motif_is_listed_with_its_figures_when_looked_up(key: str) -> None:
    """Rounds, parameters, what a round gains and what lies flat."""
    entry, flat = motifs()[key], motif(key).flatness
    _, _, rounds, parameters, gains, limits = MOTIFS[key]
    assert rounds == ("any number" if entry.grows else str(entry.own_rounds))
    assert re.findall(r"`(\w+)` \((\d+), (\d+) to (\d+)\)", parameters) == [
        (name, str(p.default), str(p.low), str(p.high)) for name, p in entry.parameters.items()
    ]
    assert gains == (f"{flat.growth:g}" if flat else "–")
    assert limits == (f"{flat.flat.low:.1f} to {flat.flat.high:.1f}" if flat else "–")


def test_every_join_is_listed_when_looked_up() -> None:
    """With how the pieces are held."""
    told = {c[0].strip("`"): c[2] for c in rows(part(STITCHES, "## Joins")) if c[3:]}
    told.pop("key")
    assert told == {key: join.held for key, join in joins().items()}


@pytest.mark.parametrize(
    ("heading", "files"), [("## Motifs", "motifs/*.toml"), ("## Joins", "joins.toml")]
)
def test_every_key_is_explained_when_in_use(heading: str, files: str) -> None:
    """Those of motifs, and those of joins."""
    entries = [
        entry
        for file in DATA.glob(files)
        for entry in tomllib.loads(file.read_text(encoding="utf-8")).values()
    ]
    assert entries
    assert {key for entry in entries for key in entry} <= set(named(part(STITCHES, heading)))


@pytest.mark.parametrize("key", edgings())
def test_an_edging_is_listed_with_its_ways_when_looked_up(key: str) -> None:
    """Rounds, rows, corners."""
    (cells,) = [c for c in rows(part(STITCHES, "## Edgings")) if c[0] == f"`{key}`" and c[4:]]
    found = edging(key)
    ways = ["rounds", *["rows"] * bool(found.rows), *["corners"] * bool(found.sides)]
    assert cells[4] == ", ".join(ways)
