"""Any stripes over any kind of piece: each row has its colour, and the text says so."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pieces_designs import Garment, garment

from frogless.design.colours import Stripe
from frogless.fabric.colours import carried, coloured
from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.plan.colours import ends_made
from frogless.plan.stripes import MOST_CARRIED, counted_rows, stripe_at
from frogless.proof.checks.colours import check_colours
from frogless.proof.model import Subject
from frogless.read.build import read_program
from frogless.rows.colours import changes, colours_of, threads
from frogless.stitches.load import dictionary, stands_on
from frogless.stitches.model import Dialect
from frogless.tally.catches import main_gauge, works
from frogless.write.pattern import write_program

PIECES = {
    "tube": (
        '[[piece]]\nconstruction = "tube"\nname = "tube"\n'
        'start = { with = "foundation_double_crochet", girth = "22 cm" }\n'
        'section = [{ name = "cuff", length = "6 cm" }, { name = "arm", shape = "shaped", '
        'length = "14 cm", girth = "30 cm" }]'
    ),
    "panel": (
        '[[piece]]\nconstruction = "panel"\nname = "front"\nwidth = "30 cm"\nlength = "24 cm"\n'
        'armhole = { depth = "10 cm", at_once = "2 cm" }\nneck = { width = "10 cm", depth = "4 cm" }\n'
        'shoulder = { drop = "2 cm" }\nfull_bust = { extra = "2 cm", above = "8 cm" }'
    ),
    "shawl": (
        '[[piece]]\nconstruction = "shawl"\nname = "shawl"\nshape = "triangle"\ndepth = "18 cm"'
    ),
    "hat": (
        '[[piece]]\nconstruction = "disc"\nname = "crown"\nradius = "8 cm"\n'
        'section = [{ name = "side", length = "6 cm" }]'
    ),
    "yoke and body": (
        '[[piece]]\nconstruction = "raglan yoke"\nname = "yoke"\nneck = "57.5 cm"\n'
        'depth = "22 cm"\nease = "8 cm"\narm_ease = "4 cm"\nunderarm = "5 cm"\n'
        '[[piece]]\nconstruction = "tube"\nname = "body"\nstart = { on = ["yoke.body"] }\n'
        'section = [{ name = "body", length = "8 cm" }]'
    ),
}
WORK = 'rounds = "joined and turned"\nturning_chain = 3'
#: Of every kind, in stripes that no two neighbours share.
REPEATS = st.lists(
    st.tuples(st.sampled_from("ABC"), st.integers(1, 6)), min_size=2, max_size=4
).filter(lambda found: all(a[0] != b[0] for a, b in pairwise([*found, found[0]])))


@cache
def plain(kind: str) -> Garment:
    """The garment of one kind in one colour."""
    with tempfile.TemporaryDirectory() as folder:
        return garment(Path(folder), PIECES[kind], work=WORK)


def work(made: Garment) -> float:
    """The work of all its parts, mm."""
    gauge = main_gauge(made.plan, made.basis.main_swatch)
    return sum(part.work for part in works(made.fabric, made.plan, dictionary(), gauge))


@cache
def striped(kind: str, repeat: tuple[tuple[str, int], ...]) -> Garment:
    """The garment of one kind in stripes."""
    listed = ", ".join(f'{{ colour = "{letter}", rows = {rows} }}' for letter, rows in repeat)
    names = ", ".join(f'{x} = "{x}"' for x in sorted({letter for letter, _ in repeat}))
    table = f"[colours]\nnames = {{ {names} }}\n[[colours.stripes]]\nrepeat = [{listed}]"
    with tempfile.TemporaryDirectory() as folder:
        return garment(Path(folder), PIECES[kind], table, work=WORK)


def begun(made: Garment) -> Iterator[tuple[str, list[str]]]:
    """The colour that each row of each piece begins with, from the changes alone."""
    for piece in made.plan.program.pieces:
        used, letters = piece.colour, []
        for row in piece.rows:
            letters.append(used)
            used = next((c.colour for c in changes(row.body)), used)
        yield piece.name, letters


@pytest.mark.parametrize("kind", PIECES)
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(repeat=REPEATS)
def test_rows_have_the_colours_of_their_stripes_and_the_text_reads_back(
    kind: str, repeat: list[tuple[str, int]]
) -> None:
    """Counted rows follow the stripes, on from piece to piece; the proof and both texts agree."""
    made = striped(kind, tuple(repeat))
    program, known = made.plan.program, dictionary()
    stripes = [Stripe(colour=letter, rows=rows) for letter, rows in repeat]
    reached = 0
    for name, letters in begun(made):
        rows = program.piece(name).rows
        if rows[0].number > 1:  # a half, whose stripes go on from a row further down
            continue
        for letter, counts in zip(letters, counted_rows(rows, stands_on(known)), strict=True):
            if counts:
                assert letter == stripe_at(reached, stripes)
                reached += 1
    assert not made.faults()
    used = colours_of(program)
    dialects: tuple[Dialect, ...] = ("us", "uk")
    texts = {d: write_program(program, known, d) for d in dialects}
    subject = Subject(made.plan, program, made.fabric, None, known, texts, used)  # type: ignore[arg-type]
    assert not check_colours(subject).faults
    for dialect, text in texts.items():
        assert same(made.fabric, expand(read_program(text, known, dialect), known)) is None


@pytest.mark.parametrize("kind", PIECES)
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(repeat=REPEATS)
def test_what_is_carried_is_near_and_every_end_has_another(
    kind: str, repeat: list[tuple[str, int]]
) -> None:
    """Not over more rows than are usual; and colours add up to the yarn of one."""
    made = striped(kind, tuple(repeat))
    ends = ends_made(made.plan)
    assert set(ends) == set(colours_of(made.plan.program))
    assert all(number % 2 == 0 and number > 0 for number in ends.values())
    for thread in threads(made.plan.program):
        rows = tuple(row for piece in thread for row in made.rows(piece.name))
        for run in carried(thread[0].colour, rows):
            assert 0 < run.taken[0] - run.left[0] <= MOST_CARRIED
            first, last = rows[run.left[0]].row, rows[run.taken[0]].row
            if not thread[0].closed:
                assert first.side == last.side
        sizes = [found.stitch.size for found in coloured(thread[0].colour, rows).rows]
        assert sizes == [row.stitch.size for row in rows]
    assert work(made) == pytest.approx(work(plain(kind)))
