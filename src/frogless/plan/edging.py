"""The edging at the hem: how many repeats lie flat there, and the round that adapts the count."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from frogless.because import Because, Step
from frogless.design.trims import EdgingChoice
from frogless.errors import Impossible, InputError, Place
from frogless.plan import shaping
from frogless.plan.basis import Basis
from frogless.plan.edging_beads import bead_remarks, beads_in, plan_beads
from frogless.plan.landing import land, multiple_note
from frogless.plan.layout import Multiple
from frogless.plan.model import EdgingPlan, Remark
from frogless.rows.count import left
from frogless.rows.nodes import End, Repeat, Row, Side, Start
from frogless.stitches import hooks
from frogless.stitches.edged import as_runs
from frogless.stitches.edgings import edging as fill_edging
from frogless.stitches.edgings import edgings
from frogless.stitches.fringe import cut_fringe
from frogless.stitches.load import leaves
from frogless.stitches.model import EdgeRow, Edging
from frogless.stitches.pattern_rows import OTHER_SIDE
from frogless.swatch import Gauge
from frogless.units import show_long

EDGING = "edging"
# A correction of more than about 2 % of the stitches in one round begins to show (common practice).
SHOWS = 0.02
# Beyond one stitch in three a single round cannot take it up (common practice).
MOST = 1 / 3
# An edging that differs from the hem by more than this ruffles or draws in visibly (own choice: a
# seam allowance of one part in thirty).
RUFFLES = 0.03


@dataclass(frozen=True, slots=True)
class EdgingWork:
    """An edging's plan, its rounds and its remarks."""

    plan: EdgingPlan
    rows: tuple[Row, ...]
    remarks: tuple[Remark, ...]


def pattern(basis: Basis, choice: EdgingChoice, *, closed: bool = True) -> Edging:
    """The edging pattern with its parameters filled in; in rows with the offset that it has there.

    Raises:
        InputError: there is no such pattern, a parameter is wrong, or it has no rows.
    """
    try:
        found = fill_edging(choice.pattern, choice.parameters)
    except InputError as error:
        known = choice.pattern in edgings()
        raise error.at(basis.place("edging.parameters" if known else "edging.pattern")) from None
    if closed:
        return found
    if not found.rows:
        raise InputError(
            f'"{found.key}" is worked in rounds; it does not say how a row ends',
            basis.place("edging.pattern"),
        )
    return replace(found, offset=found.row_offset)


def multiple(basis: Basis, choice: EdgingChoice | None, *, closed: bool = True) -> Multiple:
    """What the hem's count should be a multiple of.

    Nothing when the edging has a width of its own and a round that adapts the count to it.
    """
    if choice is None:
        return Multiple()
    if choice.repeat_width is not None and choice.correction_round == "when needed":
        return Multiple()
    found = pattern(basis, choice, closed=closed)
    return Multiple(found.multiple, found.offset)


def hook(basis: Basis, choice: EdgingChoice) -> tuple[float, bool]:
    """The edging's hook, mm, and whether it was scaled.

    It is as much finer than the maker's main hook as the designer's was than hers.
    """
    theirs = basis.design.gauge
    if theirs is None or abs(basis.hook / theirs.hook - 1) < 1e-6:
        return choice.hook, False
    return hooks.nearest(choice.hook * basis.hook / theirs.hook), True


def in_piece(basis: Basis, key: str) -> Basis:
    """The same basis, which finds the keys of an edging in the piece of that key."""
    where = basis.scope.where

    def within(name: str) -> Place:
        return where(f"{key}.{name}" if name.partition(".")[0] == "edging" else name)

    return replace(basis, scope=replace(basis.scope, where=within))


