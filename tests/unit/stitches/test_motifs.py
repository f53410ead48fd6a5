"""Motifs: their text read, proven, said again, and refused when it does not hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import pytest

from frogless.errors import InputError
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.fabric.model import Fabric
from frogless.read.build import read_program
from frogless.read.motifs import Motif, motif, read_motif
from frogless.rows.nodes import Piece, Row
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.motifs import MotifEntry, motif_entry, motif_named, motifs
from frogless.stitches.tables import read_tables
from frogless.write.pattern import write_program
from frogless.write.stitch_motif import rounds_to_tell, say_motif

DIALECTS: tuple[Dialect, ...] = ("us", "uk")
SQUARE = """
[mine]
us = "my square"
uk = "my square"
shape = "square"
corners = 4
count = "8 * r"
text = '''
Foundation: Make an adjustable ring.
Rnd 1: Ch 1 (does not count as a st), 8 sc in ring; join with sl st to first sc.
Rnd 2: Ch 1, [sc in next st, 3 sc in next st] 4 times; join with sl st to first sc.
Rnd {r}: Ch 1, [sc in next {r - 1} sts, 3 sc in next st, sc in next {r - 2} sts] 4 times; join with sl st to first sc.
'''
source = "a test"
basis = "memory"
"""


def ends(entry: MotifEntry) -> Iterator[dict[str, int]]:
    """Every parameter at its ends and as usual."""
    each = [[(n, v) for v in {p.low, p.default, p.high}] for n, p in entry.parameters.items()]
    return (dict(values) for values in product(*each))


CASES = [
    pytest.param(key, values, id=f"{key}{''.join(f'-{v}' for v in values.values())}")
    for key, entry in motifs().items()
    for values in ends(entry)
]


GROWING = [case for case in CASES if motif_named(str(case.values[0])).grows]


def cloth(made: Motif) -> Fabric:
    """A motif, stitch by stitch."""
    return expand(made.program, dictionary())


def rounds_of(piece: Piece) -> tuple[Row, ...]:
    """What is worked after the foundation."""
    return tuple(row for row in piece.rows if row.number)


def mine(text: str = SQUARE, rounds: int | None = None) -> Motif:
    """A motif of a file of one's own."""
    entry = read_tables(text, "mine.toml", motif_entry)["mine"]
    return read_motif(entry, dictionary(), "us", rounds=rounds)


def refusal(old: str, new: str, rounds: int | None = None) -> str:
    """What is said of the square when a part of it is written otherwise."""
    assert old in SQUARE
    with pytest.raises(InputError) as caught:
        mine(SQUARE.replace(old, new), rounds)
    return str(caught.value)


def test_the_library_has_shapes_of_every_kind_when_listed() -> None:
    """Squares, hexagons, triangles, circles, flowers: fourteen motifs at least."""
    shapes = {entry.shape for entry in motifs().values()}
    assert {"square", "hexagon", "triangle", "pentagon", "octagon", "circle", "flower"} <= shapes
    assert len(motifs()) >= 14


@pytest.mark.parametrize(("key", "values"), CASES)
def test_every_place_is_used_or_skipped_when_a_motif_has_up_to_20_rounds(
    key: str, values: dict[str, int]
) -> None:
    """One round after the other, at the ends of its parameters, counted apart from the reader."""
    entry = motif_named(key)
    most = 20 if entry.grows else entry.own_rounds
    made = motif(key, most, values)
    for row in cloth(made).pieces[key]:
        if not row.row.number:
            continue
        assert not row.overrun
        assert ((row.used > 0).astype(int) + row.skipped == 1).all()
        assert row.row.count == row.places
    for rounds in {1, 2, most - 1} & set(range(1, most)):
        shorter = rounds_of(motif(key, rounds, values).piece)
        assert shorter[:-1] == rounds_of(made.piece)[: rounds - 1]
        assert shorter[-1].end.fasten_off


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(("key", "values"), CASES)
def test_a_motif_reads_back_to_the_same_fabric_when_said(
    key: str, values: dict[str, int], dialect: Dialect
) -> None:
    """Every round in words, with its count, in US and UK terms."""
    entry = motif_named(key)
    for rounds in (1, entry.own_rounds, 9) if entry.grows else (entry.own_rounds,):
        made = motif(key, rounds, values)
        lines = say_motif(made.program, dictionary(), dialect)
        assert len(lines) == rounds + 1
        told = replace(entry, text="\n".join(lines))
        again = read_motif(told, dictionary(), dialect, values=values)
        assert same(cloth(again), cloth(made)) is None
        program = read_program(
            write_program(made.program, dictionary(), dialect), dictionary(), dialect
        )
        assert same(expand(program, dictionary()), cloth(made)) is None


