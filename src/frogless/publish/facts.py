"""A draft as facts that a maker would look for, each with a key by which another draft has it too."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from frogless.design.document import TubeDesign
from frogless.design.knobs_words import words
from frogless.design.work import Work
from frogless.fit.model import GoingOn
from frogless.plan.model import (
    BandPlan,
    CordPlan,
    EdgingPlan,
    ElasticPlan,
    PiecePlan,
    SectionPlan,
)
from frogless.publish.changes_said import counted, number, tell
from frogless.publish.drafted import Drafted, is_closed
from frogless.publish.front import name_of
from frogless.publish.garment import counted as measure_counted
from frogless.publish.places_said import named
from frogless.publish.shown import about
from frogless.rows.walk import stitch_keys
from frogless.units import show_fine, show_length
from frogless.write.rhythm import rhythm_sentence

RANKS = (
    "points", "fit", "goes on", "piece", "landmark", "girth", "measure", "length", "section", "stitch",
    "pattern", "count", "rhythm", "edging", "waist", "strand", "start", "join", "work", "yarn",
    "hook", "used", "remark", "title",
)  # fmt: skip
"""Kinds of facts, the most important first."""


Names = Mapping[tuple[str, str], str]
NO_NAMES: Names = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Fact:
    """One fact of a draft.

    Args:
        key: what it is a fact of; its first is a kind of `RANKS`.
        what: the same in words; "" where the value says it.
        value: in words or figures.
        form: the sentence of `changes_said` that the value stands in as `n`; "" for none.
        part: the piece, or "piece/section", that it is of; "" for the whole.
        same: what is compared in place of the value.
    """

    key: tuple[object, ...]
    what: str
    value: str
    form: str = ""
    part: str = ""
    same: object = None

    @property
    def kind(self) -> str:
        """Which of `RANKS` it is."""
        return str(self.key[0])

    @property
    def rank(self) -> int:
        """The place of its kind."""
        return RANKS.index(self.kind)

    @property
    def compared(self) -> object:
        """What differs when the fact does."""
        return (self.form, self.value if self.same is None else self.same)

    def told(self, shown: Drafted) -> str:
        """The value in its sentence."""
        return tell(shown, self.form, n=self.value) if self.form else self.value


def facts(drafted: Drafted, shown: Drafted, called: Names = NO_NAMES) -> Iterator[Fact]:
    """All facts of a draft, in the words and units of `shown`.

    Args:
        called: sections by piece and name that are called otherwise in `shown`, with that name.
    """
    yield from _fit(drafted, shown)
    for piece in drafted.plan.pieces:
        sections = tuple(
            replace(one, name=called.get((piece.name, one.name), one.name))
            for one in piece.sections
        )
        yield from _piece(drafted, shown, replace(piece, sections=sections))
    yield from _start(drafted, shown)
    yield from _joins(drafted, shown)
    yield from _work(drafted)
    yield from _yarn(drafted, shown)
    yield from _hooks(drafted, shown)
    yield from _used(drafted, shown)
    yield from _remarks(drafted, shown)
    yield Fact(("title",), tell(shown, "title"), drafted.basis.design.title)
    yield Fact(("title", "body"), tell(shown, "body"), drafted.basis.body.name)
    yield Fact(("title", "swatch"), tell(shown, "swatch"), drafted.basis.main_swatch.name)


def _fit(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    for mark in drafted.fit.landmarks:
        place = named(shown, mark.at)
        yield Fact(
            ("fit", mark.piece, mark.at), tell(shown, "fit_at", place=place),
            tell(shown, f"fit_{mark.verdict}"), part=_part(drafted, mark.piece),
        )  # fmt: skip
    for going in drafted.fit.openings or (drafted.fit.going_on,):
        yield _goes_on(drafted, shown, going)


def _goes_on(drafted: Drafted, shown: Drafted, going: GoingOn) -> Fact:
    what = tell(shown, "goes_on")
    if going.name:
        what = tell(shown, "of_piece", piece=f"{going.piece}, {going.name}", what=what)
    verdict = tell(shown, f"goes_on_{going.verdict.replace(' ', '_')}")
    key = ("goes on", going.piece, going.name)
    return Fact(key, what, verdict, part=_part(drafted, going.piece))


def _part(drafted: Drafted, piece: str) -> str:
    """The part that a piece is; a skirt is no part of itself."""
    return piece if drafted.of_pieces else ""


def _piece(drafted: Drafted, shown: Drafted, piece: PiecePlan) -> Iterator[Fact]:
    part = _part(drafted, piece.name)

    def of(what: str) -> str:
        return tell(shown, "of_piece", piece=piece.name, what=what) if part else what

    if part:
        made = str(piece.number_made)
        yield Fact(("piece", piece.name), piece.name, made, "made", part)
    yield from _landmarks(shown, piece, part)
    if part:
        for measure in piece.measures:
            length = show_length(measure.got.value, shown.units)
            many = measure_counted(shown, measure)
            value = f"{length} ({many})" if many else length
            yield Fact(("measure", piece.name, measure.name), of(measure.name), value, part=part)
    else:
        hem = piece.depths[piece.landmarks[-1].rounds] if piece.landmarks else piece.depths[-1]
        yield Fact(("length",), tell(shown, "length"), show_length(hem, shown.units))
    for section in piece.sections:
        yield from _section(drafted, shown, piece, section)
    if piece.edging is not None:
        yield _edging(shown, piece, piece.edging, of(tell(shown, "edging")), part)
    if piece.waist is not None:
        value = _waist(shown, piece.waist)
        yield Fact(("waist", part), of(tell(shown, "waist")), value, part=part)
    for strand in piece.strands:
        cut = show_length(strand.cut_yarn, shown.units)
        told = tell(shown, "strand_told", n=strand.beads, cut=cut)
        yield Fact(("strand", part, strand.name), strand.name, told, part=part)


def _landmarks(shown: Drafted, piece: PiecePlan, part: str) -> Iterator[Fact]:
    for mark in piece.landmarks:
        place = named(shown, mark.key)
        what = tell(shown, "of_piece", piece=part, what=place) if part else place
        key = (part, mark.key)
        yield Fact(("landmark", *key), what, str(mark.count), "stitches", part)
        girth = tell(shown, "girth_at", place=place)
        what = tell(shown, "of_piece", piece=part, what=girth) if part else girth
        length = show_length(mark.garment.value, shown.units)
        yield Fact(("girth", *key), what, length, part=part)


def _section(
    drafted: Drafted, shown: Drafted, piece: PiecePlan, section: SectionPlan
) -> Iterator[Fact]:
    closed = is_closed(drafted, piece.name)
    part = f"{_part(drafted, piece.name)}/{section.name}"
    key = (piece.name if drafted.of_pieces else "", section.name)
    value = tell(shown, "from_to", first=section.first_round, last=section.last_round)
    yield Fact(("section", *key), section.name, value, "in_rounds" if closed else "in_rows", part)
    name = shown.name(section.stitch)
    yield Fact(("stitch", *key), tell(shown, "stitch_of", name=section.name), name, part=part)
    if section.pattern is not None:
        names = dict(section.pattern.names)
        repeats = ", ".join(str(band.repeats) for band in section.pattern.bands)
        told = tell(shown, "pattern_told", name=names[shown.dialect], n=repeats)
        numbers = (told, section.pattern.parameters)
        what = tell(shown, "pattern_of", name=section.name)
        yield Fact(("pattern", *key), what, told, part=part, same=numbers)
    if not any(mark.rounds == section.last_round for mark in piece.landmarks):
        what = tell(shown, "end_of", name=section.name)
        yield Fact(("count", *key), what, str(section.count_after), "stitches", part)
    yield _rhythm(drafted, shown, piece, section, part)
    if section.chosen is not None:
        points = number(shown, section.chosen.points)
        yield Fact(("points", *key), section.name, points, part=part)


def _rhythm(
    drafted: Drafted, shown: Drafted, piece: PiecePlan, section: SectionPlan, part: str
) -> Fact:
    """How a section is shaped; the same when only the rounds above it became more or fewer."""
    what = tell(shown, "rhythm_of", name=section.name)
    key = ("rhythm", piece.name if drafted.of_pieces else "", section.name)
    chosen = section.chosen
    if chosen is None:
        return Fact(key, what, tell(shown, "unshaped"), part=part)
    told = tell(
        shown,
        "shaping",
        points=chosen.points,
        rhythm=rhythm_sentence(
            chosen.rhythm,
            section.first_round - 1,
            shown.language,
            closed=is_closed(drafted, piece.name),
        ),
    )
    return Fact(key, what, told, part=part, same=(chosen.points, chosen.add, chosen.rhythm))


def _edging(shown: Drafted, piece: PiecePlan, plan: EdgingPlan, what: str, part: str) -> Fact:
    told = tell(
        shown, "edging_told", name=name_of(shown, plan), repeats=plan.repeats, count=plan.base_count
    )
    same = (plan.pattern, plan.repeats, plan.multiple, plan.base_count, plan.hook, plan.beads)
    return Fact(("edging", part), what, told, part=part, same=same)


def _waist(shown: Drafted, plan: ElasticPlan | CordPlan | BandPlan) -> str:
    units = shown.units
    match plan:
        case ElasticPlan():
            cut, ring = show_length(plan.cut, units), show_length(plan.finished, units)
            return tell(shown, "elastic_told", kind=plan.kind, cut=cut, ring=ring)
        case CordPlan():
            length = show_length(plan.cord, units)
            return tell(shown, "cord_told", length=length, n=len(plan.gaps))
        case BandPlan():
            return tell(shown, "band_told", rows=plan.rows, n=plan.row_stitches)


def _start(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    design = drafted.basis.design
    if isinstance(design, TubeDesign):
        name = shown.name(design.start.made_of)
        yield Fact(("start",), tell(shown, "begins_with"), name)


def _joins(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    for join in drafted.plan.joins:
        first, second = (
            show_length(length.value, shown.units)
            for length in (join.first_length, join.second_length)
        )
        told = tell(shown, "join_told", first=first, second=second)
        yield Fact(("join", join.name), tell(shown, "join", name=join.name), told)


def _work(drafted: Drafted) -> Iterator[Fact]:
    work = drafted.basis.design.work
    for key in ("rounds", "join_at", "turning_chain", "turning_chain_counts", "join_into"):
        value = getattr(work, key)
        told = ("no", "yes")[value] if isinstance(value, bool) else str(value)
        yield Fact(("work", key), words(Work, key).label, told)


def _yarn(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    for need in drafted.tally.yarn:
        length = about(need.length.value, shown.units)
        told = tell(shown, "yarn_told_length", length=length)
        if need.balls:
            balls = counted(shown, "balls", need.balls)
            told = tell(shown, "yarn_told", length=length, balls=balls)
        what = tell(shown, "yarn_of", letter=need.colour) if need.colour else tell(shown, "yarn")
        yield Fact(("yarn", need.name, need.colour), what, told)


def _hooks(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    sizes = {row.hook for piece in drafted.plan.program.pieces for row in piece.rows if row.hook}
    told = ", ".join(show_fine(size, shown.units) for size in sorted(sizes, reverse=True))
    yield Fact(("hook",), tell(shown, "hook"), told)


def _used(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    rows = (row for piece in drafted.plan.program.pieces for row in piece.rows)
    used = frozenset[str]().union(*(stitch_keys(row.body) for row in rows))
    for key in drafted.stitches:
        if key in used:
            yield Fact(("used", key), "", f"{shown.name(key)} ({shown.short(key)})")


def _remarks(drafted: Drafted, shown: Drafted) -> Iterator[Fact]:
    serious = [remark for remark in drafted.plan.remarks if remark.serious]
    for place, remark in enumerate(serious):
        # Its figures change with everything; that it came or went is what counts.
        before = sum(one.name == remark.name for one in serious[:place])
        yield Fact(("remark", remark.name, before), "", remark.sentence, same=remark.name)
