"""Garments of several pieces from their plan to the published pattern."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import garments
import pytest
from garments import BODY, basis, chain_neck, hat, two_panels
from jsonschema import Draft202012Validator

from frogless import draft
from frogless.errors import Impossible
from frogless.fit.model import GoingOn
from frogless.publish.drafted import Drafted
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain
from frogless.publish.planfile import planfile
from frogless.publish.terminal import summary


@pytest.fixture
def top(tmp_path: Path) -> Drafted:
    """Front and back, joined at one side."""
    found = basis(tmp_path, "top", "front", "back")
    return draft.carry_through(found, two_panels(found))


@pytest.fixture
def crown(tmp_path: Path) -> Drafted:
    """A hat from a ring, for a head of 57."""
    found = basis(tmp_path, "hat", "hat")
    return draft.carry_through(found, hat(found))


def opening(drafted: Drafted, name: str) -> GoingOn:
    """The one of that name."""
    return next(one for one in drafted.fit.openings if one.name == name)


def text(drafted: Drafted) -> str:
    """The plain pattern with its lines joined."""
    return " ".join(plain(pattern(drafted)).replace("\N{NO-BREAK SPACE}", " ").split())


def test_a_top_of_panels_is_proven_and_published(top: Drafted, tmp_path: Path) -> None:
    """Every check passes or warns, and every file is written."""
    assert {one.verdict for one in top.findings} <= {"pass", "warn"}
    written = draft.publish(top, tmp_path / "out")
    assert tuple(path.name for path in written) == draft.file_names(top) == draft.FILES


def test_a_hat_is_proven_and_published_when_it_has_no_outline(
    crown: Drafted, tmp_path: Path
) -> None:
    """All files but a drawing of what has no shape."""
    assert {one.verdict for one in crown.findings} <= {"pass", "warn"}
    written = draft.publish(crown, tmp_path / "out")
    assert tuple(path.name for path in written) == draft.file_names(crown) == draft.FILES[:-1]


def test_every_piece_has_its_heading_measures_and_rows_when_published(top: Drafted) -> None:
    """The front measures 53 cm over 85 stitches; both panels are told row by row."""
    told = text(top)
    assert "Width at the bust 53 cm (85 stitches)" in told
    assert told.count("Width at the bust 53 cm") == 2
    assert "85 dc" in told
    assert "skirt" not in told


def test_a_join_tells_both_lengths_and_what_is_eased_in(top: Drafted) -> None:
    """40 rows of 1.11 cm are 44.5 cm, against 44."""
    told = text(top)
    assert (
        "Front left side (44.5 cm) and back right side (44 cm); ease in front left side, "
        "0.5 cm longer." in told
    )
    assert "left side: ease the front in" in told.lower()


def test_a_tube_top_names_what_holds_it_up_and_how_far_it_stretches(tmp_path: Path) -> None:
    """C8: 162 at 20 are 81.0 on a bust of 90, 10 % less; shoulders of 104 need 1.28."""
    swatch = garments.sample_designs.swatch(20, 9, more='stretched_width = "13 cm"')
    body = {**BODY, "bust_girth": "90 cm", "hip_girth": "106 cm"}
    found = basis(tmp_path, "top", "top", body=body, swatch=swatch)
    made = draft.carry_through(found, garments.tube_top(found, 162))
    (bust,) = made.fit.landmarks
    assert (bust.at, bust.piece, bust.verdict) == ("bust_girth", "top", "ok")
    assert (bust.garment, bust.ease) == (pytest.approx(810.0), pytest.approx(-90.0))
    (narrow,) = made.fit.openings
    assert (narrow.widest_at, narrow.over) == ("shoulder_girth", "head")
    assert 1 + narrow.needed_stretch == pytest.approx(1.28, abs=0.005)
    assert "81 cm on a bust of 90 cm, 10 % less" in made.fit.staying_up
    checks = {one.name: one.verdict for one in made.findings}
    assert (checks["stays_up"], checks["goes_on"], checks["ease"]) == ("warn", "pass", "pass")
    assert "bust, top" in summary(made, (), ())


def test_why_these_numbers_covers_every_piece(top: Drafted) -> None:
    """Measures and landmarks of front and back, and the join."""
    told = text(top).split("Why these numbers")[-1]
    for name in ("front, width at the bust", "back, width at the bust", "left side"):
        assert name in told


def test_a_piece_is_counted_as_often_as_it_is_made(tmp_path: Path) -> None:
    """Two fronts take twice the yarn of one, and their stitches twice."""
    found = basis(tmp_path, "cardigan", "front", "back")
    once = draft.carry_through(found, two_panels(found))
    twice = draft.carry_through(found, two_panels(found, number_made=2))
    grams = [dict(one.tally.yarn[0].by_part)["front"] for one in (once, twice)]
    assert grams[1] == pytest.approx(2 * grams[0])
    assert twice.tally.stitches - once.tally.stitches == 85 * 40
    assert twice.tally.time_low > once.tally.time_low
    assert "Make 2." in text(twice)


def test_a_neck_of_chain_is_short_when_the_head_is_larger(tmp_path: Path) -> None:
    """C9: a chain of 50 for a head of 57 is 7 short, whatever the fabric gives."""
    found = basis(tmp_path, "top", "front", "back")
    with pytest.raises(Impossible, match=r"7 cm short.*") as refused:
        draft.carry_through(found, chain_neck(found, 500.0))
    assert refused.value.short == pytest.approx(70.0)
    assert any("foundation stitches" in way for way in refused.value.ways_out)
    assert "piece[1]: it does not go on" in str(refused.value)


def test_a_neck_of_foundation_stitches_passes_when_it_stretches_20_percent(
    tmp_path: Path,
) -> None:
    """C9: 50 · 1.2 = 60 passes a head of 57."""
    swatch = garments.sample_designs.swatch(16, 9, more='stretched_width = "12 cm"', width="10 cm")
    found = basis(tmp_path, "top", "front", "back", swatch=swatch)
    neck = opening(draft.carry_through(found, two_panels(found, 500.0)), "neck opening")
    assert (neck.verdict, neck.reach) == ("passes", pytest.approx(600.0))
    assert neck.short == 0


def test_a_brim_smaller_than_the_head_has_to_stretch(crown: Drafted) -> None:
    """56 on a head of 57: nobody measured the stretch, so it is told."""
    brim = opening(crown, "brim")
    assert (brim.verdict, brim.over, brim.widest) == ("uncertain", "head", 570.0)
    assert "has to stretch 2 % to pass the head (57 cm)" in brim.reasons[0]


def test_an_estimated_head_is_told_as_one(tmp_path: Path) -> None:
    """Survey mean 56.1 ± 1.9: an opening of 57 may be too small, and it says so."""
    body = {key: size for key, size in BODY.items() if key != "head_girth"}
    found = basis(tmp_path, "hat", "hat", body=body)
    made = draft.carry_through(found, hat(found, brim=570.0))
    assert opening(made, "brim").verdict == "uncertain"
    assert "is an estimate" in text(made)
    assert "Estimated, not measured: head 56 cm" in text(made)


def test_a_shawl_has_nothing_to_pass_and_nothing_holds_it_up(tmp_path: Path) -> None:
    """It is laid round the shoulders."""
    found = basis(tmp_path, "shawl", "front", "back", body={"stature": "168 cm"})
    plan = two_panels(basis(tmp_path, "shawl", "front", "back"))
    bare = tuple(replace(piece, landmarks=(), measures=()) for piece in plan.pieces)
    made = draft.carry_through(found, replace(plan, pieces=bare))
    assert (made.fit.openings, made.fit.staying_up) == ((), "")
    checks = {one.name: one for one in made.findings}
    assert checks["stays_up"].looked_at == 0
    assert "laid round the shoulders" in text(made)


def test_the_plan_file_tells_pieces_joins_and_openings(top: Drafted) -> None:
    """As its schema has them."""
    schema = Path(draft.__file__).parent / "publish" / "schema" / "plan.schema.json"
    data = planfile(top)
    Draft202012Validator(json.loads(schema.read_text(encoding="utf-8"))).validate(data)
    (size,) = data["sizes"]
    assert [piece["name"] for piece in size["pieces"]] == ["front", "back"]
    assert size["pieces"][0]["measures"][0]["count"] == 85
    assert size["pieces"][1]["rows"][-1]["depth_mm"] == pytest.approx(444.44, abs=0.01)
    assert size["joins"][0]["first_mm"] > size["joins"][0]["second_mm"]
    assert size["openings"][0]["name"] == "neck opening"


def test_the_summary_tells_pieces_and_joins(top: Drafted) -> None:
    """In the margin their names, beside them what they measure."""
    told = summary(top, (), ())
    assert "40 rows; width at the bust 53 cm (85 stitches)" in told
    assert "left side: front left side (44.5 cm)" in told