def plan_edging(
    basis: Basis,
    choice: EdgingChoice,
    gauge: Gauge,
    hem_count: int,
    first_round: int,
    in_rows: Side | None = None,
) -> EdgingWork:
    """The edging planned on a hem of `hem_count` stitches, its first round numbered `first_round`.

    Args:
        in_rows: the side of its first row when it is worked in rows; None: in joined rounds.

    Raises:
        Impossible: the correction is more than one round can take.
        InputError: as `pattern`.
    """
    found = pattern(basis, choice, closed=in_rows is None)
    base, width, because = _base_count(basis, choice, gauge, found, hem_count)
    if abs(base - hem_count) > hem_count * MOST or base <= 0:
        raise _too_far(basis, base, hem_count)
    size, scaled = hook(basis, choice)
    rows = _rows(basis, found, hem_count, base, first_round, size, closed=in_rows is None)
    if in_rows is not None:
        rows = tuple(_turned(rows, in_rows))
    hem_girth = gauge.width.times(hem_count)
    repeats = (base - found.offset) // found.multiple
    plan = EdgingPlan(
        pattern=choice.pattern,
        hook=size,
        hem_count=hem_count,
        base_count=base,
        repeats=repeats,
        multiple=found.multiple,
        offset=found.offset,
        correction=base - hem_count,
        first_round=first_round,
        last_round=first_round + len(rows) - 1,
        gauge=gauge,
        hem_girth=hem_girth,
        girth=replace(hem_girth, value=base * width),
        because=because,
        names=tuple((dialect, term.name) for dialect, term in found.terms.items()),
        beads=plan_beads(basis, choice.beads, found, repeats) if choice.beads else None,
        fringe_yarn=cut_fringe(found, base).yarn if found.fringe is not None else 0.0,
    )
    told = (
        *_remarks(choice, plan, scaled=scaled),
        *_pattern_remarks(basis, choice, found, plan),
        *bead_remarks(plan, basis.show),
    )
    return EdgingWork(plan, rows, told)


def _too_far(basis: Basis, base: int, hem_count: int) -> Impossible:
    change = abs(base - hem_count)
    return Impossible(
        f"the edging wants {base} stitches and the hem has {hem_count}: a correction of {change} "
        "is more than one stitch in three",
        basis.place("edging"),
        short_stitches=change,
        ways_out=(
            "another hem girth",
            "another repeat_width",
            "an edging with a smaller repeat",
        ),
    )


def _base_count(
    basis: Basis, choice: EdgingChoice, gauge: Gauge, found: Edging, hem_count: int
) -> tuple[int, float, Because]:
    """Stitches under the edging, the width each of them takes in it (mm), and why."""
    hem, width = hem_count * gauge.width.value, gauge.width.value
    if choice.repeat_width is not None:
        flat = basis.girth_wanted(choice.repeat_width, "edging.repeat_width") * basis.scale
        width = flat / found.multiple
    count = hem_count
    fits = (hem_count - found.offset) % found.multiple == 0 and hem_count > found.offset
    lies_flat = abs(hem_count * width / hem - 1) <= RUFFLES
    if choice.correction_round == "when needed" and not (fits and lies_flat):
        count = land(hem, width, found.multiple, found.offset).count
    return count, width, _because(found, hem, count, width)


def _because(found: Edging, hem: float, count: int, width: float) -> Because:
    """How often a repeat goes into the hem, and the stitches that so many whole ones take."""
    repeats = (count - found.offset) // found.multiple
    exact, note = Step("exact", hem / width, "stitches"), multiple_note(1, found.offset)
    if found.multiple > 1:
        exact = Step("exact", hem / (width * found.multiple), "ratio")
        note = f"{repeats} × {found.multiple}" + (f" + {found.offset}" if found.offset else "")
    return Because(
        (
            Step("hem", hem),
            Step("repeat", width * found.multiple),
            exact,
            Step("landed", count, "stitches", note),
            Step("repeats", repeats, ""),
            Step("girth", count * width),
            Step("off", count * width - hem),
        )
    )


