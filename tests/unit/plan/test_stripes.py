"""Stripes: which row has which colour, where it is changed, what is carried and what is cut.

Sequences and numbers of ends are hand arithmetic; that a colour is carried over 2 to 4 rows and cut
beyond is common practice.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from pieces_designs import Garment, garment, pieces_basis, swatch

from frogless.design.colours import Stripe
from frogless.errors import InputError
from frogless.fabric.expand import expand
from frogless.own_patterns import library_of
from frogless.plan.basis import Basis
from frogless.plan.colours import ends_made
from frogless.plan.make import plan
from frogless.plan.stripes import counted_rows, stripe_at, turns, with_changes
from frogless.rows.colours import changes
from frogless.rows.nodes import Chain, Change, End, Leave, Node, Piece, Row, Skip, Start, Work
from frogless.stitches.load import dictionary
from frogless.swatch import load_swatch

DC = "double_crochet"
TUBE = (
    '[[piece]]\nconstruction = "tube"\nname = "sleeve"\nstart = { with = "chain", girth = "22 cm" }\n'
    'section = [{ name = "cuff", length = "6 cm" }, { name = "arm", length = "12 cm" }]'
)
PANEL = '[[piece]]\nconstruction = "panel"\nname = "front"\nwidth = "20 cm"\nlength = "12 cm"'
COLLAR = (
    '[[piece]]\nconstruction = "border"\nname = "rim"\non = ["sleeve.hem"]\n'
    'stitch = "double_crochet"\nheight = "3 cm"'
)
JOINED = 'rounds = "joined"\nturning_chain = 3'


def colours(*stripes: str, names: str = 'A = "cream", B = "rust"', on: str = "") -> str:
    """The table of colours; a stripe is "A 2", or "A" for all that is left."""
    listed = []
    for stripe in stripes:
        letter, _, rows = stripe.partition(" ")
        listed.append(f'{{ colour = "{letter}"{f", rows = {rows}" if rows else ""} }}')
    where = f"on = [{on}]\n" if on else ""
    table = f"[[colours.stripes]]\n{where}repeat = [{', '.join(listed)}]" if stripes else ""
    return f"[colours]\nnames = {{ {names} }}\n{table}"


def changed(made: Garment, name: str) -> dict[int, Change]:
    """The change at the end of each row that has one."""
    found = {}
    for row in made.plan.program.piece(name).rows:
        for change in changes(row.body):
            assert row.body[-1] is change
            found[row.number] = change
    return found


def letters(made: Garment, name: str) -> str:
    """The colour of every row of a piece, as one word."""
    piece = made.plan.program.piece(name)
    used, word = piece.colour, ""
    for row in piece.rows:
        word += used
        for change in changes(row.body):
            used = change.colour
    return word


@pytest.mark.parametrize(
    ("stripes", "word"),
    [
        ((Stripe(colour="A", rows=2), Stripe(colour="B", rows=2)), "AABBAABBA"),
        ((Stripe(colour="A", rows=1), Stripe(colour="B", rows=2)), "ABBABBABB"),
        ((Stripe(colour="B", rows=3), Stripe(colour="A")), "BBBAAAAAA"),
        ((Stripe(colour="C"),), "CCCCCCCCC"),
    ],
)
def test_stripes_come_again_when_the_last_is_done(stripes: tuple[Stripe, ...], word: str) -> None:
    """Unless the last has all the rows that are left."""
    assert "".join(stripe_at(row, stripes) for row in range(9)) == word


def test_colour_changes_in_the_last_stitch_of_the_row_before() -> None:
    """Rows 2, 4 and 6 of two-row stripes: the chain of row 3 is of the new colour already."""
    rows = tuple(Row(n, "RS" if n % 2 else "WS", "", (Work(DC, 4),), 4) for n in range(1, 8))
    piece = Piece("front", False, rows)
    found = list(turns((piece,), {"front": "AABBAAB"}))
    assert [(turn.row.number, turn.change.colour) for turn in found] == [
        (2, "B"),
        (4, "A"),
        (6, "B"),
    ]


@pytest.mark.parametrize(
    ("closed", "word", "carried"),
    [
        pytest.param(False, "AABBAA", [True, False], id="two rows: back at the same edge"),
        pytest.param(False, "AABAA", [False, False], id="one row: wanted at the other edge"),
        pytest.param(False, "AABBBAA", [False, False], id="three rows: at the other edge too"),
        pytest.param(False, "ABBBBA", [True, False], id="four rows: just near enough"),
        pytest.param(False, "ABBBBBBA", [False, False], id="six rows: too far"),
        pytest.param(True, "AABAA", [True, False], id="one round: the join is where it was"),
        pytest.param(True, "ABBBBBA", [False, False], id="five rounds: too far"),
        pytest.param(False, "ABCAB", [True, True, False, False], id="single rows of three colours"),
        pytest.param(True, "ABCAB", [True, True, False, False], id="three colours in rounds"),
    ],
)
def test_colour_is_carried_when_it_comes_back_soon_and_at_the_same_edge(
    closed: bool, word: str, carried: list[bool]
) -> None:
    """Over four rows at most; one that does not come back is cut."""
    rows = tuple(
        Row(n, "RS" if n % 2 else "WS", "", (Work(DC, 4),), 4, end=End(turn=True))
        for n in range(1, len(word) + 1)
    )
    found = turns((Piece("front", closed, rows),), {"front": word})
    assert [turn.change.carried for turn in found] == carried


def own_rows(*bodies: str) -> Piece:
    """Rounds of four; a letter after stitches is a change: "4B" ends in B, "2B2" has it inside."""
    rows = []
    for n, body in enumerate(bodies, 1):
        nodes = [Change(each) if each.isalpha() else Work(DC, int(each)) for each in body]
        rows.append(Row(n, "RS", "", tuple(nodes), 4, end=End("first_stitch")))
    return Piece("cap", True, tuple(rows), colour="A")


@pytest.mark.parametrize(
    ("bodies", "word", "changed"),
    [
        pytest.param(
            ("4B", "4A", "4"), ["A", "", ""], {1: "B", 2: "A"}, id="as the pattern has it"
        ),
        pytest.param(("4B", "4A"), ["A", ""], {1: "B"}, id="nothing is worked after the last"),
        pytest.param(("4B", "4"), ["A", "A"], {}, id="the next one wants the colour in use"),
        pytest.param(("4B", "4"), ["A", "C"], {1: "C"}, id="the next one wants another"),
        pytest.param(("4", "2A2"), ["A", "B"], {1: "B"}, id="the pattern begins in another"),
        pytest.param(("2B2", "4"), ["A", "A"], {1: "A"}, id="it ends in another inside a row"),
    ],
)
def test_pattern_keeps_its_changes_and_is_begun_and_left_in_the_right_colour(
    bodies: tuple[str, ...], word: list[str], changed: dict[int, str]
) -> None:
    """What it changes to in the last stitch of a row gives way to what the next row wants."""
    cap = own_rows(*bodies)
    found = list(turns((cap,), {"cap": word}))
    assert {turn.row.number: turn.change.colour for turn in found} == changed
    made = with_changes(cap, "A", found)
    last = [row.body[-1] for row in made.rows]
    assert [node.colour for node in last if isinstance(node, Change)] == list(changed.values())


@pytest.mark.parametrize(
    ("last", "across"),
    [((Leave(2),), 0), ((Skip(2),), 0), ((), 1)],
    ids=["left", "skipped", "passed"],
)
def test_colour_is_cut_when_stitches_are_left_or_passed_at_the_edge(
    last: tuple[Node, ...], across: int
) -> None:
    """It hangs where the work is no longer."""
    row = Row(2, "WS", "", (Work(DC, 4), *last), 4)
    after = Row(3, "RS", "", (Work(DC, 4),), 4, Start(across=across))
    rows = (Row(1, "RS", "", (Work(DC, 6),), 6), row, after, Row(4, "WS", "", (Work(DC, 4),), 4))
    found = list(turns((Piece("front", False, rows),), {"front": "ABBA"}))
    assert [turn.change.carried for turn in found] == [False, False]
    assert not any(turn.is_cut_for_its_edge for turn in found)


@pytest.mark.parametrize(("across", "carried"), [(0, True), (2, True), (4, True), (5, False)])
def test_colour_is_carried_past_a_few_slip_stitches_when_rounds_move_on(
    across: int, carried: bool
) -> None:
    """Rounds of shells begin some stitches further on; a strand over 3 to 5 is usual."""
    plain = tuple(
        Row(n, "RS", "", (Work(DC, 12),), 12, end=End("first_stitch")) for n in range(1, 5)
    )
    rows = (*plain[:1], replace(plain[1], start=Start(across=across)), *plain[2:])
    found = list(turns((Piece("skirt", True, rows),), {"skirt": "ABBA"}))
    assert [turn.change.carried for turn in found] == [carried, False]


def test_rows_do_not_count_when_they_are_chains_rings_or_short() -> None:
    """Rows 1 to 3 leave stitches that row 4 takes up; row 6 leaves some for good."""
    chain = Row(0, "WS", "", (Chain(10, each=True),), 10)
    ring = Row(0, "RS", "", (Work("adjustable_ring"),), 1)
    founded = Row(0, "RS", "", (Work("foundation_double_crochet", 10),), 10)
    rows = (
        Row(1, "RS", "", (Work(DC, 3), Leave(7)), 3),
        Row(2, "WS", "", (Work(DC, 6), Leave(4)), 6),
        Row(3, "RS", "", (Work(DC, 3), Leave(10)), 3),
        Row(4, "WS", "", (Work(DC, 13),), 13),
        Row(5, "RS", "", (Work(DC, 13),), 13),
        Row(6, "WS", "", (Work(DC, 8), Leave(5)), 8),
        Row(7, "RS", "", (Work(DC, 8),), 8),
    )
    places = {DC: 1, "adjustable_ring": 0, "foundation_double_crochet": 0}
    of_rows = (False, False, False, True, True, True, True)
    for first, counts in ((chain, False), (ring, False), (founded, True)):
        assert counted_rows((first, *rows), places) == (counts, *of_rows)


def test_stripes_run_over_a_whole_tube_and_are_carried_at_the_join(tmp_path: Path) -> None:
    """18 cm at 10 rounds in 10 cm: a chain and 18 rounds, A A B and so on."""
    made = garment(tmp_path, TUBE, colours("A 2", "B 1"), work=JOINED)
    assert letters(made, "sleeve") == "A" + "AAB" * 6
    found = changed(made, "sleeve")
    assert list(found) == [2, 3, 5, 6, 8, 9, 11, 12, 14, 15, 17]
    assert [change.carried for change in found.values()] == [True] * 9 + [True, False]
    assert dict(ends_made(made.plan)) == {"A": 2, "B": 2}
    assert not made.faults()


def test_ends_are_counted_and_even_stripes_are_proposed_when_rows_are_odd(tmp_path: Path) -> None:
    """12 rows in stripes of three: A, B, A, B, each cut: four stripes with two ends each."""
    made = garment(tmp_path, PANEL, colours("A 3", "B 3"))
    assert letters(made, "front") == "A" + "AAABBB" * 2
    assert not any(change.carried for change in changed(made, "front").values())
    assert dict(ends_made(made.plan)) == {"A": 4, "B": 4}
    told = {remark.name: remark.sentence for remark in made.plan.remarks}
    assert told["stripe_ends"].startswith(
        "there are 8 ends to weave in: 4 of colour A, 4 of colour B"
    )
    assert "even number of rows" in told["stripe_edge"]


def test_nothing_is_proposed_when_rows_are_even(tmp_path: Path) -> None:
    """Two-row stripes are carried up the edge: two ends of each colour."""
    made = garment(tmp_path, PANEL, colours("A 2", "B 2"))
    assert dict(ends_made(made.plan)) == {"A": 2, "B": 2}
    assert "stripe_edge" not in {remark.name for remark in made.plan.remarks}


def test_even_stripes_are_not_proposed_where_an_armhole_is_in_the_way(tmp_path: Path) -> None:
    """The stitches passed at the armhole cut a colour that hangs below them; no rows mend that."""
    cut_in = f'{PANEL}\narmhole = {{ depth = "6 cm", width = "14 cm", at_once = "2 cm" }}'
    made = garment(tmp_path, cut_in, colours("A 2", "B 2"))
    assert not all(change.carried for change in list(changed(made, "front").values())[:-2])
    assert "stripe_edge" not in {remark.name for remark in made.plan.remarks}


def test_even_stripes_are_not_proposed_to_one_who_has_them(tmp_path: Path) -> None:
    """The edging comes after one row of a stripe, so A is wanted at the other edge all the same."""
    shawl = (
        '[[piece]]\nconstruction = "shawl"\nname = "shawl"\nshape = "triangle"\ndepth = "15 cm"\n'
        'edging = { pattern = "plain", hook = "3.5 mm", parameters = { rounds = 2 } }'
    )
    made = garment(tmp_path, shawl, colours("A 2", "B 2"))
    assert letters(made, "shawl")[-4:] == "ABAA"
    assert not changed(made, "shawl")[len(letters(made, "shawl")) - 4].carried
    assert "stripe_edge" not in {remark.name for remark in made.plan.remarks}


def test_section_has_stripes_of_its_own_when_it_is_named(tmp_path: Path) -> None:
    """The cuff is B, and what is not striped is in the first colour."""
    made = garment(tmp_path, TUBE, colours("B", on='"cuff"'), work=JOINED)
    assert letters(made, "sleeve") == "B" * 7 + "A" * 12


def test_border_is_striped_only_when_it_is_named(tmp_path: Path) -> None:
    """It finishes the garment, in the first colour if nothing else is said."""
    plain = garment(tmp_path, TUBE, COLLAR, colours("B 2", "A 2"), work=JOINED)
    assert letters(plain, "rim") == "AAA"
    named = garment(tmp_path, TUBE, COLLAR, colours("B 2", "A 2", on='"rim"'), work=JOINED)
    assert letters(named, "rim") == "BBA"
    assert set(letters(named, "sleeve")) == {"A"}


def test_body_goes_on_where_the_stripes_of_the_yoke_were_left(tmp_path: Path) -> None:
    """The yoke has a chain and 22 rounds, the last two in B: the body has two more of them."""
    yoke = (
        '[[piece]]\nconstruction = "raglan yoke"\nname = "yoke"\nneck = "57.5 cm"\n'
        'depth = "22 cm"\nease = "8 cm"\narm_ease = "4 cm"\nunderarm = "5 cm"\n'
    )
    body = (
        '[[piece]]\nconstruction = "tube"\nname = "body"\nstart = { on = ["yoke.body"] }\n'
        'section = [{ name = "body", length = "10 cm" }]'
    )
    made = garment(tmp_path, yoke, body, colours("A 4", "B 4"), work=JOINED)
    word = letters(made, "yoke")[1:] + letters(made, "body")
    assert len(letters(made, "yoke")) == 1 + 22
    assert word == ("AAAABBBB" * 9)[: len(word)]
    assert letters(made, "body")[:3] == "BBA"
    assert dict(ends_made(made.plan)) == {"A": 2, "B": 2}


def test_stripe_that_is_not_reached_is_told_and_not_refused(tmp_path: Path) -> None:
    """In a smaller size the work may end before it."""
    made = garment(tmp_path, TUBE, colours("A 12", "B 12"), work=JOINED)
    assert "stripe_idle" not in {remark.name for remark in made.plan.remarks}
    short = garment(tmp_path, TUBE, colours("A 18", "B 2"), work=JOINED)
    told = {remark.name: remark.sentence for remark in short.plan.remarks}
    assert told["stripe_idle"].startswith("no row is worked in colour B")
    assert set(letters(short, "sleeve")) == {"A"}


@pytest.mark.parametrize(
    ("table", "told"),
    [
        (colours("A 2", "C 2"), '"C" is no colour of this design; its names are A, B'),
        (colours("A 2", "B 2", names='A = "a", B = "b", C = "c"'), "no row is worked in colour C"),
        (colours("A", "B 2"), "only the last one"),
        (colours("A 2", "B 2", on='"sleve"'), 'did you mean "sleeve"'),
        (colours("B 2", "A 2", on='"cuff", "cuff"'), '"cuff" is striped twice'),
        (
            colours("A 2", "B 2") + colours("B 2", "A 2").split("}\n", 1)[1].join(("\n", "")),
            "striped twice",
        ),
    ],
)
def test_colours_are_refused_in_one_sentence_when_they_cannot_be(
    table: str, told: str, tmp_path: Path
) -> None:
    """With the key."""
    with pytest.raises(InputError, match=r"colours\.") as refused:
        plan(pieces_basis(tmp_path, TUBE, table, work=JOINED))
    assert told in str(refused.value)


PATTERN_READING = (
    '[[reading]]\nstate = "washed"\npattern = "stripes_single"\nrepeats = 18\nwidth = "10 cm"\n'
    'rows = 20\nheight = "10 cm"\n'
)
PATTERNED = (
    '[[piece]]\nconstruction = "tube"\nname = "sleeve"\nstart = { with = "chain", girth = "22 cm" }\n'
    'section = [{ name = "cuff", length = "2 cm" }, { name = "band", pattern = "stripes_single", '
    'length = "3 cm" }, { name = "arm", length = "3 cm" }]'
)


def patterned(folder: Path, table: str = "") -> Basis:
    """The sleeve with a band of two-row stripes, and a swatch in them."""
    sample = swatch(18, 10) + PATTERN_READING
    found = pieces_basis(folder, PATTERNED, table, work=JOINED, sample=sample)
    return replace(found, library=library_of(found.design, found.scope.where))


def worked(basis: Basis) -> Garment:
    """The garment of a basis."""
    made = plan(basis)
    return Garment(basis, made, expand(made.program, dictionary()))


def test_pattern_in_colours_stands_between_stripes_of_others(tmp_path: Path) -> None:
    """Two rounds of C, two-row stripes of A and B over six, three rounds of C."""
    stripes = colours("C", on='"cuff", "arm"', names='A = "a", B = "b", C = "c"')
    made = worked(patterned(tmp_path, stripes))
    assert letters(made, "sleeve") == "C" + "CC" + "AABBAA" + "CCC"
    assert dict(ends_made(made.plan)) == {"A": 2, "B": 2, "C": 4}
    assert not made.faults()


def test_colours_of_a_pattern_need_no_names(tmp_path: Path) -> None:
    """What is not in the pattern is in the first of its colours."""
    made = worked(patterned(tmp_path))
    assert letters(made, "sleeve") == "A" + "AA" + "AABBAA" + "AAA"


def test_stripes_are_refused_on_top_of_a_pattern_in_colours(tmp_path: Path) -> None:
    """With the section that has it, and what to do."""
    with pytest.raises(InputError, match='"sleeve band" changes colour by its own') as refused:
        plan(patterned(tmp_path, colours("A 1", "B 1")))
    assert 'name the other pieces or sections in "on"' in str(refused.value)


def of_colour(folder: Path, colour: str, stitches: float, stitch: str = "dc") -> dict[str, str]:
    """The remarks on a second swatch, in the yarn of a colour, beside one of 18 by 10 doubles."""
    found = pieces_basis(folder, TUBE, colours("A 2", "B 2"), work=JOINED)
    (folder / "second.toml").write_text(
        f"{swatch(stitches, 10, stitch)}".replace("hook", f'colour = "{colour}"\nhook', 1),
        encoding="utf-8",
    )
    both = replace(found, swatches=(*found.swatches, load_swatch(folder / "second.toml")))
    return {remark.name: remark.sentence for remark in plan(both).remarks if remark.serious}


def test_yarn_of_a_colour_is_warned_of_when_its_gauge_is_another(tmp_path: Path) -> None:
    """20 stitches in 10 cm beside 18; 18.2 are the same to the eye."""
    assert "20 stitches against 18 in 10 cm" in of_colour(tmp_path, "B", 20)["colour_gauge"]
    assert not of_colour(tmp_path, "B", 18.25)


def test_yarn_of_a_colour_is_warned_of_when_nobody_knows_its_gauge(tmp_path: Path) -> None:
    """It was swatched in another stitch."""
    told = of_colour(tmp_path, "B", 18, "sc")["colour_gauge"]
    assert "has no gauge of double crochet" in told


def test_swatch_of_a_colour_is_warned_of_when_nothing_is_worked_in_it(tmp_path: Path) -> None:
    """A slip in its letter."""
    assert "colour C, and no row is worked in that" in of_colour(tmp_path, "C", 18)["colour_swatch"]


def test_plan_is_as_it_was_when_the_design_has_no_colours(tmp_path: Path) -> None:
    """No letter and no change anywhere."""
    made = garment(tmp_path, TUBE, work=JOINED)
    assert {piece.colour for piece in made.plan.program.pieces} == {""}
    assert not changed(made, "sleeve")
