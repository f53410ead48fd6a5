"""The pages of checks, stitches, parts and libraries list what there is, and nothing else."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator

from pages import ROOT, figure, named, page, part, rows

from frogless.fit.going_on import WITHIN_REASON
from frogless.plan.elastic import Elastic, elastics
from frogless.proof.prove import CHECKS
from frogless.stitches.edgings import patterns
from frogless.stitches.entries import KEYS
from frogless.stitches.load import dictionary
from frogless.stitches.model import CATCHES, COUNTED, SYMBOL_PARTS

CHECKS_PAGE = page("checks.md")
STITCHES = page("stitches.md")
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def test_every_check_is_explained() -> None:
    """In the order in which they run."""
    assert named(CHECKS_PAGE) == [check.__name__.removeprefix("check_") for check in CHECKS]
    assert all(len(cells) == 3 and all(cells) for cells in rows(CHECKS_PAGE))


def test_every_stitch_is_listed_with_its_terms() -> None:
    """In both dialects, in the order of the file."""
    told = [cells for cells in rows(part(STITCHES, "## Stitches")) if "**" in cells[1]]
    assert told == [
        [
            f"`{key}`",
            *(f"{s.terms[d].name}, **{s.terms[d].abbreviation}**" for d in ("us", "uk")),
            str(s.turning_chain or "–"),
        ]
        for key, s in dictionary().items()
    ]


def test_every_key_of_a_stitch_is_explained() -> None:
    """And none that is not taken."""
    told = set(named(part(STITCHES, "## Stitches"))) - set(dictionary())
    assert told == set(KEYS)


def test_every_key_of_a_stitch_pattern_is_explained() -> None:
    """All that stand in the data, of the pattern and of its rows; no other."""
    used: set[str] = set()
    for file in (ROOT / "src/frogless/stitches/data/patterns").glob("*.toml"):
        for entry in tomllib.loads(file.read_text(encoding="utf-8")).values():
            used |= entry.keys()
            used.update(*(entry[way].keys() for way in ("rows", "rounds") if way in entry))
    cells = [first for first, *_ in rows(part(STITCHES, "## Stitch patterns"))]
    told = {key for cell in cells for key in re.findall(r"`(\w+)`", cell)}
    assert told == used


def test_every_motion_of_a_stitch_is_explained() -> None:
    """With a number where it takes one."""
    told = [cells[0] for cells in rows(part(STITCHES, "### Motions"))][1:]
    assert sorted(told) == sorted(f"{m} n" if m in COUNTED else m for m in CATCHES)


def test_every_part_of_a_symbol_is_explained() -> None:
    """With a number where it takes one."""
    told = [cells[0] for cells in rows(part(STITCHES, "### Parts of a symbol"))][1:]
    assert sorted(told) == sorted(f"{p} n" if takes else p for p, takes in SYMBOL_PARTS.items())


def test_every_edging_is_listed_with_its_parameters() -> None:
    """Usual, least and most."""
    told = {
        cells[0].strip("`"): cells[3] for cells in rows(part(STITCHES, "## Edgings")) if cells[3:]
    }
    told.pop("key")
    for key, pattern in patterns().items():
        text = told.pop(key)
        assert re.findall(r"`(\w+)` \((\d+), (\d+) to (\d+)\)", text) == [
            (name, str(p.default), str(p.low), str(p.high))
            for name, p in pattern.parameters.items()
        ]
    assert told == {}


def test_every_key_of_an_edging_is_explained() -> None:
    """All keys in use, of patterns and of their rounds."""
    explained = set(named(part(STITCHES, "## Edgings"))) - set(patterns())
    used = {key for pattern in patterns().values() for key in pattern.entry}
    used |= {key for p in patterns().values() for one in p.entry["round"] for key in one}
    assert used <= explained


def test_every_elastic_is_listed_with_its_stretch() -> None:
    """Comfortably, and for the moment of stepping in."""
    told = {
        cells[0]: cells[1:] for cells in rows(page("going-on.md")) if cells[-1].endswith("times")
    }
    assert told == {one.kind: [_comfort(one), f"{one.pulled_on:.1f} times"] for one in elastics()}
    assert f"up to {WITHIN_REASON:.0%}".replace("%", " %") in page("going-on.md")


def _comfort(one: Elastic) -> str:
    longest = f" to {one.longest:g}" if one.longest > one.comfortable else ""
    return f"{one.comfortable:g}{longest} times"


def test_layers_are_those_that_are_checked() -> None:
    """The drawing of the arrows is the contract."""
    (contract,) = [c for c in PROJECT["tool"]["importlinter"]["contracts"] if c["type"] == "layers"]
    layers = [re.sub(r"[()]", "", layer) for layer in contract["layers"]]
    drawn = [re.split(r" {3,}", line)[0] for line in figure(page("architecture.md")).splitlines()]
    assert drawn == layers


def test_every_part_is_explained() -> None:
    """Each name in the drawing has its line in the table, but for those the drawing explains."""
    drawn = set(re.findall(r"^[\w |]+?(?= {3}|$)", figure(page("architecture.md")), re.MULTILINE))
    parts = {name for line in drawn for name in line.split(" | ")}
    assert parts - set(named(page("architecture.md"))) == {"cli", "studio"}


def libraries() -> set[str]:
    """What the package needs to run, by name, its extras included."""
    extras = PROJECT["project"].get("optional-dependencies", {}).values()
    needed = [*PROJECT["project"]["dependencies"], *(one for extra in extras for one in extra)]
    return {re.split(r"[<>=!~\[ ;]", one)[0] for one in needed}


def test_every_library_is_explained() -> None:
    """What it spares us; and none is claimed that is not needed."""
    assert set(named(page("dependencies.md"))) == libraries()


IMPORTED_AS = {"python-docx": "docx"}


def test_every_library_is_used() -> None:
    """Nothing is installed for nothing: it is imported, or named in settings as Django does it."""
    sources = [file.read_text(encoding="utf-8") for file in (ROOT / "src").rglob("*.py")]
    used = {name.split(".")[0] for source in sources for name in _named(source)}
    called = {one: IMPORTED_AS.get(one, one.replace("-", "_")) for one in libraries()}
    assert {one for one, name in called.items() if name not in used} == set()


def _named(source: str) -> Iterator[str]:
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.Import():
                yield from (alias.name for alias in node.names)
            case ast.ImportFrom(module=str(name)):
                yield name
            case ast.Constant(value=str(name)) if name.replace(".", "").isidentifier():
                yield name
