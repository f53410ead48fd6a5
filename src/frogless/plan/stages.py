"""A tube decided stage by stage: runs of plain sections, and sections in stitch patterns between them.

Plain sections that follow each other are laid out together, as if they were all there is. A section
in a pattern is landed by itself, on the girth that was reached: repeats allow no more. What follows
a pattern begins with a base round, at the same girth.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from frogless.because import Because, Step
from frogless.errors import Impossible, InputError
from frogless.plan import edging
from frogless.plan.basis import Basis
from frogless.plan.edging import RUFFLES
from frogless.plan.landing import land
from frogless.plan.layout import Layout, Multiple, Shaped
from frogless.plan.pattern_asked import Below, asked
from frogless.plan.pattern_rounds import pattern_rows, weights
from frogless.plan.pattern_shaping import made_section
from frogless.plan.patterned import BASE
from frogless.plan.sections import (
    Reached,
    Span,
    Target,
    base_height,
    begun,
    check_hem,
    spans_of,
)
from frogless.plan.tube import Tube, counts_of
from frogless.stitches.model import Stitch

Run = Callable[[Target, tuple[Span, ...], bool], tuple[tuple[Span, ...], Layout, Multiple]]
"""Lays out plain sections that begin at a girth; the last argument tells whether the piece ends so.

