"""What a design asks of colours: which stripes each row is in, and whether that can be."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.design.colours import Colours, Stripes
from frogless.errors import InputError, near_names
from frogless.plan.basis import Basis
from frogless.plan.model import PiecePlan, Plan
from frogless.rows.colours import changes, colours_of, has_changes
from frogless.rows.nodes import Piece, Row

#: What is striped only where it is named: it finishes a garment rather than being its fabric.
FINISHES = frozenset({"border", "cord"})


def stripes_of(asked: Colours, piece: Piece, planned: PiecePlan | None, row: Row) -> int | None:
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


def own_rows(basis: Basis, piece: Piece, planned: PiecePlan | None) -> Mapping[int, str]:
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


def check(basis: Basis, plan: Plan, asked: Colours) -> None:
    """Refuses what cannot be striped so.

    Raises:
        InputError: a colour without a name, stripes on nothing, twice on the same, or on a stitch
            pattern that changes colours by itself.
    """
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
            own = own_rows(basis, piece, planned)
            for row in piece.rows:
                if row.number in own and stripes_of(asked, piece, planned, row) == i:
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


def check_used(basis: Basis, plan: Plan, asked: Colours) -> None:
    """Refuses a colour that no stripe is of and no row is worked in.

    Raises:
        InputError: there is one; names it.
    """
    striped = {stripe.colour for stripes in asked.stripes for stripe in stripes.repeat}
    idle = set(asked.names) - set(colours_of(plan.program)) - striped
    if idle:
        letter = min(idle)
        raise InputError(
            f'no row is worked in colour {letter} ("{asked.names[letter]}"); put it into a stripe, '
            "or leave it out of the names",
            basis.scope.where("colours.names"),
        )
