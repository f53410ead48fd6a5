"""Picking the work up again: where a piece stands after an interruption, and what comes next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from frogless.errors import InputError
from frogless.fabric.geometry import decrease_points, shaping_points
from frogless.fabric.model import Fabric, RowFabric
from frogless.plan.model import Plan
from frogless.rows.nodes import Side
from frogless.stitches.model import Dialect, Stitch
from frogless.units import Units, show_fine, show_length


@dataclass(frozen=True, slots=True)
class Standing:
    """Where the work stands in a round, and the next thing to do.

    Args:
        of: rounds of the piece before its edging. before, after: counts of the round below and of this one.
        points, done: shaping points of this round and how many of them are worked.
        plain: stitches to work before the next shaping point, or to the end of the round.
        marker: number of the next marker, counted from the join with the right side facing; None: the join.
        stitch: key of the stitch the round is worked in. hook: mm.
        girth: what the last finished round measures, washed, mm. state: the gauge's state.
    """

    round: int
    of: int
    side: Side
    section: str
    before: int
    after: int
    points: int
    done: int
    plain: int
    marker: int | None
    stitch: str
    hook: float
    girth: float
    state: str
    last_landmark: tuple[str, float] | None


def standing(plan: Plan, fabric: Fabric, round_: int, done: int = 0) -> Standing:
    """Where the main piece stands in `round_` after `done` of its shaping points.

    Raises:
        InputError: no such round, or more points done than the round has.
    """
    rows = fabric.pieces[plan.program.pieces[0].name]
    if not 1 <= round_ < len(rows):
        raise InputError(f"there is no round {round_}; the rounds are 1 to {len(rows) - 1}")
    row, below = rows[round_], rows[round_ - 1]
    groups = sorted(shaping_points(row) + decrease_points(row)) if row.row.marks else []
    if not 0 <= done <= len(groups):
        raise InputError(
            f"round {round_} has {len(groups)} shaping points, so {done} cannot be done"
        )
    section = next((s for s in plan.sections if s.first_round <= round_ <= s.last_round), None)
    gauge = plan.gauges[below.row.section]
    return Standing(
        round_, plan.sections[-1].last_round, row.row.side, row.row.section, below.places, row.places,
        len(groups), done, _plain(row, groups, done), _marker(row, len(groups), done),
        section.stitch if section else row.keys[int(row.stitch[0])], row.row.hook,
        below.places * gauge.width.value, gauge.state, _last_landmark(plan, round_ - 1),
    )  # fmt: skip


def _plain(row: RowFabric, groups: Sequence[tuple[int, ...]], done: int) -> int:
    """Stitches between the last shaping point worked and the next one, or the end of the round."""
    chains = int(row.row.start.counts)
    begin = groups[done - 1][-1] + 1 if done else chains
    end = groups[done][0] if done < len(groups) else int(row.counted.sum())
    return int(row.counted[begin:end].sum())


def _marker(row: RowFabric, points: int, done: int) -> int | None:
    """The next marker's number: on a wrong-side round they are met from the last one down."""
    if done >= points:
        return None
    return points - done if row.row.side == "WS" else done + 1


def _last_landmark(plan: Plan, round_: int) -> tuple[str, float] | None:
    """Key and washed girth of the last landmark that is worked, mm."""
    passed = [m for m in plan.landmarks if 0 < m.rounds <= round_]
    return (passed[-1].key, passed[-1].garment.value) if passed else None


def card(
    standing: Standing, stitches: Mapping[str, Stitch], dialect: Dialect = "us", units: Units = "cm"
) -> str:
    """The standing on one card, for the work bag."""
    short = stitches[standing.stitch].terms[dialect].abbreviation
    target = "the end of the round" if standing.marker is None else f"marker {standing.marker}"
    shaped = (
        f"{standing.done} of {standing.points} shaping points done"
        if standing.points
        else "no shaping in this round"
    )
    lines = [
        f"Round {standing.round} of {standing.of} ({standing.side}), {standing.section}",
        f"{standing.before} to {standing.after} stitches; {shaped}",
        f"Next: {short} in next {standing.plain} to {target}",
        f"Hook: {show_fine(standing.hook, units)}",
        f"Round {standing.round - 1} measures {show_length(standing.girth, units)} around "
        f"({standing.state})",
    ]
    if standing.last_landmark is not None:
        key, girth = standing.last_landmark
        name = key.removesuffix("_girth").replace("_", " ")
        lines.append(f"Last landmark: {name}, {show_length(girth, units)} around")
    return "\n".join(lines)