Gives them with what the body asks of them, their layout, and the multiple their last count has.
"""

# What a girth may differ by after a base round that has to suit what follows, as a share of it, and
# stitches at least (own choice: below what a tape shows on a fabric, and enough for an edging of 8).
GIVE = 0.02
GIVE_STITCHES = 4.0


@dataclass(slots=True)
class _Made:
    """A tube under way, stage by stage."""

    spans: list[Span]
    shaped: list[Shaped | None]
    counts: list[int]
    begins: list[int]
    ends: list[int]
    multiple: Multiple
    wanted: float

    def girth(self) -> float:
        """What its last round measures, mm."""
        last = self.spans[-1]
        if last.worked is not None:
            return last.worked.girth(last.gauge.width, last.worked.rounds[-1]).value
        return self.counts[-1] * last.width

    def reached(self, *, based: bool) -> Reached:
        """Where the next section begins."""
        depth = self.spans[-1].end_depth
        return Reached(depth, sum(s.rounds for s in self.spans), self.wanted, based)

    def close(self, base: float, count: int) -> None:
        """A base round after the pattern that ends the piece, for an edging to stand on."""
        last = self.spans[-1]
        if last.worked is not None:
            rounds = last.worked.rounds
            own = 0 if count == self.counts[-1] else count
            more = (*rounds, replace(rounds[-1], row=BASE, count=own))
            self.spans[-1] = replace(
                last,
                worked=replace(last.worked, rounds=more),
                rounds=last.rounds + 1,
                heights=(*last.heights, base),
            )
            self.counts.append(count)

    def add(self, spans: Sequence[Span], shaped: Sequence[Shaped | None], first: int) -> None:
        """Sections that follow, the first of which begins with so many stitches."""
        for span, one in zip(spans, shaped, strict=True):
            before = first if not self.begins or span is spans[0] else self.ends[-1]
            if span.worked is not None:
                before = span.worked.base_count(span.worked.before)
            self.begins.append(before)
            self.counts.extend(_counts_within(span, one, before))
            self.ends.append(self.counts[-1])
            self.spans.append(span)
            self.shaped.append(one)
            if span.target is not None:
                self.wanted = span.target.wanted


def _counts_within(span: Span, shaped: Shaped | None, before: int) -> Iterator[int]:
    if span.worked is not None:
        yield from (span.worked.base_count(one) for one in span.worked.rounds)
        return
    yield from counts_of(span, shaped, before)


def has_patterns(basis: Basis) -> bool:
    """Whether a section of the tube is worked in a stitch pattern."""
    return any(section.pattern is not None for section in basis.tube.section)


def staged(basis: Basis, first: Target, run: Run) -> Tube:
    """A tube whose sections are partly in stitch patterns.

    Raises:
        InputError: the design or the swatch has to be mended.
        Impossible: a girth cannot be met; says by how much and what would help.
    """
    check_hem(basis)
    sections = basis.tube.section
    made = _Made([], [], [], [], [], Multiple(), first.wanted)
    for in_pattern, run_of in groupby(
        range(len(sections)), key=lambda i: sections[i].pattern is not None
    ):
        numbers = tuple(run_of)
        if in_pattern:
            for number in numbers:
                _add_pattern(basis, first, made, number)
        else:
            _add_plain(basis, first, made, numbers, run)
    if basis.tube.edging is not None and (worked := made.spans[-1].worked) is not None:
        made.close(base_height(basis, worked.base_stitch), _closing(basis, made))
    layout = Layout((made.counts[0], *made.ends), tuple(made.shaped), begins=tuple(made.begins))
    return Tube(basis, first, tuple(made.spans), layout, made.multiple, tuple(made.counts))


def _closing(basis: Basis, made: _Made) -> int:
    """Stitches of the base round under an edging: one in each place, if that keeps the girth.

    On a hook of its own nothing tells how wide they are, and they stay one in each place.
    """
    last, count, girth = made.spans[-1], made.counts[-1], made.girth()
    if last.worked is None or last.gauge.hook not in (None, basis.hook):
        return count
    gauge = basis.trim_gauge(last.worked.base_stitch)
    if gauge.estimated or abs(count * gauge.width.value / girth - 1) <= RUFFLES:
        return count
    fits = edging.multiple(basis, basis.tube.edging)
    return land(girth, gauge.width.value, fits.of, fits.offset).count


def _add_plain(
    basis: Basis, first: Target, made: _Made, numbers: tuple[int, ...], run: Run
) -> None:
    ends = numbers[-1] == len(basis.tube.section) - 1
    if not made.spans:
        spans, layout, made.multiple = run(first, spans_of(basis, numbers, begun(basis)), ends)
        made.counts.append(layout.counts[0])
        made.add(spans, layout.shaped, layout.counts[0])
        return
    girth = made.girth()
    found = spans_of(basis, numbers, made.reached(based=True))
    for aim in _aims(basis, made.spans[-1], found[0], girth):
        try:
            spans, layout, made.multiple = run(aim, found, ends)
        except Impossible:
            if aim.low < aim.high - 1.0:
                raise
            continue
        made.add(spans, layout.shaped, layout.counts[0])
        return


def _aims(basis: Basis, above: Span, below: Span, girth: float) -> Iterator[Target]:
    """Girths a section may begin at after a pattern: a stitch in each if that will do, else about."""
    natural = sum(last_weights(above, basis.stitches)) * below.width
    why = Because((Step("girth", girth),))
    if abs(natural - girth) <= max(below.width, girth * below.gauge.width.relative):
        yield Target(natural, natural - 0.5, natural + 0.5, why)
    give = max(GIVE * girth, GIVE_STITCHES * below.width)
    yield Target(girth, girth - give, girth + give, why)


def _first_count(span: Span) -> int:
    return span.worked.base_count(span.worked.before) if span.worked else 0


def last_weights(span: Span, stitches: Mapping[str, Stitch]) -> tuple[int, ...]:
    """How wide each place is, in stitches, that a section in a pattern leaves."""
    if span.worked is None:
        raise TypeError("a plain section")
    last = pattern_rows(span.worked, stitches)[-1]
    if last is None:  # a section has a row of its pattern at least
        raise TypeError("a section without rows of its pattern")
    return weights(last, stitches)


def _add_pattern(basis: Basis, first: Target, made: _Made, number: int) -> None:
    section, key = basis.tube.section[number], f"section.{number + 1}"
    if not made.spans:
        at, below = begun(basis), Below(first, begun=basis.begun_with, is_first=True)
        if basis.begun_with and section.shape_by == "columns":
            raise InputError(
                f'section "{section.name}" is begun on an edge, and its columns are not there yet; '
                "write a plain section of a round before it",
                basis.place(f"{key}.shape_by"),
            )
    else:
        girth, last = made.girth(), made.spans[-1]
        aim = Target(girth, 0.0, float("inf"), Because((Step("girth", girth),)))
        plain = last.worked is None
        below = Below(aim, made.counts[-1] if plain else 0, None if plain else last)
        at = made.reached(based=False)
    spans, shaped = made_section(basis, asked(basis, section, key, at, below))
    if not made.spans:
        made.counts.append(_first_count(spans[0]))
    made.add(spans, shaped, 0)