def _rows(
    basis: Basis, found: Edging, hem: int, base: int, first: int, size: float, *, closed: bool
) -> tuple[Row, ...]:
    rows = [] if base == hem else [_correction(hem, base, first, size)]
    told = tuple(EdgeRow((), nodes, ()) for nodes in found.rounds) if closed else found.rows
    repeats = (base - found.offset) // found.multiple
    for i, row in enumerate(told):
        body = as_runs((*row.before, Repeat(row.repeat, repeats), *row.after))
        rows.append(
            Row(
                number=first + len(rows),
                side="RS",
                section=EDGING,
                body=body,
                count=left(body, leaves(basis.stitches)),
                start=Start(found.turning_chains[i]),
                end=End("first_stitch", fasten_off=i == len(told) - 1),
                backwards=found.backwards[i],
                hook=size,
            )
        )
    return tuple(rows)


def _turned(rows: Sequence[Row], side: Side) -> Iterator[Row]:
    """Rounds as rows: turned after each, but not before one that goes back along it."""
    for i, row in enumerate(rows):
        last = i == len(rows) - 1
        turn = not last and not rows[i + 1].backwards
        yield replace(row, side=side, end=End(turn=turn, fasten_off=last))
        side = OTHER_SIDE[side] if turn else side


def _correction(hem: int, base: int, number: int, size: float) -> Row:
    """A round of single crochet that adds or takes away the difference, spread evenly."""
    change = base - hem
    one = shaping.Round(hem, abs(change), 1 if change > 0 else -1)
    return Row(
        number=number,
        side="RS",
        section=EDGING,
        body=shaping.body("single_crochet", one),
        count=base,
        start=Start(1),
        end=End("first_stitch"),
        hook=size,
    )


def _pattern_remarks(
    basis: Basis, choice: EdgingChoice, found: Edging, plan: EdgingPlan
) -> Iterator[Remark]:
    """What the edging itself asks for: care, beads to string, strands to cut."""
    if found.note:
        yield Remark("edging_note", found.note, serious=False)
    if (own := beads_in(found)) and choice.beads is None:
        yield Remark(
            "edging_beads",
            f"the rounds of the edging slide up {plan.repeats * own} beads, {own} in each repeat: "
            "string them and some to spare before you begin it; a table edging.beads says the rest",
            serious=False,
        )
    if found.fringe is not None:
        cut = cut_fringe(found, plan.base_count)
        yield Remark(
            "edging_fringe",
            f"cut {cut.strands} strands of {basis.show(cut.cut)}, {found.fringe.strands} for each "
            f"of {cut.knots} knots: {show_long(cut.yarn, basis.units)} of yarn, counted under the "
            "materials",
            serious=False,
        )


def _remarks(choice: EdgingChoice, plan: EdgingPlan, *, scaled: bool) -> Iterator[Remark]:
    if scaled:
        yield Remark(
            "edging_hook",
            f"your hook is not the designer's, so the edging's is scaled with it: {plan.hook:g} mm "
            f"instead of {choice.hook:g} mm; try one repeat first",
            serious=False,
        )
    if choice.repeat_width is None:
        yield Remark(
            "edging_width",
            "the width of the edging's repeat is not given, so it is taken as wide as the stitches "
            "under it; work three repeats and write repeat_width if they pull or wave",
            serious=False,
        )
    if abs(plan.correction) > plan.hem_count * SHOWS:
        yield Remark(
            "edging_correction",
            f"the edging's first round changes {plan.hem_count} stitches to {plan.base_count}, "
            "more than one in fifty; it may show as a faint ruffle or gathering",
            serious=False,
        )
    off = plan.girth.value / plan.hem_girth.value - 1
    if abs(off) > RUFFLES:
        longer, doing = ("longer", "ruffle") if off > 0 else ("shorter", "draw in")
        yield Remark(
            "edging_girth",
            f"the edging is {abs(off) * 100:.0f} % {longer} than the hem and will {doing}",
        )
