"""Why a row has its count: its section, the row below, what it adds, what was wanted there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from frogless.because import Because
from frogless.plan.edging import EDGING
from frogless.plan.model import PiecePlan, SectionPlan
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.reasons_model import Entry, Reason, ReasonStep, reasoned
from frogless.publish.reasons_names import piece_keys, titled
from frogless.publish.reasons_repeats import edging_steps, pattern_steps, trim_steps
from frogless.publish.reasons_sections import rhythm_of
from frogless.publish.reasons_steps import line, steps_of, until_count
from frogless.rows.count import left_for_later
from frogless.rows.nodes import Piece, Row
from frogless.units import Measured, as_shown, show_length
from frogless.write.pattern import chains_for_first_row, write_rows


@dataclass(frozen=True, slots=True)
class _Asked:
    """The row that is asked for, by its index in its piece, with what is known of it."""

    drafted: Drafted
    piece: Piece
    index: int
    plan: PiecePlan | None

    @property
    def row(self) -> Row:
        return self.piece.rows[self.index]

    @property
    def below(self) -> Row | None:
        """The row below; of rounds the last whole one, as short rows lie between."""
        earlier = self.piece.rows[: self.index]
        whole = (row for row in reversed(earlier) if not left_for_later(row.body))
        last = earlier[-1] if earlier else None
        return next(whole, last) if self.piece.closed else last

    @property
    def flat(self) -> str:
        """What the messages about rows end with, where those about rounds have nothing."""
        return "" if self.piece.closed else "_flat"

    @property
    def section(self) -> SectionPlan | None:
        """The planned section that it is of; the foundation belongs to none."""
        sections = self.plan.sections if self.plan is not None else ()
        return next((s for s in sections if s.first_round <= self.row.number <= s.last_round), None)

    @property
    def change(self) -> int:
        """Stitches that it has more than the row below."""
        return self.row.count - self.below.count if self.below is not None else 0

    @property
    def measured(self) -> Measured | None:
        """What it measures around or across, mm; None where it has no gauge."""
        gauge = self.drafted.plan.gauges.get(self.row.section)
        part = self.piece.closed and left_for_later(self.row.body)
        if gauge is None or self.plan is None or not self.row.count or part:
            return None
        if len(self.plan.girths) != len(self.piece.rows):
            return gauge.width.times(self.row.count)
        girth = self.plan.girths[self.index]
        return Measured(girth, girth * gauge.width.relative)

    @property
    def wanted(self) -> float | None:
        """The girth that was wanted at its depth, mm."""
        section, plan = self.section, self.plan
        if section is None or plan is None or len(plan.depths) != len(self.piece.rows):
            return None
        return wanted_at(section.profile, plan.depths[self.index])


def wanted_at(profile: tuple[tuple[float, float], ...], depth: float) -> float | None:
    """The girth at a depth of a profile that runs straight between its knots; None beyond it."""
    if not profile:
        return None
    for (above, wide), (below, other) in pairwise(profile):
        if above <= depth <= below and above < below:
            return wide + (other - wide) * (depth - above) / (below - above)
    # The last round of a section may reach a little beyond the depth that it was planned for.
    return profile[-1][1] if depth > profile[-1][0] else None


def row_entries(drafted: Drafted) -> Iterator[Entry]:
    """Every row of every piece."""
    keys = piece_keys(drafted)
    for piece in drafted.plan.program.pieces:
        plan = drafted.plan.piece(piece.name)
        for index, row in enumerate(piece.rows):
            key = f"row.{keys[piece.name]}.{row.number}"
            yield key, partial(_row, key, _Asked(drafted, piece, index, plan))


def _row(key: str, asked: _Asked) -> Reason:
    drafted, row = asked.drafted, asked.row
    steps = list(_steps(asked))
    if not steps or steps[-1].value_text != str(row.count):
        steps.append(line(drafted, "row_count", str(row.count)))
    title = titled(drafted, asked.piece.name, row_name(drafted, asked.piece, row))
    return reasoned(key, title, steps, None, _notes(asked))


def row_name(drafted: Drafted, piece: Piece, row: Row) -> str:
    """ "round 5", "row 5", "foundation"."""
    if row.number == 0:
        return say(drafted, "reason_foundation")
    return say(drafted, "reason_nth_round" if piece.closed else "reason_nth_row", n=row.number)


def _steps(asked: _Asked) -> Iterator[ReasonStep]:
    if asked.below is None:
        yield from _begun(asked)
        return
    yield from _whereabouts(asked)
    repeated = tuple(_repeated(asked))
    if repeated:
        yield from repeated
        return
    yield from _from_below(asked)


def _repeated(asked: _Asked) -> Iterator[ReasonStep]:
    """Of a row of an edging, of a stitch pattern or of a trim: repeats times what each leaves."""
    drafted, row, section = asked.drafted, asked.row, asked.section
    if section is not None and section.pattern is not None:
        yield from pattern_steps(drafted, section.pattern, row)
    elif asked.plan is not None and asked.plan.edging is not None and row.section == EDGING:
        yield from edging_steps(drafted, asked.plan.edging, row)
    elif asked.plan is None:
        yield from trim_steps(drafted, asked.piece, row)


def _whereabouts(asked: _Asked) -> Iterator[ReasonStep]:
    """Its section and where in it the row is; what girth was wanted there."""
    drafted, row = asked.drafted, asked.row
    same = [r.number for r in asked.piece.rows if r.section == row.section and r.number > 0]
    name = "row_of_rounds" if asked.piece.closed else "row_of_rows"
    place = say(drafted, name, n=same.index(row.number) + 1, of=len(same))
    yield line(drafted, "row_section", place, name=row.section)
    if asked.wanted is not None:
        yield line(drafted, "row_wanted", show_length(asked.wanted, drafted.units))


def _from_below(asked: _Asked) -> Iterator[ReasonStep]:
    """The count of the row below, and what is added to it or taken away.

    A row that leaves places for a later one is only a part of the way round or across.
    """
    drafted, below = asked.drafted, asked.below
    if below is None:
        return
    left, count = left_for_later(asked.row.body), str(asked.row.count)
    if left:
        yield line(drafted, "row_left", str(left))
        yield line(drafted, "row_short", count)
        return
    yield line(drafted, "row_below", str(below.count), name=row_name(drafted, asked.piece, below))
    if asked.change:
        yield _changed(asked)
        yield line(drafted, "row_count", count)
    else:
        yield line(drafted, f"row_kept{asked.flat}", count)


def _changed(asked: _Asked) -> ReasonStep:
    drafted, row, section = asked.drafted, asked.row, asked.section
    shaped = _shaping_rows(asked)
    name = "row_more" if asked.change > 0 else "row_less"
    size = str(abs(asked.change))
    if section is not None and section.pattern is not None:
        return line(drafted, f"{name}_based", size)
    if row.number not in shaped:
        return line(drafted, name, size)
    nth = drafted.phrases.nth(shaped.index(row.number) + 1)
    points = section.chosen.points if section and section.chosen else len(row.marks)
    if points and abs(asked.change) % points == 0:
        each = abs(asked.change) // points
        return line(
            drafted, f"{name}_at{asked.flat}", size, nth=nth, of=len(shaped), points=points, each=each
        )  # fmt: skip
    return line(drafted, f"{name}_nth{asked.flat}", size, nth=nth, of=len(shaped))


def _shaping_rows(asked: _Asked) -> tuple[int, ...]:
    """The numbers of the rows of its section that change the count."""
    section = asked.section
    if section is not None and section.chosen is not None:
        return tuple(section.first_round - 1 + r for r in section.chosen.rhythm.rounds)
    return tuple(
        row.number
        for below, row in pairwise(asked.piece.rows)
        if row.section == asked.row.section and row.count != below.count
    )


def _begun(asked: _Asked) -> Iterator[ReasonStep]:
    """What the first row of a piece is begun on, and why with so many stitches."""
    drafted, count = asked.drafted, asked.row.count
    trim = tuple(trim_steps(drafted, asked.piece, asked.row)) if asked.plan is None else ()
    if trim:
        yield from trim
        return
    if asked.piece.bases:
        rows = drafted.fabric.pieces[asked.piece.name]
        yield line(drafted, "picked_up", str(rows[0].used.size))
    because = _because_of(asked, count)
    if because is not None:
        yield from steps_of(drafted, because)
    else:
        yield line(drafted, "begun_with", str(count))


def _because_of(asked: _Asked, count: int) -> Because | None:
    """The chain that landed on the count a piece is begun with: of a landmark, a width, a section."""
    plan = asked.plan
    if plan is None:
        return None
    found: Iterable[Because] = (
        *(mark.because for mark in plan.landmarks if mark.rounds <= 1),
        *(one.because for one in plan.measures if one.kind != "length"),
        *(section.because for section in plan.sections[:1]),
    )
    told = [until_count(because, count) for because in found]
    known = [because for because in told if because is not None]
    return max(known, key=lambda because: len(because.steps), default=None)


def _notes(asked: _Asked) -> Iterator[str]:
    """What it measures, with its interval; how far that is from what was wanted; the rhythm."""
    drafted, measured = asked.drafted, asked.measured
    yield from _written(asked)
    units = drafted.units
    if measured is not None:
        low, high = (show_length(end, units) for end in measured.interval())
        key = "reason_row_girth" if asked.piece.closed else "reason_row_width"
        if low == high:
            key = "reason_row_small"
        yield say(
            drafted, key, girth=show_length(measured.value, units), low=low, high=high
        )  # fmt: skip
        if asked.wanted is not None:
            yield _off(drafted, measured.value, asked.wanted)
    section, plan = asked.section, asked.plan
    if section is not None and plan is not None and section.chosen is not None:
        yield say(
            drafted, "reason_rhythm", rhythm=rhythm_of(drafted, plan, section, section.chosen)
        )  # fmt: skip


def _written(asked: _Asked) -> Iterator[str]:
    """How the pattern counts the row where that is not the number of its places."""
    drafted, piece, row = asked.drafted, asked.piece, asked.row
    if asked.below is None:
        more = 0 if piece.closed or piece.bases else chains_for_first_row(piece)
        if more:
            yield say(drafted, "reason_row_turning", more=more, chains=row.count + more)
    elif any(_repeated(asked)):
        lines = write_rows(piece, drafted.stitches, drafted.dialect, drafted.language)
        told = next(one.count for one in lines if one.first_row <= row.number <= one.last_row)
        yield say(drafted, "reason_row_written", count=told)


def _off(drafted: Drafted, girth: float, wanted: float) -> str:
    """How far a girth is from the wanted one, as both are shown."""
    units = drafted.units
    off = as_shown(girth, units) - as_shown(wanted, units)
    if as_shown(off, units) == 0:
        return say(drafted, "reason_row_as_wanted")
    way = say(drafted, "wider" if off > 0 else "narrower", length=show_length(abs(off), units))
    return say(drafted, "reason_row_off", off=way, wanted=show_length(wanted, units))
