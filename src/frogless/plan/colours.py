"""The colours that a design asks for, given to the rows of a plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from frogless.design.colours import Colours, Stripes
from frogless.errors import InputError, near_names
from frogless.plan.basis import Basis
from frogless.plan.model import PiecePlan, Plan, Remark
from frogless.plan.stripes import Turn, begins, counted_rows, stripe_at, turns, with_changes
from frogless.rows.colours import changes, colours_of, ends_of, has_changes, threads
from frogless.rows.nodes import Base, Piece, Row

#: What is striped only where it is named: it finishes a garment rather than being its fabric.
FINISHES = frozenset({"border", "cord"})

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
    _check(basis, plan, asked)
    painted: dict[str, _Painted] = {}
    for piece in plan.program.pieces:
        painted[piece.name] = _painted(basis, plan, asked, piece, painted)
    letters = {name: each.letters for name, each in painted.items()}
    found = threads(plan.program)
    turned = tuple(turn for thread in found for turn in turns(thread, letters))
    begun = {piece.name: begin for thread in found for piece, begin in begins(thread, letters)}
    pieces = tuple(with_changes(piece, begun[piece.name], turned) for piece in plan.program.pieces)
    made = replace(plan, program=replace(plan.program, pieces=pieces))
    _check_used(basis, made, asked)
    return replace(made, remarks=(*made.remarks, *_remarks(made, asked, turned)))


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
    own = _own(basis, piece, planned)
    letters: list[str | None] = []
    for row, counts in zip(piece.rows, counted, strict=True):
        stripes = _stripes_of(asked, piece, planned, row)
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


def _own(basis: Basis, piece: Piece, planned: PiecePlan | None) -> Mapping[int, str]:
    """Rows of stitch patterns that change colours, by number, with the colour to begin them with.

    It is "" where a row goes on with what the row below it ends in.
    """
    if not has_changes(piece):
        return {}
    found = {row.number: "" for row in piece.rows if any(changes(row.body))}
    above = ""
    for section in planned.sections if planned else ():
        numbers = range(section.first_round, section.last_round + 1)
        if section.pattern is not None and found.keys() & set(numbers):
            key, closed = section.pattern.key, piece.closed
            way = basis.pattern(key, dict(section.pattern.parameters), key, closed=closed).way
            found |= dict.fromkeys(numbers, "")
            again = section.first_round in section.pattern.based or key != above
            found[section.first_round] = way.colour if again else ""
        above = section.pattern.key if section.pattern is not None else ""
    return found


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


def _stripes_of(asked: Colours, piece: Piece, planned: PiecePlan | None, row: Row) -> int | None:
    """Which of the design's stripes a row is in: those of its section, else of its piece, else all.

    An edging is only in stripes of its own, and so are borders, cords and trims.
    """
    sections = {row.section, row.section.removeprefix(f"{piece.name} ")}
    for i, stripes in enumerate(asked.stripes):
        if sections & set(stripes.on):
            return i
    if planned is not None and _is_edging(planned, row):
        return None
    for i, stripes in enumerate(asked.stripes):
        if any(_is_of(piece, name) for name in stripes.on):
            return i
    if planned is None or planned.construction in FINISHES:
        return None
    return next((i for i, stripes in enumerate(asked.stripes) if not stripes.on), None)


def _is_edging(planned: PiecePlan, row: Row) -> bool:
    edging = planned.edging
    return edging is not None and edging.first_round <= row.number <= edging.last_round


def _is_of(piece: Piece, name: str) -> bool:
    """Whether it is the piece of that name, or a half of it ("front, right side")."""
    return piece.name == name or piece.name.startswith(f"{name}, ")


def _check(basis: Basis, plan: Plan, asked: Colours) -> None:
    named: set[str] = set()
    for i, stripes in enumerate(asked.stripes):
        key = f"colours.stripes.{i + 1}"
        _check_repeat(basis, asked, stripes, key)
        if not stripes.on and any(not other.on for other in asked.stripes[:i]):
            message = 'the whole garment is striped twice; say which pieces these are "on"'
            raise InputError(message, basis.scope.where(key))
        for name in stripes.on:
            _check_on(basis, plan, name, named, f"{key}.on")
            named.add(name)
        for piece in plan.program.pieces:
            planned = plan.piece(piece.name)
            own = _own(basis, piece, planned)
            for row in piece.rows:
                if row.number in own and _stripes_of(asked, piece, planned, row) == i:
                    raise _striped_twice(basis, row.section or piece.name, key)


def _striped_twice(basis: Basis, name: str, key: str) -> InputError:
    return InputError(
        f'"{name}" changes colour by its own stitch pattern; stripes do not go on top of that: name '
        'the other pieces or sections in "on"',
        basis.scope.where(key),
    )


def _check_repeat(basis: Basis, asked: Colours, stripes: Stripes, key: str) -> None:
    for k, stripe in enumerate(stripes.repeat, 1):
        where = f"{key}.repeat.{k}"
        if stripe.colour not in asked.names:
            listed = ", ".join(asked.names)
            message = f'"{stripe.colour}" is no colour of this design; its names are {listed}'
            raise InputError(message, basis.scope.where(f"{where}.colour"))
        if stripe.rows is None and k < len(stripes.repeat):
            message = "a stripe without rows has all that are left, so only the last one can be so"
            raise InputError(message, basis.scope.where(where))


def _check_on(basis: Basis, plan: Plan, name: str, named: set[str], key: str) -> None:
    known = {p.name.partition(", ")[0] for p in plan.program.pieces}
    known |= {row.section for piece in plan.program.pieces for row in piece.rows}
    known |= {
        row.section.removeprefix(f"{piece.name} ")
        for piece in plan.program.pieces
        for row in piece.rows
    }
    if name not in known:
        listed = ", ".join(f'"{each}"' for each in sorted(known - {""}))
        told = near_names(name, known) or f"; there are {listed}"
        raise InputError(f'"{name}" is no piece and no section{told}', basis.scope.where(key))
    if name in named:
        raise InputError(f'"{name}" is striped twice', basis.scope.where(key))


def _check_used(basis: Basis, plan: Plan, asked: Colours) -> None:
    striped = {stripe.colour for stripes in asked.stripes for stripe in stripes.repeat}
    idle = set(asked.names) - set(colours_of(plan.program)) - striped
    if idle:
        letter = min(idle)
        raise InputError(
            f'no row is worked in colour {letter} ("{asked.names[letter]}"); put it into a stripe, '
            "or leave it out of the names",
            basis.scope.where("colours.names"),
        )


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
