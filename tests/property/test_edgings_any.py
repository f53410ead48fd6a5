"""Any edging, laid in any of its ways, and any motif: sound, and the same when read back."""

from __future__ import annotations

from collections.abc import Mapping

from hypothesis import given
from hypothesis import strategies as st

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_program
from frogless.read.motifs import motif
from frogless.rows.nodes import Chain, End, Piece, Program, Row
from frogless.stitches.edged import in_rounds, in_rows, places_with_corners, round_corners
from frogless.stitches.edgings import build, patterns
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.motifs import motifs
from frogless.stitches.parameters import Parameter
from frogless.write.pattern import write_program

DIALECTS = st.sampled_from(("us", "uk"))


@st.composite
def chosen(draw: st.DrawFn, parameters: Mapping[str, Parameter]) -> dict[str, int]:
    """A value for each parameter, anywhere in its range."""
    return {name: draw(st.integers(p.low, p.high)) for name, p in parameters.items()}


@st.composite
def edged(draw: st.DrawFn) -> Program:
    """An edging on a chain: in rounds, in rows, or round a shape of three to six sides."""
    pattern = draw(st.sampled_from(tuple(patterns().values())))
    found = build(pattern, draw(chosen(pattern.parameters)))
    ways = ["rounds"] + ["rows"] * bool(found.rows) + ["corners"] * bool(found.sides)
    way = draw(st.sampled_from(ways))
    repeats = draw(st.lists(st.integers(1, 20), min_size=3, max_size=6))
    if way == "corners":
        sides = [found.side_offset + found.multiple * n for n in repeats]
        return on_chain(round_corners(found, sides, dictionary()), places_with_corners(sides))
    if way == "rows":
        places = found.row_offset + found.multiple * repeats[0]
        return on_chain(in_rows(found, places, dictionary()), places, closed=False)
    places = found.multiple * repeats[0]
    return on_chain(in_rounds(found, places, dictionary()), places)


def on_chain(rows: tuple[Row, ...], places: int, *, closed: bool = True) -> Program:
    """Rows worked into a chain of so many."""
    end = End("first_stitch") if closed else End(turn=True)
    chain = Row(0, "RS" if closed else "WS", "", (Chain(places, each=True),), places, end=end)
    return Program((Piece("edging", closed, (chain, *rows)),))


def check_reads_back(program: Program, dialect: Dialect) -> None:
    """The text in that dialect is the text of the same fabric."""
    again = read_program(write_program(program, dictionary(), dialect), dictionary(), dialect)
    assert same(expand(again, dictionary()), expand(program, dictionary())) is None


@given(edged(), DIALECTS)
def test_any_edging_uses_every_place_and_reads_back(program: Program, dialect: Dialect) -> None:
    """Whatever its parameters, its repeats and its way."""
    for row in expand(program, dictionary()).pieces["edging"][1:]:
        assert not row.overrun
        assert ((row.used > 0).astype(int) + row.skipped == 1).all()
        assert row.row.count == row.places
    check_reads_back(program, dialect)


@given(st.data(), st.sampled_from(tuple(motifs())), DIALECTS)
def test_any_motif_is_proven_and_reads_back(
    data: st.DataObject, key: str, dialect: Dialect
) -> None:
    """Whatever its parameters and its rounds; reading it proves it."""
    entry = motifs()[key]
    rounds = data.draw(st.integers(1, 20 if entry.grows else entry.own_rounds))
    made = motif(key, rounds, data.draw(chosen(entry.parameters)))
    assert len(made.counts) == rounds
    check_reads_back(made.program, dialect)
