"""The colours that a design asks for, given to the rows of a plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from frogless.design.colours import Colours
from frogless.plan.basis import Basis
from frogless.plan.colour_choice import check, check_used, own_rows, stripes_of
from frogless.plan.colour_yarns import yarn_remarks
from frogless.plan.model import Plan, Remark
from frogless.plan.stripes import Turn, begins, counted_rows, stripe_at, turns, with_changes
from frogless.rows.colours import colours_of, ends_of, threads
from frogless.rows.nodes import Base, Piece

#: The edges on which a piece goes on where another piece left off.
TOPS = frozenset({"last_row", "row"})

Rows = Counter[int]
"""How many rows of each of the design's stripes have been worked, by its index."""


@dataclass(frozen=True, slots=True)
class _Painted:
    """The colour of each row of a piece, and the rows of stripes worked when each is done."""

    letters: tuple[str, ...]
    reached: Mapping[int, Rows]


def with_colours(basis: Basis, plan: Plan) -> Plan:
    """The plan in the colours of its design; as it is when neither that nor a pattern has any.

    Raises:
        InputError: a colour without a name or without a row, stripes on nothing or on a piece that
            changes colour by its own pattern.
    """
    asked = basis.design.colours or _of_patterns(plan)
    if asked is None:
        return plan
    check(basis, plan, asked)
    painted: dict[str, _Painted] = {}
    for piece in plan.program.pieces:
        painted[piece.name] = _painted(basis, plan, asked, piece, painted)
    letters = {name: each.letters for name, each in painted.items()}
    found = threads(plan.program)
    turned = tuple(turn for thread in found for turn in turns(thread, letters))
    begun = {piece.name: begin for thread in found for piece, begin in begins(thread, letters)}
    pieces = tuple(with_changes(piece, begun[piece.name], turned) for piece in plan.program.pieces)
    made = replace(plan, program=replace(plan.program, pieces=pieces))
    check_used(basis, made, asked)
    told = (*_remarks(made, asked, turned), *yarn_remarks(basis, made))
    return replace(made, remarks=(*made.remarks, *told))


def _of_patterns(plan: Plan) -> Colours | None:
    """The colours of stitch patterns alone, which the design has no names for."""
    letters = colours_of(plan.program)
    return Colours(names={letter: letter for letter in letters}) if letters else None


def _painted(
    basis: Basis, plan: Plan, asked: Colours, piece: Piece, before: Mapping[str, _Painted]
) -> _Painted:
    """A piece begun on top of another goes on with its stripes where those were left."""
    worked, reached = _begun(piece, before), dict[int, Rows]()
    planned, main = plan.piece(piece.name), min(asked.names)
    counted = counted_rows(piece.rows, {k: s.stands_on for k, s in basis.stitches.items()})
    own = own_rows(basis, piece, planned)
    letters: list[str | None] = []
    for row, counts in zip(piece.rows, counted, strict=True):
        stripes = stripes_of(asked, piece, planned, row)
        if row.number in own:
            letters.append(own[row.number])
        elif not counts:
            letters.append(None)
        elif stripes is None:
            letters.append(main)
        else:
            letters.append(stripe_at(worked[stripes], asked.stripes[stripes].repeat))
            worked[stripes] += 1
        reached[row.number] = Counter(worked)
    return _Painted(_filled(letters, main), reached)


def _begun(piece: Piece, before: Mapping[str, _Painted]) -> Rows:
    """The rows of stripes below a piece that is worked on top of another; a copy."""
    for base in piece.bases:
        if base.edge in TOPS and (found := _reached(base, before)) is not None:
            return Counter(found)
    return Counter()


def _reached(base: Base, before: Mapping[str, _Painted]) -> Rows | None:
    reached = before[base.piece].reached
    return reached.get(base.row if base.edge == "row" else max(reached, default=0))


def _filled(letters: Sequence[str | None], main: str) -> tuple[str, ...]:
    """Rows that do not count have the colour of the next one that does, else of the one before."""
    filled: list[str] = []
    for i, letter in enumerate(letters):
        later = (each for each in letters[i:] if each is not None)
        other = filled[-1] if filled else main
        filled.append(next(later, other) if letter is None else letter)
    return tuple(filled)


def _remarks(plan: Plan, asked: Colours, turned: Sequence[Turn]) -> Iterator[Remark]:
    """Colours that are not reached, how many ends they leave, and how some could be saved."""
    for letter in sorted(set(asked.names) - set(colours_of(plan.program))):
        told = f"no row is worked in colour {letter}: the work ends before its stripe"
        yield Remark("stripe_idle", told, serious=False)
    ends = ends_made(plan)
    if turned:
        listed = ", ".join(f"{number} of colour {letter}" for letter, number in ends.items())
        told = f"there are {sum(ends.values())} ends to weave in: {listed}"
        yield Remark("stripe_ends", told, serious=False)
    odd = dict.fromkeys(turn.piece.name for turn in turned if turn.is_cut_for_its_edge)
    # Where the work ends in the middle of a stripe, no other stripes would help.
    if odd and any((stripe.rows or 0) % 2 for each in asked.stripes for stripe in each.repeat):
        yield Remark(
            "stripe_edge",
            f"a colour is cut ({', '.join(odd)}) because it is wanted again at the other edge; stripes of "
            "an even number of rows end where they began, and the colour could be carried up the edge",
            serious=False,
        )


def ends_made(plan: Plan) -> Counter[str]:
    """Ends to weave in, by letter, of all pieces as often as each is made."""
    found: Counter[str] = Counter()
    for thread in threads(plan.program):
        planned = plan.piece(thread[0].name)
        for letter, number in ends_of(thread).items():
            found[letter] += number * (planned.number_made if planned else 1)
    return Counter(dict(sorted(found.items())))
