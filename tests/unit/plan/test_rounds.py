"""The rows of a tube: sides, chains, joins, turns, in every manner of working."""

from __future__ import annotations

import pytest
from sample_designs import Made, section, swatch, table

from frogless.draft import develop
from frogless.errors import InputError
from frogless.plan.make import plan
from frogless.read.build import read_program
from frogless.rows.nodes import Chain, End, Row, Start, Work
from frogless.stitches.load import dictionary
from frogless.write.pattern import write_program

HIP = section("to the hip", shape="shaped", to="hip", ease="4 cm", points=8)
OPEN = 'with = "chain"\ngirth = "hip_girth"\nease = "4 cm"'
SC = (
    'stitch = "sc"\nhook = "3 mm"\nstate = "washed"\nstitches = 36\nwidth = "20 cm"\nrows = 40\n'
    'height = "20 cm"'
)


def work(rounds: str, chain: int = 3, *, counts: bool = False, into: str = "top of chain") -> str:
    """The table [work], without its header and stitch."""
    return (
        f'rounds = "{rounds}"\nturning_chain = {chain}\n'
        f'turning_chain_counts = {str(counts).lower()}\njoin_into = "{into}"'
    )


def rows(made: Made, manner: str, **design: object) -> tuple[Row, ...]:
    """The rows of a straight skirt of 30 rounds."""
    known = made(section("all", to="hem"), start=OPEN, work=manner, length="30 cm", **design)
    return plan(known).program.pieces[0].rows


def test_turned_rounds_show_the_right_side_every_other_time(made: Made) -> None:
    """Odd rounds; each is turned but the last, which is cut off."""
    made_rows = rows(made, work("joined and turned"))
    assert [row.side for row in made_rows[1:5]] == ["RS", "WS", "RS", "WS"]
    assert {row.end for row in made_rows[1:-1]} == {End("chain_top", turn=True)}
    assert made_rows[-1].end == End("chain_top", fasten_off=True)


def test_unturned_rounds_always_show_the_right_side(made: Made) -> None:
    """Joined, and never turned."""
    made_rows = rows(made, work("joined"))
    assert {row.side for row in made_rows} == {"RS"}
    assert not any(row.end.turn for row in made_rows)


def test_spiral_has_no_chains_and_joins_once(made: Made) -> None:
    """The foundation closes, the rounds do not, the last one is joined."""
    made_rows = rows(made, work("spiral", counts=True))
    assert {row.start for row in made_rows} == {Start()}
    assert [row.end.join for row in made_rows[:3]] == ["first_stitch", "none", "none"]
    assert made_rows[-1].end.join == "first_stitch"


def test_counted_chain_is_the_first_stitch(made: Made) -> None:
    """One stitch fewer is worked, and the round joins to the chain's top."""
    plain = rows(made, work("joined and turned"))[1]
    counted = rows(made, work("joined and turned", counts=True, into="first stitch"))[1]
    assert counted.count == plain.count
    assert plain.body == (Work("double_crochet", plain.count),)
    assert counted.body == (Work("double_crochet", plain.count - 1),)
    assert (counted.start, counted.end.join) == (Start(3, counts=True), "chain_top")


def test_join_goes_into_the_first_stitch_when_asked_or_when_there_is_no_chain(made: Made) -> None:
    """Top of the chain is where a chain is."""
    for manner in (work("joined", into="first stitch"), work("joined", 0)):
        assert rows(made, manner)[1].end.join == "first_stitch"


def test_chain_that_is_not_there_cannot_count(made: Made) -> None:
    """Turning chain 0, counted: one of the two is a slip."""
    with pytest.raises(
        InputError, match="a turning chain of 0 cannot count as a stitch"
    ) as refused:
        rows(made, work("joined", 0, counts=True))
    assert refused.value.faults[0].place.key == "work.turning_chain_counts"


def test_foundation_is_what_the_design_begins_with(made: Made) -> None:
    """Chains, each a place; or foundation stitches."""
    first = rows(made, work("joined"))[0]
    assert first.body == (Chain(first.count, each=True),)
    known = made(
        section("all", to="hem"),
        start=OPEN.replace('"chain"', '"foundation_double_crochet"'),
        length="30 cm",
    )
    begun = plan(known).program.pieces[0].rows[0]
    assert begun.body == (Work("foundation_double_crochet", begun.count),)


def test_section_in_its_own_stitch_has_its_gauge_chain_and_hook(made: Made) -> None:
    """A band of single crochet on a finer hook above double crochet: chain 1, twice the rounds."""
    known = made(
        section("band", length="4 cm", stitch="single_crochet"),
        HIP,
        section("to the hem", to="hem"),
        sample=swatch(27, 15, width="15 cm", height="15 cm", readings=(SC,)),
        start='with = "chain"\ngirth = "hip_girth / 1.2"',
    )
    planned = plan(known)
    band, hip, _ = planned.sections
    assert (band.stitch, band.last_round, band.hook) == ("single_crochet", 8, 3.0)
    assert (hip.stitch, hip.hook) == ("double_crochet", 3.5)
    made_rows = planned.program.pieces[0].rows
    assert (made_rows[1].start.chains, made_rows[9].start.chains) == (1, 3)
    assert (made_rows[0].hook, made_rows[8].hook, made_rows[9].hook) == (3.0, 3.0, 3.5)
    assert planned.gauges["band"].height.value == pytest.approx(5)


def test_section_may_say_its_own_turning_chain(made: Made) -> None:
    """Two chains where its stitch would have one."""
    known = made(
        section("band", length="4 cm", stitch="single_crochet", turning_chain=2),
        section("to the hem", to="hem"),
        sample=swatch(27, 15, width="15 cm", height="15 cm", readings=(SC,)),
        start=OPEN,
    )
    assert plan(known).program.pieces[0].rows[1].start.chains == 2


@pytest.mark.parametrize("rounds", ["joined and turned", "joined", "spiral"])
@pytest.mark.parametrize("counts", [False, True])
def test_skirt_that_narrows_and_flares_is_proven(made: Made, rounds: str, *, counts: bool) -> None:
    """Increases, decreases and increases again: each marker leads on."""
    known = made(
        HIP,
        section("to the knee", shape="shaped", length="20 cm", girth="104 cm", points=8),
        section("flounce", shape="shaped", to="hem", girth="170 cm", points=8),
        start='with = "foundation_double_crochet"\ngirth = "hip_girth / 1.1"',
        work=work(rounds, counts=counts),
        tables=(table("waist", kind="drawcord", eyelet_round=1),),
    )
    develop(known)


def test_markers_of_a_section_with_other_points_are_placed_anew(made: Made) -> None:
    """Six stand where four are wanted; a text that moved them up would not be read."""
    hem = section("to the hem", shape="shaped", to="hem", girth="142 cm", points=4)
    known = made(HIP.replace("points = 8", "points = 6"), hem)
    planned = plan(known)
    stitches = dictionary()
    text = write_program(planned.program, stitches, "us")
    assert text.count("Remove the old markers. Place marker") == 1
    assert text.count("Place marker") == 2
    read = read_program(text, stitches, "us").pieces[0].rows
    assert [row.marks for row in read] == [row.marks for row in planned.program.pieces[0].rows]
    before, _, after = text.partition("Remove the old markers. Place")
    moved = f"{before}Move{after.replace(' in the ', ' up into the ')}"
    with pytest.raises(InputError, match="4 markers are moved up, but 6 stand in the work"):
        read_program(moved, stitches, "us")
