"""Ways to join two edges: seams stitch to stitch, and what each cannot do."""

from __future__ import annotations

from typing import Any, cast

import pytest

from frogless.errors import InputError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.proof.checks.edges import check_seams
from frogless.proof.checks.rows import check_counts, check_places, check_repeats, check_rounds
from frogless.proof.model import Subject
from frogless.read.build import read_program
from frogless.read.motif_joins import joined
from frogless.read.motifs import motif, named
from frogless.rows.nodes import Base, Program
from frogless.stitches.joins import chains_of, join_entry, join_named, joins, say_join, seam_of
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.tables import read_tables
from frogless.write.pattern import write_program

DIALECTS: tuple[Dialect, ...] = ("us", "uk")
SEAMS = [key for key, join in joins().items() if join.is_seam]
ROUNDS = (1, 2, 5, 12)
MINE = """
[mine]
us = "my join"
uk = "my join"
stitch = "single_crochet"
tool = "hook"
when = "after"
held = "wrong sides together"
looks = "a ridge"
how = "Work {single_crochet}."
cannot = "Nothing."
source = "a test"
basis = "memory"
"""


def squares(rounds: int, key: str, second: int | None = None) -> Program:
    """Two solid squares of so many rounds, joined along a side."""
    one, two = motif("solid_square", rounds), motif("solid_square", second or rounds)
    return joined(named(one, "one"), named(two, "two"), join_named(key))


def subject(program: Program) -> Subject:
    """What the checks of rows and of seams look at; there is no plan of a motif."""
    nothing = cast("Any", None)
    fabric = expand(program, dictionary())
    return Subject(nothing, program, fabric, nothing, dictionary(), {})


def test_eight_joins_are_there_when_listed() -> None:
    """Worked, flat, sewn, with chains, as you go; each says what it cannot do."""
    assert {"slip_stitch", "single", "single_back_loops", "whip", "mattress", "zigzag"} <= set(
        joins()
    )
    assert {"slip_stitch_flat", "as_you_go"} <= set(joins())
    assert all(join.cannot and join.source for join in joins().values())
    assert set(SEAMS) == {"slip_stitch", "slip_stitch_flat", "single", "single_back_loops"}


@pytest.mark.parametrize("rounds", ROUNDS)
@pytest.mark.parametrize("key", SEAMS)
def test_two_squares_are_proven_when_joined_along_a_side(key: str, rounds: int) -> None:
    """By hand: a side has 4 r - 1 stitches, and a chain space at either end."""
    program = squares(rounds, key)
    (seam,) = program.seams
    assert seam.count == seam.over == 4 * rounds - 1 + 2
    looked = subject(program)
    for check in (check_seams, check_places, check_repeats, check_counts, check_rounds):
        found = check(looked)
        assert found.verdict == "pass", found.detail
        assert found.looked_at


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize("key", SEAMS)
def test_a_join_reads_back_to_the_same_seam_when_said(key: str, dialect: Dialect) -> None:
    """With the rounds of both squares, in US and UK terms."""
    program = squares(3, key)
    again = read_program(write_program(program, dictionary(), dialect), dictionary(), dialect)
    assert again.seams == program.seams
    assert same(expand(again, dictionary()), expand(program, dictionary())) is None


def test_sides_run_from_corner_to_corner_when_named() -> None:
    """All four together go once round, each corner space belonging to two of them."""
    square = motif("granny_square", 4)
    sides = [square.side(number) for number in (1, 2, 3, 4)]
    assert [count for count, _ in sides] == [17] * 4
    assert sum(count - 1 for count, _ in sides) == square.counts[-1]
    for count, bases in sides:
        assert sum(base.count or 0 for base in bases) == count


def test_a_seam_is_found_wanting_when_its_sides_do_not_match() -> None:
    """The check fails where one side is longer than the join says."""
    program = squares(3, "single")
    (seam,) = program.seams
    shorter = seam_of(join_named("single"), "off", seam.first, seam.second, (12, 12))
    found = check_seams(subject(Program(program.pieces, (shorter,))))
    assert found.verdict == "fail"
    assert "12 stitches for an edge of 13" in found.detail


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("whip", '"whip" is sewn with a needle; accepted: slip_stitch, slip_stitch_flat, single'),
        ("zigzag", '"zigzag" is worked in each edge in turn'),
        ("as_you_go", '"as_you_go" is worked in the last round'),
    ],
)
def test_what_is_no_seam_is_refused_with_what_it_is_when_asked(key: str, said: str) -> None:
    """A seam goes through both edges at once."""
    with pytest.raises(InputError) as caught:
        squares(3, key)
    assert said in str(caught.value)


def test_squares_of_unlike_rounds_are_refused_when_joined() -> None:
    """13 places on a side of three rounds, 17 on one of four."""
    with pytest.raises(InputError, match="one edge has 13 places and the other 17"):
        squares(3, "single", 4)


@pytest.mark.parametrize(("key", "number"), [("octagon", 1), ("solid_square", 5), ("flower", 1)])
def test_a_side_is_refused_when_there_is_no_such(key: str, number: int) -> None:
    """Corners that are stitches, a fifth side of a square, a flower."""
    with pytest.raises(InputError, match=f"there is no side {number}"):
        motif(key).side(number)


def test_chains_are_counted_by_hand_when_a_join_goes_back_and_forth() -> None:
    """10 places on either side: 20 slip stitches with 19 runs of two chains between them."""
    assert chains_of(join_named("zigzag"), 10) == 38
    assert chains_of(join_named("zigzag"), 0) == 0
    assert chains_of(join_named("single"), 10) == 0


def test_a_join_is_told_in_the_terms_of_the_dialect_when_said() -> None:
    """US single is UK double crochet."""
    single = join_named("single")
    assert say_join(single, "us").startswith("Work single crochet through both loops")
    assert say_join(single, "uk").startswith("Work double crochet through both loops")
    assert say_join(single, "us").endswith(single.cannot)
    assert say_join(join_named("zigzag"), "us").startswith("Slip stitch in a stitch of one edge")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('held = "wrong sides together"\n', "", "mine.toml mine: held missing"),
        ('tool = "hook"', 'tool = "fork"', 'tool = "fork"; accepted: hook, needle'),
        ('"single_crochet"', '"singel_crochet"', 'did you mean "single_crochet"'),
        ("basis", "bases = 1\nbasis", 'unknown key "bases"'),
    ],
)
def test_a_file_of_joins_is_refused_when_an_entry_is_wrong(old: str, new: str, said: str) -> None:
    """Missing and unknown keys, tools and stitches that are none."""
    assert old in MINE
    assert read_tables(MINE, "mine.toml", join_entry)["mine"].is_seam
    with pytest.raises(InputError) as caught:
        read_tables(MINE.replace(old, new), "mine.toml", join_entry)
    assert said in str(caught.value)


def test_an_unknown_join_is_refused_with_the_nearest_when_asked() -> None:
    """With all that there are."""
    with pytest.raises(InputError, match=r'accepted: slip_stitch, .*did you mean "mattress"'):
        join_named("matress")


def test_a_base_of_a_side_is_in_the_last_round_when_it_wraps() -> None:
    """Side 4 of a square of three rounds runs over the join of the round."""
    count, bases = motif("solid_square", 3).side(4)
    assert count == 13
    assert bases == (
        Base("solid_square", "last_row", first=43, count=5),
        Base("solid_square", "last_row", first=0, count=8),
    )
