"""Beaded strands."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch, table

from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.plan.model import StrandPlan
from frogless.plan.strand import strand_diameter
from frogless.rows.count import worked
from frogless.rows.nodes import Chain

SKIRT = (
    section("to the hip", shape="shaped", to="hip", ease="4 cm"),
    section("to the hem", to="hem"),
)
USUAL = {
    "from_": "-9 cm",
    "to": "9 cm",
    "sag": "5 cm",
    "bead_diameter": "4 mm",
    "bead_hole": "2 mm",
    "hook": "0.6 mm",
}
SAMPLED = {"sample_repeats": 10, "sample_length": "18 cm", "chains_between": 3}


def strands(made: Made, *keys: dict[str, object], sample: str = "") -> tuple[StrandPlan, ...]:
    """Strands on a skirt of 150 stitches."""
    tables = tuple(table("[strand]", **{**USUAL, **each}) for each in keys)
    return plan(made(*SKIRT, tables=tables, sample=sample)).main.strands


def names(made: Made, **keys: object) -> list[str]:
    """Of the remarks on a strand."""
    known = made(*SKIRT, tables=(table("[strand]", **{**USUAL, **keys}),))
    return [r.name for r in plan(known).remarks]


def test_strand_is_as_many_repeats_as_come_nearest(made: Made) -> None:
    """Each of a bead and its chains."""
    (found,) = strands(made, SAMPLED)
    assert found.beads == found.repeats == round(found.wanted / 18)
    assert found.chains == 3 * found.repeats
    assert found.length.value == pytest.approx(found.repeats * 18)
    assert found.sampled


def test_ends_are_whole_stitches_from_centre_front(made: Made) -> None:
    """9 of 84 cm are 16 of 150 or so stitches, to the wearer's right and left."""
    planned = plan(made(*SKIRT, tables=(table("[strand]", **USUAL),)))
    (found,) = planned.main.strands
    assert (found.from_stitch, found.to_stitch) == (-16, 16)
    assert found.span == pytest.approx(32 / planned.landmarks[0].count * 840)


def test_yarn_is_cut_for_chains_and_tails(made: Made) -> None:
    """Five times the strand's length, and twice 15 cm; two fifths more when it was not sampled."""
    (found,) = strands(made, SAMPLED)
    assert found.cut_yarn == pytest.approx(5.1 * found.length.value + 300)
    (guessed,) = strands(made, {})
    assert guessed.cut_yarn == pytest.approx(5.1 * 1.4 * guessed.length.value + 300)


def test_chain_is_no_shorter_than_its_strands_are_thick(made: Made) -> None:
    """0.6 mm of yarn on 0.6 mm of hook: 1.3 mm a chain, not 0.74."""
    (found,) = strands(made, {"chains_between": 20})
    one = found.length.value / found.repeats
    chain = 2.2 * found.strand_diameter
    assert one == pytest.approx(19 * chain + 4)
    assert found.length.uncertainty == pytest.approx(0.4 * found.length.value)


@pytest.mark.parametrize(("between", "ends"), [(3, [1, 2]), (20, [10, 10]), (1, [1])])
def test_strand_is_the_same_from_both_ends(made: Made, between: int, ends: list[int]) -> None:
    """Half the chains before the first bead and after the last: as many in all as beads × n."""
    keys = {**USUAL, **SAMPLED, "chains_between": between}
    planned = plan(made(*SKIRT, tables=(table("[strand]", **keys),)))
    (row,) = planned.program.piece("beaded strand").rows
    first, last = row.body[0], row.body[-1]
    found = [node.times for node in (first, last) if isinstance(node, Chain)]
    assert found == ends
    made_of = worked(row.body)
    assert made_of == {
        "bead": planned.main.strands[0].repeats,
        "chain": planned.main.strands[0].chains,
    }


def test_hook_thinner_than_the_plies_is_remarked_on(made: Made) -> None:
    """It could not draw them through."""
    assert "strand_hook" in names(made, hook="0.5 mm")
    assert "strand_hook" not in names(made, hook="1 mm")


def test_strand_is_worked_bead_by_bead(made: Made) -> None:
    """A row of its own, with as many beads and chains as planned."""
    known = made(*SKIRT, tables=(table("[strand]", **USUAL, **SAMPLED),))
    planned = plan(known)
    (row,) = planned.program.piece("beaded strand").rows
    assert worked(row.body) == {
        "bead": planned.main.strands[0].beads,
        "chain": planned.main.strands[0].chains,
    }


def test_plies_of_a_yarn_are_as_thick_as_their_share(made: Made) -> None:
    """Two of four plies of 417 tex: 0.6 mm; without a label 0.3 mm a ply."""
    known = made(*SKIRT, tables=(table("[strand]", **USUAL),))
    choice = known.tube.strand[0]
    assert strand_diameter(known, choice) == pytest.approx(0.0357 * (417 / 2 / 0.75) ** 0.5, 0.01)
    bare = made(
        *SKIRT,
        tables=(table("[strand]", **USUAL),),
        sample=swatch(18, 10).replace("plies = 4\n", ""),
    )
    assert strand_diameter(bare, choice) == pytest.approx(0.3 * 2**0.5)


def test_what_would_not_work_is_remarked_on(made: Made) -> None:
    """A hole too fine, more plies than there are, no sample, no slack."""
    assert "bead_hole" in names(made, bead_hole="0.8 mm")
    assert "plies" in names(made, plies=6)
    assert "strand_sample" in names(made)
    assert "strand_sample" not in names(made, **SAMPLED)
    taut = {"sag": "0 cm", "sample_repeats": 1, "sample_length": "17 cm"}
    assert "strand_taut" in names(made, **taut)


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ({"to": "-9 cm"}, "the strand's two points fall on the same stitch"),
        ({"sag": "-1 cm"}, "the sag has to be zero or more"),
        ({"sample_repeats": 10}, "write the other one too"),
        ({"sample_length": "18 cm"}, "write the other one too"),
        ({"from_": "-42 cm", "to": "42 cm"}, "go once round the waist"),
        ({"from_": "-50 cm"}, "centre back is 42 cm from centre front"),
        ({"tails": "-1 cm"}, "has to be zero or more"),
    ],
)
def test_strand_that_cannot_hang_is_refused(made: Made, keys: dict[str, object], told: str) -> None:
    """In a sentence, with its place."""
    with pytest.raises(InputError) as refused:
        strands(made, keys)
    assert told in str(refused.value)
    assert refused.value.faults[0].place.key.startswith("strand[1]")


def test_two_strands_need_two_names(made: Made) -> None:
    """Else nobody could tell which of them is meant."""
    with pytest.raises(InputError, match="is the name of strand 1 too"):
        strands(made, {}, {"to": "14 cm"})
    assert len(strands(made, {"name": "front"}, {"name": "side", "to": "14 cm"})) == 2