@pytest.mark.parametrize("dialect", DIALECTS)
@pytest.mark.parametrize(("key", "values"), GROWING)
def test_how_a_motif_goes_on_reads_back_when_said_for_any_round(
    key: str, values: dict[str, int], dialect: Dialect
) -> None:
    """The rounds that go on for ever, with sums for their numbers, give the same 1 to 20 rounds."""
    entry = motif_named(key)
    long = motif(key, rounds_to_tell(entry.own_rounds, entry.period), values).program
    lines = say_motif(long, dictionary(), dialect, own=entry.own_rounds, period=entry.period)
    told = replace(entry, text="\n".join(lines))
    for rounds in (entry.own_rounds, 20):
        again = read_motif(told, dictionary(), dialect, rounds=rounds, values=values)
        assert same(cloth(again), cloth(motif(key, rounds, values))) is None


def test_the_round_that_goes_on_is_said_with_its_sums_when_general() -> None:
    """A solid square: 4 r - 5 on a side, 16 r - 4 in all."""
    made = motif("solid_square", rounds_to_tell(2, 1)).program
    assert say_motif(made, dictionary(), "us", own=2, period=1)[-1] == (
        "Rnd {r} (RS): Ch 3, dc in next {2 * r - 2} sts, [(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in "
        "next {4 * r - 5} sts] 3 times, (2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next {2 * r - 4} "
        "sts; join with sl st to top of ch-3. ({16 * r - 4} dc, 4 ch-2 sps)"
    )


def test_what_does_not_grow_evenly_is_not_said_for_any_round_when_asked() -> None:
    """Rounds that take turns are not one round worked over and over."""
    made = motif("single_circle", rounds_to_tell(1, 1)).program
    with pytest.raises(ValueError, match="not worded alike"):
        say_motif(made, dictionary(), "us", own=1, period=1)


@pytest.mark.parametrize(
    "key", [k for k, e in motifs().items() if e.corners or e.shape == "circle"]
)
def test_growing_shapes_lie_flat_when_worked_as_usual(key: str) -> None:
    """What the library offers as usual neither cups nor ruffles."""
    flat = motif(key).flatness
    assert flat is not None
    assert flat.lies == "lies flat"
    assert flat.flat.low < flat.growth < flat.flat.high


def test_a_triangle_cups_when_its_groups_are_those_of_a_square() -> None:
    """12 more where 2 x 3 tan 60 x 1.9 = 19.7 lie flat."""
    flat = motif("granny_triangle", None, {"group": 3, "gap": 1}).flatness
    assert flat is not None
    assert (flat.growth, flat.lies) == (12, "cups")
    assert flat.flat.typical == pytest.approx(19.7, abs=0.05)


def test_a_square_ruffles_when_it_gains_too_much() -> None:
    """Five in each corner of single crochet: 16 more, where at most 8 x 1.1 = 8.8 lie flat."""
    text = SQUARE.replace("3 sc in next st", "5 sc in next st").replace("8 * r", "16 * r - 8")
    text = text.replace("{r - 1}", "{2 * r - 3}").replace("{r - 2}", "{2 * r - 4}")
    flat = mine(text, 6).flatness
    assert flat is not None
    assert (flat.growth, flat.lies) == (16, "ruffles")


