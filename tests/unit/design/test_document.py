"""The design document as checked data."""

from __future__ import annotations

from pathlib import Path

import pytest
from sample_designs import Design as Sample
from sample_designs import section, table

from frogless.design.document import PiecesDesign, TubeDesign, named_formulas
from frogless.design.load import parse_design, read_design
from frogless.errors import InputError

DESIGNS = sorted((Path(__file__).parents[3] / "designs").glob("*/design.toml"))
SECTIONS = (
    section("to the hip", shape="shaped", to="hip", ease_allowed=("1 cm", "3 cm")),
    section("to the hem", to="hem"),
)


def read(*tables: str, sections: tuple[str, ...] = SECTIONS) -> TubeDesign:
    """A design of these tables."""
    design = parse_design(Sample(sections, tables=tables).text, "x.toml").checked
    assert isinstance(design, TubeDesign)
    return design


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.parent.name)
def test_example_is_read(path: Path) -> None:
    """Each has a title and a summary, and sections down to the hem or pieces with names."""
    design = read_design(path).checked
    assert design.title
    assert design.summary
    if isinstance(design, TubeDesign):
        assert design.section[-1].to == "hem"
    else:
        assert isinstance(design, PiecesDesign)
        names = [piece.name for piece in design.piece]
        assert len(set(names)) == len(names)


def test_everything_that_may_be_left_out_has_a_default() -> None:
    """As the page on the format says."""
    design = read()
    first = design.section[0]
    assert (design.version, design.author, design.notes, design.strand) == ("1", "", (), ())
    assert (first.points, first.add, first.every, first.ease) == ("auto", 1, "auto", "0 cm")
    assert (design.work.join_at, design.work.join_into) == ("centre back", "top of chain")
    assert (design.edging, design.waist, design.gauge) == (None, None, None)


def test_every_formula_is_named_with_its_key() -> None:
    """Counted from 1, the design's own lengths first, `from` by the name it has in the file."""
    bead = {"bead_diameter": "4 mm", "bead_hole": "1 mm", "hook": "1 mm"}
    design = read(
        table("lengths", drop="2 cm"),
        table("edging", pattern="crab", hook="2 mm", repeat_width="3 cm"),
        table("waist", kind="drawcord"),
        table("[strand]", from_="-9 cm", to="9 cm", sag="5 cm", **bead),
    )
    named = dict(named_formulas(design))
    assert next(iter(named)) == "lengths.drop"
    assert named["section.1.ease"] == "0 cm"
    assert {k for k, _ in named_formulas(design)} >= {
        "garment.length",
        "start.girth",
        "start.above_waist",
        "section.1.ease_allowed",
        "edging.repeat_width",
        "waist.tie_ends",
        "strand.1.from",
        "strand.1.sag",
        "strand.1.tails",
    }
    allowed = [text for key, text in named_formulas(design) if key == "section.1.ease_allowed"]
    assert allowed == ["1 cm", "3 cm"]


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"pionts": 4}, 'unknown key "pionts"; did you mean "points"?'),
        ({"points": 0}, "must be 1 or more"),
        ({"points": "many"}, 'not "many"'),
        ({"points": ()}, "needs 1 or more, has 0"),
        ({"points": (4, 0)}, "must be 1 or more, not 0"),
        ({"add": 5}, "must be 1, 2, 3 or 4, not 5"),
        ({"every": 0}, "must be 1 or more"),
        ({"to": "knee"}, 'must be "high hip", "hip" or "hem", not "knee"'),
        ({"ease": ""}, "must not be empty"),
        ({"turning_chain": 9}, "must be 6 or less"),
    ],
)
def test_section_that_is_none_is_refused_by_its_key(keys: dict[str, object], told: str) -> None:
    """With what is accepted."""
    with pytest.raises(InputError) as refused:
        read(sections=(section("x", **keys), SECTIONS[1]))
    assert told in str(refused.value)
    assert refused.value.faults[0].place.key.startswith("section[1]")


def test_design_needs_a_section() -> None:
    """There is nothing to work otherwise."""
    with pytest.raises(InputError, match="section"):
        read(sections=())


def test_kind_of_waist_decides_its_keys() -> None:
    """An elastic has no eyelets."""
    with pytest.raises(InputError, match='unknown key "eyelet_round"'):
        read(table("waist", kind="covered elastic", width="6 mm", eyelet_round=2))
    with pytest.raises(InputError, match='must be "covered elastic", "drawcord" or "ribbed band"'):
        read(table("waist", kind="buttons"))
