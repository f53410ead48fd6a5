"""What is said of sections in stitch patterns: their repeats, what changes the count, their gauge."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.plan.model import PatternPlan, SectionPlan
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.units import show_length
from frogless.write.near import show_small


def sentences(
    drafted: Drafted, planned: SectionPlan, plan: PatternPlan, *, closed: bool
) -> Iterator[str]:
    """Its repeats, its base rounds, how it is shaped, what it measures; in rounds, or in rows."""
    flat = "" if closed else "_flat"
    first, last = plan.bands[0].repeats, _repeats(plan)
    name = called(drafted, plan)
    if plan.columns:
        yield say(
            drafted, "pattern_columns", name=name, columns=plan.columns,
            repeats=last // plan.columns, multiple=plan.multiple,
            stitch=drafted.short(plan.column_stitch),
            before=_column(planned.count_before, plan, last),
            after=_column(planned.count_after, plan, last),
        )  # fmt: skip
    else:
        key = "pattern_grows" if first != last else f"pattern_repeats{flat}"
        yield say(
            drafted, key, name=name, before=first, repeats=last, multiple=plan.multiple,
            count=plan.multiple * last + plan.offset,
        )  # fmt: skip
    if plan.row_repeat > 1 and not plan.bands[0].goes_on:
        yield say(drafted, f"pattern_{'setup' if plan.setup else 'rows'}{flat}",
                  rows=plan.row_repeat, setup=plan.setup)  # fmt: skip
    if closed and _unturned(drafted, planned):
        yield say(drafted, "pattern_unturned")
    yield from _based(drafted, plan, flat)
    ends = [show_length(one.value, drafted.units) for one in (plan.girth_before, plan.girth_after)]
    if not closed:
        key = "pattern_width"
    else:
        key = "pattern_girths" if ends[0] != ends[1] else "pattern_girth"
    yield say(drafted, key, before=ends[0], after=ends[1])


def _unturned(drafted: Drafted, planned: SectionPlan) -> bool:
    """Whether none of its rounds is turned where the rounds of the garment are."""
    rows = [
        row
        for piece in drafted.plan.program.pieces
        for row in piece.rows
        if row.section == planned.name and planned.first_round <= row.number < planned.last_round
    ]
    usual = drafted.basis.work.rounds == "joined and turned"
    return usual and bool(rows) and not any(row.end.turn for row in rows)


def called(drafted: Drafted, plan: PatternPlan) -> str:
    """What the pattern is called in the dialect, with a capital."""
    names = dict(plan.names)
    name = names.get(drafted.dialect) or plan.key.replace("_", " ")
    return name[:1].upper() + name[1:]


def _repeats(plan: PatternPlan) -> int:
    return plan.bands[-1].repeats


def _column(count: int, plan: PatternPlan, repeats: int) -> int:
    """Stitches of each column, of a count of all stitches."""
    return (count - plan.multiple * repeats) // plan.columns


def _based(drafted: Drafted, plan: PatternPlan, flat: str) -> Iterator[str]:
    stitch = drafted.short(plan.base_stitch)
    if len(plan.based) == 1:
        yield say(drafted, f"pattern_base_one{flat}", round=plan.based[0], stitch=stitch)
    elif plan.based:
        told = ", ".join(map(str, plan.based))
        yield say(drafted, f"pattern_base{flat}", rounds=told, stitch=stitch)


def gauges(drafted: Drafted) -> Iterator[str]:
    """The gauge of each pattern, by the repeat."""
    told: list[str] = []
    for section in drafted.plan.sections:
        plan, gauge = section.pattern, section.gauge
        if plan is None:
            continue
        told.append(
            say(
                drafted,
                "pattern_gauge_one" if plan.row_repeat == 1 else "pattern_gauge",
                name=called(drafted, plan),
                multiple=plan.multiple,
                width=show_small(plan.multiple * gauge.width.value, drafted.units),
                rows=plan.row_repeat,
                height=show_small(plan.row_repeat * gauge.height.value, drafted.units),
                hook=f"{section.hook:g}",
            )
        )
    yield from dict.fromkeys(told)


def check_count(drafted: Drafted, planned: SectionPlan) -> str:
    """What the last round of a section leaves, in words."""
    plan = planned.pattern
    if plan is None:
        return f"{planned.count_after} {drafted.short(planned.stitch)}"
    if plan.columns:
        return say(
            drafted, "pattern_left_columns", left=plan.left, columns=plan.columns,
            repeats=_repeats(plan),
        )  # fmt: skip
    return say(drafted, "pattern_left", left=plan.left, repeats=_repeats(plan))