def test_an_oval_is_worked_round_its_chain_when_read() -> None:
    """Along the top of eight chains and back along their underside: 9 on either side, by hand."""
    oval = motif("oval", 1)
    assert oval.chain is not None
    assert oval.chain.rows[0].count == 8
    assert [base.edge for base in oval.piece.bases] == ["row", "underside"]
    (row,) = cloth(oval).pieces["oval"]
    assert row.used.tolist() == [1, 1, 1, 1, 1, 1, 1, 2] * 2
    assert oval.counts == (18,)


def test_a_flower_is_not_told_to_lie_flat_when_asked() -> None:
    """Petals may stand as they like."""
    assert motif("flower").flatness is None


def test_a_motif_of_ones_own_is_read_when_sound() -> None:
    """Eight more in each round, three in one at each corner."""
    assert mine(rounds=5).counts == (8, 16, 24, 32, 40)


@pytest.mark.parametrize(
    ("old", "new", "rounds", "said"),
    [
        (
            "sc in next {r - 2} sts]",
            "sc in next {r - 1} sts]",
            4,
            "line 4, rnd 3: it asks for 20 places, and the round below leaves 16",
        ),
        (
            "sc in next {r - 2} sts] 4 times",
            "sc in next {r - 2} sts] 3 times",
            4,
            "line 4, rnd 3: place 13 of the round below is neither worked into nor skipped",
        ),
        (
            "[sc in next st, 3 sc in next st] 4 times",
            "[sc in next st, 3 sc in next st] 3 times, 3 sc in next st, sc in next st",
            2,
            "line 3, rnd 2: it is not the same 4 times: place 9 differs from 13",
        ),
        ("8 sc in ring", "7 sc in ring", None, "line 2, rnd 1: it leaves 7 places, which 4 points"),
        ('count = "8 * r"', 'count = "8 * r + 1"', 2, '"8 * r + 1" gives 9 places in rnd 1'),
        ("{r - 2}", "{r - 5}", 3, "gives -2; a number of stitches is 0 or more"),
        ("{r - 2}", "{n - 2}", 3, 'line 4: unknown parameter "n"'),
        ("3 sc in next st]", "3 sx in next st]", 2, "line 3, rnd 2: "),
        ("join with sl st to first sc.\nRnd 2", "join with sl st to first dc.\nRnd 2", 1, "rnd 1"),
    ],
)
def test_a_motif_is_refused_with_line_and_round_when_it_does_not_hold(
    old: str, new: str, rounds: int | None, said: str
) -> None:
    """What is wrong is named with the line of the text, the round and the place."""
    assert said in refusal(old, new, rounds)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('shape = "square"\n', "", "mine.toml mine: shape missing"),
        ('shape = "square"', 'shap = "square"\nshape = "square"', 'unknown key "shap"'),
        ("corners = 4", "corners = 2", "a shape of 2 corners is none"),
        ("Rnd 1:", "Rnd {r}:", 'worked over and over ("Rnd {r}: ...") come last'),
    ],
)
def test_a_file_of_motifs_is_refused_when_an_entry_is_wrong(old: str, new: str, said: str) -> None:
    """Missing and unknown keys, shapes that are none."""
    assert said in refusal(old, new)


@pytest.mark.parametrize(
    ("key", "rounds", "given", "said"),
    [
        ("granny_squar", 3, {}, 'did you mean "granny_square"'),
        ("flower", 3, {}, "3 rounds are not accepted; write a number from 1 to 2"),
        ("hexagon", 0, {}, "write a number from 1 to 60"),
        ("flower", 2, {"petals": 9}, 'petals of "flower"; write a whole number from 5 to 8'),
        ("hexagon", 2, {"petals": 9}, "accepted: none"),
    ],
)
def test_a_motif_is_refused_with_what_is_accepted_when_asked_wrongly(
    key: str, rounds: int, given: dict[str, int], said: str
) -> None:
    """Unknown motifs, numbers of rounds and parameters out of range."""
    with pytest.raises(InputError) as caught:
        motif(key, rounds, given)
    assert said in str(caught.value)
