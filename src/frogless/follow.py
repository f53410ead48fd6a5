"""Picking the work up again: where a piece stands after an interruption, and what comes next."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from frogless.errors import InputError
from frogless.fabric.geometry import decrease_points, is_mirrored, shaping_points
from frogless.fabric.model import Fabric, RowFabric
from frogless.plan.model import Landmark, Plan
from frogless.rows.colours import begun_in
from frogless.rows.nodes import Piece, Row
from frogless.stitches.model import Dialect, Stitch
from frogless.units import Units, show_fine, show_length
from frogless.write.counted import say_count
from frogless.write.pattern import write_rows
from frogless.write.phrases import phrases
from frogless.write.words import Words

Groups = Sequence[tuple[int, ...]]


@dataclass(frozen=True, slots=True)
class Point:
    """The next shaping point of a round.

    Args:
        marker: its number, counted from the join with the right side facing, as the text counts.
        placed: whether the piece has its markers already, from a shaping round further up.
        makes: stitches worked into its place; `takes`: places worked together.
    """

    marker: int
    placed: bool
    makes: int
    takes: int


@dataclass(frozen=True, slots=True)
class Standing:
    """Where the work stands in a round, and the next thing to do.

    Args:
        of: rounds to the hem; in the edging, rounds in all.
        before, after: counts of the round below and of this one.
        points, done: shaping points of this round, and how many of them are worked.
        plain: stitches to work before the next shaping point, or to the end of the round.
        next: the next shaping point; None: there is none before the join.
        stitch: key of the stitch that the round is worked in.
        girth: what the round below measures, mm, in `state`; None below the foundation.
        landmark: the last one that is worked.
    """

    row: Row
    of: int
    before: int
    after: int
    points: int
    done: int
    plain: int
    next: Point | None
    stitch: str
    girth: float | None
    state: str
    landmark: Landmark | None


def standing(plan: Plan, fabric: Fabric, round_: int, done: int = 0) -> Standing:
    """Where the main piece stands in `round_` (0: the foundation) after `done` shaping points.

    Raises:
        InputError: no such round, or more points done than the round has.
    """
    rows = fabric.pieces[plan.program.pieces[0].name]
    if not 0 <= round_ < len(rows):
        raise InputError(
            f"there is no round {round_}; there are 1 to {len(rows) - 1}, and 0 for the foundation"
        )
    row, below = rows[round_], rows[round_ - 1] if round_ else None
    groups = sorted(shaping_points(row) + decrease_points(row)) if row.row.marks else []
    if not 0 <= done <= len(groups):
        raise InputError(_too_many(round_, len(groups), done))
    gauge = plan.gauges[(below or row).row.section]
    hem = plan.main.sections[-1].last_round if plan.main.sections else len(rows) - 1
    return Standing(
        row=row.row,
        of=hem if round_ <= hem else len(rows) - 1,
        before=below.places if below else row.places,
        after=row.places,
        points=len(groups),
        done=done,
        plain=_plain(row, groups, done),
        next=_next(row, groups, done, placed=_stand(rows[:round_], len(groups))),
        stitch=row.keys[int(row.stitch[-1])],
        girth=plan.main.girth_of(round_ - 1, below.places, gauge) if below else None,
        state=gauge.state,
        landmark=next((m for m in plan.main.landmarks[::-1] if m.rounds < round_), None),
    )


def _too_many(round_: int, points: int, done: int) -> str:
    if not points:
        return f"round {round_} has no shaping points, so none can be done; leave --done out"
    return f"round {round_} has {points} shaping points; done can be 0 to {points}, not {done}"


def _plain(row: RowFabric, groups: Groups, done: int) -> int:
    """Stitches between the last shaping point worked and the next one, or the end of the round."""
    begin = groups[done - 1][-1] + 1 if done else row.row.start.chains
    end = groups[done][0] if done < len(groups) else row.stitch.size
    return int(row.counted[begin:end].sum())


def _stand(above: Sequence[RowFabric], points: int) -> bool:
    """Whether as many markers stand in the work as there are points; others are placed anew."""
    return next((len(r.row.marks) for r in reversed(above) if r.row.marks), 0) == points


def _next(row: RowFabric, groups: Groups, done: int, *, placed: bool) -> Point | None:
    """A round worked against the way of the right side meets the markers from the last one down."""
    if done == len(groups):
        return None
    marker = len(groups) - done if is_mirrored(row) else done + 1
    group = groups[done]
    return Point(marker, placed, len(group), int(row.taken[group[0]]))


def card(
    standing: Standing,
    piece: Piece,
    stitches: Mapping[str, Stitch],
    dialect: Dialect = "us",
    units: Units = "cm",
) -> str:
    """The standing on one card, for the work bag.

    Args:
        piece: the piece that the standing is of, for the round's own text.
    """
    lines = write_rows(piece, stitches, dialect)
    written = next(line for line in lines if line.first_row == standing.row.number)
    words = Words(stitches, dialect, phrases())
    todo = written.text
    if standing.points:
        todo = _turning_chain(standing, words) + _todo(standing, words.stitch(standing.stitch))
    told = [_heading(standing), _counts(standing, words), f"Next: {todo}"]
    told.append(f"Hook: {show_fine(standing.row.hook, units)}")
    if piece.colour:
        told.append(f"Begun in: {words.colour} {begun_in(piece)[piece.rows.index(standing.row)]}")
    told.extend(_measures(standing, units))
    if standing.points:
        told.append(f"The whole round: {written.text}")
    return "\n".join(told) + "\n"


def _heading(standing: Standing) -> str:
    row = standing.row
    if not row.number:
        return f"Foundation ({row.side}), {row.section}; {standing.of} rounds follow"
    return f"Round {row.number} of {standing.of} ({row.side}), {row.section}"


def _counts(standing: Standing, words: Words) -> str:
    if not standing.row.number:
        return f"{standing.after} stitches to begin with"
    if not standing.points:
        told = f"{standing.after} stitches"
        if standing.before != standing.after:
            # An edging leaves more than stitches, so one number for all of it helps nobody.
            told = f"{standing.before} stitches become {say_count(standing.row, words)}"
        return f"{told}; no shaping points in this round"
    return (
        f"{standing.before} to {standing.after} stitches; "
        f"{standing.done} of {standing.points} shaping points done"
    )


def _turning_chain(standing: Standing, words: Words) -> str:
    """ "ch 2, " where the round has only been joined."""
    chains = 0 if standing.done else standing.row.start.chains
    return words.phrases.say("chain", chain=words.chain, n=chains) + ", " if chains else ""


def _todo(standing: Standing, short: str) -> str:
    """ "dc in next 25 to marker 5, then 2 dc in the marked st"."""
    plain = f"{short} in next {standing.plain if standing.plain > 1 else 'st'}"
    point = standing.next
    if point is None:
        return f"{plain} to the end of the round" if standing.plain else "end the round"
    shaping = f"{point.makes} {short} in" if point.takes == 1 else f"{short}{point.takes}tog at"
    if point.placed:
        there = f"to marker {point.marker}, then {shaping} the marked st"
        return f"{plain} {there}" if standing.plain else f"go on {there}"
    there = f"{shaping} next st, and place marker {point.marker}"
    return f"{plain}, then {there}" if standing.plain else there


def _measures(standing: Standing, units: Units) -> Iterator[str]:
    if standing.girth is not None:
        below = standing.row.number - 1
        name = f"Round {below}" if below else "The foundation"
        around = show_length(standing.girth, units)
        yield f"{name} measures {around} around ({standing.state})"
    if standing.landmark is not None:
        mark = standing.landmark
        around = show_length(mark.garment.value, units)
        yield f"Last landmark: {phrases().measurement(mark.key)}, round {mark.rounds}, {around}"
