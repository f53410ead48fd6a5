"""What has to be asked or warned of before anything is planned or worked, by hand-worked cases."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pytest
from sample_designs import Design, basis, body, section, swatch, table

from frogless.body.load import load_body
from frogless.body.measurements import Body
from frogless.body.size_tables import sizes
from frogless.draft import develop, develop_for, read
from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.model import ElasticPlan
from frogless.plan.waist import CLOSEST_BUNCHING
from frogless.publish.blocks import Document
from frogless.publish.pattern import pattern
from frogless.publish.plain import plain
from frogless.swatch import load_swatch

HERE = Path(__file__).parent
DESIGNS = HERE.parents[2] / "designs"
ROWS = list(csv.DictReader((HERE / "warnings.csv").read_text("utf-8").splitlines()))
SKIRT = (
    section("waist to hip", shape="shaped", to="hip", ease="4 cm", points=8),
    section("hip to hem", shape="shaped", to="hem", girth="142 cm", points=8),
)
OPEN = 'with = "chain"\ngirth = "hip_girth"\nease = "4 cm"'
ADULT = body(waist_girth="84 cm", hip_girth="112 cm", waist_to_hip="20 cm")


def hand(case: str) -> dict[str, str]:
    """What was worked by hand."""
    return {row["fact"]: row["expected"] for row in ROWS if row["case"] == case}


def test_inches_typed_as_centimetres_are_asked_about_and_never_planned(tmp_path: Path) -> None:
    """Refused where the body is read, so that nothing is planned of it; the hip is left alone."""
    known = hand("inches typed as centimetres")
    file = tmp_path / "body.toml"
    typed = body(waist_girth=f"{known['typed']} cm", hip_girth="112 cm")
    file.write_text(typed, encoding="utf-8")
    with pytest.raises(InputError) as asked:
        load_body(file)
    (told,) = str(asked.value).splitlines()
    assert f"did you mean {known['typed']} in ({known['meant cm']} cm)?" in told
    assert "waist_girth" in told


def test_swatch_that_is_too_small_says_what_half_a_stitch_does_to_the_hip(tmp_path: Path) -> None:
    """Five stitches over 2.5 cm; and how many to count."""
    known = hand("swatch too small")
    file = tmp_path / "swatch.toml"
    file.write_text(swatch(5, 10, width="2.5 cm"), encoding="utf-8")
    with pytest.raises(InputError) as refused:
        load_swatch(file)
    told = str(refused.value)
    assert f"half a stitch is {known['half a stitch percent']} %" in told
    assert f"± {known['off on the hip cm']} cm on a hip of 116 cm" in told
    assert f"for ± 2 cm at least {known['stitches at least']} stitches" in told


def covered(folder: Path, singles: float) -> tuple[ElasticPlan, str]:
    """Elastic at 90 % under the flared skirt, and what is said of its cover.

    Args:
        singles: single crochets in 10 cm of their own swatch.
    """
    elastic = table("waist", kind="covered elastic", percent=90, width="6 mm")
    own = swatch(singles, singles, stitch="sc")
    known = basis(folder, Design(SKIRT, tables=(elastic,)).text, ADULT, swatch(18, 10), own)
    planned = plan(known)
    assert isinstance(planned.main.waist, ElasticPlan)
    said = (r.sentence for r in planned.remarks if r.name == "elastic_cover")
    return planned.main.waist, next(said, "")


def test_single_crochets_over_elastic_are_held_against_their_swatch(tmp_path: Path) -> None:
    """4.0 to the cm are 2.9 times 1.4 of a thick yarn, and 2.2 times 1.8 of a finer one.

    Where they stop to bunch nobody has published: 2.5 times is our own estimate, since strands of
    half to two thirds of their room touch at 1.5 to 2 times and can be pressed a little closer.
    """
    known = hand("single crochet over elastic")
    elastic, told = covered(tmp_path, 14)
    rest, pulled = (elastic.cover_count / girth * 10 for girth in (elastic.finished, 1120))
    assert {
        "single crochets": str(elastic.cover_count),
        "ring cm": f"{elastic.finished / 10:.1f}",
        "per cm at rest": f"{rest:.1f}",
        "per cm pulled over the hips": f"{pulled:.1f}",
    } == known
    assert rest / 1.4 > CLOSEST_BUNCHING > rest / 1.8
    assert "are 40 in 10 cm, 2.9 times as close as the swatch's 14 (27 when" in told
    assert "may not bunch so far" in told
    assert covered(tmp_path, 18)[1] == ""


def child() -> Body:
    """The smallest of the children's sizes, two years old."""
    return sizes("children")[0]


def first_words(document: Document, source: str) -> str:
    """What the pattern says before its schematic, with what a caution's source is called."""
    begun = re.sub(r"[\s|]+", " ", plain(document)).partition("Schematic")[0]
    assert source.partition(",")[0] in begun
    return begun


def test_neck_cord_of_a_child_is_cautioned_before_all_else() -> None:
    """A camisole with ties, of two years: with the source, and local rules first."""
    ready = read(
        DESIGNS / "maypole-camisole/design.toml", (DESIGNS / "swatches/light-cotton.toml",)
    )
    drafted = develop_for(ready, child())
    first = drafted.fit.cautions[0]
    assert first.key == hand("child's neck cord")["cautions first"]
    begun = first_words(pattern(drafted), "US Consumer Product Safety Commission")
    assert "Please read first" in begun
    assert "No cord or tie belongs at a hood or neck" in begun
    assert "Local rules and the edition in force come first" in begun


def test_beads_of_a_child_are_cautioned_before_all_else(tmp_path: Path) -> None:
    """Beads in the picots of a hem, of two years."""
    picots = table("edging", pattern="picot_group", hook="2.25 mm", parameters={"singles": 8})
    beads = table("edging.beads", bead_diameter="3 mm", bead_hole="2 mm")
    sections = (section("to the hem", to="hem"),)
    design = Design(sections, length="25 cm", tables=(picots, beads), start=OPEN)
    small = body(waist_girth="53 cm", hip_girth="55 cm", waist_to_hip="10 cm")
    small = small.replace('name = "someone"', 'name = "someone"\nage = 2')
    drafted = develop(basis(tmp_path, design.text, small, swatch(18, 10)))
    assert drafted.fit.cautions[0].key == hand("child's beads")["cautions first"]
    begun = first_words(pattern(drafted), "product-safety rules for small parts")
    assert "Beads are small parts that a child under 3 can choke on: leave them off" in begun


def test_every_row_is_looked_at() -> None:
    """None is left out by a slip of its name."""
    text = Path(__file__).read_text(encoding="utf-8")
    assert [row["case"] for row in ROWS if f'hand("{row["case"]}")' not in text] == []
