"""Any sound program, written in either dialect, is read back as the same program."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from property.strategies import bases

from frogless.fabric.compare import same
from frogless.fabric.expand import expand
from frogless.read.build import read_piece, read_program
from frogless.rows.count import row_left
from frogless.rows.nodes import (
    Base,
    Chain,
    End,
    Into,
    Node,
    Piece,
    Program,
    Repeat,
    Row,
    Seam,
    Side,
    Skip,
    Start,
    Together,
    Work,
)
from frogless.rows.spread import even_spread
from frogless.rows.walk import flatten
from frogless.stitches.load import dictionary, leaves
from frogless.stitches.model import Dialect
from frogless.write.pattern import write_pieces, write_program, write_rows

STITCHES = dictionary()
LEAVES = leaves(STITCHES)
DIALECTS: tuple[Dialect, ...] = ("us", "uk")
FOUNDATIONS = [key for key, stitch in STITCHES.items() if stitch.begins_on]
PLAIN = [
    key
    for key, stitch in STITCHES.items()
    if stitch.kind == "stitch" and (stitch.stands_on, stitch.leaves) == (1, 1)
]
ORNAMENTS = [key for key, stitch in STITCHES.items() if stitch.kind == "ornament"]
TRIMS = [key for key, stitch in STITCHES.items() if stitch.kind == "trim"]
HOOKS = st.sampled_from([1.75, 2.25, 3.5, 3.75, 4.0])
WAYS = st.sampled_from(["joined and turned", "joined", "spiral"])


def _end(way: str, start: Start, draw: st.DrawFn) -> End:
    if way == "spiral":
        return End()
    top = start.chains > 0 and draw(st.booleans())
    return End("chain_top" if top else "first_stitch", turn=way == "joined and turned")


def _flipped(side: Side, before: Row) -> Side:
    if not before.end.turn:
        return side
    return "WS" if side == "RS" else "RS"


def _group(draw: st.DrawFn) -> Into:
    """Several stitches in one place, some of them ornaments or chains."""
    inner = st.one_of(
        st.builds(Work, st.sampled_from(PLAIN), st.integers(1, 4)),
        st.builds(Work, st.sampled_from(ORNAMENTS)),
        st.builds(Chain, st.integers(1, 5)),
    )
    first = Work(draw(st.sampled_from(PLAIN)))
    return Into((first, *draw(st.lists(inner, max_size=5))))


def _shaped(stitch: str, places: int, draw: st.DrawFn) -> tuple[tuple[Node, ...], int]:
    """k points, each an increase of one or two or a decrease, over all places."""
    points = draw(st.integers(1, min(8, places // 3)))
    add = draw(st.sampled_from([1, 2, -1]))
    uses = 2 if add < 0 else 1
    gap, rest = divmod(places - points * uses, points)
    one: Node = Together(stitch, 2) if add < 0 else Into((Work(stitch, 1 + add),))
    rows: list[Node] = (
        [Repeat((one, Work(stitch, gap)), points)] if gap else [Repeat((one,), points)]
    )
    return (*rows, *((Work(stitch, rest),) if rest else ())), points


def _lace(stitch: str, places: int, draw: st.DrawFn) -> tuple[Node, ...]:
    """Eyelets: chains over places passed over, the rest plain."""
    gap = draw(st.integers(2, 5))
    times, rest = divmod(places, gap + 1)
    eyelet = Repeat((Chain(draw(st.integers(1, 2))), Skip(), Work(stitch, gap)), times)
    body = [eyelet] if times else []
    return (*body, *((Work(stitch, rest),) if rest else ()))


def _edging(places: int, draw: st.DrawFn) -> tuple[Node, ...]:
    """Groups in one place with plain stitches and skips between; what is left over is plain."""
    plain, skip = draw(st.integers(0, 3)), draw(st.integers(0, 2))
    times, rest = divmod(places, plain + skip + 1)
    items: list[Node] = [Work("single_crochet", plain)] if plain else []
    items.append(_group(draw))
    items += [Skip(skip)] if skip else []
    items += [Chain(1)] if draw(st.booleans()) else []
    body: list[Node] = [Repeat(tuple(items), times)] if times else []
    return (*body, *((Work("single_crochet", rest),) if rest else ()))


def _body(
    kind: str, stitch: str, places: int, draw: st.DrawFn
) -> tuple[tuple[Node, ...], tuple[int, ...]]:
    if kind == "shaped" and places >= 6:
        body, points = _shaped(stitch, places, draw)
        groups = st.lists(st.integers(0, 2), min_size=points, max_size=points)
        return body, tuple(draw(groups)) if draw(st.booleans()) else ()
    if kind == "lace":
        return _lace(stitch, places, draw), ()
    if kind == "edging":
        return _edging(places, draw), ()
    if kind == "doubled":
        return (Repeat((_group(draw),), places),), ()
    return (Work(stitch, places),), ()


def _next(before: Row, way: str, draw: st.DrawFn, kinds: list[str]) -> Row:
    """A sound row on the one before."""
    places = row_left(before, LEAVES)
    chains = draw(st.integers(0, 4))
    start = Start(chains, counts=chains > 0 and places > 6 and draw(st.booleans()))
    kind = draw(st.sampled_from(kinds))
    stitch = draw(st.sampled_from(PLAIN))
    body, marks = _body(kind, stitch, places - start.counts, draw)
    backwards = kind == "plain" and way != "joined and turned" and draw(st.booleans())
    row = Row(
        before.number + 1,
        _flipped(before.side, before),
        before.section if draw(st.booleans()) else f"part {before.number + 1}",
        body,
        0,
        start,
        _end(way, start, draw) if way != "rows" else End(turn=draw(st.booleans())),
        marks,
        backwards=backwards,
        hook=draw(HOOKS) if before.hook and draw(st.booleans()) else before.hook,
    )
    return replace(row, count=row_left(row, LEAVES))


def _plain_again(row: Row, n: int) -> list[Row]:
    """n plain rows on a row, all alike but for their side, so that they fold."""
    rows = [row]
    for _ in range(n):
        before = rows[-1]
        places = before.count
        again = replace(
            before,
            number=before.number + 1,
            side=_flipped(before.side, before),
            body=(Work("double_crochet", places),),
            start=Start(2),
            marks=(),
            backwards=False,
            end=replace(before.end, join="first_stitch" if before.end.join != "none" else "none"),
        )
        rows.append(replace(again, count=row_left(again, LEAVES)))
    return rows[1:]


@st.composite
def tubes(draw: st.DrawFn) -> Piece:
    """A piece in rounds: foundation, then rounds of every kind."""
    way, n = draw(WAYS), draw(st.integers(3, 40))
    foundation = (
        Chain(n, each=True) if draw(st.booleans()) else Work(draw(st.sampled_from(FOUNDATIONS)), n)
    )
    hook = draw(st.sampled_from([0.0, 3.75]))
    first = End("none" if way == "spiral" else "first_stitch", turn=way == "joined and turned")
    rows = [
        Row(0, "RS", draw(st.sampled_from(["", "top"])), (foundation,), n, end=first, hook=hook)
    ]
    for _ in range(draw(st.integers(0, 4))):
        rows.append(_next(rows[-1], way, draw, ["plain", "shaped", "lace", "edging", "doubled"]))
        rows += _plain_again(rows[-1], draw(st.integers(0, 3)))
    rows[-1] = replace(rows[-1], end=replace(rows[-1].end, turn=False, fasten_off=True))
    return Piece("skirt", True, tuple(rows))


@st.composite
def bands(draw: st.DrawFn) -> Piece:
    """A piece in rows on a foundation chain."""
    n = draw(st.integers(2, 12))
    rows = [Row(0, "WS", "", (Chain(n, each=True),), n, end=End(turn=True), hook=3.5)]
    for _ in range(draw(st.integers(1, 3))):
        rows.append(_next(rows[-1], "rows", draw, ["plain", "shaped", "edging"]))
        rows += _plain_again(rows[-1], draw(st.integers(0, 4)))
    return Piece("band", False, tuple(rows))


@st.composite
def strands(draw: st.DrawFn) -> Piece:
    """Beads and chains."""
    bead = Work(draw(st.sampled_from(TRIMS)), draw(st.integers(1, 3)))
    times = draw(st.integers(1, 30))
    between = draw(st.integers(1, 30))
    half = draw(st.integers(0, between // 2))
    body = (
        *((Chain(half),) if half else ()),
        Repeat((bead, Chain(between)), times),
        *((bead, Chain(between - half)) if half else ()),
    )
    number, count = draw(st.integers(0, 1)), times + 2 * (half > 0)
    return Piece("strand", False, (Row(number, "RS", "", body, count, end=End(fasten_off=True)),))


@st.composite
def programs(draw: st.DrawFn) -> Program:
    """A tube, a cover on its foundation edge, a band and a strand, and a seam."""
    tube, band = draw(tubes()), draw(bands())
    n = tube.rows[0].count
    cover = replace(
        _next(
            Row(0, "RS", "", (Chain(n, each=True),), n),
            "joined",
            draw,
            ["plain", "doubled", "shaped", "lace"],
        ),
        backwards=False,
    )
    on_edge = Piece("cover", True, (cover,), (Base("skirt", "foundation"),))
    spread = tuple(draw(st.lists(st.integers(0, 3), min_size=1, max_size=40)))
    seam = Seam(
        "waist to band",
        draw(st.sampled_from(PLAIN)),
        (Base("skirt", "foundation"),),
        (Base("band", draw(st.sampled_from(["row_ends", "last_row"]))),),
        sum(spread),
        len(spread),
        spread if draw(st.booleans()) else (),
    )
    return Program((tube, on_edge, band, draw(strands())), (seam,))


def _flat(program: Program) -> Program:
    """The same with bodies as short as they get: how a repeat is written out is not told apart."""
    pieces = tuple(
        replace(p, rows=tuple(replace(row, body=flatten(row.body)) for row in p.rows))
        for p in program.pieces
    )
    return replace(program, pieces=pieces)


@settings(max_examples=120, deadline=None)
@given(programs())
def test_program_comes_back_when_written_and_read(program: Program) -> None:
    """Rows, sides, joins, chains, counts, marks, hooks, bases and seams are all in the text."""
    for dialect in DIALECTS:
        text = write_program(program, STITCHES, dialect)
        read = read_program(text, STITCHES, dialect)
        assert _flat(read) == _flat(program), text
        assert same(expand(program, STITCHES), expand(read, STITCHES)) is None


@settings(max_examples=60, deadline=None)
@given(tubes())
def test_rows_say_the_same_folded_and_unfolded(piece: Piece) -> None:
    """A folded line is worth its rows written out."""
    program = Program((piece,))
    folded = write_pieces(program, STITCHES, "us")[0].lines
    single = write_rows(piece, STITCHES, "us")
    assert len(single) == len(piece.rows)
    told = [
        read_piece(
            [f"{line.label}: {line.text} ({line.count})" for line in lines],
            STITCHES,
            "us",
            name="skirt",
        )
        for lines in (folded, single)
    ]
    bodies = [[(row.number, row.side, flatten(row.body)) for row in p.rows] for p in told]
    assert bodies[0] == bodies[1]


def _named_rows(stretches: tuple[Base, ...]) -> tuple[Base, ...]:
    """Stretches with the number of a row only where it says something."""
    return tuple(
        base if base.edge in ("row", "underside") else replace(base, row=0) for base in stretches
    )


@st.composite
def joined(draw: st.DrawFn) -> Program:
    """Two pieces and seams along any stretches of their edges, evenly spread or not."""
    band, tube = draw(bands()), draw(tubes())
    seams = []
    for name in draw(st.lists(st.sampled_from(["side", "band to skirt"]), max_size=2, unique=True)):
        count, over = draw(st.integers(1, 40)), draw(st.integers(1, 40))
        uneven = tuple(draw(st.lists(st.integers(0, 3), min_size=over, max_size=over)))
        first, second = draw(bases(band)), draw(bases(tube))
        seams.append(
            Seam(
                name,
                draw(st.sampled_from(PLAIN)),
                _named_rows(first),
                _named_rows(second),
                count,
                over,
                draw(st.sampled_from([(), (1,) * over, even_spread(count, over), uneven])),
            )
        )
    return Program((tube, band), tuple(seams))


@settings(max_examples=100, deadline=None)
@given(joined())
def test_seams_along_any_stretches_come_back(program: Program) -> None:
    """Stretches on both sides, their numbers, their direction, and how they are spread."""
    for dialect in DIALECTS:
        text = write_program(program, STITCHES, dialect)
        assert read_program(text, STITCHES, dialect).seams == program.seams, text


@settings(max_examples=60, deadline=None)
@given(bands(), st.integers(2, 6), st.integers(2, 3))
def test_rows_in_turn_come_back_one_by_one(piece: Piece, times: int, period: int) -> None:
    """However often, and on whichever side they begin."""
    rows = list(piece.rows)
    last = rows[-1]
    stitches = ("single_crochet", "double_crochet", "half_double_crochet")[:period]
    for turn in range(times * period):
        before = rows[-1]
        body = (Work(stitches[turn % period], before.count),)
        end = replace(last.end, fasten_off=False)
        side = _flipped(before.side, before)
        row = Row(before.number + 1, side, last.section, body, before.count, Start(1), end)
        rows.append(replace(row, hook=last.hook))
    program = Program((replace(piece, rows=tuple(rows)),))
    text = write_program(program, STITCHES, "us")
    assert _flat(read_program(text, STITCHES, "us")) == _flat(program), text
